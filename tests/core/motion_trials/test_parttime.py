"""The time of a part by level."""

import numpy as np
import pytest

from core.motion_trials.gcodepath import read_path
from core.motion_trials.gcodetime import Limits, straights_path, time_path
from core.motion_trials.parttime import ACCELERATION, SPEED, part_times

PATH = read_path(b"M83\n" + b"".join(b"G1 X%d Y%d E0.6 F3000\n" % (20 * (n % 2), n) for n in range(100)))
LIMITS = Limits(1000.0, 0.02)


def test_levels_of_speed():
    done = []
    found = part_times(PATH, LIMITS, SPEED, [80, 40, 80], ceiling_mm3_s=4.0, step=done.append)
    assert found.time_s == {v: time_path(PATH, LIMITS, speed_mm_s=v).duration_s for v in (40, 80)}
    assert found.above_ratio[80] > 0.9 and found.above_ratio[40] == 0  # 0.072 mm3 for 1 mm of path
    assert found.at_speed_ratio[40] > found.at_speed_ratio[80]
    assert found.levels[0] == pytest.approx(25) and found.levels[-1] == pytest.approx(128)
    assert np.all(np.diff(found.along_s) < 0) and done[-1] == 1.0 and len(done) == 15
    rates = found.rate_mm3_s[80]
    assert np.all(np.diff(rates) >= 0) and rates[-1] == time_path(PATH, LIMITS, speed_mm_s=80).rate_mm3_s.max()
    assert rates[20] == pytest.approx(rates[-1], rel=0.2)
    assert found.rate_mm3_s[40][-1] == pytest.approx(rates[-1] / 2, rel=0.2)
    assert found.moves == 100 and found.printed_mm == pytest.approx(float(PATH.length_mm[PATH.prints].sum()))


def test_a_path_that_prints_nothing_has_no_rates():
    travel = part_times(read_path(b"G0 X50 F6000"), LIMITS, SPEED, [40])
    assert not travel.rate_mm3_s[40].any() and travel.printed_mm == 0


def test_levels_of_acceleration():
    own = part_times(PATH, LIMITS, ACCELERATION, [500, 2000])
    assert own.time_s[500] > own.time_s[2000] and own.above_ratio == {}
    fast = part_times(straights_path(20, 40), LIMITS, ACCELERATION, [500, 2000], speed_mm_s=100.0)
    assert fast.time_s[2000] == time_path(straights_path(20, 40), Limits(2000.0, 0.02), speed_mm_s=100.0).duration_s
