"""Two at once: two numbers are picked, only that pair shows, and the address brings it back; without scripts too."""

from __future__ import annotations

import pytest
from playwright.sync_api import Page

from tests.browser.conftest import Phone
from tests.site.support import names, record

pytestmark = pytest.mark.browser

(EVENT,) = names("events")
ADDRESS = f"events/{EVENT}/two-at-once.html"
SATURDAY = list(record("events", EVENT)["days"]["saturday"]["entries"])


def _pairs(page: Page) -> list[str]:
    """The pairs in view."""
    return [str(id_) for id_ in page.locator(".pair:visible").evaluate_all("all => all.map(one => one.id)")]


def test_picking_two_shows_only_that_pair_and_says_so_in_the_address(phone: Phone) -> None:
    watch = phone()
    page = watch.open(ADDRESS)
    assert _pairs(page) == []
    assert page.locator(".pick__list:visible").count() == 0
    one, other = page.locator("#saturday-pick select").all()
    assert one.locator("option").evaluate_all("all => all.map(o => o.value)") == ["", *SATURDAY]
    other.select_option("1")
    assert _pairs(page) == []
    one.select_option("7")  # the higher number first: the pair is the same
    page.wait_for_url("**#saturday-1-7")
    assert _pairs(page) == ["saturday-1-7"]
    assert page.locator("#saturday-opposites:visible").count() == 0
    assert page.locator("#sunday-pick:visible").count() == 0
    other.select_option("8")
    page.wait_for_url("**#saturday-7-8")
    assert _pairs(page) == ["saturday-7-8"]
    page.go_back()
    page.wait_for_url("**#saturday-1-7")
    assert _pairs(page) == ["saturday-1-7"]
    assert {one.input_value(), other.input_value()} == {"1", "7"}
    page.get_by_role("link", name="Back to all of this day").locator("visible=true").click()
    assert _pairs(page) == []
    assert page.locator("#saturday-opposites:visible").count() == 1
    assert [one.input_value(), other.input_value()] == ["", ""]
    watch.assert_quiet()


def test_a_number_cannot_be_picked_twice(phone: Phone) -> None:
    page = phone().open(ADDRESS)
    one, other = page.locator("#saturday-pick select").all()
    one.select_option("3")
    assert other.locator("option[value='3']").is_disabled()
    assert one.locator("option[value='3']").is_enabled()


@pytest.mark.parametrize("scripts", [True, False])
def test_an_address_opens_on_its_own_pair(phone: Phone, scripts: bool) -> None:
    page = phone(java_script_enabled=scripts).open(f"{ADDRESS}#sunday-4-7")
    assert page.locator("#sunday-4-7").is_visible()
    assert page.locator("#sunday-2-4").is_hidden()
    assert page.locator("#saturday-pick").is_hidden()


def test_without_scripts_a_list_of_all_pairs_leads_to_each(phone: Phone) -> None:
    page = phone(java_script_enabled=False).open(ADDRESS)
    assert page.locator("#saturday-pick form").is_hidden()
    links = page.locator("#saturday-pick .pick__list a")
    assert links.count() == len(SATURDAY) * (len(SATURDAY) - 1) // 2
    page.get_by_role("link", name="3 and 9", exact=True).click()
    assert page.locator("#saturday-3-9").is_visible()
    for at in range(links.count()):
        box = links.nth(at).bounding_box()
        assert box is not None
        assert min(box["width"], box["height"]) >= 48
