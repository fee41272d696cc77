"""Hundreds of random things done to the window leave no traceback and no warning; a fault would be found and told."""

from __future__ import annotations

import pytest

from tests.fuzz.run import fuzz


@pytest.mark.timeout(600)  # half a minute of a processor; a busy machine takes longer
def test_random_hands_find_no_fault(qapp, tmp_path):
    assert fuzz(tmp_path, events=250, seed=20) == []


def test_a_fault_would_be_found(qapp, tmp_path, monkeypatch):
    def fail(_page):
        raise ZeroDivisionError("planted")

    monkeypatch.setattr("app.pages.part_size.sizeerror.SizeErrorPage.answer_change", fail)
    faults = fuzz(tmp_path, events=60, seed=2)
    assert any("planted" in fault and "after:" in fault for fault in faults)
