"""Set everything up and open the window: `python3 app/start.py`.

Standard library only, so that it runs on a fresh machine. The first start makes the environment `.venv` beside the
project and installs the project into it; on a Debian-like system it also sees to the missing system libraries. Later
starts find the stamp of a finished installation and go straight to the window, without network. Whatever interrupts an
installation, the next start begins it anew; two starts at once wait for each other.
"""

from __future__ import annotations

import contextlib
import hashlib
import importlib.util
import json
import os
import shutil
import subprocess
import sys
import time
from pathlib import Path
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Callable, Iterator, Mapping, Sequence
    from typing import IO

OLDEST = (3, 11)
NEWEST = (3, 14)
ROOT = Path(__file__).resolve().parents[1]
# What Qt loads on Debian and Ubuntu, without a screen and with one (X11); fontconfig brings the one font needed.
SYSTEM_PACKAGES = (
    "libegl1", "libgl1", "libglib2.0-0", "libdbus-1-3", "libfontconfig1", "libxkbcommon0", "libx11-6",
    "libxcb-cursor0", "libxcb-icccm4", "libxcb-keysyms1", "libxcb-shape0", "libxcb-xkb1", "libxkbcommon-x11-0",
)  # fmt: skip


class StartError(Exception):
    """The start cannot go on; the message says why and what to do."""


def main(arguments: Sequence[str]) -> int:
    """Prepare the environment and hand all arguments to `python -m app`; return an exit code."""
    return refusing(lambda: _run_app(prepare(), arguments))


def refusing(work: Callable[[], int]) -> int:
    """Do the work; turn what stops it into a sentence and an exit code."""
    try:
        return work()
    except StartError as refusal:
        print(f"\n{refusal}", file=sys.stderr)
        return 1
    except OSError as error:
        print(f"\nThe environment cannot be made: {error}. Mend this and start again.", file=sys.stderr)
        return 1
    except KeyboardInterrupt:
        print("\nStopped. The next start begins the installation anew.", file=sys.stderr)
        return 130


def prepare(extra: str = "", system_packages: Sequence[str] = SYSTEM_PACKAGES, root: Path = ROOT) -> Path:
    """Make sure that the environment is complete and return its Python.

    Args:
        extra: name of the optional dependencies to install too, for example `test`; empty for none.
        system_packages: Debian packages that must be there.
        root: the folder of pyproject.toml.

    Raises:
        StartError: the Python is too old or too new, something is missing that cannot be installed from here.
    """
    refuse_python(sys.version_info[:2])
    environment = root / ".venv"
    python = python_of(environment)
    if is_complete(environment, extra, system_packages):
        return python
    if (environment / "pyvenv.cfg").exists() and not _lock_file(environment).exists():
        raise StartError(f"{environment} was not made by this command. Rename or remove it and start again.")
    with _alone(environment):
        if not is_complete(environment, extra, system_packages):
            _install(environment, extra, system_packages)
    return python


def refuse_python(version: tuple[int, ...]) -> None:
    """Raise StartError, in words, for a Python that the dependencies do not support."""
    if not OLDEST <= version <= NEWEST:
        raise StartError(
            f"This is Python {version[0]}.{version[1]}; Slipgauge runs on Python {_dotted(OLDEST)} to "
            f"{_dotted(NEWEST)}. Install one of these (python.org, or your system's packages) and start with it."
        )


def python_of(environment: Path) -> Path:
    """Return the environment's Python."""
    return environment / "Scripts" / "python.exe" if os.name == "nt" else environment / "bin" / "python"


# The stamp: what was installed when an installation was finished.


def is_complete(environment: Path, extra: str, system_packages: Sequence[str]) -> bool:
    """Tell whether a finished installation answers to today's requirements, Python and place."""
    stamp = _read_stamp(environment)
    return (
        stamp.get("place") == _place(environment)
        and stamp.get("requirements") == _requirements(environment.parent)
        and extra in _texts(stamp.get("extras"))
        and set(system_packages) <= set(_texts(stamp.get("system_packages")))
        and python_of(environment).exists()
    )


def _place(environment: Path) -> list[str]:
    """What a moved checkout or another Python changes; then the environment is made anew."""
    return [str(environment), _dotted(sys.version_info[:2])]


def _requirements(root: Path) -> str:
    """A hash of what pyproject.toml asks to be installed; other settings in it ask for nothing."""
    import tomllib

    settings = tomllib.loads((root / "pyproject.toml").read_text(encoding="utf-8"))
    parts = ("dependencies", "optional-dependencies", "scripts", "gui-scripts")
    asked = [settings.get("build-system"), *(settings.get("project", {}).get(part) for part in parts)]
    return hashlib.sha256(json.dumps(asked).encode()).hexdigest()


def _stamp_file(environment: Path) -> Path:
    return environment / "installed.json"


def _read_stamp(environment: Path) -> dict[str, object]:
    try:
        stamp = json.loads(_stamp_file(environment).read_text(encoding="utf-8"))
    except (FileNotFoundError, ValueError):
        return {}
    return stamp if isinstance(stamp, dict) else {}


def _write_stamp(environment: Path, stamp: Mapping[str, object]) -> None:
    draft = environment / "installed.json.new"
    draft.write_text(json.dumps(stamp, indent=1), encoding="utf-8")
    draft.replace(_stamp_file(environment))


# One at a time.


def _lock_file(environment: Path) -> Path:
    return environment / "start.lock"


@contextlib.contextmanager
def _alone(environment: Path) -> Iterator[None]:
    """Hold the environment's lock file; the system drops the lock with the process, however it ends."""
    environment.mkdir(parents=True, exist_ok=True)
    with _lock_file(environment).open("a+") as lock:
        if not _try_lock(lock):
            print("Another start is setting up the environment; waiting for it …", flush=True)
            while not _try_lock(lock):
                time.sleep(0.2)
        yield


def _try_lock(lock: IO[str]) -> bool:
    try:
        if sys.platform == "win32":
            import msvcrt

            lock.seek(0)
            msvcrt.locking(lock.fileno(), msvcrt.LK_NBLCK, 1)
        else:
            import fcntl

            fcntl.flock(lock, fcntl.LOCK_EX | fcntl.LOCK_NB)
    except (BlockingIOError, PermissionError):
        return False
    return True


# Installing.


def _install(environment: Path, extra: str, system_packages: Sequence[str]) -> None:
    """Install what is missing; the stamp goes first and comes back last."""
    stamp = _read_stamp(environment)
    wanted = {
        "place": _place(environment),
        "requirements": _requirements(environment.parent),
        "extras": sorted({"", extra, *_texts(stamp.get("extras"))}),
        "system_packages": sorted({*system_packages, *_texts(stamp.get("system_packages"))}),
    }
    _install_system_packages(_missing_for_python() + missing_packages(system_packages))
    _refuse_without_venv()
    python = python_of(environment)
    _stamp_file(environment).unlink(missing_ok=True)
    if stamp.get("place") != wanted["place"] or not python.exists():
        stamp = {}
        _make_environment(environment)
    try:
        _install_project(python, environment.parent, wanted["extras"])
    except StartError:
        if stamp:  # pip fetches everything before it changes anything: the environment is as it was
            _write_stamp(environment, stamp)
        raise
    _compile(python, environment)
    _refuse_unloadable_window(python)
    _write_stamp(environment, wanted)


def _refuse_without_venv() -> None:
    importlib.invalidate_caches()
    if importlib.util.find_spec("ensurepip") is None or importlib.util.find_spec("venv") is None:
        raise StartError(
            "This Python cannot make environments (its modules venv and ensurepip are missing). Install them from the "
            "packages of your system, or use the Python of python.org, and start again."
        )


def _make_environment(environment: Path) -> None:
    """Make the environment anew beside its lock file, which must stay."""
    print(f"Making the environment {environment} …", flush=True)
    for leftover in environment.iterdir():
        if leftover != _lock_file(environment):
            shutil.rmtree(leftover) if leftover.is_dir() and not leftover.is_symlink() else leftover.unlink()
    # The Python below an active environment: one made from inside the environment just emptied would not run.
    base = getattr(sys, "_base_executable", sys.executable) or sys.executable
    if subprocess.run([base, "-m", "venv", str(environment)], check=False).returncode:
        raise StartError(f"{base} -m venv failed, see above. Mend this and start again.")


def _install_project(python: Path, root: Path, extras: Sequence[str]) -> None:
    """Install the project as a pointer to this checkout, so that there is one place only."""
    print("Installing the packages (some 150 MB the first time; this takes a minute or more) …", flush=True)
    named = ",".join(extra for extra in extras if extra)
    target = f"{root}[{named}]" if named else str(root)
    quiet = [] if sys.stdout.isatty() else ["--quiet"]
    command = [str(python), "-m", "pip", "install", *quiet, "--disable-pip-version-check", "--editable", target]
    if subprocess.run(command, check=False).returncode:
        raise StartError(
            "The packages could not be installed, see above. If this computer is offline, connect it and start again; "
            "nothing needs to be removed."
        )


def _compile(python: Path, environment: Path) -> None:
    """Compile all bytecode now: where PYTHONDONTWRITEBYTECODE is set, every start would compile it again."""
    environ = {name: value for name, value in os.environ.items() if name != "PYTHONDONTWRITEBYTECODE"}
    places = [environment / "lib", environment / "Lib", *(environment.parent / name for name in ("app", "core"))]
    command = [str(python), "-m", "compileall", "-q", "-j", "0", *(str(place) for place in places if place.exists())]
    # Some packages carry templates that are no Python; what does not compile is not imported either.
    subprocess.run(command, check=False, env=environ, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL)


def _refuse_unloadable_window(python: Path) -> None:
    """Find out now, not at a crash, whether this system has the libraries of the window."""
    command = [str(python), "-c", "import PySide6.QtWidgets"]
    tried = subprocess.run(command, check=False, capture_output=True, text=True)
    if tried.returncode:
        reason = (tried.stderr.strip() or f"exit code {tried.returncode}").splitlines()[-1]
        raise StartError(f"The window's library cannot be loaded: {reason}. Install what it names and start again.")


# Debian and Ubuntu.


def missing_packages(wanted: Sequence[str]) -> list[str]:
    """Return those of the wanted Debian packages that are neither installed nor provided; none on other systems."""
    if not (shutil.which("dpkg-query") and shutil.which("apt-get")):
        return []
    listed = subprocess.run(
        ["dpkg-query", "--show", "--showformat=${db:Status-Abbrev}\t${Package}\t${Provides}\n"],
        check=False, capture_output=True, text=True,
    ).stdout  # fmt: skip
    present = packages_present(listed)
    return [name for name in wanted if name not in present]


def packages_present(listed: str) -> set[str]:
    """Read lines of status, name and provided names (newer Ubuntus ship libglib2.0-0 as libglib2.0-0t64)."""
    present = set()
    for line in listed.splitlines():
        status, name, provides = line.split("\t")
        if status.startswith("ii"):
            present |= {name, *(provided.split()[0] for provided in provides.split(",") if provided.strip())}
    return present


def _missing_for_python() -> list[str]:
    """Debian keeps the makers of environments of its own Python in a package of their own."""
    if importlib.util.find_spec("ensurepip") is not None or sys.base_prefix != "/usr":
        return []
    return missing_packages([f"python{_dotted(sys.version_info[:2])}-venv"])


def _install_system_packages(names: Sequence[str]) -> None:
    if not names:
        return
    install = ["apt-get", "install", "--yes", "--no-install-recommends", *names]
    if os.geteuid() != 0:
        raise StartError(
            f"Some system libraries are missing. Install them with this one line, then start again:\n\n"
            f"    sudo apt-get update && sudo {' '.join(install)}\n"
        )
    print(f"Installing system libraries: {' '.join(names)} …", flush=True)
    environ = {**os.environ, "DEBIAN_FRONTEND": "noninteractive"}
    options = ["-qq", "-o", "DPkg::Lock::Timeout=120"]
    # The lists may be old or empty; if they cannot be renewed, the install itself tells.
    subprocess.run(["apt-get", "update", *options], check=False, env=environ, capture_output=True)
    done = subprocess.run([*install, *options], check=False, env=environ, capture_output=True, text=True)
    if done.returncode:
        raise StartError(
            f"{done.stderr.strip()}\n\nThe system libraries could not be installed. If this computer is offline, "
            f"connect it and start again; the line that failed is:\n\n    {' '.join(install)}\n"
        )


def _run_app(python: Path, arguments: Sequence[str]) -> int:
    # -P: a folder named app where the person happens to stand must not be taken for ours.
    command = [str(python), "-P", "-m", "app", *arguments]
    if os.name != "nt":
        os.execv(command[0], command)
    return subprocess.run(command, check=False).returncode


def _texts(value: object) -> list[str]:
    return [text for text in value if isinstance(text, str)] if isinstance(value, list) else []


def _dotted(version: tuple[int, ...]) -> str:
    return ".".join(str(part) for part in version[:2])


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
