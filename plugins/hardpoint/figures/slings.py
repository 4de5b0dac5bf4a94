"""Sling legs between lift points and a hook: tensions, angles, the worst leg, and how the airframe hangs.

Points and hook are (aft, pilot's right, towards canopy) in m. The hook is plumb over the centre of gravity, so that
no moment is left and the legs have to carry the weight alone. The airframe is rigid and the legs do not stretch: with
four of them nobody knows how they share, and the worst of every feasible way counts.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from itertools import combinations

import numpy as np
import numpy.typing as npt

Spot = tuple[float, float, float]
_Vector = npt.NDArray[np.float64]
_NOISE = 1e-9
"""Of the weight: what a sum of forces may miss by, and what a tension below 0 is put down to."""
STEEPEST_DEG = 60.0
"""From the vertical: nothing is rated beyond (EN 13414-1:2003 table 4)."""


def leg_tensions(points_m: Sequence[Spot], hook_m: Spot, weight_n: float) -> list[float]:
    """Tension of each of two or three legs, N.

    Equation:
        sum_i T_i (h - p_i) / |h - p_i| = (0, 0, W)

    Symbols:
        p_i: lift point i, m
        h: hook, plumb over the centre of gravity, m
        W: weight, N
        T_i: tension of leg i, N

    Source: rigging-factors

    Range: two or three points, the hook above each, weight above 0, otherwise ValueError; ValueError too where no leg
    tensions balance the weight, or a leg would have to push: it is slack, and the others carry more.

    Example: 1000 lb on two legs at 60 degrees to the horizontal.

        >>> [round(leg) for leg in leg_tensions([(-1, 0, 0), (1, 0, 0)], (0, 0, 3 ** 0.5), 1000)]
        [577, 577]
    """
    if len(points_m) not in (2, 3):
        raise ValueError(f"two or three legs have one answer, {len(points_m)} do not: see the worst leg")
    tensions = _balanced(points_m, hook_m, weight_n)
    if tensions is None:
        raise ValueError("no tensions of these legs balance the weight: the hook is not over them")
    if min(tensions) < -_NOISE * weight_n:
        raise ValueError("a leg would be slack")
    return [max(leg, 0.0) for leg in tensions]


def worst_leg(points_m: Sequence[Spot], hook_m: Spot, weight_n: float) -> float:
    """The greatest tension that any leg can have, N: over every feasible way in which one to four legs share.

    Equation:
        max over S of max_i T_i(S)
        S: every pair and every three of the legs that balance the weight without pushing

    Symbols:
        S: the legs that carry, the others slack
        T_i(S): their tensions, N, as for two or three legs

    Source: us-navy-steelworker
    Source: en-13414-1

    Range: one to four points, the hook above each, weight above 0, otherwise ValueError; ValueError too where no legs
    balance the weight. The ways of sharing are a line between those in which a leg is slack, so that the worst is
    one of these.

    Example: 600 kg on four points of 2 m by 1 m, the hook 1.5 m above: a diagonal pair can carry all of it.

        >>> corners = [(-1, -0.5, 0), (-1, 0.5, 0), (1, -0.5, 0), (1, 0.5, 0)]
        >>> round(worst_leg(corners, (0, 0, 1.5), 600 * 9.80665))
        3669
    """
    if not 1 <= len(points_m) <= 4:
        raise ValueError(f"one to four points, not {len(points_m)}")
    ways = [_balanced(way, hook_m, weight_n) for size in (1, 2, 3) for way in combinations(points_m, size)]
    feasible = [max(way) for way in ways if way is not None and min(way) >= -_NOISE * weight_n]
    if not feasible:
        raise ValueError("no legs balance the weight without pushing: one is slack, or the hook is not over them")
    return max(feasible)


def _balanced(points_m: Sequence[Spot], hook_m: Spot, weight_n: float) -> list[float] | None:
    """Tensions that balance the weight exactly; None where there are none or more than one."""
    if weight_n <= 0:
        raise ValueError(f"a weight is above 0, got {weight_n:g} N")
    legs = np.array([_along(point, hook_m) for point in points_m]).T
    load = np.array([0.0, 0.0, weight_n])
    tensions, _, rank, _ = np.linalg.lstsq(legs, load, rcond=1e-12)
    if rank < len(points_m) or np.linalg.norm(legs @ tensions - load) > _NOISE * weight_n:
        return None
    return [float(tension) for tension in tensions]


def _along(point_m: Spot, hook_m: Spot) -> _Vector:
    leg = np.subtract(hook_m, point_m)
    if leg[2] <= 0:
        raise ValueError("the hook is to be above every point")
    return np.asarray(leg / np.linalg.norm(leg))


def angle_from_vertical(point_m: Spot, hook_m: Spot) -> float:
    """Angle of a leg from the vertical, degrees.

    Equation:
        b = acos((h_z - p_z) / |h - p|)

    Symbols:
        p: lift point, m
        h: hook, m
        b: angle from the vertical, degrees

    Source: en-13414-1

    Range: the hook above the point, otherwise ValueError. Beyond 60 degrees no leg is rated.

    Example: a leg that goes 1 m aside over a height of 1 m.

        >>> round(angle_from_vertical((1, 0, 0), (0, 0, 1)), 6)
        45.0
    """
    return math.degrees(math.acos(min(float(_along(point_m, hook_m)[2]), 1.0)))


def angle_from_axis(point_m: Spot, hook_m: Spot, axis: Spot) -> float:
    """Angle between a leg and the direction in which its point is made to be pulled, degrees: held against its cone.

    Equation:
        c = acos((h - p) . a / (|h - p| |a|))

    Symbols:
        p: lift point, m
        h: hook, m
        a: axis of the point, any length
        c: angle from the axis, degrees

    Source: common practice

    Range: the hook above the point, an axis that is not nothing, otherwise ValueError.

    Example: a leg 30 degrees from the vertical at an eye that points towards the canopy.

        >>> round(angle_from_axis((0, 0, 0), (1, 0, 3 ** 0.5), (0, 0, 1)), 6)
        30.0
    """
    length = math.hypot(*axis)
    if length == 0:
        raise ValueError("an axis has a direction")
    cosine = float(np.dot(_along(point_m, hook_m), axis)) / length
    return math.degrees(math.acos(max(-1.0, min(cosine, 1.0))))


def hang_attitude(points_m: Sequence[Spot], legs_m: Sequence[float], cg_m: Spot) -> tuple[float, float]:
    """How an airframe hangs by legs of fixed lengths: degrees nose down, degrees rolled to the right.

    Equation:
        u = (h - c) / |h - c|
        nose down = asin(u_x), roll right = atan2(-u_y, u_z)

    Symbols:
        p_i: lift point i, m
        l_i: length of its leg, m
        c: centre of gravity, m
        h: hook, where the legs meet: |h - p_i| = l_i, on the other side of the points than c
        u: what is up, in the airframe's own directions

    Source: common practice

    Range: one to four points, as many lengths above 0, otherwise ValueError; ValueError too where the legs do not
    meet, or where the centre of gravity lies in the points. By two points it swings until the centre of gravity lies
    in the plane of the legs. Four legs have to meet within a millimetre: otherwise one is slack, nobody knows which.

    Example: hung by one eye a metre above and 0.2 m forward of the centre of gravity: the tail goes down.

        >>> nose_down, roll_right = hang_attitude([(-0.2, 0, 1.0)], [2.0], (0, 0, 0))
        >>> round(nose_down, 2), abs(round(roll_right, 2))
        (-11.31, 0.0)
    """
    if not 1 <= len(points_m) <= 4 or len(legs_m) != len(points_m) or min(legs_m, default=0) <= 0:
        raise ValueError("needs one to four points and as many lengths above 0")
    _, up = _hung(points_m, legs_m, cg_m)
    return math.degrees(math.asin(max(-1.0, min(float(up[0]), 1.0)))), math.degrees(math.atan2(-up[1], up[2]))


def hung(points_m: Sequence[Spot], legs_m: Sequence[float], cg_m: Spot) -> tuple[list[Spot], Spot]:
    """Points and hook as they lie once the airframe hangs by legs of fixed lengths, the third axis plumb.

    ValueError as for ``hang_attitude``.
    """
    hook, up = _hung(points_m, legs_m, cg_m)
    level = _unit(np.array((1.0, 0.0, 0.0)) - up[0] * up)
    frame = np.array((level, np.cross(up, level), up))
    turned = [frame @ (np.array(point, dtype=float) - hook) for point in points_m]
    return [(float(x), float(y), float(z)) for x, y, z in turned], (0.0, 0.0, 0.0)


def _hung(points_m: Sequence[Spot], legs_m: Sequence[float], cg_m: Spot) -> tuple[_Vector, _Vector]:
    cg = np.array(cg_m, dtype=float)
    hook = _hook(np.array(points_m, dtype=float), np.array(legs_m, dtype=float), cg)
    return hook, _unit(hook - cg)


def _hook(points: _Vector, legs: _Vector, cg: _Vector) -> _Vector:
    """Where the legs meet, beyond the points as seen from the centre of gravity."""
    if len(points) == 1:
        return np.asarray(points[0] + _unit(points[0] - cg) * legs[0])
    first, base = points[0], points[1] - points[0]
    along = _unit(base)
    x = float(legs[0] ** 2 - legs[1] ** 2 + base @ base) / (2 * float(np.linalg.norm(base)))
    if len(points) == 2:
        away = first - cg
        side = _unit(away - (away @ along) * along)
        return np.asarray(first + x * along + _root(float(legs[0]) ** 2 - x**2) * side)
    rest = points[2] - first
    across = _unit(rest - (rest @ along) * along)
    i, j = float(rest @ along), float(rest @ across)
    y = (float(legs[0]) ** 2 - float(legs[2]) ** 2 + i**2 + j**2 - 2 * i * x) / (2 * j)
    normal = np.cross(along, across)
    normal = normal if (first - cg) @ normal > 0 else -normal
    hook = first + x * along + y * across + _root(float(legs[0]) ** 2 - x**2 - y**2) * normal
    for point, leg in zip(points[3:], legs[3:], strict=True):
        if abs(float(np.linalg.norm(hook - point)) - float(leg)) > 1e-3:
            raise ValueError("four legs of these lengths do not meet in one hook: one is slack")
    return np.asarray(hook)


def _root(square: float) -> float:
    if square < 0:
        raise ValueError("legs of these lengths do not meet")
    return math.sqrt(square)


def _unit(vector: _Vector) -> _Vector:
    length = float(np.linalg.norm(vector))
    if length < 1e-9:
        raise ValueError("points and centre of gravity are to lie apart and not in one line")
    return np.asarray(vector / length)


def shares_of_two(near_m: float, far_m: float, weight_n: float) -> tuple[float, float]:
    """What two vertical pick points carry, N: by the lever between them.

    Equation:
        R_1 = W b / (a + b), R_2 = W a / (a + b)

    Symbols:
        a, b: distance of the centre of gravity from the first and the second point, m; near_m and far_m
        W: weight, N

    Source: rigging-factors

    Range: both distances 0 or more and not both 0, weight above 0, otherwise ValueError: a centre of gravity outside
    the points tips the load.

    Example: points 8 and 2 from the centre of gravity, 10 000 lb.

        >>> shares_of_two(8, 2, 10000)
        (2000.0, 8000.0)
    """
    if near_m < 0 or far_m < 0 or near_m + far_m == 0 or weight_n <= 0:
        raise ValueError("the centre of gravity is to lie between the points, and the weight above 0")
    return weight_n * far_m / (near_m + far_m), weight_n * near_m / (near_m + far_m)
