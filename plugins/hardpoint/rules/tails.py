"""Rules about single aircraft."""

from __future__ import annotations

from collections.abc import Iterator

from hardpoint.records.known import NonValue
from hardpoint.rules.rule import TAIL, Hit, TailUnder


@TAIL.rule(
    "tail-not-declared",
    "warning",
    "Somebody has declared how each aircraft differs from its type, or that no difference is recorded.",
)
def tail_not_declared(under: TailUnder) -> Iterator[Hit]:
    """Tails whose differences are unknown."""
    if not under.aircraft.declared:
        yield Hit(
            ("differs",),
            "unknown",
            'a list of differences, or "none recorded" once somebody declared it',
            "none recorded",
            message="nobody has declared how this aircraft differs from its type; crews are told so",
        )


@TAIL.rule("declared-by-nobody", "warning", "A declared aircraft says who declared it and when.")
def declared_by_nobody(under: TailUnder) -> Iterator[Hit]:
    """Declared tails without a declaration."""
    if under.aircraft.declared and isinstance(under.aircraft.tail.declared, NonValue):
        yield Hit(
            ("declared",),
            str(under.aircraft.tail.declared),
            "who declared it, and when",
            "{by: owner, date: 2027-03-01}",
        )
