"""Rules about seats: what ties an occupant in, what must not be pulled, what is worn."""

from __future__ import annotations

import re
from collections.abc import Iterator

from hardpoint.records.known import NonValue, entries
from hardpoint.rules.rule import AIRFRAME, Hit, Record

_SECOND_BELTS = ("ratchet belt", "second lap latch", "single lap belt")


@AIRFRAME.rule("second-belt-denied", "warning", "`second_belt` does not deny a second belt that stands among the ties.")
def second_belt_denied(record: Record) -> Iterator[Hit]:
    """Seats whose ties hold a second belt while second_belt says that there is none."""
    for seat_name, seat in record.airframe.seats.items():
        belts = [name for name, tie in entries(seat.ties).items() if tie.kind in _SECOND_BELTS]
        words = str(seat.second_belt)
        denied = (isinstance(seat.second_belt, NonValue) and words != "unknown") or re.search(r"\b(?:none|no)\b", words)
        if len(entries(seat.ties)) > 1 and belts and denied:
            yield Hit(
                ("seats", seat_name, "second_belt"),
                words,
                f"what the ties say: {belts[0]} is a second belt",
                "fitted, ratchet belt",
            )
