"""Every rule by which reading refuses something, with a line on it, for the type checker, the docs and the tests."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Literal

from hardpoint.records.problems import RecordRule

DocumentRule = Literal[
    "bad-yaml", "cannot-read", "comment-or-text", "control-character", "duplicate-key", "empty-value", "merge-key",
    "not-a-file", "not-text-key", "not-utf8", "several-documents", "too-deep", "too-large", "too-many", "top-level",
    "yaml-anchor", "yaml-directive", "yaml-tag",
]  # fmt: skip
"""What a file is refused for before anybody asks what it says."""

FolderRule = Literal["file-name", "missing-file", "no-fleet", "no-such-type", "not-a-folder"]
ModelRule = Literal["missing-key", "not-one-of", "unknown-key", "wrong-shape"]
PhotoRule = Literal[
    "photo-cannot-read", "photo-missing", "photo-not-a-file", "photo-not-a-photo", "photo-other-format",
    "photo-too-large",
]  # fmt: skip
"""What a photo that a record names is refused for."""

ReadingRule = DocumentRule | FolderRule | ModelRule | PhotoRule | RecordRule

READING_RULES: Mapping[ReadingRule, str] = {
    "ambiguous-unit": "A unit that means several things (quart, ton) says which.",
    "bad-event-number": "A display number has one to four letters or digits.",
    "bad-id": "Ids are small letters and digits, joined by hyphens.",
    "bad-name": "Names of landmarks and local words are letters, digits, spaces and hyphens.",
    "bad-photo-name": "A photo is named by its file alone: small letters, then .jpg, .jpeg, .png or .webp.",
    "bad-registration": "Registrations are written in capitals with their hyphen.",
    "bad-yaml": "A file is made of keys, colons, spaces and values, indented by spaces.",
    "bare-gallon": "A gallon says whether it is a US or an imperial one.",
    "cannot-read": "A file can be read.",
    "comment-or-text": "Behind a value, # with a space after it begins a comment; in quotes it is text.",
    "control-character": "No character is hidden.",
    "difference-in-a-list": "A difference replaces a list whole, never one item of it.",
    "difference-no-place": "A difference stands at a path of the type's record.",
    "difference-outdated": "A difference repeats what the type says now.",
    "difference-says-nothing": "A difference says something else than the type.",
    "difference-twice": "One place has one difference.",
    "duplicate-key": "A key stands once.",
    "empty-value": "No value is left blank: unknown, not fitted and not applicable are answers.",
    "file-name": "Files are named after what they hold.",
    "gauge-or-absolute": "A pressure says gauge or absolute where its key does not.",
    "governed-pair": "A pair of which one statement governs has the keys stated and governs, and no others.",
    "governs-not-stated": "What governs is one of the two statements.",
    "mass-for-force": "A force is not given as a mass.",
    "merge-key": "What belongs to a part is written out there.",
    "missing-file": "A fleet has its station.yaml and its sources.yaml.",
    "missing-key": "A key that has to be answered is there, if need be with unknown.",
    "negative-quantity": "No mass, volume or force is less than nothing, no temperature below absolute zero.",
    "no-fleet": "A fleet is a folder with at least one record under types.",
    "no-such-type": "An aircraft is of a type that this fleet has.",
    "non-value-not-admitted": "What is certainly there is not called not fitted or not applicable.",
    "not-a-count": "A count is a whole number without leading zeros.",
    "not-a-date": "A date is year-month-day.",
    "not-a-factor": "A factor is a plain number.",
    "not-a-file": "A record is a plain file: no link, folder or pipe.",
    "not-a-folder": "The folders types, tails and events can be opened, and are no links.",
    "not-a-listing": "What lies behind a skin is a list under ids, nothing found, or unknown.",
    "not-a-position": "A position is a plain number or a stretch in the unit of the datum.",
    "not-a-time": "A time of day is hours:minutes.",
    "not-a-travel": "How far something moves is an angle, a length or a number of turns.",
    "not-an-answer": "None, n/a and the like are not answers: unknown, not fitted and not applicable are.",
    "not-one-of": "A value with fixed words is one of them.",
    "not-text": "Words and figures stand directly behind their key.",
    "not-text-key": "A key is words on one line.",
    "not-utf8": "Files are saved as UTF-8.",
    "photo-cannot-read": "A photo's file can be read.",
    "photo-missing": "A photo that a record names is there.",
    "photo-not-a-file": "A photo is a plain file, its folder a plain folder: no links, no pipes.",
    "photo-not-a-photo": "A photo is a whole picture: JPEG, PNG or WebP.",
    "photo-other-format": "A photo's name ends as its format does.",
    "photo-too-large": "A photo has at most 20 million bytes, 65 million pixels and 20 000 pixels along a side.",
    "place-says-nothing": "A place gives a station, a panel or what the hand feels.",
    "several-documents": "A file holds one record.",
    "stretch-backwards": "A stretch begins with the smaller number.",
    "too-deep": "A record is not nested without end.",
    "too-large": "A record has at most a million bytes.",
    "too-long": "Words are at most 1000 characters.",
    "too-many": "A record has at most 50 000 keys and values.",
    "top-level": "A record begins with keys.",
    "turn-without-observer": "A turn says from where it is seen.",
    "undeclared-differences": "What differs on an aircraft is a list, none recorded or unknown.",
    "unknown-key": "A key is one that is known in its place.",
    "unknown-way": "A direction is one of the airframe's.",
    "unreadable-quantity": "A quantity is a number and a unit.",
    "way-not-of-the-airframe": "Up, down, left, right and level are no directions: wrecks lie inverted.",
    "wrong-dimension": "A quantity is of the kind that its key asks for.",
    "wrong-shape": "Keys stand where keys belong, lists where lists belong.",
    "yaml-anchor": "Values are written out, not referred to.",
    "yaml-directive": "A file has no line that begins with %.",
    "yaml-tag": "Values have no tag.",
}
"""Rule id to what it asks for."""
