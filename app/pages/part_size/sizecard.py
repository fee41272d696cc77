"""The verdict of a size trial as the card shows it."""

from __future__ import annotations

import math

from app.widgets.fields import local_text
from app.widgets.resulttext import CardData, Paragraph, Tone
from app.words import local_numbers, shown
from core.guidance.advice import parameter_words
from core.guidance.report import untouched
from core.guidance.sizetrial import SizeJudgement
from core.guidance.verdict import Setting, setting_words
from core.quantity import Estimate, value_text
from core.records.rows import Trial
from core.words import tr

_TONES: dict[Setting, Tone] = {Setting.LEAVE: "good", Setting.UNDECIDED: "unknown", Setting.WRONG_PART: "warning"}


def size_card(judgement: SizeJudgement, why_not: str) -> CardData:
    """Return the card of a judgement; `why_not` says why it cannot be kept, nothing where it can."""
    told = tuple(_estimate_row(estimate) for estimate in judgement.estimates())
    missing = tuple(
        (shown(parameter_words(m.name)), shown(tr("not told yet")), shown(m.needs)) for m in judgement.fit.not_estimable
    )
    paragraphs = [
        Paragraph(
            shown(setting_words(advice.setting)),
            f"{shown(advice.action)} {shown(advice.because)}",
            _TONES.get(advice.setting, "plain"),
        )
        for advice in judgement.advice
    ]
    if unmet := [shown(check.says) for check in judgement.fit.diagnostics if not check.ok]:
        paragraphs.append(Paragraph(shown(tr("Mind")), " ".join(dict.fromkeys(unmet)), "warning"))
    return CardData(
        paragraphs=tuple(paragraphs),
        rows=told + missing,
        untouched=" ".join(shown(what) for what in untouched(judgement)),
        can_keep=not why_not,
        why_not=why_not,
    )


def kept_card(trial: Trial) -> CardData:
    """Return the card of a kept trial, as it was when it was kept."""
    return CardData(
        paragraphs=tuple(
            Paragraph(
                shown(setting_words(Setting(said["setting"]))),
                local_numbers(f"{said['action']} {said['because']}"),
                _TONES.get(Setting(said["setting"]), "plain"),
            )
            for said in trial.verdict
        ),
        rows=tuple(_estimate_row(estimate) for estimate in trial.estimates),
        untouched=" ".join(dict.fromkeys(str(said["do_not_touch"]) for said in trial.verdict)),
        can_keep=False,
        why_not=shown(tr("Kept trials are not changed.")),
    )


def _estimate_row(estimate: Estimate) -> tuple[str, str, str]:
    """Return name, value with U, and k with the degrees of freedom ν."""
    nu = shown(tr("many")) if math.isinf(estimate.dof) else f"{estimate.dof:.0f}"
    remark = shown(tr("k {k:.2f}, ν {nu}", k=estimate.k, nu=nu))
    return shown(parameter_words(estimate.name)), local_text(value_text(estimate)), remark
