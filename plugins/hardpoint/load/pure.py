"""YAML's parser in Python, for machines without libyaml, mended where it refuses what libyaml reads."""

from __future__ import annotations

import yaml
from yaml.scanner import ScannerError

_BLANK = "\0 \t\r\n\x85\u2028\u2029"
_BRACKETS = ",?[]{}"


class PureLoader(yaml.SafeLoader):
    """PyYAML's own parser, but inside brackets a question mark does not end words (``{until: is it free?}``),
    and a colon just before a comma or a bracket is an error: both as libyaml has it.
    """

    def scan_plain(self) -> yaml.ScalarToken:
        """Words without quotes, up to what cannot belong to them; replaces the method of the same name."""
        chunks: list[str] = []
        spaces: list[str] = []
        start = end = self.get_mark()
        indent = self.indent + 1
        while self.peek() != "#":
            length = self._word_length()
            if self.flow_level and self.peek(length) == ":" and self.peek(length + 1) in _BRACKETS:
                self.forward(length)
                raise ScannerError("while scanning a plain scalar", start, "found unexpected ':'", self.get_mark())
            if not length:
                break
            self.allow_simple_key = False
            chunks += [*spaces, self.prefix(length)]
            self.forward(length)
            end = self.get_mark()
            spaces = self.scan_plain_spaces(indent, start) or []
            if not spaces or (not self.flow_level and self.column < indent):
                break
        return yaml.ScalarToken("".join(chunks), True, start, end)

    def _word_length(self) -> int:
        """Characters up to a blank, the end, a colon that ends a key, or inside brackets a comma or a bracket."""
        closing = ",[]{}" if self.flow_level else ""
        after_colon = _BLANK + (_BRACKETS if self.flow_level else "")
        length = 0
        while True:
            character = self.peek(length)
            ends_key = character == ":" and self.peek(length + 1) in after_colon
            if character in _BLANK or ends_key or character in closing:
                return length
            length += 1
