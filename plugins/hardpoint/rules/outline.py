"""Rules about overall figures and the outline."""

from __future__ import annotations

import itertools
from collections.abc import Iterator, Sequence
from decimal import Decimal

from hardpoint.findings import Path
from hardpoint.records.known import said
from hardpoint.records.outline import Profile, Section
from hardpoint.records.places import Place
from hardpoint.records.texts import Span
from hardpoint.rules.measure import in_units, unit_m
from hardpoint.rules.rule import AIRFRAME, Hit, Record


@AIRFRAME.rule("length-disagrees", "warning", "The stated length and the stations of nose and tail agree within 20 mm.")
def length_disagrees(record: Record) -> Iterator[Hit]:
    """Length against tail minus nose."""
    size = record.airframe.size
    length, nose, tail = said(size.length), said(size.nose), said(size.tail)
    if length is None or nose is None or tail is None:
        return
    unit_m = Decimal("0.001") if record.airframe.datum.unit == "mm" else Decimal("0.0254")
    by_stations = float((tail - nose) * unit_m)
    low, high = length.si
    if by_stations < low - 0.02 or by_stations > high + 0.02:
        yield Hit(
            ("size", "length"),
            length.text,
            f"the length between nose and tail, {by_stations:.2f} m",
            f"{by_stations:.2f} m",
        )


@AIRFRAME.rule(
    "outline-disagrees",
    "warning",
    "The outline is as wide as `fuselage_width` and `span` say, within five percent.",
)
def outline_disagrees(record: Record) -> Iterator[Hit]:
    """Stated width and span against twice the half widths and tips of the outline."""
    profile = said(record.airframe.profile)
    if profile is None:
        return
    halves = [section.half_width for section in profile.sections]
    wings = [surface for surface in profile.surfaces.values() if surface.kind == "wing" and not profile.rotors]
    tips = [wing.bl.high for wing in wings]
    for key, found in (("fuselage_width", halves), ("span", [tip for tip in tips if tip is not None])):
        stated = said(getattr(record.airframe.size, key))
        drawn = 2 * float(max(found)) * unit_m(record.airframe) if found else None
        if stated is None or drawn is None or stated.si[0] * 0.95 <= drawn <= stated.si[1] * 1.05:
            continue
        half = " (half of it?)" if 0.95 <= 2 * stated.si[0] / drawn <= 1.05 else ""
        yield Hit(("size", key), stated.text, f"what the outline has, {drawn:.2f} m{half}", f"{drawn:.2f} m")


@AIRFRAME.rule(
    "sections-out-of-order",
    "warning",
    "The sections of the outline go from nose to tail, each with its floor below its top.",
)
def sections_out_of_order(record: Record) -> Iterator[Hit]:
    """Sections that lie ahead of the one before them, or are upside down."""
    profile = said(record.airframe.profile)
    reached = None
    for index, section in enumerate(profile.sections if profile else ()):
        path: Path = ("profile", "sections", index)
        if reached is not None and section.fs <= reached:
            yield Hit((*path, "fs"), str(section.fs), f"a station behind the section before it, {reached}")
        if section.floor >= section.top:
            yield Hit((*path, "floor"), str(section.floor), f"a waterline lower than its top, {section.top}")
        reached = section.fs


@AIRFRAME.rule(
    "outside-the-outline",
    "warning",
    "What is said to be on the fuselage lies within its outline, give or take 150 mm: a digit too many shows here.",
)
def outside_the_outline(record: Record) -> Iterator[Hit]:
    """Buttock lines and waterlines of places on the fuselage that lie far outside its skin."""
    profile = said(record.airframe.profile)
    slack = in_units(record.airframe, 150)
    for path, part in record.parts if profile else ():
        fs = said(part.fs) if isinstance(part, Place) and part.on == "fuselage" else None
        if profile is None or fs is None or not isinstance(part, Place):
            continue
        floor, top, half = _around(profile, fs)
        bl, wl = said(part.bl), said(part.wl)
        if bl is not None and _above(bl, half + slack):
            yield Hit((*path, "bl"), bl.text, f"a buttock line within the fuselage, at most {half:.0f} here")
        if wl is not None and (_above(wl, top + slack) or _below(wl, floor - slack)):
            yield Hit((*path, "wl"), wl.text, f"a waterline within the fuselage, {floor:.0f} to {top:.0f} here")


def _above(span: Span, limit: Decimal) -> bool:
    return span.low is not None and span.low > limit


def _below(span: Span, limit: Decimal) -> bool:
    return span.high is not None and span.high < limit


def _around(profile: Profile, fs: Span) -> tuple[Decimal, Decimal, Decimal]:
    """Lowest floor, highest top and largest half width of the fuselage over a stretch."""
    sections = sorted(profile.sections, key=lambda section: section.fs)
    low = sections[0].fs if fs.low is None else fs.low
    high = sections[-1].fs if fs.high is None else fs.high
    cuts = [_cut(sections, low), _cut(sections, high)]
    cuts += [(one.floor, one.top, one.half_width) for one in sections if low <= one.fs <= high]
    top = max(cut[1] for cut in cuts)
    canopy = said(profile.canopy)
    if canopy is not None and canopy.overlaps(fs) and profile.canopy_top is not None:
        top = max(top, profile.canopy_top)
    return min(cut[0] for cut in cuts), top, max(cut[2] for cut in cuts)


def _cut(sections: Sequence[Section], fs: Decimal) -> tuple[Decimal, Decimal, Decimal]:
    """Floor, top and half width at a station, straight between its neighbours."""
    for one, other in itertools.pairwise(sections):
        if one.fs <= fs <= other.fs and one.fs != other.fs:
            share = (fs - one.fs) / (other.fs - one.fs)
            return (
                one.floor + share * (other.floor - one.floor),
                one.top + share * (other.top - one.top),
                one.half_width + share * (other.half_width - one.half_width),
            )
    end = sections[0] if fs < sections[0].fs else sections[-1]
    return end.floor, end.top, end.half_width
