"""The page *Walk* and the form that logs what happened: clicks in, sentences and events out."""

from __future__ import annotations

from dataclasses import replace

import pytest
from PySide6.QtCore import QSettings, Qt
from PySide6.QtWidgets import QApplication

from app.eventform import EventForm
from app.mainwindow import MainWindow
from app.pages.shop.walk import WalkPage
from core.errors import StoreError
from core.quantity import Estimate
from core.records.rows import Event, Instrument, Lot, Machine, Motion, Trial

BELT = {"kind": "belt", "pitch_mm": 2.0, "teeth": 20}
DRIVES = dict.fromkeys("xyz", BELT)


@pytest.fixture
def notices(context):
    said = []
    context.notice.connect(lambda text, level: said.append((level, text)))
    return said


@pytest.fixture
def shop(context, store):
    store.add_machine(Machine("Bramble", drives=DRIVES))
    store.add_lot(Lot("Slate 7", "PETG"))
    store.add_instrument(Instrument("Caliper 2"))
    context.select_machine(1)
    context.sign("Kim")
    return context


@pytest.fixture
def page(qtbot, shop):
    page = WalkPage(shop)
    qtbot.addWidget(page)
    page.resize(1040, 640)
    page.show()
    return page


def logged(store, kind=None):
    """The events but those of counted parts."""
    return [event for event in store.events(kind=kind) if "drives" not in event.detail]


def go_to(page, key):
    row = next(row for row, step in enumerate(page.steps.steps.steps) if step.step.key == key)
    page.steps.setCurrentIndex(page.steps.steps.index(row, 1))


def states(page):
    model = page.steps.steps
    return {model.steps[row].step.key: model.data(model.index(row, 2)) for row in range(model.rowCount())}


def reversal(x_mm=0.012, **changes):
    names = ("reversal_x", "reversal_y")
    return Trial("reversal", 1, estimates=tuple(Estimate(name, x_mm, 0.004, 9.0, "mm") for name in names), **changes)


def test_without_a_machine_it_says_how_to_begin(qtbot, context):
    page = WalkPage(context)
    qtbot.addWidget(page)
    page.show()
    assert "Choose a machine above, or add one" in page.card.text.text()
    assert page.steps.steps.rowCount() == 0
    assert not page.card.good.isVisible()
    page.keep()
    asked = []
    context.page_asked.connect(asked.append)
    assert page.card.open_button.text() == "&Add a machine"
    qtbot.mouseClick(page.card.open_button, Qt.MouseButton.LeftButton)
    assert asked == ["drive"]


def test_it_opens_at_the_next_step_with_what_to_do_and_why(page):
    assert page.progress.text() == "1 of 19 steps stand. Next: Mechanical health."
    assert page.card.text.heading.text() == "1  Mechanical health"
    says = page.card.text.text()
    assert "next" in says
    assert "with the machine switched off and unplugged" in says
    assert "A loose part moves differently each time" in says
    assert "both belts within 5 % in tone" in says
    assert states(page)["record"] == "✓ done"
    assert states(page)["mechanics"] == "▶ next"
    assert states(page)["yearly"] == "· not yet"


def test_parts_that_are_not_on_record_are_no_matter_of_a_check(page, shop, store):
    machine = store.add_machine(Machine("Heron", drives={"x": BELT}))
    shop.select_machine(machine.id)
    card = page.card
    assert "No drive parts on record for Y, Z." in card.text.text()
    assert card.open_button.text() == "&Open the page Drive" and card.open_button.objectName() == "primary"
    assert not card.good.isVisible() and not card.fault.isVisible()
    page.keep()
    assert logged(store) == []
    store.change_machine(replace(machine, drives=DRIVES))
    shop.machines_changed.emit()
    page.shown()
    go_to(page, "record")
    assert card.good.isVisible()


def test_a_step_that_waits_says_for_what(page):
    go_to(page, "reversal")
    assert "First: Mechanical health, Steps per millimetre, calculated, Instruments." in page.card.text.text()
    go_to(page, "gauges")
    assert "It could be done now; others come before it." in page.card.text.text()


def test_a_step_for_a_lot_asks_for_one(page, shop):
    go_to(page, "feed")
    assert "choose or add it above" not in page.card.text.text()
    go_to(page, "spool")
    assert "First: This step is for one filament lot: choose or add it above." in page.card.text.text()
    shop.select_lot(1)
    assert "choose or add it above" not in page.card.text.text()


def test_a_machine_of_another_kind_is_told_what_is_different(page, shop, store):
    store.add_machine(Machine("Otter", Motion.CROSSED_BELT, drives=DRIVES))
    shop.select_machine(2)
    assert "tension them alike" in page.card.text.text()


def test_a_check_by_hand_is_kept_with_its_numbers_who_and_when(qtbot, page, store):
    checks = page.card.checks
    for key in ("tone_x_hz", "tone_y_hz", "span_mm"):
        field = checks.tones.field(key)
        field.setFocus()
        qtbot.keyClicks(field, {"tone_x_hz": "100", "tone_y_hz": "103", "span_mm": "150"}[key])
        qtbot.keyClick(field, Qt.Key.Key_Return)
    assert checks.tension.text().startswith("Tension X 7.56 ± 0.82 N, Y 8.02 ± 0.87 N")
    page.keep()
    assert not logged(store, "checked")  # nothing is ticked
    for box in checks.items.values():
        box.click()
    qtbot.mouseClick(page.card.good, Qt.MouseButton.LeftButton)
    (event,) = logged(store, "checked")
    assert (event.machine_id, event.author, event.detail["step"]) == (1, "Kim", "mechanics")
    assert event.detail["tone_x_hz"] == 100.0
    assert event.detail["tension_y"]["unit"] == "N"
    assert states(page)["mechanics"] == "✓ done"
    assert page.card.text.heading.text().startswith("2")  # goes on to the next step
    go_to(page, "mechanics")
    assert "checked by Kim" in page.card.text.text()


def test_the_name_is_asked_once_here_too(qtbot, page, shop, store):
    shop.sign("")
    page.recompute()
    author = page.card.checks.words.field("author")
    assert author.isVisible()
    page.card.checks.words.set_texts({"note": "new", "author": "Bo"})
    qtbot.mouseClick(page.card.skip, Qt.MouseButton.LeftButton)
    assert logged(store, "skipped")[0].author == "Bo"
    assert not author.isVisible()


def test_what_is_not_ticked_is_named(page, notices):
    page.keep()
    assert "Not ticked: Frame screws are tight" in notices[-1][1]


def test_belts_of_different_tone_are_a_fault(qtbot, page, store):
    checks = page.card.checks
    for box in checks.items.values():
        box.click()
    checks.tones.set_texts({"tone_x_hz": "100", "tone_y_hz": "120", "span_mm": "", "mass_g_m": "8.4"})
    page.keep()
    assert "differ by more than 5 %" in checks.tones.field("tone_y_hz").accessibleDescription()
    qtbot.mouseClick(page.card.fault, Qt.MouseButton.LeftButton)
    assert "Say what is wrong" in checks.words.field("note").accessibleDescription()
    checks.words.set_texts({"note": "belt Y is tighter"})
    qtbot.mouseClick(page.card.fault, Qt.MouseButton.LeftButton)
    assert states(page)["mechanics"] == "↻ stale"
    assert "found a fault: belt Y is tighter" in page.card.text.text()
    assert logged(store, "checked")[0].detail == {"step": "mechanics", "fault": True}


def test_a_step_is_skipped_with_a_reason_and_taken_up_again(qtbot, page, store):
    qtbot.mouseClick(page.card.skip, Qt.MouseButton.LeftButton)
    assert "Say why it is skipped" in page.card.checks.words.field("note").accessibleDescription()
    page.card.checks.words.set_texts({"note": "new from the maker"})
    qtbot.mouseClick(page.card.skip, Qt.MouseButton.LeftButton)
    go_to(page, "mechanics")
    assert states(page)["mechanics"] == "– skipped"
    assert "new from the maker" in page.card.text.text()
    assert page.card.skip.text() == "Take it up a&gain"
    qtbot.mouseClick(page.card.skip, Qt.MouseButton.LeftButton)
    assert states(page)["mechanics"] == "▶ next"
    assert len(store.events(kind="skipped")) == 2


def test_a_measured_step_opens_its_page_with_machine_and_lot_set(qtbot, page, shop):
    asked = []
    shop.page_asked.connect(asked.append)
    go_to(page, "reversal")
    assert page.card.open_button.text() == "&Open the page Reversal"
    assert not page.card.good.isVisible()
    qtbot.mouseClick(page.card.open_button, Qt.MouseButton.LeftButton)
    go_to(page, "mechanics")
    page.steps.activated.emit(page.steps.currentIndex())
    go_to(page, "feed")
    page.steps.activated.emit(page.steps.currentIndex())
    assert asked == ["reversal", "feed"]
    assert shop.machine.name == "Bramble"


def test_a_kept_trial_shows_at_once_and_what_it_rests_on(page, shop, store):
    kept = store.keep(reversal())
    shop.kept.emit(kept)
    go_to(page, "reversal")
    assert "trial 1" in page.card.text.text()
    assert "reversal error X 0.0120 ± 0.0090 mm: within 0.05 mm, stop." in page.card.text.text()
    assert states(page)["reversal"] == "✓ done"


def test_it_goes_on_when_the_step_in_sight_was_done_on_its_page(page, shop, store):
    go_to(page, "reversal")
    page.hide()
    store.keep(reversal())
    page.show()
    assert page.card.text.heading.text() == "1  Mechanical health"  # the first that is to do
    go_to(page, "reversal")
    page.recompute()
    assert page.card.text.heading.text().startswith("4")  # looked at once it is done, it stays in sight


def test_tab_goes_through_the_ticks_before_the_numbers(qtbot, page):
    page.activateWindow()
    page.steps.activated.emit(page.steps.currentIndex())
    boxes = list(page.card.checks.items.values())
    for box in boxes:
        assert box.hasFocus()
        qtbot.keyClick(box, Qt.Key.Key_Tab)
    assert page.card.checks.tones.field("tone_x_hz").hasFocus()


def test_a_quick_check_mends_what_is_in_doubt(qtbot, page, shop, store):
    store.keep(Trial("bedplane", 1, estimates=(Estimate("bed_flatness", 0.05, 0.01, 9.0, "mm"),)))
    store.keep(Trial("squareness", 1, estimates=(Estimate("squareness_xy", 0.001, 0.0002, 9.0, "rad"),)))
    shop.logged.emit(store.log_event(Event("room", 1)))
    go_to(page, "square")
    assert states(page)["square"] == "? in doubt"
    assert "bed plane: Room 8 K warmer or colder" in page.card.text.text()
    qtbot.mouseClick(page.card.quick, Qt.MouseButton.LeftButton)
    assert "Say what was read" in page.card.checks.words.field("note").accessibleDescription()
    page.card.checks.words.set_texts({"note": "0.02 mm in the middle"})
    qtbot.mouseClick(page.card.quick, Qt.MouseButton.LeftButton)
    assert states(page)["square"] == "✓ done"
    assert logged(store, "checked")[0].detail == {"results": ["bed"]}


def test_a_trial_that_cannot_tell_is_in_doubt_with_what_would_tell(page, shop, store):
    shop.select_lot(1)
    untold = {"setting": "undecided", "action": "Weigh three pieces more.", "because": "1.017 ± 0.040"}
    found = (Estimate("flow_ratio_mass", 1.017, 0.02, 9.0, "1"),)
    kept = store.keep(Trial("mass", 1, 1, estimates=found, verdict=(untold,)))
    shop.kept.emit(kept)
    go_to(page, "flow")
    assert states(page)["flow"] == "? in doubt"
    assert f"Trial {kept.id} cannot tell yet: Weigh three pieces more." in page.card.text.text()
    assert page.card.open_button.isVisible() and not page.card.quick.isVisible()
    told = {"setting": "flow_factor", "action": "Set it to 0.983.", "because": "1.017 ± 0.008"}
    shop.kept.emit(store.keep(Trial("mass", 1, 1, estimates=found, verdict=(told,))))
    assert states(page)["flow"] == "✓ done"


def test_a_reloaded_controller_sends_to_the_comparison(page, shop, store):
    store.keep(Trial("feed", 1, estimates=(Estimate("feed_ratio", 1.0, 0.002, 9.0, "1"),)))
    shop.logged.emit(store.log_event(Event("controller", 1)))
    go_to(page, "feed")
    assert "compare the settings with those in force; nothing is to be measured" in page.card.text.text()
    assert page.card.open_button.text() == "&Open the page Logbook"


def test_what_is_typed_and_not_logged_is_found_again(qtbot, page, shop, store):
    page.card.checks.words.field("note").setFocus()
    qtbot.keyClicks(page.card.checks.words.field("note"), "half way")
    qtbot.keyClick(page.card.checks.words.field("note"), Qt.Key.Key_Return)
    page.card.checks.items["slides"].click()
    go_to(page, "steps")
    go_to(page, "mechanics")
    assert page.card.checks.note() == "half way"
    assert page.card.checks.items["slides"].isChecked()
    again = WalkPage(shop)
    qtbot.addWidget(again)
    again.show()
    assert again.card.checks.note() == "half way"
    assert again.card.checks.items["slides"].isChecked()
    assert store.draft("walk", 1).readings["raw"] == ["yes", "8.4", "half way"]


def test_a_store_that_fails_is_said(page, store, monkeypatch, notices):
    def fail(*_arguments, **_more):
        raise StoreError("The disk is full.")

    monkeypatch.setattr(store, "log_event", fail)
    page.card.checks.words.set_texts({"note": "why"})
    page.card.skip.click()
    assert notices[-1] == ("error", "The disk is full.")
    monkeypatch.setattr(store, "newest_kept", fail)
    page.recompute()
    assert notices[-1] == ("error", "The disk is full.")


# Logging what happened


@pytest.fixture
def window(qtbot, shop, tmp_path):
    window = MainWindow(QSettings(str(tmp_path / "window.ini"), QSettings.Format.IniFormat))
    qtbot.addWidget(window)
    window.show()
    window.open_shop(shop, "walk")
    return window


def events_form(qtbot, window) -> EventForm:
    qtbot.mouseClick(window.pickers.happened, Qt.MouseButton.LeftButton)
    form = QApplication.activePopupWidget()
    assert isinstance(form, EventForm)
    return form


def test_an_event_is_logged_in_two_clicks_and_shows_what_became_stale(qtbot, window, shop, store):
    store.keep(reversal())
    form = events_form(qtbot, window)
    qtbot.mouseClick(form.buttons["belt_changed"], Qt.MouseButton.LeftButton)
    (event,) = logged(store)
    assert (event.kind, event.machine_id, event.lot_id, event.author) == ("belt_changed", 1, None, "Kim")
    assert form.heading.text() == "Logged: New belt or pulley"
    assert form.outcome.text() == "To be done again: reversal error."
    assert "To be done again: reversal error." in window.notices.label.text()
    page = window.findChild(WalkPage)
    assert states(page)["reversal"] == "↻ stale"
    qtbot.mouseClick(form.walk, Qt.MouseButton.LeftButton)
    assert window.rail.marked() == "walk"


def test_it_is_taken_back_as_quickly(qtbot, window, store):
    store.keep(reversal())
    form = events_form(qtbot, window)
    qtbot.mouseClick(form.buttons["crash"], Qt.MouseButton.LeftButton)
    qtbot.mouseClick(form.take_back, Qt.MouseButton.LeftButton)
    first, back = logged(store)
    assert back.takes_back == first.id
    assert states(window.findChild(WalkPage))["reversal"] == "✓ done"


def test_a_new_lot_remembers_the_one_before(qtbot, window, shop, store):
    shop.select_lot(1)
    store.keep(Trial("wall", 1, 1, estimates=(Estimate("flow_ratio_wall", 0.97, 0.006, 9.0, "1"),)))
    shop.select_lot(store.add_lot(Lot("Slate 8", "PETG")).id)
    form = events_form(qtbot, window)
    qtbot.keyClicks(form.note, "from the same box")
    form.buttons["new_spool"].click()
    (event,) = logged(store)
    assert (event.lot_id, event.detail, event.note) == (2, {"from_lot": 1}, "from the same box")
    assert "In doubt until a quick check: flow factor" in form.outcome.text()
    form.hide()


def test_only_what_is_picked_can_have_happened(qtbot, window, shop):
    form = events_form(qtbot, window)
    assert form.buttons["crash"].isEnabled()
    assert not form.buttons["new_lot"].isEnabled()
    assert not form.buttons["gauge_bad"].isEnabled()
    qtbot.keyClick(form, Qt.Key.Key_Escape)
    shop.select_machine(None)
    shop.select_instrument(1)
    form = events_form(qtbot, window)
    form.buttons["gauge_bad"].click()
    assert logged(shop.store)[0].instrument_id == 1
    assert logged(shop.store)[0].machine_id is None
    assert form.outcome.text() == "Nothing more that was kept is spoiled by it."
    form.hide()


def test_the_name_is_asked_once_and_offered_to_others(qtbot, window, shop, store):
    shop.sign("")
    form = events_form(qtbot, window)
    assert form.focusWidget() is form.author
    qtbot.keyClicks(form.author, "Bo")
    form.buttons["moved"].click()
    assert logged(store)[0].author == "Bo"
    assert store.shop_value("authors").value == {"names": ["Bo"]}
    assert window._settings.value("author") == "Bo"
    form.hide()
    form = events_form(qtbot, window)
    assert form.author.text() == "Bo"
    assert form.author.completer().model().rowCount() == 1
    form.hide()


def test_an_event_that_cannot_be_stored_is_said(qtbot, window, store, monkeypatch):
    form = events_form(qtbot, window)

    def fail(*_arguments, **_more):
        raise StoreError("The disk is full.")

    monkeypatch.setattr(store, "log_event", fail)
    qtbot.keyClicks(form.note, "to the back room")
    form.buttons["moved"].click()
    assert "The disk is full." in window.notices.label.text()
    assert not form.isVisible()
    form = events_form(qtbot, window)
    assert form.note.text() == "to the back room"
    form.hide()
