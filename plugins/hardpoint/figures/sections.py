"""The fuselage between the sections of its outline: straight from one to the next."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import pairwise


def between_sections(known: Sequence[tuple[float, float]], fs: float) -> float:
    """What a section says (floor, top, half width) at a station between two of them; beyond the ends, the end's own.

    ``known``: pairs of station and value, ascending; two at one station are a step, of which the later counts beyond.

    >>> between_sections([(0, 100), (1000, 300)], 250)
    150.0
    """
    if fs <= known[0][0]:
        return known[0][1]
    for (start, first), (end, last) in pairwise(known):
        if fs <= end:
            return first + (last - first) * ((fs - start) / (end - start) if end > start else 1.0)
    return known[-1][1]
