"""A panel: a card on the ground of a page, told to a screen reader as a group with a name."""

from __future__ import annotations

from PySide6.QtWidgets import QFrame, QWidget


class Panel(QFrame):
    """A class of its own: of a bare QFrame Qt would not let us say what it is, as `roles` does by the object name."""

    def __init__(self, name: str, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setObjectName("card")
        self.setAccessibleName(name)
