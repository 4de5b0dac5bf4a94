"""How answers are told: non-values in words, conversions beside, differences once and where they bite."""

from __future__ import annotations

from pathlib import Path

import pytest

from hardpoint import load
from hardpoint.pages import addresses
from hardpoint.pages.shown import shown_tail, shown_type
from hardpoint.pages.telling import do_not, folded, label_of, several, tell, tell_quantity, way_words
from hardpoint.pages.view import Fact, Value, Was
from hardpoint.records.known import NonValue
from hardpoint.units import read

FLEET = load.fleet(Path(__file__).parents[2] / "fleet")


@pytest.mark.parametrize(
    ("answer", "text", "state"),
    [
        (NonValue.UNKNOWN, "UNKNOWN", "unknown"),
        (NonValue.NOT_FITTED, "not fitted", "not fitted"),
        (NonValue.NOT_APPLICABLE, "not applicable", "not applicable"),
        (None, "UNKNOWN", "unknown"),
    ],
)
def test_what_is_no_value_is_said_in_words(answer: NonValue | None, text: str, state: str) -> None:
    assert (tell(answer).text, tell(answer).state) == (text, state)


def test_conversions_stand_beside_the_authors_figure() -> None:
    told = tell_quantity(read("11 kg", "mass"), ("canopies", "main", "mass"))
    assert told.text == "11 kg"
    assert told.beside == ("25 lb",)  # 24.25 lb: a mass to be held is rounded up


def test_an_allowable_is_rounded_down() -> None:
    """400 kgf is 881.8 lbf; a limit is never rounded through the limit (ASME A112.18.1 / CSA B125.1, A.2(e))."""
    assert tell_quantity(read("400 kgf", "force"), ("load_points", "x", "allowable")).beside == ("881 lbf",)


def test_a_disagreement_is_named_and_nothing_is_chosen() -> None:
    told = tell_quantity(read("62 L / 13.6 US gal", "volume"), ("tanks", "main", "capacity"))
    assert told.text == "62 L / 13.6 US gal"
    assert "disagree" in told.remark
    assert "neither was chosen" in told.remark


def test_one_unknown_among_several_is_seen() -> None:
    told = several([("upright", Value("opens")), ("inverted", tell(NonValue.UNKNOWN))])
    assert told.state == "unknown"
    assert [part.value.state for part in told.parts] == ["said", "unknown"]


def test_nothing_unknown_and_nothing_that_differs_is_folded_away() -> None:
    plain = Fact("Looks", Value("black"))
    unknown, differs = (
        Fact("Feels", tell(NonValue.UNKNOWN)),
        Fact("Label", Value("OPEN"), was=(Was("x", "", "nothing there"),)),
    )
    seen, more = folded([plain, unknown, differs])
    assert seen == (unknown, differs)
    assert more == (plain,)


def test_an_added_part_is_told_once() -> None:
    shown = shown_tail(FLEET.tails["QQ-TWB"])
    assert [was.says for was in shown.was(("exits", "outside-handle"))] == ["nothing there"]
    assert shown.was(("exits", "outside-handle", "looks")) == ()
    assert shown.was(("exits", "quarter-pane")) == ()


def test_an_added_exit_stands_where_its_author_put_it() -> None:
    """The outside handle is tried before the pane is broken."""
    assert list(FLEET.tails["QQ-TWB"].airframe.exits)[:2] == ["outside-handle", "quarter-pane"]
    assert "outside-handle" not in FLEET.types["hobmire-twain"].airframe.exits


def test_a_type_has_no_difference() -> None:
    assert shown_type(FLEET.types["hobmire-twain"]).was(("exits",)) == ()


def test_a_turn_says_from_where_it_is_seen() -> None:
    assert way_words("clockwise", "facing it") == "clockwise, facing it"
    assert way_words("anticlockwise", "pilot") == "anticlockwise, as the pilot sees it"
    assert way_words(NonValue.UNKNOWN, None) == "which way: UNKNOWN"


def test_addresses_of_the_contract() -> None:
    assert addresses.type_page("kelmarrow-thimble") == "types/kelmarrow-thimble.html"
    assert addresses.structure_page("kelmarrow-thimble") == "types/kelmarrow-thimble/structure.html"
    assert addresses.tail_page("QQ-BOD") == "tails/QQ-BOD.html"
    assert addresses.anchor(("controls", "magneto-left", "off_is")) == "control-magneto-left"
    assert addresses.anchor(("seats", "rear", "ties", "harness", "kind")) == "tie-rear-harness"


@pytest.mark.parametrize(
    ("target", "page", "href"),
    [
        ("index.html", "types/x.html", "../index.html"),
        ("types/x.html#open", "types/x/structure.html", "../x.html#open"),
        ("types/x.html", "types/x.html", "x.html"),
        ("types/x.html#open", "types/x.html", "#open"),
        ("types/x/structure.html", "types/x.html", "x/structure.html"),
    ],
)
def test_links_are_relative(target: str, page: str, href: str) -> None:
    assert addresses.relative(target, page) == href


def test_paths_in_plain_words() -> None:
    assert label_of(("exits", "sill-handle", "steps", 0, "way")) == "exits, sill-handle, steps, 1, way"


@pytest.mark.parametrize(
    "words", ["step on the wing root", "do not step on the wing root", "Never: step on the wing root"]
)
def test_a_prohibition_never_reads_as_an_instruction(words: str) -> None:
    assert do_not(words) == (("Do NOT", Value("step on the wing root")),)


def test_no_prohibition_no_line() -> None:
    assert do_not(None) == ()
