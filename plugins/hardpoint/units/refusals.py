"""The words of every refusal of a quantity: what was asked for, what the slip is, what would be accepted."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from difflib import get_close_matches

from .errors import QuantityError, either, needs, say_which
from .registry import KINDS, Kind, family, family_of, spellings, written_units

_GALLON = ("bare-gallon", "which gallon", ("US gal", "imp gal"))
_QUART = ("ambiguous-unit", "which quart", ("US qt", "imp qt"))
_TON = ("ambiguous-unit", "which ton", ("t", "short ton", "long ton"))
_GALLON_FLOW = ("bare-gallon", "which gallon", ("US gal/min", "imp gal/min"))
_GALLON_DENSITY = ("bare-gallon", "which gallon", ("lb/US gal", "lb/imp gal"))

_AMBIGUOUS: Mapping[str, tuple[str, str, tuple[str, ...]]] = {
    **dict.fromkeys(("gal", "gals", "gal.", "gallon", "gallons"), _GALLON),
    **dict.fromkeys(("qt", "qts", "quart", "quarts"), _QUART),
    **dict.fromkeys(("ton", "tons"), _TON),
    **dict.fromkeys(("gal/min", "gpm", "gallon/minute", "gallons/minute"), _GALLON_FLOW),
    **dict.fromkeys(("lb/gal", "lbs/gal", "ppg"), _GALLON_DENSITY),
}
"""Units that mean two things, in small letters: the rule, the question, what to write instead."""

_AS_FORCE: Mapping[str, str] = {"kg": "kgf", "lb": "lbf"}
_DEGREES: Mapping[str, str] = {"C": "degC", "F": "degF"}


@dataclass(frozen=True)
class Wanted:
    """A text and the kind that its key asks for; None where any kind would do."""

    text: str
    kind: Kind | None

    @property
    def noun(self) -> str:
        return KINDS[self.kind].noun if self.kind else "a quantity"

    @property
    def example(self) -> str:
        return KINDS[self.kind].example if self.kind else "12 kg"

    def of(self, kind: Kind) -> Wanted:
        """The same text with a kind for the words, where the key did not set one."""
        return self if self.kind else replace(self, kind=kind)

    def needs(self, rule: str, clause: str = "", example: str = "") -> QuantityError:
        return needs(rule, self.text, self.noun, example or self.example, clause)

    def bad_number(self, sign: str, number: str, rest: str) -> QuantityError:
        """What is wrong with the number's form, and the form that is read."""
        return self.needs("unreadable-quantity", _number_fault(sign, number, rest))

    def unknown_unit(self, number: str, unit: str) -> QuantityError:
        """Ambiguous, misspelt or not listed, in this order."""
        ambiguous = self._ambiguous(number, unit)
        if ambiguous is not None:
            return ambiguous
        known = _spellings_of(self.kind)
        if self.kind == "temperature" and unit in _DEGREES:
            return self._did_you_mean(number, _DEGREES[unit])
        small = {spelling.lower(): spelling for spelling in known}
        if unit.lower() in small:
            return self._did_you_mean(number, small[unit.lower()], " Capitals count.")
        close = get_close_matches(unit, known, n=1)
        if close:
            return self._did_you_mean(number, close[0])
        listed = f"its units are {', '.join(written_units(self.kind))}" if self.kind else "its unit is not known"
        return self.needs("unreadable-quantity", listed)

    def _did_you_mean(self, number: str, unit: str, why: str = "") -> QuantityError:
        example = f"{number} {unit}".strip()
        return self.needs("unreadable-quantity", f'did you mean "{unit}"?{why}', example)

    def _ambiguous(self, number: str, unit: str) -> QuantityError | None:
        if unit.lower() not in _AMBIGUOUS:
            return None
        rule, which, units = _AMBIGUOUS[unit.lower()]
        meant = family_of(units[0])
        if self.kind is not None and family(self.kind) != meant:
            return self.needs("wrong-dimension")
        return say_which(rule, self.text, KINDS[meant].noun, which, [f"{number} {choice}".strip() for choice in units])

    def other_kind(self, number: str, unit: str, statement: str) -> QuantityError:
        """A unit of another kind than the key's; a mass for a force is a slip of its own, with its own example."""
        kind = family_of(unit)
        if self.kind == "force" and kind == "mass":
            example = f"{number} {_AS_FORCE[unit]}" if unit in _AS_FORCE else ""
            return self.needs("mass-for-force", f"{unit} is a mass", example)
        if self.kind == "mass" and kind == "force":
            return self.needs("wrong-dimension", f"{unit} is a force")
        part = f'"{statement}" is {KINDS[kind].noun}' if statement != self.text.strip() else ""
        return self.needs("wrong-dimension", part)

    def mixed(self, other: str, kind: Kind) -> QuantityError:
        return self.needs("wrong-dimension", f'"{other}" is {KINDS[kind].noun}')

    def say_reference(self, number: str, unit: str) -> QuantityError:
        choices = (f"{number} {unit} gauge", f"{number} {unit} abs")
        return say_which("gauge-or-absolute", self.text, self.noun, "gauge or absolute", choices)

    def references(self) -> QuantityError:
        return self.needs("gauge-or-absolute", "gauge is not compared with absolute", "200 bar gauge / 2900 psi gauge")

    def only_one(self, stated: str) -> QuantityError:
        clause = f'only "{stated}" is stated, so nothing has to govern'
        return needs("governs-not-stated", self.text, "two statements to choose from", f"{stated} / ...", clause)

    def not_stated(self, choices: Sequence[str]) -> QuantityError:
        return say_which("governs-not-stated", self.text, "one of the two statements", "which governs", choices)


def _spellings_of(kind: Kind | None) -> list[str]:
    wanted = family(kind) if kind else None
    return [text for text, found in spellings().items() if wanted is None or family_of(found.unit) == wanted]


def _number_fault(sign: str, number: str, rest: str) -> str:
    if "," in number:
        return _comma_fault(sign, number, rest)
    if number.startswith("."):
        return f'write a digit before the point, "{sign}0{number}"'
    if number.endswith("."):
        return "write a digit after the point, or no point"
    if number.count(".") > 1:
        return 'a number has one point; thousands are parted by a space, "10 000"'
    if number.startswith("0") and not number.startswith("0."):
        return "a number does not begin with a zero"
    if rest[:1] in ("e", "E"):
        return "write the number out, without exponent"
    return 'digits are grouped in threes, "10 000", and only before the point'


def _comma_fault(sign: str, number: str, rest: str) -> str:
    """A comma stands for a point in one country and for thousands in the next: never guessed."""
    unit = f" {rest}" if rest else ""
    head, _, tail = number.partition(",")
    if head.isdigit() and tail.isdigit():
        as_point = f"{sign}{head}.{tail}{unit}"
        if len(tail) != 3 or len(head) > 3 or head.startswith("0"):
            return f'write a point for the decimal comma, "{as_point}"'
        choices = either((as_point, f"{sign}{head}{tail}{unit}"))
        return f"the comma may stand for the decimal point or for thousands, write {choices}"
    return 'write no comma: a point for decimals, "1.5", a space or nothing between thousands, "10 000"'
