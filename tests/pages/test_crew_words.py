"""How a crew page says things: names as the trade writes them, places, ways, pairs of figures, what differs."""

from __future__ import annotations

import dataclasses

import pytest

from hardpoint.findings import Path as At
from hardpoint.pages import Site
from hardpoint.pages.after import upper_side
from hardpoint.pages.crew import tail_crew_page, type_crew_page
from hardpoint.pages.freeing import freeing
from hardpoint.pages.opening import opening
from hardpoint.pages.shown import Shown, shown_type
from hardpoint.pages.shutdown import shutting_down
from hardpoint.pages.telling import in_full, place_words, step_of, tell_quantity
from hardpoint.pages.terms import title_of
from hardpoint.pages.vessels import tanks, way_of
from hardpoint.pages.view import CrewPage, Facts, Lines, Section, Steps
from hardpoint.records.known import NonValue, Tree, entries, said
from hardpoint.records.places import Place, Route
from hardpoint.records.ways import Step
from hardpoint.units import read as read_quantity
from tests.pages.sweeps import DAY, FLEET, read, soup, with_answer


def _shown(type_id: str, *changes: tuple[At, Tree]) -> Shown:
    type_ = FLEET.types[type_id]
    tree = type_.tree
    for path, answer in changes:
        tree = with_answer(tree, path, answer)
    airframe = read(tree)
    assert airframe is not None
    return dataclasses.replace(shown_type(type_), airframe=airframe)


def _steps(section: Section) -> list[Steps]:
    return [block for block in section.blocks if isinstance(block, Steps)]


@pytest.mark.parametrize(
    ("name", "title"),
    [
        ("magneto-left", "Magneto left"),
        ("hp-cock-front", "HP cock front"),
        ("lp-lever", "LP lever"),
        ("anti-g-hose", "Anti-g hose"),
        ("negative-g-strap", "Negative-g strap"),
        ("help", "Help"),
    ],
)
def test_names_are_written_as_the_trade_writes_them(name: str, title: str) -> None:
    assert title_of(name) == title


@pytest.mark.parametrize(
    ("place", "words"),
    [
        ({"panel": "upright console", "side": "right"}, "upright console, right side"),
        ({"panel": "right sill", "side": "right"}, "right sill"),
        ({"panel": "left chest", "side": "unknown"}, "left chest, side UNKNOWN"),
        (
            {"feel": "unknown", "near": "canopy bow", "side": "left"},
            "how it feels: UNKNOWN, near the canopy bow, left side",
        ),
        ({"feel": "a hatch in the wing", "on": "wing"}, "a hatch in the wing"),
        ({"feel": "a round hatch", "on": "wing"}, "a round hatch, on the wing"),
        ({"fs": "2400"}, "place not told by a landmark"),
    ],
)
def test_a_place_keeps_its_side_and_its_landmark(place: dict[str, str], words: str) -> None:
    assert place_words(Place.model_validate(place)) == words


def test_a_line_that_comes_back_to_a_side_is_told_so() -> None:
    spots = [
        {"fs": str(at), "side": side} for at, side in ((1900, "left"), (1800, "centre"), (900, "left"), (450, "left"))
    ]
    assert way_of(Route.model_validate({"path": spots})).text == "left then centre then left"


@pytest.mark.parametrize(
    ("step", "told"),
    [
        (
            {"do": "turn", "what": "handle", "way": "clockwise", "seen_from": "facing it", "until": "it springs out"},
            ("clockwise, facing it", ", until it springs out"),
        ),
        ({"do": "press", "what": "button", "until": "it clicks"}, ("", "until it clicks")),
        ({"do": "cut", "what": "strap", "using": "shears"}, ("", "(shears)")),
    ],
)
def test_a_step_reads_as_a_sentence(step: dict[str, str], told: tuple[str, str]) -> None:
    made = step_of(Step.model_validate(step))
    assert (made.way, made.until) == told


def test_how_far_a_step_goes_is_not_guessed() -> None:
    assert step_of(Step.model_validate({"do": "pull", "what": "knob", "way": "aft", "by": "unknown"})).unknown


def test_each_of_two_figures_that_disagree_has_its_own_conversion() -> None:
    """1 lbf = 4.448 222 N (NIST SP 811, table B.8): 1200 lbf = 533.8 daN, 540 daN = 1214 lbf."""
    told = tell_quantity(read_quantity("1200 lbf / 540 daN", "force"))
    assert told.beside == ("1200 lbf is 533.8 daN", "540 daN is 1214 lbf")
    assert "disagree" in in_full(told)


def test_where_one_figure_governs_the_other_is_not_converted() -> None:
    told = tell_quantity(read_quantity("1200 lbf / 540 daN", "force", "1200 lbf"))
    assert told.beside == ("1200 lbf is 533.8 daN",)
    assert "1200 lbf governs" in told.remark


@pytest.mark.parametrize("answer", ["unknown", "not fitted"])
def test_what_is_not_fitted_stands_in_its_place_in_the_order(answer: str) -> None:
    section = shutting_down(_shown("vostrelle-jinx", (("controls", "mixture"), answer)))
    ids = [block.id for block in section.blocks if isinstance(block, Steps | Facts)]
    assert [id_.removeprefix("control-") for id_ in ids if id_.startswith("control-")] == list(
        FLEET.types["vostrelle-jinx"].tree["controls"]
    )
    block = next(block for block in section.blocks if isinstance(block, Facts) and block.id == "control-mixture")
    assert block.facts[0].value.state == answer


def test_a_throttle_is_never_called_off() -> None:
    throttle = next(block for block in _steps(shutting_down(_shown("drosmund-halberd"))) if "Throttle" in block.title)
    assert throttle.steps[0].way == "aft = idle"


def test_an_exit_names_the_door_that_it_opens_where_there_are_several() -> None:
    assert _steps(opening(_shown("skellrigg-wicket")))[0].title == "Left door: handle, from outside"
    assert _steps(opening(_shown("vostrelle-jinx")))[0].title.startswith("Handle, from")


@pytest.mark.parametrize(("holds", "goes_on"), [("avgas", True), ("water ballast", False)])
def test_only_fuel_goes_on_after_shut_down(holds: str, goes_on: bool) -> None:
    name = next(name for name, tank in FLEET.types["vostrelle-jinx"].tree["tanks"].items() if tank != "not fitted")  # type: ignore[union-attr]
    shown = _shown("vostrelle-jinx", (("tanks", name, "holds"), holds), (("tanks", name, "feeds"), "by gravity"))
    note = next(fact.note for fact in tanks(shown) if fact.id == f"tank-{name}")
    assert ("goes on after shut-down" in note) == goes_on


def _tail_view(name: str) -> CrewPage:
    view = tail_crew_page(Site(FLEET, (), DAY, DAY.isoformat()), FLEET.tails[name]).view
    assert isinstance(view, CrewPage)
    return view


def test_equal_differences_are_told_in_one_line_with_their_reason_where_they_bite() -> None:
    view = _tail_view("QQ-BOD")
    assert [(line.strong, line.text) for line in view.differences] == [
        ("Magneto left and magneto right, off is:", "towards canopy")
    ]
    page = soup(tail_crew_page(Site(FLEET, (), DAY, DAY.isoformat()), FLEET.tails["QQ-BOD"]))
    control = page.find(id="control-magneto-right")
    assert control is not None
    assert "Because: switches were fitted the other way round" in " ".join(control.get_text(" ").split())


def test_differences_that_are_not_equal_stay_apart() -> None:
    aircraft = FLEET.tails["QQ-BOD"]
    first, second = aircraft.overrides
    made = dataclasses.replace(aircraft, overrides=(first, dataclasses.replace(second, here="aft")))
    view = tail_crew_page(Site(FLEET, (), DAY, DAY.isoformat()), made).view
    assert isinstance(view, CrewPage)
    assert len(view.differences) == 2


def test_an_aircraft_that_was_taken_out_says_so_at_its_head() -> None:
    line = _tail_view("QQ-TWB").out[0]
    assert line.strong == "Was number 3 on Saturday, out since 07:40."
    assert line.text == "Number 3 is now QQ-TWA."
    assert _tail_view("QQ-TWA").out == ()


def test_an_undeclared_aircraft_inherits_no_no() -> None:
    view = _tail_view("QQ-TWA")
    assert {hazard.answer for hazard in view.hazards} == {"UNKNOWN"}
    clear = next(section for section in view.sections if section.id == "stay-clear")
    asked = next(block for block in clear.blocks if block.id == "pyrotechnics")
    assert isinstance(asked, Facts)
    assert {fact.label: fact.value.state for fact in asked.facts} == dict.fromkeys(
        ("Rocket", "Seat cartridge", "High voltage"), "unknown"
    )


def test_whose_left_and_right_is_said_at_the_head_of_open() -> None:
    for type_id in FLEET.types:
        assert opening(_shown(type_id)).note == "left and right: the pilot's"


def test_the_jinx_line_does_not_lose_its_way() -> None:
    """Left, across the middle, and left again to the engine: not "left then centre"."""
    tank = said(FLEET.types["vostrelle-jinx"].airframe.tanks)
    assert tank is not None
    route = tank["wing"].lines["feed-left"]  # type: ignore[union-attr,index]
    assert isinstance(route, Route)
    assert way_of(route).text == "left then centre then left"


HANDLED = {"handle", "jettison", "hinge release"}


@pytest.mark.parametrize("name", sorted(FLEET.types))
def test_only_what_is_worked_by_a_handle_has_looks_of_a_handle(name: str) -> None:
    """By the words of the record: a pane, an edge or a flap is broken, cut or reached through, not pulled."""
    exits = FLEET.types[name].tree["exits"]
    for block in _steps(opening(_shown(name))):
        exit_ = exits[block.id.removeprefix("exit-")]  # type: ignore[call-overload,index]
        labels = {fact.label for fact in (*block.facts, *block.more)}
        handle = exit_["way_in"] in HANDLED  # type: ignore[index]
        assert ("Handle looks" in labels) is handle
        assert ("Looks" in labels) is not handle
        assert handle or "Handle stays on" not in labels


@pytest.mark.parametrize(
    ("type_id", "words"),
    [
        ("vostrelle-jinx", "canopy side"),  # a hinged canopy
        ("hobmire-twain", "canopy side"),  # a sliding one
        ("skellrigg-wicket", "roof side"),  # doors and a windscreen under a roof
        ("brinemarsh-coble", "roof side"),  # gull doors and a hatch
        ("maplewick-gavotte", "side away from the floor"),  # open cockpits
    ],
)
def test_the_upper_side_is_called_by_what_is_there(type_id: str, words: str) -> None:
    assert upper_side(_shown(type_id).airframe) == words


@pytest.mark.parametrize(
    ("canopies", "words"),
    [("unknown", "canopy side"), ("not fitted", "side away from the floor")],
)
def test_unknown_canopies_count_as_canopies(canopies: str, words: str) -> None:
    airframe = _shown("vostrelle-jinx").airframe
    assert upper_side(airframe.model_copy(update={"canopies": NonValue(canopies)})) == words


def test_no_cabin_with_doors_has_a_canopy_side_to_cut() -> None:
    for type_id in ("skellrigg-wicket", "brinemarsh-coble"):
        told = soup(type_crew_page(Site(FLEET, (), DAY, DAY.isoformat()), FLEET.types[type_id])).find(id="cut")
        assert told is not None
        words = told.get_text(" ").lower()
        assert "roof side" in words
        assert "canopy side" not in words


def test_what_nothing_cuts_off_says_so() -> None:
    """The Glimmer's packs: somebody looked, and no control cuts them off."""
    page = soup(type_crew_page(Site(FLEET, (), DAY, DAY.isoformat()), FLEET.types["lumenaar-glimmer"]))
    told = page.find(id="high-voltage")
    assert told is not None
    words = " ".join(told.get_text(" ").split())
    assert words.count("cut off by: nothing; somebody looked") == 2
    assert "cut off by: not fitted" not in words


def test_several_ties_say_that_their_order_is_the_record_s() -> None:
    """Nothing in a record tells whether another order would do, so no page may seem to."""
    for type_id, type_ in FLEET.types.items():
        section = freeing(_shown(type_id))
        for name, seat in type_.airframe.seats.items():
            block = next(b for b in section.blocks if isinstance(b, Lines) and b.id == f"seat-{name}")
            count = next(line.text for line in block.lines if "recorded;" in line.strong)
            assert count.startswith("feel for more.")
            several = len(entries(seat.ties)) > 1
            assert count.endswith("the order of the record, which need not be the order to work in.") is several
