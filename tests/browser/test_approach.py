"""Where not to stand: named on the first screen, and all of it with its reasons where "Approach" leads."""

from __future__ import annotations

import re

import pytest
from playwright.sync_api import Page

from tests.browser.conftest import Phone
from tests.browser.support import PHONE
from tests.site.support import crew_pages, record, squeezed

pytestmark = pytest.mark.browser

PARTS = "nav[aria-label='Parts of this page']"


def _dangers(address: str) -> list[dict[str, str]]:
    """What the record of the type lists; no tail of the demo has another approach than its type."""
    kind, name = address.removesuffix(".html").split("/")
    listed = record("types", name if kind == "types" else record("tails", name)["of"])["approach"]["keep_out"]
    assert isinstance(listed, list)
    assert listed
    return listed


def _seen(page: Page) -> str:
    """The text of the part that is on the screen whole, line by line, above the bar."""
    bottom = page.locator(PARTS).bounding_box()
    assert bottom is not None
    lines = page.locator("#approach .line:visible").evaluate_all(
        """(all, bottom) => all.filter(e => {
            const box = e.getBoundingClientRect();
            return box.top >= 0 && box.bottom <= bottom;
        }).map(e => e.textContent)""",
        bottom["y"],
    )
    return squeezed(" ".join(lines))


@pytest.mark.parametrize("address", crew_pages())
def test_a_tap_on_approach_shows_every_direction_and_its_reason(phone: Phone, address: str) -> None:
    watch = phone()
    page = watch.open(address)
    page.locator(PARTS).get_by_role("link", name="Approach").tap()
    page.wait_for_function("location.hash === '#approach'")
    page.wait_for_function("document.getElementById('approach').getBoundingClientRect().top < 60")
    seen = _seen(page)
    for danger in _dangers(address):
        assert squeezed(f"Not {danger['where']}: {danger['why']}") in seen
    page.locator(PARTS).get_by_role("link", name="Open").tap()  # and it does not stay in the way of the steps
    page.wait_for_function("Math.abs(document.getElementById('open').getBoundingClientRect().top) < 60")
    watch.assert_quiet()


@pytest.mark.parametrize("address", crew_pages())
def test_the_first_screen_names_every_direction(phone: Phone, address: str) -> None:
    """Each in full, or by its beginning and an ellipsis: never by a count."""
    page = phone().open(address)
    short = _seen(page)
    assert not re.search(r"\d more", short)
    for danger in _dangers(address):
        where = danger["where"]
        begun = any(f"{where[:end]} \u2026" in short for end in range(6, len(where)))
        assert where in short or begun, where


@pytest.mark.parametrize("scripts", [True, False], ids=["scripts", "no-scripts"])
def test_the_short_line_leads_to_the_whole_one(phone: Phone, scripts: bool) -> None:
    address = "types/drosmund-halberd.html"
    page = phone(java_script_enabled=scripts).open(address)
    page.locator("#approach .line--caution a:visible").tap()
    shown = squeezed(page.locator("#approach").inner_text())
    for danger in _dangers(address):
        assert danger["why"] in shown
    assert page.locator("#approach .line:visible").last.bounding_box()["y"] < PHONE["height"]  # type: ignore[index]


def test_the_bar_has_no_mark_at_the_head_of_the_page(phone: Phone) -> None:
    page = phone().open(crew_pages()[0])
    marked = page.locator(f"{PARTS} [aria-current]")
    assert marked.count() == 0
    for part in ("#water", "#open"):
        page.locator(f"{PARTS} a[href='{part}']").evaluate("e => e.click()")
        marked.wait_for()
        assert marked.get_attribute("href") == part
        page.evaluate("scrollTo(0, 0)")
        marked.wait_for(state="detached")
        assert page.locator(f"{PARTS} ul").evaluate("e => e.scrollLeft") == 0
