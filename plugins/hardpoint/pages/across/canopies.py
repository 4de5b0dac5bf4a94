"""Ways in over all types: canopies, doors, hatches, and how each opens in which attitude."""

from __future__ import annotations

from hardpoint.pages import addresses
from hardpoint.pages.across.answers import head, narrowing, topic
from hardpoint.pages.across.items import Item, items
from hardpoint.pages.addresses import relative
from hardpoint.pages.board import Board, board_page
from hardpoint.pages.opening import opens
from hardpoint.pages.site import Page, Site
from hardpoint.pages.telling import place_words, several, steps_of, tell
from hardpoint.pages.terms import term
from hardpoint.pages.view import Step, Value
from hardpoint.records.exits import Canopy, Exit
from hardpoint.records.known import NonValue, entries
from hardpoint.words import say

ADDRESS = addresses.across_page("canopies")


def canopies_page(site: Site) -> Page:
    """One row a way in."""
    board = Board(
        ADDRESS,
        say("Canopies and other ways in, all types"),
        say("The steps are short here; the crew page has them in full."),
        say("Way in"),
        say("{found} of {total} ways in"),
        (
            topic("opens", say("Opens"), _opens),
            topic("from", say("From"), lambda item: tell(item.entry.from_)),
            topic("where", say("Handle"), _where),
            topic("steps", say("Steps"), lambda item: _steps(item.entry)),
            topic("upright", say("Upright"), lambda item: works(item.entry, "upright")),
            topic("inverted", say("Inverted"), lambda item: works(item.entry, "inverted")),
            topic("afloat", say("Afloat"), lambda item: works(item.entry, "afloat"), shown=False),
            topic("in-water", say("Inverted in water"), lambda item: works(item.entry, "inverted_in_water")),
            topic("hinges", say("Hinges"), lambda item: _of_canopy(item, "hinges"), shown=False),
            topic("held-by", say("Held by"), _held, shown=False),
            topic("mass", say("Weighs"), lambda item: _of_canopy(item, "mass"), shown=False),
            topic("needs", say("Needs"), lambda item: Value(item.entry.needs or say("nothing stated")), shown=False),
        ),
        (
            narrowing("way-in", say("Kind of way in"), lambda exit_: (term(exit_.way_in),)),
            narrowing("from", say("From"), lambda exit_: (tell(exit_.from_).text,)),
            narrowing("inverted", say("Inverted"), lambda exit_: (works(exit_, "inverted").text,)),
        ),
    )
    held = [(head(item, ADDRESS, relative), item) for item in items(site, "exits")]
    return board_page(site, board, held)


def works(exit_: Exit, attitude: str) -> Value:
    """Whether it opens in an attitude; what nobody said is unknown."""
    return opens(getattr(exit_.works, attitude))


def _canopy(item: Item) -> Canopy | None:
    exit_: Exit = item.entry
    return entries(item.shown.airframe.canopies).get(exit_.opens)


def _opens(item: Item) -> Value:
    exit_: Exit = item.entry
    canopy = _canopy(item)
    kind = tell(canopy.kind).text if canopy else say("open cockpit")
    return Value(kind, note=term(exit_.way_in))


def _of_canopy(item: Item, key: str) -> Value:
    canopy = _canopy(item)
    if canopy is None:
        return tell(NonValue.NOT_APPLICABLE)
    return tell(getattr(canopy, key), ("canopies", item.entry.opens, key))


def _held(item: Item) -> Value:
    canopy = _canopy(item)
    if canopy is None or isinstance(canopy.held_by, NonValue):
        return tell(canopy.held_by if canopy else NonValue.NOT_APPLICABLE)
    return several((holder.what, tell(holder.freed_by)) for holder in entries(canopy.held_by).values())


def _where(item: Item) -> Value:
    return Value(place_words(item.entry.place, item.shown.airframe), tell(item.entry.place).state)


def _steps(exit_: Exit) -> Value:
    steps = steps_of(exit_.steps)
    open_ = any(step.unknown for step in steps)
    return Value("; ".join(_line(step) for step in steps), "unknown" if open_ else "said")


def _line(step: Step) -> str:
    return " ".join(word for word in (step.verb, step.what, step.way, step.until) if word)
