"""Rules about from where to come, and from where not."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping

from hardpoint.findings import Path
from hardpoint.records.airframe import Airframe
from hardpoint.records.known import NonValue, entries, said
from hardpoint.rules.devices import live_devices
from hardpoint.rules.rule import AIRFRAME, Hit, Record

_AHEAD = ("bow", "nose")
_SECTOR: dict[str, tuple[str, ...]] = {
    "aft": ("tail", "left rear quarter", "right rear quarter"),
    "forward": ("bow", "nose", "left front quarter", "right front quarter"),
    "pilot's left": ("left side", "left front quarter", "left rear quarter"),
    "pilot's right": ("right side", "right front quarter", "right rear quarter"),
}


def _bearings(record: Record) -> dict[str, Path]:
    approach = said(record.airframe.approach)
    listed = (said(approach.come_from) if approach else None) or ()
    return {bearing: ("approach", "come_from", index) for index, bearing in enumerate(listed)}


@AIRFRAME.rule(
    "approach-into-the-engine",
    "warning",
    "Nobody is sent in from ahead of a tractor propeller or an intake, nor from behind a pusher or an exhaust.",
)
def approach_into_the_engine(record: Record) -> Iterator[Hit]:
    """Bearings in line with what turns, sucks or blows."""
    bearings, engine = _bearings(record), said(record.airframe.engine)
    propeller = said(record.airframe.propeller)
    jet = engine is not None and engine.kind == "jet"
    if jet or (propeller and propeller.drives == "tractor"):
        for bearing in filter(bearings.get, _AHEAD):
            yield _not_from(bearings, bearing, "the intake" if jet else "the propeller, a tractor")
    if (jet or (propeller and propeller.drives == "pusher")) and "tail" in bearings:
        yield _not_from(bearings, "tail", "the exhaust" if jet else "the propeller, a pusher")


def _not_from(bearings: Mapping[str, Path], bearing: str, what: str) -> Hit:
    return Hit(bearings[bearing], bearing, f"a bearing that does not lead into {what}")


@AIRFRAME.rule(
    "approach-both-ways",
    "warning",
    "No sector is at once one to come from and one to keep out of.",
)
def approach_both_ways(record: Record) -> Iterator[Hit]:
    """Bearings that begin the words of a sector to keep out of."""
    approach = said(record.airframe.approach)
    for index, danger in enumerate((said(approach.keep_out) if approach else None) or ()):
        for bearing, path in _bearings(record).items():
            if re.match(rf"(?i)(?:the |from the |on the )?{bearing}\s*$|(?:the )?{bearing},", danger.where):
                related = ((path, bearing),)
                wanted = f"a part of that sector, or another bearing: crews are told to come from the {bearing}"
                yield Hit(("approach", "keep_out", index, "where"), danger.where, wanted, related=related)


@AIRFRAME.rule(
    "approach-into-a-device",
    "warning",
    "Nobody is sent in from where a rocket or a cartridge flies out, unless it leaves steeply towards the canopy.",
)
def approach_into_a_device(record: Record) -> Iterator[Hit]:
    """Bearings in the sector of an exit direction that is raised by less than 75 degrees."""
    bearings, devices = _bearings(record), entries(record.airframe.pyrotechnics)
    for name in live_devices(record.airframe):
        direction = said(devices[name].exit_direction)
        raised = said(direction.raised) if direction else None
        if direction is None or (raised is not None and raised.within("deg")[0] >= 75):
            continue
        for bearing in filter(bearings.get, _SECTOR[direction.towards]):
            related = ((("pyrotechnics", name, "exit_direction"), name),)
            wanted = f"a bearing that {name} does not fly out to (towards: {direction.towards})"
            yield Hit(bearings[bearing], bearing, wanted, related=related)


@AIRFRAME.rule(
    "approach-away-from-the-exit",
    "warning",
    "Crews come from the side of a handle that opens from outside, or from an end.",
)
def approach_away_from_the_exit(record: Record) -> Iterator[Hit]:
    """Bearings all on one side while every outside handle is on the other: left and right may be swapped."""
    bearings = _bearings(record)
    sides = set()
    for exit_ in entries(record.airframe.exits).values():
        place = said(exit_.place)
        if exit_.from_ != "inside":
            sides.add(str(place.side) if place else "unknown")
    come = {bearing.split()[0] for bearing in bearings}
    if (come, sides) in (({"left"}, {"right"}), ({"right"}, {"left"})):
        (side,) = sides
        wanted = f"a bearing on the {side} side, where all that opens from outside is"
        yield Hit(("approach", "come_from"), ", ".join(bearings), wanted, f"{side} side")


@AIRFRAME.rule(
    "danger-not-kept-out",
    "warning",
    "`keep_out` speaks of whatever is fitted that kills from a distance: propeller, rotor, intake, exhaust, rocket.",
)
def danger_not_kept_out(record: Record) -> Iterator[Hit]:
    """Propeller, rotor, jet and rocket parachute against the words of keep_out."""
    approach = said(record.airframe.approach)
    if approach is None or approach.keep_out is NonValue.UNKNOWN:
        return
    told = " ".join(f"{danger.where} {danger.why}" for danger in said(approach.keep_out) or ()).lower()
    for what, words in _dangers(record.airframe).items():
        if not any(word in told for word in words):
            wanted = f"the sector of the {what}, and why"
            yield Hit(("approach", "keep_out"), "", wanted, f'{{where: "in line with the {what}", why: "..."}}')


def _dangers(airframe: Airframe) -> dict[str, tuple[str, ...]]:
    """What is fitted, with the words that speak of it."""
    engine = said(airframe.engine)
    found: dict[str, tuple[str, ...]] = {}
    if said(airframe.propeller):
        found["propeller"] = ("propeller", "disc", "blade")
    if said(airframe.rotor):
        found["rotor"] = ("rotor", "disc", "blade")
    if engine is not None and engine.kind == "jet":
        found |= {"intake": ("intake", "inlet", "draws", "sucks"), "exhaust": ("exhaust", "jet pipe", "jet blast")}
    if any(entries(airframe.pyrotechnics)[name].kind == "rocket parachute" for name in live_devices(airframe)):
        found["rocket"] = ("rocket",)
    return found
