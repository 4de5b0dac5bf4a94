"""The hit of a name that does not exist, with the nearest one that does."""

from __future__ import annotations

from collections.abc import Iterable

from hardpoint.findings import Path
from hardpoint.nearest import did_you_mean
from hardpoint.rules.rule import Hit


def near_miss(path: Path, kind: str, read: str, known: Iterable[str]) -> Hit:
    """``there is no seat "fornt" here; did you mean "front"?``"""
    names = list(known)
    guess = did_you_mean(read, names)
    listed = ", ".join(names[:8]) + (", ..." if len(names) > 8 else "") if names else "none"
    hint = f'did you mean "{guess}"?' if guess else f"known: {listed}"
    return Hit(path, read, f"the name of a {kind}", guess, f'there is no {kind} "{read}" here; {hint}')
