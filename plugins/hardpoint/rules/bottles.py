"""Rules about pressure bottles."""

from __future__ import annotations

from collections.abc import Iterator

from hardpoint.findings import Path
from hardpoint.records.bottles import Bottle
from hardpoint.records.known import NonValue, entries, said
from hardpoint.rules.rule import AIRFRAME, Hit, Record

LARGEST_PORTABLE_M3 = 0.050
"""Common practice: portable cylinders end at 50 L of water; a larger figure is the free gas in a small one."""

_TEST_OVER_WORKING = {
    "3A": "5/3",
    "3AA": "5/3",
    "3AL": "5/3",
    "3HT": "5/3",
    "4B": "2",
    "4BA": "2",
    "4BW": "2",
    "ISO cylinder": "3/2",
}
"""49 CFR 180.209(a) table 1; for ISO cylinders from memory, not checked against the text."""


@AIRFRAME.rule(
    "capacity-is-free-gas",
    "warning",
    "A bottle's capacity is its water capacity; a large figure is the free gas in it.",
)
def capacity_is_free_gas(record: Record) -> Iterator[Hit]:
    """Bottles larger than any portable cylinder."""
    for name, bottle in entries(record.airframe.bottles).items():
        volume = said(bottle.water_capacity)
        if volume is None or volume.si[0] <= LARGEST_PORTABLE_M3:
            continue
        yield Hit(
            ("bottles", name, "water_capacity"),
            volume.text,
            f"the water capacity{_as_free_gas(bottle, volume.si[0])}",
            "1.5 L",
        )


def _as_free_gas(bottle: Bottle, volume_m3: float) -> str:
    pressure = said(bottle.working_pressure)
    if pressure is None or not pressure.si[0]:
        return ", not litres of free gas"
    litres = volume_m3 * 1000 * 101325 / (pressure.si[0] + 101325)
    return f", not litres of free gas: as free gas at {pressure.text} this would be a bottle of about {litres:.1f} L"


@AIRFRAME.rule(
    "working-above-test",
    "warning",
    "Working pressure stays below what the test pressure allows by the standard that is stamped on the bottle.",
)
def working_above_test(record: Record) -> Iterator[Hit]:
    """Bottles whose test pressure is too low for their working pressure by their own standard."""
    for name, bottle in entries(record.airframe.bottles).items():
        working, test, standard = said(bottle.working_pressure), said(bottle.test_pressure), said(bottle.standard)
        if working is None or test is None or standard not in _TEST_OVER_WORKING:
            continue
        ratio = _TEST_OVER_WORKING[standard]
        top, _, bottom = ratio.partition("/")
        if working.si[0] * int(top) > test.si[1] * int(bottom or 1) * 1.005:
            yield Hit(
                ("bottles", name, "working_pressure"),
                working.text,
                f"at most the test pressure ({test.text}) divided by {ratio}, by what is stamped on it ({standard})",
                "",
            )


@AIRFRAME.rule(
    "liquid-other-than-carbon-dioxide",
    "warning",
    "Of the gases here only carbon dioxide and extinguishing agents are filled as a liquid.",
)
def liquid_other_than_carbon_dioxide(record: Record) -> Iterator[Hit]:
    """Bottles of air, oxygen, nitrogen or helium that are said to be filled as a liquid."""
    for name, bottle in entries(record.airframe.bottles).items():
        if bottle.filled_as == "liquid" and bottle.holds in ("air", "oxygen", "nitrogen", "helium"):
            yield Hit(
                ("bottles", name, "filled_as"), "liquid", f"gas: {bottle.holds} is not filled as a liquid here", "gas"
            )


_GASES: dict[str, tuple[str, ...]] = {
    "breathing air": ("air",),
    "oxygen": ("oxygen",),
    "hydraulic accumulator": ("nitrogen", "air", "helium"),
    "gear accumulator": ("nitrogen", "air", "helium"),
    "extinguisher": ("extinguishing agent", "carbon dioxide", "nitrogen"),
    "pneumatic": ("air", "nitrogen"),
    "inflation": ("carbon dioxide", "nitrogen", "air", "helium"),
}
"""Common practice."""


@AIRFRAME.rule(
    "gas-for-another-use",
    "warning",
    "A bottle holds a gas that serves its use: oxygen and oil, for one, burn together.",
)
def gas_for_another_use(record: Record) -> Iterator[Hit]:
    """Bottles whose gas does not fit what they are for."""
    for name, bottle in entries(record.airframe.bottles).items():
        if not isinstance(bottle.holds, NonValue) and bottle.holds not in _GASES[bottle.use]:
            wanted = f"{' or '.join(_GASES[bottle.use])}: this bottle is for {bottle.use}"
            yield Hit(("bottles", name, "holds"), bottle.holds, wanted, _GASES[bottle.use][0])


@AIRFRAME.rule(
    "burst-disc-out-of-order",
    "warning",
    "A burst disc lets go above the working pressure and not above the test pressure.",
)
def burst_disc_out_of_order(record: Record) -> Iterator[Hit]:
    """Discs against working and test pressure, absolute pressures taken down to gauge."""
    for name, bottle in entries(record.airframe.bottles).items():
        disc, working, test = said(bottle.burst_disc), said(bottle.working_pressure), said(bottle.test_pressure)
        if disc is None:
            continue
        low, high = (value - (101325 if disc.reference == "absolute" else 0) for value in disc.si)
        path: Path = ("bottles", name, "burst_disc")
        if working is not None and high <= working.si[0]:
            yield Hit(path, disc.text, f"more than the working pressure, {working.text}")
        elif test is not None and low > test.si[1] * 1.005:
            yield Hit(path, disc.text, f"at most the test pressure, {test.text}")


MOST_CARBON_DIOXIDE_KG_PER_L = 0.75
"""ADR P200, table 2: filling ratio 0.66 to 0.75 by test pressure; 49 CFR 173.304a(a)(2): 0.68. Both from memory."""


@AIRFRAME.rule(
    "overfilled", "warning", "Carbon dioxide is filled as a liquid, at most three quarters of a kilogram to a litre."
)
def overfilled(record: Record) -> Iterator[Hit]:
    """Bottles of carbon dioxide that are said to be gas, or to hold more than may be filled."""
    for name, bottle in entries(record.airframe.bottles).items():
        volume, charge = said(bottle.water_capacity), said(bottle.charge)
        if bottle.holds != "carbon dioxide":
            continue
        if bottle.filled_as == "gas":
            yield Hit(("bottles", name, "filled_as"), "gas", "liquid: carbon dioxide is charged as one", "liquid")
        if (
            volume is not None
            and charge is not None
            and charge.si[0] > volume.si[1] * 1000 * MOST_CARBON_DIOXIDE_KG_PER_L
        ):
            most = f"{volume.si[1] * 1000 * MOST_CARBON_DIOXIDE_KG_PER_L:.2f} kg"
            yield Hit(
                ("bottles", name, "charge"), charge.text, f"at most {most} in {volume.text} of water capacity", most
            )
