"""Rules about quantities."""

from __future__ import annotations

from collections.abc import Iterator

from hardpoint.rules.rule import Hit, Subject, everywhere
from hardpoint.units import Quantity


@everywhere(
    "pair-disagrees",
    "warning",
    "Two statements of one quantity agree; where they do not, both are shown and nothing is chosen silently.",
)
def pair_disagrees(subject: Subject) -> Iterator[Hit]:
    """Pairs that disagree, with the slip that explains them."""
    for path, value in subject.values:
        if isinstance(value, Quantity) and value.status == "disagree":
            slip = f" ({value.slip})" if value.slip else ""
            governed = (
                f"; {value.governs.text} governs" if value.governs else "; say which governs, or leave both standing"
            )
            yield Hit(
                path,
                value.text,
                "two statements that agree",
                "",
                message=f'got "{value.text}", the two disagree{slip}{governed}',
            )
