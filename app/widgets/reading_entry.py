"""The place where readings are typed with a caliper in the other hand: one big line, short keys, a question at most."""

from __future__ import annotations

from PySide6.QtCore import QModelIndex, Qt, Signal
from PySide6.QtWidgets import QCheckBox, QHBoxLayout, QLabel, QVBoxLayout, QWidget

from app.widgets.answerrow import AnswerRow
from app.widgets.entryline import EntryLine
from app.widgets.gaugeburst import Bursts
from app.widgets.reading_words import ReadingWords
from app.widgets.readings import READING
from app.widgets.readings_table import ReadingsTable
from app.widgets.unbroken import UnbrokenLabel


class ReadingEntry(QWidget):
    """Types into the reading of the table's current row. What is expected stays hidden until the reading is in.

    Without `foretells` nothing can ever be expected here, and the switch for it is not offered.
    """

    row_changed = Signal(int)  # -1 where the table has no rows

    def __init__(self, table: ReadingsTable, parent: QWidget | None = None, *, foretells: bool = True) -> None:
        super().__init__(parent)
        self._table, self._model = table, table.readings()
        self._row = -1
        self._echo, self._locked = "", False
        self._bursts = Bursts()
        self._where, self._says, self._keys = UnbrokenLabel(), QLabel(), QLabel()
        self._line = EntryLine()
        self._show_expected = QCheckBox(self.tr("show e&xpected"))
        self._words, self._answers = ReadingWords(self._model), AnswerRow()
        self._lay_out()
        if not foretells:
            self._show_expected.hide()
        self._wire()
        self._start()

    def current_row(self) -> int:
        """Return the row whose reading is being typed, -1 where there is none."""
        return self._row

    def lock(self, locked: bool) -> None:
        """Show the readings only: nothing can be typed, and no key does anything."""
        self._locked = locked
        self.setEnabled(not locked)
        self._refresh()

    def go_to(self, row: int) -> None:
        """Take the reading of another row next."""
        self._table.go_to(row)

    def _lay_out(self) -> None:
        self._where.setWordWrap(True)
        self._says.setWordWrap(True)
        self._says.setTextFormat(Qt.TextFormat.PlainText)
        self._says.setMinimumHeight(self._says.fontMetrics().height())
        self._keys.setObjectName("quiet")
        self._name_keys(signs_wait=False)
        self._keys.setWordWrap(True)
        head = QHBoxLayout()
        head.addWidget(self._where, 1)
        head.addWidget(self._show_expected)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(6)
        column.addLayout(head)
        for widget in (self._line, self._says, self._answers, self._keys):
            column.addWidget(widget)
        self.setFocusProxy(self._line)

    def _wire(self) -> None:
        self._line.finished.connect(self._take)
        self._line.left.connect(self._leave)
        self._line.went_back.connect(self._go_back)
        self._line.skipped.connect(self._skip)
        self._line.flagged.connect(self._flag)
        self._line.repeated.connect(self._repeat)
        self._line.block_pasted.connect(self._paste)
        self._line.dropped.connect(self._drop)
        self._show_expected.toggled.connect(self._model.foretell)
        self._show_expected.toggled.connect(self._refresh)
        self._answers.answered.connect(self._answer)
        self._table.selectionModel().currentRowChanged.connect(self._follow)
        self._model.modelReset.connect(self._start)
        self._model.restored.connect(self._show_restored)
        self._model.rowsInserted.connect(self._rows_came)
        self._model.rowsRemoved.connect(self._rows_went)
        self._model.dataChanged.connect(self._refresh)

    def _start(self) -> None:
        """Begin at the first reading that is missing."""
        self._row = -1
        self._line.setModified(False)
        if self._model.rowCount():
            first = self._model.next_empty(self._model.rowCount() - 1)
            self._table.go_to(0 if first is None else first)
        self._load(self._table.current_row())

    def _follow(self, current: QModelIndex) -> None:
        """Go with the table; a text not finished yet belongs to the row where it was typed."""
        if current.row() == self._row:
            return
        self._leave()
        self._load(current.row())

    def _show_restored(self, row: int, column: int) -> None:
        """Go where a step was undone: to the reading's line, or to the cell of another column and of a used table."""
        if row < 0:
            return
        self._echo = ""
        if self._model.columns[column].key == READING and not self._table.hasFocus():
            self._table.go_to(row)
            self._line.setFocus(Qt.FocusReason.OtherFocusReason)
            self._line.selectAll()
        else:
            self._table.setCurrentIndex(self._model.index(row, column))
            self._table.setFocus(Qt.FocusReason.OtherFocusReason)

    def _leave(self) -> None:
        """Keep a text that was left unfinished, where it was typed."""
        text, row = self._line.text().strip(), self._row
        if self._line.isModified() and text and self._model.settled and 0 <= row < self._model.rowCount():
            self._line.setModified(False)
            self._model.edit(row, READING, text)

    def _load(self, row: int) -> None:
        self._row, self._echo = row, ""
        self._line.setEnabled(row >= 0)
        self._line.show_reading("")
        self._refresh()
        self.row_changed.emit(row)

    def _rows_came(self) -> None:
        if self._row < 0:
            self._start()

    def _rows_went(self) -> None:
        """Stay inside the table; the row's place may hold another reading now."""
        self._row = -1
        self._line.setModified(False)
        self._load(self._table.current_row())

    def _take(self, text: str, from_gauge: bool) -> None:
        """Keep a finished text and go on, unless it cannot be read or raises a question."""
        if self._bursts.is_again(text, from_gauge):
            self._line.show_reading("")
            self._echo = self._words.taken_once(text)
            self._refresh()
            return
        row = self._row
        expected = self._model.expected(row)
        if self._line.isModified() and text:
            self._line.setModified(False)
            self._model.edit(row, READING, text)
            if self._model.problem(row, READING) or self._model.question(row):
                return
        elif self._model.question(row):
            self._model.answer(row)
        elif self._model.problem(row, READING):
            return
        self._go_on(row, self._words.kept(row, expected.text if expected else ""))

    def _go_on(self, row: int, echo: str = "") -> None:
        """Go to the next reading that is missing."""
        following = self._model.next_empty(row)
        if following is None and echo and self._model.rowCount() > 1:
            echo = self._words.kept_last(echo)
        self._table.go_to(row if following is None else following)
        self._echo = echo
        self._refresh()

    def _go_back(self) -> None:
        self._table.go_to(max(self._row - 1, 0))

    def _skip(self) -> None:
        self._line.show_reading("")
        self._go_on(self._row)

    def _flag(self) -> None:
        self._table.ask_reason(self._row)

    def _repeat(self) -> None:
        row = self._row
        self._model.repeat_row(row)
        self._table.go_to(row + 1)

    def _paste(self, text: str) -> None:
        self._table.paste_readings(text)

    def _drop(self) -> None:
        """Show again what stood here before something was typed over it."""
        self._line.setModified(False)
        self._refresh()

    def _answer(self, place: int) -> None:
        """Take an answer: as typed, or the length on the button."""
        question, row = self._model.question(self._row), self._row
        self._line.setFocus(Qt.FocusReason.OtherFocusReason)
        if question is not None:
            self._model.answer(row, question.suggestions[place - 1] if place else None)
            self._go_on(row, self._words.kept(row, ""))

    def _refresh(self) -> None:
        """Say where we are and what is doubtful; leave a text being typed alone."""
        if not 0 <= self._row < self._model.rowCount():
            self._where.setText(self.tr("No readings are planned yet."))
            self._tell("", "")
            return
        place = self._words.place(self._row)
        self._where.setText(place)
        self._line.setAccessibleName(place)
        self._name_keys(signs_wait=self._may_be_negative())
        if not self._line.isModified():
            self._line.show_reading(self._shown_reading())
        answers, doubt = self._words.answers(self._row), self._words.doubt(self._row)
        self._answers.offer(answers)
        self._keys.setVisible(not answers and not self._locked)
        now = self._words.state(self._row, foretold=self._show_expected.isChecked())
        if not self._show_expected.isChecked():
            now = self._echo or now
        self._tell(doubt or now or self._echo, "question" if doubt else "quiet")

    def _shown_reading(self) -> str:
        """Return the reading as the line shows it, with what is needed to type it again; nothing of a hidden one."""
        if self._model.is_covered(self._row):
            return ""
        return self._model.text(self._row, READING)

    def _tell(self, text: str, tone: str) -> None:
        self._says.setText(text)
        self._line.setAccessibleDescription(text if tone == "question" else "")
        if self._says.objectName() == tone and self._line.objectName():
            return
        self._line.setProperty("wrong", tone == "question")
        for widget, name in ((self._says, tone), (self._line, "entry")):
            widget.setObjectName(name)
            widget.style().unpolish(widget)  # a style sheet looks at names and properties when it polishes anew
            widget.style().polish(widget)

    def _name_keys(self, *, signs_wait: bool) -> None:
        """Say the keys."""
        if self._keys.text() and signs_wait == self._line.signs_wait:
            return
        self._line.let_signs_wait(signs_wait)
        self._keys.setText(self._words.keys(signs_wait=signs_wait))

    def _may_be_negative(self) -> bool:
        values = self._model.values(self._row)
        nominal = values["nominal_mm"]
        return values["kind"] == "travel" or (nominal is not None and nominal <= 0)
