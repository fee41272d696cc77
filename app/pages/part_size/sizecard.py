"""The verdict of a size trial as the card shows it."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from app.pages.trialcard import Row, advice_card
from app.widgets.resulttext import CardData, Paragraph
from app.words import shown
from core.guidance.names import parameter_words
from core.guidance.report import untouched
from core.guidance.sizetrial import SizeJudgement
from core.words import Words, tr


def size_card(
    judgement: SizeJudgement, why_not: str, further_rows: Sequence[Row] = (), following: Words | None = None
) -> CardData:
    """Return the card of a judgement.

    Args:
        judgement: of the readings at hand.
        why_not: why it cannot be kept, nothing where it can.
        further_rows: below the estimates.
        following: the reading to take next, where one helps.
    """
    missing = [
        (shown(parameter_words(m.name)), shown(tr("not told yet")), shown(m.needs)) for m in judgement.fit.not_estimable
    ]
    card = advice_card(
        judgement.advice,
        judgement.estimates(),
        why_not,
        mind=[check.says for check in judgement.fit.diagnostics if not check.ok],
        further_rows=[*missing, *further_rows],
        untouched=untouched(judgement),
    )
    if following is None:
        return card
    read_next = Paragraph(shown(tr("Read next")), shown(following), "unknown")
    return replace(card, paragraphs=(*card.paragraphs, read_next))
