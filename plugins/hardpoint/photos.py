"""One photo, from the bytes of a file to the two clean JPEGs that are published, or the reason why not.

Nothing of the source but its pixels is published: they are turned upright (Exif 2.3, tag 0x0112), changed to sRGB where
a colour profile stands in the file, and encoded anew. Where a phone was, whose it is and when it was used goes nowhere.

Pillow is imported when the first photo is read: ``check`` on a fleet without photos has no need of it.
"""

from __future__ import annotations

import contextlib
import hashlib
import io
import re
import warnings
from typing import TYPE_CHECKING

from hardpoint.findings import got_needs, quoted
from hardpoint.records.pictures import Picture, Sized

if TYPE_CHECKING:
    from PIL import Image

    from hardpoint.load.reading_rules import PhotoRule

MAX_BYTES = 20_000_000
MAX_PIXELS = 65_000_000
"""A large telephone's picture has 64 million; decoded, this many take 200 MB for a moment."""
MAX_SIDE = 20_000
SMALL, LARGE = 400, 1200
"""Widths in pixels; a source is never enlarged."""
QUALITY = 80
_ENDINGS = {"JPEG": (".jpg", ".jpeg"), "MPO": (".jpg", ".jpeg"), "PNG": (".png",), "WEBP": (".webp",)}
"""What Pillow calls the formats; MPO is a JPEG with a second picture behind it, as some telephones write it."""
_KEPT = 500
_ready: dict[tuple[str, str], Picture] = {}


class RefusedPhotoError(Exception):
    """A photo that is not published; the fields are those of a finding."""

    def __init__(self, rule: PhotoRule, read: str, expected: str, example: str = "", message: str = "") -> None:
        self.rule, self.read, self.expected, self.example = rule, read, expected, example
        self.message = message or got_needs(read, expected, example)
        super().__init__(self.message)


def prepare(data: bytes, name: str) -> Picture:
    """Both sizes of a photo; the same bytes give the same ones. Raises :class:`RefusedPhotoError`.

    What was made once is kept under the digest of its source: rebuilds of ``serve`` decode only what is new.
    """
    key = (hashlib.sha256(data).hexdigest(), name.rpartition(".")[2])
    if key not in _ready:
        picture = _prepared(data, name)
        while len(_ready) >= _KEPT:
            del _ready[next(iter(_ready))]
        _ready[key] = picture
    return _ready[key]


def _prepared(data: bytes, name: str) -> Picture:
    from PIL import Image, UnidentifiedImageError

    try:
        with warnings.catch_warnings():
            warnings.simplefilter(
                "ignore"
            )  # of odd metadata, which is thrown away, and of sizes, which are bounded here
            with Image.open(io.BytesIO(data), formats=("JPEG", "PNG", "WEBP")) as source:
                _refuse_dimensions(*source.size)
                _refuse_ending(name, str(source.format))
                source.draft(None, (2 * LARGE, 2 * LARGE))  # a JPEG is decoded no finer than is needed
                source.load()
                image = _in_srgb(_upright(source))
            return Picture(_sized(image, SMALL), _sized(image, LARGE))
    except RefusedPhotoError:
        raise
    except Image.DecompressionBombError as bomb:
        pixels = re.search(r"\d+", str(bomb))
        raise _too_many(f"{pixels[0]} pixels" if pixels else "too many pixels") from None
    except UnidentifiedImageError:
        raise _no_photo(_what_it_is(data)) from None
    except Exception as broken:  # what hostile bytes bring out of a decoder is not to be listed
        raise _no_photo("a picture that is broken or cut off") from broken


def _refuse_dimensions(width: int, height: int) -> None:
    if width * height > MAX_PIXELS or max(width, height) > MAX_SIDE:
        raise _too_many(f"{width} x {height} pixels")


def _too_many(read: str) -> RefusedPhotoError:
    expected = f"at most {MAX_PIXELS // 1_000_000} million pixels and {MAX_SIDE} along a side"
    return RefusedPhotoError("photo-too-large", read, expected, "", f"got {read}, needs {expected}; make it smaller")


def _refuse_ending(name: str, format_: str) -> None:
    endings = _ENDINGS[format_]
    if not name.endswith(endings):
        kind = {"MPO": "JPEG", "WEBP": "WebP"}.get(format_, format_)
        better = name.rpartition(".")[0] + endings[0]
        message = f"the file holds a {kind}, and its name says something else; call it {quoted(better)}"
        raise RefusedPhotoError("photo-other-format", name, f"a name that ends in {endings[0]}", better, message)


def _no_photo(read: str) -> RefusedPhotoError:
    expected = "a whole picture: JPEG, PNG or WebP"
    return RefusedPhotoError("photo-not-a-photo", read, expected, "", f"got {read}, needs {expected}")


def _what_it_is(data: bytes) -> str:
    """The commonest mistakes by name."""
    start = data[:1000].lstrip(b"\xef\xbb\xbf \t\r\n").lower()
    if not data:
        return "an empty file"
    if start.startswith((b"<!doctype html", b"<html")):
        return "a web page"
    if start.startswith(b"<") and b"<svg" in start:
        return "a drawing (SVG)"
    if data[4:8] == b"ftyp":
        return "a HEIC or AVIF picture or a film"
    return "a file that is no picture"


def _upright(image: Image.Image) -> Image.Image:
    from PIL import ImageOps

    with contextlib.suppress(Exception):  # a broken Exif block says nothing about the orientation
        return ImageOps.exif_transpose(image)
    return image


def _in_srgb(image: Image.Image) -> Image.Image:
    """The pixels as sRGB on white, in a picture that holds nothing else."""
    from PIL import Image, ImageCms

    if image.mode.startswith("I"):  # 16 bits of grey
        image = image.point(lambda level: level * (1 / 256)).convert("L")
    profile = image.info.get("icc_profile")
    if image.mode in ("P", "PA", "LA", "1", "La", "RGBa"):
        image = image.convert("RGBA")
    alpha = image.getchannel("A") if image.mode == "RGBA" else None
    pixels = image.convert("RGB") if alpha else image
    if profile:
        with contextlib.suppress(ImageCms.PyCMSError, OSError, ValueError):  # a broken profile is as good as none
            own = ImageCms.ImageCmsProfile(io.BytesIO(profile))
            changed = ImageCms.profileToProfile(pixels, own, ImageCms.createProfile("sRGB"), outputMode="RGB")
            pixels = changed or pixels
    clean = Image.new("RGB", image.size, "white")
    clean.paste(pixels.convert("RGB"), (0, 0), alpha)
    return clean


def _sized(image: Image.Image, width: int) -> Sized:
    from PIL import Image

    if image.width > width:
        height = max(1, round(image.height * width / image.width))
        image = image.resize((width, height), Image.Resampling.LANCZOS)
    encoded = io.BytesIO()
    image.save(encoded, "JPEG", quality=QUALITY, optimize=True)
    data = encoded.getvalue()
    return Sized(image.width, image.height, hashlib.sha256(data).hexdigest(), data)
