"""Rules about structure and cutting."""

from __future__ import annotations

from collections.abc import Iterator
from decimal import Decimal

from hardpoint.figures.hazards import ANYWHERE
from hardpoint.records.known import NonValue, entries, said
from hardpoint.records.structure import Zone
from hardpoint.rules.rule import AIRFRAME, Hit, Record

_SIDES = ("left", "right", "top", "floor")


@AIRFRAME.rule(
    "preferred-over-hazard",
    "error",
    "Cutting is not `preferred` where a tank, a fuel or pressure line, a bottle, a pyrotechnic or its cable, high "
    "voltage or a loaded cable lies or can lie. An unknown route counts over its whole possible stretch.",
)
def preferred_over_hazard(record: Record) -> Iterator[Hit]:
    """Each preferred side against everything that can lie behind it."""
    hazards = record.hazards
    for name, zone in entries(record.airframe.zones).items():
        for side in _SIDES:
            listed = getattr(zone, side)
            if listed is None or isinstance(listed, NonValue) or listed.cut != "preferred":
                continue
            for hazard in hazards:
                if hazard.meets(zone.fs, zone.wl or ANYWHERE, side):
                    can = "lies" if hazard.certain else "can lie"
                    yield Hit(
                        ("zones", name, side, "cut"),
                        "preferred",
                        f"another verdict: {hazard.what} {can} there",
                        "avoid",
                        related=((hazard.path, hazard.what),),
                    )


@AIRFRAME.rule(
    "absence-not-proven",
    "warning",
    "A claimed absence holds only if nothing of that kind can lie there: a line of unknown way leaves it open.",
)
def absence_not_proven(record: Record) -> Iterator[Hit]:
    """Claims against what can lie there, its way being unknown."""
    hazards = [hazard for hazard in record.hazards if not hazard.certain]
    for name, absence in record.airframe.absences.items():
        for hazard in hazards:
            if hazard.kind == absence.none_of and hazard.fs.overlaps(absence.fs):
                yield Hit(
                    ("absences", name, "fs"),
                    absence.fs.text,
                    f"a stretch where none can lie: the way of {hazard.what} is unknown, so it can lie there",
                    "",
                    related=((hazard.path, hazard.what),),
                )


@AIRFRAME.rule(
    "preferred-not-walked",
    "warning",
    "Cutting is `preferred` only where somebody walked the side, listed all that lies behind it and said so.",
)
def preferred_not_walked(record: Record) -> Iterator[Hit]:
    """Preferred sides whose listing is not walked and complete, or that say nothing of what lies behind."""
    for name, zone in entries(record.airframe.zones).items():
        for side in _SIDES:
            listed = getattr(zone, side)
            if listed is None or isinstance(listed, NonValue) or listed.cut != "preferred":
                continue
            if listed.listing != "walked and complete":
                wanted = "walked and complete, or another verdict on cutting"
                yield Hit(("zones", name, side, "listing"), str(listed.listing), wanted, "walked and complete")
            elif listed.behind is None:  # a written unknown is the error of preferred-over-hazard already
                wanted = "what lies behind a side that was walked, or nothing found"
                yield Hit(("zones", name, side, "behind"), "", wanted, "nothing found")


@AIRFRAME.rule(
    "zones-leave-a-gap", "warning", "Zones cover the airframe from nose to tail: a stretch in no zone has no verdict."
)
def zones_leave_a_gap(record: Record) -> Iterator[Hit]:
    """Stretches between nose and tail that no zone covers."""
    nose, tail = said(record.airframe.size.nose), said(record.airframe.size.tail)
    zones = entries(record.airframe.zones)
    if nose is None or tail is None or not zones:
        return
    for start, end in _gaps(list(zones.values()), nose, tail):
        yield Hit(
            ("zones",),
            f"nothing for FS {start} to {end}",
            "a zone for every stretch",
            "",
            message=(f"no zone covers FS {start} to {end}; nothing is known of cutting there"),
        )


def _gaps(zones: list[Zone], nose: Decimal, tail: Decimal) -> Iterator[tuple[Decimal, Decimal]]:
    reached = nose
    for zone in sorted(zones, key=lambda zone: zone.fs.low if zone.fs.low is not None else nose):
        start = nose if zone.fs.low is None else zone.fs.low
        if start > reached:
            yield reached, start
        reached = max(reached, tail if zone.fs.high is None else zone.fs.high)
    if reached < tail:
        yield reached, tail


@AIRFRAME.rule(
    "tank-in-no-zone", "warning", "Every tank in the fuselage lies in a zone, so that its skin has a verdict."
)
def tank_in_no_zone(record: Record) -> Iterator[Hit]:
    """Tanks whose stretch meets no zone."""
    zones = entries(record.airframe.zones)
    for name, tank in entries(record.airframe.tanks).items():
        place = said(tank.place)
        fs = said(place.fs) if place and place.on == "fuselage" else None
        if fs is not None and not any(zone.fs.overlaps(fs) for zone in zones.values()):
            yield Hit(
                ("tanks", name, "place", "fs"),
                fs.text,
                "a stretch that some zone covers",
                "",
                message=f"no zone covers this tank (FS {fs.text}); add a zone there, or mend the stretch",
            )


@AIRFRAME.rule(
    "absence-contradicted",
    "error",
    "A claimed absence (`no fuel line aft of FS 1650`) is not contradicted by the record itself.",
)
def absence_contradicted(record: Record) -> Iterator[Hit]:
    """Claims against what the same record says is there."""
    hazards = [hazard for hazard in record.hazards if hazard.certain]
    for name, absence in record.airframe.absences.items():
        for hazard in hazards:
            if hazard.kind == absence.none_of and hazard.fs.overlaps(absence.fs):
                yield Hit(
                    ("absences", name, "fs"),
                    absence.fs.text,
                    f"a stretch without one: {hazard.what} lies at FS {hazard.fs.text}",
                    "",
                    related=((hazard.path, hazard.what),),
                )


_FORBIDS = ("avoid", "never", "unknown")


@AIRFRAME.rule(
    "zones-contradict",
    "error",
    "Where two zones overlap, one does not allow (`preferred`, `possible`) what the other forbids or leaves unknown.",
)
def zones_contradict(record: Record) -> Iterator[Hit]:
    """Sides of overlapping zones, one of which may be cut and the other not."""
    zones = list(entries(record.airframe.zones).items())
    for name, zone in zones:
        for other_name, other in zones:
            if name == other_name or not _overlap(zone, other):
                continue
            for side in _SIDES:
                one, two = said(getattr(zone, side)), said(getattr(other, side))
                if one and two and one.cut in ("preferred", "possible") and two.cut in _FORBIDS:
                    related = ((("zones", other_name, side, "cut"), str(two.cut)),)
                    wanted = f"{two.cut}, as {other_name} says where the two overlap; or other stretches"
                    yield Hit(("zones", name, side, "cut"), str(one.cut), wanted, related=related)


def _overlap(one: Zone, other: Zone) -> bool:
    return one.fs.overlaps(other.fs) and (one.wl or ANYWHERE).overlaps(other.wl or ANYWHERE)


@AIRFRAME.rule(
    "walked-by-nobody",
    "warning",
    "A side is `walked and complete` only if the section zones was walked, on an aircraft.",
)
def walked_by_nobody(record: Record) -> Iterator[Hit]:
    """A section that was checked from paper, or not at all, with sides that claim to be walked."""
    check = record.airframe.checked.get("zones")
    if check is None or check.how not in ("from drawing", "from manual", "told by the owner", "not checked"):
        return
    walked = [
        ("zones", name, side, "listing")
        for name, zone in entries(record.airframe.zones).items()
        for side in _SIDES
        if (listed := said(getattr(zone, side))) and listed.listing == "walked and complete"
    ]
    if walked:
        wanted = f"walked, or another listing at the {len(walked)} sides that say walked and complete"
        related = tuple((path, "walked and complete") for path in walked)
        yield Hit(("checked", "zones", "how"), check.how, wanted, related=related)
