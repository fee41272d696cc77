"""What is on record: machines, events, settings, kept trials, and estimates."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from datetime import UTC, datetime, timedelta
from typing import Any

import numpy as np

from core.guidance import decisions
from core.guidance.walkplan import shop_plan
from core.quantity import Estimate
from core.records.rows import Event, InUse, Machine, NewestKept, SeriesPoint, SettingInForce, Trial, TrialState
from tests.properties import shapes
from tests.properties.kinds import Hand, Recipe
from tests.properties.recipes.machine_geometry import drive

NOON = datetime(2026, 5, 4, 12, tzinfo=UTC)


def estimate(hand: Hand) -> Estimate:
    """Return an estimate: as a call gives it, or as a file that was imported says."""
    name = hand.pick("scale_x", "diameter", "wall_outset", "flow_ratio", "mass_per_length", "density", "reversal_y")
    unit = {"s": "1", "d": "mm", "w": "mm", "f": "1", "m": "g/m", "r": "mm"}[name[0]]
    low, high = {"scale_x": (-0.02, 0.02), "flow_ratio": (0.8, 1.2), "wall_outset": (-0.2, 0.2)}.get(name, (0.5, 3.0))
    dof = hand.pick(np.inf, 1.0, 2.5, 30.0)
    if hand.chance(hand.wild / 4):
        name, dof = hand.text(), max(hand.number("dof"), 0.5)  # imports refuse what gives no level of confidence
    u = hand.number("u_")  # a wild one still has an interval
    return Estimate(name, hand.number("", low, high), max(min(u, 1e300), -1e300), float(dof), unit)


def size_trial(hand: Hand) -> Trial:
    """Return a kept trial of lengths."""
    columns: dict[str, Any] = shapes.size_columns(hand)
    columns = {name: values[: min(map(len, columns.values()))] for name, values in columns.items()}
    count = len(columns["axis"])
    columns |= {"feature": [hand.pick("a", "b", "") for _ in range(count)], "excluded": [False] * count}
    return Trial(
        hand.pick("sizeerror", "sizeerror", "wall", "feed"),
        1,
        1,
        None,
        hand.pick(*TrialState),
        columns,
        {"tolerance": "m", "part_temperature_c": 20.0},
        tuple(estimate(hand) for _ in range(hand.count() % 3)),
        (),
        (),
        "sizeerror 1",
        "",
        NOON,
        NOON + timedelta(hours=hand.count()),
        "",
        hand.count(),
        "",
        hand.count(),
    )


def machine(hand: Hand) -> Machine:
    """Return a machine on record."""
    drives = {axis: drive(hand).parts() for axis in hand.pick((), ("x",), ("x", "y", "e"))}
    limits = hand.pick({}, {"nozzle_mm": 0.4, "hot_end_limit_c": 280.0, "max_speed_mm_s": {"x": 200.0}})
    return Machine("Bramble", drives=drives, id=1, limits=limits, templates={"settings": "steps {extruder_steps_mm:2}"})


def setting(hand: Hand) -> SettingInForce:
    """Return a setting that was put in force."""
    kind = hand.pick(*decisions.SETTABLE)
    return SettingInForce(
        1,
        hand.pick(None, 1),
        kind.name,
        hand.pick(None, 1.0),
        hand.number("", 0.5, 2.0),
        kind.unit,
        NOON + timedelta(hours=hand.count()),
        hand.pick(None, 1),
        hand.count(),
        serial=hand.count(),
    )


def event(hand: Hand) -> Event:
    """Return an event of the logbook."""
    kind = hand.pick(*shop_plan().spoils)
    return Event(kind, 1, None, None, hand.pick(None, 1), {}, "", "", None, NOON, hand.count(), hand.count())


def point(hand: Hand) -> SeriesPoint:
    """Return one point of a chart."""
    e = estimate(hand)
    return SeriesPoint(
        hand.count(), NOON + timedelta(days=hand.count()), e.value, e.u, e.dof, "mm", 1, hand.pick(None, 1)
    )


def in_use(hand: Hand) -> InUse:
    """Return a kept trial as the walk sees it."""
    gives = frozenset(hand.pick("scale_x", "squareness_xy", "flow_ratio", "reversal_x") for _ in range(2))
    subject = hand.pick("sizeerror", "squareness", "wall", "reversal", "drive", "bedplane")
    return InUse(hand.count(), hand.count(), subject, 1, 1, None, NOON, gives)


def newest(hand: Hand) -> NewestKept:
    """Return the newest kept trial that gives a set of results."""
    return NewestKept(1, hand.pick(None, 1, 2), hand.pick("sizeerror", "wall"), "scale_x\nscale_y", hand.count())


RECIPES: dict[Any, Recipe] = {
    Estimate: estimate,
    Trial: size_trial,
    Machine: machine,
    SettingInForce: setting,
    Event: event,
    SeriesPoint: point,
    InUse: in_use,
    str(Callable[[str], Sequence[SeriesPoint]]): shapes.series,
    NewestKept: newest,
}
