"""What an event leaves open: whom to ask before each day, then the gaps of the line-up itself."""

from __future__ import annotations

from hardpoint.findings import Path
from hardpoint.pages import addresses
from hardpoint.pages.entries import day_name
from hardpoint.pages.gaps_of import event_unknowns, found_in, found_table, gaps_sheet
from hardpoint.pages.site import Page, Site
from hardpoint.pages.terms import spoken_path
from hardpoint.pages.view import Line, Lines
from hardpoint.pages.whom_to_ask import ask_section
from hardpoint.records.event import Event
from hardpoint.records.fleet import LineUp
from hardpoint.words import say


def event_gaps_page(site: Site, event_id: str, line_up: LineUp) -> Page:
    """Whom to ask day by day, then what the line-up itself leaves open."""
    home = addresses.event_page(event_id)
    page = addresses.gaps_of(home)
    asked = tuple(ask_section(site, day_id, day, page) for day_id, day in line_up.event.days.items())
    lines = [Line(where_in_event(path), say("UNKNOWN:"), "unknown") for path in event_unknowns(line_up)]
    nothing = Line(say("nothing is left open in the line-up itself"))
    found = found_table(found_in(site, line_up.written.file), where_in_event)
    blocks = (Lines(tuple(lines) or (nothing,), "event"), *found)
    return gaps_sheet(site, page, line_up.event.name, home, blocks, asked)


def where_in_event(path: Path) -> str:
    """``days.saturday.entries.5.over_water`` -> ``Saturday, number 5, over water``."""
    if path[0] != "days" or len(path) < 5 or path[2] != "entries":
        return spoken_path(path, Event)
    rest = spoken_path(path, Event, start=4)
    return say("{day}, number {number}, {what}", day=day_name(str(path[1])), number=path[3], what=rest)
