"""Answers that are not values, and what holds for every part of every record."""

from __future__ import annotations

import types
from collections.abc import Iterator
from typing import Annotated, Any, Union, get_args, get_origin

import pytest
from pydantic import TypeAdapter, ValidationError

from hardpoint.load.models import validate
from hardpoint.records.airframe import Airframe
from hardpoint.records.base import Part
from hardpoint.records.event import Event
from hardpoint.records.fleet import Where
from hardpoint.records.known import Known, NonValue, Stated, entries, is_said, said
from hardpoint.records.places import Place
from hardpoint.records.quantities import Mass
from hardpoint.records.sources import Source
from hardpoint.records.station import Station
from hardpoint.records.tail import Tail
from hardpoint.records.texts import Count, Named, Words

KNOWN: TypeAdapter[Any] = TypeAdapter(Known[Count])
STATED: TypeAdapter[Any] = TypeAdapter(Stated[Count])


def told(adapter: TypeAdapter[Any], value: Any) -> list[tuple[str, str]]:
    result, found = validate(adapter, Airframe, value, lambda path: Where("x.yaml", 1, 1))
    assert result is None
    return [(finding.rule, finding.message) for finding in found]


@pytest.mark.parametrize("word", list(NonValue))
def test_known_admits_each_of_the_three(word: NonValue) -> None:
    assert KNOWN.validate_python(word.value) is word


def test_stated_admits_unknown_alone() -> None:
    assert STATED.validate_python("unknown") is NonValue.UNKNOWN
    for word in ("not fitted", "not applicable"):
        assert told(STATED, word) == [
            (
                "non-value-not-admitted",
                f'got "{word}", needs a value here, or "unknown": the thing itself is there, for example "unknown"',
            )
        ]


@pytest.mark.parametrize("adapter", [KNOWN, STATED])
def test_a_value_is_read_as_the_type_beside_it(adapter: TypeAdapter[Any]) -> None:
    assert adapter.validate_python("3") == 3
    assert told(adapter, "three") == [
        ("not-a-count", 'got "three", needs a whole number without leading zeros, for example "3"')
    ]


@pytest.mark.parametrize(
    "word", ["none", "None", "NONE", "no", "n/a", "N/A", "-", "?", "tbd", "null", "~", "nothing", "not known"]
)
def test_what_people_type_for_nothing_gets_the_answers_they_can_mean(word: str) -> None:
    assert told(KNOWN, word) == [
        (
            "not-an-answer",
            f'got "{word}", needs "unknown" (nobody knows) or "not fitted" (somebody looked) or "not applicable" '
            f'(the question does not arise), for example "unknown"',
        )
    ]
    assert told(STATED, word) == [
        ("not-an-answer", f'got "{word}", needs "unknown" (nobody knows), for example "unknown"')
    ]


@pytest.mark.parametrize(
    "word", ["Unknown", "UNKNOWN", " unknown", "unknown.", "not_fitted", "Not fitted", "not  fitted"]
)
def test_non_values_are_written_exactly(word: str) -> None:
    assert told(KNOWN, word)[0][0] == "not-a-count"


def test_words_that_only_hold_a_non_value_are_words() -> None:
    adapter: TypeAdapter[Any] = TypeAdapter(Known[Words])
    assert adapter.validate_python("unknown to the owner") == "unknown to the owner"
    assert adapter.validate_python("none, looked") == "none, looked"


def test_what_is_said_and_what_is_there() -> None:
    assert is_said(3)
    assert not is_said(NonValue.NOT_FITTED)
    assert (said(3), said(NonValue.UNKNOWN), said(None)) == (3, None, None)
    assert entries({"a": 1, "b": NonValue.UNKNOWN, "c": 2}) == {"a": 1, "c": 2}
    assert entries(NonValue.UNKNOWN) == {}


def every_part() -> list[type[Part]]:
    """All parts that the five kinds of record are made of."""
    found: dict[type[Part], None] = {}
    pending: list[Any] = [Airframe, Tail, Event, Station, Source]
    while pending:
        here = pending.pop()
        if isinstance(here, type) and issubclass(here, Part):
            if here not in found:
                found[here] = None
                pending += [field.annotation for field in here.model_fields.values()]
        else:
            pending += get_args(here)
    return sorted(found, key=lambda part: f"{part.__module__}.{part.__name__}")


PARTS = every_part()


def test_there_are_parts_enough() -> None:
    assert len(PARTS) > 60
    assert all(part in PARTS for part in Part.__subclasses__() if part.__module__.startswith("hardpoint."))


@pytest.mark.parametrize("part", PARTS, ids=lambda part: part.__name__)
def test_every_part_is_frozen_and_refuses_other_keys(part: type[Part]) -> None:
    assert part.model_config["frozen"] is True
    assert part.model_config["extra"] == "forbid"
    with pytest.raises(ValidationError) as wrong:
        part.model_validate({"no_such_key_anywhere": "words"})
    assert ("extra_forbidden", ("no_such_key_anywhere",)) in {(e["type"], e["loc"]) for e in wrong.value.errors()}


def test_a_part_cannot_be_changed() -> None:
    place = Place.model_validate({"fs": "2400"})
    with pytest.raises(ValidationError, match="frozen"):
        place.fs = NonValue.UNKNOWN


@pytest.mark.parametrize("part", PARTS, ids=lambda part: part.__name__)
def test_every_part_and_key_is_described_for_editors(part: type[Part]) -> None:
    assert part.__doc__
    assert [name for name, field in part.model_fields.items() if not (field.description or "").strip()] == []


def unions(annotation: Any) -> Iterator[Any]:
    """The unions in an annotation, without None and the non-values, which need no branch in a path."""
    if get_origin(annotation) in (Union, types.UnionType):
        kept = [arg for arg in get_args(annotation) if arg is not type(None) and arg is not NonValue]
        if len(kept) > 1:
            yield annotation
    for inner in get_args(annotation):
        if get_origin(annotation) is not Annotated or inner is get_args(annotation)[0]:
            yield from unions(inner)


@pytest.mark.parametrize("part", PARTS, ids=lambda part: part.__name__)
def test_no_part_has_a_union(part: type[Part]) -> None:
    """A union would put its branch into the path of a finding."""
    assert [
        list(unions(field.annotation)) for field in part.model_fields.values() if list(unions(field.annotation))
    ] == []


def test_the_check_for_unions_finds_one() -> None:
    assert list(unions(Named[Known[Annotated[Words | Place, "x"]]]))


def test_a_path_is_the_path_in_the_file_through_every_kind_of_nesting() -> None:
    adapter: TypeAdapter[Any] = TypeAdapter(Known[Named[Known[tuple[Stated[Mass], ...]]]])
    found: list[Any] = []
    validate(adapter, Airframe, {"a": ["1 kg", "unknown", "2 m"]}, lambda path: found.append(path) or Where("x", 1, 1))  # type: ignore[func-returns-value]
    assert found == [("a", 2)]
