"""Questions that a station would ask of the demo, answered by what its pages say to somebody who only reads them."""

from __future__ import annotations

import re

from tests.site.support import Site, squeezed, whole_word

EVENT = "events/three-shores-flying-days.html"


def _tile(demo: Site, day: str, number: str) -> str:
    tiles = demo.part("index.html", day).select("li.tile")
    told = [squeezed(tile.get_text(" ")) for tile in tiles]
    return next(words for words in told if words.startswith(f"{number} "))


def test_number_7_on_saturday_is_confirmed_by_two_signs_and_its_magneto_is_opposite_to_its_type(demo: Site) -> None:
    """Saturday, yellow low-wing single, number 7: which way is magneto off?"""
    tile = _tile(demo, "saturday", "7")
    assert "Tarrowby Bodkin" in tile
    assert "QQ-BOD" in tile
    assert "low wing" in tile  # a shape
    assert "yellow" in tile  # what a caller says
    assert "Kelmarrow Thimble" in _tile(demo, "sunday", "7")
    assert "QQ-BOD" not in _tile(demo, "sunday", "7")
    banner = demo.words("tails/QQ-BOD.html", "differences")
    assert "off is: towards canopy" in banner
    assert "Type says: towards floor" in banner
    for control in ("control-magneto-left", "control-magneto-right"):
        words = demo.words("tails/QQ-BOD.html", control)
        assert "towards canopy = off" in words
        assert "Type says: towards floor" in words
        assert "Propeller still dangerous" in words
    assert "Saturday" in squeezed(demo.page("tails/QQ-BOD.html").select(".plate")[0].get_text(" "))
    assert "towards floor = off" in demo.words("types/tarrowby-bodkin.html", "control-magneto-left")


def test_a_twain_with_one_head_is_flown_from_the_rear_and_its_swapped_tail_has_no_known_outside_handle(
    demo: Site,
) -> None:
    """A Twain with one head visible: which seat, and can it be opened from outside?"""
    page = "tails/QQ-TWA.html"
    free = demo.words(page, "free")
    assert "Rear seat, flown alone from here" in free
    assert "look in every seat" in free
    assert "nobody has declared how it differs" in squeezed(demo.page(page).get_text(" "))
    opening = demo.words(page, "open")
    assert "Break in, from outside" in opening
    assert "from inside" in opening
    assert "outside handle" not in opening.casefold()
    tile = _tile(demo, "saturday", "3")
    assert "SWAPPED" in tile
    assert "QQ-TWB" in tile
    struck = demo.part("index.html", "saturday").find("del")
    assert struck is not None
    assert "QQ-TWB" in struck.get_text()
    assert "assume no outside handle until one is seen" in demo.words(EVENT, "saturday-3")
    for hazard in demo.page(page).select(".hazard__answer"):
        assert hazard.get_text(strip=True) == "UNKNOWN"  # its type has none; of this aircraft nobody has said so


def test_what_ties_a_thimble_s_pilot_in(demo: Site) -> None:
    """What ties a Thimble's pilot in, and how many are recorded?"""
    for page in ("types/kelmarrow-thimble.html", "tails/QQ-THA.html"):
        free = demo.words(page, "free")
        assert "3 ties recorded; feel for more" in free
        for tie in ("harness", "ratchet-belt", "helmet-lead"):
            demo.part(page, f"tie-pilot-{tie}")
        grip = demo.words(page, "grip")
        assert "parachute" in grip.casefold()
        assert "leaves with the occupant" in demo.words(page, "worn-pilot")
        bottle = next(
            squeezed(fact.get_text(" "))
            for fact in demo.part(page, "worn-pilot").select(".fact")
            if "air bottle" in fact.get_text()
        )
        assert "leaves with the occupant" in bottle
        assert "Do not pull ripcord" in grip


def test_figures_that_conflict_are_both_shown_the_conflict_is_named_and_nothing_is_chosen(demo: Site) -> None:
    """Halberd oxygen pressure; Bodkin fuel."""
    for page in ("types/drosmund-halberd.html", "tails/QQ-HBD.html"):
        oxygen = demo.words(page, "bottle-oxygen")
        assert "3000 psi / 200 bar" in oxygen
        assert "the two figures disagree" in oxygen
        assert "neither was chosen" in oxygen
    for page in ("types/tarrowby-bodkin.html", "tails/QQ-BOD.html"):
        fuel = demo.words(page, "tank-main")
        assert "62 L / 13.6 US gal" in fuel
        assert "imperial" in fuel
        assert "neither was chosen" in fuel
    across = demo.words("across/pressure-bottles.html", "drosmund-halberd-bottle-oxygen")
    assert "disagree" in across


def test_after_the_loop_is_pulled_the_glimmer_s_cables_are_not_to_be_touched(demo: Site) -> None:
    """Glimmer: the loop is pulled, may cables be touched?"""
    for page in ("types/lumenaar-glimmer.html", "tails/QQ-LGA.html"):
        never = demo.words(page, "never")
        assert "400 V cables and packs" in never
        assert "packs, contactor and what lies between" in never
        assert "damaged cable too" in never
        assert "packs, contactor and what lies between" in demo.words(page, "high-voltage")
        strip = {
            squeezed(hazard.get_text(" ")).split(" YES")[0]
            for hazard in demo.page(page).select(".hazard")
            if "YES" in hazard.get_text()
        }
        assert "High voltage" in strip


def test_the_hushwing_s_right_side_has_no_window(demo: Site) -> None:
    """Hushwing: cut the right side?"""
    for page in ("types/aldermoss-hushwing.html", "tails/QQ-AHH.html"):
        row = demo.part(page, "zone-side-wall")
        cells = {str(cell.get("data-label")): squeezed(cell.get_text(" ")) for cell in row.find_all("td")}
        assert cells["Left"].startswith("preferred")
        assert "walked and complete" in cells["Left"]
        assert cells["Right"].startswith("UNKNOWN: do not cut")
    assert whole_word("UNKNOWN", demo.words("types/aldermoss-hushwing/gaps.html", "unknown-zones"))


def test_what_was_unfit_for_saturday_when_this_copy_was_made(demo: Site) -> None:
    """How old is this copy, what was unfit on Saturday? 3 undeclared, magneto; 8 jackets; 9 cartridges; 11 cable."""
    home = squeezed(demo.page("index.html").get_text(" "))
    assert "as of 2027-06-05" in home
    for number, words in {
        "3": ("nobody has declared it", "Magneto rear", "alone"),
        "8": ("life jacket",),
        "9": ("state",),
        "11": ("Rocket", "cable"),
    }.items():
        block = demo.words(EVENT, f"saturday-unfit-{number}")
        assert "UNKNOWN" in block
        for word in words:
            assert word.casefold() in block.casefold(), f"{number}: {word}"
    assert "Seat front" in demo.words(EVENT, "saturday-unfit-9")


def test_what_no_hand_may_carry_from_one_aircraft_to_another_is_warned_of(demo: Site) -> None:
    """The Jinx has a knob to push, then pull; the Bodkin the other way round; QQ-BOD has magnetos unlike its type."""
    words = demo.words("events/three-shores-flying-days/two-at-once.html", "saturday-opposites")
    assert "First way in, in the other order: 1 Vostrelle Jinx QQ-VJA: push, then pull" in words
    assert "7 Tarrowby Bodkin QQ-BOD: pull, then push" in words
    assert "magneto left, off is: towards canopy; its type: towards floor" in words


def test_refused_points_are_marked_where_they_are_listed(demo: Site) -> None:
    for address in ("across/anchor-points.html", "types/maplewick-gavotte/structure.html"):
        words = squeezed(demo.page(address).get_text(" "))
        assert "REFUSED: its basis is owner's practice, and the station has decided no divisor for that" in words
    row = demo.words("across/anchor-points.html", "vostrelle-jinx-load-point-rear-pair")
    assert "REFUSED: its basis is unknown" in row


def test_the_line_up_marks_what_can_fire_or_shock(demo: Site) -> None:
    assert "Fitted: rocket" in _tile(demo, "saturday", "11")
    assert "Fitted: seat cartridge" in _tile(demo, "saturday", "9")
    assert "Fitted: high voltage" in _tile(demo, "saturday", "5")
    assert "Fitted" not in _tile(demo, "saturday", "7")


def test_where_to_cut_is_said_before_the_zones(demo: Site) -> None:
    words = demo.words("types/aldermoss-hushwing.html", "cut")
    assert "Preferred: side wall left" in words.split("Cutting by zone")[0]
    assert "side wall right" not in words.split("Cutting by zone")[0]


def test_the_jinx_inverted_at_three_metres_has_no_margin_at_two_of_three_rates(demo: Site) -> None:
    """Jinx inverted at 3 m, 1.5 L bottle, 255 s slowest drill: is there a margin at 30, 50, 75 L/min?"""
    page = "types/vostrelle-jinx/figures.html"
    for rate, seconds in ((30, "414 s"), (50, "248 s"), (75, "165 s")):
        assert seconds in demo.words(page, f"figure-air-breathing-air-at-3-m-rate-{rate}")
    verdict = demo.words(page, "figure-air-breathing-air-at-3-m-margin")
    assert "Refused: no margin at 50 and 75 L/min" in verdict
    assert "the slowest drill took 255 s, and 60 s are to be left over" in verdict
    assert not re.search(r"\d ?s\b|\d min\b", demo.words("types/vostrelle-jinx.html", "bottle-breathing-air"))


def test_the_jinx_is_not_lifted_by_its_four_points(demo: Site) -> None:
    """Lift the Jinx by its four points."""
    words = demo.words("types/vostrelle-jinx/structure.html", "lifted-four-points-empty")
    assert "Refused: rear pair: its basis is unknown" in words
    assert "not computed" in words
    figure = demo.words("types/vostrelle-jinx/figures.html", "figure-slings-four-points-empty")
    assert "Refused: rear pair: its basis is unknown" in figure
