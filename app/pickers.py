"""The top row: which machine, filament lot and instrument; each list ends with "New …". At its end: what happened."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from functools import partial
from typing import TYPE_CHECKING, Protocol

from PySide6.QtCore import QSignalBlocker, QTimer, Signal
from PySide6.QtWidgets import QComboBox, QHBoxLayout, QLabel, QPushButton, QWidget

from app.context import Context
from app.faults import told_at_once
from app.theme import STEP_PX
from app.widgets.droplist import show_whole
from app.widgets.wraprow import WrapRow

if TYPE_CHECKING:
    from PySide6.QtGui import QKeyEvent, QWheelEvent

    from app.eventform import EventForm
    from app.widgets.popover import Popover

_NEW = "new"
_WALK_PAGE = "walk"


class _Named(Protocol):
    @property
    def id(self) -> int | None: ...
    @property
    def name(self) -> str: ...


class Picker(QComboBox):
    """One list of rows by name. A stray wheel or arrow key must not change the machine: the arrows open the list."""

    picked = Signal(object)
    new_asked = Signal()

    def __init__(self, name: str, nothing: str, new: str, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._nothing, self._new = nothing, new
        self.setAccessibleName(name)
        self.setSizeAdjustPolicy(QComboBox.SizeAdjustPolicy.AdjustToMinimumContentsLengthWithIcon)
        self.setMinimumContentsLength(6)
        self.setMaximumWidth(260)
        self.addItem(nothing)
        self.setEnabled(False)
        self.activated.connect(self._choose)

    def fill(self, rows: Sequence[_Named], current: _Named | None) -> None:
        """Offer the rows and show the current one."""
        with QSignalBlocker(self):
            self.clear()
            self.addItem(self._nothing, None)
            for row in rows:
                self.addItem(row.name, row.id)
            self.insertSeparator(self.count())
            self.addItem(self._new, _NEW)
        self.setEnabled(True)
        self.show_row(current)

    def show_row(self, row: _Named | None) -> None:
        """Show a row as the current one."""
        with QSignalBlocker(self):
            self.setCurrentIndex(0 if row is None else max(self.findData(row.id), 0))
        self.setToolTip(self.currentText())

    @told_at_once
    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Open the list on an arrow key."""
        from PySide6.QtCore import Qt  # slow to import: not before the first paint

        if event.key() in (Qt.Key.Key_Up, Qt.Key.Key_Down):
            self.showPopup()
        else:
            super().keyPressEvent(event)

    @told_at_once
    def showPopup(self) -> None:
        """Open the list, whole."""
        super().showPopup()
        show_whole(self)

    @told_at_once
    def wheelEvent(self, event: QWheelEvent) -> None:
        """Leave the wheel to the page."""
        event.ignore()

    def _choose(self, index: int) -> None:
        if self.itemData(index) == _NEW:
            QTimer.singleShot(0, self.new_asked.emit)  # later: the Enter that chose must not go into the form
        else:
            self.picked.emit(self.itemData(index))


class PickerRow(QWidget):
    """The three pickers. `new_machine_asked` is for the window, which knows the page for it."""

    new_machine_asked = Signal()

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.machine = Picker(self.tr("Machine"), self.tr("none"), self.tr("New machine…"))
        self.lot = Picker(self.tr("Filament lot"), self.tr("none"), self.tr("New lot…"))
        self.instrument = Picker(self.tr("Instrument"), self.tr("none"), self.tr("New instrument…"))
        layout = WrapRow(self)
        layout.setSpacing(STEP_PX)
        for text, picker in (  # Alt+M, E, U belong to the frame; pages take other letters
            (self.tr("&Machine"), self.machine),
            (self.tr("Filam&ent lot"), self.lot),
            (self.tr("Instr&ument"), self.instrument),
        ):
            label = QLabel(text)
            label.setObjectName("quiet")
            label.setBuddy(picker)
            layout.add(_side_by_side(self, label, picker), shares=True)
        self.walk = QPushButton(self.tr("Walk   F9"))
        self.walk.setAccessibleName(self.tr("Back to the walk"))
        self.walk.setToolTip(self.tr("Back to the setup walk of this machine (F9)"))
        self.walk.setEnabled(False)
        layout.add(self.walk)
        self.happened = QPushButton(self.tr("Log…   F8"))
        self.happened.setAccessibleName(self.tr("Log what happened"))
        self.happened.setToolTip(self.tr("Log what happened: a new belt, nozzle or spool, a crash, … (F8)"))
        self.happened.setEnabled(False)
        layout.add(self.happened)
        self._forms: dict[Picker, Popover] = {}
        self._events: EventForm | None = None

    def serve(self, context: Context) -> None:
        """Fill the pickers and keep them in step with the context from now on."""
        self._context = context
        self._fill_machines()
        self._fill_lots()
        self._fill_instruments()
        for changed, fill in (
            (context.machines_changed, self._fill_machines),
            (context.lots_changed, self._fill_lots),
            (context.instruments_changed, self._fill_instruments),
        ):
            changed.connect(fill)
        context.machine_changed.connect(self.machine.show_row)
        context.lot_changed.connect(self.lot.show_row)
        context.instrument_changed.connect(self.instrument.show_row)
        self.machine.picked.connect(context.select_machine)
        self.lot.picked.connect(context.select_lot)
        self.instrument.picked.connect(context.select_instrument)
        for picker in (self.machine, self.lot, self.instrument):
            picker.picked.connect(self._show_picked)  # where the store refused, what was picked before
        self.walk.setEnabled(True)
        self.walk.setShortcut("F9")
        self.walk.clicked.connect(partial(context.page_asked.emit, _WALK_PAGE))
        self.happened.setEnabled(True)
        self.happened.setShortcut("F8")
        self.happened.clicked.connect(self._ask_what_happened)
        self.machine.new_asked.connect(self._ask_for_machine)
        self.lot.new_asked.connect(self._ask_for_lot)
        self.instrument.new_asked.connect(self._ask_for_instrument)

    def _show_picked(self) -> None:
        self.machine.show_row(self._context.machine)
        self.lot.show_row(self._context.lot)
        self.instrument.show_row(self._context.instrument)

    def _fill_machines(self) -> None:
        self.machine.fill(self._context.store.machines(), self._context.machine)

    def _fill_lots(self) -> None:
        self.lot.fill(self._context.store.lots(), self._context.lot)

    def _fill_instruments(self) -> None:
        self.instrument.fill(self._context.store.instruments(), self._context.instrument)

    def _ask_for_machine(self) -> None:
        self.machine.show_row(self._context.machine)
        self.new_machine_asked.emit()

    def _ask_what_happened(self) -> None:
        from app.eventform import EventForm

        if self._events is None:
            self._events = EventForm(self._context, self)
            self._events.page_asked.connect(self._context.page_asked)
        self._events.open_below(self.happened)

    def _ask_for_lot(self) -> None:
        from app.newrows import NewLot

        self.lot.show_row(self._context.lot)
        self._open(NewLot, self.lot)

    def _ask_for_instrument(self) -> None:
        from app.newrows import NewInstrument

        self.instrument.show_row(self._context.instrument)
        self._open(NewInstrument, self.instrument)

    def _open(self, form: Callable[[Context, QWidget], Popover], picker: Picker) -> None:
        """Open the one form of a picker; what was typed and not added is still in it."""
        if picker not in self._forms:
            self._forms[picker] = form(self._context, self)
        self._forms[picker].open_below(picker)


def _side_by_side(parent: QWidget, label: QLabel, picker: Picker) -> QWidget:
    both = QWidget(parent)
    row = QHBoxLayout(both)
    row.setContentsMargins(0, 0, 0, 0)
    row.setSpacing(STEP_PX)
    row.addWidget(label)
    row.addWidget(picker, 1)
    both.setMaximumWidth(label.sizeHint().width() + STEP_PX + picker.maximumWidth())
    return both
