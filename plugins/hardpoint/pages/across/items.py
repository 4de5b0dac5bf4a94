"""What stands on a page across types: each entry of a section of every type, and what a tail has otherwise."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from typing import Any

from hardpoint.findings import Path
from hardpoint.pages import addresses
from hardpoint.pages.shown import Shown, shown_tail, shown_type
from hardpoint.pages.site import Site
from hardpoint.records.known import NonValue


@dataclass(frozen=True)
class Item:
    """One entry under ``path``; None where this tail does not have what its type has."""

    shown: Shown
    path: Path
    entry: Any

    @property
    def row(self) -> str:
        """The anchor of its row."""
        return addresses.across_row(self.shown.id, self.path)

    @property
    def name(self) -> str:
        """``Vostrelle Jinx`` or ``Tarrowby Bodkin QQ-BOD``."""
        return f"{self.shown.name} {self.shown.tail}".strip()

    @property
    def place(self) -> str:
        """Where the crew page of the type or tail tells it."""
        home = addresses.tail_page(self.shown.tail) if self.shown.tail else addresses.type_page(self.shown.type_id)
        return f"{home}#{addresses.anchor(self.path)}"


def items(site: Site, section: str) -> Iterator[Item]:
    """Every entry of a section: type by type, then each tail's own where it differs."""
    for type_ in site.fleet.types.values():
        shown = shown_type(type_)
        yield from (Item(shown, path, entry) for path, entry in _entries(shown, section))
        for tail in site.fleet.tails_of(type_.id):
            yield from _differing(shown_tail(tail), section)


def _entries(shown: Shown, section: str) -> Iterator[tuple[Path, Any]]:
    held: Mapping[str, Any] | NonValue = getattr(shown.airframe, section)
    if isinstance(held, NonValue):
        yield (section,), held
    else:
        yield from (((section, name), entry) for name, entry in held.items())


def _differing(shown: Shown, section: str) -> Iterator[Item]:
    touched = [override.at for override in shown.overrides if override.at[0] == section]
    if any(len(at) == 1 for at in touched):
        yield from (Item(shown, path, entry) for path, entry in _entries(shown, section))
        return
    held = dict(_entries(shown, section))
    for path in dict.fromkeys(at[:2] for at in touched):
        yield Item(shown, path, held.get(path))


def row_of(shown: Shown, path: Path) -> str:
    """The row that tells of ``path`` on a page across types: the tail's own where it differs, else its type's."""
    return addresses.across_row(shown.id if own(shown, path) else shown.type_id, path[:2])


def own(shown: Shown, path: Path) -> bool:
    """True where the entry that ``path`` lies in is other on this tail than on its type."""
    return any(override.at[:2] == path[:2] or override.at == path[:1] for override in shown.overrides)
