"""A fleet folder in every state that one can be found in: read as far as possible, told in full, never a traceback."""

from __future__ import annotations

import os
import pathlib
import shutil
import socket
from typing import Any

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from hardpoint import load, report
from hardpoint.load import folder as fleet_folder
from hardpoint.records.known import NonValue
from hardpoint.rules import check as apply_rules
from tests.examples.fleets import DAY, GOOD, TYPE, good_copy, told

QMA = "tails/QQ-QMA.yaml"


@pytest.fixture
def fleet(tmp_path: pathlib.Path, monkeypatch: pytest.MonkeyPatch) -> pathlib.Path:
    return good_copy(tmp_path, monkeypatch)


def put(fleet: pathlib.Path, find: str, text: str, file: str = TYPE) -> None:
    path = fleet / file
    before = path.read_text(encoding="utf-8")
    assert before.count(find) == 1
    path.write_text(before.replace(find, text), encoding="utf-8")


def differs(fleet: pathlib.Path, *lines: str) -> None:
    put(fleet, "differs: none recorded\n", "differs:\n" + "".join(f"  - {line}\n" for line in lines), QMA)


# What is read


def test_the_good_fleet(fleet: pathlib.Path) -> None:
    found = load.fleet(fleet)
    assert list(found.types) == ["quenby-merle"]
    assert list(found.tails) == ["QQ-QMA", "QQ-QMB"]
    assert list(found.events) == ["summer-days"]
    assert found.house is not None
    assert found.house.station.name == "Merlewater"
    assert list(found.sources) == ["merle-handbook"]
    assert (found.files, found.unreadable) == (6, frozenset())
    assert [plane.id for plane in found.tails_of("quenby-merle")] == ["QQ-QMA", "QQ-QMB"]
    assert found.tails_of("other") == ()
    assert found.types["quenby-merle"].written.file == "fleet/types/quenby-merle.yaml"


def test_a_path_as_text_does_as_well(fleet: pathlib.Path) -> None:
    assert load.fleet(str(fleet)).files == 6


def test_by_itself_a_fleet_with_errors_is_not_handed_out(fleet: pathlib.Path) -> None:
    put(fleet, "blades: 3", "blades: three")
    put(fleet, "mass: 12 kg", "mass: 12 m")
    with pytest.raises(load.FleetError) as wrong:
        load.fleet(fleet)
    assert [finding.rule for finding in wrong.value.findings] == ["not-a-count", "wrong-dimension"]
    assert str(wrong.value).startswith("2 problems, the first: fleet/types/quenby-merle.yaml:72: propeller.blades: got")


def test_a_warning_of_reading_stands_in_nobodys_way(fleet: pathlib.Path) -> None:
    put(fleet, "looks: bar", "looks: bar #2")
    assert set(load.fleet(fleet).tails) == {"QQ-QMA", "QQ-QMB"}
    assert [finding.rule for finding in load.read(fleet).findings] == ["comment-or-text"]


def test_what_the_contract_names_gives_the_same_findings_as_check(fleet: pathlib.Path) -> None:
    put(fleet, "length: 6.4 m", "length: 7.1 m")
    assert apply_rules(load.fleet(fleet), DAY) == load.check(fleet, DAY).findings


def test_problems_of_all_files_in_one_go(fleet: pathlib.Path) -> None:
    put(fleet, "blades: 3", "blades: three")
    put(fleet, "of: quenby-merle", "off: quenby-merle", QMA)
    put(fleet, "time: unknown", "time: noon", "events/summer-days.yaml")
    put(fleet, "spare_time: 60 s", "spare_time: 60 kg", "station.yaml")
    put(fleet, "standing: invented", "standing: heard", "sources.yaml")
    checked = load.check(fleet, DAY)
    assert [(finding.file.removeprefix("fleet/"), finding.rule) for finding in checked.findings] == [
        ("events/summer-days.yaml", "not-a-time"),
        ("sources.yaml", "not-one-of"),
        ("station.yaml", "wrong-dimension"),
        (QMA, "missing-key"),
        (QMA, "unknown-key"),
        (TYPE, "not-a-count"),
    ]
    assert checked.files == 6
    assert checked.errors == checked.findings


# What hangs together


def test_nobody_is_blamed_for_a_type_that_cannot_be_read(fleet: pathlib.Path) -> None:
    """Its aircraft and the events are there; only the type itself is told of."""
    (fleet / TYPE).write_text("name: [\n", encoding="utf-8")
    checked = load.check(fleet, DAY)
    assert {finding.file for finding in checked.findings} == {f"fleet/{TYPE}"}
    assert checked.fleet.tails == {}
    assert checked.fleet.unreadable == {"quenby-merle", "QQ-QMA", "QQ-QMB"}


def test_problems_of_a_tail_are_told_although_its_type_cannot_be_read(fleet: pathlib.Path) -> None:
    (fleet / TYPE).write_text("name: [\n", encoding="utf-8")
    put(fleet, "date: 2027-03-02", "date: March", QMA)
    found = load.check(fleet, DAY).findings
    assert [(finding.file, finding.rule) for finding in found] == [
        (f"fleet/{QMA}", "not-a-date"),
        (f"fleet/{TYPE}", "bad-yaml"),
    ]


def test_no_event_is_blamed_for_a_tail_that_cannot_be_read(fleet: pathlib.Path) -> None:
    put(fleet, "declared:", "declarde:", QMA)
    assert told(fleet) == (
        'fleet/tails/QQ-QMA.yaml:2: the key "declared" is missing; write it, if need be with "unknown"  [missing-key]\n'
        'fleet/tails/QQ-QMA.yaml:6: declarde: the key "declarde" is not known here; '
        'did you mean "declared"?  [unknown-key]'
    )


def test_a_tail_that_is_gone_is_missed_in_the_event(fleet: pathlib.Path) -> None:
    (fleet / QMA).unlink()
    assert told(fleet) == (
        'fleet/events/summer-days.yaml:10: days.saturday.entries.7.tail: there is no tail "QQ-QMA" here; '
        'did you mean "QQ-QMB"?  [entry-of-nothing]'
    )


def test_other_values_are_checked_beside_a_blank(fleet: pathlib.Path) -> None:
    put(fleet, "run_down: 5 s", "run_down:")
    put(fleet, "blades: 3", "blades: three")
    put(fleet, "  oxygen: not fitted", "  oxygen: not fitted\n  oxygen: unknown")
    assert [finding.rule for finding in load.check(fleet, DAY).findings] == [
        "empty-value",
        "not-a-count",
        "duplicate-key",
    ]


# Differences in odd shapes


@pytest.mark.parametrize(
    ("line", "rules"),
    [
        ('{at: "", type_says: nothing, here: words}', {"empty-value"}),
        ("{at: [a, b], type_says: nothing, here: words}", {"not-text"}),
        ("{at: {a: b}, type_says: nothing, here: words}", {"not-text"}),
        ("{at: ., type_says: nothing, here: words}", {"difference-no-place"}),
        ("{at: ..., type_says: nothing, here: words}", {"difference-no-place"}),
        ("{at: controls., type_says: nothing, here: words}", {"bad-id", "wrong-shape"}),
        ("{at: controls.master, type_says: nothing, here: nothing}", {"difference-outdated"}),
        ("{at: exits.sill-handle.steps.²., type_says: nothing, here: words}", {"difference-in-a-list"}),
        ("{at: exits.sill-handle.steps.0, type_says: {do: press}, here: nothing}", {"difference-in-a-list"}),
        ("{at: seats.pilot.grip.0, type_says: both shoulder straps, here: belt}", {"difference-in-a-list"}),
        ("{at: name, type_says: [Quenby, Merle], here: words}", {"difference-outdated"}),
        ("{at: name, type_says: {a: {b: [c]}}, here: words}", {"difference-outdated"}),
        ("{at: name, type_says: Quenby Merle, here: [a, {b: c}]}", {"not-text"}),
        ("{at: name, type_says: Quenby Merle, here: {stated: a, governs: b}}", {"not-text"}),
        ("{at: masses.empty, type_says: 580 kg, here: nothing}", {"not-an-answer"}),
        ("{at: rotor, type_says: nothing, here: words}", {"wrong-shape"}),
        ("{at: new-key, type_says: nothing, here: words}", {"unknown-key"}),
        ('{at: "[key]", type_says: nothing, here: words}', {"unknown-key"}),
        ("{at: hazards.oil, type_says: nothing, here: words}", {"difference-no-place"}),
        ("{at: name, here: words}", {"missing-key"}),
        ("{at: name, type_says: Quenby Merle}", {"missing-key"}),
        ("just words", {"wrong-shape"}),
        ("[a, list]", {"wrong-shape"}),
        ("{at: bottles.oxygen, type_says: not fitted, here: nothing, before: 7}", {"difference-no-place"}),
        ("{at: bottles.third, type_says: nothing, here: not fitted, before: Bottle One}", {"bad-id"}),
    ],
)
def test_differences_in_odd_shapes(line: str, rules: set[str], fleet: pathlib.Path) -> None:
    differs(fleet, line)
    found = load.check(fleet, DAY).findings
    assert {finding.rule for finding in found} == rules
    assert {finding.file for finding in found} == {f"fleet/{QMA}"}
    assert {finding.line for finding in found} == {6}


def test_a_whole_section_can_be_replaced_or_turned_to_unknown(fleet: pathlib.Path) -> None:
    differs(
        fleet,
        "{at: high_voltage, type_says: not fitted, here: unknown}",
        "{at: rotor, type_says: nothing, here: not fitted}",
    )
    put(fleet, "cut: preferred", "cut: possible")
    plane = load.fleet(fleet).tails["QQ-QMA"]
    assert plane.airframe.high_voltage is NonValue.UNKNOWN
    assert plane.airframe.rotor is NonValue.NOT_FITTED
    assert [override.kind for override in plane.overrides] == ["changed", "added"]


# Values in odd shapes


@pytest.mark.parametrize(
    ("find", "text", "rules"),
    [
        ("blades: 3", f"blades: {'9' * 4000}", {"not-a-count"}),
        ("blades: 3", "blades: \u0663", {"not-a-count"}),
        ("nose: -300", f"nose: -{'9' * 4000}", {"not-a-position"}),
        ("nose: -300", "nose: 1e999999", {"not-a-position"}),
        ("empty: 580 kg", f"empty: {'9' * 4000} kg", {"unreadable-quantity"}),
        ("empty: 580 kg", "empty: 999999999999999 kg", {"lift-carries-less-than-empty"}),
        ("spinner: {fs: 0}", "spinner: {fs: 9999999}", {"position-outside"}),
        (
            "date: 2027-03-02, review: 2028-03-01, source",
            "date: 9999-99-99, review: 0000-01-01, source",
            {"not-a-date"},
        ),
        ("name: Quenby Merle", f"name: {'x' * 1001}", {"too-long"}),
        ("  spinner: {fs: 0}", f"  {'x' * 61}: {{fs: 0}}", {"bad-name"}),
        ("  spinner: {fs: 0}", '  "spinner ": {fs: 0}', {"bad-name"}),
        ("  oxygen: not fitted", '  "": not fitted', {"not-text-key"}),
    ],
)
def test_values_in_odd_shapes(find: str, text: str, rules: set[str], fleet: pathlib.Path) -> None:
    put(fleet, find, text)
    found = load.check(fleet, DAY).findings
    assert {finding.rule for finding in found} == rules
    assert max((len(finding.message) for finding in found), default=0) < 600


# Folders


def test_a_file_in_place_of_the_folder(tmp_path: pathlib.Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.chdir(tmp_path)
    (tmp_path / "fleet").write_text("words", encoding="utf-8")
    assert told(tmp_path / "fleet").startswith("fleet:1: there is no such folder; ")


def test_an_empty_folder(tmp_path: pathlib.Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.chdir(tmp_path)
    (tmp_path / "fleet").mkdir()
    assert [finding.rule for finding in load.check(tmp_path / "fleet", DAY).findings] == [
        "missing-file",
        "missing-file",
        "no-fleet",
    ]


def test_a_folder_that_may_not_be_opened(fleet: pathlib.Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """To root, who may run the tests, permissions say nothing: the refusal is made up."""
    listing = pathlib.Path.iterdir

    def refuse(self: pathlib.Path) -> Any:
        if self.name == refused:
            raise PermissionError(13, "Permission denied", str(self))
        return listing(self)

    monkeypatch.setattr(pathlib.Path, "iterdir", refuse)
    refused = "events"
    assert told(fleet) == (
        "fleet/events:1: got permission denied, needs a folder of records that can be opened  [not-a-folder]"
    )
    refused = "fleet"
    assert told(fleet) == "fleet:1: cannot be opened (permission denied)  [no-fleet]"


def test_a_folder_that_goes_while_it_is_read(fleet: pathlib.Path, monkeypatch: pytest.MonkeyPatch) -> None:
    def gone(self: pathlib.Path) -> Any:
        raise FileNotFoundError(2, "No such file or directory", str(self))

    monkeypatch.setattr(pathlib.Path, "iterdir", gone)
    assert [finding.rule for finding in load.check(fleet, DAY).findings] == ["no-fleet"]


def test_the_fleet_folder_itself_may_be_a_link(fleet: pathlib.Path) -> None:
    link = fleet.parent / "link"
    link.symlink_to(fleet)
    assert load.check(link, DAY).findings == []


def test_links_that_lead_in_a_circle(fleet: pathlib.Path, monkeypatch: pytest.MonkeyPatch) -> None:
    (fleet.parent / "one").symlink_to("two")
    (fleet.parent / "two").symlink_to("one")
    assert [finding.rule for finding in load.check(fleet.parent / "one", DAY).findings] == ["no-fleet"]
    (fleet / "tails" / "QQ-QMC.yaml").symlink_to("QQ-QMC.yaml")
    assert [finding.rule for finding in load.check(fleet, DAY).findings] == ["not-a-file"]


def test_folders_pipes_and_sockets_with_the_name_of_a_record(fleet: pathlib.Path) -> None:
    (fleet / "tails" / "QQ-A.yaml").mkdir()
    os.mkfifo(fleet / "tails" / "QQ-B.yaml")
    os.chdir(fleet / "tails")  # a socket's path has to be short
    with socket.socket(socket.AF_UNIX) as opened:
        opened.bind("QQ-C.yaml")
    os.chdir(fleet.parent)
    assert [finding.message for finding in load.check(fleet, DAY).findings] == [
        "got a folder, needs a plain file in this place",
        "got a pipe, needs a plain file in this place",
        "got a socket, needs a plain file in this place",
    ]


@pytest.mark.parametrize(
    "name", [b"a\xff.yaml", b"a\nb.yaml", b"a\x1b[2J.yaml", "\u202eb.yaml".encode(), b"x y.yaml", b"-.yaml", b"a" * 250]
)
def test_weird_file_names_are_told_and_can_be_printed(name: bytes, fleet: pathlib.Path) -> None:
    try:
        (pathlib.Path(os.fsdecode(os.fsencode(fleet / "types") + b"/" + name))).write_text("x: y\n", encoding="utf-8")
    except OSError:
        pytest.skip("this file system does not take such names")
    checked = load.check(fleet, DAY)
    assert [finding.rule for finding in checked.findings] == ["file-name"]
    for form in (report.text, report.as_json, report.github):
        form(checked.findings, DAY, checked.files).encode("ascii" if form is report.as_json else "utf-8")


def test_files_are_named_from_where_the_command_stands(fleet: pathlib.Path, monkeypatch: pytest.MonkeyPatch) -> None:
    put(fleet, "blades: 3", "blades: three")

    def file() -> str:
        return load.check(fleet, DAY).findings[0].file

    assert file() == "fleet/types/quenby-merle.yaml"
    monkeypatch.chdir(fleet)
    assert file() == "types/quenby-merle.yaml"
    monkeypatch.chdir(fleet / "types")
    assert file() == "fleet/types/quenby-merle.yaml"


def test_from_a_folder_that_is_gone(
    fleet: pathlib.Path, tmp_path: pathlib.Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    gone = tmp_path / "gone"
    gone.mkdir()
    monkeypatch.chdir(gone)
    gone.rmdir()
    assert load.check(fleet, DAY).findings == []


def test_a_shelf_that_is_missing_is_empty(fleet: pathlib.Path) -> None:
    shutil.rmtree(fleet / "events")
    assert load.check(fleet, DAY).findings == []
    assert fleet_folder.records(fleet, fleet_folder.EVENTS) == ([], [])


# Anything at all


@pytest.fixture(scope="module")
def scratch(tmp_path_factory: pytest.TempPathFactory) -> pathlib.Path:
    return pathlib.Path(shutil.copytree(GOOD, tmp_path_factory.mktemp("fuzz") / "fleet"))


def never_raises(fleet: pathlib.Path, data: bytes) -> None:
    (fleet / TYPE).write_bytes(data)
    checked = load.check(fleet, DAY)
    lines = data.count(b"\n") + data.count(b"\r") + 1
    for finding in checked.findings:
        assert finding.message
        assert finding.line >= 1
        assert finding.file.rsplit("/", 1)[-1] != "quenby-merle.yaml" or finding.line <= lines
    report.text(checked.findings, DAY, checked.files).encode("utf-8")


@settings(max_examples=60, deadline=None)
@given(data=st.binary(max_size=300))
def test_any_bytes_in_a_type_never_raise(scratch: pathlib.Path, data: bytes) -> None:
    never_raises(scratch, data)
    assert load.check(scratch, DAY).errors


SIGNS = ["- ", ": ", "{", "}", "[", "]", "#", "&a", "*a", "!!x", "<<", "|", ">", '"', "'", "\t", "  ", "\n", "?", "%"]
WORDS = ["unknown", "not fitted", "nothing", "name", "zones", "5 kg", "\u202e", "\ufeff", "---", "..."]
GOOD_LINES = (GOOD / TYPE).read_text(encoding="utf-8").split("\n")


@settings(max_examples=80, deadline=None, suppress_health_check=[HealthCheck.too_slow])
@given(
    number=st.integers(0, len(GOOD_LINES) - 1),
    column=st.integers(0, 60),
    text=st.lists(st.sampled_from(SIGNS + WORDS), max_size=4).map("".join),
    how=st.sampled_from(["insert", "replace the rest", "drop the line", "repeat the line"]),
)
def test_a_slip_anywhere_in_a_good_record_never_raises(
    scratch: pathlib.Path, number: int, column: int, text: str, how: str
) -> None:
    lines = list(GOOD_LINES)
    line = lines[number]
    if how == "insert":
        lines[number] = line[:column] + text + line[column:]
    elif how == "replace the rest":
        lines[number] = line[:column] + text
    else:
        lines[number : number + 1] = [] if how == "drop the line" else [line, line]
    never_raises(scratch, "\n".join(lines).encode("utf-8"))


@settings(max_examples=30, deadline=None)
@given(
    data=st.binary(max_size=200), name=st.sampled_from([QMA, "events/summer-days.yaml", "station.yaml", "sources.yaml"])
)
def test_any_bytes_in_any_other_file_never_raise(scratch: pathlib.Path, data: bytes, name: str) -> None:
    whole = (GOOD / name).read_bytes()
    (scratch / TYPE).write_bytes((GOOD / TYPE).read_bytes())
    for text in (data, whole + data, data + whole):
        (scratch / name).write_bytes(text)
        checked = load.check(scratch, DAY)
        report.text(checked.findings, DAY, checked.files).encode("utf-8")
    (scratch / name).write_bytes(whole)
