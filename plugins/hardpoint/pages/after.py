"""Crew page: cut by side, water, heavy end, all signs."""

from __future__ import annotations

from collections.abc import Mapping

from hardpoint.pages.addresses import anchor
from hardpoint.pages.pictures import ELSEWHERE, photos_at
from hardpoint.pages.telling import Shown, tell
from hardpoint.pages.view import Block, Fact, Facts, Line, Lines, Row, Section, Table, Value
from hardpoint.records.known import NonValue, entries, said
from hardpoint.records.structure import Zone, ZoneSide
from hardpoint.records.ways import ATTITUDES
from hardpoint.words import say

_COMPLETE = "walked and complete"


def cutting(shown: Shown) -> Section:
    """Verdict by zone and side, with how the list of what lies behind was made."""
    zones = shown.airframe.zones
    if isinstance(zones, NonValue):
        block: Block = Lines((Line("where it may be cut: nobody has recorded it", "UNKNOWN", "unknown"),))
    else:
        block = _zones(shown, zones)
    caution = Line(
        "a list from a drawing or a walk in part is not complete: something can lie behind",
        "Before a blade:",
        "caution",
    )
    return Section("cut", "Cut", (Lines((caution,)), block), "Cut")


def _zones(shown: Shown, zones: Mapping[str, Zone]) -> Table:
    """Left and right always; the canopy and the floor side where some zone speaks of them."""
    spoken = [side for side in ("top", "floor") if any(getattr(zone, side) for zone in zones.values())]
    sides = ("left", "right", *spoken)
    heads = {"left": "Left", "right": "Right", "top": "Canopy side", "floor": "Floor side"}
    rows = tuple(
        Row(
            (
                Value(name.replace("-", " ").capitalize(), note=tell(zone.structure).text),
                *(_verdict(shown, name, side, getattr(zone, side)) for side in sides),
            ),
            anchor(("zones", name)),
        )
        for name, zone in zones.items()
    )
    caption = "Cutting by zone and side, the airframe's own left and right"
    return Table("zones", caption, ("Zone", *(heads[side] for side in sides)), rows)


def _verdict(shown: Shown, zone: str, side: str, listed: ZoneSide | None) -> Value:
    if listed is None:
        return Value("UNKNOWN: do not cut", "unknown", note="nobody has said")
    verdict, listing = tell(listed.cut), tell(listed.listing)
    was = shown.was(("zones", zone, side))
    note = f"list: {listing.text}" + ("" if listing.text == _COMPLETE else ", not complete")
    if listed.why:
        note += f"; {listed.why}"
    text = "UNKNOWN: do not cut" if verdict.state == "unknown" else verdict.text
    return Value(text, verdict.state, remark=f"this tail differs; type says: {was}" if was else "", note=note)


def water(shown: Shown) -> Section:
    """Afloat, inverted in water, snags."""
    told = said(shown.airframe.water)
    if told is None:
        facts: tuple[Fact, ...] = (shown.fact("In water", ("water",), shown.airframe.water),)
    else:
        asked = [
            ("Floats", "floats"),
            ("Because", "floats_because"),
            ("Stays afloat", "stays_afloat"),
            ("Tow", "tow"),
            ("Inside", "inside"),
        ]
        facts = tuple(
            shown.fact(label, ("water", key), getattr(told, key))
            for label, key in asked
            if getattr(told, key) is not None
        )
        facts += (*_openings_in_water(shown), shown.fact("Floods", ("water", "floods"), _bays(shown)))
    return Section("water", "Water", (Facts("water-facts", "", facts),), "Water")


def _bays(shown: Shown) -> str | NonValue:
    told = said(shown.airframe.water)
    if told is None or isinstance(told.floods, NonValue):
        return NonValue.UNKNOWN
    return ", ".join(name.replace("-", " ") for name in told.floods) or "no bay recorded"


def _openings_in_water(shown: Shown) -> tuple[Fact, ...]:
    exits = entries(shown.airframe.exits)
    return tuple(
        shown.fact(
            f"{name.replace('-', ' ').capitalize()} in water",
            ("exits", name, "works", "in_water"),
            exit_.works.in_water,
        )
        for name, exit_ in exits.items()
    )


def heavy_end(shown: Shown) -> Section:
    """Which end goes low."""
    masses = shown.airframe.masses
    facts = [
        shown.fact("Heavy end", ("masses", "heavy_end"), masses.heavy_end, note=masses.heavy_end_because or ""),
        shown.fact("Empty mass", ("masses", "empty"), masses.empty),
    ]
    steadying = said(shown.airframe.steadying)
    if steadying is None:
        facts.append(shown.fact("Steadying", ("steadying",), shown.airframe.steadying))
    else:
        facts.append(shown.fact("Steady it upright", ("steadying", "upright"), steadying.upright))
        facts.append(shown.fact("Steady it inverted", ("steadying", "inverted"), steadying.inverted))
        facts.append(shown.fact("Steady it on its side", ("steadying", "on_its_side"), steadying.on_its_side))
    return Section("heavy-end", "Heavy end", (Facts("heavy-end-facts", "", tuple(facts)),), "Heavy end")


def recognising(shown: Shown) -> Section:
    """All signs, by kind, with the attitudes in which they can be seen."""
    signs = shown.airframe.signs
    photos = photos_at(shown, ELSEWHERE, say("Other photos"))
    if isinstance(signs, NonValue):
        unknown = Lines((Line("signs", "UNKNOWN", "unknown"),))
        return Section("recognise", "Recognise", (unknown, *photos), "Recognise")
    rows = tuple(
        Row((Value(sign.see), Value(sign.of), Value(_attitudes(sign.visible))), anchor(("signs", name)))
        for name, sign in signs.items()
    )
    table = Table("signs", "Confirm by two signs, one of them a shape", ("Sign", "Kind", "Seen when"), rows)
    return Section("recognise", "Recognise", (table, *photos), "Recognise")


def _attitudes(visible: tuple[str, ...]) -> str:
    return "any attitude" if len(visible) == len(ATTITUDES) else ", ".join(visible)


def two_signs(shown: Shown) -> tuple[str, ...]:
    """The first shape and the first other sign that show upright: what to confirm by before the steps."""
    signs = [sign for sign in entries(shown.airframe.signs).values() if "upright" in sign.visible]
    shapes = [sign.see for sign in signs if sign.of == "shape"]
    others = [sign.see for sign in signs if sign.of != "shape"] + shapes[1:]
    return (*shapes[:1], *others[:1])
