"""The structure page: maps of an airframe with the tables that their numbers lead to; load points, declared lifts."""

from __future__ import annotations

from collections.abc import Iterator

from hardpoint.drawings.cut_map import Frame, Windows
from hardpoint.figures.worked import Case
from hardpoint.figures.workings.windows import side_windows
from hardpoint.findings import Path, dotted
from hardpoint.pages import addresses
from hardpoint.pages.across.anchor_points import basis_of
from hardpoint.pages.across.links import with_links
from hardpoint.pages.lifts import lift_blocks
from hardpoint.pages.maps import cut_section, map_section
from hardpoint.pages.shown import Shown, said_before, shown_tail, shown_type, spoken
from hardpoint.pages.site import Page, Site
from hardpoint.pages.telling import in_full, place_words, several, tell
from hardpoint.pages.terms import label_of, term
from hardpoint.pages.view import Block, Line, Lines, Link, Row, Section, SheetPage, Table, Value, Was
from hardpoint.records.fleet import Type
from hardpoint.records.known import NonValue, entries, said
from hardpoint.records.load_points import LIFTING, LoadPoint
from hardpoint.records.station import Station
from hardpoint.words import mark, say

_HEADS = (
    mark("Point"),
    mark("Use"),
    mark("Where"),
    mark("Allowable"),
    mark("Basis"),
    mark("Cone"),
    mark("To reach it"),
)


def structure_page(site: Site, type_: Type) -> Page:
    """Where it holds, where it is cut, what harms, where hands go; then load points and declared lifts in full."""
    shown = shown_type(type_)
    page = addresses.structure_page(type_.id)
    title = say("{name}: structure", name=shown.name)
    sections = (
        *_aircraft(site, type_, page),
        map_section(shown, "holds", page),
        with_links(
            Section("load-points", say("Load points"), _points(shown, site.station), say("Load points")), shown, page
        ),
        Section("lifts", say("Declared lifts"), lift_blocks(site, shown), say("Lifts")),
        cut_section(shown, _windows(site, shown)),
        map_section(shown, "harms", page),
        map_section(shown, "hands", page),
    )
    lead = say(
        "Points as recorded, before any accident: a licensed person inspects each before a hook goes in. "
        "A tie-down ring is not a lift point."
    )
    links = (
        Link(say("Crew page: {name}", name=shown.name), addresses.relative(addresses.type_page(type_.id), page)),
        Link(say("Lifting sheet for the crane"), addresses.relative(addresses.lift_page(type_.id), page)),
        Link(say("All figures, converted, with sources"), addresses.relative(addresses.figures_page(type_.id), page)),
    )
    view = SheetPage(
        site.frame(page, title, (shown.name, addresses.type_page(type_.id))),
        title,
        lead,
        sections,
        links,
        site.cautions,
    )
    return Page(page, title, "sheet.html", view)


def _windows(site: Site, shown: Shown) -> Windows:
    """What is clear on each side, by whichever of the station's tools fits: each stretch once."""
    found: dict[tuple[str, str], list[Frame]] = {}
    for side in side_windows(Case(shown.airframe, site.station)):
        for window in side.windows:
            clear = window.clear
            band = (None, None) if clear.heights is None else (clear.heights[0] * 1000, clear.heights[1] * 1000)
            found.setdefault((side.zone, side.side), []).append((clear.start * 1000, clear.end * 1000, *band))
    return {key: tuple(dict.fromkeys(frames)) for key, frames in found.items()}


def _points(shown: Shown, station: Station | None) -> tuple[Block, ...]:
    points = shown.airframe.load_points
    if isinstance(points, NonValue):
        return (Lines((Line(say("where it may be lifted: nobody has recorded it"), say("UNKNOWN"), "unknown"),)),)
    rows = []
    for number, (name, point) in enumerate(entries(points).items(), start=1):
        rows.append(_row(number, name, point, station))
    rows += [
        Row(
            (Value(name.replace("-", " ")), *(tell(answer) for _ in _HEADS[1:])),
            addresses.anchor(("load_points", name)),
        )
        for name, answer in points.items()
        if isinstance(answer, NonValue)
    ]
    return (Table("load-point-table", say("Load points, whatever they are for"), tuple(map(say, _HEADS)), tuple(rows)),)


def _row(number: int, name: str, point: LoadPoint, station: Station | None) -> Row:
    path = ("load_points", name)
    allowable = tell(point.allowable, (*path, "allowable"))
    for_ = tell(point.allowable_is_for)
    basis = basis_of(point, station)
    condition = say("only if: {condition}", condition=point.only_if) if point.only_if else ""
    conditions = "; ".join(part for part in (condition, tell(point.what).text, *_rigging(point, path)) if part)
    return Row(
        (
            Value(f"{number} {name.replace('-', ' ')}", note=conditions),
            Value(term(point.use) if point.use in LIFTING else say("{use}: does not lift", use=term(point.use))),
            Value(place_words(point.place), note=_stations(point)),
            Value(
                allowable.text,
                allowable.state,
                allowable.beside,
                allowable.remark,
                note=say("for {what}", what=for_.text),
            ),
            basis,
            tell(point.cone, (*path, "cone")),
            _access(point),
        ),
        addresses.anchor(path),
        "plain" if point.use in LIFTING else "caution",
    )


def _rigging(point: LoadPoint, path: Path) -> Iterator[str]:
    """What fits the point, the least width of a strap, where it leaves the skin: for whoever brings the gear."""
    for key, words in (
        ("fits", mark("fits: {answer}")),
        ("strap_width", mark("strap at least {answer} wide")),
        ("leaves_skin", mark("the strap leaves the skin at WL {answer}")),
    ):
        answer = getattr(point, key)
        if answer is not None:
            yield say(words, answer=in_full(tell(answer, (*path, key))))


def _aircraft(site: Site, type_: Type, page: str) -> tuple[Section, ...]:
    """What single aircraft have otherwise: their pages lead here, and a load is judged by the aircraft."""
    lines = [line for tail in site.fleet.tails_of(type_.id) for line in _of_tail(shown_tail(tail), page)]
    if not lines:
        return ()
    return (Section("aircraft", say("Aircraft that differ"), (Lines(tuple(lines)),), say("Aircraft")),)


def _of_tail(shown: Shown, page: str) -> Iterator[Line]:
    href = addresses.relative(addresses.tail_page(shown.tail), page)
    if not shown.declared:
        yield Line(
            say("how it differs: nobody has declared it"), say("{tail}: UNKNOWN", tail=shown.tail), "unknown", href
        )
    for change in shown.changes:
        if change.path[0] in _LIFTED_BY:
            what = label_of(change.path, start=1).replace("-", " ")
            here = say("not on this aircraft") if change.here is None else spoken(change.here, change.path)
            was = (Was(dotted(change.at), "", said_before(change)),)
            yield Line(f"{what}: {here}", f"{shown.tail}:", "caution", href, was=was)


_LIFTED_BY = ("load_points", "lifts", "masses", "profile", "size", "datum")


def _stations(point: LoadPoint) -> str:
    place = said(point.place)
    if place is None:
        return ""
    told = [
        f"{axis} {tell(getattr(place, key)).text}"
        for axis, key in (("FS", "fs"), ("BL", "bl"), ("WL", "wl"))
        if getattr(place, key) is not None
    ]
    return ", ".join(told)


def _access(point: LoadPoint) -> Value:
    access = said(point.access)
    if access is None:
        return tell(point.access)
    asked = ((say("upright"), "upright"), (say("inverted"), "inverted"), (say("afloat"), "afloat"))
    return several([(label, tell(getattr(access, key))) for label, key in asked])
