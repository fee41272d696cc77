"""Results in doubt: all that were read between the good checks before and after a bad one."""

from datetime import UTC, datetime, timedelta

import pytest

from core.measuring.doubt import conformity_of, in_doubt
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
