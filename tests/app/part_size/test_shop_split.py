"""The page *Shop split*: kept trials in, shares, graph and allowances out, for *Size error* too."""

import numpy as np
import pytest
from PySide6.QtCore import QSize, Qt
from PySide6.QtGui import QImage, QPainter
from PySide6.QtTest import QTest

from app.pages import PAGES
from app.pages.part_size.shop_split import ShopSplitPage
from app.pages.part_size.sizeerror import SizeErrorPage
from app.theme import DARK, LIGHT
from core.errors import StoreError
from core.records.rows import Lot, Machine, TrialState
from tests.app.atpage import show_page, verdict
from tests.core.guidance.shops import BELT, keep_estimate, plant


@pytest.fixture
def shop(context, store):
    machines = [store.add_machine(Machine(n, drives={"x": BELT, "y": BELT})) for n in ("Ash", "Birch", "Cedar")]
    lots = [store.add_lot(Lot(n, "PETG")) for n in ("Slate", "Sand", "Moss")]
    for i in range(2):
        for j in range(2):
            value = -0.004 - 0.001 * j + 0.0002 * i
            keep_estimate(store, "scale_x", value, 0.0002, machines[i].id, lots[j].id, scale_y=value)
    context.select_machine(machines[0].id)
    context.select_lot(lots[1].id)
    return context


@pytest.fixture
def opened(qtbot, context):
    def open_page(kind=ShopSplitPage):
        return show_page(qtbot, kind(context))

    return open_page


def test_it_is_on_the_list_with_its_help(shop):
    (entry,) = [entry for entry in PAGES if entry.key == "shop_split"]
    assert isinstance(entry.build(shop), ShopSplitPage)
    from app.helppane import help_path

    assert help_path(entry).exists() and help_path(entry).with_suffix(".svg").exists()


def test_an_empty_shop_says_what_to_keep(opened, tmp_path):
    page = opened()
    assert "two machines and two lots that share a print tell most" in verdict(page)
    assert page.picture.points() == [] and page.table.rows.rows() == []
    assert not page.report.write("kept", tmp_path / "kept.pdf") and not (tmp_path / "kept.pdf").exists()
    page.picture.sheet.grab()
    page.keep()


def test_shares_and_allowance_are_told_drawn_and_kept(opened, qtbot, shop, store, tmp_path):
    page = opened()
    assert "Shrink allowance" in verdict(page) and "1.00488 ± 0.00098" in verdict(page)
    assert "not on top of an allowance" in verdict(page)
    assert "Next best print: Moss on" in verdict(page) and "axis scale" not in verdict(page).lower()
    names = [text.partition(":")[0] for _, text in page.picture.points()]
    assert names == ["Ash", "Birch", "Cedar", "Moss", "Sand", "Slate"]
    assert "mostly what was known before" in page.picture.points()[2][1]
    rows = page.table.rows.rows()
    assert rows[0][:2] == ("Ash", "machine") and rows[0][4] == "2" and "±" in rows[0][3] and rows[5][0] == "Slate"
    qtbot.mouseClick(page.card.keep_button, Qt.MouseButton.LeftButton)
    (kept,) = store.trials(subject="shop_split")
    assert kept.state is TrialState.KEPT and kept.method == "shop_split 1" and kept.used == (1, 2, 3, 4)
    assert {e.name for e in kept.estimates} == {f"{n}_{a}" for n in ("machine_scale", "shrinkage") for a in "xy"}
    assert page.report.write("kept", tmp_path / "kept.csv") and page.report.write("kept", tmp_path / "kept.pdf")
    report = (tmp_path / "kept.csv").read_text()
    assert "filament lot,Sand (PETG)" in report and "shrinkage X" in report and "±" in report
    in_force = store.in_force("shrink_allowance_x", shop.machine.id, shop.lot.id)
    assert in_force.new == pytest.approx(1.005, abs=3e-4) and in_force.old == 1.0


def test_islands_and_many_prints_are_drawn_in_both_themes(opened, context, store):
    planted = plant(store, 3, 3, np.random.default_rng(1))
    for i, j in ((0, 0), (0, 0), (1, 0), (2, 2)):
        keep_estimate(store, "scale_x", -0.004, 0.0002, planted.machines[i].id, planted.lots[j].id)
    context.select_machine(planted.machines[0].id)
    context.select_lot(planted.lots[0].id)
    page = opened()
    assert "M02 (2)" not in verdict(page) and "No print links M02" in verdict(page)
    assert "island 2" in page.picture.points()[2][1]
    for theme in (LIGHT, DARK):
        for size in (QSize(600, 300), QSize(300, 60)):
            image = QImage(size, QImage.Format.Format_ARGB32)
            painter = QPainter(image)
            page.picture.draw(painter, size, theme)
            painter.end()
    assert "2 islands" in page.picture.accessibleDescription()


def test_without_machine_and_lot_nothing_is_kept(opened, shop, store):
    shop.select_lot(None)
    page = opened()
    assert "Choose a machine and a lot above" in page.card.why_not.text()
    page.keep()
    assert not store.trials(subject="shop_split") and page.settings() == ()


def test_it_follows_what_is_picked_and_kept(opened, shop, store):
    page = opened()
    before = verdict(page)
    shop.select_lot(1)
    assert verdict(page) != before and "1.00387" in verdict(page)
    trial = keep_estimate(store, "scale_x", 0.3, 0.0002, 1, 1)
    shop.kept.emit(trial)
    assert f"Not counted: № {trial.id}: beyond 3 %." in verdict(page)
    others = [keep_estimate(store, "scale_x", 0.0, 0.0002, 1, None).id for _ in range(13)]
    another = keep_estimate(store, "scale_x", 0.4, 0.0002, 1, 1)
    shop.kept.emit(another)
    named = ", ".join(map(str, others[:12]))
    assert f"Not counted: № {trial.id}, {another.id}: beyond 3 %; № {named}, …: no lot." in verdict(page)
    page.axis.setFocus()
    QTest.keyClick(page.axis, Qt.Key.Key_Down)
    assert page.axis.value() == "y" and "Axis Y." in page.picture.accessibleDescription()
    QTest.keyClick(page.tolerance, Qt.Key.Key_Up)
    assert page.tolerance.value() == "f" and page.save_draft()


def test_a_store_that_fails_and_a_drive_that_cannot_be_are_told(opened, shop, store, monkeypatch):
    page = opened()
    said = []
    shop.notice.connect(lambda text, level: said.append(text))

    def fail():
        raise StoreError("The disk is full.")

    monkeypatch.setattr(store, "machines", fail)
    page.recompute()
    assert said == ["The disk is full."]
    monkeypatch.setattr(store, "machines", lambda: (Machine("Ash", drives={"x": {"kind": "belt"}}, id=1),))
    page.recompute()
    assert "Cannot tell yet" in verdict(page) and "missing" in verdict(page)


def test_size_error_shares_its_scale_by_the_other_trials(opened, context, store):
    rng = np.random.default_rng(3)
    planted = plant(store, 2, 2, rng)
    for i, j in ((0, 0), (1, 0), (1, 1)):
        planted.keep(i, j, rng)
    context.select_machine(planted.machines[0].id)
    context.select_lot(planted.lots[0].id)
    page = opened(SizeErrorPage)
    for row, values in enumerate(page.form.model.rows()):
        page.form.model.edit(row, "measured_mm", f"{values['nominal_mm'] * 0.994:.2f}")
    assert "By all trials of the shop" in verdict(page) and "machines of this lot: 2" in verdict(page)
    context.select_lot(planted.lots[1].id)
    context.select_lot(None)
