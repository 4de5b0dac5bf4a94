"""The index of the search box: whole, lean, leading to places that are there, loaded only when asked for."""

from __future__ import annotations

import datetime as dt
import gzip
import random
import statistics
from dataclasses import replace
from typing import Any

import pytest

from hardpoint import load
from hardpoint.pages import Site as Book
from hardpoint.pages import all_pages
from hardpoint.pages.finder import finder, finder_script
from tests.browser.conftest import Phone
from tests.browser.finder_reference import entries_of, read_index
from tests.browser.finder_support import open_box
from tests.site.support import DAY, FLEET, Site, names, record, squeezed

pytestmark = pytest.mark.browser

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


# --- 300 types --------------------------------------------------------------------------------------------------------

MOST_BYTES, MOST_MS, SLOWER = 60_000, 50, 4
"""For 300 types: well below 100 kB to load; a key answered within 50 ms by a phone at a quarter of this speed."""


@pytest.fixture(scope="module")
def many() -> str:
    """The index of 303 types."""
    book = crowd_of_types(300)
    return finder_script(finder(book, all_pages(book)))


@pytest.mark.slow
def test_the_index_of_300_types_is_lean(many: str) -> None:
    assert many.count('"copy-') >= 300
    assert len(gzip.compress(many.encode(), 9)) < MOST_BYTES


@pytest.mark.slow
def test_typing_among_300_types_stays_quick(phone: Phone, many: str) -> None:
    """By the time that the page's own thread computes for a key, layout and paint included, not by the clock on the
    wall: that one counts what else the machine does."""
    watch = phone()
    watch.page.route("**/finder-index.js", lambda route: route.fulfill(body=many, content_type="text/javascript"))
    page = open_box(watch, "gaps.html")
    session = page.context.new_cdp_session(page)
    session.send("Performance.enable", {"timeDomain": "threadTicks"})

    def busy() -> float:
        metrics = session.send("Performance.getMetrics")["metrics"]
        return float(next(one["value"] for one in metrics if one["name"] == "TaskDuration")) * 1000

    spent = []
    for typed in ("jinx magneto", "copy smoke oil", "rear harness", "qqtwb"):
        page.locator("#find").fill("")
        for letter in typed:
            before = busy()
            page.keyboard.type(letter)
            page.evaluate("() => new Promise(done => requestAnimationFrame(() => setTimeout(done, 0)))")
            spent.append((busy() - before) * SLOWER)
        assert page.locator("[data-finder-list=exact] a").count() > 0, typed
    assert statistics.median(spent[5:]) < MOST_MS  # the first keys warm the engine


def crowd_of_types(count: int) -> Book:
    """The demo's types over and over under other names, with the tails of the first ones."""
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
