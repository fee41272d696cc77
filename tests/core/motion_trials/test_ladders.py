"""The ladders of the data file: complete, and each has its words."""

import pytest

from core.errors import InputError
from core.guidance.ladderadvice import kinds_words
from core.guidance.ladderwords import caution_words, how_words
from core.measuring.criteria import Criterion
from core.measuring.ladder import Choose, plan_steps
from core.motion_trials import ladders as module
from core.motion_trials.ladders import Read, check_plan, check_steps, ladders, usual_range


def test_the_file_holds_the_ladders_of_the_trade():
    assert list(ladders()) == ["temperature", "retraction", "lag", "cornering", "cooling", "gap"]
    assert [kind.holds_for_lot for kind in ladders().values()] == [True, True, True, False, True, False]
    assert ladders()["retraction"].choose is Choose.LEAST and ladders()["lag"].read is Read.WIDTHS


@pytest.mark.parametrize("kind", ladders().values(), ids=lambda kind: kind.key)
def test_every_ladder_can_be_planned_and_said(kind):
    steps = plan_steps(kind.low, kind.high, kind.steps, geometric=kind.geometric)
    check_steps(kind, list(steps), None)
    assert kinds_words(kind) and "local rules" in caution_words(kind).lower() and how_words(kind)


def test_the_usual_steps_stand_about_what_is_set_within_what_may_be_tried():
    kinds = ladders()
    usual = {key: usual_range(kind, None, None) for key, kind in kinds.items()}
    assert usual == {key: (kind.low, kind.high) for key, kind in kinds.items()}
    hot = kinds["temperature"]
    assert usual_range(hot, 245.0, 300.0) == (230.0, 260.0)  # 5 K apart as before
    assert usual_range(hot, 215.1, None) == (200.0, 230.0)  # no step of odd numbers
    assert usual_range(hot, 245.0, 250.0) == (220.0, 250.0) and usual_range(hot, None, 220.0) == (190.0, 220.0)
    assert usual_range(hot, 160.0, None) == (150.0, 180.0) and usual_range(hot, 440.0, None) == (420.0, 450.0)
    assert usual_range(hot, 20.0, None) == usual_range(hot, 900.0, None) == (200.0, 230.0)  # no step of a ladder
    assert usual_range(kinds["cooling"], 40.0, None) == (0.0, 100.0)
    assert usual_range(kinds["lag"], 0.043, None) == (0.0, 0.09) and usual_range(kinds["lag"], 0.4, None)[0] == 0.355
    assert usual_range(kinds["cornering"], 11.3137, None) == pytest.approx((4.0, 32.0))
    assert usual_range(kinds["cornering"], 90.0, None) == pytest.approx((12.5, 100.0))


def test_what_is_set_never_draws_a_ladder_down_to_nothing():
    """A gap of 0 scrapes the bed (common practice, no source)."""
    for now in (0.0, 0.03, 0.1, 0.15):
        assert usual_range(ladders()["gap"], now, None)[0] >= 0.05
    assert usual_range(ladders()["retraction"], 0.4, None) == (0.4, 2.0)
    assert usual_range(ladders()["temperature"], 155.0, 160.0) == (130.0, 160.0)  # refused when it is planned


def test_limits_are_refused_with_the_specimen_named():
    kind = ladders()["temperature"]
    with pytest.raises(InputError, match="Refused") as error:
        check_steps(kind, [230, 240, 250], 240.0)
    assert (error.value.field, error.value.row) == ("step", 2)
    for wrong in (100.0, 460.0):
        with pytest.raises(InputError, match="not between"):
            check_steps(kind, [wrong], None)


def test_the_temperature_ladder_has_criteria_with_the_bounds_of_common_practice():
    kind = ladders()["temperature"]
    assert [c.key for c in kind.criteria] == ["overhang", "clean", "bond", "force"]
    assert [(c.at_least, c.at_most, c.unit) for c in kind.criteria] == [
        (None, None, ""), (3, None, ""), (3, None, ""), (None, None, "N"),
    ]  # fmt: skip
    assert kind.steps == 7 and (kind.high - kind.low) / (kind.steps - 1) == 5.0  # 7 levels, 5 K: common practice
    assert all(ladders()[key].criteria == () for key in ("retraction", "lag", "cornering", "cooling", "gap"))


def test_more_is_better_by_every_criterion_and_what_was_scored_otherwise_stays_as_it_was():
    for kind in ladders().values():
        assert all(criterion.at_most is None for criterion in kind.criteria)
    kind = ladders()["temperature"]
    old = kind.scored_by(["bond", "strings", "bond"])
    assert [c.key for c in old.criteria] == ["overhang", "strings", "bond", "force"]
    assert kind.criterion("strings") == old.criterion("strings") == Criterion("strings", at_most=1)
    assert kind.scored_by(["bond", "clean"]).criteria == kind.criteria == kind.scored_by([]).criteria
    mixed = kind.scored_by(["strings", "clean"])  # another set of pieces was planned since
    assert [c.key for c in mixed.criteria] == ["overhang", "clean", "strings", "bond", "force"]
    assert kind.criterion("gloss") is None


def test_a_plan_beyond_a_limit_is_refused_at_the_end_that_leads_there():
    kind = ladders()["temperature"]
    check_plan(kind, [200, 220, 240], 240.0)
    cases = (([200, 220, 250], 240.0, "high"), ([120, 200, 220], None, "low"), ([300, 310], 240.0, "low"))
    for steps, limit, field in cases:
        with pytest.raises(InputError) as error:
            check_plan(kind, steps, limit)
        assert (error.value.field, error.value.row) == (field, None)


@pytest.mark.parametrize("bound", [-1, 5])
def test_a_bound_off_the_scale_is_refused(bound):
    entry = {"unit": "mm", "low": 1, "high": 2, "steps": 3, "least": 0, "most": 9, "choose": "middle", "keep": "lot",
             "read": "score", "setting": "cooling", "criteria": {"own": {"at_least": bound}}}  # fmt: skip
    with pytest.raises(InputError, match="bound of own lies between 0 and 4"):
        module._kind("own", entry)
    with pytest.raises(InputError, match="bound of own lies between 0 and 4"):
        module._kind("own", {**entry, "criteria": {}, "former": {"own": {"at_most": bound, "now": "other"}}})
