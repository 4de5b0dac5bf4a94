"""A plot: every point at its place by the plot's own ticks."""

from __future__ import annotations

import re

import pytest
from bs4 import BeautifulSoup

from hardpoint.drawings.plot import Curve, plot

LEGS = Curve("worst leg", ((2.5, 4.1), (5.0, 2.6), (10.0, 2.3)))
LIMIT = Curve("may not pass", ((2.5, 3.0), (10.0, 3.0)), limit=True)


def test_points_stand_where_the_ticks_say() -> None:
    svg = BeautifulSoup(plot([LEGS, LIMIT], "m", "kN", "legs"), "html.parser")
    ticks = [(float(str(t["x"])), float(str(t["y"])), float(t.get_text())) for t in svg.select("text.tick")]
    along = [(x, value) for x, y, value in ticks if y > 160]
    up = [(y - 4, value) for x, y, value in ticks if x < 44]
    (x0, v0), (x1, v1) = min(along), max(along)
    (y0, w0), (y1, w1) = max(up), min(up)
    curve = svg.select_one("path.curve")
    assert curve is not None
    found = [(float(x), float(y)) for x, y in re.findall(r"([\d.]+),([\d.]+)", str(curve["d"]))]
    for (x, y), (height, tension) in zip(found, LEGS.points, strict=True):
        assert v0 + (x - x0) / (x1 - x0) * (v1 - v0) == pytest.approx(height, abs=0.05)
        assert w0 + (y - y0) / (y1 - y0) * (w1 - w0) == pytest.approx(tension, abs=0.05)


def test_nothing_leaves_the_sheet_and_words_are_escaped() -> None:
    svg = plot([Curve("<script>", LEGS.points)], "m", "kN", '"legs"')
    assert "<script>" not in svg
    for x, y in re.findall(r"[ML]([\d.]+),([\d.]+)", svg):
        assert 0 <= float(x) <= 340
        assert 0 <= float(y) <= 190


def test_no_points_no_plot() -> None:
    with pytest.raises(ValueError, match="needs points"):
        plot([], "m", "kN", "legs")
