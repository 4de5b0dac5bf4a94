"""The search box: what is found, what is only near, what Enter opens; by keyboard, as a file, without scripts."""

from __future__ import annotations

import datetime as dt
import gzip
import random
import re
from collections.abc import Callable, Iterator
from pathlib import Path
from typing import Any

import pytest
from playwright.sync_api import Page

from hardpoint import load
from hardpoint.pages import Site as Book
from hardpoint.pages import all_pages
from hardpoint.pages.finder import finder, finder_script
from tests.browser.conftest import Phone
from tests.browser.finder_reference import Entry, entries_of, expected, folded, read_index
from tests.browser.support import Watch
from tests.site import maximal
from tests.site.fixtures import once
from tests.site.support import DAY, FLEET, Site, build, copied_fleet, names, plain, record, squeezed

pytestmark = pytest.mark.browser

DESK: dict[str, Any] = {"viewport": {"width": 1280, "height": 900}, "is_mobile": False, "has_touch": False}
TWICE, SOLE, GONE = "70", "170", "QQ-ZZZ"
"""Numbers of the crowded fleet: one on both days, one on a single day; and a tail without a record that was swapped out."""
NICKNAMES = {"kelmarrow-thimble": ["HW-18", "Ølgård Fingerhut"], "vostrelle-jinx": ["Straßenkatze", "Łoś"]}


def _crowd(folder: Path) -> None:
    fleet = copied_fleet(folder)
    for type_id, also in NICKNAMES.items():
        file = fleet / "types" / f"{type_id}.yaml"
        written = plain(file)
        written["also_called"] += also
        maximal.save(file, written)
    file = fleet / "events" / "three-shores-flying-days.yaml"
    event = plain(file)
    days = list(event["days"].values())
    swap = {"was": GONE, "at": "07:10", "date": days[0]["date"], "by": "event organiser"}
    entry = {"tail": "unknown", "time": "15:00", "occupants": "1", "fuel_planned": "40 L", "kit": "unknown"}
    days[0]["entries"][TWICE] = entry | {"type": "hobmire-twain", "swaps": [swap]}
    days[1]["entries"][TWICE] = entry | {"type": "kelmarrow-thimble", "tail": "QQ-THA"}
    days[1]["entries"][SOLE] = entry | {"type": "vostrelle-jinx", "tail": "QQ-VJA"}
    maximal.save(file, event)
    build(folder / "site", fleet)


@pytest.fixture(scope="module")
def crowded(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A site with what the demo has not: a number on two days, awkward nicknames, a swapped-out tail without a record."""
    return once(tmp_path_factory, "crowded", _crowd) / "site"


@pytest.fixture
def desk(phone: Phone, crowded: Path) -> Watch:
    """The crowded site from a folder on a desk's screen: a page without tiles, its search box open."""
    watch = phone(crowded.as_uri() + "/", **DESK)
    _open_box(watch, "gaps.html")
    return watch


def _open_box(watch: Watch, address: str) -> Page:
    page = watch.open(address)
    page.get_by_role("button", name="Find", exact=True).click()
    page.wait_for_function("window.hardpointMatch && window.hardpointFinder")
    return page


READ = """name => [...document.querySelectorAll(`[data-finder-list=${name}] a`)].map(a => [
    ...["hit__kind", "", ""].map((look, at) => a.children[at] && (at < 2 || !a.children[at].className)
        ? a.children[at].textContent : ""), a.href])"""


def _listed(page: Page, name: str) -> list[tuple[str, ...]]:
    """Kind, label, of what, full address of every hit of a list."""
    more = page.locator(f"[data-finder-list={name}] button")
    if more.count():
        more.evaluate("button => button.click()")
    return [tuple(hit) for hit in page.evaluate(READ, name)]


def _as_listed(entries: list[Entry], home: str) -> list[tuple[str, ...]]:
    return sorted((*entry.shown, home + entry.href) for entry in entries)


# --- Two hundred queries ----------------------------------------------------------------------------------------------

MARKS = "\u0301\u0308\u030a\u0327"
SPELT = {"ß": "ss", "ø": "o", "ł": "l", "å": "a", "ś": "s", "ss": "ß", "ae": "æ", "o": "ø", "l": "ł"}


def _as_spelt(chance: random.Random, text: str) -> str:
    """The same to the box: case, spaces, hyphens, diacritics."""
    how = chance.randrange(6)
    if how == 0:
        return text.upper()
    if how == 1:
        return "".join(letter.upper() if chance.random() < 0.5 else letter.lower() for letter in text)
    if how == 2:
        return re.sub(r"[ -]", lambda _: chance.choice(["", " ", "-", "  "]), text)
    if how == 3:
        at = chance.randrange(len(text) + 1)
        return text[:at] + chance.choice([" ", "-"]) + text[at:]
    if how == 4:
        return "".join(l + chance.choice(MARKS) if l.isalpha() and chance.random() < 0.4 else l for l in text)
    return "".join(SPELT.get(letter, letter) if chance.random() < 0.6 else letter for letter in text)


def _with_slip(chance: random.Random, text: str) -> str:
    at = chance.randrange(len(text))
    letter = chance.choice("abcdefghijklmnopqrstuvwxyz0123456789")
    made = (
        text[:at] + letter + text[at + 1 :],
        text[:at] + text[at + 1 :],
        text[:at] + letter + text[at:],
        text[:at] + text[at + 1 : at + 2] + text[at] + text[at + 2 :],
    )
    return chance.choice(made) or letter


def _queries(index: dict[str, Any], count: int = 200) -> Iterator[str]:
    chance = random.Random(20270605)
    types = [(type_[1], *type_[2], type_[0]) for type_ in index["types"]]
    labels = [place[3] for place in index["places"]]
    kinds: list[Callable[[], str]] = [
        lambda: chance.choice(index["numbers"])[0],
        lambda: chance.choice(index["tails"])[0],
        lambda: chance.choice(chance.choice(types)),
        lambda: chance.choice(labels),
        lambda: f"{chance.choice(chance.choice(types))} {chance.choice(labels)}",
        lambda: f"{chance.choice(index['tails'])[0]} {chance.choice(labels)}",
        lambda: f"{chance.choice(index['numbers'])[0]} {chance.choice(labels)}",
        lambda: f"{chance.choice(index['days'])[0].split(',')[0]} {chance.choice(index['numbers'])[0]}",
        lambda: chance.choice(index["docs"])[1],
        lambda: chance.choice(index["pages"])[1],
        lambda: f"{chance.choice(labels)} {chance.choice(kinds_of_places)}",
    ]
    kinds_of_places = index["kinds"]
    for at in range(count):
        text = kinds[at % len(kinds)]()
        words = text.split()
        if chance.random() < 0.25:
            chance.shuffle(words)
            text = " ".join(words)
        if chance.random() < 0.2:
            text = text[: chance.randrange(1, len(text) + 1)]
        if chance.random() < 0.6:
            text = _as_spelt(chance, text)
        if chance.random() < 0.35:
            text = _with_slip(chance, text)
        yield text


def test_two_hundred_queries_find_what_the_reference_finds(desk: Watch, crowded: Path) -> None:
    """Exact hits are complete and come first, near ones stand only under their heading; Enter never opens a near one."""
    index = read_index(crowded)
    entries = entries_of(index)
    page, home = desk.page, desk.home
    start = page.url
    tally = {"exact": 0, "only near": 0, "nothing": 0, "opened": 0, "near": 0}
    for typed in _queries(index):
        page.locator("#find").fill(typed)
        told = expected(entries, typed)
        assert sorted(_listed(page, "exact")) == _as_listed(told.exact, home), typed
        assert sorted(_listed(page, "near")) == _as_listed(told.near, home), typed
        _assert_in_order(page, bool(told.exact), bool(told.near), typed)
        opened = told.opened_by_enter(typed)
        page.locator("#find").press("Enter")
        if opened is not None:
            page.wait_for_url(home + opened.href, wait_until="commit")
            assert opened in told.exact
            _open_box(desk, "gaps.html")
        else:
            assert page.url == start, typed
        tally["exact"] += bool(told.exact)
        tally["near"] += bool(told.near)
        tally["only near"] += bool(told.near and not told.exact)
        tally["nothing"] += not told.near and not told.exact
        tally["opened"] += opened is not None
    assert min(tally.values()) >= 15, tally  # each case was really there
    desk.assert_quiet()


def _assert_in_order(page: Page, exact: bool, near: bool, typed: str) -> None:
    """The heading "Not what you typed" stands between the lists, and before everything that is near."""
    order = page.locator("[data-finder-hits] > *").evaluate_all(
        "all => all.map(e => e.getAttribute('data-finder-list') || e.tagName)"
    )
    lead = ["H2", "near"] if exact else ["H2", "P", "near"]
    assert [part for part in order if part != "A"] == (["exact"] if exact else []) + (lead if near else []), typed
    if near:
        assert page.locator("[data-finder-hits] h2").inner_text() == "Not what you typed"
    if near and not exact:
        assert page.locator("[data-finder-hits] > p").inner_text() == "Nothing matches exactly."


# --- What must be found, told by hand -----------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("typed", "label", "href"),
    [
        ("jinx magneto", "Ignition key", "types/vostrelle-jinx.html#control-ignition-key"),
        ("MAGNETO jinx", "Ignition key", "types/vostrelle-jinx.html#control-ignition-key"),
        ("qqtwb", "QQ-TWB", "tails/QQ-TWB.html"),
        ("QQ TWB", "QQ-TWB", "tails/QQ-TWB.html"),
        ("HW18", "Kelmarrow Thimble", "types/kelmarrow-thimble.html"),
        ("hw 18", "Kelmarrow Thimble", "types/kelmarrow-thimble.html"),
        ("strassenkatze", "Vostrelle Jinx", "types/vostrelle-jinx.html"),
        ("STRAẞENKATZE", "Vostrelle Jinx", "types/vostrelle-jinx.html"),
        ("olgard", "Kelmarrow Thimble", "types/kelmarrow-thimble.html"),
        ("los", "Vostrelle Jinx", "types/vostrelle-jinx.html"),
        ("kelmarrowthimble", "Kelmarrow Thimble", "types/kelmarrow-thimble.html"),
        ("twain outside handle", "Outside handle", "tails/QQ-TWB.html#exit-outside-handle"),
        ("thimble rocket", "Rocket parachute", "types/kelmarrow-thimble.html#pyrotechnics"),
        (f"0{SOLE} mixture", "Mixture", "tails/QQ-VJA.html#control-mixture"),
        ("directions", "Directions", "reading-a-page.html#directions"),
        ("gaps", "What is unanswered", "gaps.html"),
    ],
)
def test_it_is_found(desk: Watch, typed: str, label: str, href: str) -> None:
    desk.page.locator("#find").fill(typed)
    found = [(hit[1], hit[3].removeprefix(desk.home)) for hit in _listed(desk.page, "exact")]
    assert (label, href) in found


def test_a_number_on_two_days_is_told_with_both_days_and_enter_chooses_none(desk: Watch) -> None:
    page = desk.page
    for typed in (TWICE, f"0{TWICE}", f" {TWICE} "):
        page.locator("#find").fill(typed)
        found = _listed(page, "exact")
        assert [hit[:2] for hit in found] == [("Number", TWICE)] * 2
        assert "Saturday, 2027-06-05" in found[0][2]
        assert "Sunday, 2027-06-06" in found[1][2]
        before = page.url
        page.locator("#find").press("Enter")
        page.keyboard.press("Enter")  # and a second press neither: no link has the focus yet
        assert page.url == before
        assert page.evaluate("document.activeElement.hasAttribute('data-finder-hits')")
    near = [hit[1] for hit in _listed(page, "near")]
    assert SOLE in near
    assert TWICE not in near


def test_the_day_narrows_a_number(desk: Watch) -> None:
    page = desk.page
    page.locator("#find").fill(f"{TWICE} sun")
    assert [hit[:2] for hit in _listed(page, "exact")] == [("Number", TWICE)]
    page.locator("#find").press("Enter")
    page.wait_for_url("**/tails/QQ-THA.html")


@pytest.mark.parametrize(("tail", "record"), [("QQ-TWB", True), (GONE, False)])
def test_a_swapped_out_tail_is_found_says_so_and_is_not_opened_by_enter(desk: Watch, tail: str, record: bool) -> None:
    page = desk.page
    page.locator("#find").fill(tail.lower().replace("-", ""))
    link = page.locator("[data-finder-list=exact] a").first
    assert "SWAPPED OUT of number" in link.inner_text()
    assert ("the book holds no record of this aircraft" in link.inner_text()) is not record
    before = page.url
    page.locator("#find").press("Enter")
    assert page.url == before
    with page.expect_navigation():
        link.click()
    if not record:
        assert page.url.endswith(f"#saturday-{TWICE}")
        assert page.locator(f"#saturday-{TWICE}").is_visible()


@pytest.mark.parametrize("typed", ["qqtwc", "jimx", "17", "71", "qqt", "twb"])
def test_what_is_only_near_stands_under_its_heading_and_is_not_opened(desk: Watch, typed: str) -> None:
    page = desk.page
    page.locator("#find").fill(typed)
    near = _listed(page, "near")
    assert near
    assert page.get_by_role("heading", name="Not what you typed").is_visible()
    before = page.url
    for _ in range(3):
        page.locator("#find").press("Enter")
    assert page.url == before


def test_an_unanswered_place_says_so_in_the_list(desk: Watch) -> None:
    desk.page.locator("#find").fill("thimble rocket parachute")
    assert desk.page.locator("[data-finder-list=exact] a").first.inner_text().endswith("not fitted")


def test_nothing_found_is_said(desk: Watch) -> None:
    page = desk.page
    page.locator("#find").fill("zzzz yyyy")
    told = page.locator("[data-finder-status]").inner_text()
    assert told == "Nothing found. It may be an aircraft that this book does not hold."
    link = page.locator("[data-finder-hits] a")
    if (Path(page.url.removeprefix("file://")).parent / "not-in-the-book.html").exists():
        assert str(link.get_attribute("href")).endswith("not-in-the-book.html")
    else:
        assert link.count() == 0


# --- The index is whole -------------------------------------------------------------------------------------------------

ANCHORED = (
    "control-", "exit-", "canopy-", "seat-", "tie-", "do-not-pull-", "tank-", "battery-", "bottle-", "device-", "zone-",
    "hazard-", "loaded-part-", "sign-", "load-point-", "lift-",
)  # fmt: skip
"""Anchors of places, as the contract has them (``<section>-<id>``)."""


def _addresses(index: dict[str, Any]) -> set[str]:
    return {entry.href for entry in entries_of(index)}


def test_every_place_of_every_page_is_in_the_index_and_leads_there(demo: Site) -> None:
    index = read_index(demo.folder)
    known = _addresses(index)
    there = set()
    for address in demo.addresses:
        if address == "404.html":
            continue
        ids = {str(found["id"]) for found in demo.page(address).find_all(id=True)}
        there |= {address} | {f"{address}#{id_}" for id_ in ids}
        if address.startswith(("types/", "tails/")):
            tables = {"load-point-table", "load-point-table-caption"}
            places = {id_ for id_ in ids - tables if id_.startswith(ANCHORED)}
            assert {f"{address}#{id_}" for id_ in places} <= known, address
    assert known <= there
    assert len(known) > 250


def test_every_number_tail_type_and_nickname_is_in_the_index(demo: Site) -> None:
    """Against the records as PyYAML reads them."""
    index = read_index(demo.folder)
    found = {(display, *index["days"][day]) for display, day, *_ in index["numbers"]}
    tails = set(names("tails"))
    for name in names("events"):
        event = record("events", name)
        for day_id, day in event["days"].items():
            for number, entry in day["entries"].items():
                assert (number, f"{day_id.capitalize()}, {day['date']}", event["name"]) in found
                tails |= {swap["was"] for swap in entry.get("swaps", [])}
                tails |= {entry["tail"]} - {"unknown"}
    assert {tail[0] for tail in index["tails"]} == tails
    written = {name: record("types", name) for name in names("types")}
    assert {(t[0], t[1], *t[2]) for t in index["types"]} == {
        (name, one["name"], *one.get("also_called", [])) for name, one in written.items()
    }


def test_every_heading_of_the_docs_is_in_the_index(demo: Site) -> None:
    known = {entry.href: entry.shown[1] for entry in entries_of(read_index(demo.folder)) if entry.kind == "doc"}
    docs = {address.partition("#")[0] for address in known}
    assert "reading-a-page.html" in docs
    count = 0
    for address in docs:
        article = demo.page(address).find("article")
        assert article is not None
        for heading in article.find_all(["h1", "h2", "h3"], id=True):
            title = squeezed(heading.get_text())
            assert known.get(f"{address}#{heading['id']}", known[address]) == title or heading.name == "h1", title
            count += 1
    assert count > 40


def test_every_page_has_the_box_and_none_loads_the_index_unasked(demo: Site) -> None:
    for address in demo.addresses:
        if address == "404.html":
            continue
        scripts = [str(script.get("src")) for script in demo.page(address).find_all("script", src=True)]
        assert any(script.endswith("assets/hardpoint/finder.js") for script in scripts), address
        assert not any(script.endswith("finder-index.js") for script in scripts), address
        form = demo.page(address).find("form", attrs={"data-finder": True})
        assert form is not None
        assert form.has_attr("hidden")


MOST_BYTES = 60_000
"""Well below the 100 kB that a phone may have to load for 300 types."""


def test_the_index_of_300_types_is_lean() -> None:
    fleet = load.fleet(FLEET)
    book = Book(fleet, (), dt.date.fromisoformat(DAY), DAY)
    text = finder_script(finder(book, all_pages(book)))
    assert folded(text)
    many = crowd_of_types(300)
    text = finder_script(finder(many, all_pages(many)))
    assert text.count('"copy-') >= 300
    assert len(gzip.compress(text.encode(), 9)) < MOST_BYTES


def crowd_of_types(count: int) -> Book:
    """The demo's types over and over under other names, with the tails of the first ones."""
    from dataclasses import replace

    fleet = load.fleet(FLEET)
    chance = random.Random(300)
    types = {}
    originals = list(fleet.types.values())
    for at in range(count):
        name = "".join(chance.choice("bdfglmnprstv") + chance.choice("aeiou") for _ in range(4))
        type_ = originals[at % len(originals)]
        airframe = type_.airframe.model_copy(update={"name": f"{name.capitalize()} Copy {at}", "also_called": (name,)})
        types[f"copy-{name}-{at}"] = replace(type_, id=f"copy-{name}-{at}", airframe=airframe)
    return Book(replace(fleet, types=dict(fleet.types) | types), (), dt.date.fromisoformat(DAY), DAY)


# --- Keyboard, names, roles ---------------------------------------------------------------------------------------------


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
    page = _open_box(watch, "types/vostrelle-jinx.html")
    page.locator("#find").fill("jinx smoke pump")
    page.locator("[data-finder-list=exact] a").first.tap()
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
        '- link "Way in Inside handle Hobmire Twain":',
        '- heading "Not what you typed" [level=2]',
    ):
        assert line in tree, tree
    assert page.locator("[data-finder-status]").inner_text().startswith("Found: 2. Not what you typed: ")
    assert tree.count("- list:") == 2


def test_targets_and_letters_are_large_enough(phone: Phone) -> None:
    watch = phone()
    page = _open_box(watch, "types/vostrelle-jinx.html")
    page.locator("#find").fill("jinx")
    for target in page.locator("[data-finder] :is(input, a, button), [data-finder-open]").all():
        box = target.bounding_box()
        assert box is not None
        assert box["height"] >= 48, target.inner_text()
    assert page.locator("html").evaluate("e => e.scrollWidth") <= 360
    watch.assert_quiet()


# --- Anywhere -----------------------------------------------------------------------------------------------------------


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
    for typed, seen in (("jinx", 2), ("1", 1), ("01", 1), ("qq vja", 2), ("red ring", 2), ("QQTWB", 2), ("", every)):
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
