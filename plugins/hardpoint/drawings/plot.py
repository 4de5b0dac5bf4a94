"""A plot of a few lines over one axis, as an engineer draws it: hairline axes with figures, words at the lines.

Pure: points in, SVG text out. The lowest value of either axis is 0, so that heights compare by eye.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from html import escape

from hardpoint.drawings.geometry import Flat
from hardpoint.drawings.sheet import WIDTH, number, way

_LEFT, _RIGHT, _TOP, _BOTTOM = 44.0, 10.0, 20.0, 34.0
_HEIGHT = 190.0


@dataclass(frozen=True)
class Curve:
    """A line through points (x, y); ``limit``: a level that is not to be passed, drawn broken."""

    words: str
    points: tuple[tuple[float, float], ...]
    limit: bool = False


def plot(curves: Sequence[Curve], x_words: str, y_words: str, label: str) -> str:
    """SVG text. ValueError where there is no point at all."""
    points = [point for curve in curves for point in curve.points]
    if not points:
        raise ValueError("a plot needs points")
    most_x, most_y = (_round_up(max(point[axis] for point in points)) for axis in (0, 1))
    wide, high = WIDTH - _LEFT - _RIGHT, _HEIGHT - _TOP - _BOTTOM

    def at(x: float, y: float) -> tuple[float, float]:
        return _LEFT + x / most_x * wide, _TOP + high - y / most_y * high

    parts = [
        f'<path class="axis" d="M{_LEFT:g},{_TOP:g}V{_TOP + high:g}H{_LEFT + wide:g}"/>',
        *_ticks(most_x, most_y, at),
        f'<text class="end" x="{WIDTH - _RIGHT:g}" y="{_HEIGHT - 4:g}" text-anchor="end">{escape(x_words)}</text>',
        f'<text class="end" x="4" y="12">{escape(y_words)}</text>',
        *(part for curve in curves for part in _drawn(curve, at)),
    ]
    size = f'viewBox="0 0 {WIDTH:g} {_HEIGHT:g}" width="{WIDTH:g}" height="{_HEIGHT:g}"'
    head = f'<svg class="map plot" role="img" aria-label="{escape(label)}" {size} xmlns="http://www.w3.org/2000/svg">'
    return "\n".join([head, *parts, "</svg>"])


def _round_up(value: float) -> float:
    """The next 1, 2 or 5 times a power of ten, or a fifth of it between."""
    if value <= 0:
        return 1.0
    step = 10.0 ** math.floor(math.log10(value))
    return next(step * times for times in (1, 1.5, 2, 3, 4, 5, 6, 8, 10) if value <= step * times * (1 + 1e-9))


def _ticks(most_x: float, most_y: float, at: Callable[[float, float], Flat]) -> Iterator[str]:
    for share in (0.0, 0.25, 0.5, 0.75, 1.0):
        x, y = at(most_x * share, 0.0)
        yield f'<path class="axis" d="M{number(x)},{number(y)}v4"/>'
        yield f'<text class="tick" x="{number(x)}" y="{number(y + 16)}" text-anchor="middle">{most_x * share:g}</text>'
        x, y = at(0.0, most_y * share)
        yield f'<path class="axis" d="M{number(x)},{number(y)}h-4"/>'
        yield f'<text class="tick" x="{number(x - 6)}" y="{number(y + 4)}" text-anchor="end">{most_y * share:g}</text>'


def _drawn(curve: Curve, at: Callable[[float, float], Flat]) -> Iterator[str]:
    placed = [at(*point) for point in curve.points]
    yield f'<path class="{"limit broken" if curve.limit else "curve"}" d="{way(placed)}"/>'
    x, y = placed[0] if curve.limit else placed[len(placed) // 2]
    yield f'<text class="word" x="{number(x + 6)}" y="{number(y - 5)}">{escape(curve.words)}</text>'
