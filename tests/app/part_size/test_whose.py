"""The page *Whose error*: bars by cause, a change tried on the shop's parts, by keyboard."""

import re

import pytest
from PySide6.QtCore import QSize, Qt
from PySide6.QtGui import QImage, QPainter
from PySide6.QtTest import QTest

from app.pages import PAGES
from app.pages.part_size.whose import WhosePage
from app.theme import DARK, LIGHT
from core.errors import StoreError
from tests.app.atpage import show_page, type_number, verdict
from tests.app.part_size.printed import keep_printed
from tests.core.part_size.printouts import Faults


@pytest.fixture
def opened(qtbot, shop):
    def open_page():
        return show_page(qtbot, WhosePage(shop))

    return open_page


def test_it_is_on_the_list_with_its_help(shop):
    (entry,) = [entry for entry in PAGES if entry.key == "whose"]
    assert isinstance(entry.build(shop), WhosePage)
    from app.helppane import help_path

    assert help_path(entry).exists()


def test_without_a_trial_it_says_so(opened):
    page = opened()
    assert "Keep a size trial of this machine and lot first" in verdict(page) and page.picture.points() == []
    page.picture.sheet.grab()
    assert page.save_draft() and page.record().readings == {}
    page.context.select_lot(None)
    assert "Choose a machine and a lot above; of the two a size trial must be kept" in verdict(page)


def test_causes_and_the_advised_change_are_shown(opened, store):
    keep_printed(store, Faults(scale=(-0.004, 0), wall_outset_mm=0.05))
    page = opened()
    assert page.offset_mm.value() == pytest.approx(-0.05, abs=0.01)
    assert page.factor_x.value() == pytest.approx(1.004, abs=5e-4) and page.factor_y.value() == 1.0
    assert "Stop meter" in verdict(page) and "with a probability of more than 99 %" in verdict(page)
    assert verdict(page).count("A wrong move") == 2 and "of a filament that does not shrink" in verdict(page)
    assert len(re.findall(r"it would then be [+−][0-9.]+ ± [0-9.]+ mm off\.", verdict(page))) == 2
    assert "This trial does not tell these parts of the list: outside Y 160 mm; height Z 50 mm" in verdict(page)
    first = page.picture.points()[0][1]
    assert page.picture.points()[0][1].partition(":")[0].endswith(" mm")  # a part is named with the unit of its length
    assert "unexplained" in first and "wall outset" in first and "±" in first
    rows = page.table.rows.rows()
    assert rows[2][0] == "outside X 180 mm" and rows[2][1].startswith("−0.6") and rows[2][3] == ""


def test_a_change_that_makes_parts_worse_is_marked(opened, shop, store):
    keep_printed(store, Faults(wall_outset_mm=0.05))
    page = opened()
    type_number(page.offset_mm, "0.1")
    assert "These parts get worse by the change" in verdict(page)
    assert any(row[3] == "gets worse" for row in page.table.rows.rows())
    type_number(page.offset_mm, "-0.09")
    assert any(row[3] == "not told apart" for row in page.table.rows.rows())
    said = []
    shop.notice.connect(lambda text, level: said.append(text))
    page.keep()
    assert "lock a prediction" in said[-1]


def test_the_shops_own_parts_and_a_new_trial_are_followed(opened, shop, store):
    keep_printed(store, Faults(wall_outset_mm=0.05))
    page = opened()
    parts = [{"name": "lid", "axis": "x", "kind": "outside", "nominal_mm": 64.0}]
    store.set_shop_value("parts", {"parts": parts}, None)
    newer = keep_printed(store, Faults(wall_outset_mm=-0.05), seed=2)
    shop.kept.emit(newer)
    assert [row[0] for row in page.table.rows.rows()] == ["lid, outside X 64 mm"]
    page.trial.setFocus()
    QTest.keyClick(page.trial, Qt.Key.Key_Up)
    assert page.trial.value() == str(newer.id) and page.offset_mm.value() == pytest.approx(0.05, abs=0.01)


def test_the_parts_of_the_shop_are_typed_in_one_line(opened, store):
    keep_printed(store, Faults(scale=(-0.004, 0), wall_outset_mm=0.05))
    page = opened()
    assert page.parts.text() == "25 x; 70 x; 180 x; 35 x window; 160 y; 50 z"
    assert page.parts.width() > 3 * page.offset_mm.width() and page.parts.y() > page.offset_mm.y()
    type_number(page.parts, "lid 64,5; 8 hole; 30 window")
    assert [row[0] for row in page.table.rows.rows()] == ["lid, outside X 64.5 mm", "closed window X 30 mm"]
    assert "round bore X 8 mm" in verdict(page) and "takes lid, outside X 64.5 mm from −0.1" in verdict(page)
    assert page.parts.text() == "lid 64.5 x; 8 x hole; 30 x window"
    assert len(store.shop_value("parts").value["parts"]) == 3
    type_number(page.parts, "lid; 20")
    assert "“lid” has no length" in page.parts.accessibleDescription() and page.parts.text() == "lid; 20"
    assert len(store.shop_value("parts").value["parts"]) == 3


def test_a_list_changed_on_another_seat_is_told(opened, shop, store, monkeypatch):
    keep_printed(store, Faults())
    page, said = opened(), []
    shop.notice.connect(lambda text, level: said.append(text))
    other = {"parts": [{"name": "", "axis": "x", "kind": "outside", "nominal_mm": 5.0}]}
    store.set_shop_value("parts", other, None)
    type_number(page.parts, "64")
    assert "changed elsewhere meanwhile" in page.parts.accessibleDescription()

    def fail(*_, **__):
        raise StoreError("The disk is full.")

    monkeypatch.setattr(store, "set_shop_value", fail)
    type_number(page.parts, "65")
    assert said == ["The disk is full."]


def test_the_key_names_every_cause_however_narrow(opened, store):
    """Each name as wide as drawn lies inside the sheet, none over another."""
    from app.widgets.barsview import _key

    keep_printed(store, Faults(scale=(-0.004, 0), wall_outset_mm=0.05, lost_motion_mm=(0.05, 0)))
    page = opened()
    causes, measure = page.picture.data.causes, page.fontMetrics()
    for width in (900, 300, 200):
        placed = _key(causes, width, measure)
        assert sorted(place for place, _, _ in placed) == list(range(len(causes)))
        assert all(left + measure.horizontalAdvance(causes[place]) + 17 <= width for place, left, _ in placed)
    assert len({top for _, _, top in placed}) > 1


def test_it_draws_in_both_themes_and_small(opened, store):
    keep_printed(store, Faults(scale=(-0.004, 0), wall_outset_mm=0.05, lost_motion_mm=(0.05, 0)))
    page = opened()
    for theme in (LIGHT, DARK):
        for size in (QSize(700, 400), QSize(200, 60)):
            image = QImage(size, QImage.Format.Format_ARGB32)
            painter = QPainter(image)
            page.picture.draw(painter, size, theme)
            painter.end()


def test_a_list_that_cannot_be_and_a_store_that_fails_are_told(opened, shop, store, monkeypatch):
    keep_printed(store, Faults())
    store.set_shop_value("parts", {"parts": [{"name": "a", "axis": "x", "kind": "box", "nominal_mm": 1}]}, None)
    page, said = opened(), []
    assert "Cannot tell yet" in verdict(page) and "not a kind" in verdict(page)
    shop.notice.connect(lambda text, level: said.append(text))

    def fail(*_, **__):
        raise StoreError("The disk is full.")

    monkeypatch.setattr(store, "shop_value", fail)
    page.recompute()
    assert said == ["The disk is full."]
