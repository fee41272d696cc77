"""The log itself: whose, which kind, what to look for, the entries, and the card of the one in sight."""

from __future__ import annotations

from PySide6.QtCore import QSignalBlocker, Signal
from PySide6.QtWidgets import QHBoxLayout, QLabel, QLineEdit, QVBoxLayout, QWidget

from app.pages.shop.logcard import EntryCard
from app.pages.shop.logmodel import WHAT, LogModel
from app.pages.shop.logreader import MOST_TRIALS, Log
from app.pages.shop.logtable import LogTable
from app.theme import STEP_PX
from app.widgets.fields import ChoiceField
from app.widgets.panel import Panel
from app.widgets.reportbutton import Write
from core.guidance.logentries import Entry, EntryKind
from core.records.rows import Lot, Machine

_WHOSE_ALL = {"machine": (True, False), "lot": (False, True), "both": (True, True)}  # machine and lot of every entry
_SHARES = 61, 39  # of the width: entries, and what one says


class LogPane(QWidget):
    """`choice_changed` asks for other entries, `entry_chosen` follows a choice; `write` writes a trial's report."""

    choice_changed = Signal()
    entry_chosen = Signal()

    def __init__(self, title: str, write: Write, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.whose, self.kind = ChoiceField(), ChoiceField()
        self.finder, self.author, self.count = QLineEdit(), QLineEdit(), QLabel()
        self.model = LogModel(self)
        self.table, self.card = LogTable(self.model), EntryCard(write)
        self._heading = QLabel(title)
        self._lay_out()
        self.whose.changed.connect(self.choice_changed)
        self.kind.changed.connect(self._choose)
        self.finder.textChanged.connect(self._choose)
        self.finder.returnPressed.connect(self.table.setFocus)
        self.table.selectionModel().currentRowChanged.connect(self.entry_chosen)

    def follow(self, machine: Machine | None, lot: Lot | None) -> None:
        """Offer the picked machine and lot; the machine's log first."""
        choices = [("", self.tr("whole shop"))]
        if lot is not None:
            choices.insert(0, ("lot", self.tr("lot {name}").format(name=lot.name)))
        if machine is not None and lot is not None:
            choices.insert(0, ("both", self.tr("{machine} with {lot}").format(machine=machine.name, lot=lot.name)))
        if machine is not None:
            choices.insert(0, ("machine", machine.name))
        before = self.whose.value()
        with QSignalBlocker(self.whose):
            self.whose.set_choices(choices)
            self.whose.set_value(before if before in [value for value, _ in choices] and before else choices[0][0])

    def show_log(self, log: Log) -> None:
        """Show the entries, the chosen one kept in sight."""
        chosen = self.chosen()
        named = _WHOSE_ALL.get(self.whose.value() or "", (False, False))
        self.model.show_entries(log.entries, log.machines, log.lots, named)
        self._choose()
        if chosen is not None:
            self._go_to((chosen.kind, chosen.row.id))

    def chosen(self) -> Entry | None:
        """Return the entry in sight."""
        row = self.table.currentIndex().row()
        return self.model.entries[row] if 0 <= row < len(self.model.entries) else None

    def show_trial(self, trial_id: int) -> None:
        """Choose the entry of a trial, whatever was looked for before."""
        self.finder.clear()
        self.kind.set_value("")
        self._choose()
        self._go_to((EntryKind.TRIAL, trial_id))
        self.entry_chosen.emit()

    def _go_to(self, wanted: tuple[EntryKind, int | None]) -> None:
        row = next((row for row, found in enumerate(self.model.entries) if (found.kind, found.row.id) == wanted), None)
        if row is not None:
            with QSignalBlocker(self.table.selectionModel()):
                self.table.setCurrentIndex(self.model.index(row, WHAT))
            self.table.selectRow(row)

    def _choose(self) -> None:
        self.model.choose(self.finder.text(), self.kind.value() or "")
        seen, every = len(self.model.entries), self.model.total()
        if not every:
            text = self.tr("Nothing was kept here yet.")
        elif seen == every:
            text = self.tr("Entries: {every}").format(every=every)
        else:
            text = self.tr("Entries: {seen} of {every}").format(seen=seen, every=every)
        if every >= MOST_TRIALS:
            text += self.tr("; the newest, choose a machine for older ones")
        self.count.setText(text)
        self.entry_chosen.emit()

    def _lay_out(self) -> None:
        self._name_choices()
        at_work = QLabel(self.tr("At wor&k"))
        at_work.setObjectName("quiet")
        at_work.setBuddy(self.author)
        above = QHBoxLayout()
        above.setSpacing(STEP_PX)
        for part in (self._heading, self.whose, self.kind, self.finder):
            above.addWidget(part)
        above.addWidget(self.count, 1)
        above.addWidget(at_work)
        above.addWidget(self.author)
        self.table.setAccessibleName(self.tr("Entries of the log"))
        frame = Panel(self.table.accessibleName())
        inside = QVBoxLayout(frame)
        inside.setContentsMargins(1, 1, 1, 1)
        inside.addWidget(self.table)
        across = QHBoxLayout()
        across.setSpacing(2 * STEP_PX)
        across.addWidget(frame, _SHARES[0])
        across.addWidget(self.card, _SHARES[1])
        down = QVBoxLayout(self)
        down.setContentsMargins(0, 0, 0, 0)
        down.setSpacing(STEP_PX)
        down.addLayout(above)
        down.addLayout(across, 1)

    def _name_choices(self) -> None:
        self._heading.setObjectName("heading")
        self.count.setObjectName("quiet")
        self.whose.setAccessibleName(self.tr("Whose log"))
        self.kind.setAccessibleName(self.tr("Kind of entries"))
        self.kind.set_choices(
            [
                ("", self.tr("all entries")),
                (str(EntryKind.TRIAL), self.tr("trials")),
                (str(EntryKind.SETTING), self.tr("settings")),
                (str(EntryKind.EVENT), self.tr("events")),
            ]
        )
        for field in (self.whose, self.kind):
            field.setMaximumWidth(180)
        self.whose.least_text = self.tr("whole shop")
        self.finder.setPlaceholderText(self.tr("find in the log"))
        self.finder.setAccessibleName(self.tr("Find in the log"))
        self.author.setPlaceholderText(self.tr("your name"))
        self.author.setAccessibleName(self.tr("Who is at work here"))
        self.author.setMaximumWidth(170)
