"""From kept pieces to a promise: which pieces count, by class, with the guard band of the instrument."""

import math
from datetime import UTC, datetime, timedelta

import numpy as np
import pytest

from core.errors import InputError
from core.guidance.names import is_magnitude, parameter_words
from core.guidance.partgroups import Group, group_words, guard_of, parts_of, pieces_since
from core.guidance.pegadvice import peg_advice
from core.guidance.promised import judge_promise, still_needed
from core.records.rows import Event, Instrument, SettingInForce, Trial

START = datetime(2026, 3, 2, tzinfo=UTC)
CALIPER = Instrument("Caliper 2", u_outside_zero_mm=0.005, u_inside_zero_mm=0.01, u_scale_ratio=1e-4)


def piece(number, rng, *, between=0.01, within=0.01, bias=0.0, slope=0.0, part_c=None, kinds=None):
    rows = kinds or [("outside", 20.0), ("outside", 60.0), ("tooth", 120.0), ("closed_hole", 30.0), ("notch", 90.0),
                     ("bore", 8.0), ("same_facing", 50.0), ("travel", 100.0)]  # fmt: skip
    shift = between * rng.standard_normal()
    read = [L + bias + slope * L + shift + within * rng.standard_normal() for _, L in rows]
    return Trial(
        "sizeerror",
        readings={
            "kind": [k for k, _ in rows], "axis": ["x"] * len(rows), "nominal_mm": [L for _, L in rows],
            "measured_mm": read, "feature": [f"f{i}" for i in range(len(rows))], "excluded": [False] * len(rows),
        },
        conditions={"part_temperature_c": part_c},
        kept_at=START + timedelta(days=number),
        id=number,
    )  # fmt: skip


def pieces(count, seed=1, **how):
    rng = np.random.default_rng(seed)
    return [piece(n + 1, rng, **how) for n in range(count)]


def test_readings_come_by_class_and_repeats_are_one():
    (one,) = pieces(1)
    read = {name: list(column) for name, column in one.readings.items()}
    for name, value in (("kind", "outside"), ("axis", "x"), ("nominal_mm", 20.0), ("measured_mm", 21.0),
                        ("feature", "f0"), ("excluded", False)):  # fmt: skip
        read[name].append(value)
    for name, value in (("kind", "outside"), ("axis", "x"), ("nominal_mm", 20.0), ("measured_mm", None),
                        ("feature", "f9"), ("excluded", False)):  # fmt: skip
        read[name].append(value)
    read["excluded"][3] = True
    again = Trial("sizeerror", readings=read, id=7)
    found = {p.group: p for p in parts_of([again])}
    assert set(found) == {Group.OUTSIDE, Group.INSIDE, Group.HOLE}
    assert found[Group.OUTSIDE].nominal_mm.tolist() == [20.0, 60.0, 120.0] and found[Group.OUTSIDE].trial == (7, 7, 7)
    assert found[Group.OUTSIDE].error_mm[0] == pytest.approx((one.readings["measured_mm"][0] - 20.0 + 1.0) / 2)
    assert found[Group.INSIDE].nominal_mm.tolist() == [90.0]
    travel = {"kind": ["travel"], "nominal_mm": [1.0], "measured_mm": [1.0]}
    assert parts_of([Trial("sizeerror", readings=travel)]) == ()
    assert parts_of([Trial("sizeerror")]) == ()


def test_a_warm_part_is_brought_to_20_degrees():
    warm = parts_of(pieces(1, between=0, within=0, part_c=30.0))[0]
    assert warm.error_mm[2] == pytest.approx(-120.0 * 7e-4, rel=1e-3)


def test_twelve_good_pieces_make_promises_with_the_instruments_guard():
    judged = judge_promise(pieces(12), CALIPER)
    outside, inside, hole = judged.groups
    assert "outside lengths: ±0." in outside.says and "may be promised (12 parts" in outside.says
    assert "ISO 2768-1 m, medium is held at all these lengths." in outside.says
    assert guard_of(Group.OUTSIDE, CALIPER) == pytest.approx((1.96 * 0.005, 1.96e-4), rel=1e-4)
    assert guard_of(Group.HOLE, CALIPER)[0] == pytest.approx(0.0196, rel=1e-3) and guard_of(Group.HOLE, None) == (0, 0)
    alone = judge_promise(pieces(12), None).groups[0]
    T, bare = (g.promise.tolerance_at(120.0)[0] for g in (outside, alone))
    assert T - bare == pytest.approx(math.hypot(1.96 * 0.005, 1.96e-4 * 120.0), rel=1e-3)
    assert outside.promised_mm in (0.05, 0.1) and outside.promised_mm >= T
    assert judged.trial_ids() == tuple(range(1, 13)) and still_needed(judged) == 0 and judged.method == "promise 1"
    found = {e.name: e for e in judged.estimates()}
    assert found["promise_outside"].value == outside.promised_mm and found["promise_outside"].u > 0
    assert next(iter(found)) == "promise_outside"  # the board shows the first
    assert found["spread_inside"].value == inside.spread.sd_mm and found["bias_hole"].u == hole.spread.u_bias_mm
    for name in found:
        assert parameter_words(name) and is_magnitude(name) == (not name.startswith("bias"))


def test_a_class_is_held_up_to_a_length_or_another_one_is():
    sloped = judge_promise(pieces(12, slope=-0.003), CALIPER).groups[0]
    assert "medium is held up to " in sloped.says and " mm." in sloped.says
    coarse = judge_promise(pieces(12, bias=0.25), CALIPER).groups[0]
    assert "ISO 2768-1 m, medium is not held; ISO 2768-1 c, coarse is." in coarse.says
    bad = judge_promise(pieces(12, bias=2.0), CALIPER).groups[0]
    assert "is not held at any length" in bad.says
    far = judge_promise(pieces(12, bias=-1.5), CALIPER, "v").groups[1]
    assert "very coarse is not held at any length" in far.says
    own = judge_promise(pieces(12), CALIPER, 0.15).groups[0]
    assert own.says.endswith("95 % confidence).") and own.capability.tolerance_mm == 0.15


def test_too_few_pieces_show_a_spread_and_no_promise():
    judged = judge_promise(pieces(4), CALIPER)
    assert "Only 4 parts: a spread can be shown, a tolerance cannot be promised" in judged.groups[0].says
    assert judged.groups[0].promise is None and judged.groups[0].promised_mm is None and still_needed(judged) == 6
    assert {e.name.partition("_")[0] for e in judged.estimates()} == {"bias", "spread"}
    one = judge_promise(pieces(1), CALIPER).groups[0]
    assert one.spread is None and "One part shows no spread" in one.says
    assert judge_promise(pieces(1), CALIPER).estimates() == ()


def test_pieces_before_the_newest_change_of_settings_do_not_count():
    settings = [
        SettingInForce(1, 2, "shrink_allowance_x", 1.0, 1.003, "1", START + timedelta(days=4)),
        SettingInForce(1, 9, "contour_offset", 0.0, 0.02, "mm", START + timedelta(days=50)),
        SettingInForce(1, None, "extruder_steps", 90.0, 93.0, "steps/mm", START + timedelta(days=60)),
        SettingInForce(1, None, "flow_factor", 1.0, 0.98, "1", START),
        SettingInForce(1, None, "flow_factor", 1.0, 0.98, "1", None),
    ]
    since = pieces_since(settings, 2)
    assert since == START + timedelta(days=4) and pieces_since([], 2) is None
    crash = Event("crash", machine_id=1, at=START + timedelta(days=9), id=1)
    assert pieces_since(settings, 2, [crash, Event("note", machine_id=1, at=START)]) == crash.at
    judged = judge_promise(pieces(16), CALIPER, since=since)
    assert judged.left_out == (1, 2, 3, 4) and judged.groups[0].parts.pieces == 12
    with pytest.raises(InputError, match="Pieces kept: 16, all before the newest change"):
        judge_promise(pieces(16), CALIPER, since=START + timedelta(days=60))
    with pytest.raises(InputError, match="ten pieces at least make a promise") as told:
        judge_promise([], CALIPER)
    assert told.value.field == "value"


def test_the_clearance_of_a_peg_follows_from_both_spreads():
    rng = np.random.default_rng(5)
    kinds = [("outside", 8.0), ("outside", 40.0), ("bore", 8.0), ("bore", 20.0)]
    shrunk = [piece(n + 1, rng, kinds=kinds) for n in range(12)]
    told = peg_advice(judge_promise(shrunk, CALIPER), 8.0, 0.99)
    assert "Peg of 8 mm in a hole: draw 0.0" in told and "then 99 % of the pairs" in told
    windows = peg_advice(judge_promise(pieces(12, kinds=[("outside", 8.0), ("closed_hole", 9.0)]), CALIPER), 8.0, 0.99)
    assert "draw 0.0" in windows
    few = peg_advice(judge_promise(pieces(4, kinds=[("outside", 8.0), ("closed_hole", 9.0)]), CALIPER), 8.0, 0.99)
    assert "So few parts tell little of a share: try one pair first." in few
    assert "read outside lengths and bores" in peg_advice(judge_promise(pieces(1), CALIPER), 8.0, 0.99)


def test_every_class_has_words():
    assert len({group_words(group) for group in Group}) == len(Group)
