"""Builds a site aside and swaps it in whole, so that a failing or killed build leaves the last one as it was.

Beside the target ``site`` stand, while a build runs, ``.site-new-XXXXXXXX`` (being built), ``.site-old-XXXXXXXX`` (the
last site, for the moment between two renames) and ``.site-lock`` (held, so that two builds do not meet). Every folder
that this module may delete holds a marker file; a folder without one is somebody else's and is refused. A killed
process is covered, a power cut is not: nothing is flushed to the disk.
"""

from __future__ import annotations

import contextlib
import re
import secrets
import shutil
from collections.abc import Callable, Iterator
from pathlib import Path

from filelock import FileLock, Timeout

MARKER = ".hardpoint-site"
BUILDING = "hardpoint-site/1 building\n"
WHOLE = "hardpoint-site/1 whole\n"
WAIT_SECONDS = 600.0

Step = Callable[[str], None]
"""Called with a step's name right after it was taken; the tests kill the process there."""


class ForeignFolderError(Exception):
    """The target holds something that no build made; it is left alone."""


class BusyError(Exception):
    """Another build held the target for longer than anybody would wait."""


def _nothing(_step: str) -> None:
    pass


@contextlib.contextmanager
def aside(
    target: Path, *, step: Step = _nothing, on_wait: Callable[[], None] | None = None, wait: float = WAIT_SECONDS
) -> Iterator[Path]:
    """Give an empty folder to build in; on a normal end it becomes ``target``, on an exception it is removed.

    ``on_wait`` is called once when another build holds the target. Raises ForeignFolderError before anything is built,
    BusyError after ``wait`` seconds, OSError where the folder beside the target cannot be written.
    """
    target = target.resolve()
    refuse_others(target)
    target.parent.mkdir(parents=True, exist_ok=True)
    with _held(target, on_wait, wait):
        repair(target)
        new = _make(target, step)
        try:
            yield new
            _mark(new, WHOLE)
            step("marked whole")
            swap(new, target, step)
        except BaseException:
            shutil.rmtree(new, ignore_errors=True)
            raise


def refuse_others(target: Path) -> None:
    """Raise ForeignFolderError unless ``target`` is absent, an empty folder or a site that was built here."""
    if not target.exists():
        return
    if not target.is_dir():
        raise ForeignFolderError(f"{target} is a file, and a site is a folder")
    if any(target.iterdir()) and not _is_marked(target):
        raise ForeignFolderError(f"{target} holds other files and no {MARKER}: it is not a site that was built here")


def swap(new: Path, target: Path, step: Step = _nothing) -> None:
    """Put the whole folder ``new`` in the place of ``target`` by two renames, then remove the last site."""
    refuse_others(target)
    old = _beside(target, "old")
    try:
        if target.exists():
            target.rename(old)
            step("set aside")
        new.rename(target)
    except BaseException:
        if old.exists() and not target.exists():
            old.rename(target)
        raise
    step("swapped in")
    if old.exists():
        _remove(old)
        step("removed")


def repair(target: Path) -> None:
    """Undo what a killed build left beside ``target``: the last whole site back in its place, the rest removed.

    Only for who holds the lock of ``target``: another build's folders would look like leftovers.
    """
    if not target.exists():
        whole = [folder for folder in _leftovers(target, "old") if _is_whole(folder)]
        if whole:
            max(whole, key=lambda folder: folder.stat().st_mtime_ns).rename(target)
    for folder in [*_leftovers(target, "old"), *_leftovers(target, "new")]:
        if _is_marked(folder) or not any(folder.iterdir()):
            _remove(folder)


@contextlib.contextmanager
def _held(target: Path, on_wait: Callable[[], None] | None, wait: float) -> Iterator[None]:
    lock = FileLock(target.parent / f".{target.name}-lock")
    try:
        lock.acquire(timeout=0)
    except Timeout:
        if on_wait is not None:
            on_wait()
        try:
            lock.acquire(timeout=wait)
        except Timeout:
            raise BusyError(f"another build has held {target} for {wait:.0f} s") from None
    try:
        yield
    finally:
        lock.release()


def _make(target: Path, step: Step) -> Path:
    new = _beside(target, "new")
    new.mkdir()  # Not tempfile's: its folders are closed to the user that a web server runs as.
    step("made")
    _mark(new, BUILDING)
    step("marked building")
    return new


def _beside(target: Path, word: str) -> Path:
    return target.with_name(f".{target.name}-{word}-{secrets.token_hex(4)}")


def _leftovers(target: Path, word: str) -> list[Path]:
    name = re.compile(rf"\.{re.escape(target.name)}-{word}-[0-9a-f]{{8}}")
    return sorted(
        path
        for path in target.parent.iterdir()
        if name.fullmatch(path.name) and path.is_dir() and not path.is_symlink()
    )


def _mark(folder: Path, text: str) -> None:
    marker = folder / MARKER
    if not marker.exists():
        marker.touch()  # From here on the folder is known as ours, whatever happens to the next two lines.
    fresh = folder / f"{MARKER}-fresh"
    fresh.write_text(text, encoding="utf-8", newline="\n")
    fresh.replace(marker)


def _remove(folder: Path) -> None:
    """Remove a marked folder, the marker last: killed in between, it is neither taken for whole nor forgotten."""
    _mark(folder, BUILDING)
    for entry in list(folder.iterdir()):
        if entry.name == MARKER:
            continue
        if entry.is_dir() and not entry.is_symlink():
            shutil.rmtree(entry)
        else:
            entry.unlink()
    shutil.rmtree(folder)


def _is_marked(folder: Path) -> bool:
    return (folder / MARKER).is_file()


def _is_whole(folder: Path) -> bool:
    try:
        return (folder / MARKER).read_text(encoding="utf-8") == WHOLE
    except (OSError, ValueError):
        return False
