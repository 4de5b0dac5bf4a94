"""``build`` and ``serve``: the only place that starts MkDocs."""

from __future__ import annotations

import contextlib
import errno
import logging
import os
import time
from collections.abc import Iterator
from datetime import date
from pathlib import Path
from typing import Any

import click

from hardpoint import publish
from hardpoint.commands.project import EPOCH, Failed, Surroundings, edition, shown

PLUGIN = "hardpoint"
DEFAULT_ADDRESS = "127.0.0.1:8000"


def build(root: Path, fleet: Path, site: Path, as_of: date) -> None:
    """Build the site of ``fleet`` as it stands on ``as_of`` and swap it in as ``site``.

    Raises Failed where records or pages have errors, click.UsageError where ``site`` is somebody else's folder,
    Surroundings where the disk does not let it. In each case the last site is left as it was.
    """
    click.echo(f"Building {shown(site)} from {shown(fleet)} as of {as_of.isoformat()}.")
    began = time.monotonic()
    try:
        with publish.aside(site, on_wait=_tell_wait) as new, _fixed_date(root, as_of):
            _render(root, fleet, new, as_of)
            pages = sum(1 for _ in new.rglob("*.html"))
    except publish.ForeignFolderError as error:
        raise click.UsageError(f"{error}. Choose another --site, or empty that folder.") from error
    except publish.BusyError as error:
        raise Surroundings(f"Not built: {error}. Wait for it or end it, then run this again.") from error
    except Failed as error:
        kept = "The last site is as it was" if site.exists() else "There is no site yet"
        raise Failed(f"{error.format_message()}\n{kept}: {shown(site)}".lstrip()) from error
    click.echo(f"{pages} pages in {time.monotonic() - began:.1f} s: {site.resolve() / 'index.html'}")
    click.echo("Next: open that file in a browser, or see it and follow changes with: python3 site_build.py serve")


def _render(root: Path, fleet: Path, site: Path, as_of: date) -> None:
    from mkdocs.commands.build import build as render
    from mkdocs.config import load_config
    from mkdocs.exceptions import MkDocsException

    with _mkdocs_says():
        try:
            # Strict without quiet or verbose: those two switch strict's counting off.
            config = load_config(
                str(root / "mkdocs.yml"), strict=True, site_dir=str(site), plugins=_plugins(root, fleet, as_of)
            )
            config.plugins.on_startup(command="build", dirty=False)
            try:
                render(config)
            finally:
                config.plugins.on_shutdown()
        except MkDocsException as error:
            raise Failed(f"Not built{_reason(error)}") from error


def serve(root: Path, fleet: Path, as_of: date | None, address: str) -> None:
    """Show the site at ``address`` until interrupted, rebuilt after each change of a record or a page.

    ``as_of`` None means the day on which each rebuild happens. Raises Failed where the first build fails,
    Surroundings where the address cannot be had.
    """
    from mkdocs.commands.serve import serve as run
    from mkdocs.exceptions import MkDocsException

    click.echo(f"Building {shown(fleet)} for http://{address}/ ... (stop with Ctrl-C)")
    with _mkdocs_says():
        try:
            run(str(root / "mkdocs.yml"), dev_addr=address, strict=False, plugins=_plugins(root, fleet, as_of))
        except MkDocsException as error:
            raise Failed(f"Not served{_reason(error)}") from error
        except OSError as error:
            if error.errno not in (errno.EADDRINUSE, errno.EADDRNOTAVAIL, errno.EACCES):
                raise
            raise Surroundings(
                f"Cannot serve at {address}: {error.strerror}. Choose another, for example --address 127.0.0.1:8001"
            ) from error
    click.echo("Stopped.")


def _plugins(root: Path, fleet: Path, as_of: date | None) -> dict[str, Any]:
    """The plugins of mkdocs.yml with our own options set from the command line.

    A mapping, for MkDocs empties the entries of a list, and ``serve`` hands the same object over for each rebuild.
    """
    from mkdocs.exceptions import ConfigurationError
    from mkdocs.utils.yaml import yaml_load

    with (root / "mkdocs.yml").open("rb") as file:
        listed = yaml_load(file).get("plugins") or {}
    plugins: dict[str, Any] = {}
    for entry in [listed] if isinstance(listed, dict) else listed:
        plugins |= entry if isinstance(entry, dict) else {entry: {}}
    if PLUGIN not in plugins:
        raise ConfigurationError(f"mkdocs.yml lists no plugin named {PLUGIN}; put it under plugins:")
    ours = {"fleet": str(fleet.resolve())} | ({} if as_of is None else {"as_of": as_of.isoformat()})
    return plugins | {PLUGIN: (plugins[PLUGIN] or {}) | ours}


def _tell_wait() -> None:
    click.echo("Another build is at work on this site; waiting for it.", err=True)


def _reason(error: Exception) -> str:
    """Why MkDocs stopped. Where it aborted its log has said so already, and nothing is said twice."""
    from mkdocs.exceptions import Abort

    return ", for what is said above." if isinstance(error, Abort) else f". {error}"


@contextlib.contextmanager
def _fixed_date(root: Path, as_of: date) -> Iterator[None]:
    """MkDocs writes SOURCE_DATE_EPOCH into the sitemap, else the moment of the build."""
    before = os.environ.get(EPOCH)
    os.environ[EPOCH] = str(int(edition(root, as_of).timestamp()))
    try:
        yield
    finally:
        if before is None:
            del os.environ[EPOCH]
        else:
            os.environ[EPOCH] = before


class _Say(logging.Handler):
    """Shows warnings and errors of the build, and of its information only what somebody waits for."""

    def emit(self, record: logging.LogRecord) -> None:
        text = record.getMessage().removeprefix(f"{PLUGIN}: ")
        if record.levelno >= logging.ERROR:
            click.echo(text, err=True)
        elif record.levelno >= logging.WARNING:
            click.echo(f"warning: {text}", err=True)
        elif record.name.startswith(f"mkdocs.plugins.{PLUGIN}") or self._is_news_of_serving(record.name, text):
            click.echo(text)

    @staticmethod
    def _is_news_of_serving(name: str, text: str) -> bool:
        news = ("] Serving on ", "] Detected file changes", "] Reloading browsers")
        return name == "mkdocs.livereload" and any(part in text for part in news)


@contextlib.contextmanager
def _mkdocs_says() -> Iterator[None]:
    logger = logging.getLogger("mkdocs")
    handler, level = _Say(), logger.level
    logger.addHandler(handler)
    logger.setLevel(logging.INFO)
    try:
        yield
    finally:
        logger.removeHandler(handler)
        logger.setLevel(level)
