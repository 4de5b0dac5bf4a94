"""Rules about single aircraft."""

from __future__ import annotations

from collections.abc import Iterator

from hardpoint.records.known import NonValue, said
from hardpoint.records.provenance import SectionName
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


_DECLARED_AGAINST: tuple[SectionName, ...] = (
    "canopies",
    "exits",
    "controls",
    "seats",
    "high_voltage",
    "pyrotechnics",
)
"""What crews act on first, and what a declaration is above all about."""


@TAIL.rule(
    "declared-before-the-check",
    "warning",
    "A declaration is as young as the checks of its type: what was found since, on a sister, was not declared against.",
)
def declared_before_the_check(under: TailUnder) -> Iterator[Hit]:
    """Declarations older than a check of the type, made on another aircraft, of what crews act on first."""
    declaration = said(under.aircraft.tail.declared)
    made = said(declaration.date) if declaration else None
    if not under.aircraft.declared or made is None:
        return
    for section, check in under.aircraft.of.airframe.checked.items():
        on, date = said(check.aircraft), said(check.date)
        if section in _DECLARED_AGAINST and on not in (None, under.aircraft.id) and date is not None and date > made:
            wanted = f"a declaration made after {section} of the type were looked at again, on {on} on {date}"
            yield Hit(("declared", "date"), str(made), wanted)
