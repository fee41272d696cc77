"""Entry fields of the forms, and the form. Text becomes a number in core units here and nowhere else.

Decimal comma and point are always accepted; a finished field shows the decimal mark of the locale, and a length typed
in inch shows its millimetres. The typed fields live in `linefields`; pages take all of them from here.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from PySide6.QtCore import QEvent, QObject, QSignalBlocker, QSize, Qt, Signal
from PySide6.QtGui import QKeyEvent, QPaintEvent, QWheelEvent
from PySide6.QtWidgets import (
    QComboBox,
    QGridLayout,
    QLabel,
    QStyle,
    QStyleOptionComboBox,
    QStylePainter,
    QToolTip,
    QVBoxLayout,
    QWidget,
)

from app.faults import or_else, told_at_once
from app.units import inch_heading
from app.widgets.droplist import show_whole
from app.widgets.lengthfields import GaugeField, LengthField
from app.widgets.linefields import (
    ENTER,
    CountField,
    LineField,
    NumberField,
    TextField,
    Value,
    local_text,
    mark_problem,
    number_text,
)
from app.widgets.wordslabel import WordsLabel
from app.words import shown
from core.errors import InputError

__all__ = ["ChoiceField", "CountField", "Field", "Form", "GaugeField", "LengthField", "LineField", "NumberField",
           "TextField", "Value", "local_text", "number_text"]


_MOST_LETTERS = 28  # that a choice asks room for


class ChoiceField(QComboBox):
    """One of several named values. The wheel turns it only while it has the focus.

    Attributes:
        least_text: it may be as narrow as this; empty where what is offered should be read whole.
    """

    elision = Qt.TextElideMode.ElideRight
    least_text = ""
    changed = Signal()
    edit_finished = Signal()  # after all that follows from `changed`
    problem_changed = Signal(str)

    def __init__(self, choices: Sequence[tuple[str, str]] = (), *, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.key = "choice"
        self.setSizeAdjustPolicy(QComboBox.SizeAdjustPolicy.AdjustToContents)
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.set_choices(choices)
        self.currentIndexChanged.connect(self._announce)

    def set_choices(self, choices: Sequence[tuple[str, str]]) -> None:
        """Offer (value, shown text) pairs; the value chosen before stays chosen where it is still offered."""
        before = self.value()
        with QSignalBlocker(self):
            self.clear()
            for value, text in choices:
                self.addItem(text, value)
            self.setCurrentIndex(max(self.findData(before), 0) if choices else -1)

    def value(self) -> str | None:
        """Return the chosen value, or None where nothing is offered."""
        value = self.currentData()
        return None if value is None else str(value)

    def set_hint(self, text: str) -> None:
        """Say in the tool tip what belongs here."""
        self.setToolTip(text)

    def set_value(self, value: Value) -> None:
        """Choose a value; no `changed`. An unknown value leaves nothing chosen."""
        with QSignalBlocker(self):
            self.setCurrentIndex(self.findData(value))
        self.problem("")

    def problem(self, message: str) -> None:
        """Show what is wrong under the field, in words; an empty message takes it away."""
        message = shown(message)
        if message != self.accessibleDescription():
            mark_problem(self, message)
            self.problem_changed.emit(message)

    def undo_state(self) -> str | None:
        """Return what is chosen."""
        return self.value()

    def restore_state(self, state: str | None) -> None:
        """Choose what was chosen before, where it is still offered, and announce it."""
        if (place := self.findData(state)) >= 0:
            self.setCurrentIndex(place)

    def show_restored(self, _before: str | None) -> None:
        """Put the keyboard here."""
        self.setFocus(Qt.FocusReason.OtherFocusReason)

    @or_else(False)
    def event(self, event: QEvent) -> bool:
        """Tell the whole text where it is too long for the field."""
        if event.type() == QEvent.Type.ToolTip and not self.toolTip() and self.shown_text() != self.currentText():
            QToolTip.showText(self.mapToGlobal(self.rect().bottomLeft()), self.currentText(), self)
            return True
        return super().event(event)

    @or_else(QSize())
    def minimumSizeHint(self) -> QSize:
        """Ask for the widest text now offered, or `least_text`; Qt remembers what it had first until the theme changes.

        A name that a person gave may be longer than is asked for: it is shown with its end left out.
        """
        measure, whole = self.fontMetrics(), self.sizeHint()
        option = QStyleOptionComboBox()
        self.initStyleOption(option)
        least = measure.horizontalAdvance(self.least_text or "n" * _MOST_LETTERS)
        kind = QStyle.ContentsType.CT_ComboBox
        needs = self.style().sizeFromContents(kind, option, QSize(least, measure.height()), self)
        return QSize(min(needs.width(), whole.width()), whole.height())

    def shown_text(self) -> str:
        """Return the chosen text as it fits into the field."""
        option = QStyleOptionComboBox()
        self.initStyleOption(option)
        part = QStyle.SubControl.SC_ComboBoxEditField
        room = self.style().subControlRect(QStyle.ComplexControl.CC_ComboBox, option, part, self).width()
        return self.fontMetrics().elidedText(self.currentText(), self.elision, room)

    @told_at_once
    def paintEvent(self, _event: QPaintEvent) -> None:
        """Draw the text with its end, or its middle, left out where it does not fit."""
        painter, option = QStylePainter(self), QStyleOptionComboBox()
        self.initStyleOption(option)
        option.currentText = self.shown_text()
        painter.drawComplexControl(QStyle.ComplexControl.CC_ComboBox, option)
        painter.drawControl(QStyle.ControlElement.CE_ComboBoxLabel, option)

    @told_at_once
    def showPopup(self) -> None:
        """Open the list as wide as its texts, and as high as its lines."""
        view = self.view()
        bar = view.verticalScrollBar().sizeHint().width() if self.count() > self.maxVisibleItems() else 0
        view.setMinimumWidth(view.sizeHintForColumn(0) + bar + 2 * view.frameWidth())
        super().showPopup()
        show_whole(self)

    @told_at_once
    def wheelEvent(self, event: QWheelEvent) -> None:
        """Let the wheel scroll the page unless this field has the focus."""
        if self.hasFocus():
            super().wheelEvent(event)
        else:
            event.ignore()

    def _announce(self) -> None:
        self.problem("")
        self.changed.emit()
        self.edit_finished.emit()


Field = LineField | ChoiceField


class Form(QWidget):
    """Labelled fields below one another; Enter goes to the next one, `entered` follows Enter in the last."""

    changed = Signal(str)
    entered = Signal()

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._fields: dict[str, Field] = {}
        self._labels: dict[str, QLabel] = {}
        self._problems: dict[str, QLabel] = {}
        self._named: dict[str, tuple[str, str]] = {}  # label and unit, as they were given
        self._grid = QGridLayout(self)
        self._grid.setContentsMargins(0, 0, 0, 0)
        self._grid.setHorizontalSpacing(16)
        self._grid.setVerticalSpacing(8)
        self._grid.setColumnStretch(1, 1)

    def add(self, key: str, label: str, field: Field, unit: str = "") -> Field:
        """Append a field with its label; the unit stands behind the label's words."""
        name = WordsLabel(_labelled(label, field, unit))
        name.setBuddy(field)
        field.key = key
        field.setObjectName(key)
        field.setAccessibleName(name.text().replace("&", ""))
        says = WordsLabel()
        says.setObjectName("question")
        says.setWordWrap(True)
        says.hide()
        self._fields[key], self._labels[key], self._problems[key] = field, name, says
        self._named[key] = label.replace("&", ""), unit
        field.installEventFilter(self)
        field.changed.connect(self._field_changed)
        field.problem_changed.connect(self._show_below)
        self._arrange()
        return field

    def set_unit(self, key: str, label: str, unit: str) -> None:
        """Name a field anew where its unit depends on what was chosen."""
        self._named[key] = label.replace("&", ""), unit
        self._labels[key].setText(_labelled(label, self._fields[key], unit))
        self._fields[key].setAccessibleName(self._labels[key].text().replace("&", ""))

    def _arrange(self) -> None:
        """Place the field added last; room to spare goes below it. A form of another shape arranges them all anew."""
        key, row = next(reversed(self._fields)), len(self._fields) - 1
        self._labels[key].setMinimumHeight(self._fields[key].sizeHint().height())
        cell = QVBoxLayout()
        cell.setSpacing(2)
        cell.addWidget(self._fields[key])
        cell.addWidget(self._problems[key])
        self._grid.addWidget(self._labels[key], row, 0, Qt.AlignmentFlag.AlignTop)
        self._grid.addLayout(cell, row, 1)
        self._grid.setRowStretch(row, 0)
        self._grid.setRowStretch(row + 1, 1)

    def field(self, key: str) -> Field:
        """Return the field of that name."""
        return self._fields[key]

    def name_and_unit(self, key: str) -> tuple[str, str]:
        """Return the words of a label and the unit in which the value of its field is; empty where it has none."""
        return self._named[key]

    def values(self) -> dict[str, Value]:
        """Return the values by key, without the fields that are hidden.

        Raises:
            InputError: the first field that cannot be read; `field` is its key.
        """
        return {key: field.value() for key, field in self._fields.items() if not field.isHidden()}

    def set_values(self, values: Mapping[str, Value]) -> None:
        """Show values by key; fields not named stay as they are, unknown keys are left out."""
        for key, value in values.items():
            if key in self._fields:
                self._fields[key].set_value(value)

    def show_problem(self, key: str, message: str) -> bool:
        """Show a problem under its field and return whether this form has that field."""
        if key not in self._fields or self._fields[key].isHidden():
            return False
        self._fields[key].problem(message)
        return True

    def mark_unreadable(self) -> None:
        """Say under every field that cannot be read what is wrong with it."""
        for field in self._fields.values():
            if field.isHidden():
                continue
            try:
                field.value()
            except InputError as error:
                field.problem(error.message)

    def clear_problems(self) -> None:
        """Take all problems away."""
        for field in self._fields.values():
            field.problem("")

    def show_field(self, key: str, visible: bool) -> None:
        """Show or hide a field with its label; a hidden field counts for nothing."""
        self._fields[key].setVisible(visible)
        self._labels[key].setVisible(visible)
        self._problems[key].setVisible(visible and bool(self._problems[key].text()))

    @or_else(False)
    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        """Go to the next field on Enter."""
        if isinstance(event, QKeyEvent) and event.type() == QEvent.Type.KeyPress and event.key() in ENTER:
            self._go_on(watched)
            return True
        return super().eventFilter(watched, event)

    def _go_on(self, watched: QObject) -> None:
        fields = [field for field in self._fields.values() if not field.isHidden() and field.isEnabled()]
        here = next((place for place, field in enumerate(fields) if field is watched), len(fields))
        if isinstance(watched, LineField):
            watched.finish()
        if here + 1 < len(fields):
            fields[here + 1].setFocus(Qt.FocusReason.TabFocusReason)
        else:
            self.entered.emit()

    def _field_changed(self) -> None:
        field = self.sender()
        self.changed.emit(field.objectName() if field is not None else "")

    def _show_below(self, message: str) -> None:
        field = self.sender()
        key = field.objectName() if field is not None else ""
        if key in self._problems:
            self._problems[key].setText(message)
            self._problems[key].setVisible(bool(message) and not self._fields[key].isHidden())


def _labelled(label: str, field: Field, unit: str) -> str:
    """Return the words beside a field, with the unit in which it is shown."""
    unit = inch_heading(unit) if isinstance(field, LengthField) and field.inch else unit
    return f"{label}, {unit}" if unit else label
