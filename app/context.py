"""What every page is given: the store, what is picked in the window's top row, and the signals of their changes."""

from __future__ import annotations

from enum import StrEnum
from typing import TYPE_CHECKING, Protocol, TypeVar

from PySide6.QtCore import QObject, Signal

from core.errors import StoreError

if TYPE_CHECKING:
    from collections.abc import Callable

    from app.waiting import WaitingRoom
    from core.part_size.prediction import Changes
    from core.records.rows import Instrument, Lot, Machine, Trial
    from core.records.store import Store


_LOOK_BACK = 20  # trials: checks of instruments may lie above the last printed one


class Level(StrEnum):
    """How loud a notice is."""

    INFO = "info"
    GOOD = "good"
    WARNING = "warning"
    ERROR = "error"


class _Row(Protocol):
    @property
    def id(self) -> int | None: ...


_AnyRow = TypeVar("_AnyRow", bound=_Row)


class Context(QObject):
    """The store and the picked machine, lot and instrument.

    Whoever adds or changes a row in the store emits `machines_changed`, `lots_changed` or `instruments_changed`; the
    context then reads its own row anew. `kept` carries the Trial, `logged` the Event, `author_changed` the name of who
    is at work, `page_asked` the key of the page that a page wants opened for what is picked, `trial_asked` the number
    of the kept trial whose entry in the logbook is wanted, `shop_asked` the path or
    URL of the database to go on with, `demo_asked` a way of `app.options` into the demo shop or out of it,
    `help_topic_asked` the key of a text of `app.helptopics`, `notice` a sentence and its level. After `closing` nothing
    may use the store, in no thread.

    Attributes:
        tried: changes of size that a person tried on the page Whose error, by the number of the size trial; as long as
            the window is open.
    """

    machine_changed = Signal(object)
    lot_changed = Signal(object)
    instrument_changed = Signal(object)
    machines_changed = Signal()
    lots_changed = Signal()
    instruments_changed = Signal()
    kept = Signal(object)
    logged = Signal(object)
    author_changed = Signal(str)
    page_asked = Signal(str)
    trial_asked = Signal(int)
    shop_asked = Signal(str, bool)
    demo_asked = Signal(str)
    help_asked = Signal()
    help_topic_asked = Signal(str)
    closing = Signal()
    notice = Signal(str, str)

    def __init__(self, store: Store, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self.store = store
        self.machine: Machine | None = None
        self.lot: Lot | None = None
        self.instrument: Instrument | None = None
        self.tried: dict[int, Changes] = {}
        self._waiting: WaitingRoom | None = None
        self.machines_changed.connect(self._read_machine_anew)
        self.lots_changed.connect(self._read_lot_anew)
        self.instruments_changed.connect(self._read_instrument_anew)

    @property
    def machine_id(self) -> int | None:
        """The number of the picked machine; None where none is picked."""
        return self.machine.id if self.machine else None

    @property
    def lot_id(self) -> int | None:
        """The number of the picked lot; None where none is picked."""
        return self.lot.id if self.lot else None

    @property
    def instrument_id(self) -> int | None:
        """The number of the picked instrument; None where none is picked."""
        return self.instrument.id if self.instrument else None

    @property
    def is_demo(self) -> bool:
        """Whether this is the demo shop; no where the store refuses, as whoever reads or stores next says."""
        try:
            return self.store.is_demo
        except StoreError:
            return False

    def select_machine(self, machine_id: int | None) -> None:
        """Pick a machine by its id; None for none."""
        machine = self._found(self.store.machines, machine_id, self.machine)
        if machine != self.machine:
            self.machine = machine
            self.machine_changed.emit(machine)

    def select_lot(self, lot_id: int | None) -> None:
        """Pick a filament lot by its id; None for none."""
        lot = self._found(self.store.lots, lot_id, self.lot)
        if lot != self.lot:
            self.lot = lot
            self.lot_changed.emit(lot)

    def select_instrument(self, instrument_id: int | None) -> None:
        """Pick an instrument by its id; None for none."""
        instrument = self._found(self.store.instruments, instrument_id, self.instrument)
        if instrument != self.instrument:
            self.instrument = instrument
            self.instrument_changed.emit(instrument)

    def resume(self, machine_id: int | None = None) -> None:
        """Pick what the newest trial used, of one machine or of all, so that an unfinished trial is found again."""
        own = self.store.trials(machine_id=machine_id, limit=_LOOK_BACK)
        printed = next((trial for trial in own if trial.machine_id is not None), None)  # a check has no machine
        self.select_machine(printed.machine_id if printed and machine_id is None else machine_id)
        if printed:
            self.select_lot(printed.lot_id)
        everything = own if machine_id is None else self.store.trials(limit=_LOOK_BACK)
        here = (trial for trial in everything if trial.machine_id in (None, machine_id))  # checks among them
        read = (trial.instrument_id for trial in (*here, *own, *everything) if trial.instrument_id is not None)
        self.select_instrument(next(read, None))

    def hold(self, trial: Trial, seen: Trial | None, send: Callable[[], bool]) -> str:
        """Keep on this computer what the database refused, send it when it can be reached again, and say so.

        Args:
            trial: what is typed.
            seen: the open trial as the database last gave it.
            send: tries once more and tells whether it is stored.
        """
        from app.waiting import WaitingRoom

        if self._waiting is None:
            self._waiting = WaitingRoom(self)
        return self._waiting.hold(trial, seen, send)

    def release(self, trial: Trial) -> None:
        """Forget what is stored now."""
        if self._waiting is not None:
            self._waiting.release(trial)

    def sign(self, name: str) -> None:
        """Say who is at work here: what is kept from now on is theirs."""
        if name.strip() != self.store.author:
            self.store.author = name.strip()
            self.author_changed.emit(self.store.author)

    def say(self, text: str, level: str = Level.INFO) -> None:
        """Put a sentence, already in the window's language, on the notice line."""
        self.notice.emit(text, str(level))

    def _read_machine_anew(self) -> None:
        self.select_machine(self.machine_id)

    def _read_lot_anew(self) -> None:
        self.select_lot(self.lot_id)

    def _read_instrument_anew(self) -> None:
        self.select_instrument(self.instrument_id)

    def _found(
        self, rows: Callable[[], tuple[_AnyRow, ...]], row_id: int | None, picked: _AnyRow | None
    ) -> _AnyRow | None:
        """Return the row of that number; where the store refuses, that is said and what was picked stays."""
        if row_id is None:
            return None
        try:
            return next((row for row in rows() if row.id == row_id), None)
        except StoreError as error:
            from app.words import shown  # the window is painted before it is needed

            self.say(shown(error.message), Level.ERROR)
            return picked
