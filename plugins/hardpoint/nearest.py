"""The known word that a mistyped one is nearest to."""

from __future__ import annotations

import re
from collections.abc import Iterable
from difflib import SequenceMatcher

_LONGEST = 64


def did_you_mean(word: str, known: Iterable[str]) -> str:
    """The known word nearest to ``word``, or "" where none is near or ``word`` is known itself.

    Case, hyphens, underscores and spaces do not count; else one slip (a letter wrong, missing, too many, or two
    swapped) in up to 5 letters, two in up to 8, three in longer words. Of equals the one with the longer common parts
    wins, then the alphabet, so that the answer does not depend on the order of ``known``.
    """
    candidates = sorted(set(known))
    if len(word) > _LONGEST or word in candidates:
        return ""
    plain = _plain(word)
    limit = _allowed(len(plain))
    best, best_rank = "", (limit + 1, 0.0)
    for candidate in candidates:
        other = _plain(candidate)
        slips = _distance(plain, other, limit)
        if slips > limit or (slips and not _alike(plain, other)):
            continue
        rank = (slips, -SequenceMatcher(None, plain, other, autojunk=False).ratio())
        if rank < best_rank:
            best, best_rank = candidate, rank
    return best


def _plain(word: str) -> str:
    return re.sub(r"[-_\s]+", "", word.casefold())


def _allowed(length: int) -> int:
    return (length > 0) + (length > 5) + (length > 8)


def _alike(word: str, other: str) -> bool:
    """Two letters with one exchanged are another word (fs, bl, wl): only swapped ones are a slip."""
    return min(len(word), len(other)) > 2 or sorted(word) == sorted(other)


def _distance(word: str, other: str, limit: int) -> int:
    """Slips from one word to the other (optimal string alignment), or ``limit + 1`` as soon as there are more."""
    if abs(len(word) - len(other)) > limit:
        return limit + 1
    before: list[int] = []
    row = list(range(len(other) + 1))
    for i, letter in enumerate(word, 1):
        current = [i]
        for j, opposite in enumerate(other, 1):
            slips = min(row[j] + 1, current[-1] + 1, row[j - 1] + (letter != opposite))
            if i > 1 and j > 1 and letter == other[j - 2] and word[i - 2] == opposite:
                slips = min(slips, before[j - 2] + 1)
            current.append(slips)
        if min(current) > limit:
            return limit + 1
        before, row = row, current
    return row[-1]
