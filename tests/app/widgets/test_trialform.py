"""The form of a trial by keyboard: Tab and Enter go down it, from the settings to the readings."""

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QLabel, QPushButton

from app.widgets.fields import ChoiceField, NumberField, TextField
from app.widgets.lengthfields import LengthField
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


def test_the_settings_that_count_are_told_by_label_and_unit(form):
    form.hide()
    way = ChoiceField([("low", "Least of"), ("high", "Most of")])
    form.add_setting("way", "&Read by", way)
    form.add_setting("unit", "&Value in", TextField())
    form.add_setting("size", "Si&ze", LengthField(inch=True), "mm")
    kept = {"first": 215.1, "second": None, "way": "high", "unit": "N", "size": 25.4, "of another version": 3}
    form.show_conditions(kept)
    form.settings.set_unit("first", "&First", "°C")
    told = {
        "first": ("First", "215.1 °C"), "way": ("Read by", "Most of"), "unit": ("Value in", "N"),
        "size": ("Size", "25.4 mm"),
    }  # fmt: skip
    assert form.told_settings(kept) == told
    form.settings.show_field("unit", False)  # does not count
    assert "unit" not in form.told_settings(kept)
    form.show_conditions({**kept, "way": "no longer offered"})
    assert "way" not in form.told_settings({**kept, "way": "no longer offered"})


@pytest.mark.parametrize("stays", [False, True])
def test_a_locked_form_hides_what_only_helps_to_take_readings(qtbot, stays):
    """A sketch of where each reading was taken stays; what to mind, and the keys, do not."""
    aid = QLabel("Caution")
    columns = (Column("measured_mm", "Reading mm", "length"),)
    form = TrialForm(columns, TrialPicker(), above_entry=aid, above_stays=stays)
    form.show_rows([{}])
    qtbot.addWidget(form)
    form.show()
    qtbot.waitExposed(form)

    def keys_in_sight():
        return any("skip" in label.text() for label in form.entry.findChildren(QLabel) if label.isVisible())

    assert aid.isVisible() and keys_in_sight()
    form.lock(True)
    assert aid.isVisible() == stays and not keys_in_sight() and not form.entry.isEnabled()
    form.model.edit(0, "measured_mm", "3")  # as if other readings came: the keys stay hidden
    assert not keys_in_sight()
    form.lock(False)
    assert aid.isVisible() and keys_in_sight() and form.entry.isEnabled()
