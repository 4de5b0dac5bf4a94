"""A pool of burning fuel, for planning before anything burns: how big, how long, how high, how far its heat reaches.

Never for the aircraft side: wind, slope, wreckage and foam change everything.
"""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import dataclass


@dataclass(frozen=True)
class Burning:
    """What a source prints of a fuel: m'' in kg/m2 s, Hc in J/kg, density in kg/m3 (None: none given), kb in 1/m."""

    rate_kg_m2_s: float
    heat_j_kg: float
    density_kg_m3: float | None
    absorption_per_m: float


FUELS: Mapping[str, Burning] = {
    "gasoline": Burning(0.055, 43.7e6, 740, 2.1),
    "jp-4": Burning(0.051, 43.5e6, 760, 3.6),
    "kerosene": Burning(0.039, 43.2e6, 820, 3.5),
    "jp-5": Burning(0.054, 43.0e6, 810, 1.6),
    "diesel": Burning(0.045, 44.4e6, 918, 2.1),
    "lube-oil": Burning(0.039, 46.0e6, None, 0.7),
}
"""NUREG-1805 and supplement 1. The density of diesel looks high there; it is kept as it is printed."""
SPILL_DEPTHS_M = (0.0007, 0.0028)
"""Unconfined spill on a hard surface: below 95 L, and from there on."""
HEAT_FLUXES_W_M2 = {"continuous": 1580.0, "several minutes": 4600.0}
"""For people in appropriate clothing, not for the public (API 521: 1.58 and 4.73 kW/m2). Fire kit lasted about three
minutes at 4.6 kW/m2 in tests: of the two, the lower figure is used."""
RADIATED = 0.3
"""Share of the heat that a fire radiates."""


@dataclass(frozen=True)
class PoolFire:
    """What a pool of one size does while it burns."""

    diameter_m: float
    heat_release_w: float
    burning_time_s: float
    flame_height_m: float


def pool_fire(fuel: str, area_m2: float, volume_m3: float) -> PoolFire:
    """A pool of fuel that burns over its whole area.

    Equation:
        D = sqrt(4 A / pi)
        Q = m'' Hc (1 - exp(-kb D)) A
        t = 4 V / (pi D^2 v), v = m'' / rho
        H = 0.235 Q^0.4 - 1.02 D     (Heskestad; Q in kW)

    Symbols:
        A: area of the pool, m2
        V: volume of the fuel, m3
        m'': mass that burns from a wide pool, kg/m2 s
        Hc: heat of combustion, J/kg
        kb: how opaque the flame is, 1/m
        rho: density, kg/m3
        D: diameter of a round pool of that area, m
        Q: heat release rate, W
        t: burning time, s
        H: height of the flame, m

    Source: nureg-1805
    Source: nureg-1805-burning-time

    Range: fuels gasoline, jp-4, kerosene, jp-5, diesel, lube-oil; area and volume above 0, otherwise ValueError. The
    time of lube-oil cannot be said: the source has no density. A pool that spreads while it burns burns shorter.

    Example: 75 L of gasoline over 26.8 m2.

        >>> fire = pool_fire("gasoline", 26.8, 0.075)
        >>> round(fire.diameter_m, 2), round(fire.heat_release_w / 1e6, 1), round(fire.burning_time_s)
        (5.84, 64.4, 38)
    """
    burning = FUELS.get(fuel)
    if burning is None:
        raise ValueError(f"fuels are {', '.join(FUELS)}, not {fuel!r}")
    if burning.density_kg_m3 is None:
        raise ValueError(f"the source gives no density of {fuel}: how long it burns cannot be said")
    return burn(burning, area_m2, volume_m3)


def burn(burning: Burning, area_m2: float, volume_m3: float) -> PoolFire:
    """``pool_fire`` for a fuel by its data. ValueError: area or volume not above 0, or no density."""
    if area_m2 <= 0 or volume_m3 <= 0 or burning.density_kg_m3 is None:
        raise ValueError(f"area and volume are above 0, got {area_m2:g} m2 and {volume_m3:g} m3")
    diameter = math.sqrt(4 * area_m2 / math.pi)
    opaque = 1 - math.exp(-burning.absorption_per_m * diameter)
    release = burning.rate_kg_m2_s * burning.heat_j_kg * opaque * area_m2
    speed = burning.rate_kg_m2_s / burning.density_kg_m3
    height = 0.235 * math.pow(release / 1000, 0.4) - 1.02 * diameter
    return PoolFire(diameter, release, volume_m3 / (area_m2 * speed), max(height, 0.0))


def spill_area(volume_m3: float) -> tuple[float, float]:
    """Area over which fuel spreads on a hard, level surface: least and greatest, m2.

    Equation:
        A = V / d

    Symbols:
        V: volume that has run out, m3
        d: depth of the spill, 0.7 mm below 95 L and 2.8 mm from there on
        A: area, m2

    Source: nureg-1805-burning-time

    Range: a volume above 0, otherwise ValueError. Both depths are shown as a range: nobody knows how much has run out,
    and on grass it sinks in.

    Example: 75 L.

        >>> [round(area, 1) for area in spill_area(0.075)]
        [26.8, 107.1]
    """
    if volume_m3 <= 0:
        raise ValueError(f"a spill has a volume above 0, got {volume_m3:g} m3")
    shallow, deep = SPILL_DEPTHS_M
    return volume_m3 / deep, volume_m3 / shallow


def heat_flux(heat_release_w: float, distance_m: float, radiated: float = RADIATED) -> float:
    """Radiant heat at a distance from the middle of a fire, W/m2.

    Equation:
        q'' = x Q / (4 pi R^2)     point source

    Symbols:
        Q: heat release rate, W
        x: share of it that is radiated
        R: distance from the middle of the fire, m
        q'': heat flux, W/m2

    Source: nureg-1805

    Range: heat and distance above 0, a share above 0 and at most 1, otherwise ValueError. Near the flames it is wrong:
    further out than about two and a half diameters it holds.

    Example: 750 kW, 2.5 m, 0.3, in kW/m2.

        >>> round(heat_flux(750e3, 2.5) / 1000, 6)
        2.864789
    """
    if heat_release_w <= 0 or distance_m <= 0 or not 0 < radiated <= 1:
        raise ValueError("heat and distance are above 0, the radiated share above 0 and at most 1")
    return radiated * heat_release_w / (4 * math.pi * distance_m**2)


def distance_to_flux(heat_release_w: float, flux_w_m2: float, radiated: float = RADIATED) -> float:
    """Distance from the middle of a fire at which the radiant heat has fallen to a level, m.

    Equation:
        R = sqrt(x Q / (4 pi q''))

    Symbols:
        Q: heat release rate, W
        x: share of it that is radiated
        q'': heat flux, W/m2
        R: distance, m

    Source: nureg-1805
    Source: api-521

    Range: as for the heat flux, otherwise ValueError.

    Example: where 750 kW have fallen to 1.58 kW/m2.

        >>> round(distance_to_flux(750e3, 1580), 2)
        3.37
    """
    if heat_release_w <= 0 or flux_w_m2 <= 0 or not 0 < radiated <= 1:
        raise ValueError("heat and flux are above 0, the radiated share above 0 and at most 1")
    return math.sqrt(radiated * heat_release_w / (4 * math.pi * flux_w_m2))
