"""What marks the demo shop beside every page, with the way back and the way to begin anew."""

from __future__ import annotations

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QFrame, QLabel, QPushButton, QVBoxLayout, QWidget

from app.options import ANEW, HOME
from app.theme import STEP_PX


class DemoBand(QFrame):
    """A framed sign; `asked` carries ANEW or HOME. To begin anew is asked about: what was typed here is lost by it."""

    asked = Signal(str)

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setObjectName("demo")
        self.sign, self.says = QLabel(self.tr("Demo shop")), QLabel(self.tr("Invented data"))
        self.sign.setObjectName("demoSign")
        self.says.setObjectName("question")
        self.warning = QLabel(self.tr("All that you did in the demo shop is lost."))
        self.warning.setWordWrap(True)
        self.home, self.anew = QPushButton(self.tr("Back to my shop")), QPushButton(self.tr("Begin anew…"))
        self.really, self.leave = QPushButton(self.tr("Begin anew now")), QPushButton(self.tr("Leave it as it is"))
        self.setAccessibleName(self.tr("Demo shop, invented data"))
        column = QVBoxLayout(self)
        column.setContentsMargins(STEP_PX, STEP_PX // 2, STEP_PX, STEP_PX // 2)
        column.setSpacing(STEP_PX // 2)
        for label in (self.sign, self.says, self.warning):
            label.setAlignment(Qt.AlignmentFlag.AlignHCenter)
            column.addWidget(label)
        for button in (self.home, self.anew, self.really, self.leave):
            button.setAutoDefault(True)  # Enter presses it
            column.addWidget(button)
        for button in (self.anew, self.leave):
            button.setObjectName("plain")
        self._ask(False)
        self.home.clicked.connect(self._go_home)
        self.anew.clicked.connect(self._ask_first)
        self.leave.clicked.connect(self._leave)
        self.really.clicked.connect(self._begin_anew)

    def _go_home(self) -> None:
        self.asked.emit(HOME)

    def _ask_first(self) -> None:
        self._ask(True)
        self.leave.setFocus()

    def _leave(self) -> None:
        self._ask(False)
        self.anew.setFocus()

    def _begin_anew(self) -> None:
        self.asked.emit(ANEW)

    def _ask(self, asked: bool) -> None:
        self.home.setVisible(not asked)
        self.anew.setVisible(not asked)
        self.warning.setVisible(asked)
        self.really.setVisible(asked)
        self.leave.setVisible(asked)
