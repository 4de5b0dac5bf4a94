"""Photos of records on the crew pages: which of them stands where, and what is told beside it."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import replace

from hardpoint.findings import Path
from hardpoint.pages import addresses
from hardpoint.pages.shown import Shown
from hardpoint.pages.site import Site
from hardpoint.pages.telling import unknown
from hardpoint.pages.view import Photo, Photos, Value
from hardpoint.records.airframe import Airframe
from hardpoint.records.known import entries, said
from hardpoint.records.override import parts
from hardpoint.records.provenance import Photo as Taken
from hardpoint.records.trees import value_at
from hardpoint.words import say

ELSEWHERE: Path = ("photos",)
"""Where photos stand that show none of the parts below."""
_OF_A_SEAT = ("do_not_pull", "worn", "grip")


def place_of(airframe: Airframe, shows: Path) -> Path:
    """The part of the page that a photo belongs to: ``exits.sill-knob.steps.0`` stands with its exit."""
    section, name, *rest = (*map(str, shows), "")
    if section in ("controls", "exits", "canopies") and name in entries(getattr(airframe, section)):
        return section, name
    seat = airframe.seats.get(name) if section == "seats" else None
    if seat is None:
        return ELSEWHERE
    if rest[0] == "ties" and rest[1] in entries(seat.ties):
        return section, name, "ties", rest[1]
    return (section, name, "grip") if rest[0] in _OF_A_SEAT else (section, name)


def pictured(shown: Shown, site: Site, page: str, own: Mapping[str, Taken] | None = None) -> Shown:
    """The same type or tail with its photos; ``own`` are those of the tail's own file.

    Where an aircraft has a photo of its own of something, its type's photo of that stays on the type's page. What this
    aircraft does not have is not shown on its page.
    """
    listed = [(f"photo-here-{name}", taken) for name, taken in (own or {}).items()]
    covered = {taken.shows for _, taken in listed}
    listed += [(f"photo-{name}", taken) for name, taken in shown.airframe.photos.items() if taken.shows not in covered]
    places: dict[Path, tuple[Photo, ...]] = {}
    for anchor, taken in listed:
        shows = parts(taken.shows)
        if value_at(shown.tree, shows) is not None:
            place = place_of(shown.airframe, shows)
            places[place] = (*places.get(place, ()), _photo(shown, site, page, anchor, taken))
    return replace(shown, photos=places)


def _photo(shown: Shown, site: Site, page: str, anchor: str, taken: Taken) -> Photo:
    picture = site.fleet.pictures[taken.file]
    small, large = (addresses.relative(addresses.photo(one.digest), page) for one in (picture.small, picture.large))
    other = bool(shown.tail) and taken.aircraft != shown.tail
    differs = other and _differs(shown, parts(taken.shows))
    size = picture.small.width, picture.small.height
    caution = _caution(said(taken.aircraft), differs) if other else ""
    return Photo(anchor, small, *size, large, taken.alt, _told(taken), caution, differs)


def _told(taken: Taken) -> tuple[Value, ...]:
    date, by, aircraft = said(taken.date), said(taken.by), said(taken.aircraft)
    return (
        Value(taken.view),
        Value(say("taken {date}", date=date)) if date else replace(unknown(), text=say("date UNKNOWN")),
        Value(say("by {role}", role=by)) if by else replace(unknown(), text=say("by whom UNKNOWN")),
        Value(taken.licence),
        Value(say("aircraft {tail}", tail=aircraft)) if aircraft else replace(unknown(), text=say("aircraft UNKNOWN")),
    )


def _caution(other: str | None, differs: bool) -> str:
    """On a tail's page, of a photo that is not known to be of it."""
    if differs:
        return say("Photo shows {other}; this tail differs.", other=other or say("an UNKNOWN aircraft"))
    if other is None:
        return say("Of which aircraft this photo is: UNKNOWN. Not known to be this one.")
    return say("Photo of another aircraft, {other}.", other=other)


def _differs(shown: Shown, shows: Path) -> bool:
    """Whether anything of the part that is seen differs on this tail."""
    place = place_of(shown.airframe, shows)
    part = shows if place == ELSEWHERE or place[2:] == ("grip",) else place
    return any(part[: len(o.at)] == o.at or o.at[: len(part)] == part for o in shown.overrides)


def wants_sketch(shown: Shown, place: Path) -> bool:
    """Whether no photo shows the part as it is on this aircraft."""
    return all(photo.differs for photo in shown.photos.get(place, ()))


def photos_at(shown: Shown, place: Path, title: str = "") -> Iterator[Photos]:
    """The block of what has photos and no steps."""
    if shown.photos.get(place):
        yield Photos("", title, shown.photos[place])


def photo_files(site: Site) -> dict[str, bytes]:
    """Address and bytes of every published photo."""
    sizes = [size for picture in site.fleet.pictures.values() for size in (picture.small, picture.large)]
    return {addresses.photo(size.digest): size.data for size in sizes}
