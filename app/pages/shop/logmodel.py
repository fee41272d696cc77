"""The entries of the logbook as a table: when, what, on which machine and lot, by whom."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from PySide6.QtCore import QObject, Qt
from PySide6.QtGui import QColor, QFont

from app.dates import day_text, moment_text
from app.faults import or_else
from app.theme import tokens
from app.widgets.rowsmodel import AnyIndex, RowsModel
from app.words import shown
from core.guidance.logentries import Entry, EntryKind

WHEN, WHAT, WHERE, WHO = range(4)
SIGNS = {EntryKind.TRIAL: "◆", EntryKind.SETTING: "⇄", EntryKind.EVENT: "!"}


class LogModel(RowsModel):
    """Entries, newest first; those in sight are chosen by a text and a kind."""

    names = WHAT

    def __init__(self, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self.entries: list[Entry] = []
        self._all: tuple[Entry, ...] = ()
        self._texts: dict[int, str] = {}  # to search in, by place: made once, for each key asks for all of them
        self._machines: Mapping[int, str] = {}
        self._lots: Mapping[int, str] = {}
        self._named = False, False
        self.titles = (self.tr("When"), self.tr("What"), self.tr("Where"), self.tr("Who"))

    def show_entries(
        self,
        entries: Sequence[Entry],
        machines: Mapping[int, str],
        lots: Mapping[int, str],
        named: tuple[bool, bool] = (False, False),
    ) -> None:
        """Hold these entries, with the names of machines and lots.

        Args:
            entries: newest first.
            machines: names by id.
            lots: names by id.
            named: whether the machine, and the lot, of all of them is named above: no row says it again.
        """
        self._all, self._machines, self._lots, self._named = tuple(entries), machines, lots, named
        self._texts = {}

    def choose(self, text: str, kind: str) -> None:
        """Show the entries that hold a text and are of a kind; empty for all."""
        wanted = text.strip().casefold()
        self.beginResetModel()
        self.entries = [
            entry
            for place, entry in enumerate(self._all)
            if kind in ("", entry.kind) and (not wanted or wanted in self._searched(place, entry))
        ]
        self.endResetModel()

    def total(self) -> int:
        """Return how many entries there are, in sight or not."""
        return len(self._all)

    def where(self, entry: Entry) -> str:
        """Return machine and lot of an entry."""
        names = (self._machines.get(entry.machine_id or 0, ""), self._lots.get(entry.lot_id or 0, ""))
        return ", ".join(name for name in names if name)

    def place(self, entry: Entry) -> str:
        """Return what of machine and lot is not named above already."""
        machine, lot = self._named
        names = "" if machine else self._machines.get(entry.machine_id or 0, ""), self._lots.get(entry.lot_id or 0, "")
        return ", ".join(name for name in names[: 1 if lot else 2] if name)

    def has_places(self) -> bool:
        """Tell whether a row may have a place to name."""
        return not all(self._named)

    def held(self) -> list[Entry]:
        """Return the entries in sight."""
        return self.entries

    @or_else(None)
    def data(self, index: AnyIndex, role: int = Qt.ItemDataRole.DisplayRole) -> object:
        """Return what a cell shows; what no longer counts is struck out."""
        entry = self.entries[index.row()]
        if role == Qt.ItemDataRole.DisplayRole:
            texts = (day_text(entry.at), what_text(entry), self.place(entry), entry.author)
            return texts[index.column()]
        if role == Qt.ItemDataRole.ToolTipRole:
            of = " · ".join(part for part in (when_text(entry), self.where(entry), entry.author) if part)
            return f"{what_text(entry)}\n{of}"
        if role == Qt.ItemDataRole.FontRole and entry.gone and index.column() == WHAT:
            font = QFont()
            font.setStrikeOut(True)
            return font
        if role == Qt.ItemDataRole.ForegroundRole and (entry.gone or index.column() != WHAT):
            return QColor(tokens().quiet)
        return self.told(index, role)

    def _searched(self, place: int, entry: Entry) -> str:
        if place not in self._texts:
            self._texts[place] = f"{shown(entry.title)} {self.where(entry)} {entry.author}".casefold()
        return self._texts[place]


def what_text(entry: Entry) -> str:
    """Return what an entry says, with the sign of its kind."""
    return f"{SIGNS[entry.kind]} {shown(entry.title)}"


def when_text(entry: Entry) -> str:
    """Return when an entry was made, in local time."""
    return moment_text(entry.at)
