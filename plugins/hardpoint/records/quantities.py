"""Quantities in records: text with its unit, one statement or two, and which governs where two disagree."""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass
from typing import Annotated, Any, cast

from pydantic import GetCoreSchemaHandler, GetJsonSchemaHandler
from pydantic.json_schema import JsonSchemaValue
from pydantic_core import CoreSchema, core_schema

from hardpoint.records.problems import RecordRule, problem
from hardpoint.records.texts import Reads, text_of
from hardpoint.units import KINDS, Kind, Quantity, QuantityError, read

GOVERNED = ("stated", "governs")
"""The two keys of a pair of which one statement governs."""
_BEGINS = r"^\s*[-+\u2212]?[0-9]"
"""For editors, which leave the rest to the reader: a quantity begins with its number."""


class _Measures:
    """Reads ``62 L / 16.4 US gal`` or ``{stated: 560 lbf / 250 daN, governs: 560 lbf}`` as one kind of quantity."""

    def __init__(self, kind: Kind) -> None:
        self.kind: Kind = kind

    def __get_pydantic_core_schema__(self, source: Any, handler: GetCoreSchemaHandler) -> CoreSchema:
        return core_schema.no_info_plain_validator_function(self._read)

    def __get_pydantic_json_schema__(self, schema: CoreSchema, handler: GetJsonSchemaHandler) -> JsonSchemaValue:
        example = KINDS[self.kind].example
        text = {"title": KINDS[self.kind].noun, "type": "string", "examples": [example], "pattern": _BEGINS}
        pair = {
            "title": f"{KINDS[self.kind].noun} stated twice, and which statement governs",
            "type": "object",
            "properties": {"stated": {"type": "string"}, "governs": {"type": "string"}},
            "required": list(GOVERNED),
            "additionalProperties": False,
        }
        return {"anyOf": [text, pair]}

    def _read(self, value: Any) -> Quantity:
        text, governs = self._split(value)
        try:
            return read(text, self.kind, governs)
        except QuantityError as wrong:
            raise problem(
                cast(RecordRule, wrong.rule),  # a test holds the rules of units against the list
                read=wrong.read,
                expected=wrong.expected,
                example=wrong.example,
                message=wrong.message,
                at=self._key(value, wrong.rule),
            ) from None

    @staticmethod
    def _key(value: Any, rule: str) -> str:
        """Which of the two keys of a governed pair is meant; "" where the quantity stands by itself."""
        if not isinstance(value, Mapping):
            return ""
        return "governs" if rule == "governs-not-stated" else "stated"

    def _split(self, value: Any) -> tuple[str, str | None]:
        if not isinstance(value, Mapping):
            return text_of(value, KINDS[self.kind].noun, KINDS[self.kind].example), None
        if set(value) != set(GOVERNED):
            keys = ", ".join(map(str, value))
            raise problem(
                "governed-pair",
                read=keys,
                expected=f"{KINDS[self.kind].noun}, or the two keys stated and governs",
                example="{stated: 560 lbf / 250 daN, governs: 560 lbf}",
            )
        texts = [text_of(value[key], KINDS[self.kind].noun, KINDS[self.kind].example, at=key) for key in GOVERNED]
        return texts[0], texts[1]


@dataclass(frozen=True)
class Travel:
    """How far something moves: an angle, a length, or a number of turns."""

    text: str
    quantity: Quantity | None
    turns: int | None


def _travel(text: str) -> Travel:
    turns = re.fullmatch(r"([1-9]\d{0,2}) turns?", text)
    if turns:
        return Travel(text, None, int(turns[1]))
    kinds: tuple[Kind, ...] = ("angle", "length")
    for kind in kinds:
        try:
            return Travel(text, read(text, kind), None)
        except QuantityError:
            continue
    raise problem("not-a-travel", read=text, expected="an angle, a length or a number of turns", example="90 deg")


Mass = Annotated[Quantity, _Measures("mass")]
Length = Annotated[Quantity, _Measures("length")]
Volume = Annotated[Quantity, _Measures("volume")]
Force = Annotated[Quantity, _Measures("force")]
GaugePressure = Annotated[Quantity, _Measures("gauge pressure")]
"""A pressure whose key says that it is gauge (working, test pressure): absolute units are refused."""
Pressure = Annotated[Quantity, _Measures("pressure")]
"""A pressure whose key does not say: the author writes gauge or abs."""
Angle = Annotated[Quantity, _Measures("angle")]
Duration = Annotated[Quantity, _Measures("time")]
Voltage = Annotated[Quantity, _Measures("voltage")]
Energy = Annotated[Quantity, _Measures("energy")]
Charge = Annotated[Quantity, _Measures("charge")]
Speed = Annotated[Quantity, _Measures("speed")]
Flow = Annotated[Quantity, _Measures("flow")]
Area = Annotated[Quantity, _Measures("area")]
Temperature = Annotated[Quantity, _Measures("temperature")]
Density = Annotated[Quantity, _Measures("density")]
HowFar = Annotated[
    Travel, Reads(_travel, {"title": "how far", "type": "string", "examples": ["90 deg", "60 mm", "20 turns"]})
]
