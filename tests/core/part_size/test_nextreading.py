"""The reading that is proposed is the one that helps most when it is really taken."""

import math
from dataclasses import replace

import numpy as np
import pytest

from core.part_size.features import FeatureKind
from core.part_size.lengths import PartTemperature
from core.part_size.nextreading import next_reading
from core.part_size.planner import Place
from core.part_size.sizeerror import fit_size_error
from core.pieces.catalogue import plan_set
from core.pieces.comb import plan_comb
from core.records.rows import Instrument

GAUGES = plan_comb("x").gauges
PLACES = [Place(FeatureKind(g.kind), "x", g.nominal_mm, g.faces) for g in GAUGES]
NAMES = [g.name.removesuffix(" x") for g in GAUGES]
CALIPER = Instrument("Caliper 2", u_outside_zero_mm=0.01, u_inside_zero_mm=0.01, sd_hand_mm=0.01, sd_hand_dof=19)


def fit_of(rows, seed=3, instrument=None, repeats=1, sd=0.015):
    rng = np.random.default_rng(seed)
    rows = [row for row in rows for _ in range(repeats)]
    L = np.array([PLACES[i].nominal_mm for i in rows])
    return fit_size_error(
        L, L + sd * rng.standard_normal(L.size), [PLACES[i].kind for i in rows], feature=[NAMES[i] for i in rows],
        instrument=instrument,
    )  # fmt: skip


def times(rows, count=1):
    return [count if i in rows else 0 for i in range(len(PLACES))]


def exact_u(fit, rows, name):
    """The standard uncertainty with these rows read, the scatter as it was seen: arithmetic of the information."""
    design = np.array([
        [PLACES[i].nominal_mm, 2 * {"notch": -1, "closed_hole": -1}.get(str(PLACES[i].kind), 1),
         -float(PLACES[i].kind in ("outside", "closed_hole"))] for i in rows
    ])  # fmt: skip
    cov = fit.scattered.variance_mm2 * np.linalg.inv(design.T @ design)
    return math.sqrt(cov[fit.terms.names.index(name), fit.terms.names.index(name)])


def test_it_is_the_best_of_those_left_and_its_uncertainties_are_right():
    read = [1, 2, 3, 4, 5, 6, 8]
    fit = fit_of(read)
    found = next_reading(fit, PLACES, times(read))
    others = {i: exact_u(fit, [*read, i], found.name) for i in range(10) if i not in read}
    assert found.place == min(others, key=others.get) and not found.again
    assert found.u_then == pytest.approx(others[found.place]) and found.u_now == pytest.approx(
        exact_u(fit, read, found.name)
    )
    assert found.name == "lost_motion_x" and NAMES[found.place] == "window right"


def test_the_wanted_parameter_can_be_named():
    read = [1, 2, 3, 4, 6, 8]
    found = next_reading(fit_of(read), PLACES, times(read), wanted="scale_x")
    assert found.name == "scale_x" and NAMES[found.place] in ("outer 1-7", "inner 1-7") and found.unit == "1"


def test_what_is_not_told_comes_first():
    """Teeth and overall length alone leave w and B: first a window or a notch, never another tooth."""
    read = [0, 1, 2]
    fit = fit_of(read)
    found = next_reading(fit, PLACES, times(read))
    assert math.isnan(found.u_now) and str(PLACES[found.place].kind) in ("outside", "closed_hole")
    outside = fit_size_error([20, 60, 100, 140, 80], [20.1, 60.1, 100.1, 140.12, 80.09], ["outside"] * 5)
    found = next_reading(outside, PLACES, times([]))
    assert found.name in ("wall_outset", "lost_motion_x") and PLACES[found.place].kind != "outside"


def test_two_that_only_together_tell_are_asked_for_one_by_one():
    fit = fit_size_error([100.0], [100.1], ["outside"])
    found = next_reading(fit, PLACES, times([]))
    assert found is not None and math.isnan(found.u_then)


def test_scatter_that_cannot_be_seen_asks_for_more_features():
    read = [0, 4, 5, 8]
    found = next_reading(fit_of(read), PLACES, times(read))
    assert math.isnan(found.u_now) and math.isnan(found.u_then)


def test_when_all_is_read_a_repeat_helps_only_as_far_as_the_hand_scatters():
    everything = list(range(10))
    assert next_reading(fit_of(everything), PLACES, times(everything)) is None  # nobody knows the hand's share
    fit = fit_of(everything, repeats=2)
    found = next_reading(fit, PLACES, times(everything, 2))
    assert found.again and NAMES[found.place] in ("overall", "window left", "window right")
    assert found.u_then < found.u_now
    known = fit_of(everything, sd=0.008, instrument=replace(CALIPER, u_outside_zero_mm=0.001, u_inside_zero_mm=0.001))
    assert next_reading(known, PLACES, times(everything), instrument=CALIPER).again
    few = fit_of([0, 3, 4, 5], sd=0.005, instrument=replace(CALIPER, u_outside_zero_mm=0.0, u_inside_zero_mm=0.0))
    assert next_reading(few, PLACES[:6], [1, 0, 0, 1, 1, 1], instrument=CALIPER).again is False
    offered = [PLACES[i] for i in (0, 3, 4, 5)]
    assert next_reading(few, offered, [1] * 4, instrument=CALIPER).again


def test_an_instrument_whose_zero_rules_makes_a_repeat_idle():
    poor = Instrument("Caliper 3", u_outside_zero_mm=0.3, u_inside_zero_mm=0.3)
    fit = fit_of(list(range(10)), instrument=poor, repeats=2)
    assert next_reading(fit, PLACES, times(range(10), 2), instrument=poor) is None
    nine = fit_of(list(range(9)), instrument=poor)
    assert next_reading(nine, PLACES, times(range(9)), instrument=poor, wanted="wall_outset") is None


def test_the_instrument_counts_in_what_is_promised():
    read = [1, 2, 3, 4, 5, 6, 8]
    fit = fit_of(read, instrument=CALIPER)
    found = next_reading(fit, PLACES, times(read), instrument=CALIPER)
    taken = fit_of([*read, found.place], instrument=CALIPER)
    scattered = replace(taken.scattered, variance_mm2=fit.scattered.variance_mm2)  # the scatter is not known before
    assert found.u_then == pytest.approx(replace(taken, scattered=scattered).estimate(found.name).u)


def test_the_temperature_of_the_part_counts_too():
    L = np.array([PLACES[i].nominal_mm for i in (1, 2, 3, 4, 5, 6, 8)])
    kinds = [PLACES[i].kind for i in (1, 2, 3, 4, 5, 6, 8)]
    warm = PartTemperature(30.0)
    fit = fit_size_error(L, L * warm.factor + 0.01 * (-1.0) ** np.arange(7), kinds, part_temperature=warm)
    found = next_reading(fit, PLACES, times([1, 2, 3, 4, 5, 6, 8]), wanted="scale_x", instrument=CALIPER)
    assert found.u_then > warm.u_ratio


def test_lengths_of_another_axis_or_kind_wait():
    """What the fit does not know yet is not offered; all of the known axis is read."""
    holes = [Place(FeatureKind(g.kind), g.axis, g.nominal_mm) for g in plan_set("holes").gauges]
    fit = fit_of(list(range(10)))
    assert next_reading(fit, [*PLACES, *holes], [*times(range(10)), *([0] * len(holes))]) is None


def test_a_curve_refused_still_answers():
    read = [0, 1, 2, 3]
    assert next_reading(fit_of(read), PLACES, times(read), wanted="nothing of that name").name in (
        "lost_motion_x", "wall_outset", "scale_x",
    )  # fmt: skip
