"""The list of all texts of the interface, ``words/hardpoint.pot``, gathered from the sources and the record model.

The format is gettext's template of portable objects: what translators' programs open. The same text on every machine:
files are named without lines, nothing is dated.
"""

from __future__ import annotations

import ast
import io
import re
from collections.abc import Iterator, Mapping
from pathlib import Path
from typing import Any

from hardpoint.records import vocabulary

HERE = Path(__file__).parent
TEMPLATE = HERE / "words" / "hardpoint.pot"
_SPOKEN: Mapping[str, tuple[int, ...]] = {
    "say": (0,),
    "mark": (0,),
    "later": (0,),
    "say_in": (0, 1),
    "say_count": (1, 2),
    "say_counts": (1, 2),
}
"""The functions that texts are handed to, with the arguments that are texts."""
_LEFT_OUT = ("POT-Creation-Date", "PO-Revision-Date", "Last-Translator", "Language-Team", "Report-Msgid-Bugs-To")
"""Lines of a head that would be another on another day, or that nobody fills in."""
_OUT = re.compile(rf'^"(?:{"|".join(_LEFT_OUT)}|Generated-By): .*\n', re.M)
_HEAD = "# Every text of the interface. {names} in braces stay as they are: they are filled in when a page is made."


def template() -> str:
    """The text of ``hardpoint.pot``."""
    from babel.messages.catalog import Catalog
    from babel.messages.pofile import write_po

    catalog = Catalog(project="Hardpoint", version="1", header_comment=_HEAD, charset="utf-8")
    for file, text, context in _said():
        catalog.add(text, locations=[(file, 0)], context=context)
    for word in vocabulary.choices():
        catalog.add(word, auto_comments=["a word that records choose"])
    for word in vocabulary.verbs():
        catalog.add(word, auto_comments=["what a step of a procedure does"], context="step")
    for key in vocabulary.all_keys():
        catalog.add(key, auto_comments=["a key of records, in plain words"], context="key")
    written = io.BytesIO()
    write_po(written, catalog, width=120, sort_output=True, include_lineno=False)
    return _OUT.sub("", written.getvalue().decode("utf-8"))


def _said() -> Iterator[tuple[str, Any, str | None]]:
    """Every text with the file that says it and the meaning that it has there; a pair where it has a plural."""
    for path in sorted([*HERE.rglob("*.py"), *HERE.rglob("*.html")]):
        file = path.relative_to(HERE).as_posix()
        calls = _calls_of_python if path.suffix == ".py" else _calls_of_template
        for function, arguments in calls(path.read_text(encoding="utf-8"), file):
            if function == "say_in":
                yield file, arguments[1], arguments[0]
            else:
                yield file, arguments[0] if len(arguments) == 1 else arguments, None


def _calls_of_python(source: str, file: str) -> Iterator[tuple[str, tuple[str, ...]]]:
    """Function and texts of each call that says something; raises ValueError where a text is put together."""
    for node in ast.walk(ast.parse(source)):
        if isinstance(node, ast.Call) and isinstance(node.func, ast.Name) and node.func.id in _SPOKEN:
            texts = [node.args[at] for at in _SPOKEN[node.func.id] if at < len(node.args)]
            if any(isinstance(text, ast.JoinedStr | ast.BinOp) for text in texts):
                raise _put_together(file, node.lineno, node.func.id)
            plain = [text.value for text in texts if isinstance(text, ast.Constant)]
            if len(plain) == len(_SPOKEN[node.func.id]):
                yield node.func.id, tuple(map(str, plain))


def _calls_of_template(source: str, file: str) -> Iterator[tuple[str, tuple[str, ...]]]:
    from jinja2 import Environment, nodes

    for node in Environment().parse(source).find_all(nodes.Call):
        if isinstance(node.node, nodes.Name) and node.node.name in _SPOKEN:
            texts = [node.args[at] for at in _SPOKEN[node.node.name] if at < len(node.args)]
            plain = tuple(text.value for text in texts if isinstance(text, nodes.Const))
            if len(plain) != len(_SPOKEN[node.node.name]):
                raise ValueError(f'{file}:{node.lineno}: a text must be written out: {node.node.name}("...")')
            yield node.node.name, plain


def _put_together(file: str, line: int, function: str) -> ValueError:
    needed = f'{function}("... {{name}} ...", name=...)'
    return ValueError(f"{file}:{line}: a text is put together here, and nobody could list it; write it out: {needed}")


def texts() -> frozenset[tuple[str | None, str]]:
    """Every text of the interface by its meaning (None where it has but one) and, of a plural, its singular."""
    from babel.messages.pofile import read_po

    with TEMPLATE.open("rb") as file:
        catalog = read_po(file)
    return frozenset((text.context, text.id if isinstance(text.id, str) else text.id[0]) for text in catalog if text.id)
