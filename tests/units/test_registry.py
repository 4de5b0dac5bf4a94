"""Factors against published values and against scipy; what the registry promises."""

import os
import subprocess
import sys
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy import constants

from hardpoint.units import KINDS, convert, written_units
from hardpoint.units.registry import UNITS, Link, family_of, link, registry, spellings, to_si

# Exact by definition. NIST HB 44 Appendix C (lb, US gal = 231 in3, imperial gallon, ft, in, ft3); NIST SP 811
# Appendix B (bar, atm, lbf, kgf, psi as printed to its last digit).
EXACT = [
    ("lb", "kg", "0.45359237"),
    ("US gal", "L", "3.785411784"),
    ("US gal", "in3", "231"),
    ("imp gal", "L", "4.54609"),
    ("bar", "kPa", "100"),
    ("atm", "Pa", "101325"),
    ("lbf", "N", "4.4482216152605"),
    ("kgf", "N", "9.80665"),
    ("ft", "m", "0.3048"),
    ("in", "mm", "25.4"),
    ("ft3", "L", "28.316846592"),
    ("t", "kg", "1000"),
]


@pytest.mark.parametrize(("unit", "target", "factor"), EXACT)
def test_factors_that_are_exact_by_definition(unit: str, target: str, factor: str) -> None:
    assert link(unit, target) == Link(Fraction(factor), Fraction(0))


# NIST SP 811 Appendix B prints seven digits at most: compared at 2e-7.
@pytest.mark.parametrize(("unit", "target", "factor"), [*EXACT, ("psi", "kPa", "6.894757293168")])
def test_factors_to_the_seven_digits_of_sp_811(unit: str, target: str, factor: str) -> None:
    assert convert(f"1 {unit}", target) == pytest.approx(float(factor), rel=2e-7, abs=0)


# scipy.constants, an independent reference library (CODATA and the definitions of the units).
@pytest.mark.parametrize(
    ("unit", "reference"),
    [
        ("lb", constants.pound),
        ("oz", constants.oz),
        ("short ton", constants.short_ton),
        ("long ton", constants.long_ton),
        ("t", constants.metric_ton),
        ("in", constants.inch),
        ("ft", constants.foot),
        ("US gal", constants.gallon_US),
        ("imp gal", constants.gallon_imp),
        ("US qt", constants.gallon_US / 4),
        ("imp qt", constants.gallon_imp / 4),
        ("L", constants.liter),
        ("ft3", constants.foot**3),
        ("in3", constants.inch**3),
        ("lbf", constants.lbf),
        ("kgf", constants.kgf),
        ("psi", constants.psi),
        ("bar", constants.bar),
        ("atm", constants.atm),
        ("deg", constants.degree),
        ("min", constants.minute),
        ("h", constants.hour),
        ("kWh", constants.kilo * constants.hour),
        ("Ah", constants.hour),
        ("kt", constants.knot),
        ("km/h", constants.kmh),
        ("mph", constants.mph),
        ("hp", constants.hp),
        ("PS", 75 * constants.g),
        ("L/min", constants.liter / constants.minute),
        ("US gal/min", constants.gallon_US / constants.minute),
        ("imp gal/min", constants.gallon_imp / constants.minute),
        ("ft3/min", constants.foot**3 / constants.minute),
        ("ft2", constants.foot**2),
        ("in2", constants.inch**2),
        ("lb/US gal", constants.pound / constants.gallon_US),
        ("lb/imp gal", constants.pound / constants.gallon_imp),
        ("lb/ft3", constants.pound / constants.foot**3),
        ("degF", constants.degree_Fahrenheit),
    ],
)
def test_factors_against_scipy(unit: str, reference: float) -> None:
    assert float(to_si(unit).factor) == pytest.approx(reference, rel=1e-12, abs=0)


@pytest.mark.parametrize("celsius", ["-40", "0", "15", "37.5", "100"])
def test_temperatures_against_scipy(celsius: str) -> None:
    in_fahrenheit = constants.convert_temperature(float(celsius), "Celsius", "Fahrenheit")
    in_kelvin = constants.convert_temperature(float(celsius), "Celsius", "Kelvin")
    assert convert(f"{celsius} degC", "degF") == pytest.approx(in_fahrenheit, rel=1e-12)
    assert convert(f"{celsius} degC", "K") == pytest.approx(in_kelvin, rel=1e-12)


@pytest.mark.parametrize("unit", sorted(UNITS))
def test_every_unit_has_the_dimension_of_its_kind(unit: str) -> None:
    units = registry()
    si_unit = KINDS[family_of(unit)].si_unit
    assert units.get_dimensionality(UNITS[unit].pint) == units.get_dimensionality(UNITS[si_unit].pint)


@pytest.mark.parametrize("unit", sorted(UNITS))
def test_every_unit_is_shown_in_the_other_system(unit: str) -> None:
    beside = UNITS[unit].beside
    if not beside:
        assert UNITS[unit].system == "none" or unit in {"W", "MW"}
        return
    assert {UNITS[unit].system, UNITS[beside].system} == {"metric", "customary"}
    assert family_of(unit) == family_of(beside)


def test_no_spelling_means_two_units() -> None:
    written = [text for unit in UNITS.values() if unit.written for text in (unit.name, *unit.spellings)]
    assert len(written) == len(set(written))
    assert set(written) <= set(spellings())


def test_a_coulomb_is_not_for_authors() -> None:
    assert "C" not in spellings()
    assert written_units("charge") == ("Ah", "mAh")


@given(st.sampled_from(sorted(UNITS)), st.data())
def test_conversion_there_and_back_is_exact(start: str, data: st.DataObject) -> None:
    same_kind = [unit for unit in sorted(UNITS) if family_of(unit) == family_of(start)]
    end = data.draw(st.sampled_from(same_kind))
    value = data.draw(st.fractions())
    assert link(end, start).apply(link(start, end).apply(value)) == value
    assert link(start, end).reversed() == link(end, start)


def test_units_of_two_kinds_have_no_link() -> None:
    with pytest.raises(ValueError, match=r"kg is a mass, lbf is a force"):
        link("kg", "lbf")


def test_there_is_one_registry_and_import_and_reading_do_without_it() -> None:
    code = (
        "import sys, hardpoint.units as u; u.read('12 kg', 'mass'); assert 'pint' not in sys.modules\n"
        "import pint; made = []; init = pint.UnitRegistry.__init__\n"
        "def counted(self, *a, **k): made.append(1); init(self, *a, **k)\n"
        "pint.UnitRegistry.__init__ = counted\n"
        "u.convert('1 lb', 'kg'); u.compare('62 L / 16.4 US gal'); u.convert('1 ft', 'in'); print(len(made))"
    )
    paths = {**os.environ, "PYTHONPATH": os.pathsep.join(sys.path)}  # the package need not be installed
    run = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True, env=paths)
    assert run.stdout.strip() == "1"
