"""The pages across types by name, for whoever leads there."""

from __future__ import annotations

from hardpoint.pages.addresses import across_page
from hardpoint.words import say


def across_titles() -> tuple[tuple[str, str], ...]:
    """Title and address of each."""
    return (
        (say("Anchor points, all types"), across_page("anchor-points")),
        (say("Cutting hazards, all types"), across_page("cutting-hazards")),
        (say("Pressure bottles, all types"), across_page("pressure-bottles")),
        (say("Shutdown controls, all types"), across_page("shutdown-controls")),
        (say("Canopies and other ways in, all types"), across_page("canopies")),
    )
