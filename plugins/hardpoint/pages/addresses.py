"""Where every page and every anchor is. The only place that knows addresses; the addresses are fixed for others."""

from __future__ import annotations

import posixpath

from hardpoint.findings import Path

HOME = "index.html"
COMPARE = "compare.html"
GAPS = "gaps.html"
STATION = "station.html"
FLEET_DATA = "fleet.json"
DATA_SCHEMA = "fleet/schema"
READING = "reading-a-page.html"
CAUTIONS = "cautions.html"
NOT_IN_THE_BOOK = "not-in-the-book.html"
DRILL = "drill.html"
UNLIKE = "differences.html"
RECOGNISE = "recognise.html"
FINDER = "assets/hardpoint/finder-index.js"

_ANCHOR_OF_SECTION = {
    "controls": "control",
    "exits": "exit",
    "canopies": "canopy",
    "seats": "seat",
    "zones": "zone",
    "tanks": "tank",
    "batteries": "battery",
    "bottles": "bottle",
    "pyrotechnics": "device",
    "load_points": "load-point",
    "loaded_parts": "loaded-part",
    "hazards": "hazard",
    "lifts": "lift",
    "signs": "sign",
    "landmarks": "landmark",
}


def type_page(type_id: str) -> str:
    """The crew page of a type."""
    return f"types/{type_id}.html"


def structure_page(type_id: str) -> str:
    """Side view and load points of a type."""
    return f"types/{type_id}/structure.html"


def lift_page(type_id: str) -> str:
    """One sheet for the crane."""
    return f"types/{type_id}/lift.html"


def figures_page(type_id: str) -> str:
    """Every quantity of a type."""
    return f"types/{type_id}/figures.html"


def unlike_of(type_id: str) -> str:
    """What is unlike between a type and others."""
    return f"types/{type_id}/differences.html"


def method_page(topic: str) -> str:
    """How figures of a topic are worked out: a page of docs."""
    return f"methods/{topic}.html"


def event_figures_page(event_id: str) -> str:
    """What the slots of an event change in the figures."""
    return f"events/{event_id}/figures.html"


def tail_page(registration: str) -> str:
    """The crew page of one aircraft."""
    return f"tails/{registration}.html"


def event_page(event_id: str) -> str:
    """The line-up of an event."""
    return f"events/{event_id}.html"


def brief_page(event_id: str) -> str:
    """The walk-round talks of an event, one a day."""
    return f"events/{event_id}/brief.html"


def brief_day_page(event_id: str, day_id: str) -> str:
    """The walk-round talk of one day."""
    return f"events/{event_id}/brief-{day_id}.html"


def drill_page(type_id: str) -> str:
    """Questions for training on one type."""
    return f"types/{type_id}/drill.html"


def two_at_once_page(event_id: str) -> str:
    """The key facts of an event's aircraft side by side."""
    return f"events/{event_id}/two-at-once.html"


def gaps_of(home: str) -> str:
    """What is unanswered of the record whose page is ``home``: ``types/x.html`` -> ``types/x/gaps.html``."""
    return f"{home.removesuffix('.html')}/gaps.html"


def across_page(topic: str) -> str:
    """One topic over all types: ``anchor-points``, ``canopies`` ..."""
    return f"across/{topic}.html"


def across_row(record_id: str, path: Path) -> str:
    """The anchor of a thing's row on a page across types: ``QQ-BOD-control-magneto-left``."""
    return f"{record_id}-{anchor(path)}"


def record_data(kind: str, record_id: str) -> str:
    """The data file of one record."""
    return f"fleet/{kind}s/{record_id}.json"


def photo(digest: str) -> str:
    """A published photo in one of its sizes, named after its own bytes."""
    return f"assets/photos/{digest[:20]}.jpg"


def anchor(path: Path) -> str:
    """``("controls", "magneto-left", ...)`` -> ``control-magneto-left``; a section alone is its own anchor."""
    section = str(path[0])
    if len(path) == 1 or section not in _ANCHOR_OF_SECTION:
        return section.replace("_", "-")
    if section == "seats" and len(path) >= 4 and path[2] in ("ties", "do_not_pull", "worn"):
        kind = {"ties": "tie", "do_not_pull": "do-not-pull", "worn": "worn"}[str(path[2])]
        return f"{kind}-{path[1]}-{path[3]}"
    return f"{_ANCHOR_OF_SECTION[section]}-{path[1]}".replace(" ", "-")


def relative(target: str, page: str) -> str:
    """``target`` (with or without #anchor) as seen from ``page``; both from the top of the site."""
    address, hash_, name = target.partition("#")
    if not address or address == page:
        return f"#{name}" if hash_ else posixpath.basename(page)
    return posixpath.relpath(address, posixpath.dirname(page) or ".") + hash_ + name


def root(page: str) -> str:
    """The way from a page to the top of the site: "" or "../" or "../../"."""
    return "../" * page.count("/")
