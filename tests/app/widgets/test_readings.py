"""Readings typed with a caliper in one hand, mended in the table, pasted from a spreadsheet; read as a person reads."""

import json

import pytest
from PySide6.QtCore import QLocale, QPoint, Qt
from PySide6.QtGui import QContextMenuEvent, QGuiApplication
from PySide6.QtWidgets import QApplication, QCheckBox, QFrame, QLabel, QLineEdit, QPushButton, QVBoxLayout, QWidget

from app.widgets.reading_entry import ReadingEntry
from app.widgets.reading_rows import lists_of, rows_from
from app.widgets.readings import Column, Expected, ReadingsModel
from app.widgets.readings_table import ReadingsTable
from app.widgets.undoing import Undoing

COLUMNS = (
    Column("feature", "Gauge"),
    Column("kind", "Kind", "choice", choices=(("outside", "outside"), ("closed_hole", "window"), ("travel", "travel"))),
    Column("nominal_mm", "Nominal\nmm", "length"),
    Column("measured_mm", "Reading\nmm", "length"),
    Column("error", "Error\nmm", "shown", editable=False),
)
GAUGE, KIND, NOMINAL, READING, ERROR = range(5)
NOT_A_BURST_MS = 60
PLAN = (("tooth 1", 10.0), ("tooth 4", 10.0), ("outer 1-4", 130.0), ("outer 1-2", 50.0))


@pytest.fixture(params=["C", "de_DE"])
def mark(request):
    before = QLocale()
    QLocale.setDefault(QLocale(request.param))
    yield QLocale().decimalPoint()
    QLocale.setDefault(before)


class Desk:
    """The entry above the table, as on a page of the smallest window."""

    def __init__(self, qtbot, columns=COLUMNS, rows=None):
        self.bot = qtbot
        self.model = ReadingsModel(columns)
        plan = [{"feature": name, "axis": "x", "kind": "outside", "nominal_mm": mm} for name, mm in PLAN]
        self.model.set_rows(plan if rows is None else rows)
        self.host = QWidget()
        self.model.setParent(self.host)
        self.table = ReadingsTable(self.model)
        self.entry = ReadingEntry(self.table)
        column = QVBoxLayout(self.host)
        column.addWidget(self.entry)
        column.addWidget(self.table)
        self.host.resize(385, 640)
        qtbot.addWidget(self.host)
        self.host.show()
        qtbot.waitExposed(self.host)
        self.host.activateWindow()
        self.entry.setFocus()
        self.line = self.entry.findChild(QLineEdit)
        qtbot.waitUntil(self.line.hasFocus)
        self.undoing = Undoing(self.host)
        self.undoing.watch()
        self.edits = []
        self.model.edited.connect(self._count)

    def _count(self):
        self.edits.append(1)

    def type(self, text, then=Qt.Key.Key_Return):
        """Type like a person: never as fast as a gauge."""
        self.bot.wait(NOT_A_BURST_MS)
        self.bot.keyClicks(self.line, text)
        self.bot.wait(NOT_A_BURST_MS)
        self.bot.keyClick(self.line, then)

    def gauge(self, text):
        """Send like a gauge with keyboard output."""
        self.bot.keyClicks(self.line, text)

    def column(self, column=READING):
        return [self.model.index(row, column).data() or "" for row in range(self.model.rowCount())]

    def cell(self, row, column=READING, role=Qt.ItemDataRole.DisplayRole):
        return self.model.index(row, column).data(role)

    def tip(self, row, column=READING):
        return self.cell(row, column, Qt.ItemDataRole.ToolTipRole)

    def says(self):
        return [label.text() for label in self.entry.findChildren(QLabel) if label.isVisible() and label.text()]

    def answers(self):
        return [button.text() for button in self.entry.findChildren(QPushButton) if button.isVisible()]

    def edit_cell(self, row, column, text, then=Qt.Key.Key_Return):
        self.table.setCurrentIndex(self.model.index(row, column))
        self.table.setFocus()
        self.bot.keyClick(self.table, Qt.Key.Key_F2)
        self.bot.waitUntil(lambda: self.editor() is not None)
        editor = self.editor()
        editor.selectAll()
        self.bot.keyClicks(editor, text)
        self.bot.keyClick(editor, then)
        self.bot.waitUntil(lambda: self.editor() is None)

    def editor(self):
        lines = self.table.viewport().findChildren(QLineEdit, options=Qt.FindChildOption.FindDirectChildrenOnly)
        return next((line for line in lines if line.isVisible()), None)

    def reason_line(self):
        bar = self.table.findChild(QFrame, "popover")
        return bar.findChild(QLineEdit) if bar.isVisible() else None


@pytest.fixture
def desk(qtbot):
    return Desk(qtbot)


# Typing into the big line

def test_enter_keeps_the_reading_and_goes_to_the_next(desk, mark):
    desk.type("10.06")
    desk.type("10,05")
    assert [text.replace(mark, ".") for text in desk.column()] == ["10.06", "10.05", "", ""]
    assert desk.entry.current_row() == desk.table.current_row() == 2
    assert desk.line.text() == ""
    assert desk.says()[0] == "3 of 4: outer 1-4, nominal 130 mm"
    assert desk.model.rows()[1]["raw"] == "10,05"
    assert len(desk.edits) == 2


@pytest.mark.parametrize(
    ("typed", "mm", "unit", "left"),
    [
        ("10.10", 10.1, "mm", "10.10"),
        ("+10.06", 10.06, "mm", "10.06"),
        ("  10,06 mm ", 10.06, "mm", "10.06"),
        ("+ 10.06mm", 10.06, "mm", "10.06"),
        ("10..06", 10.06, "mm", "10.06"),
        ("0.394in", 10.0076, "in", "10.008"),
        ('0,394"', 10.0076, "in", "10.008"),
        ("25/64in", 9.921875, "in", "9.922"),
    ],
)
def test_what_hands_and_gauges_send_is_understood_and_kept_as_sent(desk, mark, typed, mm, unit, left):
    desk.type(typed)
    row = desk.model.rows()[0]
    assert row["measured_mm"] == pytest.approx(mm, abs=1e-12)
    assert (row["unit"], row["raw"]) == (unit, typed.strip())
    assert desk.cell(0) == left.replace(".", mark)
    assert ("typed as" in desk.tip(0)) == (unit == "in")


@pytest.mark.parametrize("typed", ["1,234.5", "abc", "25/64", "10.06ft"])
def test_a_refused_text_stays_visible_as_typed_and_nothing_moves_on(desk, typed):
    desk.type(typed)
    assert desk.line.text() == typed
    assert desk.cell(0) == f"✗ {typed}"
    assert any(f"“{typed}”" in sentence for sentence in desk.says())
    assert f"“{typed}”" in desk.tip(0)
    assert f"“{typed}”" in desk.line.accessibleDescription()
    assert desk.entry.current_row() == 0
    assert desk.model.problems()[0][:2] == (0, "measured_mm")
    desk.bot.keyClick(desk.line, Qt.Key.Key_Return)
    assert desk.entry.current_row() == 0
    desk.type("10.06")
    assert desk.cell(0) == "10.06"
    assert desk.model.problems() == []


def test_minus_alone_goes_back_star_skips_arrows_do_the_same(desk):
    desk.type("10.06")
    desk.bot.keyClicks(desk.line, "-")
    desk.bot.waitUntil(lambda: desk.entry.current_row() == 0)
    assert desk.line.text() == "10.06"
    assert desk.line.selectedText() == "10.06"
    desk.bot.keyClicks(desk.line, "*")
    assert desk.entry.current_row() == 1
    desk.bot.keyClicks(desk.line, "*")
    assert (desk.entry.current_row(), desk.line.text()) == (2, "")
    desk.bot.keyClick(desk.line, Qt.Key.Key_Up)
    assert desk.entry.current_row() == 1
    desk.bot.keyClick(desk.line, Qt.Key.Key_Down)
    assert desk.entry.current_row() == 2
    desk.type("-")
    assert desk.entry.current_row() == 1
    assert desk.column() == ["10.06", "", "", ""]


def test_escape_brings_back_what_stood_there(desk):
    desk.type("10.06")
    desk.bot.keyClick(desk.line, Qt.Key.Key_Up)
    desk.bot.keyClicks(desk.line, "9")
    desk.bot.keyClick(desk.line, Qt.Key.Key_Escape)
    assert (desk.line.text(), desk.line.selectedText(), desk.column()[0]) == ("10.06", "10.06", "10.06")
    desk.bot.keyClick(desk.line, Qt.Key.Key_Escape)
    assert desk.line.text() == "10.06" and desk.entry.current_row() == 0


def test_alt_with_a_letter_that_leads_nowhere_types_nothing(desk):
    desk.bot.keyClick(desk.line, Qt.Key.Key_J, Qt.KeyboardModifier.AltModifier)
    assert desk.line.text() == "" and not desk.line.isModified()


def test_the_keys_named_are_those_that_work_where_readings_may_be_negative(desk):
    def named():
        return {label.text().replace("\N{NO-BREAK SPACE}", " ") for label in desk.entry.findChildren(QLabel)}

    assert any("− back" in text for text in named())
    desk.model.set_rows([{"kind": "travel", "nominal_mm": 20.0}, {"kind": "travel", "nominal_mm": -20.0}])
    assert any("↑ back" in text and "+ Enter again" in text for text in named())
    desk.type("20.02")
    desk.bot.keyClick(desk.line, Qt.Key.Key_Up)
    assert desk.entry.current_row() == 0
    desk.type("+")
    assert desk.entry.current_row() == 1 and desk.model.rowCount() == 3


def test_a_minus_before_digits_is_a_sign_and_a_slash_in_a_text_is_a_fraction(desk):
    desk.model.set_rows([{"kind": "travel", "nominal_mm": -20.0}])
    desk.bot.keyClicks(desk.line, "-")
    desk.bot.wait(400)
    desk.bot.keyClicks(desk.line, "20.02")
    desk.bot.keyClick(desk.line, Qt.Key.Key_Return)
    assert desk.model.rows()[0]["measured_mm"] == -20.02
    assert desk.cell(0) == "−20.02"


def test_a_correction_replaces_the_reading_and_goes_on_to_the_first_gap(desk):
    desk.type("10.06")
    desk.type("10.05")
    desk.bot.keyClick(desk.line, Qt.Key.Key_Up)
    desk.bot.keyClick(desk.line, Qt.Key.Key_Up)
    desk.type("10.16")
    assert desk.column() == ["10.16", "10.05", "", ""]
    assert desk.entry.current_row() == 2


def test_plus_alone_reads_the_same_feature_again_in_a_further_row(desk):
    desk.type("10.06")
    desk.bot.keyClick(desk.line, Qt.Key.Key_Up)
    desk.bot.keyClicks(desk.line, "+")
    desk.bot.waitUntil(lambda: desk.entry.current_row() == 1)
    assert desk.column(GAUGE)[:3] == ["tooth 1", "tooth 1", "tooth 4"]
    desk.type("10.07")
    assert desk.column()[:3] == ["10.06", "10.07", ""]


def test_a_text_not_finished_stays_with_its_row_when_the_table_is_clicked(desk):
    desk.bot.keyClicks(desk.line, "10.0")
    where = desk.table.visualRect(desk.model.index(3, READING)).center()
    desk.bot.mouseClick(desk.table.viewport(), Qt.MouseButton.LeftButton, pos=QPoint(where))
    assert desk.column() == ["10.0", "", "", ""]
    assert desk.entry.current_row() == 3


def test_all_in_is_said_and_enter_on_nothing_moves_on(desk):
    desk.bot.keyClick(desk.line, Qt.Key.Key_Return)
    assert desk.entry.current_row() == 1
    desk.bot.keyClick(desk.line, Qt.Key.Key_Up)
    for text in ("10.06", "10.05", "129.75", "49.96"):
        desk.type(text)
    assert "Kept outer 1-2: 49.96 mm. All 4 readings are in." in desk.says()


def test_a_single_reading_is_not_called_several(qtbot):
    desk = Desk(qtbot, rows=[{"feature": "outer 1-4", "axis": "x", "kind": "outside", "nominal_mm": 10.0}])
    desk.type("10.06")
    assert "Kept outer 1-4: 10.06 mm" in desk.says()


# Gauges with keyboard output

def test_a_gauge_that_sends_twice_is_taken_once(desk):
    desk.gauge("10.06\r")
    desk.gauge("10.06\r")
    assert desk.column() == ["10.06", "", "", ""]
    assert "10.06 came twice at once and was taken once." in desk.says()
    desk.bot.wait(320)
    desk.gauge("10.06\r")
    assert desk.column() == ["10.06", "10.06", "", ""]


def test_a_second_line_end_of_a_gauge_skips_nothing_and_tab_ends_a_reading_too(desk):
    desk.gauge("+10.06\r\r")
    assert desk.entry.current_row() == 1
    desk.bot.wait(NOT_A_BURST_MS)
    desk.gauge("+10.05 mm\t")
    assert desk.line.hasFocus()
    assert desk.column() == ["10.06", "10.05", "", ""]


def test_a_person_may_type_the_same_reading_twice(desk):
    for _ in range(2):
        for key in "10.06\r":
            desk.bot.wait(NOT_A_BURST_MS)
            desk.bot.keyClicks(desk.line, key)
    assert desk.column() == ["10.06", "10.06", "", ""]


def test_an_idle_tab_leaves_the_line(desk):
    desk.bot.keyClick(desk.line, Qt.Key.Key_Tab)
    assert not desk.line.hasFocus()


# Questions

def test_a_doubtful_reading_is_questioned_and_enter_again_keeps_it(desk, mark):
    desk.model.set_rows([{"feature": "boss", "nominal_mm": 31.0}, {"nominal_mm": 10.0}])
    desk.type("13")
    assert desk.entry.current_row() == 0
    assert "13 mm for 31 mm? With two digits swapped it would be 31 mm." in desk.says()
    assert desk.answers() == ["Keep 13  (Enter)", "31 mm  (Alt+1)"]
    assert desk.cell(0) == "? 13"
    assert desk.model.rows()[0]["questioned"] is True
    desk.bot.wait(NOT_A_BURST_MS)
    desk.bot.keyClick(desk.line, Qt.Key.Key_Return)
    assert desk.cell(0) == "13"
    assert desk.entry.current_row() == 1
    assert desk.answers() == []
    assert [desk.model.rows()[0][key] for key in ("measured_mm", "confirmed", "questioned")] == [13, True, False]


def test_the_meant_value_is_taken_by_its_letter_and_the_typed_text_is_kept(desk, mark):
    desk.type("10")
    desk.type("1.006")
    assert "With the decimal mark moved it would be 10.06 mm.".replace(".0", f"{mark}0") in desk.says()[1]
    assert desk.answers()[1].replace(mark, ".") == "10.06 mm  (Alt+1)"
    desk.bot.keyClick(desk.line, Qt.Key.Key_1, Qt.KeyboardModifier.AltModifier)
    desk.bot.waitUntil(lambda: desk.cell(1).replace(mark, ".") == "10.06")
    assert [desk.model.rows()[1][key] for key in ("measured_mm", "raw", "confirmed")] == [10.06, "1.006", True]
    assert "typed as 1.006" in desk.tip(1)
    assert (desk.entry.current_row(), desk.line.hasFocus()) == (2, True)
    desk.undoing.undo()
    assert desk.cell(1).replace(mark, ".") == "? 1.006"


def test_an_answer_can_be_clicked_and_a_new_reading_is_an_answer_too(desk):
    desk.type("0.394")
    inch = next(button for button in desk.entry.findChildren(QPushButton) if "10.0076" in button.text())
    desk.bot.mouseClick(inch, Qt.MouseButton.LeftButton)
    assert desk.cell(0) == "10.0076"
    desk.type("75")
    assert desk.answers() == ["Keep 75  (Enter)"]
    desk.type("10.05")
    assert desk.column()[:2] == ["10.0076", "10.05"]


def test_a_question_waits_in_the_table_until_it_is_answered(desk):
    desk.edit_cell(0, READING, "1006")
    assert desk.cell(0) == "? 1006"
    assert "decimal mark" in desk.tip(0)
    assert desk.entry.current_row() == 1
    desk.entry.go_to(0)
    assert desk.answers()[0] == "Keep 1006  (Enter)"
    drafted = json.loads(json.dumps(desk.model.rows()))
    desk.model.set_rows(drafted)
    assert desk.cell(0) == "? 1006"
    desk.model.answer(0)
    desk.model.set_rows(desk.model.rows())
    assert desk.cell(0) == "1006"


def test_an_expected_value_sharpens_the_question_and_frees_a_travel(desk):
    desk.model.set_expected({0: Expected(10.06, 0.02, "10.06 ± 0.05 mm")})
    desk.type("10.60")
    assert "10.6 mm for 10.06 mm? With two digits swapped it would be 10.06 mm." in desk.says()
    desk.model.set_rows([{"kind": "travel", "nominal_mm": 20.0}])
    desk.type("25.1")
    assert desk.cell(0) == "25.1"


def test_what_is_expected_is_hidden_until_the_reading_is_in(desk):
    desk.model.set_expected({row: Expected(mm, 0.1, f"about {mm} mm") for row, (_, mm) in enumerate(PLAN)})
    assert not any("about" in text for text in desk.says())
    desk.type("10.06")
    assert "Kept tooth 1: 10.06 mm, expected about 10.0 mm" in desk.says()
    desk.entry.go_to(2)
    desk.bot.mouseClick(desk.entry.findChild(QCheckBox), Qt.MouseButton.LeftButton, pos=QPoint(8, 8))
    desk.entry.go_to(3)
    assert "Expected about 50.0 mm" in desk.says()
    desk.entry.findChild(QCheckBox).setChecked(False)
    assert not any("about" in text for text in desk.says())
    desk.entry.go_to(0)
    desk.entry.go_to(1)
    desk.entry.go_to(0)
    assert "Expected about 10.0 mm" in desk.says()


# Leaving out, marks, errors

def test_slash_asks_for_a_reason_in_place_and_a_number_gives_it(desk):
    desk.type("10.06")
    desk.bot.keyClick(desk.line, Qt.Key.Key_Up)
    desk.bot.keyClicks(desk.line, "/")
    desk.bot.waitUntil(lambda: desk.reason_line() is not None and desk.reason_line().hasFocus())
    assert QApplication.activeModalWidget() is None
    desk.bot.keyClick(desk.reason_line(), Qt.Key.Key_Return)
    assert not desk.model.rows()[0]["excluded"]
    desk.bot.keyClicks(desk.reason_line(), "2")
    desk.bot.keyClick(desk.reason_line(), Qt.Key.Key_Return)
    assert (desk.model.rows()[0]["excluded"], desk.model.rows()[0]["reason"]) == (True, "chip or string")
    assert desk.cell(0, role=Qt.ItemDataRole.FontRole).strikeOut()
    assert desk.tip(0, GAUGE) == "Excluded: chip or string"
    assert desk.line.hasFocus()
    assert "Excluded: chip or string" in desk.says()
    desk.bot.keyClicks(desk.line, "/")
    assert not desk.model.rows()[0]["excluded"]
    assert not desk.cell(0, role=Qt.ItemDataRole.FontRole).strikeOut()


def test_excluding_in_the_table_takes_words_of_ones_own_and_escape_leaves(desk):
    desk.type("10.06")
    desk.table.setCurrentIndex(desk.model.index(0, READING))
    desk.table.setFocus()
    desk.bot.keyClick(desk.table, Qt.Key.Key_E, Qt.KeyboardModifier.ControlModifier)
    desk.bot.waitUntil(lambda: desk.reason_line() is not None and desk.reason_line().hasFocus())
    desk.bot.keyClick(desk.reason_line(), Qt.Key.Key_Escape)
    assert desk.reason_line() is None
    assert desk.table.hasFocus()
    desk.bot.keyClick(desk.table, Qt.Key.Key_E, Qt.KeyboardModifier.ControlModifier)
    desk.bot.keyClicks(desk.reason_line(), "1st layer flared")
    desk.bot.keyClick(desk.reason_line(), Qt.Key.Key_Return)
    assert desk.model.rows()[0]["reason"] == "1st layer flared"
    desk.undoing.undo()
    assert not desk.model.rows()[0]["excluded"]


def test_a_common_reason_can_be_clicked(desk):
    desk.table.ask_reason(1)
    slipped = next(button for button in desk.table.findChildren(QPushButton) if button.accessibleName() == "slipped")
    desk.bot.mouseClick(slipped, Qt.MouseButton.LeftButton)
    assert desk.model.rows()[1]["reason"] == "slipped"


def test_a_flagged_reading_has_a_sign_and_its_reason_and_stays_in(desk):
    desk.type("10.06")
    desk.model.set_marks({0: "0.08 mm off the line of the others"})
    assert desk.cell(0) == "⚑ 10.06"
    assert desk.tip(0) == "0.08 mm off the line of the others"
    assert not desk.model.rows()[0]["excluded"]
    desk.model.set_marks({})
    assert desk.cell(0) == "10.06"


def test_the_page_fills_the_error_column_and_it_cannot_be_typed_into(desk):
    desk.model.set_error_text({0: "+0.06 mm"})
    assert desk.cell(0, ERROR) == "+0.06 mm"
    desk.model.set_error_text(lambda row: f"{row['nominal_mm']:.0f}!")
    assert desk.column(ERROR) == ["10!", "10!", "130!", "50!"]
    assert not desk.model.flags(desk.model.index(0, ERROR)) & Qt.ItemFlag.ItemIsEditable


def test_a_problem_of_the_page_is_marked_at_its_cell_until_it_is_edited(desk):
    desk.type("10.06")
    assert desk.model.show_problem(0, "measured_mm", "Row 1: a reading of this kind must differ.")
    assert desk.cell(0) == "✗ 10.06"
    assert "must differ" in desk.tip(0)
    assert not desk.model.show_problem(None, "measured_mm", "…")
    assert not desk.model.show_problem(9, "measured_mm", "…")
    assert not desk.model.show_problem(0, "tolerance", "…")
    desk.edit_cell(0, READING, "10.07")
    assert desk.cell(0) == "10.07"
    desk.model.show_problem(1, "nominal_mm", "Too long.")
    desk.model.clear_problems()
    assert desk.cell(1, NOMINAL) == "10"


# The table

def test_f2_edits_and_enter_goes_to_the_next_empty_reading(desk, mark):
    desk.edit_cell(1, READING, "10,05")
    assert desk.cell(1) == f"10{mark}05"
    assert (desk.table.current_row(), desk.table.currentIndex().column()) == (2, READING)
    desk.bot.keyClick(desk.table, Qt.Key.Key_Return)
    assert desk.table.current_row() == 3
    desk.edit_cell(0, GAUGE, "tooth one")
    assert desk.cell(0, GAUGE) == "tooth one"
    assert (desk.table.current_row(), desk.table.currentIndex().column()) == (1, GAUGE)
    assert len(desk.edits) == 2


def test_editing_an_inch_reading_offers_the_text_as_typed_and_the_same_text_is_no_edit(desk):
    desk.edit_cell(0, READING, "0.394in")
    desk.table.setCurrentIndex(desk.model.index(0, READING))
    desk.bot.keyClick(desk.table, Qt.Key.Key_F2)
    desk.bot.waitUntil(lambda: desk.editor() is not None)
    assert desk.editor().text() == "0.394in"
    desk.bot.keyClick(desk.editor(), Qt.Key.Key_Return)
    desk.bot.waitUntil(lambda: desk.editor() is None)
    assert len(desk.edits) == 1


def test_a_choice_is_taken_by_value_or_words_and_others_are_refused_in_words(desk):
    assert desk.model.edit(0, "kind", "Window") == ""
    assert (desk.model.rows()[0]["kind"], desk.cell(0, KIND)) == ("closed_hole", "window")
    assert desk.model.edit(0, "kind", "hexagon") == (
        "“hexagon” is not offered here; choose one of outside, window, travel.")
    assert desk.cell(0, KIND) == "✗ hexagon"
    desk.table.setCurrentIndex(desk.model.index(0, KIND))
    desk.table.edit(desk.model.index(0, KIND))
    assert desk.model.edit(0, "kind", "") == ""


def test_choosing_from_the_list_in_a_cell_commits_at_once(desk):
    index = desk.model.index(1, KIND)
    desk.table.setCurrentIndex(index)
    desk.table.edit(index)
    box = desk.table.indexWidget(index)
    desk.bot.keyClick(box, Qt.Key.Key_Down)
    desk.bot.waitUntil(lambda: desk.cell(1, KIND) == "window")


def test_delete_clears_the_selection_as_one_step(desk):
    desk.type("10.06")
    desk.type("10.05")
    desk.table.setFocus()
    desk.table.setCurrentIndex(desk.model.index(0, READING))
    desk.bot.keyClick(desk.table, Qt.Key.Key_Down, Qt.KeyboardModifier.ShiftModifier)
    desk.edits.clear()
    desk.bot.keyClick(desk.table, Qt.Key.Key_Delete)
    assert desk.column() == ["", "", "", ""]
    desk.bot.keyClick(desk.table, Qt.Key.Key_Z, Qt.KeyboardModifier.ControlModifier)
    assert desk.column() == ["10.06", "10.05", "", ""]
    desk.bot.keyClick(desk.table, Qt.Key.Key_Y, Qt.KeyboardModifier.ControlModifier)
    assert desk.column() == ["", "", "", ""]
    assert len(desk.edits) == 3


def test_undo_from_the_line_takes_back_the_last_reading(desk):
    desk.type("10.06")
    desk.bot.keyClick(desk.line, Qt.Key.Key_Z, Qt.KeyboardModifier.ControlModifier)
    assert desk.column() == ["", "", "", ""]
    desk.bot.keyClick(desk.line, Qt.Key.Key_Y, Qt.KeyboardModifier.ControlModifier)
    assert desk.column() == ["10.06", "", "", ""]
    desk.bot.keyClicks(desk.line, "9")
    desk.bot.keyClick(desk.line, Qt.Key.Key_Z, Qt.KeyboardModifier.ControlModifier)
    assert (desk.line.text(), desk.column()[0]) == ("10.06", "10.06")


def test_an_open_question_is_asked_anew_when_something_else_is_expected(desk):
    desk.model.set_expected({1: Expected(11.0, 0.02, "11.00 ± 0.04 mm")})
    desk.edit_cell(1, READING, "10.05")
    assert desk.model.question(1) is not None
    assert not desk.model.set_expected({1: Expected(11.1, 0.02, "11.10 ± 0.04 mm")})
    assert desk.model.set_expected({1: Expected(10.04, 0.02, "10.04 ± 0.04 mm")})  # and it counts from now on
    assert desk.model.question(1) is None


def test_other_rows_are_no_step(desk):
    desk.type("10.06")
    desk.edits.clear()
    desk.model.set_rows([{"nominal_mm": 20.0, "raw": "12,x"}])
    desk.undoing.forget()
    desk.undoing.undo()
    assert desk.edits == []
    assert desk.column() == ["✗ 12,x"]
    assert desk.says()[0] == "1 of 1: reading 1, nominal 20 mm"
    desk.model.set_rows([])
    assert desk.says()[0] == "No readings are planned yet."
    assert not desk.line.isEnabled()


def test_rows_are_inserted_repeated_and_removed_and_brought_back(desk):
    desk.model.insert_row(0, {"feature": "overall", "nominal_mm": 140.0})
    assert desk.column(GAUGE) == ["overall", "tooth 1", "tooth 4", "outer 1-4", "outer 1-2"]
    desk.table.setFocus()
    desk.table.setCurrentIndex(desk.model.index(4, GAUGE))
    desk.bot.keyClick(desk.table, Qt.Key.Key_R, Qt.KeyboardModifier.ControlModifier)
    assert desk.column(GAUGE)[4:] == ["outer 1-2", "outer 1-2"]
    desk.bot.keyClick(desk.table, Qt.Key.Key_Delete, Qt.KeyboardModifier.ControlModifier)
    assert desk.model.rowCount() == 5
    desk.model.remove_rows(range(5))
    assert desk.entry.current_row() == -1
    desk.undoing.undo()
    assert desk.column(GAUGE)[0] == "overall"
    assert desk.entry.current_row() == 0


# The clipboard

def paste(desk, row, column, text):
    QGuiApplication.clipboard().setText(text)
    desk.table.setFocus()
    desk.table.setCurrentIndex(desk.model.index(row, column))
    with desk.bot.waitSignal(desk.table.refused) as refused:
        desk.bot.keyClick(desk.table, Qt.Key.Key_V, Qt.KeyboardModifier.ControlModifier)
    return refused.args[0]


def test_a_block_is_pasted_with_its_rows_appended_as_one_step(desk, mark):
    refused = paste(desk, 2, NOMINAL, "130\t129,75\r\n50\t49.96\r\n140\t139,70\r\n")
    assert refused == ()
    assert [text.replace(mark, ".") for text in desk.column()] == ["", "", "129.75", "49.96", "139.70"]
    assert desk.column(KIND)[4] == "outside"
    assert desk.model.rows()[4]["axis"] == "x"
    assert len(desk.edits) == 1
    desk.undoing.undo()
    assert desk.column() == ["", "", "", ""]


def test_refused_cells_are_named_by_row_and_column_and_the_good_ones_are_taken(desk):
    refused = paste(desk, 0, KIND, "window\t10\t10.06\t0.06\tmore\noval\tten\t10,05\n\n\t\t1 000,5")
    assert [sentence[:30] for sentence in refused] == [
        "Row 1: “more” lies right of th", "Row 2, Kind: “oval” is not off", "Row 2, Nominal mm: “ten” is no",
        "Row 4, Reading mm: “1 000,5” i"]
    assert desk.column() == ["10.06", "10,05".replace(",", QLocale().decimalPoint()), "", "✗ 1 000,5"]
    assert desk.column(KIND)[:2] == ["window", "✗ oval"]
    assert desk.column(NOMINAL)[1] == "✗ ten"


def test_a_pasted_cell_of_a_column_that_cannot_be_changed_is_refused_unless_it_is_the_same(qtbot):
    model = ReadingsModel((Column("feature", "Gauge", editable=False), Column("measured_mm", "Reading mm", "length")))
    model.set_rows([{"feature": "tooth 1"}, {"feature": "tooth 4"}])
    assert model.paste(0, 0, "tooth 1\t10.06\ntooth 5\t10.05") == ("Row 2, Gauge: this column cannot be changed.",)
    assert [row["measured_mm"] for row in model.rows()] == [10.06, 10.05]


def test_a_column_pasted_into_the_line_fills_the_readings_from_there(desk):
    desk.type("10.06")
    QGuiApplication.clipboard().setText("10,05\n129,75\n")
    desk.bot.keyClick(desk.line, Qt.Key.Key_V, Qt.KeyboardModifier.ControlModifier)
    assert [text.replace(",", ".") for text in desk.column()] == ["10.06", "10.05", "129.75", ""]
    QGuiApplication.clipboard().setText("49.96")
    desk.entry.go_to(3)
    desk.line.setFocus()
    desk.bot.keyClick(desk.line, Qt.Key.Key_V, Qt.KeyboardModifier.ControlModifier)
    desk.bot.wait(NOT_A_BURST_MS)
    desk.bot.keyClick(desk.line, Qt.Key.Key_Return)
    assert desk.model.rows()[3]["measured_mm"] == 49.96


def test_a_copied_block_reads_as_the_table_does_and_pastes_back_unchanged(desk, mark):
    desk.type("10.06")
    before = desk.model.rows()
    desk.table.setFocus()
    desk.table.setCurrentIndex(desk.model.index(0, NOMINAL))
    for key in (Qt.Key.Key_Right, Qt.Key.Key_Down):
        desk.bot.keyClick(desk.table, key, Qt.KeyboardModifier.ShiftModifier)
    desk.bot.keyClick(desk.table, Qt.Key.Key_C, Qt.KeyboardModifier.ControlModifier)
    assert QGuiApplication.clipboard().text() == f"10\t10{mark}06\n10\t"
    assert paste(desk, 0, NOMINAL, QGuiApplication.clipboard().text()) == ()
    assert [row["measured_mm"] for row in desk.model.rows()] == [row["measured_mm"] for row in before]


def test_an_empty_table_takes_a_block_as_its_rows(desk):
    desk.model.set_rows([])
    QGuiApplication.clipboard().setText("tooth 1\toutside\t10\t10.06")
    desk.table.setFocus()
    desk.bot.keyClick(desk.table, Qt.Key.Key_V, Qt.KeyboardModifier.ControlModifier)
    assert (desk.column(GAUGE), desk.column()) == (["tooth 1"], ["10.06"])
    assert desk.entry.current_row() == 0


# For pages

def test_a_locked_table_changes_in_no_way(desk):
    desk.type("10.06")
    desk.model.lock(True)
    assert not desk.model.flags(desk.model.index(0, READING)) & Qt.ItemFlag.ItemIsEditable
    before = desk.model.rows()
    desk.model.edit(0, "measured_mm", "10.07")
    desk.model.set_excluded(0, True, "slipped")
    assert desk.model.paste(0, READING, "x") == ()
    desk.model.clear_cells([(0, "measured_mm")])
    assert desk.model.rows() == before
    desk.model.lock(False)
    desk.type("10.05")
    assert desk.column()[:2] == ["10.06", "10.05"]


def test_another_plan_is_one_step_that_can_be_undone(desk):
    desk.type("10.06")
    desk.model.replan([*desk.model.rows()[:1], {"feature": "window", "nominal_mm": 110.0}])
    assert desk.column(GAUGE) == ["tooth 1", "window"]
    desk.undoing.undo()
    assert desk.column(GAUGE) == [name for name, _ in PLAN]
    desk.table.edit_cell(3, "nominal_mm")
    desk.bot.keyClicks(desk.editor(), "50,5\r")
    desk.bot.waitUntil(lambda: desk.model.rows()[3]["nominal_mm"] == 50.5)


def test_the_context_menu_offers_what_the_keys_do(desk):
    where = desk.table.viewport().rect().center()
    QApplication.postEvent(desk.table.viewport(), QContextMenuEvent(
        QContextMenuEvent.Reason.Mouse, where, desk.table.viewport().mapToGlobal(where)))
    desk.bot.waitUntil(lambda: QApplication.activePopupWidget() is not None)
    menu = QApplication.activePopupWidget()
    assert [action.text() for action in menu.actions()] == [
        "Copy", "Paste", "Clear", "Undo", "Redo", "Exclude or include…", "Read again in a further row", "Remove rows"]
    menu.close()


# The look

def test_nothing_is_cut_at_the_smallest_width(desk):
    header = desk.table.horizontalHeader()
    for column in range(desk.model.columnCount()):
        for line in desk.model.headerData(column, Qt.Orientation.Horizontal).splitlines():
            assert header.fontMetrics().horizontalAdvance(line) < header.sectionSize(column), line
    assert desk.table.fontMetrics().horizontalAdvance("outer 1-4") < header.sectionSize(GAUGE) - 8
    assert desk.table.rowHeight(0) >= 25
    assert not desk.table.horizontalScrollBar().isVisible()
    for label in desk.entry.findChildren(QLabel):
        assert label.height() >= label.heightForWidth(label.width()), label.text()


def test_numbers_stand_right_and_words_left(desk):
    side = {column: desk.cell(0, column, Qt.ItemDataRole.TextAlignmentRole) for column in (GAUGE, READING, ERROR)}
    assert side[GAUGE] & Qt.AlignmentFlag.AlignLeft
    assert side[READING] & Qt.AlignmentFlag.AlignRight
    assert side[ERROR] & Qt.AlignmentFlag.AlignRight
    assert desk.model.headerData(2, Qt.Orientation.Vertical) == "3"


# Numbers that are no lengths

WEIGHING = (
    Column("feature", "Sample"),
    Column("pieces", "Pieces", "number", low=1, high=99),
    Column("measured_mm", "Mass\ng", "number", unit="g", low=0.0, high=5000.0),
)
SAMPLE, PIECES, MASS = range(3)


@pytest.fixture
def scales(qtbot):
    return Desk(qtbot, WEIGHING, [{"feature": "cube 1", "nominal_mm": 12.5}, {"feature": "cube 2"}])


@pytest.mark.parametrize(
    ("typed", "value", "left"),
    [("12.50", 12.5, "12.50"), ("12,50", 12.5, "12.50"), ("+ 3.1 g", 3.1, "3.1"), ("4G", 4.0, "4")],
)
def test_a_number_is_read_with_comma_point_and_unit_and_kept_as_typed(scales, mark, typed, value, left):
    scales.type(typed)
    row = scales.model.rows()[0]
    assert (row["measured_mm"], row["raw"], row["unit"]) == (value, typed, "g")
    assert scales.cell(0, MASS) == left.replace(".", mark)
    assert f"Kept cube 1: {left.replace('.', mark)} g" in scales.says()
    assert scales.entry.current_row() == 1


def test_a_number_is_never_questioned_as_a_length_would_be(scales):
    assert "1 of 2: cube 1, nominal 12.5 g" in scales.says()
    scales.type("1250")
    assert not scales.answers()
    scales.model.set_rows(json.loads(json.dumps(scales.model.rows())))
    assert scales.model.question(0) is None
    scales.model.clear_cells([(0, "measured_mm")])
    assert (scales.model.rows()[0]["measured_mm"], scales.model.rows()[0]["unit"]) == (None, "")


@pytest.mark.parametrize(
    ("typed", "says"),
    [
        ("abc", "“abc” is not a number; type for example 12.5 or 12,5, without thousands separators."),
        ("1,234.5", "“1,234.5” is not a number"),
        ("0.5in", "“0.5in” is not a number"),
        ("-1", "-1 is too small: at least 0."),
        ("5000.1", "5000.1 is too large: at most 5000."),
    ],
)
def test_a_refused_number_stays_as_typed_with_the_reason(scales, typed, says):
    assert says in scales.model.edit(0, "measured_mm", typed)
    assert scales.cell(0, MASS) == f"✗ {typed}"
    assert says in scales.tip(0, MASS)
    assert scales.model.rows()[0]["measured_mm"] is None


def test_a_number_of_a_column_of_its_own_is_kept_with_its_text_in_whatever_row(scales):
    scales.edit_cell(1, PIECES, "3,0")
    lists = lists_of(scales.model.rows())
    assert (lists["pieces"], lists["pieces_raw"]) == ([None, 3.0], [None, "3,0"])
    scales.model.set_rows(rows_from(json.loads(json.dumps(lists))))
    assert scales.cell(1, PIECES) == "3.0"
    scales.model.edit(1, "pieces", "100")
    assert scales.cell(1, PIECES) == "✗ 100"
    scales.model.set_rows([{"pieces": 7.0}])
    assert scales.cell(0, PIECES) == "7"
    assert scales.model.paste(0, PIECES, "x\t1.5") == ("Row 1, Pieces: “x” is not a number; type for example 12.5 or "
                                                     "12,5, without thousands separators.",)
    assert scales.model.rows()[0]["measured_mm"] == 1.5


def test_columns_can_be_exchanged_over_the_same_rows(scales):
    scales.type("12.5")
    scales.model.set_columns((*WEIGHING[:2], Column("measured_mm", "Warmth\n°C", "number", unit="°C")))
    assert scales.cell(0, MASS) == "12.5"
    assert scales.model.headerData(MASS, Qt.Orientation.Horizontal) == "Warmth\n°C"
    scales.entry.go_to(0)
    assert "1 of 2: cube 1, nominal 12.5 °C" in scales.says()


def test_where_nothing_can_be_expected_nothing_is_offered(qtbot, desk):
    for foretells in (True, False):
        entry = ReadingEntry(desk.table, foretells=foretells)
        qtbot.addWidget(entry)
        entry.show()
        qtbot.waitExposed(entry)
        boxes = [box.text().replace("&", "") for box in entry.findChildren(QCheckBox) if box.isVisible()]
        assert boxes == ["show expected"] * foretells


def test_what_is_painted_is_what_the_roles_tell(qtbot):
    desk = Desk(qtbot)
    desk.model.edit(0, "measured_mm", "10.02")
    desk.model.edit(1, "measured_mm", "no number")
    desk.model.edit(2, "measured_mm", "13.0")  # a question
    desk.model.set_excluded(3, True, "dropped")
    desk.model.set_marks({0: "stands out"})
    role = Qt.ItemDataRole
    for row in range(desk.model.rowCount()):
        for column in range(desk.model.columnCount()):
            told = [desk.model.data(desk.model.index(row, column), asked)
                    for asked in (role.DisplayRole, role.TextAlignmentRole, role.FontRole, role.ForegroundRole)]
            assert list(desk.model.look(row, column)) == told
    assert [desk.model.look(row, READING).text[:1] for row in range(3)] == ["⚑", "✗", "?"]
