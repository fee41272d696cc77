"""The promise to a customer on paper, and the label on the machine that keeps it.

It says what is not promised, decides the first article by a stated rule, and shows predictions beside their readings.

Reference: JCGM 106:2012 and ISO 14253-1:2017 (decision rule); common practice for the rest, no source.
"""

from __future__ import annotations

import math
from datetime import datetime

from core.guidance.findings import tolerance_at
from core.guidance.partgroups import GROUP_OF, Group, feature_errors, group_words, guard_of
from core.guidance.promised import PromiseJudgement
from core.guidance.reportblocks import Block, Heading, Label, Picture, Report, Says, Signature, Table
from core.guidance.reports import DEMO, VOID, Of, about, report_of
from core.measuring.tolerance import CLASSES, Conformity, decide
from core.part_size.features import FeatureKind, kind_words
from core.quantity import coverage_factor, rounded_pair
from core.records.rows import Trial
from core.words import Words, side_by_side, tr

NOT_CLAIMED = tr(
    "Not claimed: sizes that were not measured, form, surface, strength, fitness for food, medical or child use. "
    "Load-bearing and safety parts need the responsible engineer."
)


def promise_report(
    of: Of, judgement: PromiseJudgement, first_article: Trial | None, verification: Trial | None
) -> Report:
    """Return the promise to a customer: summary, promises, first article by the decision rule, proof of a prediction.

    Args:
        of: machine, lot, instrument and its check.
        judgement: what may be promised.
        first_article: the newest size trial, decided feature by feature; None to leave it out.
        verification: the newest kept verification of a prediction; None to leave it out.
    """
    assert of.machine is not None, "a promise is of a machine"
    pieces = len(judgement.trial_ids())
    blocks: list[Block] = [
        Heading(tr("What sizes may be expected")),
        Says(_summary(of, judgement)),
        about(of),
        Table("order", (tr("Part"), tr("Drawing, revision"), tr("Condition (age, °C, humidity)")), (("", "", ""),), 9),
        Heading(tr("Promise")),
        _promises(judgement),
        Says(tr("It rests on {count} measured parts: trials № {numbers}.", count=pieces,
                numbers=", ".join(str(number) for number in judgement.trial_ids()))),
        Picture("promise"),
    ]  # fmt: skip
    if first_article is not None:
        blocks += [Heading(tr("First article, trial № {number}", number=first_article.id)),
                   _decided(first_article, of, judgement.tolerance)]  # fmt: skip
        rule = tr(
            "Decision rule: a size is accepted where it lies inside its tolerance with 95 % probability, refused where "
            "it lies outside by more than the guard band; between the two nothing is proved (JCGM 106, ISO 14253-1)."
        )
        blocks.append(Says(rule))
    if verification is not None:
        blocks += [Heading(tr("Predicted beforehand, then measured")), Picture("proof"), _proof(verification)]
    blocks += [Says(NOT_CLAIMED, mind=True), Signature(tr("Measured and checked by"))]
    title = tr("Promise: {machine}", machine=of.machine.name)
    content = {"trials": list(judgement.trial_ids()), "readings": dict(first_article.readings) if first_article else {}}
    return report_of(title, blocks, of, content)


def _summary(of: Of, judgement: PromiseJudgement) -> Words:
    """Three sentences in plain language."""
    told = [one for one in judgement.groups if one.promised_mm is not None]
    if not told:
        return tr("Nothing can be promised yet: fewer than ten parts of each kind were measured.")
    promised = (
        tr("{group} ±{mm:.2f} mm", group=group_words(one.parts.group), mm=one.promised_mm) for one in told
    )
    widths = side_by_side(promised, "; ")
    return tr(
        "Parts of {lot} printed on {machine} were measured. Of 100 parts at least 95 keep to {widths}. "
        "This holds with 95 % confidence for the sizes that were measured and for nothing else.",
        lot=of.lot.name if of.lot else "?",
        machine=of.machine.name if of.machine else "?",
        widths=widths,
    )


def _promises(judgement: PromiseJudgement) -> Table:
    headings = (tr("Features"), tr("Parts"), tr("From, mm"), tr("To, mm"), tr("Mean error, mm"), tr("Spread, mm"),
                tr("Promise, mm"), tr("Cpk at least ({label})", label=_label(judgement.tolerance)))  # fmt: skip
    rows: list[tuple[Words | str, ...]] = []
    for one in judgement.groups:
        spread, able = one.spread, one.capability
        if spread is None or able is None:
            rows.append((group_words(one.parts.group), str(one.parts.pieces), "", "", "", "", tr("none"), ""))
            continue
        k = coverage_factor(spread.dof)
        bias = " ± ".join(rounded_pair(spread.bias_mm, k * spread.u_bias_mm))
        sd = " ± ".join(rounded_pair(spread.sd_mm, k * spread.sd_mm / math.sqrt(2.0 * spread.dof))).removeprefix("+")
        promised = tr("none") if one.promised_mm is None else f"±{one.promised_mm:.2f}"
        lengths = f"{spread.shortest_mm:g}", f"{spread.longest_mm:g}"
        lower = _signed(f"{able.cpk_lower_ratio:.2f}")
        rows.append((group_words(one.parts.group), str(one.parts.pieces), *lengths, bias, sd, promised, lower))
    return Table("promise", headings, tuple(rows))


def conformity_words(conformity: Conformity) -> Words:
    """Return a decision for people."""
    return {
        Conformity.CONFORMING: tr("accepted"),
        Conformity.NOT_CONFORMING: tr("refused"),
        Conformity.NOT_PROVED: tr("not proved"),
    }[conformity]


def _label(tolerance: str | float) -> Words:
    return CLASSES[tolerance] if isinstance(tolerance, str) else tr("± {mm:g} mm", mm=tolerance)


def _decided(trial: Trial, of: Of, tolerance: str | float) -> Table:
    label = _label(tolerance)
    headings = (tr("Feature"), tr("Nominal, mm"), tr("Tolerance, mm ({label})", label=label), tr("Measured ± U, mm"),
                tr("Decision"))  # fmt: skip
    k, rows = coverage_factor(math.inf), []
    for kind, axis, nominal, error in feature_errors(trial):
        zero, ratio = guard_of(GROUP_OF.get(kind, Group.OUTSIDE), of.instrument)
        hand = (of.instrument.sd_hand_mm or 0.0) if of.instrument else 0.0
        u = math.hypot(zero / k, ratio * nominal / k, hand)
        T = tolerance_at(nominal, tolerance)
        found = decide(error, u, T, lower=-T)
        size, U = rounded_pair(nominal + error, k * u) if u else (f"{nominal + error:.3f}", "?")
        name = tr("{kind} {axis}", kind=kind_words(kind), axis=axis.upper())
        decision = conformity_words(found.conformity) if u else tr("not proved")
        rows.append((name, f"{nominal:g}", f"±{T:g}", f"{size.removeprefix('+')} ± {U}", decision))
    return Table("first_article", headings, tuple(rows))


def _proof(verification: Trial) -> Table:
    read = verification.readings
    headings = (tr("Feature"), tr("Nominal, mm"), tr("Predicted error ± U, mm"), tr("Measured error, mm"), tr("E_n"))
    names = ("kind", "axis", "nominal_mm", "predicted_mm", "U_mm", "error_mm", "e_n")
    rows: list[tuple[Words | str, ...]] = []
    for kind, axis, nominal, predicted, U, error, e_n in zip(*(read[name] for name in names), strict=True):
        name = tr("{kind} {axis}", kind=kind_words(FeatureKind(kind)), axis=axis.upper())
        told = " ± ".join(rounded_pair(predicted, U))
        rows.append((name, f"{nominal:g}", told, _signed(f"{error:+.3f}"), _signed(f"{e_n:+.2f}")))
    return Table("prediction", headings, tuple(rows))


def _signed(text: str) -> str:
    return text.replace("-", "−")


def machine_label(of: Of, judgement: PromiseJudgement | None, proof: Trial | None, next_due: datetime) -> Label:
    """Return the label of a machine: name, promises with their material, days, the code of its record.

    Args:
        of: machine and lot.
        judgement: what may be promised; None for nothing.
        proof: the trial that showed it last; None for none.
        next_due: when it is to be shown again.
    """
    told = [one for one in judgement.groups if one.promised_mm is not None] if judgement else []
    assert of.machine is not None, "a label is of a machine"
    lines: list[Words | str] = [of.machine.name, *([DEMO] if of.demo else [])]
    nozzle = of.machine.limits.get("nozzle_mm")
    if nozzle:
        lines.append(tr("nozzle {mm:g}\u00a0mm", mm=float(nozzle)))
    if told:
        lines += [
            tr("{group} ±{mm:.2f} mm, up to {length:g} mm", group=group_words(one.parts.group),
               mm=one.promised_mm or 0.0, length=one.promise.spread.longest_mm if one.promise else 0.0)
            for one in told
        ]  # fmt: skip
        shown_on = f"{of.lot.material or of.lot.name}" if of.lot else "?"
        lines.append(tr("shown for {material}", material=shown_on))
    else:
        lines.append(tr("no tolerance promised"))
    if proof is not None and proof.kept_at is not None:
        day = f"{proof.kept_at:%Y-%m-%d}"
        shown = tr("shown {day}, due {due}", day=day, due=f"{next_due:%Y-%m-%d}")
        lines.append(shown if told else tr("measured {day}", day=day))
    lines.append(VOID)
    record = f"slipgauge machine {of.machine.id}" + (f" trial {proof.id}" if proof is not None else "")
    return Label(tuple(lines), record)
