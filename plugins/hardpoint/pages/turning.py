"""Crew page, stay clear: what turns, sucks, blows and stays hot."""

from __future__ import annotations

from collections.abc import Iterator

from hardpoint.pages.shown import Shown
from hardpoint.pages.telling import several, tell, told_place
from hardpoint.pages.view import Fact
from hardpoint.records.known import NonValue
from hardpoint.records.powerplant import Engine, Propeller, TurningRotor
from hardpoint.words import say


def turning_parts(shown: Shown) -> tuple[Fact, ...]:
    """Engine, propeller and rotor: what each is and where. How far to keep away stands under the directions."""
    return tuple(_parts(shown))


def _parts(shown: Shown) -> Iterator[Fact]:
    airframe = shown.airframe
    yield _engine(shown, airframe.engine)
    yield _propeller(shown, airframe.propeller)
    if airframe.rotor is not None:
        yield _rotor(shown, airframe.rotor)


def _engine(shown: Shown, engine: Engine | NonValue) -> Fact:
    if isinstance(engine, NonValue):
        return shown.fact(say("Engine"), ("engine",), engine)
    answers = ((say("kind"), tell(engine.kind)), (say("where"), told_place(engine.place, shown.airframe)))
    was = shown.was(("engine", "kind"), ("engine", "place"))
    return Fact(say("Engine"), several(answers), was=was)


def _propeller(shown: Shown, propeller: Propeller | NonValue) -> Fact:
    path = ("propeller",)
    if isinstance(propeller, NonValue):
        return shown.fact(say("Propeller"), path, propeller, anchored=True)
    answers = (
        (say("kind"), tell(propeller.drives)),
        (say("blades"), tell(propeller.blades)),
        (say("made of"), tell(propeller.material)),
        (say("where"), told_place(propeller.place, shown.airframe)),
        (say("started"), tell(propeller.hand_swung)),
    )
    return shown.fact(say("Propeller"), path, several(answers), anchored=True)


def _rotor(shown: Shown, rotor: TurningRotor | NonValue) -> Fact:
    path = ("rotor",)
    if isinstance(rotor, NonValue):
        return shown.fact(say("Rotor"), path, rotor, anchored=True)
    answers = (
        (say("hub"), told_place(rotor.place, shown.airframe)),
        (say("tips come down to"), tell(rotor.tip_height, (*path, "tip_height"))),
        (say("turns after shut-down"), tell(rotor.run_down, (*path, "run_down"))),
    )
    return shown.fact(say("Rotor"), path, several(answers), anchored=True)
