"""The event page's claims: each holds, or the page names who breaks it."""

from __future__ import annotations

from hardpoint.figures.claims import breaches
from hardpoint.pages.site import Site
from hardpoint.pages.telling import as_text, label_of
from hardpoint.pages.view import Line, Lines, Section
from hardpoint.records.event import Claim, Entry, Event
from hardpoint.words import say


def claims_section(site: Site, event: Event, page: str) -> Section:
    """Every claim against every entry."""
    blocks = tuple(
        Lines(tuple(_checked(site, event, claim)), f"claim-{name}", f'"{claim.says}"')
        for name, claim in event.claims.items()
    )
    return Section("claims", say("Claims, checked"), blocks, say("Claims"))


def _checked(site: Site, event: Event, claim: Claim) -> list[Line]:
    lines = []
    for day_id, day in event.days.items():
        for number, entry in day.entries.items():
            wrong = _breaks(site, entry, claim)
            if wrong:
                lines.append(
                    Line(wrong, say("{day} {number} breaks it:", day=day_id.capitalize(), number=number), "caution")
                )
    return lines or [Line(say("no entry breaks it, by the records"), say("Holds:"))]


def _breaks(site: Site, entry: Entry, claim: Claim) -> str:
    aircraft = site.fleet.tails.get(str(entry.tail))
    airframe = aircraft.airframe if aircraft else site.fleet.types[entry.type].airframe
    wrong, places = breaches(airframe, claim.every, claim.expects)
    if not places:
        return say("the record has nothing at {path}", path=claim.every)
    return "; ".join(f"{label_of(breach.path)}: {as_text(breach.found, breach.path)}" for breach in wrong)
