"""A tail's difference stands in the banner and again where it bites, whatever answer of the record it is."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import fields, is_dataclass
from functools import cache
from typing import Any

import pytest

from hardpoint.findings import Path as At
from hardpoint.findings import dotted
from hardpoint.pages import anchors
from hardpoint.pages.view import CrewPage, Was
from hardpoint.records.airframe import Airframe
from hardpoint.records.fleet import Override
from hardpoint.records.locate import kinds_of
from hardpoint.records.trees import value_at
from tests.pages.sweeps import FLEET, places, read, soup, tail_page, with_answer

OTHER = ("unknown", "zq words of another", "not fitted")
PROVENANCE = ("checked", "photos", "who_can_answer", "changes", "notes")
"""What a record says of itself: no tail differs in that."""


def _kind_of(type_id: str, path: At) -> str:
    """A path without the author's own ids: ``controls.*.off_is``."""
    kinds = kinds_of(Airframe, path)
    return ".".join("*" if kind == "id" else str(part) for part, kind in zip(path, kinds, strict=True))


def _differences() -> list[tuple[str, At, Override]]:
    """One difference of each kind of answer that some record of the demo gives."""
    found: dict[str, tuple[str, At, Override]] = {}
    for type_id, type_ in FLEET.types.items():
        for path in places(type_.tree):
            kind = _kind_of(type_id, path)
            old = value_at(type_.tree, path)
            if path[0] in PROVENANCE or old is None or kind in found:
                continue
            other = next((one for one in OTHER if one != old and read(with_answer(type_.tree, path, one))), None)
            if other is not None:
                found[kind] = (type_id, path, Override(path, old, other, "", "", 0, "changed"))
    return list(found.values())


def _marks(value: Any, folded: bool = False) -> Iterator[tuple[Was, bool]]:
    """Every mark of a difference below a view, and whether it is folded away."""
    if isinstance(value, Was):
        yield value, folded
    elif isinstance(value, tuple):
        yield from (mark for item in value for mark in _marks(item, folded))
    else:
        for field in _fields(value.__class__):
            held = getattr(value, field)
            if isinstance(held, str | bool | None):
                continue
            away = folded or field == "more" or bool(getattr(value, "folded", False))
            yield from _marks(held, away)


@cache
def _fields(shape: Any) -> tuple[str, ...]:
    return tuple(field.name for field in fields(shape)) if is_dataclass(shape) else ()


def test_every_difference_is_marked_where_it_bites_and_the_banner_leads_there() -> None:
    unmarked, folded, dead, raw = [], [], [], []
    tried = _differences()
    assert len(tried) > 200
    for type_id, path, override in tried:
        type_ = FLEET.types[type_id]
        tree = with_answer(type_.tree, path, override.here)
        airframe = read(tree)
        assert airframe is not None
        view = tail_page(type_, airframe, tree, override).view
        assert isinstance(view, CrewPage)
        marks = list(_marks(view.sections))
        if not marks:
            unmarked.append(dotted(path))
        elif all(away for _, away in marks):
            folded.append(dotted(path))
        places_there = anchors(view.sections)
        dead += [dotted(path) for line in view.differences if line.href.lstrip("#") not in places_there]
        said = " ".join(line.text + "".join(was.says for was in line.was) for line in view.differences)
        raw += [dotted(path)] if "{" in said or "do:" in said else []
    assert not unmarked, f"{len(unmarked)} of {len(tried)}: {unmarked[:12]}"
    assert not folded, folded[:12]
    assert not dead, dead[:12]
    assert not raw, raw[:12]


@pytest.mark.parametrize("at", [("exits", "break-in"), ("controls", "smoke-pump"), ("bottles", "breathing-air")])
def test_what_a_tail_does_not_have_stands_where_its_type_has_it(at: At) -> None:
    type_ = FLEET.types["vostrelle-jinx"]
    section = dict(type_.tree[str(at[0])])  # type: ignore[arg-type]
    old = section.pop(str(at[1]))
    tree = type_.tree | {str(at[0]): section}
    airframe = read(tree)
    assert airframe is not None
    page = soup(tail_page(type_, airframe, tree, Override(at, old, "nothing", "", "", 0, "removed")))
    banner = page.select_one("#differences")
    assert banner is not None
    assert "not on this aircraft" in banner.get_text()
    assert "{" not in banner.get_text()
    link = banner.find("a", href=True)
    assert link is not None
    place = page.find(id=str(link["href"]).lstrip("#"))
    assert place is not None
    assert "not on this aircraft" in place.get_text()


def test_two_differences_of_one_thing_are_both_told_by_name() -> None:
    type_ = FLEET.types["vostrelle-jinx"]
    at = ("exits", "sill-knob", "works")
    old = value_at(type_.tree, at)
    assert isinstance(old, dict)
    here = old | {"upright": "does not open", "inverted": "unknown"}
    tree = with_answer(type_.tree, at, here)
    airframe = read(tree)
    assert airframe is not None
    page = soup(tail_page(type_, airframe, tree, Override(at, old, here, "", "", 0, "changed")))
    exit_ = page.find(id="exit-sill-knob")
    assert exit_ is not None
    told = " ".join(exit_.get_text(" ").split())
    assert f"upright: {old['upright']}" in told
    assert f"inverted: {old['inverted']}" in told
