"""What the tests of the search box share: a crowded site, a page with the box open, its lists as data."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest
from playwright.sync_api import Page

from tests.browser.finder_reference import Entry
from tests.browser.support import Watch
from tests.site import maximal
from tests.site.fixtures import once
from tests.site.support import build, copied_fleet, plain

DESK: dict[str, Any] = {"viewport": {"width": 1280, "height": 900}, "is_mobile": False, "has_touch": False}
TWICE, SOLE, GONE = "70", "170", "QQ-ZZZ"
"""In the crowded fleet: a number on both days, one on a single day, a tail without a record that was swapped out."""
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


@pytest.fixture(scope="session")
def crowded(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """What the demo has not: a number on two days, awkward nicknames, a swapped-out tail without a record."""
    return once(tmp_path_factory, "crowded", _crowd) / "site"


@pytest.fixture
def desk(phone: Callable[..., Watch], crowded: Path) -> Watch:
    """The crowded site from a folder on a desk's screen: a page without tiles, its search box open."""
    watch = phone(crowded.as_uri() + "/", **DESK)
    open_box(watch, "gaps.html")
    return watch


def open_box(watch: Watch, address: str) -> Page:
    page = watch.open(address)
    page.get_by_role("button", name="Find", exact=True).click()
    page.wait_for_function("window.hardpointMatch && window.hardpointFinder")
    return page


READ = """name => [...document.querySelectorAll(`[data-finder-list=${name}] a`)].map(a => [
    ...["hit__kind", "", ""].map((look, at) => a.children[at] && (at < 2 || !a.children[at].className)
        ? a.children[at].textContent : ""), a.href])"""


def listed(page: Page, name: str) -> list[tuple[str, ...]]:
    """Kind, label, of what, full address of every hit of a list."""
    more = page.locator(f"[data-finder-list={name}] button")
    if more.count():
        more.evaluate("button => button.click()")
    return [tuple(hit) for hit in page.evaluate(READ, name)]


def as_listed(entries: list[Entry], home: str) -> list[tuple[str, ...]]:
    return sorted((*entry.shown, home + entry.href) for entry in entries)
