"""Crew page, cut: which of the sides that may be cut have a stretch that is clear by the record. Words, no stations."""

from __future__ import annotations

from collections.abc import Iterator

from hardpoint.figures.worked import Case
from hardpoint.figures.workings.windows import SideWindows, side_windows, side_words
from hardpoint.pages.between import between
from hardpoint.pages.shown import Shown
from hardpoint.pages.terms import name_words
from hardpoint.pages.view import Line
from hardpoint.records.known import entries, said
from hardpoint.records.structure import ZoneSide
from hardpoint.words import say, say_again


def clear_skin(shown: Shown) -> Iterator[Line]:
    """A line for every side with a window, and one for every side that may be cut and has none, with its reason."""
    for side in side_windows(Case(shown.airframe, shown.station)):
        listed: ZoneSide | None = said(getattr(entries(shown.airframe.zones)[side.zone], side.side))
        where = say("{zone}, {side}", zone=name_words(side.zone), side=say_again(side_words(shown.airframe, side.side)))
        if side.windows:
            yield Line(_clear(shown, side, where), say("Clear in part:"))
        elif listed and listed.cut in ("preferred", "possible"):
            reasons = "; ".join(say_again(unsaid.reason) for unsaid in side.reasons)
            unknown = any(not unsaid.refused for unsaid in side.reasons)
            text = say("{where}: {reasons}", where=where, reasons=reasons)
            yield Line(text, say("No clear stretch is known:"), "unknown" if unknown else "caution")


def _clear(shown: Shown, side: SideWindows, where: str) -> str:
    """All windows of a side at once: what lies between the landmarks is never clear as a whole."""
    ends = (min(one.clear.start for one in side.windows), max(one.clear.end for one in side.windows))
    tools = ", ".join(name_words(tool) for tool in dict.fromkeys(one.tool for one in side.windows))
    found = between(ends, shown.airframe, side.side)
    if not found:
        return say(
            "{where}: not all of it; measure it out by the figures page. Tools: {tools}", where=where, tools=tools
        )
    return say(
        "{where}: somewhere {between}, not all of that; measure it out by the figures page. Tools: {tools}",
        where=where,
        between=found,
        tools=tools,
    )
