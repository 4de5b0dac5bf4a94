"""The hostile site in a browser: nothing that stands in a record runs, whatever a reader does with the page."""

from __future__ import annotations

import pytest
from playwright.sync_api import Page

from tests.browser.conftest import Phone
from tests.browser.support import Watch
from tests.site.fixtures import Hostile

pytestmark = pytest.mark.browser

RAN = "() => window.ran"


def _assert_nothing_ran(page: Page, address: str) -> None:
    assert page.evaluate(RAN) is None, address
    assert page.locator("img:not([src*='assets/photos/'])").count() == 0, address
    assert page.locator("[href^='javascript:' i], [src^='javascript:' i]").count() == 0, address
    style = "getComputedStyle(document.querySelector('#content h1, h1')).visibility"
    assert page.evaluate(style) == "visible", f"{address}: the attack in a string of CSS got out of it"


def _open(phone: Phone, hostile: Hostile) -> Watch:
    return phone(hostile.site.folder.as_uri() + "/")


def test_nothing_runs_on_any_page(phone: Phone, hostile: Hostile) -> None:
    watch = _open(phone, hostile)
    for address in hostile.site.addresses:
        if address == "404.html":
            continue
        page = watch.open(address)
        page.locator("details").evaluate_all("all => all.forEach(d => { d.open = true; })")
        _assert_nothing_ran(page, address)
    watch.assert_quiet()


def test_attacks_are_shown_as_text(phone: Phone, hostile: Hostile) -> None:
    page = _open(phone, hostile).open("types/one/figures.html")
    page.locator("details").evaluate_all("all => all.forEach(d => { d.open = true; })")
    text = page.locator("#content").inner_text()
    marks = [mark for mark, path in hostile.planted.items() if path.startswith("type.")]
    assert len(marks) > 100
    assert [mark for mark in marks if f"{mark} <img src=x onerror=" not in text] == []
    assert "{{ 7*7 }} {% raw %}" in text
    assert "zq 49" not in text


def test_nothing_runs_when_a_reader_searches(phone: Phone, hostile: Hostile) -> None:
    watch = _open(phone, hostile)
    for address in ("index.html", "compare.html"):
        page = watch.open(address)
        search = page.get_by_role("searchbox")
        for typed in ("<img src=x onerror=window.ran=8>", "{{ 7*7 }}", "zq"):
            search.fill(typed)
            search.press("Enter")
        _assert_nothing_ran(page, address)
    for box in page.locator("input[type=checkbox]").all()[:5]:
        box.evaluate("b => b.click()")
    page.get_by_text("Narrow and sort").tap()
    page.get_by_label("Sort by").select_option("empty")
    _assert_nothing_ran(page, "compare.html")
    watch.assert_quiet()


def test_nothing_runs_when_a_reader_follows_links(phone: Phone, hostile: Hostile) -> None:
    watch = _open(phone, hostile)
    for address in ("tails/QQ-TWA.html", "types/one.html", "events/one.html"):
        links = watch.open(address).locator("#content a").evaluate_all("all => all.map(a => a.href)")
        assert links
        for link in sorted({link.partition("#")[0] for link in links}):
            assert link.startswith("file:")
            if link.endswith(".jpg"):  # the large photo, which is no page
                continue
            watch.page.goto(link)
            _assert_nothing_ran(watch.page, link)
    watch.assert_quiet()


def test_the_foot_of_a_printed_sheet_is_one_string(phone: Phone, hostile: Hostile) -> None:
    """CSS reads the whole foot as one string, and nothing after it is lost."""
    page = _open(phone, hostile).open("types/one.html")
    foot = page.evaluate("getComputedStyle(document.documentElement).getPropertyValue('--sheet-foot').trim()")
    assert foot.startswith('"')
    assert foot.endswith('invented demo data"')
    assert page.evaluate("getComputedStyle(document.body).marginTop") == "0px"


def test_an_attack_does_not_break_the_screen(phone: Phone, hostile: Hostile) -> None:
    page = _open(phone, hostile).open("types/one.html")
    assert page.locator("html").evaluate("e => e.scrollWidth") <= 360
