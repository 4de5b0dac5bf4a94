"""Quantities as authors write them: read, checked one statement on the other, converted, rounded, printed.

>>> from hardpoint.units import compare, convert, read, shown
>>> compare("62 L / 16.4 US gal").status
'agree'
>>> compare("62 L / 13.6 US gal").slip
'the second looks like imperial gallons, not US gallons: 62 L is 13.6 imp gal'
>>> convert("36 ft", "m")
10.9728
>>> [conversion.text for conversion in shown(read("12 kg", "mass"), "up")]
['27 lb']
"""

from .computed import computed
from .errors import QuantityError
from .pairs import Comparison, Status
from .quantity import Quantity, Stated
from .reading import compare, convert, read
from .registry import KINDS, Kind, KindFacts, Reference, written_units
from .rounding import Rounding, number_text, round_significant, round_to
from .showing import Shown, shown

__all__ = [
    "KINDS",
    "Comparison",
    "Kind",
    "KindFacts",
    "Quantity",
    "QuantityError",
    "Reference",
    "Rounding",
    "Shown",
    "Stated",
    "Status",
    "compare",
    "computed",
    "convert",
    "number_text",
    "read",
    "round_significant",
    "round_to",
    "shown",
    "written_units",
]
