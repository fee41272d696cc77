"""The command line: no display, a first start, the last choices, a database that refuses, a fault of the program."""

from __future__ import annotations

import os
import subprocess
import sys
from pathlib import Path

import pytest

from app.__main__ import NO_DISPLAY_CODE, display_dead, display_missing
from core.records.rows import Machine
from core.records.store import open_store

ROOT = Path(__file__).resolve().parents[2]


@pytest.mark.parametrize(("platform", "environ", "missing"), [
    ("linux", {}, True),
    ("linux", {"DISPLAY": ""}, True),
    ("linux", {"DISPLAY": ":0"}, False),
    ("linux", {"WAYLAND_DISPLAY": "wayland-0"}, False),
    ("linux", {"QT_QPA_PLATFORM": "offscreen"}, False),
    ("darwin", {}, False),
    ("win32", {}, False),
])  # fmt: skip
def test_a_missing_display(platform, environ, missing):
    sentence = display_missing(platform, environ)
    assert bool(sentence) is missing
    assert not missing or "python -m app analyse" in sentence


def test_a_display_that_does_not_answer_is_told_before_qt_aborts():
    assert "No display answers at :77777" in display_dead("linux", {"DISPLAY": ":77777"})


@pytest.mark.parametrize(
    ("platform", "environ"),
    [
        ("win32", {"DISPLAY": ":77777"}),
        ("linux", {"DISPLAY": ":77777", "WAYLAND_DISPLAY": "wayland-0"}),
        ("linux", {"DISPLAY": ":77777", "QT_QPA_PLATFORM": "offscreen"}),
    ],
)
def test_other_window_systems_need_no_display(platform, environ):
    assert display_dead(platform, environ) == ""


def test_without_a_display_the_app_says_so_and_leaves():
    environ = {name: value for name, value in os.environ.items()
               if name not in ("DISPLAY", "WAYLAND_DISPLAY", "QT_QPA_PLATFORM")}
    command = [sys.executable, "-m", "app"]
    done = subprocess.run(command, check=False, cwd=ROOT, env=environ, capture_output=True, text=True)
    assert (done.returncode, "There is no display here" in done.stderr) == (
        (NO_DISPLAY_CODE, True) if sys.platform == "linux" else (0, False)
    )


CHILD = """
import os, sys
import app.__main__
from app import mainwindow
from PySide6.QtCore import QTimer

class Watched(mainwindow.MainWindow):
    def __init__(self, settings):
        super().__init__(settings)
        self.painted.connect(lambda: print("painted"))
        self.ready.connect(lambda: QTimer.singleShot(0, self.tell))

    def refuse(self, sentence):
        super().refuse(sentence)
        print("refused:", sentence)
        QTimer.singleShot(0, self.close)

    def tell(self):
        page = next(page for page in self.rail.pages.values() if page.isChecked())
        print("page:", page.text(), "| title:", self.windowTitle(), "| notice:", self.notices.label.text())
        print("keyboard:", self.focusWidget() is not None)
        self.close()

mainwindow.MainWindow = Watched
sys.exit(app.__main__.main(sys.argv[1:]))
"""


@pytest.fixture
def open_window(tmp_path):
    """Run the whole program without a screen, with folders of its own; return what it said."""
    places = dict.fromkeys(("XDG_CONFIG_HOME", "XDG_DATA_HOME", "LOCALAPPDATA", "HOME"), str(tmp_path))

    def run(*arguments: str) -> str:
        environ = {**os.environ, "QT_QPA_PLATFORM": "offscreen", "LANG": "C.UTF-8", **places}
        command = [sys.executable, "-c", CHILD, *arguments]
        done = subprocess.run(command, check=False, cwd=ROOT, env=environ, capture_output=True, text=True, timeout=60)
        assert done.returncode == 0, done.stderr
        assert "Traceback" not in done.stderr
        return done.stdout

    return run


def test_a_first_start_paints_then_shows_the_first_page_with_the_keyboard(open_window):
    said = open_window().splitlines()
    assert said == ["painted", "page: Drive | title: Slipgauge | notice: ", "keyboard: True"]


def test_page_and_machine_of_last_time_come_back(open_window, tmp_path):
    store = open_store(tmp_path / "shop.sqlite")
    store.add_machine(Machine("Kestrel"))
    store.add_machine(Machine("Merlin"))
    store.close()
    chosen = ("--database", str(tmp_path / "shop.sqlite"))
    assert "page: Size error | title: Merlin" in open_window(*chosen, "--page", "sizeerror", "--machine", "Merlin")
    assert "page: Size error | title: Merlin" in open_window(*chosen)


def test_an_unknown_machine_or_page_is_no_obstacle(open_window):
    said = open_window("--machine", "Nobody", "--page", "nowhere", "--theme", "dark")
    assert "page: Drive | title: Slipgauge | notice: ? No machine is named “Nobody” here; pick one above." in said


def test_a_file_that_is_no_database_is_refused_in_words_and_left_as_it_is(open_window, tmp_path):
    path = tmp_path / "holiday.sqlite"
    path.write_bytes(b"not a database at all" * 100)
    said = open_window("--database", str(path))
    assert "painted\nrefused: " in said
    assert str(path) in said
    assert path.read_bytes() == b"not a database at all" * 100


def test_help_names_the_way_without_a_window():
    command = [sys.executable, "-m", "app", "--help"]
    said = subprocess.run(command, check=True, cwd=ROOT, capture_output=True, text=True).stdout
    assert "python -m app analyse readings.csv" in said
