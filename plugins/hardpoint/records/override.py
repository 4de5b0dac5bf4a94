"""Laying a tail's differences over its type's record, as text, before anything is interpreted.

``here: nothing`` removes a whole entry (an exit, a bottle). Under a key of a part it is the word itself: nothing lies
beyond off, nothing stays live.
"""

from __future__ import annotations

import copy
from collections.abc import Iterator
from dataclasses import dataclass, replace
from typing import Literal

from hardpoint.findings import Finding, Path, Related, dotted
from hardpoint.nearest import did_you_mean
from hardpoint.records.airframe import Airframe
from hardpoint.records.fleet import Override, Written
from hardpoint.records.known import NonValue, Tree
from hardpoint.records.locate import model_at
from hardpoint.records.problems import RecordRule
from hardpoint.records.tail import NOTHING, Difference, Tail
from hardpoint.records.trees import in_words, value_at

_MOST_LISTED = 8


@dataclass(frozen=True)
class Clash:
    """A difference that does not fit its type; ``key`` is the key of the difference that the finding points at."""

    index: int
    rule: RecordRule
    key: str
    read: str
    expected: str
    example: str = ""
    message: str = ""


def parts(path: str) -> Path:
    """``exits.sill-handle.steps`` as a path. Landmark names may hold spaces, never dots."""
    return tuple(path.split("."))


def overrides_of(tail: Tail, tree: dict[str, Tree]) -> tuple[Override, ...]:
    """A tail's differences beside ``tree``, its type's record; none where they are unknown."""
    if isinstance(tail.differs, NonValue):
        return ()
    return tuple(_override(index, entry, tree) for index, entry in enumerate(tail.differs))


def _override(index: int, entry: Difference, tree: dict[str, Tree]) -> Override:
    at = parts(entry.at)
    kind: Literal["added", "removed", "changed"] = "changed"
    if value_at(tree, at) is None:
        kind = "added"
    elif entry.here == NOTHING and model_at(Airframe, at[:-1]) is None:
        kind = "removed"
    return Override(at, entry.type_says, entry.here, entry.because or "", entry.before or "", index, kind)


def lay_over(tree: dict[str, Tree], overrides: tuple[Override, ...]) -> tuple[dict[str, Tree], list[Clash]]:
    """The type's tree with the differences in it, and those that do not fit (then nothing is laid over).

    The type's own tree stays untouched.
    """
    clashes = [clash for override in overrides for clash in _misfits(tree, override)] + list(_twice(overrides))
    result = copy.deepcopy(tree)
    if not clashes:
        clashes = [clash for override in overrides for clash in _apply(result, override)]
    return result, clashes


def _apply(result: dict[str, Tree], override: Override) -> Iterator[Clash]:
    parent = value_at(result, override.at[:-1])
    assert isinstance(parent, dict)  # else it was a misfit
    key = str(override.at[-1])
    if override.kind == "removed":
        del parent[key]
    elif override.before:
        yield from _insert(parent, key, override)
    else:
        parent[key] = copy.deepcopy(override.here)


def _insert(parent: dict[str, Tree], key: str, override: Override) -> Iterator[Clash]:
    if override.before not in parent or override.kind != "added":
        expected = "for something added, an id that stands beside it"
        example = next(iter(parent), "")
        yield Clash(override.index, "difference-no-place", "before", override.before, expected, example)
        return
    entries = list(parent.items())
    place = list(parent).index(override.before)
    parent.clear()
    parent.update([*entries[:place], (key, copy.deepcopy(override.here)), *entries[place:]])


def _misfits(tree: dict[str, Tree], override: Override) -> Iterator[Clash]:
    """At most one reason why a difference cannot stand."""
    at, dots = override.at, dotted(override.at)
    now, parent = value_at(tree, at), value_at(tree, at[:-1])
    for depth in range(1, len(at)):
        if isinstance(value_at(tree, at[:depth]), list):
            whole = dotted(at[:depth])
            expected = f"the path of the whole list, {whole}, with all of its items under here"
            yield Clash(override.index, "difference-in-a-list", "at", dots, expected, whole)
            return
    if not isinstance(parent, dict) or (now is None and override.type_says != NOTHING):
        yield _no_place(tree, override)
    elif now is not None and now != override.type_says:
        said, expected = in_words(override.type_says), f"what the type says now at {dots}"
        yield Clash(override.index, "difference-outdated", "type_says", said, expected, in_words(now))
    elif now is None and override.here == NOTHING:
        expected = "something that this aircraft has"
        yield Clash(override.index, "difference-says-nothing", "here", NOTHING, expected, "towards canopy")
    elif now is not None and now == override.here and override.kind != "removed":
        expected = f"something else than the type says at {dots}; otherwise leave this difference out"
        yield Clash(override.index, "difference-says-nothing", "here", in_words(override.here), expected)


def _no_place(tree: dict[str, Tree], override: Override) -> Clash:
    """Which part of the path is not there, and what it may have been meant to be."""
    at = override.at
    depth = next(depth for depth in range(len(at)) if value_at(tree, at[: depth + 1]) is None)
    beside = value_at(tree, at[:depth])
    known = list(beside) if isinstance(beside, dict) else []
    guess = did_you_mean(str(at[depth]), known)
    where = f"under {dotted(at[:depth])}" if depth else "in the type's record"
    listed = ", ".join(known[:_MOST_LISTED]) + (", ..." if len(known) > _MOST_LISTED else "")
    hint = f'did you mean "{guess}"?' if guess else f"known there: {listed or 'nothing'}"
    message = f'there is no "{at[depth]}" {where}; {hint}'
    if depth == len(at) - 1 and override.type_says != NOTHING and isinstance(beside, dict):
        message += ' (for something added, write "type_says: nothing")'
    example = dotted((*at[:depth], guess, *at[depth + 1 :])) if guess else ""
    return Clash(
        override.index, "difference-no-place", "at", dotted(at), "a path of the type's record", example, message
    )


def _twice(overrides: tuple[Override, ...]) -> Iterator[Clash]:
    for later, override in enumerate(overrides):
        for earlier in overrides[:later]:
            short, long = sorted((earlier.at, override.at), key=len)
            if long[: len(short)] == short:
                expected = f"one difference for one place: put it together with the one at {dotted(earlier.at)}"
                yield Clash(override.index, "difference-twice", "at", dotted(override.at), expected)
                break


def told_at_tail(finding: Finding, own: Written) -> Finding:
    """A problem that a tail's differences cause elsewhere in its record, told at its list of differences.

    ``own`` is the tail's own file. The type's record, in which the path lies, is as it should be.
    """
    if finding.file == own.file:
        return finding
    at = own.where(("differs",))
    there = Related(finding.file, finding.line, finding.path, "in the record of the type")
    return replace(
        finding,
        file=at.file,
        line=at.line,
        column=at.column,
        path="differs",
        message=f"with these differences, {finding.path or 'this aircraft'}: {finding.message}",
        related=(there, *finding.related),
    )
