"""The figures page: every quantity as stated and converted, positions, provenance, and the whole record as written."""

from __future__ import annotations

from collections.abc import Iterator

from hardpoint.figures.safe_side import rounding_of
from hardpoint.findings import Path
from hardpoint.pages import addresses
from hardpoint.pages.shown import Shown, shown_tail, shown_type, spoken
from hardpoint.pages.site import Page, Site
from hardpoint.pages.telling import tell, tell_quantity
from hardpoint.pages.terms import label_of
from hardpoint.pages.view import Block, Line, Lines, Link, Row, Section, SheetPage, Table, Value
from hardpoint.pages.workings import Told, differing, worked, worked_sections, worked_table
from hardpoint.pages.written import as_written
from hardpoint.records.fleet import Aircraft, Type
from hardpoint.records.tail import Tail
from hardpoint.records.walk import values_of
from hardpoint.units import Quantity
from hardpoint.words import mark, say, say_again

_ROUNDED = {
    "up": mark("rounded up, the safe side"),
    "down": mark("rounded down, the safe side"),
    "nearest": mark("nearest"),
}
_STATUS = {
    "single": mark("one statement"),
    "agree": mark("the two agree"),
    "rounded": mark("the two agree within their rounding"),
    "disagree": mark("THE TWO DISAGREE"),
}


def figures_page(site: Site, type_: Type) -> Page:
    """Figures of a type; what its tails have otherwise stands in a section of its own."""
    shown = shown_type(type_)
    page = addresses.figures_page(type_.id)
    title = say("{name}: figures", name=shown.name)
    told = worked(site, shown.airframe)
    sections = [
        *worked_sections(told, page),
        Section(
            "quantities", say("Quantities as stated and converted"), (_quantities(shown, page),), say("Quantities")
        ),
        *_tails(site, type_, page, told),
        Section("provenance", say("Who checked what, and when again"), (_provenance(site, shown),), say("Checked")),
        Section(
            "as-written", say("The whole record as its author wrote it"), as_written(shown.tree), say("As written")
        ),
    ]
    lead = say(
        "For planning, not for the aircraft side. Stations are in {unit} and grow aft; zero at: {zero}. "
        "A figure stays as its author wrote it; the conversion stands beside.",
        unit=shown.airframe.datum.unit,
        zero=tell(shown.airframe.datum.zero).text,
    )
    links = (
        Link(say("Crew page: {name}", name=shown.name), addresses.relative(addresses.type_page(type_.id), page)),
        Link(say("Structure: side view and load points"), addresses.relative(addresses.structure_page(type_.id), page)),
    )
    view = SheetPage(
        site.frame(page, title, (shown.name, addresses.type_page(type_.id))),
        title,
        lead,
        tuple(sections),
        links,
        site.cautions,
    )
    return Page(page, title, "sheet.html", view)


def _quantities(shown: Shown, page: str, prefix: str = "quantity") -> Table:
    rows = tuple(_row(shown, path, quantity, page, prefix) for path, quantity in stated(shown))
    heads = (say("What"), say("As stated"), say("Converted"), say("How it was checked and rounded"))
    return Table(f"{prefix}-table", say("Every quantity of the record"), heads, rows)


def stated(shown: Shown) -> Iterator[tuple[Path, Quantity]]:
    """Every quantity of the record with its path."""
    for path, value in values_of(shown.airframe):
        quantity = getattr(value, "quantity", value)
        if isinstance(quantity, Quantity):
            yield path, quantity


def _row(shown: Shown, path: Path, quantity: Quantity, page: str, prefix: str) -> Row:
    told = tell_quantity(quantity, path)
    rounding = say(_ROUNDED[rounding_of(path, quantity.kind)]) if told.beside else ""
    slip = say_again(quantity.slip or "")
    check = "; ".join(part for part in (say(_STATUS[quantity.status]), slip, _governs(quantity), rounding) if part)
    back = (
        addresses.relative(f"{addresses.type_page(shown.type_id)}#{addresses.anchor(path)}", page)
        if _has_anchor(path)
        else ""
    )
    tone = "caution" if quantity.status == "disagree" else "plain"
    cells = (
        Value(label_of(path), href=back),
        Value(told.text),
        Value(", ".join(told.beside) or say("as stated")),
        Value(check),
    )
    return Row(cells, f"{prefix}-" + "-".join(map(str, path)).replace("_", "-").replace(" ", "-"), tone)  # type: ignore[arg-type]


def _has_anchor(path: Path) -> bool:
    return path[0] in ("exits", "controls", "tanks", "bottles")


def _governs(quantity: Quantity) -> str:
    if quantity.governs:
        return say("{figure} governs", figure=quantity.governs.text)
    return say("neither was chosen; both enter the figures") if quantity.status == "disagree" else ""


def _tails(site: Site, type_: Type, page: str, told: Told) -> Iterator[Section]:
    """What each tail has otherwise, and its own record as written."""
    for tail in site.fleet.tails_of(type_.id):
        href = addresses.relative(addresses.tail_page(tail.id), page)
        blocks: tuple[Block, ...] = (
            Lines((Line(say("Crew page of {tail}", tail=tail.id), href=href),)),
            *_otherwise(shown_tail(tail)),
            *_worked_otherwise(site, tail, told, page),
        )
        blocks = (*blocks, *as_written(tail.own.tree, Tail, tail.id))
        yield Section(f"tail-{tail.id}", say("Tail {tail}", tail=tail.id), blocks, tail.id)


def _worked_otherwise(site: Site, tail: Aircraft, told: Told, page: str) -> Iterator[Block]:
    """The figures that come out otherwise on this aircraft; nothing where its record changes none."""
    for topic, figures in differing(worked(site, tail.airframe), told):
        caption = say("{tail}: {topic}", tail=tail.id, topic=say(topic.title))
        yield worked_table(f"worked-{tail.id}-{topic.id}", figures, page, caption, f"figure-{tail.id}")


def _otherwise(shown: Shown) -> Iterator[Block]:
    rows = tuple(
        Row(
            (
                Value(label_of(override.at)),
                Value(spoken(override.type_says, override.at)),
                Value(spoken(override.here, override.at)),
                Value(override.because or say("no reason recorded")),
            )
        )
        for override in shown.overrides
    )
    if rows:
        heads = (say("Where"), say("Type says"), say("Here"), say("Because"))
        yield Table(f"differs-{shown.id}", say("What {tail} has otherwise", tail=shown.id), heads, rows)


def _provenance(site: Site, shown: Shown) -> Block:
    checked = shown.airframe.checked
    if not checked:
        return Lines((Line(say("nothing in this record says how it was checked"), say("UNKNOWN"), "unknown"),))
    rows = tuple(
        Row(
            (
                Value(label_of((name,))),
                tell(check.how),
                tell(check.aircraft),
                tell(check.by),
                tell(check.date),
                _review(site, check.review),
                _source(site, check.source),
            ),
            f"checked-{name.replace('_', '-')}",
        )
        for name, check in checked.items()
    )
    heads = (
        say("Section"),
        say("How"),
        say("On which aircraft"),
        say("By"),
        say("When"),
        say("Review by"),
        say("Source"),
    )
    return Table("provenance-table", say("Provenance by section"), heads, rows)


def _review(site: Site, review: object) -> Value:
    told = tell(review)
    overdue = told.state == "said" and told.text < site.as_of.isoformat()
    return Value(told.text, told.state, remark=say("OVERDUE on {date}", date=site.as_of.isoformat()) if overdue else "")


def _source(site: Site, source: str | None) -> Value:
    if source is None:
        return Value(say("none cited"))
    found = site.fleet.sources.get(source)
    if found is None:
        return Value(source)
    where = ", ".join(
        part for part in (found.title, found.publisher, tell(found.edition).text, found.section or "") if part
    )
    return Value(f"{where} ({tell(found.standing).text})")
