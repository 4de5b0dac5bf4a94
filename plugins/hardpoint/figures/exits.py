"""Where a rocket or a seat flies when the airframe does not lie as it was built."""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from typing import Literal

Towards = Literal["aft", "forward", "pilot's left", "pilot's right"]
_HEADINGS: Mapping[str, tuple[float, float]] = {
    "forward": (1.0, 0.0),
    "aft": (-1.0, 0.0),
    "pilot's right": (0.0, 1.0),
    "pilot's left": (0.0, -1.0),
}
_PLUMB = 1e-9
"""Part of the axis that lies level, below which it points straight up or down."""
_DECIMALS = 9
"""Of a degree: beyond them a float's last bits would make 360 deg of 0 deg."""


def axis(towards: Towards, raised_deg: float) -> tuple[float, float, float]:
    """The axis of a device in the airframe, out of how a record tells it.

    Equation:
        a = (cos r cos h, cos r sin h, sin r)

    Symbols:
        r: raised from the plane of the floor towards the canopy, deg; below 0 towards the floor
        h: heading in that plane: forward 0 deg, pilot's right 90, aft 180, pilot's left 270
        a: axis of length 1: forward, pilot's right, cabin top

    Source: common practice

    Range: raised -90 to 90 deg; a heading out of the four, otherwise ValueError.

    Example: aft and raised by 60 deg.

        >>> [round(part, 3) for part in axis("aft", 60)]
        [-0.5, 0.0, 0.866]
    """
    if towards not in _HEADINGS:
        raise ValueError(f"a device points forward, aft, to pilot's left or to pilot's right, not {towards!r}")
    if not -90 <= raised_deg <= 90:
        raise ValueError(f"raised is to be -90 to 90 deg, got {raised_deg:g} deg")
    forward, right = _HEADINGS[towards]
    level, up = math.cos(math.radians(raised_deg)), math.sin(math.radians(raised_deg))
    return forward * level + 0.0, right * level + 0.0, up


def direction(axis: Sequence[float], attitude: Sequence[float]) -> tuple[float | None, float]:
    """Bearing and elevation of an axis of the airframe while the airframe lies rolled and pitched.

    Equation:
        v = Ry(-p) Rx(r) a
        bearing = atan2(v right, v ahead)
        elevation = asin(v up / |a|)

    Symbols:
        a: axis in the airframe: forward, pilot's right, cabin top
        r: roll right, deg: 90 lies on the right side, 180 inverted, -90 on the left side
        p: nose down, deg, after the roll: so the nose keeps its bearing
        v: the same axis over the ground: ahead of the nose, to its right, up
        bearing: deg clockwise from the nose, seen from above; None straight up or down
        elevation: deg above the level; below 0 into the ground

    Source: common practice

    Range: an axis of a length above 0, roll -180 to 180 deg, nose down -90 to 90 deg, otherwise ValueError. The axis is
    that of a straight mount: a bent one points anywhere, so that a bearing is the middle of a sector and no arrow.

    Example: 60 deg up and aft, the airframe on its right side: level, behind its right.

        >>> direction(axis("aft", 60), (90, 0))
        (120.0, 0.0)
    """
    roll, nose_down = attitude
    length = math.hypot(*axis)
    if len(axis) != 3 or not (0 < length < math.inf):
        raise ValueError("an axis has three parts: forward, right, cabin top; not all of them 0")
    if not (-180 <= roll <= 180 and -90 <= nose_down <= 90):
        raise ValueError(f"roll is -180 to 180 deg and nose down -90 to 90 deg, got {roll:g} and {nose_down:g} deg")
    ahead, right, up = (part / length for part in _pitched(_rolled(axis, roll), nose_down))
    elevation = math.degrees(math.asin(max(-1.0, min(1.0, up))))
    if math.hypot(ahead, right) < _PLUMB:
        return None, math.copysign(90.0, up)
    bearing = round(math.degrees(math.atan2(right, ahead)) % 360, _DECIMALS) % 360
    return bearing, round(elevation, _DECIMALS) + 0.0


def _rolled(axis: Sequence[float], roll_deg: float) -> tuple[float, float, float]:
    forward, right, top = axis
    sine, cosine = math.sin(math.radians(roll_deg)), math.cos(math.radians(roll_deg))
    return forward, right * cosine + top * sine, top * cosine - right * sine


def _pitched(axis: tuple[float, float, float], nose_down_deg: float) -> tuple[float, float, float]:
    forward, right, top = axis
    sine, cosine = math.sin(math.radians(nose_down_deg)), math.cos(math.radians(nose_down_deg))
    return forward * cosine + top * sine, right, top * cosine - forward * sine


def run_inside(height_m: float, raised_deg: float) -> float:
    """How far along the fuselage something flies before it is out of it, at most.

    Equation:
        s = h / tan(|r|)

    Symbols:
        h: height of the fuselage that it may have to cross, m
        r: raised from the plane of the floor, deg
        s: stretch along the fuselage, m; without end where it flies along it

    Source: common practice

    Range: a height of 0 or more, raised -90 to 90 deg, otherwise ValueError.

    Example: 1.1 m, raised by 60 deg.

        >>> round(run_inside(1.1, 60), 3)
        0.635
    """
    if not (0 <= height_m < math.inf and -90 <= raised_deg <= 90):
        raise ValueError(f"a height of 0 or more and -90 to 90 deg, got {height_m:g} m and {raised_deg:g} deg")
    slope = math.tan(math.radians(abs(raised_deg)))
    return height_m / slope if slope else math.inf
