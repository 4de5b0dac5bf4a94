"""Every page of the site in a browser: quiet, without another host, no wider than the screen, from everywhere."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.browser.conftest import Phone
from tests.browser.support import Watch, served
from tests.site.support import Site, names

pytestmark = pytest.mark.browser

KINDS = [
    "index.html",
    f"types/{names('types')[0]}.html",
    f"tails/{names('tails')[0]}.html",
    f"types/{names('types')[0]}/structure.html",
    f"types/{names('types')[0]}/figures.html",
    f"events/{names('events')[0]}.html",
    "compare.html",
    "gaps.html",
    "reading-a-page.html",
    "cautions.html",
    "writing-a-record.html",
]


def _walk(watch: Watch, addresses: list[str]) -> None:
    for address in addresses:
        if address == "404.html":  # names no file of the site, not even an icon; a browser then asks for one
            continue
        page = watch.open(address)
        assert page.locator("h1").is_visible(), address
        assert page.evaluate("document.styleSheets.length") >= 1, address
        styled = page.evaluate("getComputedStyle(document.body).marginTop")
        assert styled == "0px", f"{address} is not styled"
    watch.assert_quiet()


def test_every_page_is_quiet_under_a_path_of_a_server(phone: Phone, demo: Site) -> None:
    _walk(phone(), demo.addresses)


def test_every_kind_of_page_is_quiet_at_the_root_of_a_server(phone: Phone, demo: Site) -> None:
    with served(demo.folder) as root:
        _walk(phone(root), KINDS)


def test_every_page_is_quiet_as_a_file(phone: Phone, web: Path, demo: Site) -> None:
    _walk(phone((web / "station" / "book").as_uri() + "/"), demo.addresses)


def test_links_lead_on_as_files(phone: Phone, demo: Site) -> None:
    """Every link of the home page, followed without a server."""
    watch = phone(demo.folder.as_uri() + "/")
    page = watch.open("index.html")
    links = page.locator("a[href]").evaluate_all("all => all.map(a => a.href)")
    assert len(links) > 10
    for link in sorted({link.partition("#")[0] for link in links}):
        page.goto(link)
        assert page.locator("h1").is_visible()
    watch.assert_quiet()


@pytest.mark.parametrize("address", KINDS)
@pytest.mark.parametrize("scripts", [True, False], ids=["scripts", "no-scripts"])
def test_nothing_is_wider_than_the_screen(phone: Phone, address: str, scripts: bool) -> None:
    watch = phone(java_script_enabled=scripts)
    page = watch.open(address)
    assert page.locator("html").evaluate("e => e.scrollWidth") <= 360
    watch.assert_quiet()


def test_what_is_folded_opens_without_scripts(phone: Phone) -> None:
    page = phone(java_script_enabled=False).open(KINDS[1])
    fold = page.locator("details").first
    fold.locator("summary").tap()
    assert fold.locator("dd").first.is_visible()


def test_the_comparison_shows_every_fact_without_scripts(phone: Phone, demo: Site) -> None:
    page = phone(java_script_enabled=False).open("compare.html")
    cells = demo.page("compare.html").find_all("td")
    assert page.locator("td:visible").count() == len(cells) > 20
    assert page.locator("form:visible").count() == 0


def test_the_line_up_leads_to_every_aircraft_without_scripts(phone: Phone) -> None:
    page = phone(java_script_enabled=False).open("index.html")
    assert page.locator("form:visible").count() == 0
    for name in names("tails"):
        link = page.locator(f"a[href='tails/{name}.html']").first
        assert link.is_visible()
    with page.expect_navigation():
        link.tap()
    assert page.locator("#open ol > li").first.is_visible()


@pytest.mark.parametrize("media", ["screen", "print"])
@pytest.mark.parametrize("name", names("types"))
def test_the_side_view_has_a_size(phone: Phone, name: str, media: str) -> None:
    page = phone().open(f"types/{name}/structure.html")
    page.emulate_media(media=media)  # type: ignore[arg-type]
    for box in page.locator("figure svg").evaluate_all("all => all.map(s => s.getBoundingClientRect().toJSON())"):
        assert box["width"] > 300
        assert box["height"] > 60
    assert page.locator("figure svg").count() >= 1


def test_the_lettering_of_drawings_is_readable_on_a_phone(phone: Phone) -> None:
    """The design asks for 12 px and more at 360 px: a drawing scrolls rather than shrinks."""
    page = phone().open(f"types/{names('types')[0]}/structure.html")
    sizes = page.locator("figure svg text").evaluate_all(
        """all => all.map(t => parseFloat(getComputedStyle(t).fontSize) * t.getScreenCTM().a)"""
    )
    assert sizes
    assert min(sizes) >= 12
