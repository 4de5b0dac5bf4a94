"""How a quantity is refused: what was read, what is needed, an example that would be accepted."""

from __future__ import annotations

from collections.abc import Sequence

READ_SHOWN = 60
"""Characters of the author's text that a message repeats: enough to find it, too few to flood a report."""

_GROUP_SPACES = "\u202f\u00a0\u2009"


class QuantityError(ValueError):
    """A text that is not the quantity that is needed.

    ``rule`` is the rule's id (``unreadable-quantity``, ``wrong-dimension``, ``bare-gallon``, ``ambiguous-unit``,
    ``gauge-or-absolute``, ``mass-for-force``, ``negative-quantity``, ``governs-not-stated``); ``read`` what stood
    there, in one printable line; ``expected`` what is needed in words; ``example`` a text that would be accepted;
    ``message`` the whole sentence.
    """

    def __init__(self, rule: str, read: str, expected: str, example: str, message: str) -> None:
        super().__init__(message)
        self.rule = rule
        self.read = read
        self.expected = expected
        self.example = example
        self.message = message

    def __reduce__(self) -> tuple[type[QuantityError], tuple[str, str, str, str, str]]:
        """Pickle with all five arguments: ValueError alone would keep only the message."""
        return type(self), (self.rule, self.read, self.expected, self.example, self.message)


def needs(rule: str, text: str, expected: str, example: str, clause: str = "") -> QuantityError:
    """``got "12 m", needs a mass, for example "12 kg"``, and after a colon the clause that names the slip."""
    read = one_line(text)
    message = f'got "{read}", needs {expected}, for example "{example}"'
    return QuantityError(rule, read, expected, example, f"{message}: {clause}" if clause else message)


def say_which(rule: str, text: str, expected: str, which: str, choices: Sequence[str]) -> QuantityError:
    """``got "16 gal", say which gallon: "16 US gal" or "16 imp gal"``."""
    read = one_line(text)
    message = f'got "{read}", say {which}: {either(choices)}'
    return QuantityError(rule, read, expected, choices[0], message)


def either(choices: Sequence[str]) -> str:
    """Choices in words: ``"a", "b" or "c"``."""
    quoted = [f'"{choice}"' for choice in choices]
    return " or ".join([", ".join(quoted[:-1]), quoted[-1]]) if len(quoted) > 1 else quoted[0]


def one_line(text: str) -> str:
    """The text in one printable line of bounded length; line ends and control characters are written as escapes."""
    short = text if len(text) <= READ_SHOWN else text[: READ_SHOWN - 3] + "..."
    return "".join(mark if mark.isprintable() or mark in _GROUP_SPACES else repr(mark)[1:-1] for mark in short)
