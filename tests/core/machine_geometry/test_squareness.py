"""Squareness from diagonals and from a square turned over. Expected: own computation and planted causes."""

import math

import numpy as np
import pytest

from core.errors import InputError
from core.machine_geometry.squareness import (
    Plane,
    SignCheck,
    check_prediction,
    faked_difference_mm,
    squareness_from_diagonals,
    squareness_from_flips,
)
from core.quantity import Estimate
from core.records.rows import Instrument

FOUR = ["outer", "inner", "outer", "inner"]


def diagonals(g_rad, a, b):
    """Both diagonals of a parallelogram whose second axis leans by g towards + of the first."""
    return (math.hypot(a + b * math.sin(g_rad), b * math.cos(g_rad)),
            math.hypot(a - b * math.sin(g_rad), b * math.cos(g_rad)))  # fmt: skip


def drawn(d1, d2, a=100.0, b=100.0, **more):
    return squareness_from_diagonals(Plane.XY, a, b, [d1, d2], ["1", "2"], ["drawn"] * 2, **more)


def pillars(d1, d2, size=10.0, a=80.0, b=80.0, plane=Plane.XY, **more):
    readings = [d1 + size, d1 - size, d2 + size, d2 - size]
    return squareness_from_diagonals(plane, a, b, readings, ["1", "1", "2", "2"], FOUR, **more)


def test_a_tenth_of_a_degree_on_100_by_100():
    assert diagonals(math.radians(0.1), 100, 100) == pytest.approx((141.5447, 141.2979), abs=5e-5)
    fit = drawn(141.5447, 141.2979)
    assert math.degrees(fit.angle.value) == pytest.approx(0.1, abs=5e-5)
    assert fit.difference_mm == pytest.approx(0.2468)


def test_a_tenth_of_a_millimetre_on_100_mm():
    fit = drawn(*(math.sqrt(2) * 100 + off for off in (0.05, -0.05)))
    assert fit.angle.value == pytest.approx(0.000707, abs=5e-7)
    assert math.degrees(fit.angle.value) == pytest.approx(0.041, abs=5e-4)
    assert fit.shift(100.0).value == pytest.approx(0.071, abs=5e-4)
    assert fit.shift(100.0).u == pytest.approx(100 * fit.angle.u)


@pytest.mark.parametrize("plane", list(Plane))
@pytest.mark.parametrize("a, b", [(80.0, 80.0), (120.0, 240.0), (60.0, 100.0)])
@pytest.mark.parametrize("degrees", [-1.0, -0.03, 0.0, 0.4])
def test_the_formula_is_exact_on_any_parallelogram(plane, a, b, degrees):
    fit = pillars(*diagonals(math.radians(degrees), a, b), a=a, b=b, plane=plane)
    assert math.degrees(fit.angle.value) == pytest.approx(degrees, abs=1e-12)
    assert [e.name for e in fit.estimates()] == [f"squareness_{plane}"]


def test_wall_outset_and_the_zero_of_the_jaws_drop_out():
    d1, d2 = diagonals(0.001, 80, 80)
    plain = pillars(d1, d2).angle.value
    zeroed = squareness_from_diagonals(
        Plane.XY, 80, 80, [d1 + 10.3, d1 - 10.1, d2 + 10.3, d2 - 10.1], ["1", "1", "2", "2"], FOUR
    )
    assert zeroed.angle.value == pytest.approx(plain, rel=2e-3)  # only times the angle itself
    caliper = Instrument("c", u_outside_zero_mm=0.05, u_inside_zero_mm=0.05, u_scale_ratio=0.001)
    held = pillars(d1, d2, instrument=caliper)
    zero, scale = held.parts[-2:]
    assert (str(zero.name), str(scale.name)) == ("zero of the jaws", "scale of the instrument")
    assert zero.u_rad < 1e-3 * 0.05 and scale.u_rad == pytest.approx(2 * 0.001 * 0.001, rel=1e-3)


def test_a_rule_read_to_015_mm_at_300_mm_is_half_a_milliradian():
    fit = drawn(*diagonals(0.0, 300, 300), a=300.0, b=300.0)
    assert fit.angle.u == pytest.approx(0.0005, rel=0.02)
    assert any("Nothing was read twice" in says for says in fit.minds)


def test_repeats_make_the_uncertainty_and_its_degrees_of_freedom():
    d1, d2 = diagonals(0.0, 80, 80)
    readings = [d1 + 10.01, d1 + 9.99, d1 - 10.01, d1 - 9.99, d2 + 10.01, d2 + 9.99, d2 - 10.01, d2 - 9.99]
    part = ["outer", "outer", "inner", "inner"] * 2
    fit = squareness_from_diagonals(Plane.XY, 80, 80, readings, ["1"] * 4 + ["2"] * 4, part)
    repeat = fit.parts[0]
    assert repeat.dof == 4
    # s = 0.01*sqrt(2), each diagonal the mean of two means of two: u_d = s/2; u(g) = u_d/a
    assert repeat.u_rad == pytest.approx(0.01 * math.sqrt(2) / 2 / 80, rel=1e-6)
    assert not fit.minds


def test_the_hand_of_the_gauge_counts_where_nothing_was_repeated():
    d1, d2 = diagonals(0.0, 80, 80)
    steady = pillars(d1, d2, instrument=Instrument("c", sd_hand_mm=0.01, sd_hand_dof=9))
    assert steady.parts[0].dof == 9
    assert steady.parts[0].u_rad == pytest.approx(0.01 / math.sqrt(2) / 80)
    assert not steady.minds
    assert pillars(d1, d2, instrument=Instrument("c", sd_hand_mm=0.01)).parts[0].dof == math.inf


def test_the_true_angle_lies_in_the_interval_as_often_as_it_says():
    rng = np.random.default_rng(5)
    true = 0.0012
    d1, d2 = diagonals(true, 80, 80)
    exact = np.repeat([d1 + 10, d1 - 10, d2 + 10, d2 - 10], 3)
    part, diagonal = np.repeat(FOUR, 3).tolist(), np.repeat(["1", "1", "2", "2"], 3).tolist()
    inside = 0
    for _ in range(2000):
        readings = (exact + rng.normal(0, 0.02, 12)).tolist()
        fit = squareness_from_diagonals(Plane.XY, 80, 80, readings, diagonal, part)
        inside += abs(fit.angle.value - true) <= fit.angle.U
    assert 0.93 <= inside / 2000 <= 0.975


# Play: the planted cause that outer readings take for skew


def printed_pillar(play_x, play_y, turn, radius=5.0):
    """The path that a carriage with play really goes round a pillar; `turn` +1 anticlockwise."""
    angle = turn * np.linspace(0.0, 4.0 * np.pi, 40001)
    path = []
    for commanded, play in ((radius * np.cos(angle), play_x), (radius * np.sin(angle), play_y)):
        real, at = np.empty_like(commanded), commanded[0]
        for i, c in enumerate(commanded):
            at = min(max(at, c - play / 2), c + play / 2)
            real[i] = at
        path.append(real[20000:])
    return np.array(path)


def read_over_pillars(pillar, a, b):
    """What jaws read: outer and inner along diagonal 1, then along diagonal 2."""
    readings = []
    for sign in (1.0, -1.0):
        u = np.array([a, sign * b]) / math.hypot(a, b)
        across = u @ pillar
        middle = math.hypot(a, b)
        readings += [middle + across.max() - across.min(), middle - across.max() + across.min()]
    return readings


@pytest.mark.parametrize("turn", [1, -1])
@pytest.mark.parametrize("a, b", [(80.0, 80.0), (120.0, 60.0)])
def test_play_drops_out_centre_to_centre_and_fakes_skew_from_outside(turn, a, b):
    readings = read_over_pillars(printed_pillar(0.2, 0.05, turn), a, b)
    fake = turn * faked_difference_mm(a, b, 0.2, 0.05)
    assert readings[0] - readings[2] == pytest.approx(fake, abs=2e-4)
    if a == b:
        assert fake == pytest.approx(turn * 0.2121, abs=5e-5)  # sqrt(2)*(Bx - By)
    fit = squareness_from_diagonals(Plane.XY, a, b, readings, ["1", "1", "2", "2"], FOUR)
    assert fit.difference_mm == pytest.approx(0.0, abs=1e-9)
    assert any(f"would have faked {abs(fake):.2f} mm" in says for says in fit.minds)
    outside = squareness_from_diagonals(Plane.XY, a, b, readings[::2], ["1", "2"], ["outer"] * 2)
    assert outside.angle.value == pytest.approx(fake * math.hypot(a, b) / (2 * a * b), rel=0.01)
    assert not outside.angle.significant  # the warning is in the interval too
    assert any("changes sign with the printing direction" in says for says in outside.minds)


def test_kept_reversal_errors_give_the_false_skew_its_size():
    kept = {"x": Estimate("reversal_x", 0.2, 0.01, 8, "mm"), "y": Estimate("reversal_y", 0.05, 0.01, 8, "mm")}
    readings = [123.2, 123.0]
    fit = squareness_from_diagonals(Plane.XY, 80, 80, readings, ["1", "2"], ["outer"] * 2, reversal=kept)
    assert fit.fake_known and fit.fake_rad == pytest.approx(0.15 * math.sqrt(2) / (math.sqrt(2) * 80))
    assert any("0.188 mm in 100 mm" in says for says in fit.minds)
    alike = {axis: Estimate("r", 0.02, 0.002, 8, "mm") for axis in "xyz"}
    quiet = squareness_from_diagonals(Plane.XZ, 80, 80, readings, ["1", "2"], ["inner"] * 2, reversal=alike)
    assert quiet.fake_rad == 0.0 and quiet.angle.u < fit.angle.u
    half = squareness_from_diagonals(Plane.YZ, 80, 80, readings, ["1", "2"], ["outer"] * 2, reversal=kept)
    assert not half.fake_known and half.fake_rad > 0.0


# Questions


def test_sides_that_differ_with_equal_diagonals_are_scale():
    d = math.hypot(80.1, 79.2)
    fit = pillars(d, d, a=80.1, b=79.2)
    assert any("scale along X and Y, not an angle" in says for says in fit.minds)
    assert not any("scale" in says for says in pillars(d, d, a=80.1, b=80.1).minds)
    leaning = diagonals(0.01, 80.1, 79.2)
    assert not any("scale" in says for says in pillars(*leaning, a=80.1, b=79.2).minds)
    assert not any("scale" in says for says in drawn(*diagonals(0, 100, 99), b=99.0).minds)


def test_repeats_that_are_none_are_pointed_at():
    d = math.hypot(80, 80)
    readings = [d + 10, d + 10.01, d + 10.62, d - 10, d + 10, d - 10]
    fit = squareness_from_diagonals(
        Plane.XY, 80, 80, readings, ["1"] * 4 + ["2"] * 2, ["outer"] * 3 + ["inner", "outer", "inner"]
    )
    assert fit.doubtful == (2,)
    assert any("0.62 mm apart" in says for says in fit.minds)
    pair = squareness_from_diagonals(Plane.XY, 80, 80, [d, d + 1.5, d], ["1", "1", "2"], ["drawn"] * 3)
    assert pair.doubtful == (0, 1)


# Refusals


@pytest.mark.parametrize(
    "readings, diagonal, part, words, row",
    [
        ([113.1, 107.1], "12", ["drawn"] * 2, "Diagonal 2 comes to 107.10 mm, but sides of 80 and 80 mm", None),
        ([115.3, 110.9], "12", ["drawn"] * 2, "differ by 4.40 mm, 2.2°", None),
        ([113.1], "1", ["drawn"], "Diagonal 2 is not read yet", None),
        ([113.1], "2", ["drawn"], "Diagonal 1 is not read yet", None),
        ([123.1, 103.1], "12", ["outer", "inner"], "read both the same way", None),
        ([113.1, -113.1], "12", ["drawn"] * 2, "Row 2: a diagonal is above zero", 1),
        ([math.nan, 113.1], "12", ["drawn"] * 2, "Row 1: a diagonal is above zero", 0),
        ([113.1, 113.2, 99999.0], "122", ["drawn"] * 3, "99999 mm cannot be where the sides make 113.1 mm", 2),
        ([1.13, 113.2], "12", ["drawn"] * 2, "1.13 mm cannot be", 0),
    ],
)
def test_what_cannot_be_is_refused(readings, diagonal, part, words, row):
    with pytest.raises(InputError, match=words.replace("(", r"\(")) as refused:
        squareness_from_diagonals(Plane.XY, 80.0, 80.0, readings, list(diagonal), part)
    assert (refused.value.field, refused.value.row) == ("reading_mm", row)


@pytest.mark.parametrize("a, b, field, axis", [(0.0, 80.0, "side_a_mm", "X"), (80.0, math.inf, "side_b_mm", "Z")])
def test_sides_that_cannot_be_are_refused(a, b, field, axis):
    with pytest.raises(InputError, match=f"along {axis}") as refused:
        squareness_from_diagonals(Plane.XZ, a, b, [1.0, 1.0], ["1", "2"], ["drawn"] * 2)
    assert refused.value.field == field


# A square turned over


def test_a_square_turned_over_takes_its_own_error_out():
    length, g, own = 120.0, 0.0008, 0.0003
    e1, e2 = length * math.tan(g) + length * math.tan(own), length * math.tan(g) - length * math.tan(own)
    fit = squareness_from_flips(Plane.XZ, length, [e1, e2], ["normal", "flipped"])
    assert fit.angle.value == pytest.approx(g, rel=1e-9) and fit.angle.name == "squareness_xz"
    assert fit.square.value == pytest.approx(own, rel=1e-6)
    repeated = squareness_from_flips(Plane.XZ, length, [e1, e1 + 0.01, e2, e2 + 0.01], ["normal"] * 2 + ["flipped"] * 2)
    assert repeated.parts[0].dof == 2
    assert repeated.parts[0].u_rad == pytest.approx(0.01 / math.sqrt(2) / 240)


@pytest.mark.parametrize(
    "length, changes, placing, field, words",
    [
        (0.0, [0.1, 0.1], ["normal", "flipped"], "length_mm", "above zero"),
        (100.0, [0.1], ["normal"], "change_mm", "one way round"),
        (100.0, [0.1], ["flipped"], "change_mm", "one way round"),
        (100.0, [5.0, 4.0], ["normal", "flipped"], "change_mm", "more than 2°"),
    ],
)
def test_a_square_that_tells_nothing_is_refused(length, changes, placing, field, words):
    with pytest.raises(InputError, match=words) as refused:
        squareness_from_flips(Plane.XY, length, changes, placing)
    assert refused.value.field == field


# Prediction and terms


def angle(value, u=0.0001):
    return Estimate("squareness_xy", value, u, math.inf, "rad")


@pytest.mark.parametrize(
    "after, check",
    [
        (angle(0.0001), SignCheck.GONE),
        (angle(0.0014), SignCheck.WRONG_SIGN),  # 0.0007 corrected with the wrong sign prints 0.0014
        (angle(0.0007), SignCheck.UNCHANGED),
        (angle(-0.0007), SignCheck.PARTLY),
        (angle(0.0007, 0.001), SignCheck.UNCLEAR),
    ],
)
def test_a_correction_is_held_against_its_prediction(after, check):
    assert check_prediction(angle(0.0007), after) is check
