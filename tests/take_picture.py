"""Takes the README's picture anew: the crew page of one tail as a phone shows it. Not a test; start it by hand.

.venv/bin/python tests/take_picture.py [PAGE] [FILE]
"""

from __future__ import annotations

import sys
import tempfile
from datetime import date
from pathlib import Path

from PIL import Image
from playwright.sync_api import sync_playwright

from hardpoint import browser
from hardpoint.commands.site import build

ROOT = Path(__file__).resolve().parents[1]
AS_OF = date(2027, 6, 5)
"""The day of the demo's event: the picture does not change with the calendar."""


def main(page: str = "tails/QQ-VJA.html", file: str = "docs/images/crew-page.png") -> None:
    """Build the demo aside and write the first screen of ``page`` to ``file``."""
    chromium = browser.find()
    if chromium is None:
        sys.exit(f"No browser. {browser.HOW_TO_GET}.")
    target = ROOT / file
    target.parent.mkdir(parents=True, exist_ok=True)
    with tempfile.TemporaryDirectory() as folder, sync_playwright() as driver:
        build(ROOT, ROOT / "fleet", Path(folder) / "site", AS_OF)
        window = driver.chromium.launch(executable_path=str(chromium), args=list(browser.FLAGS))
        phone = window.new_context(viewport={"width": 360, "height": 740}, device_scale_factor=1.5)
        sheet = phone.new_page()
        sheet.goto((Path(folder) / "site" / page).as_uri())
        sheet.screenshot(path=target)
        window.close()
    with Image.open(target) as picture:  # ink on paper needs few colours
        picture.convert("RGB").quantize(32, dither=Image.Dither.NONE).save(target, optimize=True)
    print(f"{target.relative_to(ROOT)}: {target.stat().st_size} bytes")


if __name__ == "__main__":
    main(*sys.argv[1:])
