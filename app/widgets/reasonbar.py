"""The small frame that asks why a reading is left out, right below its row; no dialog."""

from __future__ import annotations

from PySide6.QtCore import QObject, QRect, Qt, Signal
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import QFrame, QGridLayout, QLabel, QLineEdit, QPushButton, QWidget

from app.faults import told_at_once
from app.theme import tokens

_LINE = "QLineEdit {{ border: 1px solid {edge}; border-radius: 5px; padding: 5px 8px; }}"


class ReasonBar(QFrame):
    """Type a reason, or the number of a common one, and press Enter; Esc leaves."""

    given = Signal(int, str)
    left = Signal()

    def __init__(self, parent: QWidget) -> None:
        super().__init__(parent)
        self.setObjectName("popover")
        self._room = parent
        self._row = -1
        self._back_to: QWidget | None = None
        self._title = QLabel()
        self._title.setWordWrap(True)
        self._line = QLineEdit()
        self._line.setAccessibleName(self.tr("Reason for leaving the reading out"))
        self._line.setPlaceholderText(self.tr("its number or other words, then Enter"))
        self._common = (self.tr("slipped"), self.tr("chip or string"), self.tr("wrong feature"), self.tr("damaged"))
        self._lay_out()
        self._line.returnPressed.connect(self._take)
        self.hide()

    def ask(self, row: int, below: QRect, back_to: QObject | None) -> None:
        """Ask for the reason of a row whose cell is at `below`; the focus returns to `back_to`."""
        self._row = row
        self._back_to = back_to if isinstance(back_to, QWidget) else None
        self._title.setText(self.tr("Leave reading {row} out, because").format(row=row + 1))
        self._line.clear()
        self._line.setStyleSheet(_LINE.format(edge=tokens().hairline))  # lines in a table have no edge of their own
        room = self._room.rect().adjusted(8, 0, -8, 0)
        self.resize(min(room.width(), max(self.sizeHint().width(), 320)), self.sizeHint().height())
        top = below.bottom() + 2
        if top + self.height() > room.bottom():
            top = max(below.top() - self.height() - 2, 0)
        self.move(max(room.right() - self.width(), room.left()), top)
        self.show()
        self.raise_()
        self._line.setFocus(Qt.FocusReason.PopupFocusReason)

    def leave(self) -> None:
        """Go away without a reason."""
        if not self.isHidden():
            self._close()

    @told_at_once
    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Leave with Esc; keep every other key from the table below."""
        if event.key() == Qt.Key.Key_Escape:
            self.leave()
        event.accept()

    def _lay_out(self) -> None:
        grid = QGridLayout(self)
        grid.setContentsMargins(8, 8, 8, 8)
        grid.setSpacing(4)
        grid.addWidget(self._title, 0, 0, 1, 2)
        for place, reason in enumerate(self._common):
            button = QPushButton(f"{place + 1}  {reason}")
            button.setAccessibleName(reason)
            button.setFocusPolicy(Qt.FocusPolicy.TabFocus)
            button.setAutoDefault(False)
            button.clicked.connect(self._take_clicked)
            button.setProperty("reason", reason)
            grid.addWidget(button, 1 + place // 2, place % 2)
        grid.addWidget(self._line, 3, 0, 1, 2)

    def _take_clicked(self) -> None:
        button = self.sender()
        if button is not None:
            self._give(str(button.property("reason")))

    def _take(self) -> None:
        reason = self._line.text().strip()
        if reason in ("1", "2", "3", "4"):
            self._give(self._common[int(reason) - 1])
        elif reason:
            self._give(reason)
        else:
            self._title.setText(self.tr("Leave reading {row} out: a reason is needed").format(row=self._row + 1))

    def _give(self, reason: str) -> None:
        row = self._row
        self._close()
        self.given.emit(row, reason)

    def _close(self) -> None:
        self.hide()
        if self._back_to is not None:
            self._back_to.setFocus(Qt.FocusReason.PopupFocusReason)
        else:
            self.left.emit()
