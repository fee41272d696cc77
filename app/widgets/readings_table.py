"""The table of readings: for looking back and mending, by keyboard first."""

from __future__ import annotations

from PySide6.QtCore import QEvent, QItemSelectionModel, QModelIndex, QPersistentModelIndex, QSize, Qt, Signal
from PySide6.QtGui import (
    QAction,
    QContextMenuEvent,
    QFont,
    QFontMetrics,
    QGuiApplication,
    QKeyEvent,
    QKeySequence,
    QResizeEvent,
)
from PySide6.QtWidgets import (
    QAbstractItemDelegate,
    QAbstractItemView,
    QHeaderView,
    QMenu,
    QTableView,
    QWidget,
)

from app.faults import or_else, told_at_once
from app.widgets.reading_columns import Column
from app.widgets.readingcell import PADDING_PX, ReadingCell
from app.widgets.readings import READING, ReadingsModel
from app.widgets.reasonbar import ReasonBar

ROW_PX = 25
_SHORT_PX = 48
_NO_DECIMALS = 100.0
_MOST_PX, _NAME_PX = 384, 110  # that the table asks for, and a name in it: the picture beside it needs room too
_ROWS_MEASURED = 40
_INCHES = {READING: "⚑ 0,0000", "expected": "00,00000 ± 0,0000", "error": "−0,00000"}
Index = QModelIndex | QPersistentModelIndex


class ReadingsTable(QTableView):
    """Enter goes to the next empty reading; F2 or typing edits; Del clears; Ctrl+C and V as everywhere.

    Ctrl+E leaves a reading out with a reason or takes it in again; Ctrl+R adds a row for a further reading.
    """

    refused = Signal(tuple)  # the sentences about refused cells of a paste; empty when all were taken
    undo_asked = Signal()
    redo_asked = Signal()

    def __init__(self, model: ReadingsModel, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._model = model
        self._needed: list[int] = []
        self.setModel(model)
        self.setItemDelegate(ReadingCell(self))
        self.setAccessibleName(self.tr("Readings"))
        self._dress()
        self._reason = ReasonBar(self.viewport())
        self._reason.given.connect(self._exclude)
        self._reason.left.connect(self.setFocus)
        for changed in (model.modelReset, model.rowsInserted, model.rowsRemoved):
            changed.connect(self._fit)
        self._actions = self._make_actions()

    def readings(self) -> ReadingsModel:
        """Return the model shown."""
        return self._model

    def current_row(self) -> int:
        """Return the current row, -1 where there is none."""
        return self.currentIndex().row()

    def go_to(self, row: int) -> None:
        """Make the reading of a row the current cell."""
        index = self._model.index(row, self._reading_column())
        self.selectionModel().setCurrentIndex(index, QItemSelectionModel.SelectionFlag.ClearAndSelect)
        self.scrollTo(index)

    def ask_reason(self, row: int) -> None:
        """Ask below a row why its reading is left out; a reading left out is taken in again at once."""
        if not 0 <= row < self._model.rowCount():
            return
        if self._model.is_excluded(row):
            self._model.set_excluded(row, False)
            return
        self.go_to(row)
        self._reason.ask(row, self.visualRect(self.currentIndex()), QGuiApplication.focusObject())

    def edit_cell(self, row: int, key: str) -> None:
        """Open the editor of a cell."""
        place = [column.key for column in self._model.columns].index(key)
        self.setFocus()
        self.setCurrentIndex(self._model.index(row, place))
        self.edit(self.currentIndex())

    @or_else(QSize())
    def sizeHint(self) -> QSize:
        """Ask for the least height: the rest of a form comes first, and what is left over is given anyway."""
        return QSize(super().sizeHint().width(), max(self.minimumHeight(), self.minimumSizeHint().height()))

    @or_else(QSize())
    def minimumSizeHint(self) -> QSize:
        """Ask for the width in which names and numbers are read whole, where that is within reason."""
        needed = sum(width for place, width in enumerate(self._needed) if not self.isColumnHidden(place))
        beside = self.verticalHeader().sizeHint().width() + self.verticalScrollBar().sizeHint().width()
        least = super().minimumSizeHint()
        return QSize(max(least.width(), min(needed + beside, _MOST_PX)), least.height())

    def setColumnHidden(self, column: int, hide: bool) -> None:
        """Ask for the room of the columns in sight only."""
        if hide != self.isColumnHidden(column):
            super().setColumnHidden(column, hide)
            self.updateGeometry()

    @told_at_once
    def closeEditor(self, editor: QWidget, hint: QAbstractItemDelegate.EndEditHint) -> None:
        """Go on to the next empty reading after Enter in a reading; Enter elsewhere as `_go_on` says."""
        super().closeEditor(editor, hint)
        if hint == QAbstractItemDelegate.EndEditHint.SubmitModelCache:
            self._go_on()

    @told_at_once
    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Let Enter go on to the next empty reading."""
        editing = self.state() == QAbstractItemView.State.EditingState
        if event.key() in (Qt.Key.Key_Return, Qt.Key.Key_Enter) and not editing:
            self._go_on()
            return
        super().keyPressEvent(event)

    @told_at_once
    def contextMenuEvent(self, event: QContextMenuEvent) -> None:
        """Offer everything the keys can do."""
        menu = QMenu(self)
        menu.addActions(self._actions)
        menu.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
        menu.popup(event.globalPos())

    @told_at_once
    def currentChanged(self, current: Index, previous: Index) -> None:
        """Move the tint along with the current row."""
        super().currentChanged(current, previous)
        self.viewport().update()

    @told_at_once
    def resizeEvent(self, event: QResizeEvent) -> None:
        """Keep the question for a reason inside the table."""
        super().resizeEvent(event)
        self._reason.leave()

    @told_at_once
    def changeEvent(self, event: QEvent) -> None:
        """Follow the font."""
        super().changeEvent(event)
        if event.type() == QEvent.Type.FontChange:
            self._fit()

    def _dress(self) -> None:
        self.setAlternatingRowColors(True)
        self.setShowGrid(False)
        self.setWordWrap(False)
        self.setTabKeyNavigation(False)
        self.setEditTriggers(
            QAbstractItemView.EditTrigger.AnyKeyPressed | QAbstractItemView.EditTrigger.EditKeyPressed
            | QAbstractItemView.EditTrigger.DoubleClicked)
        across, down = self.horizontalHeader(), self.verticalHeader()
        across.setHighlightSections(False)
        across.setMinimumSectionSize(40)
        down.setHighlightSections(False)
        down.setStyleSheet("QHeaderView::section { font-weight: normal; border: none; padding: 0 4px; }")
        self._fit()

    def _fit(self) -> None:
        """Give the rows the height of the font, numbers and short choices the room they need; words share the rest."""
        self.verticalHeader().setDefaultSectionSize(max(ROW_PX, self.fontMetrics().height() + 8))
        bold = QFont(self.font())
        bold.setBold(True)
        titles, texts = QFontMetrics(bold), self.fontMetrics()
        self._needed = []
        named = any(column.kind == "text" for column in self._model.columns)
        for place, column in enumerate(self._model.columns):
            title = str(self._model.headerData(place, Qt.Orientation.Horizontal))
            numbers = _INCHES if column.inch else {READING: "⚑ 000,00", "expected": "000,00 ± 0,00"}
            samples = [text for _, text in column.pairs()] or [numbers.get(column.key) or _longest(column)]
            widest = max(texts.horizontalAdvance(sample) for sample in samples) + 2 * PADDING_PX + 10
            width = max(widest, max(titles.horizontalAdvance(line) for line in title.splitlines() or [""]) + 12)
            self._needed.append(max(width, self._name_width(column)) if column.kind == "text" else width)
            long_px = widest if named else width  # a title alone takes no room from names
            shares = column.kind == "text" or (column.kind == "choice" and long_px > _SHORT_PX)
            self.horizontalHeader().setSectionResizeMode(
                place, QHeaderView.ResizeMode.Stretch if shares else QHeaderView.ResizeMode.Interactive)
            if not shares:
                self.setColumnWidth(place, width)
        self.updateGeometry()

    def _name_width(self, column: Column) -> int:
        """Return the width of the names that stand in a column, up to that of a long one."""
        names = {self._model.text(row, column.key) for row in range(min(self._model.rowCount(), _ROWS_MEASURED))}
        widest = max((self.fontMetrics().horizontalAdvance(name) for name in names), default=0)
        return min(widest, _NAME_PX) + 2 * PADDING_PX + 8

    def _make_actions(self) -> list[QAction]:
        """Make the actions with their keys; they hold while the table has the focus."""
        key = QKeySequence.StandardKey
        wanted = (
            (self.tr("Copy"), key.Copy, self.copy),
            (self.tr("Paste"), key.Paste, self.paste),
            (self.tr("Clear"), key.Delete, self.clear_selected),
            (self.tr("Undo"), None, self.undo_asked),  # its keys are the page's
            (self.tr("Redo"), None, self.redo_asked),
            (self.tr("Exclude or include…"), "Ctrl+E", self._ask_here),
            (self.tr("Read again in a further row"), "Ctrl+R", self._repeat_here),
            (self.tr("Remove rows"), "Ctrl+Delete", self._remove_selected),
        )
        actions = []
        for text, keys, slot in wanted:
            action = QAction(text, self)
            if keys is not None:
                action.setShortcuts(QKeySequence.keyBindings(keys) if isinstance(keys, key) else [QKeySequence(keys)])
                action.setShortcutContext(Qt.ShortcutContext.WidgetShortcut)
            action.triggered.connect(slot)
            self.addAction(action)
            actions.append(action)
        return actions

    def copy(self) -> None:
        """Copy the selected cells as a block for a spreadsheet."""
        places = [(index.row(), index.column()) for index in self.selectedIndexes()]
        if not places:
            return
        rows, columns = sorted({row for row, _ in places}), sorted({column for _, column in places})
        keys = [self._model.columns[column].key for column in columns]
        lines = ["\t".join(self._model.text(row, key) for key in keys) for row in rows]
        QGuiApplication.clipboard().setText("\n".join(lines))

    def paste(self) -> None:
        """Take the clipboard's block, its first cell at the current one."""
        index = self.currentIndex()
        row, column = (index.row(), index.column()) if index.isValid() else (self._model.rowCount(), 0)
        self.refused.emit(self._model.paste(row, column, QGuiApplication.clipboard().text()))

    def paste_readings(self, text: str) -> None:
        """Take a block whose first column are readings, from the current row on."""
        self.refused.emit(self._model.paste(max(self.current_row(), 0), self._reading_column(), text))

    def clear_selected(self) -> None:
        """Empty the selected cells."""
        self._model.clear_cells([(index.row(), self._model.columns[index.column()].key)
                                 for index in self.selectedIndexes()])

    def _reading_column(self) -> int:
        return next((place for place, column in enumerate(self._model.columns) if column.key == READING), 0)

    def _go_on(self) -> None:
        """Go to the next empty reading; from another column one row down, to the reading where that ends."""
        index = self.currentIndex()
        if not index.isValid():
            return
        below = index.siblingAtRow(index.row() + 1)
        in_reading = index.column() == self._reading_column()
        if below.isValid() and not in_reading and not self._model.columns[index.column()].down:
            self.setCurrentIndex(below)
            return
        own = not in_reading and self._model.is_empty(index.row())
        row = index.row() if own else self._model.next_empty(index.row())
        if row is not None:
            self.go_to(row)

    def _ask_here(self) -> None:
        self.ask_reason(self.current_row())

    def _exclude(self, row: int, reason: str) -> None:
        self._model.set_excluded(row, True, reason)

    def _repeat_here(self) -> None:
        if self.currentIndex().isValid():
            row = self.current_row()
            self._model.repeat_row(row)
            self.go_to(row + 1)

    def _remove_selected(self) -> None:
        self._model.remove_rows([index.row() for index in self.selectedIndexes()])


def _longest(column: Column) -> str:
    """Return the longest number of a column: what is never below zero and may be large has no decimals to show."""
    if column.low is not None and column.low >= 0 and column.high is not None and column.high >= _NO_DECIMALS:
        return f"{column.high:.0f}" if column.high >= 10 * _NO_DECIMALS else f"{column.high:.0f},0"
    return "−0,000"
