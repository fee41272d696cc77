"""Was that reading mistyped? Asks, and names the nearest explanation; never changes a reading by itself.

A reading is questioned only when it lies outside a window. About the nominal length the window is the larger of 1 mm
and 3 %: common filaments shrink by up to about 2 %, walls stand proud by a few tenths of a millimetre, and a wrong belt
pitch (2.032 for 2) makes 1.6 %, so an honest reading of a sound part stays inside (common practice, no source). Below
4 mm that millimetre would hide a slipped decimal mark, so a quarter of the length takes its place, but never less than
0.3 mm. About an expected value the window is five standard uncertainties, at least 0.3 mm and never wider than the one
about the nominal.
"""

from __future__ import annotations

import math
import re
from collections.abc import Iterator
from dataclasses import dataclass
from enum import IntEnum

from core.errors import InputError
from core.quantity import MM_PER_INCH
from core.words import Words, tr

_NUMBER = re.compile(r"(0|[1-9]\d*)?(\.\d+)?(?<=\d)")  # as people write it: no idle zero in front, no idle point
_LEAST_MM = 0.3
_SIGMAS = 5.0
_MOST_SUGGESTIONS = 3


@dataclass(frozen=True, slots=True)
class Question:
    """What to ask about a reading, and the lengths in mm that may have been meant, likeliest first (perhaps none)."""

    says: Words
    suggestions: tuple[float, ...]


class _Slip(IntEnum):
    """Ways to mistype, likeliest first; the tens digit is the tier. A tier is offered only if none above it fits.

    One digit changed, left out or doubled fits often by chance, so these come last.
    """

    INCH = 0
    DECIMAL = 1
    SIGN = 2
    NOT_INCH = 3
    SWAPPED = 10
    LEADING = 11
    ONE_DIGIT = 20
    LEFT_OUT = 21
    DOUBLED = 22

    @property
    def tier(self) -> int:
        """Group of equal likelihood."""
        return self // 10


def question_reading(
    reading_mm: float, nominal_mm: float, *, expected_mm: float | None = None, u_expected_mm: float | None = None
) -> Question | None:
    """Return a question about an implausible reading, None about a plausible one.

    Args:
        reading_mm: as typed.
        nominal_mm: drawn length; a position may be zero or negative.
        expected_mm: what the fit of the other readings predicts; the nominal counts where it is None.
        u_expected_mm: its standard uncertainty, that of one further reading.

    Raises:
        InputError: a value is not finite, or the uncertainty is negative.
    """
    _refuse_unusable(reading_mm, nominal_mm, expected_mm, u_expected_mm)
    target_mm = nominal_mm if expected_mm is None else expected_mm
    window_mm = _window_mm(nominal_mm)
    if expected_mm is not None and u_expected_mm is not None:
        window_mm = max(_LEAST_MM, min(_SIGMAS * u_expected_mm, window_mm))
    if abs(reading_mm - target_mm) <= window_mm:
        return None
    fitting = _fitting(reading_mm, target_mm, window_mm)
    if not fitting:
        return Question(_far_off(reading_mm, target_mm, expected_mm is not None), ())
    best, suggestions = fitting[0][0], tuple(dict.fromkeys(meant_mm for _, meant_mm in fitting))[:_MOST_SUGGESTIONS]
    return Question(_explanation(best, reading_mm, target_mm, suggestions[0]), suggestions)


def _refuse_unusable(
    reading_mm: float, nominal_mm: float, expected_mm: float | None, u_expected_mm: float | None
) -> None:
    for field, value in (("reading_mm", reading_mm), ("nominal_mm", nominal_mm), ("expected_mm", expected_mm),
                         ("u_expected_mm", u_expected_mm)):
        if value is not None and not math.isfinite(value):
            raise InputError(field, tr("A length must be a finite number of mm; leave it empty where it is not known."))
    if u_expected_mm is not None and u_expected_mm < 0:
        raise InputError(
            "u_expected_mm", tr("An uncertainty of {u} mm is below zero; give 0 or more.", u=u_expected_mm))


def _window_mm(nominal_mm: float) -> float:
    """Return the half-width about the nominal; a position of zero says nothing about size and gets the full 1 mm."""
    size_mm = abs(nominal_mm)
    constant_mm = 1.0 if size_mm == 0 else min(1.0, max(_LEAST_MM, 0.25 * size_mm))
    return max(constant_mm, 0.03 * size_mm)


def _fitting(reading_mm: float, target_mm: float, window_mm: float) -> list[tuple[_Slip, float]]:
    """Return slips of the best tier whose length lies in the window, nearest first; near zero, where all fit, none."""
    fitting = []
    for slip, meant_mm in _slips(reading_mm):
        off_mm = abs(meant_mm - target_mm)
        if off_mm <= window_mm and off_mm < abs(target_mm):
            fitting.append((slip.tier, off_mm, slip, round(meant_mm, 6)))
    fitting.sort()
    return [(slip, meant_mm) for tier, _, slip, meant_mm in fitting if tier == fitting[0][0]]


def _slips(reading_mm: float) -> Iterator[tuple[_Slip, float]]:
    """Yield every length in mm that one slip turns into the reading."""
    yield _Slip.INCH, reading_mm * MM_PER_INCH
    yield _Slip.NOT_INCH, reading_mm / MM_PER_INCH
    for power in (1, 2, 3):  # the third is a thousands separator taken for a decimal mark, or the reverse
        yield _Slip.DECIMAL, reading_mm * 10**power
        yield _Slip.DECIMAL, reading_mm / 10**power
    yield _Slip.SIGN, -reading_mm
    sign = -1 if reading_mm < 0 else 1
    digits_typed = f"{abs(reading_mm):.6f}".rstrip("0").rstrip(".")
    if re.search(r"\.\d$", digits_typed):
        digits_typed += "0"  # 10.60, as a caliper shows it, may be 10.06 with two digits swapped
    for slip, digits in _digit_slips(digits_typed):
        if _NUMBER.fullmatch(digits):
            yield slip, sign * float(digits)


def _digit_slips(typed: str) -> Iterator[tuple[_Slip, str]]:
    """Yield the texts that differ by one slip of the fingers from digits with at most one decimal point."""
    places = [place for place, digit in enumerate(typed) if digit != "."]
    for left, right in zip(places, places[1:], strict=False):
        between = typed[left + 1 : right]
        yield _Slip.SWAPPED, typed[:left] + typed[right] + between + typed[left] + typed[right + 1 :]
    for digit in "0123456789":
        yield _Slip.LEADING, digit + typed
        for place in places:
            yield _Slip.ONE_DIGIT, typed[:place] + digit + typed[place + 1 :]
            yield _Slip.LEFT_OUT, typed[: place + 1] + digit + typed[place + 1 :]
    for place in places:
        yield _Slip.DOUBLED, typed[:place] + typed[place + 1 :]


def _far_off(reading_mm: float, target_mm: float, expected: bool) -> Words:
    values = {"reading": _text(reading_mm), "off": _text(abs(reading_mm - target_mm)), "target": _text(target_mm)}
    if expected:
        return tr("{reading} mm is {off} mm from the {target} mm expected here. Read it again, or keep it.", **values)
    return tr("{reading} mm is {off} mm from its nominal {target} mm. Read it again, or keep it.", **values)


def _explanation(slip: _Slip, reading_mm: float, target_mm: float, meant_mm: float) -> Words:
    values = {"reading": _text(reading_mm), "target": _text(target_mm), "meant": _text(meant_mm)}
    if slip is _Slip.INCH:
        return tr("{reading} mm for {target} mm? As inch it would be {meant} mm.", **values)
    if slip is _Slip.NOT_INCH:
        return tr("{reading} mm for {target} mm? Without the inch it would be {meant} mm.", **values)
    if slip is _Slip.DECIMAL:
        return tr("{reading} mm for {target} mm? With the decimal mark moved it would be {meant} mm.", **values)
    if slip is _Slip.SIGN:
        return tr("{reading} mm for {target} mm? With the other sign it would be {meant} mm.", **values)
    if slip is _Slip.SWAPPED:
        return tr("{reading} mm for {target} mm? With two digits swapped it would be {meant} mm.", **values)
    if slip in (_Slip.LEADING, _Slip.LEFT_OUT):
        return tr("{reading} mm for {target} mm? With one digit more it could be {meant} mm.", **values)
    if slip is _Slip.DOUBLED:
        return tr("{reading} mm for {target} mm? With one digit less it could be {meant} mm.", **values)
    return tr("{reading} mm for {target} mm? With one digit changed it could be {meant} mm.", **values)


def _text(length_mm: float) -> str:
    return f"{round(length_mm, 3):.10g}".replace("-", "−")
