"""All that the board rests on, read in a few statements that indexes answer by themselves."""

from __future__ import annotations

from dataclasses import dataclass, field

from app.context import Context
from app.jobs import Step, at_once
from app.units import inches_for
from app.walkreader import read_checks
from app.words import in_inch, local_numbers, shown
from core.errors import InputError
from core.guidance.board import BoardLine, board_line, loaded_lots, serials_by_machine
from core.guidance.names import estimate_text
from core.guidance.walk import walk_state
from core.guidance.walkplan import Scope, shop_plan
from core.records.rows import Event, InUse, Machine, SeriesPoint, SettingInForce, Trial
from core.words import tr

_FEWEST = 8  # results; below that a chart has no limits
_CHARTED = ("wall_outset", "reversal_x", "reversal_y")  # what a machine owns and is kept most often


@dataclass(slots=True)
class Board:
    """What is on record of all machines, sorted by machine."""

    machines: tuple[Machine, ...]
    lot_names: dict[int, str]
    loaded: dict[int, int]
    kept: dict[int, list[InUse]]
    of_all: list[Event] = field(default_factory=list)
    of_lot: dict[int, list[Event]] = field(default_factory=dict)
    of_machine: dict[int, list[Event]] = field(default_factory=dict)
    settings: dict[int, list[SettingInForce]] = field(default_factory=dict)
    checks: tuple[Trial, ...] = ()
    charted: dict[int, dict[str, list[SeriesPoint]]] = field(default_factory=dict)

    def lot_name(self, machine_id: int | None) -> str:
        """Return the name of the lot that a machine was used with last; empty for none."""
        return self.lot_names.get(self.loaded.get(machine_id or 0, 0), "")

    def line(self, machine: Machine) -> BoardLine:
        """Work out what the board says of a machine."""
        number = machine.id or 0
        lot_id = self.loaded.get(number)
        events = {event.id: event for event in (*self.of_all, *self.of_machine.get(number, ()))}
        events |= {event.id: event for event in self.of_lot.get(lot_id or 0, ())}
        ordered = tuple(events[key] for key in sorted(events, key=lambda key: key or 0))
        walk = walk_state(
            shop_plan(), machine, lot_id, self.kept.get(number, ()), ordered, self.settings.get(number, ()), self.checks
        )
        return board_line(number, lot_id, walk)

    def promise(self, context: Context, line: BoardLine) -> str:
        """Return what a machine is promised to hold, with its uncertainty; empty where nothing is."""
        if line.promise_id is None:
            return ""
        kept = context.store.trial(line.promise_id).estimates
        promised = [estimate for estimate in kept if estimate.name.startswith("promise_")]
        if not promised:
            return ""
        text = local_numbers(estimate_text(promised[0]))
        return in_inch(text) if inches_for("promise") else text

    def drift(self, machine: Machine) -> tuple[str, bool]:
        """Return what the charts of a machine say, and whether it is a signal; nothing where they have no limits."""
        from core.guidance.charted import main_quantities
        from core.guidance.drift import judge_drift

        quantities = {quantity.name: quantity for quantity in main_quantities()}
        judged = False
        for name in _CHARTED:
            points = self.charted.get(machine.id or 0, {}).get(name, ())
            if name not in quantities or len(points) < _FEWEST:
                continue
            try:
                runs = judge_drift(quantities[name], points).individuals.runs
            except InputError:  # of results that belong on no chart; the charts say why
                continue
            judged = True
            if any(run.last == len(points) - 1 for run in runs):
                return shown(tr("! {quantity} moved", quantity=quantities[name].words)), True
        return (shown(tr("quiet")), False) if judged else ("", False)


def read_board(context: Context, step: Step = at_once) -> Board:
    """Read what the board rests on; `step` is told the part done and may end the reading.

    Raises:
        StoreError: the database cannot be read.
    """
    store = context.store
    newest = store.newest_kept()
    step(0.3)
    loaded = loaded_lots(newest)
    plan = shop_plan()
    of_lots = {subject for kind in plan.results.values() if kind.scope is Scope.LOT for subject in kind.subjects}
    wanted = serials_by_machine(newest, loaded, of_lots)
    by_serial = {trial.serial: trial for trial in store.in_use({serial for some in wanted.values() for serial in some})}
    by_id = {trial.id: trial for trial in by_serial.values()}
    step(0.6)
    board = Board(
        store.machines(),
        {lot.id or 0: lot.name for lot in store.lots()},
        loaded,
        {number: _with_used(serials, by_serial, by_id) for number, serials in wanted.items()},
        checks=read_checks(store),
    )
    step(0.8)
    for event in store.events():
        if event.machine_id is None:
            board.of_all.append(event)
        else:
            board.of_machine.setdefault(event.machine_id, []).append(event)
        if event.lot_id is not None:
            board.of_lot.setdefault(event.lot_id, []).append(event)
    for setting in store.settings(None):
        board.settings.setdefault(setting.machine_id, []).append(setting)
    for place, name in enumerate(_CHARTED):  # of all machines at once: a shop has a thousand of them
        step(0.85 + 0.05 * place)
        for point in store.series(name):
            board.charted.setdefault(point.machine_id or 0, {}).setdefault(name, []).append(point)
    return board


def _with_used(serials: list[int], by_serial: dict[int, InUse], by_id: dict[int, InUse]) -> list[InUse]:
    own = [by_serial[serial] for serial in serials if serial in by_serial]
    known = {trial.id for trial in own}
    used = {number for trial in own for number in trial.used} - known
    return own + [by_id[number] for number in used if number in by_id]
