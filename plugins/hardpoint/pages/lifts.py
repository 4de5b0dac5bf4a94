"""Declared lifts on the structure page: the verdict of the figures first, state by state, then what was declared."""

from __future__ import annotations

from collections.abc import Iterator

from hardpoint.figures.loads import state_of
from hardpoint.figures.rigging import RefusedError
from hardpoint.figures.worked import Case, MissingError
from hardpoint.figures.workings.masses import state_words
from hardpoint.figures.workings.slings import Computed, compute
from hardpoint.pages import addresses
from hardpoint.pages.shown import Shown
from hardpoint.pages.site import Site
from hardpoint.pages.telling import tell
from hardpoint.pages.terms import first_capital, name_words
from hardpoint.pages.view import Block, Line, Lines, Row, Table, Tone, Value
from hardpoint.records.load_points import Condition, Lift
from hardpoint.units import Rounding, computed
from hardpoint.words import mark, say, say_again

_HEADS = (
    mark("Lift"),
    mark("State"),
    mark("What the figures say"),
    mark("Heaviest"),
    mark("Worst leg"),
    mark("Steepest leg"),
)
_CAUTION = mark(
    "For points that are whole and were inspected after the accident. Righting, breaking out of water or mud and "
    "damage are not computed. A licensed rigger decides."
)


def lift_blocks(site: Site, shown: Shown) -> tuple[Block, ...]:
    """A table of verdicts, and below it each lift as it was declared."""
    lifts = shown.airframe.lifts
    caution = Lines((Line(say(_CAUTION), tone="caution"),), "lifts-caution")
    if not lifts:
        return (Lines((Line(say("no lift is declared in this record")),)), caution)
    case = Case(shown.airframe, site.station)
    rows = tuple(row for name, lift in lifts.items() for row in _rows(case, name, lift))
    table = Table("lifts-table", say("Each declared lift in each state it is meant for"), tuple(map(say, _HEADS)), rows)
    return (caution, table, Lines(tuple(_declared(name, lift) for name, lift in lifts.items()), "lifts-declared"))


def _rows(case: Case, name: str, lift: Lift) -> Iterator[Row]:
    for conditions in lift.states:
        state = state_of(case, conditions, lift.taken_off)
        words = Value(say_again(state_words(conditions)))
        mass = Value(say("cannot be said"), "unknown")
        if not isinstance(state.mass, MissingError):
            mass = _printed(state.mass, "kg", "kg", "up")
        first = Value(first_capital(name_words(name)))
        verdict, legs, tone = verdict_of(case, name, lift, conditions)
        id_ = f"lifted-{name}-{'-'.join(conditions).replace(' ', '-')}"
        yield Row((first, words, verdict, mass, *legs), id_, tone)


def verdict_of(
    case: Case, name: str, lift: Lift, conditions: tuple[Condition, ...]
) -> tuple[Value, tuple[Value, ...], Tone]:
    """What the figures say of a lift in a state, the cells of its legs, and the tone of its row."""
    nothing = (Value(say("not computed")), Value(say("not computed")))
    try:
        found = compute(case, name, lift, state_of(case, conditions, lift.taken_off))
    except RefusedError as refused:
        return Value(say("Refused: {reason}", reason=say_again(refused.reason)), refuses=True), nothing, "caution"
    except MissingError as missing:
        reason = say("UNKNOWN, cannot be said: {reason}", reason=say_again(missing.reason))
        return Value(reason, "unknown"), nothing, "unknown"
    return _not_refused(found), _legs(found), "plain"


def _not_refused(found: Computed) -> Value:
    factor = found.factor.said
    return Value(
        say("not refused: {used} of what the points may carry is used", used=_printed_share(found)),
        note=say("the station's factor of {factor} counted", factor=factor),
    )


def _printed_share(found: Computed) -> str:
    return computed((found.utilisation, found.utilisation), "", "", "up", 2)[0]


def _legs(found: Computed) -> tuple[Value, ...]:
    worst = max(found.legs, key=lambda leg: leg.tension_n)
    told = _printed((worst.tension_n,) * 2, "N", "kN", "up")
    angle = max(leg.angle_deg for leg in found.legs)
    steepest = say("{degrees}° from the vertical", degrees=computed((angle, angle), "", "", "up", 2)[0])
    where = say("at {point}, without the factor", point=name_words(worst.eye.id))
    return Value(told.text, beside=told.beside, note=where), Value(steepest)


def _printed(value: tuple[float, float], unit: str, printed_in: str, rounded: Rounding) -> Value:
    text, *beside = computed(value, unit, printed_in, rounded)
    return Value(text, beside=tuple(beside))


def _declared(name: str, lift: Lift) -> Line:
    points = ", ".join(name_words(point) for point in lift.points)
    line = tell(lift.tail_line)
    words = say(
        "by {points}; tail line: {point}; {states}",
        points=points,
        point=line.text.replace("-", " "),
        states=" / ".join(tell(state).text for state in lift.states),
    )
    if lift.not_while_live:
        devices = ", ".join(name_words(device) for device in lift.not_while_live)
        words += "; " + say("refused while live or UNKNOWN: {devices}", devices=devices)
    if lift.not_until:
        words += "; " + say("not until {what}", what=lift.not_until)
    return Line(words, f"{first_capital(name_words(name))}:", id=addresses.anchor(("lifts", name)))
