"""Two builds of one state are the same to the byte, whatever surrounds them."""

from __future__ import annotations

import os
import random
import shutil
from pathlib import Path

from tests.site.support import DAY, FLEET, MARKER, ROOT, Site, digests, run

NOON_OF_THE_DAY = "1812196800"
"""2027-06-05 12:00 in UTC; `date -u -d @1812196800` says the same."""


def _shuffled_copy(folder: Path, seed: int) -> Path:
    """The demo's records, written in an order of its own: the order of a folder's entries is the file system's."""
    files = sorted(path for path in FLEET.rglob("*") if path.is_file())
    random.Random(seed).shuffle(files)
    for number, file in enumerate(files):
        copy = folder / "fleet" / file.relative_to(FLEET)
        copy.parent.mkdir(parents=True, exist_ok=True)
        shutil.copyfile(file, copy)
        os.utime(copy, (1_000_000_000 + number, 1_000_000_000 + number))
    return folder / "fleet"


def _built(folder: Path, cwd: Path, seed: int, **surroundings: str) -> dict[str, str]:
    folder.mkdir(parents=True)
    fleet, site = _shuffled_copy(folder, seed), folder / "site"
    done = run("build", "--fleet", fleet, "--site", site, "--as-of", DAY, cwd=cwd, **surroundings)
    assert done.returncode == 0, done.stdout + done.stderr
    return digests(site)


def test_two_builds_are_the_same_to_the_byte(tmp_path: Path) -> None:
    one = _built(tmp_path / "one", ROOT, 1, TZ="Pacific/Kiritimati", LC_ALL="C", PYTHONHASHSEED="1")
    other = _built(
        tmp_path / "a" / "folder" / "further" / "down", tmp_path, 2,
        TZ="America/Anchorage", LC_ALL="tr_TR.UTF-8", LANGUAGE="tr", PYTHONHASHSEED="2", COLUMNS="40",
    )  # fmt: skip
    assert len(one) > 20
    assert MARKER in one
    assert {name for name in one | other if one.get(name) != other.get(name)} == set()


def test_a_locale_of_plain_letters_changes_nothing(tmp_path: Path) -> None:
    """Without Python's own help (PEP 538, PEP 540) files open as ASCII there; records and pages stay UTF-8."""
    plain = {"LC_ALL": "C", "PYTHONCOERCECLOCALE": "0", "PYTHONUTF8": "0", "PYTHONIOENCODING": "ascii"}
    one = _built(tmp_path / "one", ROOT, 1, **plain)
    assert one == _built(tmp_path / "other", ROOT, 1)


def test_the_day_of_source_date_epoch_is_that_of_utc(tmp_path: Path) -> None:
    for zone in ("Pacific/Kiritimati", "Pacific/Pago_Pago"):
        site = tmp_path / zone
        done = run("build", "--site", site, SOURCE_DATE_EPOCH=NOON_OF_THE_DAY, TZ=zone)
        assert done.returncode == 0, done.stderr
        assert Site(site).data("fleet.json")["as_of"] == DAY
    assert digests(tmp_path / "Pacific" / "Kiritimati") == digests(tmp_path / "Pacific" / "Pago_Pago")
