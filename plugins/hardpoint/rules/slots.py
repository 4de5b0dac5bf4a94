"""Rules about what an entry of a line-up says of its slot, beside what the record of that aircraft says."""

from __future__ import annotations

import re
from collections.abc import Iterator

from hardpoint.figures.slots import leads_over_water
from hardpoint.records.airframe import Airframe
from hardpoint.records.known import NonValue, entries, said
from hardpoint.rules.looking import airframe_of, entries_of
from hardpoint.rules.rule import EVENT, Hit, LineUpUnder


@EVENT.rule(
    "over-water-unanswered",
    "warning",
    "An aircraft whose slot leads over water says whether some exit opens inverted in water.",
)
def over_water_unanswered(under: LineUpUnder) -> Iterator[Hit]:
    """Entries over water of aircraft of which nobody has said, for any exit, whether it opens in water."""
    for path, entry in entries_of(under):
        airframe = airframe_of(under, entry) if leads_over_water(entry) is True else None
        exits = entries(airframe.exits).values() if airframe else ()
        if airframe and all(exit_.works.inverted_in_water in (None, NonValue.UNKNOWN) for exit_ in exits):
            wanted = "works.inverted_in_water answered at an exit: nobody has said whether one opens there"
            yield Hit((*path, "over_water"), str(entry.over_water), wanted)


@EVENT.rule("over-water-without-jacket", "warning", "Kit for a slot over water names a life jacket.")
def over_water_without_jacket(under: LineUpUnder) -> Iterator[Hit]:
    """Entries over water whose kit is listed, without anything that floats."""
    for path, entry in entries_of(under):
        kit = said(entry.kit)
        floats = kit is None or re.search(r"(?i)jacket|vest|float|buoy", " ".join(kit))
        if kit is not None and not floats and leads_over_water(entry) is True:
            yield Hit((*path, "kit"), ", ".join(kit), "the life jackets too, or unknown", "life jacket")


_WORN = {"back parachute": "on the back", "seat parachute": "in the seat", "lap parachute": "on the lap"}


@EVENT.rule(
    "kit-the-record-denies",
    "warning",
    "Kit that is worn in a slot is in the record of that aircraft: its crew page says how to deal with it.",
)
def kit_the_record_denies(under: LineUpUnder) -> Iterator[Hit]:
    """Parachutes and air bottles in the kit of a slot that the record of the aircraft says are not there."""
    for path, entry in entries_of(under):
        airframe = airframe_of(under, entry)
        for index, kit in enumerate(said(entry.kit) or ()) if airframe else ():
            why = _denied(kit.lower(), airframe) if airframe else ""
            if why:
                yield Hit((*path, "kit", index), kit, f"kit that the record has; {why}")


def _denied(kit: str, airframe: Airframe) -> str:
    """What the record of an aircraft says against a piece of kit, "" where it says nothing."""
    answers = [seat.parachute for seat in airframe.seats.values()]
    if "parachute" in kit and all(answer in (NonValue.NOT_FITTED, NonValue.NOT_APPLICABLE) for answer in answers):
        return "no seat of it has a parachute"
    worn = {str(parachute.worn) for parachute in map(said, answers) if parachute}
    if kit in _WORN and worn and NonValue.UNKNOWN not in answers and _WORN[kit] not in worn:
        return f"its record has a parachute worn {', '.join(sorted(worn))}"
    bottles = airframe.bottles
    listed = {} if isinstance(bottles, NonValue) else bottles
    known = bottles is not NonValue.UNKNOWN and NonValue.UNKNOWN not in listed.values()
    if "air bottle" in kit and known and not any(one.use == "breathing air" for one in entries(listed).values()):
        return "no bottle of it holds breathing air"
    return ""
