"""A piece read back on *Size error*: rows filled in, predictions grey beside the cells, the next reading asked for."""

import numpy as np
import pytest
from PySide6.QtCore import Qt
from PySide6.QtGui import QColor, QGuiApplication
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QCheckBox

from app.pages.part_size.sizeerror import SizeErrorPage
from app.theme import LIGHT
from core.errors import StoreError
from core.pieces.catalogue import SIZE_SETS, plan_set
from core.records.rows import Lot, Machine, Trial
from tests.core.part_size.printed import Printer, gauge_sizes

BELT = {"kind": "belt", "pitch_mm": 2.0, "teeth": 20, "full_steps": 200, "microsteps": 16}


@pytest.fixture
def shop(context, store):
    machine = store.add_machine(Machine("Bramble", drives={"x": BELT, "y": BELT}))
    context.select_machine(machine.id)
    context.select_lot(store.add_lot(Lot("Slate 7", "PETG")).id)
    return context


@pytest.fixture
def page(qtbot, shop):
    page = SizeErrorPage(shop)
    qtbot.addWidget(page)
    page.resize(1280, 760)
    page.show()
    qtbot.waitExposed(page)
    page.take_focus()
    return page


def choose(page, key):
    page.form.piece.setCurrentIndex(page.form.piece.findData(key))


def enter(page, texts):
    for row, text in enumerate(texts):
        page.form.model.edit(row, "measured_mm", text)


def expected_text(page, row):
    model = page.form.model
    column = [c.key for c in model.columns].index("expected")
    return model.index(row, column).data(), model.index(row, column).data(Qt.ItemDataRole.ForegroundRole)


@pytest.mark.parametrize("key", [key for key in SIZE_SETS if not key.startswith("half")])
def test_choosing_a_piece_fills_nominals_kinds_and_axes(page, key):
    choose(page, "comb_y" if key == "comb_x" else "comb_x")
    choose(page, key)
    gauges = [g for g in plan_set(key).gauges if "diagonal" not in g.kind]
    rows = page.form.model.rows()
    assert [(r["feature"], r["kind"], r["axis"], r["nominal_mm"]) for r in rows] == [
        (g.name, g.kind, g.axis, g.nominal_mm) for g in gauges
    ]
    for row in (0, len(rows) - 1):
        page.form.table.go_to(row)
        says = page.form.sketch.accessibleDescription()
        assert page.form.sketch.isVisible() and says.endswith(f": {gauges[row].says}")
        page.form.sketch.grab()


def test_the_piece_is_planned_for_the_picked_machine(page, store, shop):
    small = store.add_machine(Machine("Thistle", travel_x_mm=100, travel_y_mm=100, drives={"x": BELT, "y": BELT}))
    shop.machines_changed.emit()
    shop.select_machine(small.id)
    assert [row["nominal_mm"] for row in page.form.model.rows()] == [88, 48, 8, 96, 72, 32, 40, 40]
    choose(page, "half_combs_x")
    assert "Take the size comb" in page.form.piece.accessibleDescription()
    assert len(page.form.model.rows()) == 8
    tiny = store.add_machine(Machine("Moss", travel_x_mm=70, travel_y_mm=70, travel_z_mm=70))
    none = store.add_machine(Machine("Fern", travel_x_mm=30, travel_y_mm=30, travel_z_mm=30))
    shop.machines_changed.emit()
    shop.select_machine(tiny.id)
    assert page.form.piece.value() == "own"
    shop.select_machine(none.id)
    assert page.form.piece.value() == "comb_x"  # nothing is known that suits: the usual comb


def test_a_trial_keeps_the_lengths_it_was_planned_with(page, store, shop, qtbot):
    enter(page, ["128.1"])
    machine = shop.machine
    store.change_machine(Machine("Bramble", travel_x_mm=100, id=machine.id, version=machine.version))
    shop.machines_changed.emit()
    again = SizeErrorPage(shop)
    qtbot.addWidget(again)
    again.show()
    qtbot.waitExposed(again)
    assert again.form.model.rows()[1]["nominal_mm"] == 88 and again.form.sketch.isVisible()


def test_a_trial_of_another_version_is_shown_by_its_rows(page, store, shop, qtbot):
    enter(page, ["128.1"])
    draft = page.draft
    conditions = {**draft.conditions, "piece_bounds": {"bed_x_mm": 1.0, "unknown": 2}}
    readings = {key: list(values) for key, values in draft.readings.items()}
    store.save_draft(Trial("sizeerror", draft.machine_id, draft.lot_id, readings=readings, conditions=conditions))
    again = SizeErrorPage(shop)
    qtbot.addWidget(again)
    again.show()
    qtbot.waitExposed(again)
    assert again.form.model.rows()[0]["raw"] == "128.1" and not again.form.sketch.isVisible()


COMB = "127.76 87.86 47.97 8.06 139.67 111.64 71.74 31.85".split()  # noqa: SIM905 - scale -0.25 %, outset 0.04, B 0.06


def test_the_prediction_stands_grey_beside_a_reading_that_is_in_and_hidden_before(page):
    enter(page, COMB)
    text, ink = expected_text(page, 0)
    assert text.startswith("127.7") and "±" in text and ink == QColor(LIGHT.quiet)
    assert expected_text(page, 8)[0] == ""
    page.form.entry.findChild(QCheckBox).click()
    assert expected_text(page, 8)[0] == "" or "±" in expected_text(page, 8)[0]
    page.form.model.edit(8, "measured_mm", "79.66")
    assert expected_text(page, 9)[0].startswith("39.7")
    page.form.entry.findChild(QCheckBox).click()
    assert expected_text(page, 9)[0] == ""


def test_what_is_expected_is_out_of_the_way_in_a_small_window(page):
    column = [c.key for c in page.form.model.columns].index("expected")
    assert not page.form.table.isColumnHidden(column)
    page.resize(800, 600)
    assert page.form.table.isColumnHidden(column)


def test_a_value_far_off_its_prediction_is_questioned_at_once(page):
    """39.2 for 40 lies within 1 mm of its nominal, where nothing was known yet, but not where the others point."""
    enter(page, COMB)
    page.form.model.edit(8, "measured_mm", "79.66")
    page.form.table.go_to(9)
    page.take_focus()
    QTest.keyClicks(QGuiApplication.focusObject(), "39.2")
    QTest.qWait(60)
    QTest.keyClick(QGuiApplication.focusObject(), Qt.Key.Key_Return)
    assert page.form.model.question(9) is not None and "39.2 mm for 39.7" in page.form.model.question(9).says
    choose(page, "own")
    page.form.model.insert_row(0, {"axis": "x", "kind": "closed_hole", "nominal_mm": 40.0})
    page.form.model.edit(0, "measured_mm", "39.2")
    assert page.form.model.question(0) is None


def test_the_next_reading_is_asked_for_until_none_helps(page):
    enter(page, COMB[:4])
    body = page.card.body.toPlainText
    assert "Read next" in body()
    enter(page, COMB)
    assert "Read next" in body() and "takes the standard uncertainty of" in body()
    enter(page, [*COMB, "79.66", "39.75"])
    assert "Read next" not in body()


def lock_prediction(store, shop):
    """What the page Prediction keeps: errors of features with U, here of two gauges of the comb."""
    return store.keep(
        Trial(
            "prediction", shop.machine.id, shop.lot.id,
            readings={"axis": ["x", "x"], "kind": ["tooth", "notch"], "nominal_mm": [128.0, 112.0],
                      "as_is_mm": [-0.2, -0.3], "predicted_mm": [-0.24, -0.36], "U_mm": [0.04, 0.05]},
            conditions={"k": 2.0},
        )
    )  # fmt: skip


def test_what_was_predicted_stands_beside_the_cells_before_the_first_reading(page, store, shop):
    lock_prediction(store, shop)
    page.hide()
    page.show()
    assert expected_text(page, 0)[0] == ""  # hidden, so that nobody reads what he expects
    page.form.entry.findChild(QCheckBox).click()
    assert expected_text(page, 0) == ("127.76 ± 0.04", QColor(LIGHT.quiet))
    assert expected_text(page, 5)[0] == "111.64 ± 0.05" and expected_text(page, 1)[0] == ""
    page.form.model.edit(0, "measured_mm", "128.20")  # 0.4 mm off: at once
    assert page.form.model.question(0) is not None
    page.form.model.edit(0, "measured_mm", "127.75")
    assert page.form.model.question(0) is None


def test_a_prediction_counts_until_a_size_trial_is_kept_after_it(page, store, shop):
    lock_prediction(store, shop)
    enter(page, [*COMB, "79.66", "39.75"])
    page.keep()
    page.begin_anew()
    page.form.entry.findChild(QCheckBox).click()
    page.hide()
    page.show()
    assert expected_text(page, 0)[0] == ""
    shop.select_lot(None)
    assert expected_text(page, 0)[0] == ""


def test_a_store_that_fails_expects_nothing(page, store, shop, monkeypatch):
    lock_prediction(store, shop)

    def fail(*_arguments, **_named):
        raise StoreError("the disk is gone")

    monkeypatch.setattr(store, "trials", fail)
    page.hide()
    page.show()
    page.form.entry.findChild(QCheckBox).click()
    assert expected_text(page, 0)[0] == ""


TRUTHS = {
    "scale_x": -0.0031, "scale_y": -0.0018, "wall_outset": 0.052, "lost_motion_x": 0.11, "lost_motion_y": 0.04,
}  # fmt: skip


@pytest.mark.parametrize("seed", [1, 2, 3])
def test_a_printed_comb_read_through_the_window_gives_all_truths_back(page, seed):
    """A path follower with play, scale and outset prints both combs' contours; a hand reads them to 0.01 mm."""
    rng = np.random.default_rng(seed)
    scale, play = ((TRUTHS[f"{name}_x"], TRUTHS[f"{name}_y"]) for name in ("scale", "lost_motion"))
    printer = Printer(scale, play, TRUTHS["wall_outset"])
    choose(page, "comb_xy")
    sizes = [size for piece in plan_set("comb_xy").pieces for size in gauge_sizes(printer, piece)]
    rows = page.form.model.rows()
    assert [row["nominal_mm"] for row in rows] == [g.nominal_mm for g in plan_set("comb_xy").gauges]
    for row, size in enumerate(sizes):
        line = page.form.entry.focusProxy()
        page.form.table.go_to(row)
        line.setText(f"{size + 0.008 * rng.standard_normal():.2f}")
        line.setModified(True)
        QTest.keyClick(line, Qt.Key.Key_Return)
    found = {e.name: e for e in page.result.judgement.estimates()}
    assert set(found) == set(TRUTHS)
    for name, truth in TRUTHS.items():
        assert abs(found[name].value - truth) <= found[name].U, name
    assert "Mend the mechanics" in page.card.body.toPlainText()
