"""Picture, table and card of a prediction and of its verification."""

from __future__ import annotations

import numpy as np

from app.pages.trialcard import advice_card
from app.widgets.fields import local_text, number_text
from app.widgets.plotdata import PlotData, PointSeries
from app.widgets.resulttext import CardData, Paragraph
from app.words import Said, shown
from core.guidance.predicted import Verified
from core.guidance.scored import score_words
from core.part_size.features import kind_words
from core.part_size.prediction import Prediction
from core.quantity import rounded_pair
from core.records.rows import Trial
from core.words import Words, tr


def prediction_plot(prediction: Prediction, verified: Verified | None = None) -> PlotData:
    """Return predicted errors with U as bars, the readings beside them where there are any."""
    tips = [_feature(prediction, row) for row in range(prediction.nominal_mm.size)]
    points = [
        PointSeries(
            shown(tr("predicted")), prediction.nominal_mm, prediction.error_mm, prediction.U_mm, "■", 0, tips=tips
        )
    ]
    if verified is not None:
        at = np.array(verified.result.place)
        read = prediction.error_mm[at] + verified.result.rest_mm
        off = np.abs(verified.result.e_n) > 1.0
        points.append(
            PointSeries(shown(tr("read")), prediction.nominal_mm[at], read, symbol="●", role=1, flagged=off,
                        tips=[tips[i] for i in at])
        )  # fmt: skip
    return PlotData(
        points=tuple(points),
        x_label=shown(tr("nominal length, mm")),
        y_label=shown(tr("measured − nominal, mm")),
        title=shown(tr("Predicted and read") if verified else tr("Predicted")),
        flag_label=shown(tr("outside U")),
        summary=shown(tr("Features predicted: {count}. Largest error, {largest}.", count=len(tips),
                         largest=Said(tips[int(np.argmax(np.abs(prediction.error_mm)))]))),
    )


def proof_plot(verification: Trial) -> PlotData:
    """Return the picture of a kept verification: predicted errors with U, and what was read."""
    read = verification.readings
    L, predicted, U, error, e_n = (np.array(read[n]) for n in ("nominal_mm", "predicted_mm", "U_mm", "error_mm", "e_n"))
    return PlotData(
        points=(PointSeries(shown(tr("predicted")), L, predicted, U, "■", 0),
                PointSeries(shown(tr("read")), L, error, symbol="●", role=1, flagged=np.abs(e_n) > 1.0)),
        x_label=shown(tr("nominal length, mm")),
        y_label=shown(tr("measured − nominal, mm")),
        title=shown(tr("Predicted and read")),
        flag_label=shown(tr("outside U")),
        summary=shown(tr("Features predicted and read: {count}; outside U: {off}.", count=int(L.size),
                         off=int(np.count_nonzero(np.abs(e_n) > 1.0)))),
    )  # fmt: skip


def _feature(prediction: Prediction, row: int) -> str:
    error, U = rounded_pair(float(prediction.error_mm[row]), float(prediction.U_mm[row]))
    return shown(
        tr("{kind} {axis} {length} mm: predicted {error} ± {U} mm", kind=kind_words(prediction.kind[row]),
           axis=prediction.axis[row].upper(), length=number_text(float(prediction.nominal_mm[row])), error=error, U=U)
    )  # fmt: skip


def prediction_rows(prediction: Prediction, verified: Verified | None = None) -> list[tuple[str, ...]]:
    """Return feature, predicted size with U, read size and E_n."""
    result = verified.result if verified else None
    read = dict(zip(result.place, range(len(result.place)), strict=True)) if result else {}
    rows = []
    for row, nominal in enumerate(prediction.nominal_mm.tolist()):
        if result is not None and row not in read:
            continue
        name = tr("{kind} {axis}", kind=kind_words(prediction.kind[row]), axis=prediction.axis[row].upper())
        size, U = rounded_pair(nominal + float(prediction.error_mm[row]), float(prediction.U_mm[row]))
        cells = [shown(name), number_text(nominal), f"{size.removeprefix('+')} ± {U}"]
        if result is not None:
            place = read[row]
            cells.append(f"{nominal + float(prediction.error_mm[row] + result.rest_mm[place]):.3f}")
            cells.append(f"{result.e_n[place]:+.2f}".replace("-", "−"))
        else:
            cells += ["", ""]
        rows.append(tuple(local_text(cell) for cell in cells))
    return rows


def open_card(count: int, score: Words | None, taken: Words | None) -> CardData:
    """Return the card of a prediction that is not locked yet; `taken` says where its changes come from."""
    says = tr(
        "Features of this piece that are predicted: {count}. Lock them before it is printed and read.", count=count
    )
    then = tr("Print a piece with the changed settings, read its features as a size trial, and choose both above.")
    paragraphs = [Paragraph(shown(tr("Lock first")), shown(says)), Paragraph(shown(tr("Then")), shown(then))]
    if taken is not None:
        paragraphs.append(Paragraph(shown(tr("Changes")), shown(taken)))
    if score is not None:
        paragraphs.append(Paragraph(shown(tr("Our own score")), shown(score)))
    return CardData(tuple(paragraphs))


def locked_card(number: int, digest: str, day: str, score: Words | None) -> CardData:
    """Return the card of a locked prediction that nothing verifies yet."""
    says = tr("Prediction № {number} was locked {day}, content {digest}.", number=number, day=day, digest=digest[:12])
    then = tr("No size trial of this machine and lot was begun since. Print the proof piece, read it on Size error.")
    paragraphs = [Paragraph(shown(tr("Locked")), shown(says)), Paragraph(shown(tr("Cannot tell yet")), shown(then),
                                                                         "unknown")]  # fmt: skip
    if score is not None:
        paragraphs.append(Paragraph(shown(tr("Our own score")), shown(score)))
    return CardData(tuple(paragraphs), can_keep=False)


def verified_card(verified: Verified, why_not: str) -> CardData:
    """Return the card of a verification."""
    every = (*verified.before, tuple(verified.result.e_n.tolist()))
    card = advice_card(verified.advice, (), why_not)
    score = Paragraph(shown(tr("Our own score")), shown(score_words(every)))
    return CardData((*card.paragraphs, score), (), card.untouched, card.can_keep, card.why_not)
