"""Rules about shutdown controls."""

from __future__ import annotations

from collections.abc import Iterator

from hardpoint.records.controls import Control
from hardpoint.records.known import entries
from hardpoint.rules.rule import AIRFRAME, Hit, Record

_OPPOSITE = {
    frozenset({"towards floor", "towards canopy"}),
    frozenset({"forward", "aft"}),
    frozenset({"inboard", "outboard"}),
    frozenset({"pilot's left", "pilot's right"}),
    frozenset({"clockwise", "anticlockwise"}),
    frozenset({"out of the panel", "into the panel"}),
    frozenset({"free end forward", "free end aft"}),
    frozenset({"free end inboard", "free end outboard"}),
    frozenset({"free end towards floor", "free end towards canopy"}),
    frozenset({"free end pilot's left", "free end pilot's right"}),
}


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
    return same_eye and frozenset({str(one.off_is), str(other.off_is)}) in _OPPOSITE
