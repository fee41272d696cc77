"""A planned piece handed over to the page that takes its readings: the empty rows and sizes of an open trial there."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import asdict
from typing import TYPE_CHECKING, Any

from app.context import Context, Level
from app.pages import PAGES
from app.widgets.gaugerows import rows_of
from app.widgets.reading_rows import lists_of
from app.words import shown
from core.errors import InputError, StoreError
from core.pieces.piece import Gauge
from core.records.rows import Trial
from core.words import tr

if TYPE_CHECKING:
    from core.guidance.pieceplan import PiecePlan, PieceWishes

SQUARE_PAGE = "squareness"
_ROUNDS = 2  # of the diagonals at least: their scatter is judged from repeats
Row = dict[str, Any]


def hand_over(context: Context, wishes: PieceWishes, plan: PiecePlan, page: str) -> bool:
    """Write the open trial of a page for a planned piece; one with readings in it stays as it is, and that is said."""
    here = context.machine_id, context.lot_id
    fill = _FILL.get(page, _flow)
    try:
        before = context.store.draft(page, *here)
        if before is not None and any(before.readings.get("raw", ())):
            says = tr("{page} holds readings that are not kept yet. Keep or clear them first.", page=_title(page))
            context.say(shown(says), Level.WARNING)
            return False
        conditions, rows = fill(context, wishes, plan)
        trial = Trial(
            page,
            *here,
            context.instrument_id,
            readings=lists_of([{**row, "measured_mm": None, "raw": ""} for row in rows]),
            conditions={**(before.conditions if before else {}), **conditions},
            id=before.id if before else None,
        )
        context.store.save_draft(trial, before)
    except (InputError, StoreError) as error:
        context.say(shown(error.message), Level.ERROR)
        return False
    return True


def _size(_context: Context, wishes: PieceWishes, plan: PiecePlan) -> tuple[dict[str, Any], list[Row]]:
    """Return piece and bounds, and a row for every reading."""
    from core.guidance.pieceplan import size_gauges

    gauges = size_gauges(plan.planned)
    return {"piece": plan.planned.key, "piece_bounds": asdict(wishes.bounds)}, rows_of(gauges, _times(plan, gauges))


def _square(context: Context, _wishes: PieceWishes, plan: PiecePlan) -> tuple[dict[str, Any], list[Row]]:
    """Return the sides and the term the piece is printed under, and rows for the diagonals."""
    from core.guidance.pieceplan import diagonal_gauges, pillar_sides_mm
    from core.guidance.squareadvice import term_name

    machine = context.machine
    now = context.store.in_force(term_name("xy"), machine.id) if machine and machine.id else None
    side_a, side_b = pillar_sides_mm(plan.planned)
    conditions = {"method": "pillars", "plane": "xy", "side_a_mm": side_a, "side_b_mm": side_b,
                  "term_ratio": round(now.new, 6) if now else 0.0}  # fmt: skip
    gauges = diagonal_gauges(plan.planned)
    rows = rows_of(gauges, [max(count, _ROUNDS) for count in _times(plan, gauges)])
    return conditions, [_diagonal(row) for row in rows]


def _diagonal(row: Row) -> Row:
    """Return the row as the page Squareness names it: diagonal 1 from −− to ++, its outer or inner side."""
    number = "1" if "1-3" in row["feature"] else "2"
    return {**row, "axis": number, "kind": row["kind"].removesuffix("_diagonal")}


def _flow(_context: Context, wishes: PieceWishes, plan: PiecePlan) -> tuple[dict[str, Any], list[Row]]:
    """Return bead and box as they are drawn; that page plans its rows itself."""
    bounds = wishes.bounds
    sizes = {"nozzle_mm": bounds.nozzle_mm, "height_mm": bounds.layer_mm, "width_mm": bounds.bead_mm}
    key = plan.planned.key
    if key.startswith("wall_box"):
        return {**sizes, "beads": key[-1]}, []
    if key == "mass_box":  # only the slicing program knows what its path counts: that of another box may not stand
        return {**sizes, "path_filament_mm": None, "volume_cm3": None}, []
    return sizes, []


def _times(plan: PiecePlan, gauges: tuple[Gauge, ...]) -> list[int]:
    times = dict(zip((gauge.name for gauge in plan.planned.gauges), plan.times, strict=True))
    return [times[gauge.name] for gauge in gauges]


def _title(page: str) -> str:
    return next(entry.shown_title() for entry in PAGES if entry.key == page)


_Fill = Callable[[Context, "PieceWishes", "PiecePlan"], tuple[dict[str, Any], list[Row]]]
_FILL: dict[str, _Fill] = {"sizeerror": _size, SQUARE_PAGE: _square}
