"""Rules about rockets and cartridges."""

from __future__ import annotations

from collections.abc import Iterator

from hardpoint.figures.answers import MUST_BE_ANSWERED, device_answer
from hardpoint.records.known import NonValue
from hardpoint.rules.rule import AIRFRAME, Hit, Record


@AIRFRAME.rule(
    "hazard-not-answered",
    "warning",
    "Every type answers whether a rocket parachute and a seat cartridge are fitted; silence shows as UNKNOWN.",
)
def hazard_not_answered(record: Record) -> Iterator[Hit]:
    """Pyrotechnics that neither list a kind nor say that it is not fitted."""
    for kind in MUST_BE_ANSWERED:
        if device_answer(record.airframe, kind) is NonValue.UNKNOWN:
            slug = kind.replace(" ", "-")
            yield Hit(
                ("pyrotechnics", slug),
                "",
                f"whether a {kind} is fitted",
                f"{slug}: not fitted",
                message=(
                    f"nobody has said whether a {kind} is fitted, so crews read UNKNOWN; "
                    f'record the device, or write "{slug}: not fitted" once somebody has looked'
                ),
            )
