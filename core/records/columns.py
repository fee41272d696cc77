"""The kinds of columns. Portable: double precision, UTC times, text for states, JSON for what no query looks into.

A value that cannot be read back (a damaged page, a foreign hand) raises `DamagedValueError`, later a `StoreError`.
"""

from __future__ import annotations

import json
import math
from abc import abstractmethod
from collections.abc import Callable, Mapping
from datetime import UTC, datetime
from typing import Any

from sqlalchemy import JSON, DateTime, Dialect, Double, LargeBinary, Text
from sqlalchemy.types import TypeDecorator, TypeEngine

from core.records.rows import Motion, TrialState

_MARK = "$"  # doubled where it begins a key, so that the tag below is never taken for one
_PLAIN = frozenset((str, int, bool, float, type(None)))
_NON_FINITE = "$float"


class DamagedValueError(Exception):
    """A stored value is not of the kind that its column holds."""


def json_from_value(value: object) -> str:
    """Return strict JSON; nan and the infinities, which JSON does not know, become tagged objects."""
    return json.dumps(_strict(value), allow_nan=False, separators=(",", ":"))


def _strict(value: object) -> object:
    if value is None or isinstance(value, str | int):  # most of them: whether it is a mapping takes longer to find out
        return value
    if isinstance(value, Mapping):
        return {_MARK * str(key).startswith(_MARK) + str(key): _strict(item) for key, item in value.items()}
    if isinstance(value, list | tuple):
        if set(map(type, value)) <= _PLAIN and all(math.isfinite(item) for item in value if isinstance(item, float)):
            return value
        return [_strict(item) for item in value]
    if isinstance(value, float) and not math.isfinite(value):
        return {_NON_FINITE: str(float(value))}
    return value


def value_from_json(text: str | bytes) -> object:
    """Return what `json_from_value` was given; tuples come back as lists.

    Raises:
        ValueError: no JSON, groups too deep, a name twice in one group, or a tag that is none.
    """
    if text == "{}":  # of most machines, and of many trials
        return {}
    try:
        return _DECODER.decode(text if isinstance(text, str) else str(text, "utf-8"))  # a server sends bytes
    except (RecursionError, TypeError, OverflowError) as error:
        raise ValueError("groups too deep, or a tag that is none") from error


def _loose(pairs: list[tuple[str, Any]]) -> object:
    found = dict(pairs)
    if len(found) < len(pairs):
        raise ValueError("a name twice in one group")
    if _NON_FINITE in found:
        return float(found[_NON_FINITE])
    return {key.removeprefix(_MARK): item for key, item in found.items()}


_DECODER = json.JSONDecoder(object_pairs_hook=_loose)  # `json.loads` would make one for every value


class _Guarded(TypeDecorator[Any]):
    """A column type that notices what cannot be read back."""

    cache_ok = True
    impl: TypeEngine[Any] | type[TypeEngine[Any]] = Text

    def result_processor(self, dialect: Dialect, coltype: object) -> Callable[[Any], Any]:
        inner = super().result_processor(dialect, coltype)

        def read(value: Any) -> Any:
            try:
                return None if value is None else self.checked(inner(value) if inner else value)
            except (ValueError, TypeError) as error:
                raise DamagedValueError from error

        return read

    @abstractmethod
    def checked(self, value: Any) -> Any:
        """Return the value as the rows hold it, or raise ValueError or TypeError."""


class PlainText(_Guarded):
    """Text. What not every database can write (lone surrogates, zero bytes) becomes a question mark."""

    cache_ok = True

    def process_bind_param(self, value: str | None, dialect: Dialect) -> str | None:
        """Return the value as it is stored."""
        return value if value is None else str(value).encode("utf-8", "replace").decode("utf-8").replace("\0", "?")

    def checked(self, value: str) -> str:
        """See `_Guarded`."""
        return "".join((value,))  # bytes or a number, where text should be, are refused


class Real(_Guarded):
    """A double precision number; infinity is one."""

    cache_ok = True
    impl = Double

    def checked(self, value: float) -> float:
        """See `_Guarded`."""
        return float(value)


class UtcTime(_Guarded):
    """A moment: stored as UTC, given as an aware datetime."""

    cache_ok = True
    impl = DateTime(timezone=True)

    def process_bind_param(self, value: datetime | None, dialect: Dialect) -> datetime | None:
        """Return the value as it is stored."""
        return value if value is None else value.astimezone(UTC)

    def checked(self, value: datetime) -> datetime:
        """See `_Guarded`."""
        return value.replace(tzinfo=UTC) if value.tzinfo is None else value.astimezone(UTC)


class MotionText(PlainText):
    """How a machine moves, by name."""

    cache_ok = True

    def checked(self, value: str) -> Motion:
        """See `_Guarded`."""
        return Motion(value)


class StateText(PlainText):
    """The state of a trial, by name."""

    cache_ok = True

    def checked(self, value: str) -> TrialState:
        """See `_Guarded`."""
        return TrialState(value)


class JsonObject(_Guarded):
    """A JSON object of anything."""

    cache_ok = True
    impl = JSON

    def checked(self, value: object) -> dict[str, Any]:
        """See `_Guarded`."""
        if not isinstance(value, dict):
            raise TypeError
        return value


class JsonObjects(_Guarded):
    """A JSON list of objects, given as a tuple."""

    cache_ok = True
    impl = JSON

    def checked(self, value: object) -> tuple[dict[str, Any], ...]:
        """See `_Guarded`."""
        if not isinstance(value, list) or not all(isinstance(item, dict) for item in value):
            raise TypeError
        return tuple(value)


def objects_from_json(text: str) -> tuple[dict[str, Any], ...]:
    """Return what a column of `JsonObjects` holds as this text.

    Raises:
        DamagedValueError: it is no list of objects.
    """
    try:
        return JsonObjects().checked(value_from_json(text))
    except (ValueError, TypeError) as error:
        raise DamagedValueError from error


class Content(_Guarded):
    """The bytes of a file."""

    cache_ok = True
    impl = LargeBinary

    def checked(self, value: bytes) -> bytes:
        """See `_Guarded`."""
        return b"".join((value,))
