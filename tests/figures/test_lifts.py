"""Declared lifts of the demo and altered ones: which the figures refuse, and with which reason."""

from __future__ import annotations

import datetime as dt
from decimal import Decimal
from typing import Any

import pytest

from hardpoint.figures.worked import Case, Figure, Unsaid, Worked
from hardpoint.figures.workings import hook, slings
from hardpoint.load import fleet as read_fleet
from hardpoint.records.airframe import Airframe
from hardpoint.records.event import Report
from hardpoint.records.fleet import Fleet
from hardpoint.records.known import NonValue
from tests.pages.sweeps import read, with_answer
from tests.site.support import FLEET


@pytest.fixture(scope="module")
def fleet() -> Fleet:
    return read_fleet(FLEET)


def _worked(
    fleet: Fleet, type_id: str, *changes: tuple[tuple[str, ...], Any], station: Any = None
) -> dict[str, Worked]:
    assert fleet.house
    tree = fleet.types[type_id].tree
    for path, answer in changes:
        tree = with_answer(tree, path, answer)
    airframe = read(tree) if changes else fleet.types[type_id].airframe
    assert isinstance(airframe, Airframe)
    return {figure.id: figure for figure in slings.TOPIC.work(Case(airframe, station or fleet.house.station))}


def _reason(worked: Worked) -> str:
    assert isinstance(worked, Unsaid)
    return str(worked.reason)


def _refused(worked: Worked) -> str:
    assert isinstance(worked, Unsaid)
    assert worked.refused, worked.reason
    return str(worked.reason)


BODKIN = "tarrowby-bodkin"
ONE = "slings.forward-pair-with-tail-line.empty"


def test_the_pair_carries_the_whole_weight(fleet: Fleet) -> None:
    """560 kg on two eyes 0.29 m aside, the hook 2 m above: W / (2 cos b) by hand, b = atan(0.29 / 2)."""
    worst = _worked(fleet, BODKIN)[f"{ONE}.worst_leg"]
    assert isinstance(worst, Figure)
    by_hand = 560 * 9.80665 / 2 * (1 + (0.29 / 2) ** 2) ** 0.5
    assert worst.value[1] == pytest.approx(by_hand, rel=1e-3)
    used = _worked(fleet, BODKIN)[f"{ONE}.utilisation"]
    assert isinstance(used, Figure)
    assert used.value[1] == pytest.approx(by_hand * 1.25 / (1200 * 4.4482216152605), rel=1e-3)


@pytest.mark.parametrize(
    ("type_id", "lift", "says"),
    [
        ("vostrelle-jinx", "four-points.empty", "rear pair: its basis is unknown"),
        ("maplewick-gavotte", "four-strut-heads.empty", "owner's practice, and the station has decided no divisor"),
        ("hobmire-twain", "spar-lugs-without-tail-line.empty", "no tail line is declared"),
        ("skellrigg-wicket", "root-tube-strap.wings-off", "live until a licensed person reports otherwise"),
        ("drosmund-halberd", "by-the-spine.empty", "seat front, seat rear, canopy"),
        ("brinemarsh-coble", "eye-flooded.flooded", "heavier than its points allow"),
        ("brinemarsh-coble", "eye-flooded.flooded-fuelled-as-planned", "heavier than its points allow"),
        ("aldermoss-hushwing", "root-strap-with-pilot.wings-off-occupants-and-kit", "heavier than its points allow"),
    ],
)
def test_lifts_of_the_demo_that_are_refused(fleet: Fleet, type_id: str, lift: str, says: str) -> None:
    assert says in _refused(_worked(fleet, type_id)[f"slings.{lift}"])


@pytest.mark.parametrize(
    ("type_id", "lift"),
    [
        ("brinemarsh-coble", "eye.full-fuel"),
        ("hobmire-twain", "spar-lugs-with-tail-line.empty"),
        ("lumenaar-glimmer", "belly-straps.empty"),
        ("aldermoss-hushwing", "root-strap.wings-off"),
        ("kelmarrow-thimble", "firewall-and-tail.fuelled-as-planned"),
    ],
)
def test_lifts_of_the_demo_that_are_not(fleet: Fleet, type_id: str, lift: str) -> None:
    used = _worked(fleet, type_id)[f"slings.{lift}.utilisation"]
    assert isinstance(used, Figure)
    assert 0 < used.value[1] <= 1


POINT = ("load_points", "forward-pair")


@pytest.mark.parametrize(
    ("changes", "says"),
    [
        ([((*POINT, "use"), "tie-down")], "no point to lift by"),
        ([((*POINT, "basis"), "proof")], "its basis is proof"),
        ([((*POINT, "basis"), "ultimate")], "its basis is ultimate"),
        ([((*POINT, "basis"), "unknown")], "its basis is unknown"),
        ([(("lifts", "forward-pair-with-tail-line", "hook"), {"above": "100 mm"})], "beyond 60°"),
        ([((*POINT, "cone"), "5 deg")], "outside its cone of 5°"),
        ([(("masses", "empty_cg"), {"fs": "1850", "wl": "900"})], "above the points"),
        ([(("masses", "empty"), "1000 kg")], "heavier than its points allow"),
    ],
)
def test_refusals(fleet: Fleet, changes: list[tuple[tuple[str, ...], Any]], says: str) -> None:
    found = _worked(fleet, BODKIN, *changes)
    assert says in _refused(found[ONE])
    assert not any("utilisation" in id_ for id_ in found), "a refused lift has no share"


@pytest.mark.parametrize(
    ("changes", "says"),
    [
        ([((*POINT, "cone"), "unknown")], "how far from its axis"),
        ([((*POINT, "axis"), "unknown")], "which way forward pair is made to be pulled"),
        ([(("masses", "empty_cg"), {"fs": "1850", "wl": "unknown"})], "hangs below the points is unknown"),
        ([(("masses", "empty"), "unknown")], "the empty mass is unknown"),
        ([((*POINT, "place"), {"fs": "1000", "side": "both", "wl": "780", "bl": "unknown"})], "how far apart"),
        ([(("lifts", "forward-pair-with-tail-line", "hook"), "unknown")], "how high the hook is"),
    ],
)
def test_what_is_unknown_is_said(fleet: Fleet, changes: list[tuple[tuple[str, ...], Any]], says: str) -> None:
    assert says in _reason(_worked(fleet, BODKIN, *changes)[ONE])


def test_fuel_in_a_high_tank_lifts_the_centre_above_the_points(fleet: Fleet) -> None:
    """Empty 15 mm below its points; 44.6 kg of avgas at most 780 mm high raise it by 20 mm, by hand."""
    states = {"points": ["firewall-pair", "tail-tube"], "tail_line": "not applicable", "hook": {"above": "5 m"}}
    lift = states | {"states": [["empty"], ["full fuel"]]}
    high = (("masses", "empty_cg"), {"fs": "1980", "wl": "below 485"})
    found = _worked(fleet, "kelmarrow-thimble", (("lifts",), {"both": lift}), high)
    assert "slings.both.empty.utilisation" in found
    assert "above the points" in _refused(found["slings.both.full-fuel"])


def test_a_leg_that_would_be_slack_refuses_the_lift(fleet: Fleet) -> None:
    """The centre of gravity of the Thimble aft of its tail tube: the front pair would have to push."""
    found = _worked(fleet, "kelmarrow-thimble", (("masses", "empty_cg"), {"fs": "5900", "wl": "below 480"}))
    assert "slack" in _refused(found["slings.firewall-and-tail.empty"])


def test_the_station_divides_what_is_no_limit(fleet: Fleet) -> None:
    """29 CFR 1926.251(a)(4) (R): custom accessories are proof tested to 125 %; a station may divide by that."""
    assert fleet.house
    station = fleet.house.station
    divisors = station.divisors.model_copy(update={"proof": Decimal("2")})
    decided = station.model_copy(update={"divisors": divisors})
    change = ((*POINT, "basis"), "proof")
    whole = _worked(fleet, BODKIN)[f"{ONE}.utilisation"]
    assert isinstance(whole, Figure)
    assert "heavier" in _refused(_worked(fleet, BODKIN, change, station=decided)[ONE])
    lighter = divisors.model_copy(update={"proof": Decimal("1.25")})
    halved = _worked(fleet, BODKIN, change, station=station.model_copy(update={"divisors": lighter}))
    used = halved[f"{ONE}.utilisation"]
    assert isinstance(used, Figure)
    assert used.value[1] == pytest.approx(whole.value[1] * 1.25)


def test_without_a_factor_of_the_station_nothing_is_said(fleet: Fleet) -> None:
    assert fleet.house
    silent = fleet.house.station.model_copy(update={"dynamic_factor": NonValue.UNKNOWN})
    assert "no factor for snatch and swing" in _reason(_worked(fleet, BODKIN, station=silent)[ONE])


def test_a_spreader_takes_the_lean_out_of_the_legs(fleet: Fleet) -> None:
    lift = ("lifts", "firewall-and-tail")
    beam = {"length": "4750 mm", "mass": "80 kg", "allowable": "20 kN"}
    found = _worked(fleet, "kelmarrow-thimble", ((*lift, "spreader"), beam))
    angle = found["slings.firewall-and-tail.empty.worst_angle"]
    assert isinstance(angle, Figure)
    assert angle.value[1] < 0.1
    weak = _worked(fleet, "kelmarrow-thimble", ((*lift, "spreader"), beam | {"allowable": "4 kN"}))
    assert "spreader allows" in _refused(weak["slings.firewall-and-tail.empty"])
    short = _worked(fleet, "kelmarrow-thimble", ((*lift, "spreader"), beam | {"length": "2 m"}))
    assert "not as long" in _refused(short["slings.firewall-and-tail.empty"])


def test_legs_of_fixed_lengths_say_how_it_hangs(fleet: Fleet) -> None:
    hook_ = {"legs": {"firewall-pair": "5.0 m", "tail-tube": "6.3 m"}}
    found = _worked(fleet, "kelmarrow-thimble", (("lifts", "firewall-and-tail", "hook"), hook_))
    down = found["slings.firewall-and-tail.empty.nose_down"]
    assert isinstance(down, Figure)
    assert down.unit == "rad"


def test_reported_inactive_cartridges_let_the_figures_go_on(fleet: Fleet) -> None:
    assert fleet.house
    day = fleet.events["three-shores-flying-days"].event.days["saturday"]
    entry = day.entries["9"]
    report: Any = {"state": "inactive", "by": "armourer", "licence": "seats", "date": day.date, "at": dt.time(9, 10)}
    made = {name: Report.model_construct(**report) for name in entry.reported}
    reported = entry.model_copy(update={"reported": made})
    case = Case(fleet.types["drosmund-halberd"].airframe, fleet.house.station, reported, day)
    found = {figure.id: figure for figure in slings.TOPIC.work(case)}
    assert "slings.by-the-spine.empty.utilisation" in found


def test_the_crane_reads_its_own_table_and_nothing_between(fleet: Fleet) -> None:
    """Coble with full fuel: (990 + 210) x 1.25 = 1500 kg; the table allows 1.4 t at 16 m and 2.3 t at 12 m."""
    assert fleet.house
    case = Case(fleet.types["brinemarsh-coble"].airframe, fleet.house.station)
    found = {figure.id: figure for figure in hook.TOPIC.work(case)}
    radius = found["hook.eye.full-fuel.mobile.radius"]
    assert isinstance(radius, Figure)
    assert radius.value == (12, 12)
