"""Arguments that cannot be put together field by field: answers of other calls, and what must fit together.

An answer of another call is made by that call: the shapes inside it are its promise, so none is made up here.
"""

from __future__ import annotations

import dataclasses
import types
import typing
from collections.abc import Callable, Sequence
from datetime import UTC, datetime, timedelta
from typing import Any, Union

import numpy as np

from core.filament.slip import HotFeed
from core.filament.ways import plan_by_gauge, plan_by_mass
from core.flow_trials.bead import Bead
from core.flow_trials.combine import KnownFlow, combine_flow
from core.flow_trials.conditions import PrintConditions
from core.guidance import decisions
from core.guidance.charted import Quantity, main_quantities
from core.guidance.decisions import Settable
from core.guidance.directtrials import PathRequest
from core.guidance.drift import judge_drift
from core.guidance.known import Known
from core.guidance.motionadvice import LevelReadings
from core.guidance.predicted import Verified, locked_trial, predict_from, verify_locked
from core.guidance.reports import Of
from core.guidance.splitpair import SplitPair
from core.guidance.walkplan import Enough, Plan, shop_plan
from core.guidance.wear import Weighed
from core.machine_geometry.firstlayer import Printed
from core.machine_geometry.mixup import RatioInterval, ratio_from_lengths
from core.machine_geometry.parts import Drive, DriveKind, Reeving
from core.measuring.checkreadings import CheckReadings
from core.measuring.correction import CorrectionCurve
from core.measuring.decay import Decay, fit_decay
from core.measuring.gauge import GaugeKind, gauge_of
from core.measuring.linefit import LinearFit
from core.measuring.ordinal import Ordinal, draw_around
from core.measuring.runrules import Rule, Run, find_runs
from core.motion_trials.gcodepath import Path, read_path
from core.motion_trials.gcodetime import Limits, time_path
from core.motion_trials.ladders import LadderKind, LadderReadings, ladders
from core.motion_trials.layertime import LayerRule, Layers, LayerTimes
from core.motion_trials.sensoroffset import BestTemperature
from core.motion_trials.spectrum import spectrum_of
from core.motion_trials.speed import SpeedTrial, judge_levels
from core.part_size.features import AXES, FeatureKind, Terms
from core.part_size.missing import Candidate
from core.part_size.pegfit import Mate
from core.part_size.prediction import Changes, Prediction, predict, verify
from core.part_size.scatter import FeatureMeans, ScatteredFit
from core.part_size.shop_links import islands
from core.part_size.shop_split import Priors, Seen, split_shop
from core.part_size.sizeerror import SizeError, fit_size_error
from core.part_size.spread import Spread, fit_spread
from core.pieces.bounds import Bounds
from core.pieces.catalogue import plan_set
from core.pieces.comb import plan_comb
from core.pieces.piece import Piece, PrintSet
from core.pieces.solid import Solid, solids_of
from core.pieces.toolpath import Laying, Moves, PathBead, Stroke, bead_stroke, lay
from core.pieces.toolpathtrials import TrialKind
from core.pieces.view import view_of
from core.quantity import Estimate
from core.records.rows import Event, InUse, Machine, NewestKept, SeriesPoint, SettingInForce, Trial, TrialState
from core.words import tr
from tests.properties import shapes, workshop
from tests.properties.kinds import Hand
from tests.properties.listing import functions as listed
from tests.properties.reasons import reason_of

Recipe = Callable[[Hand], Any]
NOON = datetime(2026, 5, 4, 12, tzinfo=UTC)
DENSITY = Estimate("density", 1.24, 0.01, np.inf, "g/cm3")
_XYZ = ("x", "y", "z")

# Arguments of a call that fit one another, or that come from a closed list of the program's own; the rest is drawn.
ARGUMENTS: dict[str, Recipe] = {}
RECIPES: dict[Any, Recipe] = {}


def call(hand: Hand, function: Callable[..., Any]) -> Any:
    """Return the answer of a call to drawn arguments."""
    hints = typing.get_type_hints(function)
    hints.pop("return", None)
    fitting = ARGUMENTS.get(f"{function.__module__}.{function.__name__}")
    given = {name: value for name, value in (fitting(hand) if fitting else {}).items() if name in hints}
    for name, hint in hints.items():
        if name not in given:
            given[name] = hand.of(hint, name)
    return function(**given)


def estimate(hand: Hand) -> Estimate:
    """Return an estimate: as a call gives it, or as a file that was imported says."""
    name = hand.pick("scale_x", "diameter", "wall_outset", "flow_ratio", "mass_per_length", "density", "reversal_y")
    unit = {"s": "1", "d": "mm", "w": "mm", "f": "1", "m": "g/m", "r": "mm"}[name[0]]
    low, high = {"scale_x": (-0.02, 0.02), "flow_ratio": (0.8, 1.2), "wall_outset": (-0.2, 0.2)}.get(name, (0.5, 3.0))
    dof = hand.pick(np.inf, 1.0, 2.5, 30.0)
    if hand.chance(hand.wild / 4):
        name, dof = hand.text(), hand.number("dof")
    return Estimate(name, hand.number("", low, high), hand.number("u_"), float(dof), unit)


def drive(hand: Hand) -> Drive:
    """Return a drive of any kind."""
    kind = hand.pick(*DriveKind)
    own: dict[str, Any] = {
        DriveKind.BELT: {"pitch_mm": hand.pick(2.0, 3.0, 2.032), "teeth": hand.pick(16, 20, 17)},
        DriveKind.SCREW: {"pitch_mm": hand.pick(1.0, 2.0, 1.5), "starts": hand.pick(1, 4)},
        DriveKind.RACK: {"module_mm": 1.0, "teeth": hand.pick(20, 25), "helix_deg": hand.number("", 0.0, 30.0)},
        DriveKind.WHEEL: {"diameter_mm": hand.number("", 5.0, 40.0)},
        DriveKind.ROTARY: {},
    }[kind]
    reeving = Reeving.DIRECT if kind is DriveKind.ROTARY else hand.pick(*Reeving)
    gears = hand.pick((), ((3, 1),), ((44, 14), (20, 60)))
    return Drive(kind, hand.pick(200, 400), hand.pick(1, 16, 256), gears, reeving, u_ratio=hand.pick(None, 1e-3), **own)


def laid_bead(hand: Hand) -> Bead:
    """Return a bead that a nozzle lays."""
    height = hand.number("", 0.1, 0.3)
    return Bead(hand.number("", 0.35, 0.6), height, hand.of(typing.get_type_hints(Bead)["model"]))


def print_conditions(hand: Hand) -> PrintConditions:
    """Return conditions that a hot end bears."""
    return PrintConditions(
        laid_bead(hand),
        hand.pick(0.4, 0.5),
        hand.number("", 180.0, 260.0),
        hand.number("", 1.0, 15.0),
        hand.number("", 0.8, 1.2),
        280.0,
    )


def bounds(hand: Hand) -> Bounds:
    """Return bounds of a machine."""
    return Bounds(
        hand.number("", 120.0, 310.0),
        hand.pick(120.0, 3000.0, hand.number("", 120.0, 310.0)),
        hand.number("", 30.0, 220.0),
        hand.pick(100.0, 150.0, 300.0, hand.number("", 100.0, 300.0)),
        hand.number("", 9.0, 15.0),
        hand.pick(40.0, 0.0, hand.number("", 10.0, 50.0)),
        hand.pick(1000.0, hand.number("", 30.0, 50.0)),
        hand.number("", 0.1, 0.3),
        hand.number("", 0.1, 0.3),
        hand.pick(0.25, 0.4, 0.8, hand.number("", 0.2, 0.8)),
    )


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


def worn(hand: Hand) -> dict[str, Any]:
    """Return results of a lot with weighings about them; where anything goes, results of any lot at any moment."""
    ours = dataclasses.replace(point(hand), lot_id=1)
    rows = [dataclasses.replace(ours, kept_at=NOON + timedelta(days=day), value=hand.number("")) for day in range(5)]
    points = [point(hand) if hand.chance(hand.wild) else one for one in rows]
    weighed = [
        Weighed(1, NOON + timedelta(days=day, hours=-1), hand.number("", 880.0, 900.0) - 100.0 * day, hand.number("u_"))
        for day in range(hand.between(4, 7))
    ]
    machines = {1: frozenset({1}) if not hand.chance(hand.wild) else frozenset({1, 2})}
    drift = judge_drift(hand.pick(*main_quantities()), points)
    return {"drift": drift, "weighings": weighed, "lots": {1: hand.text()}, "machines_of": machines}


def in_use(hand: Hand) -> InUse:
    """Return a kept trial as the walk sees it."""
    gives = frozenset(hand.pick("scale_x", "squareness_xy", "flow_ratio", "reversal_x") for _ in range(2))
    subject = hand.pick("sizeerror", "squareness", "wall", "reversal", "drive", "bedplane")
    return InUse(hand.count(), hand.count(), subject, 1, 1, None, NOON, gives)


def newest(hand: Hand) -> NewestKept:
    """Return the newest kept trial that gives a set of results."""
    return NewestKept(1, hand.pick(None, 1, 2), hand.pick("sizeerror", "wall"), "scale_x\nscale_y", hand.count())


def soaked(hand: Hand) -> Decay:
    """Return a decay, from readings that make one."""
    count = 4 + hand.many()
    return fit_decay(np.arange(count) * 60.0, np.array(hand.numbers("_mm", count)))


def flows(hand: Hand) -> list[Estimate]:
    """Return flow factors by one to three ways."""
    names = ("flow_ratio_wall", "flow_ratio_mass", "flow_ratio_top")
    return [
        Estimate(name, hand.number("", 0.8, 1.2), abs(hand.number("u_")), np.inf, "1")
        for name in names[: hand.between(1, 3)]
    ]


def path_request(hand: Hand) -> PathRequest:
    """Return what a direct trial is asked for."""
    kind = hand.pick(*TrialKind)
    return PathRequest(
        kind,
        shapes.values_of_trial(hand, kind, checked=False),
        hand.number("", 0.4, 0.5),
        hand.number("", 0.1, 0.3),
        "obround",
        hand.pick(1.75, hand.number("", 1.7, 2.9)),
        hand.number("", 0.8, 1.2),
        hand.number("", 190.0, 240.0),
        hand.number("_c", 40.0, 70.0),
        hand.number("", 20.0, 60.0),
        hand.number("", 20.0, 80.0),
        hand.number("", 0.0, 1.0),
        hand.chance(0.5),
        "",
        "",
        (),
    )


def path_and_time(hand: Hand) -> dict[str, Any]:
    """Return the lengths of a path and the time it takes."""
    path = gcode_path(hand)
    return {"self": time_path(path, hand.of(Limits)), "length_mm": path.length_mm}


def of(hand: Hand) -> Of:
    """Return whose a report is."""
    return Of(machine(hand), None, None, None, NOON, "1")


def on_axis_of_fit(hand: Hand) -> dict[str, Any]:
    """Return a fit and what there is in it."""
    fit = hand.of(SizeError)
    axis, names = hand.pick(*fit.axes), fit.terms.names
    kind = hand.pick(*(kind for kind, along in zip(fit.kinds, fit.axes, strict=True) if along == axis))
    return {
        "fit": fit,
        "self": fit,
        "axis": axis,
        "axes": [axis],
        "kind": kind,
        "constant": estimate(hand),
        "first_name": hand.pick(*names),
        "second_name": hand.pick(*names),
    }


def with_split(hand: Hand) -> dict[str, Any]:
    """Return a fit, and what the shop says of each of its axes."""
    given = on_axis_of_fit(hand)
    return {**given, "known": Known(split={axis: split_pair(hand) for axis in AXES}), "scale": estimate(hand)}


def level_readings(hand: Hand) -> LevelReadings:
    """Return a speed trial that was scored."""
    given = shapes.scores_of_steps(hand)
    return hand.build(
        LevelReadings,
        of=hand.pick("speed", "acceleration"),
        level=given["level"],
        score=given["score"],
        judge=given["judge"],
        time_s=given["time_s"],
        piece=hand.pick((), ["p"] * hand.length),
        layers=hand.pick(None, some_layers(hand)),
    )


def good_columns(hand: Hand) -> dict[str, Any]:
    """Return lengths that tell scale from offset."""
    kind = [str(one) for one in (FeatureKind.TOOTH, FeatureKind.NOTCH, FeatureKind.OUTSIDE) for _ in range(4)]
    nominal = [10.0, 30.0, 60.0, 100.0] * 3
    measured = [n + hand.number("", -0.1, 0.1) for n in nominal]
    return {"nominal_mm": nominal, "measured_mm": measured, "kind": kind, "axis": ["x"] * 12}


def good_prediction(hand: Hand) -> Prediction:
    """Return a prediction of some lengths."""
    nominal = hand.numbers("_mm", 4)
    return predict(
        fit_size_error(**good_columns(hand)),
        ["x"] * 4,
        ["tooth", "notch", "tooth", "notch"],
        nominal,
        Changes(0.01, {"x": 1.001}),
    )


def against_readings(hand: Hand) -> dict[str, Any]:
    """Return a prediction and readings of what it predicts."""
    return {"prediction": good_prediction(hand), "place": [0, 1, 3], "error_mm": hand.numbers("u_", 3), "u_mm": 0.01}


def two_of_three(hand: Hand) -> dict[str, Any]:
    """Return a shop of three machines and three lots, and two numbers of them."""
    return {
        "self": split_shop(shop_seen(hand), shop_priors(hand)),
        "first": hand.between(0, 2),
        "second": hand.between(0, 2),
        "machine": hand.between(0, 2),
        "lot": hand.between(0, 2),
    }


def ordinal_row(hand: Hand) -> dict[str, Any]:
    """Return a fit of scores, draws around it, and rows of its design."""
    fit = shapes.ordinal_fit(hand)
    drawn = draw_around(fit, np.random.default_rng(hand.between(0, 9)), 50)
    row = np.eye(fit.effects.size)
    return {"fit": fit, "self": drawn, "row": row[0], "first": row[0], "second": row[-1]}


def ordinal_mean(hand: Hand) -> dict[str, Any]:
    """Return a fit of scores, and a row of its design."""
    given = ordinal_row(hand)
    return {**given, "self": given["fit"]}


def spread_of_many(hand: Hand) -> Spread:
    """Return the spread of so many pieces that a promise can be made."""
    piece = [number for number in range(12) for _ in range(3)]
    rng = np.random.default_rng(hand.between(0, 99))
    error = hand.number("", -0.1, 0.1) + min(abs(hand.number("", 0.01, 0.1)), 1e300) * rng.normal(size=len(piece))
    return fit_spread(piece, [20.0, 50.0, 90.0] * 12, error)


def some_layers(hand: Hand) -> LayerTimes:
    """Return how a least layer time holds up a part at the levels of a trial."""
    level = [190.0, 195.0, 200.0, 205.0, 210.0, 215.0]
    shortest, waits = (dict.fromkeys(level, hand.number("", 1.0, 9.0)) for _ in range(2))
    return LayerTimes(LayerRule(10.0), 2.0, 50.0, 1, shortest, waits, dict.fromkeys(level, 1), (20.0, 60.0))


def motion_limits(hand: Hand) -> Limits:
    """Return limits that a machine may have."""
    axis = {name: hand.number("_mm_s", 5.0, 200.0) for name in hand.pick("", "xy", "xyze")}
    return Limits(
        hand.number("_mm_s2"),
        hand.number("", 0.001, 0.05),
        axis,
        {name: hand.number("_mm_s2") for name in axis},
        hand.pick(None, hand.number("mm3_s")),
        hand.pick(1.75, hand.number("", 1.7, 2.9)),
    )


def speed_trial(hand: Hand) -> SpeedTrial:
    """Return a speed trial that was judged."""
    given = shapes.scores_of_steps(hand)
    return judge_levels(given["step"], given["score"], given["judge"], given["time_s"], 3.0, np.random.default_rng(1))


def best_temperatures(hand: Hand) -> list[BestTemperature]:
    """Return temperatures that ladders found for two machines and two lots."""
    return [
        BestTemperature(
            hand.pick(1, 2), hand.pick(1, 2), hand.number("_c", 180.0, 250.0), hand.number("u_k", 1.0, 5.0), row
        )
        for row in range(hand.length)
    ]


def mate(hand: Hand) -> Mate:
    """Return a hole or a peg."""
    return Mate(hand.number("", -0.2, 0.2), hand.number("sd_"), hand.number("u_"), hand.pick(np.inf, 1.0, 12.0))


def changes(hand: Hand) -> Changes:
    """Return what is set otherwise."""
    return Changes(hand.number("", -0.2, 0.2), {axis: hand.number("_ratio") for axis in hand.pick("", "x", "xyz")})


def split_pair(hand: Hand) -> SplitPair:
    """Return a machine and a lot as a shop tells them apart: a covariance matrix is one."""
    u_machine, u_lot = (abs(hand.number("", 1e-4, 2e-3)) for _ in range(2))
    both = hand.pick(0.0, -0.5, -0.99) * u_machine * u_lot
    machine_ratio, lot_ratio = hand.number("", -0.005, 0.005), hand.number("", -0.02, 0.0)
    return SplitPair(hand.pick(*AXES), machine_ratio, u_machine, lot_ratio, u_lot, both, hand.count(), 2, 2, 1)


def interval(hand: Hand) -> RatioInterval:
    """Return a ratio of lengths."""
    return ratio_from_lengths(hand.number("", 50.0, 150.0), hand.number("", 50.0, 150.0), hand.number("u_"))


def correction(hand: Hand) -> CorrectionCurve:
    """Return a correction curve of a few lengths."""
    count = hand.between(1, 4)
    columns = [np.array([hand.number("u_") for _ in range(count)]) for _ in range(3)]
    return CorrectionCurve(np.arange(count) * 10.0, *columns)


def solid_pieces(hand: Hand) -> PrintSet:
    """Return a set of pieces."""
    return plan_set(shapes.set_of_pieces(hand), bounds(hand))


def kept_trial(hand: Hand, begun: datetime) -> Trial:
    """Return a kept trial of lengths that tell scale from offset."""
    columns = good_columns(hand)
    columns |= {
        "feature": [f"{kind} {n:g}" for kind, n in zip(columns["kind"], columns["nominal_mm"], strict=True)],
        "excluded": [False] * 12,
    }
    return Trial(
        "sizeerror",
        1,
        1,
        readings=columns,
        conditions={"tolerance": "m", "part_temperature_c": 20.0},
        started_at=begun,
        kept_at=begun,
        id=3,
        state=TrialState.KEPT,
    )


def verified(hand: Hand) -> dict[str, Any]:
    """Return a locked prediction, later readings, and what came of it."""
    source, how = kept_trial(hand, NOON), Changes(-0.05, {"x": 1.004})
    first = locked_trial(source, predict_from(source, None, how), how)
    first = dataclasses.replace(first, id=2, kept_at=NOON + timedelta(hours=1))
    later = kept_trial(hand, NOON + timedelta(hours=2))
    return {
        "locked": first,
        "read": later,
        "verified": verify_locked(first, later, None),
        "instrument": None,
        "source": source,
        "trial": first,
        "prediction": predict_from(source, None, how),
        "changes": how,
    }


def stroke(hand: Hand) -> Stroke:
    """Return a bead in space."""
    corners = [[hand.number("", 0.0, 200.0), hand.number("", 0.0, 200.0)] for _ in range(hand.between(2, 5))]
    return bead_stroke(corners, hand.pick(0.2, 0.4), path_bead(hand), hand.number("", 10.0, 80.0), 0)


def path_bead(hand: Hand) -> PathBead:
    """Return a bead as a path needs it."""
    return PathBead(hand.number("", 0.4, 0.5), hand.number("", 0.1, 0.3), 0.4, hand.number("", 0.02, 0.05))


def laying(hand: Hand) -> Laying:
    """Return how a path is laid."""
    return Laying(
        hand.number("_mm_s"), hand.number("", 1.0, 20.0), hand.number("", 0.0, 1.0), 30.0, hand.pick(0.0, 0.4)
    )


def moves(hand: Hand) -> Moves:
    """Return the moves of a few strokes."""
    return lay([stroke(hand) for _ in range(hand.between(1, 3))], laying(hand), 10.0)


def gcode_path(hand: Hand) -> Path:
    """Return a path read from a text."""
    lines = ["G90", "M83", "G1 F3000"]
    for _ in range(hand.many()):
        e = hand.pick("", " E0.5", " E-1")
        lines.append(hand.pick("G1", "G0") + f" X{hand.number('', 0.0, 200.0)} Y{hand.number('', 0.0, 200.0)}{e}")
    return read_path("\n".join(lines).encode())


def shop_seen(hand: Hand) -> Seen:
    """Return prints of a shop."""
    count = hand.many()
    index = [np.array([hand.pick(0, 1, 2) for _ in range(count)], dtype=int) for _ in range(2)]
    scale = np.array([hand.number("", -0.01, 0.01) for _ in range(count)])
    return Seen(index[0], index[1], scale, np.array([hand.number("u_ratio", 1e-4, 1e-3) for _ in range(count)]))


def shop_priors(hand: Hand) -> Priors:
    """Return what is known of three machines and three lots beforehand."""
    few = [np.array([hand.number("", 0.0005, 0.01) for _ in range(3)]) for _ in range(3)]
    return Priors(*few, common_u_ratio=hand.number("", 0.0005, 0.01))


def made_by(functions: Sequence[Callable[..., Any]]) -> Recipe:
    """Return the recipe for what these calls answer."""

    def recipe(hand: Hand) -> Any:
        answer = call(hand, hand.pick(*functions))
        return hand.reject() if answer is None else answer

    return recipe


def enter_makers() -> None:
    """Enter for each dataclass that calls answer the calls that make it."""
    makers: dict[Any, list[Callable[..., Any]]] = {}
    for one in listed():
        kinds = [kind for kind in (one.answer, *typing.get_args(one.answer)) if dataclasses.is_dataclass(kind)]
        many = typing.get_origin(one.answer) not in (None, Union, types.UnionType)
        if len(kinds) != 1 or many or kinds[0] in RECIPES or reason_of(one.name):
            continue
        if kinds[0].__name__ not in str(one.hints):
            makers.setdefault(kinds[0], []).append(one.function)
    RECIPES.update({kind: made_by(entered) for kind, entered in makers.items()})


RECIPES |= workshop.RECIPES | {
    KnownFlow: lambda hand: KnownFlow(flows(hand)[0], hand.of(PrintConditions), hand.count()),  # asked for by its name
    Estimate: estimate,
    Drive: drive,
    Bead: laid_bead,
    PrintConditions: print_conditions,
    Bounds: bounds,
    Trial: size_trial,
    Machine: machine,
    SettingInForce: setting,
    Event: event,
    SeriesPoint: point,
    Stroke: stroke,
    PathBead: path_bead,
    Laying: laying,
    Moves: moves,
    Path: gcode_path,
    Seen: shop_seen,
    Priors: shop_priors,
    InUse: in_use,
    Mate: mate,
    Changes: changes,
    SplitPair: split_pair,
    RatioInterval: interval,
    CorrectionCurve: correction,
    PrintSet: solid_pieces,
    Verified: lambda hand: verified(hand)["verified"],
    Limits: motion_limits,
    Spread: spread_of_many,
    LayerTimes: some_layers,
    Printed: lambda hand: Printed(hand.number("_mm", 0.05, 0.4), hand.number("_mm", -2.0, 2.0), 0.4),
    HotFeed: lambda hand: HotFeed(0.4, hand.number("", 190.0, 250.0), 280.0),
    LadderReadings: lambda hand: shapes.ladder_readings(hand, criteria=False),
    Piece: lambda hand: hand.pick(*solid_pieces(hand).pieces),
    Solid: lambda hand: hand.pick(*solids_of(solid_pieces(hand))),
    PathRequest: path_request,
    LayerRule: lambda hand: LayerRule(hand.number("_s"), hand.pick(None, 40.0)),
    tuple[Run, ...]: lambda hand: find_runs(hand.numbers("_mm"), 50.0, 20.0),
    Run: lambda hand: Run(hand.pick(*Rule), 0, 1, 1, 1),
    CheckReadings: shapes.readings_of_check,
    LinearFit: lambda hand: shapes.shaped_fit(hand)[0],
    Ordinal: shapes.ordinal_fit,
    LadderKind: lambda hand: hand.pick(*ladders().values()),
    Quantity: lambda hand: hand.pick(*main_quantities()),
    Terms: lambda hand: shapes.lengths(hand)["terms"],
    FeatureMeans: lambda hand: shapes.lengths(hand)["means"],
    str(Callable[[str], Sequence[SeriesPoint]]): shapes.series,
    Settable: lambda hand: hand.pick(*decisions.SETTABLE),
    ScatteredFit: lambda hand: shapes.run_checks(hand)["scattered"],
    NewestKept: newest,
    Plan: lambda _: shop_plan(),
    Decay: soaked,
}
enter_makers()

ARGUMENTS |= {
    f"core.{name}": recipe
    for name, recipe in {
        "part_size.sizeerror.fit_size_error": shapes.fit_size_error,
        "part_size.checks.run_checks": shapes.run_checks,
        "part_size.features.parameter_names": shapes.lengths,
        "part_size.features.travel_centres": shapes.lengths,
        "part_size.features.design_terms": shapes.lengths,
        "part_size.features.Terms.combination": shapes.terms_of,
        "part_size.features.Terms.coefficients": shapes.terms_of,
        "part_size.lengths.fixed_effects": shapes.lengths,
        "part_size.missing.telling_readings": shapes.telling,
        "part_size.scatter.feature_means": shapes.lengths,
        "part_size.scatter.fit_with_scatter": shapes.with_scatter,
        "part_size.sizeerror.reported": shapes.reported,
        "part_size.shop_links.axis_contrasts": shapes.shop_cells,
        "measuring.brokenstick.stick_band": shapes.stick,
        "measuring.linefit.LinearFit.determines": shapes.determines,
        "measuring.ordinal.fit_proportional_odds": shapes.scored,
        "measuring.ordinal.difference_p": shapes.scored,
        "measuring.ordinal.draw_around": lambda hand: {"draws": 20},
        "measuring.scores.draw_scores": shapes.scored,
        "measuring.criteria.fit_criteria": shapes.criteria,
        "measuring.ladder.fit_scores": shapes.scores_of_steps,
        "measuring.lines.add_up": shapes.lines,
        "measuring.lines.fit_lines": shapes.lines,
        "motion_trials.speed.judge_levels": shapes.scores_of_steps,
        "filament.ways.ways_words": lambda hand: {
            "ways": [plan_by_gauge(gauge_of(kind), 1.75) for kind in GaugeKind]
            + [plan_by_mass(DENSITY, 1.75, 0.01, 0.5)],
            "nominal_mm": hand.pick(1.75, 2.85),
        },
        "flow_trials.combine.combine_flow": lambda hand: {"estimates": flows(hand)},
        "machine_geometry.drive.exact_mm": lambda hand: {"number": hand.number("_mm")},
        "machine_geometry.quickcycle.refuse_moving_base": lambda hand: {
            "difference_mm": shapes.column(hand, "u_", max(hand.length, 1))
        },
        "machine_geometry.reversal.refuse_stray": lambda hand: {
            "readings_mm": shapes.column(hand, "_mm", 4),
            "rows": [0, 2, 3],
        },
        "machine_geometry.reversal.Reversal.estimate": lambda hand: {
            "stem": hand.pick("reversal", "accuracy", "systematic_up")
        },
        "measuring.straightline.fit_line": shapes.line,
        "measuring.lines.line_covariance": lambda hand: {
            name: hand.number("u_") for name in ("lever", "u_y0", "u_slope")
        },
        "pieces.toolpathlines.ladder_strokes": lambda hand: {"factor_ratio": hand.numbers("_ratio", 5)},
        "pieces.toolpathlines.lag_strokes": lambda hand: {"lag_s": hand.numbers("_s", 5)},
        "pieces.toolpathlines.strand_strokes": lambda hand: {"rate_mm3_s": [2.0, 4.0], "filament_mm": 1.75},
        "pieces.toolpathmoves.plain_places": lambda hand: {"place_mm": shapes.column(hand, "_mm", 5)},
        "pieces.toolpathdigits.move_text": shapes.text_columns,
        "pieces.toolpathdigits.scaled_whole": lambda hand: {
            "value": np.abs(hand.numbers("_mm", 4)),
            "decimals": hand.between(0, 5),
        },
        "pieces.toolpathdigits.word_text": lambda hand: {"letter": "X", "decimals": hand.between(0, 5)},
        "pieces.toolpath.lay": lambda hand: {"strokes": [stroke(hand) for _ in range(hand.between(1, 3))]},
        "pieces.comb.plan_comb": shapes.on_bed,
        "pieces.comb.plan_half_combs": shapes.on_bed,
        "pieces.comb.comb_minds": lambda hand: {**shapes.on_bed(hand), "piece": plan_comb("x", bounds(hand))},
        "pieces.catalogue.plan_set": lambda hand: {"key": shapes.set_of_pieces(hand)},
        "pieces.view.View.at_px": lambda hand: {
            "self": view_of(solids_of(solid_pieces(hand))[:1], 80, 60, 5),
            "points_mm": np.array([[1.0, 2.0, 3.0]]),
        },
        "pieces.toolpathsolids.layer_heights_mm": lambda hand: {"bead": path_bead(hand)},
        "motion_trials.lookahead.junction_speeds_mm_s": shapes.junctions,
        "motion_trials.profile.move_durations_s": shapes.junctions,
        "motion_trials.profile.corner_speeds_mm_s": shapes.junctions,
        "motion_trials.gcodetime.straights_path": lambda hand: {"count": hand.between(1, 9)},
        "motion_trials.spectrum.welch": lambda hand: {
            "acceleration_mm_s2": hand.numbers("", hand.pick(256, hand.between(0, 20))),
            "sampling_hz": hand.number("", 200.0, 800.0),
            "piece": hand.pick(None, 16, hand.count()),
        },
        "motion_trials.halfspeed.judge_half_speed": shapes.half_speed,
        "guidance.halfspeedadvice.judge_diagnosis": shapes.half_speed,
        "pieces.toolpathdraw.draw_box": lambda hand: shapes.of_trial(hand, TrialKind.WALL_BOX),
        "pieces.toolpathdraw.draw_ringing": lambda hand: shapes.of_trial(hand, TrialKind.RINGING),
        "pieces.toolpathdraw.draw_pads": lambda hand: shapes.of_trial(hand, TrialKind.TOP_PADS),
        "pieces.toolpathdraw.draw_ladder": lambda hand: shapes.of_trial(hand, TrialKind.FLOW_LADDER),
        "pieces.toolpathdraw.draw_lag": lambda hand: shapes.of_trial(hand, TrialKind.LAG_LINES),
        "pieces.toolpathdraw.draw_strands": lambda hand: shapes.of_trial(hand, TrialKind.STRANDS),
        "pieces.toolpathdraw.draw_feed": lambda hand: shapes.of_trial(hand, TrialKind.FEED),
        "pieces.toolpathdraw.draw_pen": lambda hand: shapes.of_trial(hand, TrialKind.PEN_LINES),
        "pieces.toolpathtrials.draw_trial": lambda hand: shapes.of_trial(hand, hand.pick(*TrialKind)),
        "guidance.directtrials.plan_path": lambda hand: {"request": path_request(hand)},
        "machine_geometry.reversal.reversal_from_cycle": shapes.cycle,
        "machine_geometry.quickcycle.reversal_from_pairs": shapes.cycle,
        "machine_geometry.stiffness.stiffness_from_pushes": shapes.pushes,
        "machine_geometry.squareness.squareness_from_diagonals": shapes.diagonals,
        "machine_geometry.diagonals.read_diagonals": shapes.diagonals,
        "pieces.toolpath.bead_stroke": lambda hand: {
            "points_mm": [[hand.number("_mm"), hand.number("_mm")] for _ in range(hand.between(2, 4))],
            "speed_mm_s": hand.number("_mm_s"),
        },
        "pieces.toolpathsolids.box_strokes": lambda hand: {"speed_mm_s": hand.numbers("_mm_s", hand.between(1, 3))},
        "pieces.toolpathsolids.pad_strokes": lambda hand: {"speed_mm_s": hand.numbers("_mm_s", hand.between(1, 3))},
        "measuring.rownames.row_name": lambda _: {"translated": str},
        "part_size.planner.choose_times": lambda _: {"wanted": ()},
        "pieces.holes.sides_of": lambda hand: {"diameter_mm": hand.number("", 0.5, 300.0)},
        "motion_trials.arcs.arcs_of": shapes.arcs,
        "motion_trials.gcodetime.PathTime.above_ratio": path_and_time,
        "motion_trials.spectrum.spectrum_of": shapes.log,
        "motion_trials.layertime.Layers.times_s": lambda hand: {
            "self": Layers(np.array([0, 2]), np.array([10.0, 12.0])),
            "move_s": shapes.column(hand, "_s", 5),
        },
        "motion_trials.layertime.LayerTimes.waits": lambda hand: {
            "self": some_layers(hand),
            "level": hand.pick(190.0, hand.number("speed")),
        },
        "guidance.criteriaadvice.judge_criteria": lambda hand: {
            "readings": shapes.ladder_readings(hand, criteria=True)
        },
        "guidance.ladderadvice.judge_ladder": lambda hand: {"readings": shapes.ladder_readings(hand, criteria=False)},
        "guidance.criteriaadvice.bounds_words": shapes.of_criteria,
        "guidance.criteriaadvice.joined": lambda _: {"words": [tr("one"), tr("two")]},
        "guidance.walkreasons.missing_words": lambda hand: {"names": list(shapes.NAMES[: hand.between(1, 3)])},
        "part_size.missing.reading_list": lambda hand: {
            "readings": [hand.of(Candidate) for _ in range(hand.between(1, 3))]
        },
        "guidance.verdict.basis": lambda hand: {
            "kinds": tuple(hand.pick(*FeatureKind) for _ in range(hand.between(1, 3)))
        },
        "guidance.known.longest_mm": on_axis_of_fit,
        "guidance.known.constant_finding": on_axis_of_fit,
        "guidance.splitadvice.split_advice": with_split,
        "guidance.splitadvice.lot_advice": lambda hand: {"pairs": [split_pair(hand)]},
        "guidance.motionadvice.judge_speed": lambda hand: {"readings": level_readings(hand)},
        "guidance.motionadvice.check_levels": lambda hand: {"readings": level_readings(hand)},
        "guidance.motionadvice.held_up": lambda hand: {"readings": level_readings(hand)},
        "guidance.pieceplan.pillar_sides_mm": lambda hand: {"planned": plan_set("pillars", bounds(hand))},
        "guidance.walkstop.stop_of": lambda hand: {"enough": Enough(0.0, hand.number("u_"), hand.pick(None, 0.1))},
        "guidance.promisereport.promise_report": lambda hand: {"of": of(hand), "verification": None},
        "guidance.promisereport.machine_label": lambda hand: {"of": of(hand)},
        "guidance.reports.machine_card": lambda hand: {"of": of(hand)},
        "part_size.prediction.verify": against_readings,
        "part_size.prediction.Prediction.place": lambda hand: {"self": good_prediction(hand)},
        "part_size.prediction.Verification.mean_mm": lambda hand: {
            "self": verify(**against_readings(hand)),
            "mine": np.array([True, False, True]),
        },
        "part_size.promise.cpk_lower": lambda hand: {
            "cpk_ratio": hand.number("_ratio"),
            "n_ratio": hand.number("", 1.5, 40.0),
        },
        "part_size.spread.fit_spread": shapes.pieces,
        "part_size.shop_links.islands": lambda _: {"machine_count": 3, "lot_count": 3},
        "part_size.shop_links.joining_prints": lambda hand: {"apart": islands(shop_seen(hand), 3, 3)},
        "part_size.shop_split.ShopSplit.machine_difference": two_of_three,
        "part_size.shop_split.ShopSplit.lot_difference": two_of_three,
        "part_size.shop_split.ShopSplit.cross_covariance": two_of_three,
        "part_size.sizeerror.SizeError.covariance": on_axis_of_fit,
        "measuring.ordinal.Ordinal.mean_score": ordinal_mean,
        "measuring.ordinal.Draws.place": ordinal_row,
        "measuring.ordinal.Draws.above": ordinal_row,
        "motion_trials.parttime.part_times": lambda hand: {
            "level": [hand.number("", 50.0, 100.0) for _ in range(hand.between(1, 2))],
            "of": "speed",
        },
        "motion_trials.spectrum.Spectrum.furthest": lambda hand: {"self": spectrum_of(**shapes.log(hand))},
        "pieces.view.view_of": lambda hand: {
            "solids": solids_of(solid_pieces(hand))[:2],
            "width_px": hand.pick(80, 60, -1, 0, 5, 2_000_000),
            "height_px": hand.pick(60, 80, 0, 10, 2_000_000),
            "margin_px": hand.pick(5, 0, -3, 40),
        },
        "pieces.view.png_of": lambda hand: {"view": view_of(solids_of(solid_pieces(hand))[:1], 80, 60, 5)},
        "guidance.predicted.verification_columns": verified,
        "guidance.predicted.verification_trial": verified,
        "guidance.predicted.verify_locked": verified,
        "guidance.predicted.locked_trial": verified,
        "guidance.predicted.unlocked": verified,
        "guidance.motionadvice.layer_words": lambda hand: {
            "layers": some_layers(hand),
            "level": [190.0, hand.pick(200.0, hand.number("speed"))],
        },
        "guidance.motionadvice.level_rows": lambda hand: {
            "levels": speed_trial(hand).levels,
            "layers": some_layers(hand),
        },
        "measuring.checkreadings.CheckReadings.of": lambda hand: {"self": shapes.readings_of_check(hand, even=True)},
        "measuring.ladder.fit_values": shapes.values_of_steps,
        "flow_trials.combine.conflict_words": lambda hand: {
            "flow": combine_flow(flows(hand), 1.0),
            "in_force_ratio": 1.0,
            "bead": laid_bead(hand),
        },
        "part_size.promise.Promise.factor_at": lambda hand: {"length_mm": hand.numbers("_mm", 3)},
        "part_size.promise.Promise.tolerance_at": lambda hand: {"length_mm": hand.numbers("_mm", 3)},
        "part_size.prediction.Changes.effect_mm": lambda hand: {"self": changes(hand)},
        "motion_trials.sensoroffset.predict_temperature": lambda hand: {"ladders": best_temperatures(hand)},
        "guidance.ladderadvice.check_ladder": lambda hand: {"readings": shapes.ladder_readings(hand, criteria=False)},
        "guidance.wear.judge_wear": worn,
        "measuring.ladder.Ladder.at": lambda hand: {"step": hand.numbers("_c")},
        "motion_trials.ringing.left_after_ramp_mm": lambda hand: {
            "frequency_hz": hand.number("_hz"),
            "speed_mm_s": hand.number("_mm_s"),
            "acceleration_mm_s2": shapes.column(hand, "_mm_s2", 2),
        },
        "measuring.gum.effective_dofs": lambda hand: {
            "u": np.abs(shapes.column(hand, "u_", 6)).reshape(2, 3),
            "nu": np.array([1.0, np.inf, 9.5]),
        },
    }.items()
}

ARGUMENTS |= workshop.ARGUMENTS
