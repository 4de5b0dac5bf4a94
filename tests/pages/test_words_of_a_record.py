"""Free words of a record stand on its crew page; planning facts among them stand on the page of figures."""

from __future__ import annotations

import fnmatch
from pathlib import Path

import pytest

from hardpoint import load
from hardpoint.pages import Site
from hardpoint.pages.crew import tail_crew_page, type_crew_page
from hardpoint.pages.figures_page import figures_page
from tests.pages.sweeps import DAY, soup
from tests.site import maximal

PLANNED = {
    "datum.*": "from where stations count, which crew pages do not show",
    "absences.*.checked.*": "who looked, and when: provenance",
    "checked.*": "who looked, and when: provenance",
    "changes*": "how the record came to be",
    "who_can_answer.*": "whom to ask before an event, not at the wreck",
    "photos.*": "told to those who do not see the picture, in its own attribute",
    "masses.items.*": "what a lift weighs: worked out before",
    "load_points.*": "rigging, on the structure page",
    "lifts.*": "rigging, on the structure page",
    "tanks.*.source": "where a density comes from",
}
"""Words of a record that a crew page leaves out, each with the reason."""


@pytest.fixture(scope="module")
def grown(tmp_path_factory: pytest.TempPathFactory) -> tuple[Site, dict[str, str]]:
    folder: Path = tmp_path_factory.mktemp("grown")
    planted = maximal.write(folder)
    return Site(load.fleet(folder), (), DAY, DAY.isoformat()), planted


def _planned(path: str) -> bool:
    return any(fnmatch.fnmatch(path, pattern) for pattern in PLANNED)


def test_every_free_word_of_a_type_stands_on_its_crew_page(grown: tuple[Site, dict[str, str]]) -> None:
    site, planted = grown
    type_ = site.fleet.types[maximal.TYPE]
    crew = soup(type_crew_page(site, type_)).get_text(" ").lower()  # a heading begins with a capital
    figures = soup(figures_page(site, type_)).get_text(" ")
    words = {mark: path.partition(".")[2] for mark, path in planted.items() if path.startswith("type.")}
    assert len(words) > 100
    missing = [path for mark, path in words.items() if mark not in crew and not _planned(path)]
    assert not missing, missing
    assert not [path for mark, path in words.items() if mark not in crew and mark not in figures]


def test_every_free_word_of_a_tail_stands_on_its_crew_page(grown: tuple[Site, dict[str, str]]) -> None:
    site, planted = grown
    page = soup(tail_crew_page(site, site.fleet.tails[maximal.TAIL])).get_text(" ").lower()
    words = {mark: path.partition(".")[2] for mark, path in planted.items() if path.startswith("tail.")}
    assert len(words) > 10
    missing = [path for mark, path in words.items() if mark not in page and not _planned(path)]
    assert not missing, missing


def test_each_reason_to_leave_words_out_is_needed(grown: tuple[Site, dict[str, str]]) -> None:
    site, planted = grown
    crew = soup(type_crew_page(site, site.fleet.types[maximal.TYPE])).get_text(" ").lower()
    absent = [path.partition(".")[2] for mark, path in planted.items() if path.startswith("type.") and mark not in crew]
    idle = [pattern for pattern in PLANNED if not fnmatch.filter(absent, pattern)]
    assert not idle, idle
