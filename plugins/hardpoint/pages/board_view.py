"""The shapes of a board, the searchable table: its columns, facets and rows, frozen and ready to be shown."""

from __future__ import annotations

from dataclasses import dataclass

from hardpoint.pages.view import Frame, Link, Value


@dataclass(frozen=True)
class Column:
    """A fact that a board tells of each of its rows; ``shown`` unless the reader chooses otherwise."""

    id: str
    title: str
    group: str
    shown: bool


@dataclass(frozen=True)
class Facet:
    """A question with few answers, by which the rows of a board can be narrowed."""

    id: str
    title: str
    options: tuple[str, ...]


@dataclass(frozen=True)
class BoardRow:
    """One row: a cell per column; ``words`` is what the search box matches besides the cells.

    ``order`` is its rank in each column, computed here: written figures in mixed units do not sort by their text.
    ``facets`` holds its answers to each facet; one row can have several.
    """

    id: str
    name: str
    href: str
    cells: tuple[Value, ...]
    words: str
    order: tuple[int, ...]
    facets: tuple[tuple[str, ...], ...] = ()
    note: str = ""


@dataclass(frozen=True)
class BoardPage:
    """A searchable table: types, or things of one kind across all types. ``rows_are`` names one and many of them."""

    frame: Frame
    title: str
    lead: str
    head: str
    rows_are: str
    columns: tuple[Column, ...]
    rows: tuple[BoardRow, ...]
    facets: tuple[Facet, ...]
    links: tuple[Link, ...]
    cautions: tuple[str, ...]
