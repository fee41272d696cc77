"""The page *Toolpaths*: a trial is chosen, looked at, refused or written, by keyboard."""

import math
from dataclasses import replace

import pytest
from gcodeparser import parse_gcode_lines
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QFileDialog

from app.pages import PAGES
from app.pages.bench.toolpaths import ToolpathsPage
from app.pages.flow_trials.mass import MassPage
from core.errors import StoreError
from core.records.rows import Lot, Machine, Motion, SettingInForce, Trial
from core.words import tr
from tests.app.atpage import show_page, verdict


@pytest.fixture
def shop(context, store):
    context.select_machine(store.add_machine(Machine("Bramble")).id)
    context.select_lot(store.add_lot(Lot("Slate 7", "PETG", nominal_diameter_mm=1.75)).id)
    return context


@pytest.fixture
def opened(qtbot, context):
    def open_page():
        page = show_page(qtbot, ToolpathsPage(context))
        page.activateWindow()
        qtbot.waitUntil(page.isActiveWindow)
        page.take_focus()
        return page

    return open_page


@pytest.fixture
def page(shop, opened):
    return opened()


@pytest.fixture
def saves_to(monkeypatch, tmp_path):
    """Answer the file dialog with a path, or cancel it."""
    asked = []

    def answer(name: str):
        path = str(tmp_path / name) if name else ""

        def get_name(_parent, _title, proposed, _filter):
            asked.append(proposed)
            return path, ""

        monkeypatch.setattr(QFileDialog, "getSaveFileName", get_name)
        return tmp_path / name

    answer.asked = asked
    return answer


def type_into(grid, key, text):
    field = grid.field(key)
    field.setFocus()
    field.selectAll()
    QTest.keyClick(field, Qt.Key.Key_Delete)
    QTest.keyClicks(field, text)
    QTest.keyClick(field, Qt.Key.Key_Return)


def choose(page, kind):
    page.form.kind.setFocus()
    QTest.keyClick(page.form.kind, Qt.Key.Key_Home)
    while page.form.kind.value() != kind:
        QTest.keyClick(page.form.kind, Qt.Key.Key_Down)


def tick(page):
    page.read_box.setFocus()
    QTest.keyClick(page.read_box, Qt.Key.Key_Space)


def test_the_page_stands_on_the_bench():
    assert [entry.shown_title() for entry in PAGES if entry.key == "toolpaths"] == ["Toolpaths"]


def test_nothing_is_written_before_somebody_said_how_hot(page):
    assert "Cannot be written yet" in verdict(page)
    assert not page.card.keep_button.isEnabled()
    tick(page)
    assert not page.card.keep_button.isEnabled()
    assert page.picture.points()[0][1] == "box: 401.62 mm of filament"


def test_a_wall_box_is_checked_and_written(page, saves_to, context):
    said = []
    context.notice.connect(lambda text, level: said.append((text, level)))
    type_into(page.form.laying, "nozzle_c", "230")
    type_into(page.form.laying, "bed_c", "70")
    assert "In order" in verdict(page)
    assert "Caution: Axes start without warning" in verdict(page)
    assert "401.6 mm, 0.966 cm³" in verdict(page)
    assert "Read the cautions" in page.card.why_not.text()
    tick(page)
    assert page.card.keep_button.isEnabled()
    path = saves_to("box.gcode")
    QTest.keyClick(page.card.keep_button, Qt.Key.Key_Space)
    text = path.read_text()
    assert saves_to.asked == ["wall-box.gcode"]
    assert "; machine: Bramble" in text
    assert "; filament lot: Slate 7" in text
    fed = sum(float(line.params.get("E", 0)) for line in parse_gcode_lines(text) if line.command_str == "G1")
    area = 0.2 * (0.45 - (1 - math.pi / 4) * 0.2)
    box = 75 * 4 * 39.55 * area / (math.pi * 1.75**2 / 4)
    assert fed == pytest.approx(box + 3.05, abs=0.01)  # with the line before it
    assert said[-1][1] == "good"
    assert "start it yourself" in said[-1][0]
    assert not page.read_box.isChecked()


def test_a_cancelled_dialog_writes_nothing(page, saves_to, tmp_path):
    type_into(page.form.laying, "nozzle_c", "230")
    tick(page)
    saves_to("")
    page.keep()
    assert list(tmp_path.iterdir()) == []
    assert page.read_box.isChecked()


def test_an_ending_is_added_and_a_bad_folder_is_said(page, saves_to, context):
    said = []
    context.notice.connect(lambda text, level: said.append((text, level)))
    type_into(page.form.laying, "nozzle_c", "230")
    tick(page)
    path = saves_to("box")
    page.keep()
    assert path.with_suffix(".gcode").exists()
    tick(page)
    saves_to("none/box")
    page.keep()
    assert said[-1][1] == "error"
    assert "choose another folder" in said[-1][0]


def test_keep_says_what_stands_against_it(page, context):
    said = []
    context.notice.connect(lambda text, level: said.append(text))
    page.keep()
    assert said == ["Type the temperature of the nozzle."]
    type_into(page.form.laying, "nozzle_c", "230")
    page.keep()
    assert said[-1] == "Read the cautions and tick the box, then save."


def test_another_path_wants_its_cautions_read_anew(page):
    type_into(page.form.laying, "nozzle_c", "230")
    tick(page)
    type_into(page.form.own_grid(), "side_mm", "50")
    assert not page.read_box.isChecked()


def test_hotter_than_the_limit_is_refused_at_its_field(page):
    type_into(page.form.laying, "nozzle_c", "285")
    assert "285 °C is beyond the limit of the hot end, 240 °C" in verdict(page)
    assert page.form.laying.field("nozzle_c").accessibleDescription()
    assert page.picture.points() == []
    assert "what stands against it" in page.picture.tells.text()
    type_into(page.form.limits, "hot_end_c", "300")
    assert "In order" in verdict(page)


def test_what_the_check_refuses_is_listed_with_its_lines(page, context):
    said = []
    context.notice.connect(lambda text, level: said.append(text))
    type_into(page.form.laying, "nozzle_c", "230")
    choose(page, "strands")
    type_into(page.form.own_grid(), "fast_mm3_s", "30")
    tick(page)
    assert "Refused: Line" in verdict(page)
    assert "the ceiling is 12 mm³/s" in verdict(page)
    assert "more lines or reasons" in verdict(page)
    assert not page.card.keep_button.isEnabled()
    page.keep()
    assert said == ["The read-back refuses this path; see why, and mend it."]


def test_a_heater_left_on_by_the_machines_text_is_refused_without_a_line(page):
    type_into(page.form.laying, "nozzle_c", "230")
    page.form.end.setFocus()
    page.form.end.setPlainText("M104 S40")
    page.form.kind.setFocus(Qt.FocusReason.TabFocusReason)
    assert "The hot end is not switched off at the end." in verdict(page)


def test_an_unknown_name_in_the_machines_text_takes_the_keyboard_there(page):
    page.form.start.setFocus()
    page.form.start.setPlainText("T{tool}")
    page.form.kind.setFocus(Qt.FocusReason.TabFocusReason)
    assert "known are {nozzle_c} and {bed_c}" in verdict(page)


def test_each_trial_shows_what_it_asks(page):
    for kind, keys in (
        ("lag_lines", {"length_mm", "lines", "lag_s", "slow_mm_s", "fast_mm_s", "acceleration_mm_s2"}),
        ("feed", {"length_mm", "feed_mm_s"}),
        ("pen_lines", {"side_x_mm", "side_y_mm", "pen_mm", "draw_mm_s"}),
    ):
        choose(page, kind)
        assert set(page.form.own_grid().texts()) == keys
        assert page.form.own_grid().isVisible()
    assert not page.form.laid_card.isVisible()
    assert "Caution" in verdict(page)
    assert "Nozzle and bed burn" not in verdict(page)


def test_pen_lines_need_no_heat(page, saves_to):
    choose(page, "pen_lines")
    tick(page)
    path = saves_to("pen.gcode")
    page.keep()
    assert "M109" not in path.read_text()


def test_an_empty_entry_is_asked_for(page):
    type_into(page.form.own_grid(), "side_mm", "")
    assert "Nothing is typed here yet" in verdict(page)
    assert page.card.keep_button.isEnabled() is False


def test_what_is_typed_is_found_again(page, opened, store, context):
    choose(page, "lag_lines")
    type_into(page.form.own_grid(), "lines", "7")
    type_into(page.form.laying, "nozzle_c", "225,5")
    page.form.start.setFocus()
    page.form.start.setPlainText("G28\n; mine")
    page.form.kind.setFocus(Qt.FocusReason.TabFocusReason)
    draft = store.draft("toolpaths", context.machine.id, context.lot.id)
    assert draft is not None
    other = opened()
    assert other.form.kind.value() == "lag_lines"
    assert other.form.own_grid().texts()["lines"] == "7"
    assert other.form.laying.field("nozzle_c").value() == 225.5
    assert other.form.start.toPlainText() == "G28\n; mine"
    assert len(other.picture.points()) == 7


def test_an_untouched_page_leaves_no_trial(page, store, context):
    page.save_draft()
    assert store.draft("toolpaths", context.machine.id, context.lot.id) is None


def test_limits_text_and_flow_of_machine_and_lot_are_shown(context, store, opened):
    limits = {"hot_end_limit_c": 280.0, "bed_limit_c": 110.0, "max_flow_mm3_s": 18.0,
              "max_speed_mm_s": {"x": 250.0, "y": 200.0}}  # fmt: skip
    texts = {"start": "G28 ; own start", "end": "; own end"}
    machine = store.add_machine(Machine("Sorrel", limits=limits, templates=texts))
    lot = store.add_lot(Lot("Flint", "PLA", nominal_diameter_mm=2.85))
    now = SettingInForce(machine.id, lot.id, "flow_factor", 1.0, 0.96, "1")
    hot = SettingInForce(machine.id, lot.id, "nozzle_temperature", None, 225.0, "°C")
    store.keep(Trial("wall", machine.id, lot.id), (now,))
    store.keep(Trial("ladder", machine.id, lot.id), (hot,))
    context.select_machine(machine.id)
    context.select_lot(lot.id)
    page = opened()
    assert page.form.limits.field("hot_end_c").value() == 280.0
    assert page.form.limits.field("speed_limit_mm_s").value() == 200.0
    assert page.form.laying.field("filament_mm").value() == 2.85
    assert page.form.laying.field("flow_ratio").value() == 0.96
    assert page.form.laying.field("nozzle_c").value() == 225.0
    assert page.form.laying.field("bed_c").value() == 0.0  # nobody put one in force
    assert page.form.start.toPlainText() == "G28 ; own start"
    assert page.form.end.toPlainText() == "; own end"


def test_a_store_that_fails_is_said(shop, opened, monkeypatch, store):
    def fail(*_arguments):
        raise StoreError(tr("The database is locked."))

    said = []
    shop.notice.connect(lambda text, level: said.append((text, level)))
    monkeypatch.setattr(store, "in_force", fail)
    page = opened()
    assert ("The database is locked.", "error") in said
    assert page.form.laying.field("flow_ratio").value() == 1.0


def test_without_a_machine_a_plain_bed_is_used(opened):
    page = opened()
    assert "room on the bed" in verdict(page)


def test_a_delta_is_shown_round(context, store, opened):
    context.select_machine(store.add_machine(Machine("Reed", motion=Motion.DELTA)).id)
    page = opened()
    assert page.picture._bed.round_bed
    page.picture.whole_bed.click()
    assert page.picture.grab().toImage().width() > 0


def test_the_wheel_of_layers_follows_the_path(page):
    assert page.picture.layer_text.text() == "75 of 75, Z 15 mm"
    page.picture.layer.setFocus()
    QTest.keyClick(page.picture.layer, Qt.Key.Key_Home)
    assert page.picture.layer_text.text() == "1 of 75, Z 0.2 mm"
    type_into(page.form.own_grid(), "high_mm", "2")
    assert page.picture.layer_text.text() == "1 of 10, Z 0.2 mm"


def test_the_text_is_kept_with_the_machine(page, store, context, opened):
    said = []
    context.notice.connect(lambda text, level: said.append((text, level)))
    page.form.start.setFocus()
    page.form.start.setPlainText("G28\n; own")
    page.form.keep_text_button.setFocus(Qt.FocusReason.TabFocusReason)
    QTest.keyClick(page.form.keep_text_button, Qt.Key.Key_Space)
    assert said[-1] == ("The text is kept with Bramble.", "good")
    (machine,) = store.machines()
    assert dict(machine.templates) == {"start": "G28\n; own", "end": page.form.end.toPlainText()}
    assert context.machine.templates["start"] == "G28\n; own"
    assert opened().form.start.toPlainText() == "G28\n; own"


def test_the_text_needs_a_machine_and_a_store(opened, context, store, monkeypatch):
    def fail(*_arguments):
        raise StoreError(tr("The database is locked."))

    said = []
    context.notice.connect(lambda text, level: said.append((text, level)))
    page = opened()
    page.form.keep_text_button.click()
    assert "Choose or add a machine above" in said[-1][0]
    context.select_machine(store.add_machine(Machine("Bramble")).id)
    monkeypatch.setattr(store, "change_machine", fail)
    page.form.keep_text_button.click()
    assert said[-1] == ("The database is locked.", "error")


def test_limits_changed_on_another_page_are_shown_when_one_comes_back(page, store, context):
    page.hide()
    store.change_machine(replace(context.machine, limits={"hot_end_limit_c": 290.0}))
    context.machines_changed.emit()
    page.show()
    assert page.form.limits.field("hot_end_c").value() == 290.0


def test_a_refused_entry_that_was_found_again_can_be_mended(page, opened):
    """The value typed over it may be the usual one."""
    type_into(page.form.own_grid(), "beads", "5")
    other = opened()
    assert "Beads: from 1 to 2 can be laid." in verdict(other)
    type_into(other.form.own_grid(), "beads", "1")
    assert "Beads" not in verdict(other)
    assert other.picture.points()


def test_the_mass_page_knows_the_path_of_the_box_saved_last(qtbot, page, saves_to, context, store):
    said = []
    context.notice.connect(lambda text, level: said.append(text))
    type_into(page.form.laying, "nozzle_c", "230")
    choose(page, "mass_box")
    tick(page)
    path = saves_to("mass.gcode")
    page.keep()
    assert "The page Mass knows" in said[-1]
    fed = sum(float(line.params.get("E", 0)) for line in parse_gcode_lines(path.read_text()))
    mass = MassPage(context)
    qtbot.addWidget(mass)
    mass.show()
    qtbot.waitExposed(mass)
    assert mass.form.typed["path_filament_mm"].value() == pytest.approx(fed - 3.05, abs=0.01)  # without the purge
    assert mass.form.typed["filament_mm"].value() == 1.75
    kept = [trial for trial in store.trials(subject="toolpaths", machine_id=context.machine.id) if trial.kept_at]
    assert [[e.name for e in trial.estimates] for trial in kept] == [["path_filament"]]


def test_a_path_that_cannot_be_kept_is_said(page, saves_to, context, store, monkeypatch):
    def fail(*_arguments):
        raise StoreError(tr("The database is locked."))

    said = []
    context.notice.connect(lambda text, level: said.append(text))
    type_into(page.form.laying, "nozzle_c", "230")
    choose(page, "mass_box")
    tick(page)
    path = saves_to("mass.gcode")
    monkeypatch.setattr(store, "keep", fail)
    page.keep()
    assert path.exists()
    assert "The database is locked." in said


def test_limits_above_those_entered_for_the_machine_are_refused(context, store, opened):
    limits = {"hot_end_limit_c": 230.0, "bed_limit_c": 80.0, "max_flow_mm3_s": 9.0, "max_speed_mm_s": {"x": 100.0}}
    context.select_machine(store.add_machine(Machine("Sorrel", limits=limits)).id)
    page = opened()
    for key, entered, beyond, unit in (
        ("hot_end_c", "230", "231", "°C"), ("bed_limit_c", "80", "90", "°C"),
        ("speed_limit_mm_s", "100", "120", "mm/s"), ("rate_mm3_s", "9", "10", "mm³/s"),
    ):  # fmt: skip
        type_into(page.form.limits, key, beyond)
        assert f"{beyond} {unit} is above the {entered} {unit} entered for this machine" in verdict(page)
        assert page.form.limits.field(key).accessibleDescription()
        type_into(page.form.limits, key, entered)
    assert "Cannot be written yet" in verdict(page)


def test_what_was_typed_without_a_machine_moves_along_under_the_limits_of_the_one_picked(context, store, opened):
    page = opened()
    type_into(page.form.laying, "nozzle_c", "235")
    tick(page)
    cool = store.add_machine(Machine("Cool", limits={"hot_end_limit_c": 230.0}))
    context.select_machine(cool.id)
    assert page.form.laying.field("nozzle_c").value() == 235.0
    assert page.form.limits.field("hot_end_c").value() == 230.0
    assert "235 °C is beyond the limit of the hot end, 230 °C" in verdict(page)
    assert not page.read_box.isChecked()


def test_what_to_mind_stands_on_the_card(context, store, opened):
    context.select_machine(store.add_machine(Machine("Fine", limits={"nozzle_mm": 0.15})).id)
    page = opened()
    assert "Please note: A bead of 0.45 mm is wider than twice the bore of 0.15 mm" in verdict(page)
