"""What rescuers lift when they take an occupant out."""

from __future__ import annotations

from collections.abc import Iterable

Range = tuple[float, float]


def lift_out_mass(occupant_kg: Range, leaving_kg: Iterable[Range]) -> Range:
    """Least and greatest mass of an occupant with what leaves the airframe with them.

    Equation:
        M = m + sum(k_i)

    Symbols:
        m: mass of the clothed occupant, kg, least and greatest
        k_i: mass of thing i that leaves with them, kg, least (0 where it is not always worn) and greatest
        M: what is lifted, kg, least and greatest

    Source: common practice

    Range: an occupant of a mass above 0, nothing below 0, otherwise ValueError. Wet clothes and water in them are not
    counted: they come on top.

    Example: 90 kg, a parachute of 8 kg, a life jacket of 1.5 kg that is worn over water only.

        >>> lift_out_mass((90, 90), [(8, 8), (0, 1.5)])
        (98, 99.5)
    """
    things = list(leaving_kg)
    if not 0 < occupant_kg[0] <= occupant_kg[1] < float("inf"):
        raise ValueError(f"the mass of an occupant is above 0 kg, got {occupant_kg[0]:g} to {occupant_kg[1]:g} kg")
    if not all(0 <= low <= high < float("inf") for low, high in things):
        raise ValueError("what leaves with an occupant has a mass of 0 kg or more, its least first")
    return occupant_kg[0] + sum(low for low, _ in things), occupant_kg[1] + sum(high for _, high in things)
