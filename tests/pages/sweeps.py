"""Records with one answer changed, and the crew pages made of them: for tests that try every answer in turn."""

from __future__ import annotations

import copy
import dataclasses
import datetime as dt
from collections.abc import Iterator
from pathlib import Path
from typing import Any

from bs4 import BeautifulSoup
from jinja2 import FileSystemLoader

from hardpoint import load
from hardpoint.findings import Path as At
from hardpoint.load.fleet_files import _AIRFRAME
from hardpoint.load.models import validate
from hardpoint.pages import Page, Site
from hardpoint.pages.crew import tail_crew_page, type_crew_page
from hardpoint.pages.view import CrewPage
from hardpoint.records.airframe import Airframe
from hardpoint.records.fleet import Aircraft, Fleet, Override, Type, Where
from hardpoint.records.known import Tree
from hardpoint.records.trees import leaves, value_at
from hardpoint.rendering import environment, render

ROOT = Path(__file__).parents[2]
FLEET = load.fleet(ROOT / "fleet")
TEMPLATES = environment(FileSystemLoader(ROOT / "plugins" / "hardpoint" / "templates"))
DAY = dt.date(2027, 6, 5)


def with_answer(tree: dict[str, Tree], path: At, answer: Tree) -> dict[str, Tree]:
    """The record with another answer at ``path``; what does not lie on the way there is shared with ``tree``."""
    made = copy.copy(tree)
    here: Any = made
    for part in path[:-1]:
        here[part] = copy.copy(here[part])
        here = here[part]
    here[path[-1]] = answer
    return made


def read(tree: dict[str, Tree]) -> Airframe | None:
    """The record as a model; None where it is refused."""
    airframe: Airframe | None = validate(_AIRFRAME, Airframe, tree, lambda path: Where("a record", 1, 1))[0]
    return airframe


def places(tree: dict[str, Tree]) -> Iterator[At]:
    """Every answer of a record that a tail can differ in: a list counts as one answer."""
    seen: dict[At, None] = {}
    for path, _ in leaves(tree):
        depth = next((d for d in range(1, len(path) + 1) if isinstance(value_at(tree, path[:d]), list)), len(path))
        seen[path[:depth]] = None
    yield from seen


def type_view(type_: Type, airframe: Airframe, fleet: Fleet = FLEET) -> CrewPage:
    """What the crew page of a type says whose record has become ``airframe``."""
    made = dataclasses.replace(type_, airframe=airframe)
    view = type_crew_page(Site(fleet, (), DAY, DAY.isoformat()), made).view
    assert isinstance(view, CrewPage)
    return view


def tail_page(type_: Type, airframe: Airframe, tree: dict[str, Tree], override: Override) -> Page:
    """The crew page of an aircraft with one difference from its type."""
    model = next(iter(FLEET.tails.values()))
    tail: Aircraft = dataclasses.replace(
        model, id="QQ-ZZZ", of=type_, airframe=airframe, tree=tree, overrides=(override,)
    )
    return tail_crew_page(Site(FLEET, (), DAY, DAY.isoformat()), tail)


def soup(page: Page) -> BeautifulSoup:
    """A page as a browser reads it."""
    return BeautifulSoup(render(TEMPLATES, page), "html.parser")
