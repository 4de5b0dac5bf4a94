"""Reading of quantities: what is accepted, and the exact words of what is refused."""

import pickle
from collections.abc import Callable
from decimal import Decimal
from typing import get_args

import pytest
from hypothesis import example, given
from hypothesis import strategies as st

from hardpoint.units import KINDS, Kind, QuantityError, Stated, compare, convert, read, reading, shown, written_units
from hardpoint.units.refusals import Wanted

RULES = {
    "unreadable-quantity", "wrong-dimension", "bare-gallon", "ambiguous-unit", "gauge-or-absolute", "mass-for-force",
    "negative-quantity",
}  # fmt: skip
ALL_KINDS: tuple[Kind, ...] = get_args(Kind)


@pytest.mark.parametrize("kind", ALL_KINDS)
def test_the_example_of_every_kind_is_read(kind: Kind) -> None:
    quantity = read(KINDS[kind].example, kind)
    assert quantity.kind == kind
    assert quantity.status == "single"
    assert quantity.si[0] > 0


@pytest.mark.parametrize("kind", ALL_KINDS)
def test_every_unit_of_a_kind_is_read(kind: Kind) -> None:
    for unit in written_units(kind):
        text = f"1.5 {unit} gauge" if kind == "pressure" else f"1.5 {unit}"
        assert read(text, kind).stated[0].unit == unit


@pytest.mark.parametrize(
    ("text", "kind", "value", "unit", "half"),
    [
        ("12 kg", "mass", "12", "kg", "0.5"),
        ("1200 kg", "mass", "1200", "kg", "0.5"),
        ("13.60 US gal", "volume", "13.60", "US gal", "0.005"),
        ("0.4 L", "volume", "0.4", "L", "0.05"),
        ("62L", "volume", "62", "L", "0.5"),
        ("62 l", "volume", "62", "L", "0.5"),
        ("10 000 kg", "mass", "10000", "kg", "0.5"),
        ("10\u202f000.5 kg", "mass", "10000.5", "kg", "0.05"),
        ("1\u00a0234\u00a0567 mm", "length", "1234567", "mm", "0.5"),
        ("-350 mm", "length", "-350", "mm", "0.5"),
        ("\u2212350 mm", "length", "-350", "mm", "0.5"),
        ("+350 mm", "length", "350", "mm", "0.5"),
        ("-0 mm", "length", "0", "mm", "0.5"),
        ("45°", "angle", "45", "deg", "0.5"),
        ("2.5 m²", "area", "2.5", "m2", "0.05"),
        ("0.399 ft³", "volume", "0.399", "ft3", "0.0005"),
        ("3 imperial gallons", "volume", "3", "imp gal", "0.5"),
        ("50 l/min", "flow", "50", "L/min", "0.5"),
        ("  12   kg\t", "mass", "12", "kg", "0.5"),
        ("14 °C", "temperature", "14", "degC", "0.5"),
    ],
)
def test_one_statement(text: str, kind: Kind, value: str, unit: str, half: str) -> None:
    quantity = read(text, kind)
    (stated,) = quantity.stated
    assert (str(stated.value), stated.unit, stated.half_digit) == (value, unit, Decimal(half))
    assert quantity.text == text
    assert stated.text == text.strip()


@pytest.mark.parametrize("slash", [" / ", "/", " /", "/  "])
def test_two_statements_keep_their_words(slash: str) -> None:
    quantity = read(f"62 L{slash}16.4 US gal", "volume")
    assert [stated.text for stated in quantity.stated] == ["62 L", "16.4 US gal"]


def test_a_unit_with_a_slash_does_not_part_statements() -> None:
    assert [s.unit for s in read("5 L/min / 1.3 US gal/min", "flow").stated] == ["L/min", "US gal/min"]


@pytest.mark.parametrize("text", ["200 bar gauge", "200 barg", "200 bar(g)", "200 bar g"])
@pytest.mark.parametrize("kind", ["pressure", "gauge pressure"])
def test_gauge_is_said_in_several_ways(text: str, kind: Kind) -> None:
    quantity = read(text, kind)
    assert (quantity.stated[0].unit, quantity.reference, quantity.si) == ("bar", "gauge", (2e7, 2e7))


@pytest.mark.parametrize("text", ["2900 psia", "2900 psi abs", "2900 psi absolute", "2900 psi (a)"])
def test_absolute_is_kept_apart_from_the_value(text: str) -> None:
    quantity = read(text, "pressure")
    assert quantity.reference == "absolute"
    assert quantity.si[0] == pytest.approx(2900 * 6894.757293168)


def test_a_key_that_says_gauge_needs_no_word() -> None:
    assert read("200 bar", "gauge pressure").reference == "gauge"
    assert read("12 kg", "mass").reference == ""


# Each refusal: rule, the whole message, the example that it offers.
REFUSED = [
    ("12 m", "mass", "wrong-dimension", 'got "12 m", needs a mass, for example "12 kg"', "12 kg"),
    ("16 gal", "volume", "bare-gallon", 'got "16 gal", say which gallon: "16 US gal" or "16 imp gal"', "16 US gal"),
    ("16 Gallons", "volume", "bare-gallon",
     'got "16 Gallons", say which gallon: "16 US gal" or "16 imp gal"', "16 US gal"),
    ("62 L / 16.4 gal", "volume", "bare-gallon",
     'got "62 L / 16.4 gal", say which gallon: "16.4 US gal" or "16.4 imp gal"', "16.4 US gal"),
    ("9 gpm", "flow", "bare-gallon", 'got "9 gpm", say which gallon: "9 US gal/min" or "9 imp gal/min"',
     "9 US gal/min"),
    ("6 lb/gal", "density", "bare-gallon", 'got "6 lb/gal", say which gallon: "6 lb/US gal" or "6 lb/imp gal"',
     "6 lb/US gal"),
    ("8 qt", "volume", "ambiguous-unit", 'got "8 qt", say which quart: "8 US qt" or "8 imp qt"', "8 US qt"),
    ("2 ton", "mass", "ambiguous-unit", 'got "2 ton", say which ton: "2 t", "2 short ton" or "2 long ton"', "2 t"),
    ("16 gal", "mass", "wrong-dimension", 'got "16 gal", needs a mass, for example "12 kg"', "12 kg"),
    ("400 kg", "force", "mass-for-force",
     'got "400 kg", needs a force, for example "400 kgf": kg is a mass', "400 kgf"),
    ("880 lb", "force", "mass-for-force",
     'got "880 lb", needs a force, for example "880 lbf": lb is a mass', "880 lbf"),
    ("2 t", "force", "mass-for-force", 'got "2 t", needs a force, for example "400 kgf": t is a mass', "400 kgf"),
    ("400 kgf", "mass", "wrong-dimension",
     'got "400 kgf", needs a mass, for example "12 kg": kgf is a force', "12 kg"),
    ("200 bar", "pressure", "gauge-or-absolute",
     'got "200 bar", say gauge or absolute: "200 bar gauge" or "200 bar abs"', "200 bar gauge"),
    ("200 bar abs", "gauge pressure", "gauge-or-absolute",
     'got "200 bar abs", needs a gauge pressure, for example "200 bar gauge": it is said to be absolute',
     "200 bar gauge"),
    ("200 bar gauge / 2915 psia", "pressure", "gauge-or-absolute",
     'got "200 bar gauge / 2915 psia", needs a pressure, for example "200 bar gauge / 2900 psi gauge": '
     "gauge is not compared with absolute", "200 bar gauge / 2900 psi gauge"),
    ("12", "mass", "unreadable-quantity", 'got "12", needs a mass, for example "12 kg": say the unit', "12 kg"),
    ("12 kg / 26", "mass", "unreadable-quantity",
     'got "12 kg / 26", needs a mass, for example "12 kg": say the unit of "26"', "12 kg"),
    ("", "mass", "unreadable-quantity", 'got "", needs a mass, for example "12 kg"', "12 kg"),
    ("about 12 kg", "mass", "unreadable-quantity",
     'got "about 12 kg", needs a mass, for example "12 kg": begin with the number', "12 kg"),
    ("inf kg", "mass", "unreadable-quantity",
     'got "inf kg", needs a mass, for example "12 kg": begin with the number', "12 kg"),
    ("1e3 kg", "mass", "unreadable-quantity",
     'got "1e3 kg", needs a mass, for example "12 kg": write the number out, without exponent', "12 kg"),
    ("010 kg", "mass", "unreadable-quantity",
     'got "010 kg", needs a mass, for example "12 kg": a number does not begin with a zero', "12 kg"),
    ("1,200 kg", "mass", "unreadable-quantity",
     'got "1,200 kg", needs a mass, for example "12 kg": the comma may stand for the decimal point or for thousands, '
     'write "1.200 kg" or "1200 kg"', "12 kg"),
    ("1,5 kg", "mass", "unreadable-quantity",
     'got "1,5 kg", needs a mass, for example "12 kg": write a point for the decimal comma, "1.5 kg"', "12 kg"),
    ("1,234.5 kg", "mass", "unreadable-quantity",
     'got "1,234.5 kg", needs a mass, for example "12 kg": write no comma: a point for decimals, "1.5", '
     'a space or nothing between thousands, "10 000"', "12 kg"),
    (".5 kg", "mass", "unreadable-quantity",
     'got ".5 kg", needs a mass, for example "12 kg": write a digit before the point, "0.5"', "12 kg"),
    ("5. kg", "mass", "unreadable-quantity",
     'got "5. kg", needs a mass, for example "12 kg": write a digit after the point, or no point', "12 kg"),
    ("1.2.3 kg", "mass", "unreadable-quantity",
     'got "1.2.3 kg", needs a mass, for example "12 kg": a number has one point; '
     'thousands are parted by a space, "10 000"', "12 kg"),
    ("10 00 kg", "mass", "unreadable-quantity",
     'got "10 00 kg", needs a mass, for example "12 kg": digits are grouped in threes, "10 000", '
     "and only before the point", "12 kg"),
    ("1234567890123456 kg", "mass", "unreadable-quantity",
     'got "1234567890123456 kg", needs a mass, for example "12 kg": the number has more than 15 digits', "12 kg"),
    ("12 Kg", "mass", "unreadable-quantity",
     'got "12 Kg", needs a mass, for example "12 kg": did you mean "kg"? Capitals count.', "12 kg"),
    ("12 killogram", "mass", "unreadable-quantity",
     'got "12 killogram", needs a mass, for example "12 kilogram": did you mean "kilogram"?', "12 kilogram"),
    ("5 furlong", "length", "unreadable-quantity",
     'got "5 furlong", needs a length, for example "1250 mm": its units are mm, cm, m, km, in, ft', "1250 mm"),
    ("20 C", "temperature", "unreadable-quantity",
     'got "20 C", needs a temperature, for example "20 degC": did you mean "degC"?', "20 degC"),
    ("62 L / 16 kg", "volume", "wrong-dimension",
     'got "62 L / 16 kg", needs a volume, for example "62 L": "16 kg" is a mass', "62 L"),
    ("62 L / 62 l", "volume", "unreadable-quantity",
     'got "62 L / 62 l", needs a volume, for example "62 L": both statements are in L', "62 L"),
    ("1 L / 1000 mL / 0.3 US gal", "volume", "unreadable-quantity",
     'got "1 L / 1000 mL / 0.3 US gal", needs a volume, for example "62 L": '
     "one figure is stated in two units at most", "62 L"),
    ("-3 kg", "mass", "negative-quantity",
     'got "-3 kg", needs a mass, for example "12 kg": "-3 kg" is less than nothing', "12 kg"),
    ("-1 bar abs", "pressure", "negative-quantity",
     'got "-1 bar abs", needs a pressure, for example "200 bar gauge": an absolute pressure is not below zero',
     "200 bar gauge"),
    ("-300 degC", "temperature", "negative-quantity",
     'got "-300 degC", needs a temperature, for example "14 degC": it is below absolute zero', "14 degC"),
    ("12\nkgz", "mass", "unreadable-quantity",
     'got "12\\nkgz", needs a mass, for example "12 kg": did you mean "kg"?', "12 kg"),
]  # fmt: skip


@pytest.mark.parametrize(("text", "kind", "rule", "message", "offered"), REFUSED)
def test_what_is_refused_and_in_which_words(text: str, kind: Kind, rule: str, message: str, offered: str) -> None:
    with pytest.raises(QuantityError) as caught:
        read(text, kind)
    error = caught.value
    assert (error.rule, error.message, error.example) == (rule, message, offered)
    assert str(error) == message
    assert read(offered, kind).kind == kind


def test_a_long_text_is_cut_in_the_message() -> None:
    with pytest.raises(QuantityError, match="it is longer than 100 characters") as caught:
        read("9" * 5000, "mass")
    assert len(caught.value.message) < 200


def test_a_refusal_survives_pickling() -> None:
    with pytest.raises(QuantityError) as caught:
        read("12 m", "mass")
    again = pickle.loads(pickle.dumps(caught.value))
    assert vars(again) == vars(caught.value)


# Governs.
@pytest.mark.parametrize("governs", ["560 lbf", "560lbf", " 560  lbf "])
def test_governs_repeats_one_statement(governs: str) -> None:
    quantity = read("560 lbf / 250 daN", "force", governs)
    assert quantity.governs is quantity.stated[0]


@pytest.mark.parametrize("governs", ["570 lbf", "560 kgf", "lbf", "", "560 lbf / 250 daN", "560 kg"])
def test_governs_names_its_two_choices(governs: str) -> None:
    with pytest.raises(QuantityError) as caught:
        read("560 lbf / 250 daN", "force", governs)
    assert caught.value.message == f'got "{governs}", say which governs: "560 lbf" or "250 daN"'
    assert caught.value.rule == "governs-not-stated"


def test_one_statement_has_nothing_to_govern() -> None:
    with pytest.raises(QuantityError, match='only "560 lbf" is stated, so nothing has to govern'):
        read("560 lbf", "force", "560 lbf")


# convert and compare, which find the kind themselves.
@pytest.mark.parametrize(
    ("text", "unit", "value"),
    [
        ("36 ft", "m", 10.9728),  # NIST SP 811 B.7.2
        ("36 in", "cm", 91.44),  # NIST LC 1137
        ("3000 psi", "bar", 206.8427188),  # 3000 x 6.894757293168 kPa, NIST SP 811 App. B
        ("200 bar abs", "psi abs", 2900.754755),  # 20 000 kPa / 6.894757293168 kPa
        ("59 degF", "degC", 15.0),
        ("45 deg", "rad", 0.7853981634),
        ("1 Ah", "C", 3600.0),
        ("60 L/min", "m³/s", 0.001),
    ],
)
def test_conversion(text: str, unit: str, value: float) -> None:
    assert convert(text, unit) == pytest.approx(value, rel=1e-8)


@pytest.mark.parametrize(
    ("text", "unit", "rule"),
    [
        ("12 kg", "lbf", "wrong-dimension"),
        ("12 L", "gal", "bare-gallon"),
        ("12 L", "KG", "unreadable-quantity"),
        ("12 L", "", "unreadable-quantity"),
        ("12 L / 3 US gal", "L", "unreadable-quantity"),
        ("200 bar gauge", "psi abs", "gauge-or-absolute"),
        ("16 gal", "L", "bare-gallon"),
    ],
)
def test_conversion_is_refused(text: str, unit: str, rule: str) -> None:
    with pytest.raises(QuantityError) as caught:
        convert(text, unit)
    assert caught.value.rule == rule


@pytest.mark.parametrize(
    ("text", "message"),
    [
        ("62 L / 16 kg", 'got "62 L / 16 kg", needs a volume, for example "62 L": "16 kg" is a mass'),
        ("62 gal / 16 L", 'got "62 gal / 16 L", say which gallon: "62 US gal" or "62 imp gal"'),
        ("62 wug", 'got "62 wug", needs a quantity, for example "12 kg": its unit is not known'),
        ("-3 kg", 'got "-3 kg", needs a mass, for example "12 kg": "-3 kg" is less than nothing'),
    ],
)
def test_comparison_is_refused(text: str, message: str) -> None:
    with pytest.raises(QuantityError) as caught:
        compare(text)
    assert caught.value.message == message


# Any text at all.
PIECES = st.sampled_from(
    ["1", "0", "62", "16.4", "1e3", ",", ".", "-", "\u2212", " ", "\u202f", "/", " / ", "kg", "lb", "L", "gal",
     "US gal", "bar", "psi", "g", "abs", "°", "C", "²", "\x00", "\ud800", "\u0663", "nan", "inf", "_", "e", "\n"]
)  # fmt: skip
TEXTS = st.one_of(st.text(), st.lists(PIECES, max_size=10).map("".join))


def refusal(attempt: Callable[[], object]) -> QuantityError | None:
    """The refusal that an attempt meets; any other error fails the test."""
    try:
        attempt()
    except QuantityError as error:
        return error
    return None


@given(TEXTS, st.sampled_from(ALL_KINDS), st.one_of(st.none(), TEXTS))
@example("\u0663 kg", "mass", None)
@example("1\ud800", "mass", None)
def test_reading_raises_nothing_but_its_own_error(text: str, kind: Kind, governs: str | None) -> None:
    error = refusal(lambda: read(text, kind, governs))
    if error is None:
        quantity = read(text, kind, governs)
        assert quantity.text == text
        assert quantity.si[0] <= quantity.si[1]
        assert (quantity.slip is None) or quantity.status == "disagree"
        shown(quantity, "up")
    else:
        assert error.message.startswith('got "')
        assert error.message.translate(str.maketrans("", "", "\u202f\u00a0\u2009")).isprintable()
        assert error.message.encode("utf-8")


@given(TEXTS, TEXTS)
def test_comparing_and_converting_raise_nothing_but_their_own_error(text: str, unit: str) -> None:
    for error in (refusal(lambda: compare(text)), refusal(lambda: convert(text, unit))):
        assert error is None or error.rule in RULES


BESIDE = st.sampled_from([("kg", "lb"), ("m", "ft"), ("bar", "psi"), ("L", "US gal"), ("kgf", "lbf"), ("degC", "degF")])


@given(st.decimals("0.001", 10**5, places=3), BESIDE)
def test_conversion_there_and_back(value: Decimal, units: tuple[str, str]) -> None:
    there = convert(f"{value} {units[0]}", units[1])
    back = convert(f"{there:.7f} {units[1]}", units[0])
    assert back == pytest.approx(float(value), abs=1e-6)


def test_a_second_reading_does_not_parse_again(monkeypatch: pytest.MonkeyPatch) -> None:
    parsed: list[str] = []
    parse = reading._parse

    def counted(wanted: Wanted) -> tuple[Stated, ...]:
        parsed.append(wanted.text)
        return parse(wanted)

    monkeypatch.setattr(reading, "_parse", counted)
    reading._read.cache_clear()
    first, second = read("31.25 kg", "mass"), read("31.25 kg", "mass")
    assert first is second
    assert parsed == ["31.25 kg"]
    read("31.25 lb", "mass")
    assert parsed == ["31.25 kg", "31.25 lb"]
