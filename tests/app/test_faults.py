"""A fault while one page goes is told, and does the page that comes no harm."""

import sys
from importlib import import_module
from inspect import getclosurevars, isclass, isfunction
from pkgutil import walk_packages

import pytest
from PySide6.QtCore import QEvent, QSize, Qt
from PySide6.QtGui import QFocusEvent
from PySide6.QtWidgets import QHBoxLayout, QScrollArea, QStackedWidget, QWidget

import app
from app import faults
from app.context import Context
from app.faults import or_else, told_at_once
from app.finder import Finder
from app.pages.base import Page
from app.widgets.reading_columns import Column
from app.widgets.readings import ReadingsModel
from app.widgets.readings_table import ReadingsTable
from core.errors import StoreError

NOT_VIRTUAL = {"setText", "setColumnHidden", "text", "toPlainText"}  # Qt calls its own: ours hide them from Python only
# What Qt takes for an answer, by what a method says it returns; for all else, nothing.
ANSWERS = {"QSize": QSize, "bool": bool, "int": int, "Qt.ItemFlag": Qt.ItemFlag,
           "list[tuple[float, float]]": list, "list[str]": list}  # fmt: skip


class Failing(Page):
    def hidden(self):
        raise StoreError("The file is gone.")


def test_a_page_that_fails_to_go_takes_no_method_of_the_next_one_away(qtbot, store, monkeypatch):
    class Area(QScrollArea):
        def minimumSizeHint(self):
            return QSize(10, 10)

    told = []
    monkeypatch.setattr(sys, "excepthook", lambda kind, error, trace: told.append((kind, error.message)))
    pages, second = QStackedWidget(), QWidget()
    QHBoxLayout(second).addWidget(Area())
    qtbot.addWidget(pages)
    pages.addWidget(Failing(Context(store)))
    pages.addWidget(second)
    pages.show()
    before = sys.getrefcount(Area.__dict__["minimumSizeHint"])
    pages.setCurrentWidget(second)
    assert told == [(StoreError, "The file is gone.")]
    assert sys.getrefcount(Area.__dict__["minimumSizeHint"]) >= before


def test_only_faults_are_held_up():
    @told_at_once
    def leave():
        raise SystemExit

    with pytest.raises(SystemExit):
        leave()


def overrides():
    """Our methods that Qt, or a painter of pyqtgraph that Qt called, calls in place of its own: of every class."""
    names = [found.name for found in walk_packages(app.__path__, "app.")]
    modules = [import_module(name) for name in names if name != "app.__main__"]
    kinds = {kind for module in modules for kind in vars(module).values() if isclass(kind)}
    for kind in kinds:
        above = [base for base in kind.__mro__ if base.__module__.startswith(("PySide6", "pyqtgraph"))]
        if kind.__module__.startswith("app."):
            for name, method in vars(kind).items():
                hides = isfunction(method) and not name.startswith("__") and any(name in vars(base) for base in above)
                if hides and name not in NOT_VIRTUAL:
                    yield f"{kind.__qualname__}.{name}", method


def test_whatever_qt_calls_tells_its_faults_at_once():
    found = dict(overrides())
    assert len(found) > 120
    assert sorted(name for name, method in found.items() if method.__code__.co_filename != faults.__file__) == []


def test_instead_of_a_failed_answer_qt_gets_one_of_the_kind_it_takes():
    wrong = []
    for name, method in overrides():
        answer, returns = getclosurevars(method).nonlocals["instead"], method.__wrapped__.__annotations__["return"]
        if not isinstance(answer, ANSWERS.get(returns, type(None))):
            wrong.append((name, returns, answer))
    assert wrong == []


def test_the_answer_of_a_method_that_fails_is_the_one_instead(monkeypatch):
    told = []
    monkeypatch.setattr(sys, "excepthook", lambda kind, error, trace: told.append(str(error)))

    class Asked:
        @or_else(-1)
        def height(self, width):
            """How high."""
            if not width:
                raise ValueError("no width")
            return 100 // width

    assert Asked().height(10) == 10 and told == []
    assert Asked().height(0) == -1 and told == ["no width"]
    assert Asked.height.__doc__ == "How high."


def test_a_fault_that_comes_of_telling_one_is_printed_and_goes_no_further(monkeypatch, capsys):
    told = []

    @told_at_once
    def fail(name):
        raise ValueError(name)

    def tell(_kind, error, _trace):
        told.append(str(error))
        fail(f"{error} while told")

    monkeypatch.setattr(sys, "excepthook", tell)
    fail("one")
    fail("two")
    printed = [line for line in capsys.readouterr().err.splitlines() if "while told" in line and "Error" in line]
    assert told == ["one", "two"] and printed == ["ValueError: one while told", "ValueError: two while told"]


def test_a_cell_that_cannot_be_painted_is_told_and_the_others_are_painted(qtbot, monkeypatch):
    told, painted = [], []
    monkeypatch.setattr(sys, "excepthook", lambda kind, error, trace: told.append(str(error)))
    columns = (Column("feature", "What"), Column("measured_mm", "Reading mm", "length"))
    table = ReadingsTable(ReadingsModel(columns))
    qtbot.addWidget(table)
    table.model().set_rows([{"feature": "A"}, {"feature": "B"}])
    look = table.model().look

    def looks(row, column):
        painted.append((row, column))
        return look(row, column) if row else 1 / 0

    monkeypatch.setattr(table.model(), "look", looks)
    table.grab()
    assert set(told) == {"division by zero"} and {(1, 0), (1, 1)} <= set(painted)


def test_the_find_box_whose_shop_is_gone_says_so_at_once(qtbot, store, monkeypatch):
    """It reads the shop when it gets the keyboard, as when a page goes and takes the keyboard with it."""
    told = []
    monkeypatch.setattr(sys, "excepthook", lambda kind, error, trace: told.append(str(error)))
    finder = Finder()
    qtbot.addWidget(finder)
    monkeypatch.setattr(finder, "_read", lambda: 1 / 0)
    finder.focusInEvent(QFocusEvent(QEvent.Type.FocusIn))
    assert told == ["division by zero"]
