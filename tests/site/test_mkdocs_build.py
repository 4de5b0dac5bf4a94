"""Plain `mkdocs build --strict`: clean as the project stands, and strict about the docs' own links."""

from __future__ import annotations

import re
import shutil
import subprocess
import sys
from pathlib import Path

import pytest

from tests.site.support import ROOT, environment, names

TYPE = names("types")[0]


def _strict(project: Path, site: Path) -> subprocess.CompletedProcess[str]:
    command = [sys.executable, "-m", "mkdocs", "build", "--strict", "--site-dir", str(site)]
    return subprocess.run(
        command, cwd=project, env=environment(), capture_output=True, encoding="utf-8", timeout=120, check=False
    )


@pytest.fixture
def project(tmp_path: Path) -> Path:
    """What MkDocs reads of the project, in a folder that a test may write in."""
    for name in ("docs", "fleet"):
        shutil.copytree(ROOT / name, tmp_path / "project" / name)
    shutil.copyfile(ROOT / "mkdocs.yml", tmp_path / "project" / "mkdocs.yml")
    return tmp_path / "project"


def test_the_project_builds_strictly_without_a_warning(tmp_path: Path) -> None:
    done = _strict(ROOT, tmp_path / "site")
    said = done.stdout + done.stderr
    assert done.returncode == 0, said
    assert not re.search(r"WARNING|ERROR|Traceback|Deprecat", said), said
    assert (tmp_path / "site" / "index.html").is_file()


def test_a_docs_page_may_link_to_a_page_and_an_anchor_that_are_made(project: Path, tmp_path: Path) -> None:
    page = project / "docs" / "cautions.md"
    page.write_text(page.read_text(encoding="utf-8") + f"\n[opened so](types/{TYPE}.md#open)\n", encoding="utf-8")
    done = _strict(project, tmp_path / "site")
    assert done.returncode == 0, done.stderr
    assert f'href="types/{TYPE}.html#open"' in (tmp_path / "site" / "cautions.html").read_text(encoding="utf-8")


def test_every_dead_link_in_a_docs_page_is_named_and_fails_the_build(project: Path, tmp_path: Path) -> None:
    targets = ["no-such-page.md", f"types/{TYPE}.md#control-of-nothing", "types/no-such-type.md", "/cautions.md"]
    page = project / "docs" / "cautions.md"
    links = "\n".join(f"[a link]({target})\n" for target in targets)
    page.write_text(f"{page.read_text(encoding='utf-8')}\n{links}", encoding="utf-8")
    done = _strict(project, tmp_path / "site")
    assert done.returncode == 1, done.stderr
    for target in targets:
        warned = [line for line in done.stderr.splitlines() if "WARNING" in line and target in line]
        assert len(warned) == 1, done.stderr
        assert "cautions.md" in warned[0]
    assert "Traceback" not in done.stderr


def test_a_docs_page_where_a_generated_page_goes_is_refused(project: Path, tmp_path: Path) -> None:
    (project / "docs" / "gaps.md").write_text("# Mine\n", encoding="utf-8")
    done = _strict(project, tmp_path / "site")
    assert done.returncode == 1
    assert "docs/gaps.md" in done.stderr
    assert "Traceback" not in done.stderr


def test_a_bad_record_fails_it_and_leaves_the_folder_alone(project: Path, tmp_path: Path) -> None:
    site = tmp_path / "site"
    site.mkdir()
    (site / "index.html").write_text("the last one", encoding="utf-8")
    (project / "fleet" / "types" / f"{TYPE}.yaml").write_text("name: half a record\n", encoding="utf-8")
    done = _strict(project, site)
    assert done.returncode == 1
    assert f"fleet/types/{TYPE}.yaml:1: " in done.stderr
    assert "Traceback" not in done.stderr
    assert (site / "index.html").read_text(encoding="utf-8") == "the last one"
