"""What a person does on a page, and reads of it."""

from PySide6.QtCore import Qt
from PySide6.QtGui import QGuiApplication
from PySide6.QtTest import QTest


def show_page(qtbot, page):
    """Show a page as large as it is in the usual window."""
    qtbot.addWidget(page)
    page.resize(1080, 720)
    page.show()
    qtbot.waitExposed(page)
    return page


def type_readings(qtbot, texts):
    """Type like a person: into whatever has the focus, Enter after each."""
    for text in texts:
        target = QGuiApplication.focusObject()
        QTest.keyClicks(target, text)
        QTest.keyClick(target, Qt.Key.Key_Return)
        qtbot.wait(1)


def type_number(field, text):
    """Type over what stands in a field."""
    field.setFocus()
    field.selectAll()
    QTest.keyClicks(field, text)
    QTest.keyClick(field, Qt.Key.Key_Return)


def choose(field, value):
    """Choose with the arrow keys, as a person does."""
    field.setFocus()
    for key in (Qt.Key.Key_Down, Qt.Key.Key_Up):
        for _ in range(field.count()):
            if field.value() == value:
                return
            QTest.keyClick(field, key)
    raise AssertionError(value)


def verdict(page):
    """Return the words of the card."""
    return page.card.body.toPlainText()
