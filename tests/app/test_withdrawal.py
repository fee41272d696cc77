"""A trial kept by mistake is withdrawn from where it was kept, and a step of it is not undone."""

from PySide6.QtCore import QSettings, Qt
from PySide6.QtWidgets import QApplication

from app.context import Context
from app.mainwindow import MainWindow
from core.records.rows import Lot, Machine, TrialState
from tests.app.test_every_page import BELT

READINGS = ("127.76", "87.86", "47.96", "8.06", "139.67", "111.64", "71.74", "31.85", "79.66", "39.75")


def test_the_line_below_offers_to_withdraw_what_was_kept(qtbot, store, tmp_path):
    window = MainWindow(QSettings(str(tmp_path / "window.ini"), QSettings.Format.IniFormat))
    qtbot.addWidget(window)
    context = Context(store, window)
    window.show()
    window.open_shop(context, "sizeerror")
    context.select_machine(store.add_machine(Machine("Bramble", drives={"x": BELT})).id)
    context.select_lot(store.add_lot(Lot("Slate 7", "PETG")).id)
    page = window._body.currentWidget()
    for row, text in enumerate(READINGS):
        page.form.model.edit(row, "measured_mm", text)
        page.form.model.answer(row)
    page.keep()
    qtbot.waitUntil(window.notices.withdraw.isVisible)
    qtbot.keyClick(QApplication.focusWidget() or page, Qt.Key.Key_Z, Qt.KeyboardModifier.ControlModifier)
    assert "Kept trials are not undone" in window.notices.label.text()
    assert not window.notices.withdraw.isVisible()
    (kept,) = [trial for trial in store.trials("sizeerror") if trial.state is TrialState.KEPT]
    window.notices.offer_withdrawal(kept.id)
    window.notices.withdraw.click()
    logbook = window._body.currentWidget()
    assert logbook.subject == "logbook" and logbook.log.chosen().row.id == kept.id
    reason = QApplication.focusWidget()
    qtbot.keyClicks(reason, "measured the wrong piece")
    qtbot.keyClick(reason, Qt.Key.Key_Return)
    logbook.log.card.gone.click()
    assert store.trial(kept.id).state is TrialState.WITHDRAWN


def test_the_next_sentence_takes_the_offer_away(qtbot):
    from app.notices import NoticeLine

    line = NoticeLine()
    qtbot.addWidget(line)
    line.show()
    line.offer_withdrawal(7)
    assert line.withdraw.isVisible()
    line.say("Something else.")
    assert not line.withdraw.isVisible()
