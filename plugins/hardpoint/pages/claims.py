"""The event page's claims: the verdict in words, what was expected, who breaks it and by what, who fits."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from hardpoint.figures.claims import Breach, breaches
from hardpoint.pages import addresses
from hardpoint.pages.addresses import relative
from hardpoint.pages.differences import part_of
from hardpoint.pages.entries import Flown, all_flown, day_name
from hardpoint.pages.site import Site
from hardpoint.pages.terms import as_text, first_capital, label_of, name_words, pattern_words
from hardpoint.pages.view import Block, Line, Lines, Section
from hardpoint.records.event import Claim, Event
from hardpoint.words import say, say_count


@dataclass(frozen=True)
class _Checked:
    """One entry under a claim: what breaks it, and how many places of its record the claim is about."""

    one: Flown
    day: str
    wrong: tuple[Breach, ...]
    places: int

    @property
    def name(self) -> str:
        """``Saturday 1, Vostrelle Jinx QQ-VJA``."""
        return say("{day} {number}, {aircraft}", day=self.day, number=self.one.number, aircraft=self.one.called)

    @property
    def breaks(self) -> bool:
        """A record that has nothing there does not bear out a claim about it."""
        return bool(self.wrong) or not self.places


def claims_section(site: Site, event: Event, page: str) -> Section:
    """Every claim against every entry."""
    blocks = tuple(
        block for name, claim in event.claims.items() for block in _claim(site, event, f"claim-{name}", claim, page)
    )
    return Section("claims", say("Claims, checked"), blocks, say("Claims"))


def _claim(site: Site, event: Event, id_: str, claim: Claim, page: str) -> Iterator[Block]:
    checked = [
        _Checked(one, day_name(day_id), *breaches(one.shown.airframe, claim.every, claim.expects, claim.among))
        for day_id, day in event.days.items()
        for one in all_flown(site, day)
    ]
    breaking = [entry for entry in checked if entry.breaks]
    fitting = [entry for entry in checked if not entry.breaks]
    lines = [_verdict(len(breaking), len(checked)), _expected(claim)]
    lines += [_breaks(entry, claim, page) for entry in breaking]
    lines += [_fits(entry, claim, page) for entry in fitting]
    yield Lines((*lines, *_about(claim)), id_, f'"{claim.says}"')


def _verdict(breaking: int, total: int) -> Line:
    """In words, before anything else."""
    if not total:
        return Line(say("nothing is entered yet"), say("Cannot be told:"), "caution")
    if not breaking:
        return Line(say("no entry breaks it, by the records; look at each all the same"), say("Holds:"))
    told = say_count(
        breaking, "{count} of {total} entries breaks it", "{count} of {total} entries break it", total=total
    )
    return Line(told, say("Does not hold:"), "caution")


def _expected(claim: Claim) -> Line:
    word = as_text(claim.expects, tuple(claim.every.split(".")))
    return Line(say("{what}, at: {where}", what=word, where=pattern_words(claim.every)), say("Expected:"))


def _about(claim: Claim) -> Iterator[Line]:
    """What was compared at all, and who says it: after the answer, for whoever wants to know how it came about."""
    if claim.among:
        path = tuple(claim.every.split("."))
        yield Line(", ".join(as_text(kind, path) for kind in claim.among), say("Compared was only:"))
    if claim.said_by:
        yield Line(claim.said_by, say("Said by:"))


def _fits(entry: _Checked, claim: Claim, page: str) -> Line:
    places = say_count(entry.places, "{count} place compared", "{count} places compared")
    part = part_of(tuple(claim.every.split(".")))
    return Line(places, say("{entry}, fits:", entry=entry.name), href=relative(f"{entry.one.address}#{part}", page))


def _breaks(entry: _Checked, claim: Claim, page: str) -> Line:
    """One line an entry that does not hold to the claim; it leads to the first place that breaks it."""
    who = say("{entry}, breaks it:", entry=entry.name)
    if not entry.wrong:
        told = say("the record has nothing of it at {where}", where=pattern_words(claim.every))
        return Line(told, who, "caution", relative(entry.one.address, page))
    found: dict[str, list[str]] = {}
    for breach in entry.wrong:
        found.setdefault(as_text(breach.found, breach.path), []).append(_where(breach, claim.every))
    told = "; ".join(f"{first_capital(what)}: {', '.join(where)}" for what, where in found.items())
    place = addresses.anchor(entry.wrong[0].path)
    return Line(told, who, "caution", relative(f"{entry.one.address}#{place}", page))


def _where(breach: Breach, every: str) -> str:
    """The ids that the claim left open: ``front, harness``."""
    open_ids = [part for part, want in zip(breach.path, every.split("."), strict=False) if want == "*"]
    return " ".join(name_words(str(part)) for part in open_ids) or label_of(breach.path)
