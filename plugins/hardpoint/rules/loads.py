"""Rules about load points."""

from __future__ import annotations

import re
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


@AIRFRAME.rule(
    "wrap-without-strap",
    "warning",
    "A wrap says how wide its strap is at least and where it leaves the skin, if need be unknown.",
)
def wrap_without_strap(record: Record) -> Iterator[Hit]:
    """Wraps without strap_width or leaves_skin."""
    examples = {"strap_width": "100 mm", "leaves_skin": "700"}
    for name, point in entries(record.airframe.load_points).items():
        left_out = [key for key in examples if point.use == "wrap" and getattr(point, key) is None]
        if left_out:
            wanted = f"what a wrap has beside its place: {' and '.join(left_out)}, if need be unknown"
            yield Hit(("load_points", name), "", wanted, f"{left_out[0]}: {examples[left_out[0]]}")


@AIRFRAME.rule(
    "pair-on-one-side",
    "warning",
    "A point of which there is one on each side has `side: both`: otherwise it counts as a single one.",
)
def pair_on_one_side(record: Record) -> Iterator[Hit]:
    """Points whose words or id speak of a pair while their side is one."""
    for name, point in entries(record.airframe.load_points).items():
        place = said(point.place)
        is_pair = "pair" in name.split("-") or re.search(r"\beach side\b", str(point.what))
        if place and is_pair and place.side in ("left", "right", "centre"):
            yield Hit(("load_points", name, "place", "side"), str(place.side), "both: one on each side", "both")
