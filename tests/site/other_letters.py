"""Two sets of letters that nobody takes for English: the interface speaks in one, the authors wrote in the other.

Every text of the catalogue becomes Armenian letters, every free word of a record Greek ones, each letter for letter. A
plain a to z on a page then belongs to neither: a unit, a registration, or a word that lives outside the catalogue.
"""

from __future__ import annotations

import functools
import io
import random
import re
import shutil
from collections.abc import Iterator
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any

import yaml
from babel.messages.pofile import read_po, write_po
from bs4 import BeautifulSoup, Tag

from hardpoint.gathering import TEMPLATE
from hardpoint.records.schema import documents
from hardpoint.records.texts import MOST_WORDS
from hardpoint.units.registry import UNITS
from tests.site.maximal import ID_EXAMPLE, save
from tests.site.support import plain

FOLDERS = {"types": "type", "tails": "tail", "events": "event"}
NAME_EXAMPLE = "canopy bow"
"""What the schema gives as an example of a name."""
KEPT = {"rocket-parachute", "seat-cartridge", "smoke-oil"}
"""Ids that mean something to the program."""
NOT_FREE = {"none", "nothing"}
"""Answers within free words."""
LICENSED = "licensed "
"""What the role of somebody who reports of a rocket has to begin with, in whatever language: a rule asks for it."""


def _letters(small: int, capital: int) -> dict[int, int]:
    return {ord("a") + n: small + n for n in range(26)} | {ord("A") + n: capital + n for n in range(26)}


ARMENIAN = _letters(0x0561, 0x0531)
GREEK = _letters(0x03B1, 0x0391) | {ord("r"): 0x03E1, ord("R"): 0x03E0}  # two places of capitals are empty in Unicode


def armenian(text: str) -> str:
    """A text of the interface letter for letter, its ``{names}`` kept."""
    return "".join(
        part if part.startswith("{") else part.translate(ARMENIAN) for part in re.split(r"(\{[a-z_]+\})", text)
    )


def write_catalogue(file: Path) -> int:
    """Write a .po file in which every text of the template is said in the other letters; gives their number."""
    with TEMPLATE.open("rb") as template:
        catalog = read_po(template, locale="en")
    catalog.fuzzy = False
    for text in catalog:
        if isinstance(text.id, str) and text.id:
            text.string = armenian(text.id)
        elif text.id:
            text.string = tuple(map(armenian, text.id))
    written = io.BytesIO()
    write_po(written, catalog)
    file.write_bytes(written.getvalue().replace(b"Language: en", b"Language: hy"))
    return len(catalog)


@dataclass
class Author:
    """Rewrites records: free words and names in other letters, ids in digits. The schema says which is which."""

    _ids: dict[str, str] = field(default_factory=dict)

    def rewrite(self, fleet: Path, into: Path) -> Path:
        """A copy of a fleet whose authors wrote in other letters."""
        shutil.copytree(fleet, into, ignore=shutil.ignore_patterns("*.yaml"))
        types = {path.stem: plain(path) for path in sorted((fleet / "types").glob("*.yaml"))}
        for folder, kind in FOLDERS.items():
            for path in sorted((fleet / folder).glob("*.yaml")):
                record = plain(path)
                name = path.stem if kind == "tail" else self.id(path.stem)
                save(into / folder / f"{name}.yaml", self.record(kind, record, types.get(record.get("of", ""), {})))
        for kind in ("station", "sources"):
            save(into / f"{kind}.yaml", self.record(kind, plain(fleet / f"{kind}.yaml"), {}))
        return into

    def record(self, kind: str, record: Any, type_: Any) -> Any:
        """One record in other letters. ``type_``: for a tail, the record of its type."""
        document = _document(kind)
        told = self._part(record, document, document["$defs"])
        if isinstance(record.get("differs"), list):
            told["differs"] = [self._difference(entry) for entry in record["differs"]]
        for name, claim in record.get("claims", {}).items():
            told["claims"][self.id(name)] |= self._claimed(claim)
        return told

    def id(self, text: str) -> str:
        """Digits instead of an id, the same for the same."""
        return text if text in KEPT else self._ids.setdefault(text, str(1000 + len(self._ids)))

    def path(self, text: str) -> str:
        """``controls.magneto-left.off_is`` with the ids in digits; keys stay."""
        document = _document("type")
        here: Any = document
        told = []
        for part in text.split("."):
            keys, below = _below(here, part, document["$defs"])
            told.append(part if keys == "key" or part == "*" else self._key(part, keys))
            here = below
        return ".".join(told)

    def _claimed(self, claim: dict[str, Any]) -> dict[str, Any]:
        """What a claim expects is written as what stands at its path: a choice stays a choice."""
        document = _document("type")
        here: Any = document
        for part in claim["every"].replace("*", ID_EXAMPLE).split("."):
            _, here = _below(here, part, document["$defs"])
        among = [self._part(word, here, document["$defs"]) for word in claim.get("among", [])]
        return {"expects": self._part(claim["expects"], here, document["$defs"]), "among": among}

    def _difference(self, entry: dict[str, Any]) -> dict[str, Any]:
        document = _document("type")
        here: Any = document
        for part in entry["at"].split("."):
            _, here = _below(here, part, document["$defs"])
        told = {key: self._part(entry[key], here, document["$defs"]) for key in ("type_says", "here")}
        told = {key: value if entry[key] != "nothing" else "nothing" for key, value in told.items()}
        free = {"because": entry["because"].translate(GREEK)} if "because" in entry else {}
        before = {"before": self.id(entry["before"])} if "before" in entry else {}
        return {"at": self.path(entry["at"]), **told, **before, **free}

    def _part(self, tree: Any, node: Any, defs: Any) -> Any:
        if isinstance(tree, dict):
            told = {}
            for key, value in tree.items():
                keys, below = _below(node, key, defs)
                told[key if keys == "key" else self._key(key, keys)] = self._part(value, below, defs)
            return told
        if isinstance(tree, list):
            items: Any = next((one["items"] for one in _choices(node, defs) if "items" in one), {})
            return [self._part(item, items, defs) for item in tree]
        return self._leaf(tree, list(_choices(node, defs)))

    def _leaf(self, text: str, choices: list[dict[str, Any]]) -> str:
        if any(text in one.get("enum", ()) for one in choices) or text in NOT_FREE:
            return text
        if text.startswith(LICENSED):
            return LICENSED + self._leaf(text.removeprefix(LICENSED), choices)
        for one in choices:
            examples = one.get("examples", [""])
            if re.fullmatch(r"[a-z_]+(\.[a-z0-9_*-]+)+", text):
                return self.path(text)
            if one.get("maxLength") == MOST_WORDS or NAME_EXAMPLE in examples:
                return text.translate(GREEK)
            if examples[0] == ID_EXAMPLE:
                return self.id(text)
        return text

    def _key(self, key: str, kind: str) -> str:
        if kind == "id" or key == "one":  # a number in the line-up may be letters
            return self.id(key)
        return key.translate(GREEK) if kind == "name" else key


@functools.cache
def _document(kind: str) -> Any:
    return yaml.safe_load(documents()[f"{kind}.json"])


def _choices(node: Any, defs: Any) -> Iterator[dict[str, Any]]:
    """Every shape that can stand at a place."""
    if "$ref" in node:
        yield from _choices(defs[node["$ref"].split("/")[-1]], defs)
    elif "anyOf" in node:
        for one in node["anyOf"]:
            yield from _choices(one, defs)
    else:
        yield node


def _below(node: Any, key: str, defs: Any) -> tuple[str, Any]:
    """What a key is ("key", "id", "name", "other") and the schema of what stands under it."""
    for one in _choices(node, defs):
        if key in one.get("properties", {}):
            return "key", one["properties"][key]
        for pattern, below in one.get("patternProperties", {}).items():
            if re.search(pattern, key):
                return ("id" if re.search(pattern, ID_EXAMPLE) else "other"), below
        if isinstance(one.get("additionalProperties"), dict):
            names = one.get("propertyNames", {})
            names = defs[names["$ref"].split("/")[-1]] if "$ref" in names else names
            return ("name" if NAME_EXAMPLE in names.get("examples", ()) else "other"), one["additionalProperties"]
    return "other", {}


# What a page says ------------------------------------------------------------------------------------------------

_SAID_BY_ATTRIBUTES = re.compile(r"alt|title|aria-label|placeholder|label|content|data-label|data-say(?:-.*)?")
_UNIT = "|".join(
    sorted(
        (re.escape(word) for unit in UNITS.values() for word in (unit.name, unit.printed, *unit.spellings)),
        key=len,
        reverse=True,
    )
)
_NO_WORDS = re.compile(
    rf"(?<![\w.])[-+\u2212]?[\d.,]+ ?(?:{_UNIT})(?: (?:gauge|abs|absolute))?(?![A-Za-z])"  # a quantity
    r"|\b(?:mm|bar|psi|kg|lbf|kgf|daN|kPa)\b"  # units that are named without a figure
    r"|\b[A-Z0-9]{1,4}-[A-Z0-9]{1,6}\b"  # a registration
    rf"|\b{LICENSED.strip()}\b(?= [^\x00-\x7f])"  # before an author's word
    r"|\b(?:FS|BL|WL|JSON)\b"  # stations, by their usual letters; the name of a file format
    r"|\b[a-z_]+(?:\.[a-z0-9_*-]+)+(?![a-z0-9_*-])"  # a path of a record, as its author wrote it
    rf"|\{{[a-z_]+\}}|\b(?:{'|'.join(KEPT)}|{'|'.join(word.replace('-', ' ') for word in KEPT)})\b",
    re.ASCII | re.I,
)
_PLAIN = re.compile(r"[A-Za-z]{2,}(?:[ '-]+[A-Za-z]+)*")


def english(page: BeautifulSoup) -> list[str]:
    """Every run of plain letters that a page shows or tells and that is no unit, registration or path.

    The checker's own messages are English on purpose, and marked so (lang="en"); what a record holds as it was written
    stands in the second column of folded tables.
    """
    html = page.find("html")
    assert isinstance(html, Tag)
    return sorted({found for text in _said(html) for found in _PLAIN.findall(_NO_WORDS.sub(" ", text))})


def _said(element: Tag) -> Iterator[str]:
    for child in element.children:
        if isinstance(child, Tag):
            if child.name == "script" or child.get("lang") == "en" or _is_as_written(child):
                continue
            if child.name == "style":
                yield " ".join(re.findall(r'"((?:[^"\\]|\\.)*)"', child.decode_contents()))
                continue
            tells = child.attrs if child.name != "meta" or child.get("name") == "description" else {}
            yield from (str(value) for name, value in tells.items() if _SAID_BY_ATTRIBUTES.fullmatch(name))
            yield from _said(child)
        elif type(child).__name__ == "NavigableString":
            yield str(child)


def _is_as_written(cell: Tag) -> bool:
    return cell.name == "td" and cell.get("data-label") == armenian("As written")


# What a script says ----------------------------------------------------------------------------------------------

_COMMENT_OR_TEXT = re.compile(
    r"""//[^\n]*|/\*.*?\*/|"((?:[^"\\\n]|\\.)*)"|'((?:[^'\\\n]|\\.)*)'|`((?:[^`\\]|\\.)*)`""", re.S
)
_SHOWN = re.compile(
    r"\.(?:textContent|innerText|innerHTML|title|alt|placeholder|label|ariaLabel)\s*\+?=(?!=)[^;]*", re.S
)
"""From where something is shown to the end of the statement."""
_SHOWN_AT_ONCE = re.compile(
    r"(?:createTextNode|append|prepend|replaceChildren|alert)\(\s*$"
    r"|setAttribute\(\s*[\"'](?:title|alt|placeholder|aria-label)[\"']\s*,\s*$"
)
_LOOKED_UP = re.compile(r"(?:[A-Za-z]Attribute|\btold|\.get)\(\s*$|[=!]==\s*$")
"""A text right behind this is the name of something."""
_SELECTOR = re.compile(r"[^A-Za-z]*[\[.#:>]|[a-z0-9]+(?:[ >,.]*[\[.#:]| > )|use strict|[ a-z]*[a-z]+(?:__|--)[a-z]")


def english_in_script(source: str) -> list[str]:
    """Texts of a script that are words for people: shown somewhere, or of several words and no selector."""
    shown = [(found.start(), found.end()) for found in _SHOWN.finditer(source)]
    told = []
    for found in _COMMENT_OR_TEXT.finditer(source):
        text, before = next((group for group in found.groups() if group), ""), source[: found.start()]
        if not re.search(r"[A-Za-z]{2,}", text) or _SELECTOR.match(text) or re.fullmatch(r"\{[a-z]+\}", text):
            continue
        among = any(start < found.start() < end for start, end in shown) and not _LOOKED_UP.search(before)
        several = re.search(r"[A-Za-z]{2,}[,.;:]? +[A-Za-z]", text)
        if among or several or _SHOWN_AT_ONCE.search(before):
            told.append(text)
    return told


# Records of every shape ------------------------------------------------------------------------------------------

_ANSWERS = {"unknown", "not fitted", "not applicable", "none recorded", "nothing found"}
_SHAPE = {"datum", "size", "profile", "landmarks", "fs"}
"""What a page cannot be made without."""


def shuffled(tree: Any, node: Any, defs: Any, chance: random.Random, share: float, key: str = "") -> Any:
    """The record with other choices, and with answers that are no values in that share of the places that admit them.

    No rule is kept: such a record could not be published, but everything that pages can say is said sometime.
    """
    choices = list(_choices(node, defs))
    words = [word for one in choices for word in one.get("enum", ())]
    answers, values = [w for w in words if w in _ANSWERS], [w for w in words if w not in _ANSWERS]
    if key in _SHAPE:
        return tree
    if answers and chance.random() < share:
        return chance.choice(answers)
    if isinstance(tree, dict):
        told = {
            name: shuffled(value, _below(node, name, defs)[1], defs, chance, share, name)
            for name, value in tree.items()
        }
        if "then_unknown" in told and not isinstance(told.get("path"), list):  # it goes on from known points
            del told["then_unknown"]
        return told
    if isinstance(tree, list):
        items: Any = next((one["items"] for one in choices if "items" in one), {})
        return [shuffled(item, items, defs, chance, share) for item in tree]
    if tree in values:
        return chance.choice(values)
    ways = [way for one in choices if "free end" in one.get("pattern", "") for way in one["examples"]]
    return chance.choice([*ways, "towards floor and aft"]) if ways else tree


def shuffle(fleet: Path, seed: int, share: float) -> None:
    """Shuffle every record of a fleet of one type and one tail; the tail then has no differences."""
    chance = random.Random(seed)
    for path, kind in [
        *((path, kind) for folder, kind in FOLDERS.items() for path in sorted((fleet / folder).glob("*.yaml"))),
        (fleet / "station.yaml", "station"),
    ]:
        document, record = _document(kind), plain(path)
        if kind == "tail":
            record["differs"] = chance.choice(["none recorded", "unknown"])
        save(path, shuffled(record, document, document["$defs"], chance, share))
