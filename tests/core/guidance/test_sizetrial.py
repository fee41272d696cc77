"""The one call from readings to verdict: what is handed on to the fit and to the rules."""

import json

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from core.errors import InputError
from core.guidance.report import as_json, text_lines
from core.guidance.sizetrial import SUBJECT, SizeReadings, judge_size_trial
from core.machine_geometry.drive import Drive, DriveKind
from core.part_size.features import FeatureKind
from core.part_size.lengths import LayerPlan, PartTemperature
from core.records.rows import Instrument, Machine, Motion

L = [10.0, 30.0, 60.0, 90.0, 120.0, 140.0]


def readings(measured, kind="same_facing", axis="x", **beside):
    return SizeReadings(L, measured, [kind] * 6, [axis] * 6, [""] * 6, **beside)


def test_the_conditions_reach_the_fit():
    warm = judge_size_trial(readings(np.array(L) * 1.0007, part_temperature=PartTemperature(30.0)))
    assert warm.fit.estimate("scale_x").value == pytest.approx(0, abs=1e-7)
    stepped = judge_size_trial(readings(np.array(L) + 0.04, "height", "z", layers=LayerPlan(0.24, 0.24)))
    assert stepped.fit.nominal_mm.tolist() == pytest.approx([10.08, 30.0, 60.0, 90.0, 120.0, 139.92])
    held = judge_size_trial(readings(L), instrument=Instrument("c", u_scale_ratio=0.01))
    assert held.estimates()[0].u == pytest.approx(0.01, rel=1e-3)
    repeated = judge_size_trial(SizeReadings([10.0, 10.0], [10.0, 10.1], ["tooth"] * 2, ["x"] * 2, ["a", "a"]))
    assert repeated.fit.nominal_mm.size == 1
    assert SUBJECT == "sizeerror" and repeated.method.startswith("sizeerror ")


def test_machine_and_tolerance_reach_the_rules():
    machine = Machine("old bed", drives={"x": Drive(DriveKind.WHEEL, diameter_mm=12.0).parts()})
    judged = judge_size_trial(readings(np.array(L) * 0.995), machine)
    assert "a smooth wheel may be off by as much" in judged.advice[0].because
    wide = judge_size_trial(readings(np.array(L) * 0.995, tolerance=9.0), machine)
    assert wide.known.tolerance == 9.0 and str(wide.advice[0].setting) == "leave"


def test_a_flow_trial_reaches_the_rules():
    tight = {"kind": "outside", "tolerance": 0.2}
    assert not judge_size_trial(readings(L, **tight)).known.flow_checked
    assert judge_size_trial(readings(L, **tight), flow_checked=True).known.flow_checked


@pytest.mark.parametrize(
    ("beside", "field"), [({"measured": [1.0] * 5 + [-1.0]}, "measured_mm"), ({"tolerance": "rough"}, "tolerance")]
)
def test_refusals_of_the_fit_and_of_the_rules_pass_through(beside, field):
    with pytest.raises(InputError) as refused:
        judge_size_trial(readings(**({"measured": L} | beside)))
    assert refused.value.field == field


ROWS = st.lists(
    st.tuples(
        st.floats(1e-3, 9e3) | st.sampled_from([10.0, 20.0, 100.0]),
        st.floats(-30, 30) | st.sampled_from([0.0, 0.1, -0.1]),
        st.sampled_from([*FeatureKind]),
        st.sampled_from("xyz"),
        st.sampled_from(["", "", "a", "b"]),
    ),
    min_size=1,
    max_size=16,
)
BY_HAND = Instrument("caliper", sd_hand_mm=0.02, sd_hand_dof=12, u_outside_zero_mm=0.01, u_scale_ratio=1e-4)
MACHINE = Machine(
    "old bed",
    motion=Motion.CROSSED_BELT,
    drives={
        "x": Drive(DriveKind.BELT, pitch_mm=2.0, teeth=20).parts(),
        "z": Drive(DriveKind.SCREW, pitch_mm=2.0, starts=4).parts(),
    },
)


@settings(max_examples=200)
@given(ROWS, st.sampled_from([None, BY_HAND]), st.sampled_from([None, MACHINE]), st.sampled_from(["m", "IT9", 0.05]))
def test_any_readings_end_in_a_refusal_or_in_sound_sentences_and_strict_json(rows, instrument, machine, tolerance):
    nominal, error, kind, axis, feature = map(list, zip(*rows, strict=True))
    trial = SizeReadings(nominal, np.add(nominal, error), kind, axis, feature, tolerance=tolerance)
    try:
        judged = judge_size_trial(trial, machine, instrument)
    except InputError as error:
        assert error.field in ("measured_mm", "kind", "feature")
        return
    assert judged.advice or not judged.fit.not_estimable
    json.dumps(as_json(judged), allow_nan=False)
    for line in text_lines(judged):
        assert " nan" not in line and " inf" not in line and "{" not in line
