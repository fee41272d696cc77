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
from collections.abc import Callable, Mapping, Sized
from typing import Any, ParamSpec, TypeVar

import numpy as np

from core.errors import InputError
from core.words import Words, tr

P = ParamSpec("P")
R = TypeVar("R")

LARGEST = 1e20
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
        for name, value in (*zip(names, args, strict=False), *kwargs.items()):
            if name != "self":
                refuse_out_of_reach(name, value)
        plain: Any = function  # the same arguments, smallest numbers taken as zero
        answer: R = plain(*map(_settled, args), **{name: _settled(value) for name, value in kwargs.items()})
        return answer

    return asked


def _settled(value: Any) -> Any:
    """Return a number, or a list, array or dataclass of them, with what is closer to zero than any reading as zero."""
    if isinstance(value, float):
        return 0.0 if 0.0 < abs(value) < SMALLEST else value
    if type(value) in (list, tuple):
        return type(value)(_settled(one) for one in value)
    if dataclasses.is_dataclass(value):
        parts = {part.name: getattr(value, part.name) for part in dataclasses.fields(value) if part.init}
        tiny = {name: 0.0 for name, one in parts.items() if isinstance(one, float) and 0.0 < abs(one) < SMALLEST}
        return dataclasses.replace(value, **tiny) if tiny else value  # type: ignore[type-var]
    if isinstance(value, np.ndarray) and value.dtype.kind == "f" and value.size:
        tiny = (np.abs(value) < SMALLEST) & (value != 0.0)
        return np.where(tiny, 0.0, value) if tiny.any() else value
    return value


def refuse_out_of_reach(field: str, value: Any, row: int | None = None) -> None:
    """Refuse a number, any of a list or an array, or a field of a dataclass, that is out of reach.

    Raises:
        InputError: the field at fault, with its row where it is one of many.
    """
    if isinstance(value, float | int):
        _refuse_number(field, float(max(min(value, 1e300), -1e300)) if isinstance(value, int) else value, row)
    elif isinstance(value, np.ndarray):
        _refuse_array(field, value)
    elif isinstance(value, list | tuple):
        for place, one in enumerate(value):
            refuse_out_of_reach(field, one, place if row is None else row)
    elif isinstance(value, Mapping):
        for one in value.values():
            refuse_out_of_reach(field, one, row)
    elif dataclasses.is_dataclass(value):
        for part in dataclasses.fields(value):
            refuse_out_of_reach(part.name, getattr(value, part.name), row)


def of_one_length(*columns: str) -> Callable[[Callable[P, R]], Callable[P, R]]:
    """Refuse, before the function is called, columns of readings that differ in number.

    Raises:
        InputError: the first column that differs from the one before it.
    """

    def guard(function: Callable[P, R]) -> Callable[P, R]:
        bind = inspect.signature(function).bind

        @functools.wraps(function)
        def asked(*args: P.args, **kwargs: P.kwargs) -> R:
            given = bind(*args, **kwargs).arguments
            refuse_unlike(**{name: given[name] for name in columns})
            return function(*args, **kwargs)

        return asked

    return guard


def above_zero(*names: str) -> Callable[[Callable[P, R]], Callable[P, R]]:
    """Refuse, before the function is called, arguments that are not above zero: numbers, or arrays of them.

    Raises:
        InputError: the first of these arguments that is at fault.
    """

    def guard(function: Callable[P, R]) -> Callable[P, R]:
        bind = inspect.signature(function).bind

        @functools.wraps(function)
        def asked(*args: P.args, **kwargs: P.kwargs) -> R:
            given = bind(*args, **kwargs).arguments
            for name in names:
                if not np.all(np.asarray(given[name], dtype=float) > 0.0):
                    raise InputError(name, tr("This must be a number above 0; check it."))
            return function(*args, **kwargs)

        return asked

    return guard


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
                sums = [float(np.sum(one)) for one in _arrays_of(answer)]
            if any(np.isnan(one) or (np.isinf(one) and not infinite) for one in sums):
                says = tr("These numbers are too large or too small to calculate with; check them.")
                raise InputError(field, says)
            return answer

        return asked

    return guard


def _arrays_of(answer: Any) -> list[Any]:
    if dataclasses.is_dataclass(answer):
        answer = tuple(getattr(answer, part.name) for part in dataclasses.fields(answer))
    if isinstance(answer, tuple):
        return [array for one in answer for array in _arrays_of(one)]
    return [answer] if isinstance(answer, np.ndarray) else []


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
    _, most, unit = next((one for one in _LIMITS if field.endswith(one[0])), ("", LARGEST, ""))
    if size > most:
        says = tr(
            "{place}{value:g}{unit} is out of reach: at most {most:g}{unit}. Check the decimal mark.",
            place=_place(row),
            value=value,
            unit=unit,
            most=most,
        )
        raise InputError(field, says, row)


def _refuse_array(field: str, values: Any) -> None:
    if values.dtype.kind not in "fiu" or not values.size:
        return
    size = np.abs(values, dtype=float)
    if size.max() <= _most_of(field) and size.min() >= SMALLEST:  # as nearly always: a few looks are enough
        return
    outside = np.flatnonzero(np.isfinite(size) & (size > _most_of(field)))
    if outside.size:
        row = int(np.unravel_index(outside[0], values.shape)[0]) if values.ndim else None
        _refuse_number(field, float(values.flat[outside[0]]), row)


@functools.cache
def _most_of(field: str) -> float:
    return next((most for end, most, _ in _LIMITS if field.endswith(end)), LARGEST)


def _place(row: int | None) -> Words | str:
    return "" if row is None else tr("Row {row}: ", row=row + 1)
