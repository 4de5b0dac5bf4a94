"""The photos that records name: which files they are, and every reason why one of them cannot be published."""

from __future__ import annotations

import os
import pathlib
from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from hardpoint.findings import Finding, Path, quoted
from hardpoint.load import folder as fleet_folder
from hardpoint.load.bounds import RefusedError, read_bounded
from hardpoint.load.models import error
from hardpoint.load.reading_rules import PhotoRule
from hardpoint.nearest import did_you_mean
from hardpoint.photos import MAX_BYTES, RefusedPhotoError, prepare
from hardpoint.records.fleet import Fleet, Written
from hardpoint.records.pictures import Picture
from hardpoint.records.provenance import Photo

SHELF = "photos"
_REFUSED: Mapping[str, PhotoRule] = {
    "not-a-file": "photo-not-a-file",
    "cannot-read": "photo-cannot-read",
    "too-large": "photo-too-large",
}


@dataclass(frozen=True)
class Mention:
    """A record's word on a photo, and where it stands."""

    name: str
    photo: Photo
    written: Written


def pictures(folder: pathlib.Path, fleet: Fleet) -> tuple[dict[str, Picture], list[Finding]]:
    """Every photo that a record names, made ready, and what is wrong with the others, told wherever they are named."""
    mentions = list(_mentions(fleet))
    there, misfit = fleet_folder.names(folder / SHELF) if mentions else ([], "")
    ready: dict[str, Picture] = {}
    refused: dict[str, RefusedPhotoError] = {}
    for name in sorted({mention.photo.file for mention in mentions}):
        try:
            ready[name] = _picture(folder / SHELF / name, name, there, misfit)
        except RefusedPhotoError as problem:
            refused[name] = problem
    found = [_finding(mention, refused[mention.photo.file]) for mention in mentions if mention.photo.file in refused]
    return ready, list(dict.fromkeys(found))


def _mentions(fleet: Fleet) -> Iterator[Mention]:
    """Of types, of aircraft, and of what an aircraft's differences put among its type's photos."""
    for type_ in fleet.types.values():
        yield from (Mention(name, photo, type_.written) for name, photo in type_.airframe.photos.items())
    for tail in fleet.tails.values():
        yield from (Mention(name, photo, tail.own) for name, photo in tail.tail.photos.items())
        if any(override.at[0] == "photos" for override in tail.overrides):
            yield from (Mention(name, photo, tail.written) for name, photo in tail.airframe.photos.items())


def _picture(path: pathlib.Path, name: str, there: list[str], misfit: str) -> Picture:
    if misfit:
        expected = "a folder fleet/photos that is no link and can be opened"
        raise RefusedPhotoError("photo-not-a-file", misfit, expected, "", f"got {misfit}, needs {expected}")
    if not os.path.lexists(path):
        guess = did_you_mean(name, there)
        hint = f"there is {quoted(guess)}" if guess else "put it there, or take this entry out"
        message = f"there is no file {quoted(name)} in fleet/photos; {hint}"
        raise RefusedPhotoError("photo-missing", name, "the name of a file in fleet/photos", guess, message)
    try:
        data = read_bounded(path, MAX_BYTES)
    except RefusedError as refused:
        message = refused.message
        if refused.rule == "too-large":
            message = f"got {refused.read}, needs {refused.expected}; make it smaller"
        raise RefusedPhotoError(_REFUSED[refused.rule], refused.read, refused.expected, "", message) from refused
    return prepare(data, name)


def _finding(mention: Mention, problem: RefusedPhotoError) -> Finding:
    path: Path = ("photos", mention.name, "file")
    at = mention.written.where(path)
    return error(problem.rule, at, path, problem.read, problem.expected, problem.example, problem.message)
