"""Numbers and columns that no calculation can answer, one by one: the refusal names the field."""

from __future__ import annotations

import dataclasses
import math

import numpy as np
import pytest

from core.errors import InputError
from core.filament.diameter import area_ratio, measure_diameter
from core.filament.drying import stock_left
from core.filament.feed import fed_from_marks
from core.filament.massperlength import measure_mass_per_length
from core.filament.ways import plan_by_mass
from core.flow_trials.ceiling import KnownCeiling, ceiling_near
from core.flow_trials.combine import combine_flow
from core.flow_trials.mass import Commanded
from core.guidance.criteriaadvice import judge_criteria
from core.guidance.feedadvice import ByMarks, FeedReadings, judge_feed
from core.guidance.findings import finding
from core.guidance.firstlayeradvice import FlowBeside
from core.guidance.halfspeedadvice import judge_diagnosis
from core.guidance.known import KeptResult, known_of
from core.guidance.ladderadvice import check_ladder, judge_ladder
from core.guidance.motionadvice import LevelReadings, judge_speed
from core.guidance.partgroups import Group, feature_errors, guard_of
from core.guidance.predicted import content_hash, unlocked
from core.guidance.sentences import correcting_factor
from core.guidance.settinglines import TemplateLine
from core.guidance.splitpair import SplitPair, print_u_ratio
from core.guidance.squareactions import per_hundred
from core.machine_geometry.bedplane import fit_bed
from core.machine_geometry.diagonals import read_diagonals
from core.machine_geometry.foundsteps import found_steps_effect
from core.machine_geometry.lostmotion import fit_lost_motion
from core.machine_geometry.parts import Drive, DriveKind
from core.machine_geometry.quickcycle import reversal_from_pairs
from core.machine_geometry.resolution import question_height, speed_from_steps, winding_full_steps_per_s
from core.machine_geometry.reversal import reversal_from_cycle
from core.machine_geometry.squareness import faked_difference_mm
from core.machine_geometry.turning import least_radius_mm
from core.measuring.chart import ewma_half_width
from core.measuring.checkpoints import bore_under_read, zero_return_of
from core.measuring.checkreadings import CheckReadings, refuse_unusable
from core.measuring.decay import Decay
from core.measuring.gauge import GaugeKind, gauge_of
from core.measuring.gum import trapezoid_factor, welch_satterthwaite
from core.measuring.hand import part_spread
from core.measuring.instrumentkinds import Part
from core.measuring.ladder import fit_values
from core.measuring.linefit import fit_linear
from core.measuring.lines import add_up, fit_lines, line_covariance
from core.measuring.runrules import find_runs
from core.measuring.straightline import fit_line
from core.measuring.success import fit_success
from core.measuring.tolerance import decide
from core.measuring.tolerancefactor import two_sided_factor
from core.motion_trials.arcs import arcs_of
from core.motion_trials.crossedbelts import motor_accelerations_mm_s2, motor_speeds_mm_s
from core.motion_trials.gcodepath import read_path
from core.motion_trials.gcodetime import Limits, straights_path, time_path
from core.motion_trials.halfspeed import Run, judge_half_speed
from core.motion_trials.ladders import LadderReadings, Read, ladders
from core.motion_trials.layertime import LayerRule, Layers, LayerTimes, floor_mm_s
from core.motion_trials.lookahead import junction_speeds_mm_s
from core.motion_trials.parttime import part_times
from core.motion_trials.profile import corner_speeds_mm_s, double_s, move_durations_s, trapezoid
from core.motion_trials.repeats import parts_of
from core.motion_trials.ringing import (
    Ripple,
    acceleration_limit_mm_s2,
    left_after_ramp_mm,
    quiet_accelerations_mm_s2,
    read_ringing,
)
from core.motion_trials.sensoroffset import BestTemperature, predict_temperature
from core.motion_trials.spectrum import spectrum_of, welch
from core.part_size.features import FeatureKind
from core.part_size.lengths import LayerPlan
from core.part_size.nextreading import next_reading
from core.part_size.planner import Place, expected_uncertainties
from core.part_size.prediction import Changes, predict
from core.part_size.promise import cpk_lower, rounded_up_mm
from core.part_size.shop_split import Priors, Seen, split_shop
from core.part_size.sizeerror import fit_size_error
from core.pieces.holes import sides_of
from core.pieces.piece import ngon
from core.pieces.toolpath import Laying, PathBead, Toolpath, lay
from core.pieces.toolpathlines import lag_strokes, pen_strokes, spread, strand_strokes
from core.pieces.toolpathsolids import box_strokes, layer_heights_mm
from core.pieces.view import view_of
from core.quantity import Estimate, coverage_factor
from core.records.rows import Instrument, Trial
from core.words import tr

ONE = np.array([1.0])
GAUGE = gauge_of(next(iter(GaugeKind)))
PLACE = Place(FeatureKind.OUTSIDE, "x", 60.0)
FAR = Instrument("a", u_scale_ratio=1e300)
LINE = fit_line([1.0, 2.0, 3.0, 4.0, 5.0], [2.0, 4.1, 5.9, 8.0, 10.1])
FIT = fit_size_error([10.0, 60.0, 100.0] * 2, [10.1, 60.2, 100.3] * 2, ["outside"] * 6, axis=["x"] * 6)
SIZES = Trial("sizeerror", readings={"nominal_mm": [10.0], "measured_mm": [10.1], "kind": ["edge"], "axis": ["x"]})
READ = {"axis": ["x"], "kind": ["edge"], "nominal_mm": [20.0], "as_is_mm": [0.1], "predicted_mm": [0.1], "U_mm": [0.2]}
LOCKED = Trial("prediction", readings=READ, conditions={"hash": content_hash({"readings": READ, "conditions": {}})})
STEPS = [1.0, 2.0, 3.0, 4.0, 5.0]
RNG = np.random.default_rng(1)


def estimate(value: float, u: float = 0.01) -> Estimate:
    return Estimate("frequency_x", value, u, math.inf, "Hz")


def ladder(key: str, **columns) -> LadderReadings:
    whole = {"step": STEPS, "value": [4.0] * 5, "judge": ["A"] * 5} | columns
    return LadderReadings(ladders()[key], Read.SCORE, **whole)


SCORED = next(key for key, kind in ladders().items() if kind.read is Read.SCORE and not kind.criteria)
MANY = next(key for key, kind in ladders().items() if kind.criteria)
LEVELS = LevelReadings("speed", STEPS, [4.0] * 5, ["A"] * 5, dict.fromkeys(STEPS, 1.0), 3.0, piece=["p"] * 4)
LAYERS = LayerTimes(LayerRule(10.0), 2.0, 50.0, 1, {50.0: 8.0}, {50.0: 2.0}, {50.0: 1}, (20.0, 60.0))
BEAD = PathBead(0.45, 0.2, 0.4, 0.03)
BELT = Drive(DriveKind.BELT, pitch_mm=2.0, teeth=20)
RIPPLE = Ripple(60.0, 3, 4.5)
MOVES = lay(box_strokes(20.0, 1.0, 1, BEAD, (60.0, 60.0), [20.0]), Laying(100.0, 10.0), 0.0)
PATH = straights_path(10.0, 4)
TWICE = Seen(np.array([0, 0]), np.array([0, 0]), np.array([0.001, 0.002]), np.full(2, 2e-7))
BED = [10.0, 200.0, 10.0, 200.0], [10.0, 10.0, 200.0, 200.0], [0.1, 0.1, 0.2, 0.3]
DIAGONALS = [140.0, 140.0], ["1", "2"], ["drawn"] * 2
REFUSED = {
    "a uncertainty of zero": ("u_ratio", lambda: fit_values(STEPS, STEPS, u_ratio=[0.0] * 5)),
    "a column of uncertainties too short": ("u_ratio", lambda: fit_values(STEPS, STEPS, u_ratio=[0.1] * 4)),
    "a step beyond reach": ("step", lambda: fit_values([*STEPS[:4], 1e300], STEPS)),
    "a judge too few": ("judge", lambda: judge_ladder(ladder(SCORED, judge=["A"] * 4), RNG)),
    "a value too few": ("value", lambda: check_ladder(ladder(SCORED, value=[4.0] * 4))),
    "a criterion too few": ("criterion", lambda: check_ladder(ladder(MANY, criterion=["bond"] * 4))),
    "a piece too few": ("piece", lambda: judge_criteria(ladder(MANY, piece=["p"] * 4, criterion=["bond"] * 5), RNG)),
    "a piece too few in a speed trial": ("piece", lambda: judge_speed(LEVELS, RNG)),
    "a score too few": ("score", lambda: judge_half_speed([Run.USUAL] * 2, [4.0], ["A", "B"])),
    "no frequency": ("frequency_hz", lambda: left_after_ramp_mm(0.0, 100.0, ONE)),
    "no acceleration": ("acceleration_mm_s2", lambda: left_after_ramp_mm(40.0, 100.0, np.array([1000.0, 0.0]))),
    "next to no frequency": ("frequency_hz", lambda: left_after_ramp_mm(1e-200, 100.0, ONE)),
    "a frequency beyond reach": ("value", lambda: acceleration_limit_mm_s2(estimate(1e200), 0.015)),
    "another one": ("u", lambda: quiet_accelerations_mm_s2(estimate(40.0, 1e307), 100.0, 1e4)),
    "next to no uncertainty": ("u_k", lambda: predict_temperature([BestTemperature(1, 1, 210.0, 1e-200)], 1, 2)),
    "a move without length": ("length_mm", lambda: move_durations_s([0.0], [0.0], [0.0], [100.0], 1000.0)),
    "a move beyond numbers": ("length_mm", lambda: move_durations_s([1.0], [1e200], [0.0], [100.0], 1000.0)),
    "an acceleration below zero": ("cosine_ratio", lambda: corner_speeds_mm_s(np.zeros(1), -ONE, 0.02)),
    "a path beyond numbers": ("length_mm", lambda: junction_speeds_mm_s(1e300 * ONE, 1e300 * ONE, np.zeros(2))),
    "an arc beyond numbers": (
        "file",
        lambda: arcs_of(1e300 * ONE, ONE, ONE, (np.nan * ONE, np.nan * ONE, 1e300 * ONE), ONE > 0, np.array([4])),
    ),
    "limits beyond reach": (
        "acceleration_mm_s2",
        lambda: time_path(straights_path(10.0, 4), Limits(acceleration_mm_s2=1e200)),
    ),
    "limits next to nothing": (
        "acceleration_mm_s2",
        lambda: time_path(straights_path(10.0, 4), Limits(acceleration_mm_s2=1e-320)),
    ),
    "a level below zero": ("level", lambda: part_times(straights_path(10.0, 4), Limits(1e3), "speed", [-1.0, 50.0])),
    "no level": ("level", lambda: part_times(straights_path(10.0, 4), Limits(1e3), "speed", [])),
    "a level that was not timed": ("level", lambda: LAYERS.waits(60.0)),
    "filament beyond reach": ("filament_per_mm_ratio", lambda: straights_path(10.0, 4, 1e308)),
    "a log of few samples": ("log", lambda: welch(np.arange(100.0), 400.0)),
    "a piece longer than the log": ("log", lambda: welch(np.arange(300.0), 400.0, piece=301)),
    "a piece of one sample": ("log", lambda: welch(np.arange(300.0), 400.0, piece=1)),
    "no sampling": ("sampling_hz", lambda: welch(np.arange(300.0), 0.0)),
    "a log beyond numbers": ("log", lambda: welch(1e300 * np.cos(np.arange(300.0)), 400.0)),
    "a time long before": ("t", lambda: Decay(1.0, 0.5, 2.0, 0.0, 1.0, 0.1, 5, True).mean([-1e4])),
    "no degrees of freedom": ("dof", lambda: decide(1.0, 0.1, 2.0, dof=0.0)),
    "readings beyond numbers": (
        "y",
        lambda: add_up(np.array([0]), np.array([2]), np.array([0.0, 1.0]), np.array([0.0, 1e300]), np.full(2, 1e100)),
    ),
    "a lever beyond reach": ("lever", lambda: line_covariance(1e200, 0.1, 0.1)),
    "a land beyond reach": ("land", lambda: bore_under_read(1e200, 1e201)),
    "a scatter beyond reach": ("sigma", lambda: ewma_half_width(3, 1e308, 0.2, 3.0)),
    "no nominal diameter": ("nominal_mm", lambda: area_ratio(estimate(1.75), 0.0)),
    "no nominal diameter of a piece": (
        "nominal_mm",
        lambda: measure_mass_per_length([3.0], [1000.0], 0.0, u_balance_g=0.01, u_length_mm=0.5),
    ),
    "a length too few": (
        "length_mm",
        lambda: measure_mass_per_length([3.0], [], 1.75, u_balance_g=0.01, u_length_mm=0.5),
    ),
    "a second reading too few": ("second_mm", lambda: measure_diameter([1.75] * 3, [1.75] * 2, 1.75, GAUGE)),
    "filament without mass": (
        "mass_per_length",
        lambda: stock_left(500.0, 200.0, estimate(0.0), u_balance_g=0.1, u_spool_g=1.0),
    ),
    "no flow factor": ("in_force_ratio", lambda: Commanded(1000.0).target_mm3(1e-100)),
    "no acceleration of a line": (
        "acceleration_mm_s2",
        lambda: lag_strokes(80.0, [0.0], BEAD, (100.0, 100.0), (20.0, 80.0), 1e-100),
    ),
    "a speed beyond reach": (
        "speeds_mm_s",
        lambda: lag_strokes(80.0, [0.0], BEAD, (100.0, 100.0), (20.0, 1e300), 1000.0),
    ),
    "an uncertainty too few": ("u_x", lambda: LINE.at(STEPS, u_x=[0.1] * 4)),
    "another uncertainty too few": ("u_y", lambda: LINE.prediction(STEPS, u_y=[0.1] * 4)),
    "a third": ("u_y", lambda: LINE.x_from_y(STEPS, u_y=[0.1] * 6)),
    "an approach that is none": (
        "approach",
        lambda: reversal_from_pairs("aaaa", ["up", "down", "up", "left"], [1.0] * 4, axis="x", resolution_mm=0.01),
    ),
    "another approach": (
        "approach",
        lambda: reversal_from_cycle(STEPS, STEPS, ["up"] * 4 + ["\ud800"], axis="x", resolution_mm=0.01),
    ),
    "a part that is none": (
        "part",
        lambda: refuse_unusable(CheckReadings("caliper", ["", "zero"], [None] * 2, [None] * 2, [0.0] * 2, 0.01)),
    ),
    "a run that is none": ("run", lambda: judge_diagnosis(["usual", "half"], [1.0, 2.0], ["A", "B"])),
    "a kind that is none": ("kind", lambda: FIT.band("x", "edge", [20.0])),
    "a kind that is none before a prediction": ("kind", lambda: predict(FIT, ["x"], ["edge"], [20.0], Changes(0.0))),
    "a kind that is none on record": ("kind", lambda: feature_errors(SIZES)),
    "a kind that is none in a locked prediction": ("kind", lambda: unlocked(LOCKED)),
    "a lock on no number": ("hash", lambda: content_hash({"a": [math.inf]})),
    "an instrument beyond reach": (
        "u_scale_ratio",
        lambda: guard_of(Group.OUTSIDE, FAR),
    ),
    "a level of one": ("level", lambda: trapezoid_factor(1.0, 0.5, 1.0)),
    "one part": ("n_ratio", lambda: cpk_lower(1.33, 1.0)),
    "no filament": ("filament_mm", lambda: strand_strokes(50.0, [2.0], 0.0, (50.0, 50.0), 1.0)),
    "places beyond reach": ("apart_mm", lambda: spread(3, 1e308)),
    "a path that prints nothing": (
        "file",
        lambda: part_times(read_path(b"G1 X9 F600"), Limits(1e3), "speed", [50.0], rule=LayerRule(5.0, 40.0)),
    ),
    "no share": ("share", lambda: fit_success([1.0, 2.0], [False, True], share=1.0)),
    "readings below zero": ("times", lambda: expected_uncertainties([PLACE], [-1])),
    "other readings below zero": ("times", lambda: next_reading(FIT, [PLACE] * 2, [1, -1])),
    "a column with no number": ("mark_mm", lambda: fed_from_marks([120.0, math.nan], [20.0, 20.0])),
    "no number": ("ratio", lambda: speed_from_steps(20_000.0, math.nan)),
    "no degrees of freedom at all": ("dof", lambda: coverage_factor(0.0)),
    "no density": ("mass_per_length", lambda: plan_by_mass(estimate(0.0), 1.75, 0.01, 0.5)),
    "a ceiling beyond reach": ("value", lambda: ceiling_near([KnownCeiling(210.0, estimate(1e200), 1)], 210.0)),
    "a flow without uncertainty": ("estimates", lambda: combine_flow([estimate(1.0, 1e-320)], 1.0)),
    "a repeat too few": (
        "rate_mm3_s",
        lambda: judge_feed(FeedReadings([100.0] * 2, ByMarks([120.0] * 2, [20.0] * 2, 0.5), [None], 400.0)),
    ),
    "an effect beyond reach": ("u", lambda: finding(estimate(0.0, 1e308), 50.0, 50.0, 0.2)),
    "a machine beyond reach": ("machine_ratio", lambda: SplitPair("x", 1e4, 0.001, 0.0, 0.001, 0.0)),
    "a spread of nothing": ("sigma", lambda: find_runs(STEPS, 3.0, 1e-80)),
    "next to nothing behind a mean": ("n", lambda: two_sided_factor(1e-300, 5.0)),
    "found steps beyond reach": ("found_steps_mm", lambda: found_steps_effect(BELT, 1e154)),
    "a bearing beyond reach": ("bearing_mm", lambda: parts_of(None, 1e308)),
    "ends read to nothing": ("u_distance_mm", lambda: read_ringing("x", [RIPPLE], 5e-324, 5e-324)),
    "priors far apart": ("prior", lambda: split_shop(TWICE, Priors(100 * ONE, np.zeros(1), 100 * ONE))),
    "a part of no size": ("scale", lambda: SplitPair("x", 0.0, 0.001, 0.0, 0.001, 0.0).with_print(estimate(-1.0))),
    "a combination beyond reach": ("combination", lambda: fit_linear(np.eye(2), STEPS[:2]).determines([1e308, 0.0])),
    "places without Y": ("y_mm", lambda: fit_bed(*BED).height([1.0, 2.0], [1.0])),
    "moves beyond numbers": ("move_s", lambda: Layers(np.array([0]), ONE).times_s(np.full(2, 1e308))),
    "layers of no height": ("layers", lambda: LayerPlan(0.0, 0.2).printed_height_mm(ONE)),
    "a log of no numbers": ("log", lambda: spectrum_of(np.arange(300.0) / 400.0, np.resize([1e308, -1e308], 300))),
    "no pause": ("pause_s", lambda: strand_strokes(50.0, [2.0], 1.75, (60.0, 60.0), 0.0)),
    "no rate": ("rate_mm3_s", lambda: strand_strokes(50.0, [], 1.75, (60.0, 60.0), 1.0)),
    "a pen that moves too far": ("sides_mm", lambda: pen_strokes((1e300, 1e300), 5.0, 0.5, (60.0, 60.0), 20.0)),
    "no circle": ("diameter_mm", lambda: sides_of(0.0)),
    "an angle out of reach": ("u", lambda: per_hundred(estimate(0.001, 1e308))),
    "reversal out of reach": ("u", lambda: known_of(None, "f", reversal={"x": KeptResult(1, estimate(0.1, 1e307))})),
    "decimals below none": ("template", lambda: TemplateLine("steps_x", "M92 X{value}", "M92", "X", -1)),
    "next to nothing behind a spread": ("dof", lambda: two_sided_factor(5.0, 1e-300)),
    "a promise out of reach": ("tolerance_mm", lambda: rounded_up_mm(1e300)),
    "a ramp out of reach": ("speed_mm_s", lambda: trapezoid(10.0, 1e200, 500.0)),
    "a smooth ramp out of reach": ("jerk_mm_s3", lambda: double_s(10.0, 100.0, 500.0, 1e300)),
    "a layer that never ends": ("path_mm", lambda: floor_mm_s(1e308, 0.01)),
    "arcs without centre": ("j_mm", lambda: arcs_of(ONE, ONE, ONE, (ONE, np.zeros(2), ONE), ONE > 0, np.array([4]))),
    "arcs without rise": ("z_mm", lambda: arcs_of(ONE, ONE, np.zeros(2), (ONE, ONE, ONE), ONE > 0, np.array([4]))),
    "lines out of reach": ("origin", lambda: fit_lines([0, 0], [0.0, 1.0], [0.0, 1.0], 0.1).value(1e308)),
    "an offset out of reach": ("offset_mm", lambda: Changes(1e308).effect_mm(FeatureKind.OUTSIDE, "x", 20.0, 0.1)),
    "no steps": ("ratio", lambda: speed_from_steps(20_000.0, 0.0)),
    "next to no inductance": ("inductance_mh", lambda: winding_full_steps_per_s(24.0, 1.0, 5e-324)),
    "a side out of reach": ("side_a_mm", lambda: faked_difference_mm(1e300, 80.0, 0.1, 0.2)),
    "a level of next to nothing": ("level", lambda: coverage_factor(math.inf, 1e-30)),
    "a spread of parts out of reach": ("sd_observed", lambda: part_spread(1e200, 0.001)),
    "a zero that was not read": (
        "measured",
        lambda: zero_return_of(CheckReadings("caliper", [Part.ZERO] * 2, [None] * 2, [None] * 2, [], 0.01)),
    ),
    "a part without size": ("scale", lambda: correcting_factor(estimate(-1.0))),
    "next to no degrees of freedom": ("dof", lambda: coverage_factor(5e-324)),
    "degrees of freedom of nothing": ("dofs", lambda: welch_satterthwaite([0.1], [5e-324])),
    "a motor that cannot": ("axis_acceleration_mm_s2", lambda: motor_accelerations_mm_s2(PATH, {"x": 5e-324})),
    "a motor that stands": ("axis_speed_mm_s", lambda: motor_speeds_mm_s(PATH, {"y": 0.0})),
    "a polygon out of reach": ("x_mm", lambda: ngon(1e308, 0.0, 1.0, 4)),
    "a box of no bead": ("side_mm", lambda: box_strokes(20.0, 1.0, 0, BEAD, (60.0, 60.0), [20.0])),
    "a layer out of reach": ("height_mm", lambda: question_height(BELT, 1e308)),
    "a print out of reach": ("u_ratio", lambda: print_u_ratio(1e308, 5.0)),
    "a step not commanded": (
        "commanded_mm",
        lambda: fit_lost_motion([0.0, 0.1], [0.0, 0.1, 0.2], axis="x", resolution_mm=0.01),
    ),
    "filament as thick as nothing is": ("filament_mm", lambda: Toolpath(tr("Box"), (), MOVES, 1e200).commanded_mm3()),
    "a height out of reach": ("height_mm", lambda: LayerPlan(0.2, 0.2).printed_height_mm(1e308 * ONE)),
    "a turn out of reach": ("speed_mm_s", lambda: least_radius_mm(1e308, 0.01)),
    "a plane without axes": ("plane", lambda: read_diagonals("", 99.0, 99.0, *DIAGONALS, None)),
    "a third diagonal": (
        "diagonal",
        lambda: read_diagonals("xy", 99.0, 99.0, DIAGONALS[0], ["1", "3"], ["drawn"] * 2, None),
    ),
    "a side without name": ("part", lambda: read_diagonals("xy", 99.0, 99.0, *DIAGONALS[:2], ["drawn", ""], None)),
    "a factor that no trial finds": ("flow", lambda: FlowBeside(estimate(0.0), 1.0)),
    "a factor in percent": ("in_force_ratio", lambda: FlowBeside(estimate(1.0), 96.0)),
    "a picture without end": ("width_px", lambda: view_of([], 2_000_000, 2_000_000)),
    "a picture less than none": ("width_px", lambda: view_of([], 80, -1)),
    "a picture of nothing": ("solids", lambda: view_of([], 80, 60)),
    "a layer without height": (
        "height_mm",
        lambda: layer_heights_mm(10.0, dataclasses.replace(BEAD, height_mm=0.0)),
    ),
    "layers without number": (
        "height_mm",
        lambda: layer_heights_mm(10.0, dataclasses.replace(BEAD, height_mm=1e-60)),
    ),
}


@pytest.mark.parametrize("case", REFUSED)
def test_refused_in_words(case):
    field, call = REFUSED[case]
    with pytest.raises(InputError) as caught:
        call()
    assert caught.value.field == field and len(caught.value.message) > 20


def test_values_all_alike_and_next_to_nothing_have_no_best_step():
    for values in ([0.0] * 5, [1e-60] * 5):
        assert fit_values(STEPS, values).chosen is None


def test_whatever_a_record_holds_has_its_hash():
    hashes = {content_hash({"a": one}) for one in ("\ud800", "?", None, 10**400, [], {})}
    assert len(hashes) == 6
