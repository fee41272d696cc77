"""What the button *Reports* of the page Promise writes: PDF and CSV of promise, trial, machine card and label."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from datetime import UTC, datetime, timedelta
from pathlib import Path

from app.context import Context
from app.pages.part_size.keptbeside import kept_here
from app.pages.part_size.prediction_view import proof_plot
from app.pdf import write_label
from app.units import inches_for
from app.version import our_version
from app.widgets.plotdata import PlotData
from app.words import in_inch
from core.guidance.promised import PromiseJudgement
from core.guidance.promisereport import machine_label, promise_report
from core.guidance.reportblocks import Report, Table
from core.guidance.reports import Of, machine_card
from core.quantity import Estimate
from core.records.rows import SettingInForce, Trial, TrialState

DUE_DAYS = 90  # until a promise is shown again (common practice, no source)
_CARD_TRIALS = 200


def whose(context: Context, check: Trial | None) -> Of:
    """Return whose report is written, now."""
    assert context.machine is not None  # the button is offered with a machine only
    at, demo = datetime.now(UTC), context.store.is_demo
    return Of(context.machine, context.lot, context.instrument, check, at, our_version(), demo)


def promise_pages(context: Context, check: Trial | None, judged: PromiseJudgement) -> Report:
    """Return the promise to a customer, with the newest piece decided and the newest verification."""
    store = context.store
    pieces = kept_here(context, "sizeerror")
    first = store.trial(pieces[0].id or 0) if pieces else None
    return promise_report(whose(context, check), judged, first, _newest_proof(context))


def proof_plots(context: Context) -> dict[str, PlotData]:
    """Return the picture of the newest kept verification by its name in the report; none where none is kept."""
    proof = _newest_proof(context)
    return {} if proof is None else {"proof": proof_plot(proof)}


def _newest_proof(context: Context) -> Trial | None:
    proofs = kept_here(context, "verification")
    return context.store.trial(proofs[0].id or 0) if proofs else None


def card_pages(context: Context, check: Trial | None, *, for_paper: bool = True) -> Report:
    """Return the card of the picked machine: the newest estimate of each name, and what is in force.

    Args:
        context: of the window.
        check: the last check of the instrument; None for none.
        for_paper: whether lengths are in the unit that the person prefers; a file for other programs has mm always.
    """
    of = whose(context, check)
    machine_id = of.machine.id if of.machine else None
    store = context.store
    newest: dict[tuple[str, int | None], tuple[Trial, Estimate]] = {}
    for trial in store.trials(machine_id=machine_id, limit=_CARD_TRIALS):
        if trial.state is TrialState.KEPT and trial.kept_at is not None:
            for estimate in trial.estimates:
                newest.setdefault((estimate.name, trial.lot_id), (trial, estimate))
    held: dict[tuple[str, int | None], SettingInForce] = {}
    for setting in store.settings(machine_id or 0):
        held.setdefault((setting.name, setting.lot_id), setting)
    lots = {lot.id: lot for lot in store.lots() if lot.id is not None}
    card = machine_card(of, tuple(newest.values()), tuple(held.values()), lots)
    return _in_preferred_unit(card, [trial.subject for trial, _ in newest.values()]) if for_paper else card


def _in_preferred_unit(card: Report, subjects: Sequence[str]) -> Report:
    """Return the card with each result as its page shows it; drive parts, and what is in force, stay in mm."""
    blocks = list(card.blocks)
    for place, block in enumerate(blocks):
        if isinstance(block, Table) and block.name == "measured":
            rows = zip(block.rows, subjects, strict=True)
            told = ((row[0], in_inch(row[1]), *row[2:]) if inches_for(subject) else row for row, subject in rows)
            blocks[place] = replace(block, rows=tuple(told))
    return replace(card, blocks=tuple(blocks))


def write_machine_label(context: Context, judged: PromiseJudgement | None, path: Path) -> bool:
    """Write the label of the picked machine; what proved it last is its newest promise, else its newest trial."""
    proofs = kept_here(context, "promise") or kept_here(context, "sizeerror")
    proof = proofs[0] if proofs else None
    of = whose(context, None)
    since = proof.kept_at if proof is not None and proof.kept_at is not None else of.at
    label = machine_label(of, judged, proof, since + timedelta(days=DUE_DAYS))
    return write_label(label, path, inch=inches_for("promise"))
