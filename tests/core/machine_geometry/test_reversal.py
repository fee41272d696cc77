"""The figures of ISO 230-2 against a published test; intervals against planted truth; refusals."""

import math

import numpy as np
import pytest

from core.errors import InputError
from core.machine_geometry.reversal import Approach, reversal_from_cycle
from tests.published import printed, table

ROUNDED = 1.6  # units of the last digit: the report worked with readings that were not rounded to it
WAY = {"forward": "up", "backward": "down"}


def published(**more):
    rows = table("reversal_axis_test")
    columns = {
        "target_mm": [float(row["target_mm"]) for row in rows],
        "reading_mm": [float(row["measured_mm"]) for row in rows],
        "approach": [WAY[row["direction"]] for row in rows],
        "axis": "x",
        "resolution_mm": 1e-5,
    }
    return columns | more


@pytest.mark.parametrize("row", table("reversal_axis_figures"), ids=lambda row: row["figure"])
def test_the_published_figures(row):
    found = reversal_from_cycle(**published()).estimate(row["figure"])
    assert found.value == printed(row["iso"], ROUNDED)
    assert found.name == f"{row['figure']}_x" and found.unit == "mm"


def test_e_and_r_are_those_of_the_standard_and_not_those_printed():
    fit = reversal_from_cycle(**published())
    for row in table("reversal_axis_figures"):
        right = row["figure"] not in ("systematic", "repeatability")
        assert (fit.estimate(row["figure"]).value == printed(row["printed"], ROUNDED)) == right
    assert [e.name for e in fit.estimates()] == [f"{row['figure']}_x" for row in table("reversal_axis_figures")]


def test_the_published_means_and_deviations_by_target():
    fit = reversal_from_cycle(**published())
    assert fit.minds == ()
    assert fit.worst == 1
    for i, row in enumerate(table("reversal_axis_targets")):
        assert fit.target_mm[i] == float(row["target_mm"])
        found = (fit.up.mean_mm[i], fit.down.mean_mm[i], fit.reversal_mm[i], fit.up.sd_mm[i], fit.down.sd_mm[i])
        for value, key in zip(found, ("mean_up", "mean_down", "reversal", "sd_up", "sd_down"), strict=True):
            assert value == printed(row[key], ROUNDED)
        assert fit.up.high_mm[i] - fit.up.low_mm[i] == pytest.approx(4 * fit.up.sd_mm[i])


def test_where_the_readings_begin_to_count_drops_out():
    here = reversal_from_cycle(**published())
    there = reversal_from_cycle(**published(reading_mm=np.array(published()["reading_mm"]) - 412.5))
    for first, second in zip(here.estimates(), there.estimates(), strict=True):
        assert second.value == pytest.approx(first.value, abs=1e-9)
        assert second.u == pytest.approx(first.u, rel=1e-6)


def cycle(rng=None, cycles=5, targets=(10.0, 50.0, 90.0, 130.0, 170.0), sd=0.004, play=(0.03,) * 5, scale=2e-4):
    """Readings of an axis with planted play at each target, short by half of it either way."""
    rows = []
    for target, B in zip(targets, play, strict=True):
        for _ in range(cycles):
            for way, sign in (("up", -1), ("down", 1)):
                noise = 0.0 if rng is None else rng.normal(0, sd)
                rows.append((target, target * (1 + scale) + sign * B / 2 + noise, way))
    target, reading, way = zip(*rows, strict=True)
    return {"target_mm": target, "reading_mm": reading, "approach": way, "axis": "y", "resolution_mm": 1e-3}


def test_what_is_planted_without_noise_comes_out():
    fit = reversal_from_cycle(**cycle(play=(0.03, 0.05, 0.01, 0.0, 0.02)))
    assert fit.estimate("reversal").value == pytest.approx(0.05)
    assert fit.estimate("mean_reversal").value == pytest.approx(-0.022)  # up lies lower where an axis stops short
    assert fit.estimate("mean_deviation").value == pytest.approx(160 * 2e-4)
    assert fit.estimate("systematic_up").value == pytest.approx(0.026 - (0.01 - 0.025))
    assert fit.estimate("repeatability").value == pytest.approx(0.05)
    assert fit.estimate("repeatability_up").value == pytest.approx(0.0, abs=1e-12)
    for found in fit.estimates():  # equal readings are no exact ones
        assert found.u == pytest.approx(1e-3 / math.sqrt(6)) and found.dof > 1e6


def test_the_intervals_cover_what_was_planted():
    rng = np.random.default_rng(1)
    truth = {"reversal": 0.06, "mean_reversal": -0.032, "mean_deviation": 0.032, "systematic_up": 0.036}
    play = (0.02, 0.03, 0.06, 0.03, 0.02)
    hits = dict.fromkeys(truth, 0)
    for _ in range(400):
        fit = reversal_from_cycle(**cycle(rng, play=play) | {"resolution_mm": 1e-5})
        for stem, value in truth.items():
            found = fit.estimate(stem)
            hits[stem] += abs(found.value - value) <= found.U
    assert all(0.93 <= count / 400 <= 0.97 for count in hits.values()), hits


def test_one_way_scatter_can_be_the_largest_repeatability():
    columns = cycle(play=(0.0,) * 5)
    reading = np.array(columns["reading_mm"])
    up = [i for i, way in enumerate(columns["approach"]) if way == "up" and columns["target_mm"][i] == 50.0]
    reading[up] += np.array([-0.02, -0.01, 0.0, 0.01, 0.02])
    fit = reversal_from_cycle(**columns | {"reading_mm": reading})
    assert fit.estimate("repeatability").value == pytest.approx(4 * np.std([-2, -1, 0, 1, 2], ddof=1) / 100)
    assert fit.estimate("repeatability").value == fit.estimate("repeatability_up").value
    assert fit.estimate("repeatability").u == fit.estimate("repeatability_up").u


def test_fewer_cycles_and_missing_readings_are_minded():
    columns = cycle(cycles=3)
    reading = np.array(columns["reading_mm"])
    reading[[i for i, target in enumerate(columns["target_mm"]) if target == 170.0][1:]] = math.nan
    fit = reversal_from_cycle(**columns | {"reading_mm": reading})
    assert fit.target_mm.tolist() == [10.0, 50.0, 90.0, 130.0]
    assert "left out" in fit.minds[0]
    assert "ISO 230-2 asks for 5 targets and 5 cycles; here are 4 and 3" in fit.minds[1]


def refused(**more):
    with pytest.raises(InputError) as caught:
        reversal_from_cycle(**cycle() | more)
    return caught.value


def test_refusals():
    one = cycle(targets=(10.0,), play=(0.03,))
    assert "quick cycle" in refused(**one).message and refused(**one).field == "reading_mm"
    once = cycle(cycles=1)
    assert "(0 so far)" in refused(**once).message
    for resolution in (0.0, -0.01, math.nan, 1.0):
        graduation = refused(resolution_mm=resolution)
        assert graduation.field == "resolution_mm"
        assert graduation.message.startswith("The dial must read to more than 0 and less than 1 mm")
    loose = refused(**cycle(play=(0.02, 1.2, 0.02, 0.02, 0.02)))
    assert "something is loose" in loose.message and "not kept" in loose.message and loose.row is None
    slipped = np.array(cycle()["reading_mm"])
    slipped[7] *= 10
    stray = refused(reading_mm=slipped)
    assert stray.row == 7 and "type it again" in stray.message


def test_approaches_are_two():
    assert [str(way) for way in Approach] == ["up", "down"]
