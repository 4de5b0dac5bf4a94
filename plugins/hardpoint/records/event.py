"""An event: who flies on which day under which number, what was swapped, what is claimed of all of them."""

from __future__ import annotations

from typing import Annotated, Literal

from pydantic import Field

from hardpoint.records.base import Part
from hardpoint.records.known import Known, Stated
from hardpoint.records.problems import problem
from hardpoint.records.provenance import Change
from hardpoint.records.quantities import Volume
from hardpoint.records.texts import Count, Date, Id, Named, Reads, Registration, Time, Words


def _number(text: str) -> str:
    if not (1 <= len(text) <= 4 and text.isascii() and text.isalnum()):
        raise problem(
            "bad-event-number", read=text, expected="a display number of one to four letters or digits", example="7"
        )
    return text


_NUMBER_SCHEMA = {"title": "a display number", "type": "string", "examples": ["7"], "pattern": "^[A-Za-z0-9]{1,4}$"}
EventNumber = Annotated[str, Reads(_number, _NUMBER_SCHEMA, exact=True)]


class Swap(Part):
    """An aircraft that was taken out and replaced after the line-up was made."""

    was: Registration
    """The tail that was announced."""
    at: Time
    """When it was swapped."""
    date: Date
    """On which day."""
    by: Words
    """The role that decided."""
    because: Words | None = None
    """Why."""


class Report(Part):
    """What a licensed person reported of one rocket or cartridge, for one aircraft on one day."""

    state: Literal["inactive", "live"]
    """What was reported. How it was made so is not asked, and stands nowhere in this book."""
    by: Words
    """The role that reported, never a name: "armourer of the owner"."""
    licence: Words
    """The licence that this person holds for the device: nobody else's word counts."""
    date: Date
    """On which day: a report from another day does not count."""
    at: Time
    """When."""


class Entry(Part):
    """One aircraft in the line-up of a day."""

    type: Id
    """The id of the type."""
    tail: Stated[Registration]
    """The tail; "unknown" shows the type's page."""
    time: Known[Time]
    """Slot."""
    occupants: Stated[Count]
    """How many are on board."""
    fuel_planned: Known[Volume]
    """Fuel on board at the start of the slot."""
    kit: Known[tuple[Words, ...]]
    """Kit worn or carried in this slot."""
    over_water: Stated[Words] | None = None
    """Whether the slot leads over water."""
    swaps: tuple[Swap, ...] = ()
    """Swaps since the line-up was printed, the first first."""
    reported: Named[Stated[Report]] = Field(default_factory=dict)
    """What was reported for this day of rockets and cartridges, under their ids; until then each counts as live."""
    notes: Words | None = None
    """Anything else."""


class Printed(Part):
    """When the day's pack was printed: what was swapped afterwards is wrong on paper."""

    date: Date
    """On which day."""
    at: Time
    """When."""


class Day(Part):
    """One day: numbers are unique within it, not across days."""

    date: Date
    """The date."""
    printed: Known[Printed] | None = None
    """When its pack was printed, if it was."""
    entries: dict[EventNumber, Entry]
    """The line-up under the display numbers."""


class Claim(Part):
    """Something said of the whole line-up; it is checked, not inherited."""

    says: Words
    """The claim in words: "one harness for all"."""
    every: Words
    """The path it speaks of, * for any id: "seats.*.ties.*.kind"."""
    among: tuple[Words, ...] = ()
    """Which of the things under that path the claim is about, by what stands there: "rotary buckle", "cam lock". What
    says none of these, a helmet lead, is another thing and breaks nothing. Left out: all of them."""
    expects: Words
    """The value that the claim expects there: "lift-latch buckle"."""
    said_by: Words | None = None
    """Who claims it."""


class Event(Part):
    """A record under fleet/events."""

    name: Words
    """The event's name."""
    place: Words
    """Where."""
    days: Named[Day]
    """The days."""
    claims: Named[Claim] = Field(default_factory=dict)
    """Claims about all of them."""
    changes: tuple[Change, ...] = ()
    """Change log of the line-up."""
    notes: Words | None = None
    """Anything else."""
