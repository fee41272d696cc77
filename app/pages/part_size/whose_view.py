"""Bars, table and card of the page *Whose error*."""

from __future__ import annotations

from app.units import inch_digits, inches_for
from app.widgets.barsview import Bar, BarsData
from app.widgets.fields import local_text, number_text
from app.widgets.resulttext import CardData, Paragraph
from app.words import Said, shown
from core.guidance.ownparts import part_words
from core.guidance.whosejudge import WhoseJudgement, cause_words
from core.part_size.features import kind_words
from core.quantity import coverage_factor, rounded_pair
from core.words import Words, tr

_SURE = 0.99


def whose_bars(judged: WhoseJudgement) -> BarsData:
    """Return one stacked bar a feature, the longest error first."""
    shares = judged.shares
    k = coverage_factor(judged.fit.scattered.dof)
    causes = [shown(cause_words(name)) for name in shares.names]
    bars = []
    for row in range(shares.nominal_mm.size):
        parts = shares.value_mm[row].tolist()
        name = shown(
            tr("{kind} {axis} {length}", kind=kind_words(shares.kinds[row]), axis=shares.axes[row].upper(),
               length=_length(float(shares.nominal_mm[row])))
        )  # fmt: skip
        told = ", ".join(
            local_text(f"{cause} {rounded_pair(part, k * float(shares.u_mm[row, place]))[0]} ± "
                       f"{rounded_pair(part, k * float(shares.u_mm[row, place]))[1]} mm")
            for place, (cause, part) in enumerate(zip(causes, parts, strict=True))
        )  # fmt: skip
        bars.append(Bar(name, parts, sum(parts), k * float(shares.explained_u_mm[row]), f"{name}: {told}"))
    bars.sort(key=lambda bar: -abs(bar.whole_mm))
    return BarsData(
        causes,
        bars,
        shown(tr("Features: {count}, causes: {causes}. Largest error, {largest}.", count=len(bars),
                 causes=len(causes), largest=Said(bars[0].says))),
        shown(tr("Upright mark: the whole error, with U of what is explained. Empty: unexplained.")),
    )


def _length(length_mm: float) -> str:
    """Return a length in the unit that is shown."""
    return f"{local_text(inch_digits(length_mm))} in" if inches_for("whose") else f"{number_text(length_mm)} mm"


def whose_rows(judged: WhoseJudgement) -> list[tuple[str, ...]]:
    """Return part, error before and after with U, and whether it gets worse."""
    rows = []
    found = judged.tried.predicted
    for row, part in enumerate(judged.tried.parts):
        before, U = rounded_pair(float(found.as_is_mm[row]), float(found.U_mm[row]))
        after, _ = rounded_pair(float(found.error_mm[row]), float(found.U_mm[row]))
        tried = judged.tried
        note = shown(tr("gets worse")) if tried.worse[row] else shown(tr("not told apart")) if tried.unsure[row] else ""
        cells = (shown(part_words(part)), f"{before} ± {U}", f"{after} ± {U}", note)
        rows.append(tuple(local_text(cell) for cell in cells))
    return rows


def whose_card(judged: WhoseJudgement) -> CardData:
    """Return the card: stop meter, what gets worse, wrong moves."""
    tried = judged.tried
    stop, why = judged.stop
    percent = shown(
        tr("The change improves the worst part ({part}) with a probability of {percent}.",
           part=part_words(tried.parts[tried.worst]), percent=_probability(tried.p_better))
    )  # fmt: skip
    paragraphs = [
        Paragraph(shown(tr("Stop meter")), f"{shown(why)} {percent}", "good" if stop else "plain"),
    ]
    if tried.worse.any():
        names = Said("; ".join(
            shown(part_words(part)) for part, worse in zip(tried.parts, tried.worse, strict=True) if worse
        ))
        says = tr("These parts get worse by the change: {names}.", names=names)
        paragraphs.append(Paragraph(shown(tr("Please note")), shown(says), "warning"))
    paragraphs += _moves(judged)
    if tried.untold:
        names = Said("; ".join(shown(part_words(part)) for part in tried.untold))
        says = tr("This trial does not tell these parts of the list: {names}.", names=names)
        paragraphs.append(Paragraph(shown(tr("Cannot tell yet")), shown(says), "unknown"))
    return CardData(tuple(paragraphs), can_keep=False)


def _probability(p: float) -> Words:
    """Return a probability in percent; draws prove neither 0 nor 100 %."""
    if p > _SURE:
        return tr("more than {percent:.0f} %", percent=100 * _SURE)
    if p < 1.0 - _SURE:
        return tr("less than {percent:.0f} %", percent=100 * (1.0 - _SURE))
    return tr("{percent:.0f} %", percent=100 * p)


def _moves(judged: WhoseJudgement) -> list[Paragraph]:
    """Return the advised change and the wrong moves at the largest part, one beside the other."""
    if judged.largest is None or judged.advised is None:
        return []
    part = shown(part_words(judged.largest))
    after, U = rounded_pair(float(judged.advised.error_mm[0]), float(judged.advised.U_mm[0]))
    before, _ = rounded_pair(float(judged.advised.as_is_mm[0]), float(judged.advised.U_mm[0]))
    says = tr("The change that this trial advises takes {part} from {before} ± {U} mm to {after} ± {U} mm.",
              part=part, before=before, after=after, U=U)  # fmt: skip
    paragraphs = [Paragraph(shown(tr("Advised")), shown(says))]
    for name, move in judged.wrong:
        other, U_other = rounded_pair(*move.unshrunk_mm)
        says = tr(
            "With {name} (steps × {factor:.5f}) {part} would go from {before} ± {U} mm to {after} ± {U} mm; of a "
            "filament that does not shrink it would then be {other} ± {U_other} mm off.",
            name=name,
            factor=move.factor,
            part=part,
            before=before,
            after=rounded_pair(move.after_mm, float(judged.advised.U_mm[0]))[0],
            U=U,
            other=other,
            U_other=U_other,
        )
        paragraphs.append(Paragraph(shown(tr("A wrong move")), shown(says), "warning"))
    return paragraphs
