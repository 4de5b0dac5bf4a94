"""fleet.json and the records' data files: the shapes of contract.md, and the figures against other libraries."""

from __future__ import annotations

import hashlib
import json
import re
from collections.abc import Iterator
from decimal import Decimal
from pathlib import Path
from typing import Any

import jsonschema
import pytest
from scipy import constants

from tests.site.support import DAY, Site, build, copied_fleet, leaves, names, record, run

DECIMAL = re.compile(r"-?(?:0|[1-9]\d*)(?:\.\d+)?")
RECORD_KEYS = {"id", "kind", "of", "record", "differs", "quantities", "figures", "findings"}
KINDS = {"type": "types", "tail": "tails", "event": "events"}

FACTOR = {
    "kg": 1.0, "lb": constants.lb, "t": 1000.0,
    "mm": 1e-3, "m": 1.0, "in": constants.inch, "ft": constants.foot,
    "L": constants.liter, "US gal": constants.gallon, "imp gal": constants.gallon_imp,
    "kgf": constants.kgf, "lbf": constants.lbf, "daN": 10.0, "kN": 1e3,
    "s": 1.0, "min": constants.minute, "deg": constants.degree,
    "V": 1.0, "Ah": constants.hour,
}  # fmt: skip
"""Factors to SI as scipy.constants has them (CODATA, NIST SP 811 appendix B); decimal prefixes by the SI."""


def _index(demo: Site) -> list[dict[str, Any]]:
    records = demo.data("fleet.json")["records"]
    assert isinstance(records, list)
    return records


def _quantities(demo: Site) -> Iterator[tuple[str, dict[str, Any]]]:
    for entry in _index(demo):
        for quantity in demo.data(entry["data"])["quantities"]:
            yield f"{entry['id']}: {quantity['path']}", quantity


def test_the_index_names_every_record_and_nothing_else(demo: Site) -> None:
    index = demo.data("fleet.json")
    assert set(index) == {"format", "edition", "as_of", "records"}
    assert index["format"] == "hardpoint-fleet/1"
    assert index["as_of"] == DAY
    assert re.fullmatch(r"\d{4}-\d{2}-\d{2}", index["edition"])
    listed = {(entry["kind"], entry["id"]) for entry in index["records"] if entry["kind"] in KINDS}
    assert listed == {(kind, name) for kind, folder in KINDS.items() for name in names(folder)}
    assert len(index["records"]) == len({(entry["kind"], entry["id"]) for entry in index["records"]})


def test_each_entry_leads_to_a_page_and_to_data_of_that_digest(demo: Site) -> None:
    for entry in _index(demo):
        assert set(entry) == {"id", "kind", "page", "data", "sha256"}
        assert entry["data"] == f"fleet/{entry['kind']}s/{entry['id']}.json"
        assert (demo.folder / entry["page"]).is_file()
        assert hashlib.sha256((demo.folder / entry["data"]).read_bytes()).hexdigest() == entry["sha256"]


def _unsorted(pairs: list[tuple[str, Any]]) -> dict[str, Any]:
    keys = [key for key, _ in pairs]
    assert keys == sorted(keys)
    assert len(keys) == len(set(keys))
    return dict(pairs)


def _no_float(text: str) -> None:
    raise AssertionError(f"{text} is a number of JSON; figures are decimal strings")


def test_keys_are_sorted_and_no_figure_is_a_binary_number(demo: Site) -> None:
    files = [demo.folder / "fleet.json", *(demo.folder / "fleet").glob("*s/*.json")]
    assert len(files) == 1 + len(_index(demo))
    for file in files:
        text = file.read_text(encoding="utf-8")
        json.loads(text, object_pairs_hook=_unsorted, parse_float=_no_float, parse_constant=_no_float)


def test_a_record_holds_what_the_contract_says(demo: Site) -> None:
    for entry in _index(demo):
        data = demo.data(entry["data"])
        assert set(data) >= RECORD_KEYS, entry["id"]
        assert (data["id"], data["kind"]) == (entry["id"], entry["kind"])
        assert isinstance(data["figures"], list)
        for finding in data["findings"]:
            assert {"rule", "severity", "line", "path", "message"} <= set(finding)
            assert finding["severity"] == "warning"  # an error is never published


@pytest.mark.parametrize("name", names("types"))
def test_a_type_s_record_keeps_its_author_s_words(demo: Site, name: str) -> None:
    data = demo.data(f"fleet/types/{name}.json")
    assert data["record"] == record("types", name)
    assert data["of"] is None
    assert data["differs"] == []


@pytest.mark.parametrize("name", names("tails"))
def test_a_tail_s_record_is_its_type_s_but_for_its_differences(demo: Site, name: str) -> None:
    written, data = record("tails", name), demo.data(f"fleet/tails/{name}.json")
    assert data["of"] == written["of"]
    differences = written["differs"] if isinstance(written["differs"], list) else []
    assert [difference["at"] for difference in data["differs"]] == [difference["at"] for difference in differences]
    at = {difference["at"] for difference in differences}
    type_, tail = dict(leaves(record("types", written["of"]))), dict(leaves(data["record"]))
    changed = {path for path in type_.keys() | tail.keys() if type_.get(path) != tail.get(path)}
    outside = {path for path in changed if not any(".".join(path).startswith(place) for place in at)}
    assert not outside
    assert bool(changed) == bool(at)


def test_quantities_have_the_contract_s_shape(demo: Site) -> None:
    seen = set()
    for where, quantity in _quantities(demo):
        assert set(quantity) == {"path", "stated", "governs", "status", "slip", "si", "shown"}, where
        seen.add(quantity["status"])
        assert quantity["status"] in ("single", "agree", "rounded", "disagree"), where
        assert (quantity["status"] == "single") == (len(quantity["stated"]) == 1), where
        assert 1 <= len(quantity["stated"]) <= 2, where
        assert quantity["governs"] is None or quantity["governs"] in [one["text"] for one in quantity["stated"]], where
        assert quantity["slip"] is None or quantity["status"] == "disagree", where
        assert DECIMAL.fullmatch(quantity["si"]["value"]), where
        for stated in quantity["stated"]:
            assert set(stated) == {"text", "value", "unit"}, where
            assert DECIMAL.fullmatch(stated["value"]), where
        for shown in quantity["shown"]:
            assert set(shown) == {"text", "unit", "rounded"}, where
            assert shown["rounded"] in ("nearest", "up", "down"), where
            assert shown["unit"] in shown["text"], where
    assert {"single", "agree"} <= seen


def test_a_quantity_stands_in_its_record_as_it_is_quoted(demo: Site) -> None:
    for entry in _index(demo):
        data = demo.data(entry["data"])
        for quantity in data["quantities"]:
            here = data["record"]
            for part in quantity["path"].split("."):
                here = here[int(part)] if isinstance(here, list) else here[part]
            text = here["stated"] if isinstance(here, dict) else here
            assert text == " / ".join(stated["text"] for stated in quantity["stated"]), quantity["path"]


def test_si_values_are_those_of_scipy(demo: Site) -> None:
    checked = set()
    for where, quantity in _quantities(demo):
        stated = quantity["stated"][0]
        if len(quantity["stated"]) == 1 and stated["unit"] in FACTOR:
            expected = float(stated["value"]) * FACTOR[stated["unit"]]
            assert float(quantity["si"]["value"]) == pytest.approx(expected, rel=1e-9), where
            checked.add(stated["unit"])
    assert {"kg", "mm", "m", "L", "s", "kgf"} <= checked


def _converted_from(quantity: dict[str, Any], unit: str) -> tuple[Decimal, Decimal]:
    """The SI value, low and high, that a shown figure converts: of a pair that disagrees, the statement in the other
    unit, for each of the two stands with its own conversion beside it."""
    if quantity["status"] == "disagree":
        (other,) = (stated for stated in quantity["stated"] if stated["unit"] != unit)
        value = Decimal(other["value"]) * Decimal(repr(FACTOR[other["unit"]]))
        return value, value
    low = Decimal(quantity["si"]["value"])
    return low, Decimal(quantity["si"].get("high", low))


def test_what_is_shown_is_rounded_to_the_side_it_names(demo: Site) -> None:
    """NIST SP 811, B.7.2, and the design's "round to the safe side": never through the value on that side."""
    checked = 0
    for where, quantity in _quantities(demo):
        for shown in quantity["shown"]:
            if shown["unit"] not in FACTOR or " to " in shown["text"]:
                continue
            low, high = _converted_from(quantity, shown["unit"])
            value = Decimal(shown["text"].removesuffix(shown["unit"]).strip()) * Decimal(repr(FACTOR[shown["unit"]]))
            slack = abs(value) * Decimal("1e-9")
            assert shown["rounded"] != "up" or value >= high - slack, where
            assert shown["rounded"] != "down" or value <= low + slack, where
            assert abs(value - low) <= abs(low) * Decimal("0.2"), where
            checked += 1
    assert checked > 50


PAIRS = [
    # Common practice, no source: what people write on placards and in handbooks.
    ("50 L / 13.2 US gal", "agree", ()),
    ("70 L / 18.5 US gal", "agree", ()),
    ("10 L / 2.5 US gal", "rounded", ()),
    ("62 L / 13.6 US gal", "disagree", ("imperial",)),
]


def test_pairs_have_the_status_of_the_contract_and_name_the_slip(tmp_path: Path) -> None:
    fleet = copied_fleet(tmp_path)
    file = fleet / "types" / "hobmire-twain.yaml"
    text = file.read_text(encoding="utf-8")
    start = text.index("  wing:\n    holds: avgas")
    end = text.index("  smoke-oil: not fitted")
    tank = text[start:end]
    more = "".join(
        tank.replace("  wing:\n", f"  pair-{number}:\n", 1).replace("70 L / 18.5 US gal", pair)
        for number, (pair, _, _) in enumerate(PAIRS)
    )
    file.write_text(text.replace("  smoke-oil: not fitted", more + "  smoke-oil: not fitted"), encoding="utf-8")
    site = Site(build(tmp_path / "site", fleet))
    quantities = {found["path"]: found for found in site.data("fleet/types/hobmire-twain.json")["quantities"]}
    for number, (pair, status, words) in enumerate(PAIRS):
        found = quantities[f"tanks.pair-{number}.capacity"]
        assert found["status"] == status, pair
        assert all(word in found["slip"] for word in words), found["slip"]
        assert (found["slip"] is not None) == bool(words), pair


def test_findings_in_the_data_are_those_of_the_check_command(demo: Site) -> None:
    checked = json.loads(run("check", "--as-of", DAY, "--format", "json").stdout)
    told = {(finding["rule"], finding["path"], finding["message"]) for finding in checked["findings"]}
    held = [
        (finding["rule"], finding["path"], finding["message"])
        for entry in _index(demo)
        for finding in demo.data(entry["data"])["findings"]
    ]
    assert told
    assert told == set(held)
    assert len(held) == len(set(held))


def test_every_data_file_fits_the_schema_that_is_published_beside_it(demo: Site) -> None:
    """JSON Schema draft 2020-12, by the reference implementation for Python."""
    schemas = {name: demo.data(f"fleet/schema/data-{name}.json") for name in ("index", "record")}
    for schema in schemas.values():
        jsonschema.Draft202012Validator.check_schema(schema)
    jsonschema.validate(demo.data("fleet.json"), schemas["index"])
    entries = _index(demo)
    assert len(entries) > 20
    for entry in entries:
        jsonschema.validate(demo.data(entry["data"]), schemas["record"])


def test_the_schema_refuses_what_is_no_data_file(demo: Site) -> None:
    schema = demo.data("fleet/schema/data-record.json")
    record = demo.data(_index(demo)[0]["data"])
    wrong = [
        record | {"kind": "boat"},
        record | {"extra": 1},
        {k: v for k, v in record.items() if k != "quantities"},
    ]
    for tree in wrong:
        assert list(jsonschema.Draft202012Validator(schema).iter_errors(tree))
