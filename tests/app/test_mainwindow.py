"""The window as a person meets it: pages by keyboard, pickers with "New …", notices, keeping, closing."""

from __future__ import annotations

from dataclasses import replace

import pytest
from PySide6.QtCore import QSettings, Qt
from PySide6.QtGui import QAccessible
from PySide6.QtWidgets import QApplication, QLabel, QMessageBox, QPushButton

from app.__main__ import report_bug
from app.context import Context, Level
from app.mainwindow import MainWindow
from app.theme import DARK, LIGHT, apply_theme, tokens
from core.errors import StoreError
from core.records.rows import Instrument, Lot, Machine, Trial
from tests.app.plainpage import PLAIN_PAGES, OtherPage, PlainPage


@pytest.fixture
def settings(tmp_path):
    return QSettings(str(tmp_path / "window.ini"), QSettings.Format.IniFormat)


@pytest.fixture
def empty_window(qtbot, monkeypatch, settings):
    """The window as first painted, before the database is open."""
    monkeypatch.setattr("app.mainwindow.PAGES", PLAIN_PAGES)
    monkeypatch.setattr("app.rail.PAGES", PLAIN_PAGES)
    monkeypatch.setattr("app.finder.PAGES", PLAIN_PAGES)
    window = MainWindow(settings)
    qtbot.addWidget(window)
    with qtbot.waitSignal(window.painted):
        window.show()
    window.activateWindow()
    qtbot.waitUntil(window.isActiveWindow)
    return window


@pytest.fixture
def window(qtbot, empty_window, context):
    with qtbot.waitSignal(empty_window.ready):
        empty_window.open_shop(context, "drive")
    return empty_window


def shown_text(widget) -> str:
    return "\n".join(label.text() for label in widget.findChildren(QLabel) if label.isVisible())


def page_in_view(window):
    return next(page for page in window.findChildren(PlainPage) if page.isVisible())


def add_by_popover(qtbot, picker, *texts: str):
    """Choose the last entry of a picker by keyboard, type into the fields one after the other, Enter after each."""
    picker.setFocus()
    qtbot.keyClick(picker, Qt.Key.Key_Down)
    entries = picker.view()
    qtbot.waitUntil(entries.isVisible)
    qtbot.keyClick(entries, Qt.Key.Key_End)
    qtbot.keyClick(entries, Qt.Key.Key_Return)
    qtbot.wait(1)  # the form opens once the key is through
    popover = QApplication.activePopupWidget()
    for text in texts:
        qtbot.keyClicks(QApplication.focusWidget(), text)
        qtbot.keyClick(QApplication.focusWidget(), Qt.Key.Key_Return)
    return popover


def test_before_the_database_is_open_the_window_stands_and_waits(empty_window):
    assert "Opening the database…" in shown_text(empty_window)
    assert not empty_window.pickers.machine.isEnabled()
    assert empty_window.windowTitle() == "Slipgauge"


def test_keys_before_the_database_is_open_do_no_harm(qtbot, empty_window):
    qtbot.keyClick(empty_window, Qt.Key.Key_2, Qt.KeyboardModifier.ControlModifier)
    qtbot.keyClick(empty_window, Qt.Key.Key_S, Qt.KeyboardModifier.ControlModifier)
    assert "Opening the database…" in shown_text(empty_window)


def test_the_first_page_has_the_keyboard(window):
    page = page_in_view(window)
    assert type(page) is PlainPage
    assert QApplication.focusWidget() is page.field


def test_pages_are_reached_by_ctrl_and_number_and_made_when_first_shown(qtbot, window):
    assert not window.findChildren(OtherPage)
    qtbot.keyClick(window, Qt.Key.Key_2, Qt.KeyboardModifier.ControlModifier)
    page = page_in_view(window)
    assert type(page) is OtherPage
    assert QApplication.focusWidget() is page.field
    assert window.rail.pages["other"].isChecked()
    assert not window.rail.pages["drive"].isChecked()


def test_arrows_in_the_list_show_pages_and_keep_the_keyboard_there(qtbot, window):
    first, second = window.rail.pages["drive"], window.rail.pages["other"]
    first.setFocus()
    qtbot.keyClick(first, Qt.Key.Key_Down)
    assert type(page_in_view(window)) is OtherPage
    assert QApplication.focusWidget() is second
    qtbot.keyClick(second, Qt.Key.Key_Space)
    assert QApplication.focusWidget() is page_in_view(window).field


def test_the_title_names_the_machine(window, context, store):
    context.select_machine(store.add_machine(Machine("Kestrel")).id)
    assert window.windowTitle() == "Kestrel – Slipgauge"


def test_a_machine_added_elsewhere_appears_in_the_picker(window, context, store):
    machine = store.add_machine(Machine("Kestrel"))
    context.machines_changed.emit()
    context.select_machine(machine.id)
    assert window.pickers.machine.currentText() == "Kestrel"


def test_new_machine_goes_to_its_page_with_nothing_picked(qtbot, window, context, store):
    context.select_machine(store.add_machine(Machine("Kestrel")).id)
    context.machines_changed.emit()
    window.show_page("other")
    add_by_popover(qtbot, window.pickers.machine)
    assert context.machine is None
    assert window.pickers.machine.currentText() == "none"
    assert type(page_in_view(window)) is PlainPage


def test_picking_an_existing_machine(qtbot, window, context, store):
    store.add_machine(Machine("Kestrel"))
    context.machines_changed.emit()
    picker = window.pickers.machine
    qtbot.keyClick(picker, Qt.Key.Key_Down)
    qtbot.keyClick(picker.view(), Qt.Key.Key_Down)
    qtbot.keyClick(picker.view(), Qt.Key.Key_Return)
    assert context.machine.name == "Kestrel"


def test_a_new_lot_is_typed_and_picked(qtbot, window, context, store):
    popover = add_by_popover(qtbot, window.pickers.lot, "slate 7", "PETG", "slate", "Fell mill", "24/7", "", "")
    assert not popover.isVisible()
    typed = Lot("slate 7", "PETG", "slate", maker="Fell mill", batch="24/7", nominal_diameter_mm=1.75)
    assert [replace(lot, id=None) for lot in store.lots()] == [typed]
    assert context.lot.name == "slate 7"
    assert window.pickers.lot.currentText() == "slate 7"


def test_a_lot_without_material_is_refused_at_the_field(qtbot, window, store):
    popover = add_by_popover(qtbot, window.pickers.lot, "slate 7", "", "", "", "", "", "")
    assert "Nothing is typed here yet; this one is needed." in shown_text(popover)
    assert QApplication.focusWidget() is popover.form.field("material")
    assert store.lots() == ()
    qtbot.keyClick(popover, Qt.Key.Key_Escape)
    assert not popover.isVisible()


def test_a_second_lot_of_the_same_name_is_refused_at_the_field(qtbot, window, context, store):
    store.add_lot(Lot("slate 7", "PETG"))
    popover = add_by_popover(qtbot, window.pickers.lot, "slate 7", "PETG", "", "", "", "", "")
    assert QApplication.focusWidget() is popover.form.field("name")
    assert "slate 7" in shown_text(popover)
    assert context.lot is None
    popover.hide()


def test_what_was_typed_and_not_added_is_still_there_the_next_time(qtbot, window):
    popover = add_by_popover(qtbot, window.pickers.lot, "slate 7")
    qtbot.keyClick(popover, Qt.Key.Key_Escape)
    again = add_by_popover(qtbot, window.pickers.lot)
    assert again is popover
    assert popover.form.field("name").text() == "slate 7"
    popover.hide()


def test_a_new_instrument_has_the_usual_values_of_a_caliper(qtbot, window, context):
    popover = add_by_popover(qtbot, window.pickers.instrument, "C2", "", "", "", "", "", "", "")
    assert not popover.isVisible()
    usual = Instrument("C2", "caliper", 0.01, u_outside_zero_mm=0.012, u_inside_zero_mm=0.015, u_scale_ratio=0.0)
    assert replace(context.instrument, id=None) == usual


def test_the_usual_values_are_marked_as_without_source(qtbot, window):
    popover = add_by_popover(qtbot, window.pickers.instrument)
    assert "common practice" in shown_text(popover)
    assert "no source: edit" in shown_text(popover)
    popover.hide()


@pytest.mark.parametrize(("texts", "field"), [
    (("C2", "", "", "", "", "", "0.008", ""), "sd_hand_dof"),
    (("C2", "", "", "", "", "", "", "9"), "sd_hand_mm"),
])  # fmt: skip
def test_a_repeatability_needs_its_degrees_of_freedom(qtbot, window, store, texts, field):
    popover = add_by_popover(qtbot, window.pickers.instrument, *texts)
    assert QApplication.focusWidget() is popover.form.field(field)
    assert store.instruments() == ()
    popover.hide()


def test_a_store_that_refuses_a_lot_is_heard_and_the_form_stays(qtbot, monkeypatch, window, store):
    def refuse(_lot):
        raise StoreError("The disk is full; make room, then try again.")

    monkeypatch.setattr(store, "add_lot", refuse)
    popover = add_by_popover(qtbot, window.pickers.lot, "slate 7", "PETG", "", "", "", "", "")
    assert popover.isVisible()
    assert "! The disk is full" in shown_text(window.notices)
    popover.hide()


def test_an_open_list_shows_its_last_line_whole(qtbot, window, store, context):
    store.add_lot(Lot("Slate 7", "PETG"))
    picker = window.pickers.lot
    picker.showPopup()
    view = picker.view()
    last = view.model().index(picker.count() - 1, 0)
    qtbot.waitUntil(lambda: view.viewport().rect().contains(view.visualRect(last).adjusted(0, 0, -view.width(), 0)))
    assert picker.itemText(last.row()) == "New lot…" and view.verticalScrollBar().maximum() == 0
    picker.hidePopup()


def test_pickers_have_names_for_screen_readers(window):
    pickers = window.pickers
    names = [picker.accessibleName() for picker in (pickers.machine, pickers.lot, pickers.instrument)]
    assert names == ["Machine", "Filament lot", "Instrument"]


def test_ctrl_s_keeps_the_page_in_view(qtbot, window, store):
    qtbot.keyClicks(page_in_view(window).field, "21")
    qtbot.keyClick(window, Qt.Key.Key_S, Qt.KeyboardModifier.ControlModifier)
    (trial,) = store.trials()
    assert trial.kept_at is not None
    assert f"✓ Trial {trial.id} kept." in shown_text(window.notices)


def test_what_was_only_told_goes_with_its_page_and_what_matters_stays(qtbot, window, context, monkeypatch):
    monkeypatch.setattr("app.notices._MOMENT_MS", 1)
    for level, left in ((Level.INFO, ""), (Level.GOOD, "✓ Said."), (Level.ERROR, "! Said.")):
        context.say("Said.", level)
        qtbot.wait(5)
        window.enter_page("other")
        assert shown_text(window.notices) == left


def test_what_is_told_on_the_way_to_another_page_is_read_there(window, context):
    context.say("Planned.")
    window.enter_page("other")
    assert shown_text(window.notices) == "Planned."


def test_keeping_may_open_another_page(qtbot, monkeypatch, window, context):
    monkeypatch.setattr(page_in_view(window), "keep", lambda: context.page_asked.emit("other"))
    qtbot.keyClick(window, Qt.Key.Key_S, Qt.KeyboardModifier.ControlModifier)
    assert isinstance(page_in_view(window), OtherPage)


def test_one_key_leads_back_to_the_walk(qtbot, window, context):
    asked = []
    context.page_asked.disconnect()
    context.page_asked.connect(asked.append)
    assert window.pickers.walk.accessibleName() == "Back to the walk"
    assert window.pickers.walk.shortcut().toString() == "F9"
    qtbot.mouseClick(window.pickers.walk, Qt.MouseButton.LeftButton)
    assert asked == ["walk"]


def test_closing_commits_what_is_still_being_typed(qtbot, window, store):
    qtbot.keyClicks(page_in_view(window).field, "21")
    with qtbot.waitSignal(window.closed):
        window.close()
    assert store.draft("plain").readings["raw"] == ["21"]


def test_closing_asks_only_when_readings_would_be_lost(qtbot, monkeypatch, window, store):
    def refuse(_trial, _seen):
        raise StoreError("The disk is full; make room, then try again.")

    monkeypatch.setattr(store, "save_draft", refuse)
    qtbot.keyClicks(page_in_view(window).field, "21")
    assert not window.close()
    box = window.findChild(QMessageBox)
    stay = next(button for button in box.findChildren(QPushButton) if "Stay" in button.text())
    qtbot.mouseClick(stay, Qt.MouseButton.LeftButton)
    assert window.isVisible()
    monkeypatch.undo()


def test_page_machine_and_geometry_are_remembered(window, context, store, settings):
    context.select_machine(store.add_machine(Machine("Kestrel")).id)
    window.show_page("other")
    window.close()
    assert settings.value("page") == "other"
    assert settings.value("machine") == "Kestrel"
    assert settings.value("geometry") is not None


def test_a_database_that_cannot_open_is_said_in_the_body_with_the_ways_out(qtbot, empty_window, context):
    empty_window.refuse("shop.sqlite is damaged. Put a backup in its place.")
    assert "shop.sqlite is damaged. Put a backup in its place." in shown_text(empty_window)
    assert "Nothing was changed or replaced." in shown_text(empty_window)
    retry = QApplication.focusWidget()
    with qtbot.waitSignal(empty_window.retried):
        qtbot.keyClick(retry, Qt.Key.Key_Space)
    empty_window.refuse("shop.sqlite is damaged. Put a backup in its place.")
    assert "Tried again" in shown_text(empty_window.notices)
    empty_window.open_shop(context, "drive")
    assert page_in_view(empty_window).isVisible()


def test_a_fault_of_the_program_is_shown_and_written_out(window, capsys):
    error = ZeroDivisionError("division by zero")
    report_bug(window, type(error), error, None)
    assert "! A fault of this program: ZeroDivisionError: division by zero." in shown_text(window.notices)
    assert "ZeroDivisionError" in capsys.readouterr().err


def test_a_refusal_of_the_store_that_nobody_expected_is_shown_in_its_own_words(window, capsys):
    error = StoreError("Another program holds the database; try again.")
    report_bug(window, type(error), error, None)
    assert shown_text(window.notices) == "! Another program holds the database; try again."
    assert capsys.readouterr().err == ""


def test_the_other_theme_is_one_click_away(qtbot, qapp, window):
    window.theme_asked.connect(lambda dark: apply_theme(qapp, dark))
    assert window.rail.theme.text() == "Dark theme"
    qtbot.mouseClick(window.rail.theme, Qt.MouseButton.LeftButton)
    assert tokens() is DARK
    assert window.rail.theme.text() == "Light theme"
    qtbot.mouseClick(window.rail.theme, Qt.MouseButton.LeftButton)
    assert tokens() is LIGHT


def test_the_newest_trial_tells_what_to_resume(context, store):
    machine = store.add_machine(Machine("Kestrel"))
    lot = store.add_lot(Lot("slate 7", "PETG"))
    instrument = store.add_instrument(Instrument("C2"))
    page = PlainPage(context)
    context.select_machine(machine.id)
    context.select_lot(lot.id)
    page.field.setText("1")
    page.save_draft()
    later = Context(store)
    later.resume()
    assert (later.machine, later.lot, later.instrument) == (machine, lot, None)
    later.select_instrument(instrument.id)
    assert later.instrument == instrument


def resumed(store, machine_id=None):
    later = Context(store)
    later.resume(machine_id)
    return later.machine, later.instrument


def test_the_instrument_used_last_is_resumed_whatever_was_kept_with_it(store):
    first, second = store.add_machine(Machine("Kestrel")), store.add_machine(Machine("Otter"))
    old, new = store.add_instrument(Instrument("C1")), store.add_instrument(Instrument("C2"))
    store.keep(Trial("reversal", second.id, None, old.id))
    assert resumed(store, first.id) == (first, old)  # never used on this machine, but in this shop
    store.keep(Trial("reversal", first.id, None, new.id))
    store.keep(Trial("feed", first.id))  # read without an instrument
    assert resumed(store, first.id) == resumed(store) == (first, new)
    assert resumed(store, second.id) == (second, old)
    store.keep(Trial("instrument", instrument_id=old.id))  # a check belongs to no machine
    assert resumed(store, first.id) == resumed(store) == (first, old)
    for _ in range(20):
        store.keep(Trial("feed", second.id))
    assert resumed(store, first.id) == (first, new)


def test_nothing_is_cut_off_at_1000_x_700(window):
    window.resize(1000, 700)
    texts = [*window.pickers.findChildren(QLabel), window.rail.theme]
    for widget in texts:
        assert widget.width() >= widget.fontMetrics().horizontalAdvance(widget.text().replace("&", ""))
    assert window.minimumSizeHint().width() <= 1000


def test_a_page_can_ask_for_another(window, context):
    context.page_asked.emit("other")
    assert window.rail.marked() == "other"
    assert isinstance(next(page for page in window.findChildren(PlainPage) if page.isVisible()), OtherPage)


def test_only_the_heading_of_the_page_in_view_is_open(qtbot, window):
    rail = window.rail
    assert rail.pages["drive"].isVisible() and not rail.pages["other"].isVisible()
    qtbot.mouseClick(rail.headings["Second group"], Qt.MouseButton.LeftButton)
    assert rail.pages["other"].isVisible() and not rail.pages["drive"].isVisible()
    assert type(page_in_view(window)) is OtherPage


def test_a_click_on_the_page_in_view_leaves_it_marked(qtbot, window):
    qtbot.mouseClick(window.rail.pages["drive"], Qt.MouseButton.LeftButton)
    assert window.rail.pages["drive"].isChecked()
    assert window.rail.marked() == "drive"


def test_a_screen_reader_is_told_which_page_of_the_list_is_in_view(window):
    """One of several is chosen, as of radio buttons: among the pages, and among the headings."""
    for key, heading in (("other", "Second group"), ("drive", "First group")):
        window.enter_page(key)
        for lines, chosen in ((window.rail.pages, key), (window.rail.headings, heading)):
            told = {name: QAccessible.queryAccessibleInterface(button) for name, button in lines.items()}
            assert {one.role() for one in told.values()} == {QAccessible.Role.RadioButton}
            assert [name for name, one in told.items() if one.state().checked] == [chosen]


def test_a_heading_remembers_its_page(qtbot, window):
    window.rail.page_entered.disconnect(window.enter_page)
    asked = []
    window.rail.page_entered.connect(asked.append)
    qtbot.keyClick(window, Qt.Key.Key_2, Qt.KeyboardModifier.ControlModifier)
    assert asked == ["other"]
    assert window.rail.marked() == "drive"  # the window decides which page is in view


def test_ctrl_k_finds_a_page_or_a_machine(qtbot, window, context, store):
    machine = store.add_machine(Machine("Kestrel"))
    for text in ("other", "kestr"):
        qtbot.keyClick(window, Qt.Key.Key_K, Qt.KeyboardModifier.ControlModifier)
        box = window.rail.finder
        qtbot.waitUntil(box.hasFocus)
        qtbot.keyClicks(box, text)
        qtbot.keyClick(box, Qt.Key.Key_Return)
        qtbot.waitUntil(lambda: not window.rail.finder.hasFocus())
    assert type(page_in_view(window)) is OtherPage
    assert QApplication.focusWidget() is page_in_view(window).field
    assert context.machine == machine


def test_who_is_at_work_is_asked_after_the_first_unsigned_trial_and_once(qtbot, window, context, store):
    field = window.notices.author
    assert not field.isVisible()
    qtbot.keyClicks(page_in_view(window).field, "21")
    qtbot.keyClick(window, Qt.Key.Key_S, Qt.KeyboardModifier.ControlModifier)
    assert field.isVisible() and not field.hasFocus()  # nothing waits for it
    field.setFocus()
    qtbot.keyClicks(field, "Kim")
    qtbot.keyClick(field, Qt.Key.Key_Return)
    assert (context.store.author, field.isVisible()) == ("Kim", False)
    (note,) = store.events(kind="note")
    trial = next(trial for trial in store.trials() if trial.kept_at is not None)
    assert (note.trial_id, note.note, note.author) == (trial.id, "Kept by Kim.", "Kim")
    qtbot.keyClicks(page_in_view(window).field, "22")
    qtbot.keyClick(window, Qt.Key.Key_S, Qt.KeyboardModifier.ControlModifier)
    assert not field.isVisible() and {trial.author for trial in store.trials()} == {"", "Kim"}


def test_a_signature_that_cannot_be_stored_is_said(qtbot, monkeypatch, window, context, store):
    def refuse(_event):
        raise StoreError("The disk is full.")

    qtbot.keyClicks(page_in_view(window).field, "21")
    qtbot.keyClick(window, Qt.Key.Key_S, Qt.KeyboardModifier.ControlModifier)
    monkeypatch.setattr(store, "log_event", refuse)
    context.sign("Kim")
    assert "The disk is full." in shown_text(window.notices)
