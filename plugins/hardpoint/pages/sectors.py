"""Crew page, stay clear: where nobody stands while a device is live, by how the airframe lies."""

from __future__ import annotations

from collections.abc import Iterator

from hardpoint.figures.behind import FLYING
from hardpoint.figures.reports import counts_as_live
from hardpoint.figures.worked import MissingError
from hardpoint.figures.workings.exit_sectors import sectors
from hardpoint.pages.shown import Shown
from hardpoint.pages.telling import several
from hardpoint.pages.view import Fact, Value
from hardpoint.records.known import NonValue
from hardpoint.records.places import Route
from hardpoint.records.pyrotechnics import Pyrotechnic
from hardpoint.words import say, say_again


def where_nobody_stands(shown: Shown, name: str, device: Pyrotechnic) -> Iterator[Fact]:
    """By attitude the way that it flies, with what else nobody stands in line with. Sectors: no width is known."""
    if device.kind not in FLYING or not counts_as_live(device, None):
        return
    label, was = say("Nobody stands where it flies"), shown.was(("pyrotechnics", name, "exit_direction"))
    cable = _cable(device.cable)
    note = say("Nor to either side of that, {cable}. With a bent mount it flies any way.", cable=cable)
    try:
        told = [
            (say(sector.attitude.words), Value(say_again(sector.way)))
            for sector in sectors(shown.airframe, name, device)
        ]
    except MissingError as missing:
        anywhere = say("anywhere near it: {reason}", reason=say_again(missing.reason))
        yield Fact(label, Value(say("UNKNOWN, so {where}", where=anywhere), "unknown"), was=was, note=note)
        return
    seen = say("Clockwise as seen from above.")
    yield Fact(label, several(told), was=was, note=f"{note} {seen}")


def _cable(cable: Route | NonValue) -> str:
    """Its way counts as unknown where only a part of it was followed."""
    if isinstance(cable, NonValue) or isinstance(cable.path, NonValue) or cable.then_unknown is not None:
        return say("nor in line with its cable (its way: UNKNOWN)")
    return say("nor in line with its cable")
