"""The first minute: an empty shop says where to begin; the demo shop is entered, marked, and left again."""

from __future__ import annotations

import os
import subprocess
import sys
from pathlib import Path

import pytest
from PySide6.QtCore import QSettings, Qt
from PySide6.QtGui import QImage
from PySide6.QtWidgets import QApplication, QLabel

from app import safekeeping
from app.context import Context
from app.demoband import DemoBand
from app.finder import Finder
from app.mainwindow import MainWindow
from app.options import ANEW, HOME, OPEN, parsed
from app.pages.shop.board import BoardPage
from app.pages.shop.storage import StoragePage
from app.safekeeping import look_after_soon
from app.widgets.invented import marked
from core.records.rows import Machine
from core.records.store import open_store
from tests.app.test_every_page import cut_texts

ROOT = Path(__file__).resolve().parents[2]
MARK = "Demo shop, invented data"


@pytest.fixture
def settings(tmp_path):
    return QSettings(str(tmp_path / "window.ini"), QSettings.Format.IniFormat)


@pytest.fixture
def window(qtbot, context, settings):
    window = MainWindow(settings)
    qtbot.addWidget(window)
    window.resize(1000, 700)
    window.show()
    window.activateWindow()
    window.open_shop(context, "board")
    return window


@pytest.fixture
def demo_context(context):
    """The context of a shop that is marked as invented."""
    context.store.set_shop_value("demo", {}, None)
    context.store.add_machine(Machine("Amsel"))
    context.select_machine(context.store.machines()[0].id)
    return context


@pytest.fixture
def asked(context):
    found = []
    context.demo_asked.connect(found.append)
    return found


def start_of(window):
    return window.findChild(BoardPage).start


def test_the_two_ways_to_begin_and_the_two_of_help_follow_each_other_by_tab(qtbot, window):
    start = start_of(window)
    qtbot.waitUntil(start.add.hasFocus)
    for button in (start.demo, start.steps, start.help):
        qtbot.keyClick(window.focusWidget(), Qt.Key.Key_Tab)
        assert window.focusWidget() is button


def test_enter_on_the_first_begins_a_machine_at_its_name(qtbot, window):
    qtbot.keyClick(start_of(window).add, Qt.Key.Key_Return)
    assert window.rail.marked() == "drive"
    assert window.focusWidget().objectName() == "name"
    assert window.context.machine is None


def test_enter_on_the_second_asks_once_for_the_demo_shop(qtbot, window, asked):
    for _ in range(2):
        qtbot.keyClick(start_of(window).demo, Qt.Key.Key_Return)
    assert asked == [OPEN]


def test_enter_on_the_third_shows_the_first_steps(qtbot, window):
    qtbot.keyClick(start_of(window).steps, Qt.Key.Key_Return)
    assert window.help.pane.isVisible()
    assert window.help.pane.heading.text() == "Help: First steps"


def test_enter_on_the_last_shows_the_help(qtbot, window):
    qtbot.keyClick(start_of(window).help, Qt.Key.Key_Return)
    assert window.help.pane.isVisible()
    assert window.help.pane.heading.text() == "Help: Board"


def test_what_is_shown_first_is_read_out_with_each_button(window):
    start = start_of(window)
    says = {label.text() for label in start.findChildren(QLabel)}
    assert any("tells an error that grows with the length from one that does not" in text for text in says)
    assert all(button.accessibleDescription() in says for button in (start.add, start.demo, start.steps, start.help))


def test_a_shop_of_ones_own_bears_no_mark(window):
    assert not window.rail.demo.isVisible()
    assert window.windowTitle() == "Slipgauge"


def test_the_demo_shop_is_marked_beside_every_page_and_in_the_title(qtbot, demo_context, window):
    for key in ("board", "sizeerror", "storage"):
        window.enter_page(key)
        assert window.rail.demo.isVisible()
        assert window.windowTitle() == f"{MARK} – Amsel – Slipgauge"
    band = window.rail.demo
    assert band.accessibleName() == MARK
    assert (band.sign.text(), band.says.text()) == ("Demo shop", "Invented data")


def test_no_text_is_cut_where_one_begins_nor_on_the_mark(qtbot, window, context):
    assert not cut_texts(window)
    window.rail.demo.show()
    window.rail.demo.anew.click()
    QApplication.processEvents()
    assert window.rail.demo.warning.isVisible()
    assert not cut_texts(window)


def test_pictures_bear_the_mark_until_the_demo_shop_is_left(demo_context, window):
    blank = QImage(300, 40, QImage.Format.Format_RGB32)
    blank.fill(0)
    assert marked(blank.copy()) != blank
    window.close()
    assert marked(blank.copy()) == blank


def test_what_is_chosen_in_the_demo_shop_is_not_chosen_at_the_next_start(demo_context, window, settings):
    settings.setValue("page", "walk")
    settings.setValue("machine", "Kestrel")
    window.enter_page("storage")
    demo_context.select_machine(None)
    demo_context.sign("Noor")
    assert (settings.value("page"), settings.value("machine"), settings.value("author")) == ("walk", "Kestrel", None)


def test_the_way_back_is_one_press(qtbot, demo_context, window, asked):
    with qtbot.waitSignal(window.demo_asked) as way:
        qtbot.keyClick(window.rail.demo.home, Qt.Key.Key_Return)
    assert way.args == [HOME]


def test_to_begin_anew_is_asked_about(qtbot):
    band = DemoBand()
    qtbot.addWidget(band)
    band.show()
    said = []
    band.asked.connect(said.append)
    assert not band.really.isVisible()
    qtbot.mouseClick(band.anew, Qt.MouseButton.LeftButton)
    assert band.warning.isVisible() and "is lost" in band.warning.text() and not band.home.isVisible()
    qtbot.mouseClick(band.leave, Qt.MouseButton.LeftButton)
    assert band.home.isVisible() and not band.really.isVisible() and said == []
    qtbot.mouseClick(band.anew, Qt.MouseButton.LeftButton)
    qtbot.mouseClick(band.really, Qt.MouseButton.LeftButton)
    assert said == [ANEW]


@pytest.mark.parametrize(("text", "is_demo", "way"), [("demo", False, OPEN), ("demo", True, HOME)])
def test_the_find_box_knows_the_way_in_and_out(qtbot, context, asked, text, is_demo, way):
    if is_demo:
        context.store.set_shop_value("demo", {}, None)
    box = Finder()
    qtbot.addWidget(box)
    box.serve(context)
    box.show()
    box.activateWindow()
    box.setFocus()
    qtbot.waitUntil(box.hasFocus)
    qtbot.keyClicks(box, text)
    qtbot.keyClick(box, Qt.Key.Key_Return)
    qtbot.waitUntil(lambda: asked == [way])


@pytest.mark.parametrize(("is_demo", "way"), [(False, OPEN), (True, HOME)])
def test_the_page_storage_knows_the_way_in_and_out(qtbot, context, asked, is_demo, way):
    if is_demo:
        context.store.set_shop_value("demo", {}, None)
    page = StoragePage(context)
    qtbot.addWidget(page)
    page.show()
    qtbot.mouseClick(page.demo.go, Qt.MouseButton.LeftButton)
    assert asked == [way]


def test_the_demo_shop_is_worth_no_copy(qtbot, qapp, tmp_path, monkeypatch):
    monkeypatch.setattr(safekeeping, "SOON_MS", 0)
    store = open_store(tmp_path / "demo.sqlite")
    store.set_shop_value("demo", {}, None)
    context = Context(store)
    keeper = look_after_soon(context)
    with qtbot.waitSignal(keeper.job.ended):
        pass
    assert store.storage.backups() == ()
    context.closing.emit()
    store.close()


def test_the_command_line_knows_it():
    assert (parsed(["--demo"]).demo, parsed([]).demo) == (OPEN, "")


JOURNEY = """
import sys
import app.__main__
from app import mainwindow
from core.records.rows import Lot
from PySide6.QtCore import QTimer

windows = []

class Watched(mainwindow.MainWindow):
    def __init__(self, settings):
        super().__init__(settings)
        windows.append(self)
        self.ready.connect(lambda: QTimer.singleShot(0, self.tell))

    def tell(self):
        store, ways = self.context.store, sys.argv[1].split(",")
        last = [lot.name for lot in store.lots()][-1:]
        print(store.where, self.windowTitle(), self.rail.marked(), last, self.notices.label.text(), sep=" | ")
        if store.is_demo and len(store.lots()) < 5:
            store.add_lot(Lot("Zinc", "PLA"))
        if len(windows) <= len(ways) and ways[0]:
            self.context.demo_asked.emit(ways[len(windows) - 1])
        else:
            self.close()

mainwindow.MainWindow = Watched
sys.exit(app.__main__.main(sys.argv[2:]))
"""


@pytest.fixture
def journey(tmp_path):
    """Run the whole program, ask for these ways in one window after the other, and return what each has open."""
    places = dict.fromkeys(("XDG_CONFIG_HOME", "XDG_DATA_HOME", "LOCALAPPDATA", "HOME"), str(tmp_path))

    def run(ways: str, *arguments: str) -> list[list[str]]:
        environ = {**os.environ, "QT_QPA_PLATFORM": "offscreen", "LANG": "C.UTF-8", **places}
        command = [sys.executable, "-c", JOURNEY, ways, *arguments]
        done = subprocess.run(command, check=False, cwd=ROOT, env=environ, capture_output=True, text=True, timeout=60)
        assert (done.returncode, "Traceback" in done.stderr) == (0, False), done.stderr
        return [line.split(" | ") for line in done.stdout.splitlines()]

    return run


def test_in_and_out_and_in_again_with_what_was_done_there(journey, tmp_path):
    folder = tmp_path / "slipgauge"
    own, demo = str(folder / "slipgauge.sqlite"), str(folder / "demo.sqlite")
    said = journey(f"{OPEN},{HOME},{OPEN},{ANEW}")
    assert [line[0] for line in said] == [own, demo, own, demo, demo]
    assert [line[1].startswith(MARK) for line in said] == [False, True, False, True, True]
    assert {line[2] for line in said} == {"board"}
    assert [line[3] for line in said] == ["[]", "['Slate 7']", "[]", "['Zinc']", "['Slate 7']"]
    assert {line[4].strip() for line in said} == {""}
    assert not (folder / "demo-backups").exists()
    assert [line[0] for line in journey("")] == [own]  # the next start knows nothing of it


def test_the_demo_shop_is_opened_from_the_command_line_and_left_for_the_named_database(journey, tmp_path):
    other = str(tmp_path / "other.sqlite")
    assert [line[0] for line in journey(HOME, "--demo", "--database", other)] == [
        str(tmp_path / "slipgauge" / "demo.sqlite"), other,
    ]  # fmt: skip


def test_a_database_in_its_place_is_left_alone_and_ones_own_shop_is_opened(journey, tmp_path):
    (tmp_path / "slipgauge").mkdir()
    store = open_store(tmp_path / "slipgauge" / "demo.sqlite")
    store.add_machine(Machine("Kestrel"))
    store.close()
    ((where, _, _, _, notice),) = journey("", "--demo")
    assert where == str(tmp_path / "slipgauge" / "slipgauge.sqlite")
    assert "is not the demo shop, and was left as it is" in notice
