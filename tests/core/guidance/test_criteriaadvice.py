"""Verdicts on ladders with several criteria: the step for looks or strength, or what would tell."""

import numpy as np
import pytest

from core.errors import InputError
from core.guidance.criteriaadvice import (
    bound_words,
    bounds_words,
    criterion_rows,
    criterion_words,
    judge_criteria,
    scale_words,
)
from core.guidance.ladderadvice import judge_ladder, known_kinds
from core.guidance.verdict import Setting
from core.measuring.criteria import Aim, Criterion
from core.motion_trials.ladders import LadderKind, LadderReadings, Read

KIND = known_kinds()["temperature"]
STEPS = (200.0, 205.0, 210.0, 215.0, 220.0, 225.0, 230.0)
WARM, DRY = (0, 1, 3, 4, 4, 4, 4), (4, 4, 4, 3, 3, 1, 0)
FORCE = (10.0, 16.0, 20.0, 22.1, 22.0, 20.2, 16.1)


def readings(planted, aim=Aim.LOOKS, limit=240.0, pieces=3, kind=KIND, steps=STEPS):
    """Every criterion as planted by step: scores of two judges, measured values once a piece."""
    step, value, judge, piece, criterion = [], [], [], [], []
    for key, means in planted.items():
        is_measured = bool(kind.criterion(key).unit)
        for k in range(pieces):
            for s, mean in zip(steps, means, strict=True):
                for who in [""] if is_measured else ["1", "2"]:
                    step.append(s)
                    value.append(float(mean) + (0.1 * k if is_measured else 0.0))
                    judge.append(who)
                    piece.append(f"{k}/{s:g}")
                    criterion.append(key)
    return LadderReadings(kind, Read.SCORE, step, value, judge, limit, piece, criterion, aim)


def judged(planted, **further):
    return judge_ladder(readings(planted, **further), np.random.default_rng(1))


def test_looks_take_the_middle_and_strength_the_upper_third():
    found = judged({"clean": DRY, "bond": WARM})
    (advice,) = found.advice
    assert advice.setting is Setting.NOZZLE_TEMPERATURE and advice.amount == found.new_value == 215
    assert "Use 215 °C for this lot on this machine" in advice.action
    assert "the middle of the plateau, 210 to 220 °C" in advice.because
    assert "cleanness 3 or more, bond 3 or more" in advice.because and "(95 %)" in advice.because
    (estimate,) = found.estimates()
    assert estimate.name == "ladder_temperature" and estimate.U >= 2.5 and found.method == "criteria 1"
    assert found.mind == () and "only while one setting changes" in advice.do_not_touch
    strong = judged({"clean": DRY, "bond": WARM}, aim=Aim.STRENGTH)
    assert strong.new_value == 220 and "upper third of the plateau" in strong.advice[0].because


def test_what_was_scored_the_other_way_round_gives_the_same_step():
    """Strings scored 0 none to 4 a web, as trials of before were: the same pieces, the same answer."""
    now, before = judged({"clean": DRY, "bond": WARM}), judged({"strings": [4 - s for s in DRY], "bond": WARM})
    assert before.new_value == now.new_value == 215
    assert "strings 1 or less, bond 3 or more" in before.advice[0].because
    assert before.ladder.sure == pytest.approx(now.ladder.sure, abs=0.02)


def test_the_scales_say_which_end_is_good():
    says = {c.key: scale_words(c) for c in (*KIND.criteria, KIND.criterion("strings"))}
    assert "4 none" in says["clean"] and "0 a web" in says["clean"]
    assert "0 none" in says["strings"] and "4 a web" in says["strings"]
    assert "4 as strong as solid" in says["bond"] and "0 falls apart" in says["bond"]
    assert "4 clean" in says["overhang"] and "left out" in says["overhang"] and "in N" in says["force"]
    own = (
        Criterion("gloss", at_most=2),
        Criterion("shape", at_least=2),
        Criterion("ends", 1, 3),
        Criterion("mass", unit="g"),
    )
    assert [scale_words(c) for c in own] == [
        "gloss: 0 none, 4 very much.", "shape: 4 without fault, 0 useless.", "ends: 4 without fault, 0 useless.",
        "mass: one value a piece, in g.",
    ]  # fmt: skip
    assert [bound_words(c) for c in own[:3]] == ["gloss 2 or less", "shape 2 or more", "ends 1 to 3"]
    assert bounds_words(KIND) == "cleanness 3 or more, bond 3 or more" and criterion_words(own[0]) == "gloss"


def test_each_step_has_its_rows():
    rows = criterion_rows(judged({"overhang": (4,) * 7, "clean": DRY, "bond": WARM}))
    assert len(rows) == 21 and rows[0][0] == "200 °C, overhang" and rows[0][2] == ""
    assert rows[2][0] == "200 °C, bond" and rows[2][2] == "met: 0 %" and "0.0 to" in rows[2][1]


def test_what_is_only_looked_at_speaks_where_it_is_clearly_better_elsewhere():
    worse = judged({"overhang": (4, 4, 4, 2, 1, 0, 0), "clean": DRY, "bond": WARM})
    assert any("At 210 °C, on the plateau too, overhang scores 3" in says for says in worse.mind)
    even = judged({"overhang": (4, 4, 3, 3, 3, 0, 0), "clean": DRY, "bond": WARM})
    assert not any("overhang" in says for says in even.mind)
    elsewhere = {"overhang": (4, 3, 0), "clean": DRY, "bond": WARM}
    part = readings({key: means for key, means in elsewhere.items() if key != "overhang"})
    more = readings({"overhang": elsewhere["overhang"]}, steps=STEPS[:3])
    both = LadderReadings(
        KIND, Read.SCORE, [*part.step, *more.step], [*part.value, *more.value], [*part.judge, *more.judge], 240.0,
        [*part.piece, *more.piece], [*part.criterion, *more.criterion],
    )  # fmt: skip
    assert not any("overhang" in says for says in judge_criteria(both, np.random.default_rng(1)).mind)


def test_the_snap_force_is_told_beside_the_scores():
    found = judged({"clean": DRY, "bond": WARM, "force": FORCE})
    assert any("snap force is greatest at 217" in says and "95 %" in says for says in found.mind)
    rising = judged({"clean": DRY, "bond": WARM, "force": (10, 12, 14, 16, 18, 20, 22)})
    assert any("still rises at the last step" in says for says in rising.mind)
    flat = judged({"clean": DRY, "bond": WARM, "force": (20, 20, 20, 20, 20, 20, 20)})
    assert any("cannot be told" in says for says in flat.mind)
    few = readings({"clean": DRY, "bond": WARM})
    with_two = LadderReadings(
        KIND, Read.SCORE, [*few.step, 200.0, 205.0], [*few.value, 9.0, 11.0], [*few.judge, "", ""], 240.0,
        [*few.piece, "0/200", "0/205"], [*few.criterion, "force", "force"],
    )  # fmt: skip
    assert not any("snap" in says for says in judge_criteria(with_two, np.random.default_rng(1)).mind)


@pytest.mark.parametrize(
    ("strings", "bond", "limit", "says", "because"),
    [
        (
            (0, 0, 0, 0, 0, 0, 0),
            (0, 0, 1, 1, 1, 2, 2),
            240.0,
            "extend the ladder to hotter steps",
            "bond 3 or more: at no step",
        ),
        (
            (0, 0, 0, 0, 0, 0, 0),
            (0, 0, 1, 1, 1, 2, 2),
            230.0,
            "nothing hotter may be tried",
            "strings 1 or less: at 200, 205",
        ),
        ((2, 2, 3, 3, 4, 4, 4), (0, 1, 3, 4, 4, 4, 4), 240.0, "dry it, weigh again", "strings 1 or less: at no step"),
        ((0, 1, 2, 3, 4, 4, 4), (0, 0, 1, 2, 3, 4, 4), 240.0, "dry it, weigh again", "strings 1 or less: at 200, 205"),
        (
            (0, 0, 0, 0, 0, 0, 0),
            (0, 0, 1, 2, 2, 3, 4),
            240.0,
            "230 °C: extend the ladder beyond",
            "nothing is read off",
        ),
        ((0, 0, 0, 0, 0, 0, 0), (0, 0, 1, 2, 2, 3, 4), 230.0, "nothing lies beyond it", "nothing is read off"),
        ((0, 1, 4, 4, 4, 4, 4), (4, 2, 0, 0, 0, 0, 0), None, "200 °C: extend", "nothing is read off"),
        ((0,) * 7, (4,) * 7, 240.0, "every step from 200 to 230 °C does", "Chance alone"),
        ((3,) * 7, (2,) * 7, 240.0, "try wider steps", "Chance alone"),
    ],
)
def test_where_no_step_is_found_it_says_what_would_tell(strings, bond, limit, says, because):
    found = judged({"strings": strings, "bond": bond}, aim=Aim.STRENGTH, limit=limit)
    (advice,) = found.advice
    assert advice.setting is Setting.UNDECIDED and found.estimates() == () and found.new_value is None
    assert says in advice.action and because in advice.because


def test_too_few_scores_ask_for_another_set():
    split = [(s, s + d) for s, d in zip((0, 1, 2, 2, 2, 2, 4), (0, 0, 2, 2, 2, 2, 0), strict=True)]
    one = readings({"strings": (0, 0, 0, 1, 2, 3, 4), "bond": (0,) * 7}, pieces=1)
    value = [*one.value[:14], *(float(v) for pair in split for v in pair)]
    unsure = LadderReadings(KIND, Read.SCORE, one.step, value, one.judge, 240.0, one.piece, one.criterion)
    found = judge_ladder(unsure, np.random.default_rng(2))
    assert "another set of pieces" in found.advice[0].action and "% only" in found.advice[0].because
    assert any("may be the piece and not the step" in says for says in found.mind)


def test_a_plateau_at_an_end_and_a_missing_limit_are_told():
    found = judged({"strings": (0,) * 7, "bond": (0, 1, 3, 4, 4, 4, 4)}, limit=None)
    assert found.new_value == 220
    assert [says for says in found.mind if "not typed yet" in says] and any("go on beyond" in s for s in found.mind)


def test_a_ladder_of_the_shop_may_have_criteria_too():
    criteria = (Criterion("shape", at_least=3), Criterion("bond", at_least=3))
    cooling = known_kinds()["cooling"]
    own = LadderKind("fan", "%", 0, 100, 5, 0, 100, cooling.choose, "machine", Read.SCORE, "cooling", criteria=criteria)
    steps = (0.0, 25.0, 50.0, 75.0, 100.0)
    found = judged({"shape": (0, 3, 4, 4, 4), "bond": (4, 4, 4, 1, 0)}, kind=own, steps=steps, limit=None)
    assert found.advice[0].setting is Setting.COOLING and "on this machine" in found.advice[0].action
    none = judged({"shape": (0, 1, 2, 3, 4), "bond": (4, 2, 1, 0, 0)}, kind=own, steps=steps, limit=None)
    assert "look for another cause" in none.advice[0].action


def test_refused():
    with pytest.raises(InputError, match="No score of bond yet"):
        judged({"clean": DRY})
    with pytest.raises(InputError, match="above this machine's limit"):
        judged({"clean": DRY, "bond": WARM}, limit=220.0)
    good = readings({"clean": DRY, "bond": WARM})
    alone = LadderReadings(
        KIND, Read.SCORE, good.step, good.value, ["1"] * len(good.step), 240.0, good.piece, good.criterion
    )
    with pytest.raises(InputError, match="One pair of eyes only for cleanness"):
        judge_ladder(alone, np.random.default_rng(1))
    value = list(good.value)
    value[50] = 2.5
    wrong = LadderReadings(KIND, Read.SCORE, good.step, value, good.judge, 240.0, good.piece, good.criterion)
    with pytest.raises(InputError, match="lies between two") as error:
        judge_ladder(wrong, np.random.default_rng(1))
    assert (error.value.field, error.value.row) == ("score", 50)
