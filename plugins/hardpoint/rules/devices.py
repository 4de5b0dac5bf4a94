"""Rules about rockets and cartridges."""

from __future__ import annotations

import re
from collections.abc import Iterator

from hardpoint.figures.answers import MUST_BE_ANSWERED, device_answer
from hardpoint.records.airframe import Airframe
from hardpoint.records.known import NonValue, entries, said
from hardpoint.rules.rule import AIRFRAME, Hit, Record


@AIRFRAME.rule(
    "hazard-not-answered",
    "warning",
    "Every type answers whether a rocket parachute and a seat cartridge are fitted; silence shows as UNKNOWN.",
)
def hazard_not_answered(record: Record) -> Iterator[Hit]:
    """Pyrotechnics that neither list a kind nor say that it is not fitted."""
    for kind in MUST_BE_ANSWERED:
        if device_answer(record.airframe, kind) is NonValue.UNKNOWN:
            slug = kind.replace(" ", "-")
            yield Hit(
                ("pyrotechnics", slug),
                "",
                f"whether a {kind} is fitted",
                f"{slug}: not fitted",
                message=(
                    f"nobody has said whether a {kind} is fitted, so crews read UNKNOWN; "
                    f'record the device, or write "{slug}: not fitted" once somebody has looked'
                ),
            )


FLYING = ("rocket parachute", "seat cartridge", "canopy cartridge")


def live_devices(airframe: Airframe) -> tuple[str, ...]:
    """Ids of rockets and cartridges that have to be taken as live; unknown counts as live."""
    devices = entries(airframe.pyrotechnics).items()
    return tuple(name for name, one in devices if one.kind in FLYING and one.state not in ("fired", "removed"))


_DISARMS = re.compile(
    r"(?i)\b(?:disarm|defuse|render (?:\w+ ){0,3}safe|make (?:\w+ ){0,3}safe|safe (?:it|the (?:seat|rocket)))\b"
    r"|\b(?:insert|fit|refit|push in|put (?:in|back)|pull|pull out|remove|withdraw|draw)\b[^.;]{0,40}\bpins?\b"
)
_PIN_PLACE = re.compile(r"(?i)\bpins?\b[^.;]{0,40}\b(?:in|behind|beside|under|above|below|on|at) (?:the|its|a)\b")
_LEFT_TO_OTHERS = re.compile(r"(?i)armourer|licen[sc]ed|nobody|never|specialist|\bnot?\b")
_ABOUT_DEVICES = re.compile(r"(?i)rocket|cartridge|ejection|seat gun|pyrotechnic|armourer|\bdevice")


@AIRFRAME.rule(
    "disarming-told",
    "error",
    "No record says how a rocket or a cartridge is made safe, nor where its pin is: that is for licensed people.",
)
def disarming_told(record: Record) -> Iterator[Hit]:
    """Words under pyrotechnics, or about a device elsewhere, that tell how to disarm it."""
    if not entries(record.airframe.pyrotechnics):
        return
    for path, words in record.words:
        about = path[0] == "pyrotechnics" or _ABOUT_DEVICES.search(words)
        forbidden = path[-1] == "do_not" or _LEFT_TO_OTHERS.search(words)
        if about and (_PIN_PLACE.search(words) or (_DISARMS.search(words) and not forbidden)):
            wanted = "what crews stay clear of and who is called; not how it is made safe, nor where its pin is"
            yield Hit(path, words, wanted, "live until a licensed armourer has reported it safe")


@AIRFRAME.rule(
    "device-worked-by-hand",
    "error",
    "Rockets and cartridges that are fitted are walked, read about or asked about, never worked by hand.",
)
def device_worked_by_hand(record: Record) -> Iterator[Hit]:
    """`worked by hand` said of a section that holds a device."""
    check = record.airframe.checked.get("pyrotechnics")
    if check and check.how == "worked by hand" and entries(record.airframe.pyrotechnics):
        wanted = "walked, from manual, told by the owner or not checked: nobody works a device to see how it goes"
        yield Hit(("checked", "pyrotechnics", "how"), check.how, wanted, "walked")


@AIRFRAME.rule(
    "device-written-off",
    "warning",
    "On a type a rocket or a cartridge counts as live; that it was fired or removed is said of one aircraft.",
)
def device_written_off(record: Record) -> Iterator[Hit]:
    """Types whose device is fired or removed: a sister aircraft has it still."""
    for name, device in entries(record.airframe.pyrotechnics).items():
        if record.id in record.fleet.types and device.state in ("fired", "removed"):
            wanted = "live until reported otherwise; on the aircraft it was removed from, say so in its own record"
            yield Hit(("pyrotechnics", name, "state"), device.state, wanted, "live until reported otherwise")


@AIRFRAME.rule(
    "cartridge-of-no-seat", "warning", "The cartridge of a seat says which seat: crews read its handle there."
)
def cartridge_of_no_seat(record: Record) -> Iterator[Hit]:
    """Seat cartridges without the key seat, where there are several seats."""
    for name, device in entries(record.airframe.pyrotechnics).items():
        if device.kind == "seat cartridge" and device.seat is None and len(record.airframe.seats) > 1:
            seats = list(record.airframe.seats)
            yield Hit(("pyrotechnics", name), "", f"the key seat: one of {', '.join(seats)}", f"seat: {seats[0]}")


@AIRFRAME.rule(
    "looked-at-by-one",
    "warning",
    "What can fire or kill by voltage was looked at by a second role: second_by, if need be unknown.",
)
def looked_at_by_one(record: Record) -> Iterator[Hit]:
    """Checks of pyrotechnics and high voltage that are fitted, without second_by."""
    airframe = record.airframe
    fitted = {"pyrotechnics": bool(entries(airframe.pyrotechnics)), "high_voltage": bool(said(airframe.high_voltage))}
    for section, check in record.airframe.checked.items():
        if fitted.get(section) and check.second_by is None:
            wanted = "the key second_by: the licensed role that looked too, if need be unknown"
            yield Hit(("checked", section), "", wanted, "second_by: licensed armourer")
