"""Which type is it? Features that can be told from afar, and the question that splits the candidates best.

Signs are an author's free words and cannot be compared across records, so the features here are read from the record
itself: outline, engine, seats, gear. A record that does not tell a feature stays a candidate under every answer to it:
what nobody recorded is not absent. The key never ends with one name forced on somebody: whoever remains is shown.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass

from hardpoint.records.airframe import Airframe
from hardpoint.records.known import NonValue, entries, said
from hardpoint.records.outline import Profile, Surface
from hardpoint.records.ways import Attitude
from hardpoint.words import mark

Answers = Mapping[str, str]
"""Feature to answer; a feature that the record does not tell is left out."""


@dataclass(frozen=True)
class Question:
    """A feature as it is asked. ``answers``: id to words; ``visible``: attitudes in which it can be seen."""

    id: str
    asks: str
    answers: Mapping[str, str]
    visible: tuple[Attitude, ...]


_ANY: tuple[Attitude, ...] = ("upright", "inverted", "left side down", "right side down", "nose down")
QUESTIONS: tuple[Question, ...] = (
    Question(
        "wings",
        mark("Where is the wing?"),
        {
            "two": mark("two wings, one above the other"),
            "high": mark("on the canopy side of the fuselage"),
            "mid": mark("half-way up the fuselage"),
            "low": mark("on the floor side of the fuselage"),
            "rotor": mark("no wing: a rotor"),
        },
        _ANY,
    ),
    Question(
        "power",
        mark("Where is the propeller?"),
        {
            "nose": mark("at the nose"),
            "behind": mark("behind or above the cabin"),
            "jet": mark("none: an intake or a jet pipe"),
            "none": mark("none: no engine is seen"),
        },
        _ANY,
    ),
    Question(
        "tail",
        mark("Where is the tailplane?"),
        {"top": mark("on top of the fin, or high on it"), "fuselage": mark("on the fuselage")},
        ("upright", "left side down", "right side down", "nose down"),
    ),
    Question(
        "gear",
        mark("Where is the third wheel?"),
        {
            "nose": mark("under the nose"),
            "tail": mark("under the tail"),
            "one": mark("there is one main wheel only"),
        },
        ("upright", "inverted", "left side down", "right side down"),
    ),
    Question(
        "braces",
        mark("Are there struts or wires at the wing?"),
        {"struts": mark("struts or wires"), "clean": mark("neither")},
        _ANY,
    ),
    Question(
        "heads",
        mark("How many seats are there?"),
        {"1": mark("one"), "2": mark("two"), "more": mark("more than two")},
        ("upright", "left side down", "right side down"),
    ),
)


def features(airframe: Airframe) -> dict[str, str]:
    """What the record tells of each question; a question that it does not answer is left out."""
    return {question.id: answer for question in QUESTIONS if (answer := _READ[question.id](airframe)) is not None}


def split(candidates: Mapping[str, Answers], question: Question) -> dict[str, tuple[str, ...]]:
    """The candidates behind each answer that somebody gives; who does not tell stands behind every one."""
    given = [answer for answer in question.answers if any(c.get(question.id) == answer for c in candidates.values())]
    return {
        answer: tuple(name for name, told in candidates.items() if told.get(question.id, answer) == answer)
        for answer in given
    }


def surprise(groups: Sequence[int]) -> float:
    """How much an answer tells, in bits: the entropy of its groups by their sizes.

    Equation:
        H = -sum(p_i log2 p_i), p_i = n_i / sum(n)

    Symbols:
        n_i: candidates behind answer i; one that does not tell counts behind each
        H: entropy, bits

    Source: common practice

    Range: sizes of 0 or more, not all 0, otherwise ValueError.

    Example: four candidates, two behind either answer.

        >>> surprise([2, 2])
        1.0
    """
    total = sum(groups)
    if total <= 0 or min(groups) < 0:
        raise ValueError("groups are 0 or more, and not all 0")
    return -sum(size / total * math.log2(size / total) for size in groups if size)


def best_question(candidates: Mapping[str, Answers], attitude: Attitude, asked: Sequence[str] = ()) -> Question | None:
    """The question that leaves fewest candidates on average, then the one that tells most; None where none splits them.

    Each group is met as often as it has candidates: the average left is sum(n_i^2) / sum(n_i).
    """
    rated = []
    for at, question in enumerate(QUESTIONS):
        if question.id in asked or attitude not in question.visible:
            continue
        sizes = [len(group) for group in split(candidates, question).values()]
        if len(sizes) > 1 and max(sizes) < len(candidates):
            left = sum(size * size for size in sizes) / sum(sizes)
            rated.append((left, -surprise(sizes), at, question))
    return min(rated, key=lambda one: one[:3])[3] if rated else None


# --- Read from the record ------------------------------------------------------------------------------------------


def _profile(airframe: Airframe) -> Profile | None:
    return said(airframe.profile)


def _wings(airframe: Airframe) -> str | None:
    profile = _profile(airframe)
    if profile is None:
        return None
    if profile.rotors or said(airframe.rotor) is not None:
        return "rotor"
    wings = [surface for surface in profile.surfaces.values() if surface.kind == "wing"]
    levels = [_level(wing) for wing in wings]
    if not wings or None in levels:
        return None
    heights = [level for level in levels if level is not None]
    if len(wings) > 1 and max(heights) - min(heights) > _tall(profile) * 0.6:
        return "two"
    share = (heights[0] - _floor(profile, wings[0])) / _tall(profile)
    return "low" if share < 0.33 else "mid" if share < 0.67 else "high"


def _level(surface: Surface) -> float | None:
    """The waterline of its root."""
    return None if surface.wl.low is None else float(surface.wl.low)


def _floor(profile: Profile, wing: Surface) -> float:
    fs = float(wing.root.low if wing.root.low is not None else 0)
    return float(min(profile.sections, key=lambda section: abs(float(section.fs) - fs)).floor)


def _tall(profile: Profile) -> float:
    return max(float(section.top - section.floor) for section in profile.sections)


def _power(airframe: Airframe) -> str | None:
    engine, propeller = airframe.engine, airframe.propeller
    if engine is NonValue.UNKNOWN or propeller is NonValue.UNKNOWN:
        return None
    turned = said(propeller)
    if turned is not None:
        drives = turned.drives
        return None if isinstance(drives, NonValue) else "nose" if drives == "tractor" else "behind"
    return "none" if engine is NonValue.NOT_FITTED else "jet"


def _tail(airframe: Airframe) -> str | None:
    profile = _profile(airframe)
    surfaces = list(profile.surfaces.values()) if profile else []
    tails = [surface for surface in surfaces if surface.kind == "tailplane"]
    fins = [surface for surface in surfaces if surface.kind == "fin"]
    if not tails or not fins or _level(tails[0]) is None or fins[0].wl.low is None or fins[0].wl.high is None:
        return None
    low, high = float(fins[0].wl.low), float(fins[0].wl.high)
    share = ((_level(tails[0]) or 0.0) - low) / (high - low) if high > low else 0.0
    return "top" if share > 0.4 else "fuselage"


def _gear(airframe: Airframe) -> str | None:
    profile = _profile(airframe)
    wheels = list(profile.gear.values()) if profile else []
    middle = [float(wheel.fs) for wheel in wheels if wheel.bl == 0]
    mains = [float(wheel.fs) for wheel in wheels if wheel.bl != 0]
    if not wheels:
        return None
    if not mains:
        return "one"
    if not middle:
        return None
    return "nose" if middle[0] < mains[0] else "tail"


def _braces(airframe: Airframe) -> str | None:
    profile = _profile(airframe)
    if profile is None:
        return None
    return "struts" if any(surface.kind in ("strut", "wire") for surface in profile.surfaces.values()) else "clean"


def _heads(airframe: Airframe) -> str | None:
    count = len(airframe.seats)
    return str(count) if count in (1, 2) else "more" if count else None


_READ: Mapping[str, Callable[[Airframe], str | None]] = {
    "wings": _wings,
    "power": _power,
    "tail": _tail,
    "gear": _gear,
    "braces": _braces,
    "heads": _heads,
}


def two_signs(airframe: Airframe, attitude: Attitude) -> Iterator[str]:
    """Two signs that can be seen in this attitude, a shape first; fewer where the record has fewer."""
    seen = [sign for sign in entries(airframe.signs).values() if attitude in sign.visible]
    shapes = [sign.see for sign in seen if sign.of == "shape"]
    others = [sign.see for sign in seen if sign.of not in ("shape", "sound")]
    yield from [*shapes[:1], *others[:1], *shapes[1:]][:2]
