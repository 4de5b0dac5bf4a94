"""Unknown is a value: it stands in words wherever somebody acts or plans, and no cell of any page is blank."""

from __future__ import annotations

import re
from typing import Any

import pytest
from bs4 import Tag

from tests.site.support import (
    Site,
    build,
    copied_fleet,
    crew_pages,
    leaves,
    names,
    record,
    replace,
    squeezed,
    whole_word,
)

NON_VALUES = ("unknown", "not fitted", "not applicable")
BLANK = {"", "-", "--", "\N{EN DASH}", "\N{EM DASH}", "?", "None", "nan", "NaN", "null", "n/a", "N/A", "[]", "{}", "()"}

ON_THE_CREW_PAGE = [
    (r"controls\.([^.]+)\.(guard|off_is|beyond_off|alone|success|looks|stays_live)", "control"),
    (r"exits\.([^.]+)\.(label|looks|other_side|success|steps)", "exit"),
    (r"exits\.([^.]+)\.works\.(upright|inverted|left_side_down|right_side_down|afloat|inverted_in_water)", "exit"),
    (r"zones\.([^.]+)\.(left|right)\.(cut|listing)", "zone"),
    (r"batteries\.([^.]+)\.stays_live", "battery"),
    (r"canopies\.([^.]+)\.(hinges|latches|mass|material|thickness|clear_opening|held_by)", "canopy"),
    (r"(tanks|bottles|hazards|loaded_parts|canopies|exits)\.([^.]+)", ""),
]
"""Paths that a crew needs an answer to, with the first half of the anchor under which the page gives it."""

SECTIONS = {
    "water": (r"water\.(floats|stays_afloat|tow|inside)", "water"),
    "fire": (r"fire\.(burns|smoke|dust|wear)", "stay-clear"),
    "steadying": (r"steadying\.(upright|inverted|on_its_side)", "heavy-end"),
    "masses": (r"masses\.(heavy_end|empty)", "heavy-end"),
    "approach": (r"approach\.(come_from|keep_out)", "approach"),
    "engine": (r"engine\.run_down", "shut-down"),
}


def _anchor(path: str) -> str | None:
    for pattern, word in ON_THE_CREW_PAGE:
        found = re.fullmatch(pattern, path)
        if found and word:
            return f"{word}-{found[1]}"
        if found:
            first = {"bottles": "bottle", "tanks": "tank", "hazards": "hazard", "canopies": "canopy", "exits": "exit"}
            return f"{first.get(found[1], 'loaded-part')}-{found[2]}"
    for pattern, anchor in SECTIONS.values():
        if re.fullmatch(pattern, path):
            return anchor
    return None


def _non_values(tree: dict[str, Any]) -> list[tuple[str, str]]:
    return [(".".join(path), text) for path, text in leaves(tree) if text in NON_VALUES]


@pytest.mark.parametrize("name", names("types"))
def test_the_crew_page_says_each_missing_answer_in_words(demo: Site, name: str) -> None:
    page, asked = f"types/{name}.html", 0
    for path, text in _non_values(record("types", name)):
        anchor = _anchor(path)
        if anchor is not None:
            asked += 1
            said = text.upper() if text == "unknown" else text
            assert whole_word(said, demo.words(page, anchor)), f"{page}#{anchor} does not say {said} for {path}"
    assert asked >= 5


@pytest.mark.parametrize("name", names("types"))
def test_the_figures_page_says_each_missing_answer_in_words(demo: Site, name: str) -> None:
    words = demo.words(f"types/{name}/figures.html", "as-written")
    cells = demo.part(f"types/{name}/figures.html", "as-written").find_all("td")
    told = [squeezed(cell.get_text(" ")) for cell in cells]  # an author's sentence can hold the word too
    written = [text for _, text in _non_values(record("types", name))]
    assert told.count("UNKNOWN") == written.count("unknown") > 0
    for text in ("not fitted", "not applicable"):
        assert words.count(text) >= written.count(text)
    assert "unknown" not in told


@pytest.mark.parametrize("name", names("types"))
def test_the_gaps_page_lists_each_unknown_once(demo: Site, name: str) -> None:
    """By part of the record, a line for each thing with all that nobody knows of it; counted on the gaps page."""
    unknown = [path for path, text in _non_values(record("types", name)) if text == "unknown"]
    page, told = f"types/{name}/gaps.html", 0
    for part in {path.split(".")[0] for path in unknown}:
        block = demo.part(page, f"unknown-{part.replace('_', '-')}")
        assert block.h3 is not None
        assert whole_word("UNKNOWN", block.h3.get_text(" "))
        words = squeezed(block.get_text(" "))
        for path in (path for path in unknown if path.split(".")[0] == part and "." in path):
            last = path.split(".")[-1]
            assert last.replace("_", " ") in words or last.replace("-", " ").casefold() in words.casefold(), path
        told += 1
    assert told
    counted = demo.part("gaps.html", f"type-{name}").find("td")
    assert counted is not None
    assert int(counted.get_text(" ").split()[0]) >= len(unknown)


@pytest.mark.parametrize("kind", ["tails", "events"])
def test_the_gaps_page_names_what_tails_and_events_leave_open(demo: Site, kind: str) -> None:
    for name in names(kind):
        unknown = [path for path, text in _non_values(record(kind, name)) if text == "unknown"]
        words = squeezed(demo.page(f"{kind}/{name}/gaps.html").get_text(" "))
        assert words.count("UNKNOWN") >= bool(unknown), name
        for path in unknown:
            last = path.split(".")[-1].replace("_", " ").replace("-", " ")
            assert last in words or last in ("differs", "declared"), f"{name}: {path}"


def test_no_cell_of_any_page_is_blank(demo: Site) -> None:
    blank, seen = [], 0
    for page in demo.addresses:
        for cell in demo.page(page).find_all(["td", "dd", "th", "dt"]):
            seen += 1
            if squeezed(cell.get_text(" ")) in BLANK:
                blank.append(f"{page}: {squeezed(cell.parent.get_text(' ') if cell.parent else '')[:100]}")
    assert seen > 500
    assert not blank, "\n".join(blank)


def test_no_line_is_without_words(demo: Site) -> None:
    """A list entry, a headline or a link without text would be a blank by another name."""
    for page in demo.addresses:
        for element in demo.page(page).find_all(
            ["li", "h1", "h2", "h3", "a", "summary", "figcaption", "caption", "label"]
        ):
            words = squeezed(element.get_text(" ")) or " ".join(str(img["alt"]) for img in element.find_all("img"))
            assert words or element.name == "label", f"{page}: {element}"


@pytest.fixture(scope="module")
def sparse(tmp_path_factory: pytest.TempPathFactory) -> Site:
    """The demo with whole parts of a type left unanswered."""
    folder = tmp_path_factory.mktemp("sparse")
    fleet = copied_fleet(folder)
    file = fleet / "types" / "hobmire-twain.yaml"
    written = record("types", "hobmire-twain")
    text = file.read_text(encoding="utf-8")
    for section in (
        "approach",
        "zones",
        "water",
        "fire",
        "steadying",
        "signs",
        "landmarks",
        "profile",
        "tanks",
        "hazards",
    ):
        text = _section_to(text, section, "unknown", list(written))
    file.write_text(text, encoding="utf-8")
    for other in (file, *(fleet / "tails").iterdir()):  # without landmarks nothing can be told by one
        other.write_text(re.sub(r", near: [^,}\n]+", "", other.read_text(encoding="utf-8")), encoding="utf-8")
    replace(file, "load_points:\n", "load_points:\n  belly-strap: not fitted\n  nose-eye: unknown\n")
    return Site(build(folder / "site", fleet))


def _section_to(text: str, section: str, answer: str, sections: list[str]) -> str:
    after = sections[sections.index(section) + 1]
    start = text.index(f"\n{section}:") + 1
    return f"{text[:start]}{section}: {answer}\n{text[text.index(chr(10) + after + ':') + 1 :]}"


@pytest.mark.parametrize("anchor", ["approach", "cut", "water", "recognise", "stay-clear", "heavy-end"])
def test_a_part_that_nobody_answered_says_unknown(sparse: Site, anchor: str) -> None:
    assert whole_word("UNKNOWN", sparse.words("types/hobmire-twain.html", anchor))


def test_an_aircraft_without_outline_gets_words_instead_of_a_drawing(sparse: Site) -> None:
    assert whole_word("UNKNOWN", sparse.words("types/hobmire-twain/structure.html", "side-view"))


def test_points_that_nobody_answered_stand_in_words(sparse: Site) -> None:
    page = "types/hobmire-twain/structure.html"
    assert "not fitted" in sparse.words(page, "load-point-belly-strap")
    assert whole_word("UNKNOWN", sparse.words(page, "load-point-nose-eye"))


def test_a_sparse_record_leaves_no_cell_blank(sparse: Site) -> None:
    test_no_cell_of_any_page_is_blank(sparse)
    test_no_line_is_without_words(sparse)


def test_an_unanswered_part_makes_the_comparison_say_so(sparse: Site) -> None:
    row = sparse.part("compare.html", "row-hobmire-twain")
    for label in ("Fuel", "Floats", "Cut, left"):
        cell = row.find("td", attrs={"data-label": label})
        assert isinstance(cell, Tag), label
        assert whole_word("UNKNOWN", cell.get_text(" ")), label


@pytest.mark.parametrize("page", crew_pages())
def test_a_crew_page_tells_places_by_landmark_and_feel(demo: Site, page: str) -> None:
    """Principle 6 of the design: no stations, no percentages, no minutes of air on a crew page."""
    words = demo.words(page)
    assert not re.search(r"\b(?:FS|BL|WL) ?-?\d", words)
    assert not re.search(r"\d ?%|\bper ?cent\b", words)
    assert not re.search(r"\bminutes? of air\b|\bblast\b", words)
