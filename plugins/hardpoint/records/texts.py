"""Text scalars of records: words, ids, dates, counts, positions. Everything arrives as the author's text."""

from __future__ import annotations

import datetime as dt
import re
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from decimal import Decimal
from typing import Annotated, Any, TypeVar

from pydantic import GetCoreSchemaHandler, GetJsonSchemaHandler
from pydantic.json_schema import JsonSchemaValue
from pydantic_core import CoreSchema, core_schema

from hardpoint.findings import quoted
from hardpoint.records.known import NonValue
from hardpoint.records.problems import problem

MOST_WORDS = 1000
_LONGEST_NAME = 60
_ID = re.compile(r"[a-z0-9]+(?:-[a-z0-9]+)*")
_NAME = re.compile(r"[^\W_](?:(?:[^\W_]|[ '-])*[^\W_])?", re.UNICODE)
_REGISTRATION = re.compile(r"[A-Z0-9]{1,4}-[A-Z0-9]{1,6}")
_NUMBER = r"-?(?:0|[1-9][0-9]{0,6})(?:\.[0-9]{1,3})?"
_SPAN = re.compile(
    rf"(?P<at>{_NUMBER})|(?P<low>{_NUMBER}) to (?P<high>{_NUMBER})"
    rf"|(?:below|forward of) (?P<max>{_NUMBER})|(?:above|aft of) (?P<min>{_NUMBER})"
)
T = TypeVar("T")
_NON_VALUES = frozenset(NonValue)


@dataclass(frozen=True)
class Span:
    """A position or a stretch along one axis, in the unit of the record's datum. ``None`` is an open end."""

    text: str
    low: Decimal | None
    high: Decimal | None

    @property
    def middle(self) -> Decimal | None:
        """Half-way between the ends, None where one is open."""
        return None if self.low is None or self.high is None else (self.low + self.high) / 2

    def overlaps(self, other: Span) -> bool:
        """True where the two stretches share more than an end point, or a point lies inside or on an end."""
        starts = self.low is None or other.high is None or self.low <= other.high
        ends = self.high is None or other.low is None or other.low <= self.high
        touch = (self.low is not None and self.low == other.high) or (self.high is not None and self.high == other.low)
        both_long = self.low != self.high and other.low != other.high
        return starts and ends and not (touch and both_long)


class Reads:
    """A pydantic annotation: a function from text to value, and what the JSON Schema says of the text.

    ``exact``: blanks at the ends count. Ids and names are keys too, and two keys must not become one.
    """

    def __init__(self, read: Callable[[str], Any], schema: Mapping[str, Any], *, exact: bool = False) -> None:
        self.read, self.schema, self.exact = read, dict(schema), exact

    def __get_pydantic_core_schema__(self, source: Any, handler: GetCoreSchemaHandler) -> CoreSchema:
        return core_schema.no_info_plain_validator_function(self._validate)

    def __get_pydantic_json_schema__(self, schema: CoreSchema, handler: GetJsonSchemaHandler) -> JsonSchemaValue:
        shown = dict(self.schema)
        if shown["title"] == "words":  # one example for every kind of words says the wrong thing at most keys
            del shown["examples"]
        return shown

    def _validate(self, value: Any) -> Any:
        text = text_of(value, str(self.schema["title"]), str(self.schema["examples"][0]))
        return self.read(value if self.exact else text)


def text_of(value: Any, expected: str, example: str, *, at: str = "") -> str:
    """The text of a scalar; a list or a mapping in its place is a finding, at the key ``at`` below if that is meant."""
    if isinstance(value, str):
        return value.strip()
    kind = "a list" if isinstance(value, list | tuple) else "keys"
    raise problem(
        "not-text",
        read=kind,
        expected=expected,
        example=example,
        message=f"got {kind}, needs {expected}, for example {quoted(example)}",
        at=at,
    )


def _words(text: str) -> str:
    if text in _NON_VALUES:
        raise problem(
            "non-value-not-admitted",
            read=text,
            expected="words: this key is no question. Say what there is, or leave the key out where it may be left out",
            example="",
        )
    if len(text) > MOST_WORDS:
        raise problem(
            "too-long", read=f"{text[:40]}...", expected=f"at most {MOST_WORDS} characters, not {len(text)}", example=""
        )
    return text


def _id(text: str) -> str:
    if not _ID.fullmatch(text):
        raise problem(
            "bad-id",
            read=text,
            expected="a name in small letters and digits, joined by hyphens",
            example="magneto-left",
        )
    return text


def _name(text: str) -> str:
    if not _NAME.fullmatch(text) or len(text) > _LONGEST_NAME:
        raise problem(
            "bad-name", read=text, expected="a plain name: letters, digits, spaces, hyphens", example="canopy bow"
        )
    return text


def _registration(text: str) -> str:
    if not _REGISTRATION.fullmatch(text):
        raise problem(
            "bad-registration", read=text, expected="a registration in capitals with its hyphen", example="QQ-TWA"
        )
    return text


def _count(text: str) -> int:
    if not re.fullmatch(r"0|[1-9][0-9]{0,4}", text):
        raise problem("not-a-count", read=text, expected="a whole number without leading zeros", example="3")
    return int(text)


def _number(text: str) -> Decimal:
    if not re.fullmatch(_NUMBER, text):
        raise problem("not-a-position", read=text, expected="a plain number in the unit of the datum", example="1650")
    return Decimal(text)


def _span(text: str) -> Span:
    found = _SPAN.fullmatch(text)
    if not found:
        raise problem(
            "not-a-position",
            read=text,
            expected="a position or a stretch in the unit of the datum",
            example="1200 to 1600",
        )
    at, low, high, least, most = (
        None if found[name] is None else Decimal(found[name]) for name in ("at", "low", "high", "min", "max")
    )
    if at is not None:
        return Span(text, at, at)
    if low is not None and high is not None:
        if low >= high:
            example = f"{high} to {low}" if low > high else str(low)
            raise problem("stretch-backwards", read=text, expected="the smaller number first", example=example)
        return Span(text, low, high)
    return Span(text, least, most)


def _date(text: str) -> dt.date:
    try:
        if re.fullmatch(r"\d{4}-\d{2}-\d{2}", text):
            return dt.date.fromisoformat(text)
    except ValueError:
        pass
    raise problem("not-a-date", read=text, expected="a date as year-month-day", example="2027-03-31")


def _time(text: str) -> dt.time:
    try:
        if re.fullmatch(r"\d{2}:\d{2}", text):
            return dt.time.fromisoformat(text)
    except ValueError:
        pass
    raise problem("not-a-time", read=text, expected="a time of day as hours:minutes", example="14:05")


def _schema(title: str, example: str, **more: Any) -> dict[str, Any]:
    return {"title": title, "type": "string", "examples": [example], **more}


_NUMERIC: dict[str, Any] = {"type": ["number", "string"]}  # editors read a bare 2250 as a number

Words = Annotated[str, Reads(_words, _schema("words", "low wing, cropped tips", maxLength=MOST_WORDS) | _NUMERIC)]
"""Free words: shown as they were written, never run, never interpreted."""

Id = Annotated[str, Reads(_id, _schema("an id", "magneto-left", pattern=f"^{_ID.pattern}$"), exact=True)]
Name = Annotated[str, Reads(_name, _schema("a name", "canopy bow", maxLength=_LONGEST_NAME), exact=True)]
Registration = Annotated[
    str, Reads(_registration, _schema("a registration", "QQ-TWA", pattern=f"^{_REGISTRATION.pattern}$"), exact=True)
]
Count = Annotated[int, Reads(_count, _schema("a whole number", "3") | {"type": ["integer", "string"]})]
Number = Annotated[Decimal, Reads(_number, _schema("a number in the unit of the datum", "1650") | _NUMERIC)]
Position = Annotated[Span, Reads(_span, _schema("a position or a stretch", "1200 to 1600") | _NUMERIC)]
Date = Annotated[dt.date, Reads(_date, _schema("a date", "2027-03-31", pattern=r"^\d{4}-\d{2}-\d{2}$"))]
Time = Annotated[dt.time, Reads(_time, _schema("a time of day", "14:05", pattern=r"^\d{2}:\d{2}$"))]

Named = Mapping[Id, T]
"""Entries under ids: an id is an address, so that tails can override it and re-ordering changes nothing."""
