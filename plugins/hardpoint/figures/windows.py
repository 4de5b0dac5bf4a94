"""Where a blade can go through a skin without meeting what lies behind it."""

from __future__ import annotations

import math
from collections.abc import Iterable

Stretch = tuple[float, float]


def cutting_windows(
    span_mm: Stretch, blocked: Iterable[tuple[float, float, float]], jaw_mm: float
) -> list[tuple[float, float]]:
    """The stretches of a skin that are left between everything behind it, each as long as the tool is wide.

    Equation:
        windows = [S1, S2] without the union of [fi - mi, ti + mi]
        kept where to - from >= j

    Symbols:
        S1, S2: the skin, from and to, mm
        fi, ti: thing i behind it, from and to, mm; without end where nobody knows how far it goes
        mi: distance that is kept from it on either side, mm
        j: width that the tool needs, mm
        windows: from and to, mm, foremost first

    Source: common practice

    Range: every stretch from a lower to a higher station, the skin's ends finite, distances and width 0 or more,
    otherwise ValueError. It knows one line of stations: height and side are for whoever lists what is behind. A window
    says that nothing recorded lies there, not that nothing does.

    Example: a skin of 1000 mm, a cable at 300 with 50 mm kept, a tank from 700 to 1200 with 100 mm kept; the tool needs
    240 mm.

        >>> cutting_windows((0, 1000), [(300, 300, 50), (700, 1200, 100)], 240)
        [(0, 250), (350, 600)]
    """
    first, last = span_mm
    if not (-math.inf < first <= last < math.inf):
        raise ValueError(f"a skin goes from a lower to a higher station, got {first:g} to {last:g} mm")
    if not 0 <= jaw_mm < math.inf:
        raise ValueError(f"the width of a tool is 0 mm or more, got {jaw_mm:g} mm")
    windows = []
    for start, end in sorted(_kept_from(*thing) for thing in blocked):
        windows.append((first, min(start, last)))
        first = max(first, end)
    windows.append((first, last))
    return [(start, end) for start, end in windows if end > start and end - start >= jaw_mm]


def _kept_from(start: float, end: float, margin: float) -> Stretch:
    """A thing with the distance that is kept from it."""
    if not start <= end:
        raise ValueError(f"a thing behind the skin goes from a lower to a higher station, got {start:g} to {end:g} mm")
    if not 0 <= margin < math.inf:
        raise ValueError(f"the distance kept is 0 mm or more, got {margin:g} mm")
    return start - margin, end + margin


def thickness_to_spare(thickest_mm: float, thickness_mm: float) -> float:
    """What a tool has left of the thickest that it goes through, in mm.

    Equation:
        s = T - d

    Symbols:
        T: thickest that the tool goes through, mm
        d: thickness of the skin, pane or tube, mm
        s: what is left, mm

    Source: common practice

    Range: both 0 or more, and the skin no thicker than what the tool goes through, otherwise ValueError.

    Example: a pane of 3 mm and a tool for 5 mm.

        >>> thickness_to_spare(5, 3)
        2
    """
    if not (0 <= thickest_mm < math.inf and 0 <= thickness_mm < math.inf):
        raise ValueError(f"thicknesses are 0 mm or more, got {thickest_mm:g} and {thickness_mm:g} mm")
    if thickness_mm > thickest_mm:
        raise ValueError(f"the tool goes through {thickest_mm:g} mm, not through {thickness_mm:g} mm")
    return thickest_mm - thickness_mm
