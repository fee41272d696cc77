"""What advice rests on: split shops, trials that were kept, predictions."""

from __future__ import annotations

import dataclasses
from datetime import datetime, timedelta
from typing import Any

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
from core.part_size.features import AXES, FeatureKind
from core.part_size.prediction import Changes
from core.pieces.catalogue import plan_set
from core.pieces.toolpathtrials import TrialKind
from core.records.rows import Trial, TrialState
from core.words import tr
from tests.properties import shapes
from tests.properties.kinds import Hand, Recipe
from tests.properties.recipes.motion_trials import some_layers, speed_trial
from tests.properties.recipes.part_size import good_columns, on_axis_of_fit
from tests.properties.recipes.pieces import bounds
from tests.properties.recipes.records import NOON, estimate, machine, point


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


def of(hand: Hand) -> Of:
    """Return whose a report is."""
    return Of(machine(hand), None, None, None, NOON, "1")


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


def split_pair(hand: Hand) -> SplitPair:
    """Return a machine and a lot as a shop tells them apart: a covariance matrix is one."""
    u_machine, u_lot = (abs(hand.number("", 1e-4, 2e-3)) for _ in range(2))
    both = hand.pick(0.0, -0.5, -0.99) * u_machine * u_lot
    machine_ratio, lot_ratio = hand.number("", -0.005, 0.005), hand.number("", -0.02, 0.0)
    return SplitPair(hand.pick(*AXES), machine_ratio, u_machine, lot_ratio, u_lot, both, hand.count(), 2, 2, 1)


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


RECIPES: dict[Any, Recipe] = {
    SplitPair: split_pair,
    Verified: lambda hand: verified(hand)["verified"],
    PathRequest: path_request,
    Quantity: lambda hand: hand.pick(*main_quantities()),
    Settable: lambda hand: hand.pick(*decisions.SETTABLE),
    Plan: lambda _: shop_plan(),
}


ARGUMENTS: dict[str, Recipe] = {
    "guidance.halfspeedadvice.judge_diagnosis": shapes.half_speed,
    "guidance.directtrials.plan_path": lambda hand: {"request": path_request(hand)},
    "guidance.criteriaadvice.judge_criteria": lambda hand: {"readings": shapes.ladder_readings(hand, criteria=True)},
    "guidance.ladderadvice.judge_ladder": lambda hand: {"readings": shapes.ladder_readings(hand, criteria=False)},
    "guidance.criteriaadvice.bounds_words": shapes.of_criteria,
    "guidance.criteriaadvice.joined": lambda _: {"words": [tr("one"), tr("two")]},
    "guidance.walkreasons.missing_words": lambda hand: {"names": list(shapes.NAMES[: hand.between(1, 3)])},
    "guidance.verdict.basis": lambda hand: {"kinds": tuple(hand.pick(*FeatureKind) for _ in range(hand.between(1, 3)))},
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
    "guidance.ladderadvice.check_ladder": lambda hand: {"readings": shapes.ladder_readings(hand, criteria=False)},
    "guidance.wear.judge_wear": worn,
}
