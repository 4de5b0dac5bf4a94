"""Sketches of handles: every kind is drawn, and the arrow in the SVG points the way that the record says."""

from __future__ import annotations

import math
import re
from typing import get_args

import pytest
from bs4 import BeautifulSoup, Tag

from hardpoint.drawings.course import course
from hardpoint.drawings.handle import Sketch, control_sketch, draw, exit_sketch
from hardpoint.drawings.shapes import SHAPES
from hardpoint.records.controls import Control, ControlKind
from hardpoint.records.exits import Exit, HandleKind
from hardpoint.records.ways import OF_THE_AIRFRAME, OF_THE_PLACE

CONTROL = {
    "function": "master",
    "place": {"panel": "left sill", "side": "left"},
    "kind": "toggle",
    "looks": "red",
    "guard": "none",
    "off_is": "towards floor",
    "beyond_off": "nothing",
    "alone": "suffices",
    "success": "click",
}
EXIT = {
    "opens": "canopy",
    "way_in": "handle",
    "from": "outside",
    "place": {"fs": "2400", "side": "right"},
    "other_side": "unknown",
    "label": "unknown",
    "looks": "unknown",
    "kind": "lever",
    "latches_released": "2",
    "works": {"upright": "opens", "inverted": "opens"},
    "success": "unknown",
}
NOSE_UP = {"forward": (0, -1), "aft": (0, 1), "pilot's left": (-1, 0), "pilot's right": (1, 0)}
"""Directions on a sheet whose top is forward, seen from the canopy side: common practice of plan views."""
CANOPY_UP = {"towards canopy": (0, -1), "towards floor": (0, 1), "pilot's left": (-1, 0), "pilot's right": (1, 0)}
"""Directions on a sheet whose top is towards the canopy, as the pilot looks forward."""


def _svg(text: str) -> Tag:
    svg = BeautifulSoup(text, "html.parser").svg
    assert svg is not None
    return svg


def _control(**changes: object) -> Tag:
    return _svg(control_sketch(Control.model_validate(CONTROL | changes)))


def _exit(*steps: dict[str, str], **changes: object) -> str:
    return exit_sketch(Exit.model_validate(EXIT | {"steps": list(steps)} | changes))


def _numbers(text: str) -> list[float]:
    return [float(number) for number in re.findall(r"-?[\d.]+", text)]


def _arrow(svg: Tag) -> tuple[float, float]:
    """Where the arrow leads, as a direction of length 1, its head held against its shaft."""
    (shaft,), (head,) = svg.select("path.arrow"), svg.select("path.barb")
    numbers = _numbers(str(shaft["d"]))
    start, tip = numbers[:2], numbers[-2:]
    left_x, left_y, tip_x, tip_y, right_x, right_y = _numbers(str(head["d"]))
    assert [tip_x, tip_y] == tip, "the head is not at the end of the shaft"
    x, y = tip[0] - start[0], tip[1] - start[1]
    assert (tip_x - (left_x + right_x) / 2) * x + (tip_y - (left_y + right_y) / 2) * y > 0, "the head is turned round"
    return round(x / math.hypot(x, y), 2), round(y / math.hypot(x, y), 2)


def _texts(svg: Tag) -> list[str]:
    return [text.get_text() for text in svg.select("text")]


def test_every_kind_of_a_record_has_a_shape_of_its_own() -> None:
    kinds = {*get_args(ControlKind), *get_args(HandleKind)}
    assert kinds == set(SHAPES)
    drawn = {draw(Sketch(kind, course("aft", None, None), "aft = off")).split("</desc>")[1] for kind in kinds}
    assert len(drawn) == len(kinds)


@pytest.mark.parametrize("kind", get_args(ControlKind))
@pytest.mark.parametrize(
    "way",
    ["towards floor", "free end outboard to aft", "out of the panel", "clockwise", "away from the sill", "unknown"],
)
def test_each_sketch_is_small_named_and_sized(kind: str, way: str) -> None:
    more = {"seen_from": "facing it"} if way == "clockwise" else {}
    text = control_sketch(Control.model_validate(CONTROL | {"kind": kind, "off_is": way, "guard": "red cover"} | more))
    svg = _svg(text)
    assert len(text.encode()) < 1100
    assert svg["role"] == "img"
    assert svg.title is not None
    assert svg.title.get_text() == f"Sketch: {kind}"
    assert svg.desc is not None
    assert str(svg["viewbox"]).split()[2:] == [svg["width"], svg["height"]]
    assert int(str(svg["width"])) == 160
    assert int(str(svg["height"])) < 150
    for text_ in svg.select("text"):
        assert 11 < float(str(text_["y"])) <= int(str(svg["height"])) or text_.get_text() == "UNKNOWN"
        assert len(text_.get_text()) <= 26


def _expected() -> list[tuple[str, str, str, tuple[float, float]]]:
    half = round(math.sqrt(0.5), 2)
    return [
        *((way, "left", "top: forward", NOSE_UP[way]) for way in ("forward", "aft")),
        *((way, "left", "top: towards canopy", CANOPY_UP[way]) for way in CANOPY_UP),
        *((f"free end {way}", "left", "top: forward", NOSE_UP[way]) for way in ("forward", "aft")),
        ("outboard", "left", "top: towards canopy", (-1, 0)),
        ("outboard", "right", "top: towards canopy", (1, 0)),
        ("outboard", "both", "the left one of the pair", (-1, 0)),
        ("inboard", "left", "top: towards canopy", (1, 0)),
        ("inboard", "right", "top: towards canopy", (-1, 0)),
        ("aft and outboard", "right", "top: forward", (half, half)),
        ("towards floor and aft", "left", "left: forward", (half, half)),
        ("forward and towards canopy", "left", "left: forward", (-half, -half)),
        ("towards canopy and inboard", "right", "top: towards canopy", (-half, -half)),
        ("away from the sill", "left", "top: away from the sill", (0, -1)),
        ("towards the sill", "left", "top: away from the sill", (0, 1)),
        ("out of the panel", "left", "panel edge-on, no top", (1, 0)),
        ("into the panel", "left", "panel edge-on, no top", (-1, 0)),
        ("out of the skin", "left", "skin edge-on, no top", (1, 0)),
        ("into the skin", "left", "skin edge-on, no top", (-1, 0)),
    ]


@pytest.mark.parametrize(("way", "side", "top", "points"), _expected())
def test_the_arrow_points_the_way_that_the_record_says(
    way: str, side: str, top: str, points: tuple[float, float]
) -> None:
    svg = _control(off_is=way, place={"panel": "panel", "side": side})
    assert _arrow(svg) == points
    texts = _texts(svg)
    assert top in texts
    assert f"{way} = off" in " ".join(texts)
    assert not any(re.search(r"(?i)\b(up|down|upper|lower)\b", text) for text in texts)


def test_no_way_of_the_vocabulary_was_forgotten() -> None:
    assert {way for way, *_ in _expected()} >= {*OF_THE_AIRFRAME, *OF_THE_PLACE}


@pytest.mark.parametrize("observer", ["pilot", "facing it", "canopy side"])
@pytest.mark.parametrize("way", ["clockwise", "anticlockwise"])
def test_a_turn_goes_round_as_its_observer_sees_it(way: str, observer: str) -> None:
    """SVG 1.1, 8.3.8: sweep-flag 1 draws towards increasing angles, which is clockwise, for y grows downwards."""
    svg = _control(kind="key", off_is=way, seen_from=observer)
    (shaft,) = svg.select("path.arrow")
    sweep = re.search(r"A[\d.]+,[\d.]+ 0 0 ([01])", str(shaft["d"]))
    assert sweep
    assert sweep[1] == ("1" if way == "clockwise" else "0")
    x, _ = _arrow(svg)
    assert x == (1 if way == "clockwise" else -1), "over the top of the sketch"
    seen = {"pilot": "as the pilot sees it", "facing it": "as seen facing it", "canopy side": "seen from canopy side"}
    assert seen[observer] in _texts(svg)


@pytest.mark.parametrize(
    ("way", "side", "clockwise"),
    [
        ("free end outboard to aft", "left", False),
        ("free end outboard to aft", "right", True),
        ("free end forward to pilot's right", "left", True),
        ("free end towards canopy to pilot's left", "left", False),
    ],
)
def test_a_free_end_goes_the_short_way_round(way: str, side: str, clockwise: bool) -> None:
    (shaft,) = _control(kind="lever", off_is=way, place={"panel": "wall", "side": side}).select("path.arrow")
    x0, y0, _, _, _, _, sweep, x1, y1 = _numbers(str(shaft["d"]))
    assert sweep == int(clockwise)
    middle = next(
        (x, y)
        for x, y in ((80.0, 42.0),)
        if math.isclose(math.hypot(x0 - x, y0 - y), math.hypot(x1 - x, y1 - y), abs_tol=0.1)
    )
    cross = (x0 - middle[0]) * (y1 - middle[1]) - (y0 - middle[1]) * (x1 - middle[0])
    assert (cross > 0) == clockwise


@pytest.mark.parametrize("side", ["centre", "unknown"])
def test_a_free_end_whose_begin_has_no_side_is_drawn_at_its_end(side: str) -> None:
    place = {"panel": "wall", "side": side}
    svg = _control(kind="lever", off_is="free end outboard to aft", place=place)
    assert _arrow(svg) == (0, 1)
    assert "L" in str(svg.select("path.arrow")[0]["d"])
    assert _control(kind="lever", off_is="free end aft to outboard", place=place).select("path.arrow") == []


def test_opposite_ends_have_a_straight_arrow_for_no_way_round_is_told() -> None:
    assert _arrow(_control(off_is="free end forward to aft")) == (0, 1)


@pytest.mark.parametrize("way", ["unknown", "not fitted"])
def test_an_unknown_way_has_the_word_and_no_arrow(way: str) -> None:
    svg = _control(off_is=way)
    assert svg.select("path.arrow, path.barb") == []
    assert "UNKNOWN" in _texts(svg)
    assert "the sketch has no top" in _texts(svg)
    assert svg.desc is not None
    assert "which way is off: UNKNOWN" in svg.desc.get_text()


@pytest.mark.parametrize("side", ["centre", "unknown", None])
def test_outboard_without_a_side_has_no_arrow(side: str | None) -> None:
    place = {"panel": "console"} | ({"side": side} if side else {})
    svg = _control(off_is="outboard", place=place)
    assert svg.select("path.arrow") == []
    assert {"the sketch has no top", "outboard = off"} <= set(_texts(svg))


def test_what_dumps_says_works_and_not_off() -> None:
    svg = _control(off_is="not applicable", works_by="aft", kind="lever")
    assert "aft = works" in _texts(svg)
    assert _arrow(svg) == (0, 1)
    assert "UNKNOWN" in _texts(_control(off_is="not applicable", kind="lever"))


def test_a_guard_is_drawn_only_where_there_is_one_and_an_unknown_one_is_named() -> None:
    assert "dashed: guard" in _texts(_control(guard="hinged cover, lift it first"))
    for none in ("none", "not fitted", "not applicable"):
        svg = _control(guard=none)
        assert svg.select("[stroke-dasharray]") == []
        assert not any("guard" in text for text in _texts(svg))
    assert "guard: UNKNOWN" in _texts(_control(guard="unknown"))


def test_an_unknown_kind_is_said() -> None:
    svg = _control(kind="unknown")
    assert "what it is: UNKNOWN" in _texts(svg)
    assert _arrow(svg) == (0, 1)


def test_an_exit_shows_the_first_step_that_moves_its_handle() -> None:
    look = {"do": "look", "what": "where the head is"}
    other = {"do": "slide", "what": "bar inside the sill", "way": "forward"}
    own = {"do": "pull", "what": "red lever at the hinge", "way": "outboard"}
    svg = _svg(_exit(look, other, own))
    assert "step 3: pull outboard" in _texts(svg)
    assert _arrow(svg) == (1, 0)
    assert _exit(look, other) == "", "an arrow of another part's step would mislead"
    assert _exit(own, kind="unknown") == ""
    unknown = _svg(_exit(own | {"way": "unknown"}))
    assert "UNKNOWN" in _texts(unknown)
    assert unknown.select("path.arrow") == []


def test_an_exit_whose_steps_are_unknown_has_no_arrow() -> None:
    svg = _svg(exit_sketch(Exit.model_validate(EXIT | {"steps": "unknown"})))
    assert "UNKNOWN" in _texts(svg)
    assert svg.select("path.arrow") == []


def test_an_exit_that_does_not_tell_its_kind_has_no_sketch() -> None:
    step = {"do": "pull", "what": "lever", "way": "aft"}
    assert exit_sketch(Exit.model_validate({k: v for k, v in EXIT.items() if k != "kind"} | {"steps": [step]})) == ""


@pytest.mark.parametrize(
    ("way", "at_the_head"), [("towards canopy", True), ("forward", True), ("towards floor", False), ("aft", False)]
)
def test_the_words_of_off_stand_at_the_arrow_s_head(way: str, at_the_head: bool) -> None:
    """Below an arrow that leads to the upper edge, "= off" would be read of the lower end."""
    svg = _control(off_is=way)
    texts = svg.find_all("text")
    label = next(text for text in texts if text.get_text().endswith("= off"))
    group = svg.find("g")
    assert isinstance(group, Tag)
    strokes = float(re.findall(r"[\d.]+", str(group["transform"]))[1])
    assert (float(str(label["y"])) < strokes) == at_the_head
