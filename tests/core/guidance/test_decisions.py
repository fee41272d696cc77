"""What is put in force by hand; that a correction starts from the piece's own base is common practice, no source."""

from __future__ import annotations

from dataclasses import replace
from datetime import UTC, datetime, timedelta

import pytest

from core.errors import InputError
from core.guidance.decisions import SETTABLE, Read, decided, propose, settable
from core.guidance.logentries import setting_name_words
from core.quantity import Estimate
from core.records.rows import SettingInForce

AT = datetime(2026, 11, 25, 9, tzinfo=UTC)
OFFSET, DRAWN = settable("contour_offset"), settable("shrink_allowance_x")
PROUD = Read(13, Estimate("wall_outset", 0.04, 0.004, 30.0, "mm"), AT + timedelta(hours=5))
SHORT = Read(13, Estimate("scale_x", -0.0025, 0.0003, 30.0, "1"), AT + timedelta(hours=5))


def was_set(new, hour, name="contour_offset", lot_id=1):
    return SettingInForce(1, lot_id, name, 0.0, new, "mm", AT + timedelta(hours=hour), id=hour, serial=hour)


def said(proposal):
    return " ".join(str(sentence) for sentence in proposal.sentences)


def test_every_setting_has_a_name_for_people():
    assert all(str(setting_name_words(kind.name)) != kind.name for kind in SETTABLE)


def test_an_outset_is_taken_off_what_was_in_force():
    fresh = propose(OFFSET, (), 1, PROUD)
    assert (fresh.now, fresh.base, fresh.new) == (0.0, 0.0, -0.04)
    assert "Never set here: 0 mm" in said(fresh) and "Proposed: −0.04 mm." in said(fresh)
    later = propose(OFFSET, (was_set(-0.03, 2),), 1, PROUD)
    assert (later.now, later.base, later.new) == (-0.03, -0.03, -0.07)
    assert "In force: −0.03 mm, since 2026-11-25." in said(later)


def test_a_part_that_came_out_small_is_drawn_larger():
    assert propose(DRAWN, (), 1, SHORT).new == pytest.approx(1 / 0.9975, abs=5e-6)


def test_a_part_of_no_size_asks_for_nothing():
    with pytest.raises(InputError) as refused:
        propose(DRAWN, (), 1, replace(SHORT, estimate=replace(SHORT.estimate, value=-1.0)))
    assert refused.value.field == "scale"


def test_a_correction_starts_from_what_was_in_force_when_the_piece_was_made():
    proposal = propose(OFFSET, (was_set(-0.03, 2), was_set(-0.05, 7)), 1, PROUD)
    assert (proposal.now, proposal.base, proposal.new) == (-0.05, -0.03, -0.07)
    assert "−0.03 mm was in force when its piece was made and was changed since" in said(proposal)


def test_a_correction_that_is_in_force_is_not_proposed_again():
    proposal = propose(OFFSET, (was_set(-0.04, 7),), 1, PROUD)
    assert proposal.new is None
    assert "in force already" in said(proposal)


def test_what_is_within_its_uncertainty_is_left_alone():
    lost = Read(13, Estimate("wall_outset", 0.004, 0.004, 30.0, "mm"), AT)
    proposal = propose(OFFSET, (), 1, lost)
    assert proposal.new is None and "change nothing" in said(proposal)


def test_without_a_trial_or_an_old_value_nothing_is_made_up():
    proposal = propose(settable("extruder_steps_mm"), (), None, None)
    assert (proposal.now, proposal.base, proposal.new, proposal.because) == (None, None, None, None)
    assert "Nobody wrote down" in said(proposal)


UNKNOWN = replace(OFFSET, usual=None)


def test_an_unknown_base_is_no_zero():
    proposal = propose(UNKNOWN, (), 1, PROUD)
    assert (proposal.now, proposal.base, proposal.new, proposal.because) == (None, None, None, None)
    assert "Cannot tell yet: nobody wrote down what was set when its piece was made" in said(proposal)
    assert "Look up contour offset in the controller" in said(proposal)


def test_what_was_written_down_after_the_piece_was_made_is_no_base():
    proposal = propose(UNKNOWN, (was_set(-0.03, 7),), 1, PROUD)
    assert (proposal.now, proposal.base, proposal.new) == (-0.03, None, None)
    assert "Cannot tell yet: −0.03 mm was written down after its piece was made" in said(proposal)
    assert propose(UNKNOWN, (was_set(-0.03, 2),), 1, PROUD).new == -0.07


def test_a_decision_carries_what_the_next_piece_should_show():
    proposal = propose(OFFSET, (was_set(-0.03, 2),), 1, PROUD)
    made = decided(OFFSET, proposal, (1, 1), -0.07, str(proposal.because), PROUD)
    assert (made.machine_id, made.lot_id, made.name, made.old, made.new) == (1, 1, "contour_offset", -0.03, -0.07)
    assert made.prediction == {"name": "wall_outset", "value": 0.0, "U": PROUD.estimate.U, "unit": "mm"}
    assert made.because.endswith("in trial 13")
    own = decided(OFFSET, proposal, (1, 1), -0.06, "half of it", PROUD)
    assert own.prediction == {}


def test_what_belongs_to_the_machine_is_set_for_every_lot():
    kind = settable("axis_scale_x")
    assert decided(kind, propose(kind, (), 1, None), (1, 1), 1.002, "pulley of 19.96 teeth", None).lot_id is None


@pytest.mark.parametrize(
    ("place", "new", "field", "words"),
    [((1, None), -0.04, "setting", "belongs to a filament lot"), ((1, 1), 0.0, "new", "in force already")],
)
def test_refusals(place, new, field, words):
    with pytest.raises(InputError, match=words) as refused:
        decided(OFFSET, propose(OFFSET, (), 1, None), place, new, "why", None)
    assert refused.value.field == field


def test_a_value_of_the_lot_goes_before_that_of_the_machine():
    of_machine = replace(was_set(-0.01, 3), lot_id=None)
    assert propose(OFFSET, (was_set(-0.03, 2), of_machine), 1, PROUD).now == -0.03
    assert propose(OFFSET, (of_machine,), 1, PROUD).base == -0.01
