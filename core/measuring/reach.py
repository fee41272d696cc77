"""The reach of numbers: what no workshop reads is refused at the entrance of a calculation, in one sentence.

Far outside it squares and quotients leave the range of floating point, and the answer would be no number. A number is
refused above the limit of its unit, which is the end of its name. What is closer to zero than rounding could leave it
is taken as zero. Not-a-number and the infinities are left to the calculation: some stand for a reading that is missing,
or for degrees of freedom that are known. Limits: common practice, no source.
"""

from __future__ import annotations

import dataclasses
import functools
import inspect
import math
from collections.abc import Callable, Mapping, Sequence, Sized
from itertools import chain
from typing import Any, ParamSpec, TypeVar

import numpy as np

from core.errors import InputError
from core.words import Words, tr

P = ParamSpec("P")
R = TypeVar("R")

LARGEST = 1e20
_WORDS = (str, bool, type(None))  # what a list may hold that is no number
SMALLEST = 1e-70  # squares of what rounding leaves of a difference of readings lie above
# The end of a name, the largest size of such a number, and its unit for people; the first that fits.
_LIMITS = (
    ("_mm3_s", 1e5, " mm³/s"), ("_mm_s2", 1e7, " mm/s²"), ("_mm_s3", 1e10, " mm/s³"), ("_mm_s", 1e5, " mm/s"),
    ("_g_cm3", 1e3, " g/cm³"), ("_g_m", 1e6, " g/m"), ("steps_mm", 1e6, ""), ("_mm", 1e5, " mm"), ("_um", 1e8, " µm"),
    ("_g", 1e9, " g"), ("_c", 1e4, " °C"), ("_s", 1e8, " s"), ("_hz", 1e6, " Hz"), ("_n", 1e6, " N"),
    ("_deg", 1e6, "°"), ("dof", 1e300, ""), ("dofs", 1e300, ""), ("weights", 1e100, ""),
)  # fmt: skip


def within_reach(function: Callable[P, R]) -> Callable[P, R]:
    """Refuse, before the function is called, arguments out of reach; those of a dataclass by the names of its fields.

    Raises:
        InputError: the field at fault, with its row where it is one of many.
    """
    names = tuple(inspect.signature(function).parameters)

    @functools.wraps(function)
    def asked(*args: P.args, **kwargs: P.kwargs) -> R:
        plain: Any = function  # the same arguments, smallest numbers taken as zero
        given = [_within(name, value) for name, value in zip(names, args, strict=False)]
        answer: R = plain(*given, **{name: _within(name, value) for name, value in kwargs.items()})
        return answer

    return asked


def _within(field: str, value: Any) -> Any:
    """Return what `_settled` does, once it is not refused."""
    if isinstance(value, np.ndarray):  # both at once: a fit of a few readings takes less than looking twice at each
        return _array_within(field, value)
    if type(value) in (list, tuple) and set(map(type, value)) == {float}:  # a column of readings, as a whole
        column = np.array(value)
        found = _array_within(field, column)
        return value if found is column else type(value)(found.tolist())
    if field != "self":
        refuse_out_of_reach(field, value)
    return _settled(value)


def _settled(value: Any) -> Any:
    """Return a number, or a list, array or dataclass of them, with what is closer to zero than any reading as zero."""
    if isinstance(value, float):
        return 0.0 if 0.0 < abs(value) < SMALLEST else value
    if type(value) in (list, tuple):
        return value if _all_words(value) else type(value)(map(_settled, value))
    if given := _given_to(value.__class__):
        numbers = {name: one for name in given if isinstance(one := getattr(value, name), float)}
        tiny = {name: 0.0 for name, one in numbers.items() if 0.0 < abs(one) < SMALLEST}
        return dataclasses.replace(value, **tiny) if tiny else value
    if isinstance(value, np.ndarray) and value.dtype.kind == "f":
        return _without_tiny(value, np.abs(value))
    return value


def _all_words(values: Sequence[Any]) -> bool:
    """Whether a list, or the tuples in it, hold no number; their kinds are few, so that a long one is told at once."""
    kinds = set(map(type, values))
    if kinds == {tuple}:
        kinds = set(map(type, chain.from_iterable(values)))
    return all(issubclass(kind, _WORDS) for kind in kinds)


def refuse_out_of_reach(field: str, value: Any, row: int | None = None) -> None:
    """Refuse a number, any of a list or an array, or a field of a dataclass, that is out of reach.

    Raises:
        InputError: the field at fault, with its row where it is one of many.
    """
    if isinstance(value, float | int):
        _refuse_number(field, float(max(min(value, 1e300), -1e300)) if isinstance(value, int) else value, row)
    elif isinstance(value, np.ndarray):
        _array_within(field, value)
    elif isinstance(value, list | tuple):
        if _all_words(value):
            return
        for place, one in enumerate(value):
            refuse_out_of_reach(field, one, place if row is None else row)
    elif isinstance(value, Mapping):
        for one in value.values():
            refuse_out_of_reach(field, one, row)
    else:
        for name in _fields_of(value.__class__):
            refuse_out_of_reach(name, getattr(value, name), row)


def asked_first(check: Callable[[Mapping[str, Any]], None]) -> Callable[[Callable[P, R]], Callable[P, R]]:
    """Check the arguments given, by their names, before the function is called."""

    def guard(function: Callable[P, R]) -> Callable[P, R]:
        bind = inspect.signature(function).bind

        @functools.wraps(function)
        def asked(*args: P.args, **kwargs: P.kwargs) -> R:
            check(bind(*args, **kwargs).arguments)
            return function(*args, **kwargs)

        return asked

    return guard


def of_one_length(*columns: str) -> Callable[[Callable[P, R]], Callable[P, R]]:
    """Refuse, before the function is called, columns of readings that differ in number.

    Raises:
        InputError: the first column that differs from the one before it.
    """
    return asked_first(lambda given: refuse_unlike(**{name: given[name] for name in columns}))


def above_zero(*names: str) -> Callable[[Callable[P, R]], Callable[P, R]]:
    """Refuse, before the function is called, arguments that are not above zero: numbers, or arrays of them.

    Raises:
        InputError: the first of these arguments that is at fault.
    """

    def check(given: Mapping[str, Any]) -> None:
        for name in names:
            if not np.all(np.asarray(given[name], dtype=float) > 0.0):
                raise InputError(name, tr("This must be a number above 0; check it."))

    return asked_first(check)


def finite_out(field: str, *, infinite: bool = False) -> Callable[[Callable[P, R]], Callable[P, R]]:
    """Refuse, once the function has answered, arrays that left the range of numbers.

    For what is asked so often that looking at all that goes in would take too long.

    Args:
        field: that the refusal is about.
        infinite: whether infinite numbers above zero are an answer.

    Raises:
        InputError: the field.
    """

    def guard(function: Callable[P, R]) -> Callable[P, R]:
        @functools.wraps(function)
        def asked(*args: P.args, **kwargs: P.kwargs) -> R:
            with np.errstate(all="ignore"):
                answer = function(*args, **kwargs)
                sums = [float(np.add.reduce(one, axis=None)) for one in _arrays_of(answer)]
            if any(math.isnan(one) or (math.isinf(one) and not infinite) for one in sums):
                says = tr("These numbers are too large or too small to calculate with; check them.")
                raise InputError(field, says)
            return answer

        return asked

    return guard


def _arrays_of(answer: Any) -> list[Any]:
    if isinstance(answer, np.ndarray):
        return [answer]
    if isinstance(answer, tuple):
        return [array for one in answer for array in _arrays_of(one)]
    return [array for name in _fields_of(answer.__class__) for array in _arrays_of(getattr(answer, name))]


@functools.cache
def _fields_of(kind: type) -> tuple[str, ...]:
    """Return the names of the fields of a dataclass; none of any other kind."""
    return tuple(part.name for part in dataclasses.fields(kind)) if dataclasses.is_dataclass(kind) else ()


@functools.cache
def _given_to(kind: type) -> tuple[str, ...]:
    """Return the fields that a dataclass is made from."""
    return tuple(part.name for part in dataclasses.fields(kind) if part.init) if dataclasses.is_dataclass(kind) else ()


def refuse_unlike(**columns: Sized) -> None:
    """Refuse columns of readings that differ in number.

    Raises:
        InputError: the first column that differs from the one before it.
    """
    (first, rest), *others = ((name, len(values)) for name, values in columns.items())
    for name, count in others:
        if count != rest:
            says = tr("There are {count} entries of {name} and {other} of {first}; each reading has one of each.",
                      count=count, name=name, other=rest, first=first)  # fmt: skip
            raise InputError(name, says)


def _refuse_number(field: str, value: float, row: int | None) -> None:
    size = abs(value)
    if size == np.inf or value == 0.0:
        return
    most, unit = _limit_of(field)
    if size > most:
        says = tr(
            "{place}{value:g}{unit} is out of reach: at most {most:g}{unit}. Check the decimal mark.",
            place=_place(row),
            value=value,
            unit=unit,
            most=most,
        )
        raise InputError(field, says, row)


def _array_within(field: str, values: Any) -> Any:
    if values.dtype.kind not in "fiu" or not values.size:
        return values
    size, (most, _) = np.abs(values, dtype=float), _limit_of(field)
    if not size.max() <= most:  # or a value is not a number
        outside = np.flatnonzero(np.isfinite(size) & (size > most))
        if outside.size:
            row = int(np.unravel_index(outside[0], values.shape)[0]) if values.ndim else None
            _refuse_number(field, float(values.flat[outside[0]]), row)
    return values if size.min() >= SMALLEST else _without_tiny(values, size)


def _without_tiny(values: Any, size: Any) -> Any:
    tiny = size < SMALLEST
    return np.where(tiny, 0.0, values) if size[tiny].any() else values  # nothing to do where all of these are zero


@functools.cache
def _limit_of(field: str) -> tuple[float, str]:
    """Return the largest size of such a number and its unit."""
    return next(((most, unit) for end, most, unit in _LIMITS if field.endswith(end)), (LARGEST, ""))


def _place(row: int | None) -> Words | str:
    return "" if row is None else tr("Row {row}: ", row=row + 1)
