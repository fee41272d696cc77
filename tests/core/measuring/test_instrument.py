"""Checks of hand instruments: the book's budget, planted faults, what goes into the instrument's row, refusals."""

import math
from dataclasses import replace

import numpy as np
import pytest

from core.errors import InputError
from core.measuring.checkpoints import bore_under_read
from core.measuring.checkreadings import CheckReadings
from core.measuring.gum import Coverage
from core.measuring.instrument import check_instrument, instrument_after
from core.measuring.instrumentkinds import (
    KINDS,
    LightGap,
    Part,
    Plan,
    kind_of,
    light_gap_words,
    part_words,
    parts_of,
    plan_check,
    plan_words,
    plans_of,
    usual_limit,
)
from core.measuring.tolerance import Conformity
from core.records.rows import Instrument
from tests.core.measuring.checks import rows, taken, with_reading
from tests.published import printed

ZERO, LENGTH, TIP, INSIDE, DEPTH, HAND, SECOND = Part


def point(check, part, reference):
    return next(p for p in check.points if p.part is part and p.reference == pytest.approx(reference))


def test_the_caliper_of_ea_4_02_s10():
    """EA-4/02 S10: 150 mm block of +-0.8 um, 150.10 read, steps of 0.05 mm, +-2 K: all but the mechanical effects.

    Contributions as printed there: 0.46, 1.15 x 1.7 and 15 um (14.4 rounded up).
    """
    readings = [(ZERO, 0.0, 0.0, 0.0)] * 2 + [(LENGTH, 150.0, 0.0008, 150.10)] * 2
    check = check_instrument(rows("caliper", *readings, resolution=0.05, limit=0.07))
    found = point(check, LENGTH, 150.0)
    contributions = {str(c.name): 1000 * c.contribution for c in found.budget.components}
    assert contributions["reference"] == printed("0.46")
    assert contributions["temperature apart"] == pytest.approx(1.15 * 1.7, abs=0.05)
    assert contributions["resolution"] == printed("14.4")
    assert contributions["repeatability"] == 0.0
    assert found.error == pytest.approx(0.10)
    assert found.budget.coverage is Coverage.RECTANGLE
    assert found.decision.conformity is Conformity.NOT_CONFORMING
    assert check.conformity is Conformity.NOT_CONFORMING


def test_a_good_caliper_conforms_and_its_numbers_go_into_the_row():
    check = check_instrument(taken(zero=0.002, rng=np.random.default_rng(1)))
    assert check.conformity is Conformity.CONFORMING
    assert [untold.name for untold in check.untold] == ["light_gap"]
    assert [e.name for e in check.estimates()] == ["zero_outside", "zero_inside", "zero_depth", "scale", "sd_hand"]
    assert {e.unit for e in check.estimates()} == {"mm", "1"}
    row = instrument_after(Instrument("Caliper 2", u_outside_zero_mm=0.9), check)
    zero = check.zero
    assert row.u_outside_zero_mm == pytest.approx(
        math.sqrt(zero.value**2 + zero.u**2 + check.misfit**2 / 3)
    )
    assert row.u_inside_zero_mm == pytest.approx(math.hypot(check.inside_zero.value, check.inside_zero.u))
    assert row.u_scale_ratio == pytest.approx(math.hypot(check.scale.value, check.scale.u))
    assert (row.sd_hand_mm, row.sd_hand_dof) == (check.hand.sd, 9)
    assert check.worst().part in (LENGTH, INSIDE)


@pytest.mark.parametrize(
    ("planted", "name", "value"),
    [
        ({"zero": 0.03}, "zero_outside", 0.03),
        ({"zero": 0.01, "inside": -0.04}, "zero_inside", -0.04),
        ({"scale": 6e-4}, "scale", 6e-4),
    ],
)
def test_planted_fault_is_found_and_lies_in_its_interval(planted, name, value):
    inside = 0
    for seed in range(300):
        check = check_instrument(taken(rng=np.random.default_rng(seed), limit=0.2, **planted))
        found = next(e for e in check.estimates() if e.name == name)
        assert found.significant
        inside += abs(found.value - value) <= found.U
    assert inside >= 0.93 * 300


def test_a_scale_that_is_off_is_told_from_a_zero_and_corrected_between_the_points():
    check = check_instrument(taken(scale=1e-3, resolution=0.001, limit=0.2))
    assert check.scale.value == pytest.approx(1e-3, abs=3e-5)
    assert abs(check.zero.value) < 2e-3
    curve = check.curve()
    correction, u = curve.at(40.0)
    assert correction == pytest.approx(-0.040, abs=1e-3)
    assert curve.u[-2] <= u <= curve.u[-1]
    assert curve.U[-1] > curve.u[-1]
    with pytest.raises(InputError, match="60 mm lies outside the checked lengths 0 to 51.9935 mm") as refused:
        curve.at(60.0)
    assert refused.value.field == "length"


def test_worn_tips_widen_the_budget_and_are_judged():
    readings = taken(plan=Plan.REFERENCES)
    tips = [row for row, part in enumerate(readings.part) if part is TIP]
    worn = readings
    for row in tips:
        worn = with_reading(worn, row, 24.95)
    check = check_instrument(worn)
    components = {str(c.name): c.contribution for c in point(check, LENGTH, 25.0).budget.components}
    assert components["tips against root"] == pytest.approx(0.05 / 2 / math.sqrt(3))
    assert point(check, TIP, 25.0).decision.conformity is Conformity.NOT_CONFORMING
    assert check.conformity is Conformity.NOT_CONFORMING


def test_light_between_the_closed_jaws_proves_nothing_and_none_adds_nothing():
    good = taken(zero=0.002, rng=np.random.default_rng(1))
    none = check_instrument(replace(good, light_gap=LightGap.NONE))
    assert (none.conformity, none.untold) == (Conformity.CONFORMING, ())
    seen = check_instrument(replace(good, light_gap=LightGap.SEEN))
    assert (seen.conformity, seen.light_gap, seen.untold) == (Conformity.NOT_PROVED, LightGap.SEEN, ())
    assert [e.value for e in seen.estimates()] == [e.value for e in none.estimates()]


def test_the_depth_rod_has_a_zero_of_its_own():
    readings = taken(rng=np.random.default_rng(1))
    for row in (row for row, part in enumerate(readings.part) if part is DEPTH):
        readings = with_reading(readings, row, -0.01)
    check = check_instrument(readings)
    assert check.depth_zero.value == pytest.approx(-0.01) and check.depth_zero.u > 0.0
    assert point(check, DEPTH, 0.0).count == 3
    assert check.depth_zero.name == "zero_depth" and abs(check.zero.value) < 0.005
    for row in (row for row, part in enumerate(readings.part) if part is DEPTH):
        readings = with_reading(readings, row, -0.06)
    assert point(check_instrument(readings), DEPTH, 0.0).decision.conformity is Conformity.NOT_CONFORMING
    assert DEPTH not in parts_of("micrometer") and DEPTH in parts_of("caliper") and TIP not in parts_of("balance")


def test_a_micrometer_has_faces_but_neither_blades_nor_rod():
    check = check_instrument(taken("micrometer", resolution=0.001, sd=0.0004, rng=np.random.default_rng(1)))
    assert [untold.name for untold in check.untold] == ["light_gap"]
    balance = check_instrument(taken("balance", rng=np.random.default_rng(1)))
    assert balance.untold == ()


def test_flat_blades_read_a_small_bore_too_small():
    """Chord of a circle: about t^2/(2 D)."""
    assert bore_under_read(0.4, 5.0) == pytest.approx(0.4**2 / 10, rel=0.01)
    assert bore_under_read(0.0, 5.0) == 0.0
    usual, typed = (point(check_instrument(taken(blade_land_mm=t)), INSIDE, 7.996) for t in (None, 0.4))
    assert usual.error == typed.error
    assert usual.budget.u > typed.budget.u
    sharp = point(check_instrument(taken(blade_land_mm=0.0)), INSIDE, 7.996)
    assert sharp.error - typed.error == pytest.approx(-bore_under_read(0.4, 7.996), abs=1e-9)


# What is not told

def test_zero_alone_proves_nothing_but_gives_zero():
    check = check_instrument(taken(plan=Plan.ZERO))
    assert check.conformity is Conformity.NOT_PROVED
    assert (check.scale, check.curve()) == (None, None)
    assert [untold.name for untold in check.untold] == ["scale", "zero_inside", "zero_depth", "light_gap", "sd_hand"]
    row = instrument_after(Instrument("Caliper 2", u_scale_ratio=1e-4, sd_hand_mm=0.02), check)
    assert (row.u_scale_ratio, row.sd_hand_mm) == (1e-4, 0.02)
    assert row.u_outside_zero_mm == pytest.approx(check.zero.u)


def test_zero_alone_shows_a_fault():
    check = check_instrument(taken(plan=Plan.ZERO, zero=0.05))
    assert check.conformity is Conformity.NOT_CONFORMING


def test_the_hand_alone_tells_about_the_hand():
    check = check_instrument(taken(plan=Plan.TWO_PEOPLE, offset=0.03, rng=np.random.default_rng(3)))
    assert (check.points, check.worst(), check.zero_return) == ((), None, None)
    assert check.conformity is Conformity.NOT_PROVED
    untold = [untold.name for untold in check.untold]
    assert untold == ["zero_outside", "scale", "zero_inside", "zero_depth", "light_gap"]
    assert check.hand.dof == 18
    row = instrument_after(Instrument("Caliper 2", u_outside_zero_mm=0.9), check)
    assert (row.u_outside_zero_mm, row.sd_hand_dof) == (0.9, 18)


def test_a_length_and_a_bore_without_zero_leave_zero_open():
    readings = [(LENGTH, 22.0, 0.004, 22.01), (LENGTH, 22.0, 0.004, 22.0), (INSIDE, 22.0, 0.004, 21.99)]
    check = check_instrument(rows("caliper", *readings))
    assert (check.zero, check.scale) == (None, None)
    assert check.inside_zero.value == pytest.approx(-0.01 + bore_under_read(0.4, 22.0))
    inside = check_instrument(rows("caliper", *readings[2:], readings[2]))
    assert inside.zero is None
    assert inside.curve() is None


def test_readings_taken_once_lean_on_the_hand():
    seatings = [(HAND, None, None, y) for y in (10.0, 10.02, 10.01)]
    readings = [(ZERO, 0.0, 0.0, 0.0), (LENGTH, 22.0, 0.004, 22.0), *seatings]
    check = check_instrument(rows("caliper", *readings))
    repeatability = next(c for c in check.points[0].budget.components if c.name == "repeatability")
    assert (repeatability.u, repeatability.dof) == (pytest.approx(0.01), 2)
    with pytest.raises(InputError, match="read one of them three times") as refused:
        check_instrument(rows("caliper", *readings[:2]))
    assert refused.value.field == "measured"


# Zero

def test_zero_that_moved_marks_the_readings_in_between():
    good = taken()
    again = [row for row, part in enumerate(good.part) if part is ZERO][-2:]
    moved = with_reading(with_reading(good, again[0], 0.03), again[1], 0.03)
    check = check_instrument(moved)
    assert not check.zero_return.ok
    assert (check.zero_return.first, check.zero_return.farthest) == (0.0, 0.03)
    assert check.zero_return.doubtful_rows == tuple(range(5, again[0]))
    assert check.conformity is Conformity.NOT_PROVED
    kept = check_instrument(with_reading(good, again[1], 0.01))
    assert (kept.zero_return.ok, kept.zero_return.doubtful_rows) == (True, ())
    assert kept.conformity is Conformity.CONFORMING


# Kinds

@pytest.mark.parametrize("kind", KINDS)
def test_every_kind_has_plans_whose_readings_can_be_judged(kind):
    for plan in plans_of(kind):
        assert plan_words(plan)
        readings = plan_check(kind, plan)
        assert readings
        assert {reading.part for reading in readings} <= set(parts_of(kind))
        assert all(str(reading.name) for reading in readings)
    resolution = kind_of(kind).resolution
    limit = {"limit": 0.02} if kind == "other" else {}
    check = check_instrument(taken(kind, resolution=resolution, **limit))
    assert check.conformity is not Conformity.NOT_CONFORMING
    assert check.curve() is not None
    assert {e.name for e in check.estimates()} >= {"scale", "sd_hand"}
    assert {part_words(part) for part in parts_of(kind)}


def test_a_balance_is_in_grams_and_leaves_the_row_of_lengths_alone():
    check = check_instrument(taken("balance", resolution=0.01, sd=0.01, rng=np.random.default_rng(2)))
    assert {e.name: e.unit for e in check.estimates()} == {"zero": "g", "scale": "1", "sd_hand": "g"}
    assert all("temperature" not in c.name for p in check.points for c in p.budget.components)
    row = Instrument("Balance", kind="balance")
    assert instrument_after(row, check) == row


def test_a_dial_indicator_has_no_jaws_and_a_thermometer_no_empty_zero():
    assert check_instrument(taken("dial")).zero.name == "zero"
    assert INSIDE not in parts_of("dial")
    assert TIP not in parts_of("balance")
    assert Plan.ZERO not in plans_of("thermometer")
    assert check_instrument(taken("thermometer", resolution=0.1)).zero.name == "zero"
    assert kind_of("never heard of").name == kind_of("other").name


@pytest.mark.parametrize(
    ("kind", "length", "limit"),
    [("caliper", 50, 0.02), ("caliper", 50.001, 0.03), ("caliper", 300, 0.04), ("micrometer", 25, 0.004)],
)
def test_usual_limits(kind, length, limit):
    assert usual_limit(kind, length) == limit


# Refusals

@pytest.mark.parametrize(
    ("readings", "field", "row", "words"),
    [
        (rows("caliper", (ZERO, 0.0, 0.0, 0.0), resolution=0.0), "resolution", None, "worth of the last digit"),
        (rows("caliper", (ZERO, 0.0, 0.0, 0.0), limit=-1.0), "limit", None, "what the maker states"),
        (rows("caliper", (ZERO, 0, 0, 0), temperature_apart_k=-1.0), "temperature_apart_k", None, "zero or more apart"),
        (rows("caliper", (ZERO, 0, 0, 0), (LENGTH, None, None, 5)), "reference", 1, "Row 2: type the value"),
        (rows("caliper", (LENGTH, 22.0, None, 22.0)), "half_width", 0, "Row 1: how well is the reference known"),
        (rows("caliper", (LENGTH, 22.0, -0.1, 22.0)), "half_width", 0, "how well is the reference known"),
        (rows("caliper", (LENGTH, 6.94, 0.06, 6.99)), "half_width", 0, "width of a bearing is no gauge"),
        (rows("dial", (INSIDE, 8.0, 0.0, 8.0)), "part", 0, "“inside” is not read with a dial indicator"),
        (rows("caliper", (LENGTH, 400.0, 0.0, 400.0)), "limit", None, "no usual limit of error of a caliper at 400 mm"),
        (rows("other", (ZERO, 0, 0, 0), (ZERO, 0, 0, 0)), "limit", None, "other length instrument"),
        (
            rows("caliper", (INSIDE, 8.0, 0.0, 8.0), (INSIDE, 8.0, 0.0, 8.0), blade_land_mm=9.0),
            "blade_land_mm", None, "does not fit into a bore of 8 mm",
        ),
        (
            rows("caliper", (INSIDE, 8.0, 0.0, 8.0), (INSIDE, 8.0, 0.0, 8.0), blade_land_mm=-1.0),
            "blade_land_mm", None, "does not fit",
        ),
        (CheckReadings("caliper", [], [], [], [], 0.01), "measured", None, "No reading yet"),
    ],
)  # fmt: skip
def test_refusals(readings, field, row, words):
    with pytest.raises(InputError, match=words) as refused:
        check_instrument(readings)
    assert (refused.value.field, refused.value.row) == (field, row)


def test_what_was_seen_between_the_jaws_has_words():
    assert len({light_gap_words(gap) for gap in LightGap}) == len(LightGap)
