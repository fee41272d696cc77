"""What a person is told after the check of an instrument: planted faults name themselves."""

from dataclasses import replace

import numpy as np
import pytest

from core.guidance.instrumentadvice import judge_instrument
from core.guidance.names import parameter_words
from core.guidance.verdict import Setting, setting_words
from core.measuring.hand import HandGrade
from core.measuring.instrumentkinds import LightGap, Part, Plan
from tests.core.measuring.checks import rows, taken, with_reading


def said(judgement):
    return " ".join([*(f"{a.action} {a.because}" for a in judgement.advice), *judgement.mind])


def test_a_good_caliper_is_used():
    judgement = judge_instrument(taken(rng=np.random.default_rng(1)))
    (advice,) = judgement.advice
    assert advice.setting is Setting.USE_INSTRUMENT
    assert "limit ± 0.0" in said(judgement)
    assert judgement.mind == ()
    (stored,) = judgement.verdict_json()
    assert stored["conformity"] == "conforming"
    assert setting_words(Setting(stored["setting"])) == "Use this instrument"
    assert judgement.method == "instrument 1"
    assert all(parameter_words(e.name) for e in judgement.estimates())


@pytest.mark.parametrize(
    ("planted", "setting", "words"),
    [
        ({"scale": 2e-3}, Setting.INSTRUMENT_OUT, "Have it mended or use another"),
        ({"plan": Plan.ZERO, "zero": 0.05}, Setting.INSTRUMENT_OUT, "Wipe it, set zero, and check it again"),
        ({"plan": Plan.ZERO}, Setting.UNDECIDED, "zero alone proves nothing"),
        ({"plan": Plan.HAND}, Setting.UNDECIDED, "about the hand only"),
        ({"zero": 0.02}, Setting.UNDECIDED, "Nothing is proved this near to the limit"),
        ({"scale": 2e-3, "limit": 0.3}, Setting.USE_INSTRUMENT, "Its scale is off by +0.2"),
        ({"plan": Plan.TWO_PEOPLE, "offset": 0.05}, Setting.UNDECIDED, "The second person reads +0.05"),
        ({"plan": Plan.HAND}, Setting.UNDECIDED, "All re-seated readings are equal"),
        ({"kind": "balance"}, Setting.USE_INSTRUMENT, "With steps of 0.01 g weigh 3 g or more"),
    ],
)
def test_planted_faults(planted, setting, words):
    judgement = judge_instrument(taken(**planted))
    assert judgement.advice[0].setting is setting
    assert words in said(judgement)


def test_zero_that_moved_is_told_before_anything_else_is_tried():
    good = taken()
    again = [row for row, part in enumerate(good.part) if part is Part.ZERO][-1]
    judgement = judge_instrument(with_reading(good, again, 0.03))
    assert judgement.check.worst() is not None
    assert "Zero moved from 0 to 0.03 mm during this check (0.01 mm is usual)." in said(judgement)
    assert "readings in between" not in said(judgement)
    judgement = judge_instrument(with_reading(with_reading(good, again, 0.03), again - 1, 0.03))
    assert "The readings in between (15) are marked doubtful. Read two of them again." in said(judgement)
    assert "Find out why zero moved" in said(judgement)


def test_light_between_the_jaws_is_wiped_before_anything_is_read_again():
    judgement = judge_instrument(replace(taken(), light_gap=LightGap.SEEN))
    assert judgement.advice[0].setting is Setting.UNDECIDED
    assert "Wipe the jaws and look again: where light stays, they are worn" in said(judgement)


@pytest.mark.parametrize(
    ("tolerance", "grade", "words"),
    [
        (0.2, HandGrade.GOOD, "is good for ± 0.2 mm: below a tenth of it"),
        (0.06, HandGrade.USABLE, "is usable for ± 0.06 mm: below a fifth of it"),
        (0.03, HandGrade.TOO_COARSE, "cannot promise ± 0.03 mm"),
    ],
)
def test_what_the_hand_can_promise(tolerance, grade, words):
    ten = [(Part.HAND, None, None, y) for y in (10.05, 10.06, 10.07, 10.05, 10.07)]
    judgement = judge_instrument(rows("caliper", *ten), tolerance)
    assert judgement.check.hand.grade(tolerance) is grade
    assert words in said(judgement)
    assert not judge_instrument(rows("caliper", *ten)).mind
