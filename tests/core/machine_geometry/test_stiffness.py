"""Compliance from known pushes: planted springs, the budget by hand, and each refusal in full."""

import math

import numpy as np
import pytest

from core.errors import InputError
from core.machine_geometry.stiffness import Push, stiffness_from_pushes

SCALE = Push(10.0, 0.5)


def pushes(mm_per_n, n=5, *, side="along", sd=0.0, force=10.0, rng=None):
    rng = rng or np.random.default_rng(1)
    rest = 0.5 + sd * rng.standard_normal(n)
    pushed = 0.5 + mm_per_n * force + sd * rng.standard_normal(n)
    return [side] * 2 * n, ["rest", "pushed"] * n, np.column_stack([rest, pushed]).ravel().tolist()


def measured(*parts, push=SCALE, axis="x", resolution_mm=0.001):
    side, hold, reading = ([one for part in parts for one in part[place]] for place in range(3))
    return stiffness_from_pushes(side, hold, reading, push, axis=axis, resolution_mm=resolution_mm)


def test_millimetres_per_newton_with_the_budget_by_hand():
    """d = 0.030, 0.032, 0.031, 0.029, 0.033: mean 0.031, s 0.00158; F = 10 N within 0.5 (JCGM 100:2008 4.3.7)."""
    readings = [value for d in (0.030, 0.032, 0.031, 0.029, 0.033) for value in (0.5, 0.5 + d)]
    fit = measured((["along"] * 10, ["rest", "pushed"] * 5, readings))
    (found,) = fit.estimates()
    assert (found.name, found.unit) == ("compliance_x", "mm/N")
    assert found.value == pytest.approx(0.0031)
    s = math.sqrt(0.0000025)
    shares = (s / math.sqrt(5) / 10, 0.001 / math.sqrt(6) / 10, 0.0031 * 0.5 / math.sqrt(3) / 10)
    assert found.u == pytest.approx(math.hypot(*shares))
    assert found.dof == pytest.approx(4 * (found.u / shares[0]) ** 4)
    moved = fit.sides[0].moved_by(5.0)
    assert (moved.value, moved.u, moved.unit) == (pytest.approx(0.0155), pytest.approx(5 * found.u), "mm")


def test_both_sides_are_told_apart_and_the_direction_of_the_push_is_free():
    fit = measured(pushes(-0.002), pushes(0.006, side="sideways"), axis="y")
    assert [(e.name, round(e.value, 6)) for e in fit.estimates()] == [
        ("compliance_y", 0.002), ("side_compliance_y", 0.006)
    ]  # fmt: skip
    assert fit.minds == ()


def test_the_interval_covers_what_was_planted():
    """The force is off by up to its limit in every run, the same for all pushes of it."""
    rng, hits = np.random.default_rng(7), 0
    for _ in range(600):
        true_n = 10.0 + rng.uniform(-0.5, 0.5)
        fit = measured(pushes(0.003, sd=0.002, force=true_n, rng=rng))
        (found,) = fit.estimates()
        hits += abs(found.value - 0.003) <= found.U
    assert 0.93 <= hits / 600 <= 0.98


def test_an_axis_that_does_not_give_way_is_stiff_within_its_interval():
    (found,) = measured(pushes(0.0)).estimates()
    assert found.value == 0 and found.u == pytest.approx(0.001 / math.sqrt(6) / 10)


def test_few_pushes_and_one_side_are_minded():
    assert [str(says) for says in measured(pushes(0.002, n=3)).minds] == [
        "3 pushes on one side are few; 5 make a sound interval.",
        "Push along the axis and sideways: belt and slide are told apart by both.",
    ]


def test_a_reading_left_out_takes_its_pair_along():
    side, hold, reading = pushes(0.002)
    reading[3] = math.nan
    fit = measured((side, hold, reading))
    assert fit.sides[0].rows.tolist() == [[0, 1], [4, 5], [6, 7], [8, 9]]


STRAY = pushes(0.002)
STRAY[2][5] = 2.7
CROSSED = (["along"] * 4, ["rest", "pushed"] * 2, [0.5, 0.54, 0.5, 0.45])


@pytest.mark.parametrize(
    ("parts", "changed", "field", "row", "words"),
    [
        ((["along"], ["rest"], [0.5]), {}, "reading_mm", None,
         "No pair yet: read the dial at rest and while the push is held."),
        (pushes(0.002, n=1), {}, "reading_mm", None,
         "One push only: it does not tell how far pushes scatter. Read 5 pairs on each side."),
        (CROSSED, {}, "reading_mm", None,
         "Along X: the difference changes its sign from cycle to cycle (+0.040, −0.050 mm), which play never does: the "
         "base of the indicator moves. Clamp it and read these pairs again."),
        (pushes(0.12), {}, "reading_mm", None,
         "Along X: 10 N move it by 1.20 mm, so something is loose or the motors are off. Look at clamp and grub "
         "screws, switch the motors on, push again; this is not kept as a result."),
        (STRAY, {}, "reading_mm", 5,
         "2.7 mm is 2.18 mm from the other readings of the same approach; type it again, or leave it out with a "
         "reason."),
        (pushes(0.002), {"push": Push(0.0, 0.5)}, "push_n", None,
         "A push of 0 N is not possible here; pull with 5 to 20 N on a luggage scale, 50 at most."),
        (pushes(0.002), {"push": Push(60.0, 0.5)}, "push_n", None,
         "A push of 60 N is not possible here; pull with 5 to 20 N on a luggage scale, 50 at most."),
        (pushes(0.002), {"push": Push(10.0, 0.0)}, "push_limit_n", None,
         "The scale must be true to more than 0 and less than half of the push of 10 N; type what its maker states, or "
         "what a known mass showed."),
        (pushes(0.002), {"push": Push(10.0, 5.0)}, "push_limit_n", None,
         "The scale must be true to more than 0 and less than half of the push of 10 N; type what its maker states, or "
         "what a known mass showed."),
        (pushes(0.002), {"resolution_mm": 0.0}, "resolution_mm", None,
         "The dial must read to more than 0 and less than 1 mm; type its graduation."),
    ],
)  # fmt: skip
def test_what_cannot_be_a_result_is_refused(parts, changed, field, row, words):
    with pytest.raises(InputError) as refused:
        measured(parts, **changed)
    assert (refused.value.field, refused.value.row, refused.value.message) == (field, row, words)
