"""The window: pages at the left, pickers above, the page in the middle, one notice line below. It knows no subject."""

from __future__ import annotations

from functools import partial
from typing import TYPE_CHECKING

from PySide6.QtCore import QCoreApplication, QSettings, QSize, QTimer, Signal
from PySide6.QtGui import QKeySequence, QShortcut
from PySide6.QtWidgets import QHBoxLayout, QLabel, QMainWindow, QStackedWidget, QVBoxLayout, QWidget

from app.bodyroom import BodyRoom
from app.context import Context, Level
from app.faults import told_at_once
from app.helpside import HelpSide
from app.notices import NoticeLine
from app.pages import PAGES
from app.pickers import PickerRow
from app.rail import Rail
from app.theme import STEP_PX
from app.windowstate import ColumnWidths, keep_place, restore_place, show_icon

if TYPE_CHECKING:
    from collections.abc import Sequence

    from PySide6.QtGui import QCloseEvent, QPaintEvent, QResizeEvent

    from app.notices import Refusal
    from app.pages.base import Page
    from core.records.rows import Machine, Trial

_SIZE = 1280, 800
_MACHINE_PAGE, _LOG_PAGE = "drive", "logbook"


class MainWindow(QMainWindow):
    """First shown empty; `open_shop` or `refuse` fill its body once the database has been tried.

    `painted` follows the first paint, `ready` the first page. `retried`, `file_chosen`, `copy_chosen`, `shop_asked`,
    `theme_asked` and `view_asked` ("language" or "lengths", and the choice) are answered by whoever built the window.
    """

    painted = Signal()
    ready = Signal()
    retried = Signal()
    file_chosen = Signal(str)
    copy_chosen = Signal(str)
    shop_asked = Signal(str, bool)
    demo_asked = Signal(str)
    theme_asked = Signal(bool)
    view_asked = Signal(str, str)
    closed = Signal()

    def __init__(self, settings: QSettings) -> None:
        super().__init__()
        self.context: Context | None = None
        self._settings = settings
        self._drawn = self.is_demo = False
        self._pages: dict[str, Page] = {}
        self._refusal: Refusal | None = None
        middle = QWidget(self)  # each part has its place from the first: to be given another one later is slow
        self.setCentralWidget(middle)
        self.rail = Rail(middle)
        self.pickers = PickerRow(middle)
        self._body = QStackedWidget()
        room = BodyRoom(self._body, middle)
        self.notices = NoticeLine(middle)
        self._lay_out(middle, room)
        self.help = HelpSide(middle, room)
        self._show_title(None)
        restore_place(self, settings, QSize(*_SIZE))
        self._widths = ColumnWidths(settings, self)
        self.rail.page_shown.connect(self.show_page)
        self.rail.page_entered.connect(self.enter_page)
        self.rail.theme_asked.connect(self.theme_asked)
        self.rail.view_asked.connect(self.view_asked)
        self.rail.help_asked.connect(self.help.toggle)
        self.help.closed.connect(self._go_back_to_page)
        self.rail.demo_asked.connect(self.demo_asked)
        self.pickers.new_machine_asked.connect(self._ask_for_machine)
        self.notices.withdrawal_asked.connect(self._show_entry)
        QShortcut(QKeySequence(QKeySequence.StandardKey.Save), self).activated.connect(self._keep)
        QShortcut(QKeySequence("Ctrl+Q"), self).activated.connect(self.close)

    def open_shop(self, context: Context, page_key: str) -> None:
        """Fill the pickers and show the first page."""
        from app.signature import Signature  # not needed for the first paint
        from app.widgets.invented import mark_pictures

        self.context = context
        show_icon(self)
        context.notice.connect(self.say)
        context.page_asked.connect(self.enter_page)
        context.shop_asked.connect(self.shop_asked)
        context.demo_asked.connect(self.demo_asked)
        context.help_asked.connect(self.help.toggle)
        context.help_topic_asked.connect(self.help.show_topic)
        self.is_demo = context.store.is_demo
        if self.is_demo:
            self.rail.demo.show()
            mark_pictures(self.rail.demo.accessibleName())
            self.closed.connect(partial(mark_pictures, ""))
        context.machine_changed.connect(self._show_title)
        context.machine_changed.connect(self._remember_machine)
        context.kept.connect(self._offer_withdrawal)
        if author := str(self._settings.value("author", "")):
            context.sign(author)
        context.author_changed.connect(partial(self._remember, "author"))
        Signature(context, self.notices.author)
        self.pickers.serve(context)
        self.rail.serve(context)
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
            self.rail.take_keys()
        elif self._refusal.sentence.text() == sentence:
            self.say(self.tr("Tried again; it is not open yet."), Level.WARNING)
        self._refusal.tell(sentence)
        self._refusal.offer(copies)
        self._body.setCurrentWidget(self._refusal)
        self._refusal.setFocus()

    def show_meanwhile(self, widget: QWidget) -> None:
        """Show in the body how far a work is that comes before the shop opens."""
        self._body.addWidget(widget)
        self._body.setCurrentWidget(widget)

    def show_page(self, key: str) -> None:
        """Bring a page into view; it is made when first shown."""
        if self.context is None:
            return
        entry = next(entry for entry in PAGES if entry.key == key)
        if key not in self._pages:
            page = self._pages[key] = entry.build(self.context, self._body)
            self._body.addWidget(page)
            self._widths.watch(page, key)
        self._body.setCurrentWidget(self._pages[key])
        self.rail.mark(key)
        self._remember("page", key)
        self.help.follow(entry)

    def page_in_view(self) -> Page | None:
        """Return the page in view; None before the shop is open."""
        return self._pages.get(self.rail.marked())

    def enter_page(self, key: str) -> None:
        """Bring a page into view and put the keyboard on it."""
        self.notices.forget()
        self.show_page(key)
        if key in self._pages:
            self._pages[key].take_focus()

    def _go_back_to_page(self) -> None:
        self.enter_page(self.rail.marked())

    @told_at_once
    def resizeEvent(self, event: QResizeEvent) -> None:
        """Let the help follow the body."""
        super().resizeEvent(event)
        self.help.cover()

    def say(self, text: str, level: str = Level.INFO) -> None:
        """Put a sentence on the notice line."""
        self.notices.say(text, level)

    @told_at_once
    def paintEvent(self, event: QPaintEvent) -> None:
        """Tell, once and after the paint is through, that the empty window is on the screen."""
        super().paintEvent(event)
        if not self._drawn:
            self._drawn = True
            QTimer.singleShot(0, self.painted.emit)

    @told_at_once
    def closeEvent(self, event: QCloseEvent) -> None:
        """Commit what is still being typed; ask only where that fails and readings would be lost."""
        keep_place(self, self._settings)
        saved = [page.save_draft() for page in self._pages.values()]
        if all(saved):
            super().closeEvent(event)
            self.closed.emit()
            return
        event.ignore()
        self._ask_before_loss()

    def _lay_out(self, middle: QWidget, room: QWidget) -> None:
        waiting = QLabel(self.tr("Opening the database…"))
        waiting.setObjectName("quiet")
        waiting.setMargin(STEP_PX)
        self._body.addWidget(waiting)
        right = QVBoxLayout()
        right.setContentsMargins(2 * STEP_PX, STEP_PX, 2 * STEP_PX, STEP_PX)
        right.setSpacing(STEP_PX)
        right.addWidget(self.pickers)
        right.addWidget(room, 1)
        across = QHBoxLayout()
        across.setSpacing(0)
        across.addWidget(self.rail)
        across.addLayout(right, 1)
        down = QVBoxLayout(middle)
        down.setContentsMargins(0, 0, 0, 0)
        down.setSpacing(0)
        down.addLayout(across, 1)
        down.addWidget(self.notices)

    def _show_title(self, machine: Machine | None) -> None:
        title = f"{machine.name} – Slipgauge" if machine else "Slipgauge"
        in_demo = self.tr("Demo shop, invented data – {title}")
        self.setWindowTitle(in_demo.format(title=title) if self.is_demo else title)

    def _remember_machine(self, machine: Machine | None) -> None:
        self._remember("machine", machine.name if machine else "")

    def _remember(self, key: str, value: str) -> None:
        """Keep a choice for the next start; those made in the demo shop are of no use there."""
        if not self.is_demo:
            self._settings.setValue(key, value)

    def _ask_for_machine(self) -> None:
        assert self.context is not None  # the picker offers it only when served
        self.context.select_machine(None)
        self.enter_page(_MACHINE_PAGE)

    def _offer_withdrawal(self, trial: Trial) -> None:
        """Offer the way back once everybody has said what there is to say of a kept trial."""
        if trial.id is not None:
            QTimer.singleShot(0, partial(self.notices.offer_withdrawal, trial.id))

    def _show_entry(self, trial_id: int) -> None:
        if self.context is not None:
            self.enter_page(_LOG_PAGE)
            self.context.trial_asked.emit(trial_id)

    def _keep(self) -> None:
        if (page := self.page_in_view()) is not None:
            page.keep()  # which may open another page

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
