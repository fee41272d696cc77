"""The readings of a trial as a table of its report: what tells them apart, the reading with its unit, and as typed.

What the rows are sorted by inside the program (groups, questions answered) is left out: the name of a row says it.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Any

from core.guidance.reportblocks import Block, Heading, Table
from core.measuring.instrumentkinds import Part, part_words
from core.measuring.rownames import row_words
from core.part_size.features import FeatureKind, kind_words
from core.records.rows import Trial
from core.words import Words, tr

_OF_SIZES = ("sizeerror", "prediction", "verification")
_OF_THE_PROGRAM = ("confirmed", "questioned", "judge", "criterion")
_NO_NUMBERS = 9  # of a table of readings: all columns begin at the left


def reading_blocks(trial: Trial) -> list[Block]:
    """Return the heading and the table of what was read, or worked out; nothing where a trial holds neither."""
    readings, unit = trial.readings, _unit(trial.readings)
    columns = [name for name, values in readings.items() if _is_told(trial, name, unit) and _says(values)]
    if not columns:
        return []
    typed = "raw" in readings
    rows = zip(*(readings[name] for name in columns), strict=True)
    table = tuple(tuple(_cell(name, cell, typed) for name, cell in zip(columns, row, strict=True)) for row in rows)
    headings = tuple(_column(name, trial.subject, unit) for name in columns)
    title = tr("Readings as typed") if typed else tr("Values as kept")
    return [Heading(title), Table("readings", headings, table, _NO_NUMBERS)]


def _says(values: Sequence[Any]) -> bool:
    return any(value not in ("", None, False) for value in values)


def _is_told(trial: Trial, name: str, unit: str | None) -> bool:
    """Return whether a column means something to who reads the report."""
    if name in _OF_THE_PROGRAM or name.endswith("_raw") or (name == "unit" and unit is not None):
        return False
    means_it = {"axis": (*_OF_SIZES, "reversal"), "kind": (*_OF_SIZES, "instrument")}.get(name)
    return means_it is None or trial.subject in means_it


def _unit(readings: Mapping[str, Sequence[Any]]) -> str | None:
    """Return the unit of all readings, "" where they have none, None where each has its own."""
    units = {unit for unit in readings.get("unit", ("mm",)) if unit}
    if units <= {"mm", "in"}:
        return "mm" if units else ""  # what is typed in inch is stored in mm
    return units.pop() if len(units) == 1 else None


def _cell(name: str, value: object, typed: bool) -> Words | str:
    """Return one value as text: what has words by its words, numbers as they were read or rounded to what is sure."""
    if value is None or value is False:
        return ""
    if value is True:
        return tr("yes")
    words = _words(name, str(value))
    if words is not None:
        return words
    if not isinstance(value, float):
        return str(value)
    return f"{value:.10g}" if typed or name == "nominal_mm" else f"{value:.2f}" if name == "e_n" else f"{value:.4f}"


def _words(name: str, value: str) -> Words | str | None:
    if name == "feature":
        return row_words(value)
    if name == "kind" and value in set(FeatureKind):
        return kind_words(FeatureKind(value))
    if name == "kind" and value in set(Part):
        return part_words(Part(value))
    if name == "axis":
        ways = {"up": tr("from −"), "down": tr("from +"), "rest": tr("rest"), "pushed": tr("push")}
        return ways.get(value, value.upper() if value in ("x", "y", "z") else value)
    if name == "field":
        return {
            "weighing.before_g": tr("Before drying, g"),
            "weighing.now_g": tr("Now, or dried, g"),
            "weighing.u_balance_g": tr("Balance, 1 u, g"),
        }.get(value)
    return None


def _column(name: str, subject: str, unit: str | None) -> Words | str:
    """Return the heading of a column; one that has no words keeps its name."""
    if name == "feature":
        return tr("Feature") if subject in _OF_SIZES else tr("What")
    if name == "axis":
        return tr("Axis") if subject in _OF_SIZES else tr("From")
    if name == "kind":
        return tr("Kind") if subject in _OF_SIZES else tr("Part")
    if name == "measured_mm":
        return tr("Reading, {unit}", unit=unit) if unit else tr("Reading")
    if name == "nominal_mm":
        return tr("Nominal, {unit}", unit=unit or "mm")
    return _FURTHER.get(name, name.replace("_", " "))


_FURTHER: Mapping[str, Words] = {
    "raw": tr("As typed"),
    "unit": tr("Unit"),
    "excluded": tr("Excluded"),
    "reason": tr("Reason"),
    "note": tr("Note"),
    "field": tr("What"),
    "as_is_mm": tr("As it is, mm"),
    "predicted_mm": tr("Predicted error, mm"),
    "U_mm": tr("U, mm"),
    "error_mm": tr("Measured error, mm"),
    "e_n": tr("E_n"),
    "x_mm": tr("X, mm"),
    "y_mm": tr("Y, mm"),
    "minutes": tr("After, min"),
    "mark_mm": tr("Mark, mm"),
    "length_mm": tr("Length, mm"),
    "half_width": tr("± of the reference"),
    "rate_mm3_s": tr("Rate, mm³/s"),
    "temperature_c": tr("Nozzle, °C"),
    "change_percent": tr("Flow, %"),
    "speed_mm_s": tr("Speed, mm/s"),
    "crests": tr("Crests"),
    "first_um": tr("First crest, µm"),
    "last_um": tr("Last crest, µm"),
    "step": tr("Step"),
}
