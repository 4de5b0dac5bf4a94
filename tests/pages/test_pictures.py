"""Photos on crew pages: where each stands, what is told beside it, and what an aircraft's page says of another's."""

from __future__ import annotations

import datetime as dt
import shutil
from collections.abc import Iterator
from dataclasses import fields, is_dataclass
from pathlib import Path
from typing import Any

import pytest

from hardpoint import load
from hardpoint.pages.crew import tail_crew_page, type_crew_page
from hardpoint.pages.data import files_beside
from hardpoint.pages.site import Site
from hardpoint.pages.view import CrewPage, Photo, Section, Steps

GOOD = Path(__file__).parents[1] / "examples" / "good"
TYPE, OWN = "types/quenby-merle.yaml", "tails/QQ-QMA.yaml"


def _site(tmp_path: Path, **photos: str) -> Site:
    """The good fleet with photos: ``of_type="controls.master QQ-QMA"``, ``own=...`` in the file of QQ-QMA."""
    folder = Path(shutil.copytree(GOOD, tmp_path / "fleet"))
    for name, told in photos.items():
        shows, aircraft = told.split(" ")
        entry = (
            f"photos:\n  {name.replace('_', '-')}: {{file: key.jpg, shows: {shows}, view: from the seat, "
            f"aircraft: {aircraft}, date: unknown, by: safety lead, licence: CC0-1.0, alt: seen is {name}}}\n"
        )
        file = folder / (OWN if name.startswith("own") else TYPE)
        file.write_text(file.read_text(encoding="utf-8") + entry, encoding="utf-8")
    return Site(load.fleet(folder), (), dt.date(2027, 6, 5), "2027-06-01")


def _of_type(site: Site) -> CrewPage:
    view = type_crew_page(site, site.fleet.types["quenby-merle"]).view
    assert isinstance(view, CrewPage)
    return view


def _of_tail(site: Site, name: str) -> CrewPage:
    view = tail_crew_page(site, site.fleet.tails[name]).view
    assert isinstance(view, CrewPage)
    return view


def _photos(value: Any) -> Iterator[Photo]:
    if isinstance(value, Photo):
        yield value
    elif isinstance(value, tuple):
        yield from (photo for item in value for photo in _photos(item))
    elif is_dataclass(value) and not isinstance(value, type):
        yield from (photo for field in fields(value) for photo in _photos(getattr(value, field.name)))


def _steps(page: CrewPage, id_: str) -> Steps:
    blocks = (block for section in page.sections for block in section.blocks)
    return next(block for block in blocks if isinstance(block, Steps) and block.id == id_)


def _section(page: CrewPage, id_: str) -> Section:
    return next(section for section in page.sections if section.id == id_)


@pytest.mark.parametrize(
    ("shows", "section"),
    [
        ("controls.master", "shut-down"),
        ("controls.master.guard", "shut-down"),
        ("exits.sill-handle.steps.0", "open"),
        ("exits.side-window", "open"),
        ("canopies.canopy", "open"),
        ("seats.pilot", "free"),
        ("seats.pilot.place", "free"),
        ("seats.pilot.ties.harness", "free"),
        ("seats.pilot.grip.0", "grip"),
        ("seats.pilot.second_belt", "free"),
        ("bottles.breathing-air", "recognise"),
        ("signs", "recognise"),
        ("name", "recognise"),
        ("controls", "recognise"),
    ],
)
def test_whatever_a_photo_shows_it_is_on_the_page_once(tmp_path: Path, shows: str, section: str) -> None:
    page = _of_type(_site(tmp_path, of_type=f"{shows} QQ-QMA"))
    assert [photo.alt for photo in _photos(page)] == ["seen is of_type"]
    assert len(list(_photos(_section(page, section)))) == 1


def test_what_is_told_of_a_photo(tmp_path: Path) -> None:
    (photo,) = _photos(_of_type(_site(tmp_path, of_type="controls.master unknown")))
    assert [value.text for value in photo.told] == [
        "from the seat", "date UNKNOWN", "by safety lead", "CC0-1.0", "aircraft UNKNOWN",
    ]  # fmt: skip
    assert [value.state for value in photo.told] == ["said", "unknown", "said", "said", "unknown"]
    assert (photo.id, photo.width, photo.height, photo.caution) == ("photo-of-type", 400, 300, "")


def test_both_sizes_lead_to_files_that_are_published(tmp_path: Path) -> None:
    site = _site(tmp_path, of_type="controls.master QQ-QMA")
    (photo,) = _photos(_of_type(site))
    published = {f"../{address}": content for address, content in files_beside(site) if address.endswith(".jpg")}
    assert set(published) == {photo.src, photo.large}
    assert all(isinstance(content, bytes) and content[:2] == b"\xff\xd8" for content in published.values())


def test_the_page_of_the_photographed_aircraft_says_nothing_of_another(tmp_path: Path) -> None:
    (photo,) = _photos(_of_tail(_site(tmp_path, of_type="controls.master QQ-QMA"), "QQ-QMA"))
    assert (photo.caution, photo.differs) == ("", False)


def test_a_photo_of_another_aircraft_says_so(tmp_path: Path) -> None:
    site = _site(tmp_path, of_type="controls.master QQ-QMA")
    page = _of_tail(site, "QQ-QMB")
    (photo,) = _photos(page)
    assert photo.caution == "Photo of another aircraft, QQ-QMA."
    assert not photo.differs
    assert _steps(page, "control-master").sketch == ""


def test_a_photo_of_nobody_knows_which_aircraft_says_so(tmp_path: Path) -> None:
    (photo,) = _photos(_of_tail(_site(tmp_path, of_type="controls.master unknown"), "QQ-QMA"))
    assert photo.caution == "Of which aircraft this photo is: UNKNOWN. Not known to be this one."


@pytest.mark.parametrize(
    "shows", ["controls.magneto-left", "controls.magneto-left.off_is", "controls.magneto-left.looks"]
)
@pytest.mark.parametrize(("aircraft", "other"), [("QQ-QMA", "QQ-QMA"), ("unknown", "an UNKNOWN aircraft")])
def test_a_photo_whose_part_differs_on_this_tail_is_cautioned(
    tmp_path: Path, shows: str, aircraft: str, other: str
) -> None:
    page = _of_tail(_site(tmp_path, of_type=f"{shows} {aircraft}"), "QQ-QMB")
    (photo,) = _photos(page)
    assert photo.caution == f"Photo shows {other}; this tail differs."
    assert photo.differs
    assert "towards canopy = off" in _steps(page, "control-magneto-left").sketch, "the sketch is drawn of this tail"


def test_an_own_photo_stands_in_place_of_the_type_s(tmp_path: Path) -> None:
    site = _site(tmp_path, of_type="controls.master QQ-QMB", own="controls.master QQ-QMA")
    assert [photo.alt for photo in _photos(_of_tail(site, "QQ-QMA"))] == ["seen is own"]
    assert [photo.alt for photo in _photos(_of_type(site))] == ["seen is of_type"]
    assert [photo.alt for photo in _photos(_of_tail(site, "QQ-QMB"))] == ["seen is of_type"]


def test_photos_of_two_things_of_one_part_both_stand_there(tmp_path: Path) -> None:
    site = _site(tmp_path, of_type="controls.master QQ-QMB", own="controls.master.guard QQ-QMA")
    page = _of_tail(site, "QQ-QMA")
    assert {photo.id for photo in _steps(page, "control-master").photos} == {"photo-here-own", "photo-of-type"}


def test_there_is_a_sketch_where_there_is_no_photo_and_only_there(tmp_path: Path) -> None:
    page = _of_type(_site(tmp_path, of_type="controls.master QQ-QMA"))
    assert _steps(page, "control-master").sketch == ""
    assert _steps(page, "control-magneto-left").sketch.startswith("<svg")
