"""A fault while one page goes is told, and does the page that comes no harm."""

import ast
import sys
from pathlib import Path

import pytest
from PySide6.QtCore import QEvent, QSize
from PySide6.QtGui import QFocusEvent
from PySide6.QtWidgets import QHBoxLayout, QScrollArea, QStackedWidget, QWidget

from app.context import Context
from app.faults import told_at_once
from app.finder import Finder
from app.pages.base import Page
from core.errors import StoreError

APP = Path(__file__).parents[2] / "app"


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


def test_every_handler_of_events_tells_its_faults_at_once():
    kinds = [kind for path in APP.rglob("*.py") for kind in ast.walk(ast.parse(path.read_text(encoding="utf-8")))
             if isinstance(kind, ast.ClassDef)]  # fmt: skip
    handlers = [
        (kind.name, method.name, [ast.unparse(one) for one in method.decorator_list])
        for kind in kinds
        for method in kind.body
        if isinstance(method, ast.FunctionDef) and method.name.endswith("Event")
    ]
    assert len(handlers) > 50
    assert [(kind, name) for kind, name, marks in handlers if marks != ["told_at_once"]] == []


def test_the_find_box_whose_shop_is_gone_says_so_at_once(qtbot, store, monkeypatch):
    """It reads the shop when it gets the keyboard, as when a page goes and takes the keyboard with it."""
    told = []
    monkeypatch.setattr(sys, "excepthook", lambda kind, error, trace: told.append(str(error)))
    finder = Finder()
    qtbot.addWidget(finder)
    monkeypatch.setattr(finder, "_read", lambda: 1 / 0)
    finder.focusInEvent(QFocusEvent(QEvent.Type.FocusIn))
    assert told == ["division by zero"]
