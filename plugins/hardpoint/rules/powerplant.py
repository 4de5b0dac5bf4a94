"""Rules about engine, propeller and rotor."""

from __future__ import annotations

from collections.abc import Iterator

from hardpoint.records.known import NonValue, said
from hardpoint.rules.rule import AIRFRAME, Hit, Record

_DENIED = (NonValue.NOT_FITTED, NonValue.NOT_APPLICABLE)


@AIRFRAME.rule(
    "engine-turns-nothing", "warning", "An engine that is no jet turns a propeller or a rotor; the record has it."
)
def engine_turns_nothing(record: Record) -> Iterator[Hit]:
    """Engines without anything that they turn, and rotors that are drawn but not recorded."""
    airframe, engine = record.airframe, said(record.airframe.engine)
    rotor = said(airframe.rotor) or airframe.rotor is NonValue.UNKNOWN
    if engine and engine.kind != "jet" and airframe.propeller in _DENIED and not rotor:
        yield Hit(("propeller",), str(airframe.propeller), f"what the {engine.kind} engine turns, or a rotor")
    profile = said(airframe.profile)
    if profile and profile.rotors and not rotor:
        names = ", ".join(profile.rotors)
        yield Hit(("profile", "rotors"), names, "the section rotor too, if need be unknown: the outline shows one")


@AIRFRAME.rule(
    "propeller-at-the-wrong-end", "warning", "A tractor propeller is ahead of its engine, a pusher behind it."
)
def propeller_at_the_wrong_end(record: Record) -> Iterator[Hit]:
    """Propellers on the other side of the engine than `drives` says."""
    engine, propeller = said(record.airframe.engine), said(record.airframe.propeller)
    places = (said(engine.place) if engine else None, said(propeller.place) if propeller else None)
    at, disc = (said(place.fs) if place else None for place in places)
    if propeller is None or at is None or disc is None or at.middle is None or disc.middle is None:
        return
    if (propeller.drives == "tractor") != (disc.middle < at.middle) and disc.middle != at.middle:
        end = "ahead of" if propeller.drives == "tractor" else "behind"
        related = ((("engine", "place"), f"engine at FS {at.text}"),)
        wanted = f"a station {end} the engine (FS {at.text}): it is a {propeller.drives}"
        yield Hit(("propeller", "place", "fs"), disc.text, wanted, related=related)


@AIRFRAME.rule(
    "jet-without-distances", "warning", "A jet has an intake and an exhaust to keep away from, if need be unknown."
)
def jet_without_distances(record: Record) -> Iterator[Hit]:
    """Jets that say `not applicable` of what they suck in or blow out."""
    engine = said(record.airframe.engine)
    for key in ("intake_keep", "exhaust_keep") if engine and engine.kind == "jet" else ():
        answer = getattr(engine, key)
        if answer in _DENIED:
            yield Hit(("engine", key), str(answer), "a distance, or unknown: every jet has one", "unknown")
