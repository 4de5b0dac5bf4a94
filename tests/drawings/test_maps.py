"""Maps are in true scale: every mark is parsed back from the SVG text and held against the record."""

from __future__ import annotations

import itertools
import math
import re
from pathlib import Path

import pytest
from bs4 import BeautifulSoup, Tag
from shapely import Polygon, box

from hardpoint import load
from hardpoint.drawings.cut_map import cut_views, patterns
from hardpoint.drawings.geometry import Outline, outline_of
from hardpoint.drawings.labels import RADIUS
from hardpoint.drawings.maps import Drawn, map_views
from hardpoint.drawings.sheet import VIEWS, WIDTH, Sheet, View, sheet_of
from hardpoint.drawings.things import MAPS, Map, things
from hardpoint.findings import Path as At
from hardpoint.records.airframe import Airframe
from hardpoint.records.known import NonValue, entries, said

FLEET = load.fleet(Path(__file__).parents[2] / "fleet")
TYPES = sorted(FLEET.types)
ALL = [(type_id, map_) for type_id in TYPES for map_ in MAPS]


def _airframe(type_id: str) -> Airframe:
    return FLEET.types[type_id].airframe


def _href(path: At) -> str:
    return "#" + "-".join(map(str, path))


def _outline(type_id: str) -> Outline:
    outline = outline_of(_airframe(type_id))
    assert outline is not None
    return outline


def _views(type_id: str, map_: Map) -> tuple[Drawn, ...]:
    drawn = map_views(_airframe(type_id), map_, _href, VIEWS)
    assert len(drawn) == 3
    return drawn


def _soup(svg: str) -> Tag:
    found = BeautifulSoup(svg, "html.parser").svg
    assert found is not None
    return found


def _number(element: Tag, name: str) -> float:
    return float(str(element[name]))


@pytest.mark.parametrize("type_id", TYPES)
@pytest.mark.parametrize("view", VIEWS)
def test_load_points_stand_at_their_true_places(type_id: str, view: View) -> None:
    """Parsed back from the circles of the SVG through the sheet's scale: within 5 mm of the record."""
    airframe = _airframe(type_id)
    drawn = _views(type_id, "holds")[VIEWS.index(view)]
    unit = 1.0 if airframe.datum.unit == "mm" else 25.4
    found = [
        drawn.sheet.back(_number(dot, "cx"), _number(dot, "cy"))
        for dot in _soup(drawn.svg).select('[data-layer="load-points"] > circle')
    ]
    wanted = []
    for point in entries(airframe.load_points).values():
        place = said(point.place)
        fs, wl, bl = (said(getattr(place, key)) if place else None for key in ("fs", "wl", "bl"))
        if fs is None or wl is None or place is None:
            continue
        assert fs.middle is not None
        assert wl.middle is not None
        far = float(bl.middle or 0) * unit if bl else 0.0
        hands = {"both": (-far, far), "left": (-far,), "right": (far,)}.get(str(place.side), (0.0,))
        for hand in hands:
            if view == "plan":
                if bl is not None or place.side == "centre":
                    wanted.append((float(fs.middle) * unit, hand))
            elif hand * (-1 if view == "left" else 1) >= 0:
                wanted.append((float(fs.middle) * unit, float(wl.middle) * unit))
    assert wanted
    for place_ in wanted:
        assert min(math.dist(place_, other) for other in found) < 5, place_


@pytest.mark.parametrize(("type_id", "map_"), ALL)
def test_numbers_stay_on_the_sheet_apart_and_in_the_order_of_the_table(type_id: str, map_: Map) -> None:
    listed = things(_airframe(type_id), _outline(type_id), map_)
    assert [thing.number for thing in listed] == list(range(1, len(listed) + 1))
    for drawn in _views(type_id, map_):
        svg = _soup(drawn.svg)
        marks = svg.select("a.mark")
        circles = [(c, _number(c, "cx"), _number(c, "cy")) for c in svg.select("a.mark > circle")]
        assert len(circles) == len(marks) == len(drawn.numbers)
        for _, x, y in circles:
            assert RADIUS <= x <= WIDTH - RADIUS
            assert RADIUS <= y <= drawn.sheet.height - RADIUS
        for (_, x, y), (_, other_x, other_y) in itertools.combinations(circles, 2):
            assert math.dist((x, y), (other_x, other_y)) >= 2 * RADIUS
        by_number = {str(thing.number): thing for thing in listed}
        for mark in marks:
            thing = by_number[mark.find("text").get_text()]  # type: ignore[union-attr]
            assert mark["href"] == _href(thing.path)
            assert thing.words in mark.find("title").get_text()  # type: ignore[union-attr]


@pytest.mark.parametrize(("type_id", "map_"), ALL)
def test_everything_with_a_place_is_on_some_view(type_id: str, map_: Map) -> None:
    shown = {thing.number for drawn in _views(type_id, map_) for thing, _, _ in drawn.numbers}
    for thing in things(_airframe(type_id), _outline(type_id), map_):
        assert (thing.number in shown) == thing.drawn, thing.words


@pytest.mark.parametrize(("type_id", "map_"), ALL)
def test_no_leader_crosses_a_number_and_none_of_a_lane_cross_each_other(type_id: str, map_: Map) -> None:
    for drawn in _views(type_id, map_):
        placed = drawn.numbers
        for side in (-1, 1):
            lane = [(at, to) for _, at, to in placed if (at[1] - drawn.sheet.height / 2) * side > 0]
            ordered = sorted(lane, key=lambda one: one[0][0])
            assert [to[0] for _, to in ordered] == sorted(to[0] for _, to in ordered)


@pytest.mark.parametrize(("type_id", "map_"), ALL)
def test_words_are_twelve_units_high_and_ends_are_written(type_id: str, map_: Map) -> None:
    for drawn in _views(type_id, map_):
        told = {text.get_text() for text in _soup(drawn.svg).select("text")}
        assert {"NOSE", "TAIL", "1 m", "1 ft"} <= told
        assert drawn.view != "plan" or {"LEFT", "RIGHT"} <= told


@pytest.mark.parametrize("type_id", TYPES)
@pytest.mark.parametrize("view", VIEWS)
def test_both_scale_bars_say_the_same(type_id: str, view: View) -> None:
    """One foot is 0.3048 m exactly (NIST SP 811, appendix B)."""
    svg = _soup(_views(type_id, "holds")[VIEWS.index(view)].svg)
    metre, foot = (float(re.findall(r"h([\d.]+)", str(bar["d"]))[0]) for bar in svg.select("path.measure"))
    assert foot / metre == pytest.approx(0.3048, rel=0.002)


def test_the_nose_of_the_right_side_is_at_the_right() -> None:
    left, right, _ = _views(TYPES[0], "holds")
    assert left.sheet.at(0, 0)[0] < WIDTH / 2 < right.sheet.at(0, 0)[0]


@pytest.mark.parametrize("view", VIEWS)
def test_a_place_comes_back_from_the_sheet(view: View) -> None:
    sheet: Sheet = sheet_of(_outline("vostrelle-jinx"), view, 30, 40)
    assert sheet.back(*sheet.at(2345, 321)) == pytest.approx((2345, 321))


@pytest.mark.parametrize("type_id", TYPES)
def test_the_outline_has_the_length_and_the_areas_of_the_record(type_id: str) -> None:
    """Against shapely on an independent construction: strips between sections, and wings as half sums."""
    outline, airframe = _outline(type_id), _airframe(type_id)
    profile = said(airframe.profile)
    assert profile is not None
    strips = [
        (float(b.fs - a.fs)) * (float(a.top - a.floor) + float(b.top - b.floor)) / 2 * outline.mm**2
        for a, b in itertools.pairwise(profile.sections)
    ]
    assert outline.fuselage.area == pytest.approx(sum(strips))
    assert outline.fuselage.is_valid
    for surface in profile.surfaces.values():
        if surface.kind != "wing":
            continue
        chords = [float((end.high or 0) - (end.low or 0)) for end in (surface.root, surface.tip)]
        span = float((surface.bl.high or 0) - (surface.bl.low or 0))
        drawn = [shape.area.area for shape in outline.plan if shape.kind == "wing"]
        assert any(area == pytest.approx(sum(chords) / 2 * span * outline.mm**2) for area in drawn)
    low, _, high, _ = outline.fuselage.bounds
    assert (low, high) == (float(profile.sections[0].fs) * outline.mm, float(profile.sections[-1].fs) * outline.mm)


@pytest.mark.parametrize("type_id", TYPES)
def test_zones_are_cut_out_of_the_fuselage_and_do_not_overlap(type_id: str) -> None:
    drawn = cut_views(_airframe(type_id), _href, {})
    assert [view.side for view in drawn] == ["left", "right"]
    outline = _outline(type_id)
    for view in drawn:
        for zone in view.zones:
            assert zone.area.is_empty or outline.side_area.buffer(1).contains(zone.area)
        for one, other in itertools.combinations(view.zones, 2):
            assert one.area.intersection(other.area).area < 1
        assert len(_soup(view.svg).select("a.mark--zone")) == len(view.zones)
        words = _soup(view.svg).get_text()
        for zone in view.zones:
            assert f"{zone.number}" in words


@pytest.mark.parametrize("type_id", TYPES)
def test_labels_of_zones_do_not_touch(type_id: str) -> None:
    for view in cut_views(_airframe(type_id), _href, {}):
        boxes = [box(x - len(text) * 3.6, y - 6, x + len(text) * 3.6, y + 6) for (x, y), text in view.labels]
        for one, other in itertools.combinations(boxes, 2):
            assert one.intersection(other).area == 0
        for label in boxes:
            assert box(-1, 0, WIDTH + 1, view.sheet.height).contains(label)


def test_a_window_is_framed_where_it_was_worked_out_and_nowhere_else() -> None:
    jinx = _airframe("vostrelle-jinx")
    without = cut_views(jinx, _href, {})
    assert not any(_soup(view.svg).select("path.window") for view in without)
    left, right = cut_views(jinx, _href, {("cockpit-rear-sides", "right"): [(2700, 2880, 700, None)]})
    assert not _soup(left.svg).select("path.window")
    (frame,) = _soup(right.svg).select("path.window")
    corners = [right.sheet.back(float(x), float(y)) for x, y in re.findall(r"(-?[\d.]+),(-?[\d.]+)", str(frame["d"]))]
    assert Polygon(corners).bounds[0] == pytest.approx(2700, abs=5)
    assert Polygon(corners).bounds[2] == pytest.approx(2880, abs=5)
    assert Polygon(corners).bounds[1] == pytest.approx(700, abs=5)


def test_an_unknown_stretch_is_hatched_and_says_so() -> None:
    """The cable of the Wicket's rocket, FS 2100 to 2600, nobody knows where."""
    for drawn in _views("skellrigg-wicket", "harms"):
        svg = _soup(drawn.svg)
        (lost,) = svg.select("path.lost")
        xs = [drawn.sheet.back(float(x), 0)[0] for x, _ in re.findall(r"(-?[\d.]+),(-?[\d.]+)", str(lost["d"]))]
        assert (min(xs), max(xs)) == pytest.approx((2100, 2600), abs=5)
        assert "UNKNOWN" in svg.get_text()


def test_what_has_no_station_is_drawn_nowhere_and_told() -> None:
    jinx = _airframe("vostrelle-jinx")
    points = dict(entries(jinx.load_points))
    lost = points["truss-pair"].model_copy(update={"place": NonValue.UNKNOWN})
    airframe = jinx.model_copy(update={"load_points": points | {"truss-pair": lost}})
    drawn = map_views(airframe, "holds", _href, VIEWS)
    assert all("truss pair" not in view.svg for view in drawn)


def test_thirty_points_at_one_station_still_have_room() -> None:
    airframe = _airframe(TYPES[0])
    name, point = next(iter(entries(airframe.load_points).items()))
    crowd = {f"{name}-{index}": point for index in range(30)}
    for drawn in map_views(airframe.model_copy(update={"load_points": crowd}), "holds", _href, VIEWS):
        circles = [(_number(c, "cx"), _number(c, "cy")) for c in _soup(drawn.svg).select("a.mark > circle")]
        assert len(circles) >= 30
        assert all(math.dist(a, b) >= 2 * RADIUS for a, b in itertools.combinations(circles, 2))


def test_no_outline_no_drawing() -> None:
    airframe = _airframe(TYPES[0]).model_copy(update={"profile": NonValue.UNKNOWN})
    assert map_views(airframe, "holds", _href, VIEWS) == ()
    assert cut_views(airframe, _href, {}) == ()


def test_the_same_record_gives_the_same_text() -> None:
    airframe = _airframe(TYPES[0])
    assert map_views(airframe, "holds", _href, VIEWS) == map_views(airframe, "holds", _href, VIEWS)


def test_free_words_cannot_leave_their_element() -> None:
    """An id is refused by the reader; the drawing escapes all the same."""
    airframe = _airframe(TYPES[0])
    _, point = next(iter(entries(airframe.load_points).items()))
    altered = airframe.model_copy(update={"load_points": {'"><script>x</script>': point}})
    for drawn in map_views(altered, "holds", _href, VIEWS):
        assert BeautifulSoup(drawn.svg, "html.parser").script is None


@pytest.mark.parametrize("type_id", TYPES)
def test_everything_of_the_outline_is_drawn_once_from_the_side(type_id: str) -> None:
    profile = said(_airframe(type_id).profile)
    assert profile is not None
    svg = _soup(_views(type_id, "holds")[0].svg)
    kinds = [surface.kind for surface in profile.surfaces.values()]
    for kind in ("wing", "tailplane", "strut", "wire"):
        assert len(svg.select(f".outline .{kind}")) == kinds.count(kind)
    assert len(svg.select(".outline .fin")) == sum(kind in ("fin", "ventral fin", "winglet") for kind in kinds)
    assert len(svg.select(".outline .body")) == len(profile.bodies)
    assert len(svg.select(".outline .gear")) == len(profile.gear)


def test_every_hatch_that_is_filled_with_is_defined() -> None:
    style = (Path(__file__).parents[2] / "plugins/hardpoint/assets/hardpoint.css").read_text(encoding="utf-8")
    used = set(re.findall(r"url\(#(hatch-[a-z]+)\)", style))
    assert used == set(re.findall(r'id="(hatch-[a-z]+)"', "".join(patterns())))
