"""Text to quantity: ``62 L / 16.4 US gal`` -> two statements. Nothing is guessed; what is unclear is refused.

A statement is a number and a unit. Number: optional sign; digits, in groups of three by a space, a no-break, a narrow
no-break or a thin space if at all; optional point and digits. No exponent, no comma, no leading zero. Units by their
SI spelling, capitals included. Two statements of one figure are parted by a slash.
"""

from __future__ import annotations

import re
from decimal import Decimal
from fractions import Fraction
from functools import lru_cache
from typing import NamedTuple

from .errors import QuantityError
from .pairs import Comparison, half_digit
from .quantity import Quantity, Stated
from .refusals import Wanted
from .registry import KINDS, Kind, Reference, Spelling, family, family_of, spellings, to_si

_LONGEST_TEXT = 100
_MOST_DIGITS = 15

_SLASH = re.compile(r"\s*/\s*(?=[-+\u2212]?[0-9.,])")
_PARTS = re.compile(
    r"(?P<sign>[-+\u2212]?)(?P<number>[0-9.,](?:[0-9.,]|[ \u00a0\u2009\u202f](?=[0-9]))*)\s*(?P<unit>.*)", re.S
)
_NUMBER = re.compile(
    r"(?:0|[1-9][0-9]*|[1-9][0-9]{0,2}(?P<space>[ \u00a0\u2009\u202f])[0-9]{3}(?:(?P=space)[0-9]{3})*)(?:\.[0-9]+)?"
)
_EXPONENT = re.compile(r"[eE][-+\u2212]?[0-9]")
_SPACES = str.maketrans("", "", " \u00a0\u2009\u202f")
_EXPONENTS_DOWN = str.maketrans("²³", "23")


def read(text: str, kind: Kind, governs: str | None = None) -> Quantity:
    """The quantity that a text states, of the kind that its key asks for.

    ``governs`` repeats one of two statements: the one that enters figures. Raises QuantityError, nothing else.
    """
    return _read(text, kind, governs)


@lru_cache(maxsize=65536)
def _read(text: str, kind: Kind, governs: str | None) -> Quantity:
    stated = _parse(Wanted(text, kind))
    return Quantity(text, kind, stated, None if governs is None else _governing(governs, stated, kind))


def compare(text: str) -> Comparison:
    """How the two statements of a text fit, the kind found from their units. Raises QuantityError."""
    quantity = _of_any_kind(text)
    return Comparison(quantity.status, quantity.slip)


def convert(text: str, unit: str) -> float:
    """One statement in another unit, not rounded: ``convert("36 ft", "m")`` is 10.9728. Raises QuantityError.

    Gauge is not turned into absolute: ``unit`` may name a reference only if the text names the same.
    """
    quantity = _of_any_kind(text)
    wanted = Wanted(text, quantity.kind)
    if len(quantity.stated) != 1:
        raise wanted.needs("unreadable-quantity", "only one statement can be converted", quantity.stated[0].text)
    target = _target(unit, quantity, wanted)
    return float(quantity.stated[0].exactly(target))


def _target(unit: str, quantity: Quantity, wanted: Wanted) -> str:
    plain = _plain_unit(unit)
    found = Spelling(plain, "") if plain == quantity.si_unit else spellings().get(plain)
    if found is None:
        raise Wanted(unit, quantity.kind).unknown_unit("", plain)
    if family_of(found.unit) != family(quantity.kind):
        raise wanted.mixed(unit, family_of(found.unit))
    if found.reference and found.reference != quantity.stated[0].reference:
        raise wanted.references()
    return found.unit


@lru_cache(maxsize=65536)
def _of_any_kind(text: str) -> Quantity:
    stated = _parse(Wanted(text, None))
    found = family_of(stated[0].unit)
    kind: Kind = "gauge pressure" if found == "pressure" and not stated[0].reference else found
    return Quantity(text, kind, stated)


def _parse(wanted: Wanted) -> tuple[Stated, ...]:
    """One or two statements of the kind wanted."""
    if len(wanted.text) > _LONGEST_TEXT:
        raise wanted.needs("unreadable-quantity", f"it is longer than {_LONGEST_TEXT} characters")
    parts = _SLASH.split(wanted.text.strip())
    if len(parts) > 2:
        raise wanted.needs("unreadable-quantity", "one figure is stated in two units at most")
    stated = tuple(_statement(part, wanted) for part in parts)
    if len(stated) == 2:
        _check_pair(stated[0], stated[1], wanted)
    return stated


def _check_pair(first: Stated, second: Stated, wanted: Wanted) -> None:
    if family_of(first.unit) != family_of(second.unit):
        raise wanted.of(family_of(first.unit)).mixed(second.text, family_of(second.unit))
    if first.unit == second.unit:
        raise wanted.needs("unreadable-quantity", f"both statements are in {first.unit}", first.text)
    if first.reference != second.reference:
        raise wanted.of("pressure").references()


class _Split(NamedTuple):
    sign: str
    number: str
    unit: str


def _statement(text: str, wanted: Wanted) -> Stated:
    parts = _split(text, wanted)
    value = _value(parts, wanted)
    found = _spelling(parts, text, wanted)
    _check_sign(value, found, text, wanted)
    return Stated(text, value, found.unit, half_digit(value), found.reference)


def _split(text: str, wanted: Wanted) -> _Split:
    match = _PARTS.fullmatch(text)
    if match is None:
        raise wanted.needs("unreadable-quantity", "" if not text else "begin with the number")
    return _Split(match["sign"], match["number"], match["unit"])


def _value(parts: _Split, wanted: Wanted) -> Decimal:
    if _NUMBER.fullmatch(parts.number) is None or _EXPONENT.match(parts.unit):
        raise wanted.bad_number(parts.sign, parts.number, parts.unit)
    digits = parts.number.translate(_SPACES)
    if len(digits) - digits.count(".") > _MOST_DIGITS:
        raise wanted.needs("unreadable-quantity", f"the number has more than {_MOST_DIGITS} digits")
    value = Decimal(digits)
    return -value if parts.sign in ("-", "\u2212") else value


def _spelling(parts: _Split, text: str, wanted: Wanted) -> Spelling:
    """The unit, of the kind wanted and with the reference that the kind wants."""
    unit = _plain_unit(parts.unit)
    number = parts.sign + parts.number
    if not unit:
        part = "" if text == wanted.text.strip() else f' of "{text}"'
        raise wanted.needs("unreadable-quantity", f"say the unit{part}")
    found = spellings().get(unit)
    if found is None:
        raise wanted.unknown_unit(number, unit)
    if wanted.kind is None:
        return found
    if family_of(found.unit) != family(wanted.kind):
        raise wanted.other_kind(number, found.unit, text)
    _check_reference(found.reference, number, found.unit, wanted)
    return found


def _plain_unit(unit: str) -> str:
    return " ".join(unit.translate(_EXPONENTS_DOWN).split())


def _check_reference(reference: Reference, number: str, unit: str, wanted: Wanted) -> None:
    if wanted.kind == "pressure" and not reference:
        raise wanted.say_reference(number, unit)
    if wanted.kind == "gauge pressure" and reference == "absolute":
        raise wanted.needs("gauge-or-absolute", "it is said to be absolute", f"{number} {unit} gauge")


def _check_sign(value: Decimal, found: Spelling, text: str, wanted: Wanted) -> None:
    """Refuse what cannot be: a mass below nothing, a temperature below absolute zero, a pressure below vacuum."""
    kind = wanted.kind or family_of(found.unit)
    if value < 0 and not KINDS[kind].signed:
        raise wanted.of(kind).needs("negative-quantity", f'"{text}" is less than nothing')
    if value < 0 and found.reference == "absolute":
        raise wanted.of(kind).needs("negative-quantity", "an absolute pressure is not below zero")
    if kind == "temperature" and to_si(found.unit).apply(Fraction(value)) < 0:
        raise wanted.of(kind).needs("negative-quantity", "it is below absolute zero")


def _governing(text: str, stated: tuple[Stated, ...], kind: Kind) -> Stated:
    choices = [statement.text for statement in stated]
    if len(stated) == 1:
        raise Wanted(text, kind).only_one(choices[0])
    try:
        repeated = _parse(Wanted(text, kind))
    except QuantityError as error:
        raise Wanted(text, kind).not_stated(choices) from error
    for statement in stated:
        if len(repeated) == 1 and (repeated[0].value, repeated[0].unit) == (statement.value, statement.unit):
            return statement
    raise Wanted(text, kind).not_stated(choices)
