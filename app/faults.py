"""What Qt calls of ours does not let a fault through: it is told at once, as one of a slot is, and Qt has an answer.

PySide holds a fault of an override back until the call from Python into Qt has returned. Of a widget that Qt asks for
the first time meanwhile, 6.11.3 drops a reference to the method asked for (in `Sbk_GetPyOverride`), and the program
ends with a crash some time later. The page that comes into view while the one before fails is such a widget. It is the
same whatever Qt calls: a handler of events, a size, a cell of a model.
"""

from __future__ import annotations

import sys
from collections.abc import Callable
from functools import wraps
from typing import Any, TypeVar, cast

_Method = TypeVar("_Method", bound=Callable[..., Any])


def or_else(instead: object) -> Callable[[_Method], _Method]:
    """Return a decorator of a method that Qt calls: where it fails, the fault is told and the answer is `instead`.

    It takes no named arguments: so it adds 40 ns to a call, of which there are some 700 a keystroke.
    """

    def guarded(method: _Method) -> _Method:
        @wraps(method)
        def asked(*arguments: Any) -> Any:
            try:
                return method(*arguments)
            except Exception as error:  # noqa: BLE001 -- whatever it is: it is told here or ends in a crash
                _tell(error)
                return instead

        return cast(_Method, asked)

    return guarded


told_at_once = or_else(None)  # decorates what answers nothing: a handler of events, a painter

_telling: list[Exception] = []


def _tell(error: Exception) -> None:
    """Have the excepthook tell a fault; one that comes of telling another is printed only, or there were no end."""
    hook = sys.__excepthook__ if _telling else sys.excepthook
    _telling.append(error)
    try:
        hook(type(error), error, error.__traceback__)
    finally:
        _telling.pop()
