"""The forms for a new filament lot and a new instrument, opened from the pickers of the top row."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import replace
from typing import Any, TypeVar

from PySide6.QtWidgets import QWidget

from app.context import Context, Level
from app.units import inches_for
from app.widgets.fields import ChoiceField, CountField, Form, LengthField, NumberField, TextField
from app.widgets.materialfield import MaterialField
from app.widgets.popover import Popover
from app.words import shown
from core.errors import InputError, StoreError
from core.measuring.instrumentkinds import KINDS, kind_of
from core.records.rows import Instrument, Lot
from core.words import tr

_PER_100_MM = 100.0
_LOT: dict[str, float | str | None] = {
    "name": "",
    "material": "",
    "colour": "",
    "maker": "",
    "batch": "",
    "nominal_diameter_mm": 1.75,
    "note": "",
}
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
_OF_LENGTHS = tuple(key for key in _CALIPER if key not in ("name", "kind"))
_Row = TypeVar("_Row")


class NewLot(Popover):
    """The form for a filament lot."""

    def __init__(self, context: Context, parent: QWidget) -> None:
        note = tr("One lot is filament of one maker, colour and batch, usually one spool.")
        super().__init__(shown(tr("New lot")), _lot_form(), shown(note), parent)
        self._context = context
        self.submitted.connect(self._add)

    def _add(self, values: Mapping[str, Any]) -> None:
        lot = _added(self, self._context, lambda: self._context.store.add_lot(lot_from_values(values)))
        if lot is not None:
            self.form.set_values(_LOT)
            self._context.lots_changed.emit()
            self._context.select_lot(lot.id)


class NewInstrument(Popover):
    """The form for an instrument, filled with what is usual for a caliper."""

    def __init__(self, context: Context, parent: QWidget) -> None:
        note = tr(
            "u is a standard uncertainty. The values filled in are common practice for a caliper, no source: edit. "
            "Hand: repeatability of one re-seated reading from your last check; leave empty without one."
        )
        super().__init__(shown(tr("New instrument")), _instrument_form(), shown(note), parent)
        self._context = context
        self.submitted.connect(self._add)

    def _add(self, values: Mapping[str, Any]) -> None:
        add = self._context.store.add_instrument
        instrument = _added(self, self._context, lambda: add(instrument_from_values(values)))
        if instrument is not None:
            self.form.set_values(_CALIPER)
            _show_lengths(self.form, str(_CALIPER["kind"]))
            self._context.instruments_changed.emit()
            self._context.select_instrument(instrument.id)


class ChangeInstrument(Popover):
    """The form for the record of an instrument that is known already; a kept check fills it by itself."""

    def __init__(self, context: Context, parent: QWidget) -> None:
        note = tr("u is a standard uncertainty. Keeping a check on the page Instruments writes these by itself.")
        super().__init__(shown(tr("Change instrument")), _instrument_form(), shown(note), parent)
        self.save.setText(shown(tr("&Save")))
        self._context = context
        self._instrument: Instrument | None = None
        self.submitted.connect(self._change)

    def show_instrument(self, instrument: Instrument) -> None:
        """Fill the form with a record."""
        self._instrument = instrument
        kind = instrument.kind if instrument.kind in KINDS else "other"
        self.form.set_values({**{key: getattr(instrument, key, None) for key in _CALIPER}, "kind": kind,
                              "u_scale_per_100_mm": instrument.u_scale_ratio * _PER_100_MM})
        _show_lengths(self.form, kind)

    def _change(self, values: Mapping[str, Any]) -> None:
        assert self._instrument is not None  # shown before the form opens
        before = self._instrument
        change = self._context.store.change_instrument
        changed = _added(self, self._context, lambda: change(
            replace(instrument_from_values(values), id=before.id, version=before.version, note=before.note)))
        if changed is not None:
            self._context.instruments_changed.emit()


def lot_from_values(values: Mapping[str, Any]) -> Lot:
    """Return the row of a filled-in lot form."""
    return Lot(**{key: values[key] for key in _LOT})


def instrument_from_values(values: Mapping[str, Any]) -> Instrument:
    """Return the row of a filled-in instrument form.

    Raises:
        InputError: a repeatability without its degrees of freedom, or the other way round.
    """
    if not kind_of(values["kind"]).length:
        return Instrument(name=values["name"], kind=values["kind"])
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
    form.add("name", shown(tr("&Name")), TextField(required=True, longest=80))
    form.add("material", shown(tr("&Material")), MaterialField())
    form.add("colour", shown(tr("&Colour")), TextField(longest=40))
    form.add("maker", shown(tr("Ma&ker")), TextField(longest=80))
    form.add("batch", shown(tr("&Batch")), TextField(longest=80))
    form.add("nominal_diameter_mm", shown(tr("Nominal &diameter")), LengthField(low_mm=0.5, high_mm=10.0), "mm")
    form.add("note", shown(tr("N&ote")), TextField())
    form.set_values(_LOT)
    return form


def _instrument_form() -> Form:
    form = Form()
    kinds = [(key, shown(kind.name)) for key, kind in KINDS.items()]
    form.add("name", shown(tr("&Name")), TextField(required=True, longest=80))
    form.add("kind", shown(tr("&Kind")), ChoiceField(kinds))
    form.add("resolution_mm", shown(tr("&Resolution")), _resolution(), "mm")
    form.add("u_outside_zero_mm", shown(tr("u of zero, &outside")), _spread(required=True), "mm")
    form.add("u_inside_zero_mm", shown(tr("u of zero, &inside")), _spread(required=True), "mm")
    scale = NumberField(low=0.0, high=1.0, required=True)
    form.add("u_scale_per_100_mm", shown(tr("u of s&cale")), scale, shown(tr("mm per 100 mm")))
    form.add("sd_hand_mm", shown(tr("&Hand, one sd")), _spread(), "mm")
    form.add("sd_hand_dof", shown(tr("Hand, &degrees of freedom")), CountField(low=1))
    form.set_values(_CALIPER)
    form.changed.connect(lambda key: _follow_kind(form, key))
    return form


def _follow_kind(form: Form, key: str) -> None:
    """Ask only for what an instrument of the chosen kind has."""
    if key == "kind":
        kind = str(form.field("kind").value())
        _show_lengths(form, kind)
        if kind_of(kind).length:
            form.set_values({"resolution_mm": kind_of(kind).resolution})


def _show_lengths(form: Form, kind: str) -> None:
    for key in _OF_LENGTHS:
        form.show_field(key, kind_of(kind).length)


def _resolution() -> LengthField:
    return LengthField(low_mm=1e-5, high_mm=1.0, required=True, inch=inches_for("instrument"))


def _spread(*, required: bool = False) -> LengthField:
    return LengthField(low_mm=0.0, high_mm=1.0, required=required, inch=inches_for("instrument"))


def _added(form: Popover, context: Context, add: Callable[[], _Row]) -> _Row | None:
    """Add a row and close the form; a refusal is shown at its field and the form stays."""
    try:
        row = add()
    except InputError as error:
        if error.field in ("id", "version"):  # of no field in the form
            context.say(shown(error.message), Level.ERROR)
        form.refuse(error)
        return None
    except StoreError as error:
        context.say(shown(error.message), Level.ERROR)
        return None
    form.hide()
    return row
