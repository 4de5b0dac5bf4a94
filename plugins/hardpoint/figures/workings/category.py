"""Aerodrome category of a type, the least agent that goes with it, and whether the station's cover has it."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator

from hardpoint.figures.category import AGENTS, Agent, critical_area, rescue_category
from hardpoint.figures.worked import Case, Figure, Input, MissingError, Range, Topic, Unsaid, Worked, over, quantity
from hardpoint.records.airframe import Airframe
from hardpoint.records.known import NonValue, said
from hardpoint.records.station import Cover, Station
from hardpoint.units import Quantity
from hardpoint.words import later, mark

_METHOD = "category"
_SOURCES = ("icao-annex-14", "amc2-adr-ops-b-010")
_AGENTS = ("icao-annex-14-agents",)
_FROM_MEMORY = later("the amounts are cited from memory and not checked against the text")


def category_of(airframe: Airframe) -> tuple[Range, tuple[Input, ...]]:
    """Least and greatest category by the readings of length and width, and what they were read from.

    MissingError where length or width is unknown or outside the table.
    """
    length = quantity(airframe.size.length, ("size", "length"), later("its length is unknown"))
    width = quantity(airframe.size.fuselage_width, ("size", "fuselage_width"), later("its width is unknown"))
    try:
        value = over(lambda metres, wide: float(rescue_category(metres, wide)), length.value, width.value)
    except ValueError:
        raise MissingError(later("its size lies outside the table"), ("size", "length")) from None
    return value, (length, width)


def _work(case: Case) -> Iterator[Worked]:
    what = later("Category by length and width")
    try:
        value, inputs = category_of(case.airframe)
    except MissingError as missing:
        yield missing.of("category.rescue_category", what, _METHOD)
        return
    yield Figure(
        "category.rescue_category", what, value, "", "", "up", inputs, "Annex 14, table 9-1", _METHOD, _SOURCES,
        later("the category of the largest aeroplanes of the aerodrome counts; local rules come first"),
    )  # fmt: skip
    area = over(critical_area, inputs[0].value, inputs[1].value)
    yield Figure(
        "category.critical_area", later("Critical area, theoretical"), area, "m2", "m2", "up", inputs, "A = L (K + W)",
        _METHOD, ("icao-doc-9137",), _FROM_MEMORY,
    )  # fmt: skip
    yield from _agents(case.station, int(value[1]), inputs)


def _agents(station: Station | None, category: int, inputs: tuple[Input, ...]) -> Iterator[Worked]:
    cover = said(station.cover) if station else None
    if cover is None:
        reason = later("the station has not stated its cover")
        yield Unsaid("category.cover", later("Cover of the station"), reason, ("station", "cover"), _METHOD)
        return
    agent = AGENTS.get(category)
    if agent is None:
        reason = later("amounts are known here for categories 1 to 4 only")
        yield Unsaid("category.cover", later("Cover of the station"), reason, (), _METHOD)
        return
    yield from _against(cover, agent, inputs)


def _against(cover: Cover, agent: Agent, inputs: tuple[Input, ...]) -> Iterator[Worked]:
    """Each amount that is needed, beside what the station has; refused where it has less."""
    level = None if isinstance(cover.foam_level, NonValue) else str(cover.foam_level)
    asked: tuple[tuple[str, str, str, Quantity | NonValue, Callable[[Agent], float | None]], ...] = (
        ("water", mark("Water for foam"), "L", cover.water, lambda a: a.water_l[level] / 1000 if level else None),
        ("discharge", mark("Discharge of foam"), "L/min", cover.discharge,
         lambda a: a.discharge_l_min[level] / 60000 if level else None),
        ("powder", mark("Powder"), "kg", cover.powder, lambda a: a.powder_kg),
    )  # fmt: skip
    for key, words, printed, has, needed in asked:
        what = later("{agent}, least for this category", agent=later(words))
        least = needed(agent)
        path = ("station", "cover", key)
        if least is None:
            reason = later("the level of the station's foam is unknown")
            yield Unsaid(f"category.{key}", what, reason, ("station", "cover", "foam_level"), _METHOD)
            continue
        if isinstance(has, NonValue):
            yield Unsaid(f"category.{key}", what, later("how much the station has is unknown"), path, _METHOD)
            continue
        stock = Input(path, has.text, has.si, has.si_unit)
        caution = later("the station has {stock}; amounts from memory", stock=has.text)
        if stock.value[0] < least * (1 - 1e-9):
            caution = later("MORE THAN THE STATION HAS ({stock}); amounts from memory", stock=has.text)
        yield Figure(
            f"category.{key}", what, (least, least), has.si_unit, printed, "up", (*inputs, stock),
            "Annex 14, table 9-2", _METHOD, _AGENTS, caution,
        )  # fmt: skip


def highest(airframes: Iterable[Airframe]) -> tuple[int | None, int]:
    """The highest category among some airframes, and of how many of them it cannot be said."""
    found: list[int] = []
    open_ = 0
    for airframe in airframes:
        try:
            found.append(int(category_of(airframe)[0][1]))
        except MissingError:
            open_ += 1
    return max(found, default=None), open_


TOPIC = Topic("category", mark("Aerodrome category and cover"), _METHOD, _work)
