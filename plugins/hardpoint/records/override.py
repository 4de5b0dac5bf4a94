"""Laying a tail's differences over its type's record, as text, before anything is interpreted.

``here: nothing`` removes a whole entry (an exit, a bottle). Under a key of a part it is the word itself: nothing lies
beyond off, nothing stays live.
"""

from __future__ import annotations

import copy
from collections.abc import Iterable, Iterator
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
    clashes = [
        clash for override in overrides for clash in (*_misfits(tree, override), *_misplaced(tree, override, overrides))
    ] + list(_twice(overrides))
    result = copy.deepcopy(tree)
    for override in () if clashes else overrides:
        _apply(result, override)
    return result, clashes


def _apply(result: dict[str, Tree], override: Override) -> None:
    parent = value_at(result, override.at[:-1])
    assert isinstance(parent, dict)  # else it was a misfit
    key = str(override.at[-1])
    if override.kind == "removed":
        del parent[key]
        return
    entries = list(parent.items())
    parent[key] = copy.deepcopy(override.here)
    if override.before:
        place = [name for name, _ in entries].index(override.before)
        ordered = [*entries[:place], (key, parent[key]), *entries[place:]]
        parent.clear()
        parent.update(ordered)


def _misplaced(tree: dict[str, Tree], override: Override, overrides: tuple[Override, ...]) -> Iterator[Clash]:
    """A ``before`` that leads nowhere: it names an entry of the type that stays, or one that was added further up."""
    if not override.before:
        return
    message = "this difference adds nothing, and what it changes keeps its place: leave before out"
    if override.kind == "added":
        above = override.at[:-1]
        parent = value_at(tree, above)
        there = [name for name in parent if _stays((*above, name), overrides)] if isinstance(parent, dict) else []
        there += [str(other.at[-1]) for other in overrides[: override.index] if _adds_beside(other, above)]
        if override.before in there:
            return
        message = f'there is no "{override.before}" beside it; known there: {_first(there)}'
    expected = "for something added, an id that stands beside it"
    yield Clash(override.index, "difference-no-place", "before", override.before, expected, "", message)


def _stays(at: Path, overrides: tuple[Override, ...]) -> bool:
    return not any(other.at == at and other.kind == "removed" for other in overrides)


def _adds_beside(other: Override, above: Path) -> bool:
    return other.kind == "added" and other.at[:-1] == above


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
        expected = "something that this aircraft has and the type has not"
        yield Clash(override.index, "difference-says-nothing", "here", NOTHING, expected)
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
    hint = f'did you mean "{guess}"?' if guess else f"known there: {_first(known)}"
    message = f'there is no "{at[depth]}" {where}; {hint}'
    if not guess and depth == len(at) - 1 and override.type_says != NOTHING and isinstance(beside, dict):
        message += ' (for something added, write "type_says: nothing")'
    example = dotted((*at[:depth], guess, *at[depth + 1 :])) if guess else ""
    return Clash(
        override.index, "difference-no-place", "at", dotted(at), "a path of the type's record", example, message
    )


def _first(names: Iterable[str]) -> str:
    listed = list(names)
    return ", ".join(listed[:_MOST_LISTED]) + (", ..." if len(listed) > _MOST_LISTED else "") if listed else "nothing"


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
