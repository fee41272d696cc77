"""The window: pages at the left, pickers above, the page in the middle, one notice line below. It knows no subject."""

from __future__ import annotations

from functools import partial
from pathlib import Path
from typing import TYPE_CHECKING

from PySide6.QtCore import QCoreApplication, QSettings, QTimer, Signal
from PySide6.QtGui import QIcon, QKeySequence, QShortcut
from PySide6.QtWidgets import QHBoxLayout, QLabel, QMainWindow, QStackedWidget, QVBoxLayout, QWidget

from app.context import Context, Level
from app.notices import NoticeLine
from app.pages import PAGES
from app.pickers import PickerRow
from app.rail import Rail
from app.signature import Signature
from app.theme import STEP_PX

if TYPE_CHECKING:
    from collections.abc import Sequence

    from PySide6.QtGui import QCloseEvent, QPaintEvent, QResizeEvent

    from app.helppane import HelpPane
    from app.notices import Refusal
    from app.pages.base import Page
    from core.records.rows import Machine

_SIZE = 1280, 800
_ICON = Path(__file__).resolve().parents[1] / "resources" / "icons" / "slipgauge.png"
_MACHINE_PAGE = "drive"


class MainWindow(QMainWindow):
    """First shown empty; `open_shop` or `refuse` fill its body once the database has been tried.

    `painted` follows the first paint, `ready` the first page. `retried`, `file_chosen`, `copy_chosen`, `shop_asked` and
    `theme_asked` are answered by whoever built the window.
    """

    painted = Signal()
    ready = Signal()
    retried = Signal()
    file_chosen = Signal(str)
    copy_chosen = Signal(str)
    shop_asked = Signal(str, bool)
    theme_asked = Signal(bool)
    closed = Signal()

    def __init__(self, settings: QSettings) -> None:
        super().__init__()
        self.context: Context | None = None
        self._settings = settings
        self._drawn = False
        self._pages: dict[str, Page] = {}
        self._refusal: Refusal | None = None
        self._help: HelpPane | None = None
        self.rail = Rail()
        self.pickers = PickerRow()
        self.notices = NoticeLine()
        self._body = QStackedWidget()
        self._lay_out()
        self._show_title(None)
        self._restore_geometry()
        self.rail.page_shown.connect(self.show_page)
        self.rail.page_entered.connect(self.enter_page)
        self.rail.theme_asked.connect(self.theme_asked)
        self.rail.help_asked.connect(self.toggle_help)
        self.pickers.new_machine_asked.connect(self._ask_for_machine)
        QShortcut(QKeySequence(QKeySequence.StandardKey.Save), self).activated.connect(self._keep)
        QShortcut(QKeySequence("Ctrl+Q"), self).activated.connect(self.close)

    def open_shop(self, context: Context, page_key: str) -> None:
        """Fill the pickers and show the first page."""
        self.context = context
        self.setWindowIcon(QIcon(str(_ICON)))
        context.notice.connect(self.say)
        context.page_asked.connect(self.enter_page)
        context.shop_asked.connect(self.shop_asked)
        context.machine_changed.connect(self._show_title)
        context.machine_changed.connect(self._remember_machine)
        if author := str(self._settings.value("author", "")):
            context.sign(author)
        context.author_changed.connect(partial(self._settings.setValue, "author"))
        Signature(context, self.notices.author)
        self.pickers.serve(context)
        self.rail.finder.serve(context)
        self._show_title(context.machine)
        if context.machine is not None:
            self._remember_machine(context.machine)
        self.notices.say("")
        self.enter_page(page_key)
        self.ready.emit()

    def refuse(self, sentence: str, copies: Sequence[tuple[str, str]] = ()) -> None:
        """Say in the body why the database cannot be opened, with the ways out; `copies` are texts and files."""
        from app.notices import Refusal

        if self._refusal is None:
            self._refusal = Refusal()
            self._refusal.retried.connect(self.retried)
            self._refusal.file_chosen.connect(self.file_chosen)
            self._refusal.copy_chosen.connect(self.copy_chosen)
            self._body.addWidget(self._refusal)
        elif self._refusal.sentence.text() == sentence:
            self.say(self.tr("Tried again; it cannot be opened yet."), Level.WARNING)
        self._refusal.tell(sentence)
        self._refusal.offer(copies)
        self._body.setCurrentWidget(self._refusal)
        self._refusal.setFocus()

    def show_page(self, key: str) -> None:
        """Bring a page into view; it is made when first shown."""
        if self.context is None:
            return
        if key not in self._pages:
            page = next(entry for entry in PAGES if entry.key == key).build(self.context)
            self._pages[key] = page
            self._body.addWidget(page)
        self._body.setCurrentWidget(self._pages[key])
        self.rail.mark(key)
        self._settings.setValue("page", key)
        self._show_help()

    def enter_page(self, key: str) -> None:
        """Bring a page into view and put the keyboard on it."""
        self.show_page(key)
        if key in self._pages:
            self._pages[key].take_focus()

    def toggle_help(self) -> None:
        """Show the help of the page in view beside it, or hide it."""
        if self._help is not None and self._help.isVisible():
            self._help.hide()
            self.enter_page(self.rail.marked())
            return
        if self._help is None:
            from app.helppane import HelpPane

            self._help = HelpPane(self._middle)
            self._help.closed.connect(self.toggle_help)
        self._show_help()
        self._help.show()
        self._help.setFocus()

    def _show_help(self) -> None:
        if self._help is not None:
            self._help.show_help(next(entry for entry in PAGES if entry.key == self.rail.marked()))
            self._help.cover(self._body)

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Let the help follow the body."""
        super().resizeEvent(event)
        if self._help is not None:
            self._help.cover(self._body)

    def say(self, text: str, level: str = Level.INFO) -> None:
        """Put a sentence on the notice line."""
        self.notices.say(text, level)

    def paintEvent(self, event: QPaintEvent) -> None:
        """Tell, once and after the paint is through, that the empty window is on the screen."""
        super().paintEvent(event)
        if not self._drawn:
            self._drawn = True
            QTimer.singleShot(0, self.painted.emit)

    def closeEvent(self, event: QCloseEvent) -> None:
        """Commit what is still being typed; ask only where that fails and readings would be lost."""
        self._settings.setValue("geometry", self.saveGeometry())
        saved = [page.save_draft() for page in self._pages.values()]
        if all(saved):
            super().closeEvent(event)
            self.closed.emit()
            return
        event.ignore()
        self._ask_before_loss()

    def _lay_out(self) -> None:
        waiting = QLabel(self.tr("Opening the database…"))
        waiting.setObjectName("quiet")
        waiting.setMargin(STEP_PX)
        self._body.addWidget(waiting)
        right = QVBoxLayout()
        right.setContentsMargins(2 * STEP_PX, STEP_PX, 2 * STEP_PX, STEP_PX)
        right.setSpacing(STEP_PX)
        right.addWidget(self.pickers)
        right.addWidget(self._body, 1)
        across = QHBoxLayout()
        across.setSpacing(0)
        across.addWidget(self.rail)
        across.addLayout(right, 1)
        self._middle = middle = QWidget()
        down = QVBoxLayout(middle)
        down.setContentsMargins(0, 0, 0, 0)
        down.setSpacing(0)
        down.addLayout(across, 1)
        down.addWidget(self.notices)
        self.setCentralWidget(middle)

    def _restore_geometry(self) -> None:
        geometry = self._settings.value("geometry")
        if geometry is None or not self.restoreGeometry(geometry):
            room = self.screen().availableGeometry()
            self.resize(min(_SIZE[0], room.width()), min(_SIZE[1], room.height()))

    def _show_title(self, machine: Machine | None) -> None:
        self.setWindowTitle(f"{machine.name} – Slipgauge" if machine else "Slipgauge")

    def _remember_machine(self, machine: Machine | None) -> None:
        self._settings.setValue("machine", machine.name if machine else "")

    def _ask_for_machine(self) -> None:
        assert self.context is not None  # the picker offers it only when served
        self.context.select_machine(None)
        self.enter_page(_MACHINE_PAGE)

    def _keep(self) -> None:
        in_view = next((page for page in self._pages.values() if page is self._body.currentWidget()), None)
        if in_view is not None:
            in_view.keep()  # which may open another page

    def _ask_before_loss(self) -> None:
        from PySide6.QtCore import Qt
        from PySide6.QtWidgets import QMessageBox

        box = QMessageBox(self)
        box.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
        box.setIcon(QMessageBox.Icon.Warning)
        box.setText(self.tr("What was typed last could not be stored, see the notice line. Leave without it?"))
        leave = box.addButton(self.tr("&Leave without it"), QMessageBox.ButtonRole.DestructiveRole)
        box.addButton(self.tr("&Stay"), QMessageBox.ButtonRole.RejectRole)
        leave.clicked.connect(QCoreApplication.quit)
        box.open()
