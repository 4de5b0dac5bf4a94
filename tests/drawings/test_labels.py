"""Places of numbers: the least moves under a least distance, against another library's solution."""

from __future__ import annotations

import itertools

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.optimize import isotonic_regression

from hardpoint.drawings.labels import place, place_words, spread, spread_by

WANTED = st.lists(st.floats(0, 340), min_size=1, max_size=12).map(sorted)


@given(WANTED, st.floats(1, 25))
def test_least_moves_as_another_library_finds_them(wanted: list[float], apart: float) -> None:
    """scipy.optimize.isotonic_regression on the places less the distances before them, far from both ends."""
    found = spread(wanted, apart, -1e6, 1e6)
    offsets = np.arange(len(wanted)) * apart
    by_scipy = isotonic_regression(np.array(wanted) - offsets).x + offsets
    assert found == pytest.approx(list(by_scipy), abs=1e-6)


@given(WANTED)
def test_places_keep_their_distance_and_stay_inside(wanted: list[float]) -> None:
    found = spread(wanted, 24, 12, 328)
    assert all(right - left >= 24 - 1e-9 for left, right in itertools.pairwise(found))
    assert found[0] >= 12 - 1e-9
    assert found[-1] <= 328 + 1e-9


def test_what_does_not_fit_is_said() -> None:
    with pytest.raises(ValueError, match="do not fit"):
        spread_by([0, 0, 0], [20, 20], 0, 30)
    with pytest.raises(ValueError, match="do not fit"):
        place([(float(x), 0.0) for x in range(60)], 0, -1, 0, 340)
    assert place_words([(0.0, 0.0)] * 3, [200.0] * 3, 0, 1, 0, 340) is None


def test_nothing_has_no_labels() -> None:
    assert place([], 0, 1, 0, 340) == []
    assert place_words([], [], 0, 1, 0, 340) == []
