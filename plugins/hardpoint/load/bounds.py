"""How much of a file is read at all, and which files are: decided before a single byte is parsed."""

from __future__ import annotations

import os
import pathlib
import stat

from hardpoint.load.reading_rules import DocumentRule

MAX_BYTES = 1_000_000
MAX_DEPTH = 20
MAX_NODES = 50_000
MAX_KEY = 120
"""Longest key in characters. Every finding below a key prints it, so an endless key would multiply."""

_KINDS = (
    (stat.S_ISLNK, "a symbolic link"),
    (stat.S_ISDIR, "a folder"),
    (stat.S_ISFIFO, "a pipe"),
    (stat.S_ISSOCK, "a socket"),
    (stat.S_ISCHR, "a device"),
    (stat.S_ISBLK, "a device"),
)


class RefusedError(Exception):
    """A file that is not read. ``rule`` and ``read`` become those of the finding, the text its message."""

    def __init__(self, rule: DocumentRule, read: str, expected: str, message: str) -> None:
        super().__init__(message)
        self.rule = rule
        self.read = read
        self.expected = expected
        self.message = message


def read_bounded(path: pathlib.Path, limit: int = MAX_BYTES) -> bytes:
    """The bytes of a regular file of at most ``limit``; raises ``RefusedError`` for everything else.

    A symbolic link is not followed: it could bring a file from outside the fleet folder into the published pages.
    """
    try:
        _refuse_kind(os.lstat(path).st_mode)
        # Opened without following and without waiting, and looked at again: the file may have been exchanged meanwhile.
        flags = os.O_RDONLY | getattr(os, "O_NOFOLLOW", 0) | getattr(os, "O_NONBLOCK", 0) | getattr(os, "O_BINARY", 0)
        with open(os.open(path, flags), "rb") as opened:
            state = os.fstat(opened.fileno())
            _refuse_kind(state.st_mode)
            refuse_size(state.st_size, limit)
            data = opened.read(limit + 1)
    except (OSError, ValueError) as problem:
        reason = (problem.strerror or str(problem)) if isinstance(problem, OSError) else str(problem)
        message = f"cannot be read ({reason.lower()}); is the name right, and may you read the file?"
        raise RefusedError("cannot-read", "", "a file that can be read", message) from problem
    refuse_size(len(data), limit)
    return data


def refuse_size(size: int, limit: int = MAX_BYTES) -> None:
    """Raise ``RefusedError`` where ``size`` in bytes is more than ``limit``."""
    if size > limit:
        expected = f"at most {limit} bytes"
        message = f"got a file of more than {limit} bytes, needs {expected}; pictures and long texts go elsewhere"
        raise RefusedError("too-large", f"{size} bytes", expected, message)


def _refuse_kind(mode: int) -> None:
    if not stat.S_ISREG(mode):
        kind = next((name for is_kind, name in _KINDS if is_kind(mode)), "something that is no file")
        raise RefusedError("not-a-file", kind, "a plain file", f"got {kind}, needs a plain file in this place")
