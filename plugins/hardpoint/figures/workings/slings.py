"""Every declared lift in every state it is meant for: tension, angle, cone, utilisation; or refused, and why."""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from hardpoint.figures.loads import State, highest_centre, state_of
from hardpoint.figures.rigging import Eye, RefusedError, Rigged, hook_height, legs_of, rigged, too_heavy
from hardpoint.figures.slings import (
    STEEPEST_DEG,
    Spot,
    angle_from_axis,
    angle_from_vertical,
    hang_attitude,
    hung,
    leg_tensions,
    shares_of_two,
    worst_leg,
)
from hardpoint.figures.worked import (
    Case,
    Figure,
    Input,
    MissingError,
    Range,
    Topic,
    Unsaid,
    Worked,
    spoken,
)
from hardpoint.figures.workings.masses import state_id, state_words
from hardpoint.records.known import NonValue, said
from hardpoint.records.load_points import Lift
from hardpoint.units import computed
from hardpoint.words import later, mark

_METHOD = "slings"
_G_M_S2 = 9.80665
_STEPS = 20
"""Places of the centre of gravity between its ends at which the worst leg is looked for."""
_SOURCES = ("en-13414-1", "us-navy-steelworker")
_LEG, _ANGLE = "Σ Tᵢ uᵢ = W", "cos b = Δz / L"
_CAUTION = later(
    "for points that are whole and inspected after the accident; a licensed rigger decides. Righting is not computed"
)


@dataclass(frozen=True)
class Leg:
    """One leg at its worst over the state: tension without the station's factor (N), angle from the vertical (deg)."""

    eye: Eye
    tension_n: float
    angle_deg: float
    cone_angle_deg: float
    length_m: float = 0.0


@dataclass(frozen=True)
class Computed:
    """A lift in one state that the figures do not refuse.

    ``utilisation`` is that of the load point that is used most, the station's factor counted; ``nose_down`` in degrees,
    least and greatest, where the record states lengths of legs.
    """

    state: State
    mass: Range
    rig: Rigged
    legs: tuple[Leg, ...]
    factor: Input
    utilisation: float
    nose_down: tuple[float, float] | None = None


def _work(case: Case) -> Iterator[Worked]:
    for name, lift in case.airframe.lifts.items():
        for conditions in lift.states:
            state = state_of(case, conditions, lift.taken_off)
            yield from _figures(case, name, lift, state)


def _figures(case: Case, name: str, lift: Lift, state: State) -> Iterator[Worked]:
    id_ = f"slings.{name}.{state_id(state.conditions)}"
    what = later("{lift}, {state}", lift=spoken(name), state=state_words(state.conditions))
    try:
        found = compute(case, name, lift, state)
    except RefusedError as refused:
        yield Unsaid(id_, what, refused.reason, refused.path, _METHOD, refused=True)
        return
    except MissingError as missing:
        yield missing.of(id_, what, _METHOD)
        return
    inputs = (*state.inputs, found.factor, *rigged(case, name, lift).inputs)
    yield from _told(id_, what, found, inputs)


def _told(id_: str, what: str, found: Computed, inputs: tuple[Input, ...]) -> Iterator[Figure]:
    worst = max(found.legs, key=lambda leg: leg.tension_n)
    steepest = max(leg.angle_deg for leg in found.legs)
    aside = max(leg.tension_n * math.sin(math.radians(leg.angle_deg)) for leg in found.legs)
    longest = max(leg.length_m for leg in found.legs)
    told: list[tuple[str, str, Range, str, str, str]] = [
        ("worst_leg", later("worst leg, {point}", point=spoken(worst.eye.id)), (worst.tension_n,) * 2, "N", "kN", _LEG),
        ("worst_angle", later("steepest leg from the vertical"), (math.radians(steepest),) * 2, "rad", "deg", _ANGLE),
        ("horizontal", later("pull to the side on its point"), (aside,) * 2, "N", "kN", "H = T sin b"),
        ("longest_leg", later("longest leg, eye to hook"), (longest,) * 2, "m", "m", "L = |h − p|"),
        ("utilisation", later("share used of what the points may carry"), (found.utilisation,) * 2, "", "", "T f / A"),
    ]
    if found.nose_down:
        low, high = (math.radians(end) for end in found.nose_down)
        told.append(("nose_down", later("hangs nose down by"), (low, high), "rad", "deg", "asin u"))
    for key, text, value, unit, printed, formula in told:
        words = later("{lift}: {what}", lift=what, what=text)
        yield Figure(f"{id_}.{key}", words, value, unit, printed, "up", inputs, formula, _METHOD, _SOURCES, _CAUTION)


def compute(case: Case, name: str, lift: Lift, state: State, above_m: float | None = None) -> Computed:
    """A lift in one state; ``above_m`` replaces the stated height of the hook, for a table of heights.

    RefusedError and MissingError tell why there is nothing.
    """
    rig = rigged(case, name, lift)
    factor = factor_of(case)
    mass = _mass(state, rig, factor)
    height = highest_centre(case, state)
    _hangs_below(rig, height)
    stations = _stations(state, rig)
    weight = mass[1] * _G_M_S2
    worst: list[Leg] = []
    for station in stations:
        legs = _legs(_pulls(rig, lift, name, (station, 0.0, height), weight, above_m))
        worst = [_worse(one, other) for one, other in zip(worst, legs, strict=True)] if worst else legs
    if len(rig.eyes) == 1:
        _tilt(rig, state, height)
    id_, carried = _most_used(rig, worst, factor.value[1])
    if carried > rig.allowable_n[id_]:
        raise RefusedError(_heavy(carried, rig.allowable_n[id_]), ("lifts", name, "points"))
    used = carried / rig.allowable_n[id_]
    return Computed(state, mass, rig, tuple(worst), factor, used, _hang(rig, lift, stations, height))


def factor_of(case: Case) -> Input:
    """What the station has decided for snatch and swing; nothing stands in for it."""
    decided = case.station.dynamic_factor if case.station else None
    if decided is None or isinstance(decided, NonValue):
        reason = later("the station has stated no factor for snatch and swing")
        raise MissingError(reason, ("station", "dynamic_factor"))
    return Input(("station", "dynamic_factor"), str(decided), (float(decided), float(decided)), "")


def _mass(state: State, rig: Rigged, factor: Input) -> Range:
    """The mass of the state. Refused where even plumb legs that share evenly could not carry what is known of it."""
    most = sum(_whole(rig, id_) for id_ in rig.allowable_n)
    carried = state.known[1] * _G_M_S2 * factor.value[1]
    if carried > most:
        raise RefusedError(_heavy(carried, most), ("masses",))
    if isinstance(state.mass, MissingError):
        raise state.mass
    return state.mass


def _heavy(carried_n: float, allowed_n: float) -> str:
    return too_heavy(
        computed((carried_n, carried_n), "N", "kN", "up")[0], computed((allowed_n, allowed_n), "N", "kN", "down")[0]
    )


def _whole(rig: Rigged, id_: str) -> float:
    """What a load point may carry with all of its legs together."""
    legs = sum(eye.id == id_ for eye in rig.eyes)
    return rig.allowable_n[id_] * (legs if rig.counts[id_] == "each" else 1)


def _hangs_below(rig: Rigged, height: float) -> None:
    """Refused where the centre of gravity can lie above the points: it would turn over. Unknown is not below."""
    if height > min(eye.at[2] for eye in rig.eyes) + 1e-6:
        reason = later("the centre of gravity can lie above the points: it would turn over")
        raise RefusedError(reason, ("masses", "empty_cg", "wl"))


def _stations(state: State, rig: Rigged) -> list[float]:
    """Where the hook is: over the centre of gravity, from end to end; over a station that carries the whole weight."""
    if rig.one_station:
        return [sum(eye.at[0] for eye in rig.eyes) / len(rig.eyes)]
    if isinstance(state.station, MissingError):
        raise state.station
    low, high = state.station
    steps = _STEPS if high > low else 0
    return [low + (high - low) * step / max(steps, 1) for step in range(steps + 1)]


@dataclass(frozen=True)
class _Pull:
    """One leg: its eye, the eye and the upper end as they lie when it hangs, its tension (N)."""

    eye: Eye
    low: Spot
    high: Spot
    axis: Spot
    tension_n: float


def _pulls(rig: Rigged, lift: Lift, name: str, cg: Spot, weight: float, above_m: float | None) -> list[_Pull]:
    """Every leg, by the hook's height, by fixed lengths, or under a spreader beam. RefusedError where one is slack."""
    lengths = legs_of(lift.hook, rig) if above_m is None else None
    try:
        if lengths is not None:
            points, hook = hung(rig.points, lengths, cg)
            return [
                _Pull(eye, low, hook, eye.axis, tension)
                for eye, low, tension in zip(rig.eyes, points, _tensions(points, hook, weight), strict=True)
            ]
        height = above_m if above_m is not None else hook_height(lift.hook, name)
        hook = (cg[0], cg[1], rig.highest + height)
        if said(lift.spreader) is not None:
            return _under_the_beam(rig, lift, hook, weight, name)
        tensions = _strapped(rig, hook, weight) if all_wrapped(rig) else _tensions(rig.points, hook, weight)
    except ValueError:
        reason = later("a leg would be slack, or the legs do not meet over the centre of gravity")
        raise RefusedError(reason, ("lifts", name, "points")) from None
    return [_Pull(eye, eye.at, hook, eye.axis, tension) for eye, tension in zip(rig.eyes, tensions, strict=True)]


def _tensions(points: Sequence[Spot], hook: Spot, weight: float) -> list[float]:
    """One leg carries all; two and three are solved; of four each may be the worst."""
    if len(points) in (2, 3):
        return leg_tensions(points, hook, weight)
    return [worst_leg(points, hook, weight)] * len(points)


def all_wrapped(rig: Rigged) -> bool:
    """True where every leg is one end of a strap round the belly."""
    return all(sum(other.id == eye.id for other in rig.eyes) == 2 and eye.wraps for eye in rig.eyes)


def _strapped(rig: Rigged, hook: Spot, weight: float) -> list[float]:
    """A strap slides: both of its ends pull alike, so that it acts as one leg from the middle between them."""
    ids = list(dict.fromkeys(eye.id for eye in rig.eyes))
    middles = []
    for id_ in ids:
        ends = [eye.at for eye in rig.eyes if eye.id == id_]
        middles.append((ends[0][0], (ends[0][1] + ends[1][1]) / 2, (ends[0][2] + ends[1][2]) / 2))
    tensions = dict(zip(ids, _tensions(middles, hook, weight), strict=True))
    lengths = dict(zip(ids, (math.dist(middle, hook) for middle in middles), strict=True))
    return [tensions[eye.id] / 2 * math.dist(eye.at, hook) / lengths[eye.id] for eye in rig.eyes]


def _under_the_beam(rig: Rigged, lift: Lift, hook: Spot, weight: float, name: str) -> list[_Pull]:
    """Legs below the two ends of a spreader, each end over its points; the beam carries the pull along it."""
    beam = said(lift.spreader)
    ends = sorted({round(eye.at[0], 3) for eye in rig.eyes})
    path = ("lifts", name, "spreader")
    if beam is None or len(ends) != 2:
        raise RefusedError(later("a spreader beam needs points at two stations"), path)
    if isinstance(beam.length, NonValue) or isinstance(beam.allowable, NonValue) or isinstance(beam.mass, NonValue):
        raise MissingError(later("length, mass or allowable of the spreader is unknown"), path)
    if abs(beam.length.si[0] - (ends[1] - ends[0])) > 0.1 * beam.length.si[0]:
        raise RefusedError(later("the spreader is not as long as its points are apart"), path)
    if weight + beam.mass.si[1] * _G_M_S2 > beam.allowable.si[0]:
        raise RefusedError(later("heavier than the spreader allows"), path)
    shares = dict(zip(ends, shares_of_two(hook[0] - ends[0], ends[1] - hook[0], weight), strict=True))
    pulls = []
    for eye in rig.eyes:
        end = round(eye.at[0], 3)
        upper = (eye.at[0], 0.0, hook[2])
        legs = sum(round(other.at[0], 3) == end for other in rig.eyes)
        lean = math.cos(math.radians(angle_from_vertical(eye.at, upper)))
        pulls.append(_Pull(eye, eye.at, upper, eye.axis, shares[end] / legs / lean))
    return pulls


def _legs(pulls: Sequence[_Pull]) -> list[Leg]:
    """Every leg at this place of the hook, each judged by its angle and by the cone of its point."""
    legs = []
    for pull in pulls:
        angle = angle_from_vertical(pull.low, pull.high)
        if angle > STEEPEST_DEG:
            raise RefusedError(_steep(pull.eye, angle), ("load_points", pull.eye.id, "place"))
        off_axis = angle_from_axis(pull.low, pull.high, pull.axis)
        if off_axis > pull.eye.cone_deg + 1e-6:
            raise RefusedError(_outside(pull.eye, off_axis), ("load_points", pull.eye.id, "cone"))
        length = math.dist(pull.low, pull.high)
        legs.append(Leg(pull.eye, pull.tension_n, angle, off_axis, length))
    return legs


def _tilt(rig: Rigged, state: State, height: float) -> None:
    """By one eye it tilts until the centre of gravity hangs below it: that turns the eye against its leg."""
    if isinstance(state.station, MissingError):
        raise state.station
    eye = rig.eyes[0]
    aside = max(abs(end - eye.at[0]) for end in state.station)
    tilt = math.degrees(math.atan2(aside, eye.at[2] - height))
    if tilt > eye.cone_deg + 1e-6:
        raise RefusedError(_outside(eye, tilt), ("load_points", eye.id, "cone"))


def _hang(rig: Rigged, lift: Lift, stations: Sequence[float], height: float) -> tuple[float, float] | None:
    """Degrees nose down, least and greatest, by legs of fixed lengths; None where the hook is plumb over it."""
    lengths = legs_of(lift.hook, rig)
    if lengths is None:
        return None
    found = [hang_attitude(rig.points, lengths, (station, 0.0, height))[0] for station in stations]
    return min(found), max(found)


def _steep(eye: Eye, angle: float) -> str:
    return later(
        "the leg at {point} lies {angle} from the vertical, and nothing is rated beyond 60°",
        point=spoken(eye.id),
        angle=f"{math.ceil(angle)}°",
    )


def _outside(eye: Eye, angle: float) -> str:
    return later(
        "the leg at {point} pulls {angle} off its axis, outside its cone of {cone}",
        point=spoken(eye.id),
        angle=f"{math.ceil(angle)}°",
        cone=f"{math.floor(eye.cone_deg)}°",
    )


def _worse(one: Leg, other: Leg) -> Leg:
    return Leg(
        one.eye,
        max(one.tension_n, other.tension_n),
        max(one.angle_deg, other.angle_deg),
        max(one.cone_angle_deg, other.cone_angle_deg),
        max(one.length_m, other.length_m),
    )


def _most_used(rig: Rigged, legs: Sequence[Leg], factor: float) -> tuple[str, float]:
    """The load point that is used most, and what it carries, N: each leg by itself, or all of its legs together."""
    carried = {}
    for id_ in rig.allowable_n:
        mine = [leg.tension_n for leg in legs if leg.eye.id == id_]
        carried[id_] = (max(mine) if rig.counts[id_] == "each" else sum(mine)) * factor
    id_ = max(carried, key=lambda id_: carried[id_] / rig.allowable_n[id_])
    return id_, carried[id_]


TOPIC = Topic("slings", mark("Declared lifts: sling legs"), _METHOD, _work)
