"""The forms for a new filament lot and a new instrument, opened from the pickers of the top row."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from typing import Any, TypeVar

from PySide6.QtCore import QCoreApplication
from PySide6.QtWidgets import QCompleter, QWidget

from app.context import Context, Level
from app.widgets.fields import ChoiceField, CountField, Form, LengthField, NumberField, TextField
from app.widgets.popover import Popover
from app.words import shown
from core.errors import InputError, StoreError
from core.records.rows import Instrument, Lot
from core.words import tr

_MATERIALS = ("PLA", "PETG", "ABS", "ASA", "PA", "PC", "PP", "TPU")
_PER_100_MM = 100.0
# A caliper in usual order. Standard uncertainties; common practice, no source.
_CALIPER: dict[str, float | str | None] = {
    "name": "",
    "kind": "caliper",
    "resolution_mm": 0.01,
    "u_outside_zero_mm": 0.012,
    "u_inside_zero_mm": 0.015,
    "u_scale_per_100_mm": 0.0,
    "sd_hand_mm": None,
    "sd_hand_dof": None,
}
_Row = TypeVar("_Row")


def _tr(text: str) -> str:
    return QCoreApplication.translate("newrows", text)


class NewLot(Popover):
    """The form for a filament lot."""

    def __init__(self, context: Context, parent: QWidget) -> None:
        super().__init__(_tr("New lot"), _lot_form(), _tr(
            "One lot is filament of one maker, colour and batch, usually one spool."), parent)
        self._context = context
        self.submitted.connect(self._add)

    def _add(self, values: Mapping[str, Any]) -> None:
        lot = _added(self, self._context, lambda: self._context.store.add_lot(lot_from_values(values)))
        if lot is not None:
            self.form.set_values(dict.fromkeys(("name", "material", "colour", "note")))
            self._context.lots_changed.emit()
            self._context.select_lot(lot.id)


class NewInstrument(Popover):
    """The form for an instrument, filled with what is usual for a caliper."""

    def __init__(self, context: Context, parent: QWidget) -> None:
        super().__init__(_tr("New instrument"), _instrument_form(), _tr(
            "u is a standard uncertainty. The values filled in are common practice for a caliper, no source: edit. "
            "Hand: repeatability of one re-seated reading from your last check; leave empty without one."), parent)
        self._context = context
        self.submitted.connect(self._add)

    def _add(self, values: Mapping[str, Any]) -> None:
        add = self._context.store.add_instrument
        instrument = _added(self, self._context, lambda: add(instrument_from_values(values)))
        if instrument is not None:
            self.form.set_values(_CALIPER)
            self._context.instruments_changed.emit()
            self._context.select_instrument(instrument.id)


def lot_from_values(values: Mapping[str, Any]) -> Lot:
    """Return the row of a filled-in lot form."""
    return Lot(name=values["name"], material=values["material"], colour=values["colour"], note=values["note"])


def instrument_from_values(values: Mapping[str, Any]) -> Instrument:
    """Return the row of a filled-in instrument form.

    Raises:
        InputError: a repeatability without its degrees of freedom, or the other way round.
    """
    sd_mm, dof = values["sd_hand_mm"], values["sd_hand_dof"]
    if sd_mm is not None and dof is None:
        raise InputError("sd_hand_dof", tr("Give the degrees of freedom too: the number of readings less one."))
    if sd_mm is None and dof is not None:
        raise InputError("sd_hand_mm", tr("Give the standard deviation too, or leave both empty."))
    return Instrument(
        name=values["name"],
        kind=values["kind"],
        resolution_mm=values["resolution_mm"],
        u_outside_zero_mm=values["u_outside_zero_mm"],
        u_inside_zero_mm=values["u_inside_zero_mm"],
        u_scale_ratio=values["u_scale_per_100_mm"] / _PER_100_MM,
        sd_hand_mm=sd_mm,
        sd_hand_dof=dof,
    )


def _lot_form() -> Form:
    form = Form()
    form.add("name", _tr("&Name"), TextField(required=True, longest=80))
    material = TextField(required=True, longest=40)
    material.setCompleter(QCompleter(_MATERIALS, material))
    form.add("material", _tr("&Material"), material)
    form.add("colour", _tr("&Colour"), TextField(longest=40))
    form.add("note", _tr("N&ote"), TextField())
    return form


def _instrument_form() -> Form:
    form = Form()
    kinds = [("caliper", _tr("caliper")), ("micrometer", _tr("micrometer")), ("other", _tr("other"))]
    form.add("name", _tr("&Name"), TextField(required=True, longest=80))
    form.add("kind", _tr("&Kind"), ChoiceField(kinds))
    form.add("resolution_mm", _tr("&Resolution"), LengthField(low_mm=1e-5, high_mm=1.0, required=True), "mm")
    form.add("u_outside_zero_mm", _tr("u of zero, &outside"), _spread(required=True), "mm")
    form.add("u_inside_zero_mm", _tr("u of zero, &inside"), _spread(required=True), "mm")
    scale = NumberField(low=0.0, high=1.0, required=True)
    form.add("u_scale_per_100_mm", _tr("u of &scale"), scale, _tr("mm per 100 mm"))
    form.add("sd_hand_mm", _tr("&Hand, standard deviation"), _spread(), "mm")
    form.add("sd_hand_dof", _tr("Hand, &degrees of freedom"), CountField(low=1))
    form.set_values(_CALIPER)
    return form


def _spread(*, required: bool = False) -> LengthField:
    return LengthField(low_mm=0.0, high_mm=1.0, required=required)


def _added(form: Popover, context: Context, add: Callable[[], _Row]) -> _Row | None:
    """Add a row and close the form; a refusal is shown at its field and the form stays."""
    try:
        row = add()
    except InputError as error:
        form.refuse(error)
        return None
    except StoreError as error:
        context.say(shown(error.message), Level.ERROR)
        return None
    form.hide()
    return row
