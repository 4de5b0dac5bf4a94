"""The start of everything: the environment is made once, whole, from the lock, and what prevents it is one line."""

from __future__ import annotations

import ast
import hashlib
import importlib.metadata
import json
import os
import re
import shutil
import signal
import subprocess
import sys
import time
import tomllib
import zipfile
from dataclasses import dataclass, field
from pathlib import Path

import pytest
from packaging.requirements import Requirement
from packaging.utils import canonicalize_name

from hardpoint import environment

ROOT = Path(__file__).resolve().parents[1]
LOCKS = ("run", "dev")
posix = pytest.mark.skipif(sys.platform == "win32", reason="signals and process groups are POSIX's")

# --- The locks -----------------------------------------------------------------------------------------------------


def pyproject() -> dict[str, dict[str, list[str]]]:
    with (ROOT / "pyproject.toml").open("rb") as file:
        loaded: dict[str, dict[str, list[str]]] = tomllib.load(file)
    return loaded


def pinned(kind: str) -> dict[str, str]:
    pins = environment.read_pins(environment.Checkout(ROOT).lock(kind))
    assert len({pin.name for pin in pins}) == len(pins), "a name twice: the lock is split by Python version"
    return {canonicalize_name(pin.name): pin.version for pin in pins}


def asked_for(kind: str) -> list[Requirement]:
    data = pyproject()
    lists = [data["project"]["dependencies"], data["build-system"]["requires"], data["dependency-groups"]["build"]]
    if kind == "dev":
        lists.append(data["dependency-groups"]["dev"])
    return [Requirement(text) for texts in lists for text in texts]


@pytest.mark.parametrize("kind", LOCKS)
def test_a_lock_holds_what_pyproject_asks_for(kind: str) -> None:
    pins = pinned(kind)
    for requirement in asked_for(kind):
        assert requirement.specifier.contains(pins[canonicalize_name(requirement.name)]), requirement


@pytest.mark.parametrize("kind", LOCKS)
def test_a_lock_is_closed(kind: str) -> None:
    """What the installed packages say that they need is in the lock too, and in a version that they take."""
    pins = pinned(kind)
    checked = 0
    for name in pins:
        try:
            needs = importlib.metadata.requires(name) or []
        except importlib.metadata.PackageNotFoundError:
            continue  # One of another platform.
        for need in (Requirement(text) for text in needs):
            if need.marker is None or need.marker.evaluate({"extra": ""}):
                assert need.specifier.contains(pins[canonicalize_name(need.name)]), f"{name} needs {need}"
                checked += 1
    assert checked > len(pins) // 2


def test_the_tests_run_on_the_versions_that_users_get() -> None:
    assert pinned("run").items() <= pinned("dev").items()


@pytest.mark.parametrize("kind", LOCKS)
def test_a_lock_vouches_for_each_file_and_names_no_registry(kind: str) -> None:
    text = environment.Checkout(ROOT).lock(kind).read_text(encoding="utf-8")
    assert "://" not in text
    assert not re.search(r"^\s*-(i|f)\b|^\s*--(?!hash=sha256:[0-9a-f]{64}\b)", text, re.MULTILINE)
    entries = re.split(r"^(?=[A-Za-z0-9])", text, flags=re.MULTILINE)[1:]
    assert len(entries) == len(pinned(kind))
    assert all("--hash=sha256:" in entry for entry in entries)


# --- What can be seen without making an environment ----------------------------------------------------------------


def test_the_starter_parses_on_old_pythons() -> None:
    """Nothing newer than what Python 2.7 and 3.0 share. Tried by hand on 2.7, 3.6 and 3.10: they say what is needed"""
    tree = ast.parse((ROOT / "site_build.py").read_bytes().decode("ascii"))
    newer = (ast.JoinedStr, ast.AnnAssign, ast.NamedExpr, ast.FunctionDef, ast.Match, ast.Starred, ast.Await)
    assert not [node for node in ast.walk(tree) if isinstance(node, newer)]
    assert not [node for node in ast.walk(tree) if isinstance(node, ast.Name) and node.id == "print"]


def test_a_python_that_is_too_old_is_told_in_one_line() -> None:
    script = "import sys, runpy; sys.version_info = (3, 10, 4); runpy.run_path(sys.argv[1], run_name='__main__')"
    done = run([sys.executable, "-I", "-c", script, str(ROOT / "site_build.py")])
    assert done.returncode == 3
    assert done.stderr == (
        "site_build: this is Python 3.10, and Python 3.11 or later is needed. "
        "Start it with a later one, for example: python3.11 site_build.py\n"
    )


def test_the_environment_is_made_with_the_standard_library_alone() -> None:
    script = (
        "import sys; before = set(sys.modules); sys.path.insert(0, sys.argv[1]); import hardpoint.environment; "
        "print('\\n'.join(sorted({name.split('.')[0] for name in set(sys.modules) - before})))"
    )
    done = run([sys.executable, "-I", "-S", "-c", script, str(ROOT / "plugins")])
    loaded = set(done.stdout.split())
    assert "hardpoint" in loaded, done.stderr
    assert loaded - {"hardpoint"} <= sys.stdlib_module_names


def test_pins_are_read_with_their_markers(tmp_path: Path) -> None:
    lock = tmp_path / "run.lock"
    lock.write_text(
        "# a comment==1\nalpha==1.0 \\\n    --hash=sha256:00\n    # via beta==2\n"
        "beta-b==2.0rc1 ; sys_platform == 'win32' \\\n    --hash=sha256:00\n",
        encoding="utf-8",
    )
    assert environment.read_pins(lock) == [
        environment.Pin("alpha", "1.0", conditional=False),
        environment.Pin("beta-b", "2.0rc1", conditional=True),
    ]


def test_a_version_that_differs_from_the_lock_is_missing() -> None:
    have = importlib.metadata.version("click")
    pins = [
        environment.Pin("click", have, conditional=False),
        environment.Pin("click", "0.1", conditional=True),
        environment.Pin("no-such-package-here", "1", conditional=False),
        environment.Pin("no-such-package-here", "1", conditional=True),
    ]
    assert environment.missing(pins) == pins[1:3]


@pytest.mark.parametrize(
    ("output", "advice"),
    [
        ("ERROR: THESE PACKAGES DO NOT MATCH THE HASHES FROM THE REQUIREMENTS FILE.\n", "not the one that the lock"),
        ("ERROR: Could not install packages due to an OSError: [Errno 28] No space left on device\n", "disk is full"),
        ("ERROR: Could not install packages due to an OSError: [Errno 13] Permission denied: '/x'\n", "writable"),
        ("WARNING: Retrying after connection broken by 'X'\nERROR: No matching distribution\n", "out of reach"),
        ("ERROR: Could not find a version that satisfies a==1 (from versions: none)\n", "out of reach"),
        ("ERROR: Could not find a version that satisfies a==1 (from versions: 2, 3)\n", "no ready-made package"),
        ("something new\n", "Read the report"),
        ("", "Read the report"),
    ],
)
def test_what_pip_says_becomes_one_line_with_what_to_do(output: str, advice: str) -> None:
    line = environment.pip_trouble(output, "the.log")
    assert advice in line
    assert line.endswith("(all of it: the.log)")
    assert "\n" not in line


# --- Environments made for real, of a project that is small and needs no network -----------------------------------

BACKEND = """
import pathlib, zipfile
def get_requires_for_build_editable(config_settings=None):
    return []
def build_editable(folder, config_settings=None, metadata_directory=None):
    name = "hardpoint-1.0-py3-none-any.whl"
    info = "hardpoint-1.0.dist-info/"
    with zipfile.ZipFile(pathlib.Path(folder) / name, "w") as wheel:
        wheel.writestr("hardpoint.pth", str(pathlib.Path("plugins").resolve()))
        wheel.writestr(info + "METADATA", "Metadata-Version: 2.1\\nName: hardpoint\\nVersion: 1.0\\n")
        wheel.writestr(info + "WHEEL", "Wheel-Version: 1.0\\nRoot-Is-Purelib: true\\nTag: py3-none-any\\n")
        wheel.writestr(info + "RECORD", "")
    return name
"""
COMMAND = """
import json, sys, tiny
print(json.dumps({"arguments": sys.argv[1:], "python": sys.executable, "tiny": tiny.__file__, "prefix": sys.prefix}))
sys.exit(7 if "fail" in sys.argv else 0)
"""
PYPROJECT = '[build-system]\nrequires = []\nbuild-backend = "backend"\nbackend-path = ["."]\n'


def run(
    command: list[str], env: dict[str, str] | None = None, cwd: Path | None = None
) -> subprocess.CompletedProcess[str]:
    return subprocess.run(command, env=env, cwd=cwd, capture_output=True, text=True, timeout=120, check=False)


def make_wheel(folder: Path, name: str, version: str) -> str:
    """A wheel of one module; returns its lock line."""
    info = f"{name}-{version}.dist-info"
    path = folder / f"{name}-{version}-py3-none-any.whl"
    with zipfile.ZipFile(path, "w") as wheel:
        wheel.writestr(f"{name}.py", f"VERSION = {version!r}\n")
        wheel.writestr(f"{info}/METADATA", f"Metadata-Version: 2.1\nName: {name}\nVersion: {version}\n")
        wheel.writestr(f"{info}/WHEEL", "Wheel-Version: 1.0\nRoot-Is-Purelib: true\nTag: py3-none-any\n")
        wheel.writestr(f"{info}/RECORD", "")
    return f"{name}=={version} \\\n    --hash=sha256:{hashlib.sha256(path.read_bytes()).hexdigest()}\n"


@dataclass
class Small:
    """A project with our own starter, whose one dependency lies in a folder instead of a registry."""

    root: Path
    wheels: Path
    python: str = field(default_factory=lambda: getattr(sys, "_base_executable", sys.executable))

    def env(self, **more: str) -> dict[str, str]:
        plain = {key: value for key, value in os.environ.items() if not key.startswith(("PIP_", "PYTHON"))}
        pip = {"PIP_CONFIG_FILE": os.devnull, "PIP_NO_INDEX": "1", "PIP_FIND_LINKS": str(self.wheels)}
        return {**plain, **pip, **more}

    def start(self, *arguments: str, **more: str) -> subprocess.CompletedProcess[str]:
        return run([self.python, str(self.root / "site_build.py"), *arguments], self.env(**more), self.root.parent)

    def start_aside(self, *arguments: str) -> subprocess.Popen[str]:
        return subprocess.Popen(
            [self.python, str(self.root / "site_build.py"), *arguments],
            env=self.env(),
            cwd=self.root.parent,
            stdout=subprocess.PIPE,
            stderr=subprocess.PIPE,
            text=True,
            start_new_session=True,
        )

    @property
    def stamp(self) -> Path:
        return environment.Checkout(self.root).stamp


@pytest.fixture
def small(tmp_path: Path) -> Small:
    root, wheels = tmp_path / "a project", tmp_path / "wheels"
    package = root / "plugins" / "hardpoint"
    package.mkdir(parents=True)
    wheels.mkdir()
    shutil.copy(ROOT / "site_build.py", root)
    shutil.copy(environment.__file__, package)
    (package / "__init__.py").write_text("", encoding="utf-8")
    (package / "__main__.py").write_text(COMMAND, encoding="utf-8")
    (root / "backend.py").write_text(BACKEND, encoding="utf-8")
    (root / "pyproject.toml").write_text(PYPROJECT, encoding="utf-8")
    line = make_wheel(wheels, "tiny", "1.0")
    (root / "plugins" / "run.lock").write_text(line, encoding="utf-8")
    (root / "plugins" / "dev.lock").write_text(line + make_wheel(wheels, "tinytest", "1.0"), encoding="utf-8")
    return Small(root, wheels)


def one_line(done: subprocess.CompletedProcess[str]) -> str:
    """The last line of what was said; checks that it is the only complaint, and no traceback."""
    assert done.returncode == 3, done.stderr
    assert "Traceback" not in done.stderr
    said = [line for line in done.stderr.splitlines() if line.startswith("site_build: ")]
    assert done.stderr.splitlines()[-1:] == said
    return said[0]


@pytest.mark.slow
def test_an_environment_is_made_once_and_followed_up(small: Small) -> None:
    first = small.start("check", "--format", "json")
    assert first.returncode == 0, first.stderr
    told = json.loads(first.stdout)
    assert told["arguments"] == ["check", "--format", "json"]
    assert Path(told["prefix"]) == small.root / ".venv"
    assert Path(told["tiny"]).is_relative_to(small.root / ".venv")
    assert "Making .venv" in first.stderr

    again = small.start("fail")
    assert again.returncode == 7, "the command's own exit code"
    assert again.stderr == "", "nothing is installed the second time"

    by_its_own_python = run([told["python"], str(small.root / "site_build.py")], small.env())
    assert (by_its_own_python.returncode, by_its_own_python.stderr) == (0, "")

    (small.root / "pyproject.toml").write_text(PYPROJECT + "\n# changed\n", encoding="utf-8")
    project = small.start()
    assert project.returncode == 0
    assert "Making" not in project.stderr
    assert "Installing" not in project.stderr
    assert "ready after" in project.stderr

    tests = small.start("test")
    assert tests.returncode == 0
    assert "Making" not in tests.stderr
    assert "Installing 2 packages, as named in plugins/dev.lock" in tests.stderr
    assert small.start("build").stderr == "", "the environment of the tests does for the commands"
    assert small.start("test").stderr == ""

    (small.root / "plugins" / "run.lock").write_text(make_wheel(small.wheels, "tiny", "1.1"), encoding="utf-8")
    renewed = small.start()
    assert renewed.returncode == 0, renewed.stderr
    assert "Making .venv" in renewed.stderr
    version = run([json.loads(renewed.stdout)["python"], "-I", "-c", "import tiny; print(tiny.VERSION)"])
    assert version.stdout == "1.1\n"


@pytest.mark.slow
def test_a_moved_project_makes_its_environment_anew_and_a_fitting_one_is_used(small: Small, tmp_path: Path) -> None:
    assert small.start().returncode == 0
    lent = tmp_path / "lent"
    (small.root / ".venv").rename(lent)
    python = lent / environment.Checkout(small.root).python.relative_to(small.root / ".venv")

    used = run([str(python), str(small.root / "site_build.py")], small.env())
    assert (used.returncode, used.stderr) == (0, "")
    assert Path(json.loads(used.stdout)["prefix"]) == lent
    assert not (small.root / ".venv").exists()

    lent.rename(small.root / ".venv")
    moved = Small(tmp_path / "moved", small.wheels)
    small.root.rename(moved.root)
    started = moved.start()
    assert started.returncode == 0, started.stderr
    assert "Making .venv" in started.stderr
    assert Path(json.loads(started.stdout)["tiny"]).is_relative_to(moved.root)


@posix
@pytest.mark.slow
@pytest.mark.parametrize("sign", ["pyvenv.cfg", "lib/*/site-packages/pip", "lib/*/site-packages/tiny.py"])
def test_a_killed_start_is_made_good_by_the_next(small: Small, sign: str) -> None:
    """Killed when the environment is begun, while it gets its pip, and between the lock and the project itself."""
    process = small.start_aside()
    wait_for(small.root / ".venv", sign)
    os.killpg(process.pid, signal.SIGKILL)
    process.communicate(timeout=60)
    assert not small.stamp.exists()
    started = small.start()
    assert started.returncode == 0, started.stderr
    assert json.loads(started.stdout)["arguments"] == []


@posix
@pytest.mark.slow
def test_two_starts_at_once_make_one_environment(small: Small) -> None:
    processes = [small.start_aside("check") for _ in range(2)]
    said = [process.communicate(timeout=120) for process in processes]
    assert [process.returncode for process in processes] == [0, 0], said
    assert sorted("Making .venv" in err for _, err in said) == [False, True]
    assert sorted("ready after" in err for _, err in said) == [False, True]
    assert all(json.loads(out)["arguments"] == ["check"] for out, _ in said)


@posix
@pytest.mark.slow
def test_an_interrupt_ends_with_130_and_no_traceback(small: Small) -> None:
    process = small.start_aside()
    wait_for(small.root / ".venv", "pyvenv.cfg")
    os.killpg(process.pid, signal.SIGINT)
    _, said = process.communicate(timeout=60)
    assert process.returncode == 130, said
    assert said.endswith("Interrupted. Run the same command again to carry on.\n")
    assert "site_build.py" not in said, "a traceback would name the file"
    assert not small.stamp.exists()


@pytest.mark.slow
def test_a_package_that_the_lock_does_not_vouch_for_is_refused(small: Small) -> None:
    with zipfile.ZipFile(next(small.wheels.glob("tiny-*")), "a") as wheel:
        wheel.writestr("added.py", "")
    assert "not the one that the lock vouches for" in one_line(small.start())
    assert not small.stamp.exists()


@pytest.mark.slow
def test_a_lock_without_a_hash_is_refused(small: Small) -> None:
    (small.root / "plugins" / "run.lock").write_text("tiny==1.0\n", encoding="utf-8")
    assert "hash" in one_line(small.start())
    assert not small.stamp.exists()


@pytest.mark.slow
def test_without_network_one_line_says_so(small: Small) -> None:
    """Port 9 of this machine refuses, as a registry out of reach does."""
    nowhere = {"PIP_NO_INDEX": "0", "PIP_FIND_LINKS": "", "PIP_RETRIES": "0", "PIP_TIMEOUT": "2"}
    said = one_line(small.start(**nowhere, PIP_INDEX_URL="http://127.0.0.1:9/simple"))
    assert said.startswith("site_build: The package registry is out of reach. Connect this machine to the network")
    log = re.search(r"all of it: (.+)\)$", said)
    assert log
    assert "tiny" in Path(log[1]).read_text(encoding="utf-8")
    Path(log[1]).unlink()


@pytest.mark.parametrize("module", ["venv", "ensurepip"])
def test_without_the_venv_module_one_line_says_what_to_install(small: Small, module: str) -> None:
    """Debian's Python without python3-venv has no ensurepip."""
    script = f"import sys, runpy; sys.modules[{module!r}] = None; runpy.run_path(sys.argv[1], run_name='__main__')"
    said = one_line(run([small.python, "-I", "-c", script, str(small.root / "site_build.py")], small.env()))
    assert f"has no {module} module" in said
    assert "sudo apt install python3-venv" in said
    assert not (small.root / ".venv").exists()


@pytest.mark.parametrize("taken", [".venv.lock", ".venv"])
def test_a_place_that_cannot_be_used_is_named(small: Small, taken: str) -> None:
    if taken == ".venv":
        (small.root / taken).write_text("a file in the way", encoding="utf-8")
    else:
        (small.root / taken).mkdir()
    assert taken in one_line(small.start())


def test_help_needs_no_environment(small: Small) -> None:
    done = small.start("--help")
    assert (done.returncode, done.stderr) == (0, "")
    assert done.stdout.startswith("Hardpoint: builds")
    assert not (small.root / ".venv").exists()


def wait_for(folder: Path, pattern: str, seconds: float = 60) -> None:
    end = time.monotonic() + seconds
    while not any(folder.glob(pattern)):
        assert time.monotonic() < end, f"{pattern} never came"
        time.sleep(0.01)
