"""Rounding against published examples and against the decimal module."""

from decimal import ROUND_CEILING, ROUND_FLOOR, ROUND_HALF_EVEN, Context, Decimal
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from hardpoint.units import number_text, round_significant, round_to
from hardpoint.units.rounding import Rounding, kept_exponent, magnitude

MODES: dict[Rounding, str] = {"nearest": ROUND_HALF_EVEN, "up": ROUND_CEILING, "down": ROUND_FLOOR}
DECIMALS = st.decimals(allow_nan=False, allow_infinity=False, min_value=-(10**9), max_value=10**9, places=6)
FRACTIONS = st.fractions(min_value=-(10**9), max_value=10**9)


# ASME A112.18.1 / CSA B125.1, Annex A.2(d): half-way cases go to the even digit, of the decimal as written.
@pytest.mark.parametrize(("written", "rounded"), [("1.655", "1.66"), ("1.625", "1.62")])
def test_halfway_cases_by_decimal(written: str, rounded: str) -> None:
    assert str(round_to(Decimal(written), -2)) == rounded


@given(DECIMALS, st.integers(-5, 5), st.sampled_from(sorted(MODES)))
def test_rounding_agrees_with_the_decimal_module(value: Decimal, exponent: int, rounding: Rounding) -> None:
    reference = value.quantize(Decimal(f"1E{exponent}"), rounding=MODES[rounding], context=Context(prec=60))
    rounded = round_to(value, exponent, rounding)
    assert (rounded, rounded.as_tuple().exponent) == (reference, exponent)


@given(FRACTIONS, st.integers(-9, 9))
def test_directed_rounding_never_passes_through_the_value(value: Fraction, exponent: int) -> None:
    down, up = round_to(value, exponent, "down"), round_to(value, exponent, "up")
    assert Fraction(down) <= value <= Fraction(up)
    assert Fraction(up) - Fraction(down) in (0, Fraction(10) ** exponent)
    assert round_to(value, exponent) in (down, up)


@given(st.decimals(min_value="0.000001", max_value=10**9, places=6), st.integers(1, 9), st.sampled_from(sorted(MODES)))
def test_significant_digits_agree_with_the_decimal_module(value: Decimal, digits: int, rounding: Rounding) -> None:
    reference = Context(prec=digits, rounding=MODES[rounding]).create_decimal(value)
    assert round_significant(value, digits, rounding) == reference


@pytest.mark.parametrize(
    ("value", "digits", "text"), [("9.96", 2, "10"), ("9.94", 2, "9.9"), ("0", 3, "0"), ("2645.5", 2, "2600")]
)
def test_significant_digits_as_printed(value: str, digits: int, text: str) -> None:
    assert number_text(round_significant(Decimal(value), digits)) == text


def test_no_significant_digit_is_refused() -> None:
    with pytest.raises(ValueError, match="at least one significant digit"):
        round_significant(Decimal(1), 0)


@given(st.decimals(min_value="1E-9", max_value=10**12, allow_nan=False))
def test_magnitude_is_that_of_the_decimal(value: Decimal) -> None:
    assert magnitude(Fraction(value)) == magnitude(-Fraction(value)) == value.adjusted()


def test_zero_has_no_magnitude() -> None:
    with pytest.raises(ValueError, match="zero"):
        magnitude(Fraction(0))


@given(st.integers(-6, 6), st.fractions(min_value=Fraction(1, 10**6), max_value=10**6))
def test_the_coarsest_digit_that_loses_nothing_is_kept(exponent: int, factor: Fraction) -> None:
    """NIST SP 811 B.7.2: the kept digit's rounding error does not exceed that given; ten times as coarse would."""
    given_error = Fraction(10) ** exponent / 2 * factor
    kept_error = Fraction(10) ** kept_exponent(exponent, factor) / 2
    assert kept_error <= given_error < 10 * kept_error


@pytest.mark.parametrize(
    ("value", "text"),
    [
        ("0", "0"),
        ("-0", "0"),
        ("13.60", "13.60"),
        ("1200", "1200"),
        ("9999.5", "9999.5"),
        ("10000", "10\u202f000"),
        ("1234567.25", "1\u202f234\u202f567.25"),
        ("2.9E+3", "2900"),
        ("-12.5", "\u221212.5"),
        ("0.00012", "0.00012"),
    ],
)
def test_figures_as_printed(value: str, text: str) -> None:
    assert number_text(Decimal(value)) == text
