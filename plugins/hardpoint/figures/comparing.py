"""Two airframes aligned act by act: what is added, missing, reversed, in another order, elsewhere, of another feel.

Only what was recorded is compared, in closed words: ways, kinds, sides, order. An unknown on either side is a
difference nobody can rule out; two records without one have no recorded difference, which does not make them the same.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from typing import Literal

from hardpoint.records.airframe import Airframe
from hardpoint.records.known import NonValue, entries
from hardpoint.records.places import Place
from hardpoint.records.ways import Step, opposed
from hardpoint.words import mark

Matter = Literal["opening", "shutdown", "freeing"]
MATTERS: tuple[Matter, ...] = ("opening", "shutdown", "freeing")
How = Literal[
    "added", "missing", "reversed", "re-ordered", "other way", "other place", "other feel", "UNKNOWN", "other order"
]
HOW_WORDS: Mapping[How, str] = {
    "added": mark("only there"),
    "missing": mark("only here"),
    "reversed": mark("REVERSED: the opposite way"),
    "re-ordered": mark("SAME MOVEMENTS, OTHER ORDER"),
    "other way": mark("moved another way"),
    "other place": mark("at another place"),
    "other feel": mark("another kind of handle"),
    "UNKNOWN": mark("UNKNOWN on one side or both"),
    "other order": mark("met in another order"),
}
Act = tuple[str, str, str]
"""Verb, way, from where a turn is seen."""


@dataclass(frozen=True)
class Item:
    """One handle, control or tie as it is compared: ``key`` pairs it with its counterpart on the other airframe."""

    id: str
    key: str
    acts: tuple[Act, ...]
    place: str
    kind: str

    @property
    def open(self) -> bool:
        """True where its way, its kind or its side is unknown: then it is like nothing."""
        return NonValue.UNKNOWN.value in (self.place, self.kind, *(part for act in self.acts for part in act))


@dataclass(frozen=True)
class Unlike:
    """One difference: how, and the ids of the two items ("" where there is none)."""

    matter: Matter
    how: How
    key: str
    here: str
    there: str


def items(airframe: Airframe, matter: Matter) -> tuple[Item, ...]:
    """What is compared of a matter, in the order of the record; things of one key are told apart by their order."""
    found = tuple(_ITEMS[matter](airframe))
    met: Counter[str] = Counter()
    numbered = []
    for item in found:
        met[item.key] += 1
        numbered.append(Item(item.id, f"{item.key} {met[item.key]}", item.acts, item.place, item.kind))
    return tuple(numbered)


def differences(here: Airframe, there: Airframe) -> tuple[Unlike, ...]:
    """Every recorded difference in opening, shutdown and freeing, in the order in which a crew meets it."""
    return tuple(found for matter in MATTERS for found in _between(here, there, matter))


Signature = tuple[tuple[str, tuple[Act, ...], str], ...]


def signature(airframe: Airframe, matter: Matter) -> Signature | None:
    """What airframes with no recorded difference have alike; None where something of it is unknown or not recorded.

    Places are left out: they are never alike to the hand's width.
    """
    found = items(airframe, matter)
    if not found or _left_open(airframe, matter) or any(item.open for item in found):
        return None
    return tuple((item.key, item.acts, item.kind) for item in found)


def _left_open(airframe: Airframe, matter: Matter) -> bool:
    """True where the record does not say whether it has listed everything."""
    if matter == "freeing":
        lists: list[object] = [seat.ties for seat in airframe.seats.values()]
    else:
        lists = [airframe.exits if matter == "opening" else airframe.controls]
    return any(
        listed is NonValue.UNKNOWN or (isinstance(listed, Mapping) and NonValue.UNKNOWN in listed.values())
        for listed in lists
    )


def _between(here: Airframe, there: Airframe, matter: Matter) -> Iterator[Unlike]:
    if _left_open(here, matter) or _left_open(there, matter):
        yield Unlike(matter, "UNKNOWN", matter, "", "")
    ours, theirs = items(here, matter), items(there, matter)
    by_key = {item.key: item for item in theirs}
    mine = {item.key for item in ours}
    for item in ours:
        other = by_key.get(item.key)
        if other is None:
            yield Unlike(matter, "missing", item.key, item.id, "")
            continue
        for how in _unlike(item, other):
            yield Unlike(matter, how, item.key, item.id, other.id)
    yield from (Unlike(matter, "added", item.key, "", item.id) for item in theirs if item.key not in mine)
    common = [item.key for item in ours if item.key in by_key]
    if common != [item.key for item in theirs if item.key in mine]:
        yield Unlike(matter, "other order", matter, "", "")


def _unlike(one: Item, other: Item) -> Iterator[How]:
    if one.open or other.open:
        yield "UNKNOWN"
    if one.acts != other.acts and not _unknown(one.acts) and not _unknown(other.acts):
        yield _acts(one.acts, other.acts)
    if one.kind != other.kind and NonValue.UNKNOWN.value not in (one.kind, other.kind):
        yield "other feel"
    if one.place != other.place and NonValue.UNKNOWN.value not in (one.place, other.place):
        yield "other place"


def _unknown(acts: Sequence[Act]) -> bool:
    return any(NonValue.UNKNOWN.value in act for act in acts)


def _acts(one: Sequence[Act], other: Sequence[Act]) -> How:
    if Counter(one) == Counter(other):
        return "re-ordered"
    if len(one) == len(other) and all(
        a == b or (a[0] == b[0] and a[2] == b[2] and opposed(a[1], b[1])) for a, b in zip(one, other, strict=True)
    ):
        return "reversed"
    return "other way"


def _exits(airframe: Airframe) -> Iterator[Item]:
    for name, exit_ in entries(airframe.exits).items():
        acts = _steps(exit_.steps)
        key = f"{exit_.way_in}, {exit_.from_}"
        yield Item(name, key, acts, _where(exit_.place), str(exit_.kind or ""))


def _controls(airframe: Airframe) -> Iterator[Item]:
    for name, control in entries(airframe.controls).items():
        way = (("", str(control.off_is), str(control.seen_from or "")),)
        yield Item(name, control.function, way, _where(control.place), str(control.kind))


def _ties(airframe: Airframe) -> Iterator[Item]:
    for seat, name, tie in (
        (seat, name, tie) for seat, at in airframe.seats.items() for name, tie in entries(at.ties).items()
    ):
        yield Item(f"{seat}.{name}", str(tie.kind), _steps(tie.steps), "", str(tie.kind))


def _steps(steps: Sequence[Step] | NonValue) -> tuple[Act, ...]:
    if isinstance(steps, NonValue):
        return ((NonValue.UNKNOWN.value,) * 3,)
    return tuple((str(step.do), str(step.way or ""), str(step.seen_from or "")) for step in steps)


def _where(place: Place | NonValue) -> str:
    """The side, for a place has no closed words for more."""
    if isinstance(place, NonValue):
        return place.value
    return str(place.side or "")


_ITEMS: Mapping[Matter, Callable[[Airframe], Iterator[Item]]] = {
    "opening": _exits,
    "shutdown": _controls,
    "freeing": _ties,
}
