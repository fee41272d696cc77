"""What follows from a feed trial: the extruder's steps per millimetre, or the cause to look for first."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from core.filament.feed import METHOD, Feed, FeedAnswer, fed_from_marks, measure_feed
from core.guidance.verdict import Advice, Setting
from core.quantity import Estimate, rounded_pair, value_text
from core.words import Words, tr


@dataclass(frozen=True, slots=True, eq=False)
class FeedJudgement:
    """A feed trial and what follows from it."""

    feed: Feed
    advice: tuple[Advice, ...]

    @property
    def method(self) -> str:
        """Name and version of the mathematics."""
        return METHOD

    def estimates(self) -> tuple[Estimate, ...]:
        """Return the estimates of the trial."""
        return self.feed.estimates()


def judge_feed(
    commanded_mm: Sequence[float],
    mark_mm: Sequence[float],
    rest_mm: Sequence[float],
    in_force_steps_mm: float,
    u_reading_mm: float,
    previous: tuple[float, float] | None = None,
) -> FeedJudgement:
    """Judge a trial by marks: from typed readings to a verdict; arguments as for `feed.measure_feed`.

    Raises:
        InputError: as `feed.fed_from_marks` and `feed.measure_feed` do.
    """
    fed = fed_from_marks(mark_mm, rest_mm)
    found = measure_feed(commanded_mm, fed.tolist(), in_force_steps_mm, u_reading_mm=u_reading_mm, previous=previous)
    return FeedJudgement(found, advise_feed(found))


def advise_feed(feed: Feed) -> tuple[Advice, ...]:
    """Return the verdict on one feed trial."""
    share = value_text(feed.ratio).removeprefix("+")
    fed = tr("Fed {share} of what was commanded ({count} repeats).", share=share, count=feed.repeats_ratio.size)
    untouched = tr("Flow factor, filament diameter, temperature: they do not feed filament.")
    return {
        FeedAnswer.LEAVE: _leave,
        FeedAnswer.CHANGE: _change,
        FeedAnswer.WRONG_PART: _wrong_part,
        FeedAnswer.GO_BACK: _go_back,
        FeedAnswer.UPSIDE_DOWN: _upside_down,
        FeedAnswer.UNCLEAR: _unclear,
    }[feed.answer](feed, fed, untouched)


def _leave(feed: Feed, fed: Words, untouched: Words) -> tuple[Advice, ...]:
    because = tr("{fed} Within 0.5 % nothing is gained by a change.", fed=fed)
    return (Advice(Setting.LEAVE, tr("Change nothing."), None, "", because, untouched),)


def _change(feed: Feed, fed: Words, untouched: Words) -> tuple[Advice, ...]:
    value, U = rounded_pair(feed.steps.value, feed.steps.U)
    action = tr(
        "Change the extruder from {old:.4g} to {new} ± {U} steps/mm, then feed 100 mm again and expect 100.",
        old=feed.in_force_steps_mm,
        new=value.removeprefix("+"),
        U=U,
    )
    return (Advice(Setting.EXTRUDER_STEPS, action, feed.steps.value, "steps/mm", fed, untouched),)


def _wrong_part(feed: Feed, fed: Words, untouched: Words) -> tuple[Advice, ...]:
    action = tr("Look at the microstep setting and the gear pair of the extruder; do not trim it.")
    because = tr("{fed} That is {factor:g} times, a wrong part and no bite of the wheel.", fed=fed, factor=feed.factor)
    return (Advice(Setting.WRONG_PART, action, feed.ratio.value, "1", because, untouched),)


def _go_back(feed: Feed, fed: Words, untouched: Words) -> tuple[Advice, ...]:
    action = tr("Look at gear pair, driven wheel and heavy slip; clean the wheel, then feed again unloaded.")
    because = tr("{fed} More than 5 % is no bite of the wheel; no change is suggested.", fed=fed)
    return (Advice(Setting.UNDECIDED, action, None, "", because, untouched),)


def _upside_down(feed: Feed, fed: Words, untouched: Words) -> tuple[Advice, ...]:
    action = tr("Divide the steps by the ratio instead of multiplying: undo the last change first.")
    because = tr("{fed} That is the last ratio twice over: it was applied upside down.", fed=fed)
    return (Advice(Setting.UNDECIDED, action, None, "", because, untouched),)


def _unclear(feed: Feed, fed: Words, untouched: Words) -> tuple[Advice, ...]:
    action = tr("Feed 200 to 300 mm, three times: the interval is too wide to decide.")
    return (Advice(Setting.UNDECIDED, action, None, "", fed, untouched),)
