"""Computed figures on the built pages and in the data: the same figures, each with its inputs and its source."""

from __future__ import annotations

from decimal import Decimal
from typing import Any

from tests.site.support import Site, names


def _figures(demo: Site, kind: str, name: str) -> dict[str, dict[str, Any]]:
    return {figure["id"]: figure for figure in demo.data(f"fleet/{kind}/{name}.json")["figures"]}


def _shape(figure: dict[str, Any]) -> None:
    if "cannot_say" in figure:
        assert figure["cannot_say"]["reason"]
        return
    assert figure["inputs"], figure["id"]
    assert figure["source"], figure["id"]
    value = Decimal(figure["value"])
    low, high = Decimal(figure.get("low", value)), Decimal(figure.get("high", value))
    assert low <= value <= high
    assert value == {"up": high, "down": low, "nearest": low}[figure["rounded"]]


def test_every_figure_has_inputs_and_source_or_a_reason(demo: Site) -> None:
    for kind in ("types", "tails"):
        for name in names(kind):
            figures = _figures(demo, kind, name)
            assert len(figures) > 2
            for figure in figures.values():
                _shape(figure)


def test_each_figure_of_the_data_stands_on_the_page(demo: Site) -> None:
    for name in names("types"):
        page = demo.page(f"types/{name}/figures.html")
        for id_, figure in _figures(demo, "types", name).items():
            row = page.find(id="figure-" + id_.replace(".", "-").replace("_", "-"))
            assert row is not None, (name, id_)
            words = " ".join(row.get_text(" ").split())
            told = figure["shown"].split(" / ") if "shown" in figure else [figure["cannot_say"]["reason"]]
            assert all(" ".join(text.split()) in words for text in told), (name, id_, words)


def test_the_slot_changes_the_mass_and_says_from_what(demo: Site) -> None:
    """QQ-BOD with 40 L of avgas at 6 lb per US gal (FAA-H-8083-30, R): 560 + 28.8 kg by hand."""
    event = _figures(demo, "events", "three-shores-flying-days")
    figure = event["saturday.7.balance.fuelled-as-planned.mass"]
    assert abs(float(figure["value"]) - 588.8) < 0.1
    assert "entry.fuel_planned" in {given["path"] for given in figure["inputs"]}
    row = demo.page("events/three-shores-flying-days/figures.html").find(
        id="figure-saturday-7-balance-fuelled-as-planned-mass"
    )
    assert row is not None
    assert figure["shown"].split(" / ")[0] in row.get_text()


def test_sources_that_rows_name_are_listed_on_the_page(demo: Site) -> None:
    page = demo.page("types/hobmire-twain/figures.html")
    rows = page.select('[id^="figure-balance"] a[href^="#source-"]')
    assert rows
    for link in rows:
        assert page.find(id=str(link["href"])[1:]) is not None
