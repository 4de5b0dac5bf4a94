"""Rules about load points."""

from __future__ import annotations

from collections.abc import Iterator

from hardpoint.records.known import entries, said
from hardpoint.records.load_points import LIFTING
from hardpoint.rules.rule import AIRFRAME, Hit, Record


@AIRFRAME.rule(
    "allowable-of-unknown-basis",
    "warning",
    "A point that lifts says what its allowable is: a limit, a proof load, an ultimate, or what the owner does.",
)
def allowable_of_unknown_basis(record: Record) -> Iterator[Hit]:
    """Lifting points whose basis is unknown: they are refused in every computed lift."""
    for name, point in entries(record.airframe.load_points).items():
        if point.use in LIFTING and point.basis == "unknown":
            yield Hit(
                ("load_points", name, "basis"),
                "unknown",
                "limit, proof, ultimate or owner's practice",
                "limit",
                message="its basis is unknown, so no lift by this point can be computed; ask who stated the allowable",
            )


@AIRFRAME.rule(
    "pair-without-buttock-line", "warning", "A pair (`side: both`) says how far from the centre line each one is."
)
def pair_without_buttock_line(record: Record) -> Iterator[Hit]:
    """Load points given as a pair without bl."""
    for name, point in entries(record.airframe.load_points).items():
        place = said(point.place)
        if place and place.side == "both" and said(place.bl) is None:
            yield Hit(("load_points", name, "place"), "side: both", "the buttock line of each of the pair", "bl: 310")
