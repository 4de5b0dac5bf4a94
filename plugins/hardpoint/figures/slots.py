"""What an entry of a line-up says of its slot in free words, as far as it can be read."""

from __future__ import annotations

import re

from hardpoint.records.event import Entry
from hardpoint.records.known import NonValue, said

_NOT = re.compile(r"(?i)\s*(?:no|not|none|never)\b")


def leads_over_water(entry: Entry) -> bool | NonValue:
    """Whether the slot leads over water: False only where its words begin with a "not"; UNKNOWN where nobody says."""
    if isinstance(entry.over_water, NonValue) and entry.over_water is not NonValue.UNKNOWN:
        return False
    words = said(entry.over_water)
    return NonValue.UNKNOWN if words is None else not _NOT.match(words)
