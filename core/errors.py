"""The two kinds of failure that are expected. Everything else is a bug of ours."""

from __future__ import annotations


class InputError(ValueError):
    """The readings or entries cannot answer the question.

    Attributes:
        field: name of the argument or form field at fault, for example `measured_mm`.
        message: a sentence that names the place, the limit and the way out.
        row: index of the reading at fault, counted from 0, or None.
    """

    def __init__(self, field: str, message: str, row: int | None = None) -> None:
        super().__init__(message)
        self.field = field
        self.message = message
        self.row = row


class StoreError(RuntimeError):
    """Disk, lock, schema or server: the database cannot do what was asked.

    Attributes:
        message: a sentence that says what happened and what to do.
    """

    def __init__(self, message: str) -> None:
        super().__init__(message)
        self.message = message
