"""Cutting windows out of records: what is behind a side, what is left of it, and every reason why there is none."""

from __future__ import annotations

from typing import Any

import pytest

from hardpoint.figures.behind import behind_skin
from hardpoint.figures.worked import Case, Figure, Unsaid, Worked
from hardpoint.figures.workings.reaching import reaches, skin_of
from hardpoint.figures.workings.tools import TOPIC as TOOLS
from hardpoint.figures.workings.windows import TOPIC, side_windows
from hardpoint.records.known import entries
from tests.figures.changed import GONE, case
from tests.site.support import names

SIDE = "zones.side-wall.left"


def _worked(given: Case) -> dict[str, Worked]:
    return {figure.id: figure for figure in TOPIC.work(given)}


def _mm(worked: dict[str, Worked], window: str) -> tuple[float, ...]:
    ends = [worked[f"windows.{window}.{end}"] for end in ("from", "to", "above", "below")]
    assert all(isinstance(end, Figure) for end in ends)
    return tuple(round(1000 * end.value[0], 6) for end in ends if isinstance(end, Figure))


def test_the_side_wall_by_hand() -> None:
    """FS 1500 to 1750 above WL 380. The sill (WL 640 to 690, kept 20) parts it: below WL 620 and above WL 710. The rod
    of the red knob (to FS 1500, WL 580 to 640, kept 30) reaches to FS 1530; the airbrake rod (WL 300 to 360, kept 30)
    to WL 390. The outline ends at WL 780."""
    worked = _worked(case("aldermoss-hushwing"))
    for tool in ("hand-saw", "sabre-saw"):
        assert _mm(worked, f"side-wall.left.{tool}.1") == (1500, 1750, 710, 780)
        assert _mm(worked, f"side-wall.left.{tool}.2") == (1530, 1750, 390, 620)
    assert "windows.side-wall.left.combination-tool.1.from" not in worked, "it cuts no glass fibre"
    assert "windows.side-wall.left.hand-saw.3.from" not in worked


def test_ends_are_rounded_into_the_window() -> None:
    figures = _worked(case("aldermoss-hushwing"))
    for id_, figure in figures.items():
        if isinstance(figure, Figure):
            assert figure.rounded == ("up" if id_.endswith((".from", ".above")) else "down")


def test_the_right_side_is_unknown() -> None:
    """Demo question 9: cut the right side? UNKNOWN, no window."""
    worked = _worked(case("aldermoss-hushwing"))
    right = {id_: figure for id_, figure in worked.items() if ".right" in id_ and "side-wall" in id_}
    assert set(right) == {"windows.side-wall.right", "windows.side-wall-low.right"}
    for figure in right.values():
        assert isinstance(figure, Unsaid)
        assert not figure.refused
        assert figure.reason == "whether it may be cut is unknown"


BATTERY = {"chemistry": "lead-acid", "voltage": "12 V", "cut_by": "not fitted", "stays_live": "nothing"}
TANK = {"holds": "avgas", "capacity": "10 L", "lines": {}}
ROCKET = {"kind": "rocket parachute", "handle": "unknown", "handle_place": "unknown", "state": "unknown"}
AWAY = {"cable": {"path": [{"fs": "5000", "side": "right"}]}, "place": {"fs": "5000", "side": "right"}}
AWAY |= {"exit_direction": {"towards": "aft", "raised": "60 deg", "through": "hatch"}}

NONE: list[tuple[dict[str, Any], dict[str, Any], str, bool]] = [
    ({f"{SIDE}.cut": "unknown"}, {}, "whether it may be cut is unknown", False),
    ({SIDE: {"cut": "avoid", "listing": "told"}}, {}, "the record says avoid", True),
    ({f"{SIDE}.cut": "never"}, {}, "the record says never: wall beside the pilot's upper arm", True),
    ({f"{SIDE}.listing": "from drawing"}, {}, "known in part only (listing: from drawing)", False),
    ({f"{SIDE}.listing": "walked in part"}, {}, "known in part only (listing: walked in part)", False),
    ({f"{SIDE}.listing": "unknown"}, {}, "known in part only (listing: unknown)", False),
    ({f"{SIDE}.behind": "unknown"}, {}, "what lies behind is unknown", False),
    ({f"{SIDE}.behind": GONE}, {}, "what lies behind is unknown", False),
    ({f"{SIDE}.behind.box": "unknown"}, {}, "it can lie anywhere behind it: box (unknown)", False),
    ({f"{SIDE}.behind.box": {"kind": "equipment", "fs": "unknown", "what": "a box"}}, {}, "behind it: a box", False),
    ({"batteries.new": BATTERY | {"place": "unknown"}}, {}, "it can lie anywhere behind it: battery new", False),
    ({"batteries.new": "unknown"}, {}, "it can lie anywhere behind it: battery new (unknown)", False),
    ({"tanks.new": TANK | {"place": "unknown"}}, {}, "it can lie anywhere behind it: tank new", False),
    ({"tanks": "unknown"}, {}, "it can lie anywhere behind it: a tank (unknown)", False),
    ({"pyrotechnics.rocket": ROCKET | AWAY | {"cable": "unknown"}}, {}, "anywhere behind it: cable of rocket", False),
    ({"pyrotechnics.rocket": ROCKET | AWAY | {"exit_direction": "unknown"}}, {}, "it: way out of rocket", False),
    ({"loaded_parts": "unknown"}, {}, "it can lie anywhere behind it: a loaded part (unknown)", False),
    ({"tanks.new": TANK | {"place": {"fs": "1400 to 1700", "side": "both"}}}, {}, "left beside: tank new", True),
    ({"zones.side-wall.skin": "unknown"}, {}, "its skin is unknown", False),
    ({"zones.side-wall.skin.material": "unknown"}, {}, "the material of its skin is unknown", False),
    ({"zones.side-wall.skin.thickness": "unknown"}, {}, "the thickness of its skin is unknown", False),
    ({"zones.side-wall.skin.thickness": "95 mm"}, {}, "no tool of the station goes through glass fibre of 95", False),
    ({"zones.side-wall.skin.material": "titanium"}, {}, "no tool of the station goes through titanium of 5 mm", False),
    ({}, {"tools": "unknown"}, "the station has not said which tools it has", False),
    ({}, {"margins": "unknown"}, "the station has stated no margins", False),
    ({}, {"margins.longeron": GONE}, "the station keeps no margin from: longeron", False),
    ({}, {"margins.longeron": "300 mm"}, "with the station's margins nothing is left beside", True),
]  # fmt: skip


@pytest.mark.parametrize(("changes", "station", "reason", "refused"), NONE, ids=[reason for _, _, reason, _ in NONE])
def test_there_is_no_window(changes: dict[str, Any], station: dict[str, Any], reason: str, refused: bool) -> None:
    changes = {"pyrotechnics": {}} | changes if any("rocket" in at for at in changes) else changes
    worked = _worked(case("aldermoss-hushwing", changes, station))
    found = worked["windows.side-wall.left"]
    assert isinstance(found, Unsaid)
    assert reason in found.reason
    assert found.refused is refused
    assert not [id_ for id_ in worked if id_.startswith("windows.side-wall.left.")]


def test_no_station_no_window() -> None:
    found = _worked(Case(case("aldermoss-hushwing").airframe))["windows.side-wall.left"]
    assert isinstance(found, Unsaid)
    assert found.reason == "the station has stated no margins"


def test_unknown_zones_are_said_once() -> None:
    (found,) = TOPIC.work(case("aldermoss-hushwing", {"zones": "unknown"}))
    assert isinstance(found, Unsaid)
    assert found.path == ("zones",)


@pytest.mark.parametrize(
    ("station", "reason", "refused"),
    [
        ({"tools.hand-saw.jaw": "300 mm"}, "nothing that is left is as wide as the tool: 300 mm", True),
        ({"tools.hand-saw.jaw": "unknown"}, "how wide this tool is is unknown", False),
        ({"tools.hand-saw.thickest": "unknown"}, "how thick this tool cuts is unknown", False),
    ],
)
def test_a_tool_without_a_window_says_why(station: dict[str, Any], reason: str, refused: bool) -> None:
    worked = _worked(case("aldermoss-hushwing", {}, station))
    found = worked["windows.side-wall.left.hand-saw"]
    assert isinstance(found, Unsaid)
    assert (found.reason, found.refused) == (reason, refused)
    assert _mm(worked, "side-wall.left.sabre-saw.2") == (1530, 1750, 390, 620)


@pytest.mark.parametrize(("top", "start"), [("314", 1530), ("320", 1645)], ids=["stays below", "reaches into it"])
def test_a_margin_is_kept_in_height_too(top: str, start: float) -> None:
    """Kept 75 mm: to WL 389 it stays below what is left from WL 390 on, to WL 395 it takes FS 1485 to 1645 of it."""
    pipe = {"kind": "fuel line", "fs": "1560 to 1570", "wl": f"300 to {top}", "what": "a pipe"}
    worked = _worked(case("aldermoss-hushwing", {f"{SIDE}.behind.pipe": pipe}))
    assert _mm(worked, "side-wall.left.hand-saw.2") == (start, 1750, 390, 620)


def test_another_zone_over_the_same_skin_takes_its_stretch() -> None:
    left = {"cut": "unknown", "listing": "unknown"}
    patch = {"fs": "1600 to 1650", "wl": "400 to 500", "structure": "patch", "left": left, "right": left}
    worked = _worked(case("aldermoss-hushwing", {"zones.patch": patch}))
    assert _mm(worked, "side-wall.left.hand-saw.2")[:2] == (1530, 1600)


def test_a_tool_that_sparks_says_so_and_one_that_is_not_made_for_tubes() -> None:
    changes = {"zones.side-wall.skin.tube": "25 mm"}
    worked = _worked(case("aldermoss-hushwing", changes))
    saw, hand = worked["windows.side-wall.left.sabre-saw.1.from"], worked["windows.side-wall.left.hand-saw.1.from"]
    assert isinstance(saw, Figure)
    assert isinstance(hand, Figure)
    assert "throws sparks" in saw.caution
    assert "tubes" not in saw.caution, "it cuts steel tube up to 90 mm"
    assert "sparks" not in hand.caution
    assert "tubes of 25 mm lie under the skin, and this tool is not made for them" in hand.caution


@pytest.mark.parametrize("type_id", names("types"))
def test_no_window_of_the_demo_meets_anything_with_its_margin(type_id: str) -> None:
    """As rectangles of stations and heights, one against the other: not by the formula that made them."""
    given = case(type_id)
    behind = behind_skin(given.airframe)
    for side in side_windows(given):
        zone = entries(given.airframe.zones)[side.zone]
        skin = skin_of(given.airframe, side.zone, zone, side.side)
        for window in side.windows:
            low, high = window.clear.heights or (float("-inf"), float("inf"))
            assert skin.span.value[0] <= window.clear.start < window.clear.end <= skin.span.value[1]
            for reach in reaches(given, behind, side.zone, side.side, skin):
                beside = (
                    window.clear.end <= reach.stretch[0] - reach.kept + 1e-9
                    or window.clear.start >= reach.stretch[1] + reach.kept - 1e-9
                    or high <= reach.heights[0] - reach.kept + 1e-9
                    or low >= reach.heights[1] + reach.kept - 1e-9
                )
                assert beside, (side.zone, side.side, window.clear, reach.item.what)


def test_panes_against_tools() -> None:
    """A pane of 9 mm: the hand saw goes through 60 mm, the blunt tool through 5 mm."""
    found = {figure.id: figure for figure in TOOLS.work(case("drosmund-halberd"))}
    saw, blunt = found["tools.canopy.hand-saw"], found["tools.canopy.blunt-tool"]
    assert isinstance(saw, Figure)
    assert saw.value == pytest.approx((0.051, 0.051))
    assert isinstance(blunt, Unsaid)
    assert blunt.refused
    assert blunt.reason == "it is 9 mm thick, and this tool goes through 5 mm"


@pytest.mark.parametrize(
    ("changes", "station", "reason"),
    [
        ({"canopies.canopy.thickness": "unknown"}, {}, "how thick it is is unknown"),
        ({"canopies.canopy.material": "unknown"}, {}, "what it is made of is unknown"),
        ({"canopies.canopy.material": "rubber"}, {}, "no tool of the station is made for rubber"),
        ({}, {"tools": "unknown"}, "the station has not said which tools it has"),
    ],
)
def test_a_pane_that_cannot_be_matched_says_why(changes: dict[str, Any], station: dict[str, Any], reason: str) -> None:
    found = {figure.id: figure for figure in TOOLS.work(case("drosmund-halberd", changes, station))}["tools.canopy"]
    assert isinstance(found, Unsaid)
    assert found.reason == reason


def _behind(type_id: str, path: str, changes: dict[str, Any] | None = None) -> list[tuple[Any, Any, bool]]:
    found = behind_skin(case(type_id, changes).airframe)
    return [(one.fs.low, one.fs.high, one.certain) for one in found if ".".join(map(str, one.path)) == path]


OUT = "pyrotechnics.rocket.exit_direction"


@pytest.mark.parametrize(
    ("changes", "stretch"),
    [
        ({}, (2400, 3047, True)),
        ({f"{OUT}.towards": "forward"}, (1753, 2400, True)),
        ({f"{OUT}.towards": "pilot's left"}, (2400, 2400, True)),
        ({f"{OUT}.raised": "unknown"}, (2400, None, False)),
        ({f"{OUT}.raised": "0 deg"}, (2400, None, False)),
        ({"profile": "unknown"}, (2400, None, False)),
        ({OUT: "unknown"}, (None, None, False)),
        ({"pyrotechnics.rocket.place": "unknown"}, (None, None, False)),
    ],
)
def test_the_way_out_of_a_rocket_counts(changes: dict[str, Any], stretch: tuple[Any, ...]) -> None:
    """By hand: from FS 2400 aft, 60 deg up through at most 1120 mm (WL 170 to 1290): 1120 / tan 60 deg = 646.6 mm."""
    assert _behind("skellrigg-wicket", OUT, changes) == [stretch]


@pytest.mark.parametrize("state", ["fired", "removed"])
def test_a_rocket_that_is_gone_has_no_way_out(state: str) -> None:
    assert _behind("skellrigg-wicket", OUT, {"pyrotechnics.rocket.state": state}) == []


def test_batteries_and_their_cables_count() -> None:
    cable = "batteries.main.cable"
    assert _behind("skellrigg-wicket", "batteries.main") == [(680, 680, True)]
    assert _behind("skellrigg-wicket", cable) == [], "told behind its zones; a way that nobody asked for is no unknown"
    assert _behind("skellrigg-wicket", cable, {cable: "unknown"}) == [(None, None, False)]
    way = {"path": [{"fs": "900", "side": "right"}]}
    assert _behind("skellrigg-wicket", cable, {cable: way}) == [(680, 900, True)]


def test_what_does_not_hurt_counts_as_well() -> None:
    assert _behind("skellrigg-wicket", "zones.cabin-rear.left.behind.aileron-rod") == [(1900, 2000, True)]
