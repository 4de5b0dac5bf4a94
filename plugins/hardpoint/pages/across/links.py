"""The way from a place on a type's or tail's page to its row on the pages across types."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from hardpoint.figures.hazards import cut_hazards
from hardpoint.findings import Path
from hardpoint.pages import addresses
from hardpoint.pages.across import anchor_points, canopies, cutting_hazards, pressure_bottles, shutdown_controls
from hardpoint.pages.across.items import row_of
from hardpoint.pages.shown import Shown
from hardpoint.pages.terms import label_of, term
from hardpoint.pages.view import Link, Links, Section
from hardpoint.records.known import NonValue
from hardpoint.words import mark, say

_OF_SECTION = {
    "open": ("exits", canopies.ADDRESS, mark("The same on other types: ways in")),
    "shut-down": ("controls", shutdown_controls.ADDRESS, mark("The same on other types: shutdown controls")),
    "stay-clear": ("bottles", pressure_bottles.ADDRESS, mark("The same on other types: pressure bottles")),
    "load-points": ("load_points", anchor_points.ADDRESS, mark("The same on other types: anchor points")),
}


def with_links(section: Section, shown: Shown, page: str = "") -> Section:
    """The section with a list of links at its end, one for each of its things that has a row across types."""
    page = page or (addresses.tail_page(shown.tail) if shown.tail else addresses.type_page(shown.type_id))
    if section.id == "cut":
        links = tuple(_hazards(shown, page))
        title = say("The same on other types: cutting hazards")
    elif section.id in _OF_SECTION:
        key, address, words = _OF_SECTION[section.id]
        links = tuple(_entries(shown, key, address, page))
        title = say(words)
    else:
        return section
    return replace(section, blocks=(*section.blocks, Links(f"{section.id}-across", title, links))) if links else section


def _entries(shown: Shown, section: str, address: str, page: str) -> Iterator[Link]:
    held = getattr(shown.airframe, section)
    paths: list[Path] = [(section,)] if isinstance(held, NonValue) else [(section, name) for name in held]
    for path in paths:
        target = f"{address}#{row_of(shown, path)}"
        yield Link(label_of(path, start=min(1, len(path) - 1)).replace("-", " "), addresses.relative(target, page))


def _hazards(shown: Shown, page: str) -> Iterator[Link]:
    told: dict[Path, str] = {}
    for hazard in cut_hazards(shown.airframe):
        told.setdefault(hazard.path, term(hazard.kind))
    for path, kind in told.items():
        target = f"{cutting_hazards.ADDRESS}#{cutting_hazards.hazard_row(shown, path)}"
        yield Link(
            f"{kind}: {label_of(path, start=min(1, len(path) - 1)).replace('-', ' ')}", addresses.relative(target, page)
        )
