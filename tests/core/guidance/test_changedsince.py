"""What was changed since a piece was made; that it starts from its own base is common practice, no source."""

from __future__ import annotations

from datetime import UTC, datetime, timedelta

import pytest

from core.errors import InputError
from core.guidance.changedsince import changed_since
from core.records.rows import SettingInForce, Trial

AT = datetime(2026, 11, 25, 9, tzinfo=UTC)
PIECE = Trial("sizeerror", 1, 1, started_at=AT + timedelta(hours=5))


def was_set(name, old, new, hour, lot_id=1):
    return SettingInForce(1, lot_id, name, old, new, "1", AT + timedelta(hours=hour), id=hour, serial=hour)


def test_nothing_set_is_no_change():
    found = changed_since((), PIECE)
    assert (found.offset_mm, found.factor_ratio) == (0.0, {"x": 1.0, "y": 1.0})


def test_what_was_set_before_the_piece_is_in_the_piece_already():
    before = (was_set("contour_offset", 0.0, -0.02, 1), was_set("shrink_allowance_x", 1.0, 1.003, 2))
    found = changed_since(before, PIECE)
    assert (found.offset_mm, found.factor_ratio["x"]) == (0.0, 1.0)
    after = (was_set("contour_offset", -0.02, -0.05, 6), was_set("shrink_allowance_x", 1.003, 1.004, 7))
    found = changed_since((*after, *before), PIECE)
    assert found.offset_mm == pytest.approx(-0.03)
    assert found.factor_ratio == pytest.approx({"x": 1.004 / 1.003, "y": 1.0})


def test_factors_of_lot_and_machine_multiply():
    after = (was_set("shrink_allowance_y", 1.0, 1.004, 6), was_set("axis_scale_y", 1.0, 0.999, 7, None))
    assert changed_since(after, PIECE).factor_ratio == pytest.approx({"x": 1.0, "y": 1.004 * 0.999})


def test_a_base_that_is_not_on_record_is_what_the_first_change_started_from():
    after = (was_set("contour_offset", -0.01, -0.04, 6), was_set("contour_offset", -0.04, -0.05, 7))
    assert changed_since(after, PIECE).offset_mm == pytest.approx(-0.04)
    unknown = (was_set("contour_offset", None, -0.04, 6),)
    assert changed_since(unknown, PIECE).offset_mm == pytest.approx(-0.04)
    assert changed_since(unknown, Trial("sizeerror", 1, 1)).offset_mm == pytest.approx(-0.04)


def test_what_another_lot_was_given_counts_for_nothing():
    other = (was_set("contour_offset", 0.0, -0.05, 6, lot_id=2),)
    assert changed_since(other, PIECE).offset_mm == 0.0


def test_a_factor_that_was_none_is_refused():
    with pytest.raises(InputError, match="The factor 0, in force before, cannot be") as refused:
        changed_since((was_set("axis_scale_y", 0.0, 0.999, 7, None),), PIECE)
    assert refused.value.field == "axis_scale"
