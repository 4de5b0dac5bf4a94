"""A tail's differences over its type's record."""

from __future__ import annotations

import copy
import pathlib
from typing import Any

import pytest

from hardpoint import load
from hardpoint.records.airframe import Airframe
from hardpoint.records.fleet import Aircraft, Override
from hardpoint.records.known import NonValue
from hardpoint.records.locate import admitted, keys_of, leads_somewhere, model_at
from hardpoint.records.override import Clash, lay_over, overrides_of, parts
from hardpoint.records.tail import Tail
from hardpoint.records.trees import in_words, leaves, value_at
from tests.examples.fleets import DAY, GOOD, good_copy, spoil

TYPE: dict[str, Any] = {
    "controls": {
        "master": {"kind": "key", "off_is": "anticlockwise", "beyond_off": "nothing"},
        "mixture": {"kind": "knob", "off_is": "aft"},
    },
    "exits": {"handle": {"opens": "canopy", "steps": [{"do": "press"}, {"do": "turn"}]}, "window": {"opens": "canopy"}},
    "landmarks": {"canopy bow": {"fs": "2250"}},
}


def tail(*differs: dict[str, Any]) -> Tail:
    return Tail.model_validate(
        {"tail": "QQ-QMA", "of": "quenby-merle", "markings": "unknown", "differs": list(differs), "declared": "unknown"}
    )


def laid(*differs: dict[str, Any]) -> tuple[dict[str, Any], list[Clash], tuple[Override, ...]]:
    """The tree with differences in it, the clashes, the differences; the type's tree must not have changed."""
    before = copy.deepcopy(TYPE)
    overrides = overrides_of(tail(*differs), TYPE)
    tree, clashes = lay_over(TYPE, overrides)
    assert before == TYPE
    return tree, clashes, overrides


def changed(tree: dict[str, Any]) -> dict[tuple[str | int, ...], str | None]:
    """Which scalars are otherwise than the type's, None for those that are gone."""
    old, new = dict(leaves(TYPE)), dict(leaves(tree))
    return {path: new.get(path) for path in {*old, *new} if old.get(path) != new.get(path)}


def test_a_value_by_its_path() -> None:
    tree, clashes, (override,) = laid({"at": "controls.master.kind", "type_says": "key", "here": "toggle"})
    assert clashes == []
    assert changed(tree) == {("controls", "master", "kind"): "toggle"}
    assert override.kind == "changed"


def test_an_addition_at_the_end_and_before_another() -> None:
    new = {"opens": "canopy"}
    tree, clashes, overrides = laid(
        {"at": "exits.panel", "type_says": "nothing", "here": new},
        {"at": "exits.lever", "type_says": "nothing", "here": new, "before": "window"},
        {"at": "exits.pane", "type_says": "nothing", "here": new, "before": "lever"},
    )
    assert clashes == []
    assert list(tree["exits"]) == ["handle", "pane", "lever", "window", "panel"]
    assert [override.kind for override in overrides] == ["added"] * 3
    assert tree["exits"]["pane"] is not new


def test_a_removal_of_an_entry() -> None:
    tree, clashes, (override,) = laid({"at": "exits.window", "type_says": {"opens": "canopy"}, "here": "nothing"})
    assert clashes == []
    assert list(tree["exits"]) == ["handle"]
    assert override.kind == "removed"


def test_nothing_under_a_key_of_a_part_is_the_word_itself() -> None:
    """ "Nothing lies beyond off" is an answer: silence would read as UNKNOWN, and the key must not go."""
    tree, clashes, (override,) = laid({"at": "controls.master.kind", "type_says": "key", "here": "nothing"})
    assert clashes == []
    assert tree["controls"]["master"]["kind"] == "nothing"
    assert override.kind == "changed"


def test_nothing_that_the_type_says_in_words_is_no_addition() -> None:
    tree, clashes, (override,) = laid(
        {"at": "controls.master.beyond_off", "type_says": "nothing", "here": "right wing"}
    )
    assert clashes == []
    assert tree["controls"]["master"]["beyond_off"] == "right wing"
    assert override.kind == "changed"


def test_a_step_list_is_replaced_whole() -> None:
    steps = [{"do": "pull"}]
    tree, clashes, _ = laid({"at": "exits.handle.steps", "type_says": [{"do": "press"}, {"do": "turn"}], "here": steps})
    assert clashes == []
    assert tree["exits"]["handle"] == {"opens": "canopy", "steps": steps}


@pytest.mark.parametrize(
    "at", ["exits.handle.steps.0", "exits.handle.steps.0.do", "exits.handle.steps.9", "exits.handle.steps.²"]
)
def test_a_single_step_is_not_replaced(at: str) -> None:
    tree, clashes, _ = laid({"at": at, "type_says": "press", "here": "pull"})
    assert [(clash.rule, clash.key, clash.example) for clash in clashes] == [
        ("difference-in-a-list", "at", "exits.handle.steps")
    ]
    assert tree == TYPE


def test_a_landmark_has_a_blank_in_its_name() -> None:
    tree, clashes, _ = laid({"at": "landmarks.canopy bow.fs", "type_says": "2250", "here": "2300"})
    assert clashes == []
    assert changed(tree) == {("landmarks", "canopy bow", "fs"): "2300"}


def test_outdated() -> None:
    _, (clash,), _ = laid({"at": "controls.master.off_is", "type_says": "clockwise", "here": "aft"})
    assert (clash.rule, clash.key, clash.read, clash.example) == (
        "difference-outdated",
        "type_says",
        "clockwise",
        "anticlockwise",
    )


def test_outdated_where_the_type_says_a_whole_part() -> None:
    _, (clash,), _ = laid({"at": "exits.window", "type_says": {"opens": "hatch"}, "here": "nothing"})
    assert (clash.rule, clash.read, clash.example) == ("difference-outdated", "{opens: hatch}", "{opens: canopy}")


ADDING = ' (for something added, write "type_says: nothing")'
OFF = "controls.master.off_is"


@pytest.mark.parametrize(
    ("at", "message", "example"),
    [
        ("controls.master.of_is", 'there is no "of_is" under controls.master; did you mean "off_is"?', OFF),
        ("controls.mastre.off_is", 'there is no "mastre" under controls; did you mean "master"?', OFF),
        ("control.master.off_is", 'there is no "control" in the type\'s record; did you mean "controls"?', OFF),
        ("controls.starter", 'there is no "starter" under controls; known there: master, mixture' + ADDING, ""),
        ("controls.master.kind.shape", 'there is no "shape" under controls.master.kind; known there: nothing', ""),
        ("", 'there is no "" in the type\'s record; known there: controls, exits, landmarks' + ADDING, ""),
        ("..", 'there is no "" in the type\'s record; known there: controls, exits, landmarks', ""),
        ("controls.", 'there is no "" under controls; known there: master, mixture' + ADDING, ""),
    ],
)
def test_no_such_path(at: str, message: str, example: str) -> None:
    tree, clashes, _ = laid({"at": at, "type_says": "key", "here": "toggle"})
    assert [(clash.rule, clash.message, clash.example) for clash in clashes] == [
        ("difference-no-place", message, example)
    ]
    assert tree == TYPE


def test_twice_and_one_inside_the_other_whatever_their_order() -> None:
    whole = {"at": "exits.window", "type_says": {"opens": "canopy"}, "here": "nothing"}
    inside = {"at": "exits.window.opens", "type_says": "canopy", "here": "hatch"}
    for differs in ([whole, whole], [whole, inside], [inside, whole]):
        tree, clashes, _ = laid(*differs)
        assert [(clash.rule, clash.index) for clash in clashes] == [("difference-twice", 1)]
        assert tree == TYPE


def test_all_clashes_are_told_in_one_go() -> None:
    _, clashes, _ = laid(
        {"at": "controls.master.kind", "type_says": "toggle", "here": "lever"},
        {"at": "exits.door", "type_says": "nothing", "here": "nothing"},
        {"at": "controls.mixture.kind", "type_says": "knob", "here": "knob"},
        {"at": "controls.mixture.kind", "type_says": "knob", "here": "lever"},
    )
    assert [(clash.rule, clash.index) for clash in clashes] == [
        ("difference-outdated", 0),
        ("difference-says-nothing", 1),
        ("difference-says-nothing", 2),
        ("difference-twice", 3),
    ]


def test_undeclared_differences_are_none_that_can_be_laid_over() -> None:
    undeclared = tail().model_copy(update={"differs": NonValue.UNKNOWN})
    assert overrides_of(undeclared, TYPE) == ()


def aircraft(name: str) -> Aircraft:
    return load.fleet(GOOD).tails[name]


def test_the_result_is_a_whole_record_that_remembers_what_differs() -> None:
    plane = aircraft("QQ-QMB")
    assert plane.airframe.controls["magneto-left"].off_is == "towards canopy"  # type: ignore[index, union-attr]
    assert plane.of.airframe.controls["magneto-left"].off_is == "towards floor"  # type: ignore[index, union-attr]
    assert list(plane.airframe.exits) == ["sill-handle", "left-window", "side-window"]
    assert list(plane.of.airframe.exits) == ["sill-handle", "side-window"]
    assert [(override.at[-1], override.kind, override.because) for override in plane.overrides] == [
        ("off_is", "changed", ""),
        ("off_is", "changed", "both were fitted upside down"),
        ("left-window", "added", ""),
    ]
    assert Airframe.model_validate(plane.tree) == plane.airframe
    assert plane.declared


def test_a_path_leads_to_the_line_where_its_words_stand() -> None:
    plane = aircraft("QQ-QMB")
    own = (GOOD / "tails" / "QQ-QMB.yaml").read_text(encoding="utf-8").split("\n")
    of_type = (GOOD / "types" / "quenby-merle.yaml").read_text(encoding="utf-8").split("\n")

    def line(path: tuple[str | int, ...]) -> tuple[str, str]:
        at = plane.written.where(path)
        return at.file.rsplit("/", 2)[-2], (own if "/tails/" in f"/{at.file}" else of_type)[at.line - 1].strip()

    assert line(("exits", "left-window", "steps", 0, "way"))[0] == "tails"
    assert line(("exits", "left-window", "label")) == ("tails", "label: BREAK HERE")
    assert line(("controls", "magneto-left", "off_is"))[1].startswith("- {at: controls.magneto-left.off_is")
    assert line(("controls", "magneto-left", "kind")) == ("types", "kind: toggle")
    assert line(("exits", "sill-handle", "label")) == ("types", "label: not fitted")


def test_a_difference_that_makes_the_record_invalid_is_told_at_the_tail(
    tmp_path: pathlib.Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    fleet = good_copy(tmp_path, monkeypatch)
    differs = (
        "differs:\n"
        "  - {at: controls.master.off_is, type_says: anticlockwise, here: down}\n"
        "  - {at: controls.magneto-left.kind, type_says: toggle, here: {a: lever}}\n"
        "  - {at: exits.door, type_says: nothing, here: {opens: canopy}}\n"
        "  - {at: hazards, type_says: not fitted, here: [1, 2]}\n"
    )
    change = {"file": "tails/QQ-QMA.yaml", "find": "differs: none recorded\n", "put": differs}
    spoil(fleet, change, monkeypatch)
    checked = load.check(fleet, DAY)
    assert {(finding.file, finding.line, finding.rule) for finding in checked.findings} == {
        ("fleet/tails/QQ-QMA.yaml", 6, "way-not-of-the-airframe"),
        ("fleet/tails/QQ-QMA.yaml", 7, "not-one-of"),
        ("fleet/tails/QQ-QMA.yaml", 8, "missing-key"),
        ("fleet/tails/QQ-QMA.yaml", 9, "wrong-shape"),
    }
    assert "QQ-QMA" not in checked.fleet.tails
    assert checked.fleet.unreadable == {"QQ-QMA"}
    assert checked.fleet.types["quenby-merle"].airframe.controls["master"].off_is == "anticlockwise"  # type: ignore[index, union-attr]


@pytest.mark.parametrize(
    ("difference", "rule"),
    [
        ("allowable.stated, type_says: 560 lbf / 249 daN, here: 600 lbf / 267 daN", "governs-not-stated"),
        ("allowable.governs, type_says: 560 lbf, here: nothing", "governed-pair"),
    ],
)
def test_what_is_no_longer_right_in_the_type_is_told_at_the_tail_with_its_place_there(
    difference: str, rule: str, tmp_path: pathlib.Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    fleet = good_copy(tmp_path, monkeypatch)
    differs = f"differs:\n  - {{at: load_points.firewall-pair.{difference}}}\n"
    spoil(fleet, {"file": "tails/QQ-QMA.yaml", "find": "differs: none recorded\n", "put": differs}, monkeypatch)
    (found,) = load.check(fleet, DAY).findings
    assert (found.rule, found.file, found.line, found.path) == (rule, "fleet/tails/QQ-QMA.yaml", 5, "differs")
    assert found.message.startswith("with these differences, load_points.firewall-pair.allowable")
    (there,) = found.related
    assert (there.file, there.line) == ("fleet/types/quenby-merle.yaml", 202)


def test_findings_of_the_type_are_not_told_again_at_its_tails(
    tmp_path: pathlib.Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """QQ-QMB has differences, so the rules run over it too; only what is new there counts."""
    fleet = good_copy(tmp_path, monkeypatch)
    spoil(fleet, {"find": "length: 6.4 m", "put": "length: 7.1 m"}, monkeypatch)
    spoil(fleet, {"find": "62 L / 16.4 US gal", "put": "62 L / 13.6 US gal"}, monkeypatch)
    found = load.check(fleet, DAY).findings
    assert [(finding.rule, finding.file) for finding in found] == [
        ("length-disagrees", "fleet/types/quenby-merle.yaml"),
        ("pair-disagrees", "fleet/types/quenby-merle.yaml"),
    ]


def test_looking_into_trees() -> None:
    assert value_at(TYPE, parts("exits.handle.steps.1.do")) == "turn"
    for path in (
        "exits.handle.steps.2",
        "exits.handle.steps.-1",
        "exits.handle.steps.01",
        "exits.handle.steps.²",
        "a.b",
        "",
    ):
        assert value_at(TYPE, parts(path)) is None
    assert value_at(TYPE, ("exits", "handle", "steps", "9" * 5000)) is None
    assert in_words(TYPE["exits"]["handle"]) == "{opens: canopy, steps: [{do: press}, {do: turn}]}"


def test_looking_into_models() -> None:
    assert model_at(Airframe, ("controls", "master")) is not None
    assert "off_is" in keys_of(model_at(Airframe, ("controls", "master")))  # type: ignore[arg-type]
    assert "from" in keys_of(model_at(Airframe, ("exits", "any-id")))  # type: ignore[arg-type]
    assert model_at(Airframe, ("controls",)) is None
    assert model_at(Airframe, ("nowhere", "at", "all")) is None
    assert admitted(Airframe, ("controls", "master", "off_is")) == tuple(NonValue)
    assert admitted(Airframe, ("controls", "master", "kind")) == (NonValue.UNKNOWN,)
    assert admitted(Airframe, ("controls", "master", "function")) == ()
    assert leads_somewhere(Airframe, parts("seats.*.ties.*.kind"))
    assert leads_somewhere(Airframe, parts("exits.*.from"))
    assert not leads_somewhere(Airframe, parts("seats.*.ties.*.kinds"))
    assert not leads_somewhere(Airframe, parts("*.ties"))
    assert not leads_somewhere(Airframe, parts("name.short"))


@pytest.mark.parametrize("before", ["lever", "window", "handles"])
def test_before_names_what_stands_there_when_it_is_done(before: str) -> None:
    """Not what is added further down, removed by the same tail, or mistyped."""
    new = {"opens": "canopy"}
    _, clashes, _ = laid(
        {"at": "exits.panel", "type_says": "nothing", "here": new, "before": before},
        {"at": "exits.lever", "type_says": "nothing", "here": new},
        {"at": "exits.window", "type_says": new, "here": "nothing"},
    )
    assert [(clash.rule, clash.key, clash.message) for clash in clashes] == [
        ("difference-no-place", "before", f'there is no "{before}" beside it; known there: handle')
    ]
