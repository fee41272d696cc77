"""What a kept trial was kept with, for its report: the tolerance asked for, temperatures, the trials it rests on."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from core.flow_trials.conditions import conditions_from
from core.guidance.printedat import heat_words
from core.guidance.reportblocks import Block, Says, Table
from core.measuring.tolerance import CLASSES
from core.records.rows import Trial, TrialState
from core.words import SAID, Words, kept_words, tr

Settings = Mapping[str, tuple[str, str]]
_TOLD = frozenset({"tolerance", "part_temperature_c"})  # has words of its own below
_OF_FLOW = frozenset({"bead_model", "width_mm", "height_mm", "nozzle_mm", "temperature_c", "rate_mm3_s"})


def settings_table(trial: Trial, settings: Settings) -> list[Block]:
    """Return under which settings a trial was taken, by their labels, and what else was kept with it; each once.

    Args:
        trial: kept.
        settings: label and value of each setting of its page that counted, by its key in the conditions.
    """
    told = _TOLD | (_OF_FLOW if conditions_from(trial.conditions) is not None else frozenset())
    own = [said for key, said in settings.items() if key not in told]
    rows = (*own, *_rows(trial.conditions))
    if not rows:
        return []
    return [Table("conditions", (tr("Kept with the trial"), tr("What")), rows, numbers_from=9)]


def condition_blocks(trial: Trial) -> list[Block]:
    """Return what a flow factor holds for, the checks not met, the note, and the trials that a trial rests on."""
    blocks: list[Block] = []
    flow = conditions_from(trial.conditions)
    if flow is not None:
        blocks.append(Says(flow.words()))
    for plain in trial.conditions.get("mind", ()):
        blocks.append(Says(kept_words({SAID: {"mind": plain}}, "mind"), mind=True))
    if trial.note:
        blocks.append(Says(tr("{note}", note=trial.note)))
    if trial.used:
        numbers = ", ".join(str(number) for number in trial.used)
        blocks.append(Says(tr("It rests on trials № {numbers}.", numbers=numbers)))
    return blocks


def withdrawn_blocks(trial: Trial) -> list[Block]:
    """Return the caution of a trial that is out of use."""
    if trial.state is not TrialState.WITHDRAWN:
        return []
    return [Says(tr("Withdrawn, out of use: {because}", because=trial.withdrawn_because), mind=True)]


def _rows(conditions: Mapping[str, Any]) -> list[tuple[Words | str, ...]]:
    rows: list[tuple[Words | str, ...]] = []
    tolerance, part_c = conditions.get("tolerance"), conditions.get("part_temperature_c")
    if isinstance(tolerance, str) and tolerance in CLASSES:
        rows.append((tr("tolerance asked for"), CLASSES[tolerance]))
    elif isinstance(tolerance, int | float):
        rows.append((tr("tolerance asked for"), tr("± {mm:g} mm", mm=tolerance)))
    if isinstance(part_c, int | float):
        rows.append((tr("part temperature"), tr("{temperature:g} °C", temperature=part_c)))
    heat = heat_words(conditions)
    if heat is not None:
        rows.append((tr("in force when begun"), heat))
    return rows
