"""Shutdown controls over all types: which way is off, what lies beyond it, whether one suffices."""

from __future__ import annotations

from hardpoint.pages import addresses
from hardpoint.pages.across.answers import head, narrowing, topic
from hardpoint.pages.across.items import Item, items
from hardpoint.pages.addresses import relative
from hardpoint.pages.board import Board, board_page
from hardpoint.pages.site import Page, Site
from hardpoint.pages.telling import place_words, tell, way_words
from hardpoint.pages.view import Value
from hardpoint.records.controls import Control
from hardpoint.records.known import NonValue
from hardpoint.words import say

ADDRESS = addresses.across_page("shutdown-controls")


def shutdown_controls_page(site: Site) -> Page:
    """One row a control."""
    board = Board(
        ADDRESS,
        say("Shutdown controls, all types"),
        say("The same switch goes another way on another type: read the row of the aircraft before you."),
        say("Control"),
        say("{found} of {total} controls"),
        (
            topic("function", say("Shuts down"), lambda item: tell(item.entry.function)),
            topic("off", say("Off is"), lambda item: off_is(item.entry)),
            topic("where", say("Where"), _where),
            topic("kind", say("The hand finds"), lambda item: tell(item.entry.kind)),
            topic("guard", say("Guard"), lambda item: tell(item.entry.guard), shown=False),
            topic("beyond", say("Beyond off"), lambda item: tell(item.entry.beyond_off)),
            topic("alone", say("By itself"), lambda item: tell(item.entry.alone)),
            topic("success", say("It has worked when"), lambda item: tell(item.entry.success), shown=False),
        ),
        (
            narrowing("function", say("Shuts down"), lambda control: (tell(control.function).text,)),
            narrowing("off", say("Off is"), lambda control: (off_is(control).text,)),
        ),
    )
    held = [(head(item, ADDRESS, relative), item) for item in items(site, "controls")]
    return board_page(site, board, held)


def off_is(control: Control) -> Value:
    """The off direction with its observer; for what dumps or releases, the way it works."""
    if control.off_is is NonValue.NOT_APPLICABLE and control.works_by is not None:
        works = tell(control.works_by)
        return Value(say("works {way}", way=way_words(control.works_by, control.seen_from)), works.state)
    answer = tell(control.off_is)
    if answer.state != "said":
        return answer
    return Value(way_words(control.off_is, control.seen_from))


def _where(item: Item) -> Value:
    return Value(place_words(item.entry.place, item.shown.airframe), tell(item.entry.place).state)
