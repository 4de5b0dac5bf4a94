"""What stands beside the author's words: the same quantity in the other system's unit."""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache

from .pairs import last_digit
from .quantity import Quantity, Stated
from .registry import UNITS, link
from .rounding import Rounding, kept_exponent, number_text, round_to


@dataclass(frozen=True)
class Shown:
    """A conversion as it is printed, its canonical unit, how it was rounded, and ``of`` which statement it is one."""

    text: str
    unit: str
    rounded: Rounding
    of: str = ""


@lru_cache(maxsize=65536)
def shown(quantity: Quantity, rounding: Rounding = "nearest", into: str = "") -> tuple[Shown, ...]:
    """The conversions that a page sets beside a quantity.

    A single statement is shown in the other system's unit, if there is one. A pair in both systems that fits needs
    nothing. Of a pair that disagrees each statement is shown in the other's unit, also where one governs, so that the
    reader sees both. Digits by NIST SP 811 B.7.2; ``up`` and ``down`` never pass through the value as stated. ``into``:
    another unit than the usual one to set beside a statement of the other system.
    """
    if quantity.status == "disagree":
        first, second = quantity.stated
        return (_converted(first, second.unit, rounding), _converted(second, first.unit, rounding))
    stated = quantity.governs or quantity.stated[0]
    beside = UNITS[stated.unit].beside
    beside = into if into and UNITS[into].system == UNITS[beside or into].system else beside
    if not beside or UNITS[beside].system in {UNITS[other.unit].system for other in quantity.stated}:
        return ()
    return (_converted(stated, beside, rounding),)


def _converted(stated: Stated, unit: str, rounding: Rounding) -> Shown:
    exponent = kept_exponent(last_digit(stated.value), link(stated.unit, unit).factor)
    figure = number_text(round_to(stated.exactly(unit), exponent, rounding))
    reference = f" {stated.reference}" if stated.reference else ""
    return Shown(f"{figure} {UNITS[unit].printed}{reference}", unit, rounding, stated.text)
