"""The docs are true: their commands, paths and links exist, their examples pass, their slips are answered as shown."""

from __future__ import annotations

import difflib
import re
import shutil
from collections.abc import Iterator
from dataclasses import dataclass
from datetime import date
from pathlib import Path

import click
import pytest
from markdown import Markdown

from hardpoint import load, reference, report
from hardpoint.cli import cli

ROOT = Path(__file__).parents[1]
DOCS = ROOT / "docs"
SKELETONS = DOCS / "skeleton"
AUTHORS_PAGE = DOCS / "writing-a-record.md"
PAGES = [ROOT / "README.md", ROOT / "DEVELOPERS.md", ROOT / "CHANGELOG.md", *sorted(DOCS.glob("*.md"))]
AS_OF = date(2027, 3, 1)
TYPE, TAIL, EVENT = "types/quenby-merle.yaml", "tails/QQ-QMB.yaml", "events/practice.yaml"


def fleet(folder: Path, files: dict[str, str]) -> Path:
    """A fleet folder of these files beside the demo's station and sources."""
    for name, text in files.items():
        (folder / name).parent.mkdir(parents=True, exist_ok=True)
        (folder / name).write_text(text, encoding="utf-8")
    for name in ("station.yaml", "sources.yaml"):
        shutil.copy(ROOT / "fleet" / name, folder / name)
    return folder


def messages(folder: Path) -> list[str]:
    """The lines of ``check`` without file and line number; a line number inside a message becomes 8."""
    lines = report.text(load.check(folder, AS_OF).findings, AS_OF, 0).splitlines()
    said = [re.sub(r"^\S+:\d+: ", "", line) for line in lines[:-1] if not line.startswith(" ")]
    return [re.sub(r"\bline \d+", "line 8", line) for line in said]


def errors(folder: Path) -> list[str]:
    return [line for line in messages(folder) if not line.startswith("warning: ")]


# --- the author's page ---------------------------------------------------------------------------------------------


@dataclass(frozen=True)
class Slip:
    """A bad example: what was written, and what the page says that ``check`` answers."""

    title: str
    written: str
    answers: list[str]


def _blocks() -> Iterator[tuple[str, str, str]]:
    """The words before it, language and text of each fenced block."""
    words = AUTHORS_PAGE.read_text(encoding="utf-8")
    end = 0
    for found in re.finditer(r"^```(\w+)\n(.*?)^```$", words, re.MULTILINE | re.DOTALL):
        yield words[end : found.start()], found[1], found[2]
        end = found.end()


def _examples_and_slips() -> tuple[list[str], list[Slip]]:
    blocks = list(_blocks())
    examples, slips = [], []
    for (title, language, text), (between, following, answer) in zip(blocks, [*blocks[1:], ("", "", "")], strict=True):
        if language == "yaml" and following == "text" and not between.strip():
            slips.append(Slip(title.strip().splitlines()[-1], text, answer.splitlines()))
        elif language == "yaml":
            examples.append(text)
    return examples, slips


EXAMPLES, SLIPS = _examples_and_slips()
RECORDS = {
    TYPE: "".join(text for text in EXAMPLES if not re.search("^tail:", text, re.MULTILINE)),
    TAIL: "".join(text for text in EXAMPLES if re.search("^tail:", text, re.MULTILINE)),
}


def test_the_pieces_of_the_page_are_one_whole_record_that_passes(tmp_path: Path) -> None:
    assert errors(fleet(tmp_path, RECORDS)) == []


def _key(line: str) -> str:
    return line.strip().split(":")[0]


def _with(text: str, written: str) -> str | None:
    """The record with the entry that the slip is about replaced by it; None where there is no such entry."""
    lines = text.splitlines()
    keys = [_key(line) for line in lines]
    meant = _key(written)
    if meant not in keys:
        near = difflib.get_close_matches(meant, keys, 1, 0.9)
        if not near:
            return None
        meant = near[0]
    start = keys.index(meant)
    depth = len(lines[start]) - len(lines[start].lstrip())
    end = start + 1
    while end < len(lines) and len(lines[end]) - len(lines[end].lstrip()) > depth:
        end += 1
    bad = [" " * depth + line for line in written.splitlines()]
    return "\n".join([*lines[:start], *bad, *lines[end:]]) + "\n"


def _spoilt(slip: Slip) -> dict[str, str]:
    for name, text in RECORDS.items():
        spoilt = _with(text, slip.written)
        if spoilt is not None:
            return RECORDS | {name: spoilt}
    raise AssertionError(f"no entry of the example has the key of this slip: {slip.written}")


def answers(slip: Slip, folder: Path) -> list[str]:
    """What ``check`` says of the example with the slip in it, beyond what it says of the example."""
    before = messages(fleet(folder / "good", RECORDS))
    after = messages(fleet(folder / "bad", _spoilt(slip)))
    return [line for line in after if line not in before]


@pytest.mark.parametrize("slip", SLIPS, ids=lambda slip: slip.title)
def test_a_slip_is_answered_as_the_page_says(slip: Slip, tmp_path: Path) -> None:
    assert answers(slip, tmp_path) == slip.answers, "after a change of words: python -m tests.take_answers"


def test_the_page_has_slips_of_every_kind() -> None:
    rules = {match for slip in SLIPS for match in re.findall(r"\[([a-z-]+)\]$", "\n".join(slip.answers), re.MULTILINE)}
    assert len(SLIPS) >= 20
    assert {"bad-yaml", "empty-value", "missing-key", "unknown-key", "not-one-of", "no-such-id"} <= rules


def _shown_apart() -> Iterator[str]:
    """Pieces of a record that stand outside the examples: indented lines, and plain blocks that are no answer."""
    page = AUTHORS_PAGE.read_text(encoding="utf-8")
    prose = re.sub(r"(?ms)^```.*?^```$", "", page)
    yield from re.findall(r"(?m)^    (\w+: \{.*\})$", prose)
    answers = {answer for slip in SLIPS for answer in slip.answers}
    for _, language, text in _blocks():
        if language == "text" and not text.startswith("#") and text.splitlines()[0] not in answers:
            yield text


@pytest.mark.parametrize("text", list(_shown_apart()))
def test_a_piece_shown_apart_is_accepted_in_its_place(text: str, tmp_path: Path) -> None:
    changed = _with(RECORDS[TYPE], text)
    assert changed is not None
    assert errors(fleet(tmp_path, RECORDS | {TYPE: changed})) == []


def test_the_first_line_of_the_empty_records_is_the_one_shown() -> None:
    shown = next(text.strip() for _, language, text in _blocks() if language == "text")
    assert (SKELETONS / "type.yaml").read_text(encoding="utf-8").splitlines()[0] == shown
    target = shown.partition("$schema=")[2]
    assert (ROOT / "fleet" / "types" / target).resolve().is_file()


def test_the_device_shown_apart_is_accepted(tmp_path: Path) -> None:
    page = AUTHORS_PAGE.read_text(encoding="utf-8")
    device = re.search(r"(?m)^    rocket:\n(?:      .*\n)+", page)
    assert device
    entry = "".join(f"{line[2:]}\n" for line in device[0].splitlines())
    whole = f"pyrotechnics:\n  rocket-parachute: not fitted\n  seat-cartridge: not fitted\n{entry}"
    changed = _with(RECORDS[TYPE], whole)
    assert changed is not None
    forgotten = errors(fleet(tmp_path / "forgotten", RECORDS | {TYPE: changed}))
    assert [line.rpartition("[")[2] for line in forgotten] == ["do-not-pull-denied]"] * 2, "the page says so too"
    named = changed.replace("do_not_pull: not fitted", "do_not_pull: {red-handle: unknown}")
    assert errors(fleet(tmp_path / "named", RECORDS | {TYPE: named})) == []
    (report,) = (text for _, language, text in _blocks() if language == "text" and "reported:" in text)
    asked = dict.fromkeys(("tail", "time", "occupants", "fuel_planned", "kit"), "unknown")
    entry = "".join(f"        {key}: {value}\n" for key, value in {"type": "quenby-merle", **asked}.items())
    day = "days:\n  saturday:\n    date: 2027-06-05\n    entries:\n      7:\n"
    event = f"name: Practice\nplace: here\n{day}{entry}{report}"
    reported = fleet(tmp_path / "reported", RECORDS | {TYPE: named, EVENT: event})
    assert [line for line in messages(reported) if "[report-" in line] == []
    assert load.check(reported, AS_OF).fleet.events["practice"].event.days["saturday"].entries["7"].reported


def test_the_photo_shown_apart_is_accepted(tmp_path: Path) -> None:
    (photo,) = (text for _, language, text in _blocks() if language == "text" and "photos:" in text)
    folder = fleet(tmp_path, RECORDS | {TYPE: RECORDS[TYPE] + photo})
    (folder / "photos").mkdir()
    shutil.copy(ROOT / "fleet" / "photos" / "jinx-ignition-key.jpg", folder / "photos" / "merle-outside-handle.jpg")
    assert errors(folder) == []


# --- the empty records ---------------------------------------------------------------------------------------------

SKELETON = {TYPE: "type.yaml", "tails/QQ-QMA.yaml": "tail.yaml", EVENT: "event.yaml"}
_FORM = re.compile(r"#\|")


def _filled(text: str) -> str:
    """An empty record as an author fills it: every form in use, the line above it that says unknown taken out."""
    lines = [line for line in text.splitlines() if not line.startswith("# ") or _FORM.match(line)]
    lines = [line for line in lines if line != "#"]
    kept = []
    for number, line in enumerate(lines):
        following = lines[number + 1] if number + 1 < len(lines) else ""
        if line.endswith(": unknown") and _FORM.match(following) and _key(following[2:]) == _key(line):
            continue
        kept.append(_FORM.sub("", line, count=1))
    return "\n".join(kept) + "\n"


def test_the_empty_records_pass_with_warnings_only(tmp_path: Path) -> None:
    texts = {name: (SKELETONS / source).read_text(encoding="utf-8") for name, source in SKELETON.items()}
    found = messages(fleet(tmp_path, texts))
    assert [line for line in found if not line.startswith("warning: ")] == []
    assert any("tail-not-declared" in line for line in found), "an empty tail must not look declared"
    assert sum("hazard-not-answered" in line for line in found) == 2, "an empty type must not look answered"


def test_every_form_of_the_empty_records_is_accepted_too(tmp_path: Path) -> None:
    texts = {name: _filled((SKELETONS / source).read_text(encoding="utf-8")) for name, source in SKELETON.items()}
    assert "#" not in texts[TYPE].replace("# yaml", "")
    assert errors(fleet(tmp_path, texts)) == []


def test_the_empty_type_has_every_section(tmp_path: Path) -> None:
    from hardpoint.records.airframe import Airframe

    text = _filled((SKELETONS / "type.yaml").read_text(encoding="utf-8"))
    sections = set(re.findall(r"(?m)^(\w+):", text))
    seldom = {"rotor", "photos", "changes", "notes", "also_called"}
    assert set(Airframe.model_fields) - sections == seldom


# --- generated pages -----------------------------------------------------------------------------------------------


@pytest.mark.parametrize("name", sorted(reference.pages()))
def test_generated_pages_are_current(name: str) -> None:
    shown = (DOCS / name).read_text(encoding="utf-8")
    assert shown == reference.pages()[name], "run: python3 site_build.py schema"


# --- what the docs name exists -------------------------------------------------------------------------------------


def _code(page: Path) -> str:
    """What a page sets in code: marks in the text, indented lines, fenced blocks."""
    return " \n".join(re.findall(r"`[^`\n]+`|(?m:^    .*$)|(?ms:^```.*?^```$)", page.read_text(encoding="utf-8")))


def _commands(text: str) -> Iterator[tuple[str, list[str]]]:
    """Each command of the project that a page names, with its options."""
    for found in re.finditer(r"(?:site_build\.py|\bhardpoint) +([a-z]+)((?: +--?[a-z-]+)*)", text):
        yield found[1], re.findall(r"--[a-z-]+", found[2])


def _options(command: click.Command) -> set[str]:
    return {option for param in command.params for option in param.opts} | {"--help"}


@pytest.mark.parametrize("page", PAGES, ids=lambda page: page.name)
def test_named_commands_exist(page: Path) -> None:
    for name, options in _commands(_code(page)):
        assert name in cli.commands, f"{page.name} names the command {name}"
        assert set(options) <= _options(cli.commands[name]), f"{page.name}: {name} {options}"


@pytest.mark.parametrize("page", PAGES, ids=lambda page: page.name)
def test_named_options_exist(page: Path) -> None:
    of_others = {"--strict"}  # of mkdocs build and of mypy
    known = set().union(*map(_options, cli.commands.values())) | of_others
    assert set(re.findall(r"(?<![\w-])--[a-z][a-z-]+", _code(page))) <= known


def test_the_readme_names_the_two_commands() -> None:
    assert {"check", "serve"} <= {name for name, _ in _commands((ROOT / "README.md").read_text(encoding="utf-8"))}
    assert "python3 site_build.py\n" in (ROOT / "README.md").read_text(encoding="utf-8")


_FOLDERS = "docs|fleet|plugins|tests|\\.github|\\.ci"
_FILES = "site_build|README|DEVELOPERS|CHANGELOG|LICENSE|mkdocs|pyproject"
_PATH = re.compile(rf"`((?:{_FOLDERS})/[\w./-]*|(?:{_FILES})\.\w+)`")
_FOR_EXAMPLE = {"fleet/types/quenby-merle.yaml", "fleet/tails/QQ-QMB.yaml", "fleet/photos/", "fleet/photos"}


@pytest.mark.parametrize("page", PAGES, ids=lambda page: page.name)
def test_named_paths_exist(page: Path) -> None:
    named = set(_PATH.findall(page.read_text(encoding="utf-8"))) - _FOR_EXAMPLE
    assert [name for name in sorted(named) if not (ROOT / name).exists()] == []


def _links(page: Path) -> Iterator[str]:
    prose = re.sub(r"```.*?```", "", page.read_text(encoding="utf-8"), flags=re.DOTALL)
    yield from re.findall(r"\]\(([^)\s]+)\)", prose)
    yield from re.findall(r'<img src="([^"]+)"', prose)


def test_the_readme_has_a_small_picture_with_words_for_it() -> None:
    readme = (ROOT / "README.md").read_text(encoding="utf-8")
    picture = re.search(r'<img src="([^"]+)"[^>]*\balt="([^"]{40,})"', readme)
    assert picture
    assert (ROOT / picture[1]).stat().st_size < 150_000


def _anchors(page: Path) -> set[str]:
    html = Markdown(extensions=["toc", "tables", "fenced_code", "attr_list"]).convert(page.read_text(encoding="utf-8"))
    return set(re.findall(r'id="([^"]+)"', html))


@pytest.mark.parametrize("page", PAGES, ids=lambda page: page.name)
def test_links_between_the_files_of_the_project_resolve(page: Path) -> None:
    for link in _links(page):
        target, _, anchor = link.partition("#")
        file = page.parent / target if target else page
        if page.parent == DOCS and target.endswith(".md") and not file.exists():
            continue  # a page that is made at build: MkDocs' strict build holds it
        assert file.exists(), f"{page.name}: {link}"
        assert not anchor or anchor in _anchors(file), f"{page.name}: {link}"
