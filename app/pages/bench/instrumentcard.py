"""The verdict of an instrument check as the card shows it."""

from __future__ import annotations

from dataclasses import replace

from app.pages.trialcard import advice_card
from app.widgets.resulttext import CardData, Paragraph
from app.words import shown
from core.guidance.instrumentadvice import InstrumentJudgement
from core.guidance.names import parameter_words
from core.words import tr


def instrument_card(judgement: InstrumentJudgement, why_not: str) -> CardData:
    """Return the card of a judgement; `why_not` says why it cannot be kept, nothing where it can."""
    card = advice_card(judgement.advice, judgement.estimates(), why_not, mind=judgement.mind)
    return replace(card, paragraphs=(*card.paragraphs, *_untold(judgement)))


def _untold(judgement: InstrumentJudgement) -> list[Paragraph]:
    """Name what the readings do not tell, and the readings that would."""
    untold = judgement.check.untold
    says = "; ".join(f"{shown(parameter_words(u.name))} ({shown(u.needs)})" for u in untold)
    return [Paragraph(shown(tr("Not told yet")), f"{says[0].upper()}{says[1:]}.", "unknown")] if untold else []
