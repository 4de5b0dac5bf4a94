"""What an author stated, kept as it was written, and what it amounts to in SI."""

from __future__ import annotations

from dataclasses import dataclass
from decimal import Decimal
from fractions import Fraction
from functools import cached_property

from . import pairs
from .registry import KINDS, Kind, Reference, link
from .rounding import round_significant

_SI_DIGITS = 15


@dataclass(frozen=True)
class Stated:
    """One statement: the author's text, its value and canonical unit, half of its last written digit.

    Trailing zeros count: the half digit of ``1200`` is 0.5, of ``13.60`` 0.005. ``reference`` says gauge or absolute
    where the author wrote it behind a pressure.
    """

    text: str
    value: Decimal
    unit: str
    half_digit: Decimal
    reference: Reference = ""

    def exactly(self, unit: str) -> Fraction:
        """The value in another unit of its kind, by canonical name, exact."""
        return link(self.unit, unit).apply(Fraction(self.value))


@dataclass(frozen=True)
class Quantity:
    """A quantity of a record: the author's words untouched, one or two statements, the one that governs, if any."""

    text: str
    kind: Kind
    stated: tuple[Stated, ...]
    governs: Stated | None = None

    @cached_property
    def status(self) -> pairs.Status:
        """``single``, or how the two statements fit: ``agree``, ``rounded``, ``disagree``."""
        if len(self.stated) == 1:
            return "single"
        first, second = self.stated
        return pairs.fit(first.value, second.value, link(first.unit, second.unit))

    @cached_property
    def slip(self) -> str | None:
        """The slip that would explain a disagreement, in words; None where there is none or none explains it."""
        if self.status != "disagree":
            return None
        first, second = self.stated
        return pairs.slip((first.value, first.unit), (second.value, second.unit))

    @property
    def reference(self) -> Reference:
        """What the pressure is measured from, as stated or as the key says; "" for all other kinds."""
        return self.stated[0].reference or ("gauge" if self.kind == "gauge pressure" else "")

    @property
    def counted(self) -> tuple[Stated, ...]:
        """The statements that enter figures: the one that governs, both that disagree, otherwise the first."""
        if self.governs is not None:
            return (self.governs,)
        return self.stated if self.status == "disagree" else self.stated[:1]

    @property
    def si_unit(self) -> str:
        """The SI unit of the kind: kg, m, m3, N, Pa, rad, s, V, J, m/s, m3/s, m2, K, kg/m3, W or C."""
        return KINDS[self.kind].si_unit

    @cached_property
    def si(self) -> tuple[float, float]:
        """Lowest and highest value in SI, equal but for a pair that disagrees with nothing that governs.

        A pressure is as stated, gauge or absolute: see ``reference``.
        """
        return self.within(self.si_unit)

    @property
    def si_decimal(self) -> tuple[Decimal, Decimal]:
        """``si`` to 15 digits, nearest, in decimal and without trailing zeros: for data files."""
        low, high = self._span(self.si_unit)
        return _plain(low), _plain(high)

    def within(self, unit: str) -> tuple[float, float]:
        """``si`` in another unit of the kind, by canonical name: stations in mm, angles in deg."""
        low, high = self._span(unit)
        return float(low), float(high)

    def _span(self, unit: str) -> tuple[Fraction, Fraction]:
        values = [statement.exactly(unit) for statement in self.counted]
        return min(values), max(values)


def _plain(value: Fraction) -> Decimal:
    return Decimal(format(round_significant(value, _SI_DIGITS).normalize(), "f"))
