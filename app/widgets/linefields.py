"""Fields for typed text: numbers, lengths, counts, words.

The text is the only copy of the value. `changed` follows a finished edit of the person (Enter or leaving the field),
never a value set by the program.
"""

from __future__ import annotations

import re

from PySide6.QtCore import QLocale, QSignalBlocker, Qt, Signal
from PySide6.QtGui import QFocusEvent, QKeyEvent
from PySide6.QtWidgets import QLineEdit, QWidget

from app.faults import told_at_once
from app.words import shown
from core.errors import InputError

_NUMBER = re.compile(r"[+-]?(\d+([.,]\d*)?|[.,]\d+)")

ENTER = (Qt.Key.Key_Return, Qt.Key.Key_Enter)
Value = float | int | str | None


def local_text(text: str) -> str:
    """Return a number's text with the decimal mark of the locale and a typographic minus."""
    return text.replace("-", "−").replace(".", QLocale().decimalPoint())


def number_text(value: float, places: int = 6) -> str:
    """Return a number for people: at most `places` decimals, no trailing zeros, no thousands separator."""
    text = f"{value:.{places}f}"
    if "." in text:
        text = text.rstrip("0").rstrip(".")
    return local_text("0" if text == "-0" else text)


def mark_problem(field: QWidget, message: str) -> None:
    """Tell assistive tools what is wrong, and let the style sheet edge the field."""
    field.setAccessibleDescription(message)
    field.setProperty("wrong", bool(message))
    field.style().unpolish(field)  # a style sheet looks at properties only when it polishes anew
    field.style().polish(field)


class LineField(QLineEdit):
    """What all typed fields share; a subclass says how text becomes a value and a value text.

    Attributes:
        key: name of the field in its form, and in the errors about it.
    """

    changed = Signal()
    edit_finished = Signal()  # after all that follows from `changed`
    problem_changed = Signal(str)

    def __init__(self, *, required: bool = False, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.key = "value"
        self._required = required
        self._finished_text = self._set_text = self._hint = ""
        self.textEdited.connect(self._recheck)

    def value(self) -> Value:
        """Return the value, or None where an optional field is empty.

        Raises:
            InputError: the text cannot be read, or lies outside the limits; `field` is the key.
        """
        text = self.text().strip()
        if not text:
            if self._required:
                raise InputError(self.key, self.empty_message())
            return None
        return self.read(text)

    def set_hint(self, text: str) -> None:
        """Say in the tool tip what belongs here."""
        self._hint = text
        self.setToolTip(text)

    def set_value(self, value: Value) -> None:
        """Show a value; no `changed`, and a problem shown before is gone."""
        with QSignalBlocker(self):
            self.setText("" if value is None else self.write(value))
        self._finished_text = self._set_text = self.text()
        self.setToolTip(self._hint)
        self.problem("")

    def show_text(self, text: str) -> None:
        """Show a text as it was typed before; no `changed`, and typing another one over it is a change."""
        with QSignalBlocker(self):
            self.setText(text)
        self._finished_text = text

    def problem(self, message: str) -> None:
        """Show what is wrong under the field, in words; an empty message takes it away."""
        message = shown(message)
        if message != self.accessibleDescription():
            mark_problem(self, message)
            self.problem_changed.emit(message)

    def touched(self) -> bool:
        """Whether a person has typed what stands here."""
        return self.text() != self._set_text

    def kept_text(self) -> str:
        """Return the text to store, from which `show_text` shows the same again."""
        return self.text()

    def read(self, text: str) -> Value:
        """Turn text that is not empty into a value, or raise InputError."""
        return text

    def write(self, value: Value) -> str:
        """Turn a value into text."""
        return str(value)

    def finished_text(self, text: str) -> str:
        """Return the text to show once the field has been left; it must read as the same value."""
        return text

    def empty_message(self) -> str:
        """Return the sentence for a required field without text."""
        return self.tr("Nothing is typed here yet; this one is needed.")

    @told_at_once
    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Finish the edit with Enter."""
        super().keyPressEvent(event)
        if event.key() in ENTER:
            self.finish()

    @told_at_once
    def focusOutEvent(self, event: QFocusEvent) -> None:
        """Finish the edit when the field is left for another one.

        Not by the signal `editingFinished`: a dying field sends it once more, when there is nobody left to hear it.
        """
        super().focusOutEvent(event)
        if event.reason() not in (Qt.FocusReason.ActiveWindowFocusReason, Qt.FocusReason.PopupFocusReason):
            self.finish()

    def finish(self) -> None:
        """Check, tidy and announce; Enter and the leaving after it announce once."""
        text = self.text().strip()
        if text == self._finished_text:
            return
        try:
            self.value()
        except InputError as error:
            self.problem(error.message)
        else:
            self.problem("")
            with QSignalBlocker(self):
                self.setText(self.finished_text(text) if text else "")
        self._finished_text = self.text()
        self.changed.emit()
        self.edit_finished.emit()

    def is_unfinished(self) -> bool:
        """Whether a text is being typed that has not been finished yet."""
        return self.text().strip() != self._finished_text

    def undo_state(self) -> str:
        """Return the text finished last."""
        return self._finished_text

    def restore_state(self, state: str) -> None:
        """Show a text finished before, and announce it."""
        with QSignalBlocker(self):
            self.setText(state)
        self.finish()

    def show_restored(self, _before: str) -> None:
        """Put the keyboard here, the text ready to be overwritten."""
        self.setFocus(Qt.FocusReason.OtherFocusReason)
        self.selectAll()

    def _recheck(self) -> None:
        """Take a problem away as soon as typing has mended it; find no new one before the edit is finished."""
        if not self.accessibleDescription():
            return
        try:
            self.value()
        except InputError:
            return
        self.problem("")


class NumberField(LineField):
    """A decimal number with optional limits (both included)."""

    def __init__(
        self, *, low: float | None = None, high: float | None = None, required: bool = False,
        parent: QWidget | None = None,
    ) -> None:
        super().__init__(required=required, parent=parent)
        self._low, self._high = low, high
        self.setAlignment(Qt.AlignmentFlag.AlignRight)

    def value(self) -> float | None:
        """Return the number, or None where an optional field is empty."""
        value = super().value()
        return None if value is None else float(value)

    def read(self, text: str) -> float:
        """Read a number with comma or point."""
        plain = text.replace("−", "-")
        if not _NUMBER.fullmatch(plain):
            raise InputError(
                self.key,
                self.tr("“{text}” is not a number; type for example {example}, without thousands separators.").format(
                    text=text, example=number_text(12.5)),
            )
        return self.limited(float(plain.replace(",", ".")))

    def limited(self, value: float) -> float:
        """Return the value if it lies within the limits, else raise InputError."""
        if self._low is not None and value < self._low:
            raise InputError(self.key, self._limit_message(
                self.tr("{value} is too small: at least {limit}."), value, self._low))
        if self._high is not None and value > self._high:
            raise InputError(self.key, self._limit_message(
                self.tr("{value} is too large: at most {limit}."), value, self._high))
        return value

    def write(self, value: Value) -> str:
        """Show the number with the decimal mark of the locale."""
        return number_text(float(value or 0.0))

    def finished_text(self, text: str) -> str:
        """Keep the digits as typed, with the decimal mark of the locale."""
        return local_text(text.replace(",", "."))

    def _limit_message(self, template: str, value: float, limit: float) -> str:
        return template.format(value=number_text(value), limit=number_text(limit))


class CountField(LineField):
    """A whole number, such as teeth; the arrow keys up and down count."""

    def __init__(
        self, *, low: int = 0, high: int | None = None, required: bool = False, parent: QWidget | None = None
    ) -> None:
        super().__init__(required=required, parent=parent)
        self._low, self._high = low, high
        self.setAlignment(Qt.AlignmentFlag.AlignRight)

    def value(self) -> int | None:
        """Return the count, or None where an optional field is empty."""
        value = super().value()
        return None if value is None else int(value)

    def read(self, text: str) -> int:
        """Read a whole number within the limits."""
        if not re.fullmatch(r"[+-]?\d+", text.replace("−", "-")):
            raise InputError(
                self.key, self.tr("“{text}” is not a whole number; type for example 20.").format(text=text))
        count = int(text.replace("−", "-"))
        if count < self._low:
            raise InputError(self.key, self.tr("{value} is too few: at least {limit}.").format(
                value=count, limit=self._low))
        if self._high is not None and count > self._high:
            raise InputError(self.key, self.tr("{value} is too many: at most {limit}.").format(
                value=count, limit=self._high))
        return count

    @told_at_once
    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Count up or down with the arrow keys."""
        step = {Qt.Key.Key_Up: 1, Qt.Key.Key_Down: -1}.get(Qt.Key(event.key()))
        if step is None or not re.fullmatch(r"\s*\d+\s*", self.text()):
            super().keyPressEvent(event)
            return
        high = self._high if self._high is not None else int(self.text()) + 1
        self.setText(str(min(max(int(self.text()) + step, self._low), high)))


class TextField(LineField):
    """A line of text, at most `longest` characters."""

    def __init__(self, *, required: bool = False, longest: int = 200, parent: QWidget | None = None) -> None:
        super().__init__(required=required, parent=parent)
        self.setMaxLength(longest)

    def value(self) -> str:
        """Return the text without blanks at its ends."""
        return str(super().value() or "")
