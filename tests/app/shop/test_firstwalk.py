"""From an empty database to a verified machine, by what the page *Walk* says and by nothing else."""

from __future__ import annotations

import pytest
from PySide6.QtCore import QSettings, QSignalBlocker, Qt
from PySide6.QtWidgets import QComboBox, QLineEdit, QPushButton

from app.context import Context
from app.mainwindow import MainWindow
from app.pages.shop.walk import WalkPage
from core.guidance.walk import State
from core.part_size.features import FEATURES, FeatureKind
from core.records.rows import Instrument, Lot
from tests.shots import filled_bench, filled_filament, filled_flow, filled_machine

# Pairs at three places: the dial from - and from +. A machine with too much play would leave its size piece in doubt.
SOUND = " ".join(f"{at + wobble:.2f} {at - 0.01 + wobble:.2f}" for at in (0.42, 0.51, 0.40)
                 for wobble in (0.0, 0.01, 0.0, 0.01, 0.0))  # fmt: skip


@pytest.fixture
def window(qtbot, context: Context, tmp_path):
    window = MainWindow(QSettings(str(tmp_path / "window.ini"), QSettings.Format.IniFormat))
    qtbot.addWidget(window)
    window.resize(1280, 800)
    window.show()
    window.open_shop(context, "walk")
    return window


def page_in_view(window):
    return window.centralWidget().findChild(QComboBox).window()._body.currentWidget()


def enter(qtbot, page, key, text):
    found = next(field for field in page.findChildren(QLineEdit, key) if field.isVisible())
    found.setFocus()
    found.selectAll()
    qtbot.keyClicks(found, text)
    qtbot.keyClick(found, Qt.Key.Key_Return)


def write_the_record(qtbot, page):
    """Three belts of 2 mm pitch and 20 teeth."""
    enter(qtbot, page, "name", "Bramble")
    for axis in "xyz":
        enter(qtbot, page, f"travel_{axis}_mm", "220")
    for axis in range(3):
        page.form.axes.setCurrentIndex(axis)
        enter(qtbot, page, "pitch_mm", "2")
        enter(qtbot, page, "teeth", "20")
    page.keep()


def keep_combs(page):
    """A comb along X, then one along Y: scale -0.25 %, wall outset 0.04 mm, no lost motion."""
    for piece in ("comb_x", "comb_y"):
        page.begin_anew()
        page.form.piece.set_value(piece)
        page.form.piece.changed.emit()
        with QSignalBlocker(page.form):
            for place, row in enumerate(page.form.model.rows()):
                feature = FEATURES[FeatureKind(row["kind"])]
                read_mm = 0.9975 * row["nominal_mm"] + 0.04 * feature.k + (0.01, 0.0, -0.01)[place % 3]
                page.form.model.edit(place, "measured_mm", f"{read_mm:.2f}")
        page.form.table.go_to(page.form.model.rowCount() - 1)
        page.answer_change()
        page.keep()


def keep_reversals(page):
    """The quick cycle along X, then along Y: 0.01 mm of play."""
    for axis in "xy":
        page.begin_anew()
        page.form.axis.set_value(axis)
        page.form.axis.changed.emit()
        with QSignalBlocker(page.form):
            filled_machine.type_down(page, SOUND)
        page.answer_change()
        page.keep()


FILLS = {
    **filled_machine.FILLS, **filled_filament.FILLS, **filled_flow.FILLS, **filled_bench.FILLS
}  # fmt: skip
OWN = {"sizeerror": keep_combs, "reversal": keep_reversals}


def by_hand(qtbot, walk):
    """Tick all, read 100 mm on the rule, write what was found, and say so."""
    for box in walk.card.checks.items.values():
        box.click()
    if walk.card.checks.rule.isVisible():
        enter(qtbot, walk, "read_mm", "99,9")
    enter(qtbot, walk, "note", "looked at by Kim")
    qtbot.mouseClick(walk.card.good, Qt.MouseButton.LeftButton)


def test_from_nothing_to_a_verified_machine(qtbot, window, context, store):
    walk = window.findChild(WalkPage)
    assert "Choose a machine above" in walk.card.text.text()
    context.sign("Kim")
    window.pickers.new_machine_asked.emit()
    write_the_record(qtbot, page_in_view(window))
    context.select_lot(store.add_lot(Lot("Slate 7", "PETG", nominal_diameter_mm=1.75)).id)
    context.select_instrument(store.add_instrument(Instrument("Caliper 2")).id)
    told = []
    for _ in range(40):
        window.enter_page("walk")
        todo = walk.result.todo
        if todo is None:
            break
        told.append(todo.step.key)
        walk.steps.show_walk(walk.result, todo.step.key)
        opened = walk.card.open_button.text().replace("&", "")
        if walk.card.by_hand():
            by_hand(qtbot, walk)
            continue
        qtbot.mouseClick(walk.card.open_button, Qt.MouseButton.LeftButton)
        page = page_in_view(window)
        assert opened.endswith(window.rail.pages[window.rail.marked()].text())
        assert page.context.machine.name == "Bramble"
        if page.subject in OWN:
            OWN[page.subject](page)
        else:
            with QSignalBlocker(page.form):  # judged once, not after each reading
                FILLS[window.rail.marked()](page)
            page.answer_change()
            page.keep()
    assert told[:3] == ["mechanics", "steps", "gauges"]
    assert list(dict.fromkeys(told)) == [
        "mechanics", "steps", "gauges", "reversal", "square", "feed", "spool", "temp", "ceiling", "flow", "lag",
        "speed", "size", "decision", "proof", "promise", "watch", "yearly",
    ]  # fmt: skip
    assert walk.result.verified
    assert "The machine is verified." in walk.progress.text()
    assert walk.result.count(State.DONE) == 19
    assert {event.author for event in store.events()} == {"Kim"}
    assert not [button for button in walk.findChildren(QPushButton) if button is walk.card.quick and button.isVisible()]
