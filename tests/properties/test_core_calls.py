"""Every public function of the core, and every method that takes something: finite in, finite or refused out."""

from __future__ import annotations

import warnings
from collections.abc import Iterator
from typing import Any

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from core.errors import InputError, StoreError
from tests.properties.answers import allowed, faults_of
from tests.properties.examples import examples
from tests.properties.kinds import Hand, PlainHand, Rejected
from tests.properties.listing import Call, functions, methods
from tests.properties.plants import PASSES, passes_on, planted
from tests.properties.reasons import REASONS, reason_of
from tests.properties.recipes import ARGUMENTS, RECIPES

CALLS = [call for call in [*functions(), *methods()] if not reason_of(call.name)]
_REFUSALS = (InputError, StoreError)
TRIES = 40


def draw(call: Call, hand: Hand) -> dict[str, Any]:
    """Return arguments for a call."""
    fitting = hand.made(ARGUMENTS[call.name]) if call.name in ARGUMENTS else {}
    return {name: fitting[name] if name in fitting else hand.of(hint, name) for name, hint in call.hints.items()}


def ask(call: Call, given_: dict[str, Any], may_pass_on: bool = False) -> bool:
    """Call; the answer is finite, or a refusal in words. Return whether it was answered."""
    try:
        answer = call.function(**given_)
        if isinstance(answer, Iterator):
            answer = list(answer)
    except _REFUSALS as refusal:
        assert len(refusal.message) > 10
        return False
    faults = [fault for fault in faults_of(answer) if not may_pass_on and not allowed(call.name, fault)]
    assert not faults, faults
    return True


@pytest.mark.parametrize("call", CALLS, ids=str)
def test_finite_in_finite_or_refused_out(call):
    @examples
    @given(st.data(), st.sampled_from((0.0, 0.0, 0.1, 0.6)))
    def run(data, wild):
        ask(call, draw(call, Hand(data.draw, wild, RECIPES)))

    run()


@pytest.mark.parametrize("call", CALLS, ids=str)
def test_what_a_workshop_reads_is_answered_and_no_number_refused(call):
    """Answered: else the property above would hold of refusals alone."""
    given_ = next((found for seed in range(TRIES) if (found := answered(call, seed)) is not None), None)
    assert given_ is not None
    for odd in planted(given_):
        with np.errstate(all="ignore"), warnings.catch_warnings():
            warnings.simplefilter("ignore", RuntimeWarning)
            ask(call, odd, passes_on(call.name))


def answered(call: Call, seed: int) -> dict[str, Any] | None:
    """Return arguments that a call answers; None where these are none."""
    try:
        given_ = draw(call, PlainHand(seed, RECIPES))
    except Rejected:
        return None
    return given_ if ask(call, given_) else None


def test_every_reason_is_of_something():
    names = [call.name for call in [*functions(), *methods()]]
    assert not [begin for begin in REASONS if not any(name.startswith(begin) for name in names)]
    assert not [begin for begin in PASSES if not any(name.startswith(begin) for name in names)]
    assert len(CALLS) > 500
