"""Rule 6: shrinkage to the filament, an axis scale only under every condition, never two on crossed belts."""

from dataclasses import replace

import numpy as np
import pytest

from core.guidance.advice import advise
from core.guidance.known import Known, known_of
from core.guidance.shopadvice import judge_shop
from core.guidance.sizetrial import SizeReadings, judge_size_trial
from core.guidance.splitadvice import machine_advice
from core.guidance.splitpair import SplitPair
from core.guidance.splitshop import read_shop
from core.guidance.verdict import Setting
from core.machine_geometry.drive import Drive, DriveKind
from core.part_size.sizeerror import fit_size_error
from core.records.rows import Lot, Machine, Motion
from tests.core.guidance.shops import BELT, keep_estimate
from tests.core.part_size.printouts import Faults, Print

WHEEL = Drive(DriveKind.WHEEL, diameter_mm=12.0)
BELT_DRIVE = Drive(DriveKind.BELT, pitch_mm=2.0, teeth=20)
LONG = {"x": 800.0, "y": 800.0, "z": 400.0}
SHORT = {"x": 220.0, "y": 220.0, "z": 220.0}


def pair(axis="x", m=0.0, f=-0.003, u=0.0002, **also):
    shown = {"prints": 4, "lots": 2, "machines": 3, "others": 5} | also
    return SplitPair(axis, m, u, f, u, -(u**2) / 4, **shown)


def of_print(ratio, axes="xy", only=None, seed=1):
    piece = Print(axes, **({"only": only} if only else {}))
    rng = np.random.default_rng(seed)
    scale = ratio if isinstance(ratio, tuple) else (ratio, ratio)
    return piece.fit(
        np.round(piece.size_mm(Faults(scale=scale)) + 0.005 * rng.standard_normal(piece.nominal_mm.size), 2)
    )


def advised(ratio, split, **known):
    return advise(of_print(ratio), Known(split={p.axis: p for p in split}, **known))


def test_shrinkage_goes_to_the_filament_and_the_machine_is_left_alone():
    (only,) = advised(-0.003, [pair(), pair("y")], travel_mm=SHORT, tolerance="f")
    assert only.setting is Setting.SHRINK_ALLOWANCE and only.amount == pytest.approx(1.003, abs=2e-4)
    assert "1.00301 ± 0.00035" in only.action and "along" not in only.because[:10]
    assert "this filament shrinks 0.30" in only.because
    assert "(prints of this machine: 5, of lots: 2; machines of this lot: 3)" in only.because
    assert only.do_not_touch == "Steps per millimetre, flow factor."


def test_axes_that_shrink_apart_get_allowances_of_their_own():
    split = [pair(f=-0.002), pair("y", f=-0.006)]
    found = advise(of_print(-0.004, axes="x"), Known(split={"x": split[0]}, travel_mm=SHORT, tolerance="f"))
    assert "as large along X," in found[0].action
    both = list(machine_advice(split, Known(travel_mm=SHORT)))
    assert both == []
    judged = [
        a for a in advised(-0.004, split, travel_mm=SHORT, tolerance="f") if a.setting is Setting.SHRINK_ALLOWANCE
    ]
    assert "as large along X, 1.00" in judged[0].action and "as large along Y" in judged[0].action


def test_without_other_trials_rule_5_speaks_as_before():
    alone = advised(-0.003, [], tolerance="f")
    assert "one print cannot tell how much of it is the machine's" in alone[0].because


def test_a_filament_that_shrinks_too_little_to_matter_gets_nothing():
    found = advised(-0.003, [pair(m=-0.003, f=-0.00002, u=0.0001), pair("y", m=-0.003, f=0.0, u=0.0001)],
                    travel_mm=SHORT, tolerance="f", drives={"x": BELT_DRIVE, "y": BELT_DRIVE})  # fmt: skip
    assert [str(a.setting) for a in found] == ["mend_mechanics"] * 2  # what is small waits until the rest is mended
    unclear = advised(-0.003, [pair(f=-0.0005, m=-0.0025, u=0.0005), pair("y", f=-0.0005, m=-0.0025, u=0.0005)],
                      travel_mm=SHORT, tolerance="f")  # fmt: skip
    assert "Give this filament no shrink allowance." in unclear[0].action


def test_a_filament_that_comes_out_too_large_has_not_shrunk():
    found = advised(0.004, [pair(f=0.004), pair("y", f=0.004)], travel_mm=SHORT, tolerance="f")
    assert found[0].setting is Setting.UNDECIDED and "have not shrunk" in found[0].because


# Each condition of an axis scale taken away in turn; the wheel on a long axis with two lots has them all.
ALL = {"drives": {"x": WHEEL}, "travel_mm": LONG}
CONDITIONS = [
    ({}, {}, "axis_scale", "multiply the calculated steps per millimetre of X by 0.99"),
    ({"drives": {"x": BELT_DRIVE}}, {}, "axis_scale", "When tension, seating and run-out are in order"),
    ({"drives": {"x": BELT_DRIVE}, "travel_mm": SHORT}, {}, "mend_mechanics", "tension, seating, run-out and temper"),
    ({"drives": {"x": BELT_DRIVE}}, {"m": 0.006}, "wrong_part", "Count the parts of the X drive again"),
    ({"motion": Motion.DELTA}, {}, "mend_mechanics", "rods from hole to hole"),
    ({}, {"prints": 1, "lots": 1}, "undecided", "another lot"),
    ({}, {"lots": 1}, "undecided", "another lot"),
    ({}, {"prints": 1, "lots": 1, "travel": True}, "axis_scale", "multiply"),
    ({"drives": {}}, {}, "axis_scale", "multiply"),
    ({"drives": {}, "travel_mm": SHORT}, {}, "undecided", "Enter the parts of the X drive"),
    ({}, {"m": 0.0009}, None, ""),
    ({}, {"u": 0.002}, None, ""),
    ({"tolerance": 30.0}, {}, None, ""),
]  # fmt: skip


@pytest.mark.parametrize(("known", "of_pair", "setting", "words"), CONDITIONS)
def test_an_axis_scale_needs_every_condition(known, of_pair, setting, words):
    found = list(machine_advice([pair(**({"m": 0.002} | of_pair))], Known(**(ALL | known))))
    assert [str(a.setting) for a in found] == ([setting] if setting else [])
    if setting:
        assert words in found[0].action and "is +" in found[0].because and "on every filament" in found[0].because
        assert ("Shrink allowance" in found[0].do_not_touch) == (setting == "axis_scale")


def test_outside_lengths_alone_carry_no_axis_scale():
    found = list(machine_advice([pair(m=0.002)], Known(**ALL), paired=False))
    assert found[0].setting is Setting.UNDECIDED and "notches or windows" in found[0].action
    fit = of_print(-0.005, axes="x", only=("outside", "tooth"))
    through = advise(replace_scale(fit), Known(split={"x": pair(m=-0.002)}, tolerance="f", **ALL))
    assert "axis_scale" in [str(a.setting) for a in through]  # teeth and outside together do tell the outset


def replace_scale(fit):
    return replace(fit)


def test_crossed_belts_get_one_factor_or_none_and_never_two():
    known = Known(drives={"x": WHEEL, "y": WHEEL}, travel_mm=LONG, motion=Motion.CROSSED_BELT)
    (one,) = machine_advice([pair(m=0.002), pair("y", m=0.0021)], known)
    assert one.setting is Setting.AXIS_SCALE and "of both motors" in one.action and "never two" in one.action
    assert one.amount == pytest.approx(np.exp(-0.00205))
    for other in (pair("y", m=0.004), pair("y", m=0.0)):
        (none,) = machine_advice([pair(m=0.002), other], known)
        assert none.setting is Setting.MEND_MECHANICS and "shear every part" in none.do_not_touch
    (alone,) = machine_advice([pair(m=0.002)], known)
    assert alone.setting is Setting.MEND_MECHANICS


def travel(scale_x, scale_y):
    at = np.array([0.0, 50.0, 100.0, 150.0, 200.0])
    rng = np.random.default_rng(2)
    read = np.concatenate([at * (1 + scale_x), at * (1 + scale_y)]) + 0.002 * rng.standard_normal(10)
    return fit_size_error(np.tile(at, 2), read, ["travel"] * 10, axis=["x"] * 5 + ["y"] * 5)


def test_a_read_travel_of_crossed_belts_gives_one_factor_or_none():
    crossed = Known(drives={"x": WHEEL, "y": WHEEL}, motion=Motion.CROSSED_BELT, tolerance=0.1)
    (one,) = advise(travel(0.004, 0.004), crossed)
    assert one.setting is Setting.AXIS_SCALE and "both the same steps, never two" in one.action
    (none,) = advise(travel(0.004, 0.002), crossed)
    assert none.setting is Setting.MEND_MECHANICS and "differs by" in none.because
    two = advise(travel(0.004, 0.002), Known(drives={"x": WHEEL, "y": WHEEL}, tolerance=0.1))
    assert [str(a.setting) for a in two] == ["axis_scale"] * 2


def test_the_size_page_call_takes_the_split(store):
    piece = Print("x")
    sizes = piece.size_mm(Faults(scale=(-0.004, 0.0)))
    readings = SizeReadings(piece.nominal_mm, sizes + 0.004 * np.random.default_rng(3).standard_normal(sizes.size),
                            [str(k) for k in piece.kind], piece.axis, piece.feature, tolerance="f")  # fmt: skip
    judged = judge_size_trial(readings, Machine("Ash", drives={"x": BELT}), split={"x": pair(f=-0.004)})
    assert "By all trials of the shop" in judged.advice[0].because
    assert known_of(Machine("Ash", travel_x_mm=310.0), "m").travel_mm["x"] == 310.0


def shop_of(store, cells, u=0.0002, drives=None):
    machines = [store.add_machine(Machine(n, drives=drives or {})) for n in ("Ash", "Birch", "Cedar", "Elm")]
    lots = [store.add_lot(Lot(n, "PETG")) for n in ("Slate", "Sand", "Moss", "Ink")]
    for i, j, value in cells:
        keep_estimate(store, "scale_x", value, u, machines[i].id, lots[j].id)
    return machines, lots, read_shop(store.machines(), store.lots(), store.series)


def test_one_machine_and_one_lot_can_not_be_told_apart(store):
    machines, lots, shop = shop_of(store, [(0, 0, -0.0031)])
    found = judge_shop(shop, machines[0].id, lots[0].id)
    (told,) = [
        a for a in found.advice if "Only one machine and one lot along X: −0.3" in str(a.because).replace("-", "−")
    ]
    assert "second machine" in told.action and "is booked to the filament" in told.because
    assert [e.name for e in found.estimates()] == ["machine_scale_x", "shrinkage_x"]
    assert found.method == "shop_split 1" and found.trial_ids() == (1,)


def test_islands_are_named_with_the_print_that_joins_them(store):
    cells = [(0, 0, -0.003), (1, 0, -0.003), (1, 1, -0.004), (2, 2, -0.003), (2, 2, -0.003)]
    machines, lots, shop = shop_of(store, cells)
    said = [a for a in judge_shop(shop, None, None).advice if "No print links" in a.because]
    assert len(said) == 1 and "Cedar" in said[0].because and ": it joins them." in said[0].action
    assert not any("Next best print" in a.action for a in judge_shop(shop, None, None).advice)


def test_the_next_best_print_and_the_trial_that_disagrees_are_named(store):
    cells = [(i, j, -0.003 - 0.001 * j) for i in range(3) for j in range(3)]
    cells[4] = (1, 1, -0.009)
    machines, lots, shop = shop_of(store, cells)
    said = judge_shop(shop, machines[0].id, lots[0].id).advice
    assert any("trial № 5; it still counts" in a.because and "Withdraw" in a.action for a in said)
    (best,) = [a for a in said if "Next best print: Ink on" in a.action]
    assert "Ink along X goes from ±" in best.because
    many = [(i, j, -0.003) for i in range(4) for j in range(4) for _ in range(2)]
    for i, j, value in many:
        keep_estimate(store, "scale_x", value, 0.00002, machines[i].id, lots[j].id)
    shop = read_shop(store.machines(), store.lots(), store.series)
    said = judge_shop(shop, machines[0].id, lots[0].id).advice
    assert not any("Next best" in a.action for a in said)
    assert any("Read the travel of a machine without filament" in a.action for a in said)
    for machine in machines:
        keep_estimate(store, "scale_x", 0.0, 0.00002, machine.id, None, origin_x=0.0)
    read = judge_shop(read_shop(store.machines(), store.lots(), store.series), None, None).advice
    assert not any("Read the travel" in a.action or "Next best" in a.action for a in read)


def test_a_machine_may_gain_from_the_next_print(store):
    cells = [(i, j, -0.003) for i in range(3) for j in range(4) for _ in range(4)]
    machines, lots, shop = shop_of(store, cells, u=0.0001)
    (best,) = [a for a in judge_shop(shop, None, None).advice if "Next best print" in a.action]
    assert "on Elm" in best.action and "Elm along X" in best.because


def test_what_the_verdict_sets_is_said_by_name_and_factor(store):
    """A smooth wheel that stays 1.5 % off on two lots gets its axis scale; on crossed belts both axes get the one."""
    wheels = {"x": {"kind": "wheel", "diameter_mm": 12.0}, "y": {"kind": "wheel", "diameter_mm": 12.0}}
    for motion, axes in (
        (Motion.CARTESIAN, {"axis_scale_x"}),
        (Motion.CROSSED_BELT, {"axis_scale_x", "axis_scale_y"}),
        (Motion.DELTA, set()),
    ):
        machine = store.add_machine(Machine(f"Wheels {motion}", motion, 800.0, 800.0, drives=wheels))
        for name in ("Slate", "Sand"):
            lot = store.add_lot(Lot(f"{name} {motion}", "PETG"))
            for other in ("Ash", "Birch", "Cedar"):
                belt = store.add_machine(Machine(f"{other} {name} {motion}", drives={"x": BELT, "y": BELT}))
                keep_estimate(store, "scale_x", -0.0035, 0.0002, belt.id, lot.id, scale_y=-0.0035)
            of_y = 0.0115 if motion is Motion.CROSSED_BELT else -0.0035
            keep_estimate(store, "scale_x", 0.0115, 0.0002, machine.id, lot.id, scale_y=of_y)
        shop = read_shop(store.machines(), store.lots(), store.series)
        found = judge_shop(shop, machine.id, lot.id)
        given = dict(found.settings())
        assert {name for name in given if name.startswith("axis")} == axes
        assert given.get("axis_scale_x", 0.985) == pytest.approx(0.985, abs=1e-3)
        assert given["shrink_allowance_x"] == pytest.approx(1.0035, abs=1e-3)


def test_a_rotary_axis_is_never_judged_by_a_length():
    parts = {"x": {"kind": "belt", "pitch_mm": 2.0, "teeth": 20}, "y": {"kind": "rotary", "gears": [[90, 10]]}}
    assert list(known_of(Machine("Teasel", drives=parts), "m").drives) == ["x"]


def test_x_less_y_over_all_prints_is_the_machines(store):
    said = {}
    for motion, x, y in ((Motion.CARTESIAN, -0.002, -0.004), (Motion.CROSSED_BELT, -0.002, -0.004),
                         (Motion.DELTA, -0.003, -0.0031)):  # fmt: skip
        machine, lots = store.add_machine(Machine(str(motion), motion)), [store.add_lot(Lot(f"{motion} {n}", "PLA"))
                                                                        for n in range(2)]  # fmt: skip
        for lot in lots:
            keep_estimate(store, "scale_x", x, 0.0002, machine.id, lot.id, scale_y=y)
        shop = read_shop(store.machines(), store.lots(), store.series)
        said[motion] = [a for a in judge_shop(shop, machine.id, lots[0].id).advice if "X less Y" in a.because]
    (plain,), (crossed,) = said[Motion.CARTESIAN], said[Motion.CROSSED_BELT]
    assert "is +0.201 ± 0.057 %" in plain.because and "(prints: 2)" in plain.because and "belt tension" in plain.action
    assert "cannot make X differ from Y" in crossed.action and said[Motion.DELTA] == []
