"""What a figure is once it is worked out: value, inputs, formula, source, rounding, caution; or why there is none.

Formulas (``hardpoint.figures.balance`` and its neighbours) know SI floats only. The modules under ``workings`` read
records, hand floats to the formulas and make of what comes back a ``Figure`` or an ``Unsaid``.
"""

from __future__ import annotations

import datetime as dt
from collections.abc import Callable, Iterable
from dataclasses import dataclass
from decimal import Decimal
from fractions import Fraction
from itertools import product
from typing import Literal

from hardpoint.findings import Path
from hardpoint.records.airframe import Airframe
from hardpoint.records.event import Day, Entry
from hardpoint.records.known import NonValue
from hardpoint.records.station import Station
from hardpoint.records.texts import Span
from hardpoint.units import Quantity, Rounding
from hardpoint.units.registry import link
from hardpoint.words import later

Range = tuple[float, float]
"""Least and greatest value in SI; equal where there is one value."""


@dataclass(frozen=True)
class Case:
    """What figures are worked out for: an airframe at a station, and its slot in a line-up where there is one.

    ``station`` is None where its record could not be read; ``entry`` and ``day`` stand together or not at all.
    """

    airframe: Airframe
    station: Station | None = None
    entry: Entry | None = None
    day: Day | None = None
    as_of: dt.date | None = None
    """The day on which reviews are judged."""


@dataclass(frozen=True)
class Input:
    """One thing that a figure was worked out from: its path, its words, its value in SI.

    The path is that of the record; what the station has decided begins with ``station``, what the line-up says with
    ``entry``. ``said`` is the author's own text, or words made by ``later`` where the input is a choice of ours.
    """

    path: Path
    said: str
    value: Range
    unit: str


@dataclass(frozen=True)
class Figure:
    """A figure with its derivation.

    ``id`` is dotted and stands in data files; ``what`` says in words what it is of (``later``). ``value`` is a range in
    ``unit`` (SI, "" for a bare number), ``printed_in`` the unit it is printed in, by canonical name, with ``digits``
    significant digits. ``rounded`` is the safe side; of a range it also tells which end counts (``counts``).
    ``formula`` is a line as an engineer writes it, ``method`` the page of docs that tells more, ``sources`` keys of
    ``hardpoint.figures.citations``.
    """

    id: str
    what: str
    value: Range
    unit: str
    printed_in: str
    rounded: Rounding
    inputs: tuple[Input, ...]
    formula: str
    method: str
    sources: tuple[str, ...]
    caution: str = ""
    digits: int = 3

    @property
    def counts(self) -> float:
        """The end of the range that people are to plan with: the greatest where it is rounded up, else the least."""
        return self.value[1] if self.rounded == "up" else self.value[0]


@dataclass(frozen=True)
class Unsaid:
    """A figure that cannot be said, and why. ``path`` is what is missing; ``refused``: known well enough to say no."""

    id: str
    what: str
    reason: str
    path: Path = ()
    method: str = ""
    refused: bool = False


Worked = Figure | Unsaid


@dataclass(frozen=True)
class Topic:
    """One topic of figures: its id, its heading (``mark``), its method page, and what works it out of a case.

    ``folded``: a long list that people look things up in; pages show its heading and open it when asked.
    """

    id: str
    title: str
    method: str
    work: Callable[[Case], Iterable[Worked]]
    folded: bool = False


class MissingError(Exception):
    """An input that nobody knows: the figure that asked for it cannot be said. ``reason`` is made by ``later``."""

    def __init__(self, reason: str, path: Path) -> None:
        super().__init__(reason)
        self.reason, self.path = reason, path

    def of(self, id_: str, what: str, method: str = "") -> Unsaid:
        """The figure that is not said because of this."""
        return Unsaid(id_, what, self.reason, self.path, method)


def quantity(value: Quantity | NonValue | None, path: Path, missing: str) -> Input:
    """An input out of a quantity of the record. MissingError(``missing``) where it is not known."""
    if value is None or isinstance(value, NonValue):
        raise MissingError(missing, path)
    return Input(path, value.text, value.si, value.si_unit)


def position(value: Span | NonValue | None, path: Path, unit: Literal["mm", "in"], missing: str) -> Input:
    """An input out of a position in the unit of the datum: a stretch counts from end to end.

    MissingError(``missing``) where it is unknown, or open at one end.
    """
    if value is None or isinstance(value, NonValue) or value.low is None or value.high is None:
        raise MissingError(missing, path)
    return Input(path, stretch_said(value), (convert_to_m(value.low, unit), convert_to_m(value.high, unit)), "m")


def stretch_said(span: Span) -> str:
    """A position as its author wrote it, so that a page can say the words between its figures in its own language."""
    if span.low == span.high:
        return span.text
    if span.low is None or span.high is None:
        below = span.low is None
        return later("below {station}", station=span.high) if below else later("above {station}", station=span.low)
    return later("{low} to {high}", low=span.low, high=span.high)


def convert_to_m(value: Decimal | float, unit: Literal["mm", "in"]) -> float:
    """A bare position in metres, exact to the last bit: 2050 mm is 2.05."""
    return float(Fraction(value) * link(unit, "m").factor)


def spoken(name: str) -> str:
    """An id as it is spoken: ``smoke-oil`` -> ``smoke oil``."""
    return name.replace("-", " ").replace("_", " ")


def over(work: Callable[..., float], *ranges: Range) -> Range:
    """Least and greatest result over all corners of the ranges: exact where ``work`` is monotonic in each of them."""
    results = [work(*corner) for corner in product(*({*ends} for ends in ranges))]
    return min(results), max(results)
