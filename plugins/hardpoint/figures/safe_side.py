"""To which side the conversion of a stated figure is rounded, so that nobody is harmed by the rounding.

Masses, loads, stand-off, agent, drain and access times go up; allowables, endurance, clearances, openings and windows
go down. A limit is never rounded through the limit (ASME A112.18.1 / CSA B125.1 Annex A.2(e)): maxima down, minima up.
"""

from __future__ import annotations

from hardpoint.findings import Path
from hardpoint.units import Kind, Rounding

_BY_KEY: dict[str, Rounding] = {
    "allowable": "down",
    "head_clearance": "down",
    "head_to_canopy": "down",
    "maximum": "down",
    "load": "down",
    "flash_point": "down",
    "thickest": "down",
    "room_needed": "up",
    "reach": "up",
    "by": "up",
    "strap_width": "up",
    "distance": "up",
    "margins": "up",
    "intake_keep": "up",
    "exhaust_keep": "up",
    "thickness": "up",
    "jaw": "up",
    "cone": "down",
    "working_pressure": "down",
    "bottle_reserve": "up",
    "carries": "down",
    "discharge": "down",
    "water": "down",
    "powder": "down",
    "diameter": "down",
}
_BY_KIND: dict[Kind, Rounding] = {"mass": "up", "volume": "up", "time": "up", "force": "up", "energy": "up"}


def rounding_of(path: Path, kind: Kind) -> Rounding:
    """The safe side for the figure at ``path``: by its key, or that of its mapping, else by its kind, else nearest."""
    for key in reversed(path[-2:]):
        if str(key) in _BY_KEY:
            return _BY_KEY[str(key)]
    return _BY_KIND.get(kind, "nearest")
