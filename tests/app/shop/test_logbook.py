"""The page *Logbook*: what was kept, changed and happened, read and used as a person does."""

from __future__ import annotations

import pytest
from PySide6.QtCore import QRect, QSize, Qt
from PySide6.QtGui import QColor, QGuiApplication, QImage

from app.pages.shop.logbook import LogbookPage
from app.pages.shop.logmodel import WHAT, WHERE, WHO, LogModel
from app.pages.shop.photos import picture_of, small_picture
from core.errors import InputError, StoreError
from core.quantity import Estimate
from core.records.rows import Event, Lot, Machine, SettingInForce, Trial, TrialState

DRIVES = {axis: {"kind": "belt", "pitch_mm": 2.0, "teeth": 20} for axis in "xyz"}


def wall(value, **changes):
    said = {"setting": "flow_factor", "action": "Set it to 0.97.", "because": "It is 3 % off."}
    found = Estimate("flow_ratio_wall", value, 0.005, 9.0, "1")
    return Trial("wall", 1, 1, estimates=(found,), verdict=(said,), **changes)


@pytest.fixture
def shop(context, store):
    """Two wall trials, the first set a factor; then a belt was changed; another machine has a trial of its own."""
    store.author = "Kim"
    store.add_machine(Machine("Bramble", drives=DRIVES))
    store.add_machine(Machine("Otter", drives=DRIVES))
    store.add_lot(Lot("Slate 7", "PETG"))
    predicted = {"name": "flow_ratio_wall", "value": 1.0, "U": 0.01, "unit": ""}
    store.keep(wall(0.97), [SettingInForce(1, 1, "flow_factor", 1.0, 0.97, "1", prediction=predicted)])
    store.keep(wall(1.02))
    store.log_event(Event("belt_changed", 1, note="frayed"))
    store.keep(Trial("feed", 2, estimates=(Estimate("feed_ratio", 1.0, 0.002, 9.0, "1"),)))
    context.select_machine(1)
    context.select_lot(1)
    return context


@pytest.fixture
def notices(context):
    said = []
    context.notice.connect(lambda text, level: said.append((level, text)))
    return said


@pytest.fixture
def page(qtbot, shop):
    page = LogbookPage(shop)
    qtbot.addWidget(page)
    page.resize(1060, 660)
    page.show()
    return page


@pytest.fixture
def picture(tmp_path):
    """A photograph of 3200 x 2000 pixels."""
    image = QImage(3200, 2000, QImage.Format.Format_RGB32)
    image.fill(QColor("#0072b2"))
    image.save(str(tmp_path / "belt.png"))
    return str(tmp_path / "belt.png")


def what(page):
    model = page.log.model
    return [model.index(row, 1).data() for row in range(model.rowCount())]


def choose(page, words):
    row = next(row for row, text in enumerate(what(page)) if words in text)
    page.log.table.selectRow(row)
    return page.log.card.text.text()


def refuse(*_, **__):
    raise StoreError("The disk is full.")


def write(page, text):
    page.log.card.form.set_texts({"note": text})


def test_all_that_was_kept_stands_in_order_newest_first(page):
    assert what(page) == [
        "! New belt or pulley: frayed",
        "◆ Wall: flow factor by walls 1.020 ± 0.011",
        "⇄ flow factor 1 → 0.97",
        "◆ Wall: flow factor by walls 0.970 ± 0.011",
        "! Drive parts written down: X, Y, Z",
    ]
    assert page.log.count.text() == "Entries: 5"
    assert {page.log.model.index(row, 3).data() for row in range(5)} == {"Kim"}
    assert page.log.model.index(1, 2).data() == "Slate 7"
    assert page.log.model.index(0, 0).data()


@pytest.fixture
def long_log(store, page):
    """Trials whose entries are as long as usual ones, the machine and its lot picked."""
    for value in (-0.00848, 0.01):
        found = tuple(Estimate(f"scale_{axis}", value, 0.00028, 9.0, "1") for axis in "xy")
        store.keep(Trial("sizeerror", 1, 1, estimates=found))
    page.recompute()
    return page


def cut(page):
    """Return the entries that cannot be read whole."""
    table = page.log.table
    width, height = table.columnWidth(WHAT) - 8, table.rowHeight(0)
    flags = Qt.TextFlag.TextWordWrap if table.wordWrap() else Qt.TextFlag.TextSingleLine
    measure = table.fontMetrics()
    boxes = {text: measure.boundingRect(QRect(0, 0, width, 1000), int(flags), text) for text in what(page)}
    return [text for text, box in boxes.items() if box.width() > width or box.height() > height]


def test_in_a_small_window_the_entries_can_be_read(qtbot, long_log):
    page, table = long_log, long_log.log.table
    page.resize(780, 600)
    choose(page, "Size error")
    assert cut(page) == []
    assert table.columnWidth(WHAT) > 0.55 * table.viewport().width() and table.isColumnHidden(WHO)
    assert not table.horizontalScrollBar().isVisible()
    page.resize(1500, 600)
    assert not table.isColumnHidden(WHO) and not table.wordWrap() and table.rowHeight(0) < 30


def test_a_row_leaves_out_what_is_named_above_and_its_tool_tip_tells_all(page):
    model, table = page.log.model, page.log.table
    wheres = {"": "Bramble, Slate 7", "machine": "Slate 7", "lot": "Bramble", "both": ""}
    for whose, where in wheres.items():
        page.log.whose.set_value(whose)
        page.log.whose.changed.emit()
        row = next(row for row, text in enumerate(what(page)) if "1.020" in text)
        assert model.index(row, WHERE).data() == where
        assert table.isColumnHidden(WHERE) == (not where)
        first, second = model.index(row, WHAT).data(Qt.ItemDataRole.ToolTipRole).split("\n")
        assert first == "◆ Wall: flow factor by walls 1.020 ± 0.011"
        assert second.endswith(" · Bramble, Slate 7 · Kim") and second.startswith(model.index(row, 0).data() + " ")


def test_no_entry_is_measured_to_share_out_the_width(page, monkeypatch):
    asked = []
    monkeypatch.setattr(LogModel, "data", lambda *_: asked.append(1))
    page.log.table.setUpdatesEnabled(False)
    page.log.table._fit()
    assert asked == []


def test_an_empty_log_says_so(qtbot, context):
    page = LogbookPage(context)
    qtbot.addWidget(page)
    page.show()
    assert page.log.count.text() == "Nothing was kept here yet."
    assert "Choose an entry" in page.log.card.text.text()
    assert not page.settings_pane.isEnabled()


def test_it_is_of_the_machine_the_lot_or_the_whole_shop(page):
    for whose, count in (("", 7), ("lot", 3), ("both", 3), ("machine", 5)):
        page.log.whose.set_value(whose)
        page.log.whose.changed.emit()
        assert len(what(page)) == count, whose


def test_it_is_filtered_by_kind_and_words(qtbot, page):
    page.log.kind.set_value("setting")
    page.log.kind.changed.emit()
    assert what(page) == ["⇄ flow factor 1 → 0.97"]
    page.log.kind.set_value("")
    page.log.kind.changed.emit()
    qtbot.keyClicks(page.log.finder, "frayed")
    assert page.log.count.text() == "Entries: 1 of 5"


def test_a_trial_is_held_against_the_one_before(page):
    says = choose(page, "1.020")
    assert "Trial 2: Wall" in says and "wall 1" not in says  # the page's title, not the name of the mathematics
    assert "Set it to 0.97. It is 3 % off." in says
    assert "Against trial 1: Moved: flow factor by walls 0.970 ± 0.011 → 1.020 ± 0.011 (+0.050 ± 0.015)" in says
    assert "In force when it was begun flow factor 0.97" in says.replace("begun: ", "begun ")
    first = choose(page, "0.970")
    assert "Against trial" not in first
    assert "In force when" not in first


def test_a_setting_says_what_was_predicted_and_whether_it_was_checked(page, shop, store):
    says = choose(page, "flow factor 1 → 0.97")
    assert "From trial 1" in says
    assert "Predicted flow factor by walls +1.000 ± 0.010" in says
    assert "not checked yet" in says
    assert "in force now" in says
    store.keep(Trial("sizeerror", 1, 1), [SettingInForce(1, 1, "contour_offset", 0.0, -0.03, "mm")])
    shop.kept.emit(store.trial(4))
    says = choose(page, "flow factor 1 → 0.97")
    assert "not attributable together with contour offset 0 mm → −0.03 mm: nothing that tells was read" in says
    assert "Undo the later one, print and read a size piece, keep it, then set the later one anew." in says


def test_a_change_that_starts_from_a_piece_made_with_the_one_before_is_told_from_it(page, shop, store):
    kept = store.keep(proud(), [SettingInForce(1, 1, "contour_offset", 0.0, -0.04, "mm")])
    shop.kept.emit(kept)
    assert "not attributable" not in choose(page, "flow factor 1 → 0.97")
    assert "not checked yet" in choose(page, "contour offset 0 mm → −0.04 mm")


def test_a_change_that_did_not_start_from_what_was_in_force_is_marked(page, shop, store):
    kept = store.keep(wall(0.99), [SettingInForce(1, 1, "flow_factor", 1.0, 0.99, "1")])
    shop.kept.emit(kept)
    assert "When its trial was begun 0.97 was in force" in choose(page, "flow factor 1 → 0.99")
    assert "was in force, and not" not in choose(page, "flow factor 1 → 0.97")


def test_a_trial_is_withdrawn_with_a_reason_and_stays_visible(qtbot, page, store):
    choose(page, "1.020")
    qtbot.mouseClick(page.log.card.gone, Qt.MouseButton.LeftButton)
    assert "Say why the trial is withdrawn" in page.log.card.form.field("note").accessibleDescription()
    write(page, "cold bed")
    qtbot.mouseClick(page.log.card.gone, Qt.MouseButton.LeftButton)
    assert store.trial(2).state is TrialState.WITHDRAWN
    assert what(page)[0] == "! Trial withdrawn (2): cold bed"
    row = next(row for row, text in enumerate(what(page)) if "1.020" in text)
    assert page.log.model.index(row, 1).data(Qt.ItemDataRole.FontRole).strikeOut()
    assert "Withdrawn: cold bed" in choose(page, "1.020").replace("Withdrawn cold", "Withdrawn: cold")
    assert not page.log.card.gone.isEnabled()


def test_any_trial_of_the_log_has_a_report(page, store, tmp_path, notices, monkeypatch):
    choose(page, "1.020")
    assert page.log.card.report.isVisible()
    assert page.log.card.report.write("trial", tmp_path / "wall.pdf")
    assert (tmp_path / "wall.pdf").read_bytes().startswith(b"%PDF") and notices[-1][0] == "good"
    store.withdraw(2, "cold bed")
    assert page.log.card.report.write("trial", tmp_path / "wall.csv")
    assert "flow factor by walls,1.020 ± 0.011" in (tmp_path / "wall.csv").read_text()
    with monkeypatch.context() as broken:
        broken.setattr(store, "trial", refuse)
        assert not page.log.card.report.write("trial", tmp_path / "none.pdf")
    assert notices[-1] == ("error", "The disk is full.")
    choose(page, "⇄ flow factor")
    assert not page.log.card.report.isVisible()
    assert not page.log.card.report.write("trial", tmp_path / "none.pdf")


def test_a_setting_is_undone_as_a_new_entry(qtbot, page, store):
    choose(page, "flow factor 1 → 0.97")
    write(page, "walls got thin")
    qtbot.mouseClick(page.log.card.gone, Qt.MouseButton.LeftButton)
    assert what(page)[0] == "⇄ Undone: flow factor 0.97 → 1"
    assert store.in_force("flow_factor", 1, 1).because == "walls got thin"
    assert "undone" in choose(page, "⇄ flow factor 1 → 0.97")
    assert "another value took its place" in page.log.card.text.text()


def test_an_event_is_taken_back(qtbot, page, shop, store):
    told = []
    shop.logged.connect(told.append)
    choose(page, "New belt")
    qtbot.mouseClick(page.log.card.gone, Qt.MouseButton.LeftButton)
    assert store.events(machine_id=1)[-1].takes_back == store.events(kind="belt_changed")[0].id
    assert len(told) == 1
    assert what(page)[0].startswith("! Taken back: New belt or pulley")
    assert "Counts no more" in choose(page, "! New belt or pulley: frayed")


def test_a_check_by_hand_shows_its_numbers_with_units(page, shop, store):
    detail = {"step": "mechanics", "tone_x_hz": 92.5, "tension_x": {"value": 6.4, "U": 0.71, "unit": "N"}}
    shop.logged.emit(store.log_event(Event("checked", 1, detail=detail)))
    says = choose(page, "Checked by hand: Mechanical health")
    assert "tone of belt X\t92.5 Hz" in says
    assert "tension of belt X\t6.40 ± 0.71 N" in says


def test_a_note_is_added(qtbot, page, store):
    choose(page, "1.020")
    qtbot.mouseClick(page.log.card.note_button, Qt.MouseButton.LeftButton)
    assert "Type the words" in page.log.card.form.field("note").accessibleDescription()
    write(page, "printed on the glass plate")
    qtbot.mouseClick(page.log.card.note_button, Qt.MouseButton.LeftButton)
    assert what(page)[0] == "! Note (2): printed on the glass plate"
    assert store.events(kind="note")[0].trial_id == 2


def test_a_picture_is_kept_small_and_shown(qtbot, page, store, picture):
    choose(page, "New belt")
    write(page, "the frayed end")
    page.attach(picture)
    (kept,) = store.attachments(event_id=store.events(kind="belt_changed")[0].id)
    assert (kept.name, kept.mime, kept.note, kept.author) == ("belt.png", "image/jpeg", "the frayed end", "Kim")
    image = QImage.fromData(store.attachment_content(kept.id))
    assert (image.width(), image.height()) == (1600, 1000)
    card = page.log.card
    assert card.pictures.isVisible()
    assert card.pictures.model().index(0, 0).data() == "the frayed end"
    card.pictures.setCurrentIndex(card.pictures.model().index(0, 0))
    card.pictures.activated.emit(card.pictures.currentIndex())
    assert not card._large.pixmap().isNull()
    card._large.hide()
    choose(page, "1.020")
    page.attach(picture)
    assert len(store.attachments(trial_id=2)) == 1


def test_a_picture_of_a_setting_hangs_on_a_note_and_is_shown_with_the_setting(page, store, picture):
    choose(page, "flow factor 1 → 0.97")
    page.attach(picture)
    (note,) = store.events(kind="note")
    assert note.note == "flow factor 1 → 0.97" and len(store.attachments(event_id=note.id)) == 1
    assert page.log.card.pictures.isVisible()
    choose(page, "1.020")
    assert not page.log.card.pictures.isVisible()


def test_what_is_no_picture_is_refused(page, tmp_path, notices, store):
    (tmp_path / "notes.txt").write_text("no picture")
    choose(page, "1.020")
    page.attach(str(tmp_path / "notes.txt"))
    assert notices[-1] == ("error", "notes.txt is no picture that can be read here; choose a JPEG or PNG file.")
    assert store.attachments() == ()


def test_pictures_are_made_for_the_room_they_have(picture, tmp_path):
    assert picture_of(small_picture(picture), QSize(96, 72)).size() == QSize(96, 60)
    assert picture_of(b"nonsense", QSize(96, 72)).isNull()
    clear = QImage(40, 40, QImage.Format.Format_ARGB32)
    clear.fill(Qt.GlobalColor.transparent)
    clear.save(str(tmp_path / "clear.png"))
    assert QImage.fromData(small_picture(str(tmp_path / "clear.png"))).pixelColor(5, 5).lightness() > 250
    with pytest.raises(InputError, match="is not there or is not a file"):
        small_picture(str(tmp_path / "missing.png"))


def test_who_is_at_work_is_asked_once(qtbot, page, shop, store):
    assert page.log.author.text() == "Kim"
    page.log.author.clear()
    qtbot.keyClicks(page.log.author, "Bo")
    qtbot.keyClick(page.log.author, Qt.Key.Key_Return)
    assert store.author == "Bo"
    assert store.shop_value("authors").value == {"names": ["Bo"]}


def test_words_not_used_yet_are_found_again(qtbot, page, shop):
    choose(page, "1.020")
    page.log.card.form.field("note").setFocus()
    qtbot.keyClicks(page.log.card.form.field("note"), "half a reason")
    qtbot.keyClick(page.log.card.form.field("note"), Qt.Key.Key_Return)
    again = LogbookPage(shop)
    qtbot.addWidget(again)
    again.show()
    choose(again, "1.020")
    assert again.log.card.form.texts()["note"] == "half a reason"


def type_words(qtbot, page, text):
    field = page.log.card.form.field("note")
    field.setFocus()
    field.selectAll()
    qtbot.keyClicks(field, text)


def words(page):
    return page.log.card.form.texts()["note"]


def test_words_stay_with_the_entry_they_were_typed_for(qtbot, page, store, monkeypatch):
    choose(page, "1.020")
    type_words(qtbot, page, "cold bed")
    with monkeypatch.context() as broken:
        broken.setattr(store, "withdraw", refuse)
        qtbot.mouseClick(page.log.card.gone, Qt.MouseButton.LeftButton)
    assert words(page) == "cold bed" and store.trial(2).state is TrialState.KEPT
    choose(page, "0.970")
    assert words(page) == ""
    qtbot.mouseClick(page.log.card.gone, Qt.MouseButton.LeftButton)
    assert "Say why" in page.log.card.form.field("note").accessibleDescription()
    type_words(qtbot, page, "wet spool")
    choose(page, "1.020")
    assert words(page) == "cold bed"
    assert page.log.card.form.field("note").accessibleDescription() == ""
    choose(page, "0.970")
    assert words(page) == "wet spool"
    qtbot.mouseClick(page.log.card.gone, Qt.MouseButton.LeftButton)
    assert store.trial(1).withdrawn_because == "wet spool" and store.trial(2).state is TrialState.KEPT
    choose(page, "1.020")
    assert words(page) == "cold bed"
    choose(page, "0.970")
    assert words(page) == ""


def test_words_for_several_entries_are_found_again_until_they_are_sent(qtbot, page, shop, store):
    for entry, text in (("1.020", "cold bed"), ("0.970", "wet spool")):
        choose(page, entry)
        type_words(qtbot, page, text)
    page.save_draft()
    again = LogbookPage(shop)
    qtbot.addWidget(again)
    again.show()
    choose(again, "1.020")
    assert words(again) == "cold bed"
    qtbot.mouseClick(again.log.card.note_button, Qt.MouseButton.LeftButton)
    assert [(event.note, event.trial_id) for event in store.events(kind="note")] == [("cold bed", 2)]
    third = LogbookPage(shop)
    qtbot.addWidget(third)
    third.show()
    choose(third, "1.020")
    assert words(third) == ""
    choose(third, "0.970")
    assert words(third) == "wet spool"


# The settings in force


@pytest.fixture
def settings(page):
    page.tabs.setCurrentIndex(1)
    return page.settings_pane


def test_the_lines_for_the_controller_follow_the_template(qtbot, settings, shop, notices):
    assert settings.lines.toPlainText() == "M92 X80.0000\nM92 Y80.0000\nM92 Z80.0000"
    settings.copy.click()
    assert QGuiApplication.clipboard().text() == settings.lines.toPlainText()
    assert "For the slicing program Flow factor 0.97." in settings.in_force.text().replace("program: ", "program ")
    assert "from the parts list" in settings.in_force.text()
    settings.template.setPlainText("steps_x: M92 X{value:2}\nflow_factor: M221 S{value}")
    assert settings.lines.toPlainText() == "M92 X80.00\nM221 S0.9700"
    settings.save.click()
    assert shop.machine.templates == {"settings": "steps_x: M92 X{value:2}\nflow_factor: M221 S{value}"}
    assert notices[-1] == ("good", "Template of Bramble saved.")


def test_a_template_that_cannot_be_read_is_said_and_not_lost(qtbot, page, settings, shop):
    settings.template.setPlainText("steps_x = M92 X80")
    assert settings.problem.text().startswith("Line 1 of the template: write a name, a colon")
    settings.save.click()
    settings.listing.setPlainText("M92 X80")
    settings.compare.click()
    assert shop.machine.templates == {}
    again = LogbookPage(shop)
    qtbot.addWidget(again)
    again.show()
    assert again.settings_pane.template.toPlainText() == "steps_x = M92 X80"


def test_a_pasted_listing_is_compared(settings, store, shop):
    store.keep(Trial("feed", 1, estimates=(Estimate("feed_ratio", 1.0, 0.002, 9.0, "1"),)))
    store.log_event(Event("controller", 1))
    settings.listing.setPlainText("M92 X80 Y80.5 Z80 E93\nM201 X500")
    settings.compare.click()
    assert settings.outcome.text() == (
        "! M92 Y: the controller has 80.5, in force is 80.0000.\n"
        "! M92 E: the controller has 93; here nothing is on record."
    )
    assert not settings.agree.isVisible()
    settings.listing.setPlainText("M92 X80 Y80 Z80")
    assert not settings.outcome.isVisible()
    settings.compare.click()
    assert settings.outcome.text() == "✓ The listing agrees with what is in force. Values compared: 3."
    settings.agree.click()
    event = store.events(kind="checked")[-1]
    assert (event.detail["results"], event.detail["how"]) == (["steps", "feed"], "compare")
    settings.listing.setPlainText("hello")
    settings.compare.click()
    assert "none of the commands" in settings.outcome.text()


def test_a_store_that_fails_is_said(qtbot, page, settings, store, monkeypatch, notices, picture):
    def fail(*_arguments, **_more):
        raise StoreError("The disk is full.")

    for name in ("change_machine", "log_event", "withdraw", "attach"):
        monkeypatch.setattr(store, name, fail)
    settings.template.setPlainText("steps_x: M92 X{value:2}")
    settings.save.click()
    settings.listing.setPlainText("M92 X80")
    settings.agree.click()
    choose(page, "1.020")
    write(page, "why")
    page.log.card.gone.click()
    page.log.card.note_button.click()
    page.attach(picture)
    assert [text for _, text in notices] == ["The disk is full."] * 5
    monkeypatch.setattr(store, "attachments", fail)
    choose(page, "0.970")
    monkeypatch.setattr(store, "events", fail)
    page.recompute()
    assert notices[-1] == ("error", "The disk is full.")
    page.keep()
    assert "F8 logs what happened" in notices[-1][1]


def proud(outset_mm=0.04):
    return Trial("sizeerror", 1, 1, estimates=(Estimate("wall_outset", outset_mm, 0.004, 30.0, "mm"),))


def test_a_decision_is_put_in_force_with_the_value_that_the_piece_asks_for(qtbot, page, shop, store, notices):
    page.tabs.setCurrentIndex(2)
    pane = page.decision_pane
    assert "Never set here: 0 mm is taken to hold." in pane.card.text()
    shop.kept.emit(store.keep(proud()))
    assert "Proposed: −0.04 mm." in pane.card.text()
    assert pane.form.texts()["new"] == "−0.04"
    qtbot.mouseClick(pane.put, Qt.MouseButton.LeftButton)
    now = store.in_force("contour_offset", 1, 1)
    assert (now.old, now.new, now.author) == (0.0, -0.04, "Kim")
    assert now.because == "wall outset per side +0.0400 ± 0.0082 mm in trial 4"
    assert now.prediction["name"] == "wall_outset"
    assert notices[-1] == ("good", "In force: contour offset. Log and walk know it.")
    assert "In force: −0.04 mm" in pane.card.text() and pane.form.texts()["new"] == ""
    assert "⇄ contour offset 0 mm → −0.04 mm" in what(page)


def test_a_trial_that_asks_for_what_cannot_be_is_said_and_nothing_is_proposed(page, shop, store):
    page.tabs.setCurrentIndex(2)
    pane = page.decision_pane
    shop.kept.emit(store.keep(Trial("sizeerror", 1, 1, estimates=(Estimate("scale_x", -1.0, 0.001, 30.0, "1"),))))
    pane.setting.set_value("shrink_allowance_x")
    pane.setting.changed.emit()
    assert pane.card.text().endswith("A part cannot be off by -100 %; check its sizes.") and not pane.put.isEnabled()


def test_a_decision_without_value_or_reason_is_refused_at_its_field(qtbot, page, store, notices):
    pane = page.decision_pane
    pane.setting.set_value("nozzle_temperature")
    pane.setting.changed.emit()
    qtbot.mouseClick(pane.put, Qt.MouseButton.LeftButton)
    assert pane.form.field("new").accessibleDescription()
    pane.form.set_texts({"new": "215"})
    pane.put.click()
    assert "Say why" in pane.form.field("because").accessibleDescription()
    assert store.in_force("nozzle_temperature", 1, 1) is None


def test_what_was_typed_for_a_decision_is_found_again(qtbot, page, shop):
    pane = page.decision_pane
    pane.setting.set_value("flow_factor")
    pane.setting.changed.emit()
    pane.form.set_texts({"new": "0.98", "because": "half"})
    pane.form.changed.emit("new")
    other = LogbookPage(shop)
    qtbot.addWidget(other)
    other.show()
    assert other.decision_pane.form.texts() == {"setting": "flow_factor", "new": "0.98", "because": "half"}


def test_a_store_that_refuses_a_decision_is_said(page, store, monkeypatch, notices):
    def refuse(*_args):
        raise StoreError("The disk is full.")

    pane = page.decision_pane
    pane.form.set_texts({"new": "-0.05", "because": "as the piece says"})
    monkeypatch.setattr(store, "put_in_force", refuse)
    pane.put.click()
    assert notices[-1] == ("error", "The disk is full.")
    assert pane.form.texts()["new"] == "-0.05"
    monkeypatch.setattr(store, "settings", refuse)
    pane.setting.changed.emit()
    assert notices[-1] == ("error", "The disk is full.")


def test_without_a_machine_nothing_can_be_put_in_force(page, shop):
    shop.select_machine(None)
    assert not page.decision_pane.put.isEnabled()
    assert "Choose a machine above" in page.decision_pane.card.text()
