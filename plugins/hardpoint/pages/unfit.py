"""What makes an entry of a line-up unfit, told by the thing that nobody knows, each linked to its place."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from hardpoint.figures.fitness import Gap, gaps_that_bite, thing_depth
from hardpoint.figures.reports import reports_that_count
from hardpoint.findings import Path
from hardpoint.pages import addresses
from hardpoint.pages.addresses import relative
from hardpoint.pages.entries import all_flown, day_name
from hardpoint.pages.site import Site
from hardpoint.pages.terms import label_of
from hardpoint.pages.view import Block, Line, Lines, Section
from hardpoint.records.event import Day, Entry
from hardpoint.words import say


def unfit_gaps(site: Site, entry: Entry, day: Day | None = None) -> tuple[Gap, ...]:
    """Why an entry is unfit; empty where nothing recorded makes it so, which does not make it fit."""
    reported = reports_that_count(entry, day) if day else {}
    also = site.station.unfit_also if site.station else ()
    aircraft = site.fleet.tails.get(str(entry.tail))
    airframe = aircraft.airframe if aircraft else site.fleet.types[entry.type].airframe
    undeclared: tuple[Gap, ...] = ()
    if aircraft is None:
        undeclared = (Gap(say("which aircraft it is; its type is shown"), (), "undeclared"),)
    elif not aircraft.declared:
        undeclared = (Gap(say("how it differs from its type: nobody has declared it"), (), "undeclared"),)
    return (*undeclared, *gaps_that_bite(airframe, also, reported))


def unfit_section(site: Site, page: str, day_id: str, day: Day) -> Section:
    """One block a number: what is unknown or conflicts where crews act."""
    blocks: list[Block] = []
    for one in all_flown(site, day):
        gaps = unfit_gaps(site, one.entry, day)
        title = f"{one.number} {one.called}"
        if gaps:
            title = say("{entry}: unfit with these gaps", entry=title)
            lines = tuple(gap_lines(gaps, one.address, page))
        else:
            lines = (
                Line(say("no gap recorded where crews act; that does not make it fit"), href=_at(one.address, page)),
            )
        blocks.append(Lines(lines, f"{day_id}-unfit-{one.number}", title))
    blocks.append(Lines((Line(say("The page names the gap; people decide.")),)))
    return Section(
        f"{day_id}-unfit",
        say("{day}: unfit", day=day_name(day_id)),
        tuple(blocks),
        say("Unfit {day}", day=day_name(day_id)[:2]),
    )


def _at(address: str, page: str) -> str:
    return relative(address, page)


def gap_lines(gaps: Iterable[Gap], address: str, page: str) -> Iterator[Line]:
    """One line a thing: all that nobody knows of it, then what conflicts; it leads to the thing."""
    by_thing: dict[tuple[Path, str], list[Path]] = {}
    for gap in gaps:
        if gap.kind == "undeclared":
            yield Line(gap.group, say("UNKNOWN:"), "unknown", relative(address, page))
            continue
        by_thing.setdefault((gap.path[: thing_depth(gap.path)], gap.kind), []).append(gap.path)
    for (thing, kind), paths in by_thing.items():
        word = say("UNKNOWN") if kind == "unknown" else say("the two figures disagree")
        told = "; ".join(_answers(paths, len(thing)))
        name = label_of(thing, start=min(1, len(thing) - 1)).replace("-", " ").capitalize()
        text = f"{told}: {word}" if told else word
        href = relative(f"{address}#{_anchor(thing)}", page)
        yield Line(text, f"{name}:", "unknown" if kind == "unknown" else "caution", href)


def _answers(paths: Iterable[Path], depth: int) -> Iterator[str]:
    """What of the thing is open; in which attitudes it opens is told in one go."""
    below = [path for path in paths if len(path) > depth]
    attitudes = [path for path in below if path[depth] == "works" and len(path) > depth + 1]
    if attitudes:
        told = ", ".join(label_of(path, start=depth + 1) for path in attitudes)
        yield say("whether it opens {attitudes}", attitudes=told)
    yield from (label_of(path, start=depth) for path in below if path not in attitudes)


_OF_PARTS = {"approach": "approach", "high_voltage": "stay-clear", "pyrotechnics": "stay-clear"}


def _anchor(thing: Path) -> str:
    """Its own anchor; what has none of its own stands in a part of the page."""
    return _OF_PARTS.get(str(thing[0])) or addresses.anchor(thing)
