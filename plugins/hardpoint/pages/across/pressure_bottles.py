"""Pressure bottles over all types: contents, pressure, place, what not to do with them."""

from __future__ import annotations

from dataclasses import replace

from hardpoint.figures.workings.bottles import energy_of
from hardpoint.pages import addresses
from hardpoint.pages.across.answers import head, narrowing, topic
from hardpoint.pages.across.items import Item, items
from hardpoint.pages.addresses import relative
from hardpoint.pages.board import Board, Topic, board_page
from hardpoint.pages.site import Page, Site
from hardpoint.pages.telling import do_not, place_words, several, tell, unknown
from hardpoint.pages.vessels import valve_words
from hardpoint.pages.view import Value
from hardpoint.records.known import NonValue
from hardpoint.units import computed
from hardpoint.words import say

ADDRESS = addresses.across_page("pressure-bottles")


def pressure_bottles_page(site: Site) -> Page:
    """One row a bottle, and one for each kind that somebody looked for; those that can do most first."""
    board = Board(
        ADDRESS,
        say("Pressure bottles, all types"),
        say("A bottle in a fire bursts below what its pressure alone tells. Cordons are the station's own."),
        say("Bottle"),
        say("{found} of {total} bottles"),
        (
            topic("holds", say("Holds"), lambda item: tell(item.entry.holds)),
            topic("pressure", say("Pressure"), _pressure, figure=lambda bottle: bottle.working_pressure),
            _energy_topic(),
            topic("capacity", say("Water capacity"), _capacity, figure=lambda bottle: bottle.water_capacity),
            topic("count", say("How many"), lambda item: Value(str(item.entry.count))),
            topic("where", say("Where"), lambda item: _where(item)),
            topic("valve", say("Valve"), lambda item: valve_words(item.entry.valve, item.shown)),
            topic("use", say("For"), lambda item: tell(item.entry.use), shown=False),
            topic(
                "carried", say("On board"), lambda item: Value(item.entry.carried or say("always, as far as stated"))
            ),
            topic("do-not", say("What not to do"), _prohibited),
        ),
        (
            narrowing("holds", say("Holds"), lambda bottle: (tell(bottle.holds).text,)),
            narrowing("use", say("For"), lambda bottle: (tell(bottle.use).text,)),
        ),
    )
    ranked = sorted(items(site, "bottles"), key=_first)
    held = [(head(item, ADDRESS, relative), item) for item in ranked]
    return board_page(site, board, held)


def _energy_topic() -> Topic[Item]:
    ranked = topic("energy", say("Energy of a burst"), _energy)
    return replace(ranked, size=_joules)


def _first(item: Item) -> tuple[int, float]:
    """Bottles whose energy nobody can say first, then by energy, what is not there last."""
    if item.entry is None or isinstance(item.entry, NonValue):
        return (0 if item.entry is NonValue.UNKNOWN else 2, 0.0)
    joules = _joules(item)
    return (0, 0.0) if joules is None else (1, -joules)


def _joules(item: Item) -> float | None:
    if item.entry is None or isinstance(item.entry, NonValue):
        return None
    energy = energy_of(item.shown.airframe, str(item.path[1]))
    return None if energy is None else energy[1]


def _energy(item: Item) -> Value:
    """For ranking: what it is worth is told on the figures page, with its source."""
    energy = energy_of(item.shown.airframe, str(item.path[1]))
    if energy is None:
        return unknown(say("cannot be said; it bursts all the same"))
    return Value(computed(energy, "J", "kJ", "up")[0])


def _pressure(item: Item) -> Value:
    return tell(item.entry.working_pressure, (*item.path, "working_pressure"))


def _capacity(item: Item) -> Value:
    return tell(item.entry.water_capacity, (*item.path, "water_capacity"))


def _where(item: Item) -> Value:
    words = place_words(item.entry.place, item.shown.airframe)
    return Value(words, tell(item.entry.place).state)


def _prohibited(item: Item) -> Value:
    return several(do_not(item.entry.do_not), say("nothing stated: the usual cautions hold"))
