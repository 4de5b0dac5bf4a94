"""Questions for training, from the records alone. UNKNOWN is a right answer; "the same as the other" is the trap."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import pairwise

from hardpoint.findings import Path
from hardpoint.pages import addresses
from hardpoint.pages.addresses import relative
from hardpoint.pages.differences import part_of
from hardpoint.pages.entries import Flown, all_flown, dated, every_day
from hardpoint.pages.key_facts import KeyFact, key_facts, unlike
from hardpoint.pages.shown import Shown, shown_tail, shown_type
from hardpoint.pages.site import Page, Site
from hardpoint.pages.terms import as_text, key_words, spoken_path
from hardpoint.pages.view import Block, Link, Links, Question, Quiz, Section, SheetPage, Value
from hardpoint.records.fleet import Override, Type
from hardpoint.records.known import Tree
from hardpoint.words import say, say_count

MOST_TRAPS = 4
"""Traps between two aircraft: more of them in a row are no longer read."""
MOST_ALIKE = 2
"""Questions among them whose answer is the same on both: else "no" would always be right."""


def drill_page(site: Site) -> Page:
    """Where to start: the traps of each day, then every type's own questions."""
    page = addresses.DRILL
    title = say("Drill")
    sections = [
        section
        for event_id in site.fleet.events
        for day_id, _, day in every_day(site, event_id)
        for section in _day(event_id, dated(day_id, day), day_id, all_flown(site, day), page)
    ]
    links = tuple(
        Link(type_.airframe.name, relative(addresses.drill_page(type_.id), page), _count(site, type_))
        for type_ in site.fleet.types.values()
    )
    sections.append(
        Section("types", say("By type"), (Links("types-list", say("Questions on one type"), links),), say("Types"))
    )
    view = SheetPage(site.frame(page, title), title, _lead(), tuple(sections), (), site.cautions)
    return Page(page, title, "sheet.html", view)


def type_drill_page(site: Site, type_: Type) -> Page:
    """Everything that can be asked of one type and its tails."""
    page = addresses.drill_page(type_.id)
    title = say("Drill: {type}", type=type_.airframe.name)
    sections = tuple(_type(site, type_, page))
    links = (
        Link(say("Crew page: {type}", type=type_.airframe.name), relative(addresses.type_page(type_.id), page)),
        Link(say("All drills"), relative(addresses.DRILL, page)),
    )
    trail = (say("Drill"), addresses.DRILL)
    view = SheetPage(site.frame(page, title, trail), title, _lead(), sections, links, site.cautions)
    return Page(page, title, "sheet.html", view)


def _lead() -> str:
    return say("Answer aloud, then open. UNKNOWN is a right answer where the book has none; a guess never is.")


def _count(site: Site, type_: Type) -> str:
    number = sum(
        len(block.questions)
        for section in _type(site, type_, addresses.DRILL)
        for block in section.blocks
        if isinstance(block, Quiz)
    )
    return say_count(number, "{count} question", "{count} questions")


def _type(site: Site, type_: Type, page: str) -> Iterator[Section]:
    shown = shown_type(type_)
    asked = tuple(_plain(shown, fact, page) for fact in key_facts())
    yield Section("type", say("The type"), (Quiz("type-questions", "", asked),), say("Type"))
    for tail in site.fleet.tails_of(type_.id):
        traps = tuple(_of_tail(shown_tail(tail), page))
        if traps:
            title = say("{tail}: the same as its type?", tail=tail.id)
            yield Section(f"tail-{tail.id}", title, (Quiz(f"{tail.id}-questions", "", traps),), tail.id)
    types = list(site.fleet.types.values())
    other = types[(types.index(type_) + 1) % len(types)]
    if other is not type_:
        traps = tuple(_traps(shown_type(other), shown, page))
        title = say("You come from the {other}: the same here?", other=other.airframe.name)
        yield Section("other", title, (Quiz("other-questions", "", traps),), say("Not the other"))


def _plain(shown: Shown, fact: KeyFact, page: str) -> Question:
    asks = say("{aircraft}: {question}", aircraft=_called(shown), question=fact.asks)
    return Question(asks, fact.tell(shown.airframe), f"{shown.id}-{fact.id}", _place(shown, fact.part, page))


_PARTS = ("exits", "canopies", "controls", "seats", "pyrotechnics")
"""What is asked of every tail, other there or not: were only differences asked, every right answer would be a no."""


def _of_tail(shown: Shown, page: str) -> Iterator[Question]:
    """Part by part, whether a tail is as its type; the question names the part and never what is other there."""
    by_part: dict[str, list[Override]] = {part: [] for part in _PARTS}
    for override in shown.overrides:
        by_part.setdefault(str(override.at[0]), []).append(override)
    for part, overrides in by_part.items():
        asks = say("{tail}, {part}: as on its type?", tail=shown.tail, part=key_words(part))
        told, because, anchor = _as_its_type(shown, overrides), "", part_of((part,))
        if overrides:
            because = say("The type says: {says}", says="; ".join(map(_type_says, overrides)))
            anchor = "differences"
        href = relative(f"{addresses.tail_page(shown.tail)}#{anchor}", page)
        yield Question(asks, told, f"{shown.id}-{part.replace('_', '-')}", href, because)


def _as_its_type(shown: Shown, overrides: list[Override]) -> Value:
    if overrides:
        return Value(say("No: {here}", here="; ".join(map(_here, overrides))))
    if not shown.declared:
        return Value(say("UNKNOWN: nobody has declared how it differs"), "unknown")
    return Value(say("No recorded difference"))


def _here(override: Override) -> str:
    what = spoken_path(override.at, start=min(1, len(override.at) - 1))
    if override.kind == "added":
        return say("{what} was added here", what=what)
    if override.kind == "removed":
        return say("{what} is not on this aircraft", what=what)
    return say("{what}: {here}", what=what, here=_short(override.here, override.at))


def _type_says(override: Override) -> str:
    return say("nothing there") if override.kind == "added" else _short(override.type_says, override.at)


def _short(tree: Tree, path: Path) -> str:
    if isinstance(tree, list):
        return say("other steps")
    return as_text(tree, path) if isinstance(tree, str) else say("other")


def _traps(known: Shown, here: Shown, page: str) -> Iterator[Question]:
    """From the aircraft that one knows to the one that lies there: what differs, and among it what does not."""
    other = {fact.id: None for fact, _, _ in list(unlike(known.airframe, here.airframe))}
    asked = [*list(other)[:MOST_TRAPS], *[fact.id for fact in key_facts() if fact.id not in other][:MOST_ALIKE]]
    for fact in key_facts():
        if fact.id in asked:
            yield _trap(known, here, fact, page, alike=fact.id not in other)


def _trap(known: Shown, here: Shown, fact: KeyFact, page: str, *, alike: bool) -> Question:
    was, now = fact.tell(known.airframe), fact.tell(here.airframe)
    asks = say(
        "On the {known}, {question}: {was}. On the {here} too?",
        known=_called(known),
        question=fact.title[:1].lower() + fact.title[1:],
        was=was.text,
        here=_called(here),
    )
    answer = now
    if alike:
        answer = Value(say("Yes: no recorded difference"))
    elif was.text == now.text:
        answer = Value(say("UNKNOWN on both"), "unknown")
    return Question(asks, answer, f"{here.id}-not-{known.id}-{fact.id}", _place(here, fact.part, page))


def _day(event_id: str, title: str, day_id: str, flown: tuple[Flown, ...], page: str) -> Iterator[Section]:
    blocks: list[Block] = []
    for one, other in pairwise(flown):
        traps = tuple(_traps(one.shown, other.shown, page))
        heading = say(
            "From {one} {known} to {other} {here}",
            one=one.number,
            known=one.called,
            other=other.number,
            here=other.called,
        )
        blocks.append(Quiz(f"{event_id}-{day_id}-{one.number}-{other.number}", heading, traps))
    if blocks:
        yield Section(f"{event_id}-{day_id}", title, tuple(blocks), day_id.capitalize())


def _called(shown: Shown) -> str:
    return f"{shown.name} {shown.tail}".strip()


def _place(shown: Shown, part: str, page: str) -> str:
    home = addresses.tail_page(shown.tail) if shown.tail else addresses.type_page(shown.type_id)
    return relative(f"{home}#{part}", page)
