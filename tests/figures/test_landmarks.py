"""Places told from landmarks: distances along the fuselage against an interval library, and in words."""

from __future__ import annotations

import math
from typing import Any

import portion  # type: ignore[import-untyped]
import pytest
from hypothesis import given
from hypothesis import strategies as st

from hardpoint.figures.landmarks import apart, either_side, nearest_two
from hardpoint.figures.worked import Figure, Unsaid
from hardpoint.figures.workings.landmarks import TOPIC
from hardpoint.pages.between import place_between
from hardpoint.pages.telling import place_words
from hardpoint.records.places import Place
from tests.figures.changed import case

STATIONS = st.integers(-500, 12000)
STRETCHES = st.tuples(STATIONS, STATIONS).map(lambda ends: (float(min(ends)), float(max(ends))))
MARKS = st.dictionaries(st.sampled_from("abcdefg"), STRETCHES, min_size=1)


@given(STRETCHES, STRETCHES)
def test_the_gap_as_an_interval_library_has_it(place: tuple[float, float], mark: tuple[float, float]) -> None:
    """The gap is what the two leave uncovered of all that they enclose."""
    one, other = portion.closed(*place), portion.closed(*mark)
    gap = (one | other).enclosure - one - other
    length = 0 if gap.empty else gap.upper - gap.lower
    near, far = apart(place, mark)
    assert abs(near) == length
    if near:
        assert near * far > 0
        assert abs(far) - abs(near) == place[1] - place[0]
    else:
        assert far == 0
        assert one.overlaps(other)


@given(STRETCHES, MARKS)
def test_no_landmark_is_nearer_than_the_two(place: tuple[float, float], marks: dict[str, tuple[float, float]]) -> None:
    found = nearest_two(place, marks)
    assert len(found) == min(2, len(marks))
    told = {one.landmark for one in found}
    for name, at in marks.items():
        if name not in told:
            assert all(abs(apart(place, at)[0]) >= abs(one.near) for one in found)


@given(STRETCHES, MARKS)
def test_a_place_lies_between_the_landmarks_on_either_side(
    place: tuple[float, float], marks: dict[str, tuple[float, float]]
) -> None:
    forward, aft = either_side(place, marks)
    before = [name for name, at in marks.items() if at[1] < place[0]]
    behind = [name for name, at in marks.items() if at[0] > place[1]]
    assert (forward is None) == (not before)
    assert (aft is None) == (not behind)
    if forward:
        assert marks[forward.landmark][1] == max(marks[name][1] for name in before)
    if aft:
        assert marks[aft.landmark][0] == min(marks[name][0] for name in behind)


@pytest.mark.parametrize("bad", [(2.0, 1.0), (math.nan, 1.0), (0.0, math.inf), (-math.inf, 0.0)])
def test_a_stretch_without_ends_is_refused(bad: tuple[float, float]) -> None:
    for place, mark in ((bad, (0.0, 0.0)), ((0.0, 0.0), bad)):
        with pytest.raises(ValueError, match="from a lower to a higher station"):
            apart(place, mark)


def test_a_tank_by_hand() -> None:
    """The Wicket's wing tanks, FS 1150 to 1550 on both sides. Strut foot FS 1250: beside it; leading edge FS 1000."""
    worked = {figure.id: figure for figure in TOPIC.work(case("skellrigg-wicket"))}
    nearest, next_ = (worked[f"landmarks.tanks.wing.place.{order}"] for order in ("nearest", "next"))
    assert isinstance(nearest, Figure)
    assert isinstance(next_, Figure)
    assert (nearest.what, nearest.value) == ("tanks, wing: beside the strut foot", (0, 0))
    assert next_.what == "tanks, wing: aft of the wing leading edge"
    assert next_.value == pytest.approx((0.15, 0.55))
    assert [input_.path for input_ in next_.inputs] == [
        ("tanks", "wing", "place", "fs"),
        ("landmarks", "wing leading edge", "fs"),
    ]


def test_a_landmark_on_the_other_side_tells_nothing() -> None:
    """The rocket's hatch is right of the centre: a place on the left is not told from it."""
    left = {"landmarks.ring": {"fs": "2400", "side": "left"}, "landmarks.hatch": {"fs": "2420", "side": "right"}}
    worked = TOPIC.work(case("skellrigg-wicket", left | {"batteries.main.place": {"fs": "2410", "side": "right"}}))
    found = [str(figure.what) for figure in worked if figure.id.startswith("landmarks.batteries.main.place")]
    assert found == ["batteries, main: forward of the hatch", "batteries, main: forward of the rocket hatch"]


@pytest.mark.parametrize(
    ("changes", "id_", "reason"),
    [
        ({"landmarks": "unknown"}, "landmarks", "which landmarks it has is unknown"),
        ({"landmarks": {"keel": {"fs": "0 to 5000"}}}, "landmarks.tanks.wing.place", "no landmark is recorded that"),
        ({"tanks.wing.place.fs": "unknown"}, "landmarks.tanks.wing.place", "its station is unknown"),
        ({"tanks.wing.place.fs": "aft of 900"}, "landmarks.tanks.wing.place", "its station is unknown"),
    ],
)
def test_what_cannot_be_told_says_why(changes: dict[str, Any], id_: str, reason: str) -> None:
    found = {figure.id: figure for figure in TOPIC.work(case("skellrigg-wicket", changes))}[id_]
    assert isinstance(found, Unsaid)
    assert found.reason.startswith(reason)


@pytest.mark.parametrize(
    ("place", "words"),
    [
        ({"fs": "830"}, "between the windscreen foot and the wing leading edge, nearer the windscreen foot"),
        ({"fs": "890"}, "between the windscreen foot and the wing leading edge"),
        ({"fs": "1000"}, "beside the wing leading edge"),
        ({"fs": "600 to 1300"}, "between the nose and the door handle"),
        ({"fs": "5500"}, "between the tailplane root and the tail"),
        ({"fs": "-200 to 5800"}, "place not told by a landmark"),
        ({"fs": "unknown"}, "place not told by a landmark"),
        ({"fs": "830", "panel": "left sill"}, "left sill"),
        ({"fs": "830", "feel": "a round cap"}, "a round cap"),
        ({"fs": "830", "near": "door handle"}, "near the door handle"),
        ({"fs": "890", "side": "left"}, "between the windscreen foot and the wing leading edge, left side"),
    ],
)
def test_a_crew_reads_landmarks_where_the_record_has_nothing_for_hands(place: dict[str, str], words: str) -> None:
    airframe = case("skellrigg-wicket").airframe
    assert place_words(Place.model_validate(place), airframe) == words


def test_without_landmarks_a_place_is_not_told() -> None:
    airframe = case("skellrigg-wicket", {"landmarks": "unknown"}).airframe
    assert place_between(Place.model_validate({"fs": "890"}), airframe) == ""
