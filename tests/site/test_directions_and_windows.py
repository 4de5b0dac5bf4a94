"""What built crew pages say of the way that a rocket flies, of clear skin, of the mass to lift out; and the figures."""

from __future__ import annotations

import re
from typing import Any

import pytest

from tests.site.support import Site, crew_pages, names, record, squeezed

WICKET = ("types/skellrigg-wicket.html", "tails/QQ-SWA.html")


def _figures(demo: Site, kind: str, name: str) -> dict[str, dict[str, Any]]:
    return {figure["id"]: figure for figure in demo.data(f"fleet/{kind}/{name}.json")["figures"]}


@pytest.mark.parametrize("page", WICKET)
def test_number_11_lies_on_its_right_side_where_does_nobody_stand(demo: Site, page: str) -> None:
    """On the roof's side, 120 deg clockwise from the nose, level; nor along the cable, route UNKNOWN; bent mount: any.

    The angles are check values "Exit directions" (V).
    """
    tiles = [squeezed(tile.get_text(" ")) for tile in demo.part("index.html", "saturday").select("li.tile")]
    (tile,) = [tile for tile in tiles if tile.startswith("11 ")]
    assert "Skellrigg Wicket" in tile
    assert "QQ-SWA" in tile
    clear = demo.part(page, "stay-clear")
    fact = next(fact for fact in clear.select(".fact") if "Nobody stands where it flies" in fact.get_text())
    told = [squeezed(answer.get_text(" ")) for answer in fact.select(".answer")]
    (right,) = [answer for answer in told if answer.startswith("right side down:")]
    assert "on the roof's side" in right
    assert "level" in right
    assert "120 deg clockwise from the nose" in right
    (left,) = [answer for answer in told if answer.startswith("left side down:")]
    assert "240 deg clockwise from the nose" in left
    (straight,) = [answer for answer in told if answer.startswith("nose down by 30 deg:")]
    assert straight.endswith("straight up")
    note = squeezed(fact.get_text(" "))
    assert "nor in line with its cable (its way: UNKNOWN)" in note
    assert "to either side of that" in note
    assert "With a bent mount it flies any way" in note
    assert "seen from above" in note


def test_what_flies_nobody_knows_how_steeply_is_unknown_and_not_left_out(demo: Site) -> None:
    """The Halberd's canopy: raised by an angle that nobody has recorded."""
    clear = demo.part("types/drosmund-halberd.html", "stay-clear")
    facts = [fact for fact in clear.select(".fact") if "Nobody stands where it flies" in fact.get_text()]
    assert len(facts) == 3
    assert "UNKNOWN, so anywhere near it: how steeply it flies is unknown" in squeezed(facts[2].get_text(" "))
    assert facts[2].select(".unknown")


def test_the_hushwing_s_right_side_has_no_window_in_words_and_in_figures(demo: Site) -> None:
    """Hushwing: cut the right side? UNKNOWN: no window."""
    for page in ("types/aldermoss-hushwing.html", "tails/QQ-AHH.html"):
        lines = [squeezed(line.get_text(" ")) for line in demo.part(page, "cut").select("li.line")]
        clear = [line for line in lines if line.startswith("Clear in part:")]
        assert len(clear) == 1
        assert "side wall, left side" in clear[0]
        assert not [line for line in lines if "right side" in line and "Clear" in line]
    figures = _figures(demo, "types", "aldermoss-hushwing")
    right = {id_: figure for id_, figure in figures.items() if re.match(r"windows\.side-wall.*\.right", id_)}
    assert right
    assert all("cannot_say" in figure and "refused" not in figure["cannot_say"] for figure in right.values())
    row = demo.part("types/aldermoss-hushwing/figures.html", "figure-windows-side-wall-right")
    assert "UNKNOWN, cannot be said: whether it may be cut is unknown" in squeezed(row.get_text(" "))
    left = demo.words("types/aldermoss-hushwing/figures.html", "figure-windows-side-wall-left-hand-saw-2-from")
    assert "1530 mm" in left
    assert "rounded up, the safe side" in left


def test_a_side_that_may_be_cut_and_has_no_clear_stretch_says_so_on_the_crew_page(demo: Site) -> None:
    """The Wicket's right side: fabric over tubes that are not told apart by height."""
    told = demo.words("types/skellrigg-wicket.html", "cut")
    assert "No clear stretch is known: cabin floor side, right side" in told


@pytest.mark.parametrize("page", crew_pages())
def test_windows_on_crew_pages_are_words_without_stations(demo: Site, page: str) -> None:
    for line in demo.part(page, "cut").select("li.line"):
        words = squeezed(line.get_text(" "))
        if words.startswith(("Clear in part:", "No clear stretch")):
            assert not re.search(r"\bFS\b|\bWL\b|\d{3,}|\bmm\b", words), words


def test_every_seat_says_the_mass_to_lift_out(demo: Site) -> None:
    """100 kg by the station, 220.46 lb by 0.453 592 37 kg (NIST SP 811, R), rounded up."""
    for name in names("types"):
        seats = record("types", name)["seats"]
        free = demo.words(f"types/{name}.html", "free")
        assert free.count("Mass to lift out: 100 kg (221 lb)") == len(seats)
        assert free.count("wet clothes and water in them come on top") == len(seats)
        figures = _figures(demo, "types", name)
        for seat in seats:
            assert figures[f"seats.{seat}.lift_out_mass"]["value"] == "100"
            ties = record("types", name)["seats"][seat]["ties"]
            assert figures[f"seats.{seat}.ties_recorded"]["value"] == str(
                sum(isinstance(tie, dict) for tie in ties.values())
            )


def test_planning_pages_tell_a_place_from_its_landmarks_and_crew_pages_in_words(demo: Site) -> None:
    """Wicket: battery FS 680, cowling edge FS 700: 20 mm; on the crew page no figure."""
    row = demo.words("types/skellrigg-wicket/figures.html", "figure-landmarks-batteries-main-place-nearest")
    assert "forward of the cowling edge" in row
    assert "20 mm" in row
    assert "between the nose and the cowling edge" in demo.words("types/skellrigg-wicket.html", "stay-clear")
