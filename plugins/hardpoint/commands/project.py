"""What every command needs to know: where the project lies, which date counts, and how a command fails."""

from __future__ import annotations

import contextlib
import os
import re
import subprocess
from datetime import UTC, date, datetime
from pathlib import Path
from typing import IO, Any

import click

EPOCH = "SOURCE_DATE_EPOCH"


class Failed(click.ClickException):
    """Errors were found, or the build failed."""

    exit_code = 1

    def show(self, file: IO[Any] | None = None) -> None:
        click.echo(self.format_message(), file=file, err=file is None)


class Surroundings(Failed):
    """Something around the project is missing: network, browser, a free port, a writable disk."""

    exit_code = 3


def root() -> Path:
    """The folder of the project: the checkout that this package lies in, else the working folder.

    Raises click.UsageError where neither holds a mkdocs.yml.
    """
    for folder in (Path(__file__).resolve().parents[3], Path.cwd()):
        if (folder / "mkdocs.yml").is_file():
            return folder
    raise click.UsageError("There is no mkdocs.yml here. Start this in the project's folder.")


def shown(path: Path) -> str:
    """A path as one types it from the working folder, else in full."""
    try:
        return str(path.resolve().relative_to(Path.cwd())) or "."
    except ValueError:
        return str(path)


class Day(click.ParamType[date]):
    """A calendar day, written YYYY-MM-DD."""

    name = "DATE"

    def convert(self, value: Any, param: click.Parameter | None, ctx: click.Context | None) -> date:
        if isinstance(value, date):
            return value
        if re.fullmatch(r"\d{4}-\d{2}-\d{2}", value, re.ASCII):
            with contextlib.suppress(ValueError):
                return date.fromisoformat(value)
        message = f'got "{value}", needs a day of the calendar as YYYY-MM-DD, for example 2027-06-05'
        raise click.BadParameter(message, ctx, param)


def today() -> date:
    """The day that counts where none is given: SOURCE_DATE_EPOCH (in UTC), else today.

    Raises click.UsageError for a SOURCE_DATE_EPOCH that is no whole number of seconds.
    """
    moment = source_date()
    return date.today() if moment is None else moment.date()


def source_date() -> datetime | None:
    """SOURCE_DATE_EPOCH as a moment in UTC; None where it is not set."""
    text = os.environ.get(EPOCH, "")
    if not text:
        return None
    if re.fullmatch(r"\d{1,12}", text, re.ASCII):
        with contextlib.suppress(OverflowError, OSError, ValueError):
            return datetime.fromtimestamp(int(text), UTC)
    raise click.UsageError(f'{EPOCH} is "{text}", needs seconds since 1970 as digits, for example 1812153600')


def edition(folder: Path, as_of: date) -> datetime:
    """When the contents were fixed: SOURCE_DATE_EPOCH, else the last commit of ``folder``, else the day itself.

    Never the moment of the build: two builds of one state are the same to the byte.
    """
    return source_date() or _last_commit(folder) or datetime(as_of.year, as_of.month, as_of.day, tzinfo=UTC)


def _last_commit(folder: Path) -> datetime | None:
    try:
        answer = subprocess.run(
            ["git", "-C", str(folder), "log", "-1", "--format=%ct"],
            capture_output=True,
            text=True,
            timeout=20,
            check=True,
        )
        return datetime.fromtimestamp(int(answer.stdout), UTC)
    except (OSError, ValueError, subprocess.SubprocessError):
        return None
