"""Every place of a type or a tail that can be looked for, with the page and the anchor where it is told."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from typing import Any

from hardpoint.findings import Path
from hardpoint.pages import addresses, anchors
from hardpoint.pages.shown import Shown
from hardpoint.pages.site import Page
from hardpoint.pages.telling import tell
from hardpoint.pages.view import Section
from hardpoint.records.known import NonValue
from hardpoint.records.tanks import ENGINE_FUELS
from hardpoint.words import mark, say

PART, PAGE = "part", "page"
_KINDS = {
    PART: mark("Part of the page"),
    PAGE: mark("Page"),
    "exits": mark("Way in"),
    "canopies": mark("Canopy or door"),
    "controls": mark("Control"),
    "batteries": mark("Battery"),
    "high_voltage": mark("High voltage"),
    "seats": mark("Seat"),
    "ties": mark("Tie"),
    "do_not_pull": mark("Do not pull"),
    "worn": mark("Kit worn"),
    "bottles": mark("Pressure bottle"),
    "pyrotechnics": mark("Rocket or cartridge"),
    "tanks": mark("Tank"),
    "loaded_parts": mark("Under tension"),
    "hazards": mark("Hazard"),
    "zones": mark("Cutting zone"),
    "signs": mark("Sign"),
    "load_points": mark("Load point"),
    "lifts": mark("Lift"),
    "absences": mark("Claimed not to be there"),
}
_NAMED_BY = {
    "exits": ("way_in", "from_"),
    "canopies": ("kind",),
    "controls": ("function", "kind"),
    "ties": ("kind",),
    "bottles": ("use", "holds"),
    "pyrotechnics": ("kind",),
    "tanks": ("holds",),
    "loaded_parts": ("kind",),
    "hazards": ("kind",),
    "load_points": ("use",),
    "absences": ("none_of",),
}
"""Which answers of a place people look for: all are words out of closed lists, so that types share them."""
_ELSEWHERE = {
    "pyrotechnics": ("pyrotechnics",),
    "high_voltage": ("high-voltage", "pyrotechnics"),
    "absences": ("written-absences",),
    "zones": ("cut",),
    "controls": ("shut-down",),
    "signs": ("recognise",),
    "exits": ("open",),
    "seats": ("free",),
}
"""Where a place is told that has no anchor of its own, the nearest first."""


@dataclass(frozen=True)
class Found:
    """A place: number of its kind; page ("" = the crew page, else "structure" and so on); anchor; label; other words
    that it is found by; state ("" = told, else "UNKNOWN", "not fitted" ... in words)."""

    kind: int
    page: str
    anchor: str
    label: str
    words: str
    state: str


def kinds() -> tuple[str, ...]:
    """The kinds of places in words, in the order of their numbers."""
    return tuple(say(words) for words in _KINDS.values())


def places(shown: Shown, pages: Mapping[str, Page], crew_page: str, types_page: str) -> Iterator[tuple[Path, Found]]:
    """Every place with its path in the record; only such as a page really has an anchor for.

    ``crew_page`` is looked through first, then the pages beside ``types_page``, the crew page of the type.
    """
    homes = _homes(pages, crew_page, types_page)
    for section in homes[0][2]:
        if not section.id.startswith("this-aircraft"):
            yield (section.id,), Found(_number(PART), "", section.id, section.title, "", "")
    for kind, path, label, thing in _things(shown):
        at = _where(homes, kind, path)
        if at is not None:
            state = tell(thing).text if isinstance(thing, NonValue) else ""
            yield path, Found(_number(kind), *at, label, _words(kind, thing), state)


def page_places(name: str, pages: Mapping[str, Page], crew_page: str) -> Iterator[Found]:
    """The further pages of a type, without its name in their titles: all types share the words."""
    for suffix, page in _beside(pages, crew_page):
        label = page.title.replace(name, "").strip(" :,-") or page.title
        yield Found(_number(PAGE), suffix, "", label[:1].upper() + label[1:], suffix.replace("-", " "), "")


def _number(kind: str) -> int:
    return list(_KINDS).index(kind)


_Home = tuple[str, frozenset[str], tuple[Section, ...]]


def _homes(pages: Mapping[str, Page], crew_page: str, types_page: str) -> list[_Home]:
    """The crew page, then the pages of its type: suffix, anchors, sections."""
    listed = [("", pages[crew_page]), *_beside(pages, types_page)]
    return [(suffix, frozenset(anchors(page.view)), getattr(page.view, "sections", ())) for suffix, page in listed]


def _beside(pages: Mapping[str, Page], crew_page: str) -> Iterator[tuple[str, Page]]:
    folder = crew_page.removesuffix(".html") + "/"
    for address, page in pages.items():
        if address.startswith(folder):
            yield address.removeprefix(folder).removesuffix(".html"), page


def _where(homes: Iterable[_Home], kind: str, path: Path) -> tuple[str, str] | None:
    for name in (addresses.anchor(path), addresses.anchor(path[:1]), *_ELSEWHERE.get(kind, ())):
        for suffix, there, _ in homes:
            if name in there:
                return suffix, name
    return None


def _things(shown: Shown) -> Iterator[tuple[str, Path, str, Any]]:
    """Kind, path, label and record of everything that has an id, and of every section that is one answer."""
    airframe = shown.airframe
    for kind in _KINDS:
        section = getattr(airframe, kind, None)
        if kind == "seats":
            yield from _seats(shown)
        elif isinstance(section, NonValue) or kind == "high_voltage":
            yield kind, (kind,), say(_KINDS[kind]), section
        elif isinstance(section, Mapping):
            yield from ((kind, (kind, name), _label(name), thing) for name, thing in section.items())


def _seats(shown: Shown) -> Iterator[tuple[str, Path, str, Any]]:
    seats = shown.airframe.seats
    for seat_name, seat in seats.items():
        whose = f", {_plain(seat_name)}" if len(seats) > 1 else ""
        yield "seats", ("seats", seat_name), _label(seat_name), seat
        for kind in ("ties", "do_not_pull", "worn"):
            listed = getattr(seat, kind)
            if isinstance(listed, NonValue):
                yield kind, ("seats", seat_name, kind), say(_KINDS[kind]) + whose, listed
                continue
            for name, thing in listed.items():
                yield kind, ("seats", seat_name, kind, name), _label(name) + whose, thing


def _label(name: str) -> str:
    words = _plain(name)
    return words[:1].upper() + words[1:]


def _plain(name: str) -> str:
    return name.replace("-", " ")


def _words(kind: str, thing: Any) -> str:
    """Closed words of the record, and the trade's other word for the same (common practice)."""
    answers = [getattr(thing, key, None) for key in _NAMED_BY.get(kind, ())]
    told = [answer for answer in answers if answer is not None and not isinstance(answer, NonValue)]
    words = [tell(answer).text for answer in told]
    if kind == "tanks" and set(told) & set(ENGINE_FUELS):
        words.append(say("fuel"))
    if kind == "controls" and set(told) & {"ignition", "magneto"}:
        words.append(say("ignition magneto switch"))
    return " ".join(dict.fromkeys(words))
