"""How current and how complete a record is, as counts on a day: never a share, which would sound like a mark."""

from __future__ import annotations

from collections.abc import Iterator
from typing import get_args

from hardpoint.figures.citations import COMMON_PRACTICE
from hardpoint.figures.fitness import open_questions
from hardpoint.figures.worked import Case, Figure, Input, Topic, Unsaid, Worked
from hardpoint.records.known import NonValue, said
from hardpoint.records.provenance import SectionName
from hardpoint.records.walk import values_of
from hardpoint.words import later, mark

_METHOD = "currency"
_SOURCES = (COMMON_PRACTICE,)


def _work(case: Case) -> Iterator[Worked]:
    if case.entry is not None:
        return
    unknown = len(open_questions(case.airframe))
    answered = sum(value is not NonValue.UNKNOWN for _, value in values_of(case.airframe))
    checks = case.airframe.checked
    inputs = (Input(("checked",), later("{count} sections", count=len(checks)), (len(checks),) * 2, ""),)
    yield _count("unknown", later("Questions that nobody has answered"), unknown, inputs)
    yield _count("answered", later("Answers recorded"), answered, inputs)
    unchecked = [name for name in get_args(SectionName) if name not in checks or checks[name].how == "not checked"]
    yield _count("unchecked", later("Sections that nobody has checked"), len(unchecked), inputs)
    what = later("Sections past their review")
    if case.as_of is None:
        yield Unsaid("currency.overdue", what, later("for which day is not told"), (), _METHOD)
        return
    overdue = sum(
        review is not None and review < case.as_of for review in (said(check.review) for check in checks.values())
    )
    day = Input((), later("on {day}", day=case.as_of.isoformat()), (0.0, 0.0), "")
    yield _count("overdue", what, overdue, (*inputs, day))


def _count(key: str, what: str, count: int, inputs: tuple[Input, ...]) -> Figure:
    value = (float(count), float(count))
    formula = later("counted in the record")
    return Figure(f"currency.{key}", what, value, "", "", "nearest", inputs, formula, _METHOD, _SOURCES, digits=6)


TOPIC = Topic("currency", mark("How current and how complete"), _METHOD, _work)
