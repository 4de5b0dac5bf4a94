"""The swap of a built site: whatever kills a build, a whole site stands there, and nobody else's files are touched."""

from __future__ import annotations

import hashlib
import os
import signal
import subprocess
import sys
from collections.abc import Callable
from pathlib import Path

import pytest

from hardpoint import publish

PLUGINS = Path(publish.__file__).parents[1]

# Builds "second" and dies by SIGKILL right after the step named on its command line.
CHILD = """
import os, shutil, signal, sys
from pathlib import Path
from hardpoint import publish

target, last = Path(sys.argv[1]), sys.argv[2]

def die():
    os.kill(os.getpid(), signal.SIGKILL)

def step(name):
    if name == last:
        die()

real = shutil.rmtree
def half(path, *args, **kwargs):
    if last == "half removed" and Path(path).name == "types":
        for file in list(Path(path).iterdir())[:1]:
            file.unlink()
        die()
    return real(path, *args, **kwargs)
shutil.rmtree = half

with publish.aside(target, step=step) as new:
    (new / "types").mkdir()
    (new / "index.html").write_text("second", encoding="utf-8")
    step("half built")
    for name in ("one", "two"):
        (new / "types" / f"{name}.html").write_text("second", encoding="utf-8")
"""

# In the order in which a build takes them; the last site counts until the new one stands in its place.
BEFORE = ["made", "marked building", "half built", "marked whole", "set aside"]
AFTER = ["swapped in", "half removed", "removed"]

sigkill = pytest.mark.skipif(sys.platform == "win32", reason="SIGKILL is POSIX's")


def fill(folder: Path, text: str) -> None:
    (folder / "types").mkdir(parents=True)
    (folder / "index.html").write_text(text, encoding="utf-8")
    for name in ("one", "two"):
        (folder / "types" / f"{name}.html").write_text(text, encoding="utf-8")


def build(target: Path, text: str) -> None:
    with publish.aside(target) as new:
        fill(new, text)


def digest(folder: Path) -> dict[str, str]:
    return {
        str(path.relative_to(folder)): hashlib.sha256(path.read_bytes()).hexdigest()
        for path in sorted(folder.rglob("*"))
        if path.is_file()
    }


def texts(folder: Path) -> set[str]:
    """What a reader gets from each page; the set of one text means that the site is whole and of one build."""
    return {(folder / name).read_text(encoding="utf-8") for name in ("index.html", "types/one.html", "types/two.html")}


def beside(target: Path) -> list[str]:
    return sorted(path.name for path in target.parent.iterdir() if path.name != f".{target.name}-lock")


def killed_at(target: Path, step: str) -> None:
    done = subprocess.run(
        [sys.executable, "-c", CHILD, str(target), step],
        env={**os.environ, "PYTHONPATH": str(PLUGINS)},
        capture_output=True,
        text=True,
        timeout=60,
        check=False,
    )
    assert done.returncode == -signal.SIGKILL, done.stderr


def test_a_build_replaces_the_whole_site(tmp_path: Path) -> None:
    site = tmp_path / "site"
    build(site, "first")
    (site / "types" / "gone.html").write_text("a page of a record that was since withdrawn", encoding="utf-8")
    build(site, "second")
    assert texts(site) == {"second"}
    assert not (site / "types" / "gone.html").exists()
    assert beside(site) == ["site"]


@sigkill
@pytest.mark.parametrize("step", [*BEFORE, *AFTER])
def test_after_a_kill_repair_leaves_one_whole_site(tmp_path: Path, step: str) -> None:
    site = tmp_path / "site"
    build(site, "first")
    killed_at(site, step)
    publish.repair(site)
    assert texts(site) == {"first" if step in BEFORE else "second"}
    assert beside(site) == ["site"]


@sigkill
@pytest.mark.parametrize("step", [*BEFORE[:-1], "swapped in"])
def test_after_a_kill_of_the_first_build_there_is_a_whole_site_or_none(tmp_path: Path, step: str) -> None:
    site = tmp_path / "site"
    killed_at(site, step)
    publish.repair(site)
    assert site.exists() == (step == "swapped in")
    assert not site.exists() or texts(site) == {"second"}


@sigkill
@pytest.mark.parametrize("step", [*BEFORE, *AFTER])
def test_the_next_build_repairs_by_itself(tmp_path: Path, step: str) -> None:
    site = tmp_path / "site"
    build(site, "first")
    killed_at(site, step)
    build(site, "third")
    assert texts(site) == {"third"}
    assert beside(site) == ["site"]


@sigkill
def test_a_half_removed_old_site_is_never_taken_for_a_whole_one(tmp_path: Path) -> None:
    site = tmp_path / "site"
    build(site, "first")
    killed_at(site, "half removed")
    for path in sorted(site.rglob("*"), reverse=True):
        path.unlink() if path.is_file() else path.rmdir()
    site.rmdir()
    publish.repair(site)
    assert beside(site) == []


@pytest.mark.parametrize("error", [ValueError("a bad record"), KeyboardInterrupt()])
def test_a_failing_build_leaves_the_last_site_to_the_byte(tmp_path: Path, error: BaseException) -> None:
    site = tmp_path / "site"
    build(site, "first")
    before = digest(site)

    def fail() -> None:
        with publish.aside(site) as new:
            (new / "index.html").write_text("half", encoding="utf-8")
            raise error

    with pytest.raises(type(error)):
        fail()
    assert digest(site) == before
    assert beside(site) == ["site"]


@pytest.mark.parametrize("step", ["marked whole", "set aside"])
def test_an_interrupt_before_the_swap_puts_the_last_site_back(tmp_path: Path, step: str) -> None:
    site = tmp_path / "site"
    build(site, "first")

    def interrupt(name: str) -> None:
        if name == step:
            raise KeyboardInterrupt

    def run() -> None:
        with publish.aside(site, step=interrupt) as new:
            fill(new, "second")

    with pytest.raises(KeyboardInterrupt):
        run()
    assert texts(site) == {"first"}
    assert beside(site) == ["site"]


def make_files(path: Path) -> None:
    path.mkdir()
    (path / "thesis.txt").write_text("years of work", encoding="utf-8")


def make_file(path: Path) -> None:
    path.write_text("years of work", encoding="utf-8")


@pytest.mark.parametrize("make", [make_files, make_file])
def test_somebody_elses_folder_is_refused_before_anything_is_built(
    tmp_path: Path, make: Callable[[Path], None]
) -> None:
    target = tmp_path / "home"
    make(target)
    with pytest.raises(publish.ForeignFolderError, match="home"), publish.aside(target):
        pytest.fail("built for a folder that is not ours")
    assert "years of work" in (target / "thesis.txt" if target.is_dir() else target).read_text(encoding="utf-8")
    assert beside(target) == ["home"]


def test_files_put_into_the_target_while_building_are_not_swapped_away(tmp_path: Path) -> None:
    target = tmp_path / "site"

    def run() -> None:
        with publish.aside(target) as new:
            fill(new, "first")
            make_files(target)

    with pytest.raises(publish.ForeignFolderError):
        run()
    assert beside(target) == ["site"]
    assert (target / "thesis.txt").exists()


def test_an_empty_folder_is_taken(tmp_path: Path) -> None:
    site = tmp_path / "site"
    site.mkdir()
    build(site, "first")
    assert texts(site) == {"first"}
    assert beside(site) == ["site"]


def test_folders_of_other_hands_beside_the_site_stay(tmp_path: Path) -> None:
    for name in (".site-old-0123abcd", ".site-new-0123abcd", ".site-new-notes", ".site-old-0123abcde", "site-copy"):
        make_files(tmp_path / name)
    before = beside(tmp_path / "site")
    build(tmp_path / "site", "first")
    assert beside(tmp_path / "site") == sorted([*before, "site"])


@pytest.mark.skipif(sys.platform == "win32", reason="modes and free symbolic links are POSIX's")
def test_the_site_can_be_read_by_a_web_servers_user(tmp_path: Path) -> None:
    before = os.umask(0o022)
    try:
        build(tmp_path / "site", "first")
    finally:
        os.umask(before)
    assert (tmp_path / "site").stat().st_mode & 0o777 == 0o755


@pytest.mark.skipif(sys.platform == "win32", reason="modes and free symbolic links are POSIX's")
def test_a_link_to_the_site_stays_a_link(tmp_path: Path) -> None:
    build(tmp_path / "www" / "real", "first")
    (tmp_path / "site").symlink_to(tmp_path / "www" / "real")
    build(tmp_path / "site", "second")
    assert (tmp_path / "site").is_symlink()
    assert texts(tmp_path / "www" / "real") == {"second"}


def test_two_builds_do_not_meet(tmp_path: Path) -> None:
    site = tmp_path / "site"
    waited: list[str] = []

    def second() -> None:
        with publish.aside(site, on_wait=lambda: waited.append("told"), wait=0.2):
            pytest.fail("two builds at once")

    with publish.aside(site) as new:
        fill(new, "first")
        with pytest.raises(publish.BusyError):
            second()
    assert waited == ["told"]
    assert texts(site) == {"first"}
