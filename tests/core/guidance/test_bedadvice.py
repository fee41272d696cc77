"""What a bed trial leads to. Planted causes; expected: own computation."""

import numpy as np
import pytest

from core.errors import InputError
from core.guidance.bedadvice import BedReadings, judge_bed
from core.guidance.verdict import Setting
from core.machine_geometry.bedplane import plan_probes
from core.quantity import Estimate

X, Y = np.array(plan_probes(220, 220, 3)).T
SCREWS = [(10.0, 10.0), (210.0, 10.0), (210.0, 210.0), (10.0, 210.0)]
PROBE = Estimate("probe_sd", 0.004, 0.001, 9.0, "mm")
T = np.arange(0.0, 31.0, 2.0) * 60.0


def noise(seed=1, size=0.003, n=9):
    return np.random.default_rng(seed).normal(0, size, n)


def judge(z, screws=SCREWS, probe=PROBE, **more):
    return judge_bed(BedReadings(list(X), list(Y), list(z), screws_mm=screws, **more), probe)


def settings(judged):
    return [advice.setting for advice in judged.advice]


def test_a_level_flat_bed_is_left_alone():
    judged = judge(noise())
    assert settings(judged) == [Setting.LEAVE, Setting.LEAVE]
    assert judged.method == "bedplane 1" and judged.soak is None


def test_a_tilted_bed_names_screw_direction_and_turns():
    judged = judge(0.1 / 200 * X + noise(), pitch_mm=0.5)
    assert settings(judged) == [Setting.LEVEL_BED, Setting.LEAVE]
    says = judged.advice[0].action
    assert "screw 2 clockwise 0.198 ± 0.016 turns (71°), down" in says and "screw 3 clockwise" in says
    assert "Screws that stay: 1, 4." in says
    raised = judge(-0.1 / 200 * X + noise(), pitch_mm=0.5)
    assert "screw 2 anticlockwise" in raised.advice[0].action and "°), up" in raised.advice[0].action
    assert judged.advice[-1].because == "Flatness 0.006 ± 0.011 mm."
    assert {e.name for e in judged.estimates()} == {"bed_tilt_x", "bed_tilt_y", "bed_flatness", "bed_twist"}


def test_without_screws_their_places_are_asked_for():
    judged = judge(0.1 / 200 * X, screws=())
    assert "Name the places" in judged.advice[0].action and judged.turns == ()
    tiny = judge(3.4e-4 * X, screws=[(110.0, 10.0), (110.0, 210.0), (130.0, 110.0)], pitch_mm=50.0)
    assert "No screw needs a turn of 5° or more" in tiny.advice[0].action


def test_where_no_turn_is_told_from_zero_no_turn_is_ordered():
    loose = Estimate("probe_sd", 0.02, 0.005, 9.0, "mm")
    judged = judge(3.4e-4 * X, screws=[(110.0, 10.0), (110.0, 210.0), (130.0, 110.0)], probe=loose)
    assert settings(judged)[0] is Setting.UNDECIDED and "No turn of a screw is told" in judged.advice[0].action


def test_scatter_that_hides_the_tilt_asks_for_more_probes():
    judged = judge(noise(5, 0.09), probe=None)
    assert Setting.UNDECIDED in settings(judged) and "not told from scatter" in judged.advice[0].action


def test_a_cold_bed_is_probed_again_hot():
    judged = judge(0.1 / 200 * X + noise(), hot=False)
    assert settings(judged)[0] is Setting.UNDECIDED
    assert "Heat and soak" in judged.advice[0].action and "clockwise" in judged.advice[0].action


def test_twist_of_four_screws_is_told_apart():
    judged = judge(2e-5 * (X - 110) * (Y - 110) + noise())
    assert any("Loosen the fourth screw" in advice.action for advice in judged.advice)
    assert not any("Loosen" in advice.action for advice in judge(noise()).advice)


@pytest.mark.parametrize(
    "depth, setting", [(0.05, Setting.LEAVE), (0.2, Setting.HEIGHT_MAP), (0.4, Setting.MEND_MECHANICS)]
)
def test_a_hollow_plate(depth, setting):
    z = depth * ((X - 110) ** 2 + (Y - 110) ** 2) / (2 * 90**2)
    assert judge(z).advice[-1].setting is setting


def soak(z, t=T):
    return judge_bed(BedReadings([], [], [], elapsed_s=list(t), soak_mm=list(z)))


def test_soak_alone_is_judged():
    settled = soak(0.1 * (1 - np.exp(-T / 300)) + noise(n=16, size=0.001))
    assert settings(settled) == [Setting.SOAK_TIME]
    assert "Let bed and chamber stand for 15 min" in settled.advice[0].action
    assert [e.name for e in settled.estimates()] == ["bed_soak"]
    assert settings(soak(noise(n=16))) == [Setting.LEAVE]


def test_a_bed_that_moves_on_is_read_on():
    going = soak((0.3 * (1 - np.exp(-T / 900)) + noise(n=16, size=0.001))[:8], T[:8])
    assert settings(going) == [Setting.UNDECIDED] and "perhaps" in going.advice[0].action
    straight = soak(2e-4 * T + noise(n=16, size=0.002))
    assert straight.advice[0].action.endswith("less than 0.01 mm.")
    slow = soak(0.1 * (1 - np.exp(-T / 3600)) + noise(n=16, size=0.0005))
    assert "its end is not in sight" in slow.advice[0].action


def test_places_and_soak_together_and_too_few_of_one():
    z, drift = noise(), 0.1 * (1 - np.exp(-T / 300)) + noise(n=16, size=0.001)
    both = judge_bed(BedReadings(list(X), list(Y), list(z), list(T), list(drift)), PROBE)
    assert settings(both) == [Setting.LEAVE, Setting.LEAVE, Setting.SOAK_TIME]
    few_soak = judge_bed(BedReadings(list(X), list(Y), list(z), list(T[:3]), list(drift[:3])), PROBE)
    assert few_soak.soak is None and "Readings over time so far: 3" in few_soak.advice[-1].action
    few_places = judge_bed(BedReadings(list(X[:2]), list(Y[:2]), list(z[:2]), list(T), list(drift)))
    assert few_places.plane is None and "Places probed so far: 2" in few_places.advice[-1].action


@pytest.mark.parametrize(
    "readings, field, row",
    [
        (BedReadings([], [], []), "z_mm", None),
        (BedReadings(list(X[:2]), list(Y[:2]), [0.0, 0.1]), "z_mm", None),
        (BedReadings([], [], [], [0.0, 60.0], [0.0, 0.1]), "soak_mm", None),
        (BedReadings([], [], [], [-60.0, 60.0], [0.0, 0.1]), "elapsed_s", 0),
        (BedReadings(list(X), list(Y), [*noise()[:8], np.nan]), "z_mm", 8),
    ],
)
def test_refusals_keep_field_and_row(readings, field, row):
    with pytest.raises(InputError) as refused:
        judge_bed(readings)
    assert (refused.value.field, refused.value.row) == (field, row)
