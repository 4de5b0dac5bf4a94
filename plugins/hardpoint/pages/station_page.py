"""What the station has decided: cordons, reserve and factors, drills, cranes, tools; figures with conversions."""

from __future__ import annotations

from collections.abc import Iterator

from hardpoint.pages import addresses
from hardpoint.pages.site import Page, Site
from hardpoint.pages.telling import tell
from hardpoint.pages.terms import label_of
from hardpoint.pages.view import Line, Lines, Row, Section, SheetPage, Table, Value
from hardpoint.pages.written import as_written
from hardpoint.records.station import Station
from hardpoint.records.walk import fields_of, values_of
from hardpoint.words import mark, say

_PLAIN = ("name", "data", "address", "commander_words", "lead")

_LEAD = mark(
    "Nothing here has a hidden default: what the station has not stated is UNKNOWN; no figure is made from it."
)


def station_page(site: Site) -> Page:
    """The station's own record; where there is none, the page says so."""
    page = addresses.STATION
    title = say("What this station has decided")
    lead = say(_LEAD)
    sections = _sections(site, site.station) if site.station else _none()
    view = SheetPage(site.frame(page, title), title, lead, sections, (), site.cautions)
    return Page(page, title, "sheet.html", view)


def _none() -> tuple[Section, ...]:
    return (
        Section("station", say("Station"), (Lines((Line(say("the station's record"), say("UNKNOWN"), "unknown"),)),)),
    )


def _sections(site: Site, station: Station) -> tuple[Section, ...]:
    plain = Table("station-plain", say("Who and where"), (say("What"), say("Answer")), tuple(_rows(station, _PLAIN)))
    decided = [_decided(station, key) for key, _ in fields_of(station) if key not in _PLAIN]
    written = as_written(site.fleet.house.written.tree, Station) if site.fleet.house else ()
    return (
        Section("station", station.name, (plain,), say("Station")),
        Section("decided", say("Decided"), tuple(table for table in decided if table.rows), say("Decided")),
        Section("as-written", say("The record as it was written"), written, say("As written")),
    )


def _decided(station: Station, key: str) -> Table:
    anchor, title = f"station-{key.replace('_', '-')}", label_of((key,), Station).capitalize()
    return Table(anchor, title, (say("What"), say("Decided")), tuple(_rows(station, (key,))))


def _rows(station: Station, keys: tuple[str, ...]) -> Iterator[Row]:
    for path, value in values_of(station):
        if path[0] in keys:
            yield Row((Value(label_of(path, Station, start=1 if len(path) > 1 else 0)), tell(value, path)))
