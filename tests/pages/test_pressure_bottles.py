"""Pressure bottles over all types: ranked by what a burst of each sets free."""

from __future__ import annotations

import datetime as dt
from typing import cast

from hardpoint.pages.across.pressure_bottles import pressure_bottles_page
from hardpoint.pages.board_view import BoardPage
from hardpoint.pages.site import Site
from tests.pages.sweeps import FLEET


def test_what_nobody_can_say_stands_first_then_the_most_energy() -> None:
    page = cast(BoardPage, pressure_bottles_page(Site(FLEET, (), dt.date(2027, 6, 5), "2027-06-05")).view)
    at = [column.id for column in page.columns].index("energy")
    told = [row.cells[at] for row in page.rows]
    states = [value.state for value in told if value.state != "not fitted"]
    assert states == sorted(states, key=lambda state: state != "unknown"), "unknown first"
    energies = [float(value.text.split()[-2]) for value in told if value.text.endswith("kJ")]
    assert len(energies) > 5
    assert energies == sorted(energies, reverse=True)
    assert "oxygen" in page.rows[len(states) - len(energies)].id, "the Halberd's oxygen holds most"
