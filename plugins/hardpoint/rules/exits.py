"""Rules about canopies and the ways to open them."""

from __future__ import annotations

import re
from collections.abc import Iterator

from hardpoint.figures.hazards import ANYWHERE, CutHazard
from hardpoint.records.airframe import Airframe
from hardpoint.records.known import NonValue, entries, said
from hardpoint.records.walk import fields_of, values_of
from hardpoint.rules.rule import AIRFRAME, Hit, Record

_WAYS_IN = ("reach in", "break in")


@AIRFRAME.rule(
    "inside-only-without-way-in",
    "warning",
    "A canopy that opens from inside only has a way in recorded: reaching in or breaking in.",
)
def inside_only_without_way_in(record: Record) -> Iterator[Hit]:
    """Canopies with exits, none of them from outside."""
    exits = entries(record.airframe.exits)
    for name in entries(record.airframe.canopies):
        ways = [exit_ for exit_ in exits.values() if exit_.opens == name]
        if ways and all(exit_.from_ == "inside" and exit_.way_in not in _WAYS_IN for exit_ in ways):
            yield Hit(
                ("canopies", name),
                "inside only",
                "an exit with way_in: reach in or break in",
                "way_in: break in",
                message=f"{name} opens from inside only, no way in is recorded; add one, way_in: break in or reach in",
            )


@AIRFRAME.rule("latches-left-closed", "warning", "The steps of an exit release as many latches as the canopy has.")
def latches_left_closed(record: Record) -> Iterator[Hit]:
    """Exits that release fewer latches than there are."""
    canopies = entries(record.airframe.canopies)
    for name, exit_ in entries(record.airframe.exits).items():
        canopy = canopies.get(exit_.opens)
        latches, released = said(canopy.latches) if canopy else None, said(exit_.latches_released)
        if latches is None or released is None or exit_.way_in in ("break in", "hinge release"):
            continue
        if released < latches:
            yield Hit(
                ("exits", name, "latches_released"),
                str(released),
                f"all {latches} latches of {exit_.opens}",
                str(latches),
            )


@AIRFRAME.rule(
    "room-not-stated", "warning", "An exit that opens `given the room` says how much room it needs, if need be unknown."
)
def room_not_stated(record: Record) -> Iterator[Hit]:
    """Exits that need room and do not say how much."""
    for name, exit_ in entries(record.airframe.exits).items():
        works = exit_.works
        if works.room_needed is None and "opens given the room" in [value for _, value in fields_of(works)]:
            yield Hit(
                ("exits", name, "works"), "opens given the room", "the key room_needed beside it", "room_needed: 700 mm"
            )


@AIRFRAME.rule(
    "seat-without-exit", "warning", "Every seat is under a canopy with an exit, or in an open cockpit with one."
)
def seat_without_exit(record: Record) -> Iterator[Hit]:
    """Seats that no exit leads to."""
    covered = {name: canopy.covers for name, canopy in entries(record.airframe.canopies).items()}
    reached: set[str] = set()
    for exit_ in entries(record.airframe.exits).values():
        reached.update(covered.get(exit_.opens, (exit_.opens,)))
    for seat in record.airframe.seats:
        if seat not in reached and not isinstance(record.airframe.exits, NonValue):
            yield Hit(
                ("seats", seat),
                seat,
                "an exit that opens what covers this seat",
                "",
                message=(f'no exit leads to the seat "{seat}"; add one, or name the seat under covers of its canopy'),
            )


@AIRFRAME.rule(
    "more-latches-than-there-are", "warning", "The steps of an exit release no more latches than the canopy has."
)
def more_latches_than_there_are(record: Record) -> Iterator[Hit]:
    """Exits that release more latches than their canopy says there are: one of the two was counted wrongly."""
    canopies = entries(record.airframe.canopies)
    for name, exit_ in entries(record.airframe.exits).items():
        canopy = canopies.get(exit_.opens)
        latches, released = said(canopy.latches) if canopy else None, said(exit_.latches_released)
        if latches is not None and released is not None and released > latches:
            wanted = f"at most the {latches} of {exit_.opens}; count them again"
            related = ((("canopies", exit_.opens, "latches"), str(latches)),)
            yield Hit(("exits", name, "latches_released"), str(released), wanted, str(latches), related=related)


@AIRFRAME.rule(
    "trapped-inverted",
    "warning",
    "Something opens what covers a seat when the airframe lies inverted; where nothing does, crews must see it.",
)
def trapped_inverted(record: Record) -> Iterator[Hit]:
    """Canopies and open seats none of whose exits opens inverted, nor any that leads to all of the same seats."""
    exits = entries(record.airframe.exits)
    for what in dict.fromkeys(exit_.opens for exit_ in exits.values()):
        seats = _seats_under(record.airframe, what)
        ways = [exit_ for exit_ in exits.values() if seats <= _seats_under(record.airframe, exit_.opens)]
        if all(exit_.works.inverted == "does not open" for exit_ in ways):
            section = "seats" if what in record.airframe.seats else "canopies"
            yield Hit(
                (section, what),
                "does not open",
                "a way out when it lies inverted",
                message=f"nothing recorded opens {what} when the airframe lies inverted; "
                "say under steadying, inverted, how it is raised, or add an exit with way_in: break in",
            )


def _seats_under(airframe: Airframe, what: str) -> frozenset[str]:
    """The seats that a canopy covers; an open seat is its own."""
    canopy = entries(airframe.canopies).get(what)
    return frozenset(canopy.covers) if canopy else frozenset({what})


@AIRFRAME.rule(
    "break-in-head-not-said",
    "warning",
    "An exit that is broken in says how far the nearest head is behind the pane, if need be unknown.",
)
def break_in_head_not_said(record: Record) -> Iterator[Hit]:
    """Ways to break in without head_clearance."""
    for name, exit_ in entries(record.airframe.exits).items():
        if exit_.way_in == "break in" and exit_.head_clearance is None:
            yield Hit(("exits", name), "", "the key head_clearance, if need be unknown", "head_clearance: 160 mm")


@AIRFRAME.rule(
    "break-in-over-hazard",
    "warning",
    "No pane is broken where a bottle lies behind it, or where a pyrotechnic or its cable lies or can lie.",
)
def break_in_over_hazard(record: Record) -> Iterator[Hit]:
    """Ways to break in against what can lie there and is not spoken of; an unknown way counts over all its stretch."""
    devices = ("pyrotechnic", "pyrotechnic cable")
    near = [one for one in record.hazards if one.kind in (*devices, "bottle")]
    near = [one for one in near if one.certain or one.kind == "pyrotechnic cable"]
    for name, exit_ in entries(record.airframe.exits).items():
        place = said(exit_.place) if exit_.way_in == "break in" else None
        fs = said(place.fs) if place else None
        if place is None or fs is None:
            continue
        met = [one for one in near if one.meets(fs, said(place.wl) or ANYWHERE, str(place.side))]
        told = " ".join(text for _, text in values_of(exit_) if isinstance(text, str))
        if met and not _SPEAKS_OF_IT.search(told):
            related = tuple((hazard.path, hazard.what) for hazard in met)
            wanted = f"another pane, or the danger said under snags: there is or can be {_listed(met)}"
            yield Hit(("exits", name, "place"), f"FS {fs.text}", wanted, related=related)


_SPEAKS_OF_IT = re.compile(r"(?i)cartridge|rocket|pyrotechnic|flare|bottle|under pressure")


def _listed(hazards: list[CutHazard]) -> str:
    return ", ".join(dict.fromkeys(hazard.what for hazard in hazards))


@AIRFRAME.rule(
    "hinges-contradict-kind", "warning", "A hinged canopy has a hinged side; a sliding or lift-off one has none."
)
def hinges_contradict_kind(record: Record) -> Iterator[Hit]:
    """Kinds of canopy against their hinges."""
    for name, canopy in entries(record.airframe.canopies).items():
        hinged, none = canopy.kind in ("hinged canopy", "gull door"), ("not fitted", "not applicable")
        loose = canopy.kind in ("sliding canopy", "lift-off canopy", "fixed pane")
        if (hinged and canopy.hinges in none) or (loose and canopy.hinges not in (*none, "unknown")):
            wanted = "the hinged side" if hinged else "not applicable"
            yield Hit(("canopies", name, "hinges"), str(canopy.hinges), f"{wanted}: this is a {canopy.kind}")
