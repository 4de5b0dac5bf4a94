"""What a type is built of, driven by and closed by, read out of its record."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Literal

from hardpoint.records.airframe import Airframe
from hardpoint.records.known import NonValue, entries, said
from hardpoint.records.materials import Material
from hardpoint.units import convert

Construction = Literal["composite", "metal", "fabric", "wood", "electric", "jet", "glider", "light", "floats", "rotor"]
_SKINS: dict[Material, Construction] = {
    "glass fibre": "composite",
    "carbon fibre": "composite",
    "aramid fibre": "composite",
    "aluminium": "metal",
    "steel sheet": "metal",
    "titanium": "metal",
    "magnesium": "metal",
    "fabric": "fabric",
    "plywood": "wood",
    "solid wood": "wood",
}
LIGHT_BELOW_KG = float(convert("450 kg", "kg"))
"""Empty mass below which a powered aircraft counts as very light here: a choice of this book, no class of any law."""


Above = Literal["canopy", "roof", "open"]


def above(airframe: Airframe) -> Above:
    """What closes the side away from the floor: a canopy, the roof of a cabin with doors, or nothing.

    Unknown canopies count as canopies: that is the word which the book has for that side.
    """
    if airframe.canopies is NonValue.UNKNOWN:
        return "canopy"
    listed = airframe.canopies.values() if not isinstance(airframe.canopies, NonValue) else ()
    if any(isinstance(one, NonValue) or one.kind.endswith("canopy") for one in listed):
        return "canopy"
    return "roof" if listed else "open"


def built_of(airframe: Airframe) -> frozenset[Construction]:
    """Every kind of construction that the record shows; a type can be of several."""
    return frozenset(_found(airframe))


def _found(airframe: Airframe) -> Iterator[Construction]:
    for zone in entries(airframe.zones).values():
        skin = said(zone.skin)
        material = said(skin.material) if skin else None
        if material in _SKINS:
            yield _SKINS[material]
    engine = said(airframe.engine)
    if engine and engine.kind in ("electric", "jet"):
        yield "electric" if engine.kind == "electric" else "jet"
    if airframe.engine is NonValue.NOT_FITTED:
        yield "glider"
    if said(airframe.rotor):
        yield "rotor"
    if any(cushion in airframe_words(airframe) for cushion in ("amphibian", "floats", "flying boat", "hull")):
        yield "floats"
    empty = said(airframe.masses.empty)
    if engine and empty and empty.si[0] < LIGHT_BELOW_KG:
        yield "light"


def airframe_words(airframe: Airframe) -> str:
    """The author's few words on what it is, in small letters."""
    return "" if isinstance(airframe.role, NonValue) else airframe.role.casefold()
