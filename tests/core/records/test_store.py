import math
from dataclasses import replace
from datetime import UTC, datetime, timedelta, timezone
from functools import partial
from itertools import count
from string import printable

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from core.errors import InputError
from core.quantity import Estimate
from core.records.rows import Instrument, Lot, Machine, Motion, Trial, TrialState

SCALE = Estimate("scale_x", 0.0021, 0.0004, math.inf, "1")


def refused(field: str, words: str):
    return _Refused(field, words)


class _Refused:
    """Asks for an InputError by its field and by what it says."""

    def __init__(self, field: str, words: str) -> None:
        self.field, self.raises = field, pytest.raises(InputError, match=words)

    def __enter__(self):
        self.caught = self.raises.__enter__()

    def __exit__(self, *error):
        swallowed = self.raises.__exit__(*error)
        assert self.caught.value.field == self.field
        return swallowed


# Machines, lots, instruments


def test_machines_come_back_as_they_went_in(store):
    drives = {"x": {"kind": "belt", "teeth": 20, "pitch_mm": 2.0}, "y": {}}
    tall = store.add_machine(Machine("tall ", Motion.DELTA, 200.0, 200.5, 400.0, drives, "by the door"))
    low = store.add_machine(Machine("Low", version=7))
    assert tall == Machine("tall", Motion.DELTA, 200.0, 200.5, 400.0, drives, "by the door", id=1, version=1)
    assert store.machines() == (low, tall)
    assert isinstance(store.machines()[1].motion, Motion)


def named(store, kind):
    """How one of that kind is made, and the store's three methods for it."""
    return {
        "machine": (Machine, store.machines, store.add_machine, store.change_machine),
        "lot": (partial(Lot, material="PLA"), store.lots, store.add_lot, store.change_lot),
        "instrument": (Instrument, store.instruments, store.add_instrument, store.change_instrument),
    }[kind]


KINDS = pytest.mark.parametrize("kind", ["machine", "lot", "instrument"])


@KINDS
def test_a_change_is_counted(store, kind):
    make, rows, add, change = named(store, kind)
    first = add(make("A", version=7))
    assert first == make("A", id=1, version=1)
    second = change(replace(first, name="B ", note="new"))
    assert second == make("B", note="new", id=1, version=2)
    assert change(second) == replace(second, version=3)
    assert rows() == (replace(second, version=3),)


@KINDS
def test_a_stale_edit_is_refused(store, kind):
    make, rows, add, change = named(store, kind)
    first = add(make("A"))
    second = change(replace(first, name="B"))
    with refused("version", "B was changed elsewhere meanwhile; open it again"):
        change(replace(first, note="typed long ago"))
    assert rows() == (second,)


@KINDS
@pytest.mark.parametrize("number", [None, 99])
def test_what_is_not_on_record_is_not_changed(store, kind, number):
    make, rows, _add, change = named(store, kind)
    with refused("id", f"The {kind} A is not on record; add it"):
        change(make("A", id=number))
    assert rows() == ()


@KINDS
def test_a_change_takes_no_name_of_another(store, kind):
    make, rows, add, change = named(store, kind)
    add(make("A"))
    other = add(make("B"))
    with refused("name", "“A” is on record already"):
        change(replace(other, name=" A"))
    with refused("name", "Give it a name"):
        change(replace(other, name=" "))
    assert rows()[1] == other


def test_a_name_is_given_once(store):
    first = store.add_machine(Machine("A"))
    with refused("name", "“A” is on record already"):
        store.add_machine(Machine(" A"))
    with refused("name", "Give it a name"):
        store.add_machine(Machine(" "))
    assert store.machines() == (first,)


def test_what_is_no_number_is_refused(store):
    with refused("travel_y_mm", "travel_y_mm is not a finite number"):
        store.add_machine(Machine("A", travel_y_mm=math.nan))
    lot = store.add_lot(Lot("L", "PLA"))
    with refused("spool_mass_g", "spool_mass_g is not a finite number"):
        store.change_lot(replace(lot, spool_mass_g=math.inf))


def test_lots_and_instruments(store):
    lot = store.add_lot(Lot("7/24", "PLA", "grey", "dry", "own extruder", "3", 1.75, 0.03, 212.5))
    bare = store.add_lot(Lot("8/24", "PETG"))
    assert store.lots() == (lot, bare)
    assert lot == Lot("7/24", "PLA", "grey", "dry", "own extruder", "3", 1.75, 0.03, 212.5, id=1)
    assert (bare.nominal_diameter_mm, bare.claimed_tolerance_mm, bare.spool_mass_g) == (None, None, None)
    unchecked = store.add_instrument(Instrument("caliper 2"))
    checked = store.add_instrument(Instrument("Caliper 1", "caliper", 0.01, 0.01, 0.02, 1e-5, 0.008, 19, "", None))
    assert store.instruments() == (checked, unchecked)
    with refused("name", "“7/24” is on record already"):
        store.add_lot(lot)


# Drafts


def test_there_is_one_open_trial_for_a_subject_machine_and_lot(store):
    machine = store.add_machine(Machine("A"))
    lot = store.add_lot(Lot("L", "PLA"))
    first = store.save_draft(Trial("sizeerror", machine.id, readings={"raw": ["1"]}))
    again = store.save_draft(Trial("sizeerror", machine.id, readings={"raw": ["1", "2"]}))
    others = [
        store.save_draft(Trial("sizeerror")),
        store.save_draft(Trial("drive", machine.id)),
        store.save_draft(Trial("sizeerror", machine.id, lot.id)),
    ]
    assert again.id == first.id
    assert len({first.id, *(other.id for other in others)}) == 4
    assert store.draft("sizeerror", machine.id) == again == store.trial(first.id)
    assert store.draft("sizeerror", None, lot.id) is None
    assert again.readings == {"raw": ["1", "2"]}
    assert again.started_at == first.started_at
    assert again.started_at.tzinfo is UTC


def test_a_draft_with_an_id_moves_to_another_machine_unless_one_is_open_there(store):
    a, b = store.add_machine(Machine("A")), store.add_machine(Machine("B"))
    draft = store.save_draft(Trial("sizeerror", a.id))
    moved = store.save_draft(replace(draft, machine_id=b.id))
    assert (moved.id, store.draft("sizeerror", a.id)) == (draft.id, None)
    other = store.save_draft(Trial("sizeerror", a.id))
    with refused("id", f"Trial {other.id} is open here already"):
        store.save_draft(replace(moved, machine_id=a.id))
    assert store.draft("sizeerror", b.id) == moved


def test_a_draft_leaves_estimates_verdict_and_used_out(store):
    draft = store.save_draft(Trial("sizeerror", estimates=(SCALE,), verdict=({"a": 1},), used=(5,)))
    assert (draft.estimates, draft.verdict, draft.used) == ((), (), ())


def test_a_discarded_draft_is_gone_and_its_number_is_not_used_again(store):
    draft = store.save_draft(Trial("sizeerror"))
    store.discard_draft(draft.id)
    assert store.draft("sizeerror") is None
    assert store.save_draft(Trial("sizeerror")).id > draft.id
    for call in (store.discard_draft, store.trial, lambda number: store.withdraw(number, "why")):
        with refused("id", f"Trial {draft.id} is not on record"):
            call(draft.id)
    with refused("id", f"Trial {draft.id} is not on record"):
        store.save_draft(replace(draft, subject="drive"))


@pytest.mark.parametrize(
    ("field", "words"),
    [("machine_id", "The machine 9"), ("lot_id", "The lot 9"), ("instrument_id", "The instrument 9")],
)
def test_what_a_trial_names_must_be_on_record(store, field, words):
    for call in (store.save_draft, store.keep):
        with refused(field, f"{words} is not on record; choose again"):
            call(Trial("sizeerror", **{field: 9}))
    assert store.trials() == ()


# Keeping


def test_a_kept_trial_holds_what_was_read_and_what_was_said(store):
    machine, instrument = store.add_machine(Machine("A")), store.add_instrument(Instrument("C"))
    earlier = store.keep(Trial("drive", machine.id, estimates=(replace(SCALE, name="steps"),)))
    draft = store.save_draft(Trial("sizeerror", machine.id, readings={"raw": ["10.1", None]}))
    said = {"setting": "axis_scale", "amount": 0.0021}
    before = datetime.now(UTC)
    kept = store.keep(
        replace(
            draft,
            instrument_id=instrument.id,
            conditions={"part_temperature_c": 23.5},
            verdict=(said,),
            estimates=(SCALE, replace(SCALE, name="wall_outset", unit="mm", dof=3.7)),
            used=(earlier.id, earlier.id),
            method="sizeerror 1",
            note="n",
        )
    )
    assert before <= kept.kept_at <= datetime.now(UTC)
    assert kept == store.trial(draft.id) == Trial(
        "sizeerror", machine.id, None, instrument.id, TrialState.KEPT, {"raw": ["10.1", None]},
        {"part_temperature_c": 23.5}, (SCALE, Estimate("wall_outset", 0.0021, 0.0004, 3.7, "mm")), (said,),
        (earlier.id,), "sizeerror 1", "n", draft.started_at, kept.kept_at, "", draft.id, "", 2,
    )  # fmt: skip
    assert store.draft("sizeerror", machine.id) is None


def test_a_kept_trial_does_not_change(store):
    draft = store.save_draft(Trial("sizeerror"))
    kept = store.keep(draft)
    for call in (store.keep, store.save_draft):
        with refused("state", "This trial was kept already"):
            call(kept)
        with refused("id", f"Trial {kept.id} was kept already"):
            call(draft)
    with refused("id", f"Trial {kept.id} was kept already"):
        store.discard_draft(kept.id)
    assert store.trial(kept.id) == kept


def test_a_trial_kept_without_an_id_leaves_the_open_one_alone(store):
    draft = store.save_draft(Trial("sizeerror", readings={"raw": ["1"]}))
    kept = store.keep(Trial("sizeerror"))
    assert kept.id != draft.id
    assert store.draft("sizeerror") == draft


@pytest.mark.parametrize("bad", [{"value": math.nan}, {"u": math.nan}, {"dof": math.nan}])
def test_an_estimate_without_a_number_is_not_kept(store, bad):
    with refused("estimates", "scale_x is not a number"):
        store.keep(Trial("sizeerror", estimates=(replace(SCALE, **bad),)))


def test_a_name_is_estimated_once_in_a_trial(store):
    with refused("estimates", "scale_x was estimated twice"):
        store.keep(Trial("sizeerror", estimates=(SCALE, SCALE)))
    assert store.trials() == ()


def test_a_trial_relies_on_trials_in_use_only(store):
    withdrawn = store.withdraw(store.keep(Trial("drive")).id, "wrong belt")
    draft = store.save_draft(Trial("sizeerror"))
    for number in (withdrawn.id, draft.id, store.save_draft(Trial("drive")).id):
        with refused("used", f"Trial {number} is not in use"):
            store.keep(replace(draft, used=(number,)))
    with refused("id", "Trial 99 is not on record"):
        store.keep(replace(draft, used=(99,)))
    assert store.draft("sizeerror") == draft


def test_withdrawing_needs_a_reason_and_is_done_once(store):
    kept = store.keep(Trial("sizeerror", estimates=(SCALE,)))
    with refused("because", "Say why"):
        store.withdraw(kept.id, " \n")
    withdrawn = store.withdraw(kept.id, " caliper not zeroed ")
    assert withdrawn == replace(kept, state=TrialState.WITHDRAWN, withdrawn_because="caliper not zeroed")
    assert store.trials() == (withdrawn,)
    for number in (kept.id, store.save_draft(Trial("drive")).id):
        with refused("id", f"Trial {number} is not in use"):
            store.withdraw(number, "again")


# Lists


def test_lists_are_newest_first_without_readings(store):
    machine, lot = store.add_machine(Machine("A")), store.add_lot(Lot("L", "PLA"))
    old = datetime(2020, 1, 1, tzinfo=UTC)
    draft = store.save_draft(Trial("drive", machine.id, started_at=old, readings={"raw": ["1"]}))
    first = store.keep(Trial("sizeerror", machine.id, lot.id, readings={"raw": ["1"]}, estimates=(SCALE,)))
    second = store.keep(Trial("sizeerror", machine.id, used=(first.id,)))
    assert store.trials() == (second, replace(first, readings={}), replace(draft, readings={}))
    assert store.trials("sizeerror", machine.id) == (second, replace(first, readings={}))
    assert store.trials(lot_id=lot.id) == (replace(first, readings={}),)
    assert store.trials(limit=1) == (second,)
    assert store.trials("flow") == ()


def test_the_newest_estimate_is_the_one_kept_last_and_not_withdrawn(store):
    a, lot = store.add_machine(Machine("A")), store.add_lot(Lot("L", "PLA"))
    assert store.newest("scale_x") is None
    early = store.save_draft(Trial("sizeerror", a.id))
    first = store.keep(Trial("sizeerror", a.id, lot.id, estimates=(SCALE,)))
    last = store.keep(replace(early, estimates=(replace(SCALE, value=0.5),)))
    assert store.newest("scale_x") == store.newest("scale_x", a.id) == (last.id, replace(SCALE, value=0.5))
    assert store.newest("scale_x", lot_id=lot.id) == (first.id, SCALE)
    store.withdraw(last.id, "wrong machine")
    assert store.newest("scale_x", a.id) == (first.id, SCALE)


# Any value


def test_what_json_does_not_know_comes_back(store):
    odd = {"step_mm": [math.inf, -math.inf, None, True, 2**60, 0.1 + 0.2], "deep": [{"a": {"b": [1, "ü\ud800\0"]}}]}
    assert store.trial(store.save_draft(Trial("s", readings=odd)).id).readings == odd
    (number,) = store.save_draft(Trial("s", readings={"step_mm": (math.nan,)})).readings["step_mm"]
    assert math.isnan(number)


def test_half_a_character_does_not_stop_the_typing(store):
    assert store.save_draft(Trial("s", note="a\ud800b\0c")).note == "a?b?c"


def test_times_of_other_zones_are_kept_as_utc(store):
    noon = datetime(2026, 7, 1, 12, 0, 0, 5, timezone(timedelta(hours=2)))
    started = store.save_draft(Trial("s", started_at=noon)).started_at
    assert (started, started.tzinfo) == (noon, UTC)


TEXT = st.text(st.characters(exclude_categories=["Cs"], exclude_characters="\0"), max_size=20)
NUMBER = st.floats(allow_nan=False)
JSON = st.recursive(
    st.none() | st.booleans() | st.integers() | NUMBER | TEXT,
    lambda item: (
        st.lists(item, max_size=3)
        | st.dictionaries(TEXT | st.sampled_from(["$", "$float", "$$float"]), item, max_size=3)
    ),
    max_leaves=8,
)
OBJECT = st.dictionaries(st.text(printable, max_size=9), JSON, max_size=4)
FINITE = st.floats(allow_nan=False, allow_infinity=False)
MAYBE = st.none() | FINITE
NAMED = st.one_of(
    st.builds(Machine, TEXT, st.sampled_from(Motion), FINITE, FINITE, FINITE, st.dictionaries(TEXT, OBJECT), TEXT,
              limits=OBJECT, templates=st.dictionaries(TEXT, TEXT)),
    st.builds(Lot, TEXT, TEXT, TEXT, TEXT, TEXT, TEXT, MAYBE, MAYBE, MAYBE),
    st.builds(
        Instrument, TEXT, TEXT, FINITE, FINITE, FINITE, FINITE, MAYBE, st.none() | st.integers(1, 2**31 - 1), TEXT
    ),
)
NUMBERS = count(1)
ESTIMATE = st.builds(Estimate, TEXT, NUMBER, NUMBER, st.floats(0, math.inf), TEXT)
TRIAL = st.builds(
    Trial,
    subject=TEXT,
    machine_id=st.none() | st.just(1),
    lot_id=st.none() | st.just(1),
    instrument_id=st.none() | st.just(1),
    readings=st.dictionaries(TEXT, st.lists(st.none() | NUMBER | TEXT, max_size=5), max_size=4),
    conditions=OBJECT,
    estimates=st.lists(ESTIMATE, max_size=3, unique_by=lambda estimate: estimate.name).map(tuple),
    verdict=st.lists(OBJECT, max_size=2).map(tuple),
    used=st.sampled_from([(), (1,), (2, 1)]),
    method=TEXT,
    note=TEXT,
    started_at=st.datetimes(datetime(1970, 1, 1), datetime(2100, 1, 1), timezones=st.just(UTC)),
    author=TEXT,
)


@pytest.fixture(scope="module")
def stocked(shared_store):
    store = shared_store
    store.add_machine(Machine("A"))
    store.add_lot(Lot("L", "PLA"))
    store.add_instrument(Instrument("C"))
    store.keep(Trial("one"))
    store.keep(Trial("two"))
    return store


@settings(deadline=None, max_examples=80)
@given(trial=TRIAL)
def test_any_trial_in_the_same_trial_out(stocked, trial):
    draft = stocked.save_draft(trial)
    assert draft == replace(trial, id=draft.id, estimates=(), verdict=(), used=())
    kept = stocked.keep(replace(trial, id=draft.id))
    assert kept == replace(trial, id=draft.id, state=TrialState.KEPT, kept_at=kept.kept_at, serial=kept.serial)
    assert stocked.trial(kept.id) == kept


@settings(deadline=None, max_examples=80)
@given(row=NAMED)
def test_any_machine_lot_and_instrument_in_the_same_out(stocked, row):
    _make, rows, add, change = named(stocked, type(row).__name__.lower())
    blank = add(replace(row, name=str(next(NUMBERS)), note=""))
    wanted = replace(row, name=f"{next(NUMBERS)} {row.name}".strip(), id=blank.id)
    changed = change(wanted)
    assert changed == replace(wanted, version=2)
    assert changed in rows()


def test_readings_of_another_seat_are_not_written_over(stocked):
    first = stocked.save_draft(Trial("two", readings={"raw": ["1"]}), None)
    with pytest.raises(InputError, match="another window") as refused:
        stocked.save_draft(Trial("two", readings={"raw": ["2"]}), None)
    assert refused.value.field == "readings"
    second = stocked.save_draft(replace(first, readings={"raw": ["1", "2"]}), first)
    with pytest.raises(InputError, match="another window"):
        stocked.save_draft(replace(first, readings={"raw": ["1", "3"]}), first)
    assert stocked.trial(first.id).readings == {"raw": ["1", "2"]}
    assert stocked.save_draft(replace(second, readings={"raw": []}), second).readings == {"raw": []}
