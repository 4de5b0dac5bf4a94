"""The gate of words: what it says, in which number and language, and what it leaves alone."""

from __future__ import annotations

import io
from gettext import GNUTranslations

import pytest
from babel.messages.catalog import Catalog
from babel.messages.mofile import write_mo

from hardpoint.records.airframe import Airframe
from hardpoint.records.base import Chosen
from hardpoint.records.locate import holds_choice, kinds_of
from hardpoint.records.terms import span_words, term, verb, word
from hardpoint.records.texts import Span
from hardpoint.records.vocabulary import all_keys, choices, verbs
from hardpoint.records.ways import two_directions
from hardpoint.words import Language, later, mark, say, say_again, say_count, say_counts, say_in, speaking


def polish(**texts: str | tuple[str, ...]) -> Language:
    """A language with three numbers (one, few, many), as the Unicode plural rules have it for Polish."""
    catalog = Catalog(locale="pl")
    for text, told in texts.items():
        catalog.add((text, f"{text}s") if isinstance(told, tuple) else text, told)
    catalog.add("lift", "podnieś", context="step")
    binary = io.BytesIO()
    write_mo(binary, catalog)
    binary.seek(0)
    return Language(GNUTranslations(binary), "pl")


def test_english_as_it_stands() -> None:
    assert say("{count} of {total} types", count=3, total=10) == "3 of 10 types"
    assert say("a {brace} that nobody fills") == "a {brace} that nobody fills"
    assert [say_count(n, "{count} tie", "{count} ties") for n in (0, 1, 2)] == ["0 ties", "1 tie", "2 ties"]
    assert say_in("step", "lift") == "lift"
    assert mark("x") == "x"


def test_what_an_author_wrote_is_not_read_as_a_text() -> None:
    """A record may hold braces, and the very words of the interface."""
    assert say("near the {landmark}", landmark="{count} {x!r}") == "near the {count} {x!r}"
    with speaking(polish(nothing="nic")):
        assert word("nothing at all") == "nothing at all"
        assert word(Chosen("nothing")) == "nic"


def test_another_language_within_a_block_only() -> None:
    with speaking(polish(Open="Otwórz")):
        assert say("Open") == "Otwórz"
        assert say("Close") == "Close"
        assert (verb("lift"), term("lift")) == ("Podnieś", "lift")
    assert say("Open") == "Open"


def test_numbers_of_another_language() -> None:
    """1 plik, 2 pliki, 5 plików, 22 pliki: Unicode CLDR plural rules, Polish."""
    with speaking(polish(file=("{count} plik", "{count} pliki", "{count} plików"))):
        told = [say_count(n, "file", "files") for n in (1, 2, 5, 12, 22)]
        texts = say_counts(25, "file", "files")
    assert told == ["1 plik", "2 pliki", "5 plików", "12 plików", "22 pliki"]
    assert [texts[n].replace("{count}", str(n)) for n in (1, 2, 5, 12, 22)] == told


def test_a_script_gets_no_more_texts_than_it_needs() -> None:
    assert say_counts(500, "{count} entry", "{count} entries") == [
        "{count} entries",
        "{count} entry",
        "{count} entries",
    ]


def test_what_was_made_without_a_page_is_said_on_it() -> None:
    made = later("the second looks like {unit}", unit=later("kgf, not daN"))
    assert made == "the second looks like kgf, not daN"
    texts = {"the second looks like {unit}": "drugie wygląda na {unit}", "kgf, not daN": "kgf, nie daN"}
    with speaking(polish(**texts)):
        assert say_again(made) == "drugie wygląda na kgf, nie daN"
        assert say_again("an author's words") == "an author's words"


@pytest.mark.parametrize(
    ("way", "parts"),
    [
        ("aft", None),
        ("free end aft", ("free end", "aft", "")),
        ("free end outboard to aft", ("free end to", "outboard", "aft")),
        ("towards floor and pilot's left", ("both", "towards floor", "pilot's left")),
        ("out of the panel", None),
        ("bread and butter", None),
    ],
)
def test_a_way_of_two_directions_is_told_by_both(way: str, parts: tuple[str, str, str] | None) -> None:
    assert two_directions(way) == parts
    assert term(way) == way
    with speaking(polish(aft="do tyłu")):
        assert term(way) == way.replace("aft", "do tyłu")


@pytest.mark.parametrize("text", ["1200", "-150 to 20.5", "below 700", "forward of 1200", "above 0", "aft of 1700"])
def test_a_stretch_is_told_as_it_was_written(text: str) -> None:
    assert span_words(Span(text, None, None)) == text


def test_the_models_words_and_the_authors_are_told_apart_by_path() -> None:
    path = ("exits", "sill-handle", "steps", 0, "way")
    assert kinds_of(Airframe, path) == ("key", "id", "key", "id", "key")
    assert kinds_of(Airframe, ("checked", "load_points", "how")) == ("key", "choice", "key")
    assert holds_choice(Airframe, path)
    assert holds_choice(Airframe, ("approach", "come_from", 0))
    assert not holds_choice(Airframe, ("exits", "sill-handle", "steps", 0, "what"))


def test_the_vocabulary_is_that_of_the_models() -> None:
    assert {"walked and complete", "towards floor", "tie-down", "owner's practice", "none", "not fitted"} <= set(
        choices()
    )
    assert not {"mm", "in", "A", "3AA", "load_points", ""} & set(choices())
    assert {"off is", "load points", "from", "governs"} <= set(all_keys())
    assert {"press", "turn"} <= set(verbs())
