"""A word out of a closed list, as a file or a database of other hands may hold it."""

from __future__ import annotations

from collections.abc import Sequence
from enum import StrEnum
from typing import TypeVar

from core.errors import InputError
from core.words import tr

Choice = TypeVar("Choice", bound=StrEnum)


def one_of(choices: type[Choice], word: str, field: str, row: int | None = None) -> Choice:
    """Return the choice of this name.

    Raises:
        InputError: field `field`, with its row: the word is none of them.
    """
    try:
        return choices(word)
    except ValueError:
        says = tr("“{word}” is not one of {choices}; correct it.", word=str(word), choices=", ".join(choices))
        raise InputError(field, says, row) from None


def each_of(choices: type[Choice], words: Sequence[str], field: str) -> list[Choice]:
    """Return the choice of each word of a column.

    Raises:
        InputError: field `field` and the row of the first word that is none of them.
    """
    return [one_of(choices, word, field, row) for row, word in enumerate(words)]
