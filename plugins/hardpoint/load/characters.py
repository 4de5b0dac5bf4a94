"""From bytes to text that holds only characters one can see: UTF-8, no controls, no tabs."""

from __future__ import annotations

import codecs
import re
import unicodedata

from hardpoint.findings import HIDDEN, quoted
from hardpoint.load.source import Position, Problems, Source

REPLACEMENT = "\N{REPLACEMENT CHARACTER}"
"""Stands for a refused character in what is read on, so that places stay and one bad byte hides no other problem."""

_MOST_SUSPECTS = 5_000
"""With more the file is no text at all, and nothing is gained by reading on."""

_SUSPECT = re.compile(rf"\t|\r(?!\n)|{HIDDEN.pattern}")
_INSTEAD = {"\t": " ", "\r": "\n"}
_OTHER_ENCODINGS = (
    (codecs.BOM_UTF32_LE, "UTF-32"),
    (codecs.BOM_UTF32_BE, "UTF-32"),
    (codecs.BOM_UTF16_LE, "UTF-16"),
    (codecs.BOM_UTF16_BE, "UTF-16"),
)


def decode(data: bytes, problems: Problems) -> Source | None:
    """The text of a file with what may not stand in it noted and replaced; None where reading on is pointless.

    A byte order mark of UTF-8 is accepted and left out. Rules: ``not-utf8``, ``control-character``, and ``bad-yaml``
    for tabs.
    """
    for mark, name in _OTHER_ENCODINGS:
        if data.startswith(mark):
            message = f"got text in {name}, needs UTF-8; choose UTF-8 when you save the file"
            problems.add("not-utf8", Position(1, 1), message, read=name, expected="UTF-8")
            return None
    offset = len(codecs.BOM_UTF8) if data.startswith(codecs.BOM_UTF8) else 0
    source = Source(data[offset:].decode("utf-8", "surrogateescape"))  # a bad byte 0xNN becomes U+DCNN
    if not _SUSPECT.search(source.text):
        return source
    if not _note(source, offset, problems):
        return None
    return Source(_SUSPECT.sub(lambda found: _INSTEAD.get(found[0], REPLACEMENT), source.text))


def character_name(character: str) -> str:
    """``U+202E (right-to-left override)``; only the code point for a control, which has no name."""
    name = unicodedata.name(character, "").lower()
    return f"U+{ord(character):04X}" + (f" ({name})" if name else "")


def _note(source: Source, offset: int, problems: Problems) -> bool:
    """Note each suspect once a line. False where reading on makes no sense: the depth of tabs is anybody's guess."""
    noted: set[tuple[int, str]] = set()
    indented, passed = False, 0
    for count, found in enumerate(_SUSPECT.finditer(source.text)):
        if count == _MOST_SUSPECTS:
            return False
        character, at = found[0], source.position(found.start())
        if (at.line, character) in noted:
            continue
        noted.add((at.line, character))
        if character == "\t":
            indented |= _note_tab(source, at, problems)
        elif "\udc80" <= character <= "\udcff":
            offset += len(source.text[passed : found.start()].encode("utf-8", "surrogateescape"))
            passed = found.start()
            _note_byte(ord(character) - 0xDC00, offset, at, problems)
        else:
            _note_hidden(character, at, problems)
    return not indented


def _note_tab(source: Source, at: Position, problems: Problems) -> bool:
    inside = not source.line(at.line)[: at.column - 1].strip()
    place = "in the indentation, needs two spaces for each level" if inside else "between the words, needs a space"
    message = f"got a tab {place}; a tab is shown differently by every editor"
    problems.add("bad-yaml", at, message, read="\t", expected="spaces")
    return inside


def _note_byte(byte: int, offset: int, at: Position, problems: Problems) -> None:
    meant = bytes([byte]).decode("cp1252", "replace")
    guess = "" if HIDDEN.search(meant) or meant == REPLACEMENT else f" (in Windows-1252 it is {quoted(meant)})"
    message = (
        f"got the byte 0x{byte:02X} at byte offset {offset}{guess}, which is not UTF-8; "
        f"choose UTF-8 when you save the file, then look at the characters that are not plain English letters"
    )
    problems.add("not-utf8", at, message, read=f"0x{byte:02X}", expected="UTF-8")


def _note_hidden(character: str, at: Position, problems: Problems) -> None:
    name = character_name(character)
    message = f"got the hidden character {name}, needs text that can be seen; delete it and type the words again"
    problems.add("control-character", at, message, read=name.split(" ")[0], expected="text that can be seen")
