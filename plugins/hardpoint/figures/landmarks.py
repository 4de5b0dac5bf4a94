"""How far a place is from what hands and eyes find: the landmarks of its airframe, along the fuselage."""

from __future__ import annotations

import math
from collections.abc import Mapping
from typing import NamedTuple

Stretch = tuple[float, float]


class Apart(NamedTuple):
    """A landmark, and how far the near and the far end of a place lie from it in m: aft above 0, forward below 0."""

    landmark: str
    near: float
    far: float


def apart(place_m: Stretch, landmark_m: Stretch) -> Stretch:
    """How far a place lies from a landmark: its near end, then its far end.

    Equation:
        aft of it: near = p1 - l2, far = p2 - l2
        forward of it: near = p2 - l1, far = p1 - l1
        beside it: near = far = 0

    Symbols:
        p1, p2: the place, from and to, m aft of the datum
        l1, l2: the landmark, from and to, m
        near, far: distance along the fuselage, m; above 0 the place lies aft of the landmark, below 0 forward of it

    Source: common practice

    Range: finite stretches from a lower to a higher station, otherwise ValueError. A place that shares a station with
    the landmark lies beside it.

    Example: a tank at 1.2 to 1.6 m, the edge of the cowling at 0.7 m.

        >>> [round(end, 3) for end in apart((1.2, 1.6), (0.7, 0.7))]
        [0.5, 0.9]
    """
    for low, high in (place_m, landmark_m):
        if not -math.inf < low <= high < math.inf:
            raise ValueError(f"a stretch goes from a lower to a higher station, got {low:g} to {high:g} m")
    if place_m[0] > landmark_m[1]:
        return place_m[0] - landmark_m[1], place_m[1] - landmark_m[1]
    if place_m[1] < landmark_m[0]:
        return place_m[1] - landmark_m[0], place_m[0] - landmark_m[0]
    return 0.0, 0.0


def nearest_two(place_m: Stretch, landmarks_m: Mapping[str, Stretch]) -> list[Apart]:
    """The two landmarks that are nearest to a place, the nearest first; one where there is but one.

    Equation:
        |near| least

    Symbols:
        near: distance of the near end of the place from a landmark, m

    Source: common practice

    Range: as for one landmark; of two that are as near the first named comes first.

    Example:

        >>> [(one.landmark, round(one.near, 3)) for one in nearest_two((1.3, 1.3), {"cowling": (0.7, 0.7),
        ...     "strut": (1.25, 1.25), "door": (1.7, 1.7)})]
        [('strut', 0.05), ('door', -0.4)]
    """
    found = [Apart(name, *apart(place_m, at)) for name, at in landmarks_m.items()]
    return sorted(found, key=lambda one: abs(one.near))[:2]


def either_side(place_m: Stretch, landmarks_m: Mapping[str, Stretch]) -> tuple[Apart | None, Apart | None]:
    """The nearest landmark forward of a place and the nearest aft of it; None where there is none.

    Equation:
        forward: near > 0 least; aft: near < 0 greatest

    Symbols:
        near: distance of the near end of the place from a landmark, m

    Source: common practice

    Range: as for one landmark.

    Example:

        >>> forward, aft = either_side((1.3, 1.3), {"cowling": (0.7, 0.7), "door": (1.7, 1.7)})
        >>> forward.landmark, aft.landmark
        ('cowling', 'door')
    """
    found = [Apart(name, *apart(place_m, at)) for name, at in landmarks_m.items()]
    forward = min((one for one in found if one.near > 0), key=lambda one: one.near, default=None)
    aft = max((one for one in found if one.near < 0), key=lambda one: one.near, default=None)
    return forward, aft
