"""Filament and flow in the window itself: what is kept by keyboard is in force, with the value it was before."""

import pytest
from PySide6.QtCore import QSettings, Qt
from PySide6.QtTest import QTest

from app.mainwindow import MainWindow
from app.pages.filament.diameter import DiameterPage
from app.pages.filament.feed import FeedPage
from app.pages.flow_trials.mass import MassPage
from app.pages.part_size.sizeerror import SizeErrorPage
from core.part_size.features import FEATURES, FeatureKind
from core.records.rows import Lot, Machine
from tests.app.atpage import type_readings
from tests.app.flow_trials.flowpages import type_setting

# A thin strand at ten places, largest and at 90°.
THIN = "1.704 1.701 1.705 1.700 1.703 1.699 1.704 1.702 1.703 1.700 1.705 1.701 1.702 1.698 1.704 1.700 " \
       "1.703 1.701 1.704 1.699".split()  # fmt: skip # noqa: SIM905


@pytest.fixture
def window(qtbot, context, store, tmp_path, by_hand):
    """The window with a machine and a lot of 1.75 mm picked."""
    machine = store.add_machine(Machine("Bramble", drives={"x": {"kind": "belt", "pitch_mm": 2.0, "teeth": 20}}))
    lot = store.add_lot(Lot("Slate 7", "PETG", nominal_diameter_mm=1.75))
    window = MainWindow(QSettings(str(tmp_path / "window.ini"), QSettings.Format.IniFormat))
    qtbot.addWidget(window)
    with qtbot.waitSignal(window.painted):
        window.show()
    window.activateWindow()
    qtbot.waitUntil(window.isActiveWindow)
    with qtbot.waitSignal(window.ready):
        window.open_shop(context, "lots")
    context.select_machine(machine.id)
    context.select_lot(lot.id)
    return window


def shown_page(window, key, page_class):
    window.show_page(key)
    page = window.findChild(page_class)
    assert page.isVisible()
    return page


def type_fat_walls(qtbot, page):
    """Type a comb whose walls stand 0.08 mm proud on each side, in whatever order the page asks for it."""
    page.take_focus()
    for turn in range(page.form.model.rowCount()):
        row = page.form.model.values(page.form.entry.current_row())
        proud = 2 * 0.08 * FEATURES[FeatureKind(row["kind"])].k
        type_readings(qtbot, [f"{row['nominal_mm'] + proud + (0.01, -0.01)[turn % 2]:.2f}"])


def keep(window):
    QTest.keyClick(window, Qt.Key.Key_S, Qt.KeyboardModifier.ControlModifier)


def in_force(store, context, name):
    """Return old and new value of a setting with the subject of the trial it came from."""
    now = store.in_force(name, context.machine.id, context.lot.id)
    return now.old, now.new, store.trial(now.trial_id).subject


def test_a_kept_feed_is_in_force_from_the_steps_it_was_measured_under(qtbot, window, context, store):
    page = shown_page(window, "feed", FeedPage)
    type_setting(page, "in_force_steps_mm", "277.8")
    page.take_focus()
    type_readings(qtbot, ["23.0", "22.9", "23.1"])
    keep(window)
    old, new, subject = in_force(store, context, "extruder_steps_mm")
    assert (old, subject) == (277.8, "feed")
    assert new == round(277.8 / 0.97, 1)  # as it was told


def test_a_kept_diameter_is_in_force_from_the_one_set_before(qtbot, window, context, store):
    page = shown_page(window, "diameter", DiameterPage)
    page.form.gauge.setFocus()
    QTest.keyClick(page.form.gauge, Qt.Key.Key_Down)
    page.take_focus()
    type_readings(qtbot, THIN)
    keep(window)
    old, new, subject = in_force(store, context, "filament_diameter")
    assert (old, subject) == (1.75, "diameter")
    assert new == pytest.approx(1.702, abs=0.002)


def put_mass(qtbot, window):
    """Weigh two pieces of a path of 2 m by density, 3 % too heavy."""
    page = shown_page(window, "mass", MassPage)
    for key, text in (("in_force_ratio", "1"), ("temperature_c", "210"), ("rate_mm3_s", "4"),
                      ("density_g_cm3", "1.27"), ("path_filament_mm", "2000")):
        type_setting(page, key, text)
    page.take_focus()
    type_readings(qtbot, ["6.293", "6.295"])
    return page


def test_a_kept_flow_factor_is_in_force_from_the_one_printed_with(qtbot, window, context, store):
    page = put_mass(qtbot, window)
    assert "Change the flow factor from 1 to 0.97" in page.card.body.toPlainText()
    keep(window)
    old, new, subject = in_force(store, context, "flow_factor")
    assert (old, subject) == (1.0, "mass")
    assert new == pytest.approx(2000 * 2.4053 * 1.27 / 1000 / 6.294, abs=1e-3)


def test_fat_walls_ask_for_the_flow_until_a_flow_trial_is_kept(qtbot, window):
    """Flow before offset: the size page asks first, the mass page answers, and the size page is content."""
    size = shown_page(window, "sizeerror", SizeErrorPage)
    type_fat_walls(qtbot, size)
    assert size.result.judgement.fit.estimate("wall_outset").significant
    assert "•\tCheck the flow: " in size.card.body.toPlainText()
    put_mass(qtbot, window)
    keep(window)
    shown_page(window, "sizeerror", SizeErrorPage)
    assert "Check the flow:" not in size.card.body.toPlainText()
    assert "Contour offset" in size.card.body.toPlainText()
