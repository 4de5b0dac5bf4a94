"""The docs pages on how figures are worked out: one a topic, made of the docstrings of the formulas themselves.

``hardpoint schema`` writes them with the other pages that follow from the code. Pure: text in, text out.
"""

from __future__ import annotations

import inspect
import re
from collections.abc import Callable, Iterator, Mapping
from importlib import import_module
from types import ModuleType
from typing import Any

from hardpoint.figures.citations import CITATIONS
from hardpoint.pages.terms import first_capital
from hardpoint.records.known import NonValue
from hardpoint.records.sources import Source

METHODS: Mapping[str, tuple[str, tuple[str, ...]]] = {
    "balance": ("Mass and centre of gravity", ("balance", "loads")),
    "slings": ("Sling legs and hook load", ("slings", "draining")),
    "bottles": ("Pressure bottles", ("bottles",)),
    "fire": ("Fuel: spill and fire", ("fire", "densities")),
    "currency": ("How current and how complete", ("currency",)),
    "recognising": ("The sight key, and what is unlike", ("sight_key", "comparing")),
    "category": ("Aerodrome category and cover", ("category",)),
    "air": ("Breathing air under water", ("air",)),
    "windows": ("Cutting windows and tools", ("windows",)),
    "lifting-out": ("Ties, and mass to lift out", ("lifting_out",)),
    "landmarks": ("Places told from landmarks", ("landmarks",)),
    "exits": ("Exit directions of rockets and seats", ("exits",)),
}
"""Page under docs/methods, its title, and the modules under ``hardpoint.figures`` that it is made of."""

_PART = re.compile(r"^(Equation|Symbols|Source|Range|Example): ?", re.MULTILINE)
_LEAD = (
    "For planning. The incident commander, local procedures and licensed people decide; damage changes everything.\n"
    "What a figure is made of stands beside it on the figures page of each type; what is unknown is said, never\n"
    "guessed. This page is made from the program itself, and the tests work each example out again."
)


def pages() -> dict[str, str]:
    """File name under docs/ to Markdown."""
    return {f"methods/{name}.md": _page(title, modules) for name, (title, modules) in METHODS.items()}


def _page(title: str, modules: tuple[str, ...]) -> str:
    lines = [f"# {title}", "", _LEAD, ""]
    for name in modules:
        module = import_module(f"hardpoint.figures.{name}")
        lines += [*_code(inspect.getdoc(module) or "").splitlines(), ""]
        for function in formulas(module):
            lines += [*_formula(function), ""]
    return "\n".join(lines).rstrip() + "\n"


def formulas(module: ModuleType) -> Iterator[Callable[..., Any]]:
    """The public functions of a module that state an equation, in the order in which they are written."""
    for name, found in vars(module).items():
        own = inspect.isfunction(found) or hasattr(found, "__wrapped__")
        if own and not name.startswith("_") and found.__module__ == module.__name__ and "Equation:" in _doc(found):
            yield found


def _doc(function: Callable[..., Any]) -> str:
    return inspect.getdoc(function) or ""


def _formula(function: Callable[..., Any]) -> Iterator[str]:
    before, *rest = _PART.split(_doc(function))
    parts = list(zip(rest[::2], rest[1::2], strict=True))
    yield f"## {first_capital(function.__name__.replace('_', ' '))}"
    yield ""
    yield _code(before.strip())
    sources = [text.strip() for name, text in parts if name == "Source"]
    for name, text in parts:
        if name != "Source":
            yield from ("", *_TOLD[name](text))
    if sources:
        yield from ("", "**Source.** " + "; ".join(map(_source, sources)) + ".")


def _equation(text: str) -> Iterator[str]:
    yield from ("```text", inspect.cleandoc("\n" + text).strip(), "```")


def _symbols(text: str) -> Iterator[str]:
    yield from ("| symbol | what it is |", "|---|---|")
    for line in re.sub(r"\n\s{6,}", " ", inspect.cleandoc("\n" + text).strip()).splitlines():
        symbol, _, meaning = line.strip().partition(": ")
        yield f"| `{symbol}` | {_code(meaning)} |"


def _range(text: str) -> Iterator[str]:
    yield f"**Range.** {_code(_sentence(text))}"


def _example(text: str) -> Iterator[str]:
    words, session = _split(text)
    yield f"**Example.** {_code(_sentence(words))}"
    yield from ("", "```python", session, "```")


_TOLD: Mapping[str, Callable[[str], Iterator[str]]] = {
    "Equation": _equation,
    "Symbols": _symbols,
    "Range": _range,
    "Example": _example,
}


def _split(text: str) -> tuple[str, str]:
    """The words of an example, and what was typed and answered."""
    at = text.index(">>>")
    start = text.rindex("\n", 0, at) + 1 if "\n" in text[:at] else 0
    return text[:start], inspect.cleandoc("\n" + text[start:]).strip()


def _sentence(text: str) -> str:
    return " ".join(text.split())


def _code(text: str) -> str:
    """Markdown's own marks for code."""
    return text.replace("``", "`").replace("<", "&lt;")


def _source(key: str) -> str:
    source = CITATIONS.get(key)
    return _cited(source) if source else key


def _cited(source: Source) -> str:
    publisher = "publisher not recorded" if isinstance(source.publisher, NonValue) else source.publisher
    where = f", {source.section}" if source.section else ""
    return f"{source.title} ({publisher}){where}: {source.standing}"
