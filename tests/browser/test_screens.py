"""A page that one test leaves to the next is as new."""

from __future__ import annotations

import pytest
from playwright.sync_api import Browser

from tests.browser.screens import Screens
from tests.browser.support import PHONE, Watch

pytestmark = pytest.mark.browser

LOOK = "() => [matchMedia('print').matches, matchMedia('(prefers-color-scheme: dark)').matches, innerWidth]"


def test_a_page_that_was_left_remembers_nothing(chromium: Browser, book: str) -> None:
    screens = Screens(chromium)
    settings = {"viewport": PHONE, "is_mobile": True, "has_touch": True}
    kind, page = screens.take(settings)
    first = Watch(page, book)
    first.open("cautions.html")
    page.get_by_role("button", name="Sunlight").tap()
    assert page.evaluate("localStorage.length") == 1
    page.evaluate("window.name = 'mine'; sessionStorage.setItem('mine', '1'); document.cookie = 'mine=1'")
    page.emulate_media(media="print", color_scheme="dark")
    page.set_viewport_size({"width": 700, "height": 900})
    page.route("**/*.css", lambda route: route.abort())
    page.context.new_page()
    first.leave()
    screens.give_back(kind, page)

    assert screens.take(settings | {"color_scheme": "dark"})[1] is not page
    kind, again = screens.take(settings)
    assert again is page
    assert len(page.context.pages) == 1
    assert page.evaluate("[document.body.childElementCount, window.name]") == [0, ""]
    second = Watch(page, book)
    second.open("cautions.html")
    assert page.evaluate("[localStorage.length, sessionStorage.length, document.cookie]") == [0, 0, ""]
    assert page.evaluate(LOOK) == [False, False, PHONE["width"]]
    page.evaluate("console.log('heard')")
    page.wait_for_function("true")
    assert second.messages == ["console: heard"]
    assert not [message for message in first.messages if "heard" in message]
    assert "css" in " ".join(second.asked)
    screens.give_back(kind, page)
    screens.close()
