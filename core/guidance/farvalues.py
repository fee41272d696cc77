"""Which value of a ladder stands so far from all others that it was hardly read so: to be read again, or excluded.

A value is far off where it is more than ten times the median of the others, or less than a tenth of it, and as far from
each reading of its own step and of the steps beside it: a deep valley or a high peak has neighbours on its slopes.

Reference: ten times: common practice, no source.
"""

from __future__ import annotations

from statistics import median

from core.motion_trials.ladders import LadderReadings, Read
from core.words import Words, tr

TIMES = 10.0


def far_values_words(readings: LadderReadings) -> tuple[Words, ...]:
    """Return a sentence for each value far from the others; none for scores, or where a value is below zero.

    Args:
        readings: of a ladder.
    """
    values = list(readings.value)
    if readings.read is Read.SCORE or len(values) < 3 or min(values) < 0:
        return ()
    return tuple(_words(readings, place) for place in range(len(values)) if _is_far(readings, place))


def _is_far(readings: LadderReadings, place: int) -> bool:
    value = float(readings.value[place])
    return _apart(value, median(_others(readings, place))) and all(_apart(value, v) for v in _beside(readings, place))


def _others(readings: LadderReadings, place: int) -> list[float]:
    return [float(value) for number, value in enumerate(readings.value) if number != place]


def _apart(value: float, other: float) -> bool:
    """Whether a value is more than ten times another one, which is not zero, or less than a tenth of it."""
    return other > 0 and not other / TIMES <= value <= other * TIMES


def _beside(readings: LadderReadings, place: int) -> list[float]:
    """Return the other readings at the same step, and those at the next step on either side."""
    steps = sorted(set(readings.step))
    at = steps.index(readings.step[place])
    near = set(steps[max(at - 1, 0) : at + 2])
    return [
        float(value)
        for number, (step, value) in enumerate(zip(readings.step, readings.value, strict=True))
        if step in near and number != place
    ]


def _words(readings: LadderReadings, place: int) -> Words:
    unit = "mm" if readings.read is Read.WIDTHS else readings.unit
    named = {
        "piece": readings.piece[place] if readings.piece else tr("One specimen"),
        "step": readings.step[place],
        "unit": readings.kind.unit,
        "value": readings.value[place],
        "others": median(_others(readings, place)),
    }
    if unit:
        return tr(
            "{piece}, at {step:g} {unit}, reads {value:g} {of}, the middle one of the others {others:g} {of}: read it "
            "again, or exclude it.",
            of=unit, **named,
        )  # fmt: skip
    return tr(
        "{piece}, at {step:g} {unit}, reads {value:g}, the middle one of the others {others:g}: read it again, or "
        "exclude it.",
        **named,
    )
