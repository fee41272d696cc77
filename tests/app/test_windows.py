"""One window in the place of another: what stands against it, and what stays. More of it is seen in test_main."""

from __future__ import annotations

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QMainWindow

from app.newrows import NewLot
from app.windows import unfinished_form
from core.records.rows import Lot, Machine, Trial
from core.records.store import open_store
from tests.demo.opened import named
from tests.walkthrough.hands import begun


def test_what_is_typed_in_a_form_that_stores_no_draft_is_not_lost(qtbot, context):
    window = QMainWindow()
    qtbot.addWidget(window)
    form = NewLot(context, window)
    assert unfinished_form(window) == ""
    field = form.form.field("name")
    field.setText("Slate")
    assert unfinished_form(window).startswith(f"“{field.accessibleName()}” is typed in a form that is not finished;")
    field.clear()
    assert unfinished_form(window) == ""


def test_another_language_or_unit_keeps_page_picks_and_trial_in_the_own_shop_and_in_the_demo_shop(qapp, tmp_path):
    """One test: the window is opened once, and goes on from one view to the next as a person takes it there."""
    own = open_store(tmp_path / "own.sqlite")
    machine, lot = own.add_machine(Machine("Heron")), own.add_lot(Lot("Flint 2", "PLA"))
    kept = [own.keep(Trial("diameter", machine.id, lot.id)) for _ in range(2)]
    own.close()
    with begun(qapp, tmp_path, "en") as hands:
        hands.window.context.select_machine(machine.id)
        hands.window.context.select_lot(lot.id)
        hands.enter_page("diameter")
        assert seen_in(hands) == ("Heron", "Flint 2", None)  # new readings, and so it stays
        change(hands, "language", "de")
        assert seen_in(hands) == ("Heron", "Flint 2", None)
        hands.page("diameter").picker.choose(kept[0].id)
        change(hands, "lengths", "inch")
        assert seen_in(hands) == ("Heron", "Flint 2", kept[0].id)

        hands.window.demo_asked.emit("open")
        hands.await_window(lambda window: window.is_demo)
        context = hands.window.context
        context.select_machine(named(context.store.machines(), "Amsel"))
        context.select_lot(named(context.store.lots(), "Chalk 12"))
        context.select_instrument(named(context.store.instruments(), "Caliper 1"))
        hands.enter_page("reversal")
        hands.enter_page("sizeerror")
        page = hands.page("sizeerror")
        older = page.picker.kept[3].id
        assert page.kept_trial.id == page.picker.kept[0].id != older
        page.picker.choose(older)
        change(hands, "lengths", "mm")
        assert seen_in(hands) == ("Amsel", "Chalk 12", older)
        assert hands.window.context.instrument.name == "Caliper 1"
        hands.page("sizeerror").begin_anew()
        change(hands, "language", "en")
        assert seen_in(hands) == ("Amsel", "Chalk 12", None)


def test_the_first_steps_are_read_on_in_the_demo_shop_at_the_same_place(qapp, tmp_path):
    """Their first step leads there: whoever follows it must not lose the text."""
    with begun(qapp, tmp_path, "en") as hands:
        start = hands.page("board").start
        hands.click(start.steps)
        bar = hands.window.help.pane.text.verticalScrollBar()
        assert bar.maximum() > 1000
        bar.setValue(bar.maximum() // 2)
        hands.click(start.demo)
        hands.await_window(lambda window: window.is_demo)
        pane = hands.window.help.pane
        assert pane.isVisible() and pane.heading.text() == "Help: First steps"
        assert abs(share(pane) - 0.5) < 0.05
        assert not pane.isAncestorOf(hands.window.focusWidget())
        hands.press(Qt.Key.Key_F1)
        assert not pane.isVisible()
        hands.window.demo_asked.emit("home")
        hands.await_window(lambda window: not window.is_demo)
        pane = hands.window.help.pane
        assert not pane.isVisible()
        hands.press(Qt.Key.Key_F1)
        assert pane.isVisible() and pane.heading.text() == "Help: First steps"
        assert abs(share(pane) - 0.5) < 0.05


def share(pane):
    bar = pane.text.verticalScrollBar()
    return bar.value() / bar.maximum()


def change(hands, what, choice):
    before, page = hands.window, hands.window.rail.marked()
    before.view_asked.emit(what, choice)
    hands.await_window(lambda window: window is not before)
    assert hands.window.rail.marked() == page


def seen_in(hands):
    page, context = hands.window.page_in_view(), hands.window.context
    return context.machine.name, context.lot.name, page.kept_trial.id if page.kept_trial else None
