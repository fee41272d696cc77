"""The rows of a reversal trial: what is planned for each way of reading, and the last column of the table."""

from __future__ import annotations

from typing import Any

from app.units import hold
from app.widgets.fields import local_text
from app.widgets.reading_rows import Column
from app.words import shown
from core.words import tr

QUICK, FULL, CURVE, PUSH = "quick", "full", "curve", "push"
UP, DOWN, REST, PUSHED = "up", "down", "rest", "pushed"
ALONG, SIDEWAYS = "along", "sideways"
STEP_MM = 0.01
USUAL_TRAVEL_MM = 220.0
_PAIRS, _CYCLES, _STEPS = 5, 5, 20
_TARGETS = (0.1, 0.31, 0.48, 0.72, 0.9)  # shares of the travel, uneven so that nothing periodic hides
_FIRST_OF = {QUICK: UP, PUSH: REST}  # the first reading of a pair


def planned_rows(method: str, axis: str, travel_mm: float) -> list[dict[str, Any]]:
    """Return the empty rows of a way of reading along an axis."""
    if method == QUICK:
        return [planned_row(place, way) for place in _places(axis) for _ in range(_PAIRS) for way in (UP, DOWN)]
    if method == PUSH:
        names = {ALONG: "Along", SIDEWAYS: "Sideways"}
        holds = [hold for _ in range(_PAIRS) for hold in (REST, PUSHED)]
        return [planned_row(name, hold) | {"kind": side} for side, name in names.items() for hold in holds]
    if method == FULL:
        targets = [round(share * travel_mm, 1) for share in _TARGETS]
        return [
            planned_row(f"Run {cycle}", way, target)
            for cycle in range(1, _CYCLES + 1)
            for way, run in ((UP, targets), (DOWN, targets[::-1]))
            for target in run
        ]
    return [planned_row(f"Step {step}", "", round(step * STEP_MM, 4)) for step in range(_STEPS + 1)]


def reversal_columns() -> tuple[Column, ...]:
    """Return the columns of the table, of all ways together."""
    sides = [(UP, shown(tr("−"))), (DOWN, shown(tr("+"))), (REST, shown(tr("rest"))), (PUSHED, shown(tr("push")))]
    return (
        Column("feature", shown(tr("Place"))),
        Column("axis", shown(tr("From")), "choice", choices=sides),
        Column("nominal_mm", hold(shown(tr("Target mm"))), "length"),
        Column("measured_mm", shown(tr("Reading mm")), "length"),
        Column("error", shown(tr("Differs mm")), "shown", editable=False),
    )


def planned_row(feature: str, way: str, target_mm: float | None = None) -> dict[str, Any]:
    """Return one empty row."""
    raw = "" if target_mm is None else f"{target_mm:g}"
    return {"feature": feature, "axis": way, "kind": "travel", "nominal_mm": target_mm, "nominal_raw": raw}


def _places(axis: str) -> tuple[str, ...]:
    low, high = {"x": ("Left", "Right"), "y": ("Front", "Back"), "z": ("Low", "High")}[axis]
    return low, "Middle", high


def differences(method: str, rows: list[dict[str, object]], places: list[int]) -> dict[int, str]:
    """Return the text of the last column: of each pair, each deviation, or what is lost."""
    texts: dict[int, str] = {}
    seen: dict[tuple[object, object], list[int]] = {}
    first: float | None = None
    for place in places:
        row = rows[place]
        reading, target = row["measured_mm"], row["nominal_mm"]
        if method in _FIRST_OF:
            seen.setdefault((row["feature"], row["axis"]), []).append(place)
        if not isinstance(reading, float | int):
            continue
        first_of = _FIRST_OF.get(method, "")
        if method in _FIRST_OF and row["axis"] != first_of:
            before, nth = seen.get((row["feature"], first_of), []), len(seen[row["feature"], row["axis"]]) - 1
            other = rows[before[nth]]["measured_mm"] if nth < len(before) else None
            if isinstance(other, float | int):
                texts[place] = _signed(other - reading if method == QUICK else reading - other)
        elif method == FULL and isinstance(target, float | int):
            texts[place] = _signed(reading - target)
        elif method == CURVE and isinstance(target, float | int):
            first = reading if first is None else first
            texts[place] = _signed(target - abs(reading - first))
    return texts


def _signed(value_mm: float) -> str:
    return local_text(f"{round(value_mm, 4) + 0.0:+.3f}")
