"""Values of every kind of column as text and back, and rows as cells of a table that a spreadsheet may open.

A cell that a spreadsheet would run as a formula begins with an apostrophe, which reading takes off again; so does one
that begins with an apostrophe itself. An empty cell is nothing; empty text where nothing is possible is an apostrophe.

Reference: RFC 4180; OWASP, "CSV Injection" (the signs = + - @, tab and carriage return, and their full-width forms).
"""

from __future__ import annotations

import base64
import math
from collections.abc import Mapping
from datetime import datetime
from functools import cache
from typing import Any

from sqlalchemy import JSON, Column, DateTime, Double, Integer, LargeBinary, Table
from sqlalchemy.types import TypeDecorator, TypeEngine

from core.quantity import CELL_MARK, is_formula
from core.records.columns import json_from_value, value_from_json
from core.words import in_short, tr

LARGEST_INTEGER = 2**31 - 1  # that a server holds too
DEEPEST = 100  # groups within groups: words within words, as the program writes them, go some twenty deep


@cache
def kind_of(column: Column[Any]) -> type[TypeEngine[Any]]:
    """Return the plain kind of a column: Integer, Double, DateTime, JSON, LargeBinary, or TypeEngine for text."""
    kind = column.type.impl_instance if isinstance(column.type, TypeDecorator) else column.type
    for known in (Integer, Double, DateTime, JSON, LargeBinary):
        if isinstance(kind, known):
            return known
    return TypeEngine


def cell_from_value(column: Column[Any], value: Any) -> str:
    """Return a value as a cell."""
    if value is None:
        return ""
    text = _text(kind_of(column), value)
    if kind_of(column) in (Integer, Double) and (not isinstance(value, float) or math.isfinite(value)):
        return text  # a plain number, perhaps below zero, is no formula
    empty_is_nothing = not text and bool(column.nullable)
    return CELL_MARK + text if empty_is_nothing or is_formula(text) else text


def _text(kind: type[TypeEngine[Any]], value: Any) -> str:
    if kind is JSON:
        return json_from_value(value)
    if kind is LargeBinary:
        return base64.b64encode(value).decode("ascii")
    if kind is DateTime:
        return str(value.isoformat())
    return repr(value) if kind is Double else str(value)


def value_from_cell(column: Column[Any], cell: str) -> Any:
    """Return the value that a cell holds.

    Raises:
        ValueError: the cell holds none of this kind; the sentence says so.
    """
    text = cell.removeprefix(CELL_MARK)
    if not cell and (column.nullable or kind_of(column) not in (TypeEngine, LargeBinary)):  # which may be empty
        return checked(column, None)
    try:
        return checked(column, _value(kind_of(column), text))
    except (ValueError, TypeError, OverflowError) as error:
        raise ValueError(not_a_value(column, cell)) from error


def _value(kind: type[TypeEngine[Any]], text: str) -> Any:
    if kind is JSON:
        return value_from_json(text)
    if kind is LargeBinary:
        return base64.b64decode(text, validate=True)
    if kind is DateTime:
        return datetime.fromisoformat(text)
    if kind is Integer:
        return int(text)
    return float(text) if kind is Double else text


def checked(column: Column[Any], value: Any) -> Any:
    """Return the value as its column takes it.

    Raises:
        ValueError, TypeError, OverflowError: it is of another kind, beyond all numbers, or nothing where something
            must be.
    """
    if value is None:
        if not column.nullable:
            raise ValueError(tr("{column} is empty; fill it in.", column=column.name))
        return None
    if kind_of(column) is Integer and (type(value) is not int or abs(value) > LARGEST_INTEGER):
        raise TypeError
    if kind_of(column) is Double and math.isnan(value):  # SQLite would store nothing
        raise ValueError
    if kind_of(column) is JSON:
        _refuse_beyond_reach(value)
    return column.type.checked(value) if hasattr(column.type, "checked") else value


def _refuse_beyond_reach(value: Any, levels: int = DEEPEST) -> None:
    """Raise where groups are too deep to be written again, or a whole number too large for any calculation."""
    if levels == 0:
        raise ValueError
    if isinstance(value, int):
        float(value)
    for inside in value.values() if isinstance(value, dict) else value if isinstance(value, list) else ():
        _refuse_beyond_reach(inside, levels - 1)


def not_a_value(column: Column[Any], cell: object) -> str:
    """Return the sentence for a cell that holds no value of its column's kind."""
    what = {
        Integer: tr("a whole number"),
        Double: tr("a number"),
        DateTime: tr("a date and time such as 2026-07-01T12:00:00+00:00"),
        JSON: tr("a list or group of values in JSON"),
        LargeBinary: tr("the content of a file in base 64"),
        TypeEngine: tr("one of the words it may hold"),
    }[kind_of(column)]
    return tr("{column}: “{cell}” is not {what}; correct it.", column=column.name, cell=in_short(cell), what=what)


def plain_from_row(table: Table, row: Mapping[str, Any]) -> dict[str, Any]:
    """Return a row as values that JSON knows; numbers stay numbers, what is JSON already stays as it is."""
    kinds = {column.name: kind_of(column) for column in table.columns}
    as_text = (DateTime, LargeBinary, TypeEngine)
    return {
        name: _text(kinds[name], value) if value is not None and kinds[name] in as_text else value
        for name, value in row.items()
    }


def value_from_plain(column: Column[Any], plain: Any) -> Any:
    """Return the value that a JSON value of `plain_from_row` stands for.

    Raises:
        ValueError: it stands for none of this kind; the sentence says so.
    """
    try:
        if plain is not None and kind_of(column) in (DateTime, LargeBinary):
            plain = _value(kind_of(column), plain)
        if kind_of(column) is Double and isinstance(plain, bool | str):
            raise TypeError
        return checked(column, plain)
    except (ValueError, TypeError, OverflowError) as error:
        raise ValueError(
            tr("{column} is empty; fill it in.", column=column.name) if plain is None else not_a_value(column, plain)
        ) from error
