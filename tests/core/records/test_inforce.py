"""Settings in force: written with the trial they come from, found by machine and lot."""

import math
from dataclasses import replace
from datetime import UTC

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from core.errors import InputError
from core.guidance.changes import in_force_when
from core.records.rows import Lot, Machine, SettingInForce, Trial

STEPS = SettingInForce(1, None, "steps_x", 79.5, 80.0, "steps/mm")
SHRINK = SettingInForce(1, 1, "shrink_allowance", None, 0.003, "1")


@pytest.fixture
def shop(store):
    """Two machines and two lots; nothing in force."""
    for name in ("A", "B"):
        store.add_machine(Machine(name))
        store.add_lot(Lot(name, "PLA"))
    return store


def test_what_a_kept_trial_sets_is_in_force(shop):
    kept = shop.keep(Trial("drive", 1, 1), [STEPS, SHRINK])
    steps = replace(STEPS, since=kept.kept_at, trial_id=kept.id, id=1, serial=kept.serial)
    shrink = replace(SHRINK, since=kept.kept_at, trial_id=kept.id, id=2, serial=kept.serial)
    assert shop.settings(1) == (shrink, steps)
    assert shop.in_force("steps_x", 1) == steps
    assert steps.since.tzinfo is UTC
    assert shop.settings(2) == ()
    assert shop.in_force("steps_x", 2) is None


def test_the_store_gives_the_moment_the_trial_and_no_verifier(shop):
    first = shop.keep(Trial("drive", 1))
    kept = shop.keep(Trial("drive", 1), [replace(STEPS, since=first.kept_at, trial_id=first.id, verified_by=first.id)])
    given = replace(STEPS, since=kept.kept_at, trial_id=kept.id, id=1, serial=kept.serial)
    assert shop.settings(1) == (given,)


def test_the_last_value_takes_the_place_of_the_one_before_which_stays_on_record(shop):
    shop.keep(Trial("drive", 1), [STEPS])
    shop.keep(Trial("drive", 1), [replace(STEPS, old=80.0, new=80.2)])
    assert shop.in_force("steps_x", 1).new == 80.2
    assert [setting.new for setting in shop.settings(1)] == [80.2, 80.0]


def test_a_lot_has_its_own_value_else_that_of_the_machine(shop):
    for lot_id, new in ((1, 0.003), (None, 0.004), (2, 0.005)):
        shop.keep(Trial("sizeerror", 1, lot_id), [replace(SHRINK, lot_id=lot_id, new=new)])
    shop.keep(Trial("sizeerror", 2, 1), [replace(SHRINK, machine_id=2, new=0.006)])
    other = shop.add_lot(Lot("C", "PETG")).id
    values = {lot: shop.in_force("shrink_allowance", 1, lot).new for lot in (1, 2, other, None)}
    assert values == {1: 0.003, 2: 0.005, other: 0.004, None: 0.004}
    assert shop.in_force("shrink_allowance", 2) is None
    assert [setting.new for setting in shop.settings(1)] == [0.005, 0.004, 0.003]
    assert [setting.new for setting in shop.settings(1, 1)] == [0.004, 0.003]
    assert [setting.new for setting in shop.settings(None)] == [0.006, 0.005, 0.004, 0.003]


def test_a_later_trial_verifies_what_is_in_force(shop):
    shop.keep(Trial("drive", 1, 1), [STEPS, SHRINK])
    checking = shop.keep(Trial("sizeerror", 1, 1), [shop.in_force("steps_x", 1), shop.in_force(SHRINK.name, 1, 1)])
    assert [setting.verified_by for setting in shop.settings(1)] == [checking.id, checking.id]
    again = shop.keep(Trial("sizeerror", 1), [shop.in_force("steps_x", 1)])
    assert shop.in_force("steps_x", 1).verified_by == again.id


def test_what_a_withdrawn_trial_verified_is_unverified_and_what_it_set_is_set_still(shop):
    first = shop.keep(Trial("drive", 1), [STEPS])
    other = shop.keep(Trial("drive", 1), [replace(STEPS, name="steps_y")])
    checking = shop.keep(Trial("sizeerror", 1), [shop.in_force("steps_x", 1)])
    shop.keep(Trial("sizeerror", 1), [shop.in_force("steps_y", 1)])
    shop.withdraw(checking.id, "cold part")
    assert shop.in_force("steps_x", 1).verified_by is None
    assert shop.in_force("steps_y", 1).verified_by is not None
    shop.withdraw(first.id, "wrong belt")
    assert shop.in_force("steps_x", 1).trial_id == first.id
    assert shop.in_force("steps_y", 1).trial_id == other.id


def refused(shop, trial, given, field, words):
    before = shop.trials(), shop.settings(1)
    with pytest.raises(InputError, match=words) as caught:
        shop.keep(trial, given)
    assert caught.value.field == field
    assert (shop.trials(), shop.settings(1)) == before


@pytest.mark.parametrize(
    "change",
    [
        lambda setting: replace(setting, new=81.0),
        lambda setting: replace(setting, name="steps_y"),
        lambda setting: replace(setting, id=9),
    ],
    ids=["value", "name", "id"],
)
def test_only_what_is_in_force_as_read_is_verified(shop, change):
    shop.keep(Trial("drive", 1), [STEPS])
    draft = shop.save_draft(Trial("sizeerror", 1))
    refused(shop, draft, [change(shop.in_force("steps_x", 1))], "settings", "was set anew elsewhere meanwhile; open")
    assert shop.draft("sizeerror", 1) == draft


def test_a_setting_that_another_took_the_place_of_is_not_verified(shop):
    shop.keep(Trial("drive", 1), [STEPS])
    old = shop.in_force("steps_x", 1)
    shop.keep(Trial("drive", 1), [replace(STEPS, new=80.2)])
    refused(shop, Trial("sizeerror", 1), [old], "settings", "steps x was set anew elsewhere meanwhile")


@pytest.mark.parametrize(
    ("trial", "given", "field", "words"),
    [
        (Trial("drive"), [STEPS], "machine_id", "Choose the machine first"),
        (Trial("drive", 2), [STEPS], "settings", "steps_x is for another machine or lot than the trial"),
        (Trial("drive", 1, 2), [SHRINK], "settings", "shrink_allowance is for another machine or lot"),
        (Trial("drive", 1), [SHRINK], "settings", "shrink_allowance is for another machine or lot"),
        (Trial("drive", 1), [replace(STEPS, new=math.nan)], "settings", "steps_x is not a finite number"),
        (Trial("drive", 1), [replace(STEPS, old=math.inf)], "settings", "steps_x is not a finite number"),
        (Trial("drive", 1), [STEPS, replace(STEPS, new=81.0)], "settings", "steps_x is set twice in one trial"),
    ],
)
def test_what_cannot_be_in_force_is_refused_and_nothing_is_kept(shop, trial, given, field, words):
    refused(shop, trial, given, field, words)


def test_who_keeps_the_trial_sets_it(shop):
    shop.author = "Kim"
    shop.keep(Trial("drive", 1), [STEPS, replace(STEPS, name="steps_y", author="Bo")])
    assert {setting.name: setting.author for setting in shop.settings(1)} == {"steps_x": "Kim", "steps_y": "Bo"}


def test_undoing_brings_the_old_value_back_as_a_new_entry(shop):
    shop.author = "Kim"
    kept = shop.keep(Trial("drive", 1), [STEPS])
    undone = shop.undo_setting(shop.in_force("steps_x", 1), "  it lost steps ")
    assert (undone.old, undone.new, undone.undoes, undone.because) == (80.0, 79.5, 1, "it lost steps")
    assert (undone.trial_id, undone.author, undone.serial) == (None, "Kim", kept.serial + 1)
    assert shop.in_force("steps_x", 1) == undone
    assert [setting.new for setting in shop.settings(1)] == [79.5, 80.0]
    again = shop.undo_setting(undone, "it did not")
    assert (again.new, again.undoes) == (80.0, undone.id)


def test_a_value_is_set_by_hand_with_its_prediction_and_survives(shop):
    moved = {"name": "scale_x", "value": 0.0, "U": 0.001, "unit": "1"}
    given = replace(SHRINK, because="read back", prediction=moved, author="Bo", verified_by=7, trial_id=9)
    written = shop.put_in_force(given)
    assert (written.verified_by, written.trial_id, written.author) == (None, None, "Bo")
    assert shop.settings(1) == (written,)
    assert written.prediction == moved
    verified = shop.keep(Trial("sizeerror", 1, 1), [written])
    assert shop.in_force(SHRINK.name, 1, 1).verified_by == verified.id


@pytest.mark.parametrize(
    ("change", "field", "words"),
    [
        ({"because": " "}, "because", "Say why steps_x is set"),
        ({"machine_id": 9}, "machine_id", "The machine 9 is not on record"),
        ({"lot_id": 9}, "lot_id", "The lot 9 is not on record"),
        ({"new": math.nan}, "settings", "steps_x is not a finite number"),
    ],
)
def test_what_cannot_be_set_by_hand_is_refused(shop, change, field, words):
    with pytest.raises(InputError, match=words) as caught:
        shop.put_in_force(replace(STEPS, **{"because": "read back", **change}))
    assert caught.value.field == field
    assert shop.settings(1) == ()


def test_what_cannot_be_undone_is_refused(shop):
    shop.keep(Trial("drive", 1, 1), [STEPS, SHRINK])
    old = shop.in_force("steps_x", 1)
    with pytest.raises(InputError, match="Nobody wrote down what shrink_allowance was before"):
        shop.undo_setting(shop.in_force(SHRINK.name, 1, 1), "worse")
    with pytest.raises(InputError, match="Say why steps_x is set"):
        shop.undo_setting(old, "")
    shop.keep(Trial("drive", 1), [replace(STEPS, new=80.2)])
    with pytest.raises(InputError, match="steps x was set anew elsewhere meanwhile"):
        shop.undo_setting(old, "worse")
    assert len(shop.settings(1)) == 3


TEXT = st.text(st.characters(exclude_categories=["Cs"], exclude_characters="\0"), max_size=20)
FINITE = st.floats(allow_nan=False, allow_infinity=False)
SETTING = st.builds(SettingInForce, st.just(1), st.none() | st.just(1), TEXT, st.none() | FINITE, FINITE, TEXT)


@pytest.fixture(scope="module")
def any_shop(shared_store):
    store = shared_store
    store.add_lot(Lot("L", "PLA"))
    return store


@settings(deadline=None, max_examples=60)
@given(st.lists(SETTING, max_size=4, unique_by=lambda setting: (setting.lot_id, setting.name)))
def test_any_settings_in_the_same_settings_out(any_shop, given):
    machine = any_shop.add_machine(Machine(str(len(any_shop.machines()))))
    given = [replace(setting, machine_id=machine.id) for setting in given]
    kept = any_shop.keep(Trial("drive", machine.id, 1), given)
    found = any_shop.settings(machine.id, 1)
    assert [replace(setting, id=None) for setting in reversed(found)] == [
        replace(setting, since=kept.kept_at, trial_id=kept.id, serial=kept.serial) for setting in given
    ]
    for setting in given:
        assert any_shop.in_force(setting.name, machine.id, setting.lot_id).new == setting.new


def test_what_a_trial_puts_in_force_did_not_hold_when_it_was_begun(shop):
    """Also where it is kept at once, without a draft before."""
    kept = shop.keep(Trial("drive", 1), [STEPS])
    now = shop.in_force("steps_x", 1)
    assert kept.started_at <= kept.kept_at == now.since
    assert in_force_when(shop.settings(1), "steps_x", None, kept.started_at) is None
