"""From "number 3 has gone in" to the steps that open it: two taps at most, on the first screen of a phone."""

from __future__ import annotations

from pathlib import Path

import pytest
from playwright.sync_api import Locator, Page

from tests.browser.conftest import Phone
from tests.browser.support import PHONE
from tests.site.support import crew_pages, names, record, squeezed

pytestmark = pytest.mark.browser

NUMBERS = [
    (number, entry)
    for name in names("events")
    for day in record("events", name)["days"].values()
    for number, entry in day["entries"].items()
]
STEPS = "#open ol > li"


def _first_steps_on_screen(page: Page) -> None:
    steps = page.locator(STEPS)
    assert steps.count() >= 2
    bottom = _free_height(page)
    for index in range(2):
        box = steps.nth(index).bounding_box()
        assert box is not None
        assert box["y"] >= 0, index
        assert box["y"] + box["height"] <= bottom, (
            f"step {index + 1} ends at {box['y'] + box['height']:.0f} of {bottom:.0f}"
        )
        assert box["x"] >= 0
        assert box["x"] + box["width"] <= PHONE["width"]


def _free_height(page: Page) -> float:
    """The height of the screen above whatever is fixed to its lower edge."""
    return float(
        page.evaluate(
            """() => Math.min(innerHeight, ...[...document.querySelectorAll("body *")]
                .filter(e => getComputedStyle(e).position === "fixed" && e.checkVisibility())
                .map(e => e.getBoundingClientRect()).filter(r => r.height > 20 && r.bottom >= innerHeight - 1)
                .map(r => r.top))"""
        )
    )


def _tile(page: Page, number: str, tail: str) -> Locator:
    return (
        page.locator("#content li").filter(has=page.locator("h3", has_text=f"Number {number}:")).filter(has_text=tail)
    ).first  # an aircraft can fly under one number on two days


@pytest.mark.parametrize(("number", "entry"), NUMBERS, ids=[number for number, _ in NUMBERS])
def test_a_number_that_has_gone_in_leads_to_its_opening_steps(phone: Phone, number: str, entry: dict[str, str]) -> None:
    watch = phone()
    page = watch.open("index.html")
    tail = entry["tail"] if entry["tail"] != "unknown" else ""
    with page.expect_navigation():
        _tile(page, number, tail).tap()
    expected = f"tails/{tail}.html" if tail else f"types/{entry['type']}.html"
    assert page.url == watch.home + expected
    assert page.evaluate("scrollY") == 0
    _first_steps_on_screen(page)  # one tap
    watch.assert_quiet()


@pytest.mark.parametrize("address", crew_pages())
def test_the_first_opening_steps_are_on_the_first_screen(phone: Phone, address: str) -> None:
    watch = phone()
    _first_steps_on_screen(watch.open(address))
    watch.assert_quiet()


@pytest.mark.parametrize("address", crew_pages())
def test_the_steps_come_first_without_scripts_too(phone: Phone, address: str) -> None:
    page = phone(java_script_enabled=False).open(address)
    for index in range(2):
        box = page.locator(STEPS).nth(index).bounding_box()
        assert box is not None
        assert box["y"] + box["height"] <= PHONE["height"]


def test_the_bar_leads_to_each_part_of_a_crew_page(phone: Phone) -> None:
    page = phone().open(crew_pages()[0])
    links = page.locator("nav[aria-label='Parts of this page'] a")
    assert links.count() >= 8
    for index in range(links.count()):
        links.nth(index).tap()
        target = page.locator(str(links.nth(index).get_attribute("href")))
        page.wait_for_function("e => e.getBoundingClientRect().top >= -1", arg=target.element_handle())
        box = target.bounding_box()
        assert box is not None
        assert box["y"] < _free_height(page)


def test_a_number_is_found_by_typing_and_by_its_tail(phone: Phone) -> None:
    number, entry = NUMBERS[-1]
    watch = phone()
    page = watch.open("index.html")
    for typed in (number, entry["tail"], entry["tail"].replace("-", "").lower()):
        page.get_by_role("searchbox").fill(typed)
        assert _tile(page, number, entry["tail"]).is_visible()
        others = [other for other, _ in NUMBERS if other != number]
        assert not any(_tile(page, other, "").is_visible() for other in others), typed
    whole = page.locator("#content li h3").count()
    page.get_by_role("searchbox").fill("nothing of this name")  # the list stays: the number may still be known
    assert page.locator("#content li:visible h3").count() == whole
    assert squeezed(page.get_by_role("status").inner_text())
    watch.assert_quiet()


def test_a_crew_page_works_from_a_copied_folder(phone: Phone, web: Path) -> None:
    """As a file on a phone without a server or a network: the same two taps."""
    number, entry = NUMBERS[-1]
    watch = phone((web / "station" / "book").as_uri() + "/", offline=True)
    page = watch.open("index.html")
    with page.expect_navigation():
        _tile(page, number, entry["tail"]).tap()
    assert page.url.endswith(f"tails/{entry['tail']}.html")
    _first_steps_on_screen(page)
    watch.assert_quiet()
