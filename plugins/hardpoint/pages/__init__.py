"""What each page says, as frozen data; the only place that knows addresses."""

from __future__ import annotations

from collections.abc import Iterator

from hardpoint.pages.across import across_pages
from hardpoint.pages.brief import brief_pages
from hardpoint.pages.compare_page import compare_page
from hardpoint.pages.crew import tail_crew_page, type_crew_page
from hardpoint.pages.drill import drill_page, type_drill_page
from hardpoint.pages.event_figures import event_figures_page
from hardpoint.pages.figures_page import figures_page
from hardpoint.pages.gaps_of import tail_gaps_page, type_gaps_page
from hardpoint.pages.gaps_of_event import event_gaps_page
from hardpoint.pages.gaps_page import gaps_page
from hardpoint.pages.lift_page import lift_page
from hardpoint.pages.lineup import event_page, home_page
from hardpoint.pages.not_in_the_book import not_in_the_book_page
from hardpoint.pages.recognise import recognise_page
from hardpoint.pages.site import Page, Site
from hardpoint.pages.station_page import station_page
from hardpoint.pages.structure_page import structure_page
from hardpoint.pages.things import anchors
from hardpoint.pages.two_at_once import two_at_once_page
from hardpoint.pages.unlike import type_unlike_page, unlike_page

__all__ = ["Page", "Site", "all_pages", "anchors"]


def all_pages(site: Site) -> Iterator[Page]:
    """Every generated page of the site."""
    yield home_page(site)
    yield compare_page(site)
    yield from across_pages(site)
    yield not_in_the_book_page(site)
    yield drill_page(site)
    yield recognise_page(site)
    yield unlike_page(site)
    yield gaps_page(site)
    yield station_page(site)
    for type_ in site.fleet.types.values():
        yield type_crew_page(site, type_)
        yield structure_page(site, type_)
        yield lift_page(site, type_)
        yield figures_page(site, type_)
        yield type_drill_page(site, type_)
        yield type_gaps_page(site, type_)
        yield type_unlike_page(site, type_)
    for tail in site.fleet.tails.values():
        yield tail_crew_page(site, tail)
        yield tail_gaps_page(site, tail)
    for event_id, line_up in site.fleet.events.items():
        yield event_page(site, event_id, line_up)
        yield from brief_pages(site, event_id)
        yield event_figures_page(site, event_id)
        yield two_at_once_page(site, event_id)
        yield event_gaps_page(site, event_id, line_up)
