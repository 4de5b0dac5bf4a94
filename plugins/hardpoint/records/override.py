"""Laying a tail's differences over its type's record, as text, before anything is interpreted."""

from __future__ import annotations

import copy
from collections.abc import Iterator
from dataclasses import dataclass

from hardpoint.findings import Path, dotted
from hardpoint.nearest import did_you_mean
from hardpoint.records.fleet import Override
from hardpoint.records.known import Tree
from hardpoint.records.tail import NOTHING
from hardpoint.records.trees import in_words, value_at


@dataclass(frozen=True)
class Clash:
    """A difference that does not fit its type; ``key`` is the key of the difference that the finding points at."""

    index: int
    rule: str
    key: str
    read: str
    expected: str
    example: str


def parts(path: str) -> Path:
    """``exits.sill-handle.steps`` as a path. Landmark names may hold spaces, never dots."""
    return tuple(path.split("."))


def lay_over(tree: dict[str, Tree], overrides: tuple[Override, ...]) -> tuple[dict[str, Tree], list[Clash]]:
    """The type's tree with the differences in it, and those that do not fit. The type's own tree stays untouched."""
    result = copy.deepcopy(tree)
    clashes = [clash for override in overrides for clash in _apply(result, tree, override)]
    return result, clashes + list(_twice(overrides))


def _apply(result: dict[str, Tree], tree: dict[str, Tree], override: Override) -> Iterator[Clash]:
    clash = _fit(tree, override)
    if clash:
        yield clash
        return
    parent = value_at(result, override.at[:-1])
    if not isinstance(parent, dict):
        yield _no_place(tree, override)
        return
    key = str(override.at[-1])
    if override.here == NOTHING:
        del parent[key]
    elif override.before:
        yield from _insert(parent, key, override)
    else:
        parent[key] = copy.deepcopy(override.here)


def _insert(parent: dict[str, Tree], key: str, override: Override) -> Iterator[Clash]:
    if override.before not in parent or override.kind != "added":
        yield Clash(
            override.index,
            "difference-no-place",
            "before",
            override.before,
            "for something added, an id that stands beside it",
            next(iter(parent), ""),
        )
        return
    entries = list(parent.items())
    place = list(parent).index(override.before)
    parent.clear()
    parent.update([*entries[:place], (key, copy.deepcopy(override.here)), *entries[place:]])


def _no_place(tree: dict[str, Tree], override: Override) -> Clash:
    """Which part of the path is not there, and what it may have been meant to be."""
    depth = next(depth for depth in range(len(override.at)) if value_at(tree, override.at[: depth + 1]) is None)
    beside = value_at(tree, override.at[:depth])
    known = list(beside) if isinstance(beside, dict) else []
    guess = did_you_mean(str(override.at[depth]), known)
    example = (
        dotted((*override.at[:depth], guess, *override.at[depth + 1 :])) if guess else "controls.magneto-left.off_is"
    )
    where = f"under {dotted(override.at[:depth])}" if depth else "in the type's record"
    return Clash(
        override.index,
        "difference-no-place",
        "at",
        dotted(override.at),
        f'a path of the type\'s record: there is no "{override.at[depth]}" {where}',
        example,
    )


def _fit(tree: dict[str, Tree], override: Override) -> Clash | None:
    now = value_at(tree, override.at)
    dots = dotted(override.at)
    if value_at(tree, override.at[:-1]) is None:
        return _no_place(tree, override)
    if now is None and override.type_says != NOTHING:
        return Clash(
            override.index,
            "difference-outdated",
            "type_says",
            in_words(override.type_says),
            f'what the type says at {dots}, which is nothing: say "nothing", or mend the path',
            NOTHING,
        )
    if now is not None and now != override.type_says:
        return Clash(
            override.index,
            "difference-outdated",
            "type_says",
            in_words(override.type_says),
            f"what the type now says at {dots}",
            in_words(now),
        )
    if now is None and override.here == NOTHING:
        return Clash(
            override.index,
            "difference-says-nothing",
            "here",
            NOTHING,
            "something that this aircraft has",
            "towards canopy",
        )
    if now is not None and now == override.here:
        return Clash(
            override.index,
            "difference-says-nothing",
            "here",
            in_words(override.here),
            f"something else than the type says at {dots}; otherwise leave it out",
            "",
        )
    return None


def _twice(overrides: tuple[Override, ...]) -> Iterator[Clash]:
    for later, override in enumerate(overrides):
        for earlier in overrides[:later]:
            short, long = sorted((earlier.at, override.at), key=len)
            if long[: len(short)] == short:
                yield Clash(
                    override.index,
                    "difference-twice",
                    "at",
                    dotted(override.at),
                    f"one difference for one place: {dotted(earlier.at)} already covers it",
                    "",
                )
