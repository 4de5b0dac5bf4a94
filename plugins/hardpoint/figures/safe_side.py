"""To which side the conversion of a stated figure is rounded, so that nobody is harmed by the rounding.

Masses, loads, stand-off, agent, pressures that can burst, drain and access times go up; allowables, endurance,
clearances, openings and windows go down. A limit is never rounded through the limit (ASME A112.18.1 / CSA B125.1 Annex
A.2(e)): maxima down, minima up.
"""

from __future__ import annotations

from hardpoint.findings import Path
from hardpoint.units import Kind, Rounding

_BY_KEY: dict[str, Rounding] = {
    "allowable": "down",
    "head_clearance": "down",
    "head_to_canopy": "down",
    "load": "down",
    "flash_point": "down",
    "thickest": "down",
    "room_needed": "up",
    "reach": "up",
    "by": "up",
    "strap_width": "up",
    "distance": "up",
    "intake_keep": "up",
    "exhaust_keep": "up",
    "thickness": "up",
    "pane_thickness": "up",
    "tube": "up",
    "tip_height": "down",
    "above": "down",
    "jaw": "up",
    "cone": "down",
    "working_pressure": "up",
    "test_pressure": "down",
    "bottle_reserve": "up",
    "carries": "down",
    "discharge": "down",
    "water": "down",
    "powder": "down",
    "diameter": "down",
}
_BY_MAPPING: dict[str, Rounding] = {"margins": "up", "breathing_rates": "up"}
"""Mappings of figures under free ids: none of those ids is read as a key."""
_BY_KIND: dict[Kind, Rounding] = {"mass": "up", "volume": "up", "time": "up", "force": "up", "energy": "up"}


def rounding_of(path: Path, kind: Kind) -> Rounding:
    """The safe side for the figure at ``path``: by its mapping or its own key, else by its kind, else nearest.

    Ids of the author's are not keys: a tank called ``water`` is a tank.
    """
    mapping, key = (str(part) for part in ("", "", *path)[-2:])
    return _BY_MAPPING.get(mapping) or _BY_KEY.get(key) or _BY_KIND.get(kind, "nearest")


def unit_beside(path: Path) -> str:
    """The unit to set beside a figure where its kind alone would mislead: gas is not counted in gallons; "" else."""
    return "ft3/min" if "breathing_rates" in path[:1] else ""
