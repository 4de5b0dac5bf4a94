"""Figures pages: every figure with what it was worked out from, or the reason why it cannot be said."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

import pytest

from hardpoint.figures.worked import Figure, Input, Topic, Unsaid
from hardpoint.pages.view import Row
from hardpoint.pages.workings import differing, path_words, told_figure, worked_sections, worked_table
from hardpoint.words import later

MASS = Figure(
    "balance.empty.mass",
    later("Mass, {state}", state=later("empty")),
    (612.0, 648.5),
    "kg",
    "kg",
    "up",
    (Input(("masses", "empty"), "1350 lb / 648.5 kg", (612.0, 648.5), "kg"),),
    "m = Σ mᵢ",
    "balance",
    ("faa-h-8083-1",),
    later("it is heavier wet"),
)
WHERE = ("tanks", "main", "capacity")
OPEN = Unsaid("balance.full-fuel.mass", later("Mass"), later("how much it holds is unknown"), WHERE)
REFUSED = Unsaid("slings.pair.empty.worst_leg", later("Worst leg"), later("its basis is unknown"), refused=True)
TOPIC = Topic("balance", "Mass and centre of gravity by state", "balance", lambda case: ())


def _rows(*worked: Figure | Unsaid) -> dict[str, Row]:
    return {row.id: row for row in worked_table("t", worked, "types/x/figures.html", "c").rows}


def _texts(value: Any) -> Iterator[str]:
    yield from (value.text, *value.beside, value.remark, value.href)
    for part in value.parts:
        yield part.label
        yield from _texts(part.value)


def test_a_figure_shows_range_conversion_caution_inputs_formula_source_and_rounding() -> None:
    row = _rows(MASS)["figure-balance-empty-mass"]
    told = [text for cell in row.cells for text in _texts(cell)]
    for text in (
        "Mass, empty",
        "612 to 649 kg",
        "1340 to 1430 lb",
        "it is heavier wet",
        "masses, empty",
        "1350 lb / 648.5 kg",
        "m = Σ mᵢ",
        "../../methods/balance.html",
        "Aircraft Weight and Balance Handbook, FAA-H-8083-1",
        "#source-faa-h-8083-1",
        "rounded up, the safe side",
    ):
        assert text in told, text


def test_what_cannot_be_said_says_unknown_why_and_where() -> None:
    row = _rows(OPEN)["figure-balance-full-fuel-mass"]
    assert row.cells[1].text == "UNKNOWN, cannot be said: how much it holds is unknown"
    assert row.cells[1].state == "unknown"
    assert row.cells[2].text == "tanks, main, capacity"
    assert row.tone == "caution"


def test_a_refusal_is_no_unknown() -> None:
    told = told_figure(REFUSED)
    assert (told.text, told.state, told.refuses) == ("Refused: its basis is unknown", "said", True)


def test_sources_are_listed_once_with_how_they_were_used() -> None:
    sections = list(worked_sections(((TOPIC, (MASS, MASS, OPEN)),), "types/x/figures.html"))
    assert [section.id for section in sections] == ["worked-balance", "worked-sources"]
    (table,) = sections[1].blocks
    assert [(row.id, row.cells[0].text, row.cells[2].text) for row in table.rows] == [  # type: ignore[union-attr]
        ("source-faa-h-8083-1", "Aircraft Weight and Balance Handbook, FAA-H-8083-1", "read")
    ]


def test_only_what_came_out_otherwise_differs() -> None:
    heavier = Figure(**{**vars(MASS), "value": (700.0, 700.0)})
    assert list(differing(((TOPIC, (MASS, OPEN)),), ((TOPIC, (MASS, OPEN)),))) == []
    assert list(differing(((TOPIC, (heavier, OPEN)),), ((TOPIC, (MASS, OPEN)),))) == [(TOPIC, (heavier,))]
    assert list(differing(((TOPIC, (OPEN,)),), ((TOPIC, (MASS,)),))) == [(TOPIC, (OPEN,))]


@pytest.mark.parametrize(
    ("path", "words"),
    [
        (("station", "occupant_mass"), "station: occupant mass"),
        (("entry", "fuel_planned"), "line-up: fuel planned"),
        (("tanks", "main", "capacity"), "tanks, main, capacity"),
    ],
)
def test_paths_are_told_in_words(path: tuple[str, ...], words: str) -> None:
    assert path_words(path) == words
