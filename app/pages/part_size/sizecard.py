"""The verdict of a size trial as the card shows it."""

from __future__ import annotations

from collections.abc import Sequence

from app.pages.trialcard import Row, advice_card
from app.widgets.resulttext import CardData
from app.words import shown
from core.guidance.names import parameter_words
from core.guidance.report import untouched
from core.guidance.sizetrial import SizeJudgement
from core.words import tr


def size_card(judgement: SizeJudgement, why_not: str, further_rows: Sequence[Row] = ()) -> CardData:
    """Return the card of a judgement; `why_not` says why it cannot be kept, nothing where it can."""
    missing = [
        (shown(parameter_words(m.name)), shown(tr("not told yet")), shown(m.needs)) for m in judgement.fit.not_estimable
    ]
    return advice_card(
        judgement.advice,
        judgement.estimates(),
        why_not,
        mind=[shown(check.says) for check in judgement.fit.diagnostics if not check.ok],
        further_rows=[*missing, *further_rows],
        untouched=untouched(judgement),
    )
