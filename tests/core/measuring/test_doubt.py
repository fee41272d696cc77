"""Results in doubt: all that were read between the good checks before and after a bad one."""

from dataclasses import replace
from datetime import UTC, datetime, timedelta

import pytest

from core.measuring.doubt import conformity_of, doubt_begins, in_doubt
from core.measuring.tolerance import Conformity
from core.records.rows import Trial, TrialState

NOON = datetime(2026, 3, 2, 12, tzinfo=UTC)
CALIPER, OTHER = 7, 8


def kept(number, hour, subject="sizeerror", instrument=CALIPER, state=TrialState.KEPT, verdict=()):
    at = NOON + timedelta(hours=hour)
    return Trial(subject, instrument_id=instrument, id=number, kept_at=at, state=state, verdict=verdict)


def check(number, hour, conformity, **changes):
    return kept(number, hour, "instrument", verdict=({"conformity": conformity},), **changes)


GOOD, BAD, OPEN = Conformity


@pytest.mark.parametrize(
    ("checks", "doubtful"),
    [
        ([], []),
        ([(0, GOOD), (10, GOOD)], []),
        ([(0, GOOD), (10, BAD)], [1, 5, 9]),
        ([(2, GOOD), (6, BAD)], [5, 9]),  # read before the bad check, and after it
        ([(0, GOOD), (6, BAD), (7, GOOD)], [1, 5]),
        ([(6, BAD)], [1, 5, 9]),  # never a good one
        ([(0, GOOD), (4, OPEN), (6, BAD)], [1, 5, 9]),  # nothing proved is no good check
        ([(0, GOOD), (4, GOOD), (6, BAD)], [5, 9]),
        ([(6, BAD), (0, GOOD)], [1, 5, 9]),  # in any order
        ([(0, GOOD), (3, BAD), (4, GOOD), (8, BAD)], [1, 5, 9]),
        ([(2, GOOD), (3, BAD), (4, GOOD)], []),
    ],
)
def test_between_the_good_checks(checks, doubtful):
    trials = [kept(hour, hour) for hour in (1, 5, 9)]
    known = [check(100 + place, hour, what) for place, (hour, what) in enumerate(checks)]
    assert [doubt.trial.id for doubt in in_doubt(known, trials)] == doubtful


@pytest.mark.parametrize(
    ("begun", "doubtful"),
    [(None, False), (7, False), (5, True), (1, True)],  # the bad check at 4, good ones at 2 and 6
)
def test_what_was_begun_before_the_good_check_was_read_before_it_too(begun, doubtful):
    started = None if begun is None else NOON + timedelta(hours=begun)
    trial = replace(kept(9, 8), started_at=started)
    checks = [check(1, 2, GOOD), check(2, 4, BAD), check(3, 6, GOOD)]
    assert bool(in_doubt(checks, [trial])) == doubtful


def test_a_trial_kept_before_the_last_good_check_is_not_in_doubt_although_one_begun_then_is():
    checks = [check(1, 2, GOOD), check(2, 4, BAD)]
    begun = NOON + timedelta(hours=1)
    early, long = replace(kept(3, 1.5), started_at=begun), replace(kept(4, 3), started_at=begun)
    assert [doubt.trial.id for doubt in in_doubt(checks, [early, long])] == [4]


def test_each_says_which_check_and_since_when():
    (found,) = in_doubt([check(1, 0, GOOD), check(2, 9, BAD)], [kept(3, 4)])
    assert (found.bad_check_id, found.good_since) == (2, NOON)
    (found,) = in_doubt([check(2, 9, BAD)], [kept(3, 4)])
    assert found.good_since is None


def test_other_instruments_withdrawn_checks_and_the_checks_themselves_do_not_count():
    bad = check(2, 9, BAD)
    trials = [
        kept(3, 4, instrument=OTHER),
        kept(4, 4, instrument=None),
        kept(5, 4, state=TrialState.WITHDRAWN),
        bad,
    ]
    assert in_doubt([bad], trials) == ()
    withdrawn = [check(2, 9, BAD, state=TrialState.WITHDRAWN), check(6, 9, BAD, instrument=None)]
    assert in_doubt(withdrawn, [kept(3, 4)]) == ()


def test_a_check_without_a_word_on_conformity_proves_nothing():
    assert conformity_of(kept(1, 0, "instrument", verdict=({"setting": "undecided"},))) is Conformity.NOT_PROVED
    assert conformity_of(check(1, 0, "conforming")) is Conformity.CONFORMING


@pytest.mark.parametrize(
    ("checks", "begins"),
    [
        ([], None),
        ([(0, GOOD), (3, OPEN), (10, GOOD)], None),
        ([(0, GOOD), (4, GOOD), (6, BAD), (7, GOOD), (9, BAD)], 4),  # of the first bad one
        ([(9, BAD), (4, GOOD), (6, BAD)], 4),  # in any order
        ([(6, BAD), (7, GOOD)], -500_000),  # never good before: from the beginning of all times
    ],
)
def test_nothing_kept_before_the_doubt_begins_is_in_doubt(checks, begins):
    known = [check(100 + place, hour, what) for place, (hour, what) in enumerate(checks)]
    since = doubt_begins(known)
    if begins is None:
        assert since is None and in_doubt(known, [kept(1, 5)]) == ()
    else:
        trials = [kept(hour + 50, hour) for hour in range(-20, 12)]
        assert since <= NOON + timedelta(hours=max(begins, -20))
        assert all(doubt.trial.kept_at >= since for doubt in in_doubt(known, trials))
        assert begins < 0 or since == NOON + timedelta(hours=begins)
