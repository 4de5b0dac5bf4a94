"""What the station has decided: cordons, reserve and factors, drills, cranes, tools; figures with conversions."""

from __future__ import annotations

from collections.abc import Iterator

from hardpoint.findings import Path
from hardpoint.pages import addresses
from hardpoint.pages.site import Page, Site
from hardpoint.pages.telling import in_full, tell
from hardpoint.pages.terms import label_of, name_words, pattern_words, spoken_path, term
from hardpoint.pages.view import Line, Lines, Row, Section, SheetPage, Table, Value
from hardpoint.pages.written import as_written
from hardpoint.records.known import entries, said
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
    for key in keys:
        if key == "breathing_rates":
            yield from _rates(station)
        elif key in _COUNTS:
            yield from _counts(station, key)
        else:
            yield from _told(station, key)


_COUNTS = ("unfit_also", "unfit_over_water", "unfit_when")


def _told(station: Station, key: str) -> Iterator[Row]:
    """One row an answer; what is listed in plain words stands in one row, a load beside its radius."""
    listed: dict[Path, list[str]] = {}
    for path, value in values_of(getattr(station, key), (key,)):
        if path[0] == "cranes" and "table" in path:
            if path[-1] == "load":
                yield _load(station, path)
        elif isinstance(path[-1], int):
            listed.setdefault(path[:-1], []).append(tell(value, path).text)
        else:
            yield from _whole(listed)
            yield Row((Value(_label(path)), tell(value, path)))
    yield from _whole(listed)


def _whole(listed: dict[Path, list[str]]) -> Iterator[Row]:
    yield from (Row((Value(_label(path)), Value(", ".join(words)))) for path, words in listed.items())
    listed.clear()


def _label(path: Path) -> str:
    return spoken_path(path, Station, start=1 if len(path) > 1 else 0)


def _load(station: Station, path: Path) -> Row:
    crane = entries(station.cranes)[str(path[1])]
    line = crane.table[int(path[3])]
    radius = in_full(tell(line.radius, (*path[:-1], "radius")))
    label = say("{crane}, at a radius of {radius}", crane=name_words(str(path[1])), radius=radius)
    return Row((Value(label), tell(line.load, path)))


def _rates(station: Station) -> Iterator[Row]:
    """Rates by words, the lowest first: their places in the list say nothing."""
    rates = said(station.breathing_rates)
    if rates is None:
        yield Row((Value(label_of(("breathing_rates",), Station)), tell(station.breathing_rates)))
        return
    ordered = sorted(rates, key=lambda rate: rate.si[0])
    for at, rate in enumerate(ordered):
        ends = {0: mark("lowest rate"), len(ordered) - 1: mark("highest rate")}
        label = mark("the only rate") if len(ordered) == 1 else ends.get(at, mark("rate between"))
        yield Row((Value(say(label)), tell(rate, ("breathing_rates", at))))


def _counts(station: Station, key: str) -> Iterator[Row]:
    """What makes an entry unfit, in words."""
    for what in getattr(station, key):
        label = term(what) if key == "unfit_when" else pattern_words(what)
        told = say("makes an entry unfit") if key == "unfit_when" else say("makes an entry unfit while it is unknown")
        yield Row((Value(label), Value(told)))
