"""One Chromium for each worker, and pages as a phone shows them."""

from __future__ import annotations

import os
from collections.abc import Callable, Iterator
from pathlib import Path
from typing import Any

import pytest
from playwright.sync_api import Browser, sync_playwright

from hardpoint import browser as finder
from tests.browser.finder_support import crowded, desk
from tests.browser.screens import Screens
from tests.browser.support import PHONE, Watch, served
from tests.site.fixtures import demo, hostile, web

__all__ = ["crowded", "demo", "desk", "hostile", "web"]

Phone = Callable[..., Watch]


@pytest.fixture(scope="session")
def chromium() -> Iterator[Browser]:
    """The Chromium that the project finds. Where CI=true a missing one fails, elsewhere its tests are left out."""
    found = finder.find()
    if found is None:
        if os.environ.get("CI") == "true":
            pytest.fail(f"CI=true needs a browser. {finder.HOW_TO_GET}.")
        pytest.skip(f"no browser. {finder.HOW_TO_GET}.")
    flags = [flag for flag in finder.FLAGS if flag != "--headless"]
    with sync_playwright() as playwright:
        browser = playwright.chromium.launch(executable_path=found, args=flags)
        yield browser
        browser.close()


@pytest.fixture(scope="session")
def book(web: Path) -> Iterator[str]:
    """The demo's site two folders deep on a server of this machine."""
    with served(web) as root:
        yield f"{root}station/book/"


@pytest.fixture(scope="session")
def screens(chromium: Browser) -> Iterator[Screens]:
    """The pages that this worker has open, for one test after another."""
    kept = Screens(chromium)
    yield kept
    kept.close()


@pytest.fixture
def phone(screens: Screens, book: str) -> Iterator[Phone]:
    """Opens a watched page of 360 x 740 on the demo's site, or on another one; options go to the browser's context."""
    watches: list[tuple[str, Watch]] = []

    def make(home: str = book, **options: Any) -> Watch:
        settings: dict[str, Any] = {"viewport": PHONE, "is_mobile": True, "has_touch": True} | options
        kind, page = screens.take(settings)
        watch = Watch(page, home)
        watches.append((kind, watch))
        return watch

    yield make
    for kind, watch in watches:
        watch.leave()
        screens.give_back(kind, watch.page)
