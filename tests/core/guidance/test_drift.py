"""What a chart says, and the reading it asks for."""

from datetime import UTC, datetime, timedelta

import numpy as np
import pytest

from core.errors import InputError
from core.guidance.charted import main_quantities
from core.guidance.drift import Event, changes_of_owner, judge_drift
from core.guidance.driftwords import Sort, limit_text, numbers, sayings, shown_unit
from core.measuring.chart import Standing
from core.measuring.runrules import Rule
from core.records.rows import SeriesPoint

BEGIN = datetime(2026, 3, 1, 8, tzinfo=UTC)
QUANTITIES = {quantity.name: quantity for quantity in main_quantities()}
OUTSET, DIAMETER, SCALE = QUANTITIES["wall_outset"], QUANTITIES["diameter"], QUANTITIES["scale_x"]
STEADY = [0.02, 0.04, 0.01, 0.03, 0.05, 0.02, 0.03, 0.00, 0.04, 0.03, 0.02, 0.04, 0.03, 0.01, 0.04, 0.02, 0.03, 0.05,
          0.01, 0.03]  # fmt: skip


def day(n):
    return BEGIN + timedelta(days=n)


def points(values, *, unit="mm", u=0.002, lots=None, machines=None):
    lots, machines = lots or [1] * len(values), machines or [1] * len(values)
    return tuple(
        SeriesPoint(100 + n, day(n), value, u, 10.0, unit, machine, lot)
        for n, (value, lot, machine) in enumerate(zip(values, lots, machines, strict=True))
    )


def judged(values, quantity=OUTSET, events=(), **more):
    return judge_drift(quantity, points(values, **more), events)


def said(drift, runs=None):
    return [
        (saying.sort, str(saying.text)) for saying in sayings(drift, drift.individuals.runs if runs is None else runs)
    ]


def test_a_steady_process_is_quiet():
    assert said(judged(STEADY)) == [(Sort.QUIET, "No signal in 20 results.")]
    assert said(judged(STEADY), judged(STEADY).ewma.runs) == [(Sort.QUIET, "No signal in 20 results.")]


@pytest.mark.parametrize(
    ("count", "text"),
    [
        (1, "Results since the limits began: 1. Trial limits need 7 more, firm ones 19 more."),
        (7, "Results since the limits began: 7. Trial limits need 1 more, firm ones 13 more."),
    ],
)
def test_too_few_results_cannot_tell_yet(count, text):
    assert said(judged(STEADY[:count])) == [(Sort.UNKNOWN, text)]


def test_trial_limits_say_so():
    assert said(judged(STEADY[:10])) == [
        (Sort.QUIET, "No signal in 10 results."),
        (Sort.UNKNOWN, "Trial limits from 10 results, drawn dashed; 10 more make them firm."),
    ]


def test_results_all_alike_ask_for_a_finer_instrument():
    assert said(judged([0.02] * 12)) == [
        (Sort.UNKNOWN, "The results do not differ at all, so there is no spread to set limits by; read with a finer "
                       "instrument.")
    ]  # fmt: skip


def test_a_signal_asks_to_read_again_first_and_never_to_adjust():
    sorts, texts = zip(*said(judged([*STEADY, 0.15])), strict=True)
    assert sorts == (Sort.SIGNAL, Sort.SIGNAL, Sort.NEXT)
    assert texts[0] == "Trial 120 gave +0.150 mm, above the limit +0.085 mm."
    assert texts[1] == "From trial 119 to trial 120 the result jumps by 0.120 mm; up to 0.070 mm is usual."
    assert texts[2] == (
        "For trial 120, read the same piece again with another instrument. If it stands, print the same piece again, "
        "with the same file and settings, and read it. If it comes again, look at the nozzle for wear, then try the "
        "flow: pages Wall and Mass."
    )


def test_a_result_whose_own_uncertainty_reaches_back_is_told_so():
    (text, *_) = [t for _, t in said(judged([*STEADY, -0.04], u=0.02))]
    assert text == "Trial 120 gave −0.040 mm, below the limit −0.030 mm. Its own uncertainty reaches back to the limit."


def test_an_earlier_signal_is_told_after_and_asks_for_nothing():
    (quiet, text), *earlier = said(judged([*STEADY, 0.15, 0.09, 0.02]))
    assert (quiet, text) == (Sort.QUIET, "Results since the last signal: 1.")
    assert [sort for sort, _ in earlier] == [Sort.EARLIER] * 3


@pytest.mark.parametrize(
    ("more", "rule", "text"),
    [
        ([0.071, 0.03, 0.072], Rule.TWO_OF_THREE,
         "Two of three results, trials 120 to 122, are more than two σ above the mean."),
        ([0.03, 0.04, 0.03, 0.05, 0.03, 0.04, 0.03, 0.04], Rule.ONE_SIDE,
         "Trials 119 to 127, 9 results in a row, are above the mean."),
        ([0.025, 0.02, 0.015, 0.012, 0.008], Rule.STEADILY,
         "Trials 119 to 124, 6 results in a row, fall steadily."),
    ],
)  # fmt: skip
def test_runs_in_words(more, rule, text):
    drift = judged([*STEADY, *more])
    runs = [run for run in drift.individuals.runs if run.rule is rule]
    assert (Sort.SIGNAL, text) in said(drift, runs)


def test_a_steady_rise_is_named_by_its_way():
    drift = judged([*STEADY, 0.029, 0.034, 0.037, 0.041, 0.045, 0.046])
    runs = [run for run in drift.individuals.runs if run.rule is Rule.STEADILY]
    assert said(drift, runs)[0] == (Sort.SIGNAL, "Trials 120 to 125, 6 results in a row, rise steadily.")


@pytest.mark.parametrize(("by", "side"), [(0.04, "above"), (-0.04, "below")])
def test_slow_wear_is_a_matter_of_the_smoothed_mean(by, side):
    drift = judged([*STEADY, *(value + by for value in STEADY[:10])])
    sort, text = said(drift, drift.ewma.runs)[0]
    assert sort is Sort.SIGNAL
    assert text.startswith(f"Slow drift: the smoothed mean is {side} its limits from trial 12")


def test_no_more_than_three_signals_are_told():
    drift = judged([*STEADY, 0.2, 0.0, 0.2, 0.0, 0.2, 0.0, 0.2])
    assert len([1 for sort, _ in said(drift) if sort in (Sort.SIGNAL, Sort.EARLIER)]) == 3


def test_an_identified_event_begins_the_limits_anew_another_only_marks():
    moved = [*STEADY, *(value + 0.2 for value in STEADY)]
    belt = Event(day(19.5), "new belt")
    drift = judged(moved, events=[Event(day(99), "later"), belt, Event(day(-1), "before")])
    assert [(phase.start, phase.stop) for phase in drift.individuals.phases] == [(0, 20), (20, 40)]
    assert drift.phase.standing is Standing.FIRM
    assert said(drift)[0][0] is Sort.QUIET
    assert [(place, event.label) for place, event in drift.events] == [(0, "before"), (20, "new belt"), (40, "later")]
    rumour = judged(moved, events=[Event(day(19.5), "somebody knocked at it", identified=False)])
    assert len(rumour.individuals.phases) == 1 and len(rumour.events) == 1
    assert said(rumour)[0][0] is Sort.SIGNAL


def test_a_signal_before_the_event_is_not_told_any_more():
    values = [*STEADY, 0.2, *STEADY]
    drift = judged(values, events=[Event(day(20.5), "new nozzle")])
    assert any(run.last == 20 for run in drift.individuals.runs)
    assert [sort for sort, _ in said(drift)] == [Sort.QUIET]


def test_a_new_lot_begins_the_limits_of_what_the_lot_owns_only():
    series = points([0.1, 0.1, 0.2, 0.2], lots=[1, 1, 2, None], machines=[1, 2, 2, 2])
    lots, machines = {1: "Slate 7", 2: "Ash 3"}, {1: "Bramble", 2: "Thistle"}
    assert changes_of_owner(OUTSET, series, lots, machines) == ()
    assert changes_of_owner(DIAMETER, series, lots, machines) == (
        Event(day(2), "lot Ash 3"), Event(day(3), "lot ?"))  # fmt: skip
    assert changes_of_owner(SCALE, series, lots, machines)[0] == Event(day(1), "Thistle")
    assert len(changes_of_owner(SCALE, series, lots, machines)) == 3


def test_numbers_with_their_uncertainty_and_unit():
    rows = dict(numbers(judged(STEADY, u=0.002)))
    assert rows["newest"] == "+0.0300 ± 0.0045 mm"
    assert rows["mean"] == "+0.028 mm"
    assert rows["spread σ"] == "0.019 mm"
    assert (rows["lower limit"], rows["upper limit"]) == ("−0.030 mm", "+0.085 mm")
    assert rows["limits from"] == "20 results"
    assert list(dict(numbers(judged(STEADY[:5])))) == ["newest"]


def test_a_ratio_is_shown_in_percent_an_angle_in_degrees_and_a_size_without_plus():
    assert shown_unit("1") == (100.0, "%")
    assert shown_unit("rad") == (pytest.approx(57.29578), "°")
    assert shown_unit("g/cm3") == (1.0, "g/cm3")
    rows = dict(numbers(judged([value / 100 for value in STEADY], SCALE, unit="1", u=0.0001)))
    assert rows["newest"] == "+0.030 ± 0.022 %"
    assert (rows["lower limit"], rows["upper limit"]) == ("−0.030 %", "+0.085 %")
    drift = judged([1.7502 + value for value in STEADY], DIAMETER)
    assert dict(numbers(drift))["mean"] == "1.778 mm"
    assert limit_text(judged(STEADY[:3]), 0.0312) == "+0.0312"


def test_a_flow_factor_is_shown_as_it_is_typed():
    rows = dict(numbers(judged([0.95 + value / 10 for value in STEADY], QUANTITIES["flow_ratio"], unit="1", u=0.001)))
    assert rows["newest"] == "0.9530 ± 0.0022" and rows["lower limit"] == "0.9470"


def test_results_in_different_units_are_refused():
    mixed = (*points(STEADY), *points([1.0], unit="1"))
    with pytest.raises(InputError, match="different units; withdraw those in the wrong one") as raised:
        judge_drift(OUTSET, mixed)
    assert raised.value.field == "unit"


def test_no_result_is_refused():
    with pytest.raises(InputError, match="no kept result yet") as raised:
        judge_drift(OUTSET, ())
    assert raised.value.field == "value"


def test_a_planted_nozzle_wear_is_found_and_an_unworn_one_left_in_peace():
    """0.5 µm a print on a spread of 5 µm."""
    rng, found, alarms = np.random.default_rng(20), 0, 0
    for _ in range(100):
        noise = 0.03 + rng.normal(0, 0.005, 60)
        wear = np.concatenate([np.zeros(20), 0.0005 * np.arange(40)])
        worn, unworn = judged(noise + wear), judged(noise)
        found += said(worn, worn.ewma.runs)[0][0] is Sort.SIGNAL
        alarms += said(unworn, unworn.ewma.runs)[0][0] is Sort.SIGNAL
    assert found >= 90 and alarms <= 15
