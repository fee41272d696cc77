"""A judgement as text for people and as JSON for programs."""

from __future__ import annotations

import math
from typing import Any

from core.guidance.names import parameter_words
from core.guidance.sizetrial import SizeJudgement
from core.guidance.verdict import Setting, setting_words, without_templates
from core.quantity import Estimate, rounded_pair, value_text
from core.words import Words, tr

_PER_LENGTH = ("scale_", "machine_scale_", "shrinkage_", "bed_tilt_")  # how the names of lengths per length begin


def remark(estimate: Estimate) -> Words:
    """Say how well an estimate is known, and of what is a length per length, or an angle, what it means at 100 mm."""
    dof = tr("many") if math.isinf(estimate.dof) else tr("{dof:.0f}", dof=estimate.dof)
    if not (estimate.unit == "rad" or estimate.name.startswith(_PER_LENGTH)):
        return tr("k {k:.2f}, degrees of freedom {dof}", k=estimate.k, dof=dof)
    value, U = rounded_pair(100 * estimate.value, 100 * estimate.U)
    return tr(
        "{value} ± {U} mm per 100 mm, k {k:.2f}, degrees of freedom {dof}", value=value, U=U, k=estimate.k, dof=dof
    )


def text_lines(judgement: SizeJudgement) -> list[Words]:
    """Return the verdict, the estimates with U, what is not told, and the checks that are not met."""
    lines = [
        tr("{setting}: {action} {because}", setting=setting_words(a.setting), action=a.action, because=a.because)
        for a in judgement.advice
    ]
    lines += [tr("  Do not touch: {what}", what=what) for what in untouched(judgement)]
    lines += [
        tr("  {name}: {value} ({remark})", name=parameter_words(e.name), value=value_text(e), remark=remark(e))
        for e in judgement.estimates()
    ]
    lines += [
        tr("  {name}: not told; {needs}", name=parameter_words(m.name), needs=m.needs)
        for m in judgement.fit.not_estimable
    ]
    return lines + [tr("  Check: {says}", says=check.says) for check in judgement.fit.diagnostics if not check.ok]


def untouched(judgement: SizeJudgement) -> list[Words]:
    """Return what not to touch, each once; a proved finding speaks louder than an open one."""
    proved = [a for a in judgement.advice if a.setting is not Setting.UNDECIDED]
    return list(dict.fromkeys(a.do_not_touch for a in (proved or judgement.advice)))


def as_json(judgement: SizeJudgement) -> dict[str, Any]:
    """Return plain JSON values; what is infinite or has no number is None."""
    return {
        "estimates": [
            {"name": e.name, "value": e.value, "u": e.u, "dof": _number(e.dof), "unit": e.unit, "k": e.k, "U": e.U}
            for e in judgement.estimates()
        ],
        "not_estimable": [{"name": m.name, "needs": str(m.needs)} for m in judgement.fit.not_estimable],
        "diagnostics": [
            {"name": d.name, "value": _number(d.value), "limit": _number(d.limit), "ok": d.ok, "says": str(d.says)}
            for d in judgement.fit.diagnostics
        ],
        "verdict": [without_templates(advice.as_json()) for advice in judgement.advice],
        "line_refused": judgement.fit.line_refused,
    }


def _number(value: float) -> float | None:
    return float(value) if math.isfinite(value) else None
