"""The side view is in true scale: every mark is parsed back from the SVG text and held against the record."""

from __future__ import annotations

import itertools
import re
from pathlib import Path

import pytest
from bs4 import BeautifulSoup, Tag
from hardpoint.drawings.side_view import WIDTH, side_view

from hardpoint import load
from hardpoint.records.airframe import Airframe
from hardpoint.records.known import NonValue, entries, said

FLEET = load.fleet(Path(__file__).parents[2] / "fleet")
TYPES = sorted(FLEET.types)


def _airframe(type_id: str) -> Airframe:
    return FLEET.types[type_id].airframe


def _svg(type_id: str) -> Tag:
    drawn = side_view(_airframe(type_id), lambda name: f"#load-point-{name}")
    assert drawn is not None
    svg = BeautifulSoup(drawn[0], "html.parser").svg
    assert svg is not None
    return svg


def _numbers(element: Tag, *names: str) -> list[float]:
    return [float(str(element[name])) for name in names]


def _metres_per_unit(svg: Tag, metres: float, bar: int) -> float:
    """From the scale bars that the drawing itself carries."""
    found = svg.select("path.measure")[bar]
    length = re.search(r"h(-?[\d.]+)", str(found["d"]))
    assert length is not None
    return metres / float(length[1])


@pytest.mark.parametrize("type_id", TYPES)
def test_marks_stand_at_their_true_stations(type_id: str) -> None:
    """Distance of each mark from the nose, by the drawing's own scale bar, is that of the record within 5 mm and half
    a printed decimal of the SVG."""
    airframe, svg = _airframe(type_id), _svg(type_id)
    scale = _metres_per_unit(svg, 1.0, 0)
    unit = 0.001 if airframe.datum.unit == "mm" else 0.0254
    profile = said(airframe.profile)
    assert profile is not None
    outline = svg.select_one("polygon.fuselage")
    assert outline is not None
    nose_x = min(float(pair.split(",")[0]) for pair in str(outline["points"]).split())
    nose_fs = float(profile.sections[0].fs)
    points = entries(airframe.load_points)
    marks = svg.select("a.mark")
    assert len(marks) == len(points)
    for mark in marks:
        name = str(mark["href"]).removeprefix("#load-point-")
        place = said(points[name].place)
        assert place is not None
        fs = said(place.fs)
        assert fs is not None
        assert fs.middle is not None
        dot = mark.select_one("circle.point")
        assert dot is not None
        (x,) = _numbers(dot, "cx")
        drawn_m, true_m = (x - nose_x) * scale, (float(fs.middle) - nose_fs) * unit
        assert abs(drawn_m - true_m) < 0.005 + 0.1 * scale


@pytest.mark.parametrize("type_id", TYPES)
def test_both_scale_bars_say_the_same(type_id: str) -> None:
    """One foot is 0.3048 m exactly (NIST SP 811, appendix B)."""
    svg = _svg(type_id)
    assert _metres_per_unit(svg, 1.0, 0) == pytest.approx(_metres_per_unit(svg, 0.3048, 1), rel=0.005)


@pytest.mark.parametrize("type_id", TYPES)
def test_numbers_stay_on_the_sheet_and_apart(type_id: str) -> None:
    svg = _svg(type_id)
    width, height = (float(part) for part in str(svg["viewbox"]).split()[2:])
    assert width == WIDTH
    circles = [_numbers(circle, "cx", "cy", "r") for circle in svg.select("circle.number")]
    for x, y, radius in circles:
        assert radius <= x <= width - radius
        assert radius <= y <= height - radius
    for index, (x, _, radius) in enumerate(circles):
        for other_x, _, other_radius in circles[:index]:
            assert abs(x - other_x) >= radius + other_radius


@pytest.mark.parametrize("type_id", TYPES)
def test_the_outline_closes_and_ends_are_written(type_id: str) -> None:
    svg = _svg(type_id)
    outline = svg.select_one("polygon.fuselage")
    assert outline is not None
    profile = said(_airframe(type_id).profile)
    assert profile is not None
    assert len(str(outline["points"]).split()) == 2 * len(profile.sections)
    assert {text.get_text() for text in svg.select("text.end")} == {"NOSE", "LEFT SIDE", "TAIL"}


def test_crowded_points_are_spread() -> None:
    """Ten points at one station: their numbers must still not overlap, and none may leave the sheet."""
    airframe = _airframe(TYPES[0])
    name, point = next(iter(entries(airframe.load_points).items()))
    crowd = {f"{name}-{index}": point for index in range(10)}
    drawn = side_view(airframe.model_copy(update={"load_points": crowd}), lambda name: f"#{name}")
    assert drawn is not None
    places = sorted(mark.label_x for mark in drawn[1])
    assert len(places) == 10
    assert all(right - left >= 24 for left, right in itertools.pairwise(places))
    assert places[0] >= 12
    assert places[-1] <= WIDTH - 12


def test_no_outline_no_drawing() -> None:
    airframe = _airframe(TYPES[0])
    assert side_view(airframe.model_copy(update={"profile": NonValue.UNKNOWN}), str) is None


def test_the_same_record_gives_the_same_text() -> None:
    airframe = _airframe(TYPES[0])
    assert side_view(airframe, str) == side_view(airframe, str)


def test_free_words_cannot_leave_their_element() -> None:
    """An id is refused by the reader; the drawing escapes all the same."""
    airframe = _airframe(TYPES[0])
    _, point = next(iter(entries(airframe.load_points).items()))
    drawn = side_view(
        airframe.model_copy(update={"load_points": {'"><script>x</script>': point}}), lambda name: f"#{name}"
    )
    assert drawn is not None
    assert BeautifulSoup(drawn[0], "html.parser").script is None


def _points_of(element: Tag) -> list[tuple[float, float]]:
    """Every point that a polygon or a path names; all paths here are absolute but legs and scale bars."""
    pairs = re.findall(r"(-?[\d.]+),(-?[\d.]+)", str(element.get("points") or element["d"]))
    return [(float(x), float(y)) for x, y in pairs]


@pytest.mark.parametrize("type_id", TYPES)
def test_everything_of_the_outline_is_drawn_once(type_id: str) -> None:
    profile = said(_airframe(type_id).profile)
    assert profile is not None
    svg = _svg(type_id)
    kinds = [surface.kind for surface in profile.surfaces.values()]
    for kind in ("wing", "tailplane", "strut", "wire"):
        assert len(svg.select(f".{kind}")) == kinds.count(kind)
    assert len(svg.select(".fin")) == sum(kind in ("fin", "ventral fin", "winglet") for kind in kinds)
    assert len(svg.select(".body")) == len(profile.bodies)
    assert len(svg.select(".gear")) == len(profile.gear)


@pytest.mark.parametrize("type_id", TYPES)
def test_nothing_of_the_outline_leaves_the_sheet(type_id: str) -> None:
    svg = _svg(type_id)
    height = float(str(svg["viewbox"]).split()[3])
    for element in svg.select("polygon, path.wing, path.tailplane, path.strut, path.wire, path.body"):
        for x, y in _points_of(element):
            assert 0 <= x <= WIDTH
            assert 24 <= y <= height - 24  # between the numbers and the words below


def test_struts_and_bodies_stand_where_the_record_says() -> None:
    """The Coble's pod is over its wing, its strut runs from the hull to the wing, its float hangs below the wing."""
    svg = _svg("brinemarsh-coble")
    profile = said(_airframe("brinemarsh-coble").profile)
    assert profile is not None
    scale = 1000 * _metres_per_unit(svg, 1.0, 0)
    outline = svg.select_one("polygon.fuselage")
    assert outline is not None
    nose_x = min(x for x, _ in _points_of(outline))
    keel_y = max(y for _, y in _points_of(outline))  # waterline 0

    def box(element: Tag) -> list[float]:
        points = _points_of(element)
        xs, ys = [(x - nose_x) * scale for x, _ in points], [(keel_y - y) * scale for _, y in points]
        return [min(xs), max(xs), min(ys), max(ys)]

    pod, hung = svg.select(".body")
    strut = svg.select(".strut")[0]
    assert box(pod) == pytest.approx([3050, 3900, 2050, 2550], abs=15)
    assert box(hung) == pytest.approx([2500, 3600, 900, 1250], abs=15)
    assert box(strut) == pytest.approx([2900, 3100, 700, 1640], abs=15)


def test_a_thin_strut_and_a_wire_are_strokes_from_the_lower_to_the_upper_wing() -> None:
    svg = _svg("maplewick-gavotte")
    ends = {kind: [_points_of(element) for element in svg.select(f"path.{kind}")] for kind in ("strut", "wire")}
    assert [len(found) for found in ends.values()] == [4, 2]
    for root, tip in (*ends["strut"], *ends["wire"]):
        assert root[1] > tip[1]
