"""The form of a trial by keyboard: Tab and Enter go down it, from the settings to the readings."""

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QPushButton

from app.widgets.fields import NumberField
from app.widgets.reading_columns import Column
from app.widgets.trialform import TrialForm
from app.widgets.trialpicker import TrialPicker


@pytest.fixture
def form(qtbot):
    picker = TrialPicker()
    form = TrialForm((Column("measured_mm", "Reading mm", "length"),), picker)
    form.foot.addWidget(QPushButton("Add"))
    for key in ("first", "second"):
        form.add_setting(key, key.title(), NumberField())
    form.show_rows([{}])
    qtbot.addWidget(form)
    form.show()
    qtbot.waitExposed(form)
    picker.setFocus()
    return form


def test_tab_goes_from_the_settings_to_the_readings_and_then_to_the_buttons(form):
    met = []
    for _ in range(6):
        QTest.keyClick(QApplication.focusWidget(), Qt.Key.Key_Tab)
        met.append(QApplication.focusWidget())
    places = [met.index(widget) for widget in (form.settings.field("first"), form.settings.field("second"))]
    entry = next(place for place, widget in enumerate(met) if form.entry.isAncestorOf(widget))
    button = next(place for place, widget in enumerate(met) if isinstance(widget, QPushButton))
    assert places == [0, 1] and 1 < entry < button


def test_enter_in_the_last_setting_goes_to_the_next_reading(form):
    form.settings.field("second").setFocus()
    QTest.keyClick(QApplication.focusWidget(), Qt.Key.Key_Return)
    assert form.entry.isAncestorOf(QApplication.focusWidget()) or form.entry.hasFocus()
