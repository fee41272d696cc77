"""Turns of levelling screws and twist. Expected: own computation; ISO 261 coarse pitches."""

import numpy as np
import pytest

from core.errors import InputError
from core.machine_geometry.bedplane import fit_bed, plan_probes
from core.machine_geometry.bedscrews import PITCHES_MM, plan_turns, twist_of
from core.quantity import Estimate
from tests.published import table

X, Y = np.array(plan_probes(220, 220, 3)).T
CORNERS = [(10.0, 10.0), (210.0, 10.0), (210.0, 210.0), (10.0, 210.0)]
FIVE = ([20, 200, 200, 20, 110], [20, 20, 200, 200, 110], [0.05, 0.15, 0.02, -0.08, 0.04])


def test_three_screws_by_hand():
    """The first stands nearest to the mean height of the three: it stays."""
    plane = fit_bed(*FIVE)
    turns = plan_turns(plane, [(10, 10), (210, 10), (110, 210)], 0.7, clockwise_lowers=True)
    assert [t.turns.value for t in turns] == pytest.approx([0, 0.1587, -0.1270], abs=5e-5)
    assert [t.angle_deg for t in turns] == pytest.approx([0, 57.1, 45.7], abs=5e-2)
    assert [t.clockwise for t in turns] == [None, True, False]
    assert [t.number for t in turns] == [1, 2, 3]
    run = np.array([0, 200.0, 0.0])
    assert turns[1].turns.u == pytest.approx(np.sqrt(run @ plane.cov @ run) / 0.7)
    assert [t.clockwise for t in plan_turns(plane, CORNERS, 0.7, clockwise_lowers=False)][1] is False


def test_a_fifth_of_a_turn_is_seventy_two_degrees():
    plane = fit_bed(X, Y, 0.1 / 200 * X)
    assert plan_turns(plane, CORNERS, 0.5, clockwise_lowers=True)[1].angle_deg == pytest.approx(72.0)


def test_the_screw_that_needs_least_stays_whichever_was_named_first():
    plane = fit_bed(*FIVE)
    turns = plan_turns(plane, [(210, 10), (10, 10), (110, 210)], 0.7, clockwise_lowers=True)
    assert [t.clockwise for t in turns] == [True, None, False]
    assert [t.turns.value for t in turns] == pytest.approx([0.1587, 0, -0.1270], abs=5e-5)


def test_a_turn_within_its_uncertainty_is_not_told():
    plane = fit_bed(X, Y, 0.02 / 200 * X, known_probe=Estimate("probe_sd", 0.004, 0.001, 9.0, "mm"))
    close = plan_turns(plane, CORNERS, 0.5, clockwise_lowers=True)
    assert [t.told for t in close] == [False, True, True, False]
    loose = fit_bed(X, Y, 0.02 / 200 * X, known_probe=Estimate("probe_sd", 0.02, 0.005, 9.0, "mm"))
    vague = plan_turns(loose, CORNERS, 0.5, clockwise_lowers=True)
    assert [t.told for t in vague] == [False] * 4 and vague[1].clockwise is True


@pytest.mark.parametrize("clockwise_lowers", [True, False])
def test_turning_as_told_levels_the_bed(clockwise_lowers):
    plane = fit_bed(X, Y, 6e-4 * X - 3e-4 * Y)
    height = []
    for turn in plan_turns(plane, CORNERS, 0.7, clockwise_lowers=clockwise_lowers):
        down = 0.0 if turn.clockwise is None else (1 if turn.clockwise == clockwise_lowers else -1)
        height.append(float(plane.height(*turn.place_mm)) - down * turn.angle_deg / 360 * 0.7)
    assert height == pytest.approx([height[0]] * 4)


def test_a_level_bed_turns_nothing():
    plane = fit_bed(X, Y, np.zeros(9))
    assert all(turn.clockwise is None for turn in plan_turns(plane, CORNERS, 0.5, clockwise_lowers=True))


@pytest.mark.parametrize("name", sorted(PITCHES_MM))
def test_pitches_are_those_of_the_standard(name):
    (row,) = table("drive_iso261_coarse", d=name.removeprefix("M"))
    assert PITCHES_MM[name] == float(row["P"])


def test_twist_is_told_apart_from_tilt():
    twist = 2e-5 * (X - 110) * (Y - 110)
    plane = fit_bed(X, Y, 5e-4 * X + twist)
    found = twist_of(plane, CORNERS)
    assert found.value == pytest.approx(2e-5 * 100 * 100)  # (z1 + z3 - z2 - z4)/4
    assert (found.name, found.unit, found.dof) == ("bed_twist", "mm", 5)
    assert twist_of(plane, [CORNERS[0], CORNERS[2], CORNERS[1], CORNERS[3]]).value == pytest.approx(found.value)
    assert twist_of(plane, CORNERS[1:] + CORNERS[:1]).value == pytest.approx(-found.value)
    assert twist_of(plane, CORNERS[:3]) is None
    line = fit_bed([0, 100, 200, 0, 100], [0, 0, 0, 100, 100], [0, 0.1, 0, 0, 0.1])
    assert twist_of(line, CORNERS) is not None
    cross = fit_bed([0, 100, 50, 50, 50], [50, 50, 0, 100, 50], [0, 0, 0, 0, 0.1])  # no place off both axes
    assert twist_of(cross, CORNERS) is None


def test_the_uncertainty_of_twist_rests_on_the_probe_or_on_the_scatter():
    rng = np.random.default_rng(4)
    z = rng.normal(0, 0.01, 9)
    scatter = twist_of(fit_bed(X, Y, z), CORNERS)
    touched = twist_of(fit_bed([*X, X[0], X[0]], [*Y, Y[0], Y[0]], [*z, z[0] + 0.01, z[0] - 0.01]), CORNERS)
    assert (scatter.dof, touched.dof) == (5, 2)
    four = twist_of(fit_bed([20, 200, 200, 20], [20, 20, 200, 200], [0.0, 0.1, 0.0, 0.1]), CORNERS)
    assert four.value == pytest.approx(-0.05 * (200 / 180) ** 2)
    assert four.dof == np.inf and four.u == pytest.approx(0.02 / 2 * (200 / 180) ** 2)


@pytest.mark.parametrize(
    "screws, pitch, field, words",
    [
        (CORNERS[:2], 0.5, "screws", "2 screws are named"),
        ([*CORNERS, (110.0, 110.0)], 0.5, "screws", "5 screws are named"),
        ([(0.0, 0.0), (100.0, 0.0), (200.0, 1.0)], 0.5, "screws", "in one line"),
        ([(0.0, 0.0)] * 3, 0.5, "screws", "in one line or on one place"),
        (CORNERS, 0.0, "pitch_mm", "above zero"),
        (CORNERS, np.inf, "pitch_mm", "above zero"),
    ],
)
def test_refusals(screws, pitch, field, words):
    with pytest.raises(InputError, match=words) as refused:
        plan_turns(fit_bed(*FIVE), screws, pitch, clockwise_lowers=True)
    assert refused.value.field == field
