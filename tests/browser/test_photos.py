"""Photos and sketches as a phone and a printer show them."""

from __future__ import annotations

import pytest

from tests.browser.conftest import Phone
from tests.site.support import names

pytestmark = pytest.mark.browser
PAGE = "types/vostrelle-jinx.html"


def test_a_photo_keeps_its_place_before_it_has_come(phone: Phone) -> None:
    """No layout shift: the box is as high without the picture as with it."""
    watch = phone()
    watch.page.route("**/assets/photos/*", lambda route: route.abort("aborted"))
    without = watch.open(PAGE).locator("figure.photo img").evaluate_all("all => all.map(i => i.clientHeight)")
    assert len(without) == 2
    assert all(200 < height < 310 for height in without)
    page = phone().open(PAGE)
    images = page.locator("figure.photo img")
    for index in range(images.count()):
        images.nth(index).scroll_into_view_if_needed()
        page.wait_for_function("i => i.complete && i.naturalWidth === 400", arg=images.nth(index).element_handle())
    assert images.evaluate_all("all => all.map(i => i.clientHeight)") == without
    assert page.locator("html").evaluate("e => e.scrollWidth") <= 360


def test_a_tap_opens_the_large_one(phone: Phone) -> None:
    watch = phone()
    page = watch.open(PAGE)
    with page.expect_navigation():
        page.locator("figure.photo a").first.tap()
    assert "/assets/photos/" in page.url
    assert page.locator("img").evaluate("i => i.naturalWidth") == 1200
    page.go_back()
    assert page.url == watch.home + PAGE


@pytest.mark.parametrize("media", ["screen", "print"])
def test_sketches_have_a_size_and_a_whole_arrow(phone: Phone, media: str) -> None:
    page = phone().open(PAGE)
    page.emulate_media(media=media)  # type: ignore[arg-type]
    boxes = page.locator("svg.sketch").evaluate_all("all => all.map(s => s.getBoundingClientRect().toJSON())")
    assert len(boxes) > 5
    assert all(box["width"] == pytest.approx(160, abs=1) and box["height"] > 100 for box in boxes)
    for part in ("arrow", "barb"):
        drawn = page.locator(f"svg.sketch path.{part}")
        assert drawn.count() > 5
        assert drawn.evaluate_all("all => all.filter(p => !p.checkVisibility()).length") == 0


def test_the_lettering_of_sketches_is_readable(phone: Phone) -> None:
    sizes = (
        phone()
        .open(PAGE)
        .locator("svg.sketch text")
        .evaluate_all("all => all.map(t => parseFloat(getComputedStyle(t).fontSize) * t.getScreenCTM().a)")
    )
    assert min(sizes) >= 12


@pytest.mark.parametrize("name", names("types"))
def test_words_of_a_sketch_stay_inside_it(phone: Phone, name: str) -> None:
    over = (
        phone()
        .open(f"types/{name}.html")
        .locator("svg.sketch text")
        .evaluate_all(
            """all => all.map(t => [t.textContent, t.getBoundingClientRect(), t.closest("svg").getBoundingClientRect()])
            .filter(([, t, s]) => t.left < s.left - 1 || t.right > s.right + 1 || t.bottom > s.bottom + 1)
            .map(([words]) => words)"""
        )
    )
    assert over == []
