"""The page *Promise*: kept pieces in, promise and picture out, by keyboard."""

import numpy as np
import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QFileDialog

from app.pages import PAGES
from app.pages.part_size.promise import PromisePage
from app.pages.part_size.promise_reports import proof_plots
from core.errors import StoreError
from core.quantity import Estimate
from core.records.rows import Instrument, SettingInForce, Trial, TrialState
from tests.app.atpage import show_page, verdict
from tests.core.guidance.test_promised import pieces


def keep(store, count, **how):
    for piece in pieces(count, **how):
        store.keep(Trial("sizeerror", 1, 1, readings=piece.readings, conditions=piece.conditions))


@pytest.fixture
def opened(qtbot, shop):
    def open_page():
        return show_page(qtbot, PromisePage(shop))

    return open_page


def test_it_is_on_the_list_with_its_help(shop):
    (entry,) = [entry for entry in PAGES if entry.key == "promise"]
    assert isinstance(entry.build(shop), PromisePage)
    from app.helppane import help_path

    assert help_path(entry).exists()


def test_without_pieces_it_says_what_to_keep(opened, shop, store):
    page = opened()
    assert "ten pieces at least make a promise" in verdict(page) and not page.card.keep_button.isEnabled()
    shop.select_lot(None)
    assert "Choose a machine and a lot above" in verdict(page)
    page.keep()
    assert not store.trials(subject="promise")


def test_a_promise_is_shown_drawn_and_kept(opened, qtbot, shop, store):
    keep(store, 12)
    caliper = store.add_instrument(Instrument("Caliper", u_outside_zero_mm=0.005))
    page = opened()
    assert "its uncertainty U is not taken off" in verdict(page)
    shop.select_instrument(caliper.id)
    assert "not taken off" not in verdict(page) and "Outside lengths: ±0." in verdict(page)
    assert "Not promised: sizes that were not measured" in verdict(page)
    assert page.plot.data.point_count == 36 and len(page.plot.data.limits) == 2 and page.plot.data.curves[0].has_bands
    assert "part 1 (trial № 1): 20 mm" in page.plot.data.points[0].tips[0]
    first = page.table.rows.rows()[0]
    assert first[:2] == ("outside lengths", "12") and "±" in first[2] and "≥" in first[6] and first[7] == "120"
    qtbot.mouseClick(page.card.keep_button, Qt.MouseButton.LeftButton)
    (kept,) = store.trials(subject="promise")
    assert kept.state is TrialState.KEPT and kept.used == tuple(range(1, 13)) and "may be promised" in kept.note
    assert store.newest("promise_outside", 1, 1)[1].value <= 0.1


def test_classes_and_tolerances_are_chosen_by_keyboard(opened, shop, store):
    keep(store, 12)
    page = opened()
    page.group.setFocus()
    QTest.keyClick(page.group, Qt.Key.Key_Down)
    assert page.plot.data.points[0].name == "windows and notches"
    page.tolerance.setFocus()
    QTest.keyClick(page.tolerance, Qt.Key.Key_End)
    assert not page.own_mm.isHidden() and page.plot.data.ground.label == "± 0.15 mm"
    assert page.table.rows.rows()[0][7] == ""
    page.own_mm.setFocus()
    page.own_mm.selectAll()
    QTest.keyClicks(page.own_mm, "0")
    QTest.keyClick(page.own_mm, Qt.Key.Key_Return)
    assert page.own_mm.accessibleDescription() != ""


def test_four_pieces_are_refused_in_words(opened, shop, store):
    keep(store, 4)
    page = opened()
    assert "Only 4 parts" in verdict(page) and "Nothing can be promised yet" in page.card.why_not.text()
    assert page.plot.data.limits == () and page.table.rows.rows()[0][4] == ""
    page.keep()
    assert not store.trials(subject="promise") and page.save_draft()


def test_one_piece_is_drawn_without_a_spread(opened, shop, store):
    keep(store, 1, kinds=[("outside", 20.0)])
    page = opened()
    assert "One part shows no spread" in verdict(page) and page.plot.data.curves == ()
    assert page.table.rows.rows()[0][2:] == ("",) * 6


def test_one_length_alone_is_drawn_too(opened, shop, store):
    keep(store, 12, kinds=[("outside", 20.0)])
    page = opened()
    assert page.plot.data.curves[0].x.size == 2


def test_older_pieces_are_counted_out(opened, shop, store):
    keep(store, 3)
    store.keep(Trial("shop_split", 1, 1), (SettingInForce(1, 1, "shrink_allowance_x", 1.0, 1.003, "1"),))
    keep(store, 2)
    page = opened()
    assert "Pieces printed before the newest change" in verdict(page) and "3 left out" in verdict(page)
    keep(store, 9, seed=4)
    shop.kept.emit(store.trial(1))
    assert "11 parts" in verdict(page)


def test_a_store_that_fails_is_told(opened, shop, store, monkeypatch):
    page, said = opened(), []
    shop.notice.connect(lambda text, level: said.append(text))

    def fail(*_, **__):
        raise StoreError("The disk is full.")

    monkeypatch.setattr(store, "trials", fail)
    page.recompute()
    assert said == ["The disk is full."]


def test_numbers_are_finite(opened, shop, store):
    keep(store, 15)
    page = opened()
    assert all(np.all(np.isfinite(line.y)) for line in page.plot.data.limits)


def test_reports_are_written_from_the_menu(opened, shop, store, tmp_path, monkeypatch):
    keep(store, 12)
    caliper = store.add_instrument(Instrument("Caliper", u_outside_zero_mm=0.005))
    store.keep(Trial("instrument", instrument_id=caliper.id, estimates=(Estimate("sd_hand", 0.01, 0.002, 9, "mm"),)))
    shop.select_instrument(caliper.id)
    page, said = opened(), []
    shop.notice.connect(lambda text, level: said.append((text, level)))
    page.keep()
    said.clear()
    written = ["promise.pdf", "promise.csv", "kept.pdf", "kept.csv", "trial.pdf", "trial.csv", "card.pdf", "card.csv"]
    wanted = iter([written[0], "promise", *written[2:], "label.pdf", ""])
    monkeypatch.setattr(
        QFileDialog, "getSaveFileName", lambda *_: ((str(tmp_path / name) if (name := next(wanted)) else ""), "")
    )
    for action in (*page.reports.menu().actions(), page.reports.menu().actions()[0]):
        action.trigger()
    assert len(said) == 9 and all(level == "good" for _, level in said)
    assert {path.name for path in tmp_path.iterdir()} == {*written, "label.pdf"}
    kept = (tmp_path / "kept.csv").read_text()
    assert "results,\"promise, outside\"," in kept and "Caliper, checked 20" in kept
    assert 'tolerance asked for,"ISO 2768-1 m, medium"' in kept
    assert "promise,outside lengths,12" in (tmp_path / "promise.csv").read_text()
    assert "checked 20" in (tmp_path / "promise.csv").read_text()
    assert "none on record" in (tmp_path / "trial.csv").read_text()  # it was read without one
    assert not page.reports.write("card", tmp_path / "card.csv" / "below.csv")
    assert said[-1][1] == "error" and "was not written" in said[-1][0]


def test_a_kept_verification_is_drawn_in_the_promise(opened, shop, store, tmp_path):
    keep(store, 12)
    page = opened()
    assert page.reports.write("promise", tmp_path / "without.pdf") and proof_plots(shop) == {}
    columns = {"axis": ["x"] * 2, "kind": ["outside"] * 2, "nominal_mm": [37.0, 64.0], "predicted_mm": [0.0, 0.01],
               "U_mm": [0.03, 0.04], "error_mm": [0.01, 0.09], "e_n": [0.3, 2.0]}  # fmt: skip
    store.keep(Trial("verification", 1, 1, readings=columns))
    plot = proof_plots(shop)["proof"]
    assert [series.name for series in plot.points] == ["predicted", "read"] and list(plot.points[1].flagged) == [0, 1]
    assert page.reports.write("promise", tmp_path / "with.pdf")
    assert (tmp_path / "with.pdf").stat().st_size > (tmp_path / "without.pdf").stat().st_size + 5000
    assert page.reports.write("promise", tmp_path / "with.csv")
    assert "prediction,outside X,37,+0.000 ± 0.030,+0.010,+0.30" in (tmp_path / "with.csv").read_text()


def test_what_is_not_there_is_not_reported(opened, shop, tmp_path):
    page = opened()
    assert not page.reports.write("promise", tmp_path / "a.pdf") and not page.reports.write("trial", tmp_path / "b.pdf")
    assert not page.reports.write("kept", tmp_path / "c.pdf")
    assert page.reports.write("label", tmp_path / "label.pdf")
    shop.select_machine(None)
    assert not page.reports.isEnabled()
