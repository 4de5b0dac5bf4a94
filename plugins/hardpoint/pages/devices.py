"""Crew page, stay clear: rockets, cartridges, high voltage."""

from __future__ import annotations

from collections.abc import Iterator

from hardpoint.figures.answers import device_answer, high_voltage_answer
from hardpoint.findings import Path
from hardpoint.pages.addresses import anchor
from hardpoint.pages.sectors import where_nobody_stands
from hardpoint.pages.shown import Shown
from hardpoint.pages.telling import do_not, in_full, several, tell, told_place, unknown
from hardpoint.pages.terms import first_capital, name_words, term, title_of
from hardpoint.pages.vessels import cut_by, way_of, where
from hardpoint.pages.view import Block, Fact, Facts, State, Value
from hardpoint.records.electrics import Battery, HighVoltage, HighVoltageCable, HighVoltagePart
from hardpoint.records.known import NonValue, entries, said
from hardpoint.records.pyrotechnics import DeviceKind, Pyrotechnic
from hardpoint.words import mark, say

ASKED: tuple[tuple[str, DeviceKind], ...] = (
    (mark("Rocket"), "rocket parachute"),
    (mark("Seat cartridge"), "seat cartridge"),
)


def devices(shown: Shown) -> Iterator[Block]:
    """The answers first, then each device and the high voltage in full."""
    yield Facts("pyrotechnics", say("Rockets, cartridges, high voltage"), (*_asked(shown), *_other_answers(shown)))
    for name, device in entries(shown.airframe.pyrotechnics).items():
        yield Facts(anchor(("pyrotechnics", name)), _title(shown, device), _device(shown, name, device))
    system = said(shown.airframe.high_voltage)
    if system:
        yield Facts("high-voltage", say("High voltage"), _voltage(shown, system))


def _title(shown: Shown, device: Pyrotechnic) -> str:
    """Its kind, and its seat where there are several."""
    kind = first_capital(term(device.kind))
    if not device.seat or len(shown.airframe.seats) < 2:
        return kind
    return say("{what}, {seat} seat", what=kind, seat=name_words(device.seat))


def _asked(shown: Shown) -> Iterator[Fact]:
    for label, kind in ASKED:
        value = _fitted(device_answer(shown.airframe, kind), shown.declared)
        yield shown.fact(say(label), ("pyrotechnics", kind.replace(" ", "-")), value)
    yield shown.fact(
        say("High voltage"), ("high_voltage",), _fitted(high_voltage_answer(shown.airframe), shown.declared)
    )


def _fitted(answer: NonValue | bool, declared: bool) -> Value:
    """A "no" of the type holds for a tail only where somebody has declared how that tail differs."""
    if not isinstance(answer, NonValue):
        return Value(say("FITTED"))
    if answer is not NonValue.UNKNOWN and not declared:
        return unknown(note=say("its type has none"))
    return tell(answer)


def _other_answers(shown: Shown) -> Iterator[Fact]:
    """What the record answers of further kinds, for example that a canopy cartridge is unknown."""
    listed = shown.airframe.pyrotechnics
    told = {kind.replace(" ", "-") for _, kind in ASKED}
    for name, device in listed.items() if not isinstance(listed, NonValue) else ():
        if isinstance(device, NonValue) and name not in told:
            yield shown.fact(title_of(name), ("pyrotechnics", name), device, anchored=True)


def _device(shown: Shown, name: str, device: Pyrotechnic) -> tuple[Fact, ...]:
    path: Path = ("pyrotechnics", name)
    handle, place = tell(device.handle), told_place(device.handle_place, shown.airframe)
    looks = Value(say("{what}, {place}", what=handle.text, place=place.text), _worse(handle, place))
    facts = [
        shown.fact(say("Where"), (*path, "place"), told_place(device.place, shown.airframe)),
        Fact(say("Handle: never touch"), looks, was=shown.was((*path, "handle"), (*path, "handle_place"))),
        shown.fact(say("Flies"), (*path, "exit_direction"), _flies(device), note=say("a bent mount points anywhere")),
        *where_nobody_stands(shown, name, device),
        Fact(say("Cable"), way_of(device.cable), was=shown.was((*path, "cable"))),
        shown.fact(say("State"), (*path, "state"), device.state),
    ]
    facts += [Fact(label, words, was=shown.was((*path, "do_not"))) for label, words in do_not(device.do_not)]
    return tuple(facts)


def _worse(*values: Value) -> State:
    return "unknown" if any(value.state == "unknown" for value in values) else "said"


def _flies(device: Pyrotechnic) -> Value:
    exit_ = said(device.exit_direction)
    if exit_ is None:
        return tell(device.exit_direction)
    raised, through = tell(exit_.raised), tell(exit_.through)
    names = {"way": term(exit_.towards), "what": through.text}
    if exit_.raised is NonValue.UNKNOWN:
        words = say("towards canopy and {way}, how steeply is UNKNOWN, through {what}", **names)
    else:
        words = say("{angle} towards canopy and {way}, through {what}", angle=in_full(raised), **names)
    return Value(words, _worse(raised, through))


def _voltage(shown: Shown, system: HighVoltage) -> tuple[Fact, ...]:
    path = ("high_voltage",)
    facts = [
        shown.fact(say("Stays live"), (*path, "stays_live"), system.stays_live),
        shown.fact(say("Voltage"), (*path, "voltage"), system.voltage),
        shown.fact(say("Energy stored"), (*path, "energy"), system.energy),
        Fact(say("Packs"), _packs(shown, system), was=shown.was((*path, "packs"))),
        Fact(say("Cables"), _cables(system), was=shown.was((*path, "cables"))),
        Fact(say("Other parts"), _parts(shown, system), was=shown.was((*path, "parts"))),
        _disconnect(shown, system),
    ]
    if system.vents is not None:
        facts.append(shown.fact(say("Vents"), (*path, "vents"), told_place(system.vents, shown.airframe)))
    facts.append(shown.fact(say("In water"), (*path, "in_water"), system.in_water))
    return tuple(facts)


def _packs(shown: Shown, system: HighVoltage) -> Value:
    if isinstance(system.packs, NonValue):
        return tell(system.packs)
    return several(
        (name_words(name), tell(pack) if isinstance(pack, NonValue) else _pack(shown, pack))
        for name, pack in system.packs.items()
    )


def _pack(shown: Shown, pack: Battery) -> Value:
    """Where it is, what of it stays live, what it is made of, which way its cable runs."""
    answers = [
        (say("where"), where(pack.place, shown)),
        (say("stays live"), tell(pack.stays_live)),
        (say("made of"), tell(pack.chemistry)),
        (say("voltage"), tell(pack.voltage, ("pack", "voltage"))),
        (say("cut off by"), cut_by(pack.cut_by)),
        *(((say("feeds"), Value(pack.feeds)),) if pack.feeds else ()),
    ]
    if pack.cable is not None:
        answers.append((say("cable"), way_of(pack.cable)))
    return several(answers)


def _cables(system: HighVoltage) -> Value:
    if isinstance(system.cables, NonValue):
        return tell(system.cables)
    return several((name_words(name), _cable(cable)) for name, cable in system.cables.items())


def _cable(cable: HighVoltageCable | NonValue) -> Value:
    if isinstance(cable, NonValue):
        return tell(cable)
    return several([(say("way"), way_of(cable)), (say("stays live"), tell(cable.stays_live))])


def _parts(shown: Shown, system: HighVoltage) -> Value:
    """Contactor, inverter: where it is, what of it stays live, how long it holds its charge."""
    if system.parts is None or isinstance(system.parts, NonValue):
        return tell(system.parts)
    return several((name_words(name), _part(shown, part)) for name, part in system.parts.items())


def _part(shown: Shown, part: HighVoltagePart | NonValue) -> Value:
    if isinstance(part, NonValue):
        return tell(part)
    answers = [
        (say("what"), Value(part.what)),
        (say("where"), where(part.place, shown)),
        (say("stays live"), tell(part.stays_live)),
        (say("holds its charge for"), tell(part.holds_charge, ("holds_charge",))),
    ]
    return several(answers)


def _disconnect(shown: Shown, system: HighVoltage) -> Fact:
    told = system.disconnect
    return Fact(
        say("Disconnect"),
        tell(told) if isinstance(told, NonValue) else cut_by(told),
        was=shown.was(("high_voltage", "disconnect")),
    )
