"""Rules about where statements come from."""

from __future__ import annotations

from collections.abc import Iterator

from hardpoint.findings import dotted
from hardpoint.records.known import said
from hardpoint.records.provenance import Check, SectionName
from hardpoint.rules.rule import AIRFRAME, Hit, Record, Subject, everywhere

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
