"""Silhouettes: the area of the whole outline, nothing written, nothing where there is no outline."""

from __future__ import annotations

import re
from pathlib import Path

import pytest
from bs4 import BeautifulSoup
from shapely import Polygon
from shapely.geometry.base import BaseGeometry

from hardpoint import load
from hardpoint.drawings.geometry import outline_of
from hardpoint.drawings.sheet import sheet_of
from hardpoint.drawings.silhouette import silhouette
from hardpoint.records.known import NonValue

FLEET = load.fleet(Path(__file__).parents[2] / "fleet")


@pytest.mark.parametrize("type_id", sorted(FLEET.types))
def test_the_area_is_that_of_the_outline(type_id: str) -> None:
    """Parsed back from the SVG: rings within rings are windows between struts and wings."""
    airframe = FLEET.types[type_id].airframe
    outline = outline_of(airframe)
    assert outline is not None
    sheet = sheet_of(outline, "left", 0, 0)
    svg = BeautifulSoup(silhouette(airframe), "html.parser").svg
    assert svg is not None
    assert svg.get_text() == ""
    rings = [
        Polygon([sheet.back(float(x), float(y)) for x, y in re.findall(r"(-?[\d.]+),(-?[\d.]+)", ring)])
        for ring in str(svg.path["d"]).split("Z")  # type: ignore[index]
        if ring
    ]
    area: BaseGeometry = rings[0]
    for ring in rings[1:]:
        area = area.symmetric_difference(ring)
    assert area.area == pytest.approx(outline.side_area.area, rel=0.02)


def test_no_outline_no_silhouette() -> None:
    airframe = FLEET.types["vostrelle-jinx"].airframe
    assert silhouette(airframe.model_copy(update={"profile": NonValue.UNKNOWN})) == ""
