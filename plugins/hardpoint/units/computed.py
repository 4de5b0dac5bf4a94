"""Computed figures as they are printed: in a unit of choice and, beside it, in the other system's."""

from __future__ import annotations

from decimal import Decimal
from fractions import Fraction

from hardpoint.words import say

from .registry import UNITS, link
from .rounding import Rounding, number_text, round_significant

_NOISE = 12
"""Significant digits that are kept before a figure is rounded up or down: a float's last bits are no quantity."""


def computed(value: tuple[float, float], unit: str, printed_in: str, rounding: Rounding, digits: int = 3) -> list[str]:
    """A range in ``unit`` as it is printed: in ``printed_in``, then in the unit that stands beside it, if there is one.

    One value is rounded as asked; of a range the least is rounded down and the greatest up, so that it never shrinks.
    ``unit`` "" is a bare number. A whole number is printed as one.
    ValueError where the two units are of different kinds.

    >>> computed((1495.2, 1495.2), "kg", "kg", "up", 4)
    ['1496 kg', '3297 lb']
    >>> computed((612.0, 648.5), "kg", "kg", "up")
    ['612 to 649 kg', '1340 to 1430 lb']
    >>> computed((2, 2), "", "", "nearest")
    ['2']
    """
    if not printed_in:
        return [_ends((_exact(value[0]), _exact(value[1])), rounding, digits)]
    beside = UNITS[printed_in].beside
    return [_in(value, unit, name, rounding, digits) for name in (printed_in, *([beside] if beside else []))]


def _in(value: tuple[float, float], unit: str, name: str, rounding: Rounding, digits: int) -> str:
    scale = link(unit, name)
    ends = (scale.apply(_exact(value[0])), scale.apply(_exact(value[1])))
    return f"{_ends(ends, rounding, digits)} {UNITS[name].printed}"


def _ends(ends: tuple[Fraction, Fraction], rounding: Rounding, digits: int) -> str:
    low, high = ends
    if low == high:
        return _text(low, rounding, digits)
    first, last = _text(low, "down", digits), _text(high, "up", digits)
    return first if first == last else say("{low} to {high}", low=first, high=last)


def _text(value: Fraction, rounding: Rounding, digits: int) -> str:
    if value.denominator == 1 and abs(value) < 10**digits:
        return number_text(Decimal(value.numerator))
    return number_text(round_significant(_exact(value), digits, rounding))


def _exact(value: float | Fraction) -> Fraction:
    return Fraction(round_significant(Fraction(value), _NOISE)) if value else Fraction(0)
