"""What a planned piece will tell, as the card shows it."""

from __future__ import annotations

from app.widgets.fields import local_text
from app.widgets.resulttext import CardData, Paragraph
from app.words import shown
from core.guidance.names import parameter_words
from core.guidance.pieceplan import ExpectedU, PiecePlan
from core.quantity import rounded_pair
from core.records.rows import Instrument
from core.words import tr

_PERCENT = 100.0


def plan_card(plan: PiecePlan, instrument: Instrument | None) -> CardData:
    """Return the card of a plan."""
    planned = plan.planned
    paragraphs = [Paragraph(shown(planned.name), shown(planned.purpose))]
    if not planned.gauges:
        paragraphs.append(Paragraph(shown(tr("Jaws")), shown(tr("None: the page that reads it says what to do."))))
    if plan.says:
        paragraphs.append(Paragraph(shown(tr("Smallest error")), " ".join(shown(says) for says in plan.says)))
    if plan.expected and instrument is None:
        says = tr("No instrument is picked: its zero and scale are not in these numbers.")
        paragraphs.append(Paragraph(shown(tr("Please note")), shown(says), "warning"))
    if plan.expected:
        says = tr(
            "Readings: {count}; U twice the standard uncertainty; at best: however often it is read.",
            count=plan.readings,
        )
        paragraphs.append(Paragraph(shown(tr("Expected before printing")), shown(says)))
    return CardData(
        tuple(paragraphs),
        tuple(_row(expected) for expected in plan.expected),
    )


def _row(expected: ExpectedU) -> tuple[str, str, str]:
    floor = shown(tr("at best ± {floor}", floor=_text(2.0 * expected.floor_u, expected.unit)))
    return shown(parameter_words(expected.name)), f"± {_text(2.0 * expected.u, expected.unit)}", floor


def _text(U: float, unit: str) -> str:
    factor, shown_unit = (_PERCENT, "%") if unit == "1" else (1.0, unit)
    return f"{local_text(rounded_pair(0.0, factor * U)[1])} {shown_unit}"
