"""Rules about shutdown controls."""

from __future__ import annotations

import re
from collections.abc import Iterator

from hardpoint.records.controls import Control
from hardpoint.records.known import NonValue, entries, said
from hardpoint.records.ways import TURNS, opposed
from hardpoint.rules.rule import AIRFRAME, Hit, Record


@AIRFRAME.rule(
    "off-directions-oppose",
    "warning",
    "Two controls of one function do not have opposite off directions: where they do, crews must see it.",
)
def off_directions_oppose(record: Record) -> Iterator[Hit]:
    """Pairs of one function whose off directions are opposite."""
    controls = list(entries(record.airframe.controls).items())
    for index, (name, control) in enumerate(controls):
        for other_name, other in controls[:index]:
            if control.function == other.function and _opposed(control, other):
                yield Hit(
                    ("controls", name, "off_is"),
                    str(control.off_is),
                    f'the same off direction as {other_name} ("{other.off_is}"), or a look at the aircraft',
                    "",
                    message=(
                        f'off is "{control.off_is}" here and "{other.off_is}" at {other_name}, '
                        f"both {control.function}: crews will get one of them wrong"
                    ),
                    related=((("controls", other_name, "off_is"), str(other.off_is)),),
                )


def _opposed(one: Control, other: Control) -> bool:
    same_eye = one.seen_from == other.seen_from
    return same_eye and opposed(str(one.off_is), str(other.off_is))


@AIRFRAME.rule(
    "guard-left-closed", "warning", "Where a control has a guard and steps, one of the steps deals with the guard."
)
def guard_left_closed(record: Record) -> Iterator[Hit]:
    """Steps of a guarded control that never mention its guard."""
    for name, control in entries(record.airframe.controls).items():
        guard, steps = said(control.guard) or "", said(control.steps) or ()
        if not steps or guard.lower().startswith(("none", "no ")) or not guard:
            continue
        told = " ".join(f"{step.what} {step.until} {step.using}" for step in steps).lower()
        if not any(word in told for word in re.findall(r"[a-z]{4,}", guard.lower())):
            yield Hit(("controls", name, "steps"), "", f"a step for the guard first: {guard}")


@AIRFRAME.rule(
    "steps-miss-off", "warning", "Where a control has steps, one of them goes the way that is off (or that works it)."
)
def steps_miss_off(record: Record) -> Iterator[Hit]:
    """Steps of which none moves the way of off_is or works_by."""
    for name, control in entries(record.airframe.controls).items():
        off, steps = said(control.off_is), said(control.steps) or ()
        ways = {step.way for step in steps}
        if steps and off is not None and off not in ways and control.works_by not in ways:
            wanted = f"a step with way: {off}, as off_is says"
            related = ((("controls", name, "off_is"), off),)
            yield Hit(("controls", name, "steps"), ", ".join(str(way) for way in ways if way), wanted, related=related)


_STRAIGHT = ("toggle", "rocker", "push-pull", "button")
_TURNED = ("key", "rotary switch")


@AIRFRAME.rule(
    "motion-contradicts-kind",
    "warning",
    "A toggle, rocker, button or push-pull does not turn; a key or a rotary switch does.",
)
def motion_contradicts_kind(record: Record) -> Iterator[Hit]:
    """Kinds of control against the motion that is off."""
    for name, control in entries(record.airframe.controls).items():
        off = said(control.off_is)
        turns = off is not None and (off in TURNS or off.startswith("free end"))
        pulled = off in ("out of the panel", "into the panel")
        straight_turns = control.kind in _STRAIGHT and off in TURNS
        if off and (straight_turns or (control.kind in _TURNED and not turns and not pulled)):
            wanted = "a turn, or where its free end goes" if control.kind in _TURNED else "a direction, not a turn"
            yield Hit(("controls", name, "off_is"), off, f"{wanted}: this is a {control.kind}")


@AIRFRAME.rule(
    "one-suffices-contradicted",
    "warning",
    "The magnetos of one engine agree whether one switch suffices, and `all needed` is said of more than one.",
)
def one_suffices_contradicted(record: Record) -> Iterator[Hit]:
    """Magneto and ignition controls that contradict one another under `alone`."""
    for function in ("magneto", "ignition"):
        controls = entries(record.airframe.controls).items()
        here = [(name, control) for name, control in controls if control.function == function]
        said_of = {str(control.alone) for _, control in here} & {"suffices", "all needed"}
        if len(said_of) == 2:
            first = next((name for name, control in here if control.alone == "suffices"), "")
            needed = next((name for name, control in here if control.alone == "all needed"), "")
            related = ((("controls", needed, "alone"), "all needed"),)
            wanted = f"the same answer at every {function}: {needed} says that all are needed"
            yield Hit(("controls", first, "alone"), "suffices", wanted, "all needed", related=related)
        elif said_of == {"all needed"} and len(here) == 1:
            wanted = f"suffices, or the others: this is the only {function} that is recorded"
            yield Hit(("controls", here[0][0], "alone"), "all needed", wanted)


@AIRFRAME.rule(
    "repeat-of-another-function",
    "error",
    "A control repeats another one of its own function at another seat, never itself.",
)
def repeat_of_another_function(record: Record) -> Iterator[Hit]:
    """Repeats of a control that does something else, or of itself."""
    controls = entries(record.airframe.controls)
    for name, control in controls.items():
        other = controls.get(control.repeats or "")
        if other and (other.function != control.function or control.repeats == name):
            known = ", ".join(id_ for id_, one in controls.items() if one.function == control.function and id_ != name)
            what = "not itself" if control.repeats == name else f"{control.repeats} is a {other.function} control"
            wanted = f"another {control.function} control ({what}); known: {known or 'none'}"
            yield Hit(("controls", name, "repeats"), str(control.repeats), wanted)


_STOPS = {
    "piston": ("magneto", "ignition", "fuel", "mixture"),
    "jet": ("HP cock", "LP cock", "fuel"),
    "turboprop": ("HP cock", "LP cock", "fuel", "mixture"),
    "turboshaft": ("HP cock", "LP cock", "fuel"),
    "electric": ("high-voltage disconnect", "master", "battery"),
}


@AIRFRAME.rule("engine-without-shutdown", "warning", "Among the controls is one that stops the engine.")
def engine_without_shutdown(record: Record) -> Iterator[Hit]:
    """Engines for which no control of a stopping function is recorded; a throttle only idles it."""
    engine, controls = said(record.airframe.engine), record.airframe.controls
    if engine is None or controls is NonValue.UNKNOWN:
        return
    if not isinstance(controls, NonValue) and NonValue.UNKNOWN in controls.values():
        return
    if not any(control.function in _STOPS[engine.kind] for control in entries(controls).values()):
        wanted = f"a control that stops a {engine.kind} engine: {', '.join(_STOPS[engine.kind])}"
        yield Hit(("controls",), ", ".join(entries(controls)), wanted)


@AIRFRAME.rule(
    "beyond-off-without-travel",
    "warning",
    "Where something lies beyond off, the control says how far it moves (by), or a step says until when.",
)
def beyond_off_without_travel(record: Record) -> Iterator[Hit]:
    """Controls that can be moved too far, with nothing that tells where to stop."""
    for name, control in entries(record.airframe.controls).items():
        beyond = said(control.beyond_off) or "nothing"
        told = control.by is not None or any(step.until or step.by for step in said(control.steps) or ())
        if not beyond.lower().startswith(("nothing", "none")) and not told:
            wanted = f"the key by, or a step with until: beyond off lies {beyond}"
            yield Hit(("controls", name), "", wanted, "by: 90 deg")
