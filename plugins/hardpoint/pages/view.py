"""The shapes that pages hand to templates: frozen, already worded, already rounded; nothing left to compute.

A page is a tuple of sections, a section a tuple of blocks; there are six kinds of block. Everything is plain text: the
templates escape it. ``href`` is relative to the page that shows it.
"""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import Literal

State = Literal["said", "unknown", "not fitted", "not applicable"]
Tone = Literal["plain", "never", "unknown", "caution"]


@dataclass(frozen=True)
class Value:
    """One answer. ``text`` is the author's own words or figure; ``beside`` the conversions that stand next to it.

    ``state`` other than "said" is a non-value: ``text`` then holds it in words ("UNKNOWN", "not fitted").
    ``remark`` warns of the answer itself: "the two figures disagree; the gallon is imperial"; ``note`` only adds to it.
    ``parts`` are several answers in one place ("upright: opens", "inverted: UNKNOWN"); ``text`` then holds them in one
    line, for searching, and each part keeps its own state. ``lang`` marks a text that is not in the page's language.
    ``refuses``: the answer is a "no" that people act on ("does NOT open"); it has to be seen like an UNKNOWN.
    """

    text: str
    state: State = "said"
    beside: tuple[str, ...] = ()
    remark: str = ""
    href: str = ""
    note: str = ""
    parts: tuple[Labelled, ...] = ()
    lang: str = ""
    refuses: bool = False


@dataclass(frozen=True)
class Labelled:
    """One of several answers in one place."""

    label: str
    value: Value


@dataclass(frozen=True)
class Was:
    """What the type says where this tail differs; ``label`` names the answer, ``at`` the recorded difference."""

    at: str
    label: str
    says: str
    because: str = ""


@dataclass(frozen=True)
class Fact:
    """A labelled answer. ``was`` is what the type says where this tail differs (() = no recorded difference)."""

    label: str
    value: Value
    id: str = ""
    was: tuple[Was, ...] = ()
    note: str = ""


@dataclass(frozen=True)
class Step:
    """One action, verb first: "Turn" + "the handle" + "clockwise, facing it" + "until it springs out"."""

    verb: str
    what: str
    way: str = ""
    until: str = ""
    unknown: bool = False


@dataclass(frozen=True)
class Photo:
    """A photo: the small one with its size in pixels, the large one behind it, and what is told of it.

    ``told`` is one line: view, date, by whom, licence, aircraft. ``caution`` says of which aircraft it is where that is
    not the one of this page; ``differs``: the part is known to be another one here.
    """

    id: str
    src: str
    width: int
    height: int
    large: str
    alt: str
    told: tuple[Value, ...]
    caution: str = ""
    differs: bool = False


@dataclass(frozen=True)
class Steps:
    """A numbered procedure: where its handle is, what warns, the steps, what to know.

    ``more`` is what can wait: it is folded away on the screen and printed in full. Nothing unknown and nothing that
    differs on this tail is ever folded. ``sketch`` is SVG text of our own drawings, "" where there is a photo.
    """

    id: str
    title: str
    where: str = ""
    steps: tuple[Step, ...] = ()
    facts: tuple[Fact, ...] = ()
    more: tuple[Fact, ...] = ()
    caution: str = ""
    was: tuple[Was, ...] = ()
    photos: tuple[Photo, ...] = ()
    sketch: str = ""
    where_state: State = "said"
    kind: Literal["steps"] = field(default="steps", init=False)


@dataclass(frozen=True)
class Facts:
    """A list of labelled answers under an optional heading."""

    id: str
    title: str
    facts: tuple[Fact, ...]
    kind: Literal["facts"] = field(default="facts", init=False)


@dataclass(frozen=True)
class Line:
    """One sentence of a tone; ``strong`` is set bold before it."""

    text: str
    strong: str = ""
    tone: Tone = "plain"
    href: str = ""
    id: str = ""
    was: tuple[Was, ...] = ()


@dataclass(frozen=True)
class Lines:
    """Sentences, one below the other.

    ``asked``: on the screen they take the place of those before them once somebody has asked for their part, by a
    link to it. They tell nothing that does not stand, always in sight, in another part, too.
    """

    lines: tuple[Line, ...]
    id: str = ""
    title: str = ""
    asked: bool = False
    kind: Literal["lines"] = field(default="lines", init=False)


@dataclass(frozen=True)
class Row:
    """A row of a table; ``id`` is its anchor."""

    cells: tuple[Value, ...]
    id: str = ""
    tone: Tone = "plain"
    was: tuple[Was, ...] = ()


@dataclass(frozen=True)
class Table:
    """Rows under heads; the first cell of a row is its head. ``folded``: opened by its caption, printed open."""

    id: str
    caption: str
    heads: tuple[str, ...]
    rows: tuple[Row, ...]
    folded: bool = False
    kind: Literal["table"] = field(default="table", init=False)


@dataclass(frozen=True)
class Drawing:
    """SVG text made by our own drawings (already safe), with the words that stand for it."""

    id: str
    svg: str
    caption: str
    kind: Literal["drawing"] = field(default="drawing", init=False)


@dataclass(frozen=True)
class MapView:
    """One view of a map: SVG text made by our own drawings, and what it shows in words."""

    id: str
    svg: str
    caption: str


@dataclass(frozen=True)
class Maps:
    """The views of one map. ``layers``: id and words of what a reader may hide; ``note`` tells how it is drawn."""

    id: str
    views: tuple[MapView, ...]
    layers: tuple[tuple[str, str], ...] = ()
    note: str = ""
    hatches: str = ""
    """The patterns that fills refer to: once on a page, in its first block of maps."""
    kind: Literal["maps"] = field(default="maps", init=False)


@dataclass(frozen=True)
class Links:
    """Words that lead away, under a heading of their own so that no tap on an answer leaves the page."""

    id: str
    title: str
    links: tuple[Link, ...]
    kind: Literal["links"] = field(default="links", init=False)


@dataclass(frozen=True)
class Quiz:
    """Questions, each with its answer folded under it."""

    id: str
    title: str
    questions: tuple[Question, ...]
    kind: Literal["quiz"] = field(default="quiz", init=False)


@dataclass(frozen=True)
class Question:
    """One question for training; ``href`` leads to the place in the record that answers it."""

    asks: str
    answer: Value
    id: str
    href: str
    because: str = ""


@dataclass(frozen=True)
class Photos:
    """Photos of what has no steps of its own."""

    id: str
    title: str
    photos: tuple[Photo, ...]
    kind: Literal["photos"] = field(default="photos", init=False)


Block = Steps | Facts | Lines | Table | Drawing | Maps | Links | Quiz | Photos


@dataclass(frozen=True)
class Section:
    """A part of a page with its anchor; ``short`` is its word in the bar within thumb reach.

    ``note`` stands beside the heading and holds for the whole part: whose left and right are meant.
    """

    id: str
    title: str
    blocks: tuple[Block, ...]
    short: str = ""
    note: str = ""


@dataclass(frozen=True)
class Hazard:
    """The yes / no / UNKNOWN strip at the head of a crew page; ``word`` is the answer in the reader's language."""

    label: str
    answer: Literal["YES", "NO", "UNKNOWN"]
    word: str
    detail: str = ""
    href: str = ""


@dataclass(frozen=True)
class Link:
    """A word that leads somewhere."""

    text: str
    href: str
    note: str = ""


@dataclass(frozen=True)
class Tile:
    """One entry of the line-up on home and event pages; ``words`` is what a search matches besides what it shows."""

    number: str
    name: str
    tail: str
    href: str
    day: str
    signs: tuple[str, ...] = ()
    flags: tuple[Line, ...] = ()
    was: str = ""
    words: str = ""


@dataclass(frozen=True)
class Day:
    """One day of an event."""

    id: str
    title: str
    tiles: tuple[Tile, ...]


@dataclass(frozen=True)
class Frame:
    """What every page shows around its content."""

    title: str
    site: str
    root: str
    edition: str
    as_of: str
    invented: bool
    banner: str = ""
    trail: tuple[Link, ...] = ()


@dataclass(frozen=True)
class HomePage:
    frame: Frame
    event: str
    days: tuple[Day, ...]
    types: tuple[Tile, ...]
    links: tuple[Link, ...]
    cautions: tuple[str, ...]


@dataclass(frozen=True)
class CrewPage:
    """Type or tail. ``never`` holds at most three lines; ``never_more`` what is one tap away, named."""

    frame: Frame
    name: str
    tail: str
    numbers: tuple[Link, ...]
    signs: tuple[str, ...]
    differences: tuple[Line, ...]
    differences_more: tuple[Link, ...]
    declaration: Line
    hazards: tuple[Hazard, ...]
    never: tuple[Line, ...]
    never_more: tuple[Link, ...]
    sections: tuple[Section, ...]
    links: tuple[Link, ...]
    cautions: tuple[str, ...]
    out: tuple[Line, ...] = ()
    """Line-ups that this aircraft was taken out of: somebody may hold the old print."""
    stands_in: tuple[Line, ...] = ()
    """Line-ups in which it flies in the place of another, with what of that one must not be expected here."""


@dataclass(frozen=True)
class SheetPage:
    """Figures, structure, gaps, event: a title, a lead, sections."""

    frame: Frame
    title: str
    lead: str
    sections: tuple[Section, ...]
    links: tuple[Link, ...]
    cautions: tuple[str, ...]
    days: tuple[Day, ...] = ()
    look: str = ""
    """A class of its own for the style sheet, where a page is printed otherwise."""
