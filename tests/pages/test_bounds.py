"""Where a zone begins and ends is told by landmarks near its ends, or it is said that none tells it."""

from __future__ import annotations

import re
from decimal import Decimal

import pytest

from hardpoint.pages.bounds import bounds
from hardpoint.records.airframe import Airframe
from hardpoint.records.structure import Zone
from hardpoint.records.texts import Span
from tests.pages.sweeps import FLEET, read, with_answer

JINX = FLEET.types["vostrelle-jinx"]
MARKS = {
    "firewall": {"fs": "1000"},
    "canopy bow": {"fs": "2000"},
    "hatch": {"fs": "3000 to 3400"},
    "step": {"fs": "1450 to 3900"},
}


def _zone(stretch: str, unit: str = "mm", **more: str) -> str:
    tree = with_answer(JINX.tree, ("landmarks",), MARKS)
    tree = with_answer(tree, ("datum", "unit"), unit)
    airframe = read(tree)
    assert isinstance(airframe, Airframe)
    zone = next(iter(airframe.zones.values()))  # type: ignore[union-attr]
    low, _, high = stretch.partition(" to ")
    span = Span(stretch, Decimal(low), Decimal(high))
    wl = Span(more["wl"], Decimal(600), None) if "wl" in more else None
    assert isinstance(zone, Zone)
    return bounds(zone.model_copy(update={"fs": span, "wl": wl}), airframe)


@pytest.mark.parametrize(
    ("stretch", "told"),
    [
        ("1000 to 2000", "from about the firewall to about the canopy bow"),
        ("1250 to 2100", "from about the firewall to about the canopy bow"),
        ("1000 to 1600", "from about the firewall aft; no landmark tells where it ends"),
        ("1500 to 2000", "forward of about the canopy bow; no landmark tells where it begins"),
        ("2000 to 3200", "from about the canopy bow to about the hatch"),
        ("3450 to 3500", "about the hatch"),
        ("1400 to 1600", "bounds not told by a landmark"),
    ],
)
def test_ends_are_told_by_the_landmarks_near_them(stretch: str, told: str) -> None:
    assert _zone(stretch) == told


def test_inches_are_not_millimetres() -> None:
    assert _zone("1000 to 1100", "in") == "from about the firewall aft; no landmark tells where it ends"
    assert _zone("1000 to 1100", "mm") == "about the firewall"


def test_a_band_of_heights_is_said() -> None:
    assert _zone("1000 to 2000", wl="above 600").endswith("only part of its height, see the side view")


@pytest.mark.parametrize("type_id", sorted(FLEET.types))
def test_no_station_is_told(type_id: str) -> None:
    airframe = FLEET.types[type_id].airframe
    assert isinstance(airframe.zones, dict)
    for zone in airframe.zones.values():
        if isinstance(zone, Zone):
            assert not re.search(r"\d", bounds(zone, airframe)), zone.fs.text
