"""Rules about tanks, what is in them and the lines that leave them."""

from __future__ import annotations

import re
from collections.abc import Iterator
from decimal import Decimal

from hardpoint.records.known import entries, said
from hardpoint.records.tanks import ENGINE_FUELS, OILS
from hardpoint.records.walk import values_of
from hardpoint.rules.rule import AIRFRAME, Hit, Record


@AIRFRAME.rule(
    "oil-called-non-flammable",
    "error",
    "No oil is called non-flammable: every oil here burns, and its mist burns at once.",
)
def oil_called_non_flammable(record: Record) -> Iterator[Hit]:
    """Words of oil tanks that say it does not burn."""
    for name, tank in entries(record.airframe.tanks).items():
        if tank.holds not in OILS:
            continue
        for path, value in values_of(tank, ("tanks", name)):
            if isinstance(value, str) and re.search(
                r"(?i)\bnon[ -]?(?:in)?flammable|\bnot (?:in)?flammable|\bdoes not burn", value
            ):
                yield Hit(
                    path,
                    value,
                    "how this oil burns; every oil here does",
                    "its mist burns at once, a pool burns when hot",
                )


@AIRFRAME.rule("line-short-of-engine", "warning", "A line that ends at the engine reaches it.")
def line_short_of_engine(record: Record) -> Iterator[Hit]:
    """Fuel lines whose last point lies further than 300 mm from the engine's stretch."""
    engine = said(record.airframe.engine)
    place = said(engine.place) if engine else None
    fs = said(place.fs) if place else None
    if fs is None or fs.low is None or fs.high is None:
        return
    near = Decimal(300) if record.airframe.datum.unit == "mm" else Decimal(12)
    for name, tank in entries(record.airframe.tanks).items():
        for line, route in entries(tank.lines).items():
            spots = said(route.path)
            last = said(spots[-1].fs) if spots else None
            if route.ends_at != "engine" or last is None or last.middle is None or tank.holds not in ENGINE_FUELS:
                continue
            if not fs.low - near <= last.middle <= fs.high + near:
                yield Hit(
                    ("tanks", name, "lines", line, "path"),
                    f"last point FS {last.text}",
                    f"a path that reaches the engine at FS {fs.text}",
                    "",
                )
