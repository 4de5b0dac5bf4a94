"""What the tests in a browser share: pages that are watched, and questions put to the document in them."""

from __future__ import annotations

import http.server
import threading
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass, field
from functools import partial
from pathlib import Path
from typing import Any
from urllib.parse import urlsplit

from playwright.sync_api import Dialog, Page

PHONE = {"width": 360, "height": 740}
"""The screen that the design is made for, in CSS pixels."""


@dataclass
class Watch:
    """A page and everything that should not happen on it."""

    page: Page
    home: str
    messages: list[str] = field(default_factory=list)
    foreign: list[str] = field(default_factory=list)
    asked: list[str] = field(default_factory=list)

    def __post_init__(self) -> None:
        self._heard: list[tuple[Any, Any]] = [
            ("console", lambda message: self.messages.append(f"console: {message.text}")),
            ("pageerror", lambda error: self.messages.append(f"error: {error}")),
            ("dialog", self._asks),
            ("requestfailed", lambda request: self._failed(request.url, request.failure)),
            ("response", lambda response: self._answered(response.status, response.url)),
            ("request", lambda request: self._asked(request.url)),
        ]
        for event, hear in self._heard:
            self.page.on(event, hear)

    def leave(self) -> None:
        """Watch no longer: the page goes to another test."""
        for event, hear in self._heard:
            self.page.remove_listener(event, hear)

    def _asked(self, url: str) -> None:
        self.asked.append(url)
        if urlsplit(url)[:2] != urlsplit(self.home)[:2]:
            self.foreign.append(url)

    def _asks(self, dialog: Dialog) -> None:
        self.messages.append(f"dialog: {dialog.message}")
        dialog.dismiss()

    def _failed(self, url: str, reason: str | None) -> None:
        if reason != "net::ERR_ABORTED":  # the icon of a page that was left before it came
            self.messages.append(f"{reason}: {url}")

    def _answered(self, status: int, url: str) -> None:
        if status >= 400:
            self.messages.append(f"{status}: {url}")

    def open(self, address: str) -> Page:
        """Open a page of the site."""
        self.page.goto(self.home + address, wait_until="load")
        return self.page

    def assert_quiet(self) -> None:
        """Fail where anything was said, went wrong, or was asked of another host."""
        assert not self.messages, "\n".join(self.messages)
        assert not self.foreign, "\n".join(self.foreign)
        assert self.asked, "nothing was opened"


class _Quiet(http.server.SimpleHTTPRequestHandler):
    def log_message(self, format: str, *args: Any) -> None:
        """Say nothing: the log of a server is no news of a test."""


@contextmanager
def served(folder: Path) -> Iterator[str]:
    """A folder served on a free port of this machine; gives the address of its root, with a slash."""
    server = http.server.ThreadingHTTPServer(("127.0.0.1", 0), partial(_Quiet, directory=str(folder)))
    thread = threading.Thread(target=server.serve_forever, daemon=True)
    thread.start()
    try:
        yield f"http://127.0.0.1:{server.server_address[1]}/"
    finally:
        server.shutdown()
        server.server_close()
        thread.join(10)


def channels(colour: str) -> tuple[float, float, float]:
    """``rgb(23, 22, 17)``, as computed styles give it, to numbers from 0 to 1."""
    parts = colour[colour.index("(") + 1 : colour.index(")")].replace("/", ",").split(",")
    red, green, blue = (float(part) / 255 for part in parts[:3])
    return red, green, blue


def luminance(colour: tuple[float, float, float]) -> float:
    """Relative luminance, WCAG 2.2, "relative luminance"."""
    linear = [part / 12.92 if part <= 0.04045 else ((part + 0.055) / 1.055) ** 2.4 for part in colour]
    return 0.2126 * linear[0] + 0.7152 * linear[1] + 0.0722 * linear[2]


def contrast(one: str, other: str) -> float:
    """Contrast ratio of two computed colours, WCAG 2.2, "contrast ratio": from 1 to 21."""
    bright, dark = sorted((luminance(channels(one)), luminance(channels(other))), reverse=True)
    return (bright + 0.05) / (dark + 0.05)
