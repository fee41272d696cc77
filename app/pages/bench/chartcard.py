"""What a chart says, as the card shows it."""

from __future__ import annotations

from datetime import timedelta

from app.dates import day_text
from app.widgets.fields import local_text, number_text
from app.widgets.resulttext import CardData, Paragraph, Tone
from app.words import shown
from core.guidance.charted import Owner
from core.guidance.drift import Drift
from core.guidance.driftwords import Sort, numbers, sayings
from core.guidance.recheck import plan_recheck
from core.measuring.chart import Standing
from core.measuring.runrules import Run
from core.words import Words, tr

_TONES: dict[Sort, Tone] = {Sort.QUIET: "good", Sort.SIGNAL: "warning", Sort.UNKNOWN: "unknown"}


def chart_card(drift: Drift, *, smoothed: bool) -> CardData:
    """Return the card of single results, or of their smoothed mean."""
    runs = drift.ewma.runs if smoothed else drift.individuals.runs
    said = sayings(drift, runs)
    signal = any(saying.sort is Sort.SIGNAL for saying in said)
    return CardData(
        paragraphs=tuple(
            Paragraph(shown(_head(drift, saying.sort)), shown(saying.text), _TONES.get(saying.sort, "plain"))
            for saying in said
        ),
        rows=(
            *((shown(label), local_text(shown(value)), "") for label, value in numbers(drift)),
            *_again(drift, runs),
        ),
        untouched=shown(tr("every setting. A signal asks for a reading, not for an adjustment.")) if signal else "",
        can_keep=False,
    )


def _again(drift: Drift, runs: tuple[Run, ...]) -> tuple[tuple[str, str, str], ...]:
    """Say until when to measure again; a lot is measured once and used up."""
    if drift.quantity.owner is Owner.LOT:
        return ()
    plan = plan_recheck(drift, runs)
    day = day_text(plan.due)
    days = number_text(plan.interval / timedelta(days=1), 1)
    return ((shown(tr("again by")), shown(tr("{day}, every {days} days", day=day, days=days)), ""),)


def _head(drift: Drift, sort: Sort) -> Words:
    if sort is Sort.UNKNOWN and drift.phase.standing is Standing.TRIAL:
        return tr("Not firm yet")
    return {
        Sort.QUIET: tr("Steady"),
        Sort.SIGNAL: tr("Signal"),
        Sort.EARLIER: tr("Earlier"),
        Sort.UNKNOWN: tr("Cannot tell yet"),
        Sort.NEXT: tr("Next reading"),
    }[sort]
