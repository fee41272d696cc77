"""The one command, without network: a tiny project with its own builder stands in for ours."""

from __future__ import annotations

import json
import os
import re
import shutil
import subprocess
import sys
import time
import tomllib
from pathlib import Path

import pytest

from app import start

BUILDER = '''
"""Builds the editable wheel of the tiny project; it brings a stand-in for the window's library."""
import os, time, zipfile
def get_requires_for_build_editable(config_settings=None): return []
def build_editable(folder, config_settings=None, metadata_directory=None):
    time.sleep(float(os.environ.get("SLOWLY", "0")))
    with zipfile.ZipFile(os.path.join(folder, "tiny-1-py3-none-any.whl"), "w") as wheel:
        for name, text in (("PySide6/__init__.py", ""), ("PySide6/QtWidgets.py", ""), ("tiny.pth", os.getcwd()),
                           ("tiny-1.dist-info/METADATA", "Metadata-Version: 2.1\\nName: tiny\\nVersion: 1\\n"),
                           ("tiny-1.dist-info/WHEEL",
                            "Wheel-Version: 1.0\\nRoot-Is-Purelib: true\\nTag: py3-none-any\\n"),
                           ("tiny-1.dist-info/RECORD", "")):
            wheel.writestr(name, text)
    return "tiny-1-py3-none-any.whl"
'''
PROJECT = """
[build-system]
requires = []
build-backend = "builder"
backend-path = ["."]
[project]
name = "tiny"
version = "1"
"""


@pytest.fixture
def project(tmp_path):
    """A project of the same shape as ours, whose app prints its arguments."""
    (tmp_path / "pyproject.toml").write_text(PROJECT)
    (tmp_path / "builder.py").write_text(BUILDER)
    (tmp_path / "app").mkdir()
    (tmp_path / "app" / "__init__.py").touch()
    (tmp_path / "app" / "__main__.py").write_text("import sys; print('window', *sys.argv[1:])")
    text = Path(start.__file__).read_text(encoding="utf-8")
    # System libraries are another matter, and need no environment.
    (tmp_path / "app" / "start.py").write_text(re.sub(r"(SYSTEM_PACKAGES) = \([^)]*\)", r"\1 = ()", text))
    return tmp_path


def begin(project: Path, *arguments: str, **environ: str) -> subprocess.Popen[str]:
    return subprocess.Popen(
        [sys.executable, str(project / "app" / "start.py"), *arguments],
        env={**os.environ, "PIP_NO_INDEX": "1", **environ}, cwd=project.parent,
        stdout=subprocess.PIPE, stderr=subprocess.STDOUT, text=True,
    )  # fmt: skip


def run(project: Path, *arguments: str, **environ: str) -> tuple[int, str]:
    process = begin(project, *arguments, **environ)
    said, _ = process.communicate(timeout=100)
    return process.returncode, said


def test_the_first_start_installs_and_the_second_goes_straight_to_the_window(project):
    code, said = run(project, "--page", "drive")
    assert code == 0, said
    assert "Installing the packages" in said
    assert said.endswith("window --page drive\n")
    for pip in (project / ".venv").rglob("site-packages/pip*"):
        shutil.rmtree(pip)  # whoever would install again could not
    assert run(project, "analyse", "a b.csv") == (0, "window analyse a b.csv\n")


def test_an_interrupted_start_is_begun_anew(project):
    process = begin(project, SLOWLY="60")
    deadline = time.monotonic() + 60
    while not list((project / ".venv").glob("*/python*")) and time.monotonic() < deadline:
        time.sleep(0.1)
    time.sleep(0.5)
    process.kill()
    process.communicate()
    assert not start.is_complete(project / ".venv", "", ())
    (project / ".venv" / "leftover").mkdir()
    code, said = run(project)
    assert code == 0, said
    assert said.endswith("window\n")
    assert not (project / ".venv" / "leftover").exists()


def test_two_starts_at_once_wait_for_each_other(project):
    both = [begin(project, SLOWLY="1") for _ in range(2)]
    said = [process.communicate(timeout=100)[0] for process in both]
    assert [process.returncode for process in both] == [0, 0], said
    assert sorted("Installing the packages" in text for text in said) == [False, True]
    assert all(text.endswith("window\n") for text in said)


def test_offline_with_nothing_installed_is_a_sentence(project):
    text = (project / "pyproject.toml").read_text()
    (project / "pyproject.toml").write_text(text.replace("requires = []", 'requires = ["must-be-fetched"]'))
    code, said = run(project)
    assert code == 1
    assert "If this computer is offline, connect it and start again; nothing needs to be removed." in said
    assert "Traceback" not in said
    (project / "pyproject.toml").write_text(text)
    assert run(project)[0] == 0


def test_changed_dependencies_are_installed_without_a_new_environment(project):
    assert run(project)[0] == 0
    mark = project / ".venv" / "mark"
    mark.touch()
    with (project / "pyproject.toml").open("a") as file:
        file.write("[project.optional-dependencies]\ntest = []\n")
    code, said = run(project)
    assert code == 0, said
    assert "Installing the packages" in said
    assert mark.exists()


def test_offline_after_a_change_of_dependencies_the_environment_stays(project):
    assert run(project)[0] == 0
    text = (project / "pyproject.toml").read_text()
    (project / "pyproject.toml").write_text(text.replace("requires = []", 'requires = ["must-be-fetched"]'))
    code, said = run(project)
    assert code == 1
    assert "connect it and start again" in said
    (project / "pyproject.toml").write_text(text)
    assert run(project) == (0, "window\n")


def test_other_settings_in_pyproject_ask_for_nothing(project):
    assert run(project)[0] == 0
    with (project / "pyproject.toml").open("a") as file:
        file.write("[tool.ruff]\nline-length = 100\n")
    assert run(project) == (0, "window\n")


def test_an_environment_of_somebody_else_is_left_alone(project):
    (project / ".venv").mkdir()
    (project / ".venv" / "pyvenv.cfg").write_text("home = /usr/bin")
    code, said = run(project)
    assert code == 1
    assert "was not made by this command. Rename or remove it and start again." in said
    assert [path.name for path in (project / ".venv").iterdir()] == ["pyvenv.cfg"]


def test_a_library_that_cannot_be_loaded_is_named(project):
    builder = (project / "builder.py").read_text()
    broken = builder.replace('("PySide6/QtWidgets.py", "")',
                             '("PySide6/QtWidgets.py", "raise ImportError(\'libEGL.so.1: no such file\')")')
    (project / "builder.py").write_text(broken)
    code, said = run(project)
    assert code == 1
    assert "libEGL.so.1: no such file. Install what it names and start again." in said
    assert not (project / ".venv" / "installed.json").exists()


def test_a_moved_checkout_asks_for_a_new_environment(project):
    assert run(project)[0] == 0
    environment = project / ".venv"
    assert start.is_complete(environment, "", ())
    moved = shutil.copytree(project, project.parent / f"{project.name}_moved", symlinks=True)
    assert not start.is_complete(moved / ".venv", "", ())


@pytest.mark.parametrize("text", ["", "no json", "[]", '{"extras": 3}', '{"same": "x", "extras": [""]}'])
def test_a_stamp_that_says_nothing_counts_as_none(tmp_path, text):
    (tmp_path / "pyproject.toml").touch()
    (tmp_path / ".venv").mkdir()
    (tmp_path / ".venv" / "installed.json").write_text(text)
    assert not start.is_complete(tmp_path / ".venv", "", ())


def test_a_stamp_without_the_extra_or_a_system_package_is_incomplete(project):
    assert run(project)[0] == 0
    environment = project / ".venv"
    assert json.loads((environment / "installed.json").read_text())["extras"] == [""]
    assert not start.is_complete(environment, "test", ())
    assert not start.is_complete(environment, "", ("libegl1",))


@pytest.mark.parametrize("version", [(2, 7), (3, 10), (3, 15), (4, 0)])
def test_other_pythons_are_refused_in_words(version):
    with pytest.raises(start.StartError, match=r"Slipgauge runs on Python 3\.11 to 3\.14\. Install one of these"):
        start.refuse_python(version)


@pytest.mark.parametrize("version", [(3, 11), (3, 14)])
def test_the_oldest_and_newest_python_are_welcome(version):
    start.refuse_python(version)


def test_the_python_versions_are_those_of_the_project():
    project = tomllib.loads((start.ROOT / "pyproject.toml").read_text(encoding="utf-8"))["project"]
    newest, beyond = start.NEWEST, (start.NEWEST[0], start.NEWEST[1] + 1)
    assert project["requires-python"] == f">={start.OLDEST[0]}.{start.OLDEST[1]},<{beyond[0]}.{beyond[1]}"
    assert newest < beyond


def test_installed_and_provided_packages_are_present():
    listed = "ii \tlibegl1\t\nrc \tlibgl1\t\nii \tlibglib2.0-0t64\tlibglib2.0-0 (= 2.80.0), libglib2.0-bin-x\n"
    present = start.packages_present(listed)
    assert {"libegl1", "libglib2.0-0", "libglib2.0-0t64"} <= present
    assert "libgl1" not in present


def test_the_environment_python_of_this_system():
    place = start.python_of(Path("x"))
    assert place == Path("x") / ("Scripts/python.exe" if os.name == "nt" else "bin/python")
