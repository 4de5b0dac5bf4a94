"""What is published of a photo: its pixels, upright, in sRGB, in two sizes, and nothing else of the file."""

from __future__ import annotations

import io
import subprocess
import sys
from pathlib import Path

import pytest
from PIL import ExifTags, Image, ImageCms, ImageStat, PngImagePlugin

from hardpoint import photos
from hardpoint.photos import LARGE, SMALL, RefusedPhotoError, prepare
from hardpoint.records.pictures import Sized
from tests.draw_photos import FOLDER, SIDEWAYS, exif_of_a_telephone

XMP = b'<x:xmpmeta xmlns:x="adobe:ns:meta/"><rdf:RDF>planted by a telephone</rdf:RDF></x:xmpmeta>'
PLANTED = (b"planted", b"Orlowater", b"Exif", b"GPS", b"http://ns.adobe.com", b"ICC_PROFILE", b"safety lead")


def _halves(size: tuple[int, int] = (1600, 1000)) -> Image.Image:
    """Red above, blue below."""
    image = Image.new("RGB", size, (0, 0, 255))
    image.paste((255, 0, 0), (0, 0, size[0], size[1] // 2))
    return image


def _bytes(image: Image.Image, format_: str = "JPEG", **options: object) -> bytes:
    held = io.BytesIO()
    image.save(held, format_, **options)
    return held.getvalue()


def _opened(sized: Sized) -> Image.Image:
    image = Image.open(io.BytesIO(sized.data))
    image.load()
    return image


def _colour(image: Image.Image, share: float) -> list[int]:
    """The mean colour of a thin band across the picture, at a share of its height."""
    at = int(image.height * share)
    return [round(level) for level in ImageStat.Stat(image.crop((0, at, image.width, at + 4))).mean]


def _srgb() -> bytes:
    return ImageCms.ImageCmsProfile(ImageCms.createProfile("sRGB")).tobytes()


def _planted(format_: str) -> bytes:
    """A picture with everything that a telephone or an editor can hang onto it."""
    options: dict[str, object] = {"exif": exif_of_a_telephone(), "icc_profile": _srgb()}
    if format_ == "PNG":
        text = PngImagePlugin.PngInfo()
        text.add_text("Comment", "planted by an editor")
        text.add_itxt("XML:com.adobe.xmp", XMP.decode())
        options["pnginfo"] = text
    else:
        options["xmp"] = XMP
    if format_ == "JPEG":
        options["comment"] = b"planted by an editor"
    return _bytes(_halves(), format_, **options)


@pytest.mark.parametrize(("format_", "name"), [("JPEG", "a.jpg"), ("PNG", "a.png"), ("WEBP", "a.webp")])
def test_nothing_but_pixels_goes_on(format_: str, name: str) -> None:
    source = _planted(format_)
    with Image.open(io.BytesIO(source)) as read:
        assert read.getexif().get_ifd(ExifTags.IFD.GPSInfo), "the source must have what is to be removed"
        assert read.info["icc_profile"]
    assert b"planted" in source or format_ == "PNG"
    picture = prepare(source, name)
    for sized in (picture.small, picture.large):
        image = _opened(sized)
        assert image.format == "JPEG"
        assert len(image.getexif()) == 0
        assert set(image.info) <= {"jfif", "jfif_version", "jfif_unit", "jfif_density", "progressive"}, image.info
        assert [word for word in PLANTED if word in sized.data] == []


@pytest.mark.parametrize("orientation", range(1, 9))
def test_pictures_are_turned_upright(orientation: int) -> None:
    """Exif 2.3, table of tag 0x0112: where row 0 and column 0 of the stored pixels belong."""
    turned_by = {
        1: None, 2: Image.Transpose.FLIP_LEFT_RIGHT, 3: Image.Transpose.ROTATE_180, 4: Image.Transpose.FLIP_TOP_BOTTOM,
        5: Image.Transpose.TRANSPOSE, 6: Image.Transpose.ROTATE_90, 7: Image.Transpose.TRANSVERSE,
        8: Image.Transpose.ROTATE_270,
    }  # fmt: skip
    how = turned_by[orientation]
    stored = _halves() if how is None else _halves().transpose(how)
    exif = Image.Exif()
    exif[ExifTags.Base.Orientation] = orientation
    picture = prepare(_bytes(stored, exif=exif, quality=95), "a.jpg")
    image = _opened(picture.large)
    assert image.size == (1200, 750)
    assert _colour(image, 0.2)[0] > 240
    assert _colour(image, 0.8)[2] > 240


@pytest.mark.parametrize(
    ("size", "small", "large"),
    [
        ((4000, 3000), (400, 300), (1200, 900)),
        ((3000, 4000), (400, 533), (1200, 1600)),
        ((800, 600), (400, 300), (800, 600)),
        ((300, 200), (300, 200), (300, 200)),
        ((6000, 100), (400, 7), (1200, 20)),
    ],
)
def test_there_are_two_sizes_and_none_is_enlarged(
    size: tuple[int, int], small: tuple[int, int], large: tuple[int, int]
) -> None:
    picture = prepare(_bytes(_halves(size)), "a.jpg")
    for sized, expected in ((picture.small, small), (picture.large, large)):
        assert _opened(sized).size == (sized.width, sized.height) == expected
    assert (SMALL, LARGE) == (400, 1200)
    assert len(picture.small.data) < 40_000


def test_the_same_source_gives_the_same_bytes_in_another_process() -> None:
    code = (
        "import sys; from hardpoint.photos import prepare; p = prepare(open(sys.argv[1], 'rb').read(), 'a.jpg');"
        "print(p.small.digest, p.large.digest)"
    )
    file = FOLDER / "jinx-sill-knob.jpg"
    picture = prepare(file.read_bytes(), file.name)
    told = subprocess.run([sys.executable, "-c", code, str(file)], capture_output=True, text=True, check=True)
    assert told.stdout.split() == [picture.small.digest, picture.large.digest]


def test_what_was_made_once_is_kept(monkeypatch: pytest.MonkeyPatch) -> None:
    data = _bytes(_halves((500, 401)))
    first = prepare(data, "a.jpg")
    monkeypatch.setattr(photos, "_prepared", lambda data, name: pytest.fail("made again"))
    assert prepare(data, "b.jpg") is first


def test_what_is_kept_has_a_bound(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(photos, "_KEPT", 3)
    monkeypatch.setattr(photos, "_ready", {})
    for width in range(20, 30):
        prepare(_bytes(_halves((width, 20))), "a.jpg")
    assert len(photos._ready) == 3


def test_a_colour_profile_is_turned_into_srgb() -> None:
    """A profile that swaps red and blue, made from sRGB's by exchanging the two colourants' tags (ICC.1, 9.2)."""
    profile = bytearray(_srgb())
    red, blue = profile.index(b"rXYZ", 128), profile.index(b"bXYZ", 128)
    profile[red : red + 4], profile[blue : blue + 4] = b"bXYZ", b"rXYZ"
    plain = _opened(prepare(_bytes(_halves(), quality=95), "a.jpg").large)
    swapped = _opened(prepare(_bytes(_halves(), quality=95, icc_profile=bytes(profile)), "a.jpg").large)
    assert _colour(plain, 0.2)[0] > 240
    assert _colour(swapped, 0.2)[0] < 20
    assert _colour(swapped, 0.2)[2] > 240


def test_a_broken_profile_or_exif_block_does_not_lose_the_photo() -> None:
    for odd in (_bytes(_halves(), icc_profile=b"nonsense" * 40), _bytes(_halves(), exif=b"Exif\0\0nonsense")):
        assert _opened(prepare(odd, "a.jpg").small).size == (400, 250)


@pytest.mark.parametrize("mode", ["1", "L", "LA", "P", "RGBA", "I;16"])
def test_every_kind_of_pixels_that_a_png_can_hold(mode: str) -> None:
    grey = Image.new("L", (60, 60), 128)
    image = Image.new("I;16", (60, 60), 128 * 257) if mode == "I;16" else grey.convert(mode)
    got = _colour(_opened(prepare(_bytes(image, "PNG"), "a.png").small), 0.5)
    assert all(abs(level - 128) <= (128 if mode == "1" else 3) for level in got)


def test_what_is_clear_is_white() -> None:
    clear = _bytes(Image.new("RGBA", (60, 60), (0, 0, 0, 0)), "PNG")
    assert min(_colour(_opened(prepare(clear, "a.png").small), 0.5)) > 250


def test_four_inks_become_three_colours() -> None:
    inks = _bytes(Image.new("CMYK", (60, 60), (0, 255, 255, 0)))
    red, green, blue = _colour(_opened(prepare(inks, "a.jpg").small), 0.5)
    assert red > 200
    assert max(green, blue) < 80


@pytest.mark.parametrize("length", [1, 30, 200, 900, 2000])
def test_no_cut_of_a_photo_is_published_or_ends_in_a_traceback(length: int) -> None:
    whole = (FOLDER / "thimble-sill-latch.jpg").read_bytes()
    for data in (whole[:length], whole[: len(whole) - length]):
        with pytest.raises(RefusedPhotoError, match=r"got a (picture that is broken|file that is no picture)"):
            prepare(data, "a.jpg")


def test_other_formats_of_pillow_are_not_read() -> None:
    for format_ in ("GIF", "BMP", "TIFF", "PPM", "EPS"):
        with pytest.raises(RefusedPhotoError, match="got a file that is no picture"):
            prepare(_bytes(_halves((30, 20)), format_), "a.jpg")


def test_the_demo_s_photos_are_small_and_one_holds_a_place() -> None:
    sizes = {file.name: file.stat().st_size for file in sorted(FOLDER.iterdir())}
    assert len(sizes) >= 3
    assert max(sizes.values()) < 60_000
    with Image.open(FOLDER / "jinx-sill-knob.jpg") as image:
        assert image.getexif()[ExifTags.Base.Orientation] == SIDEWAYS
        assert image.getexif().get_ifd(ExifTags.IFD.GPSInfo)[ExifTags.GPS.GPSLatitude]


def test_a_fleet_without_photos_needs_no_pillow(tmp_path: Path) -> None:
    code = "import sys, hardpoint.load, hardpoint.plugin; print('PIL' in sys.modules)"
    told = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True, cwd=tmp_path)
    assert told.stdout.strip() == "False"
