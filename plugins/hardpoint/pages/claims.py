"""The event page's claims: each holds, or the page names who breaks it, where and how."""

from __future__ import annotations

from collections.abc import Iterator

from hardpoint.figures.claims import Breach, breaches
from hardpoint.pages import addresses
from hardpoint.pages.addresses import relative
from hardpoint.pages.entries import Flown, all_flown, day_name
from hardpoint.pages.site import Site
from hardpoint.pages.terms import as_text, label_of
from hardpoint.pages.view import Line, Lines, Section
from hardpoint.records.event import Claim, Event
from hardpoint.words import say


def claims_section(site: Site, event: Event, page: str) -> Section:
    """Every claim against every entry."""
    blocks = tuple(
        Lines(tuple(_checked(site, event, claim, page)), f"claim-{name}", f'"{claim.says}"')
        for name, claim in event.claims.items()
    )
    return Section("claims", say("Claims, checked"), blocks, say("Claims"))


def _checked(site: Site, event: Event, claim: Claim, page: str) -> Iterator[Line]:
    found = False
    for day_id, day in event.days.items():
        for one in all_flown(site, day):
            for line in _breaks(one, claim, day_name(day_id), page):
                found = True
                yield line
    if not found:
        yield Line(say("no entry breaks it, by the records"), say("Holds:"))


def _breaks(one: Flown, claim: Claim, day: str, page: str) -> Iterator[Line]:
    """One line an entry that does not hold to the claim; it leads to the first place that breaks it."""
    wrong, places = breaches(one.shown.airframe, claim.every, claim.expects)
    who = say("{day} {number}, {aircraft}, breaks it:", day=day, number=one.number, aircraft=one.called)
    if not places:
        yield Line(
            say("the record has nothing at {path}", path=claim.every), who, "caution", relative(one.address, page)
        )
    elif wrong:
        told = "; ".join(_told(breach, claim.every) for breach in wrong)
        yield Line(told, who, "caution", relative(f"{one.address}#{addresses.anchor(wrong[0].path)}", page))


def _told(breach: Breach, every: str) -> str:
    """What stands there, under the ids that the claim left open: ``harness: rotary buckle``."""
    open_ids = [part for part, want in zip(breach.path, every.split("."), strict=True) if want == "*"]
    where = ", ".join(str(part).replace("-", " ") for part in open_ids) or label_of(breach.path)
    return f"{where}: {as_text(breach.found, breach.path)}"
