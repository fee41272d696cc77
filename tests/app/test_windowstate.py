"""The window opens where it was left, and never where nobody sees it; widths drawn with the mouse come back."""

import pytest
from PySide6.QtCore import QPoint, QRect, QSettings, QSize, Qt
from PySide6.QtGui import QGuiApplication
from PySide6.QtWidgets import QHeaderView, QMainWindow, QTableWidget

from app.windowstate import ColumnWidths, fit, keep_place, restore_place

USUAL = QSize(640, 480)
LAPTOP, BESIDE = QRect(0, 0, 1366, 740), QRect(1366, 0, 1920, 1040)


@pytest.mark.parametrize(
    ("wanted", "rooms", "fitted"),
    [
        (QRect(100, 50, 1000, 600), [LAPTOP], QRect(100, 50, 1000, 600)),
        (QRect(1500, 100, 1280, 800), [LAPTOP, BESIDE], QRect(1500, 100, 1280, 800)),
        (QRect(1500, 100, 1280, 800), [LAPTOP], QRect(86, 0, 1280, 740)),  # its screen is gone
        (QRect(-900, -700, 1000, 700), [LAPTOP], QRect(0, 0, 1000, 700)),
        (QRect(0, 0, 3000, 2000), [LAPTOP], LAPTOP),  # the screen is smaller now
        (QRect(1300, 0, 1280, 800), [LAPTOP, BESIDE], QRect(1366, 0, 1280, 800)),  # half on either
        (QRect(5, 5, 10, 10), [], QRect(5, 5, 10, 10)),
    ],
)
def test_a_window_lies_whole_on_a_screen(wanted, rooms, fitted):
    assert fit(wanted, rooms) == fitted


@pytest.fixture
def settings(tmp_path):
    return QSettings(str(tmp_path / "window.ini"), QSettings.Format.IniFormat)


def open_window(qtbot, settings, size=USUAL):
    window = QMainWindow()
    qtbot.addWidget(window)
    restore_place(window, settings, size)
    return window


def test_place_and_size_come_back(qtbot, settings):
    first = open_window(qtbot, settings)
    assert first.size() == QSize(640, 480)
    first.setGeometry(50, 40, 500, 300)
    first.show()
    keep_place(first, settings)
    assert open_window(qtbot, settings).geometry() == QRect(50, 40, 500, 300)


def test_a_window_that_fills_the_screen_comes_back_where_it_was(qtbot, settings):
    room = QGuiApplication.primaryScreen().availableGeometry()
    first = open_window(qtbot, settings)
    first.setGeometry(room)
    first.show()
    for _ in range(2):
        keep_place(first, settings)
        first = open_window(qtbot, settings)
        first.show()
        assert first.frameGeometry() == room


def test_the_frame_stays_on_the_screen(qtbot, settings):
    room = QGuiApplication.primaryScreen().availableGeometry()
    keep_place(open_window(qtbot, settings), settings)
    settings.setValue("place", QRect(room.left(), room.top(), 400, 300))  # left on a screen that is gone
    settings.setValue("framed", QRect(room.left() - 4, room.top() - 30, 408, 334))
    assert open_window(qtbot, settings).geometry() == QRect(room.left() + 4, room.top() + 30, 400, 300)


def test_a_maximised_window_comes_back_maximised(qtbot, settings):
    first = open_window(qtbot, settings)
    first.showMaximized()
    keep_place(first, settings)
    assert open_window(qtbot, settings).isMaximized()


def test_a_window_larger_than_the_screen_is_made_smaller(qtbot, settings):
    window = open_window(qtbot, settings, QSize(5000, 4000))
    assert window.screen().availableGeometry().contains(window.geometry())


def test_what_cannot_be_read_is_no_place(qtbot, settings):
    settings.setValue("geometry", b"nonsense")
    assert open_window(qtbot, settings).size() == QSize(640, 480)


def make_table(qtbot):
    page = QMainWindow()
    table = QTableWidget(2, 3, page)
    table.horizontalHeader().setSectionResizeMode(2, QHeaderView.ResizeMode.Stretch)
    page.setCentralWidget(table)
    page.resize(600, 300)
    qtbot.addWidget(page)
    page.show()
    return page, table.horizontalHeader()


def draw(qtbot, header, column, by_px):
    edge = QPoint(header.sectionViewportPosition(column) + header.sectionSize(column) - 1, header.height() // 2)
    qtbot.mousePress(header.viewport(), Qt.MouseButton.LeftButton, pos=edge)
    qtbot.mouseMove(header.viewport(), edge + QPoint(by_px, 0))
    header.resizeSection(column, header.sectionSize(column) + by_px)  # a test's mouse moves with no button held
    qtbot.mouseRelease(header.viewport(), Qt.MouseButton.LeftButton, pos=edge + QPoint(by_px, 0))


def test_a_column_drawn_with_the_mouse_keeps_its_width_also_when_the_table_is_filled_anew(qtbot, settings):
    page, header = make_table(qtbot)
    ColumnWidths(settings, page).watch(page, "lots")
    draw(qtbot, header, 0, 33)
    drawn = header.sectionSize(0)
    header.resizeSection(1, 41)  # by the program
    other, again = make_table(qtbot)
    usual = again.sectionSize(1)
    ColumnWidths(settings, other).watch(other, "lots")
    assert (again.sectionSize(0), again.sectionSize(1)) == (drawn, usual)
    again.resizeSection(0, 50)
    again.model().beginResetModel()
    again.model().endResetModel()
    assert again.sectionSize(0) == drawn


def test_a_width_of_another_page_or_of_a_column_that_shares_is_left_alone(qtbot, settings):
    page, header = make_table(qtbot)
    usual = header.sectionSize(0)
    settings.setValue("columns/charts.0/0", 99)
    settings.setValue("columns/lots.0/2", 30)
    settings.setValue("columns/lots.0/1", "wide")
    ColumnWidths(settings, page).watch(page, "lots")
    assert header.sectionSize(0) == usual
    assert header.sectionSize(2) > 30
