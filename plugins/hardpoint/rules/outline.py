"""Rules about overall figures and the outline."""

from __future__ import annotations

from collections.abc import Iterator
from decimal import Decimal

from hardpoint.records.known import said
from hardpoint.rules.rule import AIRFRAME, Hit, Record


@AIRFRAME.rule("length-disagrees", "warning", "The stated length and the stations of nose and tail agree within 20 mm.")
def length_disagrees(record: Record) -> Iterator[Hit]:
    """Length against tail minus nose."""
    size = record.airframe.size
    length, nose, tail = said(size.length), said(size.nose), said(size.tail)
    if length is None or nose is None or tail is None:
        return
    unit_m = Decimal("0.001") if record.airframe.datum.unit == "mm" else Decimal("0.0254")
    by_stations = float((tail - nose) * unit_m)
    low, high = length.si
    if by_stations < low - 0.02 or by_stations > high + 0.02:
        yield Hit(
            ("size", "length"),
            length.text,
            f"the length between nose and tail, {by_stations:.2f} m",
            f"{by_stations:.2f} m",
        )
