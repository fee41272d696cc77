"""The help beside the page in view: made when it is first asked for, and kept on the page that is shown."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import QObject, Signal
from PySide6.QtWidgets import QWidget

if TYPE_CHECKING:
    from app.helppane import HelpPane
    from app.helptopics import HelpPlace
    from app.pages import PageEntry


class HelpSide(QObject):
    """Shows and hides the pane with the help; `closed` follows when it was hidden.

    Attributes:
        pane: what lies over the body; None before it is first asked for.
    """

    closed = Signal()

    def __init__(self, over: QWidget, body: QWidget) -> None:
        super().__init__(over)
        self.pane: HelpPane | None = None
        self._over, self._body = over, body
        self._entry: PageEntry | None = None

    def toggle(self) -> None:
        """Show the help of the page in view beside it, or hide it."""
        if self._is_open():
            self._made().hide()
            self.closed.emit()
            return
        pane = self._made()
        self._show()
        pane.show()
        pane.setFocus()

    def show_topic(self, key: str) -> None:
        """Show a text that belongs to no page; `key` is that of its topic."""
        if not self._is_open():
            self.toggle()
        pane = self._made()
        pane.show_topic(key)
        pane.setFocus()

    def place(self) -> HelpPlace | None:
        """Return where the reader is, so that another window goes on there; None where nobody asked for help."""
        return self.pane.place() if self.pane is not None else None

    def go_on(self, place: HelpPlace) -> None:
        """Go on where the reader was in another window, and leave the keyboard where it is."""
        pane = self._made()
        self._show()
        pane.go_on(place)
        pane.setVisible(place.is_open)

    def follow(self, entry: PageEntry) -> None:
        """Go on with another page."""
        self._entry = entry
        self._show()

    def cover(self) -> None:
        """Lie over the body wherever that is now."""
        if self.pane is not None:
            self.pane.cover(self._body)

    def _is_open(self) -> bool:
        return self.pane is not None and self.pane.isVisible()

    def _made(self) -> HelpPane:
        if self.pane is None:
            from app.helppane import HelpPane  # the window opens before anybody asks for help

            self.pane = HelpPane(self._over)
            self.pane.closed.connect(self.toggle)
        return self.pane

    def _show(self) -> None:
        if self.pane is not None and self._entry is not None:
            self.pane.show_help(self._entry)
        self.cover()
