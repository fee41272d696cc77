"""One entry of the logbook: what it says, its pictures, and what can be done with it."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from PySide6.QtCore import QSize, Qt, Signal
from PySide6.QtGui import QIcon, QStandardItem, QStandardItemModel
from PySide6.QtWidgets import QFrame, QLabel, QListView, QPushButton, QVBoxLayout, QWidget

from app.pages.shop.photos import picture_of
from app.pages.trialreport import report_name
from app.theme import STEP_PX
from app.widgets.fieldgrid import FieldGrid
from app.widgets.fields import TextField
from app.widgets.reportbutton import ReportButton, Write
from app.widgets.resultcard import CardData, ResultCard
from app.widgets.wraprow import WrapRow
from core.guidance.logentries import Entry, EntryKind
from core.records.rows import Attachment, Event, Trial

_SMALL, _LARGE = QSize(96, 72), QSize(900, 640)


class EntryCard(QFrame):
    """Shows an entry; the buttons say what is wanted, the page does it, and `write` the report of a kept trial."""

    gone_asked = Signal()
    note_asked = Signal()
    picture_asked = Signal()

    def __init__(self, write: Write, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setObjectName("card")
        nothing = self.tr(
            "Choose an entry at the left. Trials are kept on their pages; what happens is logged with F8."
        )
        self.text = ResultCard(self.tr("Entry"), nothing)
        self.text.setObjectName("")  # stands inside a card already
        self.setAccessibleName(self.text.accessibleName())
        self.text.keep_button.hide()
        self.report = ReportButton(write, self.tr("&Report"), one_trial=True, name=self._report_name)
        self.text.add_at_head(self.report)
        self.pictures, self._shown = QListView(), QStandardItemModel(self)
        self.form = FieldGrid(1)
        self.form.add("note", self.tr("Wor&ds: the reason, or a note to add"), TextField())
        self.form.set_share(1, 0)
        self.gone, self.note_button = QPushButton(), QPushButton(self.tr("Add a &note"))
        self.picture_button = QPushButton(self.tr("&Picture…"))
        self._contents: dict[int, bytes] = {}
        self._entry: Entry | None = None
        self._large = QLabel()
        self._lay_out()
        self.gone.clicked.connect(self.gone_asked)
        self.note_button.clicked.connect(self.note_asked)
        self.picture_button.clicked.connect(self.picture_asked)
        self.pictures.activated.connect(self._show_large)
        self.show_entry(None, None, (), {})

    def show_entry(
        self,
        entry: Entry | None,
        card: CardData | None,
        attached: Sequence[Attachment],
        contents: Mapping[int, bytes],
        can_go: bool = False,
    ) -> None:
        """Show an entry with its pictures; `can_go`: it may be withdrawn, undone or taken back."""
        if card is None:
            self.text.show_empty()
        else:
            self.text.show_card(card)
        self._contents = dict(contents)
        self._shown.clear()
        for attachment in attached:
            picture = picture_of(contents.get(attachment.id or 0, b""), _SMALL)
            item = QStandardItem(QIcon(picture), attachment.note or attachment.name)
            item.setData(attachment.id, Qt.ItemDataRole.UserRole)
            item.setEditable(False)
            self._shown.appendRow(item)
        self.pictures.setVisible(bool(attached))
        for part in (self.form, self.gone, self.note_button, self.picture_button):
            part.setVisible(entry is not None)
        self._entry = entry
        self.report.setVisible(entry is not None and entry.kind is EntryKind.TRIAL)
        if entry is not None:
            names = {
                EntryKind.TRIAL: self.tr("&Withdraw it"),
                EntryKind.SETTING: self.tr("Und&o it"),
                EntryKind.EVENT: self.tr("&Take it back"),
            }
            self.gone.setText(names[entry.kind])
            self.gone.setEnabled(can_go)

    def pointer(self, entry: Entry) -> dict[str, int | None]:
        """Return what a picture or note of an entry points to."""
        if isinstance(entry.row, Trial):
            return {"trial_id": entry.row.id, "machine_id": entry.machine_id, "lot_id": entry.lot_id}
        if isinstance(entry.row, Event):
            return {"event_id": entry.row.id, "machine_id": entry.machine_id, "lot_id": entry.lot_id}
        return {"machine_id": entry.machine_id, "lot_id": entry.lot_id}

    def _report_name(self, _kind: str) -> str:
        row = self._entry.row if self._entry is not None else None
        return report_name(row) if isinstance(row, Trial) else ""

    def _show_large(self) -> None:
        """Show a picture as large as the window allows; a click or a key closes it."""
        picked = self.pictures.currentIndex()
        content = self._contents.get(picked.data(Qt.ItemDataRole.UserRole), b"")
        self._large.setAccessibleName(str(picked.data()))
        room = self.window().size() - QSize(8 * STEP_PX, 8 * STEP_PX)
        self._large.setPixmap(picture_of(content, room.boundedTo(_LARGE)))
        self._large.setWindowFlags(Qt.WindowType.Popup)
        self._large.adjustSize()
        middle = self.window().frameGeometry().center()
        self._large.move(middle - self._large.rect().center())
        self._large.show()

    def _lay_out(self) -> None:
        inner = self.text.layout()
        if inner is not None:
            inner.setContentsMargins(0, 0, 0, 0)
        self.pictures.setModel(self._shown)
        self.pictures.setAccessibleName(self.tr("Pictures; Enter shows one large"))
        self.pictures.setViewMode(QListView.ViewMode.IconMode)
        self.pictures.setIconSize(_SMALL)
        self.pictures.setFixedHeight(_SMALL.height() + 4 * STEP_PX)
        self.pictures.setMovement(QListView.Movement.Static)
        self.pictures.setFrameShape(QFrame.Shape.NoFrame)
        buttons = WrapRow()  # beside the list there is no room for all of them in every language
        buttons.setSpacing(STEP_PX)
        for button in (self.gone, self.note_button, self.picture_button):
            buttons.addWidget(button)
        column = QVBoxLayout(self)
        column.setContentsMargins(14, STEP_PX, 14, 12)
        column.setSpacing(STEP_PX)
        column.addWidget(self.text, 1)
        column.addWidget(self.pictures)
        column.addWidget(self.form)
        column.addLayout(buttons)
