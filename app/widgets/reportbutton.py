"""A button whose menu writes reports: it asks for the file, has it written, and says what became of it."""

from __future__ import annotations

from collections.abc import Callable
from functools import partial
from pathlib import Path

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QFileDialog, QMenu, QPushButton, QWidget

from app.widgets.invented import file_name
from app.words import shown
from core.errors import StoreError

Write = Callable[[str, Path], bool]
Name = Callable[[str], str]


class ReportButton(QPushButton):
    """`write` gets kind and file and returns whether it was written; `said` carries a sentence and its level.

    `name` gives the name to propose for the file of a kind, without its ending; the kind itself where it is empty.

    With `one_trial` it offers the trial that is looked at, with `newest` the newest kept one of its page, else all that
    the shop reports.
    """

    said = Signal(str, str)

    def __init__(
        self,
        write: Write,
        text: str,
        parent: QWidget | None = None,
        *,
        one_trial: bool = False,
        newest: bool = False,
        name: Name = str,
    ) -> None:
        super().__init__(text, parent)
        self._write, self._name = write, name
        self.setObjectName("plain")
        menu = QMenu(self)
        offered = self._of_trial() if one_trial else self._of_newest() if newest else self._of_shop()
        for kind, title, suffix in offered:
            menu.addAction(title).triggered.connect(partial(self._ask, kind, suffix))
        self.setMenu(menu)

    def _of_trial(self) -> tuple[tuple[str, str, str], ...]:
        return (("trial", self.tr("This trial, PDF…"), "pdf"), ("trial", self.tr("This trial, CSV…"), "csv"))

    def _of_newest(self) -> tuple[tuple[str, str, str], ...]:
        return (
            ("kept", self.tr("Newest kept of machine and lot, PDF…"), "pdf"),
            ("kept", self.tr("Newest kept of machine and lot, CSV…"), "csv"),
        )

    def _of_shop(self) -> tuple[tuple[str, str, str], ...]:
        return (
            ("promise", self.tr("Promise to a customer, PDF…"), "pdf"),
            ("promise", self.tr("Promise to a customer, CSV…"), "csv"),
            ("kept", self.tr("Newest kept promise, PDF…"), "pdf"),
            ("kept", self.tr("Newest kept promise, CSV…"), "csv"),
            ("trial", self.tr("Newest size trial, PDF…"), "pdf"),
            ("trial", self.tr("Newest size trial, CSV…"), "csv"),
            ("card", self.tr("Machine card, PDF…"), "pdf"),
            ("card", self.tr("Machine card, CSV…"), "csv"),
            ("label", self.tr("Label for the machine, PDF…"), "pdf"),
        )

    def write(self, kind: str, path: Path) -> bool:
        """Write one report and say what became of it."""
        try:
            done = self._write(kind, path)
        except StoreError as error:
            self.said.emit(shown(error.message), "error")
            return False
        if done:
            self.said.emit(self.tr("Report written: {path}").format(path=path), "good")
        else:
            text = self.tr("{path} was not written: nothing is kept to report on, or the folder takes no file.")
            self.said.emit(text.format(path=path), "error")
        return done

    def _ask(self, kind: str, suffix: str) -> None:
        try:
            proposed = file_name(f"{self._name(kind) or kind}.{suffix}")
        except StoreError as error:
            self.said.emit(shown(error.message), "error")
            return
        name, _kind = QFileDialog.getSaveFileName(
            self, self.tr("Save the report"), proposed, f"{suffix.upper()} (*.{suffix})"
        )
        if name:
            self.write(kind, Path(name if name.lower().endswith(f".{suffix}") else f"{name}.{suffix}"))
