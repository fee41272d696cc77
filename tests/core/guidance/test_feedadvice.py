"""Each answer of a feed trial in words: what to do, the share with U, and what to leave alone."""

import math

import pytest

from core.errors import InputError
from core.filament.slip import HotFeed
from core.guidance.feedadvice import ByMarks, ByMass, FeedReadings, judge_feed
from core.guidance.names import is_magnitude, parameter_words
from core.guidance.verdict import Setting, setting_words
from core.quantity import Estimate

PER_M = Estimate("mass_per_length", 2.98, 0.00298, math.inf, "g/m")
HOT = HotFeed(0.4, 240.0, 300.0)
FREE = (22.0, 22.1, 21.9)


def judged(rests, in_force=93.0, previous=None, u_reading_mm=0.3, commanded=100.0, rates=None, hot=None):
    n = len(rests)
    fed = ByMarks([(commanded or 100.0) + 20.0] * n, rests, u_reading_mm)
    return judge_feed(FeedReadings([commanded] * n, fed, rates or [None] * n, in_force, hot), previous)


@pytest.mark.parametrize(
    ("rests", "setting", "words"),
    [
        ([20.0, 20.1, 19.9], Setting.LEAVE, "Change nothing"),
        ([23.0, 22.9, 23.1], Setting.EXTRUDER_STEPS, "from 93 to 95.88 ± "),
        ([70.9, 71.0, 71.2], Setting.WRONG_PART, "mend the parts list; do not trim it"),
        ([26.0, 26.2, 25.8], Setting.UNDECIDED, "then feed again unloaded"),
        ([8.0, 8.2, 7.9], Setting.UNDECIDED, "then feed again unloaded"),
    ],
)
def test_each_answer_has_its_sentence(rests, setting, words):
    found = judged(rests)
    (advice,) = found.advice
    assert advice.setting is setting
    assert words in advice.action
    assert " ± " in advice.because
    assert "Flow factor" in advice.do_not_touch
    assert found.method == "feed 1"
    assert len(found.estimates()) == 2


def test_more_than_commanded_asks_which_way_was_measured():
    """112 of 100 mm fed: 120 - 8."""
    assert "Check which way you measured" in judged([8.0, 8.2, 7.9]).advice[0].because
    assert "which way" not in judged([26.0, 26.2, 25.8]).advice[0].because


def test_upside_down_and_unclear_have_theirs():
    (upside,) = judged([26.0, 25.9, 26.1], in_force=93.0 * 0.97, previous=(0.97, 93.0)).advice
    assert "undo the last change first" in upside.action
    (unclear,) = judged([20.4], u_reading_mm=0.5, commanded=50.0).advice
    assert "Leave 93 steps/mm. Feed 200 to 300 mm" in unclear.action


def test_one_repeat_changes_nothing():
    """One mark misread would be a change; with a second repeat it is one."""
    (once,) = judged([23.0]).advice
    assert once.setting is Setting.UNDECIDED
    assert "Keep 93 steps/mm and feed twice more" in once.action
    assert "(one repeat)" in once.because
    assert judged([23.0, 23.1]).advice[0].setting is Setting.EXTRUDER_STEPS


def test_the_value_in_force_is_told_with_all_its_digits():
    assert "from 415.25 to 428." in judged([23.0, 22.9, 23.1], in_force=415.25).advice[0].action


def test_a_wide_interval_that_leaves_says_so():
    assert "The interval is wide" in judged([20.1], u_reading_mm=1.0).advice[0].because
    assert "wide" not in judged([20.0, 20.1, 19.9], u_reading_mm=0.1).advice[0].because


def test_by_mass_the_steps_follow_as_by_marks():
    """1.9 of 2 m delivered: 5.662 g of 2.98 g/m."""
    fed = ByMass([5.781, 5.783], PER_M, 0.01)
    found = judge_feed(FeedReadings([2000.0, 2000.0], fed, [None, None], 93.0))
    assert found.feed.ratio.value == pytest.approx(5.782 / 5.96)
    assert found.feed.ratio.u == pytest.approx(math.hypot(0.01 / 5.96 / math.sqrt(2), 0.001 * 5.782 / 5.96))
    assert found.feed.steps.value == pytest.approx(93.0 / (5.782 / 5.96))
    assert found.advice[0].setting is Setting.EXTRUDER_STEPS


LOADED = (22.0, 22.2, 22.1, 22.0, 22.1, 22.9, 24.0, 25.1)
RATES = (2.0, 4.0, 6.0, 8.0, 10.0, 12.0, 14.0, 16.0)


def test_slip_under_load_is_not_booked_to_the_steps():
    found = judged([*FREE, *LOADED], rates=[None] * 3 + list(RATES), hot=HOT)
    steps, slip = found.advice
    assert steps.setting is Setting.EXTRUDER_STEPS
    assert found.feed.ratio.value == pytest.approx(0.98)
    assert slip.setting is Setting.PRINT_SPEED
    assert "; print at most at" in slip.action and "until the ceiling is measured" in slip.action
    assert 8.0 < slip.amount < 13.0 and slip.unit == "mm3/s"
    assert "At 16 mm³/s 94.90 ± " in slip.because
    assert "0.5 % is lost at" in slip.because and "mm³/s" in slip.because
    assert "without load" not in slip.because
    assert "Holds for nozzle 0.4 mm, 240 °C ± 5 K, up to 16 mm³/s." in slip.because
    assert "neither cures slip" in slip.do_not_touch
    assert [e.name for e in found.estimates()] == ["feed_ratio", "feed_steps_mm", "loaded_share", "slip_rate"]


def test_no_slip_is_an_answer_too_and_drag_is_told_from_it():
    even = [24.0, 24.1, 23.9, 24.0, 24.1, 23.9, 24.1, 24.0]
    _, slip = judged([*FREE, *even], rates=[None] * 3 + list(RATES), hot=HOT, u_reading_mm=0.1).advice
    assert slip.setting is Setting.LEAVE
    assert "No slip is proved up to 16 mm³/s" in slip.action
    assert "drag of the spool, a worn wheel, a blocked nozzle" in slip.because


def test_a_loss_that_is_not_bounded_is_not_told():
    late = [22.0, 22.01, 21.99, 22.0, 22.01, 21.99, 22.15, 22.3]
    _, slip = judged([*FREE, *late], rates=[None] * 3 + list(RATES), hot=HOT, u_reading_mm=0.05).advice
    assert slip.setting is Setting.PRINT_SPEED
    assert "is lost at" not in slip.because


def test_only_loaded_repeats_leave_the_steps():
    steps, slip = judged(LOADED, rates=list(RATES), hot=HOT).advice
    assert steps.setting is Setting.UNDECIDED
    assert "Keep 93 steps/mm until it was fed without load" in steps.action
    assert "without load" not in slip.because
    assert slip.setting is Setting.PRINT_SPEED


def test_few_repeats_under_load_say_how_many_it_takes():
    _, slip = judged([22.1, 22.0], rates=[2.0, 4.0], hot=HOT).advice
    assert slip.setting is Setting.UNDECIDED
    assert "5 repeats at 4 rates or more" in slip.action
    assert "Repeats under load so far: 2, rates: 2" in slip.because


@pytest.mark.parametrize(
    ("rests", "rates", "hot", "commanded", "field", "row"),
    [
        ([22.0, 22.1], [None, 4.0], None, 100.0, "temperature_c", None),
        ([22.0, -1.0], [None, 4.0], HOT, 100.0, "rest_mm", 1),
        ([22.0, 10.0], [None, 4.0], HOT, 100.0, "share_ratio", 1),
        ([12.0, 12.0], [None, 4.0], HOT, 0.0, "commanded_mm", 0),
        ([10.0], [4.0], HOT, 0.0, "commanded_mm", 0),
        ([], [], None, 100.0, "fed_mm", None),
    ],
)
def test_refusals_name_the_row_among_all(rests, rates, hot, commanded, field, row):
    with pytest.raises(InputError) as refused:
        judged(rests, rates=rates, hot=hot, commanded=commanded)
    assert (refused.value.field, refused.value.row) == (field, row)
    assert refused.value.message


@pytest.mark.parametrize("setting", list(Setting))
def test_every_setting_has_words(setting):
    assert setting_words(setting)


def test_names_of_ceilings_carry_their_temperature_and_sizes_have_no_sign():
    assert parameter_words("flow_ceiling_230c") == "flow ceiling at 230 °C"
    assert parameter_words("squareness_xy") == "squareness XY"
    assert is_magnitude("diameter") and is_magnitude("flow_ceiling_230c")
    assert not is_magnitude("wall_outset")
    assert is_magnitude("loaded_share") and parameter_words("slip_rate")
