"""Which type is it? Attitude by attitude, the question that splits best, its answers, and whoever remains behind each.

The whole key is on the page, folded: it works without scripts, and the place one has come to is an address.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from hardpoint.drawings.silhouette import silhouette
from hardpoint.figures.sight_key import Answers, best_question, features, split, two_signs
from hardpoint.pages import addresses
from hardpoint.pages.addresses import relative
from hardpoint.pages.site import Page, Site
from hardpoint.pages.terms import first_capital, term
from hardpoint.pages.view import Frame
from hardpoint.records.fleet import Type
from hardpoint.records.ways import ATTITUDES, Attitude
from hardpoint.words import say, say_count

_MOST = 60
"""Types up to which the key is made of all; beyond, of those that fly in an event: a key of hundreds is no key."""


@dataclass(frozen=True)
class Candidate:
    """A type that can still be it, with two signs to confirm it by, and under which numbers it flies."""

    name: str
    href: str
    signs: tuple[str, ...]
    flies: str
    outline: str = ""
    """SVG text of our own drawing: its silhouette from the left side."""


@dataclass(frozen=True)
class Branch:
    """One answer and what comes after it: another question, or nothing that would split who remains."""

    id: str
    answer: str
    left: str
    node: Node


@dataclass(frozen=True)
class Node:
    """Whoever remains, and the question that splits them best; ``asks`` is "" where none does."""

    asks: str
    branches: tuple[Branch, ...]
    candidates: tuple[Candidate, ...]


@dataclass(frozen=True)
class Lying:
    """The key for one attitude."""

    id: str
    title: str
    node: Node


@dataclass(frozen=True)
class RecognisePage:
    """A key for each attitude."""

    frame: Frame
    title: str
    lead: str
    attitudes: tuple[Lying, ...]
    cautions: tuple[str, ...]


def recognise_page(site: Site) -> Page:
    """The sight key of the book, or of the line-ups where the book is large."""
    page = addresses.RECOGNISE
    title = say("Recognise: which type is it?")
    types = _asked(site)
    told = {id_: features(type_.airframe) for id_, type_ in types.items()}
    attitudes = tuple(
        Lying(attitude.replace(" ", "-"), first_capital(term(attitude)), _node(site, types, told, attitude, (), page))
        for attitude in ATTITUDES
    )
    lead = say(
        "How does it lie? Then answer what you can see. Nothing is forced: whoever remains stays in view, and an "
        "aircraft that is not in the book looks like one that is. Confirm by two signs, one of them a shape."
    )
    view = RecognisePage(site.frame(page, title), title, lead, attitudes, site.cautions)
    return Page(page, title, "recognise.html", view)


def _asked(site: Site) -> Mapping[str, Type]:
    if len(site.fleet.types) <= _MOST:
        return site.fleet.types
    flown = {
        entry.type
        for line_up in site.fleet.events.values()
        for day in line_up.event.days.values()
        for entry in day.entries.values()
    }
    return {id_: type_ for id_, type_ in site.fleet.types.items() if id_ in flown}


def _node(
    site: Site,
    types: Mapping[str, Type],
    told: Mapping[str, Answers],
    attitude: Attitude,
    way: tuple[tuple[str, str], ...],
    page: str,
) -> Node:
    question = best_question(told, attitude, [asked for asked, _ in way])
    if question is None:
        return Node("", (), tuple(_candidate(site, types[id_], attitude, page) for id_ in told))
    branches = []
    for answer, group in split(told, question).items():
        on = (*way, (question.id, answer))
        id_ = "-".join([attitude.replace(" ", "-"), *(f"{asked}-{given}" for asked, given in on)])
        left = say_count(len(group), "{count} remains", "{count} remain")
        node = _node(site, types, {name: told[name] for name in group}, attitude, on, page)
        branches.append(Branch(id_, say(question.answers[answer]), left, node))
    return Node(say(question.asks), tuple(branches), ())


def _candidate(site: Site, type_: Type, attitude: Attitude, page: str) -> Candidate:
    flies = [
        say("{number} on {day}", number=number, day=day_id.replace("-", " ").capitalize())
        for line_up in site.fleet.events.values()
        for day_id, day in line_up.event.days.items()
        for number, entry in day.entries.items()
        if entry.type == type_.id
    ]
    href = relative(addresses.type_page(type_.id), page)
    signs = tuple(two_signs(type_.airframe, attitude))
    return Candidate(type_.airframe.name, href, signs, ", ".join(flies), silhouette(type_.airframe))
