"""The command line. It parses, calls and turns what went wrong into a line and an exit code; the work is elsewhere.

Exit codes: 0 fine; 1 errors found, or the build failed; 2 wrong use; 3 something around the project is missing;
130 interrupted.
"""

from __future__ import annotations

import contextlib
import os
import re
import sys
import tempfile
import traceback
from collections.abc import Callable, Sequence
from datetime import date
from pathlib import Path
from typing import Any

import click

from hardpoint.commands.project import Day, Failed, Surroundings, root, shown, today

DEFAULT_COMMAND = "build"
INTERRUPTED = 130
CODES = "Exit codes: 0 fine; 1 {one}; 2 wrong use; 3 something around the project is missing; 130 interrupted."


class DefaultGroup(click.Group):
    """A group that builds where no command is named, so that options alone mean ``build`` too."""

    def list_commands(self, ctx: click.Context) -> list[str]:
        return list(self.commands)  # In the order of a day's work, not of the alphabet.

    def parse_args(self, ctx: click.Context, args: list[str]) -> list[str]:
        own = {name for param in self.get_params(ctx) for name in param.opts}
        if not args or (args[0].startswith("-") and args[0] not in own):
            args = [DEFAULT_COMMAND, *args]
        return super().parse_args(ctx, args)


def _fleet_option(function: Callable[..., Any]) -> Callable[..., Any]:
    return click.option(
        "--fleet",
        type=click.Path(path_type=Path),
        metavar="DIR",
        help="Folder of the records. [default: fleet/ of the project]",
    )(function)


def _as_of_option(function: Callable[..., Any]) -> Callable[..., Any]:
    return click.option(
        "--as-of",
        type=Day(),
        help="Day that reviews and dates are judged on, as 2027-06-05. [default: SOURCE_DATE_EPOCH, else today]",
    )(function)


@click.group(cls=DefaultGroup, context_settings={"help_option_names": ["-h", "--help"], "max_content_width": 100})
def cli() -> None:
    """Hardpoint builds a rescue knowledge base for an airfield out of the records under fleet/.

    Without a command it builds the site. Each command has its own help: put --help after its name.
    """


@cli.command(epilog=CODES.format(one="errors in records or pages, nothing built"))
@_fleet_option
@click.option(
    "--site",
    type=click.Path(path_type=Path),
    metavar="DIR",
    help="Folder to build. It is replaced as a whole, and only if it was built here or is empty. [default: site/]",
)
@_as_of_option
def build(fleet: Path | None, site: Path | None, as_of: date | None) -> None:
    """Make the site.

    Reads the records, checks them and writes the pages. Where something is wrong, all of it is said in one go and the
    last site stays as it was.

    Example: python3 site_build.py build --as-of 2027-06-05
    """
    from hardpoint.commands import site as commands

    top = root()
    commands.build(top, _existing(fleet, top), site or top / "site", as_of or today())


@cli.command(epilog=CODES.format(one="at least one error in the records"))
@_fleet_option
@_as_of_option
@click.option(
    "--format",
    "form",
    type=click.Choice(["text", "json", "github"]),
    default="text",
    show_default=True,
    help="text for people; json for programs; github for notes beside the lines of a pull request.",
)
def check(fleet: Path | None, as_of: date | None, form: str) -> None:
    """Read the records and say what is wrong with them.

    Every problem of every file in one run, each with its file, line and what would be right. Warnings (what the world
    is like) do not fail; errors (what must not be published) do. Nothing is built.

    Example: python3 site_build.py check --format json
    """
    from hardpoint import load, report

    folder, day = _existing(fleet, root() if fleet is None else None), as_of or today()
    checked = load.check(folder, day)
    write = {"text": report.text, "json": report.as_json, "github": report.github}[form]
    click.echo(write(checked.findings, day, checked.files).rstrip("\n"))
    if any(finding.severity == "error" for finding in checked.findings):
        raise click.exceptions.Exit(1)


@cli.command(epilog=CODES.format(one="the first build failed"))
@_fleet_option
@_as_of_option
@click.option("--address", default="127.0.0.1:8000", show_default=True, metavar="HOST:PORT", help="Where to serve.")
def serve(fleet: Path | None, as_of: date | None, address: str) -> None:
    """Show the site in a browser and follow changes.

    Builds into a folder of its own (site/ is left alone) and builds again whenever a record or a page is saved. A
    record with an error shows the last good pages under a banner that names it. Stop with Ctrl-C. It is made for one
    author's own machine, not for a station: there, put site/ on a web server.

    Example: python3 site_build.py serve --address 127.0.0.1:8001
    """
    from hardpoint.commands import site as commands

    top = root()
    commands.serve(top, _existing(fleet, top), as_of or _fixed_day(), _address(address))


@cli.command(epilog=CODES.format(one="--check found a schema that is not current"))
@click.option(
    "--out",
    type=click.Path(path_type=Path),
    metavar="DIR",
    help="Folder to write to. [default: the package's schema/, which editors are pointed to]",
)
@click.option("--check", "only_check", is_flag=True, help="Write nothing; fail where a file is not current.")
def schema(out: Path | None, only_check: bool) -> None:
    """Write the schema that editors complete and check records with.

    It follows from the record model, as do the pages docs/record-keys.md and docs/rules.md and the list of all words of
    the interface (words/hardpoint.pot of the package), which are written too (not with --out). Run this after a change
    of the model, of a rule, or of what pages say.

    Example: python3 site_build.py schema --check
    """
    from hardpoint.commands import schema as commands

    if out is None:
        commands.schema(Path(__file__).with_name("schema"), only_check, root() / "docs")
    else:
        commands.schema(out, only_check)


@cli.command(
    epilog=CODES.format(one="at least one check failed"),
    context_settings={"ignore_unknown_options": True, "allow_interspersed_args": False},
)
@click.argument("pytest_arguments", nargs=-1, type=click.UNPROCESSED, metavar="[PYTEST ARGS]...")
def test(pytest_arguments: Sequence[str]) -> None:
    """Run every check of the project itself.

    Formatting, lint, types and tests, with one status at the end. For who changes Hardpoint, not for who writes
    records. What follows the command goes to pytest. The tests in a browser use a Chromium that is found
    (HARDPOINT_BROWSER names one), else the browser driver's download; without one they are left out, and with CI=true
    that fails.

    Example: python3 site_build.py test -k publish
    """
    from hardpoint.commands import quality

    quality.test(root(), pytest_arguments)


def _existing(fleet: Path | None, top: Path | None) -> Path:
    """The folder of the records; a missing one is wrong use, not an empty fleet."""
    folder = fleet or (top or root()) / "fleet"
    if not folder.is_dir():
        raise click.UsageError(f"There is no folder {shown(folder)}. Name the folder of the records with --fleet DIR.")
    return folder


def _fixed_day() -> date | None:
    """While serving, the day may change: only a SOURCE_DATE_EPOCH pins it."""
    return today() if os.environ.get("SOURCE_DATE_EPOCH") else None


def _address(text: str) -> str:
    found = re.fullmatch(r"(\[[0-9A-Fa-f:]+\]|[^\s:/]+):(\d{1,5})", text, re.ASCII)
    if not found or not 1 <= int(found[2]) <= 65535:
        raise click.BadParameter(f'got "{text}", needs HOST:PORT, for example 127.0.0.1:8001', param_hint="--address")
    return text


def main(arguments: Sequence[str] | None = None) -> int:
    """Run the command line and return its exit code. Nothing that a user can do ends in a traceback."""
    os.environ.setdefault("NO_MKDOCS_2_WARNING", "1")
    for stream in (sys.stdout, sys.stderr):
        with contextlib.suppress(AttributeError):
            stream.reconfigure(errors="backslashreplace")  # type: ignore[union-attr]  # a test's stream may lack it
    try:
        result = cli.main(None if arguments is None else list(arguments), _program(), standalone_mode=False)
        return result if isinstance(result, int) else 0
    except click.ClickException as error:
        error.show()
        return error.exit_code
    except (click.Abort, KeyboardInterrupt):
        click.echo("Interrupted.", err=True)
        return INTERRUPTED
    except BrokenPipeError:
        # Whoever read our output has read enough; the interpreter's own last flush must not complain either.
        os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())
        return 1
    except OSError as error:
        return _ended(Surroundings(f"{error.filename or 'The system'}: {error.strerror or error}."), error)
    except Exception as error:
        return _ended(Failed(f"This should not have happened: {type(error).__name__}: {error}"), error)


def _program() -> str:
    return "hardpoint" if Path(sys.argv[0]).stem == "hardpoint" else "python3 site_build.py"


def _ended(failure: Failed, error: BaseException) -> int:
    said = " ".join(failure.format_message().split())
    click.echo(f"{said} The full report is in {_keep_report(error)}", err=True)
    return failure.exit_code


def _keep_report(error: BaseException) -> str:
    try:
        descriptor, name = tempfile.mkstemp(prefix="hardpoint-report-", suffix=".txt")
        with open(descriptor, "w", encoding="utf-8") as report:
            report.writelines(traceback.format_exception(error))
    except OSError:
        return "no file: the folder for temporary files cannot be written"
    return name


if __name__ == "__main__":
    sys.exit(main())
