"""Two statements of one figure: whether they fit, and the slip that would explain why they do not.

Written digits count, trailing zeros too: ``1200`` is written to the unit, ``13.60`` to the hundredth. A statement is
therefore a Decimal whose exponent is that of its last written digit.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from decimal import Decimal
from fractions import Fraction
from typing import Literal, NamedTuple

from hardpoint.words import Later, later, mark

from .registry import UNITS, Link, link
from .rounding import number_text, round_significant, round_to

Status = Literal["single", "agree", "rounded", "disagree"]
Written = tuple[Decimal, str]
"""A value with its written digits, and its canonical unit."""


class Comparison(NamedTuple):
    """``status`` of a text, and the ``slip`` that would explain a disagreement."""

    status: Status
    slip: str | None


def fit(first: Decimal, second: Decimal, joined: Link) -> Status:
    """How two statements fit, ``joined`` leading from the first's unit to the second's.

    Agree: one converted and rounded to the other's written digits equals it, in either direction. Rounded: the
    intervals of half a digit around them overlap or touch. Otherwise they disagree.
    """
    if _equals(first, second, joined) or _equals(second, first, joined.reversed()):
        return "agree"
    low, high = (joined.apply(end) for end in _ends(first))
    least, most = _ends(second)
    return "rounded" if low <= most and least <= high else "disagree"


def _equals(start: Decimal, end: Decimal, joined: Link) -> bool:
    return _converted(start, end, joined) == end


def _converted(start: Decimal, end: Decimal, joined: Link) -> Decimal:
    return round_to(joined.apply(Fraction(start)), last_digit(end))


def _ends(value: Decimal) -> tuple[Fraction, Fraction]:
    middle, half = Fraction(value), Fraction(half_digit(value))
    return middle - half, middle + half


def last_digit(value: Decimal) -> int:
    """The power of ten of the last written digit: 0 for ``1200``, -2 for ``13.60``."""
    return int(value.as_tuple().exponent)


def half_digit(value: Decimal) -> Decimal:
    """Half of the last written digit: 0.5 for ``1200``, 0.005 for ``13.60``."""
    return Decimal((0, (5,), last_digit(value) - 1))


# Slips, the most specific first. A slip explains a pair if the pair fits once the slip is undone.

_ALIKE: Mapping[str, tuple[str, str]] = {
    "US gal": ("imp gal", mark("imperial gallons, not US gallons")),
    "imp gal": ("US gal", mark("US gallons, not imperial gallons")),
    "US gal/min": ("imp gal/min", mark("imperial gallons, not US gallons")),
    "imp gal/min": ("US gal/min", mark("US gallons, not imperial gallons")),
    "lb/US gal": ("lb/imp gal", mark("pounds per imperial gallon, not per US gallon")),
    "lb/imp gal": ("lb/US gal", mark("pounds per US gallon, not per imperial gallon")),
    "US qt": ("imp qt", mark("imperial quarts, not US quarts")),
    "imp qt": ("US qt", mark("US quarts, not imperial quarts")),
    "daN": ("kgf", mark("kgf, not daN")),
    "kgf": ("daN", mark("daN, not kgf")),
}
"""Units often taken for one another: what the statement may be in, and that in words."""

_SELDOM_ALIKE: Mapping[str, tuple[str, str]] = {"bar": ("atm", mark("atm, not bar"))}

_ROUGH: Mapping[tuple[str, str], Decimal] = {
    ("lb", "kg"): Decimal(2),
    ("lbf", "kgf"): Decimal(2),
    ("lbf", "daN"): Decimal(2),
    ("psi", "bar"): Decimal(15),
    ("kPa", "psi"): Decimal(7),
    ("ft", "m"): Decimal(3),
    ("mm", "in"): Decimal(25),
    ("cm", "in"): Decimal("2.5"),
    ("L", "US gal"): Decimal(4),
    ("L", "imp gal"): Decimal("4.5"),
}
"""Factors used in the head, as many of the first unit as make one of the second (common practice)."""


@dataclass(frozen=True)
class _Guess:
    """A pair as it would stand without the slip: ``words`` name the slip, ``joined`` is the link then in force."""

    words: Later
    first: Written
    second: Written
    joined: Link
    only_if_agrees: bool = False

    @property
    def fits(self) -> Status:
        return fit(self.first[0], self.second[0], self.joined)


def slip(first: Written, second: Written) -> Later | None:
    """The slip that would explain a pair that disagrees, in words (pages say them again), or None.

    A slip that makes the pair agree comes before one that only brings it within rounding; then the order of _guesses.
    """
    guesses = [(guess.fits, guess) for guess in _guesses(first, second)]
    for guess in (guess for fits, guess in guesses if fits == "agree"):
        return later("{slip}: {figures}", slip=guess.words, figures=_sentence(guess, _IS))
    for guess in (guess for fits, guess in guesses if fits == "rounded" and not guess.only_if_agrees):
        return later("{slip}: {figures}", slip=guess.words, figures=_sentence(guess, _IS_ABOUT))
    return None


_IS, _IS_ABOUT = mark("{one} is {other}"), mark("{one} is about {other}")


def _sentence(guess: _Guess, words: str) -> Later:
    true = link(guess.first[1], guess.second[1])
    if guess.joined == true:
        return later(words, one=_text(guess.first), other=_text(guess.second))
    right = _converted(guess.first[0], guess.second[0], true)
    return later(_IS, one=_text(guess.first), other=_text((right, guess.second[1])))


def _text(written: Written) -> str:
    value, unit = written
    return f"{number_text(value)} {UNITS[unit].printed}"


def _guesses(first: Written, second: Written) -> Iterator[_Guess]:
    yield from _other_unit(first, second, _ALIKE)
    yield from _exchanged_units(first, second)
    yield from _rough_factor(first, second)
    yield from _other_unit(first, second, _SELDOM_ALIKE)
    yield from _moved_point(first, second)
    yield from _exchanged_digits(first, second)


def _other_unit(first: Written, second: Written, alike: Mapping[str, tuple[str, str]]) -> Iterator[_Guess]:
    """Imperial for US gallons, kgf for daN, atm for bar, and the reverse."""
    if second[1] in alike:
        unit, words = alike[second[1]]
        yield _guess(later("the second looks like {unit}", unit=later(words)), first, (second[0], unit))
    if first[1] in alike:
        unit, words = alike[first[1]]
        yield _guess(later("the first looks like {unit}", unit=later(words)), (first[0], unit), second)


def _exchanged_units(first: Written, second: Written) -> Iterator[_Guess]:
    yield _guess(later("the two units look exchanged"), (first[0], second[1]), (second[0], first[1]))


def _rough_factor(first: Written, second: Written) -> Iterator[_Guess]:
    """Two pounds to the kilogram, fifteen psi to the bar."""
    for (many, one), rough in _ROUGH.items():
        if {many, one} == {first[1], second[1]}:
            exact = number_text(round_significant(link(one, many).factor, 5))
            factor = 1 / Fraction(rough) if first[1] == many else Fraction(rough)
            words = later(
                "looks converted at {rough} {many} to the {one} instead of {exact}",
                rough=number_text(rough),
                many=many,
                one=one,
                exact=exact,
            )
            yield _Guess(words, first, second, Link(factor, Fraction(0)))


def _moved_point(first: Written, second: Written) -> Iterator[_Guess]:
    words = later("a decimal point looks moved by one place")
    for places in (1, -1):
        yield _guess(words, first, (_shifted(second[0], places), second[1]))
    for places in (1, -1):
        yield _guess(words, (_shifted(first[0], places), first[1]), second)


def _shifted(value: Decimal, places: int) -> Decimal:
    sign, digits, _ = value.as_tuple()
    return Decimal((sign, digits, last_digit(value) + places))


def _exchanged_digits(first: Written, second: Written) -> Iterator[_Guess]:
    """Neighbouring digits; only where the pair then agrees: within rounding, chance alone explains too many."""
    for value in _with_digits_exchanged(second[0]):
        yield _guess(later("two digits of the second look exchanged"), first, (value, second[1]), only_if_agrees=True)
    for value in _with_digits_exchanged(first[0]):
        yield _guess(later("two digits of the first look exchanged"), (value, first[1]), second, only_if_agrees=True)


def _with_digits_exchanged(value: Decimal) -> Iterator[Decimal]:
    sign, digits, _ = value.as_tuple()
    for at in range(len(digits) - 1):
        left, right = digits[at], digits[at + 1]
        if left != right and not (at == 0 and right == 0):  # nobody writes a leading zero
            yield Decimal((sign, (*digits[:at], right, left, *digits[at + 2 :]), last_digit(value)))


def _guess(words: Later, first: Written, second: Written, *, only_if_agrees: bool = False) -> _Guess:
    return _Guess(words, first, second, link(first[1], second[1]), only_if_agrees)
