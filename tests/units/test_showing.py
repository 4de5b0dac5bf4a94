"""What stands beside the author's words."""

from decimal import Decimal
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from hardpoint.units import Kind, Rounding, read, shown
from hardpoint.units.pairs import last_digit
from hardpoint.units.registry import link
from hardpoint.units.rounding import kept_exponent, number_text, round_to


# NIST SP 811 B.7.2 (36 ft); NIST LC 1137 (36 in, 40.1 in).
@pytest.mark.parametrize(
    ("value", "unit", "target", "text"),
    [("36", "ft", "m", "11.0"), ("36", "in", "cm", "91"), ("40.1", "in", "cm", "101.9")],
)
def test_digits_of_published_conversions(value: str, unit: str, target: str, text: str) -> None:
    joined, given_value = link(unit, target), Decimal(value)
    exponent = kept_exponent(last_digit(given_value), joined.factor)
    assert number_text(round_to(joined.apply(Fraction(given_value)), exponent)) == text


@pytest.mark.parametrize(
    ("text", "kind", "rounding", "texts"),
    [
        ("36 ft", "length", "nearest", ["11.0 m"]),
        ("12 kg", "mass", "nearest", ["26 lb"]),  # 26.455
        ("12 kg", "mass", "up", ["27 lb"]),
        ("12 kg", "mass", "down", ["26 lb"]),
        ("62 L", "volume", "nearest", ["16.4 US gal"]),  # 16.379
        ("62 L", "volume", "down", ["16.3 US gal"]),
        ("13.6 imp gal", "volume", "nearest", ["61.8 L"]),
        ("560 lbf", "force", "nearest", ["249.1 daN"]),  # 249.100
        ("560 lbf", "force", "up", ["249.2 daN"]),
        ("400 kgf", "force", "down", ["881 lbf"]),  # 881.85
        ("200 bar", "gauge pressure", "nearest", ["2900 psi"]),  # 2900.75
        ("200 bar", "gauge pressure", "up", ["2910 psi"]),
        ("200 bar gauge", "pressure", "nearest", ["2900 psi gauge"]),
        ("200 bar abs", "pressure", "nearest", ["2900 psi absolute"]),
        ("40000 kg", "mass", "up", ["88\u202f185 lb"]),  # 88 184.9
        ("-2250 mm", "length", "down", ["\u221288.59 in"]),  # -88.5827
        ("14 degC", "temperature", "nearest", ["57 °F"]),  # 57.2
        ("0.5 m2", "area", "nearest", ["5 ft²"]),
        ("1 m / 1000 mm", "length", "nearest", ["3 ft"]),
        ("90 s", "time", "nearest", []),
        ("45 deg", "angle", "nearest", []),
        ("400 V", "voltage", "nearest", []),
        ("18 kWh", "energy", "nearest", []),
        ("62 L / 16.4 US gal", "volume", "nearest", []),
        ("10 L / 2.5 US gal", "volume", "nearest", []),
        ("560 lbf / 250 daN", "force", "down", ["249.1 daN", "562 lbf"]),  # 249.100, 562.02
        ("62 L / 13.6 US gal", "volume", "nearest", ["16.4 US gal", "51.5 L"]),
    ],
)
def test_conversions_beside_the_words(text: str, kind: Kind, rounding: Rounding, texts: list[str]) -> None:
    assert [conversion.text for conversion in shown(read(text, kind), rounding)] == texts


# NIST SP 811 B.8: 1 ft3/min = 4.719 474 E-04 m3/s, so 30 L/min = 1.0594 ft3/min and 75 L/min = 2.6486 ft3/min.
@pytest.mark.parametrize(
    ("text", "texts"),
    [
        ("30 L/min", ["1.06 ft³/min"]),
        ("75 L/min", ["2.65 ft³/min"]),
        ("1.00 ft3/min", ["28.4 L/min"]),
        ("30 L/min / 1.06 ft3/min", []),
    ],
)
def test_another_unit_can_be_asked_for_beside_a_metric_figure(text: str, texts: list[str]) -> None:
    assert [conversion.text for conversion in shown(read(text, "flow"), "up", "ft3/min")] == texts


def test_a_conversion_says_of_which_statement_and_how_it_was_rounded() -> None:
    first, second = shown(read("560 lbf / 250 daN", "force", "560 lbf"), "down")
    assert (first.unit, first.rounded, first.of) == ("daN", "down", "560 lbf")
    assert (second.unit, second.rounded, second.of) == ("lbf", "down", "250 daN")


# Exact by definition, published in NIST SP 811 Appendix B and HB 44 Appendix C; independent of the registry.
PER_UNIT: dict[str, tuple[Kind, Fraction]] = {
    "kg": ("mass", 1 / Fraction("0.45359237")),
    "lb": ("mass", Fraction("0.45359237")),
    "L": ("volume", 1 / Fraction("3.785411784")),
    "US gal": ("volume", Fraction("3.785411784")),
    "imp gal": ("volume", Fraction("4.54609")),
    "mm": ("length", 1 / Fraction("25.4")),
    "ft": ("length", Fraction("0.3048")),
    "kgf": ("force", Fraction("9.80665") / Fraction("4.4482216152605")),
    "bar": ("gauge pressure", 100_000 * Fraction("0.00064516") / Fraction("4.4482216152605")),
}


@given(st.sampled_from(sorted(PER_UNIT)), st.integers(0, 10**7), st.integers(0, 4))
def test_directed_rounding_never_passes_through_the_statement(unit: str, digits: int, places: int) -> None:
    kind, factor = PER_UNIT[unit]
    value = Decimal(digits).scaleb(-places)
    quantity = read(f"{value:f} {unit}", kind)
    low, middle, high = (_figure(shown(quantity, rounding)[0].text) for rounding in ("down", "nearest", "up"))
    assert low <= Fraction(value) * factor <= high
    assert middle in (low, high)


def _figure(text: str) -> Fraction:
    number = text.replace("\u202f", "").replace("\u2212", "-").split(" ")[0]
    return Fraction(number)
