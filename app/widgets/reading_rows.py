"""What one row of readings holds and how its cells are read and shown. Plain functions on rows; no model, no widget.

A row is a plain dict, so that a draft can keep it as it is. A length keeps the text as typed beside its millimetres; a
text that cannot be read stays there with no millimetres, and so stays visible with its problem: nothing typed is lost.
"""

from __future__ import annotations

import csv
import math
import re
from collections.abc import Mapping, Sequence
from functools import lru_cache
from typing import Any

from PySide6.QtCore import QLocale

from app.rownames import shown_name, typed_name
from app.units import inch_digits, inch_sentence, with_unit
from app.widgets.fields import local_text, number_text
from app.widgets.reading_columns import Column, Expected, read_number, tidy
from app.words import shown
from core.errors import InputError
from core.measuring.plausible import Question, question_reading
from core.quantity import Length, length_from_text
from core.words import tr

__all__ = ["Column", "Expected", "Row"]

Row = dict[str, Any]  # Any: the values of one row are of several types, as in the draft that keeps them

BLANK: Mapping[str, Any] = {
    "feature": "", "axis": "", "kind": "", "nominal_mm": None, "nominal_raw": "", "measured_mm": None, "raw": "",
    "unit": "", "confirmed": False, "excluded": False, "reason": "", "note": "", "question": None,
}


def raw_key(key: str) -> str:
    """Return the name under which the text as typed is kept."""
    return "raw" if key == "measured_mm" else key.removesuffix("_mm") + "_raw"


def typed(row: Row, column: Column, text: str, expected: Expected | None = None) -> Row:
    """Return the row with a text typed into one cell."""
    text = text.strip()
    if column.kind == "choice":
        return row | {column.key: _chosen(column, text)}
    if column.kind == "number":
        return row | _typed_number(column, text)
    if column.kind != "length":
        return row | {column.key: typed_name(text) if column.key == "feature" else text}
    text = with_unit(text) if column.inch else text
    length = read_length(text, column.key)
    changed = row | {column.key: length.mm if length else None, raw_key(column.key): text, "confirmed": False}
    if column.key == "measured_mm":
        changed["unit"] = length.unit if length else ""
    return asked(changed, expected)


def _typed_number(column: Column, text: str) -> Row:
    """Return the values a typed number changes. As a reading it is no length: nothing asks about it as about one."""
    changed: Row = {column.key: _number_or_none(text, column), raw_key(column.key): text}
    if column.key == "measured_mm":
        changed |= {"unit": column.unit if text else "", "confirmed": True, "question": None}
    return changed


def _number_or_none(text: str, column: Column) -> float | None:
    try:
        return read_number(text, column) if text else None
    except InputError:
        return None


@lru_cache(maxsize=4096)  # each cell asks again for every paint
def read_length(text: str, key: str) -> Length | None:
    """Return the length, or None where the text is empty or cannot be read."""
    try:
        return length_from_text(tidy(text), key) if text else None
    except InputError:
        return None


def asked(row: Row, expected: Expected | None = None) -> Row:
    """Return the row with the question its reading raises, unless it was confirmed.

    A travel has a free origin, so its nominal says nothing; it is questioned only against an expected value.
    """
    reading_mm, nominal_mm = row["measured_mm"], row["nominal_mm"]
    open_origin = row["kind"] == "travel" and expected is None
    if reading_mm is None or nominal_mm is None or row["confirmed"] or row["excluded"] or open_origin:
        return row | {"question": None}
    question = question_reading(
        reading_mm, nominal_mm,
        expected_mm=expected.mm if expected else None, u_expected_mm=expected.u_mm if expected else None,
    )
    return row | {"question": question}


def answered(row: Row, meant_mm: float | None) -> Row:
    """Return the row as its question was answered: kept as typed (None) or another length; the typed text stays."""
    reading_mm = row["measured_mm"] if meant_mm is None else meant_mm
    return row | {"measured_mm": reading_mm, "confirmed": True, "question": None}


def completed(row: Mapping[str, Any]) -> Row:
    """Return a row with every key; a question is asked again unless it had been answered."""
    full = {**BLANK, **{key: value for key, value in row.items() if key != "questioned"}}
    full["question"] = None
    return asked(full)


def kept(row: Row) -> Row:
    """Return the row for the draft: plain values, the question as a yes or no."""
    plain = {key: value for key, value in row.items() if key != "question"}
    return plain | {"questioned": row["question"] is not None}


def problem(row: Row, column: Column) -> str:
    """Return why the text in a cell cannot be read, or nothing."""
    if column.kind == "choice" and row.get(column.key) and row[column.key] not in dict(column.pairs()):
        offered = ", ".join(text for _, text in column.pairs())
        says = tr("“{text}” is not offered here; choose one of {offered}.", text=row[column.key], offered=offered)
        return shown(says)
    measures = column.kind in ("length", "number")
    if not measures or row.get(column.key) is not None or not row.get(raw_key(column.key)):
        return ""
    try:
        if column.kind == "number":
            read_number(row[raw_key(column.key)], column)
        else:
            length_from_text(tidy(row[raw_key(column.key)]), column.key)
    except InputError as error:
        return shown(error.message)
    return ""


def plain_text(row: Row, column: Column) -> str:
    """Return the text of a cell for people: lengths in mm with the decimal mark of the locale and the digits typed."""
    value = row.get(column.key)
    if column.kind == "choice":
        return dict(column.pairs()).get(str(value or ""), str(value or ""))
    if column.kind not in ("length", "number"):
        return shown_name(value) if column.key == "feature" else str(value or "")
    text = row.get(raw_key(column.key)) or ""
    if value is None:
        return text
    if column.kind == "number":
        return _digits(text) if _number_or_none(text, column) == value else number_text(value)
    length = read_length(text, column.key)
    if column.inch:
        return _inches(text, length, value)
    if length is None or not math.isclose(length.mm, value, abs_tol=1e-9):
        return number_text(value, 4)
    if length.unit == "in":
        return number_text(value, 3)
    return _digits(text)


def _inches(text: str, length: Length | None, value_mm: float) -> str:
    """Return a length in inch: the digits typed where they are inches, else to the worth of the last one typed."""
    if length is None or math.isnan(length.step_mm) or not math.isclose(length.mm, value_mm, abs_tol=1e-9):
        return local_text(inch_digits(value_mm))
    return _digits(text) if length.unit == "in" else local_text(inch_digits(value_mm, length.step_mm))


def _digits(text: str) -> str:
    """Return the digits as typed, with the decimal mark of the locale and without the unit."""
    return local_text(re.sub(r"[^0-9.,+\-−]", "", tidy(text)).replace(",", ".").removeprefix("+"))


def edit_text(row: Row, column: Column) -> str:
    """Return the text to edit: as typed while it means the cell's value, else the value."""
    text = row.get(raw_key(column.key)) or ""
    length = read_length(text, column.key) if column.kind == "length" else None
    if length and length.unit == "in" and math.isclose(length.mm, row[column.key], abs_tol=1e-9):
        return text
    return plain_text(row, column)


def question_text(question: Question, inch: bool = False) -> str:
    """Return the question in the language, with the decimal mark and in the unit of the window."""
    says = re.sub(r"(?<=\d)\.(?=\d)", QLocale().decimalPoint(), shown(question.says))
    return inch_sentence(says) if inch else says


def pasted(
    rows: Sequence[Row], columns: Sequence[Column], at: tuple[int, int], text: str, expected: Mapping[int, Expected]
) -> tuple[list[Row], tuple[str, ...]]:
    """Return the rows with a spreadsheet's block taken in from cell `at` on, and a sentence for each refused cell.

    Rows past the end are appended, with axis and kind of the row above where the block does not say.
    """
    after, refused = list(rows), []
    for place, texts in enumerate(parse_block(text), start=at[0]):
        if place == len(after):
            above = after[-1] if after else BLANK
            after.append(completed({"axis": above["axis"], "kind": above["kind"]}))
        for number, cell in enumerate(texts, start=at[1]):
            if number >= len(columns):
                says = tr("Row {row}: “{text}” lies right of the last column; paste further left.",
                          row=place + 1, text=cell) if cell else ""
            else:
                after[place], problem_says = _pasted_cell(after[place], columns[number], cell, expected.get(place))
                says = tr("Row {row}, {column}: {says}", row=place + 1, column=columns[number].name,
                          says=problem_says) if problem_says else ""
            refused += [shown(says)] if says else []
    return after, tuple(refused)


def parse_block(text: str) -> list[list[str]]:
    """Return the cells of a block copied from a spreadsheet, without the empty line at its end."""
    lines = text.replace("\r\n", "\n").replace("\r", "\n").rstrip("\n").split("\n")
    return [[cell.strip() for cell in cells] for cells in csv.reader(lines, delimiter="\t")]


def _pasted_cell(row: Row, column: Column, text: str, expected: Expected | None) -> tuple[Row, str]:
    """Return the row with a pasted text and why it was refused; what the page computes is passed over in silence."""
    if column.editable:
        row = typed(row, column, text, expected)
        return row, problem(row, column)
    passed_over = column.kind == "shown" or text == plain_text(row, column)
    return row, "" if passed_over else tr("this column cannot be changed.")


def _chosen(column: Column, text: str) -> str:
    for value, shown_text in column.pairs():
        if text.casefold() in (value.casefold(), shown_text.casefold()):
            return value
    return text


def lists_of(rows: Sequence[Mapping[str, Any]]) -> dict[str, list[Any]]:
    """Turn rows into named lists, as a trial keeps them; None where a row says nothing."""
    keys = dict.fromkeys(key for row in rows for key in row)
    return {key: [row.get(key) for row in rows] for key in keys}


def rows_from(lists: Mapping[str, Sequence[Any]]) -> list[dict[str, Any]]:
    """Turn the named lists of a trial back into rows."""
    length = max((len(values) for values in lists.values()), default=0)
    return [{key: values[place] for key, values in lists.items() if place < len(values)} for place in range(length)]
