"""Verdicts on ladders: each planted answer in its own words, for lot or machine."""

import numpy as np
import pytest

from core.errors import InputError
from core.guidance.ladderadvice import (
    LadderReadings,
    check_ladder,
    judge_ladder,
    kinds_words,
    known_kinds,
)
from core.guidance.ladderwords import caution_words, how_words
from core.guidance.names import is_magnitude, parameter_words
from core.guidance.verdict import Setting
from core.motion_trials.ladders import LadderKind, Read

KINDS = known_kinds()


def scored(key, steps, means, limit=None, pieces=3):
    n = 2 * pieces
    step = [float(s) for s in steps for _ in range(n)]
    value = [float(m) for m in means for _ in range(n)]
    return judge_ladder(
        LadderReadings(KINDS[key], Read.SCORE, step, value, ["1", "2"] * (len(step) // 2), limit),
        np.random.default_rng(1),
    )


def measured(key, read, steps, values):
    return judge_ladder(LadderReadings(KINDS[key], read, steps, values, [""] * len(steps)), np.random.default_rng(1))


def test_the_middle_of_the_plateau_for_lot_and_machine():
    found = scored("temperature", range(200, 235, 5), (0, 1, 4, 4, 4, 1, 0), 240.0)
    (advice,) = found.advice
    assert advice.setting is Setting.NOZZLE_TEMPERATURE and advice.amount == found.new_value == 215
    assert "Use 215 °C for this lot on this machine" in advice.action
    assert "from 210 to 220 °C no step is proved worse than the best (42 scores)" in advice.because
    (estimate,) = found.estimates()
    assert estimate.name == "ladder_temperature" and pytest.approx(5) == estimate.U and is_magnitude(estimate.name)
    assert parameter_words(estimate.name) == "nozzle temperature" and found.mind == () and found.method == "ladder 2"


def test_a_plateau_at_an_end_may_go_on():
    found = scored("temperature", range(200, 235, 5), (3, 4, 4, 1, 0, 0, 0), 240.0, pieces=1)
    assert any("may go on beyond" in says for says in found.mind)


def test_every_ladder_has_a_name():
    assert [kinds_words(kind) for kind in KINDS.values()][:2] == ["Temperature", "Retraction"]
    assert len({kinds_words(kind) for kind in KINDS.values()}) == len(KINDS)


def test_without_a_limit_it_says_so_and_above_it_refuses():
    found = scored("temperature", range(200, 235, 5), (0, 1, 4, 4, 4, 1, 0))
    assert "not typed yet" in found.mind[0]
    with pytest.raises(InputError, match="above this machine's limit"):
        scored("temperature", (235, 240, 245), (1, 4, 1), 240.0)


def test_the_least_retraction_that_is_as_good():
    found = scored("retraction", (0.4, 0.8, 1.2, 1.6, 2.0), (0, 4, 4, 4, 4))
    assert found.new_value == 0.8
    assert "80 % of the pieces score 3 or more from 0.7" in found.advice[0].because
    assert "95 %; 30 scores" in found.advice[0].because
    assert any("more does harm" in says for says in found.mind)
    assert any("up to 0.9" in says and "next step" in says for says in found.mind)
    (estimate,) = found.estimates()
    assert estimate.name == "ladder_retraction" and estimate.value == 0.8 and 0.2 < estimate.U < 0.3
    mixed = scored("retraction", (0.4, 0.8, 1.2, 1.6, 2.0), (3, 3, 4, 4, 4))
    assert mixed.new_value == 0.4 and any("less may do too" in says for says in mixed.mind)


def test_the_least_retraction_that_cannot_be_told_yet():
    steps = (0.4, 0.8, 1.2, 1.6, 2.0)
    short = scored("retraction", steps, (0, 0, 1, 2, 4))
    assert short.new_value is None and "another set of pieces" in short.advice[0].action
    assert "to over 2, 95 %" in short.advice[0].because
    never = scored("retraction", steps, (0, 0, 1, 1, 2))
    assert "2 mm: extend the ladder" in never.advice[0].action
    worse = scored("retraction", steps, (0, 1, 2, 0, 0))
    assert "No step does it" in worse.advice[0].action and "3" in worse.advice[0].action
    force = measured("retraction", Read.LOW, steps, [9.0, 4.1, 2.0, 3.9, 9.2])
    assert force.new_value == pytest.approx(1.2, abs=0.02) and not any("gaps" in says for says in force.mind)


def test_no_string_anywhere_is_no_wet_filament():
    found = scored("retraction", (0.4, 0.8, 1.2, 1.6, 2.0), (4, 4, 4, 4, 4))
    assert any("less may do too" in says for says in found.mind)
    assert not any("wet" in says for says in found.mind)


def test_strings_alike_are_not_retraction():
    found = scored("retraction", (0.4, 0.8, 1.2, 1.6, 2.0), (1, 1, 1, 1, 1))
    assert found.advice[0].setting is Setting.UNDECIDED and found.estimates() == ()
    assert "No difference seen" in found.advice[0].action
    assert any("wet or too hot" in says for says in found.mind)
    open_yet = scored("retraction", (0.4, 0.8, 1.2, 1.6, 2.0), (0, 4, 4, 4, 4), pieces=1)  # ten scores prove nothing
    assert "No difference seen" in open_yet.advice[0].action and open_yet.mind == ()


@pytest.mark.parametrize(
    ("key", "steps", "means", "limit", "says"),
    [
        ("temperature", (200, 205, 210), (0, 2, 4), 240.0, "210 °C: extend"),
        ("temperature", (230, 235, 240), (0, 2, 4), 240.0, "nothing lies beyond"),
        ("temperature", (440, 445, 450), (0, 2, 4), None, "nothing lies beyond"),
        ("cooling", (0, 50, 100), (4, 2, 0), None, "nothing lies beyond"),
        ("cooling", (20, 50, 100), (4, 2, 0), None, "20 %: extend"),
    ],
)
def test_the_best_at_an_end(key, steps, means, limit, says):
    found = scored(key, steps, means, limit)
    assert says in found.advice[0].action and found.advice[0].setting is Setting.UNDECIDED


def lines(true_s, sd=0.004):
    rng = np.random.default_rng(3)
    steps = np.linspace(0, 0.09, 10)
    off = 4 * (true_s - steps)
    widths = np.column_stack([0.45 - off, np.full(10, 0.45), 0.45 + off]) + rng.normal(0, sd, (10, 3))
    return [float(s) for s in np.repeat(steps, 3)], [float(w) for w in widths.ravel()]


def test_pressure_lag_by_widths():
    steps, widths = lines(0.043)
    found = measured("lag", Read.WIDTHS, steps, widths)
    (estimate,) = found.estimates()
    assert abs(estimate.value - 0.043) <= estimate.U and estimate.unit == "s"
    assert found.advice[0].setting is Setting.PRESSURE_LAG and "parabola" in found.advice[0].because
    assert any("contour offset" in says for says in found.mind)


def test_a_line_with_a_width_missing_is_named():
    steps, widths = lines(0.043)
    with pytest.raises(InputError, match="all 3 widths") as error:
        measured("lag", Read.WIDTHS, steps[:4] + steps[5:], widths[:4] + widths[5:])
    assert error.value.row == 4
    widths[5] = -1
    with pytest.raises(InputError, match="Row 2") as error:
        measured("lag", Read.WIDTHS, steps, widths)
    assert (error.value.field, error.value.row) == ("value", 3)
    with pytest.raises(InputError, match="5 values") as error:
        measured("lag", Read.WIDTHS, steps[:12], [0.45] * 12)
    assert (error.value.field, error.value.row) == ("step", None)


def test_measured_values_find_the_most_or_the_least():
    steps = [200.0, 205, 210, 215, 220, 225, 230]
    force = [12.0, 15.1, 17.8, 18.9, 18.2, 15.7, 11.6]
    assert measured("temperature", Read.HIGH, steps, force).new_value == pytest.approx(215.3, abs=1)
    assert "Both ends" in measured("temperature", Read.LOW, steps, force).advice[0].action
    flat = measured("temperature", Read.HIGH, steps, [15.0, 15.2, 14.9, 15.1, 15.0, 15.2, 14.8])
    assert "Scatter alone" in flat.advice[0].because


def test_a_ladder_of_the_shop_has_words_too():
    own = LadderKind("fan_ramp", "s", 1, 5, 5, 0, 60, KINDS["gap"].choose, "machine", Read.SCORE, "cooling")
    assert "4 is without fault" in how_words(own) and "unattended" in caution_words(own)


def test_one_piece_of_each_step_is_told():
    steps = [float(s) for s in (2, 4, 6, 8, 10) for _ in "12"]
    values = [float(s) for s in (0, 2, 4, 2, 0) for _ in "12"]
    pieces = [f"{s:g}" for s in steps]
    readings = LadderReadings(KINDS["cornering"], Read.SCORE, steps, values, ["1", "2"] * 5, None, pieces)
    found = judge_ladder(readings, np.random.default_rng(1))
    assert any("may be the piece and not the step" in says for says in found.mind)
    more = LadderReadings(KINDS["cornering"], Read.SCORE, steps, values, ["1", "2"] * 5, None, list("ABCDEFGHJK"))
    assert not any("may be the piece" in says for says in judge_ladder(more, np.random.default_rng(1)).mind)


def test_readings_are_checked_without_being_judged():
    kind, three = KINDS["temperature"], ["bond", "clean", "force"]
    check_ladder(
        LadderReadings(kind, Read.SCORE, [200.0] * 3, [4.0, 1.0, 22.5], ["1", "1", ""], 240.0, ["A"] * 3, three)
    )
    check_ladder(LadderReadings(kind, Read.HIGH, [200.0], [22.5], [""], 240.0, ["A"], [""]))
    with pytest.raises(InputError, match="lies between two") as error:
        check_ladder(LadderReadings(kind, Read.SCORE, [200.0] * 2, [4.0, 1.5], ["1", "1"], None, ["A"] * 2, three[:2]))
    assert (error.value.field, error.value.row) == ("score", 1)
    with pytest.raises(InputError, match="Refused"):
        check_ladder(LadderReadings(kind, Read.SCORE, [250.0], [4.0], ["1"], 240.0, ["A"], ["bond"]))


def test_a_value_far_from_all_others_is_named_before_anything_else():
    """0 N for B among 11 to 13 N: B is the reason why no difference is seen."""
    readings = LadderReadings(
        KINDS["temperature"], Read.LOW, list(range(200, 235, 5)), [12.6, 0, 12.1, 11.5, 11.2, 11.9, 12.8], [""] * 7,
        240.0, list("ABCDEFG"), unit="N",
    )  # fmt: skip
    found = judge_ladder(readings, np.random.default_rng(1))
    assert "No difference seen" in found.advice[0].action
    assert found.mind == (
        "B, at 205 °C, reads 0 N, the middle one of the others 12 N: read it again, or exclude it.",
    )
