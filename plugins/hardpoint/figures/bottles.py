"""Gas in bottles: how much there is, what is stored in it, what heat does to it, how far a burst reaches.

Pressures are absolute throughout. The gas is a real one: at 300 bar an ideal gas is a tenth off, and the pressure of a
heated bottle up to a fifth too low.
"""

from __future__ import annotations

import math
from collections.abc import Mapping
from functools import lru_cache
from typing import Literal

GasName = Literal["air", "oxygen", "nitrogen", "helium", "carbon dioxide"]
BlastMethod = Literal["floor-and-20", "factor-2"]

_FLUIDS: Mapping[str, str] = {
    "air": "Air",
    "oxygen": "Oxygen",
    "nitrogen": "Nitrogen",
    "helium": "Helium",
    "carbon dioxide": "CarbonDioxide",
}
_RATIOS: Mapping[str, float] = {"air": 1.4, "oxygen": 1.4, "nitrogen": 1.4, "helium": 5 / 3}
"""k of ASME PCC-2 by gas: 1.4 for those of two atoms, 5/3 for those of one."""
ATMOSPHERE_PA = 101325.0
_PCC2_ATMOSPHERE_PA = 101000.0
_TNT_J_PER_KG = 4266920.0
_MOST_PA, _COLDEST_K, _HOTTEST_K = 100e6, 230.0, 700.0
_FLOORS_M = ((135.5e6, 30.0), (271e6, 60.0))
"""Stored energy in J up to which the least distance holds, m (ASME PCC-2 article 5.1, appendix III)."""

TEST_RATIOS: Mapping[str, tuple[float, str]] = {
    "3A": (5 / 3, "cfr-49-180-209"),
    "3AA": (5 / 3, "cfr-49-180-209"),
    "3AL": (5 / 3, "cfr-49-180-209"),
    "3HT": (5 / 3, "cfr-49-180-209"),
    "4B": (2.0, "cfr-49-180-209"),
    "4BA": (2.0, "cfr-49-180-209"),
    "4BW": (2.0, "cfr-49-180-209"),
    "ISO cylinder": (1.5, "iso-cylinders"),
}
"""Test over working pressure by what is stamped on a bottle, with the key of the source."""


@lru_cache(maxsize=4096)
def gas_density(gas: str, pressure_pa: float, temperature_k: float) -> float:
    """Density of a gas in kg/m3.

    Equation:
        rho = rho(p, T)     equation of state of the gas

    Symbols:
        p: absolute pressure, Pa
        T: temperature, K
        rho: density, kg/m3

    Source: coolprop

    Range: air, oxygen, nitrogen, helium, carbon dioxide; above 0 to 100 MPa, 230 to 700 K, otherwise ValueError.

    Example: air of 200 bar at 20 degC.

        >>> round(gas_density("air", 200e5, 293.15), 2)
        231.65
    """
    fluid = _fluid(gas, temperature_k)
    if not 0 < pressure_pa <= _MOST_PA:
        raise ValueError(f"the pressure is to be above 0 and at most {_MOST_PA:g} Pa, got {pressure_pa:g} Pa")
    from CoolProp.CoolProp import PropsSI  # imported where a figure needs it: it is large

    return float(PropsSI("D", "P", pressure_pa, "T", temperature_k, fluid))


@lru_cache(maxsize=4096)
def heated_pressure(gas: str, density_kg_m3: float, temperature_k: float) -> float:
    """Pressure of a closed bottle that has become hot, Pa absolute: the same mass in the same volume.

    Equation:
        p = p(rho, T)     equation of state of the gas, rho constant

    Symbols:
        rho: mass in the bottle over its volume, kg/m3
        T: temperature of the gas, K
        p: absolute pressure, Pa

    Source: coolprop

    Range: the gases of the density; 230 to 700 K, above 0 to 1500 kg/m3, otherwise ValueError. Carbon dioxide that is
    liquid and vapour at once has the pressure of its vapour. Metal and wrap weaken with heat: a bottle bursts below
    what comes out here, and its disc may let go long before.

    Example: a bottle filled with air to 200 bar absolute at 15 degC, at 200 degC.

        >>> filled = gas_density("air", 200e5, 288.15)
        >>> round(heated_pressure("air", filled, 473.15) / 1e5, 1)
        383.3
    """
    fluid = _fluid(gas, temperature_k)
    if not 0 < density_kg_m3 <= 1500:
        raise ValueError(f"the density is to be above 0 and at most 1500 kg/m3, got {density_kg_m3:g} kg/m3")
    from CoolProp.CoolProp import PropsSI

    return float(PropsSI("P", "D", density_kg_m3, "T", temperature_k, fluid))


def _fluid(gas: str, temperature_k: float) -> str:
    if gas not in _FLUIDS:
        raise ValueError(f"no equation of state for {gas!r}; there is one for {', '.join(_FLUIDS)}")
    if not _COLDEST_K <= temperature_k <= _HOTTEST_K:
        raise ValueError(f"the temperature is to be {_COLDEST_K:g} to {_HOTTEST_K:g} K, got {temperature_k:g} K")
    return _FLUIDS[gas]


def free_gas_volume(mass_kg: float, gas: str) -> float:
    """Volume that a mass of gas fills at 15 degC and one atmosphere, m3.

    Equation:
        V = m / rho(101 325 Pa, 288.15 K)

    Symbols:
        m: mass of the gas, kg
        V: volume of free gas, m3

    Source: coolprop

    Range: the gases of the density; a mass of 0 or more, otherwise ValueError.

    Example: the 33 g of carbon dioxide that fill a life jacket, in litres.

        >>> round(free_gas_volume(0.033, "carbon dioxide") * 1000, 1)
        17.6
    """
    if mass_kg < 0:
        raise ValueError(f"a mass of gas is 0 or more, got {mass_kg:g} kg")
    return mass_kg / gas_density(gas, ATMOSPHERE_PA, 288.15)


def stored_energy(gas: str, pressure_pa: float, volume_m3: float) -> float:
    """Energy that a burst sets free, J: the gas expands without heat to the pressure around it.

    Equation:
        E = p V / (k - 1) [1 - (pa / p)^((k - 1) / k)]

    Symbols:
        p: absolute pressure, Pa
        V: volume of water that the bottle holds, m3
        k: ratio of specific heats by the source, 1.4 for air, nitrogen and oxygen, 5/3 for helium
        pa: pressure around it, 101 kPa
        E: energy, J

    Source: asme-pcc-2

    Range: gases of one or two atoms, from the pressure around it to 100 MPa, volume above 0, otherwise ValueError.
    Carbon dioxide that is charged as a liquid boils as it bursts: it lies outside this formula and is refused.

    Example: a bottle of 10 L at 20.1 MPa absolute, in kJ.

        >>> round(stored_energy("air", 20.1e6, 0.010) / 1000, 1)
        391.8
    """
    if gas not in _RATIOS:
        raise ValueError(f"the formula holds for {', '.join(_RATIOS)}, not for {gas}")
    if not _PCC2_ATMOSPHERE_PA <= pressure_pa <= _MOST_PA or volume_m3 <= 0:
        raise ValueError(f"needs 101 kPa to 100 MPa and a volume above 0, got {pressure_pa:g} Pa and {volume_m3:g} m3")
    ratio = _RATIOS[gas]
    expanded = math.pow(_PCC2_ATMOSPHERE_PA / pressure_pa, (ratio - 1) / ratio)
    return pressure_pa * volume_m3 / (ratio - 1) * (1 - expanded)


def tnt_equivalent(energy_j: float) -> float:
    """Mass of TNT that sets the same energy free, kg.

    Equation:
        TNT = E / 4 266 920

    Symbols:
        E: stored energy, J
        TNT: mass of TNT, kg

    Source: asme-pcc-2

    Range: an energy of 0 or more, otherwise ValueError.

    Example: 391.8 kJ.

        >>> round(tnt_equivalent(391.8e3), 4)
        0.0918
    """
    if energy_j < 0:
        raise ValueError(f"an energy is 0 or more, got {energy_j:g} J")
    return energy_j / _TNT_J_PER_KG


def blast_distance(energy_j: float, method: str) -> float:
    """Distance from a bursting vessel that its source keeps people at, m: for the blast alone, not for fragments.

    Equation:
        R = max(floor, 20 TNT^(1/3))          method floor-and-20
        R = max(floor, 20 (2 TNT)^(1/3))      method factor-2, as later editions print it

    Symbols:
        TNT: mass of TNT of the same energy, kg
        floor: 30 m up to 135.5 MJ, 60 m up to 271 MJ
        R: distance, m

    Source: asme-pcc-2

    Range: 0 to 271 MJ, otherwise ValueError; methods floor-and-20 and factor-2. The source is about pressure tests of
    vessels: fragments of a bottle in a fire fly much further.

    Example: 391.8 kJ, where the floor of 30 m governs.

        >>> blast_distance(391.8e3, "floor-and-20")
        30.0
    """
    if method not in ("floor-and-20", "factor-2"):
        raise ValueError(f"methods are floor-and-20 and factor-2, not {method!r}")
    floor = next((floor for most, floor in _FLOORS_M if 0 <= energy_j <= most), None)
    if floor is None:
        raise ValueError(f"the source covers 0 to 271 MJ, got {energy_j / 1e6:g} MJ")
    return max(floor, 20 * math.cbrt((2 if method == "factor-2" else 1) * tnt_equivalent(energy_j)))
