"""Photos of the demo in the built site: cleaned files, and pages that show and lead to them."""

from __future__ import annotations

import io
import re
from pathlib import Path

import pytest
from bs4 import Tag
from PIL import Image

from tests.site.support import FLEET, Site, build, copied_fleet, digests, names, record, replace, run, squeezed

JINX, THIMBLE = "types/vostrelle-jinx.html", "types/kelmarrow-thimble.html"


def _files(site: Site) -> list[Path]:
    return sorted((site.folder / "assets" / "photos").iterdir())


def test_each_photo_is_published_in_two_sizes_without_what_a_telephone_knows(demo: Site) -> None:
    named = {photo["file"] for name in names("types") for photo in record("types", name).get("photos", {}).values()}
    assert len(named) >= 3
    assert len(_files(demo)) == 2 * len(named)
    for file in _files(demo):
        data = file.read_bytes()
        with Image.open(io.BytesIO(data)) as image:
            assert image.format == "JPEG"
            assert image.width in (400, 1200)
            assert len(image.getexif()) == 0
            assert not {"exif", "icc_profile", "xmp", "comment"} & set(image.info)
        for word in (b"Orlowater Telephones", b"safety lead", b"Exif", b"GPS"):
            assert word not in data
        assert re.fullmatch(r"[0-9a-f]{20}\.jpg", file.name)
        assert digests(file.parent)[file.name].startswith(file.stem), "named after its own bytes"


def test_the_sources_are_published_nowhere(demo: Site) -> None:
    sources = set(digests(FLEET / "photos").values())
    assert sources
    assert not sources & set(digests(demo.folder).values())
    assert [
        path for path in demo.folder.rglob("*") if path.name in {f.name for f in (FLEET / "photos").iterdir()}
    ] == []


@pytest.mark.parametrize(("page", "part", "entry"), [
    (JINX, "exit-sill-knob", "sill-knob"), (JINX, "control-ignition-key", "ignition-key"),
    ("tails/QQ-VJA.html", "exit-sill-knob", "sill-knob"), (THIMBLE, "exit-sill-latch", "sill-latch"),
])  # fmt: skip
def test_a_photo_stands_with_what_it_shows(demo: Site, page: str, part: str, entry: str) -> None:
    name = "kelmarrow-thimble" if "latch" in part else "vostrelle-jinx"
    taken = record("types", name)["photos"][entry]
    (figure,) = demo.part(page, part).select("figure.photo")
    image, link = figure.img, figure.a
    assert isinstance(image, Tag)
    assert isinstance(link, Tag)
    assert image["alt"] == taken["alt"]
    assert image["loading"] == "lazy"
    for address, width in ((image["src"], 400), (link["href"], 1200)):
        with Image.open(demo.folder / "types" / str(address)) as file:
            assert file.width == width
            if address == image["src"]:
                assert (str(file.width), str(file.height)) == (image["width"], image["height"])
    told = squeezed(figure.figcaption.get_text(" ") if figure.figcaption else "")
    for word in (taken["view"], taken["date"], taken["by"], taken["licence"], taken["aircraft"]):
        assert word in told
    assert demo.part(page, part).select("svg.sketch") == []
    assert list(link.attrs) == ["href"], "a plain link"


def test_every_control_has_a_photo_or_a_sketch(demo: Site) -> None:
    seen = 0
    for name in names("types"):
        controls = record("types", name)["controls"]
        for control in [control for control, told in controls.items() if isinstance(told, dict)]:
            part = demo.part(f"types/{name}.html", f"control-{control}")
            assert len(part.select("svg.sketch")) + len(part.select("figure.photo")) == 1, control
            seen += len(part.select("svg.sketch"))
    assert seen > 10


def test_sketches_are_light(demo: Site) -> None:
    for name in names("types"):
        sketches = demo.page(f"types/{name}.html").select("svg.sketch")
        assert sketches
        assert sum(len(str(sketch).encode()) for sketch in sketches) / len(sketches) < 1000


def test_data_keep_the_record_as_written(demo: Site) -> None:
    told = demo.data("fleet/types/vostrelle-jinx.json")["record"]["photos"]
    assert told == record("types", "vostrelle-jinx")["photos"]


def test_a_tail_that_differs_is_told_at_the_photo_of_another(tmp_path: Path) -> None:
    fleet = copied_fleet(tmp_path)
    difference = "differs: [{at: controls.ignition-key.off_is, type_says: anticlockwise, here: clockwise}]"
    replace(fleet / "tails" / "QQ-VJA.yaml", "differs: none recorded", difference)
    type_ = fleet / "types" / "vostrelle-jinx.yaml"
    text = type_.read_text(encoding="utf-8")
    head, tail = text.split("\nphotos:\n")
    type_.write_text(f"{head}\nphotos:\n{tail.replace('aircraft: QQ-VJA', 'aircraft: QQ-VJZ')}", encoding="utf-8")
    site = Site(build(tmp_path / "site", fleet))
    key = site.part("tails/QQ-VJA.html", "control-ignition-key")
    assert "Photo shows QQ-VJZ; this tail differs." in squeezed(key.get_text(" "))
    assert "clockwise = off" in key.select("svg.sketch text")[-1].get_text()
    knob = site.words("tails/QQ-VJA.html", "exit-sill-knob")
    assert "Photo of another aircraft, QQ-VJZ." in knob
    assert "another aircraft" not in site.words("types/vostrelle-jinx.html")


def test_a_bad_photo_stops_the_build_with_its_line_and_publishes_nothing(tmp_path: Path) -> None:
    fleet = copied_fleet(tmp_path)
    (fleet / "photos" / "jinx-sill-knob.jpg").unlink()
    (fleet / "photos" / "jinx-sill-knob.jpg").symlink_to("/etc/passwd")
    (fleet / "photos" / "thimble-sill-latch.jpg").write_text("<html>", encoding="utf-8")
    done = run("build", "--fleet", fleet, "--site", tmp_path / "site", "--as-of", "2027-06-05")
    assert done.returncode == 1
    said = done.stdout + done.stderr
    assert re.search(r"vostrelle-jinx\.yaml:\d+: photos\.sill-knob\.file: got a symbolic link", said)
    assert re.search(r"kelmarrow-thimble\.yaml:\d+: photos\.sill-latch\.file: got a web page", said)
    assert "Traceback" not in said
    assert not (tmp_path / "site").exists()
