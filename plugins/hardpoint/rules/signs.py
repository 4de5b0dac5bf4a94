"""Rules about what a type is recognised by."""

from __future__ import annotations

from collections.abc import Iterator

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
