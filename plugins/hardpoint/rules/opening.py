"""Rules about the steps by which something is opened, undone or shut down."""

from __future__ import annotations

import re
from collections.abc import Iterator

from hardpoint.findings import Path
from hardpoint.records.known import NonValue, entries, said
from hardpoint.records.walk import values_of
from hardpoint.records.ways import TURNS, Step
from hardpoint.rules.rule import AIRFRAME, Hit, Record

_MOVES = ("turn", "slide", "swing", "flip", "push", "pull")
_ANOTHER = re.compile(
    r"(?i)\b(?:and|then) "
    r"(press|push|pull|turn|slide|lift|lower|swing|squeeze|flip|unclip|undo|release|open|cut)\b"
)


@AIRFRAME.rule(
    "step-without-way",
    "warning",
    "A step that turns, slides, swings, flips, pushes or pulls says which way, if need be unknown.",
)
def step_without_way(record: Record) -> Iterator[Hit]:
    """Moving steps without a way."""
    for path, part in record.parts:
        if isinstance(part, Step) and part.do in _MOVES and part.way is None:
            wanted = "the key way: which way it moves, in directions of the airframe"
            yield Hit(path, f"{part.do} {part.what}", wanted, "way: aft")


@AIRFRAME.rule(
    "two-actions-in-a-step", "warning", "A step is one action: `press and turn` are two lines, each with its own way."
)
def two_actions_in_a_step(record: Record) -> Iterator[Hit]:
    """Steps whose words hold a second action; what stands in brackets is another way to do the first."""
    for path, part in record.parts:
        for key in ("what", "until") if isinstance(part, Step) else ():
            words = str(getattr(part, key) or "")
            found = _ANOTHER.search(re.sub(r"\([^)]*\)", "", words))
            if found:
                wanted = f"one action; the other gets a step of its own: do: {found[1].lower()}"
                yield Hit((*path, key), words, wanted)


@AIRFRAME.rule(
    "lifts-on-the-hinge",
    "warning",
    "The edge of a canopy that is lifted is not the one that it is hinged on.",
)
def lifts_on_the_hinge(record: Record) -> Iterator[Hit]:
    """Steps that lift or push the hinged edge."""
    canopies = entries(record.airframe.canopies)
    for name, exit_ in entries(record.airframe.exits).items():
        side = canopies[exit_.opens].hinges if exit_.opens in canopies else None
        if side not in ("left", "right") or exit_.way_in in ("jettison", "hinge release"):
            continue
        for index, step in enumerate(said(exit_.steps) or ()):
            if step.do in ("lift", "push", "swing", "open") and re.search(rf"\b{side} edge\b", step.what):
                other = "right" if side == "left" else "left"
                wanted = f"the {other} edge: {exit_.opens} is hinged on the {side}"
                related = ((("canopies", exit_.opens, "hinges"), str(side)),)
                yield Hit(("exits", name, "steps", index, "what"), step.what, wanted, related=related)


@AIRFRAME.rule(
    "label-contradicts-steps",
    "warning",
    "What the label beside a handle says and the way of its steps are not opposite.",
)
def label_contradicts_steps(record: Record) -> Iterator[Hit]:
    """Labels that name a way of which the steps know only the opposite."""
    for name, exit_ in entries(record.airframe.exits).items():
        label, ways = said(exit_.label) or "", " ".join(str(step.way) for step in said(exit_.steps) or ())
        for one, other in (("aft", "forward"), ("inboard", "outboard"), ("clockwise", "anticlockwise")):
            for said_way, done in ((one, other), (other, one)):
                if _has(label, said_way) and not _has(label, done) and _has(ways, done) and not _has(ways, said_way):
                    yield Hit(("exits", name, "label"), label, f"the way of the steps ({done}), or other steps")


def _has(words: str, way: str) -> bool:
    return re.search(rf"(?i)\b{way}\b", words) is not None


@AIRFRAME.rule(
    "holder-not-freed",
    "warning",
    "Where a canopy comes off, its steps or needs name what still holds it: strut, stay or lanyard.",
)
def holder_not_freed(record: Record) -> Iterator[Hit]:
    """Jettison and hinge release that say nothing of a strut or lanyard of their canopy."""
    canopies = entries(record.airframe.canopies)
    for name, exit_ in entries(record.airframe.exits).items():
        canopy = canopies.get(exit_.opens) if exit_.way_in in ("jettison", "hinge release") else None
        if canopy is None or isinstance(exit_.steps, NonValue):
            continue
        told = " ".join(text for _, text in values_of(exit_) if isinstance(text, str)).lower()
        for id_, holder in entries(canopy.held_by).items():
            if not any(noun in told for noun in _nouns(id_, holder.what)):
                path: Path = ("canopies", exit_.opens, "held_by", id_)
                wanted = f"a step that frees it, or what is needed: {holder.what} still holds {exit_.opens}"
                yield Hit(("exits", name, "steps"), "", wanted, related=((path, holder.what),))


def _nouns(id_: str, what: str) -> set[str]:
    """What a holder is called: the last word of its name, and the parts of its id."""
    last = re.split(r"[,;(]", what.lower())[0].split()[-1:]
    return {word for word in (*last, *id_.split("-")) if len(word) > 3}


@AIRFRAME.rule(
    "turn-seen-by-nobody",
    "warning",
    "A turn at an exit that is worked from outside is seen by who stands there, not by the pilot.",
)
def turn_seen_by_nobody(record: Record) -> Iterator[Hit]:
    """Turns of outside exits that are told as the pilot sees them."""
    for name, exit_ in entries(record.airframe.exits).items():
        for index, step in enumerate(said(exit_.steps) or ()) if exit_.from_ == "outside" else ():
            if step.seen_from == "pilot" and step.way in TURNS:
                other = "anticlockwise" if step.way == "clockwise" else "clockwise"
                wanted = f"facing it; what is {step.way} to the pilot is often {other} from outside"
                yield Hit(("exits", name, "steps", index, "seen_from"), "pilot", wanted, "facing it")
