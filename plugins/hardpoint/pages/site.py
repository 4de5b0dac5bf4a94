"""What all pages share: the fleet, its findings, the date, the edition, the frame around every page."""

from __future__ import annotations

import datetime as dt
from dataclasses import dataclass

from hardpoint.findings import Finding
from hardpoint.pages.addresses import HOME, relative, root
from hardpoint.pages.view import Frame, Link
from hardpoint.records.fleet import Fleet
from hardpoint.records.station import Station

CAUTIONS = (
    "The incident commander, local procedures and licensed people decide. This page only informs them.",
    "What is recorded can be wrong or out of date, and damage changes everything: look and feel before you act.",
    'UNKNOWN is a hazard until somebody has looked. A blank is not "nothing there".',
)


@dataclass(frozen=True)
class Site:
    """Everything that pages are made from."""

    fleet: Fleet
    findings: tuple[Finding, ...]
    as_of: dt.date
    edition: str
    banner: str = ""

    @property
    def station(self) -> Station | None:
        """The station's record, None where it could not be read."""
        return self.fleet.house.station if self.fleet.house else None

    @property
    def name(self) -> str:
        """The station's name for the head of each page."""
        return self.station.name if self.station else "Hardpoint"

    @property
    def invented(self) -> bool:
        """True where the station says that its data is invented."""
        return self.station is not None and self.station.data == "invented"

    def frame(self, page: str, title: str, *trail: tuple[str, str]) -> Frame:
        """The frame of a page; ``trail`` leads back, as (words, address)."""
        links = (Link("Line-up", relative(HOME, page)), *(Link(text, relative(target, page)) for text, target in trail))
        return Frame(
            title, self.name, root(page), self.edition, self.as_of.isoformat(), self.invented, self.banner, links
        )

    @property
    def cautions(self) -> tuple[str, ...]:
        """The usual cautions, the station's own word on who decides first."""
        station = self.station
        return (station.commander_words, *CAUTIONS[1:]) if station else CAUTIONS


@dataclass(frozen=True)
class Page:
    """A page to be rendered: address, title, template, view."""

    address: str
    title: str
    template: str
    view: object
