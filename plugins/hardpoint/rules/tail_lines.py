"""Rules about the line that keeps a lifted airframe from tipping, and about what must not be live during a lift."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from decimal import Decimal

from hardpoint.records.known import entries, said
from hardpoint.records.load_points import LoadPoint
from hardpoint.rules.devices import live_devices
from hardpoint.rules.measure import in_units
from hardpoint.rules.rule import AIRFRAME, Hit, Record


@AIRFRAME.rule(
    "tail-line-of-another-use",
    "warning",
    "A tail line is made fast to a point that steadies or lifts, not to one for tying down, jacking or towing.",
)
def tail_line_of_another_use(record: Record) -> Iterator[Hit]:
    """Tail lines at a point that is made for something else."""
    points = entries(record.airframe.load_points)
    for name, lift in record.airframe.lifts.items():
        point = points.get(str(lift.tail_line))
        if point and point.use in ("tie-down", "jack", "tow"):
            yield Hit(
                ("lifts", name, "tail_line"),
                str(lift.tail_line),
                f"a point with use: steady ({lift.tail_line} is a {point.use} point)",
                related=((("load_points", str(lift.tail_line), "use"), point.use),),
            )


@AIRFRAME.rule(
    "tail-line-without-lever",
    "warning",
    "A tail line is made fast at least half a metre from every point that lifts: beside one it holds nothing.",
)
def tail_line_without_lever(record: Record) -> Iterator[Hit]:
    """Tail lines at one of the lifting points themselves, or at their station."""
    points = entries(record.airframe.load_points)
    lever = in_units(record.airframe, 500)
    for name, lift in record.airframe.lifts.items():
        line = _station(points, str(lift.tail_line))
        for id_ in lift.points:
            here = _station(points, id_)
            beside = line is not None and here is not None and abs(line - here) < lever
            if id_ == lift.tail_line or beside:
                where = "it is one of them" if id_ == lift.tail_line else f"{id_} is at the same station"
                wanted = f"a point half a metre or more from the ones that lift; {where}"
                related = ((("load_points", id_, "place"), id_),)
                yield Hit(("lifts", name, "tail_line"), str(lift.tail_line), wanted, related=related)
                break


def _station(points: Mapping[str, LoadPoint], name: str) -> Decimal | None:
    place = said(points[name].place) if name in points else None
    fs = said(place.fs) if place else None
    return fs.middle if fs else None


@AIRFRAME.rule(
    "lift-with-live-device",
    "warning",
    "Where a rocket or a cartridge is fitted, a declared lift names it under not_while_live: it is refused until then.",
)
def lift_with_live_device(record: Record) -> Iterator[Hit]:
    """Lifts of an airframe with a device that has to be taken as live, which do not wait for it."""
    live = live_devices(record.airframe)
    for name, lift in record.airframe.lifts.items():
        missing = [id_ for id_ in live if id_ not in lift.not_while_live]
        if missing:
            yield Hit(
                ("lifts", name, "not_while_live") if lift.not_while_live else ("lifts", name),
                ", ".join(lift.not_while_live),
                f"under not_while_live, what counts as live until it is reported: {', '.join(missing)}",
                f"not_while_live: [{', '.join(live)}]",
            )
