"""A ceiling trial from weighed strands to sentences, each number with its U."""

from dataclasses import replace

import numpy as np
import pytest

from core.errors import InputError
from core.flow_trials.bead import Bead
from core.flow_trials.conditions import PrintConditions
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
    assert "Print this bead at most at 1" in advice.action and "mm/s at 230 °C." in advice.action
    assert advice.amount == judged.speeds[0].value
    assert "Holds for nozzle 0.4 mm, ±5 K." in advice.because
    assert " ± " in advice.action and " ± " in advice.because
    assert "24 strands" in advice.because
    assert [e.name for e in judged.estimates()] == ["flow_ceiling", "highest_speed"]
    assert judged.method == "ceiling 1"
    assert "back pressure" in judged.mind[0]


def test_no_fall_seen_keeps_to_what_was_tried():
    judged = judge_ceiling(strands(11.0, drop=0.0), Bead(0.45, 0.2), 0.8)
    (advice,) = judged.advice
    assert advice.setting is Setting.UNDECIDED
    assert "at most at 236 mm/s at 230 °C" in advice.action
    assert "Holds for nozzle 0.4 mm, ±5 K." in advice.because
    assert judged.estimates() == ()


def joined(*parts):
    return Strands(
        np.concatenate([p.rate_mm3_s for p in parts]),
        np.concatenate([p.mass_g for p in parts]),
        np.concatenate([p.temperature_c for p in parts]),
        200.0,
        2.98,
        300.0,
    )


THREE = ((9.0, 210.0), (12.0, 230.0), (16.0, 250.0))


def test_three_temperatures_share_a_sentence_and_have_a_trend():
    parts = [strands(c, t, seed=s) for s, (c, t) in enumerate(THREE)]
    judged = judge_ceiling(joined(*parts), Bead(0.45, 0.2), 0.8)
    (advice,) = judged.advice
    assert all(f"mm/s at {t} °C" in advice.action and f"mm³/s at {t} °C" in advice.because for t in (210, 230, 250))
    assert advice.amount is None and advice.unit == ""
    assert [e.name for e in judged.estimates()] == ["flow_ceiling_210c", "flow_ceiling_230c", "flow_ceiling_250c"]
    assert "for 1 K" in judged.mind[1]


def test_a_temperature_without_a_fall_is_told_apart():
    judged = judge_ceiling(joined(strands(9.0, 210.0), strands(9.0, 250.0, drop=0.0)), Bead(0.45, 0.2), 0.8)
    assert [advice.setting for advice in judged.advice] == [Setting.PRINT_SPEED, Setting.UNDECIDED]
    assert "210 °C" in judged.advice[0].action and "250 °C" in judged.advice[1].action
    assert "250" not in judged.advice[0].action


FOUND = PrintConditions(Bead(0.45, 0.2), 0.4, 230.0, 4.0, 1.0, 300.0)


@pytest.mark.parametrize(
    ("temperature", "drop", "mark"),
    [
        (232.0, 0.01, "The flow factor in force: Tested up to 4 mm³/s, used at 8."),
        (232.0, 0.0, "Tested up to 4 mm³/s, used at 19.2 mm³/s: slip grows with the rate"),
        (240.0, 0.01, "The flow factor in force: Tested at 230 °C, used at 240 °C: outside ±5 K"),
    ],
)
def test_a_flow_factor_found_slower_or_cooler_is_marked(temperature, drop, mark):
    judged = judge_ceiling(strands(11.0, temperature, drop), Bead(0.45, 0.2), 0.8, FOUND)
    assert any(mark in says for says in judged.mind)
    fast = replace(FOUND, rate_mm3_s=20.0, temperature_c=temperature)
    assert len(judge_ceiling(strands(11.0, temperature, drop), Bead(0.45, 0.2), 0.8, fast).mind) == 1


def test_a_nozzle_that_cannot_be_is_refused():
    with pytest.raises(InputError, match="stamped on the nozzle") as refused:
        replace(strands(11.0), nozzle_mm=0.0)
    assert refused.value.field == "nozzle_mm"


def test_too_few_strands_say_how_many():
    few = strands(11.0, rate=np.array([2.0, 4.0, 6.0]))
    with pytest.raises(InputError, match="5 strands at 4 rates"):
        judge_ceiling(few, Bead(0.45, 0.2), 0.8)


def test_other_refusals_pass_unchanged():
    with pytest.raises(InputError) as refused:
        judge_ceiling(strands(11.0, temperature_c=310.0), Bead(0.45, 0.2), 0.8)
    assert refused.value.field == "temperature_c"
