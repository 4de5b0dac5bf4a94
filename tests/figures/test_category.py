"""Aerodrome category against the table of Annex 14, and the station's cover against the least agent."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from hardpoint.figures.category import AGENTS, aircraft_index, critical_area, rescue_category
from hardpoint.figures.worked import Case, Figure, Unsaid
from hardpoint.figures.workings import category, fuel
from hardpoint.load import fleet as read_fleet
from tests.site.support import FLEET

TABLE = [
    (1, 9, 2), (2, 12, 2), (3, 18, 3), (4, 24, 4), (5, 28, 4), (6, 39, 5), (7, 49, 5), (8, 61, 7), (9, 76, 7),
    (10, 90, 8),
]  # fmt: skip
"""ICAO Annex 14 vol. I table 9-1 (R): category, overall length below, greatest fuselage width up to, m."""


@pytest.mark.parametrize(("number", "below", "wide"), TABLE)
def test_the_bands_of_the_table(number: int, below: float, wide: float) -> None:
    assert rescue_category(below - 0.01, wide) == number
    if number < 10:
        assert rescue_category(below, 1.0) == number + 1


def test_at_nine_metres() -> None:
    """8.99 m -> 1; 9.00 m -> 2 (R)."""
    assert (rescue_category(8.99, 1), rescue_category(9.00, 1)) == (1, 2)


@pytest.mark.parametrize(("number", "below", "wide"), TABLE[:-1])
def test_wider_than_the_limit_is_one_higher(number: int, below: float, wide: float) -> None:
    """UK AMC2 ADR.OPS.B.010(a)(2) (R)."""
    assert rescue_category(below - 0.01, wide + 0.01) == number + 1


@given(st.floats(1, 75), st.floats(1, 75), st.floats(0.5, 6))
def test_longer_is_never_a_lower_category(one: float, other: float, wide: float) -> None:
    """Of one width within its band; a wide short one may come to the same as a longer one."""
    low, high = sorted((one, other))
    assert rescue_category(low, 0.5) <= rescue_category(high, 0.5)
    assert rescue_category(low, 0.5) <= rescue_category(low, wide)


def test_index_by_the_other_rule() -> None:
    """14 CFR 139.315 (R): index A under 90 ft."""
    assert aircraft_index(89.9 * 0.3048) == "A"
    with pytest.raises(ValueError, match="only index A"):
        aircraft_index(90 * 0.3048)


AMOUNTS = [
    (1, (350, 230, 160), (350, 230, 160), 45),
    (2, (1000, 670, 460), (800, 550, 360), 90),
    (3, (1800, 1200, 820), (1300, 900, 630), 135),
    (4, (3600, 2400, 1700), (2600, 1800, 1100), 135),
]
"""Table 9-2 (all M: from memory, not checked against the text): water L, foam L/min for level A, B, C; powder kg."""


@pytest.mark.parametrize(("number", "water", "discharge", "powder"), AMOUNTS)
def test_least_agent(number: int, water: tuple[float, ...], discharge: tuple[float, ...], powder: float) -> None:
    agent = AGENTS[number]
    assert tuple(agent.water_l[level] for level in "ABC") == water
    assert tuple(agent.discharge_l_min[level] for level in "ABC") == discharge
    assert agent.powder_kg == powder


def test_the_area_reproduces_the_level_c_column() -> None:
    """Doc 9137 part 1 (M): practical area 2/3, 3.75 L/min/m2 for level C, Q2 0, 27, 30, 58 %.

    At the middle of each band, its greatest width (V: within 2.5 %); A and B differ by up to 10 %: not tested by it.
    """
    middles = {2: (10.5, 2), 3: (15, 3), 4: (21, 4)}
    shares = {2: 0.27, 3: 0.30, 4: 0.58}
    for number, (length, width) in middles.items():
        first = 2 / 3 * critical_area(length, width) * 3.75
        water = first * (1 + shares[number])
        assert water == pytest.approx(AGENTS[number].water_l["C"], rel=0.025)


def test_the_station_covers_the_small_ones_and_not_more() -> None:
    fleet = read_fleet(FLEET)
    station = fleet.house.station if fleet.house else None
    halberd = {f.id: f for f in category.TOPIC.work(Case(fleet.types["drosmund-halberd"].airframe, station))}
    found = halberd["category.rescue_category"]
    assert isinstance(found, Figure)
    assert list(found.value) == [2, 2], "10.6 m long, 1.5 m wide"
    water = halberd["category.water"]
    assert isinstance(water, Figure)
    assert water.value[0] == pytest.approx(0.670)
    assert str(water.caution).startswith("the station has 1000 L")
    assert category.highest([t.airframe for t in fleet.types.values()]) == (2, 0)


def test_without_a_cover_nothing_is_said() -> None:
    fleet = read_fleet(FLEET)
    found = {f.id: f for f in category.TOPIC.work(Case(fleet.types["vostrelle-jinx"].airframe))}
    open_ = found["category.cover"]
    assert isinstance(open_, Unsaid)
    assert str(open_.reason) == "the station has not stated its cover"


def test_smoke_oil_has_no_burning_data_and_avgas_is_worked_as_gasoline() -> None:
    """75 and 2 x 70 L of avgas: 215 L at 6 lb per US gal (FAA-H-8083-30, R) are 154.6 kg by hand."""
    fleet = read_fleet(FLEET)
    assert fleet.house
    found = {f.id: f for f in fuel.TOPIC.work(Case(fleet.types["vostrelle-jinx"].airframe, fleet.house.station))}
    mass = found["fuel.avgas.mass_full"]
    assert isinstance(mass, Figure)
    assert mass.value[1] == pytest.approx(154.6, abs=0.2)
    assert isinstance(found["fuel.smoke-oil.spill"], Unsaid)
    area = found["fuel.avgas.spill_area"]
    assert isinstance(area, Figure)
    assert area.value == pytest.approx((0.215 / 0.0028, 0.215 / 0.0007), rel=1e-3)


@pytest.mark.parametrize(
    ("length", "width", "says"),
    [(0, 1, "above 0"), (5, 0, "above 0"), (90, 5, "ends below 90 m"), (89, 9, "wider than the highest")],
)
def test_outside_its_range_nothing_is_said(length: float, width: float, says: str) -> None:
    with pytest.raises(ValueError, match=says):
        rescue_category(length, width)
