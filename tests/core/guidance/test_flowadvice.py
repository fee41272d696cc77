"""The verdict on a flow trial: every answer in words, what is stored, what counts beside the readings."""

from dataclasses import replace

import pytest

from core.errors import InputError
from core.flow_trials.bead import Bead, BeadModel
from core.flow_trials.ceiling import KnownCeiling, ceiling_far
from core.flow_trials.combine import FlowAnswer, KnownFlow
from core.flow_trials.conditions import PrintConditions
from core.flow_trials.mass import Commanded, commanded_by_length
from core.flow_trials.plastic import Density, MassPerLength
from core.flow_trials.top import LADDER_RATIO
from core.flow_trials.wall import WallBox
from core.guidance.flowadvice import Beside, judge_mass, judge_top, judge_wall
from core.guidance.verdict import Setting
from core.quantity import Estimate

HERE = PrintConditions(Bead(0.45, 0.20), 0.4, 210.0, 4.0, 1.0, 240.0)
PATH, PLA = Commanded(5000.0), Density(1.24)  # 6.2 g
PATH_LONG = commanded_by_length(5000.0, 1.75)  # 14.9 g of 2.98 g/m
INF = float("inf")


def known(name, value, u, number=3, **change):
    return KnownFlow(Estimate(f"flow_ratio_{name}", value, u, INF, "1"), replace(HERE, **change), number)


def weighed(mass_g, *others, here=HERE, ceiling=None, found=None):
    return judge_mass([mass_g, mass_g], here, PATH, PLA, beside=Beside(others, ceiling, found))


def test_within_one_and_a_half_percent_nothing_is_changed():
    judged = weighed(6.25)
    (advice,) = judged.advice
    assert advice.setting is Setting.LEAVE
    assert "−0.8 % from 1 in force (mass)" in advice.because
    assert "nozzle 0.4 mm, 210 °C ± 5 K, up to 4 mm³/s" in advice.because
    assert judged.new_ratio is None
    assert [e.name for e in judged.estimates()] == ["flow_ratio_mass", "flow_ratio"]
    assert judged.method == "mass 1"


def test_a_change_starts_from_the_factor_in_force_and_is_no_cure_for_a_size():
    judged = weighed(6.2 * 1.03 / 1.0, here=replace(HERE, in_force_ratio=0.98))
    (advice,) = judged.advice
    assert advice.setting is Setting.FLOW_FACTOR
    assert judged.flow.combined.value == pytest.approx(0.98 / 1.03)
    assert judged.new_ratio == advice.amount == 0.951  # as it is told and typed; the estimate keeps all digits
    assert "from 0.98 to 0.951 ± 0.010" in advice.action
    assert "−2.9 % is asked for (mass). It moves the face of a wall by −0.006 mm: no cure for a size" in advice.because
    assert "never cures a size" in advice.do_not_touch


def test_four_percent_moves_a_face_by_eight_micrometres():
    """(0.45 - c 0.2) 0.04/2 = 0.008 mm."""
    assert "−0.008 mm" in weighed(6.2 / 0.96).advice[0].because


def test_a_factor_no_filament_needs_sends_back():
    judged = weighed(6.2 / 0.83)
    (advice,) = judged.advice
    assert advice.setting is Setting.UNDECIDED
    assert "feed, filament diameter, nozzle and bead model" in advice.action
    assert "outside 0.85 to 1.10" in advice.because
    assert judged.new_ratio is None
    assert [e.name for e in judged.estimates()] == ["flow_ratio_mass"]


def test_estimates_that_conflict_keep_the_factor_and_say_why():
    judged = judge_wall(
        [0.49] * 8, HERE, WallBox(1, 75, 0.0), beside=Beside((known("mass", 0.995, 0.006), known("top", 1.0, 0.015, 4)))
    )
    (advice,) = judged.advice
    assert judged.flow.answer is FlowAnswer.CONFLICT
    assert "Keep the factor of 1;" in advice.action
    assert "ridges under the jaws" in advice.because
    assert judged.used == (3, 4)
    assert [e.name for e in judged.estimates()] == ["flow_ratio_wall"]


def test_a_wide_interval_decides_nothing():
    judged = judge_wall([0.49] * 8, HERE, WallBox(1, 75))
    (advice,) = judged.advice
    assert judged.flow.answer is FlowAnswer.UNCLEAR
    assert "Weigh a piece" in advice.action
    assert any("75 layers" in says for says in judged.mind)


def test_a_wide_interval_that_leaves_says_so():
    judged = judge_wall([0.475] * 8, HERE, WallBox(1, 75))
    assert judged.flow.answer is FlowAnswer.LEAVE
    assert "The interval is wide" in judged.advice[0].because


def test_three_methods_together():
    wobble = [0.1, -0.1] * 9
    pads = [*LADDER_RATIO, *LADDER_RATIO]
    scores = [50 * (x + 0.02) + noise for x, noise in zip(pads, wobble, strict=True)]
    judged = judge_top(
        pads, scores, ["1"] * 9 + ["2"] * 9, HERE,
        Beside((known("wall", 0.97, 0.03), known("mass", 0.982, 0.006, 5), known("top", 0.5, 0.01, 6))),
    )  # fmt: skip
    assert judged.used == (3, 5)
    assert judged.flow.answer is FlowAnswer.CHANGE
    assert "(top pads, wall, mass)" in judged.advice[0].because
    assert judged.flow.combined.u < 0.006


def test_other_conditions_are_left_out_with_a_sentence():
    judged = weighed(6.25, known("wall", 0.5, 0.01, 9, temperature_c=230.0))
    assert judged.used == ()
    assert "Trial 9 is left out: it was found at 230 °C." in judged.mind


def test_the_ceiling_is_minded():
    assert any("more than half the flow ceiling" in says for says in weighed(6.25, ceiling=7.0).mind)
    with pytest.raises(InputError) as refused:
        weighed(6.25, ceiling=3.0)
    assert refused.value.field == "rate_mm3_s"


def test_alone_nothing_stands_beside():
    wobble = [0.1, -0.1] * 9
    pads = [*LADDER_RATIO, *LADDER_RATIO]
    scores = [50 * x + noise for x, noise in zip(pads, wobble, strict=True)]
    assert judge_top(pads, scores, ["1"] * 9 + ["2"] * 9, HERE).used == ()
    assert judge_mass([6.2, 6.2], HERE, PATH, PLA).flow.answer is FlowAnswer.LEAVE


def test_a_factor_in_force_found_elsewhere_is_marked():
    beside = Beside(in_force=replace(HERE, temperature_c=230.0, rate_mm3_s=3.0))
    marks = [says for says in judge_mass([6.2, 6.2], HERE, PATH, PLA, beside=beside).mind if "in force" in says]
    assert "The factor in force: Tested at 230 °C, used at 210 °C: outside ±5 K a flow factor does not hold." in marks
    assert "The factor in force: Tested up to 3 mm³/s, used at 4 mm³/s: slip grows with the rate." in marks
    kept = replace(PLA, kept=True)
    assert judge_mass([6.2, 6.2], HERE, PATH, kept, beside=Beside(in_force=HERE)).mind == ()


def test_a_density_that_nobody_measured_says_how_far_it_is_trusted():
    assert "as typed, taken as right to ± 1 %" in judge_mass([6.2, 6.2], HERE, PATH, PLA).mind[0]
    by_length = MassPerLength(2.98, 1.75)
    assert "weigh a metre" in judge_mass([14.9, 14.9], HERE, PATH_LONG, by_length).mind[-1]


def test_a_factor_of_another_bead_model_is_converted():
    """0.95 by rectangles of 0.45 x 0.20 mm lays what 1.05 does by obrounds (10.5 % more plastic)."""
    found = replace(HERE, bead=Bead(0.45, 0.20, BeadModel.RECTANGLE))
    mind = weighed(6.2 / 1.0, here=replace(HERE, in_force_ratio=0.95), found=found).mind
    assert any("convert the factor first" in says for says in mind)
    assert any("0.95 by rectangle beads lays what 1.05 does by obround ones of 0.45 × 0.2 mm" in says for says in mind)


def test_a_ceiling_at_another_temperature_is_said():
    beside = Beside(far=ceiling_far([KnownCeiling(230.0, Estimate("flow_ceiling", 9.0, 0.2, 9.0, "mm3/s"), 4)], 210.0))
    assert any("measured at 230 °C" in says for says in judge_mass([6.2, 6.2], HERE, PATH, PLA, beside=beside).mind)
