"""The reports of the shop: a kept trial and a machine's card; that of a promise is in `promisereport`.

They say "measured" and never "certified" and claim no traceability that the instrument does not have. The moment is
given by the caller: the core reads no clock.

Reference: common practice, no source.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from datetime import datetime

from core.guidance.logentries import plain_value, setting_name_words
from core.guidance.names import estimate_text, name_words
from core.guidance.readingunits import read_with_instrument
from core.guidance.report import remark
from core.guidance.reportblocks import Block, Heading, Picture, Report, Says, Table
from core.guidance.reportconditions import Settings, condition_blocks, settings_table, withdrawn_blocks
from core.guidance.reportreadings import reading_blocks
from core.guidance.verdict import Setting, setting_words
from core.machine_geometry.drive import drive_from_parts
from core.machine_geometry.rotary import steps_reason
from core.part_size.prediction import content_hash
from core.quantity import Estimate
from core.records.rows import Instrument, Lot, Machine, SettingInForce, Trial
from core.words import Words, kept_words, side_by_side, tr

DEMO = tr("Demo shop, invented data")
NO_SETTINGS: Settings = {}
VOID = tr("Void after a crash, a belt or nozzle change, or a move until checked again.")


@dataclass(frozen=True, slots=True)
class Of:
    """Whose report it is and when and with what it was made; `demo`: of the demo shop, invented data."""

    machine: Machine | None
    lot: Lot | None
    instrument: Instrument | None
    check: Trial | None
    at: datetime
    version: str
    demo: bool = False


def report_of(title: Words | str, blocks: Sequence[Block], of: Of, content: Mapping[str, object]) -> Report:
    """Return a report of these blocks, the first of which is its title; one of the demo shop says so on every page."""
    if not of.demo:
        return Report(title, tuple(blocks), foot(of, content))
    says = tr("There is no such machine, filament or part, and nothing of this was measured.")
    marked = (*blocks[:1], Table("demo", (DEMO,), ((says,),), numbers_from=9), *blocks[1:])
    return Report(title, marked, tr("{demo} · {foot}", demo=DEMO, foot=foot(of, content)))


def foot(of: Of, content: Mapping[str, object]) -> Words:
    """Return the line at the foot of every page, with what shows any change of the readings."""
    return tr(
        "Slipgauge {version} · made {day} UTC · readings {digest}",
        version=of.version,
        day=f"{of.at:%Y-%m-%d %H:%M}",
        digest=content_hash(dict(content))[:16],
    )


def about(of: Of, *, measured: bool = True) -> Table:
    """Return machine, lot and the instrument, where one was `measured` with."""
    rows: list[tuple[Words | str, ...]] = []
    if of.machine is not None:
        rows.append((tr("machine"), of.machine.name))
    if of.lot is not None:
        made = ", ".join(part for part in (of.lot.material, of.lot.maker, of.lot.colour, of.lot.batch) if part)
        rows.append((tr("filament lot"), f"{of.lot.name} ({made})" if made else of.lot.name))
    if measured:
        rows.append((tr("instrument"), _instrument_words(of)))
    return Table("about", (tr("What"), tr("Which")), tuple(rows), numbers_from=9)


def _instrument_words(of: Of) -> Words | str:
    """Say with what was measured and how far back its check goes; no traceability beyond that is claimed."""
    if of.instrument is None:
        return tr("none on record: no traceability is claimed")
    if of.check is None or of.check.kept_at is None:
        return tr("{name}, never checked here: no traceability is claimed", name=of.instrument.name)
    return tr(
        "{name}, checked {day} (check № {number})",
        name=of.instrument.name,
        day=f"{of.check.kept_at:%Y-%m-%d}",
        number=of.check.id,
    )


def _numbers(estimates: Sequence[Estimate]) -> Table:
    rows = tuple((name_words(e.name), estimate_text(e), remark(e)) for e in estimates)
    return Table("results", (tr("Quantity"), tr("Value ± U (95 %)"), tr("Remark")), rows)


def trial_report(trial: Trial, of: Of, title: str = "", settings: Settings = NO_SETTINGS) -> Report:
    """Return the report of a kept trial: verdict as it was shown, results with U, readings as they were typed.

    Args:
        trial: kept.
        of: its machine, lot and instrument.
        title: of its subject for people.
        settings: label and value of each setting that counted, by its key in the conditions.
    """
    blocks: list[Block] = [Heading(tr("Trial № {number}: {subject}", number=trial.id, subject=title or trial.subject))]
    blocks += [*withdrawn_blocks(trial), about(of, measured=read_with_instrument(trial))]
    blocks += [*settings_table(trial, settings), Picture("trial")]
    if trial.verdict:
        blocks.append(Heading(tr("Verdict")))
    for said in trial.verdict:
        setting, (action, because) = Setting(said["setting"]), (kept_words(said, n) for n in ("action", "because"))
        says = tr("{setting}: {action} {because}", setting=setting_words(setting), action=action, because=because)
        blocks.append(Says(says))
    if untouched := side_by_side(kept_words(said, "do_not_touch") for said in trial.verdict):
        blocks.append(Says(tr("Do not touch: {what}", what=untouched), mind=True))
    if trial.estimates:
        blocks += [Heading(tr("Results")), _numbers(trial.estimates)]
    blocks += condition_blocks(trial)
    blocks += reading_blocks(trial)
    content = trial.readings or {"trials": list(trial.used)}
    return report_of(tr("Trial № {number}", number=trial.id), blocks, of, content)


def machine_card(
    of: Of, newest: Sequence[tuple[Trial, Estimate]], settings: Sequence[SettingInForce], lots: Mapping[int, Lot]
) -> Report:
    """Return the card of a machine: its drives, what was measured on it and when, what is in force by lot.

    Args:
        of: the machine.
        newest: its newest estimates that are in use, with their trials.
        settings: what is in force now.
        lots: by id.
    """
    assert of.machine is not None, "a card is of a machine"
    blocks: list[Block] = [Heading(of.machine.name)]
    drives = [(axis.upper(), steps_reason(drive_from_parts(parts))) for axis, parts in of.machine.drives.items()]
    if drives:
        blocks.append(Table("drives", (tr("Axis"), tr("Steps")), tuple(drives), numbers_from=9))
    rows = tuple(
        (
            name_words(e.name),
            estimate_text(e),
            _lot_name(trial.lot_id, lots),
            f"{trial.kept_at:%Y-%m-%d}",
            f"№ {trial.id}",
        )
        for trial, e in newest
        if trial.kept_at is not None
    )
    if rows:
        headings = (tr("Measured"), tr("Value ± U (95 %)"), tr("Lot"), tr("Day"), tr("Trial"))
        blocks.append(Table("measured", headings, rows))
    else:
        blocks.append(Says(tr("Nothing was measured on this machine yet.")))
    held = tuple(
        (setting_name_words(s.name), plain_value(s.new, s.unit), _lot_name(s.lot_id, lots),
         f"{s.since:%Y-%m-%d}" if s.since else "", tr("verified") if s.verified_by else tr("not verified"))
        for s in settings
    )  # fmt: skip
    if held:
        headings = (tr("In force"), tr("Value"), tr("Lot"), tr("Since"), tr("Standing"))
        blocks.append(Table("settings", headings, held))
    blocks.append(Says(VOID, mind=True))
    return report_of(of.machine.name, blocks, of, {"machine": of.machine.name})


def _lot_name(lot_id: int | None, lots: Mapping[int, Lot]) -> str:
    lot = None if lot_id is None else lots.get(lot_id)
    return lot.name if lot else ""
