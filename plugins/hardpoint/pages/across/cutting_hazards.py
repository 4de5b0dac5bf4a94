"""Cutting hazards over all types: what a blade could meet, on which side, over which stretch, and the verdict there."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Literal

from hardpoint.figures.hazards import ANYWHERE, CutHazard, cut_hazards
from hardpoint.pages import addresses
from hardpoint.pages.across.items import own
from hardpoint.pages.addresses import relative
from hardpoint.pages.after import upper_side
from hardpoint.pages.board import Board, Head, Narrowing, Topic, board_page
from hardpoint.pages.shown import Shown, shown_tail, shown_type
from hardpoint.pages.site import Page, Site
from hardpoint.pages.telling import several, tell
from hardpoint.pages.terms import span_words, term, word
from hardpoint.pages.view import Value
from hardpoint.records.known import entries
from hardpoint.records.structure import Zone
from hardpoint.words import Later, say, say_again

ADDRESS = addresses.across_page("cutting-hazards")
_SIDES: tuple[Literal["left", "right"], ...] = ("left", "right")


@dataclass(frozen=True)
class Met:
    """One thing in the way of a blade, with all its stretches."""

    shown: Shown
    stretches: tuple[CutHazard, ...]

    @property
    def first(self) -> CutHazard:
        """What it is stands in each of its stretches alike."""
        return self.stretches[0]

    @property
    def certain(self) -> bool:
        """False where one stretch is only where it can be."""
        return all(stretch.certain for stretch in self.stretches)


def cutting_hazards_page(site: Site) -> Page:
    """One row a thing; what is unknown counts over its whole possible stretch."""
    board = Board(
        ADDRESS,
        say("Cutting hazards, all types"),
        say(
            "What is recorded behind the skin of the fuselage. A list from a drawing or a walk in part is not "
            "complete: something can lie behind. What nobody knows counts everywhere."
        ),
        say("Hazard"),
        say("{found} of {total} hazards"),
        (
            Topic("what", say("What"), lambda met: Value(_what(met))),
            Topic("side", say("Side"), lambda met: Value(_sides(met))),
            Topic("stretch", say("Stretch"), _stretch),
            Topic("left", say("Cut there, left"), lambda met: _verdict(met, "left")),
            Topic("right", say("Cut there, right"), lambda met: _verdict(met, "right")),
        ),
        (
            Narrowing("kind", say("Kind"), lambda met: (term(met.first.kind),)),
            Narrowing("known", say("Route and place"), lambda met: (say("stated") if met.certain else say("UNKNOWN"),)),
        ),
    )
    return board_page(site, board, [(_head(met), met) for met in _all(site)])


def _all(site: Site) -> Iterator[Met]:
    for type_ in site.fleet.types.values():
        yield from _met(shown_type(type_))
        for tail in site.fleet.tails_of(type_.id):
            yield from (met for met in _met(shown_tail(tail)) if own(met.shown, met.first.path))


def _met(shown: Shown) -> Iterator[Met]:
    by_path: dict[tuple[str | int, ...], list[CutHazard]] = {}
    for hazard in cut_hazards(shown.airframe):
        by_path.setdefault(hazard.path, []).append(hazard)
    yield from (Met(shown, tuple(stretches)) for stretches in by_path.values())


def _head(met: Met) -> Head:
    shown, path = met.shown, met.first.path
    home = addresses.tail_page(shown.tail) if shown.tail else addresses.type_page(shown.type_id)
    name = f"{shown.name} {shown.tail}".strip()
    words = " ".join([*shown.airframe.also_called, shown.type_id])
    return Head(
        hazard_row(shown, path),
        f"{name}: {term(met.first.kind)}",
        relative(f"{home}#{addresses.anchor(path)}", ADDRESS),
        words,
        say("other than on its type") if shown.tail else "",
    )


def hazard_row(shown: Shown, path: tuple[str | int, ...]) -> str:
    """The anchor of a hazard's row: the tail's own where it differs, else its type's."""
    whose = shown.id if own(shown, path) else shown.type_id
    return "-".join([whose, *(str(part).replace("_", "-").replace(" ", "-") for part in path)])


def _what(met: Met) -> str:
    """The author's own words where the record has some, else what the program made of its kind and name."""
    what = met.first.what
    return say_again(what) if isinstance(what, Later) else word(what)


def _sides(met: Met) -> str:
    sides = {side for stretch in met.stretches for side in stretch.sides}
    ours = (("left", term("left")), ("right", term("right")), ("centre", term("centre")))
    ends = (("top", upper_side(met.shown.airframe)), ("floor", say("floor side")))
    return ", ".join(words for side, words in (*ours, *ends) if side in sides)


def _stretch(met: Met) -> Value:
    spans = list(dict.fromkeys(span_words(stretch.fs) for stretch in met.stretches))
    if any(stretch.fs == ANYWHERE for stretch in met.stretches):
        return Value(say("UNKNOWN: counts over the whole fuselage"), "unknown")
    text = "FS " + "; ".join(spans)
    return Value(text) if met.certain else Value(say("UNKNOWN within {where}", where=text), "unknown")


def _verdict(met: Met, side: Literal["left", "right"]) -> Value:
    """The verdicts of the zones that it can lie in; the side it does not lie on is told as well: people cut there."""
    zones = [
        (name, zone)
        for name, zone in entries(met.shown.airframe.zones).items()
        if any(stretch.fs.overlaps(zone.fs) for stretch in met.stretches)
    ]
    return several(((name.replace("-", " "), _said(zone, side)) for name, zone in zones), say("in no zone"))


def _said(zone: Zone, side: Literal["left", "right"]) -> Value:
    return tell(getattr(zone, side).cut)
