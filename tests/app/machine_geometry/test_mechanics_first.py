"""Through the window: a reversal trial kept on its page is named on *Size error*, and comes before any trim."""

from __future__ import annotations

import pytest
from PySide6.QtCore import QSettings
from PySide6.QtTest import QTest

from app.mainwindow import MainWindow
from app.pages.machine_geometry.reversal import ReversalPage
from app.pages.part_size.sizeerror import SizeErrorPage
from core.records.rows import Instrument, Lot, Machine
from tests.app.atpage import type_readings

LOOSE = "0.42 0.30 0.43 0.31 0.42 0.30 0.42 0.31 0.43 0.30".split()  # noqa: SIM905 - pairs of one place, 0.12 mm apart


@pytest.fixture
def window(qtbot, context, store, tmp_path):
    machine, lot = store.add_machine(Machine("Bramble")), store.add_lot(Lot("Slate 7", "PETG"))
    caliper = store.add_instrument(Instrument("Caliper 2"))
    context.select_machine(machine.id)
    context.select_lot(lot.id)
    context.select_instrument(caliper.id)
    window = MainWindow(QSettings(str(tmp_path / "window.ini"), QSettings.Format.IniFormat))
    qtbot.addWidget(window)
    with qtbot.waitSignal(window.painted):
        window.show()
    window.activateWindow()
    qtbot.waitUntil(window.isActiveWindow)
    with qtbot.waitSignal(window.ready):
        window.open_shop(context, "sizeerror")
    return window


def test_a_reversal_kept_on_its_page_comes_before_the_trims_of_a_print(qtbot, window, store):
    size = window.findChild(SizeErrorPage)
    for place, row in enumerate(size.form.model.rows()):
        if row["kind"] not in ("tooth", "notch"):
            continue  # closed outlines would tell whether the print shows the play
        size.form.model.edit(place, "measured_mm", f"{row['nominal_mm'] * 0.996 + (place % 3 - 1) * 0.01:.2f}")
    assert "Shrink allowance" in size.card.body.toPlainText()
    window.show_page("reversal")
    reversal = window.findChild(ReversalPage)
    reversal.take_focus()
    type_readings(qtbot, LOOSE)
    QTest.keySequence(window, "Ctrl+S")
    (kept,) = store.trials(subject="reversal")
    assert [e.name for e in kept.estimates] == ["reversal_x"]
    window.show_page("sizeerror")
    says = size.card.body.toPlainText()
    assert "Mend the mechanics" in says and "Shrink allowance" not in says
    assert f"Reversal trial № {kept.id} measured 0.12" in says and "along X on the machine itself" in says
    assert says.index("Mend the mechanics") < says.index(f"№ {kept.id}")
    assert kept.id in size.record().used
