"""What the tests of the motion pages share: typing like a person, scores by what is planted."""

from PySide6.QtCore import Qt
from PySide6.QtGui import QGuiApplication
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QCheckBox, QLabel, QPushButton

from tests.app.atpage import show_page, verdict


def open_page(qtbot, context, page_class):
    return show_page(qtbot, page_class(context))


def type_setting(page, key, text):
    """Type over a setting and leave it with Enter."""
    field = page.form.settings.field(key)
    field.setFocus()
    field.selectAll()
    QTest.keyClick(field, Qt.Key.Key_Delete)
    QTest.keyClicks(field, text)
    QTest.keyClick(field, Qt.Key.Key_Return)


def type_readings(qtbot, page, texts):
    page.take_focus()
    for text, following in zip(texts, [*texts[1:], ""], strict=True):
        target = QGuiApplication.focusObject()
        QTest.keyClicks(target, text)
        qtbot.wait(60)
        QTest.keyClick(target, Qt.Key.Key_Return)
        qtbot.wait(320 if text == following else 1)  # equal readings this far apart are two readings


def rows_of(page):
    """Places and rows of the trial that is chosen."""
    return [(place, row) for place, row in enumerate(page.form.model.rows()) if row["axis"] == page.form.group]


def in_sight(page):
    """All words in sight beside form and table: of picture, card and form's labels and boxes."""
    kinds = (QLabel, QCheckBox, QPushButton)
    texts = [w.text() for kind in kinds for w in page.findChildren(kind) if w.isVisible()]
    return "\n".join([*texts, verdict(page), page.plot.accessibleDescription()])


def press(button):
    button.setFocus()
    QTest.keyClick(button, Qt.Key.Key_Space)


def hidden(page):
    return {column.key for place, column in enumerate(page.form.model.columns) if page.form.table.isColumnHidden(place)}
