"""What the logbook says of one entry: sentences and numbers, and a trial held against the one before it."""

from __future__ import annotations

import math
from collections.abc import Mapping
from typing import Any

from app.pages.shop.logmodel import when_text
from app.pages.subjecttitles import subject_titles
from app.pages.trialcard import kept_to_do
from app.units import hold, inches_for
from app.widgets.resulttext import CardData, Paragraph, Tone
from app.words import local_numbers, shown
from core.guidance.attribution import Attribution, Change
from core.guidance.changes import in_force_when
from core.guidance.logentries import (
    Entry,
    Moved,
    change_words,
    plain_value,
    setting_name_words,
    value_words,
)
from core.guidance.names import estimate_text, name_words
from core.quantity import rounded_pair, value_text
from core.records.rows import Event, SettingInForce, Trial, TrialState
from core.words import Words, kept_words, side_by_side, tr

_ATTRIBUTED: dict[Attribution, tuple[Words, Tone]] = {
    Attribution.CHECKED: (tr("checked by a later trial"), "good"),
    Attribution.OPEN: (tr("not checked yet"), "unknown"),
    Attribution.UNDONE: (tr("undone"), "plain"),
    Attribution.NOT_ATTRIBUTABLE: (tr("not attributable"), "warning"),
}

_NUMBERS = {
    "tone_x_hz": (tr("tone of belt X"), "Hz"),
    "tone_y_hz": (tr("tone of belt Y"), "Hz"),
    "span_mm": (tr("free span"), "mm"),
    "mass_g_m": (tr("mass of the belt"), "g/m"),
    "tension_x": (tr("tension of belt X"), "N"),
    "tension_y": (tr("tension of belt Y"), "N"),
    "commanded_mm": (tr("commanded"), "mm"),
    "read_mm": (tr("read on the rule"), "mm"),
}


def attribution_words(attribution: Attribution) -> Words:
    """Return what can be said of the effect of a change."""
    return _ATTRIBUTED[attribution][0]


def entry_card(
    entry: Entry,
    where: str,
    before: Trial | None,
    moved: tuple[Moved, ...],
    changes: Mapping[int, Change],
    based: SettingInForce | None = None,
) -> CardData:
    """Return what is said of an entry.

    Args:
        entry: the entry in sight.
        where: its machine and lot.
        before: the kept trial of the same subject before it, for a trial.
        moved: what both give.
        changes: the judged changes of the machine, by the ids of their settings.
        based: what was in force when the trial of a setting was begun, where the setting did not start from it.
    """
    by = entry.author or shown(tr("nobody named"))
    head = Paragraph(when_text(entry), hold(f"{where}  ·  {by}" if where else by))
    if isinstance(entry.row, Trial):
        return _trial_card(head, entry.row, before, moved, made_under(entry.row, changes))
    if isinstance(entry.row, SettingInForce):
        return CardData((head, *_setting_paragraphs(entry.row, changes, based)), can_keep=False)
    return CardData((head, *_event_paragraphs(entry)), _detail_rows(entry.row), can_keep=False)


def made_under(trial: Trial, changes: Mapping[int, Change]) -> str:
    """Return what was in force when a trial was begun: where its correction starts from."""
    if trial.started_at is None:
        return ""
    own = [change.setting for change in changes.values() if change.setting.machine_id == trial.machine_id]
    names = sorted({setting.name for setting in own})
    held = [in_force_when(own, name, trial.lot_id, trial.started_at) for name in names]
    return "; ".join(
        f"{shown(setting_name_words(setting.name))} {local_numbers(plain_value(setting.new, setting.unit))}"
        for setting in held
        if setting
    )


def _trial_card(head: Paragraph, trial: Trial, before: Trial | None, moved: tuple[Moved, ...], under: str) -> CardData:
    found = [head, Paragraph(shown(tr("Trial {number}", number=trial.id)), subject_titles().get(trial.subject, ""))]
    if trial.state is TrialState.WITHDRAWN:
        found.append(Paragraph(shown(tr("Withdrawn")), trial.withdrawn_because, "warning"))
    found += [
        Paragraph(kept_to_do(said) if "setting" in said else _kept_text(said, "action"), _kept_text(said, "because"))
        for said in trial.verdict
        if "action" in said
    ]
    if under:
        found.append(Paragraph(shown(tr("In force when it was begun")), hold(under)))
    if trial.note:
        found.append(Paragraph(shown(tr("Note")), hold(trial.note)))
    if before is not None:
        found.append(_comparison(before, moved))
    rows = tuple((shown(name_words(e.name)), local_numbers(estimate_text(e)), "") for e in trial.estimates)
    card = CardData(tuple(found), rows, can_keep=False)
    return card.in_inch() if inches_for(trial.subject) else card


def _kept_text(advice: Mapping[str, Any], name: str) -> str:
    return local_numbers(shown(kept_words(advice, name)))


def _comparison(before: Trial, moved: tuple[Moved, ...]) -> Paragraph:
    told = [one for one in moved if one.told]
    head = shown(tr("Against trial {number}", number=before.id))
    if not moved:
        return Paragraph(head, shown(tr("They have no result in common.")))
    if not told:
        return Paragraph(head, shown(tr("Nothing moved beyond its uncertainty.")))
    after = [f"{estimate_text(one.after)} ({value_text(one.difference)})" for one in told]
    says = [f"{shown(value_words(one.before))} → {local_numbers(now)}" for one, now in zip(told, after, strict=True)]
    return Paragraph(head, shown(tr("Moved: {results}.", results="; ".join(says))), "warning")


def _setting_paragraphs(
    setting: SettingInForce, changes: Mapping[int, Change], based: SettingInForce | None
) -> list[Paragraph]:
    old = shown(tr("unknown")) if setting.old is None else plain_value(setting.old, setting.unit)
    says = shown(tr("{old} → {new}", old=old, new=plain_value(setting.new, setting.unit)))
    found = [Paragraph(shown(setting_name_words(setting.name)), says)]
    source = tr("trial {number}", number=setting.trial_id) if setting.trial_id else tr("set by hand")
    found.append(Paragraph(shown(tr("From")), f"{shown(source)}  {setting.because}".strip()))
    if based is not None:
        held = plain_value(based.new, based.unit)
        says = shown(tr("When its trial was begun {held} was in force, and not what it started from.", held=held))
        found.append(Paragraph(shown(tr("Please note")), says, "warning"))
    if setting.prediction:
        found.append(Paragraph(shown(tr("Predicted")), _predicted(setting.prediction)))
    if setting.verified_by is not None:
        found.append(
            Paragraph(shown(tr("Checked")), shown(tr("by trial {number}", number=setting.verified_by)), "good")
        )
    change = changes.get(setting.id or 0)
    if change is not None:
        words, tone = _ATTRIBUTED[change.attribution]
        found.append(Paragraph(shown(words), _confused(change, changes), tone))
        force = tr("in force now") if change.in_force else tr("another value took its place")
        found.append(Paragraph(shown(force), ""))
    return found


def _confused(change: Change, changes: Mapping[int, Change]) -> str:
    """Say with which other changes one is confused and what would tell them apart; nothing where it is not."""
    if change.would_tell is None:
        return ""
    others = side_by_side((change_words(changes[number].setting) for number in change.with_ids), ", ")
    return shown(
        tr(
            "together with {others}: nothing that tells was read between them. {would_tell}",
            others=others,
            would_tell=change.would_tell,
        )
    )


def _event_paragraphs(entry: Entry) -> list[Paragraph]:
    says = [Paragraph(shown(entry.title), "")]
    if entry.gone:
        says.append(Paragraph(shown(tr("Counts no more: it was taken back.")), "", "warning"))
    return says


def _detail_rows(event: Event) -> tuple[tuple[str, str, str], ...]:
    """Return the numbers that were written down with a check; each with its unit."""
    rows = []
    for key, (words, unit) in _NUMBERS.items():
        value = event.detail.get(key)
        if isinstance(value, Mapping):
            estimate = rounded_pair(float(value["value"]), float(value["U"]))
            rows.append((shown(words), f"{estimate[0].lstrip('+')} ± {estimate[1]} {unit}", ""))
        elif isinstance(value, int | float):
            rows.append((shown(words), f"{value:g} {unit}", ""))
    return tuple(rows)


def _predicted(prediction: Mapping[str, Any]) -> str:
    value, U = rounded_pair(float(prediction.get("value", math.nan)), float(prediction.get("U", math.nan)))
    name, unit = shown(name_words(str(prediction.get("name", "")))), prediction.get("unit", "")
    return f"{name} {local_numbers(f'{value} ± {U}')} {unit}".strip()
