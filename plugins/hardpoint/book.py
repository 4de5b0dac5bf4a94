"""What a build shows: the records and the words, read anew for each build; the last good state where one is broken."""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import Path

import click

from hardpoint import gathering, load, report
from hardpoint.commands.project import Day, edition, today
from hardpoint.load import catalogue
from hardpoint.pages import Site
from hardpoint.words import AS_WRITTEN, Language, speaking


@dataclass
class Book:
    """The site and its language; ``read`` says in one line what was read last."""

    site: Site | None = None
    language: Language = AS_WRITTEN
    read: str = ""

    def open(self, beside: Path, fleet: str, as_of: str | None, words: str | None) -> str:
        """Read everything; the folder of the records and the .po file are told from ``beside``.

        Returns what is wrong in words, "" where nothing is. What was good before then stays; the pages say so where it
        is the records that are broken.
        """
        try:
            day = Day().convert(as_of, None, None) if as_of else today()
            language = catalogue.read(beside / words, words) if words else AS_WRITTEN
        except click.UsageError as wrong:
            return wrong.format_message()
        except catalogue.CatalogueError as wrong:
            return str(wrong)
        checked = load.check(beside / fleet, day)
        if checked.errors:
            with speaking(self.language):
                self.site = self.site.held_back_by(checked.errors[0]) if self.site else None
            return report.text(checked.errors, day, checked.files)
        when = edition(beside, day).date().isoformat()
        self.site = Site(checked.fleet, tuple(checked.findings), day, when)
        self.language = language
        self.read = f"{checked.files} records, {len(checked.findings)} warnings, all on the gaps page"
        if words:
            self.read += _unused(beside / words, words)
        return ""

    @property
    def shown(self) -> Site:
        """The site; nothing can be shown before something was read."""
        if self.site is None:
            raise RuntimeError("no fleet was read: open comes first")
        return self.site


def _unused(file: Path, shown: str) -> str:
    """Which words of a .po file no page will ever show, for example after an edition that says it otherwise."""
    lines = catalogue.strangers(file, gathering.texts())
    listed = ", ".join(map(str, lines[:10])) + (", ..." if len(lines) > 10 else "")
    return f"; {shown} holds {len(lines)} texts that the interface does not have, at line {listed}" if lines else ""
