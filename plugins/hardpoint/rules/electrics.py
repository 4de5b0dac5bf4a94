"""Rules about batteries and high voltage."""

from __future__ import annotations

import re
from collections.abc import Iterator

from hardpoint.findings import Path
from hardpoint.records.airframe import Airframe
from hardpoint.records.electrics import Battery
from hardpoint.records.known import NonValue, entries, said
from hardpoint.rules.rule import AIRFRAME, Hit, Record
from hardpoint.units import Quantity

HIGH_VOLTAGE_V = 60.0
"""Direct current above which a system counts as high voltage: UN Regulation 100, 2.17 (from memory)."""
_CUTS_CURRENT = ("master", "battery", "generator", "ignition", "high-voltage disconnect")


@AIRFRAME.rule(
    "high-voltage-among-batteries",
    "error",
    "A battery above 60 V stands under high_voltage: under batteries, crews would read that there is none.",
)
def high_voltage_among_batteries(record: Record) -> Iterator[Hit]:
    """Batteries below `batteries` whose larger reading is above 60 V."""
    for name, battery in entries(record.airframe.batteries).items():
        voltage = said(battery.voltage)
        if voltage is not None and voltage.si[1] > HIGH_VOLTAGE_V:
            wanted = "at most 60 V; a battery above that is a pack under high_voltage"
            yield Hit(("batteries", name, "voltage"), voltage.text, wanted, "12 V")


@AIRFRAME.rule(
    "cut-by-something-else",
    "warning",
    "What cuts a battery off is an electrical control; what opens a high-voltage circuit is its disconnect.",
)
def cut_by_something_else(record: Record) -> Iterator[Hit]:
    """Batteries cut by a control of another function, and a disconnect that is none."""
    controls = entries(record.airframe.controls)
    for name, battery in entries(record.airframe.batteries).items():
        control = controls.get(str(battery.cut_by))
        if control and control.function not in _CUTS_CURRENT:
            wanted = f"a master or battery switch ({battery.cut_by} is a {control.function} control)"
            yield Hit(("batteries", name, "cut_by"), str(battery.cut_by), wanted)
    system = said(record.airframe.high_voltage)
    control = controls.get(str(system.disconnect)) if system else None
    if system and control and control.function != "high-voltage disconnect":
        wanted = (
            f"a control with function: high-voltage disconnect ({system.disconnect} is a {control.function} control)"
        )
        yield Hit(("high_voltage", "disconnect"), str(system.disconnect), wanted)


@AIRFRAME.rule(
    "high-voltage-contradicted",
    "warning",
    "High voltage is not denied beside an electric engine without a battery of its own, or a high-voltage disconnect.",
)
def high_voltage_contradicted(record: Record) -> Iterator[Hit]:
    """`high_voltage: not fitted` and `disconnect: not fitted` against what else the record has."""
    system, engine = record.airframe.high_voltage, said(record.airframe.engine)
    controls = entries(record.airframe.controls).items()
    loops = [name for name, control in controls if control.function == "high-voltage disconnect"]
    related = tuple((("controls", name, "function"), name) for name in loops)
    denied = (NonValue.NOT_FITTED, NonValue.NOT_APPLICABLE)
    if system in denied and loops:
        yield Hit(("high_voltage",), str(system), f"the system that {loops[0]} disconnects", related=related)
    elif system in denied and engine and engine.kind == "electric" and not _drives(record.airframe):
        wanted = "the system that drives the engine, or below 60 V the battery that feeds it, under batteries"
        yield Hit(("high_voltage",), str(system), wanted, "feeds: the motor")
    elif not isinstance(system, NonValue) and system.disconnect in denied and loops:
        yield Hit(("high_voltage", "disconnect"), str(system.disconnect), "its disconnect", loops[0], related=related)


def _drives(airframe: Airframe) -> bool:
    """Whether some battery is said to feed the engine."""
    batteries = entries(airframe.batteries).values()
    return any(re.search(r"(?i)motor|engine|propeller", battery.feeds or "") for battery in batteries)


@AIRFRAME.rule(
    "energy-disagrees",
    "warning",
    "The energy of a battery is its voltage times its charge, that of a system the sum of its packs, within a fifth.",
)
def energy_disagrees(record: Record) -> Iterator[Hit]:
    """Stated energies against what the rest of the record makes of them, each by both readings."""
    system = said(record.airframe.high_voltage)
    packs = entries(system.packs) if system else {}
    for path, battery in _batteries(record.airframe):
        voltage, charge, energy = said(battery.voltage), said(battery.charge), said(battery.energy)
        if voltage is not None and charge is not None and energy is not None:
            low, high = (voltage.si[end] * charge.si[end] for end in (0, 1))
            yield from _energy((*path, "energy"), energy, low, high, "voltage times charge")
    energies = [said(pack.energy) for pack in packs.values()]
    total = said(system.energy) if system else None
    if system and total is not None and packs and None not in energies and len(packs) == len(said(system.packs) or ()):
        low, high = (sum(energy.si[end] for energy in energies if energy) for end in (0, 1))
        yield from _energy(("high_voltage", "energy"), total, low, high, "the sum of its packs")


def _batteries(airframe: Airframe) -> Iterator[tuple[Path, Battery]]:
    system = said(airframe.high_voltage)
    yield from ((("batteries", name), one) for name, one in entries(airframe.batteries).items())
    yield from ((("high_voltage", "packs", name), one) for name, one in entries(system.packs if system else {}).items())


def _energy(path: Path, energy: Quantity, low: float, high: float, what: str) -> Iterator[Hit]:
    if energy.si[1] < low * 0.8 or energy.si[0] > high * 1.2:
        watt_hours = f"{(low + high) / 2 / 3600:.0f} Wh"
        yield Hit(path, energy.text, f"{what}, {watt_hours}", watt_hours)
