"""The page *Ringing*, by keyboard: ripples or a log in, an acceleration out."""

import math
import time

import numpy as np
import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QLineEdit

from app.pages.motion_trials.ringing import RingingPage
from core.records.rows import TrialState
from tests.app.atpage import choose, verdict
from tests.app.motion_trials.motionpages import in_sight, open_page, press, type_readings, type_setting


@pytest.fixture
def page(qtbot, shop):
    return open_page(qtbot, shop, RingingPage)


def read_ripple(page, row, distance, crests="4"):
    page.form.model.edit(row, "crests", crests)
    page.form.model.edit(row, "measured_mm", distance)


def count_crests(qtbot, page, counts):
    """Type into the column of the crests like a person, Enter after each; go back up with the arrow."""
    table = page.form.table
    place = [column.key for column in page.form.model.columns].index("crests")
    table.setFocus()
    table.setCurrentIndex(page.form.model.index(0, place))
    for count in counts:
        QTest.keyClicks(table, count)
        qtbot.waitUntil(lambda: isinstance(QApplication.focusWidget(), QLineEdit))
        QTest.keyClick(QApplication.focusWidget(), Qt.Key.Key_Return)
        qtbot.wait(1)
    while table.current_row() > 0:
        QTest.keyClick(table, Qt.Key.Key_Up)


def test_ripples_typed_by_keyboard_alone_give_an_acceleration(qtbot, page, store, shop):
    assert page.form.settings.field("most_mm_s2").value() == 4000.0
    assert "Hands, hair" in page.form.caution.text() and "ocal rules" in page.form.caution.text()
    count_crests(qtbot, page, "444")
    assert "No ripple yet" in in_sight(page)
    type_readings(qtbot, page, ["6.0"])
    assert "do not tell" in verdict(page) or "could be a mark" in verdict(page)
    type_readings(qtbot, page, ["9.0", "13.0"])
    assert "Accelerate X with at most 947 mm/s²" in verdict(page) and "rings at 40.0" in verdict(page)
    assert page.form.model.text(0, "error") == "40.0"
    assert page.plot.data.curves[0].name == "ringing, 40.00 ± 0.76 Hz"
    page.keep()
    (kept,) = (t for t in store.trials(subject="ringing") if t.state is TrialState.KEPT)
    assert {e.name for e in kept.estimates} == {"frequency_x", "acceleration_limit_x"}
    assert kept.conditions["payload_g"] == 0.0
    now = store.in_force("acceleration_x", shop.machine.id)
    assert now.new == 947.0 and now.lot_id is None


def test_the_same_acceleration_again_verifies_it(page, store, shop):
    for _ in range(2):
        for row, text in enumerate(("6.0", "9.0", "13.0")):
            read_ripple(page, row, text)
        page.keep()
        page.form.new_button.click()
    assert store.in_force("acceleration_x", shop.machine.id).verified_by is not None


def test_a_draft_comes_back_with_a_lot_picked(qtbot, page, shop):
    read_ripple(page, 1, "9,05")
    again = open_page(qtbot, shop, RingingPage)
    assert again.form.model.rows()[1]["raw"] == "9,05" and "Print the wall at" in verdict(again)


def test_heights_tell_the_damping_and_the_picture_can_be_the_acceleration(page):
    for row, text in enumerate(("6.0", "9.0", "13.0")):
        read_ripple(page, row, text)
        page.form.model.edit(row, "first_um", "60")
        page.form.model.edit(row, "last_um", "20")
    assert "damping X" in verdict(page)
    choose(page.view, "acceleration")
    assert page.plot.data.title == "Ripple by acceleration"
    assert [event.name for event in page.plot.data.events] == ["by ripple 947 ± 36 mm/s²"]
    type_setting(page, "most_mm_s2", "800")
    assert page.plot.data.events == () and "allows all of this machine's 800" in verdict(page)
    type_setting(page, "speed_mm_s", "900")
    assert page.plot.data.point_count == 1  # no ramp of whole periods so gentle


def test_a_mark_of_the_belt_is_named_and_puts_nothing_in_force(page, store, shop):
    for row in range(3):
        read_ripple(page, row, "8.0")
    assert "Mend the mechanics" in verdict(page) and "tooth of the belt, 2 mm" in verdict(page)
    choose(page.view, "acceleration")
    assert page.plot.data.title == "Wavelength"
    page.keep()
    assert store.in_force("acceleration_x", shop.machine.id) is None


def test_what_cannot_be_is_said_at_its_cell(page):
    read_ripple(page, 0, "6")
    page.form.model.edit(0, "first_um", "20")
    assert "neither" in verdict(page) and page.form.model.problem(0, "last_um")
    page.form.model.edit(0, "last_um", "30")
    assert "dies away" in verdict(page)
    page.form.model.edit(0, "measured_mm", "600")
    assert page.form.model.problem(0, "measured_mm")
    type_setting(page, "visible_mm", "")
    assert "needed" in verdict(page)


def test_a_distance_whose_crests_nobody_counted_is_not_read(qtbot, page):
    """88 mm at 60 mm/s alone once told to mend the mechanics, by a count that nobody had typed."""
    assert [row.get("crests") for row in page.form.model.rows()] == [None] * 3
    type_readings(qtbot, page, ["88"])
    assert "Cannot tell yet: Row 1: count the crests" in verdict(page) and not page.card.card.can_keep
    assert "count the crests" in page.form.model.problem(0, "crests") and page.plot.data.point_count == 0
    assert page.form.model.text(0, "error") == ""
    read_ripple(page, 1, "9.0")
    assert page.plot.data.point_count == 1 and "135 mm/s too" in verdict(page)  # the row that is whole is read
    assert "count the crests" in page.form.model.mark(0) and not page.form.model.mark(1)
    page.form.model.edit(0, "crests", "3.5")
    assert "3.5 lies between two" in page.form.model.mark(0) and page.plot.data.point_count == 1
    page.form.model.edit(0, "crests", "4")
    page.form.model.edit(0, "speed_mm_s", "")
    assert "type the speed" in page.form.model.mark(0)


def test_one_ripple_at_one_speed_asks_for_a_second_speed_and_tells_no_length(page, store, shop):
    read_ripple(page, 0, "88")
    says = verdict(page)
    assert "Cannot tell yet: Print the wall at 90 mm/s too" in says and "2.727 ± 0.029" in says
    assert "Mend the mechanics" not in says and "Accelerate" not in says and "22.0" not in says
    assert [curve.name for curve in page.plot.data.curves] == ["if it rings", "if it is a mark"]
    page.keep()
    (kept,) = (t for t in store.trials(subject="ringing") if t.state is TrialState.KEPT)
    assert kept.estimates == () and store.in_force("acceleration_x", shop.machine.id) is None


def test_a_ripple_is_added(page):
    press(page.form.add_button)
    assert page.form.model.rowCount() == 4


def log_text(hz=38.0, seconds=40, rate=400, seed=2):
    rng = np.random.default_rng(seed)
    w, zeta, x, v, lines = 2 * math.pi * hz, 0.03, 0.0, 0.0, ["time,acceleration"]
    for n, force in enumerate(rng.normal(0, 50, seconds * rate)):
        a = force - 2 * zeta * w * v - w * w * x
        v += a / rate
        x += v / rate
        lines.append(f"{n / rate:.5f},{a:.4f}")
    return "\n".join(lines)


def test_a_log_is_read_beside_the_window_and_kept_to_be_judged_again(qtbot, page, store, shop, tmp_path, monkeypatch):
    choose(page.form.settings.field("read"), "log")
    assert page.card.card is None
    path = tmp_path / "shake.csv"
    path.write_text(log_text(), encoding="utf-8")
    monkeypatch.setattr("PySide6.QtWidgets.QFileDialog.getOpenFileName", lambda *_: (str(path), ""))
    press(page.form.log_button)
    qtbot.waitUntil(lambda: "rings at" in verdict(page), timeout=8000)
    assert page.plot.data.title == "Spectrum of the log" and "shake.csv" in verdict(page)
    page.keep()
    (kept,) = (t for t in store.trials(subject="ringing") if t.state is TrialState.KEPT)
    assert kept.conditions["log"] == "shake.csv" and kept.method == "spectrum 1"
    assert {"frequency_x", "peak_1_x", "acceleration_limit_x"} <= {e.name for e in kept.estimates}
    assert page.plot.data.point_count > 0  # the picture stays
    assert not page.form.entry.parentWidget().isVisible() and not page.form.caution.isVisible()  # no empty card
    page.form.new_button.click()
    choose(page.form.settings.field("read"), "log")
    assert page.card.card is None  # the log of the trial before is not that of the next one
    assert page.form.entry.parentWidget().isVisible() and page.form.caution.isVisible()
    another_day = open_page(qtbot, shop, RingingPage)
    other = tmp_path / "other" / "shake.csv"
    other.parent.mkdir()
    other.write_text(log_text(hz=22.0), encoding="utf-8")
    another_day.read_log_file(str(other))
    qtbot.waitUntil(lambda: another_day.plot.data.point_count > 0, timeout=8000)
    choose(another_day.picker, str(kept.id))
    qtbot.waitUntil(lambda: another_day.plot.data.point_count > 0, timeout=8000)
    assert another_day.plot.data.events[0].x == pytest.approx(38, abs=1.5)
    choose(another_day.picker, "")
    assert another_day.plot.data.events[0].x == pytest.approx(22, abs=1.5)


def test_a_log_too_large_or_damaged_leaves_its_peaks(qtbot, page, store, tmp_path, context, monkeypatch):
    said = []
    context.notice.connect(lambda text, level: said.append(text))
    path = tmp_path / "shake.csv"
    path.write_text(log_text(), encoding="utf-8")
    for most, sentence in ((10, "too large to be stored"), (2**22, "")):
        monkeypatch.setattr("core.records.log.LARGEST_BYTES", most)
        page.read_log_file(str(path))
        qtbot.waitUntil(lambda: page.result is not None, timeout=8000)
        page.keep()
        assert sentence in said[-1] and "rings at" in verdict(page)
        page.form.new_button.click()
    kept = [t for t in store.trials(subject="ringing") if t.state is TrialState.KEPT]
    assert [len(store.attachments(trial_id=t.id)) for t in kept] == [1, 0]  # newest first
    choose(page.picker, str(kept[1].id))
    assert page.plot.data.point_count == 0 and "rings at" in verdict(page)
    assert "shake.csv is not here" in page.plot.empty.text()
    monkeypatch.setattr(type(store), "attachment_content", lambda self, number: b"\x1f\x8bno")
    choose(page.picker, str(kept[0].id))
    qtbot.waitUntil(lambda: "damaged" in said[-1], timeout=5000)
    assert "rings at" in verdict(page) and "damaged" in page.plot.empty.text()


def test_a_draft_names_the_log_that_is_not_here(qtbot, page, shop, tmp_path):
    read_ripple(page, 0, "6.0")
    path = tmp_path / "shake.csv"
    path.write_text(log_text(), encoding="utf-8")
    page.read_log_file(str(path))
    qtbot.waitUntil(lambda: "rings at" in verdict(page) and page.result.spectrum is not None, timeout=8000)
    again = open_page(qtbot, shop, RingingPage)
    assert "shake.csv is not here; read it again" in verdict(again)


def test_logs_that_cannot_be_read_are_told(qtbot, page, tmp_path, context):
    said = []
    context.notice.connect(lambda text, level: said.append(text))
    page.read_log_file(str(tmp_path / "none.csv"))
    assert "none.csv is not there" in said[-1] and "none.csv is not there" in page.plot.empty.text()
    bad = tmp_path / "bad.csv"
    bad.write_text("0,1\nabc,def\n0.1,x", encoding="utf-8")
    page.read_log_file(str(bad))
    qtbot.waitUntil(lambda: len(said) == 2, timeout=5000)
    assert "bad.csv: Line 3" in said[-1]
    short = tmp_path / "short.csv"
    short.write_text("0,1\n0.1,2", encoding="utf-8")
    page.read_log_file(str(short))
    qtbot.waitUntil(lambda: "256 samples" in verdict(page), timeout=5000)
    assert "256 samples" in page.plot.empty.text() and "Line 3" not in in_sight(page)


def test_a_log_that_failed_is_said_in_place_of_the_ripples(qtbot, page, tmp_path, monkeypatch):
    assert "No ripple yet" in in_sight(page) and "show expected" not in in_sight(page)
    bad = tmp_path / "bad.csv"
    bad.write_text("0,1\nabc,def\n0.1,x", encoding="utf-8")
    monkeypatch.setattr("PySide6.QtWidgets.QFileDialog.getOpenFileName", lambda *_: (str(bad), ""))
    press(page.form.log_button)
    qtbot.waitUntil(lambda: "Line 3" in verdict(page), timeout=8000)
    assert "bad.csv: Line 3" in page.plot.empty.text() and page.plot.empty.isVisible()
    assert page.plot.heading.text() == "Spectrum of the log" and "No ripple yet" not in in_sight(page)
    assert not page.form.table.isVisible() and not page.form.entry.isVisible()
    assert "Add a" not in in_sight(page) and "Fix an accelerometer" in in_sight(page)
    page.take_focus()
    assert page.form.log_button.hasFocus()
    choose(page.form.settings.field("read"), "ripples")
    assert page.form.table.isVisible() and "No ripple yet" in in_sight(page) and "Add a" in in_sight(page)
    count_crests(qtbot, page, "4")
    type_readings(qtbot, page, ["6.0"])
    with qtbot.waitSignal(page.log.failed, timeout=8000):
        press(page.form.log_button)
    assert page.form.table.isVisible() and "rings at" in verdict(page)  # what is read already stays in sight
    good = tmp_path / "shake.csv"
    good.write_text(log_text(), encoding="utf-8")
    page.read_log_file(str(good))
    qtbot.waitUntil(lambda: page.plot.data.title == "Spectrum of the log", timeout=8000)
    assert page.plot.data.point_count > 0 and "Line 3" not in in_sight(page)
    with qtbot.waitSignal(page.log.failed, timeout=8000):
        page.read_log_file(str(bad))
    assert page.plot.data.point_count > 0 and "shake.csv" in verdict(page)  # the log before still answers


def test_no_log_yet_is_said_where_a_log_is_read(page):
    choose(page.form.settings.field("read"), "log")
    assert "No log yet" in in_sight(page) and "No ripple yet" not in in_sight(page)
    assert not page.form.table.isVisible()


def test_a_log_of_noise_has_a_picture_all_the_same(qtbot, page, tmp_path):
    rng = np.random.default_rng(4)
    path = tmp_path / "noise.csv"
    path.write_text("\n".join(f"{n / 400},{v:.4f}" for n, v in enumerate(rng.normal(size=12_000))), encoding="utf-8")
    page.read_log_file(str(path))
    qtbot.waitUntil(lambda: "stands out from the noise" in verdict(page), timeout=8000)
    assert page.plot.data.point_count == 1


def test_reading_a_log_shows_how_far_it_is_and_is_stopped(qtbot, page, tmp_path, monkeypatch):
    def slow(_text, step):
        while True:
            step(0.4)
            time.sleep(0.005)

    monkeypatch.setattr("core.motion_trials.spectrum.read_log", slow)
    path = tmp_path / "long.csv"
    path.write_text(log_text(), encoding="utf-8")
    assert not page.waiting.isVisible()
    page.read_log_file(str(path))
    qtbot.waitUntil(lambda: page.waiting.isVisible() and page.waiting.bar.value() == 40)
    with qtbot.waitSignal(page.log.job.stopped):
        page.waiting.stop.click()
    assert not page.waiting.isVisible() and page.log.samples is None
