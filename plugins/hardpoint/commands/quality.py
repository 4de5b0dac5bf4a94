"""``test``: the project's own formatting, lint, types and tests, with one status at the end."""

from __future__ import annotations

import os
import subprocess
import sys
import time
from collections.abc import Sequence
from dataclasses import dataclass
from pathlib import Path

import click

from hardpoint import browser
from hardpoint.commands.project import Failed, Surroundings

SHARED_OUT = ("-n", "2", "--dist", "loadfile", "--no-loadscope-reorder")
"""Two workers; one takes a file whole, for what its tests share is made once then. The order stays: short ones last."""


@dataclass(frozen=True)
class Outcome:
    """One step of the test command: its name, its exit code and how many seconds it took."""

    name: str
    code: int
    seconds: float


def test(root: Path, pytest_arguments: Sequence[str]) -> None:
    """Run every step, also after one has failed, and sum up. ``pytest_arguments`` go to pytest only.

    Raises Failed where a step failed, Surroundings where CI=true and no browser is to be had.
    """
    chromium = find_browser()
    outcomes = [_run(name, command, root, chromium) for name, command in _steps(pytest_arguments, chromium)]
    click.echo("\n" + summary(outcomes, chromium))
    failed = [outcome.name for outcome in outcomes if outcome.code]
    if failed:
        raise Failed(f"Failed: {', '.join(failed)}.")


def find_browser() -> Path | None:
    """A Chromium: one that is there, else the driver's download; None where there is none and none is required."""
    found = browser.find()
    if found is None and not os.environ.get(browser.VARIABLE):
        click.echo(
            f"No browser found; trying the browser driver's own download ({browser.DOWNLOAD_SECONDS} s at most)."
        )
        found = browser.find() if browser.try_download() else None
    if found is None and os.environ.get("CI") == "true":
        raise Surroundings(f"CI=true needs the browser tests, and there is no browser. {browser.HOW_TO_GET}.")
    return found


def _steps(pytest_arguments: Sequence[str], chromium: Path | None) -> list[tuple[str, list[str]]]:
    only = [] if chromium else ["-m", "not browser"]
    return [
        ("formatting", ["ruff", "format", "--check", "."]),
        ("lint", ["ruff", "check", "."]),
        ("types", ["mypy"]),
        ("tests", ["pytest", *SHARED_OUT, "--durations=10", *only, *pytest_arguments]),
    ]


def _run(name: str, command: Sequence[str], root: Path, chromium: Path | None) -> Outcome:
    click.secho(f"== {name}: {' '.join(command)}", bold=True)
    surroundings = {key: value for key, value in os.environ.items() if key != "PYTHONPATH"}
    if chromium:
        surroundings[browser.VARIABLE] = str(chromium)
    began = time.monotonic()
    code = subprocess.call([sys.executable, "-P", "-m", *command], cwd=root, env=surroundings)
    return Outcome(name, code, time.monotonic() - began)


def summary(outcomes: Sequence[Outcome], chromium: Path | None) -> str:
    """The closing lines: each step with its time, and loudly what was not run."""
    lines = [f"{o.name:<12}{'ok' if o.code == 0 else f'FAILED ({o.code})':<14}{o.seconds:6.1f} s" for o in outcomes]
    lines.append(f"{'together':<26}{sum(outcome.seconds for outcome in outcomes):6.1f} s")
    if chromium is None:
        lines += ["", "BROWSER TESTS WERE NOT RUN: there is no browser.", f"{browser.HOW_TO_GET}, then run this again."]
    return "\n".join(lines)
