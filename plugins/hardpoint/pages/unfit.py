"""What makes an entry of a line-up unfit, told by the thing that nobody knows, each linked to its place."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass

from hardpoint.figures.counted import gaps_that_count
from hardpoint.figures.fitness import Gap, gaps_that_bite, thing_depth
from hardpoint.figures.reports import reports_that_count
from hardpoint.figures.slots import leads_over_water
from hardpoint.findings import Path
from hardpoint.pages import addresses
from hardpoint.pages.addresses import relative
from hardpoint.pages.differences import part_of
from hardpoint.pages.entries import Flown, all_flown, day_name
from hardpoint.pages.gaps_of import place
from hardpoint.pages.site import Site
from hardpoint.pages.terms import first_capital, label_of, name_words, pattern_words, spoken_path, term
from hardpoint.pages.view import Block, Line, Lines, Section, Tone
from hardpoint.records.event import Day, Entry
from hardpoint.records.known import NonValue
from hardpoint.records.station import Station
from hardpoint.words import mark, say, say_again


@dataclass(frozen=True)
class Unfit:
    """Why an entry is unfit: by the book's own definition, and what this station counts besides."""

    book: tuple[Gap, ...]
    station: tuple[Gap, ...]

    @property
    def all(self) -> tuple[Gap, ...]:
        """Both; empty where nothing recorded makes it unfit, which does not make it fit."""
        return (*self.book, *self.station)


def unfit_gaps(site: Site, entry: Entry, day: Day) -> Unfit:
    """Why an entry is unfit on its day."""
    aircraft = site.fleet.tails.get(str(entry.tail))
    airframe = aircraft.airframe if aircraft else site.fleet.types[entry.type].airframe
    reported = reports_that_count(entry, day)
    undeclared: tuple[Gap, ...] = ()
    if aircraft is None:
        undeclared = (Gap(say("which aircraft it is; its type is shown"), (), "undeclared"),)
    elif not aircraft.declared:
        undeclared = (Gap(say("how it differs from its type: nobody has declared it"), (), "undeclared"),)
    book = (*undeclared, *gaps_that_bite(airframe, (), reported))
    if site.station is None:
        return Unfit(book, ())
    own = {str(section): check for section, check in aircraft.tail.checked.items()} if aircraft else {}
    added = gaps_that_count(airframe, site.station, entry, day.date, reports=reported, own_checks=own)
    if site.station.unfit_over_water and leads_over_water(entry) is NonValue.UNKNOWN:
        added = (Gap(say("whether the slot leads over water; it counts as if it did"), (), "undeclared"), *added)
    return Unfit(book, added)


def unfit_section(site: Site, page: str, day_id: str, day: Day) -> Section:
    """One block a number: what is unknown or conflicts where crews act, then what this station counts besides."""
    blocks: list[Block] = []
    for one in all_flown(site, day):
        gaps = unfit_gaps(site, one.entry, day)
        title = f"{one.number} {one.called}"
        if gaps.all:
            title = say("{entry}: unfit with these gaps", entry=title)
            lines = tuple(_told(gaps, one, page))
        else:
            lines = (
                Line(
                    say("no gap recorded where crews act; that does not make it fit"), href=relative(one.address, page)
                ),
            )
        blocks.append(Lines(lines, f"{day_id}-unfit-{one.number}", title))
    blocks.append(Lines(tuple(_what_counts(site.station, page)), f"{day_id}-unfit-counts", say("What counts")))
    return Section(
        f"{day_id}-unfit",
        say("{day}: unfit", day=day_name(day_id)),
        tuple(blocks),
        say("Unfit {day}", day=day_name(day_id)[:2]),
    )


def _told(gaps: Unfit, one: Flown, page: str) -> Iterator[Line]:
    yield from gap_lines(gaps.book, one, page)
    if gaps.station:
        yield Line(say("This station also counts:"))
        yield from gap_lines(gaps.station, one, page)


def _what_counts(station: Station | None, page: str) -> Iterator[Line]:
    """The definition, the book's and this station's, so that nobody takes the list for the whole."""
    yield Line(
        say(
            "what is unknown or conflicts in opening, shutdown, ties, rockets and cartridges, high voltage; "
            "an aircraft of which nobody has declared how it differs."
        ),
        say("For every station:"),
    )
    if station and (added := "; ".join(_added(station))):
        decided = relative(f"{addresses.STATION}#station-unfit-also", page) if station.unfit_also else ""
        yield Line(f"{added}.", say("Added by {station}:", station=station.name), href=decided)
    if station and station.unfit_over_water:
        words = "; ".join(map(pattern_words, station.unfit_over_water))
        yield Line(f"{words}.", say("Added for slots over water:"))
    yield Line(say("The page names the gap; people decide."))


def _added(station: Station) -> Iterator[str]:
    yield from map(pattern_words, station.unfit_also)
    yield from map(term, station.unfit_when)


def gap_lines(gaps: Iterable[Gap], one: Flown, page: str) -> Iterator[Line]:
    """One line a thing: all that nobody knows of it, then what conflicts; things with the same answers share a line."""
    by_thing: dict[tuple[Path, str], list[Gap]] = {}
    for gap in gaps:
        if gap.kind == "undeclared":
            yield Line(gap.group, say("UNKNOWN:"), "unknown", relative(one.address, page))
        else:
            by_thing.setdefault((gap.path[: thing_depth(gap.path)], gap.kind), []).append(gap)
    alike: dict[tuple[str, str, str], list[Path]] = {}
    for (thing, kind), found in by_thing.items():
        told = "; ".join(_answers(found, len(thing)))
        alike.setdefault((kind, str(thing[0]) if told else str(thing), told), []).append(thing)
    for (kind, _, told), things in alike.items():
        names = ", ".join(_name(thing) for thing in things)
        word = say(_WORDS[kind])
        tone: Tone = "unknown" if kind == "unknown" else "caution"
        there = _place(things[0], one) if len(things) == 1 else f"{one.address}#{part_of(things[0])}"
        href = relative(there, page)
        yield Line(
            say("{what}: {word}", what=told, word=word) if told else word, f"{first_capital(names)}:", tone, href
        )


_WORDS = {
    "unknown": mark("UNKNOWN"),
    "conflict": mark("the two figures disagree"),
    "overdue": mark("review OVERDUE"),
    "refused": mark("this lift is REFUSED"),
}


def _name(thing: Path) -> str:
    """The thing without the section that it stands in, its ids as they are spoken."""
    if thing[0] == "seats" and len(thing) > 3:
        return say("{seat} {thing}", seat=name_words(str(thing[1])), thing=name_words(str(thing[3])))
    told = spoken_path(thing, start=min(1, len(thing) - 1))
    if thing[0] in ("checked", "absences"):
        return say("checks of {part}", part=told)
    return say("lift {name}", name=told) if thing[0] == "lifts" and len(thing) > 1 else told


def _answers(gaps: Iterable[Gap], depth: int) -> Iterator[str]:
    """What of the thing is open; in which attitudes it opens is told in one go."""
    found = list(gaps)
    yield from dict.fromkeys(
        say("was due on {date}", date=gap.says) if gap.kind == "overdue" else say_again(gap.says)
        for gap in found
        if gap.says
    )
    below = [gap.path for gap in found if len(gap.path) > depth and not gap.says]
    attitudes = [path for path in below if path[depth] == "works" and len(path) > depth + 1]
    if attitudes:
        told = ", ".join(label_of(path, start=depth + 1) for path in attitudes)
        yield say("whether it opens {attitudes}", attitudes=told)
    yield from (spoken_path(path, start=depth) for path in below if path not in attitudes)


def _place(thing: Path, one: Flown) -> str:
    """Its own anchor; what has none of its own stands in a part of the page, or on another page of its type."""
    if thing[0] in ("pyrotechnics", "high_voltage"):
        return f"{one.address}#stay-clear"
    if thing[0] == "seats" and thing[2:3] in (("ties",), ("worn",), ("do_not_pull",)) and len(thing) > 3:
        return f"{one.address}#{addresses.anchor(thing)}"
    return place(thing, one.shown.type_id, one.address)
