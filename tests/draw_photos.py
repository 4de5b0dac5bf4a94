"""Draws the demo's photos under fleet/photos anew, invented like everything there. Not a test; start it by hand.

.venv/bin/python -m tests.draw_photos
"""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

from PIL import ExifTags, Image, ImageDraw, ImageFilter, ImageFont

FOLDER = Path(__file__).resolve().parents[1] / "fleet" / "photos"
SIZE = (1600, 1200)
SKIN, DARK, STEEL, RED, INK = "#e9e6da", "#23221f", "#9aa0a4", "#a3261a", "#171611"
SIDEWAYS = 6
"""Exif 2.3, tag 0x0112: the pixels lie on their side, and a viewer turns them a quarter clockwise."""


def sill_knob(draw: ImageDraw.ImageDraw) -> None:
    """Right sill of the Jinx from outside: nose to the right."""
    draw.rectangle((0, 0, 1600, 430), fill="#c4d2d8")
    draw.rectangle((0, 430, 1600, 490), fill=STEEL)
    draw.ellipse((530, 520, 1070, 1060), fill=RED)
    draw.ellipse((575, 565, 1025, 1015), fill="#6f6c63")
    draw.ellipse((670, 660, 930, 920), fill=STEEL, outline=INK, width=6)
    draw.ellipse((730, 700, 840, 790), fill="#cfd4d6")
    draw.text((1110, 720), "PUSH -\nPULL", fill=RED, font=ImageFont.load_default(100))


def ignition_key(draw: ImageDraw.ImageDraw) -> None:
    """Front panel of the Jinx, left, as the pilot sees it."""
    draw.rectangle((0, 0, 1600, 1200), fill=DARK)
    draw.ellipse((520, 270, 1080, 830), fill="#3b3a35", outline=STEEL, width=10)
    draw.ellipse((640, 390, 960, 710), fill="#b08d3c", outline=INK, width=6)
    draw.rounded_rectangle((765, 420, 835, 990), 30, fill="#c9a64e", outline=INK, width=5)
    draw.polygon([(700, 960), (900, 960), (930, 1100), (670, 1100)], fill=RED)
    draw.text((700, 170), "RUN", fill=SKIN, font=ImageFont.load_default(90))
    draw.text((250, 510), "OFF", fill=SKIN, font=ImageFont.load_default(90))


def sill_latch(draw: ImageDraw.ImageDraw) -> None:
    """Left sill of the Thimble from outside: nose to the left."""
    draw.rectangle((0, 0, 1600, 1200), fill="#a8271c")
    draw.rectangle((0, 0, 1600, 380), fill="#c4d2d8")
    draw.rectangle((0, 380, 1600, 430), fill=DARK)
    draw.ellipse((330, 520, 1270, 990), fill="#6b1a12")
    draw.rounded_rectangle((520, 660, 1080, 850), 40, fill=STEEL, outline=INK, width=6)
    draw.ellipse((580, 690, 710, 820), fill=INK)
    draw.text((830, 540), "OPEN", fill="white", font=ImageFont.load_default(90))
    draw.line((1090, 590, 1280, 590), fill="white", width=14)
    draw.polygon([(1280, 560), (1280, 620), (1340, 590)], fill="white")


def exif_of_a_telephone() -> Image.Exif:
    """What a telephone writes and nobody wants published: where, when, with what."""
    exif = Image.Exif()
    exif[ExifTags.Base.Make] = "Orlowater Telephones"
    exif[ExifTags.Base.Artist] = "safety lead"
    exif[ExifTags.Base.Orientation] = SIDEWAYS
    gps = exif.get_ifd(ExifTags.IFD.GPSInfo)
    gps[ExifTags.GPS.GPSLatitudeRef], gps[ExifTags.GPS.GPSLatitude] = "N", (0.0, 1.0, 2.0)
    gps[ExifTags.GPS.GPSLongitudeRef], gps[ExifTags.GPS.GPSLongitude] = "W", (0.0, 3.0, 4.0)
    return exif


def drawn(paint: Callable[[ImageDraw.ImageDraw], None]) -> Image.Image:
    """A picture with its label, soft as a hand-held one is."""
    image = Image.new("RGB", SIZE, SKIN)
    paint(ImageDraw.Draw(image))
    image = image.filter(ImageFilter.GaussianBlur(2))
    draw = ImageDraw.Draw(image)
    draw.rectangle((0, 1120, 1600, 1200), fill="white")
    draw.text((30, 1122), "drawn for the demo, no such aircraft exists", fill=INK, font=ImageFont.load_default(60))
    return image


def main() -> None:
    """Write all three; the first as a telephone stores it, on its side and with what it knows."""
    FOLDER.mkdir(exist_ok=True)
    on_its_side = drawn(sill_knob).transpose(Image.Transpose.ROTATE_90)
    on_its_side.save(FOLDER / "jinx-sill-knob.jpg", quality=60, optimize=True, exif=exif_of_a_telephone())
    drawn(ignition_key).save(FOLDER / "jinx-ignition-key.jpg", quality=60, optimize=True)
    drawn(sill_latch).save(FOLDER / "thimble-sill-latch.jpg", quality=60, optimize=True)


if __name__ == "__main__":
    main()
