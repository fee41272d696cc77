"""A line for a material that offers the ones on record while a name is typed."""

from __future__ import annotations

from PySide6.QtCore import QEvent, Qt
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import QApplication, QCompleter, QWidget

from app.faults import told_at_once
from app.widgets.fields import TextField
from app.widgets.linefields import ENTER
from core.filament.materials import materials


class MaterialField(TextField):
    """Any name may be typed; one Enter takes it and goes on, also while the offers are open."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(required=True, longest=40, parent=parent)
        completer = QCompleter([known.name for known in materials()], self)
        completer.setCaseSensitivity(Qt.CaseSensitivity.CaseInsensitive)
        self.setCompleter(completer)

    @told_at_once
    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Close the offers first: they would keep Enter for themselves, and the form would not go on."""
        offers = self.completer().popup()
        if event.key() in ENTER and offers is not None and offers.isVisible():
            offers.hide()
            event.accept()
            again = QKeyEvent(QEvent.Type.KeyPress, event.key(), event.modifiers())
            QApplication.postEvent(self, again)  # now by way of the form
            return
        super().keyPressEvent(event)
