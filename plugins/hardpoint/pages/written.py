"""A record as its author wrote it: every word, section by section, folded away on the screen."""

from __future__ import annotations

from collections.abc import Mapping

from hardpoint.pages.telling import unknown
from hardpoint.pages.terms import label_of
from hardpoint.pages.view import Block, Row, Table, Value
from hardpoint.records.airframe import Airframe
from hardpoint.records.base import Part
from hardpoint.records.known import NonValue, Tree
from hardpoint.records.trees import leaves
from hardpoint.words import say


def as_written(tree: Mapping[str, Tree], model: type[Part] = Airframe, prefix: str = "written") -> tuple[Block, ...]:
    """One folded table per top key; ``prefix`` keeps the anchors of several records on one page apart.

    What stands there is told word for word, in the author's language; ``model`` names its keys in the reader's.
    """
    return tuple(_section(key, value, model, prefix) for key, value in tree.items())


def _section(key: str, value: Tree, model: type[Part], prefix: str) -> Table:
    rows = tuple(Row((Value(label_of(path, model)), _word(text))) for path, text in leaves(value, (key,)))
    anchor = f"{prefix}-{key.replace('_', '-')}"
    return Table(anchor, label_of((key,), model).capitalize(), (say("Where"), say("As written")), rows, folded=True)


def _word(text: str) -> Value:
    return unknown() if text == NonValue.UNKNOWN.value else Value(text)
