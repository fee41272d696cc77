"""The logbook: trials, settings and events of a machine or lot in one order, and two trials held against each other."""

from __future__ import annotations

import math
from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from datetime import datetime
from enum import StrEnum

import numpy as np

from core.guidance.names import estimate_text, name_words
from core.guidance.settingorder import undone_ids
from core.guidance.walkwords import STEPS, event_words, result_words
from core.measuring.gum import effective_dofs
from core.quantity import Estimate
from core.records.rows import Event, SettingInForce, Trial, TrialState
from core.words import Words, side_by_side, tr


class EntryKind(StrEnum):
    """What an entry of the logbook is."""

    TRIAL = "trial"
    SETTING = "setting"
    EVENT = "event"


@dataclass(frozen=True, slots=True)
class Entry:
    """One line of the logbook; `row` is what the store holds. `gone`: withdrawn, undone or taken back."""

    kind: EntryKind
    row: Trial | SettingInForce | Event
    serial: int
    at: datetime | None
    title: Words
    author: str
    machine_id: int | None
    lot_id: int | None
    gone: bool


@dataclass(frozen=True, slots=True)
class Moved:
    """One estimate before and after: `told` whether the difference is beyond its uncertainty."""

    name: str
    before: Estimate
    after: Estimate
    difference: Estimate

    @property
    def told(self) -> bool:
        """Whether it moved for certain."""
        return self.difference.significant


def log_entries(
    trials: Iterable[Trial], settings: Iterable[SettingInForce], events: Iterable[Event], subjects: Mapping[str, str]
) -> tuple[Entry, ...]:
    """Return all that was kept, newest first; open trials are no entries.

    Args:
        trials: of any state.
        settings: ever in force.
        events: in any order.
        subjects: names of the subjects for people.
    """
    every = tuple(events)
    gone_events = {event.takes_back for event in every}
    changes = tuple(settings)
    undone = undone_ids(changes)
    entries = [_trial_entry(trial, subjects) for trial in trials if trial.state is not TrialState.OPEN]
    entries += [_setting_entry(setting, setting.id in undone) for setting in changes]
    entries += [_event_entry(event, event.id in gone_events or event.takes_back is not None) for event in every]
    order = {EntryKind.TRIAL: 0, EntryKind.SETTING: 1, EntryKind.EVENT: 2}
    return tuple(sorted(entries, key=lambda entry: (-entry.serial, -order[entry.kind], -(entry.row.id or 0))))


def _trial_entry(trial: Trial, subjects: Mapping[str, str]) -> Entry:
    name = subjects.get(trial.subject, trial.subject)
    said = side_by_side((value_words(estimate) for estimate in trial.estimates[:2]), ", ")
    title = tr("{subject}: {results}", subject=name, results=said) if said else tr("{subject}", subject=name)
    gone = trial.state is TrialState.WITHDRAWN
    return Entry(
        EntryKind.TRIAL,
        trial,
        trial.serial or 0,
        trial.kept_at,
        title,
        trial.author,
        trial.machine_id,
        trial.lot_id,
        gone,
    )


def _setting_entry(setting: SettingInForce, gone: bool) -> Entry:
    title = tr("{change}", change=change_words(setting))
    return Entry(
        EntryKind.SETTING,
        setting,
        setting.serial or 0,
        setting.since,
        title,
        setting.author,
        setting.machine_id,
        setting.lot_id,
        gone,
    )


def _event_entry(event: Event, gone: bool) -> Entry:
    return Entry(
        EntryKind.EVENT,
        event,
        event.serial or 0,
        event.at,
        happened_words(event),
        event.author,
        event.machine_id,
        event.lot_id,
        gone,
    )


def happened_words(event: Event) -> Words:
    """Say what an event was, with its step or trial, and its words."""
    what = event_words(event.kind)
    if event.detail.get("drives"):
        what = tr("Drive parts written down: {axes}", axes=", ".join(sorted(event.detail["drives"])).upper())
    elif (step := event.detail.get("step")) in STEPS:
        what = tr("{what}: {step}", what=what, step=STEPS[str(step)].title)
    elif results := event.detail.get("results"):
        what = tr("{what}: {step}", what=what, step=side_by_side(map(result_words, results), ", "))
    elif event.trial_id is not None:
        what = tr("{what} ({number})", what=what, number=event.trial_id)
    if event.takes_back is not None:
        what = tr("Taken back: {what}", what=what)
    return tr("{what}: {note}", what=what, note=event.note) if event.note else what


def change_words(setting: SettingInForce) -> Words:
    """Say what was set, from what to what."""
    old = tr("unknown") if setting.old is None else plain_value(setting.old, setting.unit)
    says = tr(
        "{name} {old} → {new}",
        name=setting_name_words(setting.name),
        old=old,
        new=plain_value(setting.new, setting.unit),
    )
    return tr("Undone: {change}", change=says) if setting.undoes is not None else says


def plain_value(value: float, unit: str) -> str:
    """Return a set value with its unit; a set value has no uncertainty: it is what the controller was told."""
    text = f"{value:.6g}".replace("-", "−")
    return text if unit == "1" else f"{text} {unit}"


def setting_name_words(name: str) -> Words:
    """Return the name of a setting for people; one of another version keeps its own."""
    stem, _, axis = name.rpartition("_")
    return _SETTINGS.get(name) or (
        tr("{setting} {axis}", setting=_ON_AXES[stem], axis=axis.upper())
        if stem in _ON_AXES
        else tr("{name}", name=name)
    )


def value_words(estimate: Estimate) -> Words:
    """Return an estimate with its name and uncertainty."""
    return tr("{name} {value}", name=name_words(estimate.name), value=estimate_text(estimate))


def compare_trials(before: Trial, after: Trial) -> tuple[Moved, ...]:
    """Hold the estimates that two trials have in common against each other.

    The two are taken as independent: what both share, such as one instrument, cancels in truth, so that the
    uncertainty of the difference is rather too large.

    Reference: JCGM 100:2008 5.1.2 and G.4.2.
    """
    earlier = {estimate.name: estimate for estimate in before.estimates}
    found = []
    for estimate in after.estimates:
        old = earlier.get(estimate.name)
        if old is not None and old.unit == estimate.unit:
            u = math.hypot(old.u, estimate.u)
            dof = float(effective_dofs(np.array([[old.u, estimate.u]]), np.array([old.dof, estimate.dof]))[0])
            found.append(
                Moved(
                    estimate.name,
                    old,
                    estimate,
                    Estimate(estimate.name, estimate.value - old.value, u, dof, estimate.unit),
                )
            )
    return tuple(found)


_SETTINGS = {
    "extruder_steps_mm": tr("extruder steps"),
    "filament_diameter": tr("filament diameter"),
    "flow_factor": tr("flow factor"),
    "contour_offset": tr("contour offset"),
    "shrink_allowance": tr("shrink allowance"),
    "axis_scale": tr("axis scale"),
    "nozzle_temperature": tr("nozzle temperature"),
    "bed_temperature": tr("bed temperature"),
    "retraction": tr("retraction"),
    "pressure_lag": tr("pressure lag"),
    "cornering": tr("corner speed"),
    "cooling": tr("cooling"),
    "first_layer_gap": tr("first-layer gap"),
    "height_offset": tr("height offset"),
    "print_speed": tr("printing speed"),
    "acceleration": tr("acceleration"),
}
_ON_AXES = {
    "acceleration": tr("acceleration"),
    "steps": tr("steps per millimetre"),
    "scale": tr("scale"),
    "skew": tr("squareness term"),
    "axis_scale": tr("axis scale"),
    "shrink_allowance": tr("shrink allowance"),
}
