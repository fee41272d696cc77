"""A fault while one page goes is told, and does the page that comes no harm."""

import sys

import pytest
from PySide6.QtCore import QSize
from PySide6.QtWidgets import QHBoxLayout, QScrollArea, QStackedWidget, QWidget

from app.context import Context
from app.faults import told_at_once
from app.pages.base import Page
from core.errors import StoreError


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
