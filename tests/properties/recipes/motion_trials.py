"""Scores, limits of motion, paths read and their times."""

from __future__ import annotations

from typing import Any

import numpy as np

from core.motion_trials.gcodepath import Path, read_path
from core.motion_trials.gcodetime import Limits, time_path
from core.motion_trials.ladders import LadderKind, LadderReadings, ladders
from core.motion_trials.layertime import LayerRule, Layers, LayerTimes
from core.motion_trials.sensoroffset import BestTemperature
from core.motion_trials.spectrum import spectrum_of
from core.motion_trials.speed import SpeedTrial, judge_levels
from tests.properties import shapes
from tests.properties.kinds import Hand, Recipe


def path_and_time(hand: Hand) -> dict[str, Any]:
    """Return the lengths of a path and the time it takes."""
    path = gcode_path(hand)
    return {"self": time_path(path, hand.of(Limits)), "length_mm": path.length_mm}


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


def gcode_path(hand: Hand) -> Path:
    """Return a path read from a text."""
    lines = ["G90", "M83", "G1 F3000"]
    for _ in range(hand.many()):
        e = hand.pick("", " E0.5", " E-1")
        lines.append(hand.pick("G1", "G0") + f" X{hand.number('', 0.0, 200.0)} Y{hand.number('', 0.0, 200.0)}{e}")
    return read_path("\n".join(lines).encode())


RECIPES: dict[Any, Recipe] = {
    Path: gcode_path,
    Limits: motion_limits,
    LayerTimes: some_layers,
    LadderReadings: lambda hand: shapes.ladder_readings(hand, criteria=False),
    LayerRule: lambda hand: LayerRule(hand.number("_s"), hand.pick(None, 40.0)),
    LadderKind: lambda hand: hand.pick(*ladders().values()),
}


ARGUMENTS: dict[str, Recipe] = {
    "motion_trials.speed.judge_levels": shapes.scores_of_steps,
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
    "motion_trials.parttime.part_times": lambda hand: {
        "level": [hand.number("", 50.0, 100.0) for _ in range(hand.between(1, 2))],
        "of": "speed",
    },
    "motion_trials.spectrum.Spectrum.furthest": lambda hand: {"self": spectrum_of(**shapes.log(hand))},
    "motion_trials.sensoroffset.predict_temperature": lambda hand: {"ladders": best_temperatures(hand)},
    "motion_trials.ringing.left_after_ramp_mm": lambda hand: {
        "frequency_hz": hand.number("_hz"),
        "speed_mm_s": hand.number("_mm_s"),
        "acceleration_mm_s2": shapes.column(hand, "_mm_s2", 2),
    },
}
