"""Mass and centre of gravity of what is made of parts."""

from __future__ import annotations

from collections.abc import Sequence

Load = tuple[tuple[float, float], tuple[float, float]]


def centre_of_gravity(items: Sequence[tuple[float, float]]) -> tuple[float, float]:
    """Total mass and the station at which it acts.

    Equation:
        x = sum(m_i x_i) / sum(m_i)

    Symbols:
        m_i: mass of item i, kg; below 0 for what is taken off
        x_i: station at which it acts, m aft of the datum; below 0 forward of it
        x: station of the common centre of gravity, m

    Source: faa-h-8083-1
    Source: faa-h-8083-30

    Range: the sum of the masses is above 0, otherwise ValueError.

    Example: an empty aircraft of 1495 lb at 101.4 in, 380 lb of people at 64.0 in, 30 US gal of fuel of 6 lb each at
    96.0 in (a question of the FAA's knowledge test; its units are kept, since none enters the formula).

        >>> mass, station = centre_of_gravity([(1495, 101.4), (380, 64.0), (180, 96.0)])
        >>> round(mass), round(station, 2)
        (2055, 94.01)
    """
    mass = sum(mass for mass, _ in items)
    if mass <= 0:
        raise ValueError(f"the masses add up to {mass:g}: nothing is left that a centre of gravity could be of")
    return mass, sum(mass * station for mass, station in items) / mass


def reach_of_centre(loads: Sequence[Load]) -> tuple[float, float]:
    """Foremost and rearmost station that the centre of gravity can have while masses and stations lie in ranges.

    Equation:
        x_min = min over k of CG(the k foremost items at their greatest mass, the others at their least)
        x_max = max over k of CG(the k rearmost items at their greatest mass, the others at their least)

    Symbols:
        loads: of each item the range of its mass, kg, and the range of its station, m

    Source: faa-h-8083-1

    Range: as for the centre of gravity; a mass below 0 (taken off) is one value, not a range, otherwise ValueError.
    The station moves one way with each mass, so that the extreme lies where each mass is at one of its ends, the items
    on one side at one end, those on the other side at the other.

    Example: 600 kg at 2 m, and a bay at 3 m with 0 to 200 kg of water in it.

        >>> reach_of_centre([((600, 600), (2, 2)), ((0, 200), (3, 3))])
        (2.0, 2.25)
    """
    if any(low != high and low < 0 for (low, high), _ in loads):
        raise ValueError("what is taken off has one mass, not a range")
    # What is taken off moves the centre away from itself: its other end counts.
    foremost = _extreme([(mass, station[0] if mass[0] >= 0 else station[1]) for mass, station in loads])
    rearmost = -_extreme([(mass, -(station[1] if mass[0] >= 0 else station[0])) for mass, station in loads])
    return foremost, rearmost


def _extreme(loads: Sequence[tuple[tuple[float, float], float]]) -> float:
    """The least station of the common centre, each item at one station."""
    ordered = sorted(loads, key=lambda load: load[1])
    return min(
        centre_of_gravity([(mass[1] if at < heavy else mass[0], x) for at, (mass, x) in enumerate(ordered)])[1]
        for heavy in range(len(ordered) + 1)
        if sum(mass[1] if at < heavy else mass[0] for at, (mass, _) in enumerate(ordered)) > 0
    )
