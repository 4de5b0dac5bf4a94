"""Rules about the author's words: what a reader cannot follow, what promises too much, what is guessed."""

from __future__ import annotations

import re
from collections.abc import Iterator

from hardpoint.findings import Path
from hardpoint.records.ways import TURNS
from hardpoint.rules.rule import AIRFRAME, Hit, Record, Subject, everywhere

_LOG = ("changes", "who_can_answer", "differs")
"""Where words are about the record, or are told again in the whole record of the aircraft."""


def _told(subject: Subject) -> Iterator[tuple[Path, str]]:
    yield from ((path, words) for path, words in subject.words if path[0] not in _LOG)


_ELSEWHERE = re.compile(
    r"(?i)\b(?:same as (?:above|before|below|usual|the other)|as (?:above|below|usual|before)|see (?:above|below|page)"
    r"|ditto|dto|idem|likewise)\b"
)


@everywhere(
    "refers-elsewhere",
    "warning",
    "Words say what there is, not `as above` or `as usual`: a reader may have nothing but this line.",
)
def refers_elsewhere(subject: Subject) -> Iterator[Hit]:
    """Words that send the reader somewhere else."""
    for path, words in _told(subject):
        found = _ELSEWHERE.search(words)
        if found:
            yield Hit(path, words, f'the thing itself in words, not "{found[0]}"')


_GUESS = re.compile(
    r"(?i)\b(?:probably|presumably|perhaps|maybe|supposedly|i think|i believe|not sure|to be (?:confirmed|checked)"
    r"|tbc|tbd|should be (?:off|open|closed|empty|dead|free|clear))\b|\?\s*$|\?\?"
)


@everywhere(
    "guess-in-words", "warning", "Nothing is guessed: what nobody knows is `unknown`, and who can answer is named."
)
def guess_in_words(subject: Subject) -> Iterator[Hit]:
    """Words of somebody who does not know."""
    for path, words in _told(subject):
        found = _GUESS.search(words)
        if found:
            yield Hit(path, words, f'what is known, or unknown; not "{found[0]}"', "unknown")


_ASSURES = re.compile(
    r"(?i)\b(?:(?:is|are|it's|now|quite|completely|perfectly|entirely) (?:safe|harmless)|safe to \w+"
    r"|no (?:danger|risk)|(?:cannot|can't|will not|won't) (?:fire|explode|burst|burn|ignite|restart|go off))\b"
)
_CONDITION = re.compile(r"(?i)\b(?:until|unless|whether|if|once|when|not|nothing|nobody|never)\b[^,;.]*$")


@everywhere(
    "assurance-in-words",
    "warning",
    "No record promises that something is safe or cannot fire: after an accident nobody knows that.",
)
def assurance_in_words(subject: Subject) -> Iterator[Hit]:
    """Words that promise; `until it is reported safe` promises nothing."""
    for path, words in _told(subject):
        found = _ASSURES.search(words)
        if found and not _CONDITION.search(words[: found.start()]):
            yield Hit(path, words, f'what was seen, and by whom; not "{found[0]}"')


_GRAVITY = re.compile(
    r"(?i)(?<!nose )(?<!tail )(?<!side )(?<!upside )(?<!run )(?<!runs )(?<!shut )(?<!hangs )"
    r"\b(?:upwards?|downwards?|up|down)\b"
)
_FOR_HANDS = ("what", "until", "success", "feel", "panel", "looks", "label", "guard")
_STEPS_AND_HANDLES = ("exits", "controls", "canopies", "seats", "bottles")


@AIRFRAME.rule(
    "gravity-in-words",
    "warning",
    "Words for hands say towards floor or towards canopy, not up or down: wrecks lie inverted.",
)
def gravity_in_words(record: Record) -> Iterator[Hit]:
    """Up and down in the words of steps, handles and places; what a label says is a quotation."""
    for path, words in record.words:
        found = _GRAVITY.search(words) if path[0] in _STEPS_AND_HANDLES and path[-1] in _FOR_HANDS else None
        if found and path[-1] != "label":
            meant = "towards floor" if "down" in found[0].lower() else "towards canopy"
            yield Hit(path, words, f'a direction of the airframe, not "{found[0]}"', meant)


_TURNS = re.compile(r"(?i)\b(?:anti|counter)?-?clockwise\b")
_EYE = re.compile(r"(?i)facing|seen|pilot|looking|canopy side|from (?:the )?(?:front|outside|inside)")


@AIRFRAME.rule(
    "turn-in-words",
    "warning",
    "Words that say clockwise say from where it is seen; better, a step says it with seen_from.",
)
def turn_in_words(record: Record) -> Iterator[Hit]:
    """Turns in free words without an observer."""
    for path, words in record.words:
        found = _TURNS.search(words)
        if found and words.lower() not in TURNS and path[-1] != "label" and not _EYE.search(words):
            yield Hit(path, words, f'from where "{found[0]}" is seen', f"{found[0]} (facing it)")


@AIRFRAME.rule(
    "do-not-twice",
    "warning",
    "Words under do_not do not begin with `do not`: pages print that before them, and the two together say: do it.",
)
def do_not_twice(record: Record) -> Iterator[Hit]:
    """Prohibitions that forbid twice."""
    for path, words in record.words:
        found = re.match(r"(?i)(?:do not|don't|never|not to|no) ", words) if path[-1] == "do_not" else None
        if found:
            rest = words[found.end() :]
            yield Hit(path, words, f'the words behind "Do NOT", without "{found[0].strip()}"', rest)
