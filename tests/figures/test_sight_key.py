"""The sight key: who stays, and that the question asked splits best."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.stats import entropy

from hardpoint.figures.sight_key import QUESTIONS, best_question, features, split, surprise, two_signs
from hardpoint.load import fleet as read_fleet
from hardpoint.records.fleet import Fleet
from hardpoint.records.known import entries
from hardpoint.records.ways import ATTITUDES, Attitude
from tests.pages.sweeps import read, with_answer
from tests.site.support import FLEET

TOLD = st.fixed_dictionaries({}, optional={q.id: st.sampled_from(list(q.answers)) for q in QUESTIONS})
CANDIDATES = st.dictionaries(st.text("abcdefgh", min_size=1, max_size=3), TOLD, min_size=1, max_size=8)


@pytest.fixture(scope="module")
def fleet() -> Fleet:
    return read_fleet(FLEET)


@pytest.mark.parametrize(
    ("type_id", "told"),
    [
        ("aldermoss-hushwing", {"wings": "high", "power": "none", "tail": "top", "gear": "one", "heads": "1"}),
        ("brinemarsh-coble", {"wings": "high", "power": "behind", "braces": "struts", "heads": "more"}),
        ("maplewick-gavotte", {"wings": "two", "power": "nose", "gear": "tail", "braces": "struts", "heads": "2"}),
        ("kelmarrow-thimble", {"wings": "low", "gear": "tail", "braces": "clean", "heads": "1"}),
        ("vostrelle-jinx", {"wings": "mid", "gear": "tail", "heads": "1"}),
        ("skellrigg-wicket", {"wings": "high", "gear": "nose", "braces": "struts"}),
        ("drosmund-halberd", {"power": "jet", "gear": "nose", "heads": "2"}),
    ],
)
def test_features_are_those_of_the_description(fleet: Fleet, type_id: str, told: dict[str, str]) -> None:
    found = features(fleet.types[type_id].airframe)
    assert {key: found.get(key) for key in told} == told


@pytest.mark.parametrize("sizes", [[2, 2], [1, 3], [5, 1, 1], [4]])
def test_bits_as_another_library_counts_them(sizes: list[int]) -> None:
    """scipy.stats.entropy, base 2."""
    assert surprise(sizes) == pytest.approx(float(entropy(sizes, base=2)))


@given(CANDIDATES)
def test_nobody_is_lost_and_who_does_not_tell_stays_everywhere(candidates: dict[str, dict[str, str]]) -> None:
    for question in QUESTIONS:
        groups = split(candidates, question)
        for answer, group in groups.items():
            assert set(group) == {n for n, told in candidates.items() if told.get(question.id) in (None, answer)}
        if groups:
            assert set().union(*map(set, groups.values())) == set(candidates)


@given(CANDIDATES, st.sampled_from(ATTITUDES))
def test_the_question_leaves_fewest_by_brute_force(candidates: dict[str, dict[str, str]], attitude: Attitude) -> None:
    """Every question tried: candidates met one by one, each answering for itself, who does not tell by each answer."""
    best = best_question(candidates, attitude)
    rated = {}
    for question in QUESTIONS:
        groups = [len(group) for group in split(candidates, question).values()]
        if attitude in question.visible and len(groups) > 1 and max(groups) < len(candidates):
            met = [size for size in groups for _ in range(size)]
            rated[question.id] = sum(met) / len(met)
    if best is None:
        assert rated == {}
    else:
        assert rated[best.id] == pytest.approx(min(rated.values()))


def test_what_cannot_be_seen_is_not_asked(fleet: Fleet) -> None:
    told = {id_: features(type_.airframe) for id_, type_ in fleet.types.items()}
    for attitude in ATTITUDES:
        question = best_question(told, attitude)
        assert question is not None
        assert attitude in question.visible


def test_a_record_without_an_outline_tells_no_shape(fleet: Fleet) -> None:
    airframe = read(with_answer(fleet.types["vostrelle-jinx"].tree, ("profile",), "unknown"))
    assert airframe is not None
    assert not {"wings", "tail", "gear", "braces"} & set(features(airframe))


def test_two_signs_one_a_shape_in_every_attitude(fleet: Fleet) -> None:
    for type_ in fleet.types.values():
        signs = entries(type_.airframe.signs).values()
        for attitude in ATTITUDES:
            told = list(two_signs(type_.airframe, attitude))
            shapes = [sign.see for sign in signs if sign.of == "shape" and attitude in sign.visible]
            assert len(told) <= 2
            assert told[:1] == shapes[:1] or not shapes


def test_groups_of_nothing_tell_nothing() -> None:
    with pytest.raises(ValueError, match="not all 0"):
        surprise([0, 0])
