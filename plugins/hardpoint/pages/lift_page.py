"""The lift page: one sheet for the crane. Points, masses, legs of declared lifts by hook height, and blanks."""

from __future__ import annotations

from collections.abc import Iterator

from hardpoint.drawings.plot import Curve, plot
from hardpoint.figures.loads import State, state_of
from hardpoint.figures.rigging import RefusedError, hook_height
from hardpoint.figures.worked import Case, MissingError
from hardpoint.figures.workings.masses import state_words
from hardpoint.figures.workings.masses import states as usual_states
from hardpoint.figures.workings.slings import Computed, compute
from hardpoint.pages import addresses
from hardpoint.pages.across.anchor_points import basis_of
from hardpoint.pages.lifts import verdict_of
from hardpoint.pages.shown import Shown, shown_type
from hardpoint.pages.site import Page, Site
from hardpoint.pages.telling import place_words, tell
from hardpoint.pages.terms import first_capital, name_words, term
from hardpoint.pages.view import Block, Drawing, Line, Lines, Link, Row, Section, SheetPage, Table, Value
from hardpoint.records.fleet import Type
from hardpoint.records.known import entries
from hardpoint.records.load_points import LIFTING, Lift
from hardpoint.units import Rounding, computed
from hardpoint.words import mark, say, say_again

_TIMES = (0.5, 0.75, 1.0, 1.5, 2.0)
"""Hook heights around the declared one, as multiples of it."""
_BLANK = "_" * 22
_BLANKS = (
    mark("Points inspected after the accident by"),
    mark("Mass measured on the hook"),
    mark("Water, fuel and mud still in it"),
    mark("Rigging: slings, shackles, spreader"),
    mark("Tail line held by"),
    mark("Date, time, signature of the licensed rigger"),
)


def lift_page(site: Site, type_: Type) -> Page:
    """One A4 sheet for the crane; what single aircraft have otherwise is told at its head."""
    shown = shown_type(type_)
    page = addresses.lift_page(type_.id)
    title = say("{name}: lifting sheet", name=shown.name)
    case = Case(shown.airframe, site.station)
    sections = (
        Section("inspected", say("Before a hook goes in"), (Lines((Line(_BLANK, say(_BLANKS[0]) + ":"),)),)),
        Section("points", say("Points"), (_points(site, shown),), say("Points")),
        Section("states", say("Mass and centre of gravity"), (_masses(case),), say("Mass")),
        Section("legs", say("Sling legs of declared lifts"), tuple(_legs(case)), say("Legs")),
        Section("sheet", say("To be filled in"), (_blanks(),), say("Fill in")),
    )
    lead = say(
        "For planning. The station's factor is counted in what is used, not in the legs. Righting, breaking out of "
        "water or mud and damage are not computed. A licensed rigger decides."
    )
    links = (
        Link(say("Structure: maps and load points"), addresses.relative(addresses.structure_page(type_.id), page)),
        Link(say("All figures, converted, with sources"), addresses.relative(addresses.figures_page(type_.id), page)),
    )
    frame = site.frame(page, title, (shown.name, addresses.type_page(type_.id)))
    view = SheetPage(frame, title, lead, sections, links, site.cautions, look="liftsheet")
    return Page(page, title, "sheet.html", view)


def _points(site: Site, shown: Shown) -> Block:
    """Those that lift and those that do not, each with the reason."""
    rows = []
    for name, point in entries(shown.airframe.load_points).items():
        lifts = point.use in LIFTING
        use = term(point.use) if lifts else say("{use}: does not lift", use=term(point.use))
        allowable = tell(point.allowable, ("load_points", name, "allowable"))
        cells = (
            Value(first_capital(name_words(name))),
            Value(use),
            Value(place_words(point.place)),
            Value(allowable.text, allowable.state, allowable.beside, note=tell(point.allowable_is_for).text),
            basis_of(point, site.station),
        )
        rows.append(Row(cells, f"sheet-{name}", "plain" if lifts else "caution"))
    heads = (say("Point"), say("Use"), say("Where"), say("Allowable"), say("Basis"))
    return Table("sheet-points", say("Points as recorded, before the accident"), heads, tuple(rows))


def _masses(case: Case) -> Block:
    rows = tuple(_mass(case, state_of(case, conditions, off)) for conditions, off in usual_states(case))
    heads = (say("State"), say("Mass"), say("Centre of gravity, station"))
    return Table(
        "sheet-masses", say("By state; what comes out of the water is heavier than it was beneath"), heads, rows
    )


def _mass(case: Case, state: State) -> Row:
    words = Value(say_again(state_words(state.conditions)))
    return Row((words, _printed(state.mass, "kg", "kg", "up"), _printed(state.station, "m", case.airframe.datum.unit)))


def _printed(
    value: tuple[float, float] | MissingError, unit: str, printed_in: str, rounded: Rounding = "nearest"
) -> Value:
    if isinstance(value, MissingError):
        return Value(say("UNKNOWN: {reason}", reason=say_again(value.reason)), "unknown")
    text, *beside = computed(value, unit, printed_in, rounded, 4 if rounded == "nearest" else 3)
    return Value(text, beside=tuple(beside))


def _legs(case: Case) -> Iterator[Block]:
    lifts = case.airframe.lifts
    if not lifts:
        yield Lines((Line(say("no lift is declared in this record")),))
    plots = []
    for name, lift in lifts.items():
        title = first_capital(name_words(name))
        for conditions in lift.states:
            state = state_of(case, conditions, lift.taken_off)
            words = say("{lift}, {state}", lift=title, state=say_again(state_words(conditions)))
            found = heights(case, name, lift, state)
            if found:
                yield _table(name, words, found)
                if len(found) > 1:
                    plots.append(_plot(name, words, found))
            else:
                verdict, _, tone = verdict_of(case, name, lift, conditions)
                yield Lines((Line(verdict.text, f"{words}:", tone),))
    yield from plots


def heights(case: Case, name: str, lift: Lift, state: State) -> list[tuple[float, Computed | str]]:
    """The lift with its hook at several heights (m), or the reason where it is refused. [] where it is at its own.

    Nothing is worked out at other heights where the declared one is refused or cannot be said.
    """
    try:
        declared = hook_height(lift.hook, name)
        at_its_own = compute(case, name, lift, state)
    except (RefusedError, MissingError):
        return []
    found: list[tuple[float, Computed | str]] = []
    # By one leg the height of the hook changes nothing but the length of the leg.
    for times in _TIMES if len(at_its_own.legs) > 1 else (1.0,):
        height = declared * times
        try:
            found.append((height, compute(case, name, lift, state, height)))
        except (RefusedError, MissingError) as refused:
            found.append((height, refused.reason))
    return found


def _table(name: str, words: str, found: list[tuple[float, Computed | str]]) -> Table:
    heads = (say("Hook over the highest point"), say("Worst leg"), say("Steepest leg"), say("Share used"))
    rows = tuple(_height(height, result) for height, result in found)
    return Table(f"legs-{name}-{words[-12:].strip().replace(' ', '-')}", words, heads, rows)


def _height(height: float, result: Computed | str) -> Row:
    text, *beside = computed((height, height), "m", "m", "nearest")
    first = Value(text, beside=tuple(beside))
    if isinstance(result, str):
        refused = Value(say("Refused: {reason}", reason=say_again(result)), refuses=True)
        return Row((first, refused, Value(say("not computed")), Value(say("not computed"))), tone="caution")
    worst = max(leg.tension_n for leg in result.legs)
    told, *other = computed((worst, worst), "N", "kN", "up")
    angle = max(leg.angle_deg for leg in result.legs)
    steep = say("{degrees}° from the vertical", degrees=computed((angle, angle), "", "", "up", 2)[0])
    share = computed((result.utilisation,) * 2, "", "", "up", 2)[0]
    return Row((first, Value(told, beside=tuple(other)), Value(steep), Value(share)))


def _plot(name: str, words: str, found: list[tuple[float, Computed | str]]) -> Block:
    """Worst leg over hook height, beside what one leg of the most used point may carry with the station's factor."""
    told = [(height, result) for height, result in found if isinstance(result, Computed)]
    legs = tuple((height, max(leg.tension_n for leg in result.legs) / 1000) for height, result in told)
    limit = min(leg / result.utilisation for (_, leg), (_, result) in zip(legs, told, strict=True))
    level = tuple((height, limit) for height, _ in legs)
    curves = (Curve(say("worst leg"), legs), Curve(say("may not pass"), level, limit=True))
    svg = plot(curves, say("hook over the points, m"), say("kN"), words)
    return Drawing(f"plot-{name}-{len(words)}", svg, say("{lift}: worst leg by height of the hook", lift=words))


def _blanks() -> Block:
    return Lines(tuple(Line(_BLANK, f"{say(words)}:") for words in _BLANKS[1:]), "blanks")
