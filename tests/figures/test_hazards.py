"""What a cut could meet: everything that the record says, and everything that it leaves open, over all it can be."""

from __future__ import annotations

import pathlib
from decimal import Decimal
from typing import Any

import pytest

from hardpoint.figures.hazards import ANYWHERE, CutHazard, covering, cut_hazards
from hardpoint.load.documents import read
from hardpoint.records.airframe import Airframe
from hardpoint.records.texts import Span
from tests.examples.fleets import GOOD, TYPE

HERE = Span("1700 to 3300", Decimal(1700), Decimal(3300))


def tree() -> dict[str, Any]:
    """The good type's record, to be changed."""
    document, _ = read(pathlib.Path(GOOD / TYPE), TYPE)
    assert document is not None
    return document.tree


def hazards(changed: dict[str, Any]) -> dict[str, list[CutHazard]]:
    """Hazards by their path; a route gives one for each of its stretches."""
    found: dict[str, list[CutHazard]] = {}
    for hazard in cut_hazards(Airframe.model_validate(changed)):
        found.setdefault(".".join(map(str, hazard.path)), []).append(hazard)
    return found


def ends(span: Span) -> tuple[Any, Any]:
    return span.low, span.high


def stretches(found: list[CutHazard]) -> list[tuple[Any, Any, bool]]:
    return [(hazard.fs.low, hazard.fs.high, hazard.certain) for hazard in found]


def test_of_the_good_record() -> None:
    found = hazards(tree())
    assert sorted(found) == [
        "bottles.breathing-air",
        "loaded_parts.rudder-cable",
        "tanks.main",
        "tanks.main.lines.feed",
        "tanks.smoke",
        "tanks.smoke.lines.feed",
        "zones.nose.left.behind",
        "zones.nose.right.behind",
    ]
    assert {path: stretches(listed) for path, listed in found.items()} == {
        "bottles.breathing-air": [(3350, 3350, True)],
        "loaded_parts.rudder-cable": [(1900, 5900, True)],
        "tanks.main": [(1200, 1600, True)],
        "tanks.main.lines.feed": [(1200, 1600, True), (450, 1200, True)],
        "tanks.smoke": [(3400, 3700, True)],
        "tanks.smoke.lines.feed": [(3400, 3900, False)],
        "zones.nose.left.behind": [(-300, 1700, False)],
        "zones.nose.right.behind": [(-300, 1700, False)],
    }
    assert found["tanks.smoke.lines.feed"][0].kind == "oil line"
    assert found["tanks.main.lines.feed"][0].kind == "fuel line"


UNKNOWN = [
    ("tanks", "unknown", "tanks"),
    ("tanks.wing", "unknown", "tanks.wing"),
    ("tanks.main.lines", "unknown", "tanks.main.lines"),
    ("tanks.main.lines.vent", "unknown", "tanks.main.lines.vent"),
    ("tanks.main.place", "unknown", "tanks.main"),
    ("bottles", "unknown", "bottles"),
    ("bottles.oxygen", "unknown", "bottles.oxygen"),
    ("bottles.breathing-air.lines", {"hose": "unknown"}, "bottles.breathing-air.lines.hose"),
    ("bottles.breathing-air.place", {"panel": "left sill"}, "bottles.breathing-air"),
    ("pyrotechnics", "unknown", "pyrotechnics"),
    ("pyrotechnics.seat-cartridge", "unknown", "pyrotechnics.seat-cartridge"),
    ("high_voltage", "unknown", "high_voltage"),
    ("loaded_parts", "unknown", "loaded_parts"),
    ("loaded_parts.gear", "unknown", "loaded_parts.gear"),
    ("tanks.smoke.lines.feed", {"path": "unknown"}, "tanks.smoke.lines.feed"),
    ("tanks.smoke.lines.feed", {"path": [{"fs": "unknown", "side": "left"}]}, "tanks.smoke.lines.feed"),
]


@pytest.mark.parametrize(("at", "value", "path"), UNKNOWN, ids=[f"{at} {value}" for at, value, _ in UNKNOWN])
def test_what_nobody_knows_can_be_anywhere(at: str, value: Any, path: str) -> None:
    changed = tree()
    *above, key = at.split(".")
    here = changed
    for part in above:
        here = here[part]
    here[key] = value
    (hazard,) = hazards(changed)[path]
    assert not hazard.certain
    assert (hazard.fs, hazard.wl) == (ANYWHERE, ANYWHERE)
    assert all(hazard.meets(HERE, ANYWHERE, side) for side in ("left", "right", "top", "floor"))


@pytest.mark.parametrize("word", ["not fitted", "not applicable"])
def test_what_somebody_looked_for_is_no_hazard(word: str) -> None:
    changed = tree()
    changed |= {"tanks": word, "bottles": word, "pyrotechnics": word, "high_voltage": word, "loaded_parts": word}
    assert [path for path in hazards(changed) if not path.startswith("zones")] == []


def test_an_unknown_way_that_ends_at_the_engine_runs_from_the_tank_to_it() -> None:
    changed = tree()
    changed["tanks"]["main"]["lines"]["feed"] = {"path": "unknown", "ends_at": "engine"}
    assert stretches(hazards(changed)["tanks.main.lines.feed"]) == [(50, 1600, False)]
    changed["engine"]["place"] = "unknown"
    assert stretches(hazards(changed)["tanks.main.lines.feed"]) == [(None, None, False)]


def test_a_line_is_everywhere_between_its_points_and_on_the_sides_of_both() -> None:
    changed = tree()
    spots = [
        {"fs": "2000", "side": "left", "wl": "200"},
        {"fs": "2500", "side": "right", "wl": "300"},
        {"fs": "4000", "side": "right"},
    ]
    changed["tanks"]["main"]["lines"]["feed"] = {"path": spots}
    tank, crossing, right = hazards(changed)["tanks.main.lines.feed"]
    assert stretches([tank, crossing, right]) == [(1200, 2000, True), (2000, 2500, True), (2500, 4000, True)]
    assert crossing.sides == {"left", "right", "centre"}
    assert ends(crossing.wl) == (200, 300)
    assert right.sides == {"right"}
    assert ends(right.wl) == (None, None)
    low = Span("below 100", None, Decimal(100))
    assert not crossing.meets(HERE, low, "left")
    assert right.meets(HERE, low, "right")
    assert not right.meets(HERE, low, "left")
    assert right.meets(HERE, low, "floor")


def test_high_voltage() -> None:
    changed = tree()
    battery = {
        "chemistry": "unknown",
        "voltage": "400 V",
        "place": {"fs": "800 to 1100"},
        "cut_by": "unknown",
        "stays_live": "unknown",
    }
    system = {
        "voltage": "400 V",
        "energy": "18 kWh",
        "packs": {"front": battery, "rear": "unknown"},
        "disconnect": "unknown",
        "stays_live": "unknown",
    }
    changed["high_voltage"] = system | {
        "cables": {"tunnel": {"path": "unknown", "stretch": "1100 to 2900"}, "spare": "unknown"}
    }
    found = hazards(changed)
    assert stretches(found["high_voltage.packs.front"]) == [(800, 1100, True)]
    assert stretches(found["high_voltage.packs.rear"]) == [(None, None, False)]
    assert stretches(found["high_voltage.cables.tunnel"]) == [(1100, 2900, False)]
    assert stretches(found["high_voltage.cables.spare"]) == [(None, None, False)]
    changed["high_voltage"] = system | {"cables": "unknown"}
    assert stretches(hazards(changed)["high_voltage.cables"]) == [(None, None, False)]


def test_a_rocket_and_its_cable() -> None:
    changed = tree()
    rocket = {
        "kind": "rocket parachute",
        "place": {"fs": "2400", "side": "centre"},
        "exit_direction": "unknown",
        "handle": "unknown",
        "handle_place": "unknown",
        "state": "unknown",
    }
    changed["pyrotechnics"]["rocket-parachute"] = rocket | {"cable": "unknown"}
    found = hazards(changed)
    assert stretches(found["pyrotechnics.rocket-parachute"]) == [(2400, 2400, True)]
    assert stretches(found["pyrotechnics.rocket-parachute.cable"]) == [(None, None, False)]
    assert found["pyrotechnics.rocket-parachute"][0].meets(HERE, ANYWHERE, "left")  # the centre line counts for all
    changed["pyrotechnics"]["rocket-parachute"] = rocket | {"cable": {"path": "unknown", "stretch": "2100 to 2600"}}
    assert stretches(hazards(changed)["pyrotechnics.rocket-parachute.cable"]) == [(2100, 2600, False)]


def test_a_cable_that_was_followed_part_of_its_way() -> None:
    """Known along its path, on the sides of its points; beyond them anywhere in the stretch, without a gap between."""
    changed = tree()
    spots = [{"fs": "1600", "side": "left", "wl": "400"}, {"fs": "2050", "side": "left", "wl": "350"}]
    cable = {"path": spots, "then_unknown": "2100 to 2600"}
    rocket = {"kind": "rocket parachute", "state": "unknown", "exit_direction": "unknown", "cable": cable}
    rocket |= {"place": {"fs": "2400", "side": "right"}, "handle": "unknown", "handle_place": "unknown"}
    changed["pyrotechnics"]["rocket-parachute"] = rocket
    found = hazards(changed)["pyrotechnics.rocket-parachute.cable"]
    known, unknown = found
    assert stretches(found) == [(1600, 2050, True), (2050, 2600, False)]
    assert known.sides == {"left"}
    assert ends(known.wl) == (350, 400)
    assert unknown.sides == {"left", "right", "centre"}
    assert unknown.wl == ANYWHERE
    forward, aft = (
        Span("1500 to 1700", Decimal(1500), Decimal(1700)),
        Span("2500 to 3000", Decimal(2500), Decimal(3000)),
    )
    assert [known.meets(forward, ANYWHERE, side) for side in ("left", "right")] == [True, False]
    assert all(unknown.meets(aft, ANYWHERE, side) for side in ("left", "right", "top", "floor"))


def test_parts_of_the_high_voltage() -> None:
    changed = tree()
    words = dict.fromkeys(("energy", "packs", "cables", "disconnect", "stays_live"), "unknown")
    inverter = {"what": "inverter", "place": {"fs": "500 to 690", "side": "right"}, "stays_live": "unknown"}
    changed["high_voltage"] = words | {
        "voltage": "400 V",
        "parts": {"inverter": inverter | {"holds_charge": "unknown"}, "contactor": "unknown"},
    }
    found = hazards(changed)
    assert stretches(found["high_voltage.parts.inverter"]) == [(500, 690, True)]
    assert found["high_voltage.parts.inverter"][0].sides == {"right"}
    assert stretches(found["high_voltage.parts.contactor"]) == [(None, None, False)]
    changed["high_voltage"]["parts"] = "not fitted"
    assert "high_voltage.parts" not in hazards(changed)
    del changed["high_voltage"]["parts"]
    assert stretches(hazards(changed)["high_voltage.parts"]) == [(None, None, False)]


def test_a_side_that_is_not_there_hides_nothing() -> None:
    changed = tree()
    zone = changed["zones"]["cockpit"]
    before = hazards(changed)
    zone["wl"] = "above 500"
    zone["floor"] = "not applicable"
    assert hazards(changed) == before


def test_what_a_zone_lists_behind_its_skin() -> None:
    changed = tree()
    side = changed["zones"]["cockpit"]["right"]
    side["behind"] = {
        "hose": {"kind": "pressure line", "fs": "2000 to 2100", "what": "air hose"},
        "rod": {"kind": "push-rod", "fs": "2000 to 2100"},
        "box": "unknown",
        "pipe": {"kind": "fuel line", "fs": "unknown"},
    }
    found = hazards(changed)
    assert found["zones.cockpit.right.behind.hose"][0].what == "air hose"
    assert "zones.cockpit.right.behind.rod" not in found  # in the way of a saw, and harmless
    assert stretches(found["zones.cockpit.right.behind.box"]) == [(1700, 3300, False)]
    assert stretches(found["zones.cockpit.right.behind.pipe"]) == [(1700, 3300, False)]
    assert not found["zones.cockpit.right.behind.box"][0].meets(HERE, ANYWHERE, "left")
    side["behind"] = "unknown"
    assert stretches(hazards(changed)["zones.cockpit.right.behind"]) == [(1700, 3300, False)]
    side["behind"] = "nothing found"
    assert [path for path in hazards(changed) if path.startswith("zones.cockpit")] == []


def test_the_smallest_stretch_that_covers_others() -> None:
    one, two = HERE, Span("below 500", None, HERE.low)
    assert ends(covering([one, one])) == (1700, 3300)
    assert ends(covering([one, two])) == (None, 3300)
