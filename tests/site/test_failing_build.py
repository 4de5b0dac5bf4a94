"""A build that fails leaves the last site as it was and says everything that is wrong, once."""

from __future__ import annotations

import json
from pathlib import Path

from tests.site.support import DAY, MARKER, build, copied_fleet, digests, replace, run


def _break(fleet: Path) -> None:
    """One error for the reader, one for the model, one for a rule; in three files."""
    with (fleet / "tails" / "QQ-TWA.yaml").open("a", encoding="utf-8") as file:
        file.write("of: hobmire-twain\n")
    replace(fleet / "station.yaml", "spare_time: 60 s", "spare_time: 60 mm")
    replace(fleet / "types" / "hobmire-twain.yaml", "cut_by: master\n", "cut_by: mastre\n")


def test_a_failing_build_leaves_the_last_site_to_the_byte(tmp_path: Path) -> None:
    fleet, site = copied_fleet(tmp_path), tmp_path / "site"
    before = digests(build(site, fleet))
    times = {path: path.stat().st_mtime_ns for path in site.rglob("*")}
    _break(fleet)
    done = run("build", "--fleet", fleet, "--site", site, "--as-of", DAY)
    assert done.returncode == 1
    assert digests(site) == before
    assert {path: path.stat().st_mtime_ns for path in site.rglob("*")} == times
    assert [path.name for path in tmp_path.iterdir() if path.name.startswith((".site-new", ".site-old"))] == []


def test_everything_that_is_wrong_is_said_once(tmp_path: Path) -> None:
    fleet, site = copied_fleet(tmp_path), tmp_path / "site"
    _break(fleet)
    checked = run("check", "--fleet", fleet, "--as-of", DAY, "--format", "json")
    errors = [finding for finding in json.loads(checked.stdout)["findings"] if finding["severity"] == "error"]
    assert {Path(error["file"]).name for error in errors} == {"QQ-TWA.yaml", "station.yaml", "hobmire-twain.yaml"}
    done = run("build", "--fleet", fleet, "--site", site, "--as-of", DAY)
    said = done.stdout + done.stderr
    assert done.returncode == 1
    for error in errors:
        path = f"{error['path']}: " if error["path"] else ""
        line = f"{error['file']}:{error['line']}: {path}{error['message']}"
        assert said.count(line) == 1, said
        assert said.count(error["message"]) == 1, said
    assert "Traceback" not in said
    assert not site.exists()


def test_a_folder_that_no_build_made_is_refused_and_left_alone(tmp_path: Path) -> None:
    """A site without its marker may be anybody's folder: wrong use, exit code 2."""
    fleet, site = copied_fleet(tmp_path), tmp_path / "site"
    before = digests(build(site, fleet))
    (site / MARKER).unlink()
    done = run("build", "--fleet", fleet, "--site", site, "--as-of", DAY)
    assert done.returncode == 2
    assert "Traceback" not in done.stderr
    assert digests(site) == {name: digest for name, digest in before.items() if name != MARKER}


def test_after_mending_the_next_build_takes_its_place(tmp_path: Path) -> None:
    fleet, site = copied_fleet(tmp_path), tmp_path / "site"
    before = digests(build(site, fleet))
    file = fleet / "types" / "hobmire-twain.yaml"
    good = file.read_text(encoding="utf-8")
    file.write_text("name: [\n", encoding="utf-8")
    assert run("build", "--fleet", fleet, "--site", site, "--as-of", DAY).returncode == 1
    file.write_text(good, encoding="utf-8")
    assert digests(build(site, fleet)) == before
