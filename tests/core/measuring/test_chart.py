"""Control charts against the published examples, and how often they alarm for nothing."""

import csv
import math
from importlib.resources import files

import numpy as np
import pytest

from core.errors import InputError
from core.measuring.chart import (
    BASELINE,
    EWMA_SIGMA,
    LEAST,
    SMOOTHING,
    Standing,
    chart_factors,
    ewma,
    ewma_chart,
    ewma_half_width,
    individuals_chart,
)
from core.measuring.runrules import Rule
from tests.published import columns, printed


def test_individuals_of_the_handbook():
    """NIST/SEMATECH e-Handbook 6.3.2.2."""
    (flow,) = columns("chart_nist_individuals", "flow_rate")
    chart = individuals_chart(flow)
    (phase,) = chart.phases
    assert phase.centre == printed("50.81")
    assert phase.mean_moving_range == printed("1.8778")
    assert phase.limits == (printed("45.8159"), printed("55.8041"))
    assert phase.standing is Standing.TRIAL and phase.baseline == 10 and phase.missing == BASELINE - 10
    assert chart.moving_range[1:].round(6).tolist() == [2.0, 2.3, 1.4, 3.5, 3.4, 1.4, 0.2, 1.2, 1.5]
    assert math.isnan(chart.moving_range[0])
    assert chart.runs == ()  # "the process is in control"


def test_individuals_of_common_practice():
    """Ten errors in mm; mean 0.0270, MR-bar 0.02333, limits -0.0351 and 0.0891, MR limit 0.0762, sigma 0.02069."""
    (phase,) = individuals_chart([0.02, 0.04, 0.01, 0.03, 0.05, 0.02, 0.03, 0.00, 0.04, 0.03]).phases
    assert phase.centre == printed("0.0270")
    assert phase.mean_moving_range == printed("0.02333")
    assert phase.limits == (printed("-0.0351"), printed("0.0891"))
    assert phase.moving_range_limit == printed("0.0762")
    assert phase.sigma == printed("0.02069")


def test_smoothed_mean_of_the_handbook():
    """NIST/SEMATECH e-Handbook 6.3.2.4."""
    result, published = columns("chart_nist_ewma", "result", "ewma")
    assert ewma(result, 50.0, 0.3).round(2).tolist() == published.tolist()
    half = ewma_half_width(20, 2.0539, 0.3, 3.0, steady=True)
    assert 50 + half[0] == printed("52.5884") and np.ptp(half) == 0
    exact = ewma_half_width(20, 2.0539, 0.3, 3.0)
    assert exact[0] == pytest.approx(3 * 0.3 * 2.0539)  # the first smoothed mean is a share of one result
    assert np.all(np.diff(exact) > 0) and exact[-1] == pytest.approx(half[0], rel=1e-6)


def test_limits_for_slow_wear():
    """lambda 0.2 with 2.86 sigma: plus and minus 0.95 sigma."""
    assert ewma_half_width(1, 1.0, steady=True)[0] == printed("0.95")


@pytest.mark.parametrize("n", range(2, 11))
def test_factors_follow_from_the_order_statistics_of_the_normal_distribution(n):
    """E(W) and E(W^2) of the range W of n normal readings, by numerical integration (Tippett 1925)."""
    from scipy.integrate import dblquad, quad
    from scipy.special import gammaln
    from scipy.special import ndtr as cdf

    d2 = quad(lambda x: 1 - cdf(-x) ** n - cdf(x) ** n, -9, 9)[0]
    square = (
        2
        * dblquad(
            lambda y, x: 1 - cdf(x) ** n - cdf(-y) ** n + (cdf(x) - cdf(y)) ** n, -8, 8, -8, lambda x: x, epsabs=1e-5
        )[0]
    )
    d3 = math.sqrt(square - d2**2)
    c4 = math.sqrt(2 / (n - 1)) * math.exp(gammaln(n / 2) - gammaln((n - 1) / 2))
    s_spread = 3 * math.sqrt(1 - c4**2) / c4
    factors = chart_factors(n)
    last = {"last_digit": 1.0}  # D4 of three is printed 2.574 or 2.575
    assert d2 == printed(f"{factors.d2:.3f}", **last) and d3 == printed(f"{factors.d3:.3f}", **last)
    assert 1 + 3 * d3 / d2 == printed(f"{factors.D4:.3f}", **last)
    row = published_factors(n)
    assert 3 / (d2 * math.sqrt(n)) == printed(row["A2"], **last)
    assert 3 / (c4 * math.sqrt(n)) == printed(row["A3"], **last)
    assert c4 == printed(row["c4"], **last)
    assert (max(1 - 3 * d3 / d2, 0), max(1 - s_spread, 0), 1 + s_spread) == (
        printed(row["D3"], **last),
        printed(row["B3"], **last),
        printed(row["B4"], **last),
    )


def published_factors(n):
    text = (files("resources") / "catalogue" / "chart_constants.csv").read_text(encoding="utf-8")
    rows = csv.DictReader(line for line in text.splitlines() if not line.startswith("#"))
    return next(row for row in rows if int(row["n"]) == n)


def test_the_factor_of_two_gives_2_66_and_that_of_five_the_spread_of_the_wafers():
    assert 3 / chart_factors(2).d2 == printed("2.66")
    thickness, day = columns("chart_nist_wafers", "thickness", "day")
    daily = thickness.reshape(20, 5)
    assert np.all(day.reshape(20, 5) == np.arange(1, 21)[:, None])
    by_deviation = daily.std(axis=1, ddof=1).mean() / float(published_factors(5)["c4"])
    assert np.ptp(daily, axis=1).mean() / chart_factors(5).d2 == pytest.approx(by_deviation, rel=0.03)


def test_there_are_no_factors_for_other_groups():
    with pytest.raises(InputError, match="There are no factors for groups of 11; choose from 2 to 10") as raised:
        chart_factors(11)
    assert raised.value.field == "n"


# Baselines


@pytest.mark.parametrize(
    ("count", "standing", "baseline", "missing"),
    [
        (1, Standing.NONE, 0, 7),
        (LEAST - 1, Standing.NONE, 0, 1),
        (LEAST, Standing.TRIAL, 8, 12),
        (BASELINE - 1, Standing.TRIAL, 19, 1),
        (BASELINE, Standing.FIRM, 20, 0),
        (35, Standing.FIRM, 20, 0),
    ],
)
def test_limits_ask_for_enough_results(count, standing, baseline, missing):
    chart = individuals_chart(np.random.default_rng(4).normal(size=count))
    (phase,) = chart.phases
    assert (phase.standing, phase.baseline, phase.missing) == (standing, baseline, missing)
    assert math.isnan(phase.centre) == math.isnan(phase.limits[0]) == (standing is Standing.NONE)
    if standing is Standing.NONE:
        assert chart.runs == () and np.all(np.isnan(ewma_chart(chart.value).smoothed))


def test_firm_limits_stand_whatever_follows():
    before = np.random.default_rng(5).normal(size=BASELINE)
    (first,) = individuals_chart(before).phases
    (later,) = individuals_chart([*before, *np.full(30, 5.0)]).phases
    assert (later.centre, later.sigma) == (first.centre, first.sigma)


def test_an_event_begins_the_limits_anew_and_no_run_crosses_it():
    rng = np.random.default_rng(14)
    values = np.concatenate([rng.normal(0, 1, 25), rng.normal(10, 1, 22)])
    without = individuals_chart(values)
    assert {run.rule for run in without.runs} >= {Rule.BEYOND, Rule.ONE_SIDE, Rule.SPREAD}
    chart = individuals_chart(values, [25])
    assert [(phase.start, phase.stop) for phase in chart.phases] == [(0, 25), (25, 47)]
    assert chart.phases[1].centre == pytest.approx(values[25:45].mean())
    assert chart.runs == ()
    assert math.isnan(chart.moving_range[25])
    smooth = ewma_chart(values, [25])
    assert smooth.smoothed[25] == pytest.approx(0.8 * smooth.phases[1].centre + 0.2 * values[25])
    assert smooth.half_width[25] == pytest.approx(0.2 * EWMA_SIGMA * smooth.phases[1].sigma)
    assert smooth.runs == () and {run.rule for run in ewma_chart(values).runs} == {Rule.SMOOTHED}


def test_runs_are_counted_from_the_first_result_of_all():
    values = np.concatenate([np.zeros(4), np.tile([1.0, -1.0], 10), [9.0]])
    chart = individuals_chart(values, [4])
    assert {(run.rule, run.last, run.side) for run in chart.runs} == {(Rule.BEYOND, 24, 1), (Rule.SPREAD, 24, 1)}
    (run,) = ewma_chart(values, [4]).runs
    assert (run.rule, run.first, run.last, run.side) == (Rule.SMOOTHED, 24, 24, 1)


@pytest.mark.parametrize("value", [0.0, 0.1, -3.7e6])
@pytest.mark.parametrize(("count", "missing"), [(10, 10), (25, 0)])
def test_results_that_are_all_alike_have_no_limits(value, count, missing):
    (phase,) = individuals_chart([value] * count).phases
    assert (phase.standing, phase.alike, phase.missing) == (Standing.NONE, True, missing)
    assert ewma_chart([value] * count).runs == ()


@pytest.mark.parametrize("values", [[], [[]]])
def test_no_result_is_refused(values):
    with pytest.raises(InputError, match="no kept result yet; keep the first one") as raised:
        individuals_chart(values)
    assert raised.value.field == "value"


@pytest.mark.parametrize("bad", [math.nan, math.inf])
def test_what_is_not_finite_is_refused_with_its_place(bad):
    with pytest.raises(InputError, match="Result 3 is not a finite number; withdraw its trial") as raised:
        ewma_chart([1.0, 2.0, bad])
    assert (raised.value.field, raised.value.row) == ("value", 2)


@pytest.mark.parametrize("start", [-1, 3])
def test_a_begin_that_is_not_there_is_refused(start):
    with pytest.raises(InputError, match="no result at the beginning of a phase") as raised:
        individuals_chart([1.0, 2.0, 3.0], [start])
    assert raised.value.field == "starts"


@pytest.mark.parametrize("smoothing", [0.0, -0.1, 1.01, math.nan])
def test_a_weight_out_of_range_is_refused(smoothing):
    for call in (lambda: ewma([1.0], 0.0, smoothing), lambda: ewma_half_width(3, 1.0, smoothing)):
        with pytest.raises(InputError, match="weight of the newest result must be above 0 and up to 1") as raised:
            call()
        assert raised.value.field == "smoothing"


@pytest.mark.parametrize("width", [0.0, -3.0, math.nan, math.inf])
def test_a_width_out_of_range_is_refused(width):
    with pytest.raises(InputError, match="width of the limits must be above zero; 3 is usual") as raised:
        ewma_half_width(3, 1.0, width=width)
    assert raised.value.field == "width"


def test_with_the_full_weight_the_smoothed_mean_is_the_result():
    values = np.random.default_rng(8).normal(size=12)
    assert ewma(values, 99.0, 1.0) == pytest.approx(values)
    assert ewma_half_width(4, 2.0, 1.0, 3.0) == pytest.approx(np.full(4, 6.0))


def test_results_are_read_only():
    chart = individuals_chart([1.0, 2.0, 3.0])
    with pytest.raises(ValueError, match="read-only"):
        chart.value[0] = 0.0


# How often it alarms


def ewma_run_length(shift, smoothing, width, cells=401):
    """Return the average run length of steady limits by a Markov chain (Brook and Evans, Biometrika 59 (1972))."""
    from scipy.special import ndtr

    limit = width * math.sqrt(smoothing / (2 - smoothing))
    edges = np.linspace(-limit, limit, cells + 1)
    middle = (edges[1:] + edges[:-1]) / 2
    step = (edges[None, :] - (1 - smoothing) * middle[:, None]) / smoothing - shift
    stay = np.diff(ndtr(step), axis=1)
    return np.linalg.solve(np.eye(cells) - stay, np.ones(cells))[cells // 2]


def test_slow_wear_limits_alarm_for_nothing_as_seldom_as_three_sigma():
    assert ewma_run_length(0.0, SMOOTHING, EWMA_SIGMA) == pytest.approx(370.4, rel=0.02)
    # Lucas and Saccucci 1990, table: lambda 0.2, L 2.962 has 500; a shift of one sigma is seen after 10.5 results
    assert ewma_run_length(0.0, 0.2, 2.962) == pytest.approx(500, rel=0.01)
    assert ewma_run_length(1.0, 0.2, 2.962) == pytest.approx(10.5, abs=0.1)
    # ... where single results take 43.9
    assert ewma_run_length(1.0, 1.0, 3.0) == pytest.approx(43.9, abs=0.2)


def test_simulated_false_alarms_of_known_limits_agree_with_the_chain():
    rng = np.random.default_rng(9)
    half, lengths = ewma_half_width(1, 1.0, steady=True)[0], []
    for _ in range(500):
        out = np.flatnonzero(np.abs(ewma(rng.normal(size=4000), 0.0)) > half)
        lengths.append(out[0] + 1)
    spread = np.std(lengths, ddof=1) / math.sqrt(len(lengths))
    assert abs(np.mean(lengths) - ewma_run_length(0.0, SMOOTHING, EWMA_SIGMA)) < 3.3 * spread


def test_limits_from_twenty_results_alarm_more_often_than_known_ones():
    """Single results beyond three sigma: 0.27 % with known limits, two to three times that with estimated ones."""
    rng, beyond = np.random.default_rng(10), 0
    for _ in range(2000):
        chart = individuals_chart(rng.normal(size=BASELINE + 50))
        low, high = chart.phases[0].limits
        beyond += np.count_nonzero((chart.value[BASELINE:] < low) | (chart.value[BASELINE:] > high))
    assert 0.005 < beyond / (2000 * 50) < 0.0125


def test_slow_wear_is_seen_and_a_steady_machine_is_left_in_peace():
    rng, seen, alarmed = np.random.default_rng(13), 0, 0
    for _ in range(200):
        noise = rng.normal(0, 0.01, 60)
        wear = np.concatenate([np.zeros(30), 0.001 * np.arange(30)])  # a tenth of the spread from print to print
        seen += any(run.last >= 30 for run in ewma_chart(noise + wear).runs)
        alarmed += any(run.last == 40 for run in ewma_chart(noise).runs)
    assert seen > 180 and alarmed < 25


@pytest.mark.parametrize(("gain", "variance"), [("1", "2.00"), ("0.5", "1.33"), ("0.2", "1.11")])
def test_correcting_a_steady_process_after_every_result_widens_its_scatter(gain, variance):
    """Common practice has 2/(2 - g) times the variance for a correction by the share g: why no signal asks for one."""
    noise, setting, results = np.random.default_rng(15).normal(size=400_000), 0.0, []
    for value in noise.tolist():
        results.append(setting + value)
        setting -= float(gain) * results[-1]
    assert np.var(results) == printed(variance, last_digit=1.5)


def test_the_range_of_five_readings_is_2_33_spreads():
    assert chart_factors(5).d2 == printed("2.33")
