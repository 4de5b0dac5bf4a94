"""Finds a Chromium for the tests that need one, and for the commands that print."""

from __future__ import annotations

import os
import shutil
import subprocess
import sys
from collections.abc import Iterator
from pathlib import Path

VARIABLE = "HARDPOINT_BROWSER"
DOWNLOAD_SECONDS = 180

FLAGS = (
    "--headless",
    "--no-sandbox",
    "--disable-gpu",
    "--disable-quic",
    "--no-first-run",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-sync",
)
"""For the site's own pages only: without a sandbox (root in a container has none), and silent on the network."""

HOW_TO_GET = (
    f"Install Chromium or Chrome (on Debian or Ubuntu: sudo apt install chromium), or set {VARIABLE} to the path of one"
)

_NAMES = ("chromium", "chromium-browser", "google-chrome", "google-chrome-stable", "chrome")
_PLACES = (
    "/Applications/Chromium.app/Contents/MacOS/Chromium",
    "/Applications/Google Chrome.app/Contents/MacOS/Google Chrome",
    r"C:\Program Files\Google\Chrome\Application\chrome.exe",
    r"C:\Program Files (x86)\Google\Chrome\Application\chrome.exe",
)


def find() -> Path | None:
    """The first Chromium that there is: the one named by HARDPOINT_BROWSER, one installed, the driver's own.

    None where there is none. A HARDPOINT_BROWSER that names no program counts as none: whoever set it wants that one.
    """
    named = os.environ.get(VARIABLE)
    if named:
        found = shutil.which(named)
        return Path(found) if found else None
    return next(_candidates(), None)


def _candidates() -> Iterator[Path]:
    for name in _NAMES:
        if found := shutil.which(name):
            yield Path(found)
    yield from (Path(place) for place in _PLACES if Path(place).is_file())
    own = _drivers_own()
    if own is not None and own.is_file():
        yield own


def _drivers_own() -> Path | None:
    """Where the browser driver keeps its own download; asked in a process of its own, for it starts an event loop."""
    script = "from playwright.sync_api import sync_playwright as s\nwith s() as p: print(p.chromium.executable_path)"
    try:
        answer = subprocess.run(
            [sys.executable, "-I", "-c", script], capture_output=True, text=True, timeout=30, check=True
        )
    except (OSError, subprocess.SubprocessError):
        return None
    return Path(answer.stdout.strip())


def try_download(seconds: float = DOWNLOAD_SECONDS) -> bool:
    """Let the browser driver fetch its own Chromium. False where that fails, or takes longer than ``seconds``."""
    try:
        done = subprocess.run(
            [sys.executable, "-I", "-m", "playwright", "install", "chromium"],
            stdin=subprocess.DEVNULL,
            capture_output=True,
            timeout=seconds,
            check=False,
        )
    except (OSError, subprocess.SubprocessError):
        return False
    return done.returncode == 0 and find() is not None
