"""Locked predictions: unchanged or worthless, verified only by later readings, and what a failure means."""

import math
from dataclasses import replace
from datetime import UTC, datetime, timedelta

import numpy as np
import pytest

from core.errors import InputError
from core.guidance.names import parameter_words
from core.guidance.predicted import (
    features_to_predict,
    locked_trial,
    predict_from,
    unlocked,
    verification_columns,
    verification_trial,
    verify_locked,
)
from core.guidance.scored import normalised_errors, score_words
from core.part_size.prediction import Changes, content_hash
from core.records.rows import Instrument, Trial
from tests.core.part_size.printouts import Faults, Print

NOON = datetime(2026, 3, 2, 12, tzinfo=UTC)
CALIPER = Instrument("Caliper", u_outside_zero_mm=0.004, u_inside_zero_mm=0.005, u_scale_ratio=5e-5)
CHANGES = Changes(-0.05, {"x": 1.004})


def size_trial(number, faults, rng, begun=NOON, sd=0.008):
    piece = Print("x")
    sizes = piece.size_mm(faults) + sd * rng.standard_normal(piece.nominal_mm.size)
    columns = {"nominal_mm": piece.nominal_mm.tolist(), "measured_mm": sizes.tolist(), "axis": piece.axis,
               "kind": [str(k) for k in piece.kind], "feature": piece.feature,
               "excluded": [False] * sizes.size}  # fmt: skip
    return Trial("sizeerror", 1, 1, readings=columns, conditions={"tolerance": "m", "part_temperature_c": 20.0},
                 started_at=begun, id=number)  # fmt: skip


@pytest.fixture
def rng():
    return np.random.default_rng(1)


@pytest.fixture
def locked(rng):
    source = size_trial(1, Faults(scale=(-0.004, 0), wall_outset_mm=0.05), rng)
    trial = locked_trial(source, predict_from(source, CALIPER, CHANGES), CHANGES)
    return replace(trial, id=2, kept_at=NOON + timedelta(hours=1))


def later(faults, rng, **how):
    return size_trial(3, faults, rng, begun=NOON + timedelta(hours=2), **how)


def test_the_features_are_proof_lengths_and_the_gauges_of_the_piece(locked):
    assert locked.subject == "prediction" and locked.used == (1,) and locked.method == "prediction 1"
    assert {37.0, 64.0, 91.0, 118.0} < set(locked.readings["nominal_mm"])
    read_back = unlocked(locked)
    assert read_back.error_mm.tolist() == locked.readings["predicted_mm"]
    assert read_back.U_mm == pytest.approx(locked.readings["U_mm"])
    heights = Trial(
        "sizeerror", readings={"axis": ["z"], "kind": ["height"], "nominal_mm": [10.0], "measured_mm": [9.9]}
    )
    assert features_to_predict(heights)[1] == ["height"] * 5


def test_a_prediction_changed_afterwards_proves_nothing(locked, rng):
    for changed in (
        replace(locked, readings=locked.readings | {"predicted_mm": [0.0] * len(locked.readings["axis"])}),
        replace(locked, conditions=locked.conditions | {"k": 3.0}),
    ):
        with pytest.raises(InputError, match="changed after it was locked") as told:
            verify_locked(changed, later(Faults(), rng), CALIPER)
        assert told.value.field == "hash"


def test_readings_begun_before_the_lock_verify_nothing(locked, rng):
    early = size_trial(3, Faults(), rng, begun=NOON)
    for locked_at in (locked, replace(locked, kept_at=None)):
        with pytest.raises(InputError, match="begun before the prediction was locked") as told:
            verify_locked(locked_at, early, CALIPER)
        assert told.value.field == "started_at"


def test_a_piece_as_predicted_keeps_the_settings(locked, rng):
    found = verify_locked(locked, later(Faults(scale=(1.004 * 0.996 - 1, 0)), rng), CALIPER)
    (only,) = found.advice
    assert str(only.setting) == "leave" and "prediction № 2 holds" in only.action and "χ²" in only.because
    assert found.result.passed and found.method == "prediction 1"
    inside, factor = found.estimates()
    assert inside.value == 1.0 and inside.u > 0 and 0.1 < factor.value < 1.5 and parameter_words(inside.name)
    kept = verification_columns(found)
    trial = verification_trial(locked, later(Faults(), rng), found)
    assert (trial.subject, trial.used, trial.readings) == ("verification", (2, 3), kept) and len(trial.verdict) == 1
    assert kept["e_n"] == found.result.e_n.tolist() and len(kept["kind"]) == len(kept["error_mm"])
    assert normalised_errors([Trial("verification", readings=kept), Trial("verification")]) == (tuple(kept["e_n"]),)


def test_the_wrong_sign_is_named(locked, rng):
    wrong = later(Faults(scale=(0.996 / 1.004 - 1, 0), wall_outset_mm=0.10), rng)
    (only,) = verify_locked(locked, wrong, CALIPER).advice
    assert "Look at the sign" in only.action and "wrong sign would put them" in only.because


def test_a_failure_names_its_class_and_the_step_that_owns_it(locked, rng):
    off = later(Faults(scale=(0.0, 0), lost_motion_mm=(0.0, 0), wall_outset_mm=0.03), rng)
    first, *others = verify_locked(locked, off, None).advice
    assert "Do not tune by this piece" in first.action
    assert any(
        "outside lengths" in a.because and " are off, " in a.because and "pages Wall, Mass and Size error" in a.action
        for a in others
    )
    assert any("windows and notches" in a.because and "Wall outset and lost motion own it" in a.action for a in others)
    assert all(a.do_not_touch == "Every setting: nothing is tuned by a proof piece." for a in others)


def test_other_features_are_left_out_and_none_is_refused(locked, rng):
    read = later(Faults(), rng)
    columns = {name: list(values[:2]) for name, values in read.readings.items()}
    strange = replace(read, readings=columns | {"nominal_mm": [11.1, 22.2], "measured_mm": [11.1, 22.2]})
    with pytest.raises(InputError, match="None of the features"):
        verify_locked(locked, strange, CALIPER)
    with pytest.raises(InputError, match="holds no readings"):
        predict_from(Trial("sizeerror", id=9), CALIPER, CHANGES)
    read.readings["measured_mm"][0] = math.nan
    with pytest.raises(InputError, match="that is no number"):
        predict_from(read, CALIPER, CHANGES)


def test_same_facing_walls_belong_to_no_class(rng):
    source = size_trial(1, Faults(), rng)
    columns = {name: list(values) for name, values in source.readings.items()}
    more = {"nominal_mm": 50.0, "measured_mm": 50.0, "axis": "x", "kind": "same_facing", "feature": "s",
            "excluded": False}  # fmt: skip
    for name, value in more.items():
        columns[name].append(value)
    source = replace(source, readings=columns, conditions={})
    trial = locked_trial(replace(source, id=None), predict_from(source, None, Changes()), Changes())
    trial = replace(trial, id=2, kept_at=NOON)
    found = verify_locked(trial, replace(source, started_at=NOON + timedelta(hours=1)), None)
    assert None in found.groups and trial.used == ()


def test_our_own_score_is_told():
    rng = np.random.default_rng(2)
    assert score_words(rng.standard_normal((300, 1)) / 1.96).endswith("Nothing shows that our U is too small.")
    assert "(pieces: 2)" in score_words([[3.0] * 20] * 2) and "From 5 pieces on it tells of our U" in score_words([[3]])
    small = score_words(1.6 * rng.standard_normal((300, 1)) / 1.96)
    assert "Our U is too small: multiply it by 1." in small and "95 % are due" in small


def test_a_class_off_by_no_more_than_its_features_share_is_no_doubt(locked, rng):
    """All outside lengths on one side, yet the mean within its U: one print's scale, not a fault."""
    found = verify_locked(locked, later(Faults(scale=(1.004 * 0.996 - 1 + 1.5e-4, 0)), rng, sd=0.0001), CALIPER)
    (only,) = found.advice
    assert str(only.setting) == "leave"


def test_a_lock_without_degrees_of_freedom_reads_as_one_that_knows_the_scatter(locked):
    conditions = {n: v for n, v in locked.conditions.items() if n not in ("dof", "hash")}
    hashed = content_hash({"readings": dict(locked.readings), "conditions": conditions})
    assert unlocked(replace(locked, conditions=conditions | {"hash": hashed})).dof == math.inf
    assert unlocked(locked).dof == pytest.approx(locked.conditions["dof"]) and locked.conditions["dof"] < 50


@pytest.mark.parametrize("kind", ["bore", "height"])
def test_every_class_has_an_owner(rng, kind):
    axis = "z" if kind == "height" else "x"
    nominal = [5.0, 10.0, 20.0, 30.0, 40.0, 50.0]
    read = [n + 0.002 * (-1) ** i for i, n in enumerate(nominal)]
    columns = {"nominal_mm": nominal, "measured_mm": read, "axis": [axis] * 6, "kind": [kind] * 6, "feature": [""] * 6}
    source = Trial("sizeerror", readings=columns, id=1, started_at=NOON)
    trial = locked_trial(source, predict_from(source, None, Changes()), Changes())
    off = replace(source, readings=columns | {"measured_mm": [n + 0.1 for n in nominal]},
                  started_at=NOON + timedelta(hours=2))  # fmt: skip
    found = verify_locked(replace(trial, kept_at=NOON, id=2), off, None)
    assert "own it" in found.advice[1].action
