"""Rules about where statements come from."""

from __future__ import annotations

from collections.abc import Iterator

from hardpoint.findings import Path, Severity, dotted
from hardpoint.records.known import NonValue, said
from hardpoint.records.provenance import Check, SectionName
from hardpoint.rules.rule import AIRFRAME, TAIL, Hit, Record, Subject, TailUnder, everywhere

NEED_A_CHECK: tuple[SectionName, ...] = (
    "signs",
    "approach",
    "zones",
    "masses",
    "tanks",
    "batteries",
    "high_voltage",
    "controls",
    "exits",
    "seats",
    "bottles",
    "pyrotechnics",
    "load_points",
    "water",
)


@everywhere("review-overdue", "warning", "No section is past its review date.")
def review_overdue(subject: Subject) -> Iterator[Hit]:
    """Checks of sections and of claimed absences whose review date lies before the as-of date."""
    for path, part in subject.parts:
        review = said(part.review) if isinstance(part, Check) else None
        if review is not None and review < subject.as_of:
            section = path[-1] if path[0] == "checked" else dotted(path[:-1])
            yield Hit(
                (*path, "review"),
                str(review),
                f"a review date that is not past on {subject.as_of}",
                "",
                message=f"the review of {section} was due on {review} and is overdue on {subject.as_of}",
            )


@everywhere("check-out-of-order", "warning", "A check is not dated in the future, and its review comes after it.")
def check_out_of_order(subject: Subject) -> Iterator[Hit]:
    """Checks dated after the as-of date, and reviews due before their check."""
    for path, part in subject.parts:
        made = said(part.date) if isinstance(part, Check) else None
        review = said(part.review) if isinstance(part, Check) else None
        if made is not None and made > subject.as_of:
            yield Hit((*path, "date"), str(made), f"a date that has been on {subject.as_of}", "")
        if made is not None and review is not None and review <= made:
            yield Hit((*path, "review"), str(review), f"a date after the check of {made}", "")


@AIRFRAME.rule("section-not-checked", "warning", "Every section that crews rely on says how it was checked.")
def section_not_checked(record: Record) -> Iterator[Hit]:
    """Sections without provenance."""
    for section in NEED_A_CHECK:
        if section not in record.airframe.checked:
            yield Hit(
                ("checked",),
                f"nothing for {section}",
                "how that section was checked, if need be not checked",
                f"{section}: {{how: not checked, aircraft: unknown, by: unknown, date: unknown, review: unknown}}",
                message=f'no provenance for {section}; say how it was checked, if need be "how: not checked"',
            )


_CHECKED: tuple[str, Severity, str] = (
    "checked-on-another-aircraft",
    "warning",
    "A type is checked on an aircraft of that type, a tail on itself.",
)


@AIRFRAME.rule(*_CHECKED)
def checked_on_another_type(record: Record) -> Iterator[Hit]:
    """Checks of a type on a tail of another type; aircraft that are not in the fleet may be anything."""
    tails = record.fleet.tails
    found: dict[str, list[Path]] = {}
    for path, part in record.parts if record.id in record.fleet.types else ():
        on = said(part.aircraft) if isinstance(part, Check) else None
        if on is not None and on in tails and tails[on].of.id != record.id:
            found.setdefault(on, []).append((*path, "aircraft"))
    for on, paths in found.items():
        wanted = f"an aircraft of this type; {on} is a {tails[on].of.id}"
        yield Hit(paths[0], on, wanted, related=tuple((path, on) for path in paths[1:]))


@TAIL.rule(*_CHECKED)
def checked_on_a_sister(under: TailUnder) -> Iterator[Hit]:
    """Checks in the file of one aircraft that were made on another."""
    for section, check in under.aircraft.tail.checked.items():
        on = said(check.aircraft)
        if on is not None and on != under.aircraft.id:
            yield Hit(("checked", section, "aircraft"), on, "this aircraft, or a check of the type", under.aircraft.id)


@everywhere("worked-on-no-aircraft", "warning", "What was worked, walked, measured or weighed was so on an aircraft.")
def worked_on_no_aircraft(subject: Subject) -> Iterator[Hit]:
    """Checks by hand that say `not applicable` of the aircraft."""
    for path, part in subject.parts:
        by_hand = isinstance(part, Check) and part.how in ("worked by hand", "walked", "measured", "weighed")
        if isinstance(part, Check) and by_hand and part.aircraft in (NonValue.NOT_APPLICABLE, NonValue.NOT_FITTED):
            wanted = f"the registration of the aircraft that was {part.how}, if need be unknown"
            yield Hit((*path, "aircraft"), str(part.aircraft), wanted, "unknown")


@everywhere("paper-not-cited", "warning", "What comes from a manual or a drawing names it under source.")
def paper_not_cited(subject: Subject) -> Iterator[Hit]:
    """Checks from paper without a citation."""
    for path, part in subject.parts:
        if isinstance(part, Check) and part.how in ("from manual", "from drawing") and part.source is None:
            wanted = "the key source: the citation of that paper in sources.yaml"
            yield Hit(path, "", wanted)


MOST_YEARS = 5


@everywhere("review-far-off", "warning", "A review is due within five years: a later one is a slip in the year.")
def review_far_off(subject: Subject) -> Iterator[Hit]:
    """Checks whose review is due later than five years after them."""
    for path, part in subject.parts:
        made, review = (said(part.date), said(part.review)) if isinstance(part, Check) else (None, None)
        if made is not None and review is not None and (review - made).days > MOST_YEARS * 366:
            yield Hit((*path, "review"), str(review), f"a date within five years of the check of {made}")
