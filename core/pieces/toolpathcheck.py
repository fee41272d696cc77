"""The check of a program: follows what was written as a machine would, and refuses in words.

It shares nothing with the writer. Where a machine stands is not known before it has found its zero and been told a
place, and no plastic may be fed before the nozzle has been waited for.

    speed    distance / time of each move, as if no time were lost on speeding up
    rate     (filament beyond what was drawn back before) A_f / time

Reference: what the words do: common practice. The least temperature of feeding, 170 °C: common practice, no source.
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Mapping
from dataclasses import dataclass

from core.errors import InputError
from core.pieces.toolpathwords import command_from_line
from core.words import Words, tr

MOST_FAULTS = 20
COLDEST_C = 170.0
_MOST_FAN = 255.0
_AXES = "XYZ"
_NEAR = 1e-6
_LAST_DIGIT_MM = 1e-5  # of E: rounding is no speed
_OFF_WORDS = ("M104", "M140", "M107")


@dataclass(frozen=True, slots=True)
class Limits:
    """What the machine can bear, as it was entered.

    Attributes:
        low_mm: where the travel of X, Y and Z begins, high_mm where it ends.
        round_bed: whether X and Y must stay in the circle within these ends.
        speed_mm_s: highest speed of the nozzle, z_mm_s that of Z, feed_mm_s that of the filament.
        rate_mm3_s: highest rate at which plastic may be fed.
    """

    low_mm: tuple[float, float, float] = (0.0, 0.0, 0.0)
    high_mm: tuple[float, float, float] = (220.0, 220.0, 220.0)
    round_bed: bool = False
    hot_end_c: float = 240.0
    bed_c: float = 100.0
    speed_mm_s: float = 150.0
    z_mm_s: float = 10.0
    feed_mm_s: float = 60.0
    rate_mm3_s: float = 12.0


@dataclass(frozen=True, slots=True)
class Fault:
    """What is wrong, with the line it stands in, counted from 1; 0 for the whole program."""

    line: int
    says: str


@dataclass(frozen=True, slots=True)
class Checked:
    """What was found: faults (the first twenty), and what the program does.

    Attributes:
        filament_mm: fed in all; what is drawn back and given again counts once.
        low_mm: lowest places of X, Y and Z, high_mm the highest; nan where it never was told one.
        time_s: the least time, as if none were lost on speeding up and heating.
    """

    faults: tuple[Fault, ...]
    filament_mm: float
    low_mm: tuple[float, float, float]
    high_mm: tuple[float, float, float]
    nozzle_c: float
    bed_c: float
    speed_mm_s: float
    rate_mm3_s: float
    time_s: float


def check_program(pieces: Iterable[bytes], limits: Limits, filament_mm: float) -> Checked:
    """Read a program and return what is wrong with it and what it does.

    Args:
        pieces: the program as it was written.
        limits: what the machine can bear.
        filament_mm: diameter of the filament.

    Raises:
        InputError: field `filament_mm`, not above zero.
    """
    if not 0 < filament_mm < 10:
        raise InputError("filament_mm", tr("A filament of {value:g} mm cannot be; type it in mm.", value=filament_mm))
    books = _Books(limits, math.pi * filament_mm**2 / 4.0)
    for line in b"".join(pieces).decode("utf-8", "replace").splitlines():
        books.read(line)
    return books.closed()


@dataclass(slots=True)
class _Heater:
    """What a heater was told; None where it was told nothing yet."""

    name: Words
    most_c: float
    told_c: float | None = None
    hottest_c: float = 0.0
    waited: bool = False


class _Books:
    """What a machine would have done so far."""

    def __init__(self, limits: Limits, filament_mm2: float) -> None:
        self.limits, self.filament_mm2 = limits, filament_mm2
        self.line = 0
        self.faults: list[Fault] = []
        self.at: dict[str, float | None] = dict.fromkeys(_AXES)
        self.zeroed: set[str] = set()
        self.absolute: bool | None = None
        self.feed_absolute: bool | None = None
        self.feed_at = 0.0  # where E stands
        self.fed = self.owed = 0.0  # in all; drawn back and not given again
        self.speed: float | None = None  # as F says, mm/s
        self.nozzle = _Heater(tr("hot end"), limits.hot_end_c)
        self.bed = _Heater(tr("bed"), limits.bed_c)
        self.low: dict[str, float] = {}
        self.high: dict[str, float] = {}
        self.fastest = self.most_rate = self.time = 0.0

    def read(self, text: str) -> None:
        """Book one line."""
        self.line += 1
        if self.line == 1 and not text.startswith(";"):
            self._refuse(tr("The program does not begin with its cautions."))
        try:
            command = command_from_line(text)
        except InputError as error:
            self._refuse(error.message)
            return
        if command is not None:
            self._obey(command.name, command.numbers)

    def closed(self) -> Checked:
        """Return what was found."""
        self.line = 0
        for heater in (self.nozzle, self.bed):
            if heater.told_c != 0.0:
                self._refuse(tr("The {heater} is not switched off at the end.", heater=heater.name))
        return Checked(
            tuple(self.faults[:MOST_FAULTS]),
            self.fed,
            _three(self.low),
            _three(self.high),
            self.nozzle.hottest_c,
            self.bed.hottest_c,
            self.fastest,
            self.most_rate,
            self.time,
        )

    def _refuse(self, says: str) -> None:
        if len(self.faults) < MOST_FAULTS:
            self.faults.append(Fault(self.line, says))

    def _obey(self, name: str, numbers: Mapping[str, float]) -> None:
        heaters = (self.nozzle, self.bed)
        if any(heater.told_c is None for heater in heaters) and not (name in _OFF_WORDS and not numbers.get("S")):
            self._refuse(tr("{name} comes before both heaters were switched off (M104 S0, M140 S0).", name=name))
            for heater in heaters:
                heater.told_c = heater.told_c or 0.0  # said once
        match name:
            case "G0" | "G1":
                self._move(numbers)
            case "G28":
                for axis in numbers or _AXES:
                    self.zeroed.add(axis)
                    self.at[axis] = None
            case "G90" | "G91":
                self.absolute = name == "G90"
            case "M82" | "M83":
                self.feed_absolute = name == "M82"
            case "G92":
                self._rename_place(numbers)
            case "M106" | "M107":
                if not 0 <= numbers.get("S", 0.0) <= _MOST_FAN:
                    says = tr("S of M106 is 0 to 255 here, not {value:g}; controllers differ.", value=numbers["S"])
                    self._refuse(says)
            case _:
                self._heat(self.nozzle if name in ("M104", "M109") else self.bed, name in ("M109", "M190"), numbers)

    def _rename_place(self, numbers: Mapping[str, float]) -> None:
        if set(numbers) != {"E"}:
            self._refuse(tr("G92 may set E only: with another axis nobody knows any more where the bed ends."))
        self.feed_at = numbers.get("E", self.feed_at)

    def _heat(self, heater: _Heater, waits: bool, numbers: Mapping[str, float]) -> None:
        told = numbers.get("S", numbers.get("R"))
        if told is None:
            self._refuse(tr("No temperature stands there (S)."))
            return
        if not 0 <= told <= heater.most_c:
            self._refuse(
                tr("{told:g} °C is beyond the limit of the {heater}, {limit:g} °C. Lower it.",
                   told=told, heater=heater.name, limit=heater.most_c)
            )  # fmt: skip
        heater.waited = waits or (heater.waited and heater.told_c is not None and told <= heater.told_c)
        heater.told_c = told
        heater.hottest_c = max(heater.hottest_c, told)

    def _move(self, numbers: Mapping[str, float]) -> None:
        if "F" in numbers:
            self.speed = numbers["F"] / 60.0
        fed = self._fed(numbers)
        shifts = {axis: self._shift(axis, numbers[axis]) for axis in _AXES if axis in numbers}
        if not shifts and "E" not in numbers:
            return
        if self.speed is None or self.speed <= 0:
            self._refuse(tr("It has no speed above 0 (F)."))
            return
        if fed:
            self._refuse_cold()
        known = [shift for shift in shifts.values() if shift is not None]
        way = math.hypot(*known) if len(known) == len(shifts) else None
        if "X" in shifts or "Y" in shifts:
            self._refuse_outside_circle()
        self._time_move(shifts, way, fed, self.speed)

    def _shift(self, axis: str, number: float) -> float | None:
        """Go along one axis and return by how much; None where nobody knows from where."""
        place = self.at[axis]
        low, high = self._ends(axis)
        if self.absolute is None:
            self._refuse(tr("{axis} moves, and neither G90 nor G91 said how numbers count.", axis=axis))
        if axis not in self.zeroed:
            self._refuse(tr("{axis} moves before it has found its zero (G28).", axis=axis))
        target: float | None = number
        shift = None if place is None else number - place
        if self.absolute is False:
            target, shift = None if place is None else place + number, number
            if place is None:
                self._refuse(tr("{axis} moves by {by:g} mm, and nobody knows from where.", axis=axis, by=number))
        if shift is not None and abs(shift) > high - low + _NEAR:
            self._refuse(
                tr("{axis} moves by {by:g} mm; the axis is only {length:g} mm long.",
                   axis=axis, by=shift, length=high - low)
            )  # fmt: skip
        if target is not None:
            self._arrive(axis, target, low, high)
        return shift

    def _arrive(self, axis: str, target: float, low: float, high: float) -> None:
        if axis == "Z" and target < low - _NEAR:
            self._refuse(tr("Z {place:g} mm is below the bed.", place=target))
        elif not low - _NEAR <= target <= high + _NEAR:
            self._refuse(
                tr("{axis} {place:g} mm is outside the travel, {low:g} to {high:g} mm. Make the piece smaller.",
                   axis=axis, place=target, low=low, high=high)
            )  # fmt: skip
        self.at[axis] = target
        self.low[axis] = min(target, self.low.get(axis, target))
        self.high[axis] = max(target, self.high.get(axis, target))

    def _refuse_outside_circle(self) -> None:
        """Hold X and Y against the edge of a round bed."""
        if not self.limits.round_bed:
            return
        x, y = self.at["X"], self.at["Y"]
        if x is None or y is None:
            return
        (low_x, high_x), (low_y, high_y) = self._ends("X"), self._ends("Y")
        away = math.hypot(x - (low_x + high_x) / 2, y - (low_y + high_y) / 2)
        if away > (high_x - low_x) / 2 + _NEAR:
            self._refuse(tr("X {x:g}, Y {y:g} mm is outside the round bed. Make the piece smaller.", x=x, y=y))

    def _ends(self, axis: str) -> tuple[float, float]:
        number = _AXES.index(axis)
        return self.limits.low_mm[number], self.limits.high_mm[number]

    def _fed(self, numbers: Mapping[str, float]) -> float:
        """Return how much filament a move feeds, and count on."""
        if "E" not in numbers:
            return 0.0
        if self.feed_absolute is None:
            self._refuse(tr("E moves, and neither M82 nor M83 said how numbers count."))
        fed = numbers["E"] if self.feed_absolute is False else numbers["E"] - self.feed_at
        self.feed_at += fed
        return fed

    def _refuse_cold(self) -> None:
        told = self.nozzle.told_c or 0.0
        if told < COLDEST_C:
            self._refuse(
                tr("Filament moves while the nozzle is told {told:g} °C; below {least:g} °C nothing flows.",
                   told=told, least=COLDEST_C)
            )  # fmt: skip
        elif not self.nozzle.waited:
            self._refuse(tr("Filament moves before the nozzle was waited for (M109)."))

    def _time_move(self, shifts: Mapping[str, float | None], way: float | None, fed: float, speed: float) -> None:
        """Hold speed and rate of a move against the ceilings."""
        limits = self.limits
        if shifts and way != 0:
            self.fastest = max(self.fastest, speed)
            self._refuse_above(tr("The nozzle"), speed, limits.speed_mm_s, "mm/s")
        if "Z" in shifts:
            upright = 1.0 if len(shifts) == 1 or not way else abs(shifts["Z"] or 0.0) / way
            self._refuse_above(tr("Z"), speed * upright, limits.z_mm_s, "mm/s")
        length = way or (0.0 if way is None else abs(fed))
        time = length / speed
        self.time += time
        forward = max(fed - self.owed, 0.0)
        self.owed = max(self.owed - fed, 0.0)
        self.fed += forward
        if fed and time:
            self._refuse_above(tr("The filament"), abs(fed) / time, limits.feed_mm_s, "mm/s")
            rate = max(forward - _LAST_DIGIT_MM, 0.0) * self.filament_mm2 / time
            self.most_rate = max(self.most_rate, rate)
            self._refuse_above(tr("The plastic"), rate, limits.rate_mm3_s, "mm³/s")
        elif forward:
            self._refuse(tr("Filament moves on the way from a place that nobody knows."))

    def _refuse_above(self, what: Words, value: float, most: float, unit: str) -> None:
        if value > most * (1.0 + _NEAR):
            self._refuse(
                tr("{what} would run at {value:.4g} {unit}, the ceiling is {most:.4g} {unit}. Slow it down.",
                   what=what, value=value, unit=unit, most=most)
            )  # fmt: skip


def _three(places: Mapping[str, float]) -> tuple[float, float, float]:
    return places.get("X", math.nan), places.get("Y", math.nan), places.get("Z", math.nan)
