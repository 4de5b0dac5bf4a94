"""The figures page: every quantity as stated and converted, positions, provenance, and the whole record as written."""

from __future__ import annotations

from collections.abc import Iterator

from hardpoint.figures.safe_side import rounding_of
from hardpoint.findings import Path
from hardpoint.pages import addresses
from hardpoint.pages.site import Page, Site
from hardpoint.pages.telling import Shown, shown_tail, shown_type, tell, tell_quantity
from hardpoint.pages.terms import as_text, label_of
from hardpoint.pages.view import Block, Line, Lines, Link, Row, Section, SheetPage, Table, Value
from hardpoint.pages.written import as_written
from hardpoint.records.fleet import Type
from hardpoint.records.walk import values_of
from hardpoint.units import Quantity

_ROUNDED = {"up": "rounded up, the safe side", "down": "rounded down, the safe side", "nearest": "nearest"}
_STATUS = {
    "single": "one statement",
    "agree": "the two agree",
    "rounded": "the two agree within their rounding",
    "disagree": "THE TWO DISAGREE",
}


def figures_page(site: Site, type_: Type) -> Page:
    """Figures of a type; what its tails have otherwise stands in a section of its own."""
    shown = shown_type(type_)
    page = addresses.figures_page(type_.id)
    title = f"{shown.name}: figures"
    sections = [
        Section("quantities", "Quantities as stated and converted", (_quantities(shown, page),), "Quantities"),
        *_tails(site, type_, page),
        Section("provenance", "Who checked what, and when again", (_provenance(site, shown),), "Checked"),
        Section("as-written", "The whole record as its author wrote it", as_written(shown.tree), "As written"),
    ]
    lead = (
        f"For planning, not for the aircraft side. Stations are in {shown.airframe.datum.unit} and grow aft; zero at: "
        f"{tell(shown.airframe.datum.zero).text}. A figure stays as its author wrote it; the conversion stands beside."
    )
    links = (
        Link(f"Crew page: {shown.name}", addresses.relative(addresses.type_page(type_.id), page)),
        Link("Structure: side view and load points", addresses.relative(addresses.structure_page(type_.id), page)),
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
    heads = ("What", "As stated", "Converted", "How it was checked and rounded")
    return Table(f"{prefix}-table", "Every quantity of the record", heads, rows)


def stated(shown: Shown) -> Iterator[tuple[Path, Quantity]]:
    """Every quantity of the record with its path."""
    for path, value in values_of(shown.airframe):
        quantity = getattr(value, "quantity", value)
        if isinstance(quantity, Quantity):
            yield path, quantity


def _row(shown: Shown, path: Path, quantity: Quantity, page: str, prefix: str) -> Row:
    told = tell_quantity(quantity, path)
    rounding = _ROUNDED[rounding_of(path, quantity.kind)] if told.beside else ""
    check = "; ".join(
        part for part in (_STATUS[quantity.status], quantity.slip or "", _governs(quantity), rounding) if part
    )
    back = (
        addresses.relative(f"{addresses.type_page(shown.type_id)}#{addresses.anchor(path)}", page)
        if _has_anchor(path)
        else ""
    )
    tone = "caution" if quantity.status == "disagree" else "plain"
    cells = (
        Value(label_of(path), href=back),
        Value(told.text),
        Value(", ".join(told.beside) or "as stated"),
        Value(check),
    )
    return Row(cells, f"{prefix}-" + "-".join(map(str, path)).replace("_", "-").replace(" ", "-"), tone)  # type: ignore[arg-type]


def _has_anchor(path: Path) -> bool:
    return path[0] in ("exits", "controls", "tanks", "bottles")


def _governs(quantity: Quantity) -> str:
    if quantity.governs:
        return f"{quantity.governs.text} governs"
    return "neither was chosen; both enter the figures" if quantity.status == "disagree" else ""


def _tails(site: Site, type_: Type, page: str) -> Iterator[Section]:
    """What each tail has otherwise, and its own record as written."""
    for tail in site.fleet.tails_of(type_.id):
        href = addresses.relative(addresses.tail_page(tail.id), page)
        blocks: tuple[Block, ...] = (
            Lines((Line(f"Crew page of {tail.id}", href=href),)),
            *_otherwise(shown_tail(tail)),
        )
        yield Section(f"tail-{tail.id}", f"Tail {tail.id}", (*blocks, *as_written(tail.own.tree, tail.id)), tail.id)


def _otherwise(shown: Shown) -> Iterator[Block]:
    rows = tuple(
        Row(
            (
                Value(label_of(override.at)),
                Value(as_text(override.type_says)),
                Value(as_text(override.here)),
                Value(override.because or "no reason recorded"),
            )
        )
        for override in shown.overrides
    )
    if rows:
        heads = ("Where", "Type says", "Here", "Because")
        yield Table(f"differs-{shown.id}", f"What {shown.id} has otherwise", heads, rows)


def _provenance(site: Site, shown: Shown) -> Block:
    checked = shown.airframe.checked
    if not checked:
        return Lines((Line("nothing in this record says how it was checked", "UNKNOWN", "unknown"),))
    rows = tuple(
        Row(
            (
                Value(label_of((name,))),
                Value(check.how),
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
    heads = ("Section", "How", "On which aircraft", "By", "When", "Review by", "Source")
    return Table("provenance-table", "Provenance by section", heads, rows)


def _review(site: Site, review: object) -> Value:
    told = tell(review)
    overdue = told.state == "said" and told.text < site.as_of.isoformat()
    return Value(told.text, told.state, remark=f"OVERDUE on {site.as_of.isoformat()}" if overdue else "")


def _source(site: Site, source: str | None) -> Value:
    if source is None:
        return Value("none cited")
    found = site.fleet.sources.get(source)
    if found is None:
        return Value(source)
    where = ", ".join(part for part in (found.title, found.publisher, found.edition, found.section or "") if part)
    return Value(f"{where} ({found.standing})")
