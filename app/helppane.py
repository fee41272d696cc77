"""The help of the page in view, beside it, and the texts about the whole: F1 shows and hides it, Escape closes it."""

from __future__ import annotations

from pathlib import Path

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QFrame, QHBoxLayout, QLabel, QPushButton, QVBoxLayout, QWidget

from app.pages import PageEntry
from app.theme import STEP_PX

_HELP = Path(__file__).resolve().parents[1] / "resources" / "help"
_TEXTS = ("", "glossary.md", "keys.md", "about.md")  # in the order of the tabs; the first is the page's own
_SHARE = 0.53  # of the body's width: the form stays in sight, plot and verdict wait behind


class HelpPane(QFrame):
    """Lies over the right part of the body; what it covers is not needed while the steps are read."""

    closed = Signal()

    def __init__(self, parent: QWidget) -> None:
        from PySide6.QtGui import QKeySequence, QShortcut  # the window opens before anybody asks for help
        from PySide6.QtWidgets import QTextBrowser

        from app.widgets.tabs import Tabs

        super().__init__(parent)
        self.setObjectName("card")
        self.heading = QLabel(self.tr("Help"))
        self.heading.setObjectName("heading")
        self.close_button = QPushButton(self.tr("Close   Esc"))
        self.close_button.setObjectName("plain")
        self.choice = Tabs(self.tr("Which help"))
        for text in (self.tr("This page"), self.tr("Words"), self.tr("Keys"), self.tr("About")):
            self.choice.addTab(text)
        self.text = QTextBrowser()
        self.text.setFrameShape(QFrame.Shape.NoFrame)
        self.text.setAccessibleName(self.tr("Help of this page"))
        self.text.setOpenLinks(False)
        head = QHBoxLayout()
        head.addWidget(self.heading, 1)
        head.addWidget(self.close_button)
        column = QVBoxLayout(self)
        column.setContentsMargins(2 * STEP_PX, STEP_PX, STEP_PX, STEP_PX)
        column.addLayout(head)
        column.addWidget(self.choice)
        column.addWidget(self.text, 1)
        self.setFocusProxy(self.text)
        self._entry: PageEntry | None = None
        self.choice.currentChanged.connect(self._show_chosen)
        self.close_button.clicked.connect(self.closed)
        QShortcut(QKeySequence("Esc"), self).activated.connect(self.closed)
        self.hide()

    def show_help(self, entry: PageEntry) -> None:
        """Show the help of a page."""
        self._entry = entry
        self.choice.setCurrentIndex(0)
        self._show_chosen()

    def _show_chosen(self) -> None:
        """Show the chosen text, its sketch first."""
        from PySide6.QtCore import QUrl

        chosen, entry = self.choice.currentIndex(), self._entry
        path = _HELP / _TEXTS[chosen] if chosen or entry is None else help_path(entry)
        sketch = path.with_suffix(".svg")
        text = path.read_text(encoding="utf-8") if path.exists() else self.tr("There is no help for this page yet.")
        title, _, rest = text.partition("\n")
        picture = f"\n\n![{title.lstrip('# ')}]({sketch.name})\n" if sketch.exists() else ""
        head = self.choice.tabText(chosen) if chosen or entry is None else entry.shown_title()
        self.heading.setText(self.tr("Help: {page}").format(page=head))
        self.text.document().setBaseUrl(QUrl.fromLocalFile(f"{path.parent}/"))
        self.text.setMarkdown(f"{picture}\n{rest if title.startswith('#') else text}".replace("{version}", version()))

    def cover(self, body: QWidget) -> None:
        """Lie over the right part of the body."""
        width = round(body.width() * _SHARE)
        self.setGeometry(body.x() + body.width() - width, body.y(), width, body.height())
        self.raise_()


def version() -> str:
    """Return the version of the installed program."""
    from importlib.metadata import PackageNotFoundError
    from importlib.metadata import version as installed

    try:
        return installed("slipgauge")
    except PackageNotFoundError:
        return "not installed"


def help_path(entry: PageEntry) -> Path:
    """Return where the help of a page is kept: the same name in another room."""
    return _HELP.joinpath(*entry.module.split(".")[2:]).with_suffix(".md")
