"""The picture of a toolpath: to scale, layer by layer, enlarged and dragged."""

import numpy as np
import pytest
from PySide6.QtCore import QPoint, QPointF, Qt
from PySide6.QtGui import QColor, QWheelEvent
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication

from app.theme import LIGHT
from app.widgets.commandtext import CommandText
from app.widgets.toolpathview import Bed, ToolpathPane, names_with_room
from core.pieces.toolpath import Laying, Part, PathBead, Stroke, Toolpath, bead_stroke, lay
from core.words import tr

BEAD = PathBead(2.0, 0.2, 2.0, 0.15)


def bars(layers=1) -> Toolpath:
    """Two bars of 2 mm, 20 mm long and 10 mm apart, on each layer."""
    strokes = [bead_stroke([(100, y), (120, y)], 0.2 * layer, BEAD, 40.0, part)
               for layer in range(1, layers + 1) for part, y in ((1, 100.0), (2, 110.0))]  # fmt: skip
    parts = (Part(tr("front"), (110.0, 100.0)), Part(tr("back"), (122.0, 110.0), beside=True))
    return Toolpath(tr("Bars"), parts, lay(strokes, Laying(100.0, 8.0), 10.0), 1.75)


def strands() -> Toolpath:
    place = np.array([(50.0, 50.0), (50.0, 50.0)])
    stroke = Stroke(place, 30.0, np.array([200.0]), np.array([2.0]), 0.0, 1)
    return Toolpath(tr("Strand"), (Part(tr("1"), (50.0, 50.0)),), lay([stroke], Laying(100.0, 8.0), 10.0), 1.75)


@pytest.fixture
def pane(qtbot):
    pane = ToolpathPane("Path")
    qtbot.addWidget(pane)
    pane.resize(600, 420)
    pane.show()
    qtbot.waitExposed(pane)
    return pane


def ink_heights(pane, x_mm):
    """Pixels of the beads' colours in the column over a place, as runs."""
    image = pane.sheet.grab().toImage()
    x = round(pane.sight.at(pane.sheet.size(), x_mm, 0).x())
    runs, last = [], -2
    for y in range(image.height()):
        colour = QColor(image.pixel(x, y))
        if colour.blue() - colour.red() > 60:
            if last != y - 1:
                runs.append(0)
            runs[-1] += 1
            last = y
    return [run for run in runs if run > 3]  # not the frame of the focus


def test_beads_are_as_wide_as_laid(pane):
    pane.show_path(bars(), Bed())
    scale = pane.sight.scale(pane.sheet.size())
    heights = ink_heights(pane, 103.0)
    assert len(heights) == 2
    assert heights == pytest.approx([2.0 * scale] * 2, abs=1.6)


def test_keys_and_wheel_enlarge_about_their_place_and_zero_shows_all(pane):
    pane.show_path(bars(), Bed())
    size = pane.sheet.size()
    whole = pane.sight.scale(size)
    pane.sheet.setFocus()
    QTest.keyClick(pane.sheet, "+")
    assert pane.sight.scale(size) == pytest.approx(1.25 * whole)
    QTest.keyClick(pane.sheet, "-")
    assert pane.sight.scale(size) == pytest.approx(whole)
    at = pane.sight.at(size, 120.0, 110.0)
    wheel = QWheelEvent(at, QPointF(pane.sheet.mapToGlobal(at.toPoint())), QPoint(), QPoint(0, 120),
                        Qt.MouseButton.NoButton, Qt.KeyboardModifier.NoModifier, Qt.ScrollPhase.NoScrollPhase, False)
    for _ in range(3):
        QApplication.sendEvent(pane.sheet, wheel)
    after = pane.sight.at(size, 120.0, 110.0)
    assert (after.x(), after.y()) == pytest.approx((at.x(), at.y()), abs=1e-6)
    QTest.keyClick(pane.sheet, "0")
    assert pane.sight.scale(size) == pytest.approx(whole)


def test_what_is_enlarged_is_dragged(pane):
    pane.show_path(bars(), Bed())
    size = pane.sheet.size()
    before = pane.sight.at(size, 110.0, 105.0)
    QTest.mousePress(pane.sheet, Qt.MouseButton.LeftButton, pos=QPoint(200, 150))
    QTest.mouseMove(pane.sheet, QPoint(230, 140))
    QTest.mouseRelease(pane.sheet, Qt.MouseButton.LeftButton, pos=QPoint(230, 140))
    QTest.mouseMove(pane.sheet, QPoint(300, 200))
    after = pane.sight.at(size, 110.0, 105.0)
    assert (after.x() - before.x(), after.y() - before.y()) == pytest.approx((30, -10), abs=1e-6)


def test_the_layer_below_is_faint_and_the_layer_chosen_told(pane):
    pane.show_path(bars(3), Bed())
    assert pane.layer_text.text() == "3 of 3, Z 0.6 mm"
    pane.layer.setFocus()
    QTest.keyClick(pane.layer, Qt.Key.Key_Left)
    assert pane.layer_text.text() == "2 of 3, Z 0.4 mm"
    pane.show_path(bars(5), Bed())
    assert pane.layer_text.text() == "2 of 5, Z 0.4 mm"
    assert pane.layer.accessibleName() == "Layer"


def test_arrow_keys_tell_the_parts(pane):
    pane.show_path(bars(), Bed())
    pane.sheet.setFocus()
    QTest.keyClick(pane.sheet, Qt.Key.Key_Right)
    assert pane.tells.text() == "front: 3 mm of filament"
    QTest.keyClick(pane.sheet, Qt.Key.Key_Right)
    assert pane.tells.text() == "back: 3 mm of filament"


def test_the_whole_bed_and_the_travels_are_switched_on(pane):
    pane.show_path(bars(), Bed())
    near = pane.sight.scale(pane.sheet.size())
    pane.whole_bed.click()
    assert pane.sight.scale(pane.sheet.size()) < near / 2
    pane.whole_bed.click()
    before = pane.sheet.grab().toImage()
    pane.travels.click()
    assert pane.sheet.grab().toImage() != before


def test_strands_are_heaps_with_their_names_below(pane):
    pane.show_path(strands(), Bed(round_bed=True))
    assert not pane.layer.isEnabled()
    image = pane.sheet.grab().toImage()
    at = pane.sight.at(pane.sheet.size(), 50.0, 50.0).toPoint()
    colour = QColor(image.pixel(at))
    assert colour.blue() > colour.red()
    pane.travels.click()
    assert pane.layer_text.text() == ""


def test_no_path_shows_the_bed_and_says_so(pane):
    pane.show_nothing()
    assert pane.points() == []
    assert "what stands against it" in pane.tells.text()
    assert QColor(pane.sheet.grab().toImage().pixel(2, 2)).name() == LIGHT.card


def test_command_text_announces_when_it_is_left_changed(qtbot):
    edit = CommandText("Start text")
    qtbot.addWidget(edit)
    edit.show()
    edit.activateWindow()
    qtbot.waitUntil(edit.isActiveWindow)
    edit.show_text("G28")
    edit.setFocus(Qt.FocusReason.TabFocusReason)
    with qtbot.assertNotEmitted(edit.finished):
        edit.clearFocus()
    edit.setFocus(Qt.FocusReason.TabFocusReason)
    edit.setPlainText("G28 X")
    with qtbot.waitSignal(edit.finished):
        edit.clearFocus()
    assert edit.accessibleName() == "Start text"


def test_names_that_would_run_into_one_another_are_their_last_words():
    names = ["Pad A", "Pad B", "Pad C"]
    apart = [QPointF(x, 40) for x in (50, 120, 190)]
    close = [QPointF(x, 40) for x in (50, 84, 118)]
    assert names_with_room(names, apart, lambda text: 7.0 * len(text)) == names
    assert names_with_room(names, close, lambda text: 7.0 * len(text)) == ["A", "B", "C"]
    below = [QPointF(50, y) for y in (40, 80, 120)]
    assert names_with_room(names, below, lambda text: 7.0 * len(text)) == names
