"""Guesses for mistyped words; the distances of the pairs are counted by hand."""

from __future__ import annotations

import random

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from hardpoint.nearest import did_you_mean

KEYS = ["allowable", "allowable_is_for", "basis", "bl", "bottles", "capacity", "controls", "exits", "fs", "lines"]
KEYS += ["load_points", "place", "side", "tanks", "tails", "wl", "zones"]


@pytest.mark.parametrize(
    ("word", "meant"),
    [
        ("tank", "tanks"),
        ("tnaks", "tanks"),
        ("load-points", "load_points"),
        ("Load Points", "load_points"),
        ("LOADPOINT", "load_points"),
        ("capacities", "capacity"),
        ("alowable", "allowable"),
        ("allowable is for", "allowable_is_for"),
        ("boottels", "bottles"),
        ("sf", "fs"),
        ("FS", "fs"),
        ("zone", "zones"),
    ],
)
def test_a_near_word_is_named(word: str, meant: str) -> None:
    assert did_you_mean(word, KEYS) == meant


@pytest.mark.parametrize("word", ["", "-", "gl", "xs", "propeller", "basisbasis", "fs", "tanks", "x" * 100_000])
def test_no_guess_is_better_than_a_wrong_one(word: str) -> None:
    """``gl`` is one letter from both ``bl`` and ``wl``; a word that is known needs no guess."""
    assert did_you_mean(word, KEYS) == ""


def test_nothing_known_nothing_meant() -> None:
    assert did_you_mean("tanks", []) == ""


def test_of_equals_the_first_in_the_alphabet() -> None:
    assert did_you_mean("taxls", ["taqls", "tabls", "tazls"]) == "tabls"


@settings(deadline=None)
@given(st.text(max_size=12), st.lists(st.text(max_size=12), max_size=8), st.randoms(use_true_random=False))
def test_the_order_of_the_known_does_not_matter(word: str, known: list[str], chance: random.Random) -> None:
    guess = did_you_mean(word, known)
    assert guess in ["", *known]
    chance.shuffle(known)
    assert did_you_mean(word, iter(known)) == guess
