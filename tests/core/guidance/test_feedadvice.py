"""Each answer of a feed trial in words: what to do, the share with U, and what to leave alone."""

import pytest

from core.guidance.feedadvice import judge_feed
from core.guidance.names import is_magnitude, parameter_words
from core.guidance.verdict import Setting, setting_words


def judged(rests, in_force=93.0, previous=None, u_reading_mm=0.3, commanded=100.0):
    n = len(rests)
    return judge_feed([commanded] * n, [commanded + 20.0] * n, rests, in_force, u_reading_mm, previous)


@pytest.mark.parametrize(
    ("rests", "setting", "words"),
    [
        ([20.0, 20.1, 19.9], Setting.LEAVE, "Change nothing"),
        ([23.0, 22.9, 23.1], Setting.EXTRUDER_STEPS, "from 93 to 95.88 ± "),
        ([70.9, 71.0, 71.2], Setting.WRONG_PART, "do not trim it"),
        ([26.0, 26.2, 25.8], Setting.UNDECIDED, "then feed again unloaded"),
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


def test_upside_down_and_unclear_have_theirs():
    (upside,) = judged([26.0, 25.9, 26.1], in_force=93.0 * 0.97, previous=(0.97, 93.0)).advice
    assert "undo the last change first" in upside.action
    (unclear,) = judged([20.4], u_reading_mm=0.5, commanded=50.0).advice
    assert "200 to 300 mm" in unclear.action


@pytest.mark.parametrize("setting", list(Setting))
def test_every_setting_has_words(setting):
    assert setting_words(setting)


def test_names_of_ceilings_carry_their_temperature_and_sizes_have_no_sign():
    assert parameter_words("flow_ceiling_230c") == "flow ceiling at 230 °C"
    assert parameter_words("squareness_xy") == "squareness XY"
    assert is_magnitude("diameter") and is_magnitude("flow_ceiling_230c")
    assert not is_magnitude("wall_outset")
