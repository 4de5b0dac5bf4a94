"""Every formula states equation, symbols, source, range and an example, and the example comes out as it is printed."""

from __future__ import annotations

import doctest
import importlib
import pkgutil
import re
from collections.abc import Callable
from types import ModuleType
from typing import Any

import pytest

import hardpoint.figures
from hardpoint import methods
from hardpoint.figures.citations import CITATIONS
from hardpoint.figures.workings import TOPICS
from hardpoint.units import computed

_NAMES = [found.name for found in pkgutil.iter_modules(hardpoint.figures.__path__)]
MODULES = [importlib.import_module(f"hardpoint.figures.{name}") for name in _NAMES]
FORMULAS = [formula for module in MODULES for formula in methods.formulas(module)]


def test_there_are_formulas() -> None:
    assert len(FORMULAS) > 1


@pytest.mark.parametrize("module", MODULES, ids=lambda module: module.__name__)
def test_examples_come_out_as_printed(module: ModuleType) -> None:
    assert doctest.testmod(module).failed == 0


@pytest.mark.parametrize("formula", FORMULAS, ids=lambda formula: f"{formula.__module__}.{formula.__name__}")
def test_a_formula_says_all_that_the_method_page_needs(formula: Callable[..., Any]) -> None:
    doc = formula.__doc__ or ""
    for part in ("Equation:", "Symbols:", "Source:", "Range:", "Example:", ">>>"):
        assert part in doc, part
    for key in re.findall(r"^\s*Source: (.*)$", doc, re.MULTILINE):
        assert key in CITATIONS or key == "common practice"


def test_every_formula_stands_on_a_method_page() -> None:
    told = {f"hardpoint.figures.{name}" for _, names in methods.METHODS.values() for name in names}
    assert {formula.__module__ for formula in FORMULAS} <= told


def test_every_topic_has_its_method_page() -> None:
    assert {topic.method for topic in TOPICS} <= set(methods.METHODS)
    assert len({topic.id for topic in TOPICS}) == len(TOPICS)


def test_computed_prints() -> None:
    assert doctest.testmod(importlib.import_module(computed.__module__)).failed == 0
