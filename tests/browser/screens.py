"""Pages for one test after another: making one costs five times what opening an address does."""

from __future__ import annotations

import json
from collections import defaultdict
from typing import Any

from playwright.sync_api import Browser, Page
from playwright.sync_api import Error as BrowserError

_FORGET = "() => { localStorage.clear(); sessionStorage.clear(); window.name = ''; }"


class Screens:
    """Pages by what their context was made with. One that a test has left is as new: empty and without a memory."""

    def __init__(self, browser: Browser) -> None:
        self._browser = browser
        self._free: dict[str, list[Page]] = defaultdict(list)

    def take(self, settings: dict[str, Any]) -> tuple[str, Page]:
        """A page of a context of its own with these settings, and the kind under which to give it back."""
        kind = json.dumps(settings, sort_keys=True)
        if self._free[kind]:
            return kind, self._free[kind].pop()
        context = self._browser.new_context(device_scale_factor=2, **settings)
        context.set_default_timeout(10_000)
        return kind, context.new_page()

    def give_back(self, kind: str, page: Page) -> None:
        """Keep a page for the next test; one that does not let itself be emptied is thrown away."""
        try:
            self._empty(page, json.loads(kind))
        except BrowserError:
            page.context.close()
        else:
            self._free[kind].append(page)

    def _empty(self, page: Page, settings: dict[str, Any]) -> None:
        context = page.context
        for other in context.pages:
            if other is not page:
                other.close()
        page.unroute_all(behavior="ignoreErrors")
        page.evaluate(_FORGET)  # of the site that the test was on; each test stays on one
        page.goto("about:blank")
        context.clear_cookies()
        page.emulate_media(media="null", color_scheme=settings.get("color_scheme", "light"))
        page.set_viewport_size(settings["viewport"])

    def close(self) -> None:
        """Close every page that is kept."""
        for pages in self._free.values():
            for page in pages:
                page.context.close()
