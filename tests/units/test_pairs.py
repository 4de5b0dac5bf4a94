"""Two statements of one figure: bare numbers of common practice, and an independent reckoning in plain decimals."""

from decimal import ROUND_HALF_EVEN, Decimal

import pytest
from hypothesis import given
from hypothesis import strategies as st

from hardpoint.units import compare, read

# Common practice, no source: figures as people quote them in two units.
QUOTED = [
    ("60 L / 15.9 US gal", "agree"),
    ("1320 lb / 640 kg", "disagree"),
    ("350 lb / 175 kg", "disagree"),
    ("7 L / 1.7 US gal", "rounded"),
    ("10 L / 2.6 US gal", "agree"),
    ("62 L / 16.4 US gal", "agree"),
    ("62 L / 13.6 US gal", "disagree"),
    ("62 L / 13.6 imp gal", "agree"),
    ("3000 psi / 207 bar", "agree"),
    ("3000 psi / 200 bar", "disagree"),
    ("50 L / 13.2 US gal", "agree"),
    ("1180 lb / 580 kg", "disagree"),
    ("400 lb / 200 kg", "disagree"),
    ("10 L / 2.5 US gal", "rounded"),
    ("560 lbf / 250 daN", "disagree"),
    ("1200 lbf / 540 daN", "disagree"),
]


@pytest.mark.parametrize(("text", "status"), QUOTED)
def test_pairs_as_quoted(text: str, status: str) -> None:
    assert compare(text).status == status
    assert compare(" / ".join(reversed(text.split(" / ")))).status == status


def test_a_single_statement_is_compared_with_nothing() -> None:
    assert compare("12 kg") == ("single", None)


def test_written_zeros_count() -> None:
    """1200 lb is 544.31 kg: written to the kilogram 544 agrees; 544.0 claims a tenth that it has not."""
    assert compare("1200 lb / 544 kg").status == "agree"
    assert compare("1200 lb / 544.0 kg").status == "disagree"
    assert compare("2645.55 lb / 1200 kg").status == "agree"


SLIPS = [
    ("62 L / 13.6 US gal", "the second looks like imperial gallons, not US gallons: 62 L is 13.6 imp gal"),
    ("13.6 US gal / 62 L", "the first looks like imperial gallons, not US gallons: 13.6 imp gal is 62 L"),
    ("62 L / 16.4 imp gal", "the second looks like US gallons, not imperial gallons: 62 L is 16.4 US gal"),
    ("0.72 kg/L / 7.2 lb/US gal", "the second looks like pounds per imperial gallon, not per US gallon: "
     "0.72 kg/L is 7.2 lb/imp gal"),
    ("560 lbf / 254 daN", "the second looks like kgf, not daN: 560 lbf is 254 kgf"),
    ("3000 psi / 204 bar", "the second looks like atm, not bar: 3000 psi is 204 atm"),
    ("12 lb / 26 kg", "the two units look exchanged: 12 kg is 26 lb"),
    ("10 ft / 33 m", "the two units look exchanged: 10 m is 33 ft"),
    ("350 lb / 175 kg", "looks converted at 2 lb to the kg instead of 2.2046: 350 lb is 159 kg"),
    ("175 kg / 350 lb", "looks converted at 2 lb to the kg instead of 2.2046: 175 kg is 386 lb"),
    ("400 lb / 200 kg", "looks converted at 2 lb to the kg instead of 2.2046: 400 lb is 181 kg"),
    ("3000 psi / 200 bar", "looks converted at 15 psi to the bar instead of 14.504: 3000 psi is 207 bar"),
    ("30 ft / 10 m", "looks converted at 3 ft to the m instead of 3.2808: 30 ft is 9 m"),
    ("62 L / 164 US gal", "a decimal point looks moved by one place: 62 L is 16.4 US gal"),
    ("620 L / 16.4 US gal", "a decimal point looks moved by one place: 620 L is 164 US gal"),
    ("1200 kg / 2465.5 lb", "two digits of the second look exchanged: 1200 kg is 2645.5 lb"),
    ("62 L / 14.6 US gal", "two digits of the second look exchanged: 62 L is 16.4 US gal"),
    # What makes the pair agree comes before what only brings it within rounding (imperial gallons, 4 L to the gal).
    ("8 L / 1.9 US gal", "looks converted at 4 L to the US gal instead of 3.7854: 8 L is 2.1 US gal"),
    ("75 L / 18.9 US gal", "two digits of the second look exchanged: 75 L is 19.8 US gal"),
    # 300 psi is 20 atm as well, but dividing by 15 is the commoner slip.
    ("300 psi / 20 bar", "looks converted at 15 psi to the bar instead of 14.504: 300 psi is 21 bar"),
    # No leading zero is made up (015 kg), and exchanged digits within rounding only explain nothing (21 L).
    ("105 kg / 33 lb", None),
    ("12 L / 5 US gal", None),
    ("1320 kg / 1290 lb", None),
    ("1180 lb / 580 kg", None),
    ("1320 lb / 640 kg", None),
    ("7 L / 1.7 US gal", None),
    ("60 L / 15.9 US gal", None),
]  # fmt: skip


@pytest.mark.parametrize(("text", "slip"), SLIPS)
def test_the_slip_that_explains_a_pair(text: str, slip: str | None) -> None:
    assert compare(text).slip == slip


# An independent reckoning of contract.md's rule, in 40 decimal digits and with the published exact factors only.
PUBLISHED = {("lb", "kg"): "0.45359237", ("US gal", "L"): "3.785411784", ("ft", "m"): "0.3048", ("lbf", "kgf"): ""}
PUBLISHED["lbf", "kgf"] = "0.45359237"  # both by the standard acceleration: the ratio of lb to kg


def reckoned(first: Decimal, second: Decimal, factor: Decimal) -> str:
    def digit(value: Decimal) -> Decimal:
        return Decimal(1).scaleb(int(value.as_tuple().exponent))

    there = (first * factor).quantize(digit(second), ROUND_HALF_EVEN)
    back = (second / factor).quantize(digit(first), ROUND_HALF_EVEN)
    if there == second or back == first:
        return "agree"
    apart = abs(first * factor - second)
    return "rounded" if apart <= digit(first) / 2 * factor + digit(second) / 2 else "disagree"


VALUES = st.builds(lambda digits, places: Decimal(digits).scaleb(-places), st.integers(1, 99999), st.integers(0, 3))


@given(st.sampled_from(sorted(PUBLISHED)), VALUES, st.decimals("0.9", "1.1", places=3), st.integers(0, 3))
def test_the_status_is_that_of_an_independent_reckoning(
    units: tuple[str, str], first: Decimal, nearly: Decimal, places: int
) -> None:
    factor = Decimal(PUBLISHED[units])
    second = (first * factor * nearly).quantize(Decimal(1).scaleb(-places), ROUND_HALF_EVEN)
    here, there = f"{first:f} {units[0]}", f"{second:f} {units[1]}"
    assert compare(f"{here} / {there}").status == reckoned(first, second, factor)


@given(st.sampled_from(sorted(PUBLISHED)), VALUES, VALUES)
def test_comparison_is_symmetric(units: tuple[str, str], first: Decimal, second: Decimal) -> None:
    here, there = f"{first:f} {units[0]}", f"{second:f} {units[1]}"
    forth, back = compare(f"{here} / {there}"), compare(f"{there} / {here}")
    assert forth.status == back.status
    assert (forth.slip is None) == (back.slip is None)
    assert forth.slip is None or forth.status == "disagree"


def test_a_pair_that_disagrees_enters_figures_as_both_values() -> None:
    pair = read("3000 psi / 200 bar", "gauge pressure")
    low, high = pair.si
    assert low == 20_000_000
    assert high == pytest.approx(3000 * 6894.757293168, rel=1e-12)  # NIST SP 811 App. B
    assert [str(value) for value in pair.si_decimal] == ["20000000", "20684271.8795051"]


def test_a_pair_that_fits_enters_figures_as_its_first_statement() -> None:
    assert read("62 L / 16.4 US gal", "volume").si == (0.062, 0.062)
    assert read("10 L / 2.5 US gal", "volume").si == (0.01, 0.01)


def test_what_governs_enters_figures_and_the_disagreement_stays() -> None:
    pair = read("560 lbf / 250 daN", "force", governs="250 daN")
    assert pair.si == (2500.0, 2500.0)
    assert pair.status == "disagree"
    assert pair.governs is pair.stated[1]
