"""A row of choices of which one is open, reached by Tab and turned by the arrow keys; the open one shows the focus."""

from __future__ import annotations

from PySide6.QtWidgets import QTabBar, QWidget

_STYLE = (
    "QTabBar::tab { padding: 4px 14px; border: 1px solid transparent; border-bottom: 2px solid palette(mid); }"
    "QTabBar::tab:selected { border-bottom-color: palette(highlight); color: palette(highlight); font-weight: 600; }"
    "QTabBar::tab:selected:focus { border-color: palette(highlight); }"
)


class Tabs(QTabBar):
    """Tabs in the dress of the theme; `name` is what assistive tools call them."""

    def __init__(self, name: str, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setAccessibleName(name)
        self.setDrawBase(False)
        self.setExpanding(False)
        self.setStyleSheet(_STYLE)
