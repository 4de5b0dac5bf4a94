"""What the search box must find, worked out a second time: plainly, slowly, in another language than the box itself.

It shares no rule with ``finder-match.js`` but those that are written here in words:

- Case, diacritics, spaces, hyphens do not count (Unicode, normalisation form KD, general categories L, N, M).
- The typed words are grouped into runs of neighbours. A run fits words where it begins where one of them begins; it
  may run on over the next ones. A run of digits ends where the digits of a word end: 1 does not fit 18. It fits a
  registration or a display number only whole; 07 and 7 are one number.
- A run nearly fits where one slip (a letter changed, missing, too many, two neighbours swapped) makes it fit; words
  from three letters on. Letters alone, eight or more of them, nearly fit with two slips, too (optimal string alignment
  distance: no letter is part of both). A run nearly fits a code that is one slip away, a code that it begins, and the
  part of a registration behind its hyphen.
- An entry is found where runs that fit make up all that was typed, one of them at least in the entry's own words. It is
  near where two slips or fewer are made. One in a run of letters alone, five or more of them, counts as one; in a
  shorter run, in one with digits, or for a code, whatever nearly fits counts as both.
- What flies under a number comes before its type: a place of such an aircraft is told even where it only repeats its
  type's, but for one on a page that both share.
"""

from __future__ import annotations

import json
import string
import unicodedata
from collections.abc import Iterable, Iterator
from dataclasses import dataclass, field
from functools import cache
from itertools import accumulate
from pathlib import Path
from typing import Any

NOT_AT_ALL = 3
OTHER_LETTERS = {"ß": "ss", "ø": "o", "ł": "l", "æ": "ae", "œ": "oe", "đ": "d", "ð": "d", "þ": "th", "\u0131": "i"}


@cache
def folded(text: str) -> tuple[str, ...]:
    """The words of a text."""
    letters = []
    for letter in unicodedata.normalize("NFKD", unicodedata.normalize("NFKD", text).casefold()):
        kind = unicodedata.category(letter)[0]
        if kind in "LN":
            letters.append(OTHER_LETTERS.get(letter, letter))
        elif kind != "M":
            letters.append(" ")
    return tuple("".join(letters).split())


def squeezed(text: str) -> str:
    return "".join(folded(text))


def number(text: str) -> str:
    """A display number as it is shouted."""
    told = squeezed(text)
    return str(int(told)) if told.isascii() and told.isdigit() else told


@cache
def one_slip(word: str) -> frozenset[str]:
    """Every text of small Latin letters and digits that is one slip away from a word."""
    splits = [(word[:at], word[at:]) for at in range(len(word) + 1)]
    letters = string.ascii_lowercase + string.digits
    made = {head + tail[1:] for head, tail in splits if tail}
    made |= {head + tail[1] + tail[0] + tail[2:] for head, tail in splits if len(tail) > 1}
    made |= {head + letter + tail[1:] for head, tail in splits if tail for letter in letters}
    made |= {head + letter + tail for head, tail in splits for letter in letters}
    return frozenset(made - {word})


@cache
def fits_words(run: str, text: str) -> int:
    """The slips that it costs to make a run fit a text: 0 = it fits, 1, 2, or ``NOT_AT_ALL``."""
    words = folded(text)
    beginnings = ["".join(words[at:]) for at in range(len(words))]
    if any(beginning.startswith(run) and not _cut_short(run, words[at:]) for at, beginning in enumerate(beginnings)):
        return 0
    if len(run) < 3:
        return NOT_AT_ALL
    letters_alone = not any(map(_is_digit, run))
    lengths = range(len(run) - 1, len(run) + 2)
    heads = {beginning[:length] for beginning in beginnings for length in lengths if length <= len(beginning)}
    if heads & one_slip(run):
        return 1 if letters_alone and len(run) >= 5 else 2
    two_slips = letters_alone and len(run) >= 8 and any(aligned(run, beginning) <= 2 for beginning in beginnings)
    return 2 if two_slips else NOT_AT_ALL


def aligned(run: str, beginning: str) -> int:
    """Optimal string alignment distance of a run to the nearest beginning of a text: the textbook's table, by rows."""
    before: list[int] = []
    above = list(range(len(beginning) + 1))
    for row, letter in enumerate(run, start=1):
        here = [row]
        for column, other in enumerate(beginning, start=1):
            best = min(above[column] + 1, here[-1] + 1, above[column - 1] + (letter != other))
            swapped = row > 1 and column > 1 and (letter, run[row - 2]) == (beginning[column - 2], other)
            here.append(min(best, before[column - 2] + 1) if swapped else best)
        before, above = above, here
    return min(above)


def _cut_short(run: str, words: tuple[str, ...]) -> bool:
    """Whether a run of digits ends between two digits of one word."""
    ends = set(accumulate(map(len, words)))
    following = "".join(words)[len(run) : len(run) + 1]
    return all(map(_is_digit, run)) and _is_digit(following) and len(run) not in ends


def _is_digit(letter: str) -> bool:
    return letter.isascii() and letter.isdigit()


@cache
def fits_code(run: str, code: str, ending: str) -> int:
    if run == code:
        return 0
    slipped = code in one_slip(run) and (len(run) > 1 or len(code) > 1)
    return 2 if slipped or code.startswith(run) or (len(run) > 1 and run == ending) else NOT_AT_ALL


@dataclass(frozen=True)
class Words:
    """What can be looked for: plain words, display numbers, registrations."""

    texts: tuple[str, ...] = ()
    numbers: tuple[str, ...] = ()
    tails: tuple[str, ...] = ()
    _told: dict[str, int] = field(default_factory=dict, compare=False, repr=False)

    def fits(self, run: str) -> int:
        if run not in self._told:  # one run is asked for on many ways through a query
            self._told[run] = self._fits(run)
        return self._told[run]

    def _fits(self, run: str) -> int:
        found = [fits_words(run, text) for text in self.texts]
        shouted = number(run)
        found += [fits_code(shouted, number(one), "") for one in self.numbers]
        found += [fits_code(run, squeezed(one), squeezed(one.partition("-")[2])) for one in self.tails]
        return min(found, default=NOT_AT_ALL)


words_of = cache(Words)
"""Entries that have the same words share them, and with them what has been asked of them."""


@dataclass(frozen=True)
class Entry:
    """One thing that can be found, and how the list shows it."""

    shown: tuple[str, str, str]
    href: str
    own: Words
    beside: Words
    names: frozenset[str]
    kind: str
    ask: bool = False
    stands_in: Entry | None = None
    """The type's own place that this tail's place only repeats."""


def judged(entry: Entry, typed: str) -> int:
    """2 = found, 1 = near, 0 = neither."""
    told = _judged(entry, folded(typed))
    if told and entry.stands_in is not None and _judged(entry.stands_in, folded(typed)) >= told:
        return 0
    return told


def _judged(entry: Entry, words: tuple[str, ...]) -> int:
    ends = set(_made_up(entry, words))
    return 2 if (0, True) in ends else 1 if ends & {(1, True), (2, True)} else 0


def _made_up(entry: Entry, words: tuple[str, ...]) -> Iterator[tuple[int, bool]]:
    """Slips, and whether the entry's own words took part, of every way to make up the words out of runs that fit."""
    if not words:
        yield 0, False
        return
    for length in range(1, len(words) + 1):
        run = "".join(words[:length])
        for part, own in ((entry.own, True), (entry.beside, False)):
            cost = part.fits(run)
            if cost < NOT_AT_ALL:
                for slips, owned in set(_made_up(entry, words[length:])):
                    if slips + cost < NOT_AT_ALL:
                        yield slips + cost, owned or own


@dataclass(frozen=True)
class Expected:
    exact: list[Entry]
    near: list[Entry]

    def opened_by_enter(self, typed: str) -> Entry | None:
        """The one hit that is exactly what was typed; nothing where there would be a choice."""
        whole = [entry for entry in self.exact if {squeezed(typed), number(typed)} & entry.names]
        best = whole or self.exact
        if len(best) != 1 or best[0].ask or (best[0].kind == "type" and len(self.exact) > 1):
            return None
        return best[0]


def expected(entries: Iterable[Entry], typed: str) -> Expected:
    told = [(entry, judged(entry, typed)) for entry in entries] if folded(typed) else []
    return Expected([entry for entry, how in told if how == 2], [entry for entry, how in told if how == 1])


def read_index(site: Path) -> dict[str, Any]:
    """The index as data: the script is one assignment of JSON."""
    text = (site / "assets" / "hardpoint" / "finder-index.js").read_text(encoding="utf-8")
    head, _, rest = text.partition("=")
    assert head == "window.hardpointFinder"
    assert rest.endswith(";\n")
    index: dict[str, Any] = json.loads(rest.removesuffix(";\n"))
    for place in index["places"]:
        place += [""] * (6 - len(place))
        if place[2].endswith("-"):
            place[2] += place[3].lower().replace(" ", "-")
    for type_ in index["types"]:
        type_[4] = [total - 1 for total in accumulate(type_[4])]
    return index


def entries_of(index: dict[str, Any]) -> list[Entry]:
    """Everything that an index can find."""
    return [*_numbers(index), *_tails(index), *_types(index), *_places(index), *_pages(index)]


def _names(type_: list[Any]) -> tuple[str, ...]:
    return (type_[0], type_[1], *type_[2])


def _numbers(index: dict[str, Any]) -> Iterator[Entry]:
    for display, day, type_at, tail_at, *_ in index["numbers"]:
        type_, (title, event) = index["types"][type_at], index["days"][day]
        tail = index["tails"][tail_at][0] if tail_at >= 0 else ""
        href = f"tails/{tail}.html" if tail else f"types/{type_[0]}.html"
        of = " ".join(filter(None, (type_[1], tail))) + f", {title}"
        own = words_of((*_names(type_), title, type_[3]), numbers=(display,))
        beside = words_of((index["words"]["number"], event), tails=(tail,) if tail else ())
        yield Entry((index["words"]["number"], display, of), href, own, beside, frozenset([number(display)]), "number")


def _tails(index: dict[str, Any]) -> Iterator[Entry]:
    for tail, type_at, *more in index["tails"]:
        type_ = index["types"][type_at] if type_at >= 0 else None
        own = words_of(_names(type_) if type_ else (), tails=(tail,))
        shown = (index["words"]["tail"], tail, type_[1] if type_ else "")
        href = (more[0] if more else "") or f"tails/{tail}.html"
        ask = len(more) > 2 and bool(more[2])
        yield Entry(shown, href, own, words_of((index["words"]["tail"],)), frozenset([squeezed(tail)]), "tail", ask)


def _types(index: dict[str, Any]) -> Iterator[Entry]:
    for type_ in index["types"]:
        shown = (index["words"]["type"], type_[1], ", ".join(type_[2]))
        own = words_of((*_names(type_), type_[3]))
        names = frozenset(map(squeezed, _names(type_)))
        yield Entry(shown, f"types/{type_[0]}.html", own, words_of((index["words"]["type"],)), names, "type")


def _places(index: dict[str, Any]) -> Iterator[Entry]:
    of_type: dict[tuple[int, int], Entry] = {}
    for at, type_ in enumerate(index["types"]):
        flown = tuple(
            display for display, _, type_at, tail_at, *_ in index["numbers"] if (type_at, tail_at) == (at, -1)
        )
        for place in type_[4]:
            entry = _place(index, place, type_, "", words_of(_names(type_), numbers=flown))
            of_type[at, place] = entry
            yield entry
    for at, (tail, type_at, *more) in enumerate(index["tails"]):
        filled: list[Any] = [*more, *["", "", False, [], [], []][len(more) :]]
        address, _, ask, without, added, differs = filled
        if address:
            continue
        type_ = index["types"][type_at]
        flown = tuple(display for display, _, _, tail_at, *_ in index["numbers"] if tail_at == at)
        for place in [*(place for place in type_[4] if place not in without), *added]:
            beside = words_of(_names(type_), numbers=flown, tails=(tail,))
            stands_in = (
                None if place in differs or (flown and not index["places"][place][1]) else of_type.get((type_at, place))
            )
            yield _place(index, place, type_, tail, beside, bool(ask), stands_in)


def _place(
    index: dict[str, Any],
    at: int,
    type_: list[Any],
    tail: str,
    beside: Words,
    ask: bool = False,
    stands_in: Entry | None = None,
) -> Entry:
    kind, page, anchor, label, words, _ = index["places"][at]
    home = f"types/{type_[0]}/{page}" if page else f"tails/{tail}" if tail else f"types/{type_[0]}"
    href = f"{home}.html" + (f"#{anchor}" if anchor else "")
    shown = (index["kinds"][kind], label, " ".join(filter(None, (type_[1], tail))))
    own = words_of((label, words, index["kinds"][kind]))
    return Entry(shown, href, own, beside, frozenset([squeezed(label)]), "place", ask, stands_in)


def _pages(index: dict[str, Any]) -> Iterator[Entry]:
    for kind in ("page", "doc"):
        said = index["words"][kind]
        for address, title, words in index["pages" if kind == "page" else "docs"]:
            own = words_of((title, words) if kind == "page" else (title,))
            beside = words_of((words, said))
            names = frozenset([squeezed(title)])
            yield Entry((said, title, words if kind == "doc" else ""), address, own, beside, names, kind)
