"""No word of the interface lives outside the catalogue, and a catalogue of a station's own is held to the texts."""

from __future__ import annotations

import datetime as dt
import json
import logging
import re
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest
from bs4 import BeautifulSoup
from jinja2 import DictLoader, FileSystemLoader
from mkdocs.commands.build import build
from mkdocs.config import load_config
from mkdocs.exceptions import Abort

from hardpoint import gathering, load
from hardpoint.load import catalogue
from hardpoint.pages import all_pages
from hardpoint.pages.site import Site as Pages
from hardpoint.pages.view import Line, Lines, Section, SheetPage
from hardpoint.rendering import environment, render
from hardpoint.words import AS_WRITTEN, Language, language, speaking
from tests.site import maximal, other_letters
from tests.site.other_letters import ARMENIAN, GREEK, Author, armenian, english, english_in_script
from tests.site.support import DAY, FLEET, ROOT, Site

ASSETS = ROOT / "plugins" / "hardpoint" / "assets"
TEMPLATES = ROOT / "plugins" / "hardpoint" / "templates"
DOCS = ("reading-a-page", "cautions")
OWN = "own".translate(GREEK)
"""Words of an author."""
SETTINGS = """
site_name: Hardpoint
use_directory_urls: false
theme: {name: material, font: false}
plugins:
  - hardpoint: {fleet: fleet, as_of: "%s"%s}
nav:
  - %s: reading-a-page.md
  - %s: cautions.md
"""


def _project(folder: Path, fleet: Path, words: str = "") -> Path:
    """A project with the records of ``fleet`` in other letters, and docs pages without a Latin letter."""
    Author().rewrite(fleet, folder / "fleet")
    (folder / "docs").mkdir()
    for name in DOCS:
        (folder / "docs" / f"{name}.md").write_text(f"# {OWN}\n", encoding="utf-8")
    option = f", words: {words}" if words else ""
    (folder / "mkdocs.yml").write_text(SETTINGS % (DAY, option, OWN, OWN), encoding="utf-8")
    return folder


def _built(project: Path) -> Site:
    """The project's site, built in this process."""
    config = load_config(str(project / "mkdocs.yml"), site_dir=str(project / "site"))
    config.plugins.on_startup(command="build", dirty=False)
    try:
        build(config)
    finally:
        config.plugins.on_shutdown()
    return Site(project / "site")


@pytest.fixture(scope="module")
def spoken(tmp_path_factory: pytest.TempPathFactory) -> Language:
    """The language in which every text is told in other letters."""
    file = tmp_path_factory.mktemp("words") / "hy.po"
    assert other_letters.write_catalogue(file) > 1000
    return catalogue.read(file, file.name)


@pytest.fixture(scope="module", params=["demo", "maximal"])
def site(request: pytest.FixtureRequest, tmp_path_factory: pytest.TempPathFactory) -> Site:
    """A whole site in other letters, from the demo's records or from one that fills every key."""
    folder = tmp_path_factory.mktemp("site")
    fleet = FLEET
    if request.param == "maximal":
        fleet = folder / "filled"
        maximal.write(fleet)
    project = _project(folder / "project", fleet, "hy.po")
    other_letters.write_catalogue(project / "hy.po")
    return _built(project)


# --- No word outside ------------------------------------------------------------------------------------------------


def test_no_page_says_a_word_that_is_not_in_the_catalogue(site: Site) -> None:
    pages = [address for address in site.addresses if address.removesuffix(".html") not in DOCS]
    assert len(pages) > 15
    told = {address: english(site.page(address)) for address in pages}
    assert {address: words for address, words in told.items() if words} == {}


def test_the_pages_speak_in_the_other_letters(site: Site) -> None:
    """Else the test above would hold of an empty page."""
    for address in site.addresses:
        html = site.page(address).find("html")
        assert html is not None
        assert html["lang"] == "hy"
    crew = next(address for address in site.addresses if re.fullmatch(r"types/\d+\.html", address))
    words = site.words(crew)
    assert "Never touch".translate(ARMENIAN) in words
    assert set(words) & set(map(chr, GREEK.values()))


def test_the_index_of_the_finder_says_no_other_word(site: Site) -> None:
    text = (site.folder / "assets" / "hardpoint" / "finder-index.js").read_text(encoding="utf-8")
    strings = [json.loads(found) for found in re.findall(r'"(?:[^"\\]|\\.)*"', text)]
    shown = [string for string in strings if re.search(r"[A-Z]| ", string) and not string.endswith(".html")]
    assert len(shown) > 50
    page = "".join(f"<p>{BeautifulSoup(string, 'html.parser').get_text()}</p>" for string in shown)
    assert english(BeautifulSoup(page, "html5lib")) == []


@pytest.mark.parametrize("script", sorted(path.name for path in ASSETS.glob("*.js")))
def test_no_script_holds_a_word(script: str) -> None:
    """A script takes its words from its page."""
    assert english_in_script((ASSETS / script).read_text(encoding="utf-8")) == []


def test_the_style_sheet_holds_no_word() -> None:
    style = (ASSETS / "hardpoint.css").read_text(encoding="utf-8")
    contents = re.findall(r"content:([^;}]*)", style)
    assert len(contents) > 10
    texts = [text for content in contents for text in re.findall(r'"((?:[^"\\]|\\.)*)"', content)]
    assert [text for text in texts if re.search(r"[A-Za-z]{2}", re.sub(r"\\[0-9a-f]{1,6}", "", text))] == []


@pytest.fixture(scope="module")
def filled(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The records that fill every key."""
    folder = tmp_path_factory.mktemp("filled") / "fleet"
    maximal.write(folder)
    return folder


@pytest.mark.parametrize("seed", range(4))
def test_no_choice_and_no_unknown_says_another_word(filled: Path, spoken: Language, tmp_path: Path, seed: int) -> None:
    """Other choices at every place, and from few to all answers missing."""
    fleet = Author().rewrite(filled, tmp_path / "fleet")
    other_letters.shuffle(fleet, seed, (0.03, 0.15, 0.5, 1.0)[seed % 4])
    checked = load.check(fleet, dt.date.fromisoformat(DAY))
    assert checked.fleet.types
    templates = environment(FileSystemLoader(TEMPLATES))
    told: dict[str, list[str]] = {}
    with speaking(spoken):
        for page in all_pages(Pages(checked.fleet, tuple(checked.findings), dt.date.fromisoformat(DAY), DAY)):
            told[page.address] = english(BeautifulSoup(render(templates, page), "html5lib"))
    assert len(told) > 10
    assert {address: words for address, words in told.items() if words} == {}


# --- The test can fail ----------------------------------------------------------------------------------------------


def test_a_planted_word_is_found(spoken: Language, filled: Path) -> None:
    """In a view, in a template, in an attribute; a word that is said is not."""
    fleet = load.fleet(filled)
    with speaking(spoken):
        site = Pages(fleet, (), dt.date.fromisoformat(DAY), DAY)
        lines = Lines((Line(OWN, "Hold the"), Line(armenian("Open"))), title=OWN)
        sections = (Section("one", OWN, (lines,)),)
        view = SheetPage(site.frame("one.html", OWN), OWN, "", sections, (), ())
        shown = environment(FileSystemLoader(TEMPLATES)).get_template("sheet.html").render(page=view)
        assert english(BeautifulSoup(shown, "html5lib")) == ["Hold the"]
        planted = '<p title="Close it">{{ say("Open") }} shut</p><img alt="{{ say("Open") }}"><p lang="en">checker</p>'
        shown = environment(DictLoader({"x": planted})).get_template("x").render()
        assert english(BeautifulSoup(shown, "html5lib")) == ["Close it", "shut"]


@pytest.mark.parametrize(
    ("text", "words"),
    [
        ("12 kg (26 lb), 200 bar gauge, -5 °C, FS 1200, QQ-TWA", []),
        ("12 kg of it", ["of it"]),
        ("UNKNOWN", ["UNKNOWN"]),
        ("to 12 mm", ["to"]),
        ("a", []),
        ("seats.*.ties.*.kind", []),
    ],
)
def test_units_registrations_and_paths_are_no_words(text: str, words: list[str]) -> None:
    assert english(BeautifulSoup(f"<p>{text}</p>", "html5lib")) == words


@pytest.mark.parametrize(
    ("script", "words"),
    [
        ('count.textContent = found + " entries";', [" entries"]),
        ("button.textContent = 'Show';", ["Show"]),
        ('row.setAttribute("aria-label", "Close");', ["Close"]),
        ('list.append("more");', ["more"]),
        ('var told = "Nothing was found";', ["Nothing was found"]),
        ('count.textContent = told("found", {}); root.querySelector("a[href] b"); x.className = "hit hit--all";', []),
        ('// Show it\nlink.textContent = page.getAttribute("data-say-more") || "";', []),
    ],
)
def test_a_word_planted_in_a_script_is_found(script: str, words: list[str]) -> None:
    assert english_in_script(script) == words


# --- A station's own words ------------------------------------------------------------------------------------------

HEAD = 'msgid ""\nmsgstr ""\n"Language: {tag}\\n"\n"Plural-Forms: nplurals=3; plural=(n==1 ? 0 : n==2 ? 1 : 2);\\n"\n\n'


def _po(folder: Path, text: str, tag: str = "sl") -> Path:
    file = folder / "own.po"
    file.write_text(HEAD.replace("{tag}", tag) + text, encoding="utf-8")
    return file


def test_a_station_may_say_one_thing_otherwise(tmp_path: Path) -> None:
    """Singular, dual, plural as the file's own rule has it; a verb and a use of one spelling; the rest stays."""
    file = _po(
        tmp_path,
        'msgid "Never touch"\nmsgstr "Hands off"\n\nmsgctxt "step"\nmsgid "lift"\nmsgstr "raise"\n\n'
        'msgid "{count} tie recorded;"\nmsgid_plural "{count} ties recorded;"\n'
        'msgstr[0] "one tie;"\nmsgstr[1] "two ties;"\nmsgstr[2] "{count} ties;"\n',
    )
    told = catalogue.read(file, "own.po")
    assert (told.tag, told.direction) == ("sl", "ltr")
    said = told.catalogue
    assert [said.gettext("Never touch"), said.gettext("Open")] == ["Hands off", "Open"]
    assert [said.pgettext("step", "lift"), said.gettext("lift")] == ["raise", "lift"]
    texts = [said.ngettext("{count} tie recorded;", "{count} ties recorded;", count) for count in (1, 2, 3)]
    assert texts == ["one tie;", "two ties;", "{count} ties;"]
    assert catalogue.strangers(file, gathering.texts()) == []


@pytest.mark.parametrize(("tag", "direction"), [("ar-EG", "rtl"), ("pt_BR", "ltr"), ("he", "rtl"), ("de", "ltr")])
def test_a_language_has_its_direction(tmp_path: Path, tag: str, direction: str) -> None:
    """Arabic and Hebrew are written from right to left (CLDR, character order)."""
    told = catalogue.read(_po(tmp_path, 'msgid "Open"\nmsgstr "x"\n', tag), "own.po")
    assert (told.tag, told.direction) == (tag.replace("_", "-"), direction)


@pytest.mark.parametrize(
    ("text", "line", "told"),
    [
        ('msgid "was {tail} until {time}"\nmsgstr "{tail} bis {uhr}"\n', 6, "got {uhr} in '{tail} bis {uhr}', needs"),
        ('msgid "was {tail} until {time}"\nmsgstr "{tail} bis"\n', 6, "got '{tail} bis' without {time}, needs {tail}"),
        ('msgid "was {tail} until {time}"\nmsgstr "{tail} {time!r}"\n', 6, "needs braces in pairs, around names only"),
        ('msgid "was {tail} until {time}"\nmsgstr "{tail} {time"\n', 6, "needs braces in pairs, around names only"),
        ('msgid "Open"\nmsgstr "auf {x}"\n', 6, "got {x} in 'auf {x}', needs no {name} as in 'Open'"),
        (
            'msgid "{count} tie recorded;"\nmsgid_plural "{count} ties recorded;"\nmsgstr[0] "x"\n',
            6,
            "got 1 plural forms",
        ),
        ('msgid "Open\nmsgstr "x"\n', 6, "got 'msgid \"Open', needs a line of a .po file"),
        ('msgid "Open"\n\nmsgid "Close"\nmsgstr "x"\n', 6, "missing msgstr"),
    ],
)
def test_a_broken_catalogue_is_refused_by_line(tmp_path: Path, text: str, line: int, told: str) -> None:
    with pytest.raises(catalogue.CatalogueError) as refused:
        catalogue.read(_po(tmp_path, text), "words/own.po")
    assert str(refused.value).startswith(f"words/own.po:{line}: ")
    assert told in str(refused.value)


def test_every_problem_is_told_in_one_go(tmp_path: Path) -> None:
    wrong = 'msgid "was {tail} until {time}"\nmsgstr "{tail} {uhr}"\n\nmsgid "Open"\nmsgstr "{x}"\n'
    with pytest.raises(catalogue.CatalogueError) as refused:
        catalogue.read(_po(tmp_path, wrong), "own.po")
    assert [told.split(": ")[0] for told in str(refused.value).splitlines()] == ["own.po:6", "own.po:6", "own.po:9"]


def test_the_example_of_the_docs_is_accepted_and_its_slip_answered_so(tmp_path: Path) -> None:
    page = (ROOT / "docs" / "words.md").read_text(encoding="utf-8")
    example, answer = (re.findall(rf"```{kind}\n(.*?)```", page, re.S)[0] for kind in ("po", "text"))
    file = tmp_path / "words.po"
    file.write_text(example, encoding="utf-8")
    assert catalogue.read(file, "words.po").catalogue.gettext("Never touch") == "Hands off"
    assert catalogue.strangers(file, gathering.texts()) == []
    line = int(answer.split(":")[1])
    slip = 'msgid "was {tail} until {time}"\nmsgstr "{tail} bis {uhr}"\n'
    file.write_text("\n" * (line - 1) + slip, encoding="utf-8")
    with pytest.raises(catalogue.CatalogueError) as refused:
        catalogue.read(file, "words.po")
    assert str(refused.value).splitlines()[0] == answer.strip()


@pytest.mark.parametrize(
    ("raw", "told"),
    [
        (None, "got no file, needs a .po file"),
        (b"\xff\xfe", "got the byte 0xff, needs a .po file in UTF-8"),
        (b"PK\x03\x04\n", "needs a line of a .po file"),
        (b'msgid ""\nmsgstr ""\n"Plural-Forms: nplurals=2; plural=(import os);\\n"\n', "needs a rule such as"),
        (b'msgid ""\nmsgstr ""\n"Plural-Forms: nplurals=many; plural=n;\\n"\n', "no .po file"),
        (b'msgid ""\nmsgstr ""\n"Language: <b>\\n"\n', "no .po file"),
    ],
)
def test_what_is_no_catalogue_is_refused(tmp_path: Path, raw: bytes | None, told: str) -> None:
    file = tmp_path / "own.po"
    if raw is not None:
        file.write_bytes(raw)
    with pytest.raises(catalogue.CatalogueError, match=re.escape(told)):
        catalogue.read(file, "own.po")


# --- The plugin -----------------------------------------------------------------------------------------------------


@pytest.fixture
def small(filled: Path, tmp_path: Path) -> Path:
    """A project that names a catalogue; the test writes it."""
    return _project(tmp_path / "project", filled, "own.po")


@pytest.fixture(autouse=True)
def _english_before_and_after() -> Iterator[None]:
    assert language() == AS_WRITTEN
    yield
    assert language() == AS_WRITTEN, "what one build speaks leaks into the next"


def test_a_build_speaks_and_the_next_does_not(small: Path, caplog: pytest.LogCaptureFixture) -> None:
    (small / "own.po").write_text('msgid "Never touch"\nmsgstr "Hands off"\n\nmsgid "No such text"\nmsgstr "x"\n')
    crew = "types/1000.html"
    with caplog.at_level(logging.INFO, "mkdocs"):
        site = _built(small)
    assert "Hands off" in site.words(crew)
    assert site.page(crew).find("html")["lang"] == "en"  # type: ignore[index]  # an element
    assert "own.po holds 1 texts that the interface does not have, at line 4" in caplog.text
    settings = small / "mkdocs.yml"
    settings.write_text(settings.read_text(encoding="utf-8").replace(", words: own.po", ""), encoding="utf-8")
    words = _built(small).words(crew)
    assert "Never touch" in words
    assert "Hands off" not in words


@pytest.mark.parametrize("text", [None, 'msgid "Open"\nmsgstr "{x}"\n'])
def test_a_build_with_a_broken_catalogue_fails_before_the_last_site_is_gone(small: Path, text: str | None) -> None:
    (small / "own.po").write_text('msgid "Open"\nmsgstr "Auf"\n')
    site = _built(small)
    before = (site.folder / "index.html").read_bytes()
    (small / "own.po").unlink()
    if text is not None:
        (small / "own.po").write_text(text)
    with pytest.raises(Abort):
        _built(small)
    assert (site.folder / "index.html").read_bytes() == before


# --- The list of all texts ------------------------------------------------------------------------------------------


def test_the_list_of_texts_is_current() -> None:
    """To mend: python3 site_build.py schema."""
    assert gathering.TEMPLATE.read_text(encoding="utf-8") == gathering.template()


def test_the_list_names_files_and_no_day() -> None:
    text = gathering.template()
    assert "#: pages/shutdown.py" in text
    assert not re.search(r"20\d\d|(?m:^#: /)|\.py:\d", text)
    assert {(None, "Never touch"), ("step", "lift"), (None, "lift"), ("key", "off is")} <= gathering.texts()


@pytest.mark.parametrize(
    "source", ['say(f"a {b}")', 'say("a" + b)', "x = f\"{say(f'{a}')}\"", 'say_count(2, "one", f"{n} many")']
)
def test_a_text_that_is_put_together_is_refused(source: str) -> None:
    """Nobody could list it."""
    with pytest.raises(ValueError, match=r"x\.py:1: a text is put together here"):
        list(gathering._calls_of_python(source, "x.py"))


def test_letters_and_tables_of_the_test_itself() -> None:
    assert armenian("was {tail}") == f"{'was'.translate(ARMENIAN)} {{tail}}"
    for table in (ARMENIAN, GREEK):
        told: Any = "".join(map(chr, table)).translate(table)
        assert len(set(told)) == 52
        assert not re.search("[A-Za-z]", told)
        assert told[26:].lower() == told[:26]
