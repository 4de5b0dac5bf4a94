"""Crew page: approach. From where to come, from where not, and why."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator

from hardpoint.pages.shown import Shown
from hardpoint.pages.telling import in_full, tell
from hardpoint.pages.terms import term
from hardpoint.pages.view import Block, Line, Lines, Section, Tone
from hardpoint.records.known import NonValue, said
from hardpoint.records.sight import Approach, Danger
from hardpoint.words import mark, say

_BLASTS = (
    ("intake_keep", mark("how far to keep ahead of the intake"), mark("ahead of the intake: keep {distance}")),
    ("exhaust_keep", mark("how far to keep behind the exhaust"), mark("behind the exhaust: keep {distance}")),
)


def approach(shown: Shown) -> Section:
    """From where to come, from where not: one line each, and all of it with its reasons for whoever asks."""
    told = shown.airframe.approach
    was = shown.was(("approach",))
    if isinstance(told, NonValue):
        best = Line(say("from where to come: nobody has recorded it"), say("UNKNOWN"), "unknown", was=was)
        short = [best]
    else:
        come = said(told.come_from)
        words = say("from the {bearings}.", bearings=_in_turn(come)) if come else say("from where: UNKNOWN.")
        best = Line(words, say("Come"), "plain" if come else "unknown", was=was)
        short = [best, *_directions(shown, told)]
    full = Lines((best, *_all_directions(shown), *_why(shown)), "approach-in-full", asked=True)
    return Section("approach", say("Approach"), (Lines(tuple(short)), full), say("Approach"))


def _in_turn(bearings: tuple[str, ...]) -> str:
    """The best first, then where else from; whose left and right it is stands with the first that has a side."""
    sided = next((at for at, bearing in enumerate(bearings) if bearing in _OF_THE_PILOT), 0)
    told = _bearing(bearings[0])
    for at, bearing in enumerate(bearings[1:], start=1):
        after = _bearing(bearing) if at <= sided else say(_AFTER[bearing]) if bearing in _AFTER else term(bearing)
        told = say("{first}, then the {next}", first=told, next=after)
    return told


_AFTER = {
    "left front quarter": mark("left front"),
    "right front quarter": mark("right front"),
    "left rear quarter": mark("left rear"),
    "right rear quarter": mark("right rear"),
}


_OF_THE_PILOT = {
    "left side": mark("pilot's left side"),
    "right side": mark("pilot's right side"),
    "left front quarter": mark("pilot's left front quarter"),
    "right front quarter": mark("pilot's right front quarter"),
    "left rear quarter": mark("pilot's left rear quarter"),
    "right rear quarter": mark("pilot's right rear quarter"),
}
"""A crew that faces an inverted wreck has its own left and right: the page names whose they are."""


def _bearing(bearing: str) -> str:
    return say(_OF_THE_PILOT[bearing]) if bearing in _OF_THE_PILOT else term(bearing)


_ROOM = 112
"""Letters of the line of directions: the opening steps follow on the first screen of a phone."""
_NAMED_IN, _LITTLE = 32, 3
"""Letters of the name of a direction for which there was no room; such a name does not end in a little word."""


_GOES_ON = "\u00a0\u2026"


def _directions(shown: Shown, told: Approach) -> Iterator[Line]:
    """Where not to come from: in full as many as there is room for, the others named, all of them one tap away."""
    if told.keep_out is NonValue.UNKNOWN:
        yield Line(say("from where not to come"), say("UNKNOWN"), "unknown")
    listed = said(told.keep_out) or ()
    dangers = [danger.where for danger in listed] + [
        line.text for key, line in _blast(shown) if not _named(listed, key)
    ]
    if dangers:
        told_as = (_in_part(dangers, full) for full in range(len(dangers), 0, -1))
        text = next((words for words in told_as if len(words) <= _ROOM), _in_part(dangers, 1))
        yield Line(text, say("Not"), "caution", "#approach")


def _in_part(dangers: list[str], full: int) -> str:
    """The first ``full`` of the directions as they are written; of each other its beginning, and that it goes on."""
    first = "; ".join(dangers[:full])
    rest = "; ".join(map(_begun, dangers[full:]))
    text = say("{first}. Also: {rest}", first=first, rest=rest) if rest else first
    return text if text.endswith(_GOES_ON) else f"{text}."


def _begun(words: str) -> str:
    """Its beginning, marked as one: ``aft along the rails, on the fuselage`` -> ``aft along the rails ...``."""
    if len(words) <= _NAMED_IN:
        return words
    begun = re.split(r"[,:;]", words)[0]
    if len(begun) > _NAMED_IN:
        kept = begun[: _NAMED_IN + 1].split(" ")[:-1]
        while len(kept) > 1 and len(kept[-1]) <= _LITTLE:
            kept.pop()
        begun = " ".join(kept) or begun
    return f"{begun}{_GOES_ON}"


def keep_out(shown: Shown) -> Iterator[Block]:
    """Every direction not to come from, with its reason; why to come from where it is best."""
    yield Lines((*_why(shown), *_all_directions(shown)), "keep-out", say("Directions"))


def _why(shown: Shown) -> Iterator[Line]:
    told = said(shown.airframe.approach)
    if told is not None:
        yield Line(tell(told.because).text, say("Come from there because:"))


def _all_directions(shown: Shown) -> Iterator[Line]:
    """What the record lists, each with its reason; then intake, exhaust, rotor, where no line gives their figure."""
    told = said(shown.airframe.approach)
    listed = (said(told.keep_out) if told else None) or ()
    for d in listed:
        yield Line(f"{d.where}: {d.why}" + (f" ({d.keep})" if d.keep else ""), say("Not"), "caution")
    if told is not None and told.keep_out is NonValue.UNKNOWN:
        yield Line(say("from where not to come"), say("UNKNOWN"), "unknown")
    yield from (line for key, line in _blast(shown) if told is None or not _kept(listed, key, shown))


_ALSO_CALLED = {"intake_keep": r"\bintakes?\b", "exhaust_keep": r"\b(exhaust|jet pipe|jet blast)\b"}


def _named(listed: Iterable[Danger], key: str) -> bool:
    """Whether a direction of the record already says this one."""
    pattern = _ALSO_CALLED.get(key)
    return pattern is not None and any(re.search(pattern, f"{d.where} {d.why}".lower()) for d in listed)


def _kept(listed: Iterable[Danger], key: str, shown: Shown) -> bool:
    """Whether such a direction also says how far: the very figure of the engine, so that nothing is lost."""
    figure = said(getattr(said(shown.airframe.engine), key, None))
    return figure is not None and _named([d for d in listed if d.keep and figure.text in d.keep], key)


def _blast(shown: Shown) -> Iterator[tuple[str, Line]]:
    """How far to keep from intake, exhaust and rotor, where there is one, each under its key."""
    engine = said(shown.airframe.engine)
    for key, not_known, keep in _BLASTS:
        answer = getattr(engine, key) if engine else NonValue.NOT_APPLICABLE
        if answer is NonValue.UNKNOWN:
            yield key, Line(say(not_known), say("UNKNOWN"), "unknown")
        elif said(answer) is not None:
            told = tell(answer, ("engine", key))
            yield key, Line(say(keep, distance=in_full(told)), say("Not"), "caution")
    rotor = said(shown.airframe.rotor)
    if rotor:
        height, run_down = tell(rotor.tip_height, ("rotor", "tip_height")), tell(rotor.run_down, ("rotor", "run_down"))
        words = say(
            "a blade comes down to {height}; it turns for {time} after shut-down",
            height=in_full(height),
            time=in_full(run_down),
        )
        tone: Tone = "unknown" if "unknown" in (height.state, run_down.state) else "caution"
        yield "rotor", Line(words, say("Rotor:"), tone)
    elif shown.airframe.rotor is NonValue.UNKNOWN:
        yield "rotor", Line(say("whether there is a rotor"), say("UNKNOWN"), "unknown")
