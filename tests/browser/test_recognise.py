"""The sight key by taps: an answer becomes the address, the address opens its answers, back goes back."""

from __future__ import annotations

import pytest

from tests.browser.conftest import Phone
from tests.site.support import names, record

pytestmark = pytest.mark.browser
PAGE = "recognise.html"


def test_answers_lead_to_who_remains_and_back_goes_back(phone: Phone) -> None:
    page = phone().open(PAGE)
    key = page.locator("#upright")
    key.locator("summary", has_text="on the floor side").first.tap()
    page.wait_for_function("location.hash === '#upright-wings-low'")
    key.locator("summary:visible", has_text="under the tail").first.tap()
    page.wait_for_function("location.hash === '#upright-wings-low-gear-tail'")
    assert key.locator("a:visible", has_text="Kelmarrow Thimble").count() == 1
    assert key.locator("a:visible", has_text="Tarrowby Bodkin").count() == 1
    assert key.locator("a:visible", has_text="Skellrigg Wicket").count() == 0
    page.go_back()
    page.wait_for_function("location.hash === '#upright-wings-low'")
    assert key.locator("a:visible", has_text="Kelmarrow Thimble").count() == 0
    assert key.locator("summary:visible", has_text="under the tail").count() == 1


def test_an_address_that_was_sent_opens_what_it_names(phone: Phone) -> None:
    page = phone().open(f"{PAGE}#inverted-wings-two")
    assert page.locator("#inverted a:visible", has_text="Maplewick Gavotte").count() == 1
    assert page.locator("#upright a:visible").count() == 0


def test_another_answer_closes_the_first(phone: Phone) -> None:
    page = phone().open(PAGE)
    key = page.locator("#upright")
    key.locator("summary", has_text="two wings").first.tap()
    page.wait_for_function("location.hash === '#upright-wings-two'")
    key.locator("summary:visible", has_text="half-way up").first.tap()
    page.wait_for_function("location.hash === '#upright-wings-mid'")
    assert key.locator("a:visible", has_text="Maplewick Gavotte").count() == 0
    assert key.locator("a:visible", has_text="Vostrelle Jinx").count() == 1


def test_without_scripts_every_type_is_reached_in_every_attitude(phone: Phone) -> None:
    page = phone(java_script_enabled=False).open(PAGE)
    wanted = {record("types", name)["name"] for name in names("types")}
    for attitude in ("upright", "inverted", "left-side-down", "right-side-down", "nose-down"):
        told = page.locator(f"#{attitude} .key__left a").evaluate_all("all => all.map(a => a.textContent)")
        assert set(told) == wanted
    page.locator("#upright summary", has_text="two wings").first.tap()
    assert page.locator("#upright a:visible", has_text="Maplewick Gavotte").count() == 1
