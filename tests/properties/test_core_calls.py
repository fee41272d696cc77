"""Every public function of the core, and every method that takes something: finite in, finite or refused out."""

from __future__ import annotations

from collections.abc import Iterator

import pytest
from hypothesis import given
from hypothesis import strategies as st

from core.errors import InputError, StoreError
from tests.properties.answers import allowed, faults_of
from tests.properties.examples import examples
from tests.properties.kinds import Hand
from tests.properties.listing import Call, functions, methods
from tests.properties.reasons import REASONS, reason_of
from tests.properties.recipes import ARGUMENTS, RECIPES

CALLS = [call for call in [*functions(), *methods()] if not reason_of(call.name)]
_REFUSALS = (InputError, StoreError)


def ask(call: Call, hand: Hand) -> None:
    """Call with drawn arguments; the answer is finite, or a refusal in words."""
    fitting = hand.made(ARGUMENTS[call.name]) if call.name in ARGUMENTS else {}
    given_ = {name: fitting[name] if name in fitting else hand.of(hint, name) for name, hint in call.hints.items()}
    try:
        answer = call.function(**given_)
        if isinstance(answer, Iterator):
            answer = list(answer)
    except _REFUSALS as refusal:
        assert len(refusal.message) > 10
        return
    faults = [fault for fault in faults_of(answer) if not allowed(call.name, fault)]
    assert not faults, faults


@pytest.mark.parametrize("call", CALLS, ids=str)
def test_finite_in_finite_or_refused_out(call):
    @examples
    @given(st.data(), st.sampled_from((0.0, 0.0, 0.1, 0.6)))
    def run(data, wild):
        ask(call, Hand(data.draw, wild, RECIPES))

    run()


def test_every_reason_is_of_something():
    names = [call.name for call in [*functions(), *methods()]]
    assert not [begin for begin in REASONS if not any(name.startswith(begin) for name in names)]
    assert len(CALLS) > 500
