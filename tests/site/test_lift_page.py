"""The lifting sheet: what a crane crew reads and fills in."""

from __future__ import annotations

from tests.site.support import Site, names, squeezed


def _words(demo: Site, name: str, part: str) -> str:
    return demo.words(f"types/{name}/lift.html", part)


def test_the_first_thing_asked_is_who_inspected_the_points(demo: Site) -> None:
    for name in names("types"):
        page = demo.page(f"types/{name}/lift.html")
        first = page.select_one("section.part")
        assert first is not None
        assert "Points inspected after the accident by: ____" in squeezed(first.get_text(" "))
        assert "signature" in _words(demo, name, "sheet")


def test_refused_lifts_say_why_and_have_no_figures(demo: Site) -> None:
    legs = _words(demo, "vostrelle-jinx", "legs")
    assert "Refused: rear pair: its basis is unknown" in legs
    assert "kN" not in legs
    assert "owner's practice" in _words(demo, "maplewick-gavotte", "legs")


def test_heights_around_the_declared_one(demo: Site) -> None:
    """Thimble, hook declared 5 m over its points: 2.5 to 10 m, and at 2.5 m outside the cone of its tail tube."""
    table = demo.page("types/kelmarrow-thimble/lift.html").select("#legs table")[0]
    rows = [squeezed(row.get_text(" ")) for row in table.select("tbody tr")]
    assert [row.split(" m ")[0] for row in rows] == ["2.50", "3.75", "5", "7.50", "10"]
    assert "Refused" in rows[0]
    assert "outside its cone of 45°" in rows[0]
    assert "0.81" in rows[2]


def test_points_that_do_not_lift_say_so(demo: Site) -> None:
    assert "tie-down: does not lift" in _words(demo, "hobmire-twain", "points")
