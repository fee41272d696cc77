"""A small form that opens below a button or picker and keeps what was typed until it is saved."""

from __future__ import annotations

from PySide6.QtCore import QPoint, Qt, Signal
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import QFrame, QHBoxLayout, QLineEdit, QPushButton, QVBoxLayout, QWidget

from app.faults import told_at_once
from app.theme import STEP_PX
from app.widgets.fields import Form
from app.widgets.labels import heading, quiet
from app.widgets.undoing import Undoing
from core.errors import InputError

_WIDTH_PX = 400


class Popover(QFrame):
    """Heading, form, note, and the two buttons. `submitted` carries the form's values once all can be read."""

    submitted = Signal(dict)

    def __init__(self, title: str, form: Form, note: str, parent: QWidget) -> None:
        super().__init__(parent, Qt.WindowType.Popup)
        self.setObjectName("popover")
        self.setAccessibleName(title)
        self.form = form
        self.save = QPushButton(self.tr("&Add"))
        self.save.setObjectName("primary")
        self.cancel = QPushButton(self.tr("Cancel"))
        buttons = QHBoxLayout()
        buttons.addStretch(1)
        buttons.addWidget(self.cancel)
        buttons.addWidget(self.save)
        layout = QVBoxLayout(self)
        layout.setContentsMargins(2 * STEP_PX, 2 * STEP_PX, 2 * STEP_PX, 2 * STEP_PX)
        layout.setSpacing(STEP_PX)
        for part in (heading(title), form, quiet(note)):
            layout.addWidget(part)
        layout.addLayout(buttons)
        self.setFixedWidth(_WIDTH_PX)
        self.save.clicked.connect(self.submit)
        self.cancel.clicked.connect(self.hide)
        self._undoing = Undoing(self)
        form.entered.connect(self.submit)

    def open_below(self, widget: QWidget) -> None:
        """Show the form below a widget, inside its screen, with the keyboard on the first field."""
        show_below(self, widget)
        first = next((field for field in self.findChildren(QLineEdit) if field.isVisible()), self.save)
        first.setFocus(Qt.FocusReason.PopupFocusReason)
        self._undoing.watch()
        self._undoing.forget()

    def submit(self) -> None:
        """Check the form and hand its values over; a problem appears at its field."""
        self.form.clear_problems()
        try:
            values = self.form.values()
        except InputError as error:
            self.refuse(error)
            return
        self.submitted.emit(values)

    def refuse(self, error: InputError) -> None:
        """Show at its field what is wrong and put the keyboard there."""
        if self.form.show_problem(error.field, error.message):
            self.form.field(error.field).setFocus(Qt.FocusReason.OtherFocusReason)
        self.adjustSize()

    @told_at_once
    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Close on Escape; what was typed stays for the next time."""
        if event.key() == Qt.Key.Key_Escape:
            self.hide()
        else:
            super().keyPressEvent(event)


def show_below(popup: QWidget, widget: QWidget) -> None:
    """Show what opens below a widget, inside its screen."""
    popup.adjustSize()
    corner = widget.mapToGlobal(QPoint(0, widget.height() + STEP_PX // 2))
    room = widget.screen().availableGeometry()
    corner.setX(max(room.left(), min(corner.x(), room.right() - popup.width())))
    corner.setY(max(room.top(), min(corner.y(), room.bottom() - popup.height())))
    popup.move(corner)
    popup.show()
