"""Looking into the author's own words: plain text in mappings and lists."""

from __future__ import annotations

import re
from collections.abc import Iterator

from hardpoint.findings import Path
from hardpoint.records.known import Tree

_INDEX = re.compile(r"0|[1-9][0-9]{0,5}")


def value_at(tree: Tree, path: Path) -> Tree | None:
    """What stands at a path, None where nothing does. A list takes an index, as number or as text."""
    here: Tree = tree
    for part in path:
        if isinstance(here, dict) and str(part) in here:
            here = here[str(part)]
        elif isinstance(here, list) and _INDEX.fullmatch(str(part)) and int(part) < len(here):
            here = here[int(part)]
        else:
            return None
    return here


def leaves(tree: Tree, path: Path = ()) -> Iterator[tuple[Path, str]]:
    """Every scalar with its path, in the author's order."""
    if isinstance(tree, dict):
        for key, value in tree.items():
            yield from leaves(value, (*path, key))
    elif isinstance(tree, list):
        for index, value in enumerate(tree):
            yield from leaves(value, (*path, index))
    else:
        yield path, tree


def in_words(tree: Tree) -> str:
    """A value on one line, as an author would write it: ``{from: outside, place: ...}``."""
    if isinstance(tree, dict):
        return "{" + ", ".join(f"{key}: {in_words(value)}" for key, value in tree.items()) + "}"
    if isinstance(tree, list):
        return "[" + ", ".join(map(in_words, tree)) + "]"
    return tree
