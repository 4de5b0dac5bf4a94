"""Maps by touch and by keyboard: layers, the turn, numbers that lead to their rows."""

from __future__ import annotations

import pytest

from tests.browser.conftest import Phone

pytestmark = pytest.mark.browser
PAGE = "types/vostrelle-jinx/structure.html"


def test_a_layer_is_hidden_and_shown_again(phone: Phone) -> None:
    page = phone().open(PAGE)
    layer = page.locator('#map-holds-views [data-layer="heavy-items"]').first
    button = page.locator('#map-holds-views [data-map-layer="heavy-items"]')
    assert layer.is_visible()
    button.tap()
    assert button.get_attribute("aria-pressed") == "false"
    assert not layer.is_visible()
    assert page.locator('#map-holds-views [data-layer="load-points"]').first.is_visible()
    button.tap()
    assert layer.is_visible()


def test_turned_over_the_nose_is_at_the_other_end_and_words_can_be_read(phone: Phone) -> None:
    page = phone().open(PAGE)
    nose = page.locator("#map-holds-left text", has_text="NOSE")
    before = nose.bounding_box()
    page.locator("#map-holds-views [data-map-turn]").tap()
    after = nose.bounding_box()
    assert before is not None
    assert after is not None
    assert before["x"] < 100 < 250 < after["x"] + after["width"]
    turned = nose.evaluate("t => { const m = t.getScreenCTM(); return [m.a, m.d]; }")
    assert turned[0] > 0, "the word is not upside down"
    assert turned[1] > 0


def test_a_number_leads_to_its_row_and_the_row_back(phone: Phone) -> None:
    page = phone(is_mobile=False, has_touch=False).open(PAGE)
    number = page.locator("#map-harms-left a.mark").first
    number.focus()
    page.keyboard.press("Enter")
    page.wait_for_function("location.hash.startsWith('#map-tanks')")
    row = page.locator("tr:target")
    assert row.count() == 1
    back = row.locator('a[href="#map-harms"]')
    assert back.count() == 1


def test_without_scripts_all_layers_show_and_nothing_offers_to_hide_them(phone: Phone) -> None:
    page = phone(java_script_enabled=False).open(PAGE)
    assert not page.locator("#map-holds-views button").first.is_visible()
    for layer in ("load-points", "centre-of-gravity", "heavy-items"):
        assert page.locator(f'#map-holds-views [data-layer="{layer}"]').first.is_visible()
