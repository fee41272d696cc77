"""What all pages share: the four methods in order, problems in words, the draft and the kept trial."""

from __future__ import annotations

from dataclasses import replace

import pytest

from app.pages.base import Page
from core.errors import StoreError
from core.records.rows import Lot, Machine, SettingInForce, Trial, TrialState
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
    said = [text for text, level in notices if level == "error"]
    assert said
    assert all(text.startswith("The disk is full; make room, then try again.") for text in said)
    assert saved is (method != "save_draft")
    assert page.field.text() == "3"


def test_after_a_trial_was_kept_elsewhere_the_next_reading_begins_another_one(page, store):
    page.field.setText("3")
    page.save_draft()
    kept = store.keep(page.draft)
    page.field.setText("4")
    assert page.save_draft()
    assert page.draft.id != kept.id
    assert store.trial(page.draft.id).readings == {"raw": ["4"]}
    assert store.trial(kept.id).readings == {"raw": ["3"]}


def test_keeping_a_trial_that_was_kept_elsewhere_is_refused_in_words(page, store):
    page.field.setText("3")
    page.save_draft()
    page.recompute()
    store.keep(page.draft)
    page.keep()
    assert page.problem.startswith("id")


def test_readings_typed_in_another_window_are_not_written_over(page, store):
    """Two windows on one database: the second one is refused in words and keeps what is typed on its screen."""
    other = store.save_draft(Trial(page.subject, readings={"raw": ["1"]}))
    page.field.setText("2")
    assert not page.save_draft()
    assert page.unsaved
    assert store.trial(other.id).readings == {"raw": ["1"]}
    assert page.field.text() == "2"


def test_readings_changed_in_another_window_since_are_not_written_over(page, store):
    page.field.setText("1")
    page.save_draft()
    store.save_draft(replace(page.draft, readings={"raw": ["1", "9"]}))
    page.field.setText("2")
    assert not page.save_draft()
    assert store.trial(page.draft.id).readings == {"raw": ["1", "9"]}


def test_readings_not_stored_yet_stay_when_another_machine_is_picked(monkeypatch, page, store, context, notices):
    machine = store.add_machine(Machine("A"))
    save = store.save_draft

    def refuse(*_arguments):
        raise StoreError("The database is locked; nothing was written.")

    monkeypatch.setattr(store, "save_draft", refuse)
    page.field.setText("3")
    assert not page.save_draft()
    context.select_machine(machine.id)
    assert page.field.text() == "3"
    assert "not stored yet" in notices[-1][0]
    monkeypatch.setattr(store, "save_draft", save)
    assert page.save_draft()
    assert store.draft(page.subject).readings == {"raw": ["3"]}
    assert store.draft(page.subject, machine.id) is None


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


class SettingPage(PlainPage):
    """Puts a factor in force that was corrected from 1, whatever is in force."""

    def settings(self):
        return (SettingInForce(self.context.machine.id, None, "flow_factor", 1.0, 1.02, "1"),)


def test_a_change_that_did_not_start_from_what_was_in_force_is_said_when_kept(qtbot, context, store, notices):
    machine = store.add_machine(Machine("Bramble"))
    context.select_machine(machine.id)
    page = SettingPage(context)
    qtbot.addWidget(page)
    page.show()
    page.field.setText("21")
    page.keep()
    put = f"Trial {store.trials(subject='plain')[0].id} kept. In force now: flow factor 1 → 1.02."
    assert notices[-1] == (put, "good")  # nothing was set before
    page.field.setText("22")
    page.keep()
    text, level = notices[-1]
    assert level == "warning"
    assert "flow factor: the correction started from 1, but 1.02 was in force when the trial was begun." in text
