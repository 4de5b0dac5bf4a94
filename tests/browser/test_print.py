"""Printed: nothing of a page is lost on paper, and each sheet says what it belongs to."""

from __future__ import annotations

import io
import re

import pytest
from playwright.sync_api import Page
from pypdf import PdfReader

from tests.browser.conftest import Phone
from tests.browser.questions import PRINTABLE, TOO_WIDE
from tests.site.support import Site, crew_pages, names, record

pytestmark = pytest.mark.browser

OTHERS = [
    f"types/{names('types')[0]}/structure.html",
    f"types/{names('types')[0]}/figures.html",
    f"events/{names('events')[0]}.html",
    "compare.html",
    "gaps.html",
    "index.html",
]


def _printed(page: Page, sheets: str = "") -> list[str]:
    """The text of each sheet, or of those that are asked for (``1-2``)."""
    page.emulate_media(media="print")
    paper = page.pdf(prefer_css_page_size=True, page_ranges=sheets)
    return [sheet.extract_text() for sheet in PdfReader(io.BytesIO(paper)).pages]


def _bare(text: str) -> str:
    """Letters, figures and signs only: where a line ends is the sheet's affair."""
    return re.sub(r"\s+|\xad", "", text)


def _foot(page: Page, demo: Site) -> str:
    """What stands at the lower edge of each sheet, beside its number."""
    index = demo.data("fleet.json")
    name = page.title().removesuffix(f" - {record('', 'station')['name']}")
    return f"{name} | edition {index['edition']} | as of {index['as_of']} | invented demo data"


def _lost(page: Page, demo: Site) -> list[str]:
    sheets = [_bare(sheet).replace(_bare(_foot(page, demo)), "") for sheet in _printed(page)]
    paper = "".join(sheet.replace(f"{number}of{len(sheets)}", "", 1) for number, sheet in enumerate(sheets, start=1))
    return [text for text in page.evaluate(PRINTABLE) if _bare(text) not in paper]


@pytest.mark.parametrize("address", [*crew_pages(), *OTHERS])
def test_no_text_of_a_page_is_lost_on_paper(phone: Phone, demo: Site, address: str) -> None:
    page = phone(is_mobile=False, has_touch=False).open(address)
    assert len(page.evaluate(PRINTABLE)) > 20
    assert _lost(page, demo) == []


@pytest.mark.parametrize("address", [crew_pages()[0], crew_pages()[-1], OTHERS[0]])
def test_every_sheet_says_what_it_belongs_to(phone: Phone, demo: Site, address: str) -> None:
    page = phone(is_mobile=False, has_touch=False).open(address)
    foot, sheets = _bare(_foot(page, demo)), [_bare(sheet) for sheet in _printed(page)]
    assert len(sheets) >= 2
    for number, sheet in enumerate(sheets, start=1):
        assert sheet.count(foot) == 1, f"sheet {number}"
        assert f"{number}of{len(sheets)}" in sheet


def test_the_first_sheet_of_a_crew_page_holds_opening_steps(phone: Phone) -> None:
    """What a crew takes with it first: the first way in, whole, and not a sheet of headlines."""
    watch = phone(is_mobile=False, has_touch=False)
    for address in crew_pages():
        watch.page.emulate_media(media="screen")
        page = watch.open(address)
        first = _bare(_printed(page, "1")[0])
        steps = page.locator("#open ol").first.locator("li").all_inner_texts()
        assert len(steps) >= 2
        for step in steps:
            assert _bare(step) in first, f"{address}: {step}"


@pytest.mark.parametrize("scripts", [True, False], ids=["scripts", "no-scripts"])
def test_folded_facts_are_on_paper(phone: Phone, demo: Site, scripts: bool) -> None:
    address = crew_pages()[0]
    folds = demo.page(address).find_all("details")
    assert folds
    page = phone(is_mobile=False, has_touch=False, java_script_enabled=scripts).open(address)
    paper = _bare("".join(_printed(page)))
    for fold in folds:
        for answer in fold.find_all("dd"):
            assert _bare(answer.get_text())[:40] in paper


def test_a_sheet_keeps_off_what_only_a_screen_needs(phone: Phone) -> None:
    page = phone(is_mobile=False, has_touch=False).open(crew_pages()[0])
    page.emulate_media(media="print")
    for gone in ("nav", "form", "button"):
        assert page.locator(f"{gone}:visible").count() == 0, gone


@pytest.mark.parametrize("address", [crew_pages()[0], *OTHERS])
def test_nothing_is_cut_off_at_the_edge_of_the_paper(phone: Phone, address: str) -> None:
    """A4 less the margins of 14 mm is 182 mm: 688 px of CSS (96 to the inch)."""
    page = phone(viewport={"width": 688, "height": 980}, is_mobile=False, has_touch=False).open(address)
    page.emulate_media(media="print")
    wide = page.evaluate(TOO_WIDE, 689)
    assert wide == []


def test_a_printed_page_is_black_on_white_in_the_dark_too(phone: Phone) -> None:
    page = phone(color_scheme="dark").open(crew_pages()[0])
    page.emulate_media(media="print", color_scheme="dark")
    assert page.evaluate("getComputedStyle(document.documentElement).backgroundColor") == "rgb(255, 255, 255)"
    assert page.evaluate("getComputedStyle(document.querySelector('#open li')).color") == "rgb(0, 0, 0)"


@pytest.mark.parametrize("name", names("types"))
def test_the_lifting_sheet_is_one_sheet_with_all_its_text(phone: Phone, demo: Site, name: str) -> None:
    page = phone(is_mobile=False, has_touch=False).open(f"types/{name}/lift.html")
    assert len(_printed(page)) == 1
    assert _lost(page, demo) == []
