"""A station's own words, or another language: a .po file, read and held against the texts of the interface."""

from __future__ import annotations

import io
import re
from collections import Counter
from collections.abc import Iterable, Iterator
from gettext import GNUTranslations, c2py
from pathlib import Path
from string import Formatter
from typing import TYPE_CHECKING

from hardpoint.words import Language

if TYPE_CHECKING:
    from babel.messages.catalog import Catalog, Message

MOST_BYTES = 4_000_000
_MOST_LINES = 20
"""Of a file that is something else every line is wrong."""
_RIGHT_TO_LEFT = {"ar", "fa", "he", "ps", "sd", "ug", "ur", "yi"}
"""Languages that are usually written from right to left (common practice; CLDR's layout data says the same)."""
_TAG = re.compile(r"[A-Za-z]{2,3}(?:[-_][A-Za-z0-9]{2,8})*")
_LINE = re.compile(
    r'\s*(?:\#.*|(?:(?:msgctxt|msgid|msgid_plural|msgstr|msgstr\[[0-9]\])\s+)?"(?:[^"\\]|\\[\\"ntr])*"\s*)?'
)
"""What a line of a .po file can be: empty, a comment, or words in quotes that close, behind a keyword or none."""
_EXAMPLE = "take plugins/hardpoint/words/hardpoint.pot as the start"


class CatalogueError(Exception):
    """What is wrong with a .po file, one line for each problem."""


def read(file: Path, shown: str) -> Language:
    """The words of a .po file as a language; ``shown`` is its name in messages.

    Raises CatalogueError with every problem: no such file, no .po, a text whose ``{names}`` are not those of the
    interface's, plural forms that do not fit the head's.
    """
    from babel.messages.mofile import write_mo

    text = _text(file, shown)
    catalog = _parsed(text, shown)
    wrong = [*_problems_of_head(catalog, text, shown), *_problems(catalog, shown)]
    if wrong:
        raise CatalogueError("\n".join(wrong))
    binary = io.BytesIO()
    write_mo(binary, catalog)
    binary.seek(0)
    made = GNUTranslations(binary)
    # Babel leaves the head's own rule out for languages that it does not know; typeshed does not list the attribute.
    made.plural = c2py(catalog.plural_expr)  # type: ignore[attr-defined]
    tag = str(catalog.locale_identifier or "en").replace("_", "-")
    return Language(made, tag, "rtl" if tag.partition("-")[0].lower() in _RIGHT_TO_LEFT else "ltr")


def strangers(file: Path, known: frozenset[tuple[str | None, str]]) -> list[int]:
    """Lines of a sound .po file whose text the interface does not have (or no longer): nobody will see those words."""
    catalog = _parsed(_text(file, file.name), file.name)
    return sorted(text.lineno or 1 for text in _translated(catalog) if (text.context, _first(text)) not in known)


def _text(file: Path, shown: str) -> str:
    needed = f"a .po file in UTF-8, for example words/de.po; {_EXAMPLE}"
    try:
        if not file.is_file():
            raise CatalogueError(f"{shown}:1: got {'a folder' if file.is_dir() else 'no file'}, needs {needed}")
        if file.stat().st_size > MOST_BYTES:
            raise CatalogueError(f"{shown}:1: got {file.stat().st_size} bytes, needs at most {MOST_BYTES}")
        raw = file.read_bytes()
    except OSError as error:
        raise CatalogueError(f"{shown}:1: got {error.strerror}, needs {needed}") from None
    try:
        return raw.decode("utf-8-sig")
    except UnicodeDecodeError as error:
        line = raw[: error.start].count(b"\n") + 1
        raise CatalogueError(f"{shown}:{line}: got the byte 0x{raw[error.start]:02x}, needs {needed}") from None


def _parsed(text: str, shown: str) -> Catalog:
    from babel.messages.pofile import PoFileError, read_po

    wrong = [
        f'{shown}:{number}: got {line.strip()!r}, needs a line of a .po file, such as msgstr "..."; {_EXAMPLE}'
        for number, line in enumerate(text.split("\n"), start=1)
        if not _LINE.fullmatch(line)
    ]
    if wrong:
        raise CatalogueError("\n".join(wrong[:_MOST_LINES]))
    try:
        return read_po(io.StringIO(text), abort_invalid=True, charset="utf-8")
    except PoFileError as error:
        line, reason = error.lineno + 1, str(error).rpartition(" on ")[0]
        read = [*text.splitlines(), ""][min(line, len(text.splitlines()) + 1) - 1].strip()
        raise CatalogueError(f"{shown}:{line}: got {read!r} ({reason}), needs a .po file; {_EXAMPLE}") from None
    except (ValueError, LookupError, TypeError, AttributeError, AssertionError) as error:
        # Babel has no error of its own for a head that it cannot read, or for quotes that do not close.
        reason = str(error) or "cannot be read"
        raise CatalogueError(f"{shown}:1: got a file that is no .po file ({reason}); {_EXAMPLE}") from None


def _problems_of_head(catalog: Catalog, text: str, shown: str) -> Iterator[str]:
    tag = str(catalog.locale_identifier or "en")
    if not _TAG.fullmatch(tag):
        yield f"{shown}:{_line_of(text, 'Language:')}: got the language {tag!r}, needs a tag such as de or pt-BR"
    try:
        c2py(catalog.plural_expr)
    except ValueError:
        at, example = _line_of(text, "Plural-Forms:"), "nplurals=2; plural=(n != 1);"
        yield f"{shown}:{at}: got the plural {catalog.plural_expr!r}, needs a rule such as {example!r}"


def _line_of(text: str, words: str) -> int:
    return text[: max(text.find(words), 0)].count("\n") + 1


def _translated(catalog: Catalog) -> Iterator[Message]:
    """Every text that the file says otherwise. Those marked fuzzy wait for somebody to look: gettext's own rule."""
    yield from (text for text in catalog if text.id and not text.fuzzy and any(_strings(text)))


def _first(text: Message) -> str:
    return text.id if isinstance(text.id, str) else text.id[0]


def _strings(text: Message) -> tuple[str, ...]:
    return (text.string,) if isinstance(text.string, str) else tuple(text.string or ())


def _problems(catalog: Catalog, shown: str) -> Iterator[str]:
    for text in _translated(catalog):
        at = f"{shown}:{text.lineno or 1}"
        if isinstance(text.id, str):
            yield from (f"{at}: {wrong}" for wrong in _misfits((text.id,), _strings(text)[0], ()))
            continue
        forms = _strings(text)
        if len(forms) != catalog.num_plurals or not all(forms):
            needed = f"needs {catalog.num_plurals} (Plural-Forms in the head)"
            yield f"{at}: got {sum(map(bool, forms))} plural forms of {text.id[0]!r}, {needed}"
            continue
        for form in forms:
            yield from (f"{at}: {wrong}" for wrong in _misfits(tuple(text.id), form, ("count",)))


def _misfits(texts: tuple[str, ...], told: str, may_be_left_out: tuple[str, ...]) -> Iterator[str]:
    """Placeholders that are not those of the text. A plural form may leave the number out ("one tie")."""
    wanted = Counter(name for name in _names(texts[-1]) or ())
    names = _names(told)
    if names is None:
        yield f"got {told!r}, needs braces in pairs, around names only: {_listed(wanted)}"
        return
    foreign = sorted(set(names) - set(wanted))
    missing = sorted(set(wanted) - set(names) - set(may_be_left_out))
    if foreign:
        yield f"got {_listed(foreign)} in {told!r}, needs {_listed(wanted)} as in {texts[-1]!r}"
    if missing:
        yield f"got {told!r} without {_listed(missing)}, needs {_listed(wanted)} as in {texts[-1]!r}"


def _names(text: str) -> list[str] | None:
    """The placeholders of a text; None where its braces are not those of plain names."""
    try:
        parts = list(Formatter().parse(text))
    except ValueError:
        return None
    names = [name for _, name, _, _ in parts if name is not None]
    plain = all(not spec and not how for _, name, spec, how in parts if name is not None)
    return names if plain and all(re.fullmatch(r"[a-z_]*", name) for name in names) and "" not in names else None


def _listed(names: Iterable[str]) -> str:
    listed = [f"{{{name}}}" for name in sorted(names)]
    return ", ".join(listed) or "no {name}"
