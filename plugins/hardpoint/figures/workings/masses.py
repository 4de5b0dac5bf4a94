"""Mass and centre of gravity of an airframe in each state that a crew may find it in."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from hardpoint.figures.loads import State, state_of
from hardpoint.figures.worked import Case, Figure, MissingError, Topic, Unsaid, Worked
from hardpoint.records.known import NonValue
from hardpoint.records.load_points import Condition
from hardpoint.records.tanks import ENGINE_FUELS, Tank
from hardpoint.words import later, mark

_METHOD = "balance"
_ALWAYS: tuple[tuple[Condition, ...], ...] = (
    ("empty",),
    ("fuelled as planned",),
    ("full fuel",),
    ("full fuel", "occupants and kit"),
    ("flooded",),
    ("flooded", "full fuel"),
)
_EMERGING = later(
    "the whole water counts: what comes out of the water no longer floats, and it is heavier than it was beneath"
)
_CONDITIONS = {
    "empty": mark("empty"),
    "fuelled as planned": mark("fuelled as planned"),
    "full fuel": mark("full fuel"),
    "occupants and kit": mark("occupants and kit"),
    "flooded": mark("flooded"),
    "tanks drained": mark("tanks drained"),
    "wings off": mark("wings off"),
    "parts taken off": mark("parts taken off"),
}


def states(case: Case) -> Iterator[tuple[tuple[Condition, ...], tuple[str, ...]]]:
    """Conditions and what is taken off: the usual states, then those in which a lift is declared, each once."""
    seen: dict[tuple[tuple[Condition, ...], tuple[str, ...]], None] = {}
    for conditions in _ALWAYS:
        if burns_fuel(case) or not {"full fuel", "fuelled as planned"} & {*conditions}:
            seen[conditions, ()] = None
    for lift in case.airframe.lifts.values():
        for conditions in lift.states:
            seen[conditions, lift.taken_off if {"wings off", "parts taken off"} & {*conditions} else ()] = None
    yield from seen


def burns_fuel(case: Case) -> bool:
    """False only where the record shows that it carries no fuel: nobody then asks for its mass with full tanks."""
    tanks = case.airframe.tanks
    if tanks is NonValue.UNKNOWN:
        return True
    listed = {} if isinstance(tanks, NonValue) else tanks
    return any(tank is NonValue.UNKNOWN or _may_burn(tank) for tank in listed.values())


def _may_burn(tank: Tank | NonValue) -> bool:
    return not isinstance(tank, NonValue) and (tank.holds is NonValue.UNKNOWN or tank.holds in ENGINE_FUELS)


def state_words(conditions: Sequence[Condition]) -> str:
    """``empty``, ``flooded, full fuel``; made by ``later``, so that a page can say it in its own language."""
    told = later(_CONDITIONS[conditions[0]])
    for condition in conditions[1:]:
        told = later("{first}, {then}", first=told, then=later(_CONDITIONS[condition]))
    return told


def state_id(conditions: Sequence[Condition], taken_off: Sequence[str] = ()) -> str:
    """``flooded-full-fuel``; with the parts that are taken off behind it."""
    return "-".join([*conditions, *taken_off]).replace(" ", "-")


def _work(case: Case) -> Iterator[Worked]:
    for conditions, taken_off in states(case):
        state = state_of(case, conditions, taken_off)
        name, words = f"balance.{state_id(conditions, taken_off)}", state_words(conditions)
        yield _mass(state, f"{name}.mass", later("Mass, {state}", state=words))
        if not isinstance(state.mass, MissingError):
            yield _station(state, f"{name}.centre_of_gravity", later("Centre of gravity, {state}", state=words), case)


def _mass(state: State, id_: str, what: str) -> Figure | Unsaid:
    if isinstance(state.mass, MissingError):
        return state.mass.of(id_, what, _METHOD)
    return Figure(
        id_,
        what,
        state.mass,
        "kg",
        "kg",
        "up",
        state.inputs,
        "m = Σ mᵢ",
        _METHOD,
        ("faa-h-8083-1", *state.sources),
        _EMERGING if "flooded" in state.conditions else "",
    )


def _station(state: State, id_: str, what: str, case: Case) -> Figure | Unsaid:
    if isinstance(state.station, MissingError):
        return state.station.of(id_, what, _METHOD)
    return Figure(
        id_,
        what,
        state.station,
        "m",
        case.airframe.datum.unit,
        "nearest",
        state.inputs,
        "x = Σ mᵢ xᵢ / Σ mᵢ",
        _METHOD,
        ("faa-h-8083-1", *state.sources),
        digits=4,
    )


TOPIC = Topic("balance", mark("Mass and centre of gravity by state"), _METHOD, _work)
