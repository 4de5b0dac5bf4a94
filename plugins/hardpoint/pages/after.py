"""Crew page: cut by side, water, heavy end, all signs."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping

from hardpoint.figures.construction import Above, above
from hardpoint.findings import Path
from hardpoint.pages.addresses import anchor
from hardpoint.pages.bounds import bounds
from hardpoint.pages.clear_skin import clear_skin
from hardpoint.pages.opening import opens
from hardpoint.pages.pictures import ELSEWHERE, photos_at
from hardpoint.pages.shown import Shown
from hardpoint.pages.telling import in_full, several, side_words, tell, told_place
from hardpoint.pages.terms import first_capital, name_words, term, title_of
from hardpoint.pages.vessels import drains
from hardpoint.pages.view import Block, Fact, Facts, Line, Lines, Row, Section, Table, Value
from hardpoint.records.airframe import Airframe
from hardpoint.records.known import NonValue, entries, said
from hardpoint.records.places import Landmark
from hardpoint.records.structure import BehindItem, Cut, Skin, Zone, ZoneSide
from hardpoint.records.surroundings import Flooding, Water
from hardpoint.records.ways import ATTITUDES
from hardpoint.words import mark, say

_COMPLETE = "walked and complete"


def cutting(shown: Shown) -> Section:
    """Verdict by zone and side, with how the list of what lies behind was made."""
    zones = shown.airframe.zones
    block = zone_table(shown)
    caution = Line(
        say("a list from a drawing or a walk in part is not complete: something can lie behind"),
        say("Before a blade:"),
        "caution",
    )
    lines: tuple[Line, ...] = (caution,)
    if not isinstance(zones, NonValue):
        lines = (caution, *_in_short(zones, upper_side(shown.airframe)), *clear_skin(shown))
    return Section("cut", say("Cut"), (Lines(lines), block), say("Cut"))


def zone_table(shown: Shown, anchored: Callable[[Path], str] = anchor) -> Block:
    """Every zone by side with its verdict, or that nobody has recorded any; ``anchored`` gives a row its id."""
    zones = shown.airframe.zones
    if isinstance(zones, NonValue):
        return Lines((Line(say("where it may be cut: nobody has recorded it"), say("UNKNOWN"), "unknown"),))
    return _zones(shown, zones, anchored)


_UPPER: dict[Above, str] = {
    "canopy": mark("canopy side"),
    "roof": mark("roof side"),
    "open": mark("side away from the floor"),
}


def upper_side(airframe: Airframe) -> str:
    """The side away from the floor, by what is there: nobody looks for a canopy on a cabin with doors."""
    return say(_UPPER[above(airframe)])


_IN_SHORT: tuple[tuple[Cut, str], ...] = (
    ("preferred", mark("Preferred:")),
    ("possible", mark("Possible:")),
    ("never", mark("Never:")),
)


def _in_short(zones: Mapping[str, Zone], upper: str) -> Iterator[Line]:
    """Where first, before every zone is read: by verdict, each side that has it. What nobody knows is in no list."""
    sides = {"left": say("left"), "right": say("right"), "top": upper, "floor": say("floor side")}
    told: dict[str, list[str]] = {}
    for name, zone in zones.items():
        for side, words in sides.items():
            listed: ZoneSide | NonValue | None = getattr(zone, side)
            if isinstance(listed, ZoneSide) and not isinstance(listed.cut, NonValue):
                told.setdefault(listed.cut, []).append(say("{zone} {side}", zone=name_words(name), side=words))
    if not told.keys() & {"preferred", "possible"}:
        yield Line(say("no side is recorded as one to cut"), say("Nowhere:"), "caution")
    for verdict, strong in _IN_SHORT:
        if verdict in told:
            yield Line("; ".join(told[verdict]), say(strong), "caution" if verdict == "never" else "plain")


def _zones(shown: Shown, zones: Mapping[str, Zone], anchored: Callable[[Path], str]) -> Table:
    """Left and right always; the upper and the floor side where some zone speaks of them."""
    spoken = [side for side in ("top", "floor") if any(getattr(zone, side) for zone in zones.values())]
    sides = ("left", "right", *spoken)
    upper = first_capital(upper_side(shown.airframe))
    heads = {"left": say("Left"), "right": say("Right"), "top": upper, "floor": say("Floor side")}
    rows = tuple(
        Row(
            (
                Value(title_of(name), remark=bounds(zone, shown.airframe), note=_built(zone)),
                *(_verdict(getattr(zone, side)) for side in sides),
            ),
            anchored(("zones", name)),
            was=shown.was(("zones", name)),
        )
        for name, zone in zones.items()
    )
    caption = say("Cutting by zone and side, the airframe's own left and right")
    return Table("zones", caption, (say("Zone"), *(heads[side] for side in sides)), rows)


def _built(zone: Zone) -> str:
    """What a blade meets: what carries, what it looks like, skin, what opens without cutting."""
    skin = said(zone.skin)
    built = say("what carries: UNKNOWN") if zone.structure is NonValue.UNKNOWN else tell(zone.structure).text
    words = [built, zone.looks or ""]
    if skin:
        words.append(_skin(skin))
        if skin.tube is not None and skin.tube is not NonValue.NOT_APPLICABLE:
            words.append(say("tubes: {tube}", tube=in_full(tell(skin.tube, ("zones", "x", "skin", "tube")))))
        words.append("" if skin.joins is None else say("joins: {joins}", joins=tell(skin.joins).text))
    elif zone.skin is NonValue.UNKNOWN:
        words.append(say("skin: UNKNOWN"))
    return "; ".join(word for word in words if word)


def _skin(skin: Skin) -> str:
    thick = in_full(tell(skin.thickness, ("zones", "x", "skin", "thickness")))
    if skin.material is NonValue.UNKNOWN and skin.thickness is NonValue.UNKNOWN:
        return say("skin: what it is and how thick it is UNKNOWN")
    if skin.thickness is NonValue.UNKNOWN:
        return say("skin: {material}, how thick UNKNOWN", material=tell(skin.material).text)
    return say("skin: {material}, {thickness}", material=tell(skin.material).text, thickness=thick)


def _verdict(listed: ZoneSide | NonValue | None) -> Value:
    if listed is None or listed is NonValue.UNKNOWN:
        return Value(say("UNKNOWN: do not cut"), "unknown", note=say("nobody has said"))
    if isinstance(listed, NonValue):
        return tell(listed)
    verdict, listing = tell(listed.cut), tell(listed.listing)
    complete, partly = say("list: {how}", how=listing.text), say("list: {how}, not complete", how=listing.text)
    note = complete if listed.listing == _COMPLETE else partly
    if listed.why:
        note += f"; {listed.why}"
    text = say("UNKNOWN: do not cut") if verdict.state == "unknown" else verdict.text
    return Value(text, verdict.state, remark=_behind(listed), note=note)


def _behind(listed: ZoneSide) -> str:
    """What lies behind this side: all that is recorded, by what it looks like; unknown where nobody has listed it."""
    if listed.behind is None or isinstance(listed.behind, NonValue):
        return say("what lies behind: UNKNOWN")
    things = [
        say("{what}: UNKNOWN", what=name_words(name)) if isinstance(thing, NonValue) else _thing(thing)
        for name, thing in listed.behind.items()
    ]
    return say("behind: {things}", things="; ".join(things)) if things else say("behind: nothing found")


def _thing(thing: BehindItem) -> str:
    told = thing.what or term(thing.kind)
    return f"{told}, {thing.looks}" if thing.looks else told


def water(shown: Shown) -> Section:
    """Afloat, inverted in water, snags."""
    told = said(shown.airframe.water)
    if told is None:
        facts: tuple[Fact, ...] = (shown.fact(say("In water"), ("water",), shown.airframe.water),)
    else:
        asked = [
            (say("Floats"), "floats"),
            (say("Because"), "floats_because"),
            (say("Stays afloat"), "stays_afloat"),
            (say("Tow"), "tow"),
            (say("Inside"), "inside"),
        ]
        facts = tuple(
            shown.fact(label, ("water", key), getattr(told, key))
            for label, key in asked
            if getattr(told, key) is not None
        )
        facts += (*_openings_in_water(shown), *_bays(shown, told))
    return Section("water", say("Water"), (Facts("water-facts", "", facts),), say("Water"))


def _bays(shown: Shown, water: Water) -> tuple[Fact, ...]:
    """Every bay that takes water: how much, where, how high it stands over its holes, and the holes."""
    path = ("water", "floods")
    if isinstance(water.floods, NonValue) or not water.floods:
        answer = water.floods if isinstance(water.floods, NonValue) else say("no bay recorded")
        return (shown.fact(say("Floods"), path, answer),)
    return tuple(
        shown.fact(say("Floods: {bay}", bay=name_words(name)), (*path, name), _bay(shown, bay))
        for name, bay in water.floods.items()
    )


def _bay(shown: Shown, bay: Flooding | NonValue) -> Value:
    if isinstance(bay, NonValue):
        return tell(bay)
    answers = [
        (say("takes"), tell(bay.volume, ("floods", "volume"))),
        (say("where"), told_place(bay.place, shown.airframe)),
    ]
    if bay.head is not None:
        answers.append((say("water over its holes when full"), tell(bay.head, ("floods", "head"))))
    return several((*answers, *drains(bay.drains, shown)))


_IN_WATER = (
    (mark("{exit}, afloat"), "afloat"),
    (mark("{exit}, inverted in water"), "inverted_in_water"),
)


def _openings_in_water(shown: Shown) -> tuple[Fact, ...]:
    exits = entries(shown.airframe.exits)
    return tuple(
        shown.fact(
            say(label, exit=title_of(name)),
            ("exits", name, "works", key),
            opens(getattr(exit_.works, key)),
        )
        for name, exit_ in exits.items()
        for label, key in _IN_WATER
    )


def heavy_end(shown: Shown) -> Section:
    """Which end goes low."""
    masses = shown.airframe.masses
    facts = [
        shown.fact(say("Heavy end"), ("masses", "heavy_end"), masses.heavy_end, note=masses.heavy_end_because or ""),
        shown.fact(say("Empty mass"), ("masses", "empty"), masses.empty),
    ]
    steadying = said(shown.airframe.steadying)
    if steadying is None:
        facts.append(shown.fact(say("Steadying"), ("steadying",), shown.airframe.steadying))
    else:
        facts.append(shown.fact(say("Steady it upright"), ("steadying", "upright"), steadying.upright))
        facts.append(shown.fact(say("Steady it inverted"), ("steadying", "inverted"), steadying.inverted))
        facts.append(shown.fact(say("Steady it on its side"), ("steadying", "on_its_side"), steadying.on_its_side))
    return Section("heavy-end", say("Heavy end"), (Facts("heavy-end-facts", "", tuple(facts)),), say("Heavy end"))


def recognising(shown: Shown) -> Section:
    """All signs, by kind, with the attitudes in which they can be seen."""
    signs = shown.airframe.signs
    photos = photos_at(shown, ELSEWHERE, say("Other photos"))
    if isinstance(signs, NonValue):
        unknown = Lines((Line(say("signs"), say("UNKNOWN"), "unknown"),))
        return Section("recognise", say("Recognise"), (unknown, *_called(shown), *photos), say("Recognise"))
    rows = tuple(
        Row((Value(sign.see), Value(term(sign.of)), Value(_attitudes(sign.visible))), anchor(("signs", name)))
        for name, sign in signs.items()
    )
    table = Table(
        "signs",
        say("Confirm by two signs, one of them a shape"),
        (say("Sign"), say("Kind"), say("Seen when")),
        rows,
    )
    return Section("recognise", say("Recognise"), (table, *_called(shown), *photos), say("Recognise"))


def _called(shown: Shown) -> Iterator[Block]:
    """What it is and what people call it; and how the landmarks look that zones and places are told from."""
    airframe = shown.airframe
    facts = [shown.fact(say("What it is"), ("role",), airframe.role)]
    if airframe.also_called:
        facts.append(shown.fact(say("Also called"), ("also_called",), Value("; ".join(airframe.also_called))))
    yield Facts("called", "", tuple(facts))
    if isinstance(airframe.landmarks, NonValue):
        yield Facts("landmarks", "", (shown.fact(say("Landmarks"), ("landmarks",), airframe.landmarks),))
        return
    marks = [
        shown.fact(first_capital(name), ("landmarks", name), _landmark(mark), anchored=True)
        for name, mark in airframe.landmarks.items()
    ]
    yield Facts("landmarks", say("Landmarks that places are told from"), tuple(marks))


def _landmark(landmark: Landmark) -> Value:
    side = side_words(landmark.side) if landmark.side else ""
    return Value("; ".join(part for part in (landmark.looks or "", side) if part) or say("looks not recorded"))


def _attitudes(visible: tuple[str, ...]) -> str:
    return say("any attitude") if len(visible) == len(ATTITUDES) else ", ".join(map(term, visible))


def two_signs(shown: Shown) -> tuple[str, ...]:
    """The first shape and the first other sign that show upright: what to confirm by before the steps."""
    signs = [sign for sign in entries(shown.airframe.signs).values() if "upright" in sign.visible]
    shapes = [sign.see for sign in signs if sign.of == "shape"]
    others = [sign.see for sign in signs if sign.of != "shape"] + shapes[1:]
    return (*shapes[:1], *others[:1])
