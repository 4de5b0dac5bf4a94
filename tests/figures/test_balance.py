"""Mass and centre of gravity against published worked questions, and what must hold of any load."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from hardpoint.figures.balance import centre_of_gravity, reach_of_centre
from hardpoint.figures.densities import PUBLISHED
from hardpoint.units import convert

MASSES = st.floats(1, 5000)
STATIONS = st.floats(-5, 30)
ITEMS = st.lists(st.tuples(MASSES, STATIONS), min_size=1, max_size=6)


def test_a_question_of_the_knowledge_test() -> None:
    """FAA knowledge-test question 3664 (R): 2055 lb, 193 193 lb in, 94.01 in."""
    mass, station = centre_of_gravity([(1495, 101.4), (380, 64.0), (30 * 6, 96.0)])
    assert mass == 2055
    assert mass * station == pytest.approx(193193, abs=0.5)
    assert round(station, 2) == 94.01


def test_cargo_that_is_moved_forward() -> None:
    """FAA worked question (R): 7800 lb, CG from 81.5 to 80.5 in by moving 65 lb from 150 to 30 in."""
    _, station = centre_of_gravity([(7800, 81.5), (-65, 150), (65, 30)])
    assert station == pytest.approx(80.5, abs=1e-9)


def test_the_worked_example_of_a_weighing() -> None:
    """FAA-H-8083-30 chapter 4 figure 4-20 (inputs R, results V): 1331.5 lb, 66 698 lb in, 50.1 in."""
    mass, station = centre_of_gravity([(645, 70), (635, 70), (222.5, -30), (-177, 95), (6, 98)])
    assert mass == 1331.5
    assert mass * station == pytest.approx(66698, abs=0.5)
    assert round(station, 1) == 50.1


def test_masses_of_fluids_as_published() -> None:
    """FAA-H-8083-30 (R): avgas 6, oil 7.5, water 8.35 lb per US gal. MIL-HDBK-1022A (R): Jet A-1 0.775 to 0.840.

    Turbine fuel of 6.7 lb per US gal (R) and the Jet A of the table by temperature, 6.68 (R second hand), lie in it.
    """
    for fluid, pounds in (("avgas", "6"), ("engine oil", "7.5"), ("water ballast", "8.35")):
        assert PUBLISHED[fluid][2] == (convert(f"{pounds} lb/US gal", "kg/m3"),) * 2  # type: ignore[index]
    low, high = PUBLISHED["jet fuel"][2]
    assert (low, high) == (775, 840)
    assert low < convert("6.68 lb/US gal", "kg/m3") < convert("6.7 lb/US gal", "kg/m3") < high


def test_densities_by_temperature_agree_with_the_table_to_its_digits() -> None:
    """At 59 F (FAA table, R second hand; kg/L V): avgas 6.01 is 0.7202, Jet A 6.68 is 0.8004."""
    assert convert("6.01 lb/US gal", "kg/L") == pytest.approx(0.7202, abs=5e-5)
    assert convert("6.68 lb/US gal", "kg/L") == pytest.approx(0.8004, abs=5e-5)
    assert PUBLISHED["avgas"][2][0] == pytest.approx(720.2, rel=0.002), "the rule of thumb against the table"


@given(ITEMS, st.floats(-10, 10))
def test_a_datum_that_is_moved_moves_the_centre_as_far(items: list[tuple[float, float]], far: float) -> None:
    mass, station = centre_of_gravity(items)
    moved_mass, moved = centre_of_gravity([(m, x + far) for m, x in items])
    assert moved_mass == mass
    assert moved == pytest.approx(station + far, abs=1e-9)


@given(ITEMS)
def test_pounds_and_inches_give_the_same_place(items: list[tuple[float, float]]) -> None:
    _, station = centre_of_gravity(items)
    _, inches = centre_of_gravity([(mass / 0.45359237, x / 0.0254) for mass, x in items])
    assert inches * 0.0254 == pytest.approx(station, abs=1e-9)


@given(st.lists(st.tuples(MASSES, MASSES, STATIONS, STATIONS), min_size=1, max_size=5), st.data())
def test_no_choice_within_the_ranges_leaves_the_reach(
    loads: list[tuple[float, float, float, float]], data: st.DataObject
) -> None:
    ranges = [(tuple(sorted((a, b))), tuple(sorted((x, y)))) for a, b, x, y in loads]
    low, high = reach_of_centre(ranges)  # type: ignore[arg-type]
    chosen = [(data.draw(st.floats(*mass)), data.draw(st.floats(*station))) for mass, station in ranges]
    assert low - 1e-9 <= centre_of_gravity(chosen)[1] <= high + 1e-9


def test_both_ends_of_the_reach_are_reached() -> None:
    loads = [((600.0, 600.0), (2.0, 2.1)), ((0.0, 200.0), (3.0, 4.0)), ((0.0, 100.0), (0.5, 0.5))]
    low, high = reach_of_centre(loads)
    assert low == pytest.approx(centre_of_gravity([(600, 2.0), (0, 3.0), (100, 0.5)])[1])
    assert high == pytest.approx(centre_of_gravity([(600, 2.1), (200, 4.0), (0, 0.5)])[1])


def test_what_is_taken_off_moves_the_centre_away_from_itself() -> None:
    """Taken off somewhere between 2 and 4 m: furthest aft when it was at 2 m, by hand (600 x 3 - 100 x 2) / 500."""
    low, high = reach_of_centre([((600, 600), (3, 3)), ((-100, -100), (2, 4))])
    assert (low, high) == pytest.approx(((1800 - 400) / 500, (1800 - 200) / 500))


def test_nothing_has_no_centre() -> None:
    with pytest.raises(ValueError, match="nothing is left"):
        centre_of_gravity([(100, 2), (-100, 3)])
    with pytest.raises(ValueError, match="one mass, not a range"):
        reach_of_centre([((600, 600), (2, 2)), ((-50, -40), (3, 3))])
