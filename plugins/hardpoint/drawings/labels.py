"""Numbers beside a drawing: each as near above or below its mark as it can stand without touching another one.

Each side of the drawing has a lane of one or two rows. Within a lane the numbers keep the order of their marks along
the sheet, so that no two leaders cross within it; their places move as little as possible (least squares under
a least distance, solved exactly by pooling neighbours).
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import accumulate, pairwise

Flat = tuple[float, float]

RADIUS = 11.0
"""Of the circle around a number."""
_ROW = 2 * RADIUS + 3
_BESIDE = 2 * RADIUS + 2
"""Least distance of two numbers in one row."""
_PASSING = RADIUS + 2.5
"""Least distance along the sheet where two rows alternate: a leader of the outer row passes between two inner ones."""


@dataclass(frozen=True)
class Label:
    """Where a number stands and where its leader bends: ``at`` is its centre, ``bend`` the edge of its lane."""

    index: int
    at: Flat
    bend: Flat


def rows_for(count: int, width: float) -> int:
    """Rows that a lane of a width needs for so many numbers. ValueError where even two rows cannot hold them."""
    if count * _BESIDE <= width:
        return 1
    if (count - 1) * _PASSING + 2 * RADIUS > width:
        raise ValueError(f"{count} numbers do not fit into two rows of {width:g} units")
    return 2


def lane_height(count: int, width: float) -> float:
    """Units that a lane takes; nothing where it has no number."""
    return 0.0 if count == 0 else rows_for(count, width) * _ROW + 4


def place(marks: Sequence[Flat], edge: float, outward: int, left: float, right: float) -> list[Label]:
    """Labels for the marks of one lane, in the order given.

    ``edge``: where the lane begins beside the drawing; ``outward`` -1: it goes towards the upper edge of the sheet, 1:
    towards the lower. ``left`` and ``right``: the ends between which a circle has to lie.
    """
    if not marks:
        return []
    rows = rows_for(len(marks), right - left)
    order = sorted(range(len(marks)), key=lambda index: (marks[index], index))
    apart = _BESIDE if rows == 1 else _PASSING
    spots = spread([marks[index][0] for index in order], apart, left + RADIUS, right - RADIUS)
    placed = {}
    for turn, (index, x) in enumerate(zip(order, spots, strict=True)):
        row = turn % rows
        y = edge + outward * (RADIUS + 2 + row * _ROW)
        placed[index] = Label(index, (x, y), (x, edge))
    return [placed[index] for index in range(len(marks))]


def place_words(
    marks: Sequence[Flat], widths: Sequence[float], edge: float, outward: int, left: float, right: float
) -> list[Label] | None:
    """The same for written labels of different widths, in two rows; None where they do not fit.

    The leader of an outer label passes between its inner neighbours, so that no line crosses a word.
    """
    order = sorted(range(len(marks)), key=lambda index: (marks[index], index))
    gaps = [max(widths[one], widths[other]) / 2 + 4 for one, other in pairwise(order)]
    if not order:
        return []
    low, high = left + widths[order[0]] / 2, right - widths[order[-1]] / 2
    if sum(gaps) > high - low:
        return None
    placed = {}
    for turn, (index, x) in enumerate(
        zip(order, spread_by([marks[i][0] for i in order], gaps, low, high), strict=True)
    ):
        y = edge + outward * (8 + turn % 2 * 16)
        placed[index] = Label(index, (x, y), (x, edge))
    return [placed[index] for index in range(len(marks))]


def spread(wanted: Sequence[float], apart: float, low: float, high: float) -> list[float]:
    """The nearest places to ``wanted`` (ascending) that are at least ``apart``, between ``low`` and ``high``."""
    return spread_by(wanted, [apart] * (len(wanted) - 1), low, high)


def spread_by(wanted: Sequence[float], gaps: Sequence[float], low: float, high: float) -> list[float]:
    """The nearest places to ``wanted`` (ascending), each at least its gap beyond the one before, within both ends.

    Least sum of squares: with u_i = x_i - (sum of the gaps before it) the distances become an order, u_i <= u_(i+1),
    which pooling adjacent violators solves exactly; the ends then clip. ValueError where there is not room enough.

    >>> spread_by([10, 11, 50], [20, 20], 0, 100)
    [0.5, 20.5, 50.0]
    """
    offsets = [0.0, *accumulate(gaps)][: len(wanted)]
    if offsets and offsets[-1] > high - low + 1e-9:
        raise ValueError(f"{len(wanted)} places over {offsets[-1]:g} units do not fit between {low:g} and {high:g}")
    pools: list[tuple[float, int]] = []  # of each: sum, count
    for value, offset in zip(wanted, offsets, strict=True):
        pools.append((value - offset, 1))
        while len(pools) > 1 and pools[-2][0] / pools[-2][1] > pools[-1][0] / pools[-1][1]:
            (total, count), (before, many) = pools.pop(), pools.pop()
            pools.append((before + total, many + count))
    means = [total / count for total, count in pools for _ in range(count)]
    last = high - offsets[-1] if offsets else high
    return [min(max(mean, low), last) + offset for mean, offset in zip(means, offsets, strict=True)]
