"""How long a breathing bottle lasts under water, and whether that leaves a margin over the time to reach."""

from __future__ import annotations

from collections.abc import Mapping

from hardpoint.figures.bottles import ATMOSPHERE_PA, gas_density, heated_pressure

_GRAVITY_M_S2 = 9.80665
_WATER_KG_M3: Mapping[str, float] = {"fresh": 1000.0, "salt": 1025.0}
_DEEPEST_M = 100.0


def ambient_pressure(depth_m: float, water: str = "fresh") -> float:
    """Absolute pressure at a depth, Pa.

    Equation:
        p = 101 325 + rho g h

    Symbols:
        h: depth, m
        rho: density of the water, 1000 kg/m3 fresh, 1025 kg/m3 salt
        p: absolute pressure, Pa

    Source: us-navy-diving

    Range: 0 to 100 m; water fresh or salt, otherwise ValueError. The source counts 33 ft of sea water as 1 atm.

    Example: 3 m of fresh water, in bar.

        >>> round(ambient_pressure(3) / 1e5, 3)
        1.307
    """
    if not 0 <= depth_m <= _DEEPEST_M:
        raise ValueError(f"the depth is to be 0 to {_DEEPEST_M:g} m, got {depth_m:g} m")
    if water not in _WATER_KG_M3:
        raise ValueError(f"water is fresh or salt, not {water!r}")
    return ATMOSPHERE_PA + _WATER_KG_M3[water] * _GRAVITY_M_S2 * depth_m


def endurance(
    volume_m3: float,
    filled_pa: float,
    reserve_pa: float,
    depth_m: float,
    rate_m3_s: float,
    fill_k: float,
    water_k: float,
    water: str = "fresh",
) -> float:
    """Seconds that a bottle of air lasts at a depth and a rate of breathing.

    Equation:
        t = V (rho(pf', Tw) - rho(pr, Tw)) / (rho(pa, Tw) q)
        pf' = p(rho(pf, Tf), Tw)     filled warm, cooled to the water at constant mass

    Symbols:
        V: volume of water that the bottle holds, m3
        pf: pressure it was filled to, at Tf; filled_pa, gauge to the surface, Pa
        pr: pressure at which it counts as empty; reserve_pa, gauge to the surface, Pa
        pa: absolute pressure at the depth, Pa
        q: volume breathed in a second at the pressure of the depth; rate_m3_s, m3/s
        Tf, Tw: temperature when it was filled, and of the water; fill_k and water_k, K
        t: time, s

    Source: us-navy-diving
    Source: coolprop

    Range: 0 to 100 m, a reserve below what is left after cooling, volume and rate above 0, otherwise ValueError. Where
    the pressure of the depth is above the reserve, it is the end. Nobody breathes evenly.

    Example: 1.5 L at 200 bar, filled at 20 degC, in water of 14 degC at 3 m, down to 10 bar, 50 L/min.

        >>> int(endurance(0.0015, 200e5, 10e5, 3, 0.050 / 60, 293.15, 287.15))
        248
    """
    if volume_m3 <= 0 or rate_m3_s <= 0:
        raise ValueError(f"needs a volume and a rate above 0, got {volume_m3:g} m3 and {rate_m3_s:g} m3/s")
    ambient = ambient_pressure(depth_m, water)
    filled = gas_density("air", filled_pa + ATMOSPHERE_PA, fill_k)
    empty_pa = max(reserve_pa + ATMOSPHERE_PA, ambient)
    if empty_pa >= heated_pressure("air", filled, water_k):
        raise ValueError(f"nothing is left above a reserve of {reserve_pa:g} Pa")
    usable = volume_m3 * (filled - gas_density("air", empty_pa, water_k))
    return usable / (gas_density("air", ambient, water_k) * rate_m3_s)
