"""What follows from filament fed under load: the rate up to which no slip is proved, and what slip is not cured by."""

from __future__ import annotations

import math

from core.filament.feed import Feed
from core.filament.slip import HotFeed, Slip, SlipAnswer
from core.guidance.verdict import Advice, Setting
from core.quantity import Estimate, size_text
from core.words import NOTHING, Words, tr


def advise_slip(slip: Slip, hot: HotFeed, feed: Feed | None) -> Advice:
    """Return the verdict on the repeats under load.

    Args:
        slip: shares at rising rates.
        hot: what held.
        feed: the repeats without load of the same trial, if there are any.
    """
    untouched = tr("Steps and flow factor: neither cures slip.")
    if slip.answer is SlipAnswer.TOO_FEW or slip.level is None or slip.stick is None:
        action = tr("Feed 5 repeats at 4 rates or more: a knee is not looked for in fewer.")
        because = tr("Repeats under load so far: {count}, rates: {rates}.", count=slip.rate_mm3_s.size,
                     rates=slip.rates_mm3_s.size)  # fmt: skip
        return Advice(Setting.UNDECIDED, action, None, "", because, untouched)
    because = tr("{holds}{against}", holds=_holds(slip, hot), against=_against_free(slip.level, feed))
    highest = float(slip.rates_mm3_s[-1])
    if slip.answer is SlipAnswer.NONE_PROVED:
        because = tr("{level} is fed, alike at all rates. {because}", level=size_text(slip.level), because=because)
        action = tr("No slip is proved up to {rate:g} mm³/s.", rate=highest)
        return Advice(Setting.LEAVE, action, None, "", because, untouched)
    sure_to = slip.free_to_mm3_s if slip.loss is None else min(slip.free_to_mm3_s, slip.loss.value - slip.loss.U)
    action = tr("No slip is proved up to {rate:.3g} mm³/s; print at most at {sure:.3g} mm³/s until the ceiling is "
                "measured.", rate=slip.free_to_mm3_s, sure=sure_to)  # fmt: skip
    because = tr("At {rate:g} mm³/s {share} is fed{loss}. {because}", rate=highest,
                 share=size_text(slip.shares[-1]), loss=_loss(slip.loss), because=because)  # fmt: skip
    return Advice(Setting.PRINT_SPEED, action, sure_to, "mm3/s", because, untouched)


def _loss(loss: Estimate | None) -> Words:
    if loss is None:
        return NOTHING
    return tr("; 0.5 % is lost at {rate}", rate=size_text(loss))


def _against_free(level: Estimate, feed: Feed | None) -> Words:
    """Compare the share at slow rates with that without load: the intercept checks the steps."""
    if feed is None:
        return NOTHING
    off = feed.ratio.value - level.value
    if abs(off) <= math.hypot(feed.ratio.U, level.U):
        return NOTHING
    return tr(" Slow under load it is {level}, without load {free}: drag of the spool, a worn wheel, a blocked nozzle.",
              level=size_text(level), free=size_text(feed.ratio))  # fmt: skip


def _holds(slip: Slip, hot: HotFeed) -> Words:
    return tr(
        "Holds for nozzle {nozzle:g} mm, {temperature:g} °C ± 5 K, up to {rate:g} mm³/s.",
        nozzle=hot.nozzle_mm,
        temperature=hot.temperature_c,
        rate=float(slip.rates_mm3_s[-1]),
    )
