"""What the search box finds, what it only calls near, and what Enter opens."""

from __future__ import annotations

import random
import re
from collections.abc import Callable, Iterator
from pathlib import Path
from typing import Any

import pytest
from playwright.sync_api import Page

from tests.browser.finder_reference import entries_of, expected, read_index
from tests.browser.finder_support import GONE, SOLE, TWICE, as_listed, listed, open_box
from tests.browser.support import Watch

pytestmark = pytest.mark.browser

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
        return "".join(one + chance.choice(MARKS) if one.isalpha() and chance.random() < 0.4 else one for one in text)
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
            if chance.random() < 0.5:
                text = _with_slip(chance, text)
        yield text


def test_two_hundred_queries_find_what_the_reference_finds(desk: Watch, crowded: Path) -> None:
    """Exact hits are complete and come first, near ones stand under their heading; Enter never opens a near one."""
    index = read_index(crowded)
    entries = entries_of(index)
    page, home = desk.page, desk.home
    start = page.url
    tally = {"exact": 0, "only near": 0, "nothing": 0, "opened": 0, "near": 0}
    for typed in _queries(index):
        page.locator("#find").fill(typed)
        told = expected(entries, typed)
        assert sorted(listed(page, "exact")) == as_listed(told.exact, home), typed
        assert sorted(listed(page, "near")) == as_listed(told.near, home), typed
        _assert_in_order(page, bool(told.exact), bool(told.near), typed)
        opened = told.opened_by_enter(typed)
        page.locator("#find").press("Enter")
        if opened is not None:
            page.wait_for_url(home + opened.href, wait_until="commit")
            assert opened in told.exact
            open_box(desk, "gaps.html")
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
        ("18", "Kelmarrow Thimble", "types/kelmarrow-thimble.html"),
        (f"2027-06-05 {TWICE}", TWICE, "types/hobmire-twain.html"),
        (f"20270605 {TWICE}", TWICE, "types/hobmire-twain.html"),
    ],
)
def test_it_is_found(desk: Watch, typed: str, label: str, href: str) -> None:
    desk.page.locator("#find").fill(typed)
    found = [(hit[1], hit[3].removeprefix(desk.home)) for hit in listed(desk.page, "exact")]
    assert (label, href) in found


def test_digits_are_whole(desk: Watch) -> None:
    """HW-18 is not what somebody means who types 1."""
    desk.page.locator("#find").fill("1")
    found = listed(desk.page, "exact")
    assert ("Number", "1") in [hit[:2] for hit in found]
    assert "Kelmarrow Thimble" not in [hit[1] for hit in found]


def test_a_number_on_two_days_is_told_with_both_days_and_enter_chooses_none(desk: Watch) -> None:
    page = desk.page
    for typed in (TWICE, f"0{TWICE}", f" {TWICE} "):
        page.locator("#find").fill(typed)
        found = listed(page, "exact")
        assert [hit[:2] for hit in found] == [("Number", TWICE)] * 2
        assert "Saturday, 2027-06-05" in found[0][2]
        assert "Sunday, 2027-06-06" in found[1][2]
        before = page.url
        page.locator("#find").press("Enter")
        page.keyboard.press("Enter")  # and a second press neither: no link has the focus yet
        assert page.url == before
        assert page.evaluate("document.activeElement.hasAttribute('data-finder-hits')")
    near = [hit[1] for hit in listed(page, "near")]
    assert SOLE in near
    assert TWICE not in near


def test_the_day_narrows_a_number(desk: Watch) -> None:
    page = desk.page
    page.locator("#find").fill(f"{TWICE} sun")
    assert [hit[:2] for hit in listed(page, "exact")] == [("Number", TWICE)]
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
    near = listed(page, "near")
    assert near
    assert page.get_by_role("heading", name="Not what you typed").is_visible()
    before = page.url
    for _ in range(3):
        page.locator("#find").press("Enter")
    assert page.url == before


def test_an_unanswered_place_says_so_in_the_list(desk: Watch) -> None:
    desk.page.locator("#find").fill("thimble rocket parachute")
    hits = [hit.inner_text() for hit in desk.page.locator("[data-finder-list=exact] a").all()]
    assert hits
    assert all("not fitted" in hit for hit in hits)


@pytest.mark.parametrize(
    ("typed", "tail", "type_", "note"),
    [
        ("bodkin magneto left", "tails/QQ-BOD.html", "types/tarrowby-bodkin.html", "number 7, Saturday, 2027-06-05"),
        ("halberd hp cock", "tails/QQ-HBD.html", "types/drosmund-halberd.html", "number 9, Saturday, 2027-06-05"),
        ("wicket left door", "tails/QQ-SWA.html", "types/skellrigg-wicket.html", "number 11, Saturday, 2027-06-05"),
    ],
)
def test_what_flies_comes_before_its_type_with_number_and_day(
    desk: Watch, typed: str, tail: str, type_: str, note: str
) -> None:
    """A control, a way in, a door: the aircraft of the line-up first, its type after all of those."""
    page = desk.page
    page.locator("#find").fill(typed)
    pages = [hit[3].removeprefix(desk.home).split("#")[0] for hit in listed(page, "exact")]
    assert {tail, type_} <= set(pages)
    assert pages == sorted(pages, key=[tail, type_].index)
    assert note in page.locator("[data-finder-list=exact] a").first.inner_text()
    before = page.url
    page.locator("#find").press("Enter")  # it does not choose between an aircraft and its type
    assert page.url == before


def test_a_type_that_flies_without_a_registration_says_its_number(desk: Watch) -> None:
    desk.page.locator("#find").fill("twain quarter pane")
    hits = [hit.inner_text() for hit in desk.page.locator("[data-finder-list=exact] a").all()]
    mine = [hit for hit in hits if "Hobmire Twain QQ" not in hit]
    assert mine
    assert all(f"number {TWICE}, Saturday, 2027-06-05" in hit for hit in mine)


@pytest.mark.parametrize(
    ("typed", "label"),
    [
        ("tarowby bodkn", "Tarrowby Bodkin"),  # two words, a slip in each
        ("bodkn tarowby", "Tarrowby Bodkin"),
        ("tarowbi", "Tarrowby Bodkin"),  # seven letters typed: one slip is forgiven, and these are two
        ("tarrouvy", "Tarrowby Bodkin"),  # eight letters, two slips
        ("kelmrowthimble", "Kelmarrow Thimble"),
        ("vostrlle jnix", "Vostrelle Jinx"),  # run together they are one long word
        ("jnix vostrlle", "Vostrelle Jinx"),  # the short word's slip uses up both
    ],
)
def test_two_slips_are_forgiven_in_long_words_only(desk: Watch, typed: str, label: str) -> None:
    page = desk.page
    page.locator("#find").fill(typed)
    assert listed(page, "exact") == []
    near = [hit[1] for hit in listed(page, "near") if hit[0] == "Type"]
    assert (label in near) is (typed not in ("tarowbi", "jnix vostrlle"))
    before = page.url
    page.locator("#find").press("Enter")
    assert page.url == before


@pytest.mark.parametrize("typed", ["qqtxwc", "qq-bxxd", "bodkn qqbpd", "bodkn 71", "2027060606"])
def test_two_slips_are_never_forgiven_where_a_number_or_a_registration_is_one(desk: Watch, typed: str) -> None:
    desk.page.locator("#find").fill(typed)
    assert listed(desk.page, "exact") == []
    assert not {"Number", "Tail"} & {hit[0] for hit in listed(desk.page, "near")}


def test_nothing_found_is_said(desk: Watch) -> None:
    page = desk.page
    page.locator("#find").fill("zzzz yyyy")
    told = page.locator("[data-finder-status]").inner_text()
    assert told == "Nothing found. Check the spelling or go by number. It may not be in this book."
    link = page.locator("[data-finder-hits] a")
    if (Path(page.url.removeprefix("file://")).parent / "not-in-the-book.html").exists():
        assert str(link.get_attribute("href")).endswith("not-in-the-book.html")
    else:
        assert link.count() == 0
