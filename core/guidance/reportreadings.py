"""The readings of a trial as a table of its report: what tells them apart, the reading with its unit, and as typed.

What the rows are sorted by inside the program (groups, questions answered) is left out: the name of a row says it.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Any

from core.guidance.readingunits import OF_PADS, OF_SCORES, reading_units, step_units
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
    of_readings = reading_units(trial)
    units = {"measured_mm": [unit or None for unit in of_readings], "step": step_units(trial)}
    readings = {**trial.readings, "unit": of_readings}
    one = {name: _one_unit(each, readings.get(name, ())) for name, each in units.items()}
    columns = [name for name in readings if _is_told(trial.subject, name, one) and _says(readings[name])]
    if not columns:
        return []
    typed = "raw" in readings
    own = units["step"] if one["step"] is None else None
    cells = [_cells(name, readings[name], typed, own if name == "step" else None) for name in columns]
    headings = tuple(_column(name, trial.subject, one) for name in columns)
    title = tr("Readings as typed") if typed else tr("Values as kept")
    return [Heading(title), Table("readings", headings, tuple(zip(*cells, strict=True)), _NO_NUMBERS)]


def _one_unit(units: Sequence[str | None], values: Sequence[Any]) -> str | None:
    """Return the unit of all values, "" where they have none or nobody knows it, None where each has its own."""
    found = {unit for unit, value in zip(units, values, strict=False) if unit is not None and value is not None}
    return None if len(found) > 1 else next(iter(found), "")


def _says(values: Sequence[Any]) -> bool:
    return any(value not in ("", None, False) for value in values)


def _is_told(subject: str, name: str, one: Mapping[str, str | None]) -> bool:
    """Return whether a column means something to who reads the report."""
    if name in _OF_THE_PROGRAM or name.endswith("_raw"):
        return False
    if name == "unit":
        return one["measured_mm"] is None
    if name == "step":
        return subject != "speed" or one["step"] != ""  # the number of a run: its row is named after the run
    means_it = {"axis": (*_OF_SIZES, "reversal"), "kind": (*_OF_SIZES, "instrument")}.get(name)
    return means_it is None or subject in means_it


def _cells(name: str, values: Sequence[Any], typed: bool, units: Sequence[str | None] | None) -> list[Words | str]:
    """Return a column as texts, each with its unit where there are units and not one for all."""
    texts = [_cell(name, value, typed) for value in values]
    if units is None:
        return texts
    pairs = zip(texts, units, strict=True)
    return ["" if unit is None else f"{text} {unit}".strip() for text, unit in pairs]


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
    if typed or name == "nominal_mm":
        return f"{value + 0.0:.10g}"  # no minus before a zero
    digits = 2 if name == "e_n" else 4
    return f"{round(value, digits) + 0.0:.{digits}f}"


def _words(name: str, value: str) -> Words | str | None:
    if name == "unit":
        return tr("of 4") if value == OF_SCORES else value
    if name == "feature":
        return row_words(value)
    if name == "kind" and value in set(FeatureKind):
        return kind_words(FeatureKind(value))
    if name == "kind" and value in set(Part):
        return part_words(Part(value))
    if name == "axis":
        ways = {"up": tr("from −"), "down": tr("from +"), "rest": tr("rest"), "pushed": tr("push")}
        return ways.get(value, value.upper() if value in ("x", "y", "z") else value)
    return _FIELDS.get(value) if name == "field" else None


_FIELDS: Mapping[str, Words] = {
    "weighing.before_g": tr("Before drying, g"),
    "weighing.now_g": tr("Now, or dried, g"),
    "weighing.u_balance_g": tr("Balance, 1 u, g"),
}


def _column(name: str, subject: str, one: Mapping[str, str | None]) -> Words | str:
    """Return the heading of a column, with the unit of its numbers where all have one; without words it is its name."""
    if name == "feature":
        return tr("Feature") if subject in _OF_SIZES else tr("What")
    if name == "axis":
        return tr("Axis") if subject in _OF_SIZES else tr("From")
    if name == "kind":
        return tr("Kind") if subject in _OF_SIZES else tr("Part")
    if name == "step":
        return tr("Step, {unit}", unit=one["step"]) if one["step"] else tr("Step")
    if name in ("measured_mm", "nominal_mm", "half_width"):
        return _of_readings(name, one["measured_mm"])
    return _FURTHER.get(name, name.replace("_", " "))


def _of_readings(name: str, unit: str | None) -> Words:
    """Return the heading of a column whose numbers are in the unit of the readings."""
    if name == "nominal_mm":
        return tr("Nominal") if unit is None else tr("Nominal, {unit}", unit=unit or "mm")
    if name == "half_width":
        return tr("± of the reference, {unit}", unit=unit) if unit else tr("± of the reference")
    scores = {OF_SCORES: tr("Score, 0 to 4"), OF_PADS: tr("Score, −5 to 5")}.get(unit or "")
    return scores or (tr("Reading, {unit}", unit=unit) if unit else tr("Reading"))


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
    "rate_mm3_s": tr("Rate, mm³/s"),
    "temperature_c": tr("Nozzle, °C"),
    "change_percent": tr("Flow, %"),
    "speed_mm_s": tr("Speed, mm/s"),
    "crests": tr("Crests"),
    "first_um": tr("First crest, µm"),
    "last_um": tr("Last crest, µm"),
}
