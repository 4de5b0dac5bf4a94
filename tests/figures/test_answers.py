"""The small figures: what is answered, what is unfit, what fits into the tanks, which claims hold, how to round."""

from __future__ import annotations

import pathlib
from typing import Any, get_args

import pytest

from hardpoint.figures.answers import MUST_BE_ANSWERED, device_answer, high_voltage_answer
from hardpoint.figures.claims import breaches
from hardpoint.figures.fitness import Gap, gaps_that_bite, group_of, open_questions
from hardpoint.figures.fuel import fuel_capacity
from hardpoint.figures.safe_side import rounding_of
from hardpoint.load.documents import read
from hardpoint.records.airframe import Airframe
from hardpoint.records.known import NonValue
from hardpoint.records.pyrotechnics import DeviceKind
from hardpoint.units import Kind
from tests.examples.fleets import GOOD, TYPE


def airframe(**changed: Any) -> Airframe:
    """The good type's record with whole sections replaced."""
    document, _ = read(pathlib.Path(GOOD / TYPE), TYPE)
    assert document is not None
    return Airframe.model_validate(document.tree | changed)


ROCKET = {
    "kind": "rocket parachute",
    **dict.fromkeys(("place", "exit_direction", "cable", "handle", "handle_place"), "unknown"),
    "state": "live until reported otherwise",
}


@pytest.mark.parametrize(
    ("pyrotechnics", "answer"),
    [
        ("not fitted", NonValue.NOT_FITTED),
        ("unknown", NonValue.UNKNOWN),
        ({"rocket-parachute": "not fitted"}, NonValue.NOT_FITTED),
        ({"rocket-parachute": "unknown"}, NonValue.UNKNOWN),
        ({"flare-gun": "not fitted"}, NonValue.UNKNOWN),
        ({"red-box": ROCKET}, True),
        ({"red-box": ROCKET, "rocket-parachute": "not fitted"}, True),
    ],
)
def test_whether_a_rocket_is_fitted(pyrotechnics: Any, answer: NonValue | bool) -> None:
    assert device_answer(airframe(pyrotechnics=pyrotechnics), "rocket parachute") == answer


def test_whether_there_is_high_voltage() -> None:
    assert high_voltage_answer(airframe()) is NonValue.NOT_FITTED
    assert high_voltage_answer(airframe(high_voltage="unknown")) is NonValue.UNKNOWN


def test_what_must_be_answered_are_kinds_of_devices() -> None:
    assert set(MUST_BE_ANSWERED) <= set(get_args(DeviceKind))


def test_what_makes_an_entry_unfit() -> None:
    gaps = {(gap.group, ".".join(map(str, gap.path)), gap.kind) for gap in gaps_that_bite(airframe())}
    assert gaps == {
        ("opening", "canopies.canopy.clear_opening", "unknown"),
        ("opening", "exits.sill-handle.works.inverted", "unknown"),
        ("opening", "exits.side-window.other_side", "unknown"),
        ("opening", "exits.side-window.works.inverted", "unknown"),
        ("opening", "exits.side-window.steps", "unknown"),
        ("opening", "exits.side-window.success", "unknown"),
        ("ties", "seats.pilot.ties.harness.steps", "unknown"),
        *(
            ("opening", f"exits.{name}.works.{attitude}", "unknown")
            for name in ("sill-handle", "side-window")
            for attitude in ("left_side_down", "right_side_down", "afloat", "inverted_in_water")
        ),
    }


def test_a_question_that_was_left_out_is_open_like_one_that_says_unknown() -> None:
    """Pages print UNKNOWN for it, so it stands among the gaps and makes unfit."""
    assert ("exits", "sill-handle", "works", "inverted_in_water") in open_questions(airframe())


def test_the_worst_gap_stands_first() -> None:
    """What fires before what shuts the canopy; what one attitude alone decides last."""
    gaps = gaps_that_bite(airframe(pyrotechnics={"rocket-parachute": "unknown", "seat-cartridge": "not fitted"}))
    assert gaps[0].path == ("pyrotechnics", "rocket-parachute")
    assert gaps[-1].path[2] == "works"
    assert gaps[-1].path[3] not in ("upright", "inverted")


def test_an_unknown_hazard_and_a_conflict_make_unfit_once_each() -> None:
    gaps = gaps_that_bite(airframe(pyrotechnics={"rocket-parachute": "unknown"}, high_voltage="unknown"))
    assert [gap for gap in gaps if gap.group == "rockets and cartridges"] == [
        Gap("rockets and cartridges", ("pyrotechnics", "rocket-parachute"), "unknown"),
        Gap("rockets and cartridges", ("pyrotechnics", "seat-cartridge"), "unknown"),
    ]
    assert [gap.path for gap in gaps if gap.group == "high voltage"] == [("high_voltage",)]
    document, _ = read(pathlib.Path(GOOD / TYPE), TYPE)
    assert document is not None
    canopies: Any = document.tree["canopies"]
    canopy = {**canopies["canopy"], "mass": "12 kg / 30 lb"}
    conflict = [gap for gap in gaps_that_bite(airframe(canopies={"canopy": canopy})) if gap.kind == "conflict"]
    assert conflict == [Gap("opening", ("canopies", "canopy", "mass"), "conflict")]


def test_a_way_that_is_known_in_part_is_an_open_question() -> None:
    followed = {"path": [{"fs": "1600", "side": "centre"}], "then_unknown": "2100 to 2600"}
    plane = airframe(pyrotechnics={"seat-cartridge": "not fitted", "red-box": ROCKET | {"cable": followed}})
    asked = ("pyrotechnics", "red-box", "cable", "path")
    assert asked in open_questions(plane)
    assert Gap("rockets and cartridges", asked, "unknown") in gaps_that_bite(plane)
    del followed["then_unknown"]
    plane = airframe(pyrotechnics={"seat-cartridge": "not fitted", "red-box": ROCKET | {"cable": followed}})
    assert asked not in open_questions(plane)


def test_what_was_reported_for_the_day_is_no_longer_open() -> None:
    devices = {"seat-cartridge": "not fitted", "red-box": ROCKET | {"state": "unknown"}}
    plane = airframe(pyrotechnics=devices)
    asked = ("pyrotechnics", "red-box", "state")
    assert asked in [gap.path for gap in gaps_that_bite(plane)]
    left = [gap.path for gap in gaps_that_bite(plane, reported={"red-box"})]
    assert asked not in left
    assert ("pyrotechnics", "red-box", "cable") in left  # a report says nothing of the way of its cable


def test_a_station_adds_paths_with_any_id() -> None:
    also = ("batteries.*.stays_live", "approach")
    assert group_of(("batteries", "main", "stays_live"), also)
    assert group_of(("approach", "come_from"), also)
    assert not group_of(("batteries", "main", "voltage"), also)
    assert not group_of(("batteries",), also)
    assert not group_of(("approaches",), also)


def test_the_fuel_that_fits_into_the_tanks() -> None:
    def litres(**tanks: Any) -> tuple[float, float] | None:
        document, _ = read(pathlib.Path(GOOD / TYPE), TYPE)
        assert document is not None
        found = fuel_capacity(airframe(tanks={**document.tree["tanks"], **tanks}))  # type: ignore[dict-item]
        return None if found is None else (round(found[0] * 1000, 6), round(found[1] * 1000, 6))

    wing = {"holds": "avgas", "capacity": "70 L", "place": "unknown", "lines": "unknown"}
    assert litres() == (62, 62)  # smoke oil is no fuel
    assert litres(wing=wing) == (132, 132)
    assert litres(wing=wing | {"count": "2"}) == (202, 202)
    assert litres(wing=wing | {"capacity": "62 L / 13.6 US gal"}) == (113.481600, 124)  # 13.6 US gal: 51.4816 L
    assert litres(wing=wing | {"capacity": "unknown"}) is None
    assert litres(wing=wing | {"holds": "unknown"}) is None
    assert litres(wing="unknown") is None
    assert litres(wing="not fitted") == (62, 62)
    assert fuel_capacity(airframe(tanks="unknown")) is None
    assert fuel_capacity(airframe(tanks="not fitted")) == (0, 0)


def test_claims_are_checked_not_inherited() -> None:
    plane = airframe()
    assert breaches(plane, "seats.*.ties.*.kind", "rotary buckle") == ((), 1)
    (breach,), places = breaches(plane, "seats.*.ties.*.kind", "lift-latch buckle")
    assert (breach.path, breach.found, places) == (("seats", "pilot", "ties", "harness", "kind"), "rotary buckle", 1)
    (unknown,), _ = breaches(plane, "seats.*.parachute", "on the back")
    assert unknown.found == "unknown"
    assert breaches(plane, "seats.*.no_such", "x") == ((), 0)
    assert breaches(plane, "tanks.*.capacity", "62 L / 16.4 US gal")[1] == 2


def _tie(kind: str) -> dict[str, Any]:
    return {"kind": kind, "place": "unknown", "steps": "unknown"}


def test_a_claim_about_harness_is_not_broken_by_a_lead() -> None:
    """What ties an occupant in besides the harness is another thing; a tie of which nothing is known may be one."""
    document, _ = read(pathlib.Path(GOOD / TYPE), TYPE)
    assert document is not None
    seats: Any = document.tree["seats"]
    (seat,) = seats.values()

    def under(ties: Any, among: tuple[str, ...]) -> tuple[list[str], int]:
        plane = airframe(seats={"pilot": seat | {"ties": ties}})
        wrong, places = breaches(plane, "seats.*.ties.*.kind", "lift-latch buckle", among)
        return [f"{'.'.join(map(str, breach.path))}: {breach.found}" for breach in wrong], places

    belts = ("lift-latch buckle", "cam lock")
    both = {"harness": _tie("lift-latch buckle"), "lead": _tie("helmet lead")}
    assert under(both, belts) == ([], 1)
    assert under(both, ()) == (["seats.pilot.ties.lead.kind: helmet lead"], 2)
    assert under({"harness": _tie("cam lock")}, belts) == (["seats.pilot.ties.harness.kind: cam lock"], 1)
    assert under({"lead": _tie("helmet lead")}, belts) == ([], 0)
    assert under({"harness": _tie("unknown")}, belts) == (["seats.pilot.ties.harness.kind: unknown"], 1)
    assert under({"harness": "unknown"}, belts) == (["seats.pilot.ties.harness: unknown"], 1)
    assert under("unknown", belts) == (["seats.pilot.ties: unknown"], 1)
    assert under({"lead": "not fitted"}, belts) == ([], 0)


@pytest.mark.parametrize(
    ("path", "kind", "rounding"),
    [
        ("load_points.pair.allowable", "force", "down"),
        ("load_points.pair.cone", "angle", "down"),
        ("masses.empty", "mass", "up"),
        ("masses.maximum", "mass", "up"),
        ("tanks.water.capacity", "volume", "up"),
        ("masses.items.load.mass", "mass", "up"),
        ("water.floods.water.volume", "volume", "up"),
        ("cover.water", "volume", "down"),
        ("rotor.tip_height", "length", "down"),
        ("exits.break-in.pane_thickness", "length", "up"),
        ("cordons.rocket.distance", "length", "up"),
        ("exits.break-in.head_clearance", "length", "down"),
        ("exits.side.works.room_needed", "length", "up"),
        ("margins.fuel line", "length", "up"),
        ("breathing_rates.0", "flow", "up"),
        ("bottle_reserve", "gauge pressure", "up"),
        ("bottles.air.working_pressure", "gauge pressure", "up"),
        ("engine.run_down", "time", "up"),
        ("canopies.canopy.thickness", "length", "up"),
        ("size.span", "length", "nearest"),
    ],
)
def test_conversions_are_rounded_to_the_safe_side(path: str, kind: Kind, rounding: str) -> None:
    """Maxima down, minima up (ASME A112.18.1 / CSA B125.1 Annex A.2(e)); masses, loads, stand-off up (project rule)."""
    assert rounding_of(tuple(path.split(".")), kind) == rounding
