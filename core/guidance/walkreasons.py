"""Why a step of the setup walk does not stand, in words: what happened, what is missing, what took its place."""

from __future__ import annotations

from collections.abc import Sequence

from core.flow_trials.conditions import SAME_TEMPERATURE_K
from core.guidance.logentries import setting_name_words
from core.guidance.names import parameter_words
from core.guidance.walkwords import event_words
from core.records.rows import Event, InUse, SettingInForce
from core.words import Words, side_by_side, tr


def redo_words(event: Event, how: str) -> Words:
    """Say that an event spoiled a result, and what mends it."""
    return {
        "count": tr("{event} on {day}: count the parts again.", event=event_words(event.kind), day=_day(event)),
        "compare": tr(
            "{event} on {day}: compare the settings with those in force; nothing is to be measured.",
            event=event_words(event.kind),
            day=_day(event),
        ),
    }.get(how) or tr("{event} on {day}: do it again.", event=event_words(event.kind), day=_day(event))


def check_words(event: Event, how: str) -> Words:
    """Say that an event throws doubt on a result, and which reading tells."""
    return {
        "present": tr(
            "{event} on {day}: look whether the squareness terms are still set.",
            event=event_words(event.kind),
            day=_day(event),
        ),
        "bed_heat": tr(
            "{event} on {day}: one quick check, with the bed as warm as before.",
            event=event_words(event.kind),
            day=_day(event),
        ),
    }.get(how) or tr("{event} on {day}: one quick check reading tells.", event=event_words(event.kind), day=_day(event))


def replaced_words(trial: InUse, number: int, newer: int) -> Words:
    """Say that a trial relied on one that a newer one took the place of."""
    return tr(
        "Trial {trial} relied on trial {number}, which trial {newer} has replaced since.",
        trial=trial.id,
        number=number,
        newer=newer,
    )


def withdrawn_words(trial: InUse, number: int) -> Words:
    """Say that a trial relied on one that was withdrawn."""
    return tr("Trial {trial} relied on trial {number}, which was withdrawn.", trial=trial.id, number=number)


def gauge_words(trial: InUse) -> Words:
    """Say that a trial was read with an instrument that was found bad."""
    return tr(
        "Trial {trial} was read with an instrument that was found bad; read one place again with a good one.",
        trial=trial.id,
    )


def undecided_words(trial: InUse) -> Words:
    """Say that a trial cannot tell yet, and what would tell."""
    return tr("Trial {trial} cannot tell yet: {what}", trial=trial.id, what=trial.undecided)


def fault_words(check: Event) -> Words:
    """Say that the newest check by hand found a fault."""
    return tr("The check on {day} found a fault: {note}", day=_day(check), note=check.note or tr("not described"))


def set_since_words(setting: SettingInForce) -> Words:
    """Say that a setting was changed after the proof."""
    return tr("{name} was set anew after it.", name=setting_name_words(setting.name))


def heat_words(then_c: float, now: SettingInForce) -> Words:
    """Say that the nozzle temperature moved further than a flow factor holds."""
    return tr(
        "The nozzle temperature was {then:.6g} °C then, and {now:.6g} °C is in force now: a flow factor holds within "
        "{near:g} K. Find it again.",
        then=then_c,
        now=now.new,
        near=SAME_TEMPERATURE_K,
    )


def missed_words(trial: InUse) -> Words:
    """Say that the proof part was not as predicted."""
    return tr(
        "Trial {trial}: the part is not as predicted. Look for the cause, then predict and prove anew.", trial=trial.id
    )


def done_before_words(title: Words) -> Words:
    """Say that a step is older than the one it follows."""
    return tr("“{step}” was done again after it.", step=title)


def missing_words(names: Sequence[str]) -> Words:
    """Say which results are still missing."""
    return tr("Not measured yet: {names}.", names=side_by_side(map(_estimate_words, names), ", "))


def parts_words(axes: Sequence[str]) -> Words:
    """Say which drives are not on record."""
    return tr("No drive parts on record for {axes}.", axes=", ".join(axis.upper() for axis in axes))


def _estimate_words(name: str) -> Words:
    try:
        return parameter_words(name)
    except KeyError:  # a name that stands for several, or one that has no words yet
        return tr("{name}", name=name.strip("_*").replace("_", " "))


def _day(event: Event) -> str:
    return f"{event.at:%Y-%m-%d}" if event.at is not None else "?"
