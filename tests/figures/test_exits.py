"""Exit directions against rotation matrices worked out elsewhere and against scipy's Rotation."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.spatial.transform import Rotation

from hardpoint.figures.exits import Towards, axis, direction, run_inside

ANGLES = st.floats(-90, 90)
ROLLS = st.floats(-180, 180)
AXES = st.tuples(st.floats(-5, 5), st.floats(-5, 5), st.floats(-5, 5)).filter(lambda axis: math.hypot(*axis) > 0.01)


@pytest.mark.parametrize(
    ("attitude", "bearing", "elevation"),
    [
        ((0, 0), 180, 60),
        ((90, 0), 120, 0),
        ((-90, 0), 240, 0),
        ((180, 0), 180, -60),
        ((0, 30), None, 90),
        ((0, 60), 0, 60),
        ((0, 90), 0, 30),
    ],
    ids=["upright", "right side down", "left side down", "inverted", "nose 30 down", "nose 60 down", "nose 90 down"],
)
def test_a_device_that_points_60_deg_up_and_aft(
    attitude: tuple[float, float], bearing: float | None, elevation: float
) -> None:
    """Check values "Exit directions" (V, by rotation matrices outside the project)."""
    found, raised = direction((-math.cos(math.pi / 3), 0, math.sin(math.pi / 3)), attitude)
    assert found == (None if bearing is None else pytest.approx(bearing, abs=1e-6))
    assert raised == pytest.approx(elevation, abs=1e-6)
    assert direction(axis("aft", 60), attitude) == (found, raised)


@given(AXES, ROLLS, ANGLES)
def test_as_scipy_rotates(pointing: tuple[float, float, float], roll: float, nose_down: float) -> None:
    """scipy.spatial.transform.Rotation, intrinsic yaw, pitch, roll in axes ahead, right, down (common practice)."""
    forward, right, top = pointing
    rotation = Rotation.from_euler("ZYX", [0, -nose_down, roll], degrees=True)
    ahead, starboard, down = rotation.apply([forward, right, -top]) / math.hypot(*pointing)
    bearing, elevation = direction(pointing, (roll, nose_down))
    assert math.sin(math.radians(elevation)) == pytest.approx(-down, abs=1e-7)
    if bearing is None:
        assert math.hypot(ahead, starboard) < 1e-8
    elif math.hypot(ahead, starboard) > 1e-6:
        level = math.hypot(ahead, starboard)
        assert math.cos(math.radians(bearing)) * level == pytest.approx(ahead, abs=1e-7)
        assert math.sin(math.radians(bearing)) * level == pytest.approx(starboard, abs=1e-7)
        assert 0 <= bearing < 360


@given(AXES, ROLLS, st.floats(-89, 89))
def test_the_nose_keeps_its_bearing(pointing: tuple[float, float, float], roll: float, nose_down: float) -> None:
    bearing, elevation = direction((1, 0, 0), (roll, nose_down))
    assert bearing in (0, pytest.approx(360, abs=1e-6))
    assert elevation == pytest.approx(-nose_down, abs=1e-6)


@given(st.floats(0.1, 1000), st.floats(-89, 89), ROLLS, ANGLES)
def test_the_length_of_an_axis_does_not_matter(length: float, raised: float, roll: float, down: float) -> None:
    pointing = axis("aft", raised)
    one = direction(pointing, (roll, down))
    other = direction([length * part for part in pointing], (roll, down))
    assert one[1] == pytest.approx(other[1], abs=1e-5)


@pytest.mark.parametrize(
    ("towards", "bearing"), [("forward", 0), ("pilot's right", 90), ("aft", 180), ("pilot's left", 270)]
)
def test_upright_a_record_is_told_as_it_stands(towards: Towards, bearing: float) -> None:
    assert direction(axis(towards, 20), (0, 0)) == pytest.approx((bearing, 20))
    assert direction(axis(towards, 90), (0, 0))[1] == pytest.approx(90)


def test_what_flies_across_a_fuselage_that_is_as_high_as_far() -> None:
    """At 45 deg the run is the height; straight up it is none; along the fuselage it has no end."""
    assert run_inside(1.2, 45) == pytest.approx(1.2)
    assert run_inside(1.2, -45) == pytest.approx(1.2)
    assert run_inside(1.2, 90) == pytest.approx(0, abs=1e-12)
    assert run_inside(1.2, 0) == math.inf


@pytest.mark.parametrize(
    ("pointing", "attitude"),
    [
        ((0, 0, 0), (0, 0)),
        ((1, 0), (0, 0)),
        ((math.nan, 0, 1), (0, 0)),
        ((1, 0, 0), (181, 0)),
        ((1, 0, 0), (0, 91)),
        ((1, 0, 0), (math.nan, 0)),
        ((1, 0, 0), (0, math.nan)),
    ],
)
def test_what_has_no_direction_is_refused(pointing: tuple[float, ...], attitude: tuple[float, float]) -> None:
    with pytest.raises(ValueError, match=r"an axis has three parts|roll is -180 to 180"):
        direction(pointing, attitude)


def test_an_axis_or_a_run_out_of_range_is_refused() -> None:
    with pytest.raises(ValueError, match="-90 to 90 deg, got 91 deg"):
        axis("aft", 91)
    with pytest.raises(ValueError, match="'up'"):
        axis("up", 10)  # type: ignore[arg-type]
    for height, raised in ((-1, 45), (1, 91), (math.inf, 45), (1, math.nan)):
        with pytest.raises(ValueError, match="a height of 0 or more"):
            run_inside(height, raised)
