"""A record as its author wrote it: every word, section by section, folded away on the screen."""

from __future__ import annotations

from collections.abc import Mapping

from hardpoint.pages.terms import label_of
from hardpoint.pages.view import Block, Row, Table, Value
from hardpoint.records.known import NonValue, Tree
from hardpoint.records.trees import leaves


def as_written(tree: Mapping[str, Tree], prefix: str = "written") -> tuple[Block, ...]:
    """One folded table per top key; ``prefix`` keeps the anchors of several records on one page apart."""
    return tuple(_section(key, value, prefix) for key, value in tree.items())


def _section(key: str, value: Tree, prefix: str) -> Table:
    rows = tuple(Row((Value(label_of(path)), _word(text))) for path, text in leaves(value, (key,)))
    anchor = f"{prefix}-{key.replace('_', '-')}"
    return Table(anchor, label_of((key,)).capitalize(), ("Where", "As written"), rows, folded=True)


def _word(text: str) -> Value:
    return Value("UNKNOWN", "unknown") if text == NonValue.UNKNOWN.value else Value(text)
