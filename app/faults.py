"""What Qt calls of ours does not let a fault through: it is told at once, as one of a slot is.

PySide holds a fault of an override back until the call from Python into Qt has returned. Of a widget that Qt asks for
the first time meanwhile, 6.11.3 drops a reference to the method asked for (in `Sbk_GetPyOverride`), and the program
ends with a crash some time later. The page that comes into view while the one before fails is such a widget.
"""

from __future__ import annotations

import sys
from contextlib import ContextDecorator
from types import TracebackType


class _ToldAtOnce(ContextDecorator):
    def __enter__(self) -> None:
        pass

    def __exit__(
        self, kind: type[BaseException] | None, error: BaseException | None, trace: TracebackType | None
    ) -> bool:
        if kind is None or error is None or not isinstance(error, Exception):
            return False
        sys.excepthook(kind, error, trace)
        return True


told_at_once = _ToldAtOnce()  # decorates a handler of events
