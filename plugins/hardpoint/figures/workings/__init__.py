"""What is worked out of records, one topic a module: from what an author wrote to a figure, or to why there is none."""

from __future__ import annotations

from collections.abc import Iterator

from hardpoint.figures.worked import Case, Topic, Worked
from hardpoint.figures.workings import (
    air,
    bottles,
    category,
    currency,
    exit_sectors,
    fuel,
    hook,
    landmarks,
    masses,
    seats,
    slings,
    tools,
    windows,
)

TOPICS: tuple[Topic, ...] = (
    masses.TOPIC,
    slings.TOPIC,
    hook.TOPIC,
    bottles.TOPIC,
    air.TOPIC,
    fuel.TOPIC,
    category.TOPIC,
    windows.TOPIC,
    tools.TOPIC,
    exit_sectors.TOPIC,
    seats.TOPIC,
    landmarks.TOPIC,
    currency.TOPIC,
)
"""In the order of the figures page."""


def worked_out(case: Case) -> Iterator[tuple[Topic, tuple[Worked, ...]]]:
    """Every figure of a case by topic. A topic that has nothing to say about it is left out."""
    for topic in TOPICS:
        if worked := tuple(topic.work(case)):
            yield topic, worked
