"""Where rockets and seats fly, out of records: in words, with a bearing, in every attitude."""

from __future__ import annotations

from typing import Any

import pytest

from hardpoint.figures.worked import Figure, Unsaid, Worked
from hardpoint.figures.workings.exit_sectors import TOPIC, flying, sectors
from tests.figures.changed import case

ROCKET = "pyrotechnics.rocket"


def _worked(type_id: str, changes: dict[str, Any] | None = None) -> dict[str, Worked]:
    return {figure.id: figure for figure in TOPIC.work(case(type_id, changes))}


def _ways(type_id: str, changes: dict[str, Any] | None = None) -> dict[str, str]:
    airframe = case(type_id, changes).airframe
    name, device = next(flying(airframe))
    return {sector.attitude.words: str(sector.way) for sector in sectors(airframe, name, device)}


def test_the_rocket_of_the_demo_in_every_attitude() -> None:
    """Check values "Exit directions" (V): 60 deg up and straight aft."""
    worked = _worked("skellrigg-wicket")
    expected = {
        "upright": (180, 60),
        "inverted": (180, -60),
        "right-side-down": (120, 0),
        "left-side-down": (240, 0),
        "nose-30-down": (None, 90),
        "nose-60-down": (0, 60),
    }
    for attitude, (bearing, elevation) in expected.items():
        raised = worked[f"exits.rocket.{attitude}.elevation"]
        assert isinstance(raised, Figure)
        assert raised.value == pytest.approx((elevation, elevation))
        aside = worked.get(f"exits.rocket.{attitude}.bearing")
        if bearing is None:
            assert aside is None, "straight up has no bearing"
        else:
            assert isinstance(aside, Figure)
            assert aside.value == pytest.approx((bearing, bearing))
    assert len(worked) == 11


def test_in_words_relative_to_the_airframe() -> None:
    assert _ways("skellrigg-wicket") == {
        "upright": "along the fuselage, towards aft, 60 deg up, 180 deg clockwise from the nose",
        "inverted": "along the fuselage, towards aft, 60 deg into the ground, 180 deg clockwise from the nose",
        "right side down": "on the roof's side, towards aft, level, 120 deg clockwise from the nose",
        "left side down": "on the roof's side, towards aft, level, 240 deg clockwise from the nose",
        "nose down by 30 deg": "straight up",
        "nose down by 60 deg": "along the fuselage, towards the nose, 60 deg up, 0 deg clockwise from the nose",
    }


@pytest.mark.parametrize(
    ("towards", "upright", "inverted"),
    [
        ("pilot's right", "on pilot's right, 20 deg up, 90 deg", "on pilot's right, 20 deg into the ground, 270 deg"),
        ("pilot's left", "on pilot's left, 20 deg up, 270 deg", "on pilot's left, 20 deg into the ground, 90 deg"),
    ],
)
def test_the_pilot_s_sides_stay_the_pilot_s(towards: str, upright: str, inverted: str) -> None:
    ways = _ways(
        "skellrigg-wicket", {f"{ROCKET}.exit_direction": {"towards": towards, "raised": "20 deg", "through": "x"}}
    )
    assert ways["upright"] == f"{upright} clockwise from the nose"
    assert ways["inverted"] == f"{inverted} clockwise from the nose"
    down = "floor" if towards == "pilot's right" else "roof"
    assert ways["right side down"].startswith("on the roof's side, 70 deg"), down


def test_below_a_canopy_it_is_the_canopy_s_side() -> None:
    assert _ways("drosmund-halberd")["right side down"].startswith("on the canopy's side, level, 105 deg")


def test_a_figure_says_that_it_is_a_sector_and_no_arrow() -> None:
    for figure in _worked("skellrigg-wicket").values():
        assert isinstance(figure, Figure)
        assert figure.caution.endswith("this way and to either side of it, and with a bent mount any way")
        assert [input_.path[-1] for input_ in figure.inputs] == ["towards", "raised"]


def test_two_statements_that_disagree_are_a_range() -> None:
    worked = _worked("skellrigg-wicket", {f"{ROCKET}.exit_direction.raised": "55 deg / 1.05 rad"})
    bearing = worked["exits.rocket.right-side-down.bearing"]
    assert isinstance(bearing, Figure)
    assert bearing.value == pytest.approx((119.84, 125), abs=0.01)
    nose = worked["exits.rocket.nose-30-down.elevation"]
    assert isinstance(nose, Figure)
    assert nose.value == pytest.approx((85, 90), abs=0.2), "from 85 deg on one side over the zenith"


@pytest.mark.parametrize(
    ("changes", "reason"),
    [
        ({f"{ROCKET}.exit_direction": "unknown"}, "where it flies is unknown"),
        ({f"{ROCKET}.exit_direction.raised": "unknown"}, "how steeply it flies is unknown"),
        ({f"{ROCKET}.exit_direction.raised": "120 deg"}, "it cannot be raised by more than 90 deg"),
    ],
)
def test_what_is_unknown_is_said(changes: dict[str, Any], reason: str) -> None:
    (found,) = _worked("skellrigg-wicket", changes).values()
    assert isinstance(found, Unsaid)
    assert found.reason == reason
    assert found.path[:2] == ("pyrotechnics", "rocket")


@pytest.mark.parametrize("state", ["fired", "removed"])
def test_what_is_gone_flies_nowhere(state: str) -> None:
    assert _worked("skellrigg-wicket", {f"{ROCKET}.state": state}) == {}


def test_what_does_not_fly_out_has_no_direction() -> None:
    assert _worked("skellrigg-wicket", {f"{ROCKET}.kind": "cable cutter"}) == {}
