"""Pictures that a subject draws itself: keys, switches, copies, and single pixels where a colour must be."""

import numpy as np
import pytest
from PySide6.QtCore import QPoint, Qt
from PySide6.QtGui import QColor, QGuiApplication
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication

from app.theme import LIGHT, apply_theme
from app.widgets.mapview import MapData, MapPane, Screw, between, tinted
from app.widgets.skewview import SkewData, SkewPane

X, Y = np.array([20.0, 200.0, 20.0, 200.0]), np.array([20.0, 20.0, 200.0, 200.0])
HEIGHT = np.array([-0.3, 0.3, 0.0, 0.6])


def bed(**more):
    values = {
        "x_mm": X, "y_mm": Y, "height_mm": HEIGHT, "residual_mm": HEIGHT / 10,
        "flagged": np.array([False, False, False, True]), "names": ("P1", "P2", "P3", "P4"),
        "screws": (Screw(10.0, 10.0, "1: stays", "Screw 1: stays"),), "summary": "four places", "note": "blue is low",
    }  # fmt: skip
    return MapData(**values | more)


@pytest.fixture
def pane(qtbot):
    pane = MapPane("Bed", "No map yet.")
    qtbot.addWidget(pane)
    pane.resize(560, 420)
    pane.show()
    qtbot.waitExposed(pane)
    return pane


def pixel(pane, point):
    return QColor(pane.sheet.grab().toImage().pixel(point))


def test_blue_is_low_and_orange_high_and_numbers_carry_their_sign(pane):
    pane.show_map(bed())
    pane.plane_box.setChecked(False)
    low, high = (pane.points()[place][0] + QPoint(0, -12) for place in (0, 1))
    assert pixel(pane, low).blue() > pixel(pane, low).red() + 60
    assert pixel(pane, high).red() > pixel(pane, high).blue() + 60
    assert pane.values_mm().tolist() == HEIGHT.tolist()
    pane.plane_box.setChecked(True)
    assert pane.values_mm() == pytest.approx(HEIGHT / 10)


def test_the_scale_stays_or_follows(pane):
    pane.show_map(bed())
    assert pane.limit_mm() == 0.3
    pane.fixed_box.setFocus()
    QTest.keyClick(pane.fixed_box, Qt.Key.Key_Space)
    assert pane.limit_mm() == pytest.approx(0.06)
    pane.show_map(bed(residual_mm=np.zeros(4)))
    assert pane.limit_mm() == 0.01


def test_numbers_that_would_cover_each_other_are_left_to_the_arrow_keys(pane):
    x, y = (axis.ravel() for axis in np.meshgrid(np.linspace(20.0, 200.0, 11), np.linspace(20.0, 200.0, 11)))
    height = np.linspace(-0.2, 0.2, x.size)
    flagged = np.arange(x.size) == 60  # the middle, where the height is least
    names = tuple(f"P{n}" for n in range(x.size))
    pane.show_map(bed(x_mm=x, y_mm=y, height_mm=height, residual_mm=height, flagged=flagged, names=names))
    written = pane.numbers(pane.fontMetrics())
    boxes = [box for _, _, box in written]
    assert 4 < len(boxes) < x.size and written[0][1].startswith("⚑")
    assert not any(a.intersects(b) for i, a in enumerate(boxes) for b in boxes[:i])
    assert len([text for _, text in pane.points() if text.startswith("P")]) == x.size
    pane.sheet.grab()
    pane.show_nothing()
    assert pane.numbers(pane.fontMetrics()) == []


def test_arrow_keys_tell_probes_and_screws(pane):
    pane.show_map(bed())
    pane.sheet.setFocus()
    QTest.keyClick(pane.sheet, Qt.Key.Key_Right)
    assert pane.tells.text() == "P1 at 20, 20 mm: −0.300 mm, above the plane −0.030 mm"
    for key in (Qt.Key.Key_Up, Qt.Key.Key_Left):
        QTest.keyClick(pane.sheet, key)
    assert pane.tells.text().startswith("P4")
    QTest.keyClick(pane.sheet, Qt.Key.Key_Down)
    assert pane.tells.text() == "Screw 1: stays"
    pane.sheet.grab()  # with the point ringed
    QTest.keyClick(pane.sheet, Qt.Key.Key_Escape)
    assert pane.tells.text() == "blue is low"
    assert pane.sheet.accessibleDescription() == "four places" and "arrow keys" in pane.sheet.accessibleName()


def test_the_mouse_tells_the_probe_below_it(pane, qtbot):
    pane.show_map(bed())
    QTest.mouseMove(pane.sheet, pane.points()[2][0] + QPoint(3, 2))
    qtbot.waitUntil(lambda: pane.tells.text().startswith("P3"))
    QTest.mouseMove(pane.sheet, QPoint(2, 2))
    qtbot.waitUntil(lambda: pane.told_point() == -1)


def test_without_data_it_says_what_is_missing(pane):
    pane.show_map(bed())
    pane.show_nothing()
    assert pane.points() == [] and pane.values_mm().size == 0
    pane.sheet.setFocus()
    QTest.keyClick(pane.sheet, Qt.Key.Key_Right)
    assert pane.sheet.accessibleDescription() == "No map yet."
    assert pixel(pane, QPoint(3, 3)) == QColor(LIGHT.card)


def test_the_picture_is_copied_and_saved(pane, tmp_path, qtbot):
    pane.show_map(bed())
    with qtbot.waitSignal(pane.said):
        pane.copy_picture()
    assert QGuiApplication.clipboard().image().width() >= pane.sheet.width()
    assert pane.export_png(str(tmp_path / "bed.png")) and (tmp_path / "bed.png").stat().st_size > 1000
    with qtbot.waitSignal(pane.said) as said:
        assert not pane.export_png(str(tmp_path / "nowhere" / "bed.png"))
    assert "cannot be written" in said.args[0] and said.args[1] == "error"


def test_both_themes_are_drawn(pane):
    pane.show_map(bed())
    light = pixel(pane, QPoint(3, 3))
    try:
        apply_theme(QApplication.instance(), dark=True)
        assert pixel(pane, QPoint(3, 3)) != light
    finally:
        apply_theme(QApplication.instance(), dark=False)


def test_between_probes_nothing_is_higher_or_lower_than_a_probe():
    gx, gy = np.meshgrid(np.linspace(0, 220, 23), np.linspace(0, 220, 23))
    heights = between(X, Y, HEIGHT, gx, gy)
    assert heights.min() >= HEIGHT.min() and heights.max() <= HEIGHT.max()
    assert between(X, Y, HEIGHT, X, Y) == pytest.approx(HEIGHT, abs=1e-9)


def test_zero_has_the_colour_of_the_ground_and_the_ends_are_cut_off():
    image = tinted(np.array([[0.0, 1.0, 5.0, -5.0]]), "#ffffff")
    colours = [QColor(image.pixel(x, 0)) for x in range(4)]
    assert colours[0] == QColor("#ffffff") and colours[1] == colours[2] and colours[3].blue() > colours[3].red()


# The parallelogram


@pytest.fixture
def skew(qtbot):
    pane = SkewPane("Axes")
    qtbot.addWidget(pane)
    pane.resize(520, 360)
    pane.show()
    qtbot.waitExposed(pane)
    return pane


@pytest.mark.parametrize("plane", ["xy", "xz", "yz"])
@pytest.mark.parametrize("push", [-1, 0, 1])
def test_the_arrow_is_drawn_only_where_there_is_something_to_push(skew, plane, push):
    skew.show_skew(SkewData(plane, push == 0, 0.002 * push, ("0.1°",), ("1: 113", "2: 112"), push, summary="leans"))
    image = skew.sheet.grab().toImage()
    arrow = QColor(LIGHT.warning)
    seen = any(QColor(image.pixel(x, y)) == arrow for x in range(image.width()) for y in range(image.height()))
    assert seen is (push != 0)
    assert skew.sheet.accessibleDescription() == "leans" and skew.sheet.accessibleName() == "Axes"


def test_a_large_angle_is_enlarged_less(skew):
    skew.show_skew(SkewData(angle_rad=0.005))
    assert skew.factor() == 100
    skew.show_skew(SkewData(angle_rad=-0.03))
    assert skew.factor() == 10


def test_the_diagonal_read_next_stays_lit(skew):
    skew.light("xz", "2", "Diagonal 2, inside", pillars=True)
    skew.show_skew(SkewData("xz", angle_rad=0.001))
    assert (skew.data.lit, skew.data.lit_text) == ("2", "Diagonal 2, inside")
    skew.show_nothing()
    assert skew.data.angle_rad is None and skew.data.plane == "xz" and skew.data.lit == "2"
    skew.sheet.grab()
    assert "Z leans towards +X" in skew.hint()
