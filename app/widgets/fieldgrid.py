"""A form whose labels stand above the fields, several fields side by side; for cards that have little height."""

from __future__ import annotations

from collections.abc import Mapping

from PySide6.QtCore import QSignalBlocker, Qt, Signal
from PySide6.QtWidgets import QComboBox, QWidget

from app.widgets.fields import Field, Form, LineField

_LINES = 3  # of the grid for each row of fields: label, field, problem
_GAP_PX = 5  # above the labels, so that each belongs to the field below
_NARROW_PX = 72


class FieldGrid(Form):
    """As Form, but filled row by row; hidden fields leave no hole. `typed` follows every key."""

    typed = Signal()

    def __init__(self, columns: int, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._columns = columns
        self._grid.setHorizontalSpacing(12)
        self._grid.setVerticalSpacing(3)
        for column in range(columns):
            self._grid.setColumnStretch(column, 1)

    def add(self, key: str, label: str, field: Field, unit: str = "") -> Field:
        """Append a field with its label."""
        super().add(key, label, field, unit)
        if isinstance(field, LineField):
            field.textEdited.connect(self.typed)
            field.setMinimumWidth(_NARROW_PX)
        else:
            field.setSizeAdjustPolicy(QComboBox.SizeAdjustPolicy.AdjustToMinimumContentsLengthWithIcon)
            field.setMinimumContentsLength(6)
        return field

    def show_field(self, key: str, visible: bool) -> None:
        """Show or hide a field with its label; the others close up."""
        super().show_field(key, visible)
        self._arrange()

    def set_share(self, column: int, share: int) -> None:
        """Give a column its share of the width; 0 leaves it what it needs."""
        self._grid.setColumnStretch(column, share)

    def texts(self) -> dict[str, str]:
        """Return every field's text as typed, hidden ones too, so that what is unfinished can be stored."""
        return {
            key: field.text() if isinstance(field, LineField) else str(field.value())
            for key, field in self._fields.items()
        }

    def set_texts(self, texts: Mapping[str, str]) -> None:
        """Show texts as `texts` gave them; fields not named stay as they are."""
        for key, field in self._fields.items():
            if key not in texts:
                continue
            if isinstance(field, LineField):
                with QSignalBlocker(field):
                    field.setText(texts[key])
            else:
                field.set_value(texts[key])

    def take_focus(self) -> None:
        """Put the keyboard on the first field in sight."""
        first = next(field for field in self._fields.values() if not field.isHidden())
        first.setFocus(Qt.FocusReason.TabFocusReason)

    def _arrange(self) -> None:
        seen = [key for key, field in self._fields.items() if field.parent() is None or not field.isHidden()]
        for key in self._fields:
            for widget in (self._labels[key], self._fields[key], self._problems[key]):
                self._grid.removeWidget(widget)
        for place, key in enumerate(seen):
            row, column = divmod(place, self._columns)
            self._labels[key].setContentsMargins(0, _GAP_PX if row else 0, 0, 0)
            self._grid.addWidget(self._labels[key], _LINES * row, column)
            self._grid.addWidget(self._fields[key], _LINES * row + 1, column)
            self._grid.addWidget(self._problems[key], _LINES * row + 2, column)
