"""The box itself: by keyboard, by its names and roles, as a file, at any depth, without scripts."""

from __future__ import annotations

import pytest

from tests.browser.conftest import Phone
from tests.browser.finder_support import open_box
from tests.browser.support import Watch
from tests.site.support import Site

pytestmark = pytest.mark.browser


def test_by_keyboard_alone(desk: Watch) -> None:
    page = desk.open("types/vostrelle-jinx.html")
    button = page.get_by_role("button", name="Find", exact=True)
    assert button.get_attribute("aria-expanded") == "false"
    button.focus()
    page.keyboard.press("Enter")
    assert button.get_attribute("aria-expanded") == "true"
    assert page.evaluate("document.activeElement.id") == "find"
    page.keyboard.type("twain handle")
    links = page.locator("[data-finder-hits] a")
    links.first.wait_for()
    for at in range(2):
        page.keyboard.press("ArrowDown")
        assert links.nth(at).evaluate("a => a === document.activeElement")
    page.keyboard.press("ArrowUp")
    page.keyboard.press("ArrowUp")
    assert page.evaluate("document.activeElement.id") == "find"
    page.keyboard.press("ArrowUp")  # nowhere to go
    assert page.evaluate("document.activeElement.id") == "find"
    page.keyboard.press("Tab")
    assert links.first.evaluate("a => a === document.activeElement")
    href = str(links.first.get_attribute("href"))
    page.keyboard.press("Enter")
    page.wait_for_url("**/" + href.lstrip("./"))
    desk.assert_quiet()


def test_escape_closes_and_gives_the_focus_back(desk: Watch) -> None:
    page = desk.page
    page.keyboard.type("jinx")
    page.locator("[data-finder-hits] a").first.wait_for()
    page.keyboard.press("ArrowDown")
    page.keyboard.press("Escape")
    assert not page.locator("#find").is_visible()
    assert page.get_by_role("button", name="Find", exact=True).evaluate("b => b === document.activeElement")
    page.keyboard.press("Enter")
    assert page.locator("#find").input_value() == ""


def test_a_place_on_the_same_page_closes_the_box(phone: Phone) -> None:
    watch = phone()
    page = open_box(watch, "types/vostrelle-jinx.html")
    page.locator("#find").fill("jinx smoke pump")
    page.locator("[data-finder-list=exact] a[href$='vostrelle-jinx.html#control-smoke-pump']").tap()
    page.wait_for_url("**/vostrelle-jinx.html#control-smoke-pump")
    assert not page.locator("#find").is_visible()
    assert page.locator("#control-smoke-pump").evaluate("e => e.getBoundingClientRect().top < innerHeight")
    watch.assert_quiet()


def test_names_and_roles(desk: Watch) -> None:
    """By the accessibility tree, as Chromium gives it to a screen reader."""
    page = desk.page
    page.locator("#find").fill("twain handle")
    page.locator("[data-finder-list=near] a").first.wait_for()
    tree = page.locator("header.head").aria_snapshot()
    for line in (
        '- button "Find" [expanded]',
        '- search "Find":',
        '- searchbox "Find a number, name, tail, part or word": twain handle',
        "- status:",
        '- region "What was found":',
        '- link "Way in Inside handle Hobmire Twain QQ-TWA number 3, Saturday, 2027-06-05":',
        '- heading "Not what you typed" [level=2]',
    ):
        assert line in tree, tree
    assert page.locator("[data-finder-status]").inner_text().startswith("Found: 3. Not what you typed: ")
    assert tree.count("- list:") == 2


def test_targets_and_letters_are_large_enough(phone: Phone) -> None:
    watch = phone()
    page = open_box(watch, "types/vostrelle-jinx.html")
    page.locator("#find").fill("jinx")
    for target in page.locator("[data-finder] :is(input, a, button), [data-finder-open]").all():
        box = target.bounding_box()
        assert box is not None
        assert box["height"] >= 48, target.inner_text()
    assert page.locator("html").evaluate("e => e.scrollWidth") <= 360
    watch.assert_quiet()


@pytest.mark.parametrize("address", ["index.html", "types/vostrelle-jinx.html", "types/vostrelle-jinx/structure.html"])
@pytest.mark.parametrize("as_file", [False, True], ids=["sub-path", "file"])
def test_it_works_at_every_depth(phone: Phone, demo: Site, address: str, as_file: bool) -> None:
    """Two folders deep on a server, and from a folder without one and without a network."""
    watch = phone(demo.folder.as_uri() + "/", offline=True) if as_file else phone()
    page = watch.open(address)
    assert not any("finder-index" in asked for asked in watch.asked)
    if address != "index.html":
        page.get_by_role("button", name="Find", exact=True).tap()
    page.get_by_role("searchbox").fill("qqtha")
    page.locator("[data-finder-list=exact] a").first.wait_for()
    page.get_by_role("searchbox").press("Enter")
    page.wait_for_url(watch.home + "tails/QQ-THA.html")
    watch.assert_quiet()


def test_the_home_page_still_narrows_its_tiles(phone: Phone) -> None:
    watch = phone()
    page = watch.open("index.html")
    box = page.get_by_role("searchbox")
    assert box.is_visible()
    assert page.get_by_role("button", name="Find", exact=True).count() == 0
    tiles = page.locator("#content [data-find]:visible")
    every = tiles.count()
    for typed, seen in (
        ("jinx", 2),
        ("1", 1),
        ("01", 1),
        ("qq vja", 2),
        ("red ring dish", 1),
        ("QQTWB", 2),
        ("", every),
    ):
        box.fill(typed)
        assert tiles.count() == seen, typed
    box.fill("jinx")
    box.press("Escape")
    assert box.input_value() == ""
    assert tiles.count() == every
    watch.assert_quiet()


def test_without_scripts_it_is_a_link_home(phone: Phone) -> None:
    page = phone(java_script_enabled=False).open("types/vostrelle-jinx.html")
    assert page.get_by_role("searchbox").count() == 0
    with page.expect_navigation():
        page.get_by_role("link", name="Find", exact=True).tap()
    assert page.url.endswith("index.html")
    assert page.locator("#content [data-find]").first.is_visible()


def test_with_scripts_there_is_one_way_to_open_it(phone: Phone) -> None:
    page = phone().open("types/vostrelle-jinx.html")
    assert page.get_by_role("link", name="Find", exact=True).count() == 0
    assert page.get_by_role("button", name="Find", exact=True).count() == 1


def test_an_index_that_is_missing_is_said(phone: Phone) -> None:
    watch = phone()
    watch.page.route("**/finder-index.js", lambda route: route.abort())
    page = watch.open("gaps.html")
    page.get_by_role("button", name="Find", exact=True).tap()
    page.locator("#find").fill("jinx")
    page.wait_for_function("document.querySelector('[data-finder-status]').textContent.includes('could not be loaded')")
