"""The ladders of the data file: complete, and each has its words."""

import pytest

from core.errors import InputError
from core.guidance.ladderadvice import caution_words, how_words, kinds_words
from core.measuring.ladder import Choose, plan_steps
from core.motion_trials.ladders import Read, check_steps, ladders


def test_the_file_holds_the_ladders_of_the_trade():
    assert list(ladders()) == ["temperature", "retraction", "lag", "cornering", "cooling", "gap"]
    assert [kind.holds_for_lot for kind in ladders().values()] == [True, True, True, False, True, False]
    assert ladders()["retraction"].choose is Choose.LEAST and ladders()["lag"].read is Read.WIDTHS


@pytest.mark.parametrize("kind", ladders().values(), ids=lambda kind: kind.key)
def test_every_ladder_can_be_planned_and_said(kind):
    steps = plan_steps(kind.low, kind.high, kind.steps, geometric=kind.geometric)
    check_steps(kind, list(steps), None)
    assert kinds_words(kind) and "local rules" in caution_words(kind).lower() and how_words(kind)


def test_limits_are_refused_with_the_specimen_named():
    kind = ladders()["temperature"]
    with pytest.raises(InputError, match="Refused") as error:
        check_steps(kind, [230, 240, 250], 240.0)
    assert (error.value.field, error.value.row) == ("step", 2)
    for wrong in (100.0, 460.0):
        with pytest.raises(InputError, match="not between"):
            check_steps(kind, [wrong], None)
