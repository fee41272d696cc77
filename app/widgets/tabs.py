"""A row of choices of which one is open, reached by Tab and turned by the arrow keys; the open one shows the focus."""

from __future__ import annotations

from PySide6.QtWidgets import QTabBar, QWidget

_STYLE = (
    "QTabBar::tab {{ padding: 4px {pad}px; border: 1px solid transparent; border-bottom: 2px solid palette(mid); }}"
    "QTabBar::tab:selected {{ border-bottom-color: palette(highlight); color: palette(highlight); font-weight: 600; }}"
    "QTabBar::tab:selected:focus {{ border-color: palette(highlight); }}"
)


class Tabs(QTabBar):
    """Tabs in the dress of the theme; `name` is what assistive tools call them, `pad_px` stands beside each text."""

    def __init__(self, name: str, parent: QWidget | None = None, *, pad_px: int = 14) -> None:
        super().__init__(parent)
        self.setAccessibleName(name)
        self.setDrawBase(False)
        self.setExpanding(False)
        self.setStyleSheet(_STYLE.format(pad=pad_px))
