"""What the tests of the flow pages share: a shop, typing like a person, an earlier trial."""

from PySide6.QtCore import Qt
from PySide6.QtGui import QGuiApplication
from PySide6.QtTest import QTest

from core.quantity import Estimate
from core.records.rows import Trial
from tests.app.atpage import show_page

CONDITIONS = {
    "nozzle_mm": 0.4,
    "height_mm": 0.2,
    "width_mm": 0.45,
    "bead_model": "obround",
    "temperature_c": 210.0,
    "hot_end_limit_c": 240.0,
    "rate_mm3_s": 4.0,
    "in_force_ratio": 1.0,
}


def open_page(qtbot, context, page_class):
    return show_page(qtbot, page_class(context))


def type_setting(page, key, text):
    """Type over a setting and leave it with Enter."""
    field = page.form.typed[key]
    field.setFocus()
    field.selectAll()
    QTest.keyClicks(field, text)
    QTest.keyClick(field, Qt.Key.Key_Return)


def choose(page, key, value):
    """Choose with the arrow keys."""
    field = page.form.typed[key]
    field.setFocus()
    while field.value() != value:
        before = field.currentIndex()
        QTest.keyClick(field, Qt.Key.Key_Down)
        if field.currentIndex() == before:
            QTest.keyClick(field, Qt.Key.Key_Home)


def type_readings(qtbot, page, texts):
    page.take_focus()
    for text in texts:
        target = QGuiApplication.focusObject()
        QTest.keyClicks(target, text)
        QTest.keyClick(target, Qt.Key.Key_Return)


def put_readings(page, texts):
    for row, text in enumerate(texts):
        page.form.model.edit(row, "measured_mm", text)


def kept_flow(store, context, subject, value, u=0.006, **conditions):
    """Keep an earlier flow trial of the picked machine and lot."""
    estimate = Estimate(f"flow_ratio_{subject}", value, u, 30.0, "1")
    return store.keep(
        Trial(
            subject,
            context.machine.id,
            context.lot.id,
            conditions=CONDITIONS | conditions,
            estimates=(estimate, Estimate("flow_ratio", value, u, 30.0, "1")),
        )
    )
