"""Planted causes: the advice names that cause, its amount, and no other. Then the order of the rules, case by case."""

import math

import numpy as np
import pytest

from core.errors import InputError
from core.guidance.advice import Known, Setting, advise
from core.guidance.known import known_of, needs_of
from core.guidance.names import parameter_words
from core.guidance.sentences import correcting_factor
from core.guidance.verdict import basis, setting_words
from core.machine_geometry.drive import Drive, DriveKind
from core.part_size.features import FEATURES, FeatureKind
from core.part_size.sizeerror import fit_size_error
from core.pieces.comb import plan_comb
from core.quantity import Estimate
from core.records.rows import Instrument, Machine, Motion
from tests.core.part_size.printed import Printer, gauge_sizes
from tests.core.part_size.printouts import Faults, Print
from tests.published import columns

BELT = Drive(DriveKind.BELT, pitch_mm=2.0, teeth=20)
SCREW = Drive(DriveKind.SCREW, pitch_mm=2.0, starts=4)
WHEEL = Drive(DriveKind.WHEEL, diameter_mm=12.0)
SD = 0.008  # of one caliper reading in a steady hand


def of_print(axes="xy", seed=1, **faults):
    """The fit of combs printed by the model and read to 0.01 mm."""
    piece, rng = Print(axes), np.random.default_rng(seed)
    return piece.fit(np.round(piece.size_mm(Faults(**faults)) + SD * rng.standard_normal(piece.nominal_mm.size), 2))


def of_path(machine, seed=2):
    """The fit of combs along x and y printed by the path follower, each gauge between the walls its jaws touch."""
    rng, rows = np.random.default_rng(seed), []
    for axis in "xy":
        piece = plan_comb(axis)
        for gauge, size_mm in zip(piece.gauges, gauge_sizes(machine, piece), strict=True):
            rows.append((gauge.nominal_mm, round(size_mm + SD * rng.standard_normal(), 2), gauge.kind, axis))
    nominal, measured, kind, axes = zip(*rows, strict=True)
    return fit_size_error(nominal, measured, kind, axis=axes)


def settings(fit, known=None):
    return [str(a.setting) for a in advise(fit, known)]


def only(fit, known=None):
    (advice,) = advise(fit, known)
    return advice


PLANTED = [
    ("nothing", {}, ["leave"]),
    ("shrinkage", {"scale_ratio": (-0.004, -0.004)}, ["shrink_allowance"]),
    ("wall outset", {"wall_outset_mm": 0.06}, ["check_flow", "contour_offset"]),
    ("a thin wall", {"wall_outset_mm": -0.06}, ["check_flow", "contour_offset"]),
    ("lost motion", {"lost_motion_mm": (0.15, 0.0)}, ["mend_mechanics"]),
    ("lost motion hides an outset", {"lost_motion_mm": (0.1, 0.1), "wall_outset_mm": 0.05}, ["mend_mechanics"] * 2),
    ("x is not y", {"scale_ratio": (0.002, -0.003)}, ["mend_mechanics"]),
    ("both at once", {"scale_ratio": (-0.004, -0.004), "wall_outset_mm": 0.06},
     ["check_flow", "contour_offset", "shrink_allowance"]),
]  # fmt: skip


@pytest.mark.parametrize(("faults", "expected"), [(f, e) for _, f, e in PLANTED], ids=[name for name, _, _ in PLANTED])
def test_a_cause_planted_in_a_followed_path_is_named_and_no_other(faults, expected):
    assert settings(of_path(Printer(**faults))) == expected


@pytest.mark.parametrize("seed", range(20))
def test_planted_causes_are_named_whatever_the_scatter(seed):
    cases = [
        ({}, ["leave"]),
        ({"scale": (-0.004, -0.004)}, ["shrink_allowance"]),
        ({"wall_outset_mm": 0.06}, ["check_flow", "contour_offset"]),
        ({"lost_motion_mm": (0.15, 0.0)}, ["mend_mechanics"]),
        ({"scale": (0.002, -0.003)}, ["mend_mechanics"]),
        ({"ratio": (1.016, 1.0)}, ["wrong_part"]),
        ({"ratio": (0.8, 0.8)}, ["wrong_part"] * 2),
    ]
    for faults, expected in cases:
        assert settings(of_print(seed=seed, **faults)) == expected, faults


# Rule 1: a gross ratio is a wrong part


@pytest.mark.parametrize(
    ("ratio", "drives", "words"),
    [
        (1.016, {"x": BELT}, "a belt of 2.032 mm pitch where 2 mm is entered"),
        (0.8, {"x": BELT}, "16 teeth where 20 are entered"),
        (1 / 25.4, {}, "a length in inch read as mm"),
        (1.016, {}, "No drive is on record; for a 2 mm belt on 20 teeth it would fit: a belt of 2.032 mm"),
        (0.25, {"x": SCREW}, "1 thread starts"),
    ],
)
def test_a_wrong_part_is_found_and_nothing_is_trimmed(ratio, drives, words):
    advice = only(of_print(ratio=(ratio, 1.0)), Known(drives))
    assert advice.setting is Setting.WRONG_PART and words in advice.because
    assert advice.amount == pytest.approx(ratio, rel=2e-3) and advice.unit == "1"
    assert ("Count the parts of the X drive again" in advice.action) == bool(drives)
    assert "Steps per millimetre by trimming" in advice.do_not_touch


def test_shrinkage_on_top_of_a_wrong_part_hides_it_not():
    advice = only(of_print(scale=(-0.005, -0.005), ratio=(1.016, 1.0)), Known({"x": BELT}))
    assert "a belt of 2.032 mm pitch where 2 mm is entered" in advice.because


def test_what_no_single_part_explains_is_a_unit_or_a_file():
    advice = only(of_print(ratio=(1.077, 1.0)), Known({"x": BELT}))
    assert "No single wrong part of the catalogue explains it: look for a unit or a wrong file." in advice.because
    mirrored = fit_size_error([10.0, 20, 30, 40, 50], [-10.0, -20, -30, -40, -50.01], ["travel"] * 5)
    assert "No single wrong part" in only(mirrored).because


def test_several_parts_that_fit_are_all_named():
    """A tooth count of 40 and microsteps halved look the same: both double the travel."""
    advice = only(of_print(ratio=(2.0, 1.0)), Known({"x": BELT}))
    assert advice.because.count("Or: ") == 2


def test_what_some_filaments_shrink_is_no_wrong_part():
    fit = of_print(scale=(-0.022, -0.022))
    assert settings(fit) == ["shrink_allowance"]
    assert settings(of_print(scale=(0.022, 0.022))) == ["undecided"]  # but none grows


def test_a_screw_is_looked_for_along_z():
    H = np.array([4.0, 10, 20, 40, 60, 80])
    fit = fit_size_error(H, H * 2 + [0, 0.01] * 3, ["height"] * 6, axis=["z"] * 6)
    assert "for a screw of 4 starts, 2 mm pitch it would fit" in only(fit).because


# Rule 2: lost motion


def test_lost_motion_comes_before_everything_else():
    fit = of_print(lost_motion_mm=(0.12, 0.0), wall_outset_mm=0.08, scale=(-0.006, -0.006))
    advice = only(fit)
    assert advice.setting is Setting.MEND_MECHANICS and advice.unit == "mm"
    assert advice.amount == pytest.approx(0.12, abs=0.03)
    assert "X axis first: belt tension" in advice.action
    assert advice.because.startswith("Lost motion X is +0.1") and "± " in advice.because
    assert "none of them mends play" in advice.do_not_touch


def test_a_lost_motion_below_zero_is_a_mistaken_kind():
    advice = only(of_print("x", lost_motion_mm=(-0.2, 0.0)))
    assert advice.setting is Setting.UNDECIDED and "below zero, which no machine has" in advice.because
    assert "check their kind" in advice.action


def test_a_lost_motion_that_is_not_told_is_not_passed_over():
    piece = Print("x")
    fit = piece.fit(piece.nominal_mm + 0.035 * np.random.default_rng(3).standard_normal(11))
    assert fit.estimate("lost_motion_x").U > 0.05
    leave, unclear = advise(fit)
    assert leave.setting is Setting.LEAVE
    assert unclear.setting is Setting.UNDECIDED and unclear.because.startswith("Lost motion X: ")
    assert unclear.action == "Read the outside lengths and closed windows of X again."


# Rule 3: wall outset


def test_the_flow_is_checked_before_an_offset_and_named_with_its_sign():
    fit = of_print(wall_outset_mm=0.06)
    flow, offset = advise(fit)
    assert "Make a wall or mass trial first, and set the flow by it." in flow.action
    assert "Walls stand +0.0" in flow.because and "per side proud of the drawing" in flow.because
    assert offset.amount == pytest.approx(-0.06, abs=0.005) and offset.unit == "mm per side"
    assert "When the flow is good: change the one in force by −0.0" in offset.action and "±" in offset.action
    checked = only(fit, Known(flow_checked=True))
    assert checked.setting is Setting.CONTOUR_OFFSET and checked.because == flow.because
    assert checked.action.startswith("Change the one in force by −0.0")


@pytest.mark.parametrize("flow_checked", [False, True])
def test_more_than_half_a_bead_is_no_offset(flow_checked):
    advice = only(of_print(wall_outset_mm=0.35), Known(flow_checked=flow_checked))
    assert advice.setting is Setting.CHECK_FLOW and "no offset mends so much" in advice.action


@pytest.mark.parametrize("flow_checked", [False, True])
def test_a_bead_wider_in_one_direction_gets_no_common_offset(flow_checked):
    piece = Print("xy")
    walls = [piece.size_mm(Faults(wall_outset_mm=w)) for w in (0.04, 0.12)]
    size = np.where([a == "x" for a in piece.axis], *walls) + SD * np.random.default_rng(4).standard_normal(22)
    found = advise(piece.fit(size), Known(flow_checked=flow_checked))
    assert [str(a.setting) for a in found] == ["check_flow"] * (not flow_checked) + ["undecided", "undecided"]
    assert "differs between X and Y" in found[-2].because
    assert found[-1].action == "Read the outside lengths and closed windows of X and Y again."  # of it too
    assert found[-1].because.count("neither small nor real is proved") == 2


def test_a_wall_outset_that_is_not_told():
    piece = Print("x", only=(FeatureKind.TOOTH, FeatureKind.NOTCH))
    fit = piece.fit(piece.nominal_mm + 0.12 * np.random.default_rng(5).standard_normal(9))
    first = advise(fit)[0]
    assert first.because.startswith("Wall outset per side: ") and first.setting is Setting.UNDECIDED


def outside(constant_mm, scatter_mm=0.01, kind="outside", axis="x", seed=6):
    L = np.array([10.0, 30, 60, 90, 120, 140])
    noise = scatter_mm * np.random.default_rng(seed).standard_normal(6)
    return fit_size_error(L, np.round(L + constant_mm + noise, 2), [kind] * 6, axis=[axis] * 6)


def test_a_constant_of_outside_lengths_alone_is_not_corrected():
    advice = only(outside(0.1))
    assert advice.setting is Setting.UNDECIDED
    assert "A constant +0.10" in advice.because and "may be wall outset, lost motion, or both" in advice.because
    assert advice.action == "Do not correct it yet: measure one length of about 70 mm along x (comb notch)."
    assert advice.amount is None


def test_closed_holes_alone_have_a_constant_of_their_own():
    assert "A constant −0.1" in only(outside(-0.12, kind="closed_hole", axis="y")).because


def test_a_small_constant_still_says_what_is_not_told():
    leave, open_ = advise(outside(0.0))
    assert leave.setting is Setting.LEAVE and open_.setting is Setting.UNDECIDED
    assert open_.because == "Not told by these readings: wall outset per side, lost motion X."
    assert open_.action == "To tell it: measure one length of about 70 mm along x (comb notch)."


def test_an_unclear_constant_is_said_so():
    first = advise(outside(0.05, 0.04))[0]
    assert first.because.startswith("Constant error X: ")


# Round features and heights


@pytest.mark.parametrize(("kind", "what"), [("boss", "bosses"), ("bore", "bores")])
def test_round_features_have_remedies_of_their_own(kind, what):
    advice = only(outside(-0.3, kind=kind))
    assert advice.setting is Setting.CONTOUR_OFFSET and advice.amount == pytest.approx(0.15, abs=0.01)
    assert advice.action.startswith(f"Change the drawn diameter of {what} by +0.")
    assert f"All {what} are off by −0." in advice.because
    assert settings(outside(0.0, kind=kind)) == ["leave"]
    unclear = advise(outside(0.0, 0.15, kind=kind))[0]
    assert unclear.because.startswith(f"Constant error of {what}: ")


def heights(constant_mm, scatter_mm=0.005, stretch=0.0):
    H = np.array([4.0, 10, 20, 40, 60, 80])
    noise = scatter_mm * np.random.default_rng(7).standard_normal(6)
    return fit_size_error(H, H * (1 + stretch) + constant_mm + noise, ["height"] * 6, axis=["z"] * 6)


def test_squash_is_a_gap_and_no_steps():
    advice = only(heights(-0.1))
    assert advice.setting is Setting.MEND_MECHANICS and advice.amount == pytest.approx(0.1, abs=0.01)
    assert advice.action.startswith("Change the gap between nozzle and bed by +0.")
    assert "the first layer, not the screw" in advice.because and "Steps per millimetre of Z" in advice.do_not_touch
    small = only(heights(0.0))
    assert small.setting is Setting.LEAVE
    assert "First-layer squash: " in small.because and "Scale error Z: " in small.because
    assert "First-layer squash: " in advise(heights(0.0, 0.15))[0].because


def flared(flare_mm, sd_mm=0.01, constant_mm=-0.03):
    """The fit of two flare blocks of 20 mm, read low and high along x and y."""
    kind, axis = ["first_layer", "first_layer", "outside", "outside"] * 2, ["x", "y"] * 4
    sizes = 20.0 + constant_mm + np.array([2 * flare_mm * (k == "first_layer") for k in kind])
    return fit_size_error([20.0] * 8, sizes + sd_mm * np.random.default_rng(3).standard_normal(8), kind, axis=axis)


def test_flare_is_the_first_layer_and_no_outset():
    """Half of low less high is the flare per side; gap, bed or a stepped edge mend it: common practice, no source."""
    first, rest = advise(flared(0.12))
    assert first.setting is Setting.FIRST_LAYER_GAP and first.amount is None
    assert "stand +0.12" in first.because and "4 × outside at the first layer" in first.because
    assert "Contour offset" in first.do_not_touch
    assert rest.setting is Setting.UNDECIDED and "wall outset per side" in rest.because
    assert "outside at the first layer" not in rest.action  # another low reading tells no scale


def test_a_flare_that_is_small_unclear_or_below_zero():
    assert "First-layer flare: " in advise(flared(0.0, 0.003))[0].because
    assert advise(flared(0.0, 0.003))[0].setting is Setting.LEAVE
    unclear = advise(flared(0.01, 0.1))[0]
    assert unclear.setting is Setting.UNDECIDED and "First-layer flare per side: " in unclear.because
    narrow = advise(flared(-0.12))[0]
    assert narrow.setting is Setting.UNDECIDED and "lifted corner" in narrow.action


def test_flare_beside_a_comb_leaves_scale_and_outset_as_they_are():
    """The low readings have a parameter of their own: nothing else moves, and the flare comes out (own algebra)."""
    nominal, kind, size = [], [], []
    for L, k, k_w, r in ((130, "outside", 1, 1), (110, "closed_hole", -1, 1), (50, "tooth", 1, 0), (30, "notch", -1, 0),
                         (90, "tooth", 1, 0), (70, "notch", -1, 0), (20, "outside", 1, 1)):  # fmt: skip
        nominal.append(float(L))
        kind.append(k)
        size.append(L * (1 - 0.0025) + 2 * k_w * 0.04 - r * 0.06)
    low = 20.0 * (1 - 0.0025) + 2 * 0.04 - 0.06 + 2 * 0.1
    fit = fit_size_error([*nominal, 20.0], [*size, low], [*kind, "first_layer"])
    told = {e.name: e.value for e in fit.estimates()}
    assert told == pytest.approx(
        {"scale_x": -0.0025, "wall_outset": 0.04, "lost_motion_x": 0.06, "first_layer_flare": 0.1}, abs=1e-9
    )


def test_heights_shrink_too():
    advice = only(heights(0.0, stretch=-0.008))
    assert advice.setting is Setting.SHRINK_ALLOWANCE and "along Z" in advice.action


# Rules 4 and 5: scale


def test_a_small_scale_is_left_alone_with_what_it_may_amount_to():
    advice = only(of_print())
    assert advice.setting is Setting.LEAVE and advice.action == "Change nothing."
    assert "Scale error XY: " in advice.because and " mm where ±0.5 mm is allowed." in advice.because
    assert advice.because.endswith("Read on 10 × comb tooth, 2 × outside, 8 × comb notch, 2 × closed window."), (
        advice.because
    )


@pytest.mark.parametrize("tolerance", ["f", 0.6])
def test_the_tolerance_decides_what_is_small(tolerance):
    fit = of_print(scale=(-0.0007, -0.0007))
    assert settings(fit, Known(tolerance=tolerance)) == [{"f": "shrink_allowance", 0.6: "leave"}[tolerance]]


def test_shrinkage_is_booked_to_the_filament():
    fit = of_print(scale=(-0.005, -0.005))
    advice = only(fit, Known({"x": BELT, "y": BELT}))
    assert advice.amount == pytest.approx(1 / 0.995, abs=2e-4) and advice.unit == "1"
    assert advice.action.startswith("Draw parts of this filament 1.005") and "±" in advice.action
    assert "the drive leaves about 0.05 %, so it is booked to the filament" in advice.because
    assert "one print cannot tell how much of it is the machine's" in advice.because
    assert "Steps per millimetre" in advice.do_not_touch
    loose = Drive(DriveKind.BELT, pitch_mm=2.0, teeth=20, u_ratio=0.004)
    assert "the drive may be off by as much, 0.40 %" in only(fit, Known({"x": loose})).because


def test_a_smooth_wheel_may_be_the_cause_itself():
    advice = only(of_print("x", scale=(-0.006, 0.0)), Known({"x": WHEEL}))
    assert advice.setting is Setting.UNDECIDED and "a smooth wheel may be off by as much" in advice.because


def test_parts_that_are_too_large_did_not_shrink():
    advice = only(of_print(scale=(0.005, 0.005)))
    assert advice.setting is Setting.UNDECIDED and "parts too large are not shrinkage" in advice.because
    assert "Compare the steps in the controller with the calculated ones" in advice.action


def test_an_unclear_scale_asks_for_more():
    piece = Print("x")
    fit = piece.fit(piece.nominal_mm * 1.0005 + 0.25 * np.random.default_rng(8).standard_normal(11))
    assert any(a.because.startswith("Scale error X: ") for a in advise(fit) if a.setting is Setting.UNDECIDED)


@pytest.mark.parametrize(
    ("motion", "words"),
    [(Motion.CARTESIAN, "Find why one axis runs longer"), (Motion.CROSSED_BELT, "crossed belts cannot make X differ")],
)
def test_x_and_y_of_one_print_differ_by_the_machine_alone(motion, words):
    advice = only(of_print(scale=(0.002, -0.003)), Known(motion=motion))
    assert advice.setting is Setting.MEND_MECHANICS and words in advice.action
    assert advice.amount == pytest.approx(0.005, abs=3e-4)
    assert "shrinkage is alike in both, so this is the machine" in advice.because
    assert "Separate steps per millimetre for X and Y" in advice.do_not_touch


# Rule 6: a measured travel


def travel(scale, scatter_mm=0.002, reach_mm=200.0, axis="x"):
    P = np.linspace(0, reach_mm, 9) - 20
    noise = scatter_mm * np.random.default_rng(9).standard_normal(9)
    return fit_size_error(P, P * (1 + scale) + 0.5 + noise, ["travel"] * 9, axis=[axis] * 9)


@pytest.mark.parametrize("name", ["11358-axis1", "11359-axis1", "11361-axis1"])
@pytest.mark.parametrize("direction", ["positive", "negative"])
def test_real_stepper_axes_are_left_alone(name, direction):
    """Site acceptance test against a resolver: the scale is real (1e-5) and practically nothing."""
    set_mm, read_mm = columns("sizeerror_stepper_axes", "setpoint_mm", "resolver_mm", axis=name, direction=direction)
    for tolerance in ("f", "m", "IT7"):
        fit = fit_size_error(set_mm, read_mm, ["travel"] * 12, axis=["y"] * 12)
        advice = only(fit, Known(tolerance=tolerance))
        assert advice.setting is Setting.LEAVE and advice.because.startswith("Travel of Y: +0.00")


def test_a_travel_without_parts_on_record_asks_for_them():
    advice = only(travel(-0.004))
    assert advice.setting is Setting.UNDECIDED and "Enter the parts of the X drive" in advice.action


def test_a_travel_beyond_its_drive_is_mechanics():
    advice = only(travel(-0.004), Known({"x": BELT}))
    assert advice.setting is Setting.MEND_MECHANICS and "count the parts of X again" in advice.action
    assert "these parts are good to 0.05 %" in advice.do_not_touch


@pytest.mark.parametrize(
    ("scale", "reach", "drives"),
    [(-0.0012, 200.0, {"x": BELT}), (-0.008, 200.0, {"x": WHEEL}), (-0.003, 500.0, {})],
)
def test_only_a_measured_travel_may_become_an_axis_scale(scale, reach, drives):
    advice = only(travel(scale, reach_mm=reach), Known(drives, tolerance="f"))
    assert advice.setting is Setting.AXIS_SCALE and advice.amount == pytest.approx(1 / (1 + scale), abs=1e-4)
    assert "no filament is in this" in advice.because and "in force by 1.00" in advice.action


def test_one_position_of_a_travel_tells_no_scale():
    advice = only(fit_size_error([50.0], [50.1], ["travel"]))
    assert advice.because == "Not told by these readings: scale error X, origin X."
    assert advice.action == "To tell it: measure one length of about 120 mm along x (travel of the axis)."


def test_an_unclear_travel():
    assert only(travel(0.0, scatter_mm=0.2)).because.startswith("Travel of X: ")


def test_a_travel_a_gross_amount_off_is_a_wrong_part():
    advice = only(travel(0.25), Known({"x": BELT}))
    assert advice.setting is Setting.WRONG_PART and "25 teeth where 20 are entered" in advice.because


# What stops every rule


def test_a_curve_stops_every_rule():
    piece = Print("x")
    size = piece.size_mm(Faults(lost_motion_mm=(0.2, 0), wall_outset_mm=0.1)) + 3e-4 * (piece.nominal_mm - 75) ** 2
    advice = only(piece.fit(size))
    assert advice.setting is Setting.UNDECIDED and advice.amount is None
    assert advice.because == "Not told by these readings: scale error X."
    assert "a lifted corner, a bent part, a misread length" in advice.action


def test_a_curve_and_an_open_parameter_are_told_apart():
    L = np.array([10.0, 20, 40, 60, 80, 100, 120])
    bend, notch = advise(fit_size_error(L, L + 1e-4 * (L - 60) ** 2, ["outside"] * 7))
    assert "misread length" in bend.action and "comb notch" in notch.action


def test_one_cube_determines_nothing():
    (advice,) = advise(fit_size_error([20.0], [20.2], ["outside"]))
    assert advice.setting is Setting.UNDECIDED and advice.amount is None
    assert advice.because == "Not told by these readings: scale error X, wall outset per side, lost motion X."
    assert advice.action.startswith("To tell it: measure one length of about 120 mm along x (outside), ")


def test_scatter_that_cannot_be_seen_is_cannot_tell():
    comb, cannot = advise(fit_size_error([10.0, 140.0], [16.0, 224.0], ["outside"] * 2))
    assert {comb.setting, cannot.setting} == {Setting.UNDECIDED}
    assert "measure 3 more features to see how they scatter, or check the instrument's repeatability" in comb.action


def test_no_rule_speaks_of_what_only_the_other_axis_tells():
    """X tells its walls, Y its outside lengths: nothing is left open, and no constant of Y is named."""
    x, L = Print("x"), [20.0, 60.0, 140.0]
    rng = np.random.default_rng(10)
    nominal, kinds = [*x.nominal_mm, *L], [*x.kind, *["outside"] * 3]
    fit = fit_size_error(nominal, nominal + SD * rng.standard_normal(14), kinds, axis=["x"] * 11 + ["y"] * 3)
    assert settings(fit)[0] == "leave" and not fit.not_estimable


def test_an_unknown_tolerance_is_refused_where_it_is_needed():
    with pytest.raises(InputError) as refused:
        advise(of_print(), Known(tolerance="medium"))
    assert refused.value.field == "tolerance"


@pytest.mark.parametrize("kind", [k for k in FeatureKind if k not in ("height", "travel")])
def test_no_kind_alone_makes_a_rule_fail(kind):
    for constant in (-0.5, 0.0, 0.5):
        for stretch in (1.0, 0.99, 1.3):
            L = np.array([10.0, 30, 60, 90, 120, 140])
            sizes = L * stretch + constant + 0.01 * np.array([0, 1, 0, -1, 0, 1])
            for found in advise(fit_size_error(L, sizes, [kind] * 6)):
                assert found.action and found.because and found.do_not_touch
                assert len(found.action) <= 200 and (found.amount is None or math.isfinite(found.amount))


# Words


@pytest.mark.parametrize("setting", Setting)
def test_every_setting_has_a_name(setting):
    assert setting_words(setting)


@pytest.mark.parametrize("kind", FeatureKind)
def test_every_estimate_has_a_name_for_people(kind):
    axis = "z" if kind is FeatureKind.HEIGHT else "x"
    L = [10.0, 30.0, 60.0, 90.0, 120.0]
    fit = fit_size_error(L, L, [kind] * 5, axis=[axis] * 5, instrument=Instrument("c"))
    for name in [*(e.name for e in fit.estimates()), *fit.terms.names]:
        assert parameter_words(name) and "_" not in parameter_words(name)
    assert FEATURES[kind] is not None
    assert parameter_words("scale_xy") == "scale error XY"


def test_known_from_a_machine_on_record():
    machine = Machine("old bed", motion=Motion.CROSSED_BELT, drives={"x": BELT.parts()})
    known = known_of(machine, 0.2, flow_checked=True)
    assert (known.drives, known.motion, known.tolerance, known.flow_checked) == (
        {"x": BELT}, Motion.CROSSED_BELT, 0.2, True,
    )  # fmt: skip
    assert known_of(None, "c") == Known(tolerance="c")


def test_what_is_needed_for_what_is_not_missing():
    assert needs_of(of_print("x"), "wall_outset") == "measure more kinds of feature"


def test_basis_and_factor():
    assert basis((FeatureKind.TOOTH, FeatureKind.NOTCH, FeatureKind.TOOTH)) == "2 × comb tooth, 1 × comb notch"
    assert correcting_factor(Estimate("scale_x", -0.005, 0.0002, math.inf, "1")) == "1.00503 ± 0.00040"
