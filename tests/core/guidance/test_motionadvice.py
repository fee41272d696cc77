"""Verdicts on speed trials and on half speed."""

import numpy as np
import pytest

from core.errors import InputError
from core.guidance.halfspeedadvice import judge_diagnosis, run_words, short_run_words
from core.guidance.motionadvice import LevelReadings, judge_speed, layer_words, level_rows, time_text
from core.guidance.names import is_magnitude, parameter_words
from core.guidance.verdict import Setting
from core.motion_trials.gcodetime import Limits, straights_path
from core.motion_trials.halfspeed import Run
from core.motion_trials.layertime import LayerRule, LayerTimes
from core.motion_trials.parttime import part_times

LEVELS = (40.0, 56.0, 78.0, 110.0, 154.0)
TIMES = dict(zip(LEVELS, (9000.0, 7000.0, 5600.0, 5500.0, 5450.0), strict=True))


def judged(means, of="speed", asked=3.0, limit=200.0, pieces=3):
    n = 2 * pieces
    level = [v for v in LEVELS for _ in range(n)]
    score = [m for m in means for _ in range(n)]
    readings = LevelReadings(of, level, score, ["1", "2"] * (len(level) // 2), TIMES, asked, limit)
    return judge_speed(readings, np.random.default_rng(2))


def test_the_knee_is_the_level_to_use_even_where_faster_is_good_enough():
    found = judged((4, 4, 4, 4, 1))
    (advice,) = found.advice
    assert advice.setting is Setting.PRINT_SPEED and found.new_value == advice.amount == 78
    assert "Print at 78 mm/s" in advice.action and "62 % of the time of 40 mm/s" in advice.because
    assert "Beyond 78 mm/s" in found.mind[0] and found.method == "speed 2"
    speed, score = found.estimates()
    assert speed.value == 78 and speed.u == pytest.approx(32 / 12**0.5) and score.value > 3.5
    assert all(is_magnitude(e.name) and parameter_words(e.name) for e in (speed, score))
    rows = level_rows(found.trial.levels, "speed")
    assert rows[0][0] == "40 mm/s" and rows[2][2] == "1 h 33 min" and "to" in rows[0][1]


def test_accelerations_are_levels_too():
    found = judged((4, 4, 4, 1, 0), of="acceleration")
    assert found.advice[0].setting is Setting.ACCELERATION and "mm/s²" in found.advice[0].action
    assert found.estimates()[0].name == "trial_acceleration"


def test_all_good_asks_for_faster_levels():
    readings = judged((3.0, 3, 3, 3, 3), asked=2.0, limit=None)
    assert "No difference" in " ".join(readings.mind) and "not typed yet" in " ".join(readings.mind)
    times = {level: 9000.0 * 40 / level for level in LEVELS}
    n = len(LEVELS) * 6
    level = [v for v in LEVELS for _ in range(6)]
    last = judge_speed(LevelReadings("speed", level, [4] * (n - 6) + [3] * 6, ["1", "2"] * 15, times, 2.0),
                       np.random.default_rng(0))  # fmt: skip
    assert last.new_value == 154 and "extend the trial" in " ".join(last.mind)
    assert last.estimates()[0].u == pytest.approx(44 / 12**0.5)


def test_no_level_good_enough_is_not_only_speed():
    found = judged((1, 1, 1, 0, 0))
    assert found.advice[0].setting is Setting.UNDECIDED and "half speed" in found.advice[0].action
    assert found.new_value is None and found.estimates() == ()
    close = judged((3, 2, 1, 0, 0), pieces=1)
    assert "Score more specimens of 40 mm/s" in close.advice[0].action


def test_limits_are_refused():
    with pytest.raises(InputError, match="lost steps") as error:
        judged((4, 4, 4, 4, 1), limit=100.0)
    assert (error.value.field, error.value.row) == ("level", 18)
    with pytest.raises(InputError, match="cannot be"):
        judge_speed(LevelReadings("speed", [0.0], [1.0], ["1"], {}, 3.0), np.random.default_rng(0))


@pytest.mark.parametrize(("seconds", "text"), [
    (48, "48 s"), (59.6, "1 min 0 s"), (117, "1 min 57 s"), (125, "2 min 5 s"), (179.7, "3 min 0 s"),
    (599.7, "10 min"), (720, "12 min"), (3599, "1 h 0 min"), (5040, "1 h 24 min")])
def test_times_for_people(seconds, text):
    assert time_text(seconds) == text


@pytest.mark.parametrize(
    ("scores", "setting", "says"),
    [
        ({"usual": (4, 4), "half_speed": (4, 4)}, Setting.LEAVE, "without fault"),
        ({"usual": (1, 1), "half_speed": (1, 1)}, Setting.SETUP, "lost motion"),
        ({"usual": (1, 1), "half_speed": (3, 3)}, Setting.DYNAMICS, "Two more runs split"),
        ({"usual": (1, 1), "half_speed": (3, 3), "half_rate": (3, 3), "long_layers": (1, 1)}, Setting.DYNAMICS,
         "flow rate"),
        ({"usual": (1, 1), "half_speed": (3, 3), "half_rate": (1, 1), "long_layers": (3, 3)}, Setting.COOLING, "layer"),
        ({"usual": (1, 1), "half_speed": (3, 3), "half_rate": (3, 3), "long_layers": (3, 3)}, Setting.DYNAMICS, "both"),
        ({"usual": (1, 1), "half_speed": (3, 3), "half_rate": (1, 1), "long_layers": (1, 1)}, Setting.ACCELERATION,
         "ringing"),
        ({"usual": (1, 1), "half_speed": (3, 1)}, Setting.UNDECIDED, "do not agree"),
    ],
)  # fmt: skip
def test_half_speed_names_the_cause(scores, setting, says):
    rows = [(run, value, judge) for run, pair in scores.items() for value, judge in zip(pair, "12", strict=True)]
    found = judge_diagnosis(*(list(column) for column in zip(*rows, strict=True)))
    (advice,) = found.advice
    assert advice.setting is setting and says in advice.action and "Mean scores of 2 judges: usual" in advice.because
    caveat = "doubles the time of a layer" in " ".join(found.mind)
    assert caveat == ("Two more runs" in advice.action)
    assert found.estimates() == () and found.method == "halfspeed 1"
    assert run_words(Run.LONG_LAYERS) and short_run_words(Run.HALF_RATE)


def with_layers(means, rule, limit=200.0, pieces=3):
    """The usual straight as the part, held against a least layer time."""
    times = part_times(straights_path(15.0, 400), Limits(1500.0), "speed", LEVELS, rule=rule)
    n = 2 * pieces
    level = [v for v in LEVELS for _ in range(n)]
    score = [m for m in means for _ in range(n)]
    piece = [f"{k // 2}" for k in range(len(level))]
    readings = LevelReadings(
        "speed", level, score, ["1", "2"] * (len(level) // 2), times.time_s, 3.0, limit, piece, times.layers
    )
    return judge_speed(readings, np.random.default_rng(2))


def test_levels_beyond_the_floor_of_the_layer_time_buy_nothing():
    """600 mm of path in 10 s is 60 mm/s: 78 mm/s and above only wait."""
    found = with_layers((3, 4, 4, 4, 4), LayerRule(10.0, 600.0), pieces=6)
    (advice,) = found.advice
    assert found.new_value == 78 and "only waits for the least layer time" in advice.because
    says = " ".join(found.mind)
    assert "From 78 mm/s on the shortest layer is done before its least 10 s and waits" in says
    assert "At 154 mm/s 10 of 10 layers wait, 24 s in all" in says and "faster buys nothing" in says
    assert "Up to 60 mm/s (600 mm of path in 10 s) none waits" in says and "extend the trial" not in says
    floor = found.estimates()[-1]
    assert floor.name == "layer_floor" and floor.unit == "mm/s" and 60 < floor.value < 70 and floor.u > 0
    low, high = found.readings.layers.floor_mm_s
    assert floor.u == pytest.approx((high - low) / np.sqrt(12))  # JCGM 100:2008 4.3.7
    assert is_magnitude(floor.name) and parameter_words(floor.name) == "a layer waits from"
    rows = level_rows(found.trial.levels, "speed", found.readings.layers)
    assert [row[2] for row in rows] == [
        "2 min 37 s",
        "1 min 58 s",
        "1 min 40 s, waits 7 s",
        "1 min 40 s, waits 20 s",
        "1 min 40 s, waits 24 s",
    ]


def test_a_least_layer_time_that_holds_nothing_up_is_told_too():
    found = with_layers((3, 4, 4, 4, 4), LayerRule(1.0, 600.0), pieces=6)
    assert any("holds no level up" in says for says in found.mind) and found.estimates()[-1].name == "trial_score"
    assert any("The last level tried" in says for says in found.mind) == (found.new_value == 154)
    assert level_rows(found.trial.levels, "speed", found.readings.layers)[-1][2] == "1 min 16 s"


def test_the_shortest_layer_of_a_file_is_named():
    layers = LayerTimes(LayerRule(5.0), 12, 150.0, 314, {40.0: 4.0}, {40.0: 3.0}, {40.0: 2}, (30.0, 32.0))
    assert "The shortest layer begins at line 314 of the file" in layer_words(layers, [40.0], "mm/s")
    assert "2 of 12 layers wait, 3 s in all" in layer_words(layers, [40.0], "mm/s")


def test_one_piece_of_each_level_is_told():
    assert any("may be the piece" in says for says in with_layers((4, 3, 2, 1, 0), None, pieces=1).mind)
    assert not any("may be the piece" in says for says in with_layers((4, 3, 2, 1, 0), None, pieces=2).mind)
