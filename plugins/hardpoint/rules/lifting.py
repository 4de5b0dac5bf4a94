"""Rules about declared lifts."""

from __future__ import annotations

from collections.abc import Iterator

from hardpoint.records.known import entries, said
from hardpoint.records.load_points import LIFTING, LoadPoint
from hardpoint.rules.rule import AIRFRAME, Hit, Record


@AIRFRAME.rule(
    "not-a-lifting-point",
    "error",
    "A declared lift uses points that lift or are wrapped; a tie-down ring, a jack pad or a cleat does not lift.",
)
def not_a_lifting_point(record: Record) -> Iterator[Hit]:
    """Points of a lift whose use is not lifting."""
    points = entries(record.airframe.load_points)
    for name, lift in record.airframe.lifts.items():
        for index, point in enumerate(lift.points):
            if point in points and points[point].use not in LIFTING:
                yield Hit(
                    ("lifts", name, "points", index),
                    point,
                    f"a point with use: lift or wrap ({point} is a {points[point].use} point)",
                    "",
                    related=((("load_points", point, "use"), points[point].use),),
                )


@AIRFRAME.rule(
    "one-station-without-tail-line",
    "warning",
    "A lift by points at one station names a tail line: without it the airframe tips.",
)
def one_station_without_tail_line(record: Record) -> Iterator[Hit]:
    """Lifts whose points share one station and that declare no tail line."""
    points = entries(record.airframe.load_points)
    for name, lift in record.airframe.lifts.items():
        stations = {_station(points, point) for point in lift.points}
        if len(stations) == 1 and None not in stations and lift.tail_line not in points:
            yield Hit(
                ("lifts", name, "tail_line"),
                str(lift.tail_line),
                "a point with use: steady that holds the line",
                "tail-ring",
            )


def _station(points: dict[str, LoadPoint], name: str) -> str | None:
    place = said(points[name].place) if name in points else None
    fs = said(place.fs) if place else None
    return fs.text if fs else None
