"""`serve`: a record that breaks while it runs shows the last good pages under a banner that names the finding."""

from __future__ import annotations

import signal
import socket
import subprocess
import sys
import time
import urllib.request
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from pathlib import Path

import pytest
from bs4 import BeautifulSoup, Tag

from tests.site.support import DAY, ROOT, copied_fleet, environment, replace, squeezed

pytestmark = pytest.mark.slow
PATIENCE = 40.0
PAGE = "types/hobmire-twain.html"


@dataclass
class Served:
    """A running server and the records that it follows."""

    address: str
    fleet: Path
    process: subprocess.Popen[bytes]
    log: Path

    def page(self, address: str) -> BeautifulSoup | None:
        """A page as it is served now, None while nothing answers."""
        try:
            with urllib.request.urlopen(f"{self.address}{address}", timeout=10) as answer:
                return BeautifulSoup(answer.read(), "html5lib")
        except OSError:
            return None

    def until(self, holds: Callable[[BeautifulSoup], object], address: str = PAGE) -> BeautifulSoup:
        """The page as soon as something holds of it; the test fails when it does not within a bounded time."""
        end = time.monotonic() + PATIENCE
        while time.monotonic() < end:
            page = self.page(address)
            if page is not None and holds(page):
                return page
            assert self.process.poll() is None, self.log.read_text(encoding="utf-8")
            time.sleep(0.2)
        raise AssertionError(f"not within {PATIENCE} s; it said:\n{self.log.read_text(encoding='utf-8')}")


@pytest.fixture
def served(tmp_path: Path) -> Iterator[Served]:
    """The real command on a free port of this machine, ended after the test."""
    with socket.socket() as free:
        free.bind(("127.0.0.1", 0))
        host = f"127.0.0.1:{free.getsockname()[1]}"
    fleet, log = copied_fleet(tmp_path), tmp_path / "log"
    command = [sys.executable, "-m", "hardpoint", "serve", "--fleet", str(fleet), "--as-of", DAY, "--address", host]
    with (
        log.open("wb") as said,
        subprocess.Popen(command, cwd=ROOT, env=environment(), stdout=said, stderr=said) as process,
    ):
        try:
            yield Served(f"http://{host}/", fleet, process, log)
        finally:
            process.send_signal(signal.SIGINT)
            try:
                process.wait(15)
            except subprocess.TimeoutExpired:
                process.kill()


def banner(page: BeautifulSoup) -> str:
    """The words of the banner, "" where there is none."""
    return squeezed(" ".join(found.get_text(" ") for found in page.select("[role=alert]")))


def test_a_broken_record_shows_the_last_good_page_under_a_banner(served: Served) -> None:
    record = served.fleet / "types" / "hobmire-twain.yaml"
    good = record.read_text(encoding="utf-8")
    first = served.until(lambda page: page.h1 is not None)
    assert banner(first) == ""
    content = first.find(id="content")
    assert isinstance(content, Tag)

    line = replace(record, "  empty: 560 kg / 1235 lb\n", "  empty: 560 mm\n")
    broken = served.until(banner)
    assert "hobmire-twain.yaml" in banner(broken)
    assert str(line) in banner(broken).replace(",", " ").replace(":", " ").split()
    assert "masses.empty" in banner(broken)
    assert "560 mm" in banner(broken)
    still = broken.find(id="content")
    assert isinstance(still, Tag)
    assert still.get_text() == content.get_text()
    for other in ("index.html", "gaps.html", "tails/QQ-TWB.html"):
        assert banner(served.until(lambda page: page.h1 is not None, other)) == banner(broken)

    record.write_text(good.replace("name: Hobmire Twain\n", "name: Hobmire Twain mended\n"), encoding="utf-8")
    mended = served.until(lambda page: not banner(page) and "mended" in page.get_text())
    assert mended.h1 is not None
    assert "Traceback" not in served.log.read_text(encoding="utf-8")


def test_a_bad_record_at_the_start_is_said_and_nothing_is_served(tmp_path: Path) -> None:
    fleet = copied_fleet(tmp_path)
    replace(fleet / "types" / "hobmire-twain.yaml", "  empty: 560 kg / 1235 lb\n", "  empty: 560 mm\n")
    with socket.socket() as free:
        free.bind(("127.0.0.1", 0))
        host = f"127.0.0.1:{free.getsockname()[1]}"
    command = [sys.executable, "-m", "hardpoint", "serve", "--fleet", str(fleet), "--as-of", DAY, "--address", host]
    done = subprocess.run(
        command, cwd=ROOT, env=environment(), capture_output=True, encoding="utf-8", timeout=60, check=False
    )
    assert done.returncode == 1
    assert (done.stdout + done.stderr).count("masses.empty") == 1, done.stdout + done.stderr
    assert "Traceback" not in done.stderr
