"""How a model says what is wrong: rule, what was read, what is expected, an example, and the whole sentence."""

from __future__ import annotations

from typing import Any, Literal

from pydantic_core import PydanticCustomError

from hardpoint.findings import got_needs

RecordRule = Literal[
    "ambiguous-unit", "bad-event-number", "bad-id", "bad-name", "bad-photo-name", "bad-registration", "bare-gallon",
    "difference-in-a-list", "difference-no-place", "difference-outdated", "difference-says-nothing",
    "difference-twice", "gauge-or-absolute", "governed-pair", "governs-not-stated", "mass-for-force",
    "negative-quantity", "non-value-not-admitted", "not-a-count", "not-a-date", "not-a-factor", "not-a-listing",
    "not-a-position", "not-a-time", "not-a-travel", "not-an-answer", "not-text", "place-says-nothing",
    "stretch-backwards", "too-long", "turn-without-observer", "undeclared-differences",
    "unknown-way", "unreadable-quantity", "way-not-of-the-airframe", "wrong-dimension",
]  # fmt: skip
"""Every rule by which the models themselves refuse a value; those of quantities come from ``hardpoint.units``."""

_READ_KEPT = 80


def problem(
    rule: RecordRule, *, read: str, expected: str, example: str = "", message: str = "", at: str = ""
) -> PydanticCustomError:
    """An error that pydantic carries to its path; ``at`` names the key below that path which is really meant."""
    context: dict[str, Any] = {
        "read": read if len(read) <= _READ_KEPT else f"{read[: _READ_KEPT - 3]}...",
        "expected": expected,
        "example": example,
        "message": message or got_needs(read, expected, example),
        "at": at,
    }
    return PydanticCustomError(rule, "{message}", context)
