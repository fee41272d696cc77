"""`python -m tests.packaging [PYTHON ...] [-- arguments for pytest]`: the suite on the oldest and the newest packages.

For every interpreter named (else the one that runs this) an environment is made in a folder of its own with the highest
version that pyproject.toml allows of every package the program needs, and the suite runs in it. On the oldest Python
allowed it runs with the lowest versions too (they have no wheels for newer ones). What the tests themselves need is
the newest in either.
"""

from __future__ import annotations

import os
import re
import subprocess
import sys
import tempfile
import tomllib
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]
WHOLE = ("-n", "auto", "--dist=loadscope", "--max-worker-restart=0")


def lowest_versions() -> list[str]:
    """Return `name==version` for the lower bound of every package that the program needs."""
    project = tomllib.loads((ROOT / "pyproject.toml").read_text(encoding="utf-8"))["project"]
    needs = [*project["dependencies"], *project["optional-dependencies"]["postgres"]]
    return [re.sub(r"\[.*?\]", "", re.sub(r">=([^,]+).*", r"==\1", need)) for need in needs]


def is_oldest(python: str) -> bool:
    """Tell whether an interpreter is of the oldest version that pyproject.toml allows."""
    project = tomllib.loads((ROOT / "pyproject.toml").read_text(encoding="utf-8"))["project"]
    asked = [python, "-c", "import sys; print('>=%d.%d' % sys.version_info[:2])"]
    version = subprocess.run(asked, check=True, capture_output=True, text=True).stdout.strip()
    return project["requires-python"].partition(",")[0] == version


def install(python: str, folder: Path, *, oldest: bool) -> str:
    """Make an environment with the program's packages and those of the tests; return its interpreter."""
    subprocess.run([python, "-m", "venv", str(folder)], check=True)
    pins = folder / "pins.txt"
    pins.write_text("\n".join(lowest_versions() if oldest else []), encoding="utf-8")
    inside = str(folder / "bin" / "python")
    command = [inside, "-m", "pip", "install", "--quiet", "--disable-pip-version-check", "--constraint", str(pins)]
    subprocess.run([*command, f"{ROOT}[postgres,test]"], check=True, cwd=folder)
    subprocess.run([inside, "-m", "pip", "uninstall", "--quiet", "--yes", "slipgauge"], check=True, cwd=folder)
    return inside


def run(python: str, arguments: list[str]) -> int:
    """Run the suite, or what is asked of it, with an interpreter."""
    environ = {**os.environ, "QT_QPA_PLATFORM": "offscreen"}
    command = [python, "-m", "pytest", "-p", "no:cacheprovider", *(arguments or WHOLE)]
    return subprocess.run(command, check=False, cwd=ROOT, env=environ).returncode


def main(words: list[str]) -> int:
    """Try every interpreter with both ends; say at the end which of them pass."""
    cut = words.index("--") if "--" in words else len(words)
    said, worst = [], 0
    with tempfile.TemporaryDirectory() as folder:
        for number, python in enumerate(words[:cut] or [sys.executable]):
            for oldest in (True, False) if is_oldest(python) else (False,):
                inside = install(python, Path(folder) / f"{number}{oldest}", oldest=oldest)
                code = run(inside, words[cut + 1 :])
                said.append(f"{python}, {'oldest' if oldest else 'newest'} packages: {'passed' if code == 0 else code}")
                worst = max(worst, abs(code))
    print("\n".join(said))
    return worst


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
