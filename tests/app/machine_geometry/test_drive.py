"""The drive page: types like a person, reads what a person reads."""

from __future__ import annotations

import pytest
from PySide6.QtCore import Qt
from PySide6.QtGui import QAccessible, QTextDocumentFragment
from PySide6.QtWidgets import QLabel, QLineEdit, QPushButton

from app.pages.machine_geometry.drive import DrivePage
from core.records.rows import Machine, Motion

BELT = {
    "kind": "belt",
    "reeving": "direct",
    "full_steps": 200,
    "microsteps": 16,
    "pitch_mm": 2.0,
    "teeth": 20,
    "gears": [],
}
SCREW = {
    "kind": "screw",
    "reeving": "direct",
    "full_steps": 200,
    "microsteps": 16,
    "pitch_mm": 2.0,
    "starts": 4,
    "gears": [],
}


@pytest.fixture
def page(qtbot, context):
    page = DrivePage(context)
    qtbot.addWidget(page)
    page.resize(780, 620)
    page.show()
    return page


@pytest.fixture
def notices(context):
    said = []
    context.notice.connect(lambda text, level: said.append((level, text)))
    return said


def field(page, key):
    """Return the field of that name in sight."""
    return next(found for found in page.findChildren(QLineEdit, key) if found.isVisible())


def enter(qtbot, page, key, text):
    """Type into a field as a person does, and press Enter."""
    found = field(page, key)
    found.setFocus()
    found.selectAll()
    qtbot.keyClicks(found, text)
    qtbot.keyClick(found, Qt.Key.Key_Return)


def choose(page, key, text):
    """Choose from the list in sight by its words."""
    combo = next(
        found
        for found in page.findChildren(QLabel)
        if found.buddy() and found.buddy().objectName() == key and found.isVisible()
    ).buddy()
    combo.setCurrentIndex(combo.findText(text))


def travels(qtbot, page):
    for axis in "xyz":
        enter(qtbot, page, f"travel_{axis}_mm", "220")


def belt(qtbot, page, teeth="20"):
    if not field(page, "travel_x_mm").text():
        travels(qtbot, page)
    enter(qtbot, page, "pitch_mm", "2")
    enter(qtbot, page, "teeth", teeth)


def go_to(page, axis):
    names = [page.form.axes.tabText(place) for place in range(page.form.axes.count())]
    page.form.axes.setCurrentIndex(names.index(axis))


def texts(page):
    """Return all words in sight as one text."""
    labels = [label for label in page.findChildren(QLabel) if label.isVisible()]
    return "\n".join(
        QTextDocumentFragment.fromHtml(label.text()).toPlainText() if "<" in label.text() else label.text()
        for label in labels
    )


def button(page, words):
    return next(found for found in page.findChildren(QPushButton) if words in found.text())


def test_the_result_is_there_while_typing(qtbot, page):
    assert "steps/mm: not yet" in texts(page)
    assert "The pitch is missing; count or measure it." in texts(page)
    enter(qtbot, page, "pitch_mm", "2")
    teeth = field(page, "teeth")
    qtbot.keyClicks(teeth, "2")
    assert "1 full" not in texts(page)
    qtbot.keyClicks(teeth, "0")  # no Enter yet
    assert "To set: 80.0000 steps/mm" in texts(page) and "80.000 ± 0.078 steps/mm" in texts(page)
    assert "200 × 16 ÷ (2 mm × 20 teeth) = 80.0000 steps/mm" in texts(page)
    assert "0.2 mm, 0.0125 mm" in texts(page)
    travels(qtbot, page)
    assert "40  80  120  160  200 mm" in texts(page)


def test_a_screw_tells_its_clean_layers_and_asks_about_pitch_and_lead(qtbot, page):
    travels(qtbot, page)
    go_to(page, "Z")
    choose(page, "kind", "screw")
    enter(qtbot, page, "pitch_mm", "2")
    enter(qtbot, page, "starts", "4")
    assert "To set: 400.0000 steps/mm" in texts(page) and "400.00 ± 0.39 steps/mm" in texts(page)
    assert "0.12  0.16  0.2  0.24  0.28 mm" in texts(page)
    assert "8 to 216 mm" not in texts(page)
    assert "16 to 216 mm, every 8 mm" in texts(page)
    assert "is 2 mm the thread pitch (travel 8 mm per turn) or already the travel per turn?" in texts(page)


def test_decimal_comma_and_inch_are_read(qtbot, page):
    enter(qtbot, page, "pitch_mm", "0,08in")
    enter(qtbot, page, "teeth", "20")
    assert "To set: 78.7402 steps/mm" in texts(page)


@pytest.mark.parametrize(
    "key, text, says",
    [
        ("gears", "3.58", "3.58 is a rounded gear ratio; enter the counted teeth, driven/driving. Is it 43/12?"),
        ("pitch_mm", "500", "The pitch 500 mm is outside 0.1 to 100 mm; check the decimal mark and the unit."),
        ("teeth", "20.5", "20.5"),
        ("u_percent", "9", "The tolerance of the drive 0.09 is outside"),
        ("travel_x_mm", "5", "5 mm is too small: at least 10 mm."),
    ],
)
def test_a_fault_is_said_at_its_field(qtbot, page, key, text, says):
    belt(qtbot, page)
    enter(qtbot, page, key, text)
    assert says in field(page, key).accessibleDescription()
    assert says in texts(page)
    assert "steps/mm: not yet" in texts(page)


def test_an_empty_field_is_asked_for_and_not_scolded(qtbot, page):
    enter(qtbot, page, "pitch_mm", "2")
    assert field(page, "teeth").accessibleDescription() == ""
    assert "The number of teeth is missing; count or measure it." in texts(page)


def test_a_new_machine_is_saved_and_picked(qtbot, page, store, context, notices):
    enter(qtbot, page, "name", "Kestrel")
    travels(qtbot, page)
    enter(qtbot, page, "travel_z_mm", "350")
    belt(qtbot, page)
    go_to(page, "Y")
    qtbot.mouseClick(button(page, "Same parts as X"), Qt.MouseButton.LeftButton)
    go_to(page, "Z")
    choose(page, "kind", "screw")
    enter(qtbot, page, "pitch_mm", "2")
    enter(qtbot, page, "starts", "4")
    qtbot.mouseClick(button(page, "Save machine"), Qt.MouseButton.LeftButton)
    (kept,) = store.machines()
    assert kept.name == "Kestrel"
    assert (kept.travel_x_mm, kept.travel_z_mm, kept.motion) == (220, 350, Motion.CARTESIAN)
    assert kept.drives == {"x": BELT, "y": BELT, "z": SCREW}
    assert context.machine == kept
    assert notices[-1] == ("good", "Kestrel saved. Its walk leads on, step by step: F9.")
    assert store.trials() == ()  # what was typed is no longer unsaved
    assert not button(page, "Save machine").isEnabled()


def test_without_a_name_nothing_is_saved_and_the_keyboard_goes_there(qtbot, page, store):
    belt(qtbot, page)
    page.keep()
    assert store.machines() == ()
    assert field(page, "name").accessibleDescription() == "Nothing is typed here yet; this one is needed."
    assert page.focusWidget() is field(page, "name")


def test_no_travel_is_taken_that_nobody_typed(qtbot, page, store):
    """Paths and pieces are planned within it: a number that only stood there could drive an axis into its end."""
    enter(qtbot, page, "name", "Kestrel")
    enter(qtbot, page, "pitch_mm", "2")
    enter(qtbot, page, "teeth", "20")
    assert "To set: 80.0000 steps/mm" in texts(page)
    assert "Clean test lengths once the travel is typed" in texts(page).replace("\n", " ")
    page.keep()
    assert store.machines() == ()
    assert field(page, "travel_x_mm").accessibleDescription() == "Nothing is typed here yet; this one is needed."
    assert page.focusWidget() is field(page, "travel_x_mm")
    travels(qtbot, page)
    assert "once the travel is typed" not in texts(page)
    page.keep()
    assert store.machines()[0].travel_y_mm == 220


def test_a_half_filled_axis_is_shown_and_refused(qtbot, page, store):
    enter(qtbot, page, "name", "Kestrel")
    belt(qtbot, page)
    go_to(page, "Y")
    enter(qtbot, page, "teeth", "16")
    go_to(page, "Z")
    page.keep()
    assert page.form.axis() == "y"
    assert field(page, "pitch_mm").accessibleDescription() == "The pitch is missing; count or measure it."
    assert store.machines() == ()


def test_a_taken_name_is_refused_at_its_field(qtbot, page, store, context):
    store.add_machine(Machine("Kestrel"))
    enter(qtbot, page, "name", "Kestrel")
    travels(qtbot, page)
    page.keep()
    assert "Kestrel" in field(page, "name").accessibleDescription()
    assert len(store.machines()) == 1


def test_crossed_belts_have_one_set_of_parts_for_both_motors(qtbot, page, store):
    enter(qtbot, page, "name", "Kestrel")
    choose(page, "motion", "crossed belts")
    assert [page.form.axes.tabText(place) for place in range(2)] == ["A and B (X, Y)", "Z"]
    belt(qtbot, page)
    assert "Both motors A and B carry this one value." in texts(page)
    page.keep()
    assert store.machines()[0].drives == {"x": BELT, "y": BELT}


def test_separate_x_and_y_on_crossed_belts_are_refused_with_the_reason(qtbot, page):
    belt(qtbot, page)
    go_to(page, "Y")
    belt(qtbot, page, teeth="16")
    choose(page, "motion", "crossed belts")
    assert "On crossed belts both motors turn for X as well as for Y, so they share one value." in texts(page)


def test_a_delta_has_carriages(qtbot, page, store):
    enter(qtbot, page, "name", "Heron")
    choose(page, "motion", "delta")
    belt(qtbot, page)
    assert "The value belongs to the carriages." in texts(page)
    assert "Clean layer heights" in texts(page)
    page.keep()
    assert store.machines()[0].drives == {"x": BELT, "y": BELT, "z": BELT}


def test_a_stored_machine_is_shown_and_changed(qtbot, page, store, context):
    kept = store.add_machine(Machine("Kestrel", Motion.CROSSED_BELT, 300, 300, 350, {"x": BELT, "y": BELT, "z": SCREW}))
    context.machines_changed.emit()
    context.select_machine(kept.id)
    assert field(page, "name").text() == "Kestrel"
    assert "80.000 ± 0.078 steps/mm" in texts(page)
    enter(qtbot, page, "teeth", "16")
    assert "To set: 100.0000 steps/mm" in texts(page)
    page.keep()
    assert store.machines()[0].drives["y"]["teeth"] == 16
    assert store.machines()[0].version == 2
    assert context.machine == store.machines()[0]


def test_all_parts_of_a_drive_come_back(qtbot, page, store, context):
    rack = {
        "kind": "rack",
        "reeving": "half",
        "full_steps": 400,
        "microsteps": 32,
        "module_mm": 1.5,
        "teeth": 15,
        "helix_deg": 19.5283,
        "u_ratio": 0.001,
        "gears": [[43, 12], [3, 1]],
    }
    kept = store.add_machine(Machine("Heron", drives={"x": rack, "y": {"kind": "wheel", "diameter_mm": 12.0}}))
    context.select_machine(kept.id)
    assert field(page, "gears").text() == "43/12 3/1"
    enter(qtbot, page, "name", "Heron 2")
    page.keep()
    assert store.machines()[0].drives["x"] == rack
    assert store.machines()[0].drives["y"]["diameter_mm"] == 12.0


def test_a_stale_change_is_refused_in_words(qtbot, page, store, context, notices):
    kept = store.add_machine(Machine("Kestrel"))
    context.select_machine(kept.id)
    store.change_machine(Machine("Kestrel", note="elsewhere", id=kept.id))
    belt(qtbot, page)
    page.keep()
    assert notices[-1][0] == "warning"
    assert "was changed elsewhere meanwhile" in notices[-1][1]
    assert store.machines()[0].drives == {}


def test_what_is_typed_and_not_saved_is_found_again(qtbot, page, context):
    enter(qtbot, page, "name", "Kestrel")
    enter(qtbot, page, "pitch_mm", "2,0")
    enter(qtbot, page, "gears", "57/")
    enter(qtbot, page, "commanded_mm", "100")
    later = DrivePage(context)
    qtbot.addWidget(later)
    later.show()
    assert field(later, "name").text() == "Kestrel"
    assert field(later, "pitch_mm").text() in ("2.0", "2,0")
    assert field(later, "gears").text() == "57/"
    assert field(later, "commanded_mm").text() == "100"


def test_an_unsaved_new_machine_does_not_move_onto_a_picked_one(qtbot, page, store, context):
    kept = store.add_machine(Machine("Heron", drives={"x": BELT}))
    context.machines_changed.emit()
    enter(qtbot, page, "name", "Kestrel")
    context.select_machine(kept.id)
    assert field(page, "name").text() == "Heron"
    qtbot.mouseClick(button(page, "New machine".replace("w", "&w", 1)), Qt.MouseButton.LeftButton)
    assert context.machine is None
    assert field(page, "name").text() == "Kestrel"
    assert [machine.name for machine in store.machines()] == ["Heron"]


def test_a_value_found_in_the_controller_is_told_by_its_effect(qtbot, page):
    belt(qtbot, page)
    enter(qtbot, page, "found_steps_mm", "80.63")
    assert "Someone may have tuned it: a part of 200 mm comes out 1.6 mm too long (0.79 %)." in texts(page)
    enter(qtbot, page, "found_steps_mm", "100")
    assert "100 steps/mm would belong to 16 teeth where 20 are entered." in texts(page)


def test_the_mix_up_finder_ranks_the_wrong_parts(qtbot, page):
    belt(qtbot, page)
    assert "Caution: axes start without warning." in texts(page)
    enter(qtbot, page, "commanded_mm", "100")
    enter(qtbot, page, "measured_mm", "80")
    says = texts(page)
    assert "Wrong parts that give a ratio of 0.7949 to 0.8051, the likeliest first:" in says
    assert "1. 16 teeth where 20 are entered: 100 mm come out as 80 mm." in says


def test_a_printed_part_may_have_shrunk(qtbot, page):
    belt(qtbot, page)
    enter(qtbot, page, "commanded_mm", "100")
    enter(qtbot, page, "measured_mm", "79.3")
    enter(qtbot, page, "U_measured_mm", "0.1")
    assert "No single wrong part" in texts(page)
    choose(page, "measured_on", "printed part")
    assert "1. 16 teeth where 20 are entered" in texts(page)


def to_limits(qtbot, page):
    """Turn to what the drive allows by the keyboard."""
    page.checks.tabs.setFocus()
    qtbot.keyClick(page.checks.tabs, Qt.Key.Key_Right)
    assert page.checks.limits.isVisible()


def test_what_the_drive_allows_is_said_of_layer_speed_load_and_belt(qtbot, page):
    travels(qtbot, page)
    go_to(page, "Z")
    choose(page, "kind", "screw")
    enter(qtbot, page, "pitch_mm", "2")
    enter(qtbot, page, "starts", "4")
    to_limits(qtbot, page)
    assert "Type a layer height, a speed with the step rate of the controller" in texts(page)
    enter(qtbot, page, "height_mm", "0,15")
    assert "Step grid: Layer 0.15 mm is 3.75 full steps on this drive; layers will not be alike." in texts(page)
    enter(qtbot, page, "speed_mm_s", "300")
    enter(qtbot, page, "step_rate_per_s", "40")
    assert "300 mm/s at 400 steps/mm needs 120000 steps/s; this controller's ceiling is 40000." in texts(page)
    enter(qtbot, page, "load_ratio", "10")
    assert "10 % of the holding torque lets the motor lag by 0.0026 mm" in texts(page)
    assert page.checks.limits.form.field("tone_hz").isHidden()
    go_to(page, "X")
    belt(qtbot, page)
    for key, text in (("belt_width_mm", "6"), ("span_mm", "300"), ("tone_hz", "81")):
        enter(qtbot, page, key, text)
    assert "Belt: Its tension is 19.8 ± 2.2 N" in texts(page)


def test_the_rods_of_a_delta_are_held_against_those_set(qtbot, page):
    choose(page, "motion", "delta")
    belt(qtbot, page)
    to_limits(qtbot, page)
    for key, text in (("rod_mm", "215"), ("rod_measured_mm", "215.5"), ("radius_mm", "105")):
        enter(qtbot, page, key, text)
    assert "Rods: Parts come out +0.156 ± 0.035 % off in X and Y although the bed probes flat" in texts(page)
    enter(qtbot, page, "radius_mm", "315")
    assert "The radius 315 mm is not below the rod length 215 mm" in texts(page)
    assert field(page, "radius_mm").accessibleDescription()
    assert "To set: 80.0000 steps/mm" in texts(page)  # the drive is not at fault


def test_a_rotary_axis_has_steps_per_degree_and_no_lengths(qtbot, page, store):
    enter(qtbot, page, "name", "Teasel")
    belt(qtbot, page)
    go_to(page, "Y")
    choose(page, "kind", "rotary axis")
    shown_fields = {found.objectName() for found in page.form.drives["y"].findChildren(QLineEdit) if found.isVisible()}
    assert shown_fields == {"gears"}
    assert "the motor's shaft turns with the axis; is that so?" in texts(page)
    enter(qtbot, page, "gears", "90/10")
    assert "To set: 80.0000 steps/°" in texts(page) and "200 × 16 × 90/10 ÷ 360° = 80.0000 steps/°" in texts(page)
    assert "0.2°, 0.0125°" in texts(page) and "whole turns are exact" in texts(page)
    assert "Clean" not in texts(page) and "steps/mm" not in page.card.why.text()
    enter(qtbot, page, "commanded_mm", "100")
    enter(qtbot, page, "measured_mm", "80")
    assert "is never compared with a length" in page.checks.mixup.says.text()
    to_limits(qtbot, page)
    assert page.checks.limits.form.field("height_mm").isHidden()
    for key, text in (("step_rate_per_s", "40"), ("speed_mm_s", "60"), ("at_radius_mm", "100")):
        enter(qtbot, page, key, text)
    assert "nothing within 9.82 mm of the centre can be printed" in texts(page)
    assert "At radius 100 mm one microstep is 0.022 mm" in texts(page)
    page.keep()
    assert store.machines()[0].drives["y"]["kind"] == "rotary"
    assert page.form.drives["y"].drive().parts()["gears"] == [[90, 10]]


def test_the_extruder_is_held_against_the_step_rate(qtbot, page):
    belt(qtbot, page)
    to_limits(qtbot, page)
    for key, text in (("step_rate_per_s", "2"), ("extruder_steps_mm", "400"), ("flow_mm3_s", "12")):
        enter(qtbot, page, key, text)
    assert "Extruder" not in page.checks.limits.says.text()
    enter(qtbot, page, "filament_mm", "1,75")
    said = "Extruder: 12 mm³/s of 1.75 mm filament needs 1996 steps/s; this controller's ceiling is 2000."
    assert said in texts(page)


def test_what_is_wanted_of_the_drive_is_kept_with_the_draft(qtbot, page, store, context):
    belt(qtbot, page)
    to_limits(qtbot, page)
    enter(qtbot, page, "height_mm", "0.2")
    again = DrivePage(context)
    qtbot.addWidget(again)
    again.show()
    assert again.checks.limits.form.texts()["height_mm"] == "0.2"


def test_the_open_tab_shows_the_keyboard(qtbot, page):
    page.activateWindow()
    qtbot.waitUntil(page.isActiveWindow)
    for tabs in (page.form.axes, page.checks.tabs):
        page.setFocus()
        without = tabs.grab().toImage()
        tabs.setFocus()
        assert tabs.hasFocus() and tabs.grab().toImage() != without


def test_a_faulty_entry_of_the_finder_leaves_the_drive_alone(qtbot, page):
    belt(qtbot, page)
    enter(qtbot, page, "commanded_mm", "0")
    enter(qtbot, page, "measured_mm", "80")
    assert "80.000 ± 0.078 steps/mm" in texts(page)
    assert "0 mm gives no ratio; enter a length above 0." in field(page, "commanded_mm").accessibleDescription()


def test_every_field_has_a_name_for_assistive_tools(qtbot, page):
    for found in page.findChildren(QLineEdit):
        interface = QAccessible.queryAccessibleInterface(found)
        assert interface.text(QAccessible.Text.Name)
    assert page.card.sketch.accessibleName()
    belt(qtbot, page)
    assert page.card.sketch.accessibleDescription() == (
        "motor of 200 steps × 16 microsteps, 20 teeth, belt 2 mm"
    )


@pytest.mark.parametrize("kind", ["toothed belt", "screw", "rack and pinion", "smooth wheel", "rotary axis"])
def test_nothing_is_cut_at_the_smallest_window(qtbot, page, kind):
    choose(page, "kind", kind)
    for key in ("pitch_mm", "teeth", "starts", "module_mm", "diameter_mm"):
        seen = any(found.isVisible() for found in page.findChildren(QLineEdit, key))
        if seen and (kind, key) != ("rack and pinion", "pitch_mm"):
            enter(qtbot, page, key, "20" if key == "teeth" else "2")
    assert page.minimumSizeHint().width() <= 780
    for label in page.findChildren(QLabel):
        if label.isVisible() and not label.wordWrap():
            assert label.sizeHint().width() <= label.width() + 1, label.text()
        if label.isVisible() and label.wordWrap():
            assert label.heightForWidth(label.width()) <= label.height() + 1, label.text()


def test_the_sketch_draws_every_kind(qtbot, page):
    for kind, parts in (
        ("toothed belt", {"pitch_mm": "2", "teeth": "20", "gears": "3/1"}),
        ("screw", {"pitch_mm": "2", "starts": "1"}),
        ("rack and pinion", {"pitch_mm": "", "module_mm": "1", "teeth": "15"}),
        ("smooth wheel", {"diameter_mm": "12"}),
        ("rotary axis", {"gears": "90/10"}),
    ):
        choose(page, "kind", kind)
        for key, text in parts.items():
            field(page, key).clear()
            enter(qtbot, page, key, text)
        image = page.card.sketch.grab().toImage()
        colours = {
            image.pixelColor(x, y).name() for x in range(0, image.width(), 2) for y in range(0, image.height(), 2)
        }
        assert len(colours) > 5, kind
