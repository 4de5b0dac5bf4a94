"""The command line: what a newcomer reads, what a wrong use is told, and the exit codes of the contract."""

from __future__ import annotations

import hashlib
import json
import os
import re
import shutil
import signal
import socket
import subprocess
import sys
import time
import urllib.request
from collections.abc import Iterator
from datetime import UTC, date, datetime
from pathlib import Path
from typing import NoReturn

import click
import pytest

from hardpoint import browser, cli
from hardpoint.commands import project, quality, site
from hardpoint.commands import schema as schema_command

ROOT = Path(__file__).resolve().parents[1]
COMMANDS = sorted(cli.cli.commands)
DAY = date(2027, 6, 5)


@pytest.fixture(autouse=True)
def _plain_surroundings(monkeypatch: pytest.MonkeyPatch) -> None:
    for name in ("SOURCE_DATE_EPOCH", "CI", browser.VARIABLE):
        monkeypatch.delenv(name, raising=False)
    monkeypatch.setattr(sys, "argv", ["site_build.py"])


@pytest.fixture
def fleet(tmp_path: Path) -> Path:
    folder = tmp_path / "fleet"
    folder.mkdir()
    return folder


# --- Help ----------------------------------------------------------------------------------------------------------


@pytest.mark.parametrize("command", COMMANDS)
def test_each_command_explains_itself(command: str, capsys: pytest.CaptureFixture[str]) -> None:
    assert cli.main([command, "--help"]) == 0
    text = capsys.readouterr().out
    assert text.startswith(f"Usage: python3 site_build.py {command} ")
    assert f"Example: python3 site_build.py {command} " in text
    assert re.search(r"Exit codes: 0 fine; 1 [a-z-]+", text)


@pytest.mark.parametrize("command", COMMANDS)
def test_each_example_of_the_help_can_be_parsed(command: str) -> None:
    example = re.search(r"Example: python3 site_build\.py (.+)", cli.cli.commands[command].help or "")
    assert example
    name, *arguments = example[1].split()
    assert name == command
    cli.cli.commands[command].make_context(name, arguments)


def test_the_starter_lists_the_same_commands(capsys: pytest.CaptureFixture[str]) -> None:
    """Its own help is shown before there is an environment to ask."""
    starter = (ROOT / "site_build.py").read_text(encoding="utf-8").split('"""')[1]
    assert sorted(re.findall(r"^  ([a-z]+)  +", starter, re.MULTILINE)) == COMMANDS
    assert cli.main(["--help"]) == 0
    listed = capsys.readouterr().out.split("Commands:")[1]
    assert sorted(re.findall(r"^  ([a-z]+)  +", listed, re.MULTILINE)) == COMMANDS


def test_help_loads_no_large_library() -> None:
    """Help, and a wrong use, answer at once: what takes long to import is imported by the commands that need it."""
    script = (
        "import sys; from hardpoint import cli; cli.main(['build', '--help']); "
        "print(sorted({'mkdocs', 'pint', 'pydantic', 'yaml', 'jinja2', 'numpy'} & set(sys.modules)))"
    )
    done = subprocess.run([sys.executable, "-c", script], capture_output=True, text=True, check=True, env=_env())
    assert done.stdout.splitlines()[-1] == "[]"


# --- What counts where nothing is said -----------------------------------------------------------------------------


@pytest.mark.parametrize("arguments", [[], ["--as-of", "2027-06-05"], ["build", "--as-of", "2027-06-05"]])
def test_building_is_the_default(arguments: list[str], monkeypatch: pytest.MonkeyPatch, fleet: Path) -> None:
    built: list[tuple[Path, Path, Path, date]] = []
    (fleet.parent / "mkdocs.yml").touch()
    monkeypatch.setattr(cli, "root", lambda: fleet.parent)
    monkeypatch.setattr(cli, "today", lambda: DAY)
    monkeypatch.setattr(site, "build", lambda *given: built.append(given))
    assert cli.main(arguments) == 0
    assert built == [(fleet.parent, fleet, fleet.parent / "site", DAY)]


def test_the_day_is_source_date_epoch_in_utc_else_today(monkeypatch: pytest.MonkeyPatch) -> None:
    assert project.today() in {date.today(), datetime.now().date()}
    monkeypatch.setenv(project.EPOCH, "951782400")  # 2000-02-29 00:00:00 UTC, by POSIX's formula for seconds
    assert project.today() == date(2000, 2, 29)
    monkeypatch.setenv(project.EPOCH, "951782399")
    assert project.today() == date(2000, 2, 28)


def test_the_edition_is_source_date_epoch_else_the_last_commit_else_the_day(
    monkeypatch: pytest.MonkeyPatch, tmp_path: Path
) -> None:
    monkeypatch.setenv("GIT_CEILING_DIRECTORIES", str(tmp_path.parent))
    assert project.edition(tmp_path, DAY) == datetime(2027, 6, 5, tzinfo=UTC)
    who = {f"GIT_{role}_{part}": "a@b.invalid" for role in ("AUTHOR", "COMMITTER") for part in ("NAME", "EMAIL")}
    env = os.environ | who | {"GIT_COMMITTER_DATE": "2027-03-02T10:00:00+02:00", "GIT_CONFIG_GLOBAL": os.devnull}
    for arguments in (["init", "-q"], ["commit", "-q", "--allow-empty", "--no-gpg-sign", "-m", "x"]):
        subprocess.run(["git", "-C", str(tmp_path), *arguments], check=True, env=env)
    assert project.edition(tmp_path, DAY) == datetime(2027, 3, 2, 8, tzinfo=UTC)
    monkeypatch.setenv(project.EPOCH, "951782400")
    assert project.edition(tmp_path, DAY) == datetime(2000, 2, 29, tzinfo=UTC)


# --- Wrong use is 2 and says what is right -------------------------------------------------------------------------


@pytest.mark.parametrize(
    "text", ["05.06.2027", "2027-02-30", "20270605", "2027-6-5", "tomorrow", "", "\uff12\uff10\uff12\uff17-06-05"]
)
def test_a_wrong_day_is_wrong_use_with_an_example(text: str, capsys: pytest.CaptureFixture[str], fleet: Path) -> None:
    assert cli.main(["check", "--fleet", str(fleet), "--as-of", text]) == 2
    assert "for example 2027-06-05" in capsys.readouterr().err


@pytest.mark.parametrize("text", ["now", "-1", "1.5", "9" * 13, "999999999999", "\uff11"])
def test_a_wrong_source_date_epoch_is_wrong_use(
    text: str, capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch, fleet: Path
) -> None:
    monkeypatch.setenv(project.EPOCH, text)
    assert cli.main(["check", "--fleet", str(fleet)]) == 2
    assert f'SOURCE_DATE_EPOCH is "{text}", needs seconds since 1970' in capsys.readouterr().err


@pytest.mark.parametrize("text", ["8000", "localhost", "127.0.0.1:0", "127.0.0.1:65536", "http://x:80", "a b:80"])
def test_a_wrong_address_is_wrong_use_with_an_example(
    text: str, capsys: pytest.CaptureFixture[str], fleet: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(cli, "root", lambda: fleet.parent)
    assert cli.main(["serve", "--fleet", str(fleet), "--address", text]) == 2
    assert "for example 127.0.0.1:8001" in capsys.readouterr().err


def test_a_missing_fleet_is_wrong_use_not_an_empty_one(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert cli.main(["check", "--fleet", str(tmp_path / "fleeet")]) == 2
    assert "Name the folder of the records with --fleet DIR" in capsys.readouterr().err


@pytest.mark.parametrize("arguments", [["bulid"], ["build", "--flete", "x"], ["check", "--format", "xml"]])
def test_a_slip_of_the_keys_is_wrong_use(arguments: list[str], capsys: pytest.CaptureFixture[str]) -> None:
    assert cli.main(arguments) == 2
    assert "Traceback" not in capsys.readouterr().err


def test_a_folder_without_the_project_is_wrong_use(monkeypatch: pytest.MonkeyPatch, tmp_path: Path) -> None:
    monkeypatch.setattr(project, "__file__", str(tmp_path / "a" / "b" / "c" / "d.py"))
    monkeypatch.chdir(tmp_path)
    with pytest.raises(click.UsageError, match=r"no mkdocs\.yml here"):
        project.root()
    (tmp_path / "mkdocs.yml").touch()
    assert project.root() == tmp_path


# --- Nothing ends in a traceback -----------------------------------------------------------------------------------


def test_what_should_not_happen_is_one_line_and_a_report(
    monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str], fleet: Path
) -> None:
    def break_down(*_given: object) -> NoReturn:
        raise ZeroDivisionError("a bug\nof two lines")

    monkeypatch.setattr(cli, "root", lambda: fleet.parent)
    monkeypatch.setattr(site, "build", break_down)
    assert cli.main(["build"]) == 1
    said = capsys.readouterr().err.strip()
    assert "\n" not in said
    found = re.fullmatch(r"This should not .+ZeroDivisionError: a bug of two lines The full report is in (.+)", said)
    assert found
    report = Path(found[1])
    assert "in break_down" in report.read_text(encoding="utf-8")
    report.unlink()


def test_a_disk_that_refuses_is_surroundings(
    monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str], fleet: Path
) -> None:
    def refuse(*_given: object) -> NoReturn:
        raise PermissionError(13, "Permission denied", "/srv/site")

    monkeypatch.setattr(cli, "root", lambda: fleet.parent)
    monkeypatch.setattr(site, "build", refuse)
    assert cli.main(["build"]) == 3
    said = capsys.readouterr().err
    assert said.startswith("/srv/site: Permission denied.")
    Path(said.split(" is in ")[1].strip()).unlink()


def test_an_interrupt_is_130(monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str], fleet: Path) -> None:
    def interrupt(*_given: object) -> NoReturn:
        raise KeyboardInterrupt

    monkeypatch.setattr(cli, "root", lambda: fleet.parent)
    monkeypatch.setattr(site, "build", interrupt)
    assert cli.main(["build"]) == 130
    assert capsys.readouterr().err.strip() == "Interrupted."


# --- build, with what MkDocs does left out -------------------------------------------------------------------------


def render_one_page(_root: Path, _fleet: Path, new: Path, _as_of: date) -> None:
    (new / "index.html").write_text(os.environ[project.EPOCH], encoding="utf-8")


def test_a_build_says_where_the_site_is_and_what_comes_next(
    monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str], tmp_path: Path, fleet: Path
) -> None:
    monkeypatch.setattr(site, "_render", render_one_page)
    monkeypatch.setattr(site, "edition", lambda _root, as_of: datetime(as_of.year, 1, 1, tzinfo=UTC))
    site.build(tmp_path, fleet, tmp_path / "site", DAY)
    said = capsys.readouterr().out
    assert str(tmp_path / "site" / "index.html") in said
    assert "python3 site_build.py serve" in said
    # What MkDocs puts into the sitemap, by the edition and not by the clock: 2027-01-01 00:00:00 UTC.
    assert (tmp_path / "site" / "index.html").read_text(encoding="utf-8") == "1798761600"
    assert project.EPOCH not in os.environ


def test_a_failed_build_keeps_the_last_site_and_says_so(
    monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str], tmp_path: Path, fleet: Path
) -> None:
    def fail(_root: Path, _fleet: Path, new: Path, _as_of: date) -> NoReturn:
        (new / "index.html").write_text("half", encoding="utf-8")
        raise project.Failed("Not built. Two records have errors.")

    (tmp_path / "mkdocs.yml").touch()
    monkeypatch.setattr(cli, "root", lambda: tmp_path)
    monkeypatch.setattr(site, "_render", render_one_page)
    assert cli.main(["build"]) == 0
    before = (tmp_path / "site" / "index.html").read_bytes()
    capsys.readouterr()
    monkeypatch.setattr(site, "_render", fail)
    assert cli.main(["build"]) == 1
    assert "Not built. Two records have errors.\nThe last site is as it was" in capsys.readouterr().err
    assert (tmp_path / "site" / "index.html").read_bytes() == before


def test_a_folder_of_somebody_elses_is_wrong_use(
    monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str], tmp_path: Path, fleet: Path
) -> None:
    (tmp_path / "home").mkdir()
    (tmp_path / "home" / "thesis.txt").touch()
    monkeypatch.setattr(cli, "root", lambda: tmp_path)
    monkeypatch.setattr(site, "_render", render_one_page)
    assert cli.main(["build", "--site", str(tmp_path / "home")]) == 2
    assert "Choose another --site" in capsys.readouterr().err
    assert (tmp_path / "home" / "thesis.txt").exists()


@pytest.mark.parametrize(
    "listed",
    [
        "plugins: [search, hardpoint]",
        "plugins:\n  - search\n  - hardpoint: {as_of: x}",
        "plugins: {search: {}, hardpoint: }",
    ],
)
def test_options_reach_the_plugin_however_it_is_listed(tmp_path: Path, fleet: Path, listed: str) -> None:
    (tmp_path / "mkdocs.yml").write_text(listed, encoding="utf-8")
    plugins = site._plugins(tmp_path, fleet, DAY)
    assert list(plugins) == ["search", "hardpoint"]
    assert plugins["hardpoint"] == {"fleet": str(fleet), "as_of": "2027-06-05"}


# --- schema --------------------------------------------------------------------------------------------------------


def test_schema_writes_what_is_missing_and_check_finds_what_is_stale(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    out = ["schema", "--out", str(tmp_path / "schema")]
    assert cli.main([*out, "--check"]) == 1
    assert cli.main(out) == 0
    written = sorted((tmp_path / "schema").iterdir())
    assert written
    assert all(json.loads(path.read_text(encoding="utf-8")) for path in written)
    assert cli.main([*out, "--check"]) == 0
    written[0].write_text("{}", encoding="utf-8")
    (tmp_path / "schema" / "withdrawn.json").write_text("{}", encoding="utf-8")
    capsys.readouterr()
    assert cli.main([*out, "--check"]) == 1
    assert f"{written[0].name}, withdrawn.json" in capsys.readouterr().err
    assert cli.main(out) == 0
    assert sorted((tmp_path / "schema").iterdir()) == written
    assert schema_command._bytes(written[0]) != b"{}"


# --- test ----------------------------------------------------------------------------------------------------------


def steps_of(*codes: int) -> list[tuple[str, list[str]]]:
    """Steps that are harmless modules of the standard library: one that ends well, one that does not."""
    return [
        (f"step{number}", ["this"] if code == 0 else ["json.tool", "no such file"]) for number, code in enumerate(codes)
    ]


def test_each_step_runs_and_the_status_is_one(
    monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str], tmp_path: Path
) -> None:
    monkeypatch.setattr(browser, "find", lambda: tmp_path)
    monkeypatch.setattr(quality, "_steps", lambda *_given: steps_of(0, 1, 0))
    with pytest.raises(project.Failed, match=r"Failed: step1\."):
        quality.test(tmp_path, [])
    lines = capsys.readouterr().out.splitlines()
    summed = [line.split() for line in lines[lines.index("") + 1 :]]
    assert [line[0] for line in summed] == ["step0", "step1", "step2", "together"]
    assert [line[1] for line in summed[:3]] == ["ok", "FAILED", "ok"]
    assert all(re.fullmatch(r"\d+\.\d", line[-2]) for line in summed)


def test_what_follows_the_command_goes_to_pytest_only(monkeypatch: pytest.MonkeyPatch, tmp_path: Path) -> None:
    given: list[list[str]] = []
    monkeypatch.setattr(cli, "root", lambda: tmp_path)
    monkeypatch.setattr(quality, "test", lambda _root, arguments: given.append(list(arguments)))
    assert cli.main(["test", "-k", "publish", "--maxfail=1", "-x", "tests/test_cli.py"]) == 0
    assert given == [["-k", "publish", "--maxfail=1", "-x", "tests/test_cli.py"]]
    steps = dict(quality._steps(["-x"], tmp_path))
    assert [name for name, command in steps.items() if "-x" in command] == ["tests"]
    assert list(steps) == ["formatting", "lint", "types", "tests"]


def no_browser(monkeypatch: pytest.MonkeyPatch) -> list[str]:
    tried: list[str] = []

    def download() -> bool:
        tried.append("download")
        return False

    monkeypatch.setattr(browser, "find", lambda: None)
    monkeypatch.setattr(browser, "try_download", download)
    return tried


def test_a_missing_browser_is_said_loudly_and_its_tests_are_left_out(
    monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str], tmp_path: Path
) -> None:
    tried = no_browser(monkeypatch)
    monkeypatch.setattr(quality, "_steps", lambda *_given: steps_of(0))
    quality.test(tmp_path, [])
    assert tried == ["download"]
    last = capsys.readouterr().out.splitlines()[-2:]
    assert last[0] == "BROWSER TESTS WERE NOT RUN: there is no browser."
    assert "sudo apt install chromium" in last[1]
    monkeypatch.undo()
    assert "not browser" in dict(quality._steps([], None))["tests"]
    assert "not browser" not in dict(quality._steps([], tmp_path))["tests"]


def test_in_ci_a_missing_browser_fails_with_3(
    monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str], tmp_path: Path
) -> None:
    no_browser(monkeypatch)
    monkeypatch.setattr(cli, "root", lambda: tmp_path)
    monkeypatch.setenv("CI", "true")
    assert cli.main(["test"]) == 3
    assert "there is no browser. Install Chromium" in capsys.readouterr().err


def test_a_named_browser_is_taken_or_none(monkeypatch: pytest.MonkeyPatch, tmp_path: Path) -> None:
    monkeypatch.setenv(browser.VARIABLE, sys.executable)
    assert browser.find() == Path(sys.executable)
    monkeypatch.setenv(browser.VARIABLE, str(tmp_path / "no-such-browser"))
    assert browser.find() is None


@pytest.mark.skipif(sys.platform == "win32", reason="an executable script is POSIX's")
def test_a_browser_on_the_path_is_found(monkeypatch: pytest.MonkeyPatch, tmp_path: Path) -> None:
    monkeypatch.setenv("PATH", str(tmp_path))
    monkeypatch.setattr(browser, "_PLACES", ())
    monkeypatch.setattr(browser, "_drivers_own", lambda: None)
    assert browser.find() is None
    program = tmp_path / "chromium"
    program.write_text("#!/bin/sh\n", encoding="utf-8")
    program.chmod(0o755)
    assert browser.find() == program


def test_a_download_that_takes_too_long_fails_softly() -> None:
    assert browser.try_download(seconds=0.01) is False


# --- The whole, on the project's own records -----------------------------------------------------------------------


def _env(**more: str) -> dict[str, str]:
    return {**os.environ, "PYTHONPATH": str(ROOT / "plugins"), **more}


def hardpoint(*arguments: str, **more: str) -> subprocess.CompletedProcess[str]:
    command = [sys.executable, "-m", "hardpoint", *arguments]
    return subprocess.run(command, env=_env(**more), capture_output=True, text=True, timeout=120, check=False)


def test_check_json_is_json_only() -> None:
    done = hardpoint("check", "--format", "json", "--as-of", "2027-06-05")
    told = json.loads(done.stdout)
    assert told["format"] == "hardpoint-check/1"
    assert told["as_of"] == "2027-06-05"
    assert told["files"] == len(list((ROOT / "fleet").rglob("*.yaml")))
    assert done.returncode == (1 if told["counts"]["error"] else 0)
    assert done.stderr == ""


def test_output_that_nobody_reads_to_the_end_is_no_traceback() -> None:
    command = [sys.executable, "-m", "hardpoint", "check", "--as-of", "2027-06-05"]
    process = subprocess.Popen(command, env=_env(), stdout=subprocess.PIPE, stderr=subprocess.PIPE, text=True)
    assert process.stdout
    assert process.stderr
    process.stdout.close()
    said = process.stderr.read()
    process.stderr.close()
    process.wait(timeout=60)
    assert "Traceback" not in said
    assert "Exception ignored" not in said


def digest(folder: Path) -> dict[str, str]:
    files = (path for path in sorted(folder.rglob("*")) if path.is_file())
    return {str(path.relative_to(folder)): hashlib.sha256(path.read_bytes()).hexdigest() for path in files}


@pytest.mark.slow
def test_two_builds_of_one_state_are_the_same_to_the_byte(tmp_path: Path) -> None:
    for name, seed in (("here", "1"), ("there/site", "2")):
        arguments = ["build", "--as-of", "2027-06-05", "--site", str(tmp_path / name)]
        done = hardpoint(*arguments, PYTHONHASHSEED=seed, SOURCE_DATE_EPOCH="951782400")
        assert done.returncode == 0, done.stderr
    here = digest(tmp_path / "here")
    assert {"index.html", "fleet.json", ".hardpoint-site"} <= set(here)
    assert digest(tmp_path / "there" / "site") == here
    # RFC 1952, 2.3: bytes 4 to 7 are the time of the packed file; MkDocs takes the build's day.
    packed = (tmp_path / "here" / "sitemap.xml.gz").read_bytes()
    assert int.from_bytes(packed[4:8], "little") == 951782400


@pytest.mark.slow
def test_errors_in_records_are_said_once_and_leave_the_last_site(tmp_path: Path) -> None:
    fleet, target = tmp_path / "fleet", tmp_path / "site"
    shutil.copytree(ROOT / "fleet", fleet)
    arguments = ["build", "--fleet", str(fleet), "--site", str(target), "--as-of", "2027-06-05"]
    assert hardpoint(*arguments).returncode == 0
    before = digest(target)
    broken = sorted((fleet / "types").glob("*.yaml"))[:2]
    for path in broken:
        path.write_text(path.read_text(encoding="utf-8") + "\nno-such-key-here: 1\n", encoding="utf-8")
    done = hardpoint(*arguments)
    assert done.returncode == 1
    for path in broken:
        assert len(re.findall(rf"{path.name}:\d+: .*no-such-key-here", done.stdout + done.stderr)) == 1
    assert done.stderr.endswith(f"The last site is as it was: {target}\n")
    assert digest(target) == before


@pytest.fixture
def served() -> Iterator[subprocess.Popen[str]]:
    with socket.socket() as probe:
        probe.bind(("127.0.0.1", 0))
        address = f"127.0.0.1:{probe.getsockname()[1]}"
    command = [sys.executable, "-m", "hardpoint", "serve", "--address", address]
    process = subprocess.Popen(
        command,
        env=_env(PYTHONUNBUFFERED="1"),
        stdout=subprocess.PIPE,
        stderr=subprocess.STDOUT,
        text=True,
    )
    yield process
    process.kill()
    process.communicate()


@pytest.mark.slow
@pytest.mark.skipif(sys.platform == "win32", reason="an interrupt to one process is POSIX's")
def test_serving_ends_with_an_interrupt(served: subprocess.Popen[str]) -> None:
    assert served.stdout
    end = time.monotonic() + 90
    for line in served.stdout:
        assert time.monotonic() < end
        if at := re.search(r"Serving on (http://127\.0\.0\.1:\d+/)", line):
            with urllib.request.urlopen(at[1], timeout=30) as answer:
                assert answer.status == 200
            break
    served.send_signal(signal.SIGINT)
    rest, _ = served.communicate(timeout=30)
    assert served.returncode == 0, rest
    assert rest.endswith("Stopped.\n")
