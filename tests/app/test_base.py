"""What all pages share: the four methods in order, problems in words, the draft and the kept trial."""

from __future__ import annotations

import pytest

from app.pages.base import Page
from core.errors import StoreError
from core.records.rows import Lot, Machine, TrialState
from tests.app.plainpage import PlainPage


@pytest.fixture
def page(qtbot, context):
    page = PlainPage(context)
    qtbot.addWidget(page)
    page.show()
    return page


@pytest.fixture
def notices(context):
    said = []
    context.notice.connect(lambda text, level: said.append((text, level)))
    return said


def test_reads_computes_and_shows(page):
    page.field.setText("21")
    page.recompute()
    assert page.shows == "twice: 42"
    assert page.result == 21


def test_what_cannot_answer_is_said_and_leaves_no_result(page):
    page.field.setText("21")
    page.recompute()
    page.field.setText("x")
    page.recompute()
    assert page.problem == "raw 0: “x” is no number; type digits."
    assert page.result is None


def test_the_draft_is_found_again(qtbot, context, page):
    page.field.setText("12")
    page.save_draft()
    other = PlainPage(context)
    qtbot.addWidget(other)
    other.show()
    assert other.field.text() == "12"
    assert other.draft.id == page.draft.id


def test_an_untouched_page_leaves_no_trial(page, store):
    assert page.save_draft()
    assert store.trials() == ()


def test_an_unchanged_draft_is_not_written_again(page, store):
    page.field.setText("12")
    page.save_draft()
    before = page.draft
    page.save_draft()
    assert page.draft is before


def test_keep_stores_the_estimates_and_tells(qtbot, context, page, store, notices):
    page.field.setText("7")
    page.save_draft()
    with qtbot.waitSignal(context.kept) as told:
        page.keep()
    (kept,) = told.args
    assert kept.state == TrialState.KEPT
    assert store.trial(kept.id).estimates[0].value == 14.0
    assert notices[-1] == (f"Trial {kept.id} kept.", "good")
    assert store.draft("plain") is None


def test_what_has_no_result_is_not_kept(page, store):
    page.field.setText("x")
    page.keep()
    assert page.problem
    assert all(trial.state != TrialState.KEPT for trial in store.trials())


def test_a_draft_begun_before_the_machine_was_picked_moves_to_it(context, page, store):
    machine = store.add_machine(Machine("Kestrel"))
    page.field.setText("5")
    page.save_draft()
    context.select_machine(machine.id)
    assert page.field.text() == "5"
    assert store.draft("plain", machine.id).readings["raw"] == ["5"]
    assert store.draft("plain") is None


def test_each_machine_and_lot_has_a_draft_of_its_own(context, page, store):
    first, second = (store.add_machine(Machine(name)) for name in ("Kestrel", "Merlin"))
    lot = store.add_lot(Lot("slate 7", "PETG"))
    context.select_machine(first.id)
    page.field.setText("1")
    page.save_draft()
    context.select_machine(second.id)
    assert page.field.text() == ""
    page.field.setText("2")
    page.save_draft()
    context.select_machine(first.id)
    assert page.field.text() == "1"
    context.select_lot(lot.id)
    assert page.field.text() == "1", "a draft without lot moves along"
    context.select_lot(None)
    assert page.field.text() == ""


def test_readings_of_a_page_out_of_view_stay_with_their_machine(context, page, store):
    first, second = (store.add_machine(Machine(name)) for name in ("Kestrel", "Merlin"))
    context.select_machine(first.id)
    page.field.setText("1")
    page.save_draft()
    page.hide()
    context.select_machine(second.id)
    assert page.save_draft()
    assert store.draft("plain", second.id) is None
    page.show()
    assert page.field.text() == ""


@pytest.mark.parametrize("method", ["draft", "save_draft", "keep"])
def test_a_store_that_refuses_is_said_and_the_readings_stay(monkeypatch, qtbot, context, store, notices, method):
    def refuse(*_arguments, **_named):
        raise StoreError("The disk is full; make room, then try again.")

    monkeypatch.setattr(store, method, refuse)
    page = PlainPage(context)
    qtbot.addWidget(page)
    page.show()
    page.field.setText("3")
    saved = page.save_draft()
    page.keep()
    assert ("The disk is full; make room, then try again.", "error") in notices
    assert saved is (method != "save_draft")
    assert page.field.text() == "3"


def test_a_trial_kept_elsewhere_is_refused_in_words(page, store):
    page.field.setText("3")
    page.save_draft()
    page.recompute()
    store.keep(page.draft)
    page.field.setText("4")
    page.save_draft()
    assert page.problem.startswith("id")
    page.keep()
    assert page.problem.startswith("id")


def test_a_problem_without_a_place_goes_to_the_notice_line(qtbot, context, notices):
    page = Page(context)
    qtbot.addWidget(page)
    page.show_problem("raw", None, "Not enough readings.")
    assert notices == [("Not enough readings.", "warning")]


def test_the_four_methods_must_be_filled_in(qtbot, context):
    page = Page(context)
    qtbot.addWidget(page)
    for method in (page.read, lambda: page.compute(None), lambda: page.show_result(None), page.record):
        with pytest.raises(NotImplementedError):
            method()
