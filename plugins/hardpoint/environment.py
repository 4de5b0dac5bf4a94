"""Makes the project's virtual environment from its locks and starts a command inside it.

Standard library only: ``site_build.py`` imports this before anything is installed. All that it says goes to standard
error, so that a command's standard output stays its own. What keeps it from starting is one line and exit code 3.
"""

from __future__ import annotations

import contextlib
import hashlib
import importlib.metadata
import importlib.util
import json
import os
import platform
import re
import shutil
import subprocess
import sys
import tempfile
import time
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from importlib.machinery import PathFinder
from pathlib import Path

SURROUNDINGS = 3
INTERRUPTED = 130

_PIN = re.compile(r"^(?P<name>[A-Za-z0-9][A-Za-z0-9._-]*)==(?P<version>[^\s;\\]+)\s*(?P<marker>;)?", re.MULTILINE)
_INSTALL = ("install", "--disable-pip-version-check", "--no-input", "--progress-bar", "off")
_FOUND = ("Collecting ", "Processing ", "Requirement already satisfied")
# Settings of a user's own pip that would put packages elsewhere, or refuse the project's own folder.
_PIP_SETTINGS_UNWANTED = ("PIP_USER", "PIP_TARGET", "PIP_PREFIX", "PIP_ROOT", "PIP_REQUIRE_HASHES", "PIP_NO_DEPS")


class SetupError(Exception):
    """Something around the project that keeps it from starting. Its text is the line to show."""


@dataclass(frozen=True)
class Pin:
    """One line of a lock. ``conditional`` where a marker decides whether it is installed."""

    name: str
    version: str
    conditional: bool


@dataclass(frozen=True)
class Checkout:
    """A copy of the project and where its environment belongs."""

    root: Path

    @property
    def package(self) -> Path:
        return self.root / "plugins" / "hardpoint"

    @property
    def venv(self) -> Path:
        return self.root / ".venv"

    @property
    def python(self) -> Path:
        return self.venv / ("Scripts/python.exe" if os.name == "nt" else "bin/python")

    @property
    def stamp(self) -> Path:
        return self.venv / "hardpoint-stamp.json"

    def lock(self, kind: str) -> Path:
        """The lock of ``kind``: ``run`` for the commands, ``dev`` for the tests too (all of ``run`` is in it)."""
        return self.root / "plugins" / f"{kind}.lock"

    def wanted(self) -> dict[str, str]:
        """What a finished environment's stamp must say; ``dev`` counts only where the tests are wanted."""
        return {
            "path": str(self.venv),
            "python": " ".join(
                (platform.python_implementation(), platform.python_version(), sys.platform, platform.machine())
            ),
            "run": _digest(self.lock("run")),
            "dev": _digest(self.lock("dev")),
            "project": _digest(self.root / "pyproject.toml"),
        }

    def read_stamp(self) -> dict[str, str]:
        """The stamp of the last complete set-up; empty where there is none, or it was killed half-way."""
        try:
            stamp = json.loads(self.stamp.read_text(encoding="utf-8"))
        except (OSError, ValueError):
            return {}
        return stamp if isinstance(stamp, dict) and self.python.exists() else {}


def main(root: str | Path, arguments: Sequence[str], usage: str) -> int:
    """Start ``python -m hardpoint ARGUMENTS`` in a whole environment, made now if need be.

    Returns an exit code; on POSIX it returns only when nothing could be started, because the command takes this
    process over. ``usage`` is printed where help is asked for before there is an environment to ask.
    """
    checkout = Checkout(Path(root))
    try:
        if list(arguments) in (["-h"], ["--help"]) and not is_ready(checkout, "run"):
            print(usage.strip())
            return 0
        kind = "dev" if list(arguments[:1]) == ["test"] else "run"
        if not running_fits(checkout, kind):
            prepare(checkout, kind)
            return start(checkout.python, arguments)
        return start(Path(sys.executable), arguments)
    except SetupError as trouble:
        return _fail(str(trouble))
    except OSError as error:
        return _fail(
            f"cannot use {error.filename or checkout.venv}: {error.strerror or error}. "
            "Make the project's folder writable and see that the disk has 1 GB free, then run this again."
        )
    except KeyboardInterrupt:
        _say("\nInterrupted. Run the same command again to carry on.")
        return INTERRUPTED


def start(python: Path, arguments: Sequence[str]) -> int:
    """Hand over to the command line of the package, isolated from the caller's PYTHONPATH and working folder."""
    command = [str(python), "-I", "-m", "hardpoint", *arguments]
    os.environ["NO_MKDOCS_2_WARNING"] = "1"
    if os.name != "nt":  # There exec returns to the prompt while the command still runs.
        os.execv(command[0], command)
    return subprocess.call(command)


def is_ready(checkout: Checkout, kind: str) -> bool:
    """Whether ``.venv`` is whole and belongs to these locks, this Python and this place."""
    return not _outdated(checkout, kind)


def _outdated(checkout: Checkout, kind: str) -> set[str]:
    stamp = checkout.read_stamp()
    counts = {"path", "python", "run", "project", kind}
    return {key for key, value in checkout.wanted().items() if key in counts and stamp.get(key) != value}


def running_fits(checkout: Checkout, kind: str) -> bool:
    """Whether this very Python can be used: the package resolves into this checkout and all versions are the lock's."""
    if Path(sys.prefix) == checkout.venv:
        return False  # Ours: there the stamp decides.
    spec = PathFinder.find_spec("hardpoint")
    if spec is None or spec.origin is None or Path(spec.origin).resolve().parent != checkout.package.resolve():
        return False
    return _version("hardpoint") is not None and not missing(read_pins(checkout.lock(kind)))


def read_pins(lock: Path) -> list[Pin]:
    """Every ``name==version`` of a lock, in its order."""
    found = _PIN.finditer(lock.read_text(encoding="utf-8"))
    return [Pin(match["name"], match["version"], match["marker"] is not None) for match in found]


def missing(pins: Sequence[Pin]) -> list[Pin]:
    """The pins that this Python does not have in that version; one with a marker may be absent altogether."""
    return [
        pin for pin in pins if (have := _version(pin.name)) != pin.version and not (pin.conditional and have is None)
    ]


def _version(name: str) -> str | None:
    try:
        return importlib.metadata.version(name)
    except importlib.metadata.PackageNotFoundError:
        return None


def prepare(checkout: Checkout, kind: str) -> None:
    """Bring ``.venv`` up to the lock of ``kind``, or leave it alone where it is already.

    Raises SetupError with what to do, or OSError. The stamp goes first and comes last: whatever kills this in between,
    the next start sees no stamp and begins afresh.
    """
    if is_ready(checkout, kind):
        return
    for module, package in (("venv", "python3-venv"), ("ensurepip", "python3-venv")):
        if importlib.util.find_spec(module) is None:
            raise SetupError(
                f"this Python {platform.python_version()} has no {module} module, which makes the environment. "
                f"On Debian or Ubuntu: sudo apt install {package}. Then run this again."
            )
    with _alone(checkout.root / ".venv.lock"):
        outdated = _outdated(checkout, kind)
        if not outdated:
            return
        began = time.monotonic()
        before = checkout.read_stamp()
        checkout.stamp.unlink(missing_ok=True)
        if outdated - {"dev", "project"}:
            before = {}
            _make_venv(checkout)
        if outdated - {"project"}:
            _install_lock(checkout, kind)
        _run_pip(checkout, ["--no-deps", "--no-build-isolation", "--editable", "."], ())
        _write_stamp(checkout, kind, before.get("dev"))
        _say(f"The environment is ready after {time.monotonic() - began:.0f} s.")


def _make_venv(checkout: Checkout) -> None:
    import venv

    _say(f"Making .venv for Python {platform.python_version()}. This is done once and takes a minute or two.")
    if checkout.venv.is_dir() and not checkout.venv.is_symlink():
        shutil.rmtree(checkout.venv)
    try:
        venv.EnvBuilder(symlinks=os.name != "nt", with_pip=True).create(checkout.venv)
    except (subprocess.CalledProcessError, ValueError) as error:
        raise SetupError(
            f"this Python could not make the environment .venv ({error}). "
            "On Debian or Ubuntu: sudo apt install python3-venv. Then run this again."
        ) from error


def _install_lock(checkout: Checkout, kind: str) -> None:
    lock = checkout.lock(kind)
    pins = read_pins(lock)
    _say(f"Installing {len(pins)} packages, as named in plugins/{lock.name}.")
    # Only ready-made packages: building one would fetch build tools that no hash vouches for.
    _run_pip(checkout, ["--require-hashes", "--only-binary", ":all:", "--requirement", str(lock)], pins)


def _run_pip(checkout: Checkout, arguments: Sequence[str], pins: Sequence[Pin]) -> None:
    command = [str(checkout.python), "-I", "-m", "pip", *_INSTALL, *arguments]
    surroundings = {key: value for key, value in os.environ.items() if key not in _PIP_SETTINGS_UNWANTED}
    lines: list[str] = []
    with subprocess.Popen(
        command,
        cwd=checkout.root,
        env=surroundings,
        stdin=subprocess.DEVNULL,
        stdout=subprocess.PIPE,
        stderr=subprocess.STDOUT,
        text=True,
        encoding="utf-8",
        errors="replace",
    ) as process:
        assert process.stdout is not None
        for line in process.stdout:
            lines.append(line)
            _show_progress(line, lines, len(pins))
    if process.returncode:
        raise SetupError(pip_trouble("".join(lines), _keep_log(lines)))


def _show_progress(line: str, lines: Sequence[str], total: int) -> None:
    if not total:
        return
    if line.startswith(_FOUND):
        count = sum(text.startswith(_FOUND) for text in lines)
        if count % 10 == 0 and count < total:
            _say(f"  {count} of {total} found")
    elif line.startswith("Installing collected"):
        _say("  all fetched, unpacking")


def pip_trouble(output: str, log: str) -> str:
    """One line out of what pip printed: what is wrong, what to do, and where all of it stands."""
    errors = re.findall(r"^ERROR: (.+)$", output, re.MULTILINE)
    said = errors[0] if errors else (output.strip().splitlines() or ["nothing"])[-1]
    if re.search(r"DO NOT MATCH THE HASHES", output):
        advice = "A package is not the one that the lock vouches for. Nothing of it was used; try another network"
    elif re.search(r"No space left|disk (is )?full", output, re.IGNORECASE):
        advice = "The disk is full. Free about 1 GB"
    elif re.search(r"Permission denied|Read-only file system", output, re.IGNORECASE):
        advice = "The project's folder cannot be written to. Make it writable"
    elif re.search(r"connection broken|Max retries|\(from versions: none\)|timed out|ProxyError|SSLError", output):
        advice = (
            "The package registry is out of reach. Connect this machine to the network (a proxy goes into HTTPS_PROXY, "
            "a mirror into PIP_INDEX_URL)"
        )
    elif "from versions:" in output or "not a supported wheel" in output:
        advice = "There is no ready-made package for this Python on this kind of machine. Use Python 3.11, 3.12 or 3.13"
    else:
        advice = "The packages could not be installed. Read the report"
    return f"{advice}, then run this again. pip said: {said.strip()[:200]} (all of it: {log})"


def _keep_log(lines: Sequence[str]) -> str:
    try:
        descriptor, name = tempfile.mkstemp(prefix="hardpoint-setup-", suffix=".log")
        with open(descriptor, "w", encoding="utf-8") as log:
            log.writelines(lines)
    except OSError:
        return "could not be kept"
    return name


def _write_stamp(checkout: Checkout, kind: str, dev_before: str | None) -> None:
    stamp: dict[str, str | None] = {**checkout.wanted()}
    if kind != "dev":
        stamp["dev"] = dev_before
    fresh = checkout.stamp.with_suffix(".new")
    fresh.write_text(json.dumps(stamp, indent=1, sort_keys=True) + "\n", encoding="utf-8")
    fresh.replace(checkout.stamp)


@contextlib.contextmanager
def _alone(path: Path) -> Iterator[None]:
    """Hold a lock on ``path`` that ends with this process, however it ends. Waits for another start to finish."""
    with path.open("a+b") as handle:
        told = False
        while not _try_lock(handle.fileno()):
            if not told:
                _say("Another start is making .venv; waiting for it.")
                told = True
            time.sleep(0.2)
        yield


if sys.platform == "win32":
    import msvcrt

    def _try_lock(descriptor: int) -> bool:
        try:
            msvcrt.locking(descriptor, msvcrt.LK_NBLCK, 1)
        except OSError:
            return False
        return True

else:
    import fcntl

    def _try_lock(descriptor: int) -> bool:
        try:
            fcntl.flock(descriptor, fcntl.LOCK_EX | fcntl.LOCK_NB)
        except BlockingIOError:
            return False
        return True


def _digest(path: Path) -> str:
    return hashlib.sha256(path.read_bytes()).hexdigest()


def _say(text: str) -> None:
    print(text, file=sys.stderr, flush=True)


def _fail(text: str) -> int:
    _say(f"site_build: {' '.join(text.split())}")
    return SURROUNDINGS
