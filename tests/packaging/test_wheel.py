"""The wheel carries all it needs: built anew, unpacked elsewhere, run from there without the checkout in reach."""

from __future__ import annotations

import os
import subprocess
import sys
import zipfile
from pathlib import Path

import pytest

ROOT = Path(__file__).resolve().parents[2]


@pytest.fixture(scope="module")
def unpacked(tmp_path_factory) -> Path:
    folder = tmp_path_factory.mktemp("wheel")
    command = [sys.executable, "-m", "pip", "wheel", "--quiet", "--no-deps", "--wheel-dir", str(folder), str(ROOT)]
    subprocess.run(command, check=True, cwd=folder)
    (wheel,) = folder.glob("*.whl")
    with zipfile.ZipFile(wheel) as archive:
        archive.extractall(folder / "site")
    return folder / "site"


def test_every_resource_is_in_it(unpacked):
    files = [path for path in (ROOT / "resources").rglob("*") if path.is_file() and "__pycache__" not in path.parts]
    names = [path.relative_to(ROOT) for path in files]
    assert len(names) > 20
    assert not [name for name in names if not (unpacked / name).exists()]


def test_command_icon_and_desktop_entry_are_in_it(unpacked):
    (points,) = unpacked.glob("*.dist-info/entry_points.txt")
    assert "slipgauge = app.__main__:main" in points.read_text()
    (data,) = unpacked.glob("*.data/data")
    assert (data / "share/applications/slipgauge.desktop").exists()
    assert (data / "share/icons/hicolor/scalable/apps/slipgauge.svg").exists()


def test_it_runs_from_elsewhere(unpacked, tmp_path):
    environ = {**os.environ, "PYTHONPATH": str(unpacked), "PYTHONDONTWRITEBYTECODE": "1"}
    command = [sys.executable, "-P", "-m", "app", "analyse", str(unpacked / "resources/demo/comb_x.csv")]
    done = subprocess.run(command, check=False, cwd=tmp_path, env=environ, capture_output=True, text=True)
    assert (done.returncode, done.stderr) == (0, "")
    assert "scale error X" in done.stdout
