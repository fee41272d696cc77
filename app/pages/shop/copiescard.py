"""The card of the page Storage with the copies of the database."""

from __future__ import annotations

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QHBoxLayout, QHeaderView, QPushButton, QWidget

from app.pages.shop.storagecards import Card, line_label
from app.widgets.fields import local_text
from app.widgets.plaintable import PlainTable
from core.records.rows import Backup, BackupKind

_FIT = QHeaderView.ResizeMode.ResizeToContents


class CopiesCard(Card):
    """The copies, a look into the chosen one, and putting it back in two steps."""

    chosen = Signal(object)
    restored = Signal(object)

    def __init__(self, is_demo: bool = False, parent: QWidget | None = None, *, on_server: bool = False) -> None:
        super().__init__(parent)
        self._of_server = (
            self.tr(
                "Each day when the program starts, what the server holds is copied into a file on this computer. That "
                "is no substitute for a backup of the server itself: ask whoever looks after it."
            )
            if on_server
            else ""
        )
        self._none_yet = (
            self.tr("No copy yet. Of the demo shop one is made only when you ask for it.")
            if is_demo
            else self.tr("No copy yet. One is made each day when the program starts, and before every upgrade.")
        )
        self.head(self.tr("Copies"))
        headings = (self.tr("Made"), self.tr("Why"), self.tr("Size"))
        self.table = PlainTable(self.tr("Copies of the database"), headings, numbers_from=2)
        for column, mode in enumerate((_FIT, QHeaderView.ResizeMode.Stretch, _FIT)):
            self.table.horizontalHeader().setSectionResizeMode(column, mode)
        self.folder, self.preview = line_label("quiet", plain=True), line_label(plain=True)
        self.warning = line_label("question")
        self.warning.setText(self.tr("All that is on record gives way to this copy. A copy of it is made first."))
        self.ask, self.restore = QPushButton(self.tr("&Restore this copy…")), QPushButton(self.tr("Restore it no&w"))
        self.leave = QPushButton(self.tr("Leave it"))
        self._backups: tuple[Backup, ...] = ()
        self._known = self._busy = False  # what the chosen copy holds; whether something runs
        buttons = QHBoxLayout()
        for button in (self.ask, self.restore, self.leave):
            buttons.addWidget(button)
        buttons.addStretch(1)
        self.column.addWidget(self.table, 1)
        for line in (self.folder, self.preview, self.warning):
            self.column.addWidget(line)
        self.column.addLayout(buttons)
        self.table.selectionModel().currentRowChanged.connect(self._choose)
        self.ask.clicked.connect(self._ask)
        self.leave.clicked.connect(self._leave)
        self.restore.clicked.connect(self._restore)
        self._leave()

    def show_backups(self, backups: tuple[Backup, ...], folder: str) -> None:
        """Show the copies, newest first; none is chosen then."""
        self._backups = backups
        kinds = {
            BackupKind.ASKED: self.tr("asked for"),
            BackupKind.DAILY: self.tr("daily"),
            BackupKind.UPGRADE: self.tr("before an upgrade"),
            BackupKind.RESTORE: self.tr("before a restoration"),
        }
        self.table.rows.set_rows(
            [
                (
                    f"{each.made_at.astimezone():%Y-%m-%d %H:%M}",
                    kinds[each.kind],
                    local_text(f"{each.size / 2**20:.1f} MiB"),
                )
                for each in backups
            ]
        )
        lie = self.tr("In {folder}").format(folder=folder) if backups else "" if self._of_server else self._none_yet
        self.folder.setText("\n".join(says for says in (lie, self._of_server) if says))
        self.show_preview("")
        self._known = False
        self._leave()

    def show_preview(self, text: str) -> None:
        """Say what is in the chosen copy."""
        self.preview.setText(text)
        self.preview.setVisible(bool(text))

    def add_below_preview(self, widget: QWidget) -> None:
        """Give a widget its place below what is said of the chosen copy."""
        self.column.insertWidget(self.column.indexOf(self.preview) + 1, widget)

    def allow_restoring(self, known: bool) -> None:
        """Let the chosen copy be put back once it is known what it holds."""
        self._known = known
        self.ask.setEnabled(known and not self._busy)

    def current(self) -> Backup | None:
        """Return the chosen copy."""
        row = self.table.currentIndex().row()
        return self._backups[row] if 0 <= row < len(self._backups) else None

    def set_busy(self, busy: bool) -> None:
        """Let nothing be begun while something runs."""
        self._busy = busy
        self.ask.setEnabled(not busy and self._known)
        self.restore.setEnabled(not busy)

    def _choose(self) -> None:
        self._known = False
        self._leave()
        self.chosen.emit(self.current())

    def _ask(self) -> None:
        self._show_question(True)
        self.restore.setFocus()

    def _leave(self) -> None:
        self._show_question(False)
        self.ask.setEnabled(self._known and not self._busy)

    def _restore(self) -> None:
        self._leave()
        self.restored.emit(self.current())

    def _show_question(self, asked: bool) -> None:
        self.ask.setVisible(not asked)
        for widget in (self.warning, self.restore, self.leave):
            widget.setVisible(asked)
