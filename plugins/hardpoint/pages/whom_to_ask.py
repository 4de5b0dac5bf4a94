"""Whom to ask before a day: by who can answer, the open questions of that day's aircraft, to be rung through."""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Iterable, Iterator
from dataclasses import dataclass, field

from hardpoint.figures.fitness import Gap, open_questions
from hardpoint.findings import Path
from hardpoint.pages import addresses
from hardpoint.pages.addresses import relative
from hardpoint.pages.entries import Flown, all_flown, dated, day_name
from hardpoint.pages.gaps_of import answerers
from hardpoint.pages.site import Site
from hardpoint.pages.terms import first_capital, key_words
from hardpoint.pages.unfit import gap_lines, unfit_gaps
from hardpoint.pages.view import Block, Line, Lines, Row, Section, Table, Value
from hardpoint.records.event import Day
from hardpoint.records.known import NonValue
from hardpoint.records.provenance import Check
from hardpoint.records.walk import parts_of, values_of
from hardpoint.words import say, say_count


@dataclass
class _Asked:
    """What one person or role is asked of one aircraft."""

    one: Flown
    gaps: list[Gap] = field(default_factory=list)
    further: list[Path] = field(default_factory=list)
    words: dict[str, None] = field(default_factory=dict)


def ask_section(site: Site, day_id: str, day: Day, page: str) -> Section:
    """One block a person or role; what makes an entry unfit in full, the rest of the open questions counted."""
    asked: dict[str, dict[str, _Asked]] = {}
    for one in all_flown(site, day):
        _sort(site, one, day, asked)
    ranked = sorted(asked, key=lambda who: (not who, -_weight(asked[who])))
    urgent = [who for who in ranked if _weight(asked[who])]
    blocks: list[Block] = [
        Lines(tuple(_lines(asked[who].values(), page)), f"{day_id}-ask-{at}", _called(who))
        for at, who in enumerate(urgent, start=1)
    ]
    line_up = tuple(_of_the_line_up(day))
    if line_up:
        blocks.append(Lines(line_up, f"{day_id}-ask-line-up", say("Whoever keeps the line-up")))
    rows = tuple(row for who in ranked if who not in urgent for row in _further(_called(who), asked[who], page))
    if rows:
        heads = (say("Who can answer"), say("Aircraft"), say("Open questions"))
        blocks.append(Table(f"{day_id}-ask-further", say("With more time"), heads, rows, folded=True))
    nothing = Lines((Line(say("nothing is recorded as unknown; that is no promise")),))
    title = say("Whom to ask before {day}", day=dated(day_id, day))
    return Section(f"{day_id}-ask", title, tuple(blocks) or (nothing,), say("Ask, {day}", day=day_name(day_id)[:2]))


def _called(who: str) -> str:
    return first_capital(who) if who else say("Nobody is named")


def _further(who: str, of_one: dict[str, _Asked], page: str) -> Iterator[Row]:
    """Who is asked nothing that makes an entry unfit: one row an aircraft."""
    for asked in of_one.values():
        gaps = addresses.gaps_of(addresses.type_page(asked.one.shown.type_id))
        called = Value(f"{asked.one.number} {asked.one.called}", href=relative(gaps, page))
        yield Row((Value(who, note="; ".join(asked.words)), called, Value(_counted(asked.further))))


def _counted(paths: list[Path]) -> str:
    parts = Counter(map(_section, paths))
    return ", ".join(say("{part} {count}", part=key_words(part), count=count) for part, count in parts.items())


def _weight(of_one: dict[str, _Asked]) -> int:
    return sum(len(asked.gaps) for asked in of_one.values())


def _sort(site: Site, one: Flown, day: Day, asked: dict[str, dict[str, _Asked]]) -> None:
    """Every open question of one entry to whoever can answer it; "" where nobody is named."""
    record = one.aircraft or site.fleet.types[one.shown.type_id]
    named = answerers(record)
    unfit = unfit_gaps(site, one.entry, day)
    gaps = [*unfit.book, *(gap for gap in unfit.station if gap.path)]  # the line-up's own stand at the end
    bites = {gap.path for gap in gaps}

    def of(section: str, words: str = "") -> _Asked:
        words = words or named.get(section, "")
        mine = asked.setdefault(role(words), {}).setdefault(one.number, _Asked(one))
        if words != role(words):
            mine.words[words.removeprefix(role(words)).lstrip(",; ")] = None
        return mine

    checks = {path: part for path, part in parts_of(one.shown.airframe) if isinstance(part, Check)}
    for gap in gaps:
        check = checks.get(gap.path)
        by = str(check.by) if gap.kind == "overdue" and check and not isinstance(check.by, NonValue) else ""
        of(_section(gap.path), by).gaps.append(gap)
    for path in open_questions(one.shown.airframe):
        if path not in bites:
            of(_section(path)).further.append(path)


def role(words: str) -> str:
    """Who it is, without what for: what stands before the first comma or semicolon of the author's words."""
    return re.split(r"[,;]", words, maxsplit=1)[0].strip()


def _section(path: Path) -> str:
    """The section that a question belongs to; lifts are asked of whoever knows the points."""
    if not path:
        return ""
    section = str(path[1] if path[0] == "checked" and len(path) > 1 else path[0])
    return "load_points" if section == "lifts" else section


def _lines(of_one: Iterable[_Asked], page: str) -> Iterator[Line]:
    """Aircraft by aircraft: which it is and what its record says of the one asked, then the questions."""
    for asked in of_one:
        called = f"{asked.one.number} {asked.one.called}:"
        yield Line("; ".join(asked.words), called, href=relative(asked.one.address, page))
        yield from gap_lines(asked.gaps, asked.one, page)
        if asked.further:
            count = say_count(len(asked.further), "{count} further question", "{count} further questions")
            gaps = addresses.gaps_of(addresses.type_page(asked.one.shown.type_id))
            yield Line(_counted(asked.further), f"{count}:", href=relative(gaps, page))


def _of_the_line_up(day: Day) -> Iterator[Line]:
    """What the line-up itself leaves open on this day; a device that is not reported is its armourer's question."""
    for number, entry in day.entries.items():
        for path, value in values_of(entry):
            if value is NonValue.UNKNOWN and path[0] != "reported":
                what = key_words(str(path[-1]))
                yield Line(say("UNKNOWN"), say("Number {number}, {what}:", number=number, what=what), "unknown")
