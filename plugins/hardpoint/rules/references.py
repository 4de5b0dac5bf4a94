"""Rules about ids: what a record names exists."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from hardpoint.findings import Path, Severity
from hardpoint.records.airframe import Airframe
from hardpoint.records.known import Tree, entries, said
from hardpoint.records.locate import choices_at, leads_somewhere
from hardpoint.records.override import parts
from hardpoint.records.places import Place
from hardpoint.records.provenance import Check, Photo
from hardpoint.records.station import Cordon
from hardpoint.records.trees import value_at
from hardpoint.records.walk import parts_of
from hardpoint.rules.nearest import near_miss
from hardpoint.rules.rule import (
    AIRFRAME,
    EVENT,
    STATION,
    TAIL,
    Hit,
    LineUpUnder,
    Record,
    StationUnder,
    Subject,
    TailUnder,
    everywhere,
)


@AIRFRAME.rule(
    "no-such-id",
    "error",
    "An id that a record refers to exists in it: seats, canopies, exits, controls, load points, items.",
)
def no_such_id(record: Record) -> Iterator[Hit]:
    """Every reference by id within one record."""
    airframe = record.airframe
    yield from _places(airframe)
    yield from _ways_out(airframe)
    yield from _controls(airframe)
    yield from _lifts(airframe)


def _places(airframe: Airframe) -> Iterator[Hit]:
    landmarks = entries(airframe.landmarks)
    for path, part in parts_of(airframe):
        if not isinstance(part, Place):
            continue
        if part.seat is not None and part.seat not in airframe.seats:
            yield near_miss((*path, "seat"), "seat", part.seat, airframe.seats)
        if part.near is not None and part.near not in landmarks:
            yield near_miss((*path, "near"), "landmark", part.near, landmarks)


def _ways_out(airframe: Airframe) -> Iterator[Hit]:
    canopies, exits = entries(airframe.canopies), entries(airframe.exits)
    for name, canopy in canopies.items():
        for index, seat in enumerate(canopy.covers):
            if seat not in airframe.seats:
                yield near_miss(("canopies", name, "covers", index), "seat", seat, airframe.seats)
        release = said(canopy.hinge_release)
        if release is not None and release not in exits:
            yield near_miss(("canopies", name, "hinge_release"), "exit", release, exits)
    for name, exit_ in exits.items():
        if exit_.opens not in canopies and exit_.opens not in airframe.seats:
            yield near_miss(("exits", name, "opens"), "canopy or open seat", exit_.opens, [*canopies, *airframe.seats])
    for name, device in entries(airframe.pyrotechnics).items():
        if device.seat is not None and device.seat not in airframe.seats:
            yield near_miss(("pyrotechnics", name, "seat"), "seat", device.seat, airframe.seats)


def _controls(airframe: Airframe) -> Iterator[Hit]:
    controls = entries(airframe.controls)
    for name, control in controls.items():
        if control.repeats is not None and control.repeats not in controls:
            yield near_miss(("controls", name, "repeats"), "control", control.repeats, controls)
    for name, battery in entries(airframe.batteries).items():
        cut_by = said(battery.cut_by)
        if cut_by is not None and cut_by not in controls:
            yield near_miss(("batteries", name, "cut_by"), "control", cut_by, controls)
    system = said(airframe.high_voltage)
    disconnect = said(system.disconnect) if system else None
    if disconnect is not None and disconnect not in controls:
        yield near_miss(("high_voltage", "disconnect"), "control", disconnect, controls)


def _lifts(airframe: Airframe) -> Iterator[Hit]:
    points, items = entries(airframe.load_points), entries(airframe.masses.items)
    for name, lift in airframe.lifts.items():
        for index, point in enumerate(lift.points):
            if point not in points:
                yield near_miss(("lifts", name, "points", index), "load point", point, points)
        line = said(lift.tail_line)
        if line is not None and line not in points:
            yield near_miss(("lifts", name, "tail_line"), "load point", line, points)
        hook = said(lift.hook)
        for leg in hook.legs if hook else ():
            if leg not in lift.points:
                yield near_miss(("lifts", name, "hook", "legs", leg), "point of this lift", leg, lift.points)
        for index, item in enumerate(lift.taken_off):
            if item not in items:
                yield near_miss(("lifts", name, "taken_off", index), "heavy item", item, items)
        yield from _devices(("lifts", name), lift.not_while_live, airframe)
    for name, load_point in points.items():
        yield from _devices(("load_points", name), load_point.not_while_live, airframe)


def _devices(path: Path, ids: tuple[str, ...], airframe: Airframe) -> Iterator[Hit]:
    fitted = entries(airframe.pyrotechnics)
    for index, id_ in enumerate(ids):
        if id_ not in fitted:
            yield near_miss((*path, "not_while_live", index), "rocket or cartridge", id_, fitted)


_PHOTO: tuple[str, Severity, str] = ("photo-of-nothing", "error", "A photo shows something that the record has.")


@AIRFRAME.rule(*_PHOTO)
def photo_of_nothing(record: Record) -> Iterator[Hit]:
    """Photos of a type whose path leads nowhere; on an aircraft that lacks the part, the type's photo stays a photo."""
    tail = record.fleet.tails.get(record.id)
    return _photos(record.airframe.photos, record.tree, *([tail.of.tree] if tail else []))


@TAIL.rule(*_PHOTO)
def photo_of_nothing_on_the_tail(under: TailUnder) -> Iterator[Hit]:
    """Photos of one aircraft whose path leads nowhere in its record."""
    return _photos(under.aircraft.tail.photos, under.aircraft.tree)


def _photos(photos: Mapping[str, Photo], *trees: dict[str, Tree]) -> Iterator[Hit]:
    for name, photo in photos.items():
        if all(value_at(tree, parts(photo.shows)) is None for tree in trees):
            yield Hit(("photos", name, "shows"), photo.shows, "a path of this record", "controls.magneto-left")


_OTHER: tuple[str, Severity, str] = (
    "photo-of-another",
    "error",
    "A photo of a type shows an aircraft of that type, one of an aircraft that very aircraft.",
)


@AIRFRAME.rule(*_OTHER)
def photo_of_another_type(record: Record) -> Iterator[Hit]:
    """Photos of a type that show an aircraft which this fleet knows to be of another one."""
    tail = record.fleet.tails.get(record.id)
    type_id = tail.of.id if tail else record.id
    for name, photo in record.airframe.photos.items():
        shown = record.fleet.tails.get(str(photo.aircraft))
        if shown and shown.of.id != type_id:
            expected = f"an aircraft of the type {type_id}; {shown.id} is a {shown.of.id}"
            yield Hit(("photos", name, "aircraft"), shown.id, expected)


@TAIL.rule(*_OTHER)
def photo_of_another_aircraft(under: TailUnder) -> Iterator[Hit]:
    """Photos in an aircraft's own file that show another one."""
    own = under.aircraft.id
    for name, photo in under.aircraft.tail.photos.items():
        if said(photo.aircraft) not in (None, own):
            expected = f"{own}: a photo of another aircraft belongs into the type's record or into that aircraft's"
            yield Hit(("photos", name, "aircraft"), str(photo.aircraft), expected, own)


@everywhere("no-such-source", "error", "A citation exists in sources.yaml.")
def no_such_source(subject: Subject) -> Iterator[Hit]:
    """Citations of provenance and of cordons; where sources.yaml itself cannot be read nothing is said of them."""
    if subject.fleet.sources_written is None:
        return
    for path, part in subject.parts:
        source = part.source if isinstance(part, Check | Cordon) else None
        if source is not None and source not in subject.fleet.sources:
            yield near_miss((*path, "source"), "source", source, subject.fleet.sources)


_PATH: tuple[str, Severity, str] = (
    "path-of-nothing",
    "error",
    "A path that a claim or the station names is one that a type's record can have.",
)


@EVENT.rule(*_PATH)
def claim_of_nothing(under: LineUpUnder) -> Iterator[Hit]:
    """Claims about a path that no record can have: nothing would ever be checked."""
    for name, claim in under.event.claims.items():
        yield from _patterns(("claims", name, "every"), claim.every)


@EVENT.rule(
    "claim-of-no-word",
    "error",
    "Where a claim is about a choice, what it expects and what it is among are words of that choice.",
)
def claim_of_no_word(under: LineUpUnder) -> Iterator[Hit]:
    """Claims that expect, or pick out, what no record can say there: every entry would break them."""
    for name, claim in under.event.claims.items():
        words = choices_at(Airframe, parts(claim.every))
        asked: list[tuple[Path, str]] = [(("expects",), claim.expects)]
        asked += [(("among", index), word) for index, word in enumerate(claim.among)]
        for key, word in asked if words else ():
            if word not in words:
                yield near_miss(("claims", name, *key), f"word at {claim.every}", word, words)


@STATION.rule(*_PATH)
def unfit_by_nothing(under: StationUnder) -> Iterator[Hit]:
    """What makes an entry unfit, under a path that no record can have: nothing would ever be unfit."""
    station = under.house.station
    for key, patterns in (("unfit_also", station.unfit_also), ("unfit_over_water", station.unfit_over_water)):
        for index, pattern in enumerate(patterns):
            yield from _patterns((key, index), pattern)


def _patterns(path: Path, pattern: str) -> Iterator[Hit]:
    if not leads_somewhere(Airframe, parts(pattern)):
        yield Hit(path, pattern, "a path of a type's record, with * for any id", "seats.*.ties.*.kind")
