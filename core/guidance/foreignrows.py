"""Rows from a file of another hand: whether every value in their groups is of the kind that its name promises.

The pages read what was entered by name, and a name tells its kind: `nozzle_mm` ends in a unit and is a number, `raw` is
text, `excluded` is yes or no. What a page would stumble over is said here, before it is imported. A name that this
program does not know is left alone: nothing reads it. `core.records.cells` checks the columns that are no groups.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Iterator, Mapping
from typing import Any

from core.errors import InputError
from core.guidance.ownparts import PARTS_KEY, parts_from
from core.guidance.verdict import Setting
from core.machine_geometry.parts import drive_from_parts
from core.measuring.doubt import CONFORMITY_KEY
from core.measuring.reach import refuse_out_of_reach
from core.measuring.tolerance import Conformity
from core.quantity import coverage_factor
from core.records.rows import TrialState
from core.words import SAID, from_plain, in_short, tr

Fault = tuple[str, Any, str]  # where, the value, what it should be

_UNITS = (
    "_mm", "_mm2", "_mm3", "_cm3", "_mm_s", "_mm_s2", "_mm3_s", "_g", "_g_m", "_g_cm3", "_c", "_s", "_n", "_hz", "_um",
    "_steps_mm", "_ratio", "_percent", "_deg",
)  # fmt: skip
_NUMBERS = frozenset((
    "asked_score", "change_percent", "crests", "dof", "e_n", "from_lot", "from_trial", "half_width", "high",
    "in_force", "k", "layers_in_contact", "limit", "low", "minutes", "other", "resolution", "setting", "step",
    "steps", "U", "value",
))  # fmt: skip
_YES_NO = frozenset(("confirmed", "excluded", "fault", "questioned"))
_TEXTS = frozenset((
    "aim", "axis", "bead_model", "beads", "by", "clockwise", "criterion", "feature", "field", "file", "frame",
    "gauge", "grid", "hash", "how", "judge", "kind", "ladder", "light_gap", "listing", "log", "material", "method",
    "name", "note", "path_counted", "piece", "plan", "plane", "raw", "read", "reading", "reason", "screws", "state",
    "text", "thread", "tolerance", "trial", "unit", "value_unit", "view", "way",
))  # fmt: skip
_NUMBERS_BY_NAME = frozenset(("factor", "max_speed_mm_s", "max_acceleration_mm_s2", "piece_bounds", "times_s"))
_NEVER_NOTHING = _YES_NO | {"axis", "feature", "kind", "raw"}  # of a reading: at least an empty text
_ENDLESS = frozenset(("dof", "e_n", "k", "U", "U_mm"))  # of few readings they may have no end
_NEEDED = {  # what is read again from a kept trial, whatever else it holds
    "sizeerror": ("readings", ("nominal_mm", "measured_mm", "kind", "axis")),
    "prediction": ("conditions", ("covariance_mm2", "k")),
}


def foreign_faults(table: str, row: Mapping[str, Any]) -> tuple[str, ...]:
    """Return a sentence for each value in the groups of a row that is not of the kind that its name promises.

    Args:
        table: of the row.
        row: its values by column.
    """
    return tuple(
        tr("{where}: “{value}” is not {what}; correct it.", where=where, value=in_short(value), what=what)
        for where, value, what in (_CHECKS[table](row) if table in _CHECKS else ())
    )


def _machine(row: Mapping[str, Any]) -> Iterator[Fault]:
    yield from _drives("drives", row["drives"])
    for axis in "xyz":
        name = f"travel_{axis}_mm"
        if not (row[name] > 0.0 and _is_within_reach(name, row[name])):
            yield name, row[name], tr("a length above zero and within reach")
    yield from _named("limits", row["limits"])
    for name, text in row["templates"].items():
        if not isinstance(text, str):
            yield f"templates, {name}", text, tr("a text")


def _trial(row: Mapping[str, Any]) -> Iterator[Fault]:
    lengths = {len(column) for column in row["readings"].values() if isinstance(column, list)}
    for name, column in row["readings"].items():
        if not isinstance(column, list) or len(lengths) > 1:
            yield f"readings, {name}", column, tr("a list as long as its neighbours")
            continue
        for number, value in enumerate(column, start=1):
            where = f"readings, {name}, {number}"
            if value is None and name in _NEVER_NOTHING:
                yield where, value, tr("true or false") if name in _YES_NO else tr("a text")
            yield from _value(where, name, value)
    yield from _named("conditions", row["conditions"])
    for name in ("kept_at", "serial") if row["state"] != TrialState.OPEN else ():
        if row[name] is None:
            yield name, None, tr("there, as of every kept trial")
    for number, advice in enumerate(row["verdict"], start=1):
        yield from _advice(f"verdict, {number}", advice)
    group, needed = _NEEDED.get(row["subject"], ("readings", ()))
    for name in needed if row[group] and row["state"] != TrialState.OPEN else ():
        if name not in row[group]:
            yield group, name, tr("among what it holds")


def _advice(where: str, advice: Mapping[str, Any]) -> Iterator[Fault]:
    for name in ("action", "because", "do_not_touch"):
        if not isinstance(advice.get(name), str):
            yield f"{where}, {name}", advice.get(name), tr("a text")
    for name, offered in (("setting", tuple(Setting)), (CONFORMITY_KEY, (*Conformity, None))):
        if advice.get(name) not in offered:
            yield f"{where}, {name}", advice.get(name), tr("one of the words it may hold")
    yield from _value(f"{where}, amount", "value", advice.get("amount"))
    if not isinstance(advice.get(SAID, {}), Mapping):
        yield f"{where}, {SAID}", advice[SAID], tr("a list of sentences")


def _result(row: Mapping[str, Any]) -> Iterator[Fault]:
    if not math.isfinite(row["value"]):
        yield "value", row["value"], tr("a number")
    if not row["u"] >= 0.0:
        yield "u", row["u"], tr("a number above zero")
    try:
        coverage_factor(row["dof"])
    except InputError:
        yield "dof", row["dof"], tr("a number above zero")


def _setting(row: Mapping[str, Any]) -> Iterator[Fault]:
    yield from _named("prediction", row["prediction"])


def _event(row: Mapping[str, Any]) -> Iterator[Fault]:
    for name, value in row["detail"].items():
        where = f"detail, {name}"
        if name == "drives":
            yield from _drives(where, value)
        elif name in ("results", "items"):
            if not isinstance(value, list) or not all(isinstance(result, str) for result in value):
                yield where, value, tr("a list of texts")
        elif isinstance(value, Mapping):
            yield from (fault for part in ("value", "U") for fault in _needed_number(where, part, value))
        else:
            yield from _value(where, "text" if name == "step" else name, value)  # of the walk; elsewhere a number


def _shop_value(row: Mapping[str, Any]) -> Iterator[Fault]:
    if row["key"] == PARTS_KEY:
        try:
            parts_from(row["value"])
        except (AttributeError, InputError, KeyError, TypeError, ValueError):
            yield "value", row["value"], tr("a list of parts")
    names = row["value"].get("names", [])
    if not isinstance(names, list) or not all(isinstance(name, str) for name in names):
        yield "value, names", names, tr("a list of texts")


def _drives(where: str, drives: Any) -> Iterator[Fault]:
    """Check the parts of drives by axis, as `Drive.parts` gives them."""
    by_axis = isinstance(drives, Mapping)
    for place, parts in {f"{where}, {axis}": drives[axis] for axis in drives}.items() if by_axis else [(where, drives)]:
        try:
            drive_from_parts(parts)
        except (AttributeError, InputError):
            yield place, parts, tr("a drive with its parts")


def _named(where: str, values: Mapping[str, Any]) -> Iterator[Fault]:
    for name, value in values.items():
        yield from _value(f"{where}, {name}", name, value)


def _value(where: str, name: str, value: Any) -> Iterator[Fault]:
    """Check one value by its name; nothing may stand for every kind but a list of sentences."""
    if value is None and name != "mind":
        return
    if name in _NUMBERS_BY_NAME:
        if not isinstance(value, Mapping) or not all(map(_is_number, value.values())):
            yield where, value, tr("a group of numbers")
    elif name == "covariance_mm2":
        if not _is_square(value):
            yield where, value, tr("a square of numbers")
    elif name == "mind":
        if not isinstance(value, list) or not all(map(_is_sentence, value)):
            yield where, value, tr("a list of sentences")
    elif name in _YES_NO:
        if not isinstance(value, bool):
            yield where, value, tr("true or false")
    elif name in _NUMBERS or name.endswith(_UNITS):
        if not _is_number(value, endless=name in _ENDLESS):
            yield where, value, tr("a number")
    elif (name in _TEXTS or name.endswith("_raw")) and not isinstance(value, str):
        yield where, value, tr("a text")


def _needed_number(where: str, name: str, values: Mapping[str, Any]) -> Iterator[Fault]:
    if not _is_number(values.get(name)):
        yield f"{where}, {name}", values.get(name), tr("a number")


def _is_number(value: Any, *, endless: bool = False) -> bool:
    is_one = isinstance(value, int | float) and not isinstance(value, bool)
    return is_one and (math.isfinite(value) or (endless and not math.isnan(value)))


def _is_within_reach(name: str, value: float) -> bool:
    try:
        refuse_out_of_reach(name, value)
    except InputError:
        return False
    return True


def _is_square(value: Any) -> bool:
    rows = value if isinstance(value, list) else [None]
    return all(isinstance(row, list) and len(row) == len(rows) and all(map(_is_number, row)) for row in rows)


def _is_sentence(plain: Any) -> bool:
    try:
        return isinstance(plain, str | Mapping) and isinstance(from_plain(plain), str)
    except ValueError:
        return False


_CHECKS: Mapping[str, Callable[[Mapping[str, Any]], Iterator[Fault]]] = {
    "machine": _machine,
    "trial": _trial,
    "result": _result,
    "setting": _setting,
    "event": _event,
    "shop_value": _shop_value,
}
