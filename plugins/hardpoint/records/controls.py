"""Shutdown controls: where, shaped how, which way is off, what lies beyond it, whether one suffices."""

from __future__ import annotations

from typing import Literal, Self

from pydantic import model_validator

from hardpoint.records.base import Part
from hardpoint.records.known import Known, Stated
from hardpoint.records.places import Place
from hardpoint.records.quantities import HowFar
from hardpoint.records.texts import Id, Words
from hardpoint.records.ways import SeenFrom, Step, Way, turn_without_observer

Function = Literal[
    "magneto",
    "ignition",
    "master",
    "battery",
    "generator",
    "fuel",
    "mixture",
    "throttle",
    "HP cock",
    "LP cock",
    "high-voltage disconnect",
    "smoke",
    "oxygen",
    "water ballast",
    "hydraulics",
    "tow release",
    "airbrakes",
    "parking brake",
]
STOPS_ENGINE: tuple[Function, ...] = ("magneto", "ignition", "fuel", "mixture", "throttle", "HP cock", "LP cock")
ControlKind = Literal[
    "toggle",
    "rocker",
    "key",
    "rotary switch",
    "rotary selector",
    "lever",
    "cock",
    "knob",
    "push-pull",
    "button",
    "valve",
    "loop",
    "tap",
]
Alone = Literal["suffices", "all needed"]


class Control(Part):
    """One control. No key is called off, on, yes or no: they would not survive other programs."""

    function: Function
    """What it shuts down or works."""
    place: Stated[Place]
    """Where it is."""
    kind: Stated[ControlKind]
    """What the hand finds."""
    looks: Stated[Words]
    """Shape, size, colour: "red ball, 30 mm"."""
    feel: Stated[Words] | None = None
    """What tells it from its neighbours without light."""
    guard: Known[Words]
    """What has to be lifted or turned first; "none" and not fitted are answers."""
    off_is: Known[Way]
    """Which way is off, in directions of the airframe."""
    works_by: Known[Way] | None = None
    """For a control that dumps or releases rather than shuts: which way it is moved."""
    seen_from: SeenFrom | None = None
    """From where a turn is seen; needed with clockwise and anticlockwise."""
    by: Stated[HowFar] | None = None
    """How far it moves."""
    steps: Stated[tuple[Step, ...]] = ()
    """Where one movement does not tell it: lift the guard, then turn."""
    beyond_off: Known[Words]
    """What lies beyond off; "nothing" is an answer."""
    alone: Known[Alone]
    """Does this control suffice by itself, or are all of its function needed?"""
    repeats: Id | None = None
    """The control of which this is the duplicate at another seat."""
    success: Stated[Words]
    """What is seen, heard or felt when it has worked."""
    stays_live: Stated[Words] | None = None
    """What it does not shut down."""

    @model_validator(mode="after")
    def _observer(self) -> Self:
        turn_without_observer(self.off_is, self.seen_from, "off_is")
        turn_without_observer(self.works_by, self.seen_from, "works_by")
        return self
