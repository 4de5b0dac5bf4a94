"""Rules about what the station has decided."""

from __future__ import annotations

import itertools
from collections.abc import Iterator
from decimal import Decimal

from hardpoint.findings import Path
from hardpoint.records.known import entries, said
from hardpoint.rules.rule import STATION, Hit, StationUnder


@STATION.rule(
    "crane-lifts-more-further-out", "error", "A crane lifts no more at a larger radius: its table falls line by line."
)
def crane_lifts_more_further_out(under: StationUnder) -> Iterator[Hit]:
    """Lines of a crane's table whose load, by its smaller reading, is above that of a smaller radius."""
    for name, crane in entries(under.house.station.cranes).items():
        lines = sorted(enumerate(crane.table), key=lambda line: line[1].radius.si[0])
        for (_, near), (index, far) in itertools.pairwise(lines):
            if far.load.si[0] > near.load.si[1]:
                wanted = f"at most the {near.load.text} that it lifts at {near.radius.text}"
                yield Hit(("cranes", name, "table", index, "load"), far.load.text, wanted)


@STATION.rule(
    "factor-below-one", "error", "A factor makes a load larger and a divisor an allowable smaller: none is below 1."
)
def factor_below_one(under: StationUnder) -> Iterator[Hit]:
    """Dynamic factor and divisors below 1."""
    station = under.house.station
    found: list[tuple[Path, Decimal | None]] = [(("dynamic_factor",), said(station.dynamic_factor))]
    found += [
        (("divisors", key), said(getattr(station.divisors, key))) for key in ("proof", "ultimate", "owners_practice")
    ]
    for path, factor in found:
        if factor is not None and factor < 1:
            yield Hit(path, str(factor), "1 or more; or unknown, where nothing has been decided", "1.25")


@STATION.rule(
    "reserve-above-filling", "warning", "The pressure at which a breathing bottle counts as empty is below its filling."
)
def reserve_above_filling(under: StationUnder) -> Iterator[Hit]:
    """A reserve that is not below the working pressure of some breathing bottle: it would always be empty."""
    reserve = said(under.house.station.bottle_reserve)
    for type_id, type_ in under.fleet.types.items() if reserve else ():
        for name, bottle in entries(type_.airframe.bottles).items():
            working = said(bottle.working_pressure) if bottle.use == "breathing air" else None
            if reserve and working and reserve.si[1] >= working.si[0]:
                wanted = (
                    f"less than the working pressure of {name} of {type_id}, {working.text}; is another unit meant?"
                )
                yield Hit(("bottle_reserve",), reserve.text, wanted, "10 bar")


_NEEDS_A_CORDON = {"rocket parachute": "rocket", "seat cartridge": "cartridge"}


@STATION.rule(
    "cordon-not-decided",
    "warning",
    "For rockets, seat cartridges and high voltage in its fleet the station has decided a distance (cordons).",
)
def cordon_not_decided(under: StationUnder) -> Iterator[Hit]:
    """Kinds of danger that some type has and for which no cordon is named."""
    cordons = " ".join(f"{name} {cordon.said_by}" for name, cordon in under.house.station.cordons.items()).lower()
    wanted: dict[str, str] = {}
    for type_id, type_ in under.fleet.types.items():
        devices = [str(one.kind) for one in entries(type_.airframe.pyrotechnics).values()]
        needed = [word for kind, word in _NEEDS_A_CORDON.items() if kind in devices]
        needed += ["voltage"] if said(type_.airframe.high_voltage) else []
        wanted |= {word: type_id for word in needed if word not in wanted}
    for word, type_id in wanted.items():
        if word not in cordons:
            example = f"{'high-voltage' if word == 'voltage' else word}: {{distance: unknown, said_by: station rule}}"
            yield Hit(("cordons",), "", f"one for {word}, if need be with distance: unknown; {type_id} has it", example)
