"""The weighings of a lot that were kept, as sentences for its card."""

from __future__ import annotations

from collections.abc import Sequence

from app.dates import moment_text
from app.widgets.fields import local_text
from app.widgets.resulttext import CardData, Paragraph
from app.words import local_numbers, shown
from core.quantity import value_text
from core.records.rows import Trial, TrialState
from core.words import kept_words, tr

_SHOWN_TRIALS = 3


def earlier_card(trials: Sequence[Trial]) -> CardData | None:
    """Return the weighings kept last, newest first; None where there is none."""
    kept = [trial for trial in trials if trial.state is TrialState.KEPT][:_SHOWN_TRIALS]
    return CardData(tuple(_earlier(trial) for trial in kept), can_keep=False) if kept else None


def _earlier(trial: Trial) -> Paragraph:
    head = shown(tr("Weighed {when}", when=moment_text(trial.kept_at)))
    values = {e.name: local_text(value_text(e)).removeprefix("+") for e in trial.estimates}
    says = [local_numbers(shown(kept_words(said, "action"))) for said in trial.verdict]
    if "drying_loss" in values:
        says.append(shown(tr("It lost {loss}.", loss=values["drying_loss"])))
    if "stock" in values:
        says.append(shown(tr("{stock} left.", stock=values["stock"])))
    return Paragraph(head, " ".join(says))
