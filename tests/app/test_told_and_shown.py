"""What a screen reader is told of tables and pictures, and that no mark says something by its colour alone.

Asked is the accessibility tree, as a screen reader asks it, on the demo shop. That colour must not be the only sign:
WCAG 2.2, 1.4.1.
"""

from __future__ import annotations

import gc
from collections import Counter

import pytest
import shiboken6
from PySide6.QtCore import QSettings, QSignalBlocker, Qt
from PySide6.QtGui import QAccessible, QPaintEvent
from PySide6.QtWidgets import QApplication, QComboBox, QTableView, QWidget

from app.context import Context
from app.mainwindow import MainWindow
from app.pages import PAGES
from app.pages.trialpage import TrialPage
from app.widgets.drivesketch import DriveSketch
from app.widgets.plotpane import PlotPane
from tests.app.test_every_page import out_of_order, shared_alt_keys
from tests.demo.opened import named, open_demo
from tests.shots.__main__ import FILLS

TABLES = ("board", "walk", "logbook", "reversal", "sizeerror", "whose", "shop_split", "promise", "prediction", "pieces",
          "instruments")  # fmt: skip
ROWS = 3  # of each table are asked for
BARS = "❘"  # intervals alone: their symbols stand in the same places


@pytest.fixture(scope="module")
def demo(qapp, tmp_path_factory):
    folder = tmp_path_factory.mktemp("demo")
    store = open_demo(folder)
    window = MainWindow(QSettings(str(folder / "window.ini"), QSettings.Format.IniFormat))
    context = Context(store, window)
    window.resize(1280, 800)
    window.show()
    window.open_shop(context, "board")
    context.select_machine(named(store.machines(), "Amsel"))
    context.select_lot(named(store.lots(), "Chalk 12"))
    context.select_instrument(store.instruments()[0].id)
    yield window
    context.closing.emit()
    window.close()
    window.deleteLater()
    store.close()


def opened(window: MainWindow, key: str) -> QWidget:
    window.enter_page(key)
    for _ in range(3):
        QApplication.processEvents()
    return window._body.currentWidget()


def filled(window: MainWindow, key: str) -> QWidget:
    """Return a page with new readings, where it takes any; the demo shop begins with a kept trial."""
    page = opened(window, key)
    if key in FILLS and isinstance(page, TrialPage):
        page.begin_anew()
        with QSignalBlocker(page.form):  # judged once, not at every reading
            FILLS[key](page)
        page.answer_change()
    elif key in FILLS:
        FILLS[key](page)
    QApplication.processEvents()
    return page


def seen(page: QWidget, kind: type) -> list:
    return [widget for widget in page.findChildren(kind) if widget.isVisible()]


def of_role(table: QTableView, role: QAccessible.Role) -> list:
    told = QAccessible.queryAccessibleInterface(table)
    return [child for place in range(told.childCount()) if (child := told.child(place)) and child.role() == role]


@pytest.mark.parametrize("key", TABLES)
def test_a_cell_tells_its_text_its_column_and_its_row(demo, key):
    tables = [table for table in seen(opened(demo, key), QTableView) if table.model().rowCount()]
    assert tables
    for table in tables:
        model, columns = table.model(), table.model().columnCount()
        cells = of_role(table, QAccessible.Role.Cell)
        names = [told.text(QAccessible.Text.Name) for told in of_role(table, QAccessible.Role.RowHeader)]
        for place, cell in enumerate(cells[: ROWS * columns]):
            row, column = divmod(place, columns)
            assert cell.text(QAccessible.Text.Name) == (model.index(row, column).data() or "")
            heading = " ".join(str(model.headerData(column, Qt.Orientation.Horizontal)).split())
            assert cell.text(QAccessible.Text.Description).startswith(heading)
            assert names[row] and names[row] in cell.text(QAccessible.Text.Description).splitlines()[0]


@pytest.mark.parametrize("entry", PAGES, ids=lambda entry: entry.key)
def test_what_tab_reaches_has_a_name_and_no_two_things_look_alike_but_for_colour(demo, entry):
    page = opened(demo, entry.key)
    for widget in seen(page, QWidget):
        told = QAccessible.queryAccessibleInterface(widget)
        if widget.focusPolicy() & Qt.FocusPolicy.TabFocus and widget.isEnabled() and widget.focusProxy() is None:
            assert told.role() != QAccessible.Role.NoRole
            assert told.text(QAccessible.Text.Name).strip() or not is_a_stop(widget), type(widget).__name__
    for plot in seen(page, PlotPane):
        looks = Counter(looks_of(plot.data))
        assert not [look for look, count in looks.items() if count > 1], f"alike but for the colour: {looks}"


def is_a_stop(widget: QWidget) -> bool:
    """Whether the keyboard can stop there: not in the inside of another widget that takes it."""
    owner = widget.parentWidget()
    return not (owner is not None and owner.focusProxy() is widget) and not isinstance(owner, QComboBox) and (
        getattr(owner, "viewport", None) is None or owner.viewport() is not widget
    )


def looks_of(data) -> list:
    """What tells the series of a plot apart without colour: symbol, hollow or full, and whether they are joined."""
    return [
        (series.symbol, bool(series.hollow.all()), series.joined)
        for series in data.points
        if series.x.size and series.symbol != BARS
    ]


@pytest.mark.parametrize(("key", "column"), [("board", 2), ("walk", 2), ("logbook", 1)])
def test_a_state_begins_with_a_sign(demo, key, column):
    page = opened(demo, key)
    model = seen(page, QTableView)[0].model()
    texts = [model.index(row, column).data() for row in range(model.rowCount())]
    assert texts and not [text for text in texts if text[:1].isalnum()]


ROOMS = (QAccessible.Role.NoRole, QAccessible.Role.Client, QAccessible.Role.Pane)  # what says nothing by itself
PICTURES = (QAccessible.Role.Graphic, QAccessible.Role.Chart)
WITHOUT_PICTURES = ("board", "walk", "logbook", "storage", "lots")


@pytest.mark.parametrize("entry", PAGES, ids=lambda entry: entry.key)
def test_a_filled_page_has_its_name_and_every_picture_says_what_it_shows(demo, entry):
    page = filled(demo, entry.key)
    area = QAccessible.queryAccessibleInterface(page)
    assert (area.role(), area.text(QAccessible.Text.Name)) == (QAccessible.Role.Pane, entry.shown_title())
    assert nameless_rooms(page) == []
    pictures = [told for told in map(QAccessible.queryAccessibleInterface, seen(page, QWidget))
                if told.role() in PICTURES]  # fmt: skip
    for told in pictures:
        assert told.text(QAccessible.Text.Name) and told.text(QAccessible.Text.Description), told.object()
    assert bool(pictures) is (entry.key not in WITHOUT_PICTURES)


@pytest.mark.parametrize("entry", PAGES, ids=lambda entry: entry.key)
def test_tab_and_alt_find_their_way_on_a_filled_page(demo, qtbot, entry):
    """Down and to the right, and each letter leads to one thing."""
    page = opened(demo, entry.key)
    demo.activateWindow()
    qtbot.waitUntil(demo.isActiveWindow)
    page.take_focus()
    assert QApplication.focusWidget() is not None
    assert out_of_order(qtbot, demo, page) == []
    assert shared_alt_keys(demo) == {}


def nameless_rooms(page: QWidget) -> list[str]:
    """What is painted by us or takes the keyboard, and is told of as a mere room without a name."""
    return [
        f"{type(widget).__name__} {told.role()}"
        for widget in seen(page, QWidget)
        if (is_painted(widget) or (widget.focusPolicy() & Qt.FocusPolicy.TabFocus and is_a_stop(widget)))
        and (told := QAccessible.queryAccessibleInterface(widget)).role() in ROOMS
        and not told.text(QAccessible.Text.Name).strip()
    ]


def is_painted(widget: QWidget) -> bool:
    """Whether the paint is ours, not Qt's."""
    return next("." in kind.__module__ and not kind.__module__.startswith("PySide6") for kind in type(widget).__mro__
                if "paintEvent" in vars(kind))  # fmt: skip


class _Blot(QWidget):
    """A picture that nobody told of."""

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Paint nothing."""


def test_a_picture_that_nobody_told_of_would_be_found(qtbot):
    page = QWidget()
    qtbot.addWidget(page)
    blot = _Blot(page)
    page.show()
    assert nameless_rooms(page) == ["_Blot Role.Client"]
    blot.setAccessibleName("Blot")
    assert nameless_rooms(page) == []


def test_what_is_told_of_a_picture_outlives_python_and_goes_with_the_picture(qtbot):
    for collects in (True, False):
        page = QWidget()
        sketch = DriveSketch(page)
        assert QAccessible.queryAccessibleInterface(sketch).role() == QAccessible.Role.Graphic
        if collects:
            gc.collect()
        assert QAccessible.queryAccessibleInterface(sketch).role() == QAccessible.Role.Graphic
        shiboken6.delete(page)
        assert not shiboken6.isValid(sketch)


def test_a_plot_says_again_what_it_shows_when_a_point_is_left(demo, qtbot):
    page = filled(demo, "reversal")
    canvas = next(plot.canvas for plot in seen(page, PlotPane))
    says = canvas.accessibleDescription()
    canvas.setFocus()
    qtbot.keyClick(canvas, Qt.Key.Key_Right)
    assert canvas.accessibleDescription() == canvas.tip() != says
    qtbot.keyClick(canvas, Qt.Key.Key_Escape)
    assert canvas.accessibleDescription() == says
