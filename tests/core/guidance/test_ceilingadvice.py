"""A ceiling trial from weighed strands to sentences, each number with its U."""

import numpy as np
import pytest

from core.errors import InputError
from core.flow_trials.bead import Bead
from core.guidance.ceilingadvice import Strands, judge_ceiling
from core.guidance.verdict import Setting

RATE = np.repeat(np.arange(2.0, 25.0, 2.0), 2)
WHOLE_G = 2.98 * 0.2


def strands(ceiling, temperature_c=230.0, drop=0.01, seed=1, rate=RATE):
    """Masses whose share falls by 2 % of 0.98 at `ceiling`."""
    share = 0.98 - drop * np.maximum(rate - (ceiling - 0.0196 / max(drop, 1e-9)), 0.0)
    share = share + np.random.default_rng(seed).normal(0, 0.003, rate.size)
    return Strands(rate, WHOLE_G * share, np.full(rate.size, temperature_c), 200.0, 2.98, 300.0)


def test_a_ceiling_gives_a_speed_with_its_uncertainty():
    judged = judge_ceiling(strands(11.0), Bead(0.45, 0.2), 0.8)
    (advice,) = judged.advice
    assert advice.setting is Setting.PRINT_SPEED
    assert "At 230 °C print this bead at most at 1" in advice.action
    assert " ± " in advice.action and " ± " in advice.because
    assert "24 strands" in advice.because
    assert [e.name for e in judged.estimates()] == ["flow_ceiling", "highest_speed"]
    assert judged.method == "ceiling 1"
    assert "back pressure" in judged.mind[0]


def test_no_fall_seen_keeps_to_what_was_tried():
    judged = judge_ceiling(strands(11.0, drop=0.0), Bead(0.45, 0.2), 0.8)
    (advice,) = judged.advice
    assert advice.setting is Setting.UNDECIDED
    assert "at most at 236 mm/s" in advice.action
    assert judged.estimates() == ()


def test_three_temperatures_have_three_sentences_and_a_trend():
    parts = [strands(c, t, seed=s) for s, (c, t) in enumerate(((9.0, 210.0), (12.0, 230.0), (16.0, 250.0)))]
    joined = Strands(
        np.concatenate([p.rate_mm3_s for p in parts]),
        np.concatenate([p.mass_g for p in parts]),
        np.concatenate([p.temperature_c for p in parts]),
        200.0,
        2.98,
        300.0,
    )
    judged = judge_ceiling(joined, Bead(0.45, 0.2), 0.8)
    assert len(judged.advice) == 3
    assert [e.name for e in judged.estimates()] == ["flow_ceiling_210c", "flow_ceiling_230c", "flow_ceiling_250c"]
    assert "for 1 K" in judged.mind[1]


def test_too_few_strands_say_how_many():
    few = strands(11.0, rate=np.array([2.0, 4.0, 6.0]))
    with pytest.raises(InputError, match="5 strands at 4 rates"):
        judge_ceiling(few, Bead(0.45, 0.2), 0.8)


def test_other_refusals_pass_unchanged():
    with pytest.raises(InputError) as refused:
        judge_ceiling(strands(11.0, temperature_c=310.0), Bead(0.45, 0.2), 0.8)
    assert refused.value.field == "temperature_c"
