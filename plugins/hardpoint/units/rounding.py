"""Rounding and printing of numbers, exact throughout: fractions in, decimals out, never a float in between.

Printed figures: a decimal point; from five digits on, groups of three before the point with a narrow no-break space
(``10 000``, U+202F; ``1200`` stays whole); a true minus sign (U+2212).
"""

from __future__ import annotations

import math
from decimal import Decimal
from fractions import Fraction
from typing import Literal

Rounding = Literal["nearest", "up", "down"]
"""Half-way cases of ``nearest`` go to the even digit (ASME A112.18.1 / CSA B125.1, Annex A.2(d)). ``up`` and ``down``
mean towards greater and smaller values, so that a negative figure does not pass through its limit either."""

THIN_SPACE = "\u202f"
MINUS = "\u2212"


def round_to(value: Fraction | Decimal | int, exponent: int, rounding: Rounding = "nearest") -> Decimal:
    """``value`` as a multiple of ``10**exponent``: 1.655 with exponent -2 is 1.66, 1.625 is 1.62."""
    scaled = Fraction(value) / Fraction(10) ** exponent
    return Decimal(f"{_whole(scaled, rounding)}E{exponent}")


def _whole(value: Fraction, rounding: Rounding) -> int:
    if rounding == "up":
        return math.ceil(value)
    if rounding == "down":
        return math.floor(value)
    return round(value)  # of a Fraction: half to even, exact


def round_significant(value: Fraction | Decimal | int, digits: int, rounding: Rounding = "nearest") -> Decimal:
    """``value`` to a number of significant digits: 9.96 to two is 10, not 10.0. ValueError when digits < 1."""
    if digits < 1:
        raise ValueError(f"at least one significant digit is kept, got {digits}")
    if value == 0:
        return Decimal(0)
    exponent = magnitude(Fraction(value)) - digits + 1
    rounded = round_to(value, exponent, rounding)
    if rounded != 0 and magnitude(Fraction(rounded)) - digits + 1 > exponent:
        return round_to(rounded, exponent + 1, rounding)
    return rounded


def magnitude(value: Fraction) -> int:
    """The power of ten of the first significant digit: 2 for 206.8, -1 for 0.3048. ValueError for zero."""
    if value == 0:
        raise ValueError("zero has no significant digit")
    size = abs(value)
    guess = len(str(size.numerator)) - len(str(size.denominator))
    return guess if size >= Fraction(10) ** guess else guess - 1


def kept_exponent(exponent: int, factor: Fraction) -> int:
    """The last digit that a converted value keeps, as a power of ten.

    NIST SP 811 B.7.2: keep the digits that are consistent with the rounding error of the value as given. Of half a
    digit ``10**exponent / 2`` there become ``factor`` times as much; the coarsest digit whose own half does not exceed
    that is kept, so that nothing said is lost. 36 ft (exponent 0, factor 0.3048): -1, thus 11.0 m.
    """
    return exponent + magnitude(factor)


def number_text(value: Decimal) -> str:
    """The figure as it is printed: ``26``, ``13.60``, ``10 000`` (narrow no-break space), minus as U+2212."""
    sign, digits = (MINUS, -value) if value < 0 else ("", abs(value))
    whole, point, rest = format(digits, "f").partition(".")
    grouped = f"{int(whole):,}".replace(",", THIN_SPACE) if len(whole) > 4 else whole
    return sign + grouped + point + rest
