"""What all pages share: the fleet, its findings, the date, the edition, the frame around every page."""

from __future__ import annotations

import datetime as dt
from dataclasses import dataclass, field, replace

from hardpoint.findings import Finding
from hardpoint.pages.addresses import HOME, relative, root
from hardpoint.pages.view import Frame, Link
from hardpoint.records.fleet import Fleet
from hardpoint.records.station import Station
from hardpoint.words import language, mark, say

CAUTIONS = (
    mark("The incident commander, local procedures and licensed people decide. This page only informs them."),
    mark("What is recorded can be wrong or out of date, and damage changes everything: look and feel before you act."),
    mark('UNKNOWN is a hazard until somebody has looked. A blank is not "nothing there".'),
)


@dataclass(frozen=True)
class Site:
    """Everything that pages are made from."""

    fleet: Fleet
    findings: tuple[Finding, ...]
    as_of: dt.date
    edition: str
    banner: str = ""
    kept: dict[tuple[int, int], object] = field(default_factory=dict, compare=False, repr=False)
    """What was worked out of an airframe and a slot and is shown on several pages; see ``pages.workings``."""

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

    def held_back_by(self, finding: Finding) -> Site:
        """The same site, saying on every page that a newer state of the records has an error and is not shown."""
        at = f"{finding.file}, line {finding.line}: {finding.path}: {finding.message}"
        return replace(self, banner=say("The last good state is shown: {finding}", finding=at))

    @property
    def around(self) -> dict[str, object]:
        """What the frame of every page shows, also of those that are not made here."""
        return {
            "site": self.name,
            "edition": self.edition,
            "as_of": self.as_of.isoformat(),
            "invented": self.invented,
            "banner": self.banner,
            "lang": language().tag,
            "direction": language().direction,
        }

    def frame(self, page: str, title: str, *trail: tuple[str, str]) -> Frame:
        """The frame of a page; ``trail`` leads back, as (words, address)."""
        links = (
            Link(say("Line-up"), relative(HOME, page)),
            *(Link(text, relative(target, page)) for text, target in trail),
        )
        return Frame(
            title, self.name, root(page), self.edition, self.as_of.isoformat(), self.invented, self.banner, links
        )

    @property
    def cautions(self) -> tuple[str, ...]:
        """The usual cautions, the station's own word on who decides first."""
        station = self.station
        said = tuple(map(say, CAUTIONS))
        return (station.commander_words, *said[1:]) if station else said


@dataclass(frozen=True)
class Page:
    """A page to be rendered: address, title, template, view."""

    address: str
    title: str
    template: str
    view: object
