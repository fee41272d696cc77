"""The board as a table: a line a machine; what is not worked out yet shows as dots and sorts last."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass
from datetime import datetime

from PySide6.QtCore import (
    QObject,
    QSortFilterProxyModel,
    Qt,
)
from PySide6.QtGui import QColor, QFont

from app.dates import day_text
from app.faults import or_else
from app.pages.shop.walksteps import SIGNS, state_colour, state_words
from app.theme import tokens
from app.widgets.rowsmodel import AnyIndex, RowsModel
from app.words import shown
from core.guidance.board import BoardLine
from core.guidance.walk import State
from core.guidance.walkwords import step_title
from core.records.rows import Machine

SORT_ROLE = int(Qt.ItemDataRole.UserRole)
NAME, LOT, NEXT, STALE, DOUBT, VERIFIED, PROMISE, DRIFT = range(8)
_ORDER = {State.STALE: 0, State.DOUBT: 1, State.NEXT: 2, None: 3}
_UNKNOWN = "…"


@dataclass(slots=True)
class BoardRow:
    """A machine and what is known of it so far."""

    machine: Machine
    lot: str = ""
    line: BoardLine | None = None
    promise: str = ""
    drift: str = ""
    drifts: bool = False


class BoardModel(RowsModel):
    """All machines."""

    def __init__(self, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self.rows: list[BoardRow] = []
        self.titles = (
            self.tr("Machine"),
            self.tr("Lot"),
            self.tr("To do first"),
            self.tr("Stale"),
            self.tr("In doubt"),
            self.tr("Verified"),
            self.tr("Promise"),
            self.tr("Drift"),
        )

    def show_rows(self, rows: Sequence[BoardRow]) -> None:
        """Show these machines."""
        self.beginResetModel()
        self.rows = list(rows)
        self.endResetModel()

    def tell_changed(self, first: int, last: int) -> None:
        """Tell that rows know more than before."""
        self.dataChanged.emit(self.index(first, 0), self.index(last, DRIFT))

    def held(self) -> list[BoardRow]:
        """Return the machines."""
        return self.rows

    @or_else(None)
    def data(self, index: AnyIndex, role: int = Qt.ItemDataRole.DisplayRole) -> object:
        """Return what a cell shows, or what it is sorted by."""
        row, column = self.rows[index.row()], index.column()
        if role == Qt.ItemDataRole.DisplayRole:
            return cell_text(row, column)
        if role == SORT_ROLE:
            return _sort_key(row, column)
        if role == Qt.ItemDataRole.ForegroundRole:
            return _colour(row, column)
        if role == Qt.ItemDataRole.FontRole and column == NAME:
            font = QFont()
            font.setBold(True)
            return font
        if role == Qt.ItemDataRole.ToolTipRole:
            return cell_text(row, column)
        return self.told(index, role)


class BoardFilter(QSortFilterProxyModel):
    """Which machines are in sight: by a part of the name or lot, and by what they want."""

    def __init__(self, model: BoardModel, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._text, self._wanted = "", ""
        self.setSourceModel(model)
        self.setSortRole(SORT_ROLE)
        self.setDynamicSortFilter(False)

    def show_only(self, text: str, wanted: str) -> None:
        """Show machines whose name or lot holds the text and that are of the wanted kind; empty for all."""
        self._text, self._wanted = text.strip().casefold(), wanted
        self.invalidate()

    @or_else(True)
    def filterAcceptsRow(self, source_row: int, source_parent: AnyIndex) -> bool:  # noqa: ARG002
        """Return whether a machine is in sight."""
        model = self.sourceModel()
        assert isinstance(model, BoardModel)
        row = model.rows[source_row]
        if self._text and self._text not in f"{row.machine.name} {row.lot} {row.machine.note}".casefold():
            return False
        return wanted_row(row, self._wanted)


def wanted_row(row: BoardRow, wanted: str) -> bool:
    """Return whether a machine is of this kind."""
    line = row.line
    if not wanted:
        return True
    if line is None:
        return False
    return {
        "attention": bool(line.stale or line.in_doubt or row.drifts),
        "stale": bool(line.stale),
        "doubt": bool(line.in_doubt),
        "setup": line.todo_state is State.NEXT and line.verified_at is None,
        "verified": line.verified,
    }[wanted]


def cell_text(row: BoardRow, column: int) -> str:
    """Return what a cell says."""
    plain = {NAME: row.machine.name, LOT: row.lot, PROMISE: row.promise, DRIFT: row.drift}
    if column in plain:
        return plain[column]
    if row.line is None:
        return _UNKNOWN
    if column == NEXT:
        state = row.line.todo_state or State.DONE
        return f"{SIGNS[state]} {shown(step_title(row.line.todo) if row.line.todo else state_words(state))}"
    if column == VERIFIED:
        return _day(row.line.verified_at)
    steps = row.line.stale if column == STALE else row.line.in_doubt
    named = ", ".join(shown(step_title(key)) for key in steps)
    return f"{len(steps)}: {named}" if len(steps) > 1 else named  # a narrow cell hides the last ones, and says so


def _sort_key(row: BoardRow, column: int) -> object:
    line = row.line
    if column == NEXT and line is not None:
        return f"{_ORDER[line.todo_state]}{100 - line.done:03}{natural(row.machine.name)}"
    if column == STALE and line is not None:
        return -len(line.stale)
    if column == DOUBT and line is not None:
        return -len(line.in_doubt)
    if column == VERIFIED:
        return line.verified_at.timestamp() if line is not None and line.verified_at is not None else 0.0
    if column == DRIFT:
        return f"{not row.drifts:d}{not row.drift:d}{natural(row.machine.name)}"
    return natural(cell_text(row, column))


def _colour(row: BoardRow, column: int) -> QColor | None:
    line = row.line
    if column == NEXT and line is not None:
        state = line.todo_state or State.DONE
        return None if state is State.NEXT else QColor(state_colour(state))  # in the colour of links it would look so
    if column in (STALE, DOUBT) or (column == DRIFT and row.drifts):
        return QColor(tokens().warning)
    if column == LOT or (line is None and column != NAME):
        return QColor(tokens().quiet)
    return None


def natural(text: str) -> str:
    """Return a text to sort by, in which Bay 2 stands before Bay 10."""
    return re.sub(r"\d+", lambda digits: digits[0].zfill(9), text.casefold())


def _day(at: datetime | None) -> str:
    return day_text(at)
