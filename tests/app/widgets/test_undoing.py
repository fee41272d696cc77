"""What was entered is taken back in the order of the edits, with the keyboard at the place that changed."""

import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QCheckBox, QLineEdit, QPlainTextEdit, QVBoxLayout, QWidget

from app.widgets.fields import ChoiceField, Form, LengthField
from app.widgets.popover import Popover
from app.widgets.reading_entry import ReadingEntry
from app.widgets.readings import Column, ReadingsModel
from app.widgets.readings_table import ReadingsTable
from app.widgets.undoing import Undoing

CONTROL = Qt.KeyboardModifier.ControlModifier
BOTH = CONTROL | Qt.KeyboardModifier.ShiftModifier
COLUMNS = (Column("feature", "Place"), Column("nominal_mm", "Target mm", "length"),
           Column("measured_mm", "Reading mm", "length"))


class Desk:
    """A form, a check box, words, and readings; the choice plans the rows anew."""

    def __init__(self, qtbot):
        self.bot, self.host = qtbot, QWidget()
        self.form = Form()
        self.width = self.form.add("width", "Width", LengthField(high_mm=500.0))
        self.way = self.form.add("way", "Way", ChoiceField([("one", "one"), ("two", "two")]))
        self.box, self.words, self.elsewhere = QCheckBox("Fan on"), QPlainTextEdit(), QLineEdit()
        self.words.setAccessibleName("Start text")
        self.words.setTabChangesFocus(True)
        self.model = ReadingsModel(COLUMNS)
        self.model.setParent(self.host)
        self.model.set_rows(self.rows("one"))
        self.table = ReadingsTable(self.model)
        self.entry = ReadingEntry(self.table)
        column = QVBoxLayout(self.host)
        for widget in (self.form, self.box, self.words, self.entry, self.table, self.elsewhere):
            column.addWidget(widget)
        self.way.changed.connect(self.plan)
        self.undoing, self.said = Undoing(self.host), []
        self.undoing.said.connect(self.said.append)
        self.undoing.watch()
        qtbot.addWidget(self.host)
        self.host.show()
        self.host.activateWindow()
        qtbot.waitUntil(self.host.isActiveWindow)
        self.line = self.entry.findChild(QLineEdit)

    def rows(self, way):
        return [{"feature": f"{way} {place}", "nominal_mm": 10.0 * place} for place in range(1, 4)]

    def plan(self):
        self.model.replan(self.rows(self.way.value()))

    def press(self, key, modifiers=Qt.KeyboardModifier.NoModifier, to=None):
        self.bot.keyClick(to or self.host.focusWidget(), key, modifiers)

    def type(self, field, text):
        field.setFocus()
        field.selectAll()
        self.bot.keyClicks(field, text)
        self.press(Qt.Key.Key_Return, to=field)


@pytest.fixture
def desk(qtbot, by_hand):
    return Desk(qtbot)


def test_steps_go_back_in_the_order_of_the_edits_and_forth_again(desk):
    desk.type(desk.width, "20")
    desk.box.click()
    desk.type(desk.line, "10.02")
    desk.type(desk.width, "30")
    desk.elsewhere.setFocus()
    seen = []
    for _ in range(4):
        desk.press(Qt.Key.Key_Z, CONTROL)
        seen.append((desk.width.text(), desk.box.isChecked(), desk.model.rows()[0]["raw"], desk.host.focusWidget()))
    assert seen == [("20", True, "10.02", desk.width), ("20", True, "", desk.line), ("20", False, "", desk.box),
                    ("", False, "", desk.width)]
    desk.press(Qt.Key.Key_Z, CONTROL)
    assert desk.said[-1] == "There is nothing to undo on this page."
    again, same = (Qt.Key.Key_Z, BOTH), (Qt.Key.Key_Y, CONTROL)
    for key, modifiers in (again, same, same, again):
        desk.press(key, modifiers)
    assert (desk.width.text(), desk.box.isChecked(), desk.model.rows()[0]["raw"]) == ("30", True, "10.02")
    desk.press(Qt.Key.Key_Y, CONTROL)
    assert desk.said[:2] == ["Undone: Width.", "Undone: Reading mm, row 1."]
    assert desk.said[-2:] == ["Done again: Width.", "There is nothing to redo on this page."]


def test_typing_is_undone_before_the_step_and_redone_too(desk):
    desk.type(desk.width, "20")
    desk.width.setFocus()
    desk.width.selectAll()
    desk.bot.keyClicks(desk.width, "7")
    desk.press(Qt.Key.Key_Z, CONTROL)
    assert desk.width.text() == "20"
    desk.press(Qt.Key.Key_Y, CONTROL)
    assert desk.width.text() == "7"
    desk.press(Qt.Key.Key_Z, CONTROL)
    desk.press(Qt.Key.Key_Z, CONTROL)
    assert desk.width.text() == ""
    assert desk.said == ["Undone: Width."]


def test_a_choice_and_the_rows_it_planned_are_one_step(desk):
    desk.type(desk.line, "10.02")
    desk.way.setFocus()
    desk.press(Qt.Key.Key_Down)
    assert [row["feature"] for row in desk.model.rows()] == ["two 1", "two 2", "two 3"]
    desk.press(Qt.Key.Key_Z, CONTROL)
    assert desk.way.value() == "one"
    assert [(row["feature"], row["raw"]) for row in desk.model.rows()][:2] == [("one 1", "10.02"), ("one 2", "")]
    assert desk.way.hasFocus()
    assert desk.said == ["Undone: Way."]


def test_what_cannot_be_read_is_undone_and_comes_back_with_its_sentence(desk):
    desk.type(desk.width, "20")
    desk.type(desk.width, "wide")
    assert desk.width.accessibleDescription()
    desk.press(Qt.Key.Key_Z, CONTROL, to=desk.width)
    assert (desk.width.text(), desk.width.accessibleDescription()) == ("20", "")
    desk.press(Qt.Key.Key_Y, CONTROL, to=desk.width)
    assert desk.width.text() == "wide" and desk.width.accessibleDescription()


def test_a_cell_of_another_column_is_shown_in_the_table(desk):
    desk.model.edit(1, "nominal_mm", "25")
    desk.elsewhere.setFocus()
    desk.press(Qt.Key.Key_Z, CONTROL)
    assert desk.model.rows()[1]["nominal_mm"] == 20.0
    assert desk.table.hasFocus()
    assert (desk.table.currentIndex().row(), desk.table.currentIndex().column()) == (1, 1)


def test_a_table_in_use_keeps_the_keyboard_and_a_row_that_went_comes_back(desk):
    desk.table.setFocus()
    desk.table.go_to(2)
    desk.press(Qt.Key.Key_Delete, CONTROL)
    assert desk.model.rowCount() == 2
    desk.press(Qt.Key.Key_Z, CONTROL)
    assert desk.model.rowCount() == 3
    assert desk.table.hasFocus() and desk.table.currentIndex().row() == 2
    desk.press(Qt.Key.Key_Y, CONTROL)
    assert desk.model.rowCount() == 2


def test_the_menu_of_the_table_undoes_too(desk):
    desk.type(desk.line, "10.02")
    undo, redo = (next(a for a in desk.table.actions() if a.text() == text) for text in ("Undo", "Redo"))
    undo.trigger()
    assert desk.model.rows()[0]["raw"] == ""
    redo.trigger()
    assert desk.model.rows()[0]["raw"] == "10.02"


def test_words_are_a_step_when_they_are_left(desk):
    desk.words.setFocus()
    desk.bot.keyClicks(desk.words, "G28")
    desk.press(Qt.Key.Key_Tab)
    desk.elsewhere.setFocus()
    desk.press(Qt.Key.Key_Z, CONTROL)
    assert desk.words.toPlainText() == ""
    assert desk.said == ["Undone: Start text."]
    desk.press(Qt.Key.Key_Y, CONTROL)
    assert desk.words.toPlainText() == "G28"


def test_what_the_program_fills_in_belongs_to_no_step(desk):
    desk.type(desk.width, "20")
    desk.way.set_value("two")
    desk.width.set_value(25.0)
    desk.elsewhere.setFocus()
    desk.type(desk.line, "10.02")
    desk.press(Qt.Key.Key_Z, CONTROL)
    assert (desk.width.text(), desk.way.value(), desk.model.rows()[0]["raw"]) == ("25", "two", "")


def test_a_new_edit_ends_what_could_be_done_again(desk):
    desk.type(desk.width, "20")
    desk.press(Qt.Key.Key_Z, CONTROL)
    desk.type(desk.width, "30")
    desk.undoing.redo()
    assert desk.said[-1] == "There is nothing to redo on this page."
    assert desk.width.text() == "30"


def test_a_field_that_is_gone_is_passed_over(qtbot, desk):
    desk.type(desk.width, "20")
    desk.box.click()
    desk.box.deleteLater()
    desk.box = None
    qtbot.wait(1)
    desk.undoing.undo()
    desk.undoing.undo()
    assert desk.width.text() == ""


def test_a_form_that_pops_up_has_its_own_steps(qtbot, desk):
    form = Form()
    name = form.add("width", "Width", LengthField())
    popover = Popover("New machine", form, "", desk.host)
    popover.open_below(desk.elsewhere)
    qtbot.waitUntil(popover.isVisible)
    name.setText("12")
    name.finish()
    qtbot.keyClick(popover.save, Qt.Key.Key_Z, CONTROL)
    assert name.text() == ""
    assert desk.said == []
    popover.hide()
