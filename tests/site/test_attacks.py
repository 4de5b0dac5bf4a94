"""An attack in every field of free words: it shows as the text it is, and nothing of it becomes markup."""

from __future__ import annotations

import datetime as dt
import json
import re
import shutil
from pathlib import Path
from typing import Any

import pytest
from bs4 import BeautifulSoup

from hardpoint import load
from tests.site import maximal
from tests.site.fixtures import Hostile
from tests.site.maximal import ATTACK, EVENT, TAIL, TYPE, fields_of_words
from tests.site.support import Site, plain, squeezed

ATTRIBUTES = ("href", "src", "action", "formaction", "data", "xlink:href", "srcset", "poster", "style")

PHOTO = r"(?:\.\./)+assets/photos/[0-9a-f]{20}\.jpg"
"""The only pictures that there are."""


def _texts(page: BeautifulSoup) -> str:
    """What a page shows: its text without scripts and styles, and without findings: those quote no more than a line."""
    content = page.body
    assert content is not None
    return squeezed(
        " ".join(
            str(text)
            for text in content.find_all(string=True)
            if text.parent
            and text.parent.name not in ("script", "style")
            and not text.find_parent(class_="value", lang="en")
        )
    )


@pytest.fixture(scope="module")
def texts(hostile: Hostile) -> dict[str, str]:
    """The text of every page of the hostile site."""
    return {address: _texts(hostile.site.page(address)) for address in hostile.site.addresses}


def test_the_models_have_the_words_that_this_test_is_about() -> None:
    fields = fields_of_words()
    assert len(fields) > 80
    assert {("Step", "until"), ("Tail", "notes"), ("Station", "words"), ("Source", "title"), ("Entry", "kit")} <= fields


@pytest.mark.parametrize("kind", list(maximal.MODELS))
def test_every_field_of_words_is_shown_on_some_page(hostile: Hostile, texts: dict[str, str], kind: str) -> None:
    every = " ".join(texts.values())
    planted = {mark: path for mark, path in hostile.planted.items() if re.match(rf"{kind}\b", path)}
    assert planted
    assert [path for mark, path in planted.items() if mark not in every] == []


def test_an_attack_is_shown_whole_wherever_it_is_shown(hostile: Hostile, texts: dict[str, str]) -> None:
    """As text, to the letter: no brace evaluated, no entity decoded twice, no tag dropped."""
    seen = 0
    for address, text in texts.items():
        for mark in hostile.planted:
            whole = squeezed(ATTACK.format(mark=mark))
            seen += text.count(whole)
            assert text.count(mark) == text.count(whole), f"{address}: {hostile.planted[mark]}"
    assert seen > len(hostile.planted)


def test_no_attack_becomes_an_element_or_an_attribute(hostile: Hostile, demo: Site) -> None:
    own = {element.name for address in demo.addresses for element in demo.page(address).find_all(True)}
    for address in hostile.site.addresses:
        page = hostile.site.page(address)
        for element in page.find_all(True):
            assert element.name in own | {"svg"}, f"{address}: {str(element)[:200]}"
            assert not [name for name in element.attrs if name.lower().startswith("on")], f"{address}: {element}"
            for name in ATTRIBUTES:
                value = str(element.get(name) or "")
                assert not re.match(r"(?i)\s*(?:javascript|data|vbscript):", value), f"{address}: {value}"
                assert "zq" not in value, f"{address}: {value}"
        assert [img for img in page.find_all("img") if not re.fullmatch(PHOTO, str(img["src"]))] == []
        assert [script for script in page.find_all("script") if script.decode_contents().strip()] == []


def test_an_attack_in_a_style_stays_one_string_of_it(hostile: Hostile) -> None:
    """The foot of printed sheets is a string of CSS: it ends where it should, and the rule with it."""
    count = re.escape('--sheet-count:"" counter(page) " of " counter(pages) ""')
    one_string = re.compile(rf':root\{{--sheet-foot:"(?:[^"\\\n]|\\[0-9a-f]{{1,6}} )*";{count}\}}')
    styles = [
        style.decode_contents()
        for address in hostile.site.addresses
        if address != "404.html"
        for style in hostile.site.page(address).find_all("style")
    ]
    assert any("zq" in style for style in styles)
    assert [style for style in styles if not one_string.fullmatch(style)] == []


def test_an_attack_in_the_data_is_text_of_json(hostile: Hostile) -> None:
    for address, name in ((f"fleet/types/{TYPE}.json", "type.name"), (f"fleet/events/{EVENT}.json", "event.name")):
        data = hostile.site.data(address)
        mark = next(mark for mark, path in hostile.planted.items() if path == name)
        assert data["record"]["name"] == ATTACK.format(mark=mark)
    assert hostile.site.data(f"fleet/tails/{TAIL}.json")["differs"]


REFUSED_PLACES: list[tuple[str, tuple[str, ...]]] = [
    (f"types/{TYPE}.yaml", ("landmarks", "canopy bow")),
    (f"types/{TYPE}.yaml", ("controls", "one")),
    (f"types/{TYPE}.yaml", ("exits", "one")),
    (f"types/{TYPE}.yaml", ("checked", "datum")),
    (f"events/{EVENT}.yaml", ("days", "one")),
    ("station.yaml", ("tools", "one")),
    ("station.yaml", ("words", "canopy bow")),
    ("sources.yaml", ("one",)),
]
"""Keys: names and ids, which become addresses."""

REFUSED_VALUES: list[tuple[str, tuple[str, ...]]] = [
    (f"types/{TYPE}.yaml", ("photos", "one", "shows")),
    (f"tails/{TAIL}.yaml", ("differs", "0", "at")),
    (f"events/{EVENT}.yaml", ("claims", "one", "every")),
    ("station.yaml", ("unfit_also", "0")),
    ("station.yaml", ("unfit_over_water", "0")),
    (f"types/{TYPE}.yaml", ("exits", "one", "opens")),
    (f"types/{TYPE}.yaml", ("exits", "one", "way_in")),
    (f"types/{TYPE}.yaml", ("controls", "one", "off_is")),
    (f"types/{TYPE}.yaml", ("masses", "empty")),
    (f"types/{TYPE}.yaml", ("size", "nose")),
    (f"tails/{TAIL}.yaml", ("tail",)),
    (f"tails/{TAIL}.yaml", ("of",)),
    (f"events/{EVENT}.yaml", ("days", "one", "date")),
]
"""Values that are no free words: ids, choices, directions, figures, dates."""


@pytest.fixture
def fleet(hostile: Hostile, tmp_path: Path) -> Path:
    """The hostile records, which are sound, in a folder that a test may write in."""
    return Path(shutil.copytree(hostile.fleet, tmp_path / "fleet"))


def _planted(folder: Path, file: str, path: tuple[str, ...], as_key: bool) -> int:
    """Put an attack at a path of a record; gives its line."""
    record = plain(folder / file)
    here: Any = record
    for key in path[:-1]:
        here = here[int(key)] if isinstance(here, list) else here[key]
    attack = "<img src=x onerror=window.ran=9>"
    if as_key:
        here[attack] = here.pop(path[-1])
    else:
        here[int(path[-1]) if isinstance(here, list) else path[-1]] = attack
    maximal.save(folder / file, record)
    text = (folder / file).read_text(encoding="utf-8")
    return text[: text.index(json.dumps(attack))].count("\n") + 1


@pytest.mark.parametrize(
    ("file", "path", "as_key"),
    [(file, path, True) for file, path in REFUSED_PLACES] + [(file, path, False) for file, path in REFUSED_VALUES],
    ids=lambda value: ".".join(value) if isinstance(value, tuple) else str(value),
)
def test_attacks_are_refused_by_line(fleet: Path, file: str, path: tuple[str, ...], as_key: bool) -> None:
    line = _planted(fleet, file, path, as_key)
    errors = load.check(fleet, dt.date(2027, 6, 5)).errors
    assert f"fleet/{file}:{line}" in [f"{error.file}:{error.line}" for error in errors], errors


def test_an_attack_where_a_difference_points_is_refused_by_line(fleet: Path) -> None:
    line = _planted(fleet, f"tails/{TAIL}.yaml", ("differs",), as_key=False)
    errors = load.check(fleet, dt.date(2027, 6, 5)).errors
    assert f"fleet/tails/{TAIL}.yaml:{line}" in [f"{error.file}:{error.line}" for error in errors]


def test_a_file_whose_name_is_an_attack_is_refused(fleet: Path) -> None:
    name = "<img src=x onerror=window.ran=9>.yaml"
    (fleet / "types" / f"{TYPE}.yaml").rename(fleet / "types" / name)
    errors = load.check(fleet, dt.date(2027, 6, 5)).errors
    assert [error.rule for error in errors if name in error.file] == ["file-name"]


def test_the_record_without_attacks_at_other_places_is_sound(fleet: Path) -> None:
    """The refusals above are those of the attack, and not of the record around it."""
    assert load.check(fleet, dt.date(2027, 6, 5)).errors == []
