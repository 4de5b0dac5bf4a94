"""Computed figures on planning pages: what came out, from what, by which formula, after whom, rounded to which side."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import replace
from typing import cast

from hardpoint.figures.citations import CITATIONS
from hardpoint.figures.worked import Case, Figure, Input, Topic, Unsaid, Worked
from hardpoint.figures.workings import worked_out
from hardpoint.findings import Path
from hardpoint.pages import addresses
from hardpoint.pages.site import Site
from hardpoint.pages.telling import several, tell
from hardpoint.pages.terms import label_of
from hardpoint.pages.view import Labelled, Row, Section, Table, Tone, Value
from hardpoint.records.airframe import Airframe
from hardpoint.records.event import Day, Entry
from hardpoint.records.sources import Source
from hardpoint.records.station import Station
from hardpoint.units import Rounding, computed
from hardpoint.words import Later, mark, say, say_again

_HEADS = (mark("What"), mark("Figure"), mark("From"), mark("Formula and source"))
_ROUNDED: dict[Rounding, str] = {
    "up": mark("rounded up, the safe side"),
    "down": mark("rounded down, the safe side"),
    "nearest": mark("rounded to the nearest"),
}
Told = tuple[tuple[Topic, tuple[Worked, ...]], ...]


def worked_sections(told: Told, page: str) -> Iterator[Section]:
    """A section for each topic, then the sources that the figures name."""
    for topic, worked in told:
        id_, title = f"worked-{topic.id}", say(topic.title)
        caption = say("{topic}: what came out, from what, and how", topic=title)
        table = replace(worked_table(f"{id_}-table", worked, page, caption), folded=topic.folded)
        yield Section(id_, title, (table,))
    yield from sources_section(told)


def sources_section(told: Told) -> Iterator[Section]:
    """The published sources that these figures name."""
    keys = sorted({key for _, worked in told for figure in worked for key in _sources(figure)} & CITATIONS.keys())
    if keys:
        rows = tuple(_citation(key, CITATIONS[key]) for key in keys)
        heads = (say("Source"), say("Published by, section"), say("How it was used"))
        table = Table("worked-sources-table", say("Published sources that the formulas rest on"), heads, rows)
        yield Section("worked-sources", say("Sources of the formulas"), (table,), say("Sources"))


def worked_table(id_: str, worked: Iterable[Worked], page: str, caption: str, prefix: str = "figure") -> Table:
    """One row a figure; a figure that cannot be said has its reason in place of a value."""
    rows = tuple(_row(figure, page, prefix) for figure in worked)
    return Table(id_, caption, tuple(map(say, _HEADS)), rows)


def told_figure(figure: Worked) -> Value:
    """The figure itself: value and conversion, or why there is none."""
    if isinstance(figure, Unsaid):
        if figure.refused:
            return Value(say("Refused: {reason}", reason=say_again(figure.reason)), refuses=True)
        return Value(say("UNKNOWN, cannot be said: {reason}", reason=say_again(figure.reason)), "unknown")
    text, *beside = computed(figure.value, figure.unit, figure.printed_in, figure.rounded, figure.digits)
    return Value(text, beside=tuple(beside), remark=say_again(figure.caution))


def _row(figure: Worked, page: str, prefix: str) -> Row:
    tone: Tone = "plain" if isinstance(figure, Figure) else "caution"
    cells = (Value(say_again(figure.what)), told_figure(figure), _from(figure), _how(figure, page))
    return Row(cells, f"{prefix}-{figure.id}".replace(".", "-").replace("_", "-"), tone)


def _from(figure: Worked) -> Value:
    if isinstance(figure, Unsaid):
        return Value(path_words(figure.path)) if figure.path else Value(say("see the reason"))
    unique = {input_.path: input_ for input_ in figure.inputs}
    return several([(path_words(path), _input(input_)) for path, input_ in unique.items()], say("nothing recorded"))


def _input(input_: Input) -> Value:
    return Value(say_again(input_.said))


def _how(figure: Worked, page: str) -> Value:
    href = addresses.relative(addresses.method_page(figure.method), page) if figure.method else ""
    if isinstance(figure, Unsaid):
        return Value(say("how it would be worked out"), href=href)
    sources = [Labelled("", _source(key)) for key in dict.fromkeys(figure.sources)]
    # Letters of a formula are no words of any language; one that is told in words is said in the page's.
    lang = "" if isinstance(figure.formula, Later) else "en"
    parts = (Labelled("", Value(say_again(figure.formula), href=href, lang=lang)), *sources)
    parts += (Labelled("", Value(say(_ROUNDED[figure.rounded]))),)
    return Value("; ".join(part.value.text for part in parts), parts=parts)


def _source(key: str) -> Value:
    source = CITATIONS.get(key)
    if source is None:
        return Value(say("common practice"))
    return Value(source.title, href=f"#source-{key}", lang="en")


def _sources(figure: Worked) -> tuple[str, ...]:
    return figure.sources if isinstance(figure, Figure) else ()


def _citation(key: str, source: Source) -> Row:
    """Titles are names: they stay in their language."""
    where = ", ".join(part for part in (source.publisher, source.section) if part)
    cells = (Value(source.title, lang="en"), Value(where, lang="en"), tell(source.standing))
    return Row(cells, f"source-{key}")


def path_words(path: Path) -> str:
    """A path of the record, of the station or of the line-up in words."""
    if path and path[0] == "station":
        return say("station: {what}", what=label_of(path[1:], Station))
    if path and path[0] == "entry":
        return say("line-up: {what}", what=label_of(path[1:], Entry))
    return label_of(path)


def worked(site: Site, airframe: Airframe, entry: Entry | None = None, day: Day | None = None) -> Told:
    """Everything that is worked out of an airframe at this station and of its slot in a line-up, once a site."""
    key = (id(airframe), id(entry))
    if key not in site.kept:
        site.kept[key] = tuple(worked_out(Case(airframe, site.station, entry, day, site.as_of)))
    return cast(Told, site.kept[key])


def differing(told: Told, other: Told) -> Iterator[tuple[Topic, tuple[Worked, ...]]]:
    """The figures of ``told`` that ``other`` has otherwise or not at all: what a tail or a slot changes."""
    known = {figure.id: figure for _, worked in other for figure in worked}
    for topic, worked in told:
        if kept := tuple(figure for figure in worked if not _alike(figure, known.get(figure.id))):
            yield topic, kept


def _alike(figure: Worked, other: Worked | None) -> bool:
    if isinstance(figure, Figure) and isinstance(other, Figure):
        return figure.value == other.value and figure.caution == other.caution
    return isinstance(figure, Unsaid) and isinstance(other, Unsaid) and figure.reason == other.reason
