"""The page *Prediction*: locked first, held against later readings, kept."""

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest

from app.pages import PAGES
from app.pages.part_size.prediction import PredictionPage
from app.pages.part_size.whose import WhosePage
from core.errors import StoreError
from core.records.rows import SettingInForce, Trial, TrialState
from tests.app.atpage import show_page, type_number, verdict
from tests.app.part_size.printed import keep_printed
from tests.core.part_size.printouts import Faults


@pytest.fixture
def opened(qtbot, shop):
    def open_page():
        return show_page(qtbot, PredictionPage(shop))

    return open_page


def test_it_is_on_the_list_with_its_help(shop):
    (entry,) = [entry for entry in PAGES if entry.key == "prediction"]
    assert isinstance(entry.build(shop), PredictionPage)
    from app.helppane import help_path

    assert help_path(entry).exists() and help_path(entry).with_suffix(".svg").exists()


def test_without_a_size_trial_it_says_what_to_keep(opened, shop, store):
    page = opened()
    assert "Keep a size trial of this machine and lot first" in verdict(page)
    shop.select_lot(None)
    assert "Choose a machine and a lot above" in verdict(page)
    page.keep()
    assert not store.trials(subject="prediction") and page.save_draft()


def test_a_prediction_is_locked_then_verified(opened, qtbot, shop, store):
    keep_printed(store, Faults(scale=(-0.004, 0), wall_outset_mm=0.05))
    setting = SettingInForce(1, 1, "shrink_allowance_x", 1.0, 1.004, "1")
    page = opened()
    type_number(page.offset_mm, "-0.05")
    type_number(page.factor_x, "1.004")
    assert "Lock them before it is printed" in verdict(page)
    first = page.table.rows.rows()[0]
    assert first[:2] == ("outside X", "37") and "±" in first[2] and first[3:] == ("", "")
    qtbot.mouseClick(page.card.keep_button, Qt.MouseButton.LeftButton)
    (locked,) = store.trials(subject="prediction")
    assert locked.state is TrialState.KEPT and page.locked.value() == str(locked.id)
    assert "was locked" in verdict(page) and "No size trial of this machine and lot was begun since" in verdict(page)
    assert page.offset_mm.isHidden() and not page.card.keep_button.isEnabled()
    page.keep()
    assert len(store.trials(subject="prediction")) == 1 and not store.trials(subject="verification")
    store.keep(Trial("shop_split", 1, 1), (setting,))
    read = keep_printed(store, Faults(scale=(1.004 * 0.996 - 1, 0)), seed=2)
    shop.kept.emit(read)
    assert "holds." in verdict(page) and "Our own score" in verdict(page) and "E_n" in verdict(page)
    assert [series.x.size for series in page.plot.data.points][1] == len(page.table.rows.rows())
    assert page.table.rows.rows()[0][4] != ""
    qtbot.mouseClick(page.card.keep_button, Qt.MouseButton.LeftButton)
    (verified,) = store.trials(subject="verification")
    assert verified.used == (locked.id, read.id)
    assert store.in_force("shrink_allowance_x", 1, 1).verified_by == verified.id
    page.locked.setFocus()
    QTest.keyClick(page.locked, Qt.Key.Key_Up)
    assert page.locked.value() == "" and "So far" in verdict(page)
    type_number(page.offset_mm, "0.01")
    page.keep()
    assert "So far" in verdict(page) and len(store.trials(subject="prediction")) == 2


def put(store, name, old, new, unit):
    return store.keep(Trial("shop_split", 1, 1), (SettingInForce(1, 1, name, old, new, unit),))


def test_it_begins_with_what_was_put_in_force_since_the_trial(opened, shop, store):
    put(store, "contour_offset", 0.0, -0.02, "mm")
    first = keep_printed(store, Faults(scale=(-0.004, 0), wall_outset_mm=0.03))
    page = opened()
    assert [field.value() for field in page.changes.fields()] == [0.0, 1.0, 1.0]
    assert "put in force since" not in verdict(page)
    put(store, "contour_offset", -0.02, -0.05, "mm")
    put(store, "shrink_allowance_x", 1.0, 1.004, "1")
    page.recompute()
    assert [field.value() for field in page.changes.fields()] == [-0.03, 1.004, 1.0]
    assert "Offset and factors are what was put in force since that trial" in verdict(page)
    page.keep()
    (locked,) = store.trials(subject="prediction")
    conditions = store.trial(locked.id).conditions
    assert (conditions["from_trial"], conditions["offset_mm"]) == (first.id, -0.03)
    assert conditions["factor"] == {"x": 1.004, "y": 1.0}


def test_what_is_typed_over_it_stays_with_its_trial(opened, shop, store):
    first = keep_printed(store, Faults(scale=(-0.004, 0)))
    put(store, "shrink_allowance_x", 1.0, 1.004, "1")
    second = keep_printed(store, Faults(), seed=2)
    page = opened()
    assert page.source.value() == str(second.id)
    assert page.factor_x.value() == 1.0
    type_number(page.factor_y, "1.002")
    page.source.setFocus()
    QTest.keyClick(page.source, Qt.Key.Key_Down)
    assert page.source.value() == str(first.id)
    assert [field.value() for field in page.changes.fields()] == [0.0, 1.004, 1.0]
    put(store, "contour_offset", 0.0, -0.05, "mm")
    QTest.keyClick(page.source, Qt.Key.Key_Up)
    assert [field.value() for field in page.changes.fields()] == [0.0, 1.0, 1.002]
    assert "put in force since" not in verdict(page)
    QTest.keyClick(page.source, Qt.Key.Key_Down)
    assert [field.value() for field in page.changes.fields()] == [-0.05, 1.004, 1.0]


def test_a_failed_prediction_verifies_nothing(opened, shop, store):
    keep_printed(store, Faults(scale=(-0.004, 0)))
    page = opened()
    page.keep()
    store.keep(Trial("shop_split", 1, 1), (SettingInForce(1, 1, "shrink_allowance_x", 1.0, 1.004, "1"),))
    keep_printed(store, Faults(scale=(0.01, 0)), seed=2)
    page.recompute()
    assert "Do not tune by this piece" in verdict(page) and page.settings() == ()
    assert page.plot.data.points[1].flagged.any()


def test_a_changed_prediction_and_a_number_that_cannot_be_are_told(opened, shop, store, monkeypatch):
    keep_printed(store, Faults())
    page = opened()
    type_number(page.offset_mm, "7")
    assert page.offset_mm.accessibleDescription() != ""
    type_number(page.offset_mm, "0")
    page.keep()
    trial = store.trial

    def forged(number):
        found = trial(number)
        if found.subject == "prediction":
            found.conditions["k"] = 9.0
        return found

    monkeypatch.setattr(store, "trial", forged)
    page.recompute()
    assert "Cannot tell" in verdict(page) and "changed after it was locked" in verdict(page)


def test_a_store_that_fails_is_told(opened, shop, store, monkeypatch):
    page, said = opened(), []
    shop.notice.connect(lambda text, level: said.append(text))

    def fail(*_, **__):
        raise StoreError("The disk is full.")

    monkeypatch.setattr(store, "trials", fail)
    page.recompute()
    assert said == ["The disk is full."]


def test_it_begins_with_what_was_tried_on_whose_error(opened, qtbot, shop, store):
    first = keep_printed(store, Faults(scale=(-0.004, 0), wall_outset_mm=0.03))
    whose = show_page(qtbot, WhosePage(shop))
    page = opened()
    assert [field.value() for field in page.changes.fields()] == [0.0, 1.0, 1.0]  # what is advised is not tried yet
    type_number(whose.offset_mm, "-0.025")
    type_number(whose.factor_x, "1.003")
    page.recompute()
    assert [field.value() for field in page.changes.fields()] == [-0.025, 1.003, 1.0]
    assert "what you tried on the page Whose error; nothing was put in force since" in verdict(page)
    type_number(page.factor_y, "1.001")  # typed here it stays
    type_number(whose.offset_mm, "-0.02")
    page.recompute()
    assert [field.value() for field in page.changes.fields()] == [-0.025, 1.003, 1.001]
    assert "tried on the page" not in verdict(page)
    page.keep()
    (locked,) = store.trials(subject="prediction")
    assert store.trial(locked.id).conditions["from_trial"] == first.id
    assert store.trial(locked.id).conditions["factor"] == {"x": 1.003, "y": 1.001}


def test_what_is_in_force_since_goes_before_what_was_tried(opened, qtbot, shop, store):
    first = keep_printed(store, Faults(scale=(-0.004, 0), wall_outset_mm=0.03))
    second = keep_printed(store, Faults(wall_outset_mm=0.03), seed=2)
    whose = show_page(qtbot, WhosePage(shop))
    advised = whose.offset_mm.value()
    type_number(whose.offset_mm, "-0.05")
    whose.trial.set_value(str(first.id))
    whose.recompute()
    whose.trial.set_value(str(second.id))
    whose.recompute()
    assert whose.offset_mm.value() == -0.05  # each trial keeps what was tried on it
    page = opened()
    assert page.offset_mm.value() == -0.05 and page.source.value() == str(second.id)
    put(store, "contour_offset", 0.0, -0.03, "mm")
    page.recompute()
    assert page.offset_mm.value() == -0.03 and "put in force since that trial" in verdict(page)
    type_number(whose.offset_mm, f"{advised:g}")
    assert shop.tried == {}
