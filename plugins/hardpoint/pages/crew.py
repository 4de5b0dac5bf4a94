"""The crew page of a type or a tail: what a crew reads on the way and at the aircraft."""

from __future__ import annotations

from hardpoint.pages import addresses
from hardpoint.pages.after import cutting, heavy_end, recognising, two_signs, water
from hardpoint.pages.dangers import never_touch, staying_clear, strip
from hardpoint.pages.freeing import freeing, gripping
from hardpoint.pages.opening import approach, opening
from hardpoint.pages.shutdown import shutting_down
from hardpoint.pages.site import Page, Site
from hardpoint.pages.telling import Shown, as_text, label_of, shown_tail, shown_type, tell
from hardpoint.pages.view import CrewPage, Line, Link, Section
from hardpoint.records.fleet import Aircraft, Type
from hardpoint.records.known import NonValue, said


def type_crew_page(site: Site, type_: Type) -> Page:
    """The crew page of a type."""
    shown = shown_type(type_)
    address = addresses.type_page(type_.id)
    tails = site.fleet.tails_of(type_.id)
    words = "This is the type. Each aircraft can differ" + (": " + ", ".join(tail.id for tail in tails) if tails else "") + "."
    view = CrewPage(
        site.frame(address, shown.name), shown.name, "", _numbers(site, address, type_.id, None), two_signs(shown), (),
        Line(words, tone="caution"), strip(shown), *never_touch(shown), _sections(shown), _links(site, shown, address), site.cautions,
    )  # fmt: skip
    return Page(address, shown.name, "crew.html", view)


def tail_crew_page(site: Site, aircraft: Aircraft) -> Page:
    """The crew page of one aircraft, its differences first."""
    shown = shown_tail(aircraft)
    address = addresses.tail_page(aircraft.id)
    title = f"{shown.name} {aircraft.id}"
    view = CrewPage(
        site.frame(address, title), shown.name, aircraft.id, _numbers(site, address, aircraft.of.id, aircraft.id),
        _signs_of_tail(shown, aircraft), _differences(shown), _declaration(aircraft), strip(shown), *never_touch(shown),
        _sections(shown), _links(site, shown, address), site.cautions,
    )  # fmt: skip
    return Page(address, title, "crew.html", view)


def _sections(shown: Shown) -> tuple[Section, ...]:
    makers = (approach, opening, shutting_down, freeing, gripping, staying_clear, cutting, water, heavy_end, recognising)
    return tuple(make(shown) for make in makers)


def _signs_of_tail(shown: Shown, aircraft: Aircraft) -> tuple[str, ...]:
    markings = said(aircraft.tail.markings)
    colours = said(markings.colours) if markings else None
    signs = two_signs(shown)
    return (*signs[:1], colours) if colours else signs


def _differences(shown: Shown) -> tuple[Line, ...]:
    return tuple(
        Line(
            {"added": f"{as_text_short(override.here)}", "removed": "not on this aircraft", "changed": as_text_short(override.here)}[
                override.kind
            ],
            _where_words(override.at) + ":",
            href=f"#{addresses.anchor(override.at)}",
            was="nothing there" if override.kind == "added" else as_text(override.type_says),
        )
        for override in shown.overrides
    )


def _where_words(path: tuple[str | int, ...]) -> str:
    """``controls.magneto-left.off_is`` -> ``Magneto left, off is``: the section's name says nothing to a crew."""
    words = label_of(path[1:]) if len(path) > 1 else label_of(path)
    return (words[:1].upper() + words[1:]).replace("-", " ")


def as_text_short(tree: object) -> str:
    """A whole part that was added is told in its section; here a few words do."""
    if isinstance(tree, dict):
        kind = tree.get("way_in") or tree.get("kind") or tree.get("what") or "added"
        return f"{kind}, added on this aircraft" if isinstance(kind, str) else "added on this aircraft"
    if isinstance(tree, list):
        return f"{len(tree)} steps, other than on the type"
    return as_text(str(tree))


def _declaration(aircraft: Aircraft) -> Line:
    if not aircraft.declared:
        return Line(
            "nobody has declared how this aircraft differs from its type. What follows is the type; anything can be otherwise here.",
            "UNDECLARED:", "unknown",
        )  # fmt: skip
    declared = said(aircraft.tail.declared)
    by = "" if declared is None else f", declared by {tell(declared.by).text} on {tell(declared.date).text}"
    words = "no recorded difference from the type" if not aircraft.overrides else f"{len(aircraft.overrides)} recorded"
    return Line(f"{words}{by}", "Differences:")


def _numbers(site: Site, page: str, type_id: str, tail: str | None) -> tuple[Link, ...]:
    """The display numbers under which this aircraft (or, for a type, an entry without a tail) flies, with the day."""
    found = []
    for event_id, line_up in site.fleet.events.items():
        for day_id, day in line_up.event.days.items():
            for number, entry in day.entries.items():
                fits = entry.tail == tail if tail else entry.type == type_id and isinstance(entry.tail, NonValue)
                if fits:
                    target = f"{addresses.event_page(event_id)}#{day_id}"
                    found.append(Link(number, addresses.relative(target, page), day_id.replace("-", " ").capitalize()))
    return tuple(found)


def _links(site: Site, shown: Shown, page: str) -> tuple[Link, ...]:
    targets = [
        ("Structure: side view and load points", addresses.structure_page(shown.type_id)),
        ("All figures, converted, with sources", addresses.figures_page(shown.type_id)),
        ("Compare types", addresses.COMPARE),
        ("What is unanswered", f"{addresses.GAPS}#{_gaps_anchor(shown)}"),
    ]
    if shown.tail:
        targets.append((f"The type: {shown.name}", addresses.type_page(shown.type_id)))
    targets += [(f"Tail {tail.id}", addresses.tail_page(tail.id)) for tail in site.fleet.tails_of(shown.type_id) if tail.id != shown.tail]
    targets += [(line_up.event.name, addresses.event_page(event_id)) for event_id, line_up in site.fleet.events.items()]
    return tuple(Link(text, addresses.relative(target, page)) for text, target in targets)


def _gaps_anchor(shown: Shown) -> str:
    return f"tail-{shown.tail}" if shown.tail else f"type-{shown.type_id}"
