"""What follows from a feed trial: the extruder's steps per millimetre, where it slips, or what to look for first."""

from __future__ import annotations

import math
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from typing import TypeVar

from core.errors import InputError
from core.filament.feed import METHOD, Feed, FeedAnswer, fed_from_marks, fed_from_mass, measure_feed
from core.filament.slip import HotFeed, Slip, measure_slip
from core.guidance.slipadvice import advise_slip
from core.guidance.verdict import Advice, Setting
from core.measuring.reach import refuse_unlike
from core.quantity import Estimate, rounded_pair, size_text
from core.words import Words, tr

EXTRUDER_STEPS = "extruder_steps_mm"  # name of the setting in force
WIDE_RATIO = 0.01
_U_RULE_RATIO = 0.0005  # of the rule the marks are read on
_Found = TypeVar("_Found")


@dataclass(frozen=True, slots=True)
class ByMarks:
    """Repeats read at two marks: mark before, rest after (n,), and the standard uncertainty of reading one."""

    mark_mm: Sequence[float]
    rest_mm: Sequence[float]
    u_reading_mm: float


@dataclass(frozen=True, slots=True)
class ByMass:
    """Repeats weighed (n,), the mass per length (g/m) of the lot, and the standard uncertainty of one weighing."""

    mass_g: Sequence[float]
    mass_per_length: Estimate
    u_balance_g: float


@dataclass(frozen=True, slots=True)
class FeedReadings:
    """All repeats of a trial.

    Attributes:
        commanded_mm: (n,) filament commanded.
        fed: how the filament fed was found.
        rate_mm3_s: (n,) volumetric rate of a repeat through the hot nozzle; None for one without load.
        in_force_steps_mm: when they were taken.
        hot: what held under load; None where nothing was fed under load.
    """

    commanded_mm: Sequence[float]
    fed: ByMarks | ByMass
    rate_mm3_s: Sequence[float | None]
    in_force_steps_mm: float
    hot: HotFeed | None = None

    @property
    def free(self) -> list[int]:
        """Places of the repeats without load."""
        return [place for place, rate in enumerate(self.rate_mm3_s) if rate is None]

    @property
    def loaded(self) -> list[int]:
        """Places of the repeats under load."""
        return [place for place, rate in enumerate(self.rate_mm3_s) if rate is not None]


@dataclass(frozen=True, slots=True, eq=False)
class FeedJudgement:
    """What the repeats without load and those under load say, and what follows."""

    readings: FeedReadings
    feed: Feed | None
    slip: Slip | None
    advice: tuple[Advice, ...]

    @property
    def method(self) -> str:
        """Name and version of the mathematics."""
        return METHOD

    def estimates(self) -> tuple[Estimate, ...]:
        """Return the estimates of the trial."""
        return (*(self.feed.estimates() if self.feed else ()), *(self.slip.estimates() if self.slip else ()))


def judge_feed(readings: FeedReadings, previous: tuple[float, float] | None = None) -> FeedJudgement:
    """Judge a trial: from typed readings to a verdict.

    Args:
        readings: all repeats.
        previous: ratio and steps in force of the last kept feed trial, as for `feed.measure_feed`.

    Raises:
        InputError: as the functions of `core.filament.feed` and `slip` do; `temperature_c` where it is not told under
            load.
    """
    fed_mm = _fed_mm(readings.fed)
    refuse_unlike(commanded_mm=readings.commanded_mm, fed_mm=fed_mm, rate_mm3_s=readings.rate_mm3_s)
    free, loaded = readings.free, readings.loaded
    feed = _at(free, lambda: _feed(readings, fed_mm, previous)) if free or not loaded else None
    slip = _at(loaded, lambda: _slip(readings, fed_mm)) if loaded else None
    advice = advise_feed(feed) if feed else _only_loaded(readings)
    if slip is not None and readings.hot is not None:
        advice = (*advice, advise_slip(slip, readings.hot, feed))
    return FeedJudgement(readings, feed, slip, advice)


def _fed_mm(fed: ByMarks | ByMass) -> list[float]:
    if isinstance(fed, ByMarks):
        return list(fed_from_marks(fed.mark_mm, fed.rest_mm))
    return list(fed_from_mass(fed.mass_g, fed.mass_per_length.value))


def _uncertainty(fed: ByMarks | ByMass) -> tuple[float, int, float]:
    """Return u of one reading in mm, readings for one repeat, and the relative u that all repeats share."""
    if isinstance(fed, ByMarks):
        return fed.u_reading_mm, 2, _U_RULE_RATIO
    per_mm = fed.mass_per_length.value / 1000.0
    return fed.u_balance_g / per_mm, 1, fed.mass_per_length.u / fed.mass_per_length.value


def _feed(readings: FeedReadings, fed_mm: list[float], previous: tuple[float, float] | None) -> Feed:
    u_reading_mm, each, u_scale_ratio = _uncertainty(readings.fed)
    return measure_feed(
        [readings.commanded_mm[place] for place in readings.free],
        [fed_mm[place] for place in readings.free],
        readings.in_force_steps_mm,
        u_reading_mm=u_reading_mm,
        u_scale_ratio=u_scale_ratio,
        readings_each=each,
        previous=previous,
    )


def _slip(readings: FeedReadings, fed_mm: list[float]) -> Slip:
    if readings.hot is None:
        raise InputError(
            "temperature_c", tr("Under load slip depends on the nozzle's temperature; type the one shown.")
        )
    loaded = readings.loaded
    commanded = [readings.commanded_mm[place] for place in loaded]
    for row, length in enumerate(commanded):
        if not 0 < length <= 5000:
            raise InputError(
                "commanded_mm", tr("{length:g} mm of filament is not between 0 and 5000 mm; retype it.", length=length),
                row,
            )  # fmt: skip
    rates = [rate for rate in readings.rate_mm3_s if rate is not None]
    share = [fed_mm[place] / length for place, length in zip(loaded, commanded, strict=True)]
    u_reading_mm, each, u_scale_ratio = _uncertainty(readings.fed)
    u_one_ratio = math.sqrt(each) * u_reading_mm * len(commanded) / sum(commanded)
    return measure_slip(rates, share, u_reading_ratio=u_one_ratio, u_scale_ratio=u_scale_ratio)


def _at(places: list[int], judge: Callable[[], _Found]) -> _Found:
    """Return what `judge` returns; a row at fault is told by its place among all repeats."""
    try:
        return judge()
    except InputError as error:
        if error.row is None or error.row >= len(places):  # of a value that is no repeat's
            raise
        raise InputError(error.field, error.message, places[error.row]) from error


def _only_loaded(readings: FeedReadings) -> tuple[Advice, ...]:
    action = tr("Keep {old:g} steps/mm until it was fed without load.", old=readings.in_force_steps_mm)
    because = tr("Under load slip would be booked to the steps.")
    return (Advice(Setting.UNDECIDED, action, None, "", because, _untouched()),)


def advise_feed(feed: Feed) -> tuple[Advice, ...]:
    """Return the verdict on the repeats without load."""
    share = size_text(feed.ratio)
    repeats = feed.repeats_ratio.size
    fed = (
        tr("Fed {share} of what was commanded (one repeat).", share=share)
        if repeats == 1
        else tr("Fed {share} of what was commanded ({count} repeats).", share=share, count=repeats)
    )
    action, setting, amount, unit, because = {
        FeedAnswer.LEAVE: _leave,
        FeedAnswer.CHANGE: _change,
        FeedAnswer.ONCE: _once,
        FeedAnswer.WRONG_PART: _wrong_part,
        FeedAnswer.GO_BACK: _go_back,
        FeedAnswer.UPSIDE_DOWN: _upside_down,
        FeedAnswer.UNCLEAR: _unclear,
    }[feed.answer](feed, fed)
    return (Advice(setting, action, amount, unit, because, _untouched()),)


_Said = tuple[Words, Setting, float | None, str, Words]


def _untouched() -> Words:
    return tr("Flow factor, filament diameter, temperature: they do not feed filament.")


def _leave(feed: Feed, fed: Words) -> _Said:
    because = tr("{fed} Within 0.5 % nothing is gained by a change.", fed=fed)
    if feed.ratio.U > WIDE_RATIO:
        because = tr("{because} The interval is wide: feed 200 to 300 mm to be surer.", because=because)
    return tr("Change nothing."), Setting.LEAVE, None, "", because


def _change(feed: Feed, fed: Words) -> _Said:
    value, U = rounded_pair(feed.steps.value, feed.steps.U)
    action = tr(
        "Change the extruder from {old:.6g} to {new} ± {U} steps/mm, then feed again and expect what is commanded.",
        old=feed.in_force_steps_mm,
        new=value.removeprefix("+"),
        U=U,
    )
    return action, Setting.EXTRUDER_STEPS, feed.steps.value, "steps/mm", fed


def _once(feed: Feed, fed: Words) -> _Said:
    action = tr("Keep {old:.6g} steps/mm and feed twice more: one mark misread would be a change.",
                old=feed.in_force_steps_mm)  # fmt: skip
    return action, Setting.UNDECIDED, None, "", fed


def _wrong_part(feed: Feed, fed: Words) -> _Said:
    action = tr("Look at the microstep setting and the gear pair of the extruder, mend the parts list; do not trim it.")
    because = tr("{fed} That is {factor:g} times, a wrong part and no bite of the wheel.", fed=fed, factor=feed.factor)
    return action, Setting.WRONG_PART, feed.ratio.value, "1", because


def _go_back(feed: Feed, fed: Words) -> _Said:
    action = tr("Look at gear pair, driven wheel and heavy slip; clean the wheel, then feed again unloaded.")
    because = tr("{fed} More than 5 % is no bite of the wheel; no change is suggested.", fed=fed)
    if feed.ratio.value > 1.0:
        because = tr("{because} More than was commanded? Check which way you measured.", because=because)
    return action, Setting.UNDECIDED, None, "", because


def _upside_down(feed: Feed, fed: Words) -> _Said:
    action = tr("Divide the steps by the ratio instead of multiplying: undo the last change first.")
    because = tr("{fed} That is the last ratio twice over: it was applied upside down.", fed=fed)
    return action, Setting.UNDECIDED, None, "", because


def _unclear(feed: Feed, fed: Words) -> _Said:
    action = tr(
        "Leave {old:g} steps/mm. Feed 200 to 300 mm, three times: the interval is too wide to decide.",
        old=feed.in_force_steps_mm,
    )
    return action, Setting.UNDECIDED, None, "", fed
