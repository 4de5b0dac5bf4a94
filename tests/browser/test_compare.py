"""The comparison: typing filters, sorting sorts, facts are chosen, and the address brings it all back."""

from __future__ import annotations

import pytest
from playwright.sync_api import Page

from tests.browser.conftest import Phone
from tests.site.support import Site, names, record

pytestmark = pytest.mark.browser

TYPES = names("types")
DESK = {"viewport": {"width": 1280, "height": 800}, "is_mobile": False, "has_touch": False}


def _shown(page: Page) -> list[str]:
    """The ids of the types in view, in their order."""
    rows = page.locator("table[data-compare] tbody tr:visible").evaluate_all("all => all.map(r => r.id)")
    return [str(row).removeprefix("row-") for row in rows]


def _facts(page: Page) -> set[str]:
    """The facts in view, by their labels."""
    cells = page.locator("table[data-compare] tbody tr:visible").first.locator("td:visible")
    return set(cells.evaluate_all("all => all.map(c => c.dataset.label)"))


def _kilograms(name: str) -> float:
    stated = str(record("types", name)["masses"]["empty"]).split("/")[0].split()
    assert stated[1] == "kg"
    return float(stated[0])


def test_all_types_are_there_at_first(phone: Phone) -> None:
    watch = phone()
    assert sorted(_shown(watch.open("compare.html"))) == TYPES
    watch.assert_quiet()


@pytest.mark.parametrize("name", TYPES)
def test_typing_filters_by_name_and_by_any_fact(phone: Phone, name: str) -> None:
    watch = phone()
    page = watch.open("compare.html")
    search = page.get_by_role("searchbox")
    written = record("types", name)
    search.press_sequentially(written["name"].split()[-1][:4].lower())
    assert name in _shown(page)
    search.press_sequentially(written["name"].split()[-1][4:].lower())
    assert _shown(page) == [name]
    role = written["role"].split(",")[0]
    alike = sorted(other for other in TYPES if role in record("types", other)["role"])
    for typed, found in ((role, alike), (written["name"].upper(), [name])):
        search.fill(typed)
        assert sorted(_shown(page)) == found, typed
        search.fill("")
        assert sorted(_shown(page)) == TYPES
    search.fill("no aircraft has this")
    assert _shown(page) == []
    assert page.get_by_role("status").inner_text().startswith("0 of ")
    watch.assert_quiet()


def _open_tools(page: Page) -> Page:
    """What narrows and sorts is folded away, so that a phone shows the rows first."""
    page.get_by_text("Narrow and sort").tap()
    return page


@pytest.mark.parametrize("as_file", [False, True], ids=["server", "file"])
def test_a_facet_narrows_and_stands_in_the_address(phone: Phone, demo: Site, as_file: bool) -> None:
    home = (demo.folder.as_uri() + "/",) if as_file else ()
    watch = phone(*home)
    page = _open_tools(watch.open("compare.html"))
    with_rocket = [name for name in TYPES if "rocket parachute" in str(record("types", name)["pyrotechnics"])]
    assert 0 < len(with_rocket) < len(TYPES)
    page.get_by_label("Rocket parachute").first.select_option("YES")
    assert sorted(_shown(page)) == with_rocket
    page.reload()
    assert sorted(_shown(page)) == with_rocket
    assert page.get_by_label("Rocket parachute").first.is_visible()  # what narrows is never out of sight
    page.get_by_role("button", name="Show all again").tap()
    assert sorted(_shown(page)) == TYPES
    watch.assert_quiet()


def test_a_control_is_found_over_all_types_and_leads_to_its_place_and_back(phone: Phone) -> None:
    """Demo: which way is magneto off on QQ-BOD. The tail's own row says that it is other than on its type."""
    watch = phone()
    page = watch.open("across/shutdown-controls.html")
    page.get_by_role("searchbox").fill("QQ-BOD magneto left")
    assert page.locator("tbody tr:visible").count() <= 2  # the right one has the left one in its feel
    row = page.locator("#QQ-BOD-control-magneto-left")
    assert row.is_visible()
    words = " ".join((row.text_content() or "").split())  # what is out of view is not laid out yet
    assert "towards canopy" in words
    assert "other than on its type" in words
    with page.expect_navigation():
        row.get_by_role("link").first.tap()
    assert page.url.endswith("tails/QQ-BOD.html#control-magneto-left")
    page.get_by_text("The same on other types: shutdown controls").tap()
    with page.expect_navigation():
        page.get_by_role("link", name="magneto left").last.tap()
    assert page.url.endswith("across/shutdown-controls.html#QQ-BOD-control-magneto-left")
    assert page.locator("#QQ-BOD-control-magneto-left").is_visible()
    watch.assert_quiet()


def test_a_linked_row_shows_whatever_was_narrowed_before(phone: Phone) -> None:
    page = phone().open("across/shutdown-controls.html#q=no%20such%20control")
    assert page.locator("tbody tr:visible").count() == 0
    page.evaluate("location.hash = 'vostrelle-jinx-control-master'")
    page.locator("#vostrelle-jinx-control-master").wait_for(state="visible", timeout=2000)


def test_sorting_goes_by_size_not_by_letters_and_turns(phone: Phone) -> None:
    watch = phone()
    page = _open_tools(watch.open("compare.html"))
    light_first = sorted(TYPES, key=_kilograms)
    page.get_by_label("Sort by").select_option("empty")
    assert _shown(page) == light_first
    page.get_by_role("button", name="Reverse").tap()
    assert _shown(page) == light_first[::-1]
    page.get_by_label("Sort by").select_option("name")
    page.get_by_role("button", name="Reverse").tap()
    assert _shown(page) == sorted(TYPES, key=lambda name: str(record("types", name)["name"]))
    watch.assert_quiet()


def test_heads_sort_where_there_is_room_for_them(phone: Phone) -> None:
    page = phone(**DESK).open("compare.html")
    head = page.locator("th[data-column='empty']")
    head.get_by_role("button").click()
    assert head.get_attribute("aria-sort") == "ascending"
    assert _shown(page) == sorted(TYPES, key=_kilograms)
    head.get_by_role("button").click()
    assert head.get_attribute("aria-sort") == "descending"
    assert _shown(page) == sorted(TYPES, key=_kilograms)[::-1]


def _in_view(page: Page, column: str) -> bool:
    """Whether the head of a column is seen whole, beside the first column that stays."""
    seen: bool = page.evaluate(
        """column => {
            const board = document.querySelector(".board").getBoundingClientRect();
            const first = document.querySelector("thead th").getBoundingClientRect();
            const head = document.querySelector(`th[data-column="${column}"]`).getBoundingClientRect();
            return head.width > 0 && head.left >= first.right - 1 && head.right <= board.right + 1;
        }""",
        column,
    )
    return seen


@pytest.mark.parametrize("address", ["compare.html", "across/shutdown-controls.html"])
def test_what_one_sorts_by_is_in_view_at_a_desk(phone: Phone, address: str) -> None:
    watch = phone(**DESK)
    page = watch.open(address)
    columns = [str(c) for c in page.locator("thead th").evaluate_all("all => all.map(h => h.dataset.column)")][1:]
    page.get_by_text("Narrow and sort").click()
    last, first = columns[-1], columns[0]
    for column in (last, first):
        page.get_by_label("Sort by").select_option(column)
        assert _in_view(page, column), column
    page.goto("about:blank")
    page.goto(f"{watch.home}{address}#sort={last}")
    assert _in_view(page, last)
    where = page.locator(".board").evaluate("b => b.scrollLeft")
    page.locator(f"th[data-column='{last}'] button").click()  # the head that one clicks stays under the pointer
    assert page.locator(".board").evaluate("b => b.scrollLeft") == where
    watch.assert_quiet()


def test_what_one_sorts_by_stands_first_on_every_card(phone: Phone) -> None:
    page = _open_tools(phone().open("compare.html"))
    for fact, label in (("empty", "Empty mass"), ("span", "Span")):  # the second is not among those shown at first
        page.get_by_label("Sort by").select_option(fact)
        for row in page.locator("tbody tr:visible").all()[:3]:
            row.scroll_into_view_if_needed()
            tops = row.locator("td:visible").evaluate_all(
                "all => all.map(c => [c.getBoundingClientRect().top, c.dataset.label]).sort((a, b) => a[0] - b[0])"
            )
            assert tops[0][1] == label
            name = row.locator("th").bounding_box()
            assert name is not None
            assert name["y"] < tops[0][0]


def test_a_fact_that_is_put_away_is_not_sorted_by(phone: Phone) -> None:
    page = _open_tools(phone().open("compare.html"))
    page.get_by_label("Sort by").select_option("span")
    page.get_by_text("Choose facts").tap()
    box = page.get_by_label("Span", exact=True)
    assert box.is_checked()
    box.uncheck()
    assert page.get_by_label("Sort by").input_value() == ""
    assert "Span" not in _facts(page)


def test_facts_are_chosen(phone: Phone, demo: Site) -> None:
    watch = phone()
    page = _open_tools(watch.open("compare.html"))
    boxes = demo.page("compare.html").find_all("input", type="checkbox")
    usual = {str(box["value"]) for box in boxes if box.has_attr("checked")}
    assert 0 < len(_facts(page)) == len(usual) < len(boxes)
    page.get_by_text("Choose facts").tap()
    assert "Span" not in _facts(page)
    page.get_by_label("Span", exact=True).check()
    page.get_by_label("Empty mass", exact=True).uncheck()
    assert "Span" in _facts(page)
    assert "Empty mass" not in _facts(page)
    watch.assert_quiet()


def _choose(page: Page) -> None:
    page.get_by_role("searchbox").fill("wing")
    _open_tools(page).get_by_label("Sort by").select_option("empty")
    page.get_by_role("button", name="Reverse").tap()
    page.get_by_text("Choose facts").tap()
    page.get_by_label("Span", exact=True).check()


@pytest.mark.parametrize("as_file", [False, True], ids=["server", "file"])
def test_a_view_comes_back_on_reload_and_can_be_sent(phone: Phone, demo: Site, as_file: bool) -> None:
    home = (demo.folder.as_uri() + "/",) if as_file else ()
    watch = phone(*home)
    page = watch.open("compare.html")
    _choose(page)
    view = _shown(page), _facts(page)
    assert "Span" in view[1]
    page.reload()
    assert (_shown(page), _facts(page)) == view
    assert page.get_by_role("searchbox").input_value() == "wing"
    other = phone(*home)
    other.page.goto(page.url)  # somebody else opens the same address
    assert (_shown(other.page), _facts(other.page)) == view
    assert other.page.get_by_role("button", name="Reverse").get_attribute("aria-pressed") == "true"
    watch.assert_quiet()
    other.assert_quiet()


@pytest.mark.parametrize(
    "hash_", ["#q=%3Cimg%20src=x%20onerror=alert(1)%3E&sort=nothing&facts=no-such", "#row-" + TYPES[0], "#q=%"]
)
def test_a_strange_address_does_no_harm(phone: Phone, hash_: str) -> None:
    watch = phone()
    page = watch.open(f"compare.html{hash_}")
    assert page.locator("h1").is_visible()
    assert page.locator("#content img").count() == 0
    page.get_by_role("searchbox").fill("")
    assert sorted(_shown(page)) == TYPES
    watch.assert_quiet()


def test_a_name_leads_to_the_crew_page(phone: Phone) -> None:
    page = phone().open("compare.html")
    with page.expect_navigation():
        page.locator(f"#row-{TYPES[0]} a").first.tap()
    assert page.url.endswith(f"types/{TYPES[0]}.html")
