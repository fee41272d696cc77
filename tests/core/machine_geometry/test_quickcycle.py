"""The quick cycle: u(B)^2 = s^2/n + r^2/6 by hand, coverage of the interval, and what is refused or asked."""

import math

import numpy as np
import pytest

from core.errors import InputError
from core.machine_geometry.quickcycle import reversal_from_pairs


def trial(differences, start=0.40, **more):
    """Readings of places in order: {place: differences}."""
    place, approach, reading = [], [], []
    for name, values in differences.items():
        for d in values:
            place += [name, name]
            approach += ["up", "down"]
            reading += [start, start - d]
    held = {"place": place, "approach": approach, "reading_mm": reading, "axis": "x", "resolution_mm": 0.01}
    return held | more


def fit(differences, **more):
    return reversal_from_pairs(**trial(differences, **more))


def refused(differences, **more):
    with pytest.raises(InputError) as caught:
        fit(differences, **more)
    assert caught.value.field in ("reading_mm", "resolution_mm")
    return caught.value


def test_value_and_uncertainty_by_hand():
    (B,) = fit({"Middle": [0.04, 0.05, 0.04, 0.05, 0.04]}).estimates()
    s = math.sqrt((3 * 0.004**2 + 2 * 0.006**2) / 4)
    assert (B.name, B.unit) == ("reversal_x", "mm")
    assert B.value == pytest.approx(0.044)
    assert B.u == pytest.approx(math.sqrt(s**2 / 5 + 0.01**2 / 6))
    assert B.dof == pytest.approx(B.u**4 / ((s**2 / 5) ** 2 / 4))


def test_equal_readings_are_no_exact_ones():
    (B,) = fit({"Middle": [0.04] * 5}).estimates()
    assert B.u == pytest.approx(0.01 / math.sqrt(6))


@pytest.mark.parametrize("sd", [0.006, 0.012])
def test_the_interval_covers_planted_play(sd):
    rng, hits = np.random.default_rng(4), 0
    for _ in range(2000):
        up, down = rng.normal(0.50, sd, 5), rng.normal(0.40, sd, 5)
        reading = np.round(np.column_stack([up, down]).ravel(), 3)
        (B,) = reversal_from_pairs(["a"] * 10, ["up", "down"] * 5, reading, axis="x", resolution_mm=0.001).estimates()
        hits += abs(B.value - 0.10) <= B.U
    assert 0.93 <= hits / 2000 <= 0.97


def test_the_worst_place_is_reported():
    found = fit({"Left": [0.02, 0.03], "Middle": [-0.05, -0.06], "Right": [0.04, 0.03]})
    assert found.worst.name == "Middle"
    assert found.estimates()[0].value == pytest.approx(0.055)
    assert [place.name for place in found.places] == ["Left", "Middle", "Right"]
    assert found.places[1].difference_mm.tolist() == pytest.approx([-0.05, -0.06])
    assert found.places[1].rows.tolist() == [[4, 5], [6, 7]]


def test_a_missing_reading_takes_its_pair_along():
    columns = trial({"Middle": [0.04, 0.05, 0.09]})
    columns["reading_mm"][4] = math.nan
    found = reversal_from_pairs(**columns)
    assert found.worst.difference_mm.tolist() == pytest.approx([0.04, 0.05])
    lone = trial({"Middle": [0.04, 0.05]})
    lone = {key: value + value[:1] if isinstance(value, list) else value for key, value in lone.items()}
    assert len(reversal_from_pairs(**lone).worst.rows) == 2  # a reading without its other side


def test_what_to_mind():
    minds = fit({"Left": [0.04] * 3, "Right": [0.05]}).minds
    assert "3 pairs at one place are few" in minds[0]
    assert "One pair only at Right" in minds[1]
    assert "both ends and in the middle" in minds[2]
    assert fit(dict.fromkeys("abc", [0.04, 0.05, 0.04, 0.05, 0.04])).minds == ()


def test_a_pair_that_stands_out_is_flagged_and_the_first_one_named():
    cold = fit(dict.fromkeys("abc", [0.04] * 5) | {"b": [0.14, 0.04, 0.04, 0.05, 0.04]})
    assert cold.places[1].flagged.tolist() == [True, False, False, False, False]
    assert "after power-on" in cold.minds[0]
    later = fit(dict.fromkeys("abc", [0.04] * 5) | {"c": [0.04, 0.04, 0.14, 0.05, 0.04]})
    assert later.places[2].flagged.tolist() == [False, False, True, False, False]
    assert "read it again" in later.minds[0]
    assert not fit({"a": [0.04, 0.14, 0.04]}).worst.flagged.any()  # of three nobody stands out


def test_a_difference_that_changes_its_sign_is_a_moving_base():
    error = refused({"Middle": [0.04, -0.05, 0.03]})
    assert "+0.040, −0.050, +0.030 mm" in error.message and "Clamp it" in error.message
    assert fit({"Middle": [0.01, -0.01, 0.01]}).estimates()[0].value == pytest.approx(0.01 / 3)  # a dial trembles


def test_play_of_a_loose_clamp_is_no_result():
    error = refused({"Middle": [1.2, 1.21, 1.19]})
    assert "1.20 mm" in error.message and "clamp" in error.message and "not kept" in error.message


def test_too_few():
    assert "One pair only (Left)" in refused({"Left": [0.04], "Right": [0.05]}).message
    assert "from the other side" in refused({"Left": [0.04]}, reading_mm=[0.4, math.nan]).message
    assert refused({"Left": [0.04] * 2}, resolution_mm=0.0).field == "resolution_mm"


def test_a_slip_of_the_fingers_is_found_in_its_row():
    columns = trial({"Middle": [0.04] * 5})
    columns["reading_mm"][6] = 4.0
    with pytest.raises(InputError) as caught:
        reversal_from_pairs(**columns)
    assert caught.value.row == 6
