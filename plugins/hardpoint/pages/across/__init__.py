"""Pages across types: one topic over the whole fleet, each row linked to its place, each place to its row."""

from __future__ import annotations

from collections.abc import Iterator

from hardpoint.pages.across.anchor_points import anchor_points_page
from hardpoint.pages.across.canopies import canopies_page
from hardpoint.pages.across.cutting_hazards import cutting_hazards_page
from hardpoint.pages.across.pressure_bottles import pressure_bottles_page
from hardpoint.pages.across.shutdown_controls import shutdown_controls_page
from hardpoint.pages.site import Page, Site

__all__ = ["across_pages"]


def across_pages(site: Site) -> Iterator[Page]:
    """All five."""
    yield anchor_points_page(site)
    yield cutting_hazards_page(site)
    yield pressure_bottles_page(site)
    yield shutdown_controls_page(site)
    yield canopies_page(site)
