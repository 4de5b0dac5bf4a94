"""The structure page, first version: a plain side view with the load points, and their table."""

from __future__ import annotations

from hardpoint.drawings.side_view import side_view
from hardpoint.pages import addresses
from hardpoint.pages.across.links import with_links
from hardpoint.pages.site import Page, Site
from hardpoint.pages.telling import Shown, place_words, several, shown_type, tell
from hardpoint.pages.view import Block, Drawing, Line, Lines, Link, Row, Section, SheetPage, Table, Value
from hardpoint.records.fleet import Type
from hardpoint.records.known import NonValue, entries, said
from hardpoint.records.load_points import LIFTING, LoadPoint

_HEADS = ("Point", "Use", "Where", "Allowable", "Basis", "Cone", "To reach it")


def structure_page(site: Site, type_: Type) -> Page:
    """Side view, load points, declared lifts."""
    shown = shown_type(type_)
    page = addresses.structure_page(type_.id)
    title = f"{shown.name}: structure"
    sections = (
        Section("side-view", "Left side", (_drawing(shown),), "Side view"),
        with_links(Section("load-points", "Load points", _points(shown), "Load points"), shown, page),
        Section("lifts", "Declared lifts", (_lifts(shown),), "Lifts"),
    )
    lead = (
        "Points as recorded, before any accident: a licensed person inspects each before a hook goes in. "
        "A tie-down ring is not a lift point."
    )
    links = (
        Link(f"Crew page: {shown.name}", addresses.relative(addresses.type_page(type_.id), page)),
        Link("All figures, converted, with sources", addresses.relative(addresses.figures_page(type_.id), page)),
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


def _drawing(shown: Shown) -> Block:
    drawn = side_view(shown.airframe, lambda name: f"#{addresses.anchor(('load_points', name))}")
    if drawn is None:
        return Lines((Line("the outline of this type: no drawing can be made", "UNKNOWN", "unknown"),))
    svg, marks = drawn
    return Drawing(
        "side-view-drawing",
        svg,
        f"Left side in true scale. {len(marks)} load points, numbered as in the table; a dashed ring does not lift.",
    )


def _points(shown: Shown) -> tuple[Block, ...]:
    points = shown.airframe.load_points
    if isinstance(points, NonValue):
        return (Lines((Line("where it may be lifted: nobody has recorded it", "UNKNOWN", "unknown"),)),)
    rows = []
    for number, (name, point) in enumerate(entries(points).items(), start=1):
        rows.append(_row(shown, number, name, point))
    rows += [
        Row(
            (Value(name.replace("-", " ")), *(tell(answer) for _ in _HEADS[1:])),
            addresses.anchor(("load_points", name)),
        )
        for name, answer in points.items()
        if isinstance(answer, NonValue)
    ]
    return (Table("load-point-table", "Load points, whatever they are for", _HEADS, tuple(rows)),)


def _row(shown: Shown, number: int, name: str, point: LoadPoint) -> Row:
    path = ("load_points", name)
    allowable = tell(point.allowable, (*path, "allowable"))
    for_ = tell(point.allowable_is_for)
    basis = tell(point.basis)
    if point.use in LIFTING and basis.state == "unknown":
        basis = Value("UNKNOWN", "unknown", remark="no lift can be computed by this point")
    conditions = "; ".join(part for part in (point.only_if or "", tell(point.what).text) if part)
    return Row(
        (
            Value(f"{number} {name.replace('-', ' ')}", note=conditions),
            Value(point.use if point.use in LIFTING else f"{point.use}: does not lift"),
            Value(place_words(point.place), note=_stations(point)),
            Value(allowable.text, allowable.state, allowable.beside, allowable.remark, note=f"for {for_.text}"),
            basis,
            tell(point.cone, (*path, "cone")),
            _access(point),
        ),
        addresses.anchor(path),
        "plain" if point.use in LIFTING else "caution",
    )


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
    told = [(word, tell(getattr(access, word))) for word in ("upright", "inverted", "afloat")]
    return several(told)


def _lifts(shown: Shown) -> Block:
    lines = []
    for name, lift in shown.airframe.lifts.items():
        points = ", ".join(point.replace("-", " ") for point in lift.points)
        line = tell(lift.tail_line)
        words = f"by {points}; tail line: {line.text.replace('-', ' ')}; {', '.join(lift.state)}" + (
            f"; not until {lift.not_until}" if lift.not_until else ""
        )
        lines.append(Line(words, f"{name.replace('-', ' ').capitalize()}:", id=addresses.anchor(("lifts", name))))
    note = Line(
        "Sling legs, hook heights and refusals are not computed in this edition; a licensed rigger does.",
        tone="caution",
    )
    return Lines((*lines, note) if lines else (Line("no lift is declared in this record"), note))
