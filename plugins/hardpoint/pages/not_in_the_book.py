"""A visitor that no record covers: what to assume until somebody has looked, by what can be seen of its construction.

The assumptions are common practice, not records; each leans to the side that keeps people whole.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from hardpoint.figures.answers import MUST_BE_ANSWERED, device_answer
from hardpoint.figures.construction import Construction, built_of
from hardpoint.pages import addresses
from hardpoint.pages.addresses import relative
from hardpoint.pages.site import Page, Site
from hardpoint.pages.terms import term
from hardpoint.pages.view import Block, Line, Lines, Link, Links, Section, SheetPage
from hardpoint.records.fleet import Type
from hardpoint.records.known import NonValue
from hardpoint.words import mark, say, say_count

_FIRST: tuple[tuple[str, str], ...] = (
    (mark("Rocket parachute:"), mark("assume that one is fitted, live, and that its cable runs where you would cut.")),
    (mark("Ejection seat:"), mark("assume live cartridges under seat and canopy. Touch no handle in the cockpit.")),
    (mark("High voltage:"), mark("assume live cables until somebody who knows the aircraft has looked.")),
    (mark("Propeller or rotor:"), mark("assume that it can turn at a touch. Stay out of its disc and of its line.")),
    (
        mark("Come:"),
        mark("from a side, slowly; never along nose or tail, nor on the canopy's side where a device may fly."),
    ),
    (mark("Fuel:"), mark("assume fuel in the wings, ahead of and behind the occupants, in lines along both sides.")),
    (mark("Bottles:"), mark("assume pressure behind and under the seats.")),
    (
        mark("Occupants:"),
        mark("one in every seat. Feel for each tie: lap, shoulders, second belt, leads, hose."),
    ),
    (mark("Handles:"), mark("inside, pull none whose work you do not know. Yellow and black, or red: never.")),
)
_WHO: tuple[tuple[str, str], ...] = (
    (mark("Ask:"), mark("owner, other pilots of the type, the organiser's entry form, whoever fuelled it.")),
    (
        mark("Read:"),
        mark("labels and arrows on the skin beside canopy and doors. They can be wrong or missing."),
    ),
    (mark("Look:"), mark("through the panes before a tool goes in; note what you see, where, from which side.")),
    (mark("Say:"), mark("to the incident commander: not in the book. What follows is assumed, not recorded.")),
)
_THEN: tuple[tuple[str, str], ...] = (
    (mark("Open:"), mark("by an outside handle whose label says what it does; then a pane; the skin last of all.")),
    (
        mark("Shut down:"),
        mark("touch a switch only if a placard or its pilot says which way is off."),
    ),
    (mark("Cut:"), mark("nowhere until somebody has seen the inner face of that skin. Its outside tells nothing.")),
    (
        mark("Lift:"),
        mark("no point is known to hold; a tie-down ring, a step, a strut is none. Wait for a rigger."),
    ),
    (mark("Water:"), mark("assume that nothing opens until it is flooded, and that the engine's end goes down first.")),
    (mark("Damage:"), mark("changes everything above. A bent mount points anywhere.")),
)


@dataclass(frozen=True)
class _Assumed:
    """What to assume of one kind of construction: what is seen, then a few lines."""

    construction: Construction
    title: str
    seen: str
    lines: tuple[str, ...]


_BY_CONSTRUCTION: tuple[_Assumed, ...] = (
    _Assumed(
        "composite",
        mark("Glass or carbon fibre"),
        mark("smooth skin without rivets or seams"),
        (
            mark("no frame shows where to cut; stiff bonded parts hide behind any skin"),
            mark("broken edges are needles; dust and smoke harm lungs: wear breathing protection"),
            mark("burnt fibre is loose and carries current: keep it wet and away from live cables"),
        ),
    ),
    _Assumed(
        "metal",
        mark("Metal skin"),
        mark("rows of rivets, panel lines"),
        (
            mark("frames and stringers run along the rivet rows; cables and lines lie in their corners"),
            mark("torn edges cut gloves; a grinder's sparks find fuel vapour"),
        ),
    ),
    _Assumed(
        "fabric",
        mark("Fabric over tube or wood"),
        mark("cloth that gives under a thumb, ribs or tubes showing through"),
        (
            mark("the cloth opens with shears; the tubes under it carry everything, cut none unseen"),
            mark("doped cloth burns fast; a bare tube may be a push-rod, a thin one a fuel pipe"),
            mark("flying wires hold the wing: one side sags when they are cut"),
        ),
    ),
    _Assumed(
        "wood",
        mark("Wood"),
        mark("painted ply, glued joints, no rivets, a dull sound when tapped"),
        (mark("breaks into long splinters; a cracked longeron holds nothing"), mark("burns through fast")),
    ),
    _Assumed(
        "electric",
        mark("Electric drive"),
        mark("no exhaust pipe, a charging socket, thick cables"),
        (
            mark("packs stay live whatever is pulled, under water too; damaged cables as well"),
            mark("a pack can burn again hours later; its smoke is poisonous: upwind, plenty of water"),
        ),
    ),
    _Assumed(
        "jet",
        mark("Jet or former military"),
        mark("intake and jet pipe, no propeller, red triangles or yellow and black on handles"),
        (
            mark("assume live cartridges under seats and canopy, until a licensed armourer has reported each one"),
            mark("stand neither ahead of the intake nor behind the pipe; it turns long after shut-down"),
            mark("oxygen and accumulators under pressure; magnesium parts: no water on burning metal"),
        ),
    ),
    _Assumed(
        "glider",
        mark("Glider"),
        mark("long thin wings, one wheel, a very long canopy"),
        (
            mark("canopy comes off or hinges far forward; legs lie deep under the panel"),
            mark("battery, oxygen and ballast can be in nose, wings and fin; some have an engine inside"),
            mark("a parachute is worn; a static line may tie it to the airframe"),
        ),
    ),
    _Assumed(
        "light",
        mark("Very light aircraft"),
        mark("small, open or half-open, tubes or thin skin, a light wing"),
        (mark("more likely than others to carry a rocket parachute: find its exit panel before you stand anywhere"),),
    ),
    _Assumed(
        "floats",
        mark("Floats or a hull"),
        mark("a stepped hull or floats"),
        (
            mark("the propeller can be above or behind the cabin: come from the bow"),
            mark("life jackets that inflate by themselves pin people inside; cleats tow, they do not lift"),
        ),
    ),
    _Assumed(
        "rotor",
        mark("Rotor above"),
        mark("a mast with blades"),
        (
            mark("blades droop when they slow down: stay out until they stand"),
            mark("come from where the pilot sees you, never from the tail"),
        ),
    ),
)


def not_in_the_book_page(site: Site) -> Page:
    """What to assume of an aircraft without a record."""
    page = addresses.NOT_IN_THE_BOOK
    title = say("Not in the book")
    lead = say(
        "No record covers this aircraft. Nothing here is known of it: it is what to assume until somebody has looked. "
        "Common practice, no source; local procedures go first."
    )
    sections = (
        Section("assume", say("Assume this of any aircraft"), (_told(_FIRST),), say("Assume")),
        Section("ask", say("Ask and look"), (_told(_WHO),), say("Ask")),
        Section("then", say("Then"), (_told(_THEN),), say("Then")),
        Section("built", say("By what it is built of"), tuple(_built(site, page)), say("Built of")),
    )
    links = (
        Link(say("Line-up"), relative(addresses.HOME, page)),
        Link(say("Compare types"), relative(addresses.COMPARE, page)),
    )
    view = SheetPage(site.frame(page, title), title, lead, sections, links, site.cautions)
    return Page(page, title, "sheet.html", view)


def _told(table: tuple[tuple[str, str], ...]) -> Lines:
    return Lines(tuple(Line(say(text), say(strong)) for strong, text in table))


def _built(site: Site, page: str) -> Iterator[Block]:
    for assumed in _BY_CONSTRUCTION:
        like = [type_ for type_ in site.fleet.types.values() if assumed.construction in built_of(type_.airframe)]
        lines = (
            Line(say(assumed.seen), say("You see:")),
            *(Line(say(text)) for text in assumed.lines),
            *_counted(like),
        )
        yield Lines(lines, f"built-{assumed.construction}", say(assumed.title))
        if like:
            links = tuple(Link(type_.airframe.name, relative(addresses.type_page(type_.id), page)) for type_ in like)
            yield Links(f"built-{assumed.construction}-types", say("Types in this book that are built so"), links)


def _counted(like: list[Type]) -> Iterator[Line]:
    """What the records of such types have: it tells that such things occur, never that this one is without."""
    for kind in MUST_BE_ANSWERED:
        answers = [device_answer(type_.airframe, kind) for type_ in like]
        fitted = sum(answer is True for answer in answers)
        unknown = sum(answer is NonValue.UNKNOWN for answer in answers)
        if fitted or unknown:
            counted = say_count(
                len(like),
                "types in this book that are built so do have one ({fitted} of {count}; {unknown} UNKNOWN): assume one",
                "types in this book that are built so do have one ({fitted} of {count}; {unknown} UNKNOWN): assume one",
                fitted=fitted,
                unknown=unknown,
            )
            yield Line(counted, say("{what}:", what=term(kind).capitalize()), "caution")
