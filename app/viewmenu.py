"""The button at the foot of the list from which language and unit of lengths are chosen."""

from __future__ import annotations

from functools import partial

from PySide6.QtCore import QCoreApplication, Signal
from PySide6.QtGui import QAction, QActionGroup
from PySide6.QtWidgets import QMenu, QPushButton, QWidget

from app.language import LANGUAGE, LENGTHS, current_view

_NAMES = {"en": "English", "de": "Deutsch"}  # each in its own tongue, so that whoever needs it can read it


class ViewMenu(QPushButton):
    """Opens a menu; `asked` carries what is to change, LANGUAGE or LENGTHS, and the choice."""

    asked = Signal(str, str)

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(self.tr("View"), parent)
        self.setObjectName("plain")
        self.setAccessibleName(self.tr("View: language, and unit of lengths"))
        menu = QMenu(self)
        for what, title in ((LANGUAGE, self.tr("Language")), (LENGTHS, self.tr("Lengths"))):
            menu.addAction(title).setEnabled(False)
            self._offer(menu, what, title)
            menu.addSeparator()
        self.setMenu(menu)

    def _offer(self, menu: QMenu, what: str, title: str) -> None:
        group = QActionGroup(self)
        for kind, choice, text in view_choices():
            if kind == what:
                action = QAction(text, group)
                action.setCheckable(True)
                action.setChecked(choice == getattr(current_view(), what))
                action.setToolTip(f"{title}: {text}")
                action.triggered.connect(partial(self._ask, what, choice))
                menu.addAction(action)

    def _ask(self, what: str, choice: str) -> None:
        if choice != getattr(current_view(), what):
            self.asked.emit(what, choice)


def view_choices() -> list[tuple[str, str, str]]:
    """Return what can be chosen: LANGUAGE or LENGTHS, the choice, and its text for people."""
    as_system = QCoreApplication.translate("ViewMenu", "As the system")
    return [
        (LANGUAGE, "system", as_system),
        *((LANGUAGE, language, name) for language, name in _NAMES.items()),
        (LENGTHS, "mm", QCoreApplication.translate("ViewMenu", "Millimetres (mm)")),
        (LENGTHS, "inch", QCoreApplication.translate("ViewMenu", "Inches (in)")),
    ]
