"""The yes, no or UNKNOWN of the hazards that a crew asks for first."""

from __future__ import annotations

from hardpoint.records.airframe import Airframe
from hardpoint.records.known import NonValue, entries
from hardpoint.records.pyrotechnics import DeviceKind

MUST_BE_ANSWERED: tuple[DeviceKind, ...] = ("rocket parachute", "seat cartridge")


def device_answer(airframe: Airframe, kind: DeviceKind) -> NonValue | bool:
    """True where a device of this kind is recorded, else what the record says of it; UNKNOWN where it says nothing.

    ``rocket-parachute: not fitted`` under pyrotechnics answers for the kind; so does ``pyrotechnics: not fitted``.
    """
    devices = airframe.pyrotechnics
    if isinstance(devices, NonValue):
        return devices
    if any(device.kind == kind for device in entries(devices).values()):
        return True
    answered = devices.get(kind.replace(" ", "-"))
    return answered if isinstance(answered, NonValue) else NonValue.UNKNOWN


def high_voltage_answer(airframe: Airframe) -> NonValue | bool:
    """True where a system above 60 V is recorded, else what the record says."""
    system = airframe.high_voltage
    return system if isinstance(system, NonValue) else True
