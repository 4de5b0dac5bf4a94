"""What hangs on a hook when something is lifted out of water, and how long a bay takes to drain.

No published rule with numbers was found for breaking out of water or for lifting while it drains: none is printed.
"""

from __future__ import annotations

import math

_GRAVITY_M_S2 = 9.80665


def hook_load(mass_kg: float, rigging_kg: float, factor: float) -> float:
    """Mass that a crane has to be able to lift, kg.

    Equation:
        m_hook = (m + m_rigging) f

    Symbols:
        m: mass of what is lifted, with all the water in it, kg
        m_rigging: hook block, slings, spreader, kg
        f: the station's factor for snatch and swing

    Source: common practice

    Range: masses of 0 or more, a factor of 1 or more, otherwise ValueError.

    Example: 640 kg with 210 kg of rigging, factor 1.25.

        >>> hook_load(640, 210, 1.25)
        1062.5
    """
    if mass_kg < 0 or rigging_kg < 0 or factor < 1:
        raise ValueError("masses are 0 or more and a factor is 1 or more")
    return (mass_kg + rigging_kg) * factor


def drain_time(volume_m3: float, area_m2: float, head_m: float, discharge: float = 0.6) -> float:
    """Time in which a bay with upright walls runs empty through its holes, s.

    Equation:
        t = 2 V / (Cd A sqrt(2 g h))

    Symbols:
        V: volume of the water, m3
        A: area of all holes together, m2
        h: height of the water over the holes at the beginning, m
        Cd: coefficient of discharge, 0.6 for a hole with a sharp edge
        g: 9.80665 m/s2

    Source: orifice-flow

    Range: volume, area and height above 0, Cd above 0 and at most 1, otherwise ValueError. A hole that is blocked,
    under water or higher than recorded takes longer, and air has to get in.

    Example: 300 L through 0.01 m2 under 0.3 m.

        >>> round(drain_time(0.300, 0.01, 0.3))
        41
    """
    if min(volume_m3, area_m2, head_m) <= 0 or not 0 < discharge <= 1:
        raise ValueError("volume, area and height are above 0, the coefficient above 0 and at most 1")
    return 2 * volume_m3 / (discharge * area_m2 * math.sqrt(2 * _GRAVITY_M_S2 * head_m))
