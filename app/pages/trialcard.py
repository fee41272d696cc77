"""A verdict as the card shows it: what pages with trials share."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from typing import Any

from app.context import Context, Level
from app.dates import day_text
from app.units import hold
from app.widgets.fields import local_text
from app.widgets.resulttext import CardData, Paragraph, Tone
from app.words import local_numbers, shown, unit_words
from core.errors import StoreError
from core.guidance.names import estimate_text, name_words
from core.guidance.verdict import Advice, Setting, setting_words
from core.measuring.doubt import conformity_of
from core.measuring.tolerance import Conformity
from core.quantity import Estimate
from core.records.rows import Instrument, Trial
from core.words import SAID, kept_words, side_by_side, tr

_TONES: dict[Setting, Tone] = {
    Setting.LEAVE: "good",
    Setting.UNDECIDED: "unknown",
    Setting.WRONG_PART: "warning",
    Setting.FILAMENT_LOT: "warning",
    Setting.USE_INSTRUMENT: "good",
    Setting.INSTRUMENT_OUT: "warning",
}
_MANY = 10_000  # degrees of freedom; nobody tells more apart
Row = tuple[str, str, str]


def advice_card(
    advice: Sequence[Advice],
    estimates: Iterable[Estimate],
    why_not: str,
    *,
    mind: Sequence[str] = (),
    further_rows: Sequence[Row] = (),
    untouched: Sequence[str] = (),
) -> CardData:
    """Return the card of a verdict.

    Args:
        advice: what to do, the first thing first.
        estimates: the numbers it rests on.
        why_not: why the trial cannot be kept, nothing where it can.
        mind: checks that are not met, in sentences.
        further_rows: rows below the estimates, such as what is not told.
        untouched: what to leave alone; all that the advice names when empty.
    """
    paragraphs = [
        Paragraph(
            shown(setting_words(a.setting)),
            f"{to_do_text(a.setting, shown(a.action), a.unit)} {shown(a.because)}",
            _TONES.get(a.setting, "plain"),
        )
        for a in advice
    ]
    return CardData(
        paragraphs=(*paragraphs, *_mind(mind)),
        rows=(*estimate_rows(estimates), *further_rows),
        untouched=" ".join(dict.fromkeys(shown(what) for what in (untouched or [a.do_not_touch for a in advice]))),
        can_keep=not why_not,
        why_not=why_not,
        mind=tuple(dict.fromkeys(mind)),
    )


def to_do_text(setting: Setting, action: str, unit: str) -> str:
    """Return what to do; a length to be entered somewhere stays in mm, as it is entered there."""
    return hold(action) if unit.startswith("mm") and setting is not Setting.MEND_MECHANICS else action


def kept_to_do(advice: Mapping[str, Any]) -> str:
    """Return what a kept advice says to do."""
    action = local_numbers(shown(kept_words(advice, "action")))
    return to_do_text(Setting(advice["setting"]), action, str(advice.get("unit", "")))


def _mind(sentences: Sequence[str]) -> tuple[Paragraph, ...]:
    says = " ".join(dict.fromkeys(local_numbers(shown(sentence)) for sentence in sentences))
    return (Paragraph(shown(tr("Please note")), says, "warning"),) if sentences else ()


def kept_card(trial: Trial, further_rows: Sequence[Row] = ()) -> CardData:
    """Return the card of a kept trial, as it was when it was kept."""
    mind = [kept_words({SAID: {"mind": plain}}, "mind") for plain in trial.conditions.get("mind", ())]
    paragraphs = [
        Paragraph(
            shown(setting_words(Setting(said["setting"]))),
            f"{kept_to_do(said)} {local_numbers(shown(kept_words(said, 'because')))}",
            _TONES.get(Setting(said["setting"]), "plain"),
        )
        for said in trial.verdict
    ]
    return CardData(
        paragraphs=(*paragraphs, *_mind(mind)),
        rows=(*estimate_rows(trial.estimates), *further_rows),
        untouched=shown(side_by_side(kept_words(said, "do_not_touch") for said in trial.verdict)),
        can_keep=False,
        why_not=shown(tr("Kept trials are not changed.")),
    )


def place_row(context: Context, trial: Trial | None = None) -> Row:
    """Return on which machine and with which lot a result was found: those of a kept trial, else those picked."""
    machine, lot = context.machine, context.lot
    if trial is not None:
        try:
            machine = next((row for row in context.store.machines() if row.id == trial.machine_id), None)
            lot = next((row for row in context.store.lots() if row.id == trial.lot_id), None)
        except StoreError as error:
            context.say(shown(error.message), Level.ERROR)
    names = [row.name for row in (machine, lot) if row is not None]
    return shown(tr("machine, lot")), hold(", ".join(names)) or shown(tr("none picked")), ""


def instrument_row(instrument: Instrument, check: Trial | None) -> Row:
    """Return with what the readings were taken, and the check its uncertainties come from."""
    label, name = shown(tr("instrument")), hold(instrument.name)
    if check is None or check.kept_at is None:
        return label, name, shown(tr("never checked here"))
    day = day_text(check.kept_at)
    if conformity_of(check) is Conformity.NOT_CONFORMING:
        return label, name, shown(tr("found bad, check № {number}, {day}", number=check.id, day=day))
    return label, name, shown(tr("check № {number}, {day}, is used", number=check.id, day=day))


def estimate_rows(estimates: Iterable[Estimate]) -> tuple[Row, ...]:
    """Return name, value with U, and k with the degrees of freedom ν, of each estimate."""
    return tuple((shown(name_words(e.name)), _value(e), _known(e)) for e in estimates)


def _value(estimate: Estimate) -> str:
    return unit_words(local_text(estimate_text(estimate)))


def _known(estimate: Estimate) -> str:
    return shown(tr("k {k:.2f}, ν {nu}", k=estimate.k, nu=_dof(estimate)))


def _dof(estimate: Estimate) -> str:
    return shown(tr("many")) if estimate.dof >= _MANY else f"{estimate.dof:.0f}"
