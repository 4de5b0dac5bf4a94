"""``schema``: the record model as JSON Schema, for the completion of editors."""

from __future__ import annotations

from pathlib import Path

import click

from hardpoint.commands.project import Failed, shown


def schema(folder: Path, only_check: bool) -> None:
    """Write the documents into ``folder``; with ``only_check`` raise Failed where a file there is not current.

    A document that the model no longer has is stale too: it is removed, or found.
    """
    from hardpoint.records.schema import documents

    wanted = {name: text.encode() for name, text in documents().items()}
    stale = sorted(name for name, text in wanted.items() if _bytes(folder / name) != text)
    gone = sorted(path.name for path in folder.glob("*.json") if path.name not in wanted)
    if only_check:
        if stale or gone:
            raise Failed(
                f"Not current in {shown(folder)}: {', '.join(stale + gone)}. Run: python3 site_build.py schema"
            )
        click.echo(f"{len(wanted)} schema files in {shown(folder)} are current.")
        return
    folder.mkdir(parents=True, exist_ok=True)
    for name in stale:
        (folder / name).write_bytes(wanted[name])
    for name in gone:
        (folder / name).unlink()
    changed = f"changed: {', '.join(stale + gone)}" if stale or gone else "none has changed"
    click.echo(f"{len(wanted)} schema files in {shown(folder)}, {changed}.")


def _bytes(path: Path) -> bytes | None:
    try:
        return path.read_bytes()
    except FileNotFoundError:
        return None
