"""Crew page: never touch. What fires, what shocks, what must not be pulled: each told once."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator
from dataclasses import dataclass

from hardpoint.findings import Path
from hardpoint.pages.addresses import anchor
from hardpoint.pages.shown import Shown
from hardpoint.pages.telling import in_full, place_words, tell
from hardpoint.pages.terms import first_capital, name_words, term
from hardpoint.pages.view import Line, Link
from hardpoint.records.airframe import Airframe
from hardpoint.records.known import NonValue, entries, said
from hardpoint.records.places import Place
from hardpoint.words import say

MOST_NEVER = 3
_ELSEWHERE_SILENT = ("canopy-cartridge", "cable-cutter", "extinguisher-cartridge")
"""Kinds of device that the strip at the head has no answer of. Where a flare may lie stands under Stay clear."""


@dataclass(frozen=True)
class _Handle:
    """A handle that must not be touched: what it looks like, where and at which seat, what it does."""

    path: Path
    looks: str
    where: str
    seat: str
    does: str

    def same(self, other: _Handle) -> bool:
        """One handle, recorded twice: under its device and at its seat, in more words or in fewer."""
        near = not self.seat or not other.seat or self.seat == other.seat
        mine, theirs = f" {_plain(self.looks)} ", f" {_plain(other.looks)} "
        alike = mine == theirs or (" " in mine.strip() and mine in theirs) or (" " in theirs.strip() and theirs in mine)
        return near and (alike or (self.where == other.where and self.seat == other.seat))


def never_touch(shown: Shown) -> tuple[tuple[Line, ...], tuple[Link, ...]]:
    """At most three lines, the worst first; the rest one tap away and named."""
    fired = list(_fires(shown.airframe))
    pulled = [handle for handle in _pulls(shown.airframe) if not any(handle.same(one) for one in fired)]
    told = [_fires_line(shown, one) for one in _once(fired)]
    lines = [*told, *_silent(shown), *_shocks(shown), *(_pulls_line(shown, one) for one in _once(pulled))]
    lines += [*_open(shown)]
    return tuple(lines[:MOST_NEVER]), tuple(Link(_named(line), line.href) for line in lines[MOST_NEVER:])


def _named(line: Line) -> str:
    return (line.strong or line.text).rstrip(":")


def _plain(words: str) -> str:
    return " ".join(re.findall(r"\w+", words.lower()))


def _place(place: Place | NonValue) -> str:
    """Where it is without its seat, which is told once for all of them."""
    return place_words(_without_seat(place) if isinstance(place, Place) else place)


def _without_seat(place: Place) -> Place:
    """The same place, its seat left out."""
    return place.model_copy(update={"seat": None})


def _fires(airframe: Airframe) -> Iterator[_Handle]:
    for name, device in entries(airframe.pyrotechnics).items():
        place = said(device.handle_place)
        seat = device.seat or (place.seat if place and place.seat else "")
        looks = tell(device.handle).text
        yield _Handle(("pyrotechnics", name), looks, _place(device.handle_place), seat, term(device.kind))


def _pulls(airframe: Airframe) -> Iterator[_Handle]:
    for seat_name, seat in airframe.seats.items():
        for name, handle in entries(seat.do_not_pull).items():
            path = ("seats", seat_name, "do_not_pull", name)
            looks = re.sub(rf"(?i)[, ]*\b{re.escape(name_words(seat_name))} seat\b", "", handle.what) or handle.what
            yield _Handle(path, looks, _place(handle.place), seat_name, handle.why)


def _once(handles: Iterable[_Handle]) -> Iterator[tuple[_Handle, ...]]:
    """Handles that are told in the same words at several seats, together."""
    alike: dict[tuple[str, str, str], list[_Handle]] = {}
    for handle in handles:
        alike.setdefault((_plain(handle.looks), handle.where, handle.does), []).append(handle)
    yield from map(tuple, alike.values())


def _seats(shown: Shown, handles: tuple[_Handle, ...]) -> str:
    """``both seats``, or the one; nothing to say on a single-seater, or of a handle that belongs to no seat."""
    here = list(dict.fromkeys(handle.seat for handle in handles if handle.seat))
    there = shown.airframe.seats
    if len(there) < 2 or not here:
        return ""
    if len(here) == len(there):
        return say("both seats") if len(here) == 2 else say("every seat")
    return ", ".join(say("{seat} seat", seat=name_words(seat)) for seat in here)


def _fires_line(shown: Shown, handles: tuple[_Handle, ...]) -> Line:
    first = handles[0]
    what = ", ".join(part for part in (first_capital(first.does), _seats(shown, handles)) if part)
    return Line(f"{first.looks}, {first.where}", f"{what}:", "never", f"#{anchor(first.path)}")


def _pulls_line(shown: Shown, handles: tuple[_Handle, ...]) -> Line:
    first = handles[0]
    what = ", ".join(part for part in (first_capital(first.looks), _seats(shown, handles)) if part)
    return Line(first.does, f"{what}:", "never", f"#{anchor(first.path)}")


def _silent(shown: Shown) -> Iterator[Line]:
    """Devices of which nobody knows whether they are there. Rockets and seat cartridges stand in the strip already."""
    listed = shown.airframe.pyrotechnics
    for name, device in listed.items() if not isinstance(listed, NonValue) else ():
        if device is NonValue.UNKNOWN and name in _ELSEWHERE_SILENT:
            path = ("pyrotechnics", name)
            yield Line(say("UNKNOWN"), f"{first_capital(name_words(name))}:", "never", f"#{anchor(path)}")


def _shocks(shown: Shown) -> Iterator[Line]:
    system = said(shown.airframe.high_voltage)
    if system:
        yield Line(
            say("stay live: {what}", what=tell(system.stays_live).text),
            say("{voltage} cables and packs:", voltage=in_full(tell(system.voltage, ("high_voltage", "voltage")))),
            "never",
            "#high-voltage",
        )


def _open(shown: Shown) -> Iterator[Line]:
    """What nobody has recorded of the handles at a seat."""
    for seat_name, seat in shown.airframe.seats.items():
        where = say("{seat} seat", seat=name_words(seat_name)) if len(shown.airframe.seats) > 1 else ""
        if seat.do_not_pull is NonValue.UNKNOWN:
            what = ", ".join(part for part in (say("Handles not to be pulled"), where) if part)
            yield Line(say("UNKNOWN, so pull none"), f"{what}:", "never", "#grip")
        listed = seat.do_not_pull
        for name, handle in listed.items() if not isinstance(listed, NonValue) else ():
            if isinstance(handle, NonValue):
                what = ", ".join(part for part in (first_capital(name_words(name)), where) if part)
                href = f"#{anchor(('seats', seat_name, 'do_not_pull', name))}"
                yield Line(say("what it does is UNKNOWN, do not pull"), f"{what}:", "never", href)
