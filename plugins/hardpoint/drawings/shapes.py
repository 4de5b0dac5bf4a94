"""What a hand finds, as a few strokes around a centre: path data in the units of a sketch.

Each shape takes the direction in which the part is at its end (to the right, towards the lower edge) and gives strokes
of an SVG path. They show the kind of part, not the part: looks and size stand in words.
"""

from __future__ import annotations

from collections.abc import Callable

from hardpoint.drawings.course import Flat

X, Y = 80.0, 42.0
"""The centre of every shape, in units of the sketch, below the words on its top."""


class Pen:
    """Points around the centre: ``u`` along a direction, ``v`` across it."""

    def __init__(self, along: Flat) -> None:
        self.along = along

    def at(self, u: float, v: float = 0.0) -> str:
        """A point as SVG writes it."""
        x, y = self.along
        return f"{X + u * x - v * y:.3g},{Y + u * y + v * x:.3g}"

    def line(self, *points: tuple[float, float]) -> str:
        """Strokes from point to point."""
        return "M" + "L".join(self.at(*point) for point in points)

    def ring(self, radius: float, u: float = 0.0, v: float = 0.0) -> str:
        """A circle."""
        arc = f"A{radius:g},{radius:g} 0 1 1 "
        return f"M{self.at(u - radius, v)}{arc}{self.at(u + radius, v)}{arc}{self.at(u - radius, v)}"

    def box(self, length: float, width: float, u: float = 0.0) -> str:
        """A rectangle, long along the direction."""
        half, side = length / 2, width / 2
        return self.line((u - half, -side), (u + half, -side), (u + half, side), (u - half, side)) + "z"


def _toggle(pen: Pen) -> str:
    return pen.ring(9) + pen.line((0, -3), (20, -5), (20, 5), (0, 3))


def _rocker(pen: Pen) -> str:
    return pen.box(36, 20) + pen.line((0, -10), (0, 10)) + pen.line((5, -6), (14, -6)) + pen.line((5, 6), (14, 6))


def _key(pen: Pen) -> str:
    return pen.ring(8) + pen.line((-4, 0), (4, 0)) + pen.ring(16) + pen.line((8, 0), (16, 0))


def _rotary_switch(pen: Pen) -> str:
    return pen.ring(16) + pen.line((-16, -3), (16, -3)) + pen.line((-16, 3), (16, 3))


def _rotary_selector(pen: Pen) -> str:
    return pen.ring(4) + pen.line((-10, -5), (12, -5), (20, 0), (12, 5), (-10, 5)) + "z"


def _lever(pen: Pen) -> str:
    return pen.box(40, 6) + pen.ring(7, 14)


def _cock(pen: Pen) -> str:
    return pen.ring(8) + pen.line((4, -4), (22, -3), (22, 3), (4, 4)) + pen.line((0, -20), (0, -8), (0, 8), (0, 20))


def _knob(pen: Pen) -> str:
    return pen.ring(14) + pen.ring(9)


def _push_pull(pen: Pen) -> str:
    return pen.ring(13) + pen.ring(3)


def _button(pen: Pen) -> str:
    return pen.box(34, 34) + pen.ring(10)


def _valve(pen: Pen) -> str:
    return pen.ring(16) + pen.line((-16, 0), (16, 0)) + pen.line((0, -16), (0, 16)) + pen.ring(4)


def _loop(pen: Pen) -> str:
    return f"M{pen.at(-14)}C{pen.at(2, -18)} {pen.at(22, -12)} {pen.at(22)}S{pen.at(2, 18)} {pen.at(-14)}" + pen.box(
        8, 6, -16
    )


def _tap(pen: Pen) -> str:
    return pen.ring(7) + pen.line((0, -3), (18, -3), (18, 3), (0, 3)) + pen.line((-9, -20), (-9, 20))


def _bar(pen: Pen) -> str:
    return pen.box(10, 46)


def _pull_handle(pen: Pen) -> str:
    return pen.line((-12, -16), (8, -16), (8, 16), (-12, 16)) + pen.line((-12, -20), (-12, 20))


def _flush_handle(pen: Pen) -> str:
    return pen.box(26, 52) + pen.box(8, 44, 4)


def _slide_latch(pen: Pen) -> str:
    return pen.box(44, 16) + pen.box(12, 16, 12) + pen.line((12, -5), (12, 5))


def _crank(pen: Pen) -> str:
    return pen.ring(5) + pen.line((4, -2), (20, -2)) + pen.line((4, 2), (20, 2)) + pen.ring(4, 22)


SHAPES: dict[str, Callable[[Pen], str]] = {
    "toggle": _toggle,
    "rocker": _rocker,
    "key": _key,
    "rotary switch": _rotary_switch,
    "rotary selector": _rotary_selector,
    "lever": _lever,
    "cock": _cock,
    "knob": _knob,
    "push-pull": _push_pull,
    "button": _button,
    "valve": _valve,
    "loop": _loop,
    "tap": _tap,
    "bar": _bar,
    "pull handle": _pull_handle,
    "flush handle": _flush_handle,
    "slide latch": _slide_latch,
    "crank": _crank,
}
"""Kind of part, as records name it, to its strokes."""

_ROUND = ("knob", "push-pull", "button", "valve", "rotary switch", "key", "cock", "tap")
_OPEN = ("loop", "pull handle", "bar", "flush handle", "crank")


def from_the_side(kind: str) -> str:
    """The part on its stem, as it stands out of a panel that is seen edge-on at the left."""
    pen = Pen((1.0, 0.0))
    stem = pen.line((-34, -3), (-4, -3)) + pen.line((-34, 3), (-4, 3))
    if kind in _ROUND:
        return stem + pen.box(12, 32, 2)
    if kind in _OPEN:
        return pen.line((-34, -14), (6, -14), (6, 14), (-34, 14))
    return stem + pen.ring(8, 4)
