"""Rules about where statements come from."""

from __future__ import annotations

from collections.abc import Iterator

from hardpoint.records.known import said
from hardpoint.records.provenance import SectionName
from hardpoint.rules.rule import AIRFRAME, Hit, Record

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


@AIRFRAME.rule("review-overdue", "warning", "No section is past its review date.")
def review_overdue(record: Record) -> Iterator[Hit]:
    """Sections whose review date lies before the as-of date."""
    for section, check in record.airframe.checked.items():
        review = said(check.review)
        if review is not None and review < record.as_of:
            yield Hit(
                ("checked", section, "review"),
                str(review),
                f"a review date that is not past on {record.as_of}",
                "",
                message=f"the review of {section} was due on {review} and is overdue on {record.as_of}",
            )


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
