"""Numbers that are none: refused in a sentence where the answer would be none either.

What is asked thousands of times in one calculation is not asked here: there a number that is none goes through.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from typing import Any, ParamSpec, TypeVar

import numpy as np

from core.errors import InputError
from core.measuring.reach import asked_first
from core.words import tr

P = ParamSpec("P")
R = TypeVar("R")


def finite_in(*names: str) -> Callable[[Callable[P, R]], Callable[P, R]]:
    """Refuse, before the function is called, arguments that are no finite numbers, or hold one that is not.

    Raises:
        InputError: the first of these arguments that is at fault, with its row where it is one of many.
    """

    def check(given: Mapping[str, Any]) -> None:
        for name in names:
            if given.get(name) is not None:
                refuse_no_number(name, given[name])

    return asked_first(check)


def refuse_no_number(field: str, value: Any) -> None:
    """Refuse a number, or any of an array or of a list of them, that is not finite.

    Raises:
        InputError: the field at fault, with its row where it is one of many.
    """
    numbers = np.asarray(value, dtype=float)
    if np.isfinite(numbers).all():
        return
    says = tr("This is no number that can be calculated with; type it again.")
    if not numbers.ndim:
        raise InputError(field, says)
    row = int(np.argwhere(~np.isfinite(numbers))[0][0])
    raise InputError(field, tr("Row {row}: {says}", row=row + 1, says=says), row)
