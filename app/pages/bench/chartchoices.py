"""What is charted: whose quantity, which one, of which machine, lot or instrument, and how it is drawn."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable
from typing import TYPE_CHECKING, NamedTuple

from PySide6.QtCore import QSignalBlocker
from PySide6.QtWidgets import QWidget

from app.theme import STEP_PX
from app.widgets.fieldgrid import FieldGrid
from app.widgets.fields import ChoiceField
from app.words import shown
from core.errors import InputError
from core.records.rows import Instrument, Lot, Machine
from core.words import tr

if TYPE_CHECKING:
    from core.guidance.charted import Quantity

USED = "used"
EVERY = ""  # the choice of every machine or lot
_MACHINE, _LOT, _INSTRUMENT = "machine", "lot", "instrument"
_SEEN = {_MACHINE: (_MACHINE,), _LOT: (_MACHINE, _LOT), _INSTRUMENT: (_INSTRUMENT,)}


class Whose(NamedTuple):
    """Whose results are charted; None leaves a condition out."""

    machine_id: int | None = None
    lot_id: int | None = None
    instrument_id: int | None = None


class ChartChoices(FieldGrid):
    """Choices in one row; those that say nothing to the owner are hidden."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(5, parent)
        self.owner, self.quantity, self.kind = ChoiceField(), ChoiceField(), ChoiceField()
        self.machine, self.lot, self.instrument = ChoiceField(), ChoiceField(), ChoiceField()
        self._quantities: dict[str, Quantity] = {}
        self.owner.set_choices([
            (_MACHINE, self.tr("the machine's")),
            (_LOT, self.tr("the lot's")),
            (_INSTRUMENT, self.tr("an instrument's")),
        ])  # fmt: skip
        self.kind.set_choices([
            ("individuals", self.tr("single results")),
            ("ewma", self.tr("smoothed mean")),
            ("dates", self.tr("by date")),
            (USED, self.tr("by filament used")),
        ])  # fmt: skip
        for key, label, choice in (
            ("owner", self.tr("&Whose"), self.owner),
            ("quantity", self.tr("&Quantity"), self.quantity),
            (_MACHINE, self.tr("M&achine"), self.machine),
            (_LOT, self.tr("&Lot"), self.lot),
            (_INSTRUMENT, self.tr("&Instrument"), self.instrument),
            ("kind", self.tr("C&hart"), self.kind),
        ):
            self.add(key, label, choice)
        self.show_owned()

    def chosen(self) -> Quantity:
        """Return the chosen quantity."""
        return self._quantities[str(self.quantity.value())]

    def whose(self) -> Whose:
        """Return whose results are wanted.

        Raises:
            InputError: field `machine` or `instrument` where there is none.
        """
        machine, lot, instrument = (_id(choice) for choice in (self.machine, self.lot, self.instrument))
        owner = self.owner.value()
        if owner == _LOT:
            return Whose(machine, lot)
        if owner == _MACHINE and machine is None:
            raise InputError("machine", tr("Choose or add a machine above; its results are charted here."))
        if owner == _INSTRUMENT and instrument is None:
            raise InputError("instrument", tr("Choose or add an instrument above; its checks are charted here."))
        return Whose(machine) if owner == _MACHINE else Whose(instrument_id=instrument)

    def show_owned(self) -> None:
        """Show the choices that say something to the owner, and give them the room."""
        owner = str(self.owner.value())
        for key in (_MACHINE, _LOT, _INSTRUMENT):
            self.show_field(key, key in _SEEN[owner])
        for column, share in enumerate((3, 4, 3, 3, 4) if owner == _LOT else (3, 5, 3, 3, 0)):
            self.set_share(column, share)

    def follow(self, **picked: Machine | Lot | Instrument | None) -> None:
        """Choose what is picked in the top row; of `machine`, `lot` and `instrument` those that are named."""
        with QSignalBlocker(self):
            for key, row in picked.items():
                self.field(key).set_value(EVERY if row is None or row.id is None else str(row.id))

    def offer(
        self, machines: Iterable[Machine], lots: Iterable[Lot], instruments: Iterable[Instrument], found: Counter[str]
    ) -> None:
        """List what there is now; choices stay where they are still there. `found` counts results by name."""
        every = [(EVERY, self.tr("every machine"))] if self.owner.value() == _LOT else []
        with QSignalBlocker(self):
            self.machine.set_choices([*every, *((str(m.id), m.name) for m in machines)])
            self.lot.set_choices([(EVERY, self.tr("every lot")), *((str(lot.id), lot.name) for lot in lots)])
            self.instrument.set_choices([(str(row.id), row.name) for row in instruments])
            self._offer_quantities(found)

    def _offer_quantities(self, found: Counter[str]) -> None:
        """List what the owner has; first chosen is the one with most results of late."""
        from core.guidance.charted import main_quantities, other_quantities

        every = (*main_quantities(), *other_quantities(found))
        mine = [quantity for quantity in every if quantity.owner == self.owner.value()]
        before = self.quantity.value()
        self._quantities = {quantity.name: quantity for quantity in mine}
        self.quantity.set_choices([(quantity.name, shown(quantity.words)) for quantity in mine])
        words = self.quantity.view()
        words.setMinimumWidth(words.sizeHintForColumn(0) + 3 * STEP_PX)  # the list may be wider than its field
        if before not in self._quantities:
            self.quantity.set_value(max(self._quantities, key=lambda name: found[name]))


def _id(choice: ChoiceField) -> int | None:
    return int(str(choice.value())) if choice.value() else None
