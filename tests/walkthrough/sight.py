"""What a person can read on the window: every text in sight, as it stands there."""

from __future__ import annotations

import re
from collections.abc import Iterator

from PySide6.QtCore import QAbstractItemModel, Qt
from PySide6.QtGui import QTextDocument
from PySide6.QtWidgets import (
    QAbstractButton,
    QComboBox,
    QGraphicsSimpleTextItem,
    QGraphicsTextItem,
    QGraphicsView,
    QLabel,
    QLineEdit,
    QTabBar,
    QTableView,
    QTextEdit,
    QWidget,
)

from app.widgets.helptext import HelpText

_MNEMONIC = re.compile(r"&(?=[^\s&])")


def plain(text: str) -> str:
    """Return a text as it is read: without the marks of Alt keys, with single spaces."""
    return " ".join(_MNEMONIC.sub("", text).split())


def texts_in_sight(window: QWidget) -> set[str]:
    """Return every text in sight on a window but that of the help, which tells of all others."""
    found = {window.windowTitle()}
    for widget in window.findChildren(QWidget):
        if widget.isVisible() and not isinstance(widget, HelpText):
            found.update(_texts(widget))
    return {plain(text) for text in found if text.strip()}


def _texts(widget: QWidget) -> Iterator[str]:
    if isinstance(widget, QLabel):
        yield _unmarked(widget.text())
    elif isinstance(widget, QAbstractButton):
        yield widget.text()
    elif isinstance(widget, QComboBox):
        yield widget.currentText()
    elif isinstance(widget, QLineEdit):
        yield widget.text() or widget.placeholderText()
    elif isinstance(widget, QTabBar):
        yield from (widget.tabText(place) for place in range(widget.count()))
    elif isinstance(widget, QTextEdit):
        yield widget.toPlainText()
    elif isinstance(widget, QTableView):
        yield from _cells(widget.model())
    elif isinstance(widget, QGraphicsView):
        for item in widget.scene().items():
            if isinstance(item, QGraphicsSimpleTextItem) and item.isVisible():
                yield item.text()
            elif isinstance(item, QGraphicsTextItem) and item.isVisible():
                yield item.toPlainText()


def _unmarked(text: str) -> str:
    """Return the words of a label that may be written in HTML."""
    if "</" not in text:
        return text
    document = QTextDocument()
    document.setHtml(text)
    return document.toPlainText()


def _cells(model: QAbstractItemModel) -> Iterator[str]:
    columns = range(model.columnCount())
    for column in columns:
        yield str(model.headerData(column, Qt.Orientation.Horizontal) or "")
    for row in range(model.rowCount()):
        for column in columns:
            yield str(model.index(row, column).data() or "")
