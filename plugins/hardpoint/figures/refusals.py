"""Why no lift may be computed by a point: what nobody knows of it, or what the station has not decided."""

from __future__ import annotations

from hardpoint.records.known import NonValue
from hardpoint.records.load_points import LIFTING, LoadPoint
from hardpoint.records.station import Station
from hardpoint.words import later, mark

_DIVISORS = {
    "proof": ("proof", mark("proof")),
    "ultimate": ("ultimate", mark("ultimate")),
    "owner's practice": ("owners_practice", mark("owner's practice")),
}
_ASKED = (
    ("basis", later("its basis is unknown")),
    ("allowable", later("what it may carry is unknown")),
    ("allowable_is_for", later("whether that is for each point or for all is unknown")),
)


def refusal(point: LoadPoint, station: Station | None) -> str:
    """The reason, in English that ``say_again`` tells in another language; "" where a point lifts and nothing is open.

    A point that is not made to lift is no matter of refusal here: its use says so.
    """
    if point.use not in LIFTING:
        return ""
    for key, reason in _ASKED:
        if getattr(point, key) is NonValue.UNKNOWN:
            return reason
    key, basis = _DIVISORS.get(str(point.basis), ("", ""))
    if key and (station is None or isinstance(getattr(station.divisors, key), NonValue)):
        return later("its basis is {basis}, and the station has decided no divisor for that", basis=later(basis))
    return ""


def divisor_of(point: LoadPoint, station: Station | None) -> float:
    """What the allowable of a point is divided by: 1 for a limit, otherwise what the station has decided.

    Of a point that ``refusal`` lets through.
    """
    key, _ = _DIVISORS.get(str(point.basis), ("", ""))
    decided = getattr(station.divisors, key) if key and station else None
    return float(decided) if decided is not None and not isinstance(decided, NonValue) else 1.0
