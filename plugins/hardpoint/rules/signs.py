"""Rules about what a type is recognised by."""

from __future__ import annotations

import re
from collections.abc import Iterator

from hardpoint.findings import Path
from hardpoint.records.known import entries
from hardpoint.records.sight import Sign
from hardpoint.rules.rule import AIRFRAME, Hit, Record


@AIRFRAME.rule(
    "too-few-signs",
    "warning",
    "A type is confirmed by two signs, one of them a shape: it records at least two upright and one shape.",
)
def too_few_signs(record: Record) -> Iterator[Hit]:
    """Types that cannot be confirmed by two signs."""
    signs = entries(record.airframe.signs)
    upright = [sign for sign in signs.values() if "upright" in sign.visible]
    if len(upright) < 2 or not any(sign.of == "shape" for sign in upright):
        yield Hit(
            ("signs",),
            f"{len(upright)} signs that show upright",
            "at least two, one of them of: shape",
            '{see: "low wing, cropped tips", of: shape, visible: [upright]}',
            message=(
                f"{_how_many(upright)}; a type is confirmed by two signs that show upright, one of them of: shape"
            ),
        )


def _how_many(signs: list[Sign]) -> str:
    count = f"{len(signs)} recorded with visible: upright"
    return count if len(signs) < 2 else f"{count}, none of them of: shape"


@AIRFRAME.rule(
    "sign-twice", "warning", "Two signs are two different things to see: one written twice confirms nothing."
)
def sign_twice(record: Record) -> Iterator[Hit]:
    """Signs of the same words."""
    seen: dict[str, str] = {}
    for name, sign in entries(record.airframe.signs).items():
        words = " ".join(re.findall(r"\w+", sign.see.lower()))
        if words in seen:
            related = ((("signs", seen[words], "see"), "first here"),)
            yield Hit(("signs", name, "see"), sign.see, f"something else than {seen[words]}", related=related)
        seen.setdefault(words, name)


@AIRFRAME.rule(
    "no-sign-inverted", "warning", "One sign at least can be seen when the airframe lies inverted, as many wrecks do."
)
def no_sign_inverted(record: Record) -> Iterator[Hit]:
    """Types with signs, none of them visible inverted."""
    signs = entries(record.airframe.signs)
    if signs and not any("inverted" in sign.visible for sign in signs.values()):
        wanted = "a sign with inverted under visible"
        yield Hit(("signs",), "", wanted, '{see: "two wheels on one bow", of: shape, visible: [inverted]}')


@AIRFRAME.rule(
    "name-shared", "warning", "A name that people call out leads to one type: no other type of the fleet answers to it."
)
def name_shared(record: Record) -> Iterator[Hit]:
    """Names and other names that an earlier type of the fleet has too."""
    ours: list[tuple[Path, str]] = [(("name",), record.airframe.name)]
    ours += [(("also_called", index), name) for index, name in enumerate(record.airframe.also_called)]
    for other_id, other in record.fleet.types.items():
        theirs = {name.casefold() for name in (other.airframe.name, *other.airframe.also_called)}
        for path, name in ours if record.id in record.fleet.types and other_id < record.id else ():
            if name.casefold() in theirs:
                yield Hit(path, name, f"a name of its own: {other_id} is called that too")
