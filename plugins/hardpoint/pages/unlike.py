"""What is unlike between two types, or a type and its aircraft; and which types have no recorded difference.

A page a type: its own aircraft, whatever flies with it on a day, and at most five types that share a whole matter with
it. Every pair of a fleet would be 45 000 pages at 300 types, and nobody would read them.
"""

from __future__ import annotations

from collections.abc import Iterator

from hardpoint.figures.comparing import HOW_WORDS, MATTERS, Matter, Unlike, differences, signature
from hardpoint.pages import addresses
from hardpoint.pages.addresses import relative
from hardpoint.pages.shown import shown_tail
from hardpoint.pages.site import Page, Site
from hardpoint.pages.terms import name_words
from hardpoint.pages.view import Block, Line, Lines, Link, Row, Section, SheetPage, Table, Value
from hardpoint.records.airframe import Airframe
from hardpoint.records.fleet import Type
from hardpoint.words import mark, say

_MATTERS: dict[Matter, tuple[str, str]] = {
    "opening": (mark("Open it"), "open"),
    "shutdown": (mark("Shut down"), "shut-down"),
    "freeing": (mark("Free the occupant"), "free"),
}
_MOST_ALIKE = 5
_STRONG = ("reversed", "re-ordered")
"""What a hand gets wrong that has learnt the other one: first."""
_LEAD = mark(
    "Only what was recorded is compared: movements, their order, kinds of handles, sides. No recorded difference does "
    "not make two aircraft the same."
)


def type_unlike_page(site: Site, type_: Type) -> Page:
    """One type against its aircraft, against what flies with it, against what is most alike."""
    page = addresses.unlike_of(type_.id)
    title = say("{name}: what is unlike", name=type_.airframe.name)
    sections = [*_aircraft(site, type_, page), *_others(site, type_, page)]
    nothing = Section("none", say("Nothing to compare with"), (Lines((Line(say("no other record is near it")),)),))
    links = (
        Link(say("Crew page: {name}", name=type_.airframe.name), relative(addresses.type_page(type_.id), page)),
        Link(say("Which types have no recorded difference"), relative(addresses.UNLIKE, page)),
    )
    frame = site.frame(page, title, (type_.airframe.name, addresses.type_page(type_.id)))
    view = SheetPage(frame, title, say(_LEAD), tuple(sections) or (nothing,), links, site.cautions)
    return Page(page, title, "sheet.html", view)


def unlike_page(site: Site) -> Page:
    """Which types open, shut down and let go of their occupants without a recorded difference, matter by matter."""
    page = addresses.UNLIKE
    title = say("No recorded difference")
    sections = tuple(_groups(site, matter, page) for matter in MATTERS)
    view = SheetPage(site.frame(page, title), title, say(_LEAD), sections, (), site.cautions)
    return Page(page, title, "sheet.html", view)


def _groups(site: Site, matter: Matter, page: str) -> Section:
    title = say(_MATTERS[matter][0])
    groups: dict[object, list[Type]] = {}
    open_ = []
    for type_ in site.fleet.types.values():
        key = signature(type_.airframe, matter)
        if key is None:
            open_.append(type_)
        else:
            groups.setdefault(key, []).append(type_)
    shared = [group for group in groups.values() if len(group) > 1]
    lines = [
        Line(_names(group), say("No recorded difference:"), href=relative(addresses.unlike_of(group[0].id), page))
        for group in shared
    ]
    if not shared:
        lines.append(Line(say("every type is recorded otherwise than every other"), say("None alike:")))
    if open_:
        words = say("{types}: something of it is unknown, so it is like nothing", types=_names(open_))
        lines.append(Line(words, say("UNKNOWN:"), "unknown"))
    return Section(f"alike-{matter}", title, (Lines(tuple(lines)),), title)


def _names(types: list[Type]) -> str:
    return ", ".join(type_.airframe.name for type_ in types)


def _aircraft(site: Site, type_: Type, page: str) -> Iterator[Section]:
    for tail in site.fleet.tails_of(type_.id):
        blocks: list[Block] = []
        if not shown_tail(tail).declared:
            words = say("how it differs: nobody has declared it")
            blocks.append(Lines((Line(words, say("UNKNOWN"), "unknown"),)))
        href = addresses.tail_page(tail.id)
        blocks += _compared(f"tail-{tail.id}", type_.airframe, tail.airframe, tail.id, (page, type_.id, href))
        yield Section(f"tail-{tail.id}", say("Its own {tail}", tail=tail.id), tuple(blocks), tail.id)


def _others(site: Site, type_: Type, page: str) -> Iterator[Section]:
    for other in companions(site, type_):
        href = addresses.type_page(other.id)
        name = other.airframe.name
        blocks = _compared(f"type-{other.id}", type_.airframe, other.airframe, name, (page, type_.id, href))
        yield Section(f"type-{other.id}", name, tuple(blocks), name.split()[-1])


def companions(site: Site, type_: Type) -> tuple[Type, ...]:
    """Types that fly on a day with this one, then at most five without a recorded difference in a whole matter."""
    found: dict[str, Type] = {}
    for line_up in site.fleet.events.values():
        for day in line_up.event.days.values():
            flown = [entry.type for entry in day.entries.values()]
            if type_.id in flown:
                found |= {id_: site.fleet.types[id_] for id_ in flown if id_ != type_.id}
    own = {matter: signature(type_.airframe, matter) for matter in MATTERS}
    alike = [
        other
        for other in site.fleet.types.values()
        if other.id != type_.id and other.id not in found
        if any(own[matter] is not None and signature(other.airframe, matter) == own[matter] for matter in MATTERS)
    ]
    return (*found.values(), *alike[:_MOST_ALIKE])


def _compared(id_: str, here: Airframe, there: Airframe, name: str, at: tuple[str, str, str]) -> list[Block]:
    """The table of what is unlike, and the matters without a recorded difference."""
    found = sorted(differences(here, there), key=lambda unlike: unlike.how not in _STRONG)
    page, type_id, other = at
    rows = tuple(_row(unlike, here, there, page, addresses.type_page(type_id), other) for unlike in found)
    blocks: list[Block] = []
    if rows:
        heads = (say("What"), say("How"), here.name, name)
        caption = say("{one} and {other}: recorded otherwise, or UNKNOWN", one=here.name, other=name)
        blocks.append(Table(f"{id_}-unlike", caption, heads, rows))
    alike = [say(_MATTERS[matter][0]) for matter in MATTERS if not any(unlike.matter == matter for unlike in found)]
    if alike:
        blocks.append(Lines((Line(", ".join(alike), say("No recorded difference:")),), f"{id_}-alike"))
    return blocks


def _row(unlike: Unlike, here: Airframe, there: Airframe, page: str, ours: str, theirs: str) -> Row:
    matter, part = _MATTERS[unlike.matter]
    strong = unlike.how in _STRONG
    how = Value(say(HOW_WORDS[unlike.how]), "unknown" if unlike.how == "UNKNOWN" else "said", refuses=strong)
    cells = (
        Value(say("{matter}: {what}", matter=say(matter), what=_key(unlike))),
        how,
        _side(unlike.here, relative(f"{ours}#{part}", page)),
        _side(unlike.there, relative(f"{theirs}#{part}", page)),
    )
    return Row(cells, tone="caution" if strong else "plain")


def _key(unlike: Unlike) -> str:
    return say("everything") if unlike.key == unlike.matter else name_words(unlike.here or unlike.there)


def _side(id_: str, href: str) -> Value:
    return Value(name_words(id_.replace(".", " ")), href=href) if id_ else Value(say("none recorded"))
