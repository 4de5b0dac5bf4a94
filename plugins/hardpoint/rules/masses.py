"""Rules about masses and centres of gravity."""

from __future__ import annotations

from collections.abc import Iterator

from hardpoint.records.known import entries, said
from hardpoint.rules.rule import AIRFRAME, Hit, Record


@AIRFRAME.rule("centre-of-gravity-outside", "warning", "The empty centre of gravity lies within the airframe.")
def centre_of_gravity_outside(record: Record) -> Iterator[Hit]:
    """Empty CG against nose and tail: a slip in the arithmetic, not a claim that something is there."""
    cg, nose, tail = (
        said(record.airframe.masses.empty_cg),
        said(record.airframe.size.nose),
        said(record.airframe.size.tail),
    )
    fs = said(cg.fs) if cg else None
    if fs is None or nose is None or tail is None:
        return
    if (fs.low is not None and fs.low < nose) or (fs.high is not None and fs.high > tail):
        yield Hit(("masses", "empty_cg", "fs"), fs.text, f"a station between nose and tail, {nose} to {tail}")


@AIRFRAME.rule(
    "empty-mass-below-items", "warning", "The empty mass is not less than the sum of the heavy items that it contains."
)
def empty_mass_below_items(record: Record) -> Iterator[Hit]:
    """Sum of the stated items, the lighter reading of each, against the heavier reading of the empty mass."""
    empty = said(record.airframe.masses.empty)
    items = entries(record.airframe.masses.items)
    known = [(item.count, said(item.mass)) for item in items.values()]
    total = sum(count * mass.si[0] for count, mass in known if mass is not None)
    if empty is not None and total > empty.si[1]:
        yield Hit(("masses", "empty"), empty.text, f"at least the sum of its items, {total:.0f} kg", f"{total:.0f} kg")
