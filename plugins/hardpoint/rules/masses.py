"""Rules about masses and centres of gravity."""

from __future__ import annotations

from collections.abc import Iterator

from hardpoint.records.airframe import Airframe
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


@AIRFRAME.rule("maximum-below-empty", "warning", "The largest permitted mass is more than the empty mass.")
def maximum_below_empty(record: Record) -> Iterator[Hit]:
    """Largest permitted mass, by its larger reading, not above the lighter reading of the empty mass."""
    maximum, empty = said(record.airframe.masses.maximum), said(record.airframe.masses.empty)
    if maximum is None or empty is None or maximum.si[1] > empty.si[0]:
        return
    first = maximum.stated[0]
    slip = first.unit == "lb" and float(first.value) > empty.si[0]
    meant = f"; are {first.value} kg meant?" if slip else ""
    yield Hit(("masses", "maximum"), maximum.text, f"more than the empty mass, {empty.text}{meant}")


@AIRFRAME.rule(
    "centre-of-gravity-off-its-wheels",
    "warning",
    "The empty centre of gravity lies between the foremost and the rearmost wheel: otherwise it would not stand.",
)
def centre_of_gravity_off_its_wheels(record: Record) -> Iterator[Hit]:
    """Empty CG, all of its stretch, outside the wheels of the outline."""
    profile, cg = said(record.airframe.profile), said(record.airframe.masses.empty_cg)
    fs = said(cg.fs) if cg else None
    wheels = sorted({wheel.fs for wheel in profile.gear.values()}) if profile else []
    if fs is None or len(wheels) < 2:
        return
    if (fs.high is not None and fs.high < wheels[0]) or (fs.low is not None and fs.low > wheels[-1]):
        wanted = f"a station between its wheels, {wheels[0]} to {wheels[-1]}; is another datum meant?"
        yield Hit(("masses", "empty_cg", "fs"), fs.text, wanted)


@AIRFRAME.rule(
    "heavy-end-contradicted",
    "warning",
    "The heavy end fits the centre of gravity and how it floats, or heavy_end_because says why it does not.",
)
def heavy_end_contradicted(record: Record) -> Iterator[Hit]:
    """A heavy end that is clearly the lighter one, or rides high afloat, and no reason given."""
    masses, water = record.airframe.masses, said(record.airframe.water)
    if masses.heavy_end not in ("nose", "tail") or masses.heavy_end_because:
        return
    end = str(masses.heavy_end)
    share = _share(record.airframe)
    if share is not None and ((end == "nose" and share > 0.6) or (end == "tail" and share < 0.4)):
        wanted = f"the other end, or why: the centre of gravity lies at {share:.0%} of the length from the nose"
        yield Hit(("masses", "heavy_end"), end, wanted, "tail" if end == "nose" else "nose")
    elif water and {end, str(water.floats)} in ({"nose", "tail down"}, {"tail", "nose down"}):
        wanted = f"the end that goes low afloat, or why not: water.floats is {water.floats}"
        related = ((("water", "floats"), str(water.floats)),)
        yield Hit(("masses", "heavy_end"), end, wanted, str(water.floats).split()[0], related=related)


def _share(airframe: Airframe) -> float | None:
    """How far the empty CG lies from the nose, as a part of the length."""
    cg, nose, tail = said(airframe.masses.empty_cg), said(airframe.size.nose), said(airframe.size.tail)
    fs = said(cg.fs) if cg else None
    if fs is None or fs.middle is None or nose is None or tail is None or tail <= nose:
        return None
    return float((fs.middle - nose) / (tail - nose))
