"""The maps of the structure page: drawings, and beside each the table that its numbers lead to."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from hardpoint.drawings.cut_map import Windows, cut_views, patterns
from hardpoint.drawings.geometry import Outline, outline_of
from hardpoint.drawings.maps import map_views
from hardpoint.drawings.sheet import VIEWS, View
from hardpoint.drawings.things import LAYER_WORDS, MAPS, Map, Thing, things
from hardpoint.findings import Path
from hardpoint.pages import addresses
from hardpoint.pages.after import zone_table
from hardpoint.pages.shown import Shown
from hardpoint.pages.telling import tell
from hardpoint.pages.view import Block, Line, Lines, Maps, MapView, Row, Section, State, Table, Value
from hardpoint.records.known import NonValue
from hardpoint.records.places import Place
from hardpoint.words import mark, say

_TITLES: dict[Map, tuple[str, str]] = {
    "holds": (mark("Where it holds, and what is heavy"), mark("Holds")),
    "harms": (mark("What burns, bursts, shocks and fires"), mark("Harms")),
    "hands": (mark("Handles and controls"), mark("Handles")),
}
_CAPTIONS: dict[View, str] = {
    "left": mark("left side, true scale, stations as the record has them"),
    "right": mark("right side, true scale"),
    "plan": mark("from the canopy side, true scale; pilot's right is the upper half"),
}
_BROKEN = mark(
    "Drawn broken: its height or its buttock line is not recorded; hatched: nobody knows where in this stretch it "
    "runs. Sectors and cones show a direction, not a reach; a bent mount points anywhere."
)
_CUT_SHORT = mark("Cut")
_CUT = mark(
    "Hatched by what the skin is made of; the bar along a zone is full where nobody cuts, hatched where it is to be "
    "avoided, broken where nobody knows. Thin lines: tanks, lines and cables behind this side as recorded."
)


def map_section(shown: Shown, map_: Map, page: str, *more: Block) -> Section:
    """One map with its table; ``more`` follows."""
    title, short = _TITLES[map_]
    return Section(f"map-{map_}", say(title), (*_drawn(shown, map_), _table(shown, map_, page), *more), say(short))


def _drawn(shown: Shown, map_: Map) -> Iterator[Block]:
    drawn = map_views(shown.airframe, map_, row_address, VIEWS)
    if not drawn:
        yield no_outline()
        return
    views = tuple(MapView(f"map-{map_}-{view.view}", view.svg, _caption(_TITLES[map_][1], view.view)) for view in drawn)
    layers = tuple((layer.replace(" ", "-"), say(LAYER_WORDS[layer])) for layer in MAPS[map_])
    yield Maps(f"map-{map_}-views", views, layers, say(_BROKEN), "".join(patterns()) if map_ == "holds" else "")


def _caption(map_: str, view: View) -> str:
    """Which map and which view: every drawing of a page is named apart."""
    return say("{map}: {view}", map=say(map_), view=say(_CAPTIONS[view]))


def no_outline() -> Block:
    """Where a record has no outline."""
    return Lines((Line(say("the outline of this type: no drawing can be made"), say("UNKNOWN"), "unknown"),))


def row_id(path: Path) -> str:
    """The anchor of a thing's row: that of a load point is fixed for others, the rest follow the path."""
    if path[0] == "load_points":
        return addresses.anchor(path)
    return "map-" + "-".join(map(str, path)).replace("_", "-").replace(" ", "-")


def row_address(path: Path) -> str:
    """Where a number of a map leads."""
    return f"#{row_id(path)}"


def _table(shown: Shown, map_: Map, page: str) -> Table:
    outline = outline_of(shown.airframe)
    listed = _listed(shown, map_, outline)
    rows = tuple(_row(shown, thing, map_, page, outline) for thing in listed)
    heads = (say("Number"), say("What"), say("Side and station"))
    caption = say("{map}: what the numbers are", map=say(_TITLES[map_][1]))
    return Table(f"map-{map_}-table", caption, heads, rows)


def _listed(shown: Shown, map_: Map, outline: Outline | None) -> Sequence[Thing]:
    return things(shown.airframe, outline, map_) if outline else ()


def _row(shown: Shown, thing: Thing, map_: Map, page: str, outline: Outline | None) -> Row:
    id_ = "" if thing.path[0] == "load_points" else row_id(thing.path)
    state: State = "unknown" if thing.unknown and thing.place is None else "said"
    words = Value(thing.words, state, href=_home(shown, thing, page))
    cells = (Value(str(thing.number), href=f"#map-{map_}"), words, stations(thing))
    return Row(cells, id_, "caution" if thing.other else "plain", was=shown.was(thing.path))


def _home(shown: Shown, thing: Thing, page: str) -> str:
    """The place on the crew page that tells more, or the detailed row of a load point; "" for what stands only here."""
    if thing.path[0] == "load_points":
        return row_address(thing.path)
    if thing.path[0] in ("tanks", "batteries", "bottles", "pyrotechnics", "exits", "controls") and len(thing.path) > 1:
        return addresses.relative(f"{addresses.type_page(shown.type_id)}#{addresses.anchor(thing.path)}", page)
    return ""


def stations(thing: Thing) -> Value:
    """``left, FS 2400, WL 640`` as the record has it; UNKNOWN where nothing was recorded."""
    place = thing.place
    if thing.layer == "centre of gravity" and thing.points:
        return Value(say("on the centre line, FS {station}", station=f"{thing.points[0].fs:.0f}"))
    if not isinstance(place, Place):
        return tell(place) if isinstance(place, NonValue) else Value(say("see its own row"))
    told = [tell(place.side).text] if place.side is not None else []
    told += [
        f"{axis} {tell(getattr(place, key)).text}"
        for axis, key in (("FS", "fs"), ("BL", "bl"), ("WL", "wl"))
        if getattr(place, key) is not None
    ]
    if place.fs is None or place.fs is NonValue.UNKNOWN:
        note = say("drawn at its seat, its own station is not recorded") if thing.points else say("not drawn")
        return Value(", ".join([*told, place.panel or "", say("station UNKNOWN")]).strip(", "), "unknown", note=note)
    return Value(", ".join(told))


def cut_section(shown: Shown, windows: Windows) -> Section:
    """Both sides with verdicts, then the table of zones."""
    drawn = cut_views(shown.airframe, row_address, windows)
    blocks: list[Block] = []
    if drawn:
        views = tuple(MapView(f"map-cut-{view.side}", view.svg, _caption(_CUT_SHORT, view.side)) for view in drawn)
        blocks.append(Maps("map-cut-views", views, (), say(_CUT)))
    else:
        blocks.append(no_outline())
    blocks.append(zone_table(shown, row_id))
    return Section("map-cut", say("Where it may be cut"), tuple(blocks), say("Cut"))
