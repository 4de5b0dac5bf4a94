"""A small sketch of a control or handle, drawn from its record alone: what it is, and which way it goes.

The words in it carry the meaning and the strokes only help: every sketch says what its top is, and never that it is
what gravity calls so. Pure: the same record gives the same SVG text. The strokes are our own.
"""

from __future__ import annotations

import math
import re
import textwrap
from collections.abc import Iterator
from dataclasses import dataclass
from html import escape

from hardpoint.drawings.course import Course, Flat, course
from hardpoint.drawings.shapes import SHAPES, Pen, X, Y, from_the_side
from hardpoint.records.controls import Control
from hardpoint.records.exits import Exit
from hardpoint.records.known import NonValue, said
from hardpoint.records.places import Place
from hardpoint.records.terms import doing, term
from hardpoint.words import say

WIDTH = 160
_LINE = 14
_FIELD = 84
"""The height of the strokes, between the words on the top and those below."""
_LETTERS = 26
"""As many letters as one line of 12 units holds in the widest of our typefaces."""
_REACH, _AROUND, _HEAD = (23.0, 38.0), 29.0, 7.0


@dataclass(frozen=True)
class Sketch:
    """What is drawn, before it is drawn. ``label`` are the words at the arrow, ``notes`` the lines below them."""

    kind: str
    course: Course
    label: str
    unknown: bool = False
    notes: tuple[str, ...] = ()
    guarded: bool = False


def control_sketch(control: Control) -> str:
    """The sketch of a control: its kind, its guard, and its off movement, or UNKNOWN in place of an arrow."""
    works = control.off_is is NonValue.NOT_APPLICABLE
    way = control.works_by if works else control.off_is
    words = said(way)
    notes = []
    if isinstance(control.kind, NonValue):
        notes.append(say("what it is: UNKNOWN"))
    guarded = said(control.guard) not in (None, "none")
    if guarded:
        notes.append(say("dashed: guard"))
    elif control.guard is NonValue.UNKNOWN:
        notes.append(say("guard: UNKNOWN"))
    if words is None:
        label = say("which way it works") if works else say("which way is off")
    else:
        label = say("{way} = works", way=term(words)) if works else say("{way} = off", way=term(words))
    drawn = course(way, control.seen_from, _side(control.place))
    return draw(Sketch(said(control.kind) or "", drawn, label, words is None, tuple(notes), guarded))


def exit_sketch(exit_: Exit) -> str:
    """The sketch of an exit's handle with the first step that moves it.

    "" where the record does not tell its kind, or where no step with a way names the handle as its kind does: an
    arrow of another part's step would mislead.
    """
    kind = said(exit_.kind)
    if kind is None:
        return ""
    if exit_.steps is NonValue.UNKNOWN:
        return draw(Sketch(kind, Course(), say("its way"), unknown=True))
    for number, step in enumerate(said(exit_.steps) or (), start=1):
        if step.way is not None and step.way is not NonValue.NOT_APPLICABLE and _names(step.what, kind):
            words = said(step.way)
            label = say("step {number}: {verb}", number=number, verb=doing(step.do))
            label = f"{label} {term(words)}" if words else label
            return draw(Sketch(kind, course(step.way, step.seen_from, _side(exit_.place)), label, words is None))
    return ""


def _names(what: str, kind: str) -> bool:
    """``red lever at the front hinge`` names a lever, ``slide by its finger hole`` a slide latch."""
    return not set(re.findall(r"[a-z]+", what.lower())).isdisjoint(kind.replace("-", " ").split())


def _side(place: Place | NonValue) -> str | None:
    told = said(place)
    return said(told.side) if told else None


def draw(sketch: Sketch) -> str:
    """SVG text with its own size, name and description.

    The words at the arrow stand at its head: below an arrow that leads to the upper edge, "= off" would be read of the
    lower end.
    """
    top = sketch.course.top or (say("the sketch has no top"),)
    upwards = not sketch.unknown and not sketch.course.turn and (sketch.course.end or (0.0, 0.0))[1] < -0.5
    over = [*top, *(_wrapped(sketch.label) if upwards else ())]
    below = sketch.notes if upwards else (sketch.label, *sketch.notes)
    under = [line for words in below for line in _wrapped(words)]
    shift = _LINE * len(over)
    height = shift + _FIELD + 4 + _LINE * len(under)
    lines = [(12 + _LINE * at, words) for at, words in enumerate(over)]
    lines += [(shift + _FIELD + 12 + _LINE * at, words) for at, words in enumerate(under)]
    told = ". ".join(
        (*top, say("{question}: UNKNOWN", question=sketch.label) if sketch.unknown else sketch.label, *sketch.notes)
    )
    parts = [
        f'<svg class="sketch" role="img" width="{WIDTH}" height="{height}" viewBox="0 0 {WIDTH} {height}" '
        f'fill="none" stroke="currentColor" stroke-width="1.5">',
        f"<title>{escape(say('Sketch: {kind}', kind=term(sketch.kind) if sketch.kind else say('handle')))}</title>",
        f"<desc>{escape(told)}.</desc>",
        f'<g transform="translate(0 {shift})">',
        *_strokes(sketch),
        '</g><g fill="currentColor" stroke="none" font-size="12" text-anchor="middle">',
        *(f'<text x="{X:g}" y="{y}">{escape(words)}</text>' for y, words in lines),
        "</g></svg>",
    ]
    return "".join(parts)


def _wrapped(words: str) -> list[str]:
    """As few lines as hold the words, of about the same length."""
    fewest = textwrap.wrap(words, _LETTERS)
    widths = range(len(words) // len(fewest), _LETTERS)
    return next((lines for width in widths if len(lines := textwrap.wrap(words, width)) == len(fewest)), fewest)


def _strokes(sketch: Sketch) -> Iterator[str]:
    way = sketch.course
    if sketch.unknown:
        yield _shape(sketch.kind, (0.0, -1.0), raised=True)
        yield '<path stroke-width="3" d="M30,54h100v22h-100z"/><path d="M31,66l11,-11M31,75l13,-20M38,75l6,-9"/>'
        yield (
            f'<text x="{X + 7:g}" y="70" fill="currentColor" stroke="none" font-size="13" font-weight="800" '
            f'text-anchor="middle">{escape(say("UNKNOWN"))}</text>'
        )
        return
    if way.scene == "edge-on":
        yield '<path d="M36,10v64h10v-64zM36,22l10,-10M36,36l10,-10M36,50l10,-10M36,64l10,-10"/>'
        yield f'<path d="{from_the_side(sketch.kind)}"/>'
    else:
        if way.scene == "sill":
            yield '<path d="M30,78h100M40,78l-6,5M60,78l-6,5M80,78l-6,5M100,78l-6,5M120,78l-6,5"/>'
        yield _shape(sketch.kind, way.end or (0.0, -1.0))
    if sketch.guarded:
        yield '<path stroke-dasharray="4 3" d="M50,12h60v60h-60z"/>'
    yield from _arrow(way)


def _shape(kind: str, along: Flat, *, raised: bool = False) -> str:
    """The strokes of a kind; of one that is not told, a dotted ring."""
    moved = ' transform="translate(0 -12)"' if raised else ""
    if kind not in SHAPES:
        return f'<path stroke-dasharray="2 3"{moved} d="{Pen(along).ring(14)}"/>'
    return f'<path{moved} d="{SHAPES[kind](Pen(along))}"/>'


def _arrow(way: Course) -> Iterator[str]:
    """One path of the class "arrow" leads from its first point to its last; its head is a path of its own."""
    if way.turn:
        clockwise = way.turn == "clockwise"
        begin, end = (210.0, 330.0) if clockwise else (330.0, 210.0)
        yield from _arc(_on_circle(begin), _on_circle(end), clockwise)
    elif way.end and way.start and (cross := _cross(way.start, way.end)):
        yield from _arc(way.start, way.end, cross > 0)
    elif way.end and way.scene == "edge-on":
        near, far = (X + 18, Y), (X + 52, Y)
        yield from _straight(*((near, far) if way.end[0] > 0 else (far, near)))
    elif way.end:
        (x, y), (near_by, far_off) = way.end, _REACH
        yield from _straight((X + near_by * x, Y + near_by * y), (X + far_off * x, Y + far_off * y))


def _straight(start: Flat, end: Flat) -> Iterator[str]:
    yield f'<path class="arrow" d="M{_point(start)}L{_point(end)}"/>'
    yield _head(end, (end[0] - start[0], end[1] - start[1]))


def _arc(start: Flat, end: Flat, clockwise: bool) -> Iterator[str]:
    """Along a circle around the part, between two directions."""
    begin, tip = ((X + _AROUND * x, Y + _AROUND * y) for x, y in (start, end))
    yield f'<path class="arrow" d="M{_point(begin)}A{_AROUND:g},{_AROUND:g} 0 0 {int(clockwise)} {_point(tip)}"/>'
    x, y = end
    yield _head(tip, (-y, x) if clockwise else (y, -x))


def _head(tip: Flat, along: Flat) -> str:
    """Two strokes back from the tip, on either side of the direction that it points in."""
    back = math.atan2(-along[1], -along[0])
    wings = [(tip[0] + _HEAD * math.cos(back + turn), tip[1] + _HEAD * math.sin(back + turn)) for turn in (-0.5, 0.5)]
    return f'<path class="barb" d="M{_point(wings[0])}L{_point(tip)}L{_point(wings[1])}"/>'


def _on_circle(degrees: float) -> Flat:
    return math.cos(math.radians(degrees)), math.sin(math.radians(degrees))


def _cross(one: Flat, other: Flat) -> float:
    """Above 0 where the shorter way from one to the other is clockwise on the sheet; 0 where they are opposite."""
    return round(one[0] * other[1] - one[1] * other[0], 6)


def _point(at: Flat) -> str:
    return f"{at[0]:.1f},{at[1]:.1f}"
