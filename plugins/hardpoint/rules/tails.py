"""Rules about single aircraft."""

from __future__ import annotations

from collections.abc import Iterator

from hardpoint.records.known import NonValue, said
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


@TAIL.rule(
    "declared-before-the-type-changed",
    "warning",
    "An aircraft was declared against its type's record as it stands: a change since then was not declared against.",
)
def declared_before_the_type_changed(under: TailUnder) -> Iterator[Hit]:
    """Declarations older than the newest entry in the change log of the type, where the log says what changed."""
    declaration = said(under.aircraft.tail.declared)
    made = said(declaration.date) if declaration else None
    later = [change for change in under.aircraft.of.airframe.changes if made is not None and change.date > made]
    later = [change for change in later if not change.what.startswith("first record")]
    if under.aircraft.declared and made is not None and later:
        newest = max(later, key=lambda change: change.date)
        wanted = f"a declaration made after the newest change of its type ({newest.date}: {newest.what})"
        yield Hit(("declared", "date"), str(made), wanted)
