"""A kept trial looked at again: causes, parts of the shop, when to stop, what wrong moves would do."""

from dataclasses import replace

import numpy as np
import pytest

from core.guidance.splitpair import SplitPair
from core.guidance.whosejudge import advised_changes, cause_words, judge_whose
from core.part_size.features import FeatureKind
from core.part_size.prediction import Changes
from core.part_size.whose import USUAL_PARTS, Part
from core.records.rows import Trial
from tests.core.guidance.test_predicted import CALIPER, size_trial
from tests.core.part_size.printouts import Faults

OUTSET = Faults(scale=(-0.002, 0), wall_outset_mm=0.05)


def judged(faults=OUTSET, parts=USUAL_PARTS, changes=None, tolerance="m", seed=1):
    trial = size_trial(1, faults, np.random.default_rng(seed))
    return judge_whose(trial, CALIPER, parts, changes or Changes(), tolerance)


def test_the_advised_change_takes_back_what_is_significant():
    fit = judged().fit
    advised = advised_changes(fit)
    assert advised.offset_mm == pytest.approx(-0.05, abs=0.01)
    assert advised.factor_ratio["x"] == pytest.approx(1.002, abs=3e-4) and set(advised.factor_ratio) == {"x"}


def test_the_small_piece_trap_is_shown_at_the_largest_part():
    found = judged(changes=advised_changes(judged().fit))
    names = [str(name) for name, _ in found.wrong]
    assert names == ["steps corrected from 10 mm", "everything booked to the steps"]
    small = found.wrong[0][1]
    assert small.at_length_mm == 180.0 and small.factor == pytest.approx(10 / 10.08, abs=2e-3)
    advised = found.advised.error_mm[0]
    assert found.largest.nominal_mm == 180.0 and advised == pytest.approx(found.tried.predicted.error_mm[2])
    assert [m.before_mm for _, m in found.wrong] == pytest.approx([float(found.tried.predicted.as_is_mm[2])] * 2)
    assert abs(small.after_mm) > 1.5 and abs(advised) < 0.15 and found.tried.p_better > 0.99
    assert found.shares.names[-1] == "unexplained"


def test_the_stop_meter_follows_the_tolerance():
    assert judged(tolerance=0.05).stop[0] is False
    assert judged(tolerance=20.0).stop[0] is True and "quarter" in judged(tolerance=20.0).stop[1]


def test_parts_without_an_outside_length_show_no_wrong_move():
    window = (Part("w", "x", FeatureKind.CLOSED_HOLE, 30.0),)
    assert judged(parts=window).wrong == () and judged(parts=window).largest is None


def test_no_short_length_no_small_piece():
    trial = size_trial(1, OUTSET, np.random.default_rng(1))
    long = [i for i, n in enumerate(trial.readings["nominal_mm"]) if n > 30]
    columns = {name: [values[i] for i in long] for name, values in trial.readings.items()}
    found = judge_whose(Trial("sizeerror", readings=columns, id=1), None, USUAL_PARTS, Changes())
    assert [str(name) for name, _ in found.wrong] == ["everything booked to the steps"]


def test_outside_lengths_alone_share_what_is_not_told():
    nominal = [10.0, 20.0, 40.0, 60.0, 90.0, 120.0]
    read = [n + 0.08 + 0.002 * (-1) ** i for i, n in enumerate(nominal)]
    columns = {"nominal_mm": nominal, "measured_mm": read, "axis": ["x"] * 6, "kind": ["outside"] * 6}
    found = judge_whose(Trial("sizeerror", readings=columns, id=1), None, USUAL_PARTS[:3], Changes(), 0.2)
    assert found.shares.names == ("scale", "untold", "unexplained")
    assert found.wrong[0][1].factor == pytest.approx(10 / 10.08, abs=1e-3)


def test_the_shops_split_divides_the_scale():
    trial = size_trial(1, OUTSET, np.random.default_rng(1))
    pair = SplitPair("x", 0.0005, 0.0002, -0.0025, 0.0003, 0.0)
    found = judge_whose(trial, CALIPER, USUAL_PARTS, Changes(), split={"x": pair})
    assert found.shares.names[:2] == ("shrinkage", "machine")
    scaled = judge_whose(trial, CALIPER, USUAL_PARTS, Changes(), split={"x": replace(pair, axis_ratio=1.001)})
    longest = int(np.argmax(scaled.shares.nominal_mm))
    assert found.shares.value_mm[longest, 1] == pytest.approx(0.0005 * 140.0, rel=1e-3)
    assert scaled.shares.value_mm[longest, 1] == pytest.approx(0.0015 * 140.0, rel=1e-3)


def test_every_cause_has_words():
    names = ("scale", "shrinkage", "machine", "wall_outset", "lost_motion", "squash", "origin", "boss_constant",
             "bore_constant", "untold", "unexplained")  # fmt: skip
    assert len({cause_words(name) for name in names}) == len(names)
