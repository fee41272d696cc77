"""A form whose labels stand above the fields, several fields side by side; for cards that have little height."""

from __future__ import annotations

from collections.abc import Mapping

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QWidget

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
        self._wide: set[str] = set()
        self._place = 0  # of the next field, counted along the rows
        self._grid.setHorizontalSpacing(12)
        self._grid.setVerticalSpacing(3)
        for column in range(columns):
            self._grid.setColumnStretch(column, 1)

    def add(self, key: str, label: str, field: Field, unit: str = "") -> Field:
        """Append a field with its label."""
        super().add(key, label, field, unit)
        self._labels[key].setWordWrap(True)
        self._labels[key].setAlignment(Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignBottom)
        if isinstance(field, LineField):
            field.textEdited.connect(self.typed)
            field.setMinimumWidth(_NARROW_PX)
        return field

    def show_field(self, key: str, visible: bool) -> None:
        """Show or hide a field with its label; the others close up."""
        self.show_fields({key: visible})

    def show_fields(self, visible: Mapping[str, bool]) -> None:
        """Show or hide several fields at once; the others close up."""
        changed = {key: seen for key, seen in visible.items() if self._fields[key].isHidden() is seen}
        for key, seen in changed.items():
            super().show_field(key, seen)
        if changed:
            self._arrange_anew()

    def set_wide(self, key: str) -> None:
        """Give a field a row of its own, as wide as all columns."""
        self._wide.add(key)
        self._arrange_anew()

    def set_gap(self, gap_px: int) -> None:
        """Set columns closer or wider than usual."""
        self._grid.setHorizontalSpacing(gap_px)

    def set_share(self, column: int, share: int) -> None:
        """Give a column its share of the width; 0 leaves it what it needs."""
        self._grid.setColumnStretch(column, share)

    def texts(self) -> dict[str, str]:
        """Return every field's text as typed, hidden ones too, so that what is unfinished can be stored."""
        return {
            key: field.kept_text() if isinstance(field, LineField) else str(field.value())
            for key, field in self._fields.items()
        }

    def set_texts(self, texts: Mapping[str, str]) -> None:
        """Show texts as `texts` gave them; fields not named stay as they are."""
        for key, field in self._fields.items():
            if key not in texts:
                continue
            if isinstance(field, LineField):
                field.show_text(texts[key])
            else:
                field.set_value(texts[key])

    def take_focus(self) -> None:
        """Put the keyboard on the first field in sight."""
        first = next(field for field in self._fields.values() if not field.isHidden())
        first.setFocus(Qt.FocusReason.TabFocusReason)

    def _arrange(self) -> None:
        """Place the field added last behind the others."""
        self._put(next(reversed(self._fields)))

    def _arrange_anew(self) -> None:
        for key in self._fields:
            for widget in (self._labels[key], self._fields[key], self._problems[key]):
                self._grid.removeWidget(widget)
        self._place = 0
        for key, field in self._fields.items():
            if not field.isHidden():
                self._put(key)

    def _put(self, key: str) -> None:
        wide = key in self._wide
        if wide:
            self._place += -self._place % self._columns
        row, column = divmod(self._place, self._columns)
        across = self._columns if wide else 1
        self._labels[key].setContentsMargins(0, _GAP_PX if row else 0, 0, 0)
        for line, widget in enumerate((self._labels[key], self._fields[key], self._problems[key])):
            self._grid.addWidget(widget, _LINES * row + line, column, 1, across)
        self._place += across
