"""The size-error fit against an independent program, published data, planted causes, and its own promises."""

import math

import numpy as np
import pytest
import statsmodels.api as sm
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy.optimize import brentq

from core.errors import InputError
from core.measuring.tolerance import tolerance_mm
from core.part_size.features import FEATURES, FeatureKind
from core.part_size.lengths import LayerPlan, PartTemperature
from core.part_size.sizeerror import fit_size_error
from core.records.rows import Instrument
from tests.core.part_size.printouts import Faults, Print
from tests.published import columns, printed, table

FAULTS = Faults(scale=(-0.0025, 0.001), lost_motion_mm=(0.06, 0.03), wall_outset_mm=0.04)
# How the kinds answer to (2w, -B), written out again so that a slip in the table of the core is seen.
RESPONSE = {"outside": (1, 1), "closed_hole": (-1, 1), "tooth": (1, 0), "notch": (-1, 0), "gap": (-1, -1)}


def names(fit):
    return [estimate.name for estimate in fit.estimates()]


def check(fit, name):
    return next(found for found in fit.diagnostics if found.name == name)


def one_axis(kind, *lengths_mm, error_mm=0.1, axis="x", **beside):
    """Three or more lengths of one kind, all too large by the same, one of them read a little off."""
    sizes = [L + error_mm + 0.01 * (i % 2) for i, L in enumerate(lengths_mm)]
    return fit_size_error(lengths_mm, sizes, [kind] * len(sizes), axis=[axis] * len(sizes), **beside)


# Against an independent program


def comb_design(piece):
    """Columns scale_x, scale_y, w, B_x, B_y by hand."""
    rows = []
    for L, a, k in zip(piece.nominal_mm, piece.axis, piece.kind, strict=True):
        of_w, of_B = RESPONSE[k]
        rows.append([L * (a == "x"), L * (a == "y"), 2 * of_w, -of_B * (a == "x"), -of_B * (a == "y")])
    return np.array(rows)


def test_single_readings_agree_with_ordinary_least_squares():
    piece, rng = Print("xy"), np.random.default_rng(11)
    error = piece.size_mm(FAULTS) - piece.nominal_mm + 0.03 * rng.standard_normal(22)
    ours, theirs = piece.fit(piece.nominal_mm + error), sm.OLS(error, comb_design(piece)).fit()
    assert names(ours) == ["scale_x", "scale_y", "wall_outset", "lost_motion_x", "lost_motion_y"]
    estimates = ours.estimates()
    assert [e.value for e in estimates] == pytest.approx(theirs.params, rel=1e-9)
    assert [e.u for e in estimates] == pytest.approx(theirs.bse, rel=1e-9)
    assert [(e.value - e.U, e.value + e.U) for e in estimates] == [pytest.approx(ci) for ci in theirs.conf_int()]
    assert {e.dof for e in estimates} == {theirs.df_resid} == {17}
    band = ours.band("y", "tooth", [25.0, 300.0])
    frame = theirs.get_prediction([[0, 25, 2, 0, 0], [0, 300, 2, 0, 0]]).summary_frame()
    assert band.mean_mm == pytest.approx(frame["mean"].to_numpy())
    assert band.mean_mm + band.confidence_mm == pytest.approx(frame["mean_ci_upper"].to_numpy())
    assert band.mean_mm - band.prediction_mm == pytest.approx(frame["obs_ci_lower"].to_numpy())
    difference = ours.combination("scale_difference", scale_x=1, scale_y=-1)
    t_test = theirs.t_test([1, -1, 0, 0, 0])
    assert difference.u == pytest.approx(t_test.sd[0, 0]) and difference.dof == 17
    assert ours.covariance("wall_outset", "lost_motion_x") == pytest.approx(theirs.cov_params()[2, 3])


def test_unequal_repeats_agree_with_weighted_least_squares():
    """Weights by Paule and Mandel's own equation, solved by bracketing instead of Newton's steps."""
    piece, rng = Print("x", times=(1, 2, 5)), np.random.default_rng(12)
    size = piece.size_mm(FAULTS) + 0.04 * rng.standard_normal(11)
    readings = size[piece.reading] + 0.02 * rng.standard_normal(piece.reading.size)
    ours = piece.fit(readings)
    group, count = piece.reading, np.bincount(piece.reading)
    mean = np.bincount(group, weights=readings) / count
    var = np.sum((readings - mean[group]) ** 2) / (group.size - 11)
    X = comb_design(piece)[:, [0, 2, 3]]

    def fitted(tau2):
        return sm.WLS(mean - piece.nominal_mm, X, weights=1 / (tau2 + var / count)).fit()

    def excess(tau2):
        return float(np.sum(fitted(tau2).wresid ** 2)) - 8

    tau2 = brentq(excess, 0, 1, xtol=1e-15)
    theirs = fitted(tau2)
    assert tau2 > 0
    assert ours.scattered.feature_sd_mm == pytest.approx(math.sqrt(tau2), rel=1e-6)
    assert [e.value for e in ours.estimates()] == pytest.approx(theirs.params, rel=1e-6)
    assert [e.u for e in ours.estimates()] == pytest.approx(theirs.bse, rel=1e-6)  # Knapp and Hartung: scaled, t on 8
    assert {e.dof for e in ours.estimates()} == {8}
    assert ours.scattered.next_mm2 == pytest.approx(tau2 + var, rel=0.05)


def test_equal_repeats_agree_with_the_fit_of_the_means():
    piece, rng = Print("x", times=(3,)), np.random.default_rng(13)
    readings = piece.size_mm(FAULTS)[piece.reading] + 0.03 * rng.standard_normal(33)
    ours = piece.fit(readings)
    mean = readings.reshape(11, 3).mean(axis=1)
    theirs = sm.OLS(mean - piece.nominal_mm, comb_design(piece)[:, [0, 2, 3]]).fit()
    assert [e.u for e in ours.estimates()] == pytest.approx(theirs.bse)
    sd2 = np.mean(readings.reshape(11, 3).var(axis=1, ddof=1))
    assert ours.scattered.next_mm2 == pytest.approx(theirs.mse_resid + sd2 * 2 / 3)  # tau^2 + sd^2, without bias
    assert ours.scattered.feature_sd_mm == pytest.approx(math.sqrt(max(0, theirs.mse_resid - sd2 / 3)))


# Published data, as the travel of an axis: error = measured - commanded, so the slope comes out less one


def test_nist_norris_as_travel():
    y, x = columns("linefit_nist_norris", "y", "x")
    fit = fit_size_error(x, y, ["travel"] * x.size)
    certified = {row["parameter"]: row for row in table("linefit_nist_certified", set="Norris")}
    scale, origin = fit.estimate("scale_x"), fit.estimate("origin_x")
    assert scale.value == pytest.approx(float(certified["B1"]["value"]) - 1, rel=1e-9)
    assert origin.value == pytest.approx(float(certified["B0"]["value"]), rel=1e-9)
    assert scale.u == pytest.approx(float(certified["B1"]["sd"]), rel=1e-9)
    assert origin.u == pytest.approx(float(certified["B0"]["sd"]), rel=1e-9)
    assert math.sqrt(fit.scattered.variance_mm2) == pytest.approx(float(certified["residual_sd"]["value"]), rel=1e-9)
    assert (scale.dof, scale.unit, origin.unit) == (34, "1", "mm")


def test_gum_h3_as_travel():
    """The correction of a thermometer is its error; at t = 30 as printed there, and about any other origin."""
    t, b = columns("straightline_gum_h3", "t_k", "b_k")
    fit = fit_size_error(t - 20, t - 20 + b, ["travel"] * t.size)
    scale, origin = fit.estimate("scale_x"), fit.estimate("origin_x")
    assert (origin.value, origin.u) == (printed("-0.1712"), printed("0.0029"))
    assert (scale.value, scale.u, scale.dof) == (printed("0.00218"), printed("0.00067"), 9)
    correlation = fit.covariance("scale_x", "origin_x") / scale.u / origin.u
    assert correlation == printed("-0.930")
    at_30 = fit.band("x", "travel", [10.0])
    assert at_30.mean_mm[0] == printed("-0.1494")
    assert at_30.confidence_mm[0] / scale.k == printed("0.0041")
    far = fit_size_error(t + 5000, t + 5000 + b, ["travel"] * t.size)
    assert far.estimate("scale_x").u == pytest.approx(scale.u, rel=1e-6)
    assert far.band("x", "travel", [5030.0]).mean_mm == pytest.approx(at_30.mean_mm, rel=1e-6)
    assert check(far, "condition").value == pytest.approx(1)


AXES = ("11358-axis1", "11359-axis1", "11361-axis1")


@pytest.mark.parametrize("name", AXES)
def test_real_stepper_axes_have_a_scale_that_is_real_and_practically_nothing(name):
    set_mm, read_mm = columns("sizeerror_stepper_axes", "setpoint_mm", "resolver_mm", axis=name, direction="positive")
    fit = fit_size_error(set_mm, read_mm, ["travel"] * 12)
    scale = fit.estimate("scale_x")
    assert scale.significant
    assert abs(scale.value) * 55 + scale.U * 55 < 0.02 * float(tolerance_mm(55, "f"))
    theirs = sm.OLS(read_mm - set_mm, sm.add_constant(set_mm)).fit()
    assert scale.value == pytest.approx(theirs.params[1], rel=1e-6)


# Coverage


def share_covered(piece, runs, seed, *, sd, tau=0.0, instrument=None, ask=()):
    """Simulate prints; return how often each 95 % interval holds the truth, the band the reading of the next part."""
    rng, truth = np.random.default_rng(seed), FAULTS.truth()
    truth |= {"scale_difference": truth["scale_x"] - truth["scale_y"]}
    size = piece.size_mm(FAULTS)
    jaws = np.array([[FEATURES[k].outside_jaw, FEATURES[k].inside_jaw] for k in piece.kind])
    known = {} if instrument is None else {"instrument": instrument}
    covered: dict[str, list[bool]] = {}
    for _ in range(runs):
        made = size + tau * rng.standard_normal(size.size)
        if instrument is not None:
            zeros = rng.standard_normal(2) * (instrument.u_outside_zero_mm, instrument.u_inside_zero_mm)
            made = made + jaws @ zeros + rng.standard_normal() * instrument.u_scale_ratio * piece.nominal_mm
        fit = piece.fit(made[piece.reading] + sd * rng.standard_normal(piece.reading.size), **known)
        found = list(fit.estimates())
        if ask:
            found += [fit.combination("scale_difference", scale_x=1, scale_y=-1)]
        else:
            band = fit.band("x", "tooth", [60.0])
            following = -0.0025 * 60 + 0.08 + tau * rng.standard_normal() + sd * rng.standard_normal()
            covered.setdefault("next", []).append(abs(following - band.mean_mm[0]) <= band.prediction_mm[0])
        for e in found:
            covered.setdefault(e.name, []).append(abs(e.value - truth[e.name]) <= e.U)
    return {name: float(np.mean(hits)) for name, hits in covered.items()}


CALIPER = Instrument("caliper", u_outside_zero_mm=0.015, u_inside_zero_mm=0.015, u_scale_ratio=1e-4)


@pytest.mark.parametrize(
    ("piece", "beside"),
    [
        (Print("x"), {"sd": 0.03}),
        (Print("xy"), {"sd": 0.03, "ask": ("scale_difference",)}),
        (Print("x", times=(1, 3, 2, 5)), {"sd": 0.03}),
        (Print("x", times=(1, 3, 2, 5)), {"sd": 0.03, "tau": 0.03}),
        (Print("x"), {"sd": 0.02, "instrument": CALIPER}),
    ],
    ids=["single", "x and y", "unequal repeats", "and feature scatter", "systematic effects"],
)
def test_intervals_cover_the_truth_in_95_of_100(piece, beside):
    shares = share_covered(piece, 2000, 20260101, **beside)
    instrument_beside = {"next"} if "instrument" in beside else set()  # the next reading shares the caliper's errors
    assert len(shares) >= 4
    for name in set(shares) - instrument_beside:
        assert 0.93 <= shares[name] <= 0.97, (name, shares)


@pytest.mark.parametrize("times", [(1,), (3,), (1, 2)])
def test_readings_finer_than_their_last_digit_still_cover(times):
    """Scatter of 0.001 mm under a digit of 0.01 mm: rounding is what is left, and repeats do not average it."""
    piece, rng = Print("x", times=times), np.random.default_rng(14)
    covered, runs = 0, 300
    for _ in range(runs):
        faults = Faults((rng.normal(0, 0.003), 0), (rng.uniform(0, 0.1), 0), rng.normal(0, 0.05))
        fit = piece.fit(
            np.round(piece.size_mm(faults)[piece.reading] + 0.001 * rng.standard_normal(piece.reading.size), 2)
        )
        covered += sum(abs(e.value - faults.truth()[e.name]) <= e.U for e in fit.estimates())
        assert all(e.u > 0 for e in fit.estimates())
    assert covered / (3 * runs) >= 0.93


def test_few_features_on_repeats_cover():
    rng, hits, nominal = np.random.default_rng(15), 0, np.repeat([20.0, 100.0], 5)
    for _ in range(400):
        sizes = nominal * 1.002 + 0.1 + 0.02 * rng.standard_normal(10)
        fit = fit_size_error(nominal, sizes, ["outside"] * 10, feature=nominal)
        scale = fit.estimate("scale_x")
        hits += abs(scale.value - 0.002) <= scale.U
        assert (fit.scattered.source, scale.dof) == ("repeats", 8)
    assert 0.92 <= hits / 400 <= 0.98


# What is told, and what would tell

ESTIMABLE = [
    ("outside", "x", ["scale_x", "constant_x"], {"wall_outset", "lost_motion_x"}),
    ("closed_hole", "x", ["scale_x", "hole_constant_x"], {"wall_outset", "lost_motion_x"}),
    ("gap", "y", ["scale_y", "constant_y"], {"wall_outset", "lost_motion_y"}),
    ("tooth", "x", ["scale_x", "wall_outset"], {"lost_motion_x"}),
    ("notch", "x", ["scale_x", "wall_outset"], {"lost_motion_x"}),
    ("same_facing", "x", ["scale_x"], {"wall_outset", "lost_motion_x"}),
    ("ring_mean", "y", ["scale_y", "lost_motion_y"], {"wall_outset"}),
    ("boss", "x", ["scale_x", "boss_constant"], set()),
    ("bore", "y", ["scale_y", "bore_constant"], set()),
    ("height", "z", ["scale_z", "squash_z"], set()),
    ("same_facing", "z", ["scale_z"], set()),
    ("travel", "z", ["scale_z", "origin_z"], set()),
]


@pytest.mark.parametrize(("kind", "axis", "told", "open_"), ESTIMABLE)
def test_one_kind_alone(kind, axis, told, open_):
    fit = one_axis(kind, 10.0, 30.0, 60.0, 90.0, 120.0, 140.0, axis=axis)
    assert names(fit) == told
    assert {m.name for m in fit.not_estimable} == open_
    assert all(fit.estimate(name) is None for name in open_)
    assert all(m.readings and m.needs.startswith("measure one length of about") for m in fit.not_estimable)


def test_one_length_determines_nothing():
    fit = fit_size_error([20.0], [20.1], ["outside"], instrument=Instrument("c", sd_hand_mm=0.01, sd_hand_dof=20))
    assert names(fit) == []
    assert {m.name for m in fit.not_estimable} == {"scale_x", "wall_outset", "lost_motion_x"}
    assert fit.band("x", "outside", [100.0]) is None


def test_a_comb_beside_outside_lengths_of_the_other_axis_tells_both():
    x, y = Print("x"), [20.0, 60.0, 140.0]
    sizes = [*x.size_mm(FAULTS), *(np.array(y) * 1.001 + 2 * 0.04 - 0.03)]
    kinds, axes = [*x.kind, *["outside"] * 3], ["x"] * 11 + ["y"] * 3
    fit = fit_size_error([*x.nominal_mm, *y], sizes, kinds, axis=axes)
    assert {e.name: e.value for e in fit.estimates()} == pytest.approx(FAULTS.truth())


READ = st.lists(
    st.tuples(st.sampled_from(list(FeatureKind)), st.sampled_from("xyz"), st.sampled_from([8.0, 20.0, 70.0, 140.0])),
    min_size=1,
    max_size=6,
)
BY_HAND = Instrument("caliper", sd_hand_mm=0.01, sd_hand_dof=20)


@settings(max_examples=150)
@given(READ)
def test_taking_the_suggested_readings_makes_it_estimable(read):
    rows = []
    for kind, axis, L in read:
        fits = axis == "z" if kind == "height" else axis != "z" or kind in ("same_facing", "travel")
        alike = all((k == "travel") == (kind == "travel") for k, a, _ in rows if a == axis)
        if fits and alike:
            rows.append((kind, axis, L))
    if not rows:
        return

    def fit_of(rows):
        kinds, axes, lengths = (list(column) for column in zip(*rows, strict=True))
        return fit_size_error(lengths, np.array(lengths) + 0.01, kinds, axis=axes, instrument=BY_HAND)

    before = fit_of(rows)
    told = set(names(before))
    assert told.isdisjoint(m.name for m in before.not_estimable)
    for missing in before.not_estimable:
        assert 1 <= len(missing.readings) <= 2, missing
        more = [(r.kind, r.axis, r.nominal_mm) for r in missing.readings]
        assert missing.name in names(fit_of([*rows, *more])), (rows, missing)
        for left_out in range(len(more)):  # and no fewer would do
            fewer = more[:left_out] + more[left_out + 1 :]
            assert missing.name not in names(fit_of([*rows, *fewer]))


# Independence of units, origin and order


@settings(max_examples=30)
@given(st.permutations(range(22)), st.integers(0, 2**31))
def test_the_order_of_rows_changes_nothing(order, seed):
    piece = Print("xy")
    size = piece.size_mm(FAULTS) + 0.02 * np.random.default_rng(seed).standard_normal(22)
    ours, order = piece.fit(size), np.array(order)
    theirs = fit_size_error(
        piece.nominal_mm[order],
        size[order],
        [piece.kind[i] for i in order],
        axis=[piece.axis[i] for i in order],
        feature=[piece.feature[i] for i in order],
    )
    assert [(e.name, e.dof) for e in ours.estimates()] == [(e.name, e.dof) for e in theirs.estimates()]
    assert [e.value for e in ours.estimates()] == pytest.approx([e.value for e in theirs.estimates()], abs=1e-9)
    assert [e.u for e in ours.estimates()] == pytest.approx([e.u for e in theirs.estimates()], rel=1e-6)
    assert ours.flagged[order].tolist() == theirs.flagged.tolist()


def test_a_larger_unit_scales_the_constants_and_leaves_the_scale():
    piece, rng = Print("x", times=(1, 2)), np.random.default_rng(16)
    size = (piece.size_mm(FAULTS) + 0.02 * rng.standard_normal(11))[piece.reading] + 0.01 * rng.standard_normal(16)
    kinds = [piece.kind[i] for i in piece.reading]
    for unit in (0.01, 25.4):
        ours, theirs = (
            fit_size_error(piece.nominal_mm[piece.reading] * f, size * f, kinds, feature=piece.reading)
            for f in (1, unit)
        )
        for a, b in zip(ours.estimates(), theirs.estimates(), strict=True):
            f = 1 if a.unit == "1" else unit
            assert (b.value, b.u) == (pytest.approx(a.value * f, rel=1e-6), pytest.approx(a.u * f, rel=1e-6))
        for a, b in zip(ours.diagnostics, theirs.diagnostics, strict=True):
            assert (a.name, a.ok) == (b.name, b.ok)


# What uncertainty rests on


def test_readings_all_equal_never_pass_for_certain():
    for times in (1, 3):
        nominal = np.repeat([10.0, 20.0, 50.0, 100.0, 140.0], times)
        fit = fit_size_error(nominal, nominal, ["tooth"] * nominal.size, feature=[f"{L}" for L in nominal])
        floor = 0.01 / math.sqrt(12)
        assert all(e.u > 0 for e in fit.estimates())
        assert math.sqrt(fit.scattered.variance_mm2) == pytest.approx(floor)
        assert fit.scattered.rounded and "the digit sets the uncertainty" in check(fit, "scatter_mm").says


@pytest.mark.parametrize(("resolution_mm", "u"), [(0.0, 2.8e-5), (1e-60, 2.8e-9), (0.1, 2.8e-4)])
def test_an_instrument_without_a_resolution_on_record_is_no_perfect_one(resolution_mm, u):
    nominal = np.array([10.0, 20.0, 50.0, 100.0, 140.0])
    fit = fit_size_error(nominal, nominal, ["tooth"] * 5, instrument=Instrument("c", resolution_mm=resolution_mm))
    assert fit.estimate("scale_x").u == pytest.approx(u, rel=0.1)


def test_too_few_features_rest_on_the_last_check_of_the_instrument():
    two = ([20.0, 100.0], [20.1, 100.3], ["outside", "outside"])
    unknown = fit_size_error(*two)
    assert unknown.estimates() == () and unknown.scattered.source == "none"
    assert unknown.band("x", "outside", [50.0]) is None
    by_name = {m.name: m.needs for m in unknown.not_estimable}
    assert (
        by_name["scale_x"] == "measure 3 more features to see how they scatter, or check the instrument's repeatability"
    )
    assert not check(unknown, "scatter_mm").ok and "cannot tell yet" in check(unknown, "scatter_mm").says

    checked = fit_size_error(*two, instrument=Instrument("c", sd_hand_mm=0.02, sd_hand_dof=9))
    scale = checked.estimate("scale_x")
    assert (scale.value, scale.dof) == (pytest.approx(0.2 / 80), 9)
    assert scale.u == pytest.approx(0.02 * math.sqrt(2) / 80)
    assert scale.k == printed("2.26")  # GUM table G.2, 9 degrees of freedom
    assert "last repeatability check" in check(checked, "scatter_mm").says
    assert checked.band("x", "outside", [60.0]).prediction_mm[0] == pytest.approx(scale.k * 0.02 * math.sqrt(1.5))


def test_one_feature_short_of_seeing_the_scatter():
    fit = one_axis("tooth", 10.0, 50.0, 90.0, 130.0)
    assert fit.estimates() == ()
    assert fit.not_estimable[0].needs.startswith("measure one more feature to see")


@pytest.mark.parametrize("beside", [{"sd_hand_dof": None}, {"sd_hand_mm": None}, {"sd_hand_mm": 0.0}])
def test_a_repeatability_that_is_half_on_record_is_none(beside):
    record = {"sd_hand_mm": 0.02, "sd_hand_dof": 9} | beside
    fit = fit_size_error([20.0, 100.0], [20.1, 100.3], ["outside"] * 2, instrument=Instrument("c", **record))
    assert fit.estimates() == ()


def test_systematic_effects_are_not_averaged():
    """Outside lengths: the jaw zero goes whole into the constant, the caliper's scale whole into the scale."""
    nominal = [10.0, 20.0, 50.0, 100.0, 140.0]
    instrument = Instrument("c", u_outside_zero_mm=0.02, u_inside_zero_mm=0.5, u_scale_ratio=3e-4)
    sizes = [L + 0.1 + 0.001 * (-1) ** i for i, L in enumerate(nominal)]
    fit = fit_size_error(nominal * 9, sizes * 9, ["outside"] * 45, instrument=instrument)
    assert fit.estimate("constant_x").u == pytest.approx(0.02, rel=0.01)
    assert fit.estimate("scale_x").u == pytest.approx(3e-4, rel=0.01)
    assert fit.estimate("scale_x").dof > 1000  # Welch and Satterthwaite: taken as known
    warm = fit_size_error(nominal * 9, sizes * 9, ["outside"] * 45, part_temperature=PartTemperature(20.0))
    assert warm.estimate("scale_x").u == pytest.approx(70e-6, rel=0.02)  # 1 K of doubt
    assert {d.name for d in fit.diagnostics} - {d.name for d in warm.diagnostics} == {"temperature"}
    assert {d.name for d in warm.diagnostics} - {d.name for d in fit.diagnostics} == {"instrument"}


def test_a_warm_part_is_brought_to_20_degrees_and_travel_is_not():
    nominal = np.array([20.0, 50.0, 80.0, 110.0, 140.0])
    warm = fit_size_error(nominal, nominal * (1 + 70e-6 * 10), ["outside"] * 5, part_temperature=PartTemperature(30.0))
    assert warm.estimate("scale_x").value == pytest.approx(0, abs=1e-9)
    travel = fit_size_error(nominal, nominal * (1 + 70e-6 * 10), ["travel"] * 5, part_temperature=PartTemperature(30.0))
    assert travel.estimate("scale_x").value == pytest.approx(7e-4, rel=1e-6)
    assert travel.estimate("scale_x").u < 1e-5


def test_heights_are_compared_with_whole_layers():
    heights = np.array([4.05, 10.1, 20.12, 40.0, 60.0])
    whole = np.array([4.0, 10.2, 20.2, 40.0, 60.0])  # 0.2 + n*0.2
    fit = fit_size_error(heights, whole - 0.08, ["height"] * 5, axis=["z"] * 5, layers=LayerPlan(0.2, 0.2))
    assert fit.estimate("squash_z").value == pytest.approx(-0.08)
    assert fit.estimate("scale_z").value == pytest.approx(0, abs=1e-9)


# Refusals


@pytest.mark.parametrize(
    "beside",
    [
        {"resolution_mm": -0.01},
        {"u_outside_zero_mm": math.nan},
        {"u_inside_zero_mm": math.inf},
        {"u_scale_ratio": -1e-4},
        {"sd_hand_mm": -0.1},
        {"sd_hand_dof": -1},
    ],
)
def test_a_record_of_an_instrument_that_cannot_be(beside):
    with pytest.raises(InputError, match="bad one: an uncertainty is below zero or not a number") as refused:
        fit_size_error([20.0], [20.1], ["outside"], instrument=Instrument("bad one", **beside))
    assert refused.value.field == "instrument"


def test_bands_where_nothing_can_be_said():
    fit = one_axis("outside", 10.0, 30.0, 60.0, 90.0, 120.0)
    assert fit.band("x", "outside", [20.0, 200.0]) is not None
    assert fit.band("x", "tooth", [20.0]) is None  # w is not told
    assert fit.band("y", "outside", [20.0]) is None  # nothing was read along y
    assert fit.band("z", "outside", [20.0]) is None  # and outside does not belong there
    assert fit.band("x", "bore", [20.0]) is None
    assert fit.band("x", "same_facing", [20.0]).mean_mm == pytest.approx(20 * fit.estimate("scale_x").value)
    comb = one_axis("tooth", 10.0, 30.0, 60.0, 90.0, 120.0)
    assert comb.band("x", "notch", [20.0]) is not None  # B cancels
    bores = one_axis("bore", 10.0, 30.0, 60.0, 90.0, 120.0)
    assert bores.band("x", "same_facing", [20.0]) is not None
    assert bores.band("x", "ring_mean", [20.0]) is None
    assert bores.combination("none", scale_x=1, wall_outset=1) is None
    assert fit.combination("none", wall_outset=1) is None


def test_a_refused_line_gives_no_scale_and_no_band():
    L = np.array([10.0, 20, 40, 60, 80, 100, 120])
    fit = fit_size_error(L, L + 1e-4 * (L - 60) ** 2, ["outside"] * 7)
    assert fit.line_refused and not any(name.startswith("scale") for name in names(fit))
    assert fit.band("x", "outside", [50.0]) is None
    assert "no straight line fits" in next(m.needs for m in fit.not_estimable if m.name == "scale_x")


ANY = (
    st.floats(allow_nan=True, allow_infinity=True) | st.floats(-200, 200) | st.sampled_from([0.0, 20.0, 100.0, 1e-300])
)
ROWS = st.lists(
    st.tuples(
        ANY,
        ANY,
        st.sampled_from([*FeatureKind, "Outside ", "cube"]),
        st.sampled_from(["x", "y", "z", "Y", "u"]),
        st.sampled_from([None, "", "a", "b", 3]),
    ),
    max_size=12,
)


@settings(max_examples=300)
@given(ROWS, st.sampled_from([None, BY_HAND, CALIPER]))
def test_whatever_is_typed_ends_in_a_sentence_or_in_numbers(rows, instrument):
    nominal, measured, kind, axis, feature = ([row[i] for row in rows] for i in range(5))
    try:
        fit = fit_size_error(nominal, measured, kind, axis=axis, feature=feature, instrument=instrument)
    except InputError as error:
        assert error.message and error.field in ("nominal_mm", "measured_mm", "kind", "axis", "feature")
        return
    assert_sound(fit)


PART = st.tuples(
    st.floats(1e-3, 9e3),
    st.floats(-50, 50),
    st.sampled_from(["outside", "closed_hole", "tooth", "notch", "gap", "same_facing", "ring_mean", "boss", "bore"]),
    st.sampled_from("xy"),
)


@settings(max_examples=300)
@given(st.lists(PART, min_size=1, max_size=14), st.sampled_from([None, BY_HAND, CALIPER]))
def test_any_possible_readings_end_in_numbers(rows, instrument):
    nominal = np.array([row[0] for row in rows])
    measured = np.clip(nominal + [row[1] for row in rows], 1e-3, 1e4)
    kind, axis = [row[2] for row in rows], [row[3] for row in rows]
    assert_sound(fit_size_error(nominal, measured, kind, axis=axis, instrument=instrument))


def assert_sound(fit):
    for e in fit.estimates():
        assert math.isfinite(e.value) and 0 < e.u < math.inf and e.dof >= 1 and math.isfinite(e.U)
    assert len(set(names(fit))) == len(fit.estimates())
    for d in fit.diagnostics:
        assert d.says and not math.isinf(d.value) and not math.isinf(d.limit)
    assert np.all(np.isfinite(fit.residual_mm))


def test_the_table_used_here_is_that_of_the_core():
    assert {k: (FEATURES[FeatureKind(k)].k, FEATURES[FeatureKind(k)].r) for k in RESPONSE} == RESPONSE
