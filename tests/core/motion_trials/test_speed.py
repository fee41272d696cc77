"""The speed trial and half speed: planted causes are named, and no other."""

import numpy as np
import pytest

from core.errors import InputError
from core.motion_trials.halfspeed import Cause, Change, Run, judge_half_speed
from core.motion_trials.speed import judge_levels

LEVELS = (40.0, 56.0, 78.0, 110.0, 154.0)
TIMES = dict(zip(LEVELS, (1000.0, 800.0, 700.0, 680.0, 675.0), strict=True))


def trial(scores, asked=3.0, times=TIMES, pieces=3):
    """Two judges who agree, some pieces of each level."""
    n = 2 * pieces
    return judge_levels(
        [level for level in LEVELS for _ in range(n)],
        [score for score in scores for _ in range(n)],
        ["1", "2"] * (pieces * len(LEVELS)),
        times,
        asked,
        np.random.default_rng(1),
    )


def test_the_fastest_level_that_is_proved_good_enough():
    found = trial((4, 4, 4, 2, 0))
    assert found.chosen.scored.step == 78.0
    assert found.knee.scored.step == 78.0  # the next one saves 2.9 %
    assert [level.enough for level in found.levels] == [True, True, True, False, False]
    assert [level.front for level in found.levels][-2:] == [True, True]


def test_a_faster_level_that_saves_little_is_left():
    assert trial((4, 4, 4, 4, 1)).chosen.scored.step == 78.0  # 110 mm/s is good too and saves 2.9 %


def test_no_level_is_good_enough():
    found = trial((2, 2, 1, 1, 0))
    assert found.chosen is None


def test_where_every_step_saves_there_is_no_knee_and_slower_is_not_better():
    times = {level: 1000.0 / level for level in LEVELS}
    found = trial((3, 4, 4, 3, 1), times=times)
    assert found.knee is None and not found.levels[0].front


@pytest.mark.parametrize(("asked", "times", "field"), [(5.0, TIMES, "asked_score"), (3.0, {40.0: 1.0}, "time_s")])
def test_refused(asked, times, field):
    with pytest.raises(InputError) as error:
        trial((4, 4, 4, 2, 0), asked, times)
    assert error.value.field == field


def runs(**scores):
    names = {"usual": Run.USUAL, "half": Run.HALF_SPEED, "rate": Run.HALF_RATE, "layers": Run.LONG_LAYERS}
    rows = [(names[name], s, j) for name, pair in scores.items() for s, j in zip(pair, "12", strict=False)]
    return judge_half_speed(*(list(column) for column in zip(*rows, strict=True)))


@pytest.mark.parametrize(
    ("scores", "cause"),
    [
        ({"usual": (1, 1), "half": (1, 1)}, Cause.SETUP),
        ({"usual": (1, 1), "half": (3, 3)}, Cause.DYNAMICS),
        ({"usual": (1, 1), "half": (3, 1)}, Cause.OPEN),
        ({"usual": (4, 4), "half": (4, 4)}, Cause.NO_DEFECT),
        ({"usual": (1, 1), "half": (3, 3), "rate": (3, 3)}, Cause.DYNAMICS),
        ({"usual": (1, 1), "half": (3, 3), "rate": (3, 3), "layers": (1, 1)}, Cause.RATE),
        ({"usual": (1, 1), "half": (3, 3), "rate": (1, 1), "layers": (2, 3)}, Cause.COOLING),
        ({"usual": (1, 1), "half": (3, 3), "rate": (2, 2), "layers": (2, 3)}, Cause.RATE_AND_COOLING),
        ({"usual": (1, 1), "half": (3, 3), "rate": (1, 1), "layers": (1, 1)}, Cause.MOTION),
        ({"usual": (1, 1), "half": (3, 3), "rate": (1, 3), "layers": (1, 1)}, Cause.OPEN),
    ],
)
def test_each_cause_is_named(scores, cause):
    assert runs(**scores).cause is cause


def test_changes_are_told_by_run():
    found = runs(usual=(1, 2), half=(3, 3), rate=(2, 2))
    assert found.changes == {
        Run.HALF_SPEED: Change.BETTER, Run.HALF_RATE: Change.DISAGREE, Run.LONG_LAYERS: Change.NOT_RUN
    }  # fmt: skip
    assert found.scores[Run.USUAL] == {"1": 1, "2": 2}


@pytest.mark.parametrize(
    ("scores", "field"),
    [({"usual": (1, 9), "half": (1, 1)}, "score"), ({"usual": (1,), "half": (1,)}, "judge"),
     ({"usual": (1, 1)}, "score"), ({"usual": (1, 1), "half": (2,)}, "score")],
)  # fmt: skip
def test_half_speed_refused(scores, field):
    with pytest.raises(InputError) as error:
        runs(**scores)
    assert error.value.field == field
