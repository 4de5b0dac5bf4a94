"""Cutting windows against an interval library, and what must hold of any skin and of all that lies behind it."""

from __future__ import annotations

import math
from itertools import pairwise

import portion  # type: ignore[import-untyped]
import pytest
from hypothesis import given
from hypothesis import strategies as st

from hardpoint.figures.windows import cutting_windows

Thing = tuple[float, float, float]
STATIONS = st.integers(-2000, 12000)
MARGINS = st.integers(0, 600)
SPANS = st.tuples(STATIONS, STATIONS).map(lambda ends: (float(min(ends)), float(max(ends))))
JAWS = st.integers(0, 400).map(float)


@st.composite
def _things(draw: st.DrawFn) -> Thing:
    start, end = sorted((draw(STATIONS), draw(STATIONS)))
    ends = draw(st.sampled_from(["both", "both", "both", "open forward", "open aft"]))
    low = -math.inf if ends == "open forward" else float(start)
    high = math.inf if ends == "open aft" else float(end)
    return low, high, float(draw(MARGINS))


THINGS = st.lists(_things(), max_size=8)


def _by_portion(span: tuple[float, float], blocked: list[Thing], jaw: float) -> list[tuple[float, float]]:
    """The same by ``portion``, a library of intervals."""
    left = portion.closed(*span)
    for start, end, margin in blocked:
        left -= portion.closed(start - margin, end + margin)
    return [(part.lower, part.upper) for part in left if part.upper > part.lower and part.upper - part.lower >= jaw]


@given(SPANS, THINGS, JAWS)
def test_as_an_interval_library_has_it(span: tuple[float, float], blocked: list[Thing], jaw: float) -> None:
    assert cutting_windows(span, blocked, jaw) == _by_portion(span, blocked, jaw)


@given(SPANS, THINGS, JAWS)
def test_no_window_meets_a_thing_with_its_margin(span: tuple[float, float], blocked: list[Thing], jaw: float) -> None:
    for start, end in cutting_windows(span, blocked, jaw):
        for low, high, margin in blocked:
            assert end <= low - margin or start >= high + margin


@given(SPANS, THINGS, JAWS)
def test_a_window_lies_in_the_skin_and_takes_the_tool(
    span: tuple[float, float], blocked: list[Thing], jaw: float
) -> None:
    windows = cutting_windows(span, blocked, jaw)
    assert all(span[0] <= start < end <= span[1] for start, end in windows)
    assert all(end - start >= jaw for start, end in windows)
    assert windows == sorted(windows)
    assert all(one[1] <= other[0] for one, other in pairwise(windows))


@given(SPANS, THINGS, _things(), JAWS)
def test_one_more_thing_never_makes_more_window(
    span: tuple[float, float], blocked: list[Thing], more: Thing, jaw: float
) -> None:
    before = cutting_windows(span, blocked, jaw)
    for start, end in cutting_windows(span, [*blocked, more], jaw):
        assert any(low <= start and end <= high for low, high in before)


@given(SPANS, THINGS, JAWS, st.integers(1, 300))
def test_a_wider_margin_or_tool_never_makes_more_window(
    span: tuple[float, float], blocked: list[Thing], jaw: float, more: int
) -> None:
    before = cutting_windows(span, blocked, jaw)
    wider = [(low, high, margin + more) for low, high, margin in blocked]
    for start, end in cutting_windows(span, wider, jaw):
        assert any(low <= start and end <= high for low, high in before)
    assert set(cutting_windows(span, blocked, jaw + more)) <= set(before)


@given(SPANS, THINGS, JAWS)
def test_the_order_of_the_list_does_not_matter(span: tuple[float, float], blocked: list[Thing], jaw: float) -> None:
    assert cutting_windows(span, blocked[::-1], jaw) == cutting_windows(span, blocked, jaw)


def test_what_can_lie_anywhere_leaves_nothing() -> None:
    assert cutting_windows((1500, 1750), [(-math.inf, math.inf, 0)], 0) == []


def test_a_window_just_as_long_as_the_tool_is_wide_is_kept() -> None:
    assert cutting_windows((0, 100), [(60, 200, 0)], 60) == [(0, 60)]
    assert cutting_windows((0, 100), [(60, 200, 0)], 60.001) == []
    assert cutting_windows((100, 100), [], 0) == []


@pytest.mark.parametrize(
    ("span", "blocked", "jaw", "message"),
    [
        ((1750, 1500), [], 30, "a skin goes from a lower"),
        ((0, math.inf), [], 30, "a skin goes from a lower"),
        ((math.nan, 100), [], 30, "a skin goes from a lower"),
        ((0, 100), [(60, 40, 0)], 30, "a thing behind the skin goes from a lower"),
        ((0, 100), [(math.nan, 40, 0)], 30, "a thing behind the skin goes from a lower"),
        ((0, 100), [(40, 60, -1)], 30, "the distance kept is 0 mm or more"),
        ((0, 100), [(40, 60, math.nan)], 30, "the distance kept is 0 mm or more"),
        ((0, 100), [], -1, "the width of a tool is 0 mm or more"),
        ((0, 100), [], math.nan, "the width of a tool is 0 mm or more"),
    ],
)
def test_what_is_out_of_range_is_refused(
    span: tuple[float, float], blocked: list[Thing], jaw: float, message: str
) -> None:
    with pytest.raises(ValueError, match=message):
        cutting_windows(span, blocked, jaw)
