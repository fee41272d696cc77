"""The records of a shop told apart: which kept trials count, what is known of drives and materials, axis by axis.

A trial counts with its scale error and uncertainty, corrected to calculated steps and drawn size by what was in force
when it was kept. What is beyond any filament (3 %) is a wrong part and left out.

Reference: the priors are common practice without a source (drives: catalogue drive_tolerances; materials: moulding
shrinkage, catalogue materials, never taken as better known than 0.3 %).
"""

from __future__ import annotations

import math
from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from datetime import datetime

import numpy as np

from core.filament.materials import FigureName, find_material
from core.guidance.changes import in_force_when
from core.guidance.known import known_of
from core.guidance.splitpair import SplitPair, print_u_ratio, widening
from core.machine_geometry.drive import Drive, DriveKind
from core.part_size.shop_links import (
    Contrast,
    Island,
    NextPrint,
    axis_contrasts,
    disagreeing,
    islands,
    joining_prints,
    next_print,
)
from core.part_size.shop_split import NO_LOT, Priors, Seen, ShopSplit, split_shop
from core.records.rows import Event, Lot, Machine, SeriesPoint, SettingInForce
from core.words import Words, tr

SUBJECT = "shop_split"
AXES = ("x", "y", "z")
MOST_RATIO = 0.03  # beyond it is a wrong part and no shrinkage (common practice, no source)
LEAST_LOT_U_RATIO = 0.003  # moulding figures are no better than this for printed parts (common practice, no source)
SPOILING = ("belt_changed", "screw_changed")  # after these a machine is another one, as in resources/walk.toml
UNKNOWN_LOT = (0.005, 0.01)  # shrinkage and its u where the material is not known (common practice, no source)
USUAL_DRIVE = {
    "x": Drive(DriveKind.BELT, pitch_mm=2.0, teeth=20),
    "y": Drive(DriveKind.BELT, pitch_mm=2.0, teeth=20),
    "z": Drive(DriveKind.SCREW, pitch_mm=2.0, starts=4),
}
Fetch = Callable[[str], Sequence[SeriesPoint]]  # all results of a name in use, oldest first
Settings = Mapping[int | None, Sequence[SettingInForce]]  # by machine


@dataclass(frozen=True, slots=True, eq=False)
class AxisSplit:
    """One axis of the shop: the split, the trials behind its rows (n), and who is linked with whom.

    `left_out` holds the trials that do not count, each with the reason.
    """

    axis: str
    split: ShopSplit
    trial_ids: tuple[int, ...]
    islands: tuple[Island, ...]
    joining: tuple[NextPrint, ...]
    next: NextPrint | None
    flagged_trials: tuple[int, ...]
    left_out: Mapping[int, Words]


@dataclass(frozen=True, slots=True, eq=False)
class Shop:
    """All axes that trials were kept on.

    Attributes:
        machines: of the shop, in the order of the indices.
        lots: of the shop, in the order of the indices.
        axes: the splits by axis.
        contrasts: X less Y by index of the machine.
        settings: what is or was in force.
    """

    machines: tuple[Machine, ...]
    lots: tuple[Lot, ...]
    axes: Mapping[str, AxisSplit]
    contrasts: Mapping[int, Contrast]
    settings: tuple[SettingInForce, ...] = ()

    def pair(self, axis: str, machine_id: int | None, lot_id: int | None) -> SplitPair | None:
        """Return what is known of one machine and lot along an axis; None where either is not on record."""
        found = self.axes.get(axis)
        machine = next((i for i, row in enumerate(self.machines) if row.id == machine_id), None)
        lot = next((j for j, row in enumerate(self.lots) if row.id == lot_id), None)
        if found is None or machine is None or lot is None:
            return None
        split, seen = found.split, found.split.seen
        mine, travel = seen.machine == machine, seen.lot == NO_LOT
        island = next((i for i in found.islands if machine in i.machines or lot in i.lots), None)
        return SplitPair(
            axis=axis,
            machine_ratio=float(split.machine_ratio[machine]),
            u_machine_ratio=float(split.u_machine_ratio[machine]),
            lot_ratio=float(split.lot_ratio[lot]),
            u_lot_ratio=float(split.u_lot_ratio[lot]),
            covariance_ratio=split.cross_covariance(machine, lot),
            prints=int(np.sum(mine & ~travel)),
            lots=int(np.unique(seen.lot[mine & ~travel]).size),
            machines=int(np.unique(seen.machine[seen.lot == lot]).size),
            others=(island.trials if island else 0) - int(np.sum(mine & (seen.lot == lot))),
            travel=bool(np.any(mine & travel)),
            by_prior=bool(split.machine_by_prior[machine]),
            allowance_ratio=in_force_at(self.settings, f"shrink_allowance_{axis}", (machine_id, lot_id)),
            axis_ratio=in_force_at(self.settings, f"axis_scale_{axis}", (machine_id, lot_id)),
        )


def read_shop(
    machines: Sequence[Machine],
    lots: Sequence[Lot],
    fetch: Fetch,
    settings: Sequence[SettingInForce] = (),
    events: Sequence[Event] = (),
) -> Shop:
    """Tell the machines and lots of a shop apart by all its kept trials.

    Args:
        machines: all of the shop.
        lots: all of the shop.
        fetch: gives all results of an estimate, oldest first.
        settings: shrink allowances and axis scales that are or were in force, newest first.
        events: what happened to machines; after a new belt or screw the trials before say nothing of the machine.

    Raises:
        InputError: for drive parts on record that cannot be.
    """
    begun = newest_event(events, SPOILING)
    read = {axis: _usable(axis, machines, lots, fetch, begun) for axis in AXES}
    drives = [known_of(machine, "m").drives for machine in machines]
    axes = {
        axis: _axis_split(axis, rows, machines, drives, lots, settings) for axis, rows in read.items() if rows.points
    }
    contrasts = _contrasts(read["x"], read["y"], machines, settings)
    return Shop(tuple(machines), tuple(lots), axes, contrasts, tuple(settings))


@dataclass(frozen=True, slots=True)
class _Rows:
    """Results that count, whether each is a travel, and the trials left out with the reason."""

    points: tuple[SeriesPoint, ...]
    travel: tuple[bool, ...]
    left_out: Mapping[int, Words]


def newest_event(events: Sequence[Event], kinds: Sequence[str]) -> Mapping[int, datetime]:
    """Return by machine when one of these last happened to it; what was logged by mistake does not count."""
    taken_back = {event.takes_back for event in events}
    found: dict[int, datetime] = {}
    for event in events:
        if event.kind in kinds and event.machine_id is not None and event.at is not None and event.id not in taken_back:
            found[event.machine_id] = max(event.at, found.get(event.machine_id, event.at))
    return found


def _usable(
    axis: str, machines: Sequence[Machine], lots: Sequence[Lot], fetch: Fetch, begun: Mapping[int, datetime]
) -> _Rows:
    travels = {point.trial_id for point in fetch(f"origin_{axis}")}
    known_machines, known_lots = {row.id for row in machines}, {row.id for row in lots}
    points, travel, left_out = [], [], {}
    for point in fetch(f"scale_{axis}"):
        if point.machine_id not in known_machines:
            continue
        is_travel = point.trial_id in travels
        why_not = _why_not(point, begun, has_lot=is_travel or point.lot_id in known_lots)
        if why_not is None:
            points.append(point)
            travel.append(is_travel)
        else:
            left_out[point.trial_id] = why_not
    return _Rows(tuple(points), tuple(travel), left_out)


def _why_not(point: SeriesPoint, begun: Mapping[int, datetime], *, has_lot: bool) -> Words | None:
    """Return why a result does not count; None where it does."""
    if not has_lot:
        return tr("no lot")
    if not 0.0 < point.u < math.inf:
        return tr("no uncertainty")
    if abs(point.value) > MOST_RATIO:
        return tr("beyond 3 %")
    if point.kept_at < begun.get(point.machine_id or 0, point.kept_at):
        return tr("before a new belt or screw")
    return None


def _axis_split(
    axis: str,
    rows: _Rows,
    machines: Sequence[Machine],
    drives: Sequence[Mapping[str, Drive]],
    lots: Sequence[Lot],
    settings: Sequence[SettingInForce],
) -> AxisSplit:
    machine_at = {row.id: index for index, row in enumerate(machines)}
    lot_at = {row.id: index for index, row in enumerate(lots)}
    of_lots = [lot_prior(lot) for lot in lots]
    own = _by_machine(settings)
    seen = Seen(
        machine=np.array([machine_at[point.machine_id] for point in rows.points], dtype=np.int64),
        lot=np.array(
            [NO_LOT if t else lot_at[p.lot_id] for p, t in zip(rows.points, rows.travel, strict=True)], dtype=np.int64
        ),
        scale_ratio=np.array(
            [_as_calculated(axis, p, t, own) for p, t in zip(rows.points, rows.travel, strict=True)]
        ),
        u_ratio=np.array([_u_ratio(p, t) for p, t in zip(rows.points, rows.travel, strict=True)]),
    )
    prior = Priors(
        machine_u_ratio=np.array([drive.get(axis, USUAL_DRIVE[axis]).tolerance_ratio for drive in drives]),
        lot_ratio=np.array([math.log1p(-shrinks) for shrinks, _ in of_lots]),
        lot_u_ratio=np.array([u for _, u in of_lots]),
    )
    split = split_shop(seen, prior)
    apart = islands(seen, len(machines), len(lots))
    trials = tuple(point.trial_id for point in rows.points)
    flagged = tuple(trials[row] for row in np.flatnonzero(disagreeing(split)))
    joining = joining_prints(split, apart)
    best = next_print(split) if lots else None
    return AxisSplit(axis, split, trials, apart, joining, best, flagged, rows.left_out)


def _by_machine(settings: Sequence[SettingInForce]) -> Settings:
    """Return the settings of each machine: a shop has many results, and each of them asks."""
    own: dict[int | None, list[SettingInForce]] = {}
    for setting in settings:
        own.setdefault(setting.machine_id, []).append(setting)
    return own


def _as_calculated(axis: str, point: SeriesPoint, travel: bool, own: Settings) -> float:
    """Return the scale error as it would be with calculated steps and parts drawn at size."""
    factor, place = 1.0, (point.machine_id, point.lot_id)
    if settings := own.get(point.machine_id):  # on most machines nothing was ever set
        factor = in_force_at(settings, f"axis_scale_{axis}", place, point)
        if not travel:
            factor *= in_force_at(settings, f"shrink_allowance_{axis}", place, point)
    return (1.0 + point.value) / factor - 1.0


def _u_ratio(point: SeriesPoint, travel: bool) -> float:
    return max(point.u * widening(point.dof), 1e-6) if travel else print_u_ratio(point.u, point.dof)


def in_force_at(
    settings: Sequence[SettingInForce],
    name: str,
    place: tuple[int | None, int | None],
    point: SeriesPoint | None = None,
) -> float:
    """Return the factor in force for a machine and lot when a trial was kept, or now; 1 where none was set.

    Args:
        settings: of any machine, in any order.
        name: of the setting.
        place: ids of machine and lot.
        point: of the trial; None for now.
    """
    machine_id, lot_id = place
    own = [setting for setting in settings if setting.machine_id == machine_id]
    held = in_force_when(own, name, lot_id, None if point is None else point.kept_at)
    return 1.0 if held is None else held.new


def lot_prior(lot: Lot) -> tuple[float, float]:
    """Return the shrinkage to expect of a lot by its material, and its standard uncertainty."""
    match = find_material(lot.material)
    figure = match.material.figure(FigureName.SHRINKAGE) if match and match.exact else None
    if figure is None:
        return UNKNOWN_LOT
    return (figure.low + figure.high) / 200.0, max((figure.high - figure.low) / 200.0, LEAST_LOT_U_RATIO)


def _contrasts(
    x: _Rows, y: _Rows, machines: Sequence[Machine], settings: Sequence[SettingInForce]
) -> Mapping[int, Contrast]:
    """X less Y of each machine, from prints that hold both; what both share counts as independent here."""
    machine_at = {row.id: index for index, row in enumerate(machines)}
    of_y = {p.trial_id: p for p, travel in zip(y.points, y.travel, strict=True) if not travel}
    both = [(p, of_y[p.trial_id]) for p, t in zip(x.points, x.travel, strict=True) if not t and p.trial_id in of_y]
    if not both:
        return {}
    own = _by_machine(settings)
    logs = [[math.log1p(_as_calculated(a, p, False, own)) for a, p in zip("xy", pair, strict=True)]
            for pair in both]  # fmt: skip
    u = [math.hypot(*(_u_ratio(p, travel=False) for p in pair)) for pair in both]
    machine = np.array([machine_at[p.machine_id] for p, _ in both], dtype=np.int64)
    return axis_contrasts(machine, np.array(logs)[:, 0] - np.array(logs)[:, 1], np.array(u))
