"""axe-core, the reference engine for accessibility checks in a browser, finds nothing on any kind of page.

It runs with all of its rules (WCAG 2.0 to 2.2 A and AA, and its best practices), in light and in dark. What no engine
can see, such as what is out of reach of the Tab key, has tests of its own beside this one.
"""

from __future__ import annotations

from pathlib import Path
from typing import Any

import axe_playwright_python
import pytest

from tests.browser.conftest import Phone

AXE = (Path(axe_playwright_python.__file__).parent / "axe.min.js").read_text(encoding="utf-8")
EVENT = "events/three-shores-flying-days"
KINDS = (
    "index.html",
    "types/vostrelle-jinx.html",
    "types/drosmund-halberd.html",
    "tails/QQ-BOD.html",
    "tails/QQ-TWA.html",
    "types/lumenaar-glimmer/structure.html",
    "types/tarrowby-bodkin/figures.html",
    "types/kelmarrow-thimble/lift.html",
    "types/skellrigg-wicket/gaps.html",
    "types/hobmire-twain/drill.html",
    f"{EVENT}.html",
    f"{EVENT}/brief.html",
    f"{EVENT}/brief-saturday.html",
    f"{EVENT}/gaps.html",
    f"{EVENT}/two-at-once.html",
    f"{EVENT}/two-at-once.html#saturday-1-7",
    f"{EVENT}/gaps.html",
    f"{EVENT}/figures.html",
    "compare.html",
    "across/anchor-points.html",
    "across/cutting-hazards.html",
    "across/pressure-bottles.html",
    "across/shutdown-controls.html",
    "across/canopies.html",
    "gaps.html",
    "drill.html",
    "recognise.html",
    "differences.html",
    "types/tarrowby-bodkin/differences.html",
    "not-in-the-book.html",
    "station.html",
    "reading-a-page.html",
    "cautions.html",
    "methods/balance.html",
    "404.html",
)
_RUN = """async only => {
    const found = await axe.run(document, {resultTypes: ["violations"], ...(only ? {runOnly: only} : {})});
    return found.violations.map(v => `${v.id}: ${v.help} (${v.nodes.length}): ${v.nodes[0].html.slice(0, 160)}`);
}"""


def _violations(page: Any, only: list[str] | None = None) -> list[str]:
    page.evaluate(AXE)
    found = page.evaluate(_RUN, only)
    assert isinstance(found, list)
    return found


@pytest.mark.parametrize("scheme", ["light", "dark"])
@pytest.mark.parametrize("address", KINDS)
def test_axe_finds_nothing(phone: Phone, address: str, scheme: str) -> None:
    page = phone(color_scheme=scheme).open(address)
    # Colours are all that the dark look changes.
    assert _violations(page, ["color-contrast", "link-in-text-block"] if scheme == "dark" else None) == []


def test_axe_finds_what_is_planted(phone: Phone) -> None:
    page = phone().open("index.html")
    page.evaluate("document.querySelector('#content').insertAdjacentHTML('beforeend', '<img src=\"x.png\">')")
    assert any(found.startswith("image-alt") for found in _violations(page))


def test_with_the_finder_and_the_folds_open_axe_finds_nothing(phone: Phone) -> None:
    page = phone().open("compare.html")
    page.get_by_text("Narrow and sort").tap()
    page.get_by_text("Choose facts").tap()
    page.get_by_role("button", name="Find").tap()
    page.locator("#find").press_sequentially("magneto")
    page.locator("[data-finder-hits] a").first.wait_for()
    assert _violations(page) == []
