"""How a model says what is wrong: rule, what was read, what is expected, an example, and the whole sentence."""

from __future__ import annotations

from typing import Any

from pydantic_core import PydanticCustomError


def sentence(read: str, expected: str, example: str, *, remark: str = "") -> str:
    """The form that every finding has: ``got "12 m", needs a mass, for example "12 kg"``."""
    got = f'got "{read}"' if read else "got nothing"
    like = f', for example "{example}"' if example else ""
    return f"{got}, needs {expected}{like}{remark}"


def problem(
    rule: str, *, read: str, expected: str, example: str = "", message: str = "", at: str = ""
) -> PydanticCustomError:
    """An error that pydantic carries to its path; ``at`` names the key below that path which is really meant."""
    context: dict[str, Any] = {
        "read": read,
        "expected": expected,
        "example": example,
        "message": message or sentence(read, expected, example),
        "at": at,
    }
    return PydanticCustomError(rule, "{message}", context)
