"""Aerodrome category by the size of an aeroplane, and the least agent that goes with it."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Literal

FoamLevel = Literal["A", "B", "C"]

_BANDS: tuple[tuple[float, float], ...] = (
    (9, 2), (12, 2), (18, 3), (24, 4), (28, 4), (39, 5), (49, 5), (61, 7), (76, 7), (90, 8),
)  # fmt: skip
"""Overall length below which, and fuselage width up to which, categories 1 to 10 go, m."""


@dataclass(frozen=True)
class Agent:
    """Least amounts: water for foam in L by level, discharge of foam in L/min by level, powder in kg."""

    water_l: Mapping[str, float]
    discharge_l_min: Mapping[str, float]
    powder_kg: float


AGENTS: Mapping[int, Agent] = {
    1: Agent({"A": 350, "B": 230, "C": 160}, {"A": 350, "B": 230, "C": 160}, 45),
    2: Agent({"A": 1000, "B": 670, "C": 460}, {"A": 800, "B": 550, "C": 360}, 90),
    3: Agent({"A": 1800, "B": 1200, "C": 820}, {"A": 1300, "B": 900, "C": 630}, 135),
    4: Agent({"A": 3600, "B": 2400, "C": 1700}, {"A": 2600, "B": 1800, "C": 1100}, 135),
}
"""Annex 14 table 9-2, all from memory and not checked against the text; categories above 4 are not listed."""


def rescue_category(length_m: float, width_m: float) -> int:
    """Category for rescue and fire fighting by overall length and greatest width of the fuselage.

    Equation:
        category = first band with length below its limit; one higher where the fuselage is wider than the band allows

    Symbols:
        length: overall length, m: 1 below 9, 2 below 12, 3 below 18, 4 below 24, 5 below 28, 6 below 39, 7 below 49,
            8 below 61, 9 below 76, 10 below 90
        width: greatest width of the fuselage, m: 2, 2, 3, 4, 4, 5, 5, 7, 7, 8

    Source: icao-annex-14
    Source: amc2-adr-ops-b-010

    Range: above 0 and below 90 m long, above 0 wide, otherwise ValueError; ValueError too where a category above 10
    would be needed.

    Example: 8.99 m and 9.00 m, 1 m wide.

        >>> rescue_category(8.99, 1.0), rescue_category(9.00, 1.0)
        (1, 2)
    """
    if length_m <= 0 or width_m <= 0:
        raise ValueError(f"length and width are above 0, got {length_m:g} m and {width_m:g} m")
    found = next((at for at, (limit, _) in enumerate(_BANDS, start=1) if length_m < limit), None)
    if found is None:
        raise ValueError(f"the table ends below 90 m, got {length_m:g} m")
    wider = width_m > _BANDS[found - 1][1]
    if wider and found == len(_BANDS):
        raise ValueError(f"wider than the highest category allows: {width_m:g} m")
    return found + wider


def critical_area(length_m: float, width_m: float) -> float:
    """Area that is to be kept free of fire for people to get out, m2: the theoretical one.

    Equation:
        A = L (K + W), K = 12 below 12 m, 14 below 18 m, 17 below 24 m, 30 above

    Symbols:
        L: overall length, m
        W: width of the fuselage, m
        A: critical area, m2; two thirds of it is the practical one

    Source: icao-doc-9137

    Range: length and width above 0, otherwise ValueError.

    Example: 6.9 m by 0.92 m.

        >>> round(critical_area(6.9, 0.92), 1)
        89.1
    """
    if length_m <= 0 or width_m <= 0:
        raise ValueError(f"length and width are above 0, got {length_m:g} m and {width_m:g} m")
    wide = next((wide for limit, wide in ((12, 12), (18, 14), (24, 17)) if length_m < limit), 30)
    return length_m * (wide + width_m)
