"""The left side of a page with trials: a few settings, the big line for the next reading, and the table.

A subject gives its columns and adds its settings; the readings model is the truth.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Any

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QShortcut
from PySide6.QtWidgets import QFrame, QLabel, QPushButton, QVBoxLayout, QWidget

from app.theme import STEP_PX
from app.widgets.fieldgrid import FieldGrid
from app.widgets.fields import ChoiceField, Field
from app.widgets.panel import Panel
from app.widgets.reading_entry import ReadingEntry
from app.widgets.reading_rows import Column
from app.widgets.readings import ReadingsModel
from app.widgets.readings_table import ReadingsTable
from app.widgets.trialpicker import TrialPicker
from app.widgets.wraprow import WrapRow
from app.words import shown
from core.errors import InputError

_ROWS_IN_SIGHT = 4


class TrialForm(QWidget):
    """What a person sets and types; `changed` follows every finished change.

    Attributes:
        model, table, entry: the readings.
        settings: the fields that hold for the whole trial; `add_setting` fills it.
        foot: a row of buttons below the table, for a subject's own ones.
        new_button: shown while a kept trial is looked at.
        reads_instrument: whether the picked instrument is what is read, so that its checks bear on the trial.
    """

    changed = Signal()

    def __init__(
        self,
        columns: Sequence[Column],
        picker: TrialPicker,
        *,
        above_entry: QWidget | None = None,
        above_stays: bool = False,
        across: int = 2,
        foretells: bool = True,
    ) -> None:
        super().__init__()
        self.model = ReadingsModel(columns, self)
        self.table = ReadingsTable(self.model)
        self.entry = ReadingEntry(self.table, foretells=foretells)
        self.settings, self.reads_instrument = FieldGrid(across), True
        self.new_button = QPushButton(self.tr("&New readings"))
        self.foot = WrapRow()
        self._own: dict[str, Field] = {}
        self._aid = None if above_stays else above_entry  # helps to take readings, and shows none
        self._last: QWidget = picker
        self.settings.add("trial", self.tr("Tri&al"), picker)
        self._lay_out([above_entry] if above_entry else [])
        self.setFocusProxy(self.entry)
        self.model.edited.connect(self.changed)
        self.settings.entered.connect(self.entry.setFocus)

    def add_setting(self, key: str, label: str, field: Field, unit: str = "") -> None:
        """Add a field that holds for the whole trial; it is locked, stored and shown again with the readings."""
        self.settings.add(key, label, field, unit)
        self.setTabOrder(self._last, field)  # Tab goes down the form: settings, then the readings made before them
        self._last = field
        self._own[key] = field
        field.changed.connect(self.changed)

    def number(self, key: str) -> float:
        """Return a number that is needed.

        Raises:
            InputError: at that field, where it is empty or cannot be read.
        """
        value = self._own[key].value()
        if value is None:
            raise InputError(key, self.tr("Nothing is typed here yet; this one is needed."))
        return float(value)

    def conditions(self) -> dict[str, Any]:
        """Return the settings as they are to be stored; None for one that cannot be read."""
        return {key: _value_or_none(field) for key, field in self._own.items()}

    def show_conditions(self, conditions: Mapping[str, Any]) -> None:
        """Show stored settings; those not stored are emptied, choices without one that is offered keep theirs."""
        for key, field in self._own.items():
            value = conditions.get(key)
            if not isinstance(field, ChoiceField):
                field.set_value(value)
            elif value is not None:
                before = field.value()
                field.set_value(value)
                if field.value() is None:
                    field.set_value(before)

    def not_offered(self, conditions: Mapping[str, Any]) -> list[str]:
        """Return the stored choices that no field can show, each with the name of its field."""
        return [
            f"{field.accessibleName()}: {conditions[key]}"
            for key, field in self._own.items()
            if isinstance(field, ChoiceField) and conditions.get(key) not in (None, field.value())
        ]

    def told_settings(self, conditions: Mapping[str, Any]) -> dict[str, tuple[str, str]]:
        """Return the stored settings for people, each with its label: those that count and are shown as they were.

        Lengths are in mm whatever unit is shown; numbers have a decimal point.
        """
        told = {}
        for key, field in self._own.items():
            value = conditions.get(key)
            if value in (None, "") or field.isHidden():
                continue
            label, unit = self.settings.name_and_unit(key)
            if not isinstance(field, ChoiceField):
                text = f"{value:.10g}" if isinstance(value, int | float) else str(value)
                told[key] = label, f"{text} {unit}".strip()
            elif value == field.value():
                told[key] = label, field.currentText()
        return told

    def show_rows(self, rows: Sequence[Mapping[str, Any]]) -> None:
        """Show other readings."""
        self.model.set_rows(rows)

    def show_problem(self, field: str, row: int | None, message: str) -> str:
        """Show a sentence at its field or reading; return it as it is to be read elsewhere, a field's name before."""
        if self.settings.show_problem(field, message):
            return f"{self.settings.field(field).accessibleName()}: {shown(message)}"
        self.model.show_problem(row, field, message)
        return message

    def clear_problems(self) -> None:
        """Take the sentences away."""
        self.settings.clear_problems()
        self.model.clear_problems()

    def unfinished(self) -> str:
        """Say what is to be done about a reading before all of them can be kept; nothing where they can."""
        if any(row["questioned"] for row in self.model.rows()):
            return self.tr("A reading has an open question; answer it, then keep the trial.")
        if unread := self.model.problems():
            text = self.tr("Row {row} cannot be read; mend or clear it, then keep the trial.")
            return text.format(row=unread[0][0] + 1)
        return ""

    def lock(self, locked: bool) -> None:
        """Show readings without letting them be changed, and without what only helps to take them."""
        self.model.lock(locked)
        self.entry.lock(locked)
        for widget in self._own.values():
            widget.setEnabled(not locked)
        if self._aid is not None:
            self._aid.setVisible(not locked)
        buttons = [button for button in self.findChildren(QPushButton) if self.foot.indexOf(button) >= 0]
        for visible in (False, True):  # hide first: all side by side would widen a small window
            for button in buttons:
                if (locked == (button is self.new_button)) is visible:
                    button.setVisible(visible)
        self.setFocusProxy(self.new_button if locked else self.entry)
        if locked:
            self.new_button.setFocus()

    def _lay_out(self, above_entry: list[QWidget]) -> None:
        self.table.setMinimumHeight(_ROWS_IN_SIGHT * self.table.verticalHeader().defaultSectionSize())
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(STEP_PX)
        column.addWidget(self.settings)
        entering = card(14, *above_entry, self.entry)
        entering.setAccessibleName(self.tr("Next reading"))
        column.addWidget(entering)
        column.addWidget(card(1, self.table), 1)
        column.addLayout(self.foot)
        self.foot.addWidget(self.new_button)
        self.foot.setSpacing(STEP_PX)
        for key in (Qt.Key.Key_Return, Qt.Key.Key_Enter):
            shortcut = QShortcut(key, self.new_button, context=Qt.ShortcutContext.WidgetShortcut)
            shortcut.activated.connect(self.new_button.click)
        self.new_button.hide()


def card(margin_px: int, *widgets: QWidget) -> QFrame:
    """Return a card with these widgets below one another; a screen reader calls it as the first that has a name."""
    names = (widget.text() if isinstance(widget, QLabel) else widget.accessibleName() for widget in widgets)
    frame = Panel(next(filter(None, names), ""))
    column = QVBoxLayout(frame)
    column.setContentsMargins(margin_px, margin_px, margin_px, margin_px)
    column.setSpacing(STEP_PX)
    for widget in widgets:
        column.addWidget(widget)
    return frame


def _value_or_none(field: Field) -> Any:
    try:
        return field.value()
    except InputError:
        return None
