"""Computed figures for other programs: in SI and in English, with the paths that they were worked out from."""

from __future__ import annotations

from collections.abc import Iterator
from decimal import Decimal
from fractions import Fraction
from typing import Any

from hardpoint.figures.worked import Figure, Input, Unsaid, Worked
from hardpoint.findings import dotted
from hardpoint.pages.entries import flown
from hardpoint.pages.site import Site
from hardpoint.pages.workings import Told, differing, worked
from hardpoint.records.event import Event
from hardpoint.units import computed, round_significant
from hardpoint.words import AS_WRITTEN, speaking

_DIGITS = 12
"""Significant digits in data files: a float's last bits are no quantity, and differ between machines."""


def data_figures(told: Told) -> Iterator[dict[str, Any]]:
    """Every figure that was worked out, or why it cannot be said."""
    for _, found in told:
        yield from map(_figure, found)


def event_figures(site: Site, event: Event) -> Iterator[dict[str, Any]]:
    """What each slot changes in the figures of its aircraft; ids begin with the day and the number."""
    for day_id, day in event.days.items():
        for number, entry in day.entries.items():
            airframe = flown(site, number, entry).shown.airframe
            for _, found in differing(worked(site, airframe, entry, day), worked(site, airframe)):
                for figure in found:
                    told = _figure(figure)
                    yield told | {"id": f"{day_id}.{number}.{told['id']}"}


def _figure(figure: Worked) -> dict[str, Any]:
    if isinstance(figure, Unsaid):
        return _unsaid(figure)
    low, high = figure.value
    told: dict[str, Any] = {
        "id": figure.id,
        "value": _decimal(figure.counts),
        "unit": figure.unit,
        "shown": _shown(figure),
        "rounded": figure.rounded,
        "inputs": list({input_.path: _input(input_) for input_ in figure.inputs}.values()),
        "source": ", ".join(dict.fromkeys(figure.sources)),
        "caution": str(figure.caution),
    }
    return told if low == high else told | {"low": _decimal(low), "high": _decimal(high)}


def _shown(figure: Figure) -> str:
    """As pages print it, in English whatever they speak."""
    with speaking(AS_WRITTEN):
        return " / ".join(computed(figure.value, figure.unit, figure.printed_in, figure.rounded, figure.digits))


def _unsaid(figure: Unsaid) -> dict[str, Any]:
    reason: dict[str, Any] = {"reason": str(figure.reason), "path": dotted(figure.path)}
    return {"id": figure.id, "cannot_say": reason | ({"refused": True} if figure.refused else {})}


def _input(input_: Input) -> dict[str, Any]:
    low, high = input_.value
    told = {"path": dotted(input_.path), "value": _decimal(low), "unit": input_.unit}
    return told if low == high else told | {"high": _decimal(high)}


def _decimal(value: float) -> str:
    return format(Decimal(format(round_significant(Fraction(value), _DIGITS).normalize(), "f")), "f")
