"""What a screen reader is told of tables, and that no mark says something by its colour alone, on the demo shop.

Asked is the accessibility tree, as a screen reader asks it. That colour must not be the only sign: WCAG 2.2, 1.4.1.
"""

from __future__ import annotations

from collections import Counter

import pytest
from PySide6.QtCore import QSettings, Qt
from PySide6.QtGui import QAccessible
from PySide6.QtWidgets import QApplication, QComboBox, QTableView, QWidget

from app.context import Context
from app.mainwindow import MainWindow
from app.pages import PAGES
from app.widgets.plotpane import PlotPane
from tests.demo.opened import named, open_demo

TABLES = ("board", "walk", "logbook", "reversal", "sizeerror", "whose", "shop_split", "promise", "prediction", "pieces",
          "instruments")  # fmt: skip
ROWS = 3  # of each table are asked for


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
    return [(series.symbol, bool(series.hollow.all()), series.joined) for series in data.points if series.x.size]


@pytest.mark.parametrize(("key", "column"), [("board", 2), ("walk", 2), ("logbook", 1)])
def test_a_state_begins_with_a_sign(demo, key, column):
    page = opened(demo, key)
    model = seen(page, QTableView)[0].model()
    texts = [model.index(row, column).data() for row in range(model.rowCount())]
    assert texts and not [text for text in texts if text[:1].isalnum()]
