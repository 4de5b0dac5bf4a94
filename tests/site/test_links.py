"""Every address of the built site leads somewhere, every page has what a browser and a reader need of it."""

from __future__ import annotations

import itertools
import posixpath
import re
import xml.etree.ElementTree as ElementTree
from collections import Counter
from collections.abc import Iterator
from urllib.parse import unquote, urlsplit

import pytest
from bs4 import Tag

from tests.site.support import Site, crew_pages, names, record

LEADING = ("href", "src", "action", "data", "poster", "srcset", "xlink:href", "formaction")
NAMING = ("aria-labelledby", "aria-describedby", "aria-controls", "for", "headers", "list")

ANCHOR_OF = {
    "controls": "control",
    "exits": "exit",
    "canopies": "canopy",
    "seats": "seat",
    "zones": "zone",
    "tanks": "tank",
    "batteries": "battery",
    "bottles": "bottle",
    "hazards": "hazard",
    "loaded_parts": "loaded-part",
    "signs": "sign",
}
"""Section of a record to the first half of an anchor: contract.md, "Anchors <section>-<id>"."""


def _addresses(page: Tag) -> Iterator[tuple[Tag, str, str]]:
    for element in page.find_all(True):
        for attribute in LEADING:
            if attribute in element.attrs:
                yield element, attribute, str(element[attribute])


def _resolved(page: str, address: str) -> tuple[str, str]:
    parts = urlsplit(address)
    target = unquote(parts.path)
    joined = posixpath.normpath(posixpath.join(posixpath.dirname(page), target)) if target else page
    return joined, unquote(parts.fragment)


def test_every_address_of_every_page_resolves(demo: Site) -> None:
    dead, seen = [], 0
    for page in demo.addresses:
        for element, attribute, address in _addresses(demo.page(page)):
            seen += 1
            target, anchor = _resolved(page, address)
            if target.startswith("..") or not (demo.folder / target).is_file():
                dead.append(f"{page}: <{element.name} {attribute}={address}>: no such file")
            elif anchor and target.endswith(".html") and demo.page(target).find(id=anchor) is None:
                dead.append(f"{page}: <{element.name} {attribute}={address}>: no such anchor")
    assert seen > 100
    assert not dead, "\n".join(dead)


def test_no_address_is_absolute_foreign_or_a_folder(demo: Site) -> None:
    wrong = [
        f"{page}: {address}"
        for page in demo.addresses
        for _, _, address in _addresses(demo.page(page))
        if urlsplit(address).scheme or urlsplit(address).netloc or address.startswith("/") or address.endswith("/")
    ]
    assert not wrong, "\n".join(wrong)


def test_no_style_or_script_of_ours_names_a_host(demo: Site) -> None:
    files = [
        path for path in (demo.folder / "assets" / "hardpoint").iterdir() if path.suffix in (".css", ".js", ".svg")
    ]
    assert len(files) >= 5
    for file in files:
        # The name of SVG's namespace is an identifier; nothing is fetched from it.
        text = file.read_text(encoding="utf-8").replace("http://www.w3.org/2000/svg", "")
        assert re.findall(r"(?i)https?://|url\(['\"]?//|['\"]//|@import", text) == [], file.name


def test_pages_load_only_our_own_styles_and_scripts(demo: Site) -> None:
    for page in demo.addresses:
        loaded = demo.page(page).find_all(["script", "link"])
        assert loaded or page == "404.html", page
        for element in loaded:
            address = str(element.get("src") or element.get("href"))
            assert "assets/hardpoint/" in address, f"{page}: {element}"


def test_no_page_has_an_id_twice(demo: Site) -> None:
    for page in demo.addresses:
        ids = Counter(str(element["id"]) for element in demo.page(page).find_all(id=True))
        assert [name for name, count in ids.items() if count > 1] == [], page


def test_what_names_an_id_names_one_of_the_page(demo: Site) -> None:
    for page in demo.addresses:
        for element in demo.page(page).find_all(True):
            for attribute in NAMING:
                for name in str(element.get(attribute) or "").split():
                    assert demo.page(page).find(id=name), f"{page}: {element.name} {attribute}={name}"


def test_every_page_has_one_headline_a_title_and_a_language(demo: Site) -> None:
    for page in demo.addresses:
        document = demo.page(page)
        assert len(document.find_all("h1")) == 1, page
        assert document.h1 is not None
        assert document.h1.get_text(strip=True), page
        assert document.title is not None
        assert document.title.get_text(strip=True), page
        assert document.html is not None
        assert document.html.get("lang") == "en", page


def test_titles_tell_pages_apart(demo: Site) -> None:
    titles = Counter(title.get_text(strip=True) for page in demo.addresses if (title := demo.page(page).title))
    assert [title for title, count in titles.items() if count > 1] == []


def test_headlines_leave_no_level_out(demo: Site) -> None:
    """WCAG 2.2, 1.3.1 and technique H42: a screen reader's list of headlines is an outline."""
    for page in demo.addresses:
        levels = [int(head.name[1]) for head in demo.page(page).find_all(["h1", "h2", "h3", "h4", "h5", "h6"])]
        jumps = [(one, other) for one, other in itertools.pairwise(levels) if other > one + 1]
        assert not jumps, f"{page}: {jumps}"


def test_the_sitemap_is_sound_and_lists_only_pages_there_are(demo: Site) -> None:
    tree = ElementTree.parse(demo.folder / "sitemap.xml")
    assert tree.getroot().tag == "{http://www.sitemaps.org/schemas/sitemap/0.9}urlset"
    for place in tree.iter("{http://www.sitemaps.org/schemas/sitemap/0.9}loc"):
        assert (demo.folder / urlsplit(str(place.text)).path.lstrip("/")).is_file(), place.text


def _promised() -> list[str]:
    pages = ["index.html", "compare.html", "gaps.html", "fleet.json", *crew_pages()]
    for name in names("types"):
        pages += [f"types/{name}/structure.html", f"types/{name}/figures.html", f"fleet/types/{name}.json"]
    pages += [f"fleet/tails/{name}.json" for name in names("tails")]
    for name in names("events"):
        pages += [f"events/{name}.html", f"fleet/events/{name}.json"]
    return pages


@pytest.mark.parametrize("address", _promised())
def test_the_contract_s_addresses_are_there(demo: Site, address: str) -> None:
    assert (demo.folder / address).is_file()


def test_no_page_stands_where_no_record_is(demo: Site) -> None:
    for kind in ("types", "tails", "events"):
        built = {path.stem for path in (demo.folder / kind).glob("*.html")}
        assert built == set(names(kind)), kind


@pytest.mark.parametrize("name", names("types"))
def test_every_entry_of_a_type_has_its_anchor_on_the_crew_page(demo: Site, name: str) -> None:
    written = record("types", name)
    missing = [
        f"#{word}-{entry}"
        for section, word in ANCHOR_OF.items()
        if isinstance(written.get(section), dict)
        for entry in written[section]
        if demo.page(f"types/{name}.html").find(id=f"{word}-{entry}") is None
    ]
    assert not missing


@pytest.mark.parametrize("name", names("types"))
def test_every_load_point_has_its_anchor_on_the_structure_page(demo: Site, name: str) -> None:
    points = record("types", name)["load_points"]
    assert points
    for point in points:
        demo.part(f"types/{name}/structure.html", f"load-point-{point}")


@pytest.mark.parametrize("name", names("tails"))
def test_a_tail_has_the_anchors_of_its_type(demo: Site, name: str) -> None:
    of = record("tails", name)["of"]
    for control in record("types", of)["controls"]:
        demo.part(f"tails/{name}.html", f"control-{control}")
    assert any(entry.startswith("magneto") for entry in record("types", "hobmire-twain")["controls"])


@pytest.mark.parametrize(
    "topic", ["anchor-points", "cutting-hazards", "pressure-bottles", "shutdown-controls", "canopies"]
)
def test_each_row_across_types_leads_to_its_place_and_the_place_back_to_its_row(demo: Site, topic: str) -> None:
    address = f"across/{topic}.html"
    rows = demo.page(address).select("tbody tr[id]")
    assert len(rows) >= len(names("types"))
    for row in rows:
        link = row.find("a", href=True)
        assert isinstance(link, Tag)
        place, _, anchor = posixpath.normpath(posixpath.join("across", str(link["href"]))).partition("#")
        assert demo.page(place).find(id=anchor), f"{row['id']}: {place}#{anchor}"
        back = posixpath.relpath(address, posixpath.dirname(place)) + f"#{row['id']}"
        assert demo.page(place).find("a", href=back), f"{place} has no link to {back}"
