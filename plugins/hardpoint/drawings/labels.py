"""Numbers beside a drawing: each as near above or below its mark as it can stand without touching another one.

Each side of the drawing has a lane of one or two rows. Within a lane the numbers keep the order of their marks along
the sheet, so that no two leaders cross within it; their places move as little as possible (least squares under
a least distance, solved exactly by pooling neighbours).
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

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


def spread(wanted: Sequence[float], apart: float, low: float, high: float) -> list[float]:
    """The nearest places to ``wanted`` (ascending) that are at least ``apart``, between ``low`` and ``high``.

    Least sum of squares: with u_i = x_i - i apart the distances become an order, u_i <= u_(i+1), which pooling adjacent
    violators solves exactly; the bounds then clip. ValueError where there is not room enough.
    """
    if (len(wanted) - 1) * apart > high - low + 1e-9:
        raise ValueError(f"{len(wanted)} places {apart:g} apart do not fit between {low:g} and {high:g}")
    pools: list[list[float]] = []  # of each: sum, count
    for index, value in enumerate(wanted):
        pools.append([value - index * apart, 1])
        while len(pools) > 1 and pools[-2][0] / pools[-2][1] > pools[-1][0] / pools[-1][1]:
            total, count = pools.pop()
            pools[-1] = [pools[-1][0] + total, pools[-1][1] + count]
    means = [total / count for total, count in pools for _ in range(int(count))]
    last = high - (len(wanted) - 1) * apart
    return [min(max(mean, low), last) + index * apart for index, mean in enumerate(means)]
