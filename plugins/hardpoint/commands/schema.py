"""``schema``: what follows from the sources and is kept beside them.

The record model as JSON Schema, for the completion of editors; the pages of docs/ that follow from the code; the list
of all texts of the interface, for whoever translates them.
"""

from __future__ import annotations

from pathlib import Path

import click

from hardpoint.commands.project import Failed, shown


def schema(folder: Path, only_check: bool, docs: Path | None = None) -> None:
    """Write the documents into ``folder`` and, where ``docs`` is given, what else follows from the sources: see above.

    With ``only_check`` raise Failed where a file is not current. A document that the model no longer has is stale too:
    it is removed, or found.
    """
    from hardpoint import gathering, reference
    from hardpoint.pages.data_schema import schemas
    from hardpoint.records.schema import documents

    wanted = {folder / name: text.encode() for name, text in (documents() | schemas()).items()}
    if docs is not None:
        wanted |= {docs / name: text.encode() for name, text in reference.pages().items()}
        wanted[gathering.TEMPLATE] = gathering.template().encode()
    stale = sorted(path for path, text in wanted.items() if _bytes(path) != text)
    gone = sorted(path for path in folder.glob("*.json") if path not in wanted)
    names = ", ".join(path.name for path in stale + gone)
    places = [folder] if docs is None else [folder, docs, gathering.TEMPLATE.parent]
    where = ", ".join(map(shown, places))
    if only_check:
        if names:
            raise Failed(f"Not current in {where}: {names}. Run: python3 site_build.py schema")
        click.echo(f"{len(wanted)} files in {where} are current.")
        return
    folder.mkdir(parents=True, exist_ok=True)
    for path in stale:
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_bytes(wanted[path])
    for path in gone:
        path.unlink()
    click.echo(f"{len(wanted)} files in {where}, {f'changed: {names}' if names else 'none has changed'}.")


def _bytes(path: Path) -> bytes | None:
    try:
        return path.read_bytes()
    except FileNotFoundError:
        return None
