"""Plans before printing: the closed formulas, the table of readings needed, honest uncertainty where walls scatter."""

import itertools
import math

import numpy as np
import pytest

from core.errors import InputError
from core.part_size.features import FEATURES, FeatureKind
from core.part_size.lengths import PartTemperature
from core.part_size.planner import (
    Place,
    Scatter,
    choose_times,
    expected_uncertainties,
)
from core.part_size.sizeerror import fit_size_error
from core.pieces.comb import plan_comb
from core.records.rows import Instrument
from tests.core.part_size.printed import Printer, gauge_sizes
from tests.core.part_size.printouts import COMB

CLEAN = Scatter(0.03, 0.0)
FOUR_TEETH_FACES = ("0l 3r", "0l 1r", "1l 3r", "0l 0r", "3l 3r", "a b", "0r 3l", "0r 1l", "1r 3l", "1r 2l", "c d")


def places(*lengths):
    return [Place(FeatureKind(kind), "x", float(length)) for kind, length in lengths]


def of_comb(axis="x"):
    return [Place(FeatureKind(g.kind), g.axis, g.nominal_mm, g.faces) for g in plan_comb(axis).gauges]


def four_teeth():
    return [
        Place(FeatureKind(kind), "x", length, tuple(faces.split()))
        for (_, kind, length), faces in zip(COMB, FOUR_TEETH_FACES, strict=True)
    ]


def u_of(plan, times, scatter=CLEAN):
    return {e.name: e.u for e in expected_uncertainties(plan, times, scatter)}


# Expected uncertainties


def test_lengths_10_and_100_three_times_each():
    """u(s) = sd/sqrt(sum (L - mean)^2): 0.03/sqrt(6*45^2) = 0.027 % (arithmetic)."""
    assert u_of(places(("outside", 10), ("outside", 100)), (3, 3))["scale_x"] == pytest.approx(0.03 / math.sqrt(6) / 45)


def test_pairs_long_and_short_and_even_spacing():
    """12 readings, sd 0.03: sd/(L sqrt N), 2 sd/(dL sqrt N), and worse still when spread evenly (closed formulas)."""
    paired = u_of(places(("tooth", 128), ("notch", 112)), (6, 6))["scale_x"]
    apart = u_of(places(("outside", 140), ("outside", 20)), (6, 6))["scale_x"]
    even = u_of(places(*(("outside", x) for x in np.linspace(20, 140, 12))), (1,) * 12)["scale_x"]
    assert [round(100 * u, 4) for u in (paired, apart, even)] == [0.0072, 0.0144, 0.0230]


@pytest.mark.parametrize(("times", "w", "B"), [(3, 0.0026, 0.016), (1, 0.0046, 0.028)])
def test_the_comb_of_four_teeth(times, w, B):
    """11 gauges, sd 0.03: outset and lost motion to the digits of our trade notes (values computed by us)."""
    u = u_of(four_teeth(), (times,) * 11)
    assert (round(u["wall_outset"], 4), round(u["lost_motion_x"], 3)) == (w, B)


def test_outside_lengths_alone_tell_the_scale_and_one_constant():
    """2w - B is the intercept of a line: sd sqrt(1/n + mean^2/Sxx) = 0.03 sqrt(1/4 + 60^2/6400) (arithmetic)."""
    u = u_of(places(("outside", 20), ("outside", 100)), (2, 2))
    assert u == pytest.approx({"scale_x": 0.03 / 80, "constant_x": 0.03 * math.sqrt(0.25 + 3600 / 6400)})


def test_what_no_repeat_removes_is_the_floor():
    caliper = Instrument("Caliper 2", u_outside_zero_mm=0.006, u_inside_zero_mm=0.008, u_scale_ratio=5e-5)
    scatter = Scatter(0.02, 0.01, caliper, PartTemperature(22.0))
    few, many = (expected_uncertainties(of_comb(), (n,) * 10, scatter) for n in (1, 100_000))
    for a, b in zip(few, many, strict=True):
        assert a.floor_u == pytest.approx(b.floor_u) == pytest.approx(b.u, rel=1e-3) and a.u > 1.2 * a.floor_u
    assert {e.name: e.unit for e in few} == {"scale_x": "1", "wall_outset": "mm", "lost_motion_x": "mm"}
    scale = next(e for e in few if e.name == "scale_x")
    assert scale.floor_u > math.hypot(5e-5, PartTemperature(22.0).u_ratio)


def test_expected_uncertainty_is_the_spread_of_many_fits():
    rng, plan = np.random.default_rng(4), of_comb()
    scatter = Scatter(0.02, 0.015)
    k = np.array([FEATURES[p.kind].k for p in plan])
    found = []
    for _ in range(400):
        walls, hand = 0.015 * rng.standard_normal((2, 10)), 0.02 * rng.standard_normal(10)
        error = np.sign(k) * walls.sum(axis=0) + hand
        fit = fit_size_error([p.nominal_mm for p in plan], [p.nominal_mm for p in plan] + error, [p.kind for p in plan])
        found.append([e.value for e in fit.estimates()])
    expected = [e.u for e in expected_uncertainties(plan, (1,) * 10, scatter)]
    assert np.std(found, axis=0) == pytest.approx(expected, rel=0.12)


# Walls that scatter


def test_gauges_that_share_walls_know_less_than_they_say():
    """The same scatter, told to the planner as shared or as strangers: only shared walls make a difference."""
    strangers = [Place(p.kind, p.axis, p.nominal_mm) for p in four_teeth()]
    scatter = Scatter(0.001, 0.02)
    shared, apart = u_of(four_teeth(), (1,) * 11, scatter), u_of(strangers, (1,) * 11, scatter)
    assert shared["wall_outset"] > 1.5 * apart["wall_outset"] and shared["scale_x"] > 1.2 * apart["scale_x"]
    own = [Place(p.kind, p.axis, p.nominal_mm) for p in of_comb()]
    assert u_of(of_comb(), (1,) * 10, scatter) == pytest.approx(u_of(own, (1,) * 10, scatter))


def coverage(plan, runs, sd_face, sd_reading=0.008, seed=7):
    """Share of prints whose three truths lie in their intervals; walls are placed with sd_face."""
    rng = np.random.default_rng(seed)
    names = sorted({face for p in plan for face in p.faces})
    F = np.array([[(face in p.faces) * (1 if FEATURES[p.kind].k > 0 else -1) for face in names] for p in plan])
    L = np.array([p.nominal_mm for p in plan])
    k, r = (np.array([getattr(FEATURES[p.kind], name) for p in plan]) for name in "kr")
    truth = {"scale_x": -0.004, "wall_outset": 0.05, "lost_motion_x": 0.08}
    true = L * (1 + truth["scale_x"]) + 2 * k * truth["wall_outset"] - r * truth["lost_motion_x"]
    hits = dict.fromkeys(truth, 0)
    for _ in range(runs):
        size = true + F @ (sd_face * rng.standard_normal(len(names)))
        fit = fit_size_error(L, np.round(size + sd_reading * rng.standard_normal(L.size), 2), [p.kind for p in plan])
        for e in fit.estimates():
            hits[e.name] += abs(e.value - truth[e.name]) <= e.U
    return {name: count / runs for name, count in hits.items()}


def test_intervals_of_the_size_comb_hold_where_walls_scatter_and_those_of_shared_walls_do_not():
    """Walls placed to 0.02 mm, 300 prints: 95 % within three standard errors (0.0126); four teeth stay far below."""
    assert all(0.912 <= share <= 0.988 for share in coverage(of_comb(), 300, 0.02).values())
    assert coverage(four_teeth(), 300, 0.02)["wall_outset"] < 0.85


def test_a_followed_path_and_a_hand_give_back_all_three_truths():
    """The carriage is followed through play along the comb's contours; 200 combs, walls 0.01 and hand 0.01 mm."""
    rng, hits = np.random.default_rng(11), []
    truth = {"scale_x": -0.003, "wall_outset": 0.05, "lost_motion_x": 0.12}
    piece = plan_comb("x")
    printed = gauge_sizes(Printer((-0.003, 0.0), (0.12, 0.0), 0.05), piece)
    for _ in range(200):
        hand = 0.01 * rng.standard_normal((3, len(printed)))
        read = np.round(printed + hand[0] + hand[1] + hand[2], 2)
        fit = fit_size_error([g.nominal_mm for g in piece.gauges], read, [g.kind for g in piece.gauges])
        hits.append([abs(e.value - truth[e.name]) <= e.U for e in fit.estimates()])
    assert np.all(np.abs(np.mean(hits, axis=0) - 0.95) < 3 * math.sqrt(0.95 * 0.05 / 200))


# Choosing


def best_by_trying_all(plan, readings, value):
    """Every way to share the readings out."""
    shares = (c for c in itertools.product(range(readings + 1), repeat=len(plan)) if sum(c) == readings)
    return max(value(c) for c in shares)


def information(plan, counts):
    """det of the information on s, w, B with readings of equal scatter."""
    rows = np.array([[p.nominal_mm, 2 * FEATURES[p.kind].k, -FEATURES[p.kind].r] for p in plan])
    return float(np.linalg.det((rows.T * np.array(counts)) @ rows))


@pytest.mark.parametrize("readings", [5, 7, 10])
def test_a_plan_for_all_three_is_the_best_of_all_plans(readings):
    """D-optimal; a fifth of the readings is forced on the middle, so the best elsewhere is compared."""
    plan = places(("tooth", 128), ("notch", 112), ("outside", 140), ("closed_hole", 130), ("tooth", 70), ("tooth", 8))
    counts = choose_times(plan, readings, CLEAN)
    kept = round(0.2 * readings)
    assert counts.sum() == readings and counts[4] == kept
    others = [i for i in range(len(plan)) if i != 4]
    best = best_by_trying_all(
        [plan[i] for i in others],
        readings - kept,
        lambda c: information(plan, [*c[:4], kept, c[4]]),
    )
    assert information(plan, counts) == pytest.approx(best, rel=1e-9)


def test_a_plan_for_the_scale_takes_long_pairs():
    plan = of_comb()
    counts = choose_times(plan, 20, CLEAN, wanted=["scale_x"])
    by_name = dict(zip([g.name for g in plan_comb("x").gauges], counts.tolist(), strict=True))
    assert by_name["outer 1-7 x"] == by_name["inner 1-7 x"] == 8 and counts.sum() == 20
    assert u_of(plan, counts)["scale_x"] < 0.75 * u_of(plan, (2,) * 10)["scale_x"]


def test_the_scales_of_two_axes_are_wanted_alike():
    counts = choose_times(of_comb() + of_comb("y"), 40, CLEAN, wanted=["scale_x", "scale_y"])
    assert counts[:10].sum() == counts[10:].sum() == 20


def test_the_middle_gets_a_fifth_and_every_gauge_its_least():
    plan = of_comb() + of_comb("y")
    counts = choose_times(plan, 60, Scatter(), least=1)
    middle = [i for i, p in enumerate(plan) if 52 <= p.nominal_mm <= 96]
    assert counts.sum() == 60 and counts.min() == 1 and counts[middle].sum() >= 12


def test_where_walls_scatter_another_gauge_tells_more_than_a_repeat():
    few, many = (int((choose_times(of_comb(), 20, Scatter(0.02, f)) > 0).sum()) for f in (0.0, 0.03))
    assert many > few


def test_lengths_without_a_middle_and_in_the_middle_only():
    assert choose_times(places(("tooth", 10), ("notch", 120)), 5, CLEAN).sum() == 5
    assert choose_times(places(("tooth", 100), ("notch", 100)), 4, CLEAN).tolist() == [2, 2]


@pytest.mark.parametrize(
    ("call", "field"),
    [
        (lambda: choose_times(of_comb(), 2), "readings"),
        (lambda: choose_times(of_comb(), 19, least=2), "readings"),
        (lambda: expected_uncertainties(of_comb(), (0,) * 10), "readings"),
        (lambda: Scatter(0.0, 0.01), "sd_reading_mm"),
        (lambda: Scatter(0.02, -0.01), "sd_face_mm"),
    ],
)
def test_what_cannot_be_planned_is_refused(call, field):
    with pytest.raises(InputError) as refused:
        call()
    assert refused.value.field == field


def test_no_place_takes_no_readings():
    with pytest.raises(InputError, match="too few here"):
        choose_times([], 5)
