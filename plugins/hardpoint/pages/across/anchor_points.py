"""Anchor points over all types: which lift, by how much, on what basis, how they are reached."""

from __future__ import annotations

from hardpoint.figures.refusals import refusal
from hardpoint.pages import addresses
from hardpoint.pages.across.answers import head, narrowing, topic
from hardpoint.pages.across.items import Item, items
from hardpoint.pages.addresses import relative
from hardpoint.pages.board import Board, board_page
from hardpoint.pages.site import Page, Site
from hardpoint.pages.telling import place_words, tell
from hardpoint.pages.view import Value
from hardpoint.records.known import said
from hardpoint.records.load_points import LIFTING, LoadPoint
from hardpoint.records.station import Station
from hardpoint.words import say, say_again

ADDRESS = addresses.across_page("anchor-points")


def anchor_points_page(site: Site) -> Page:
    """One row a point."""
    lead = say(
        "Points as recorded, before any accident: a licensed person inspects each before a hook goes in. "
        "A tie-down ring is not a lift point."
    )
    board = Board(
        ADDRESS,
        say("Anchor points, all types"),
        lead,
        say("Point"),
        say("{found} of {total} points"),
        (
            topic("use", say("Use"), lambda item: _use(item.entry)),
            topic("allowable", say("Allowable"), _allowable, figure=lambda point: point.allowable),
            topic("basis", say("Basis"), lambda item: basis_of(item.entry, site.station)),
            topic("where", say("Where"), lambda item: tell_place(item, item.entry)),
            topic("cone", say("Cone"), _cone, figure=lambda point: point.cone),
            topic("upright", say("To reach it, upright"), lambda item: _reach(item.entry, "upright")),
            topic("inverted", say("To reach it, inverted"), lambda item: _reach(item.entry, "inverted")),
            topic("what", say("What is there"), lambda item: tell(item.entry.what), shown=False),
            topic("fits", say("Fits"), lambda item: tell(item.entry.fits), shown=False),
            topic("only-if", say("Only if"), lambda item: Value(item.entry.only_if or say("nothing stated"))),
        ),
        (
            narrowing("lifts", say("Use"), _uses),
            narrowing("basis", say("Basis"), lambda point: (tell(point.basis).text,)),
        ),
    )
    held = [(head(item, ADDRESS, relative, _place(item)), item) for item in items(site, "load_points")]
    return board_page(site, board, held)


def _place(item: Item) -> str:
    """Load points have their rows on the structure page of the type, also those of a tail."""
    anchored = "load-points" if item.entry is None else addresses.anchor(item.path)
    return f"{addresses.structure_page(item.shown.type_id)}#{anchored}"


def _use(point: LoadPoint) -> Value:
    use = tell(point.use).text
    return Value(use if point.use in LIFTING else say("{use}: does not lift", use=use))


def _uses(point: LoadPoint) -> tuple[str, ...]:
    """Its use, and for what lifts in whichever way the one word for both."""
    return (_use(point).text, *((say("lift or wrap"),) if point.use in LIFTING else ()))


def _allowable(item: Item) -> Value:
    point: LoadPoint = item.entry
    value = tell(point.allowable, (*item.path, "allowable"))
    for_ = say("for {whom}", whom=tell(point.allowable_is_for).text)
    return Value(value.text, value.state, value.beside, value.remark, note=for_)


def basis_of(point: LoadPoint, station: Station | None) -> Value:
    """What its allowable is, and why no lift can be computed by it, if none can."""
    basis, why = tell(point.basis), refusal(point, station)
    remark = say("REFUSED: {why}", why=say_again(why)) if why else ""
    return Value(basis.text, basis.state, remark=remark)


def _cone(item: Item) -> Value:
    return tell(item.entry.cone, (*item.path, "cone"))


def tell_place(item: Item, entry: LoadPoint) -> Value:
    """Its place by landmark, its station beside it: this page is for planning."""
    place = said(entry.place)
    if place is None:
        return tell(entry.place)
    fs = tell(place.fs)
    return Value(place_words(place, item.shown.airframe), note=f"FS {fs.text}")


def _reach(point: LoadPoint, attitude: str) -> Value:
    access = said(point.access)
    return tell(point.access) if access is None else tell(getattr(access, attitude))
