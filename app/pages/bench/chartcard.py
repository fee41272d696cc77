"""What a chart says, as the card shows it."""

from __future__ import annotations

from app.widgets.fields import local_text
from app.widgets.resulttext import CardData, Paragraph, Tone
from app.words import shown
from core.guidance.drift import Drift, Sort, numbers, sayings
from core.measuring.chart import Standing
from core.words import Words, tr

_TONES: dict[Sort, Tone] = {Sort.QUIET: "good", Sort.SIGNAL: "warning", Sort.UNKNOWN: "unknown"}


def chart_card(drift: Drift, *, smoothed: bool) -> CardData:
    """Return the card of single results, or of their smoothed mean."""
    said = sayings(drift, drift.ewma.runs if smoothed else drift.individuals.runs)
    signal = any(saying.sort is Sort.SIGNAL for saying in said)
    return CardData(
        paragraphs=tuple(
            Paragraph(shown(_head(drift, saying.sort)), shown(saying.text), _TONES.get(saying.sort, "plain"))
            for saying in said
        ),
        rows=tuple((shown(label), local_text(shown(value)), "") for label, value in numbers(drift)),
        untouched=shown(tr("every setting. A signal asks for a reading, not for an adjustment.")) if signal else "",
        can_keep=False,
    )


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
