"""Look at a plot as a person does: colours at computed places, signs, names, tips, switches, pictures."""

import os
import subprocess
import sys
from pathlib import Path

import numpy as np
import pytest
from PySide6.QtCore import QEvent, QPoint, QPointF, QRectF, QSize, Qt
from PySide6.QtGui import QAccessible, QColor, QGuiApplication, QImage, QMouseEvent, QPainter, QWheelEvent
from PySide6.QtSvg import QSvgRenderer
from PySide6.QtWidgets import QCheckBox, QFileDialog, QLabel

from app.theme import DARK, LIGHT, apply_theme
from app.widgets.plotexport import render_plot
from app.widgets.plotframe import text_ink
from app.widgets.plotmarks import contrast
from app.widgets.plotpane import FitCurve, Ground, PlotData, PlotPane, PointSeries, WarningCurve

SCALE, OUTSET_MM, LOST_MM = -0.0025, 0.04, 0.06
THEMES = pytest.mark.parametrize("theme", [LIGHT, DARK], ids=["light", "dark"])
# nominal length in mm, k (+1 outside, -1 inside), r (1 where a closed outline loses the lost motion)
FEATURES = [(10, 1, 0), (10, 1, 0), (10, -1, 0), (50, 1, 0), (30, -1, 0), (110, -1, 0), (130, 1, 0), (110, -1, 1),
            (140, 1, 1), (90, 1, 0), (70, -1, 0)]  # fmt: skip
OUTSIDE, INSIDE = "outside (▲), slope −0.25 %", "inside (▼), slope −0.25 %"
SUMMARY = "Eleven readings; outside and inside fall by 0.25 % of the length."


def size_error(copies=1, flagged=True):
    """A plot of eleven readings (times `copies`) of a machine with scale, wall outset and lost motion."""
    rng = np.random.default_rng(3)
    nominal, k, r = (np.tile(column, copies).astype(float) for column in np.array(FEATURES).T)
    nominal += rng.uniform(-8, 8, nominal.size) if copies > 1 else 0
    error = SCALE * nominal + 2 * k * OUTSET_MM - r * LOST_MM + rng.normal(0, 0.006, nominal.size)
    x = np.linspace(0, 160, 161)
    half = 0.015 + 0.00014 * np.abs(x - 75)
    points, curves = [], []
    for role, (side, symbol, name) in enumerate(((1, "▲", "outside"), (-1, "▼", "inside"))):
        mine = k == side
        cross = np.zeros(int(mine.sum()), dtype=bool)
        cross[2] = flagged and side == 1
        tips = tuple(f"{name} {length:.0f} mm" for length in nominal[mine])
        points.append(PointSeries(name, nominal[mine], error[mine], np.full(mine.sum(), 0.025), symbol, role,
                                  ringed=r[mine] == 1, tips=tips, flagged=cross))  # fmt: skip
        mean = SCALE * x + 2 * side * OUTSET_MM
        curves.append(FitCurve(f"{name}, slope −0.25 %", x, mean, half, half + 0.035, role))
    factor = 10 / 10.055
    warning = WarningCurve(x, factor * (1 + SCALE) * x + 2 * OUTSET_MM - x, "if scaled from the 10 mm tooth")
    steps = np.array([0, 6, 6, 30, 30, 120, 120, 160.0])
    ground = Ground(steps, np.array([0.1, 0.1, 0.2, 0.2, 0.3, 0.3, 0.5, 0.5]), "ISO 2768-m")
    return PlotData(tuple(points), tuple(curves), warning, ground, "nominal length, mm", "measured − nominal, mm",
                    SUMMARY, "Error against nominal length", "closed outline", "stands out")  # fmt: skip


@pytest.fixture
def dressed(qapp):
    yield lambda theme: apply_theme(qapp, dark=theme is DARK)
    apply_theme(qapp, dark=False)


@pytest.fixture
def pane(qtbot):
    return shown_pane(qtbot)


def shown_pane(qtbot, data=None, size=(660, 420)):
    widget = PlotPane()
    qtbot.addWidget(widget)
    widget.resize(*size)
    widget.set_data(size_error() if data is None else data)
    widget.show()
    qtbot.waitExposed(widget)
    qtbot.wait(20)  # axes and heading are laid out on the next turns
    return widget


def near(a, b, least=40):
    return max(abs(p - q) for p, q in zip(a.getRgb()[:3], b.getRgb()[:3], strict=True)) < least


def pixels(image, place, ratio):
    ratio = ratio or image.devicePixelRatio()
    return round(place.x() * ratio), round(place.y() * ratio)


def colour_at(image, place):
    return image.pixelColor(*pixels(image, place, None))


def colours_at(image, place, ratio=None, reach=2):
    """The colours within a few pixels above and below a place, and one beside it."""
    x, y = pixels(image, place, ratio)
    return [image.pixelColor(x + dx, y + dy) for dy in range(-reach, reach + 1) for dx in (-1, 0, 1)]


def shows(image, place, colour, ratio=None):
    return any(near(found, QColor(colour)) for found in colours_at(image, place, ratio))


def drawing(pane):
    return pane.canvas.grab().toImage()


def mean_at(x, side=1):
    return SCALE * x + 2 * side * OUTSET_MM


def move_mouse(canvas, at):
    """Move the mouse as the window system would; the test library loses the first move where there is no screen."""
    button = Qt.MouseButton.NoButton
    event = QMouseEvent(QEvent.Type.MouseMove, QPointF(at), QPointF(canvas.mapToGlobal(at)), button, button,
                        Qt.KeyboardModifier.NoModifier)  # fmt: skip
    QGuiApplication.sendEvent(canvas.viewport(), event)


def box(pane, text):
    (found,) = (b for b in pane.findChildren(QCheckBox) if b.text() == text)
    return found


# --- what is drawn -------------------------------------------------------------------------------------------------


@THEMES
@pytest.mark.parametrize("size", [(660, 420), (560, 320), (1200, 800)])
def test_the_fitted_lines_have_their_colour_at_their_place(qtbot, dressed, theme, size):
    dressed(theme)
    pane = shown_pane(qtbot, size=size)
    image = drawing(pane)
    for side, role in ((1, 0), (-1, 1)):
        for x in (20.0, 60.0, 80.0, 120.0):
            assert shows(image, pane.canvas.place(x, mean_at(x, side)), theme.series[role])


@THEMES
def test_bands_lie_around_their_line_confidence_darker_than_prediction(qtbot, dressed, theme):
    dressed(theme)
    pane = shown_pane(qtbot)
    card = QColor(theme.card)
    image = drawing(pane)
    ground, prediction, confidence = (
        colour_at(image, pane.canvas.place(150.0, mean_at(150.0) + up)) for up in (0.12, 0.047, 0.013)
    )

    def strength(colour):
        return sum(abs(a - b) for a, b in zip(colour.getRgb()[:3], card.getRgb()[:3], strict=True))

    assert strength(confidence) > strength(prediction) > strength(ground)


def test_band_and_line_are_inside_the_axes(pane):
    view = pane.canvas.view_rect()
    assert pane.canvas.rect().contains(view.toRect())
    for side in (1, -1):
        for x in (0.0, 160.0):
            for up in (-0.07, 0.0, 0.07):
                assert view.adjusted(-1, -1, 1, 1).contains(pane.canvas.place(x, mean_at(x, side) + up))


def test_nothing_is_drawn_outside_the_axes(pane):
    image, view = drawing(pane), pane.canvas.view_rect()
    end = pane.canvas.place(160.0, mean_at(160.0))
    assert not shows(image, QPointF(view.right() + 6, end.y()), LIGHT.series[0])


def test_points_bars_rings_and_crosses_are_seen(pane):
    image, canvas = drawing(pane), pane.canvas
    outside = pane.data.points[0]
    at = [canvas.place(x, y) for x, y in zip(outside.x, outside.y, strict=True)]
    assert all(shows(image, place, LIGHT.series[0]) for place in at)
    ringed = at[int(np.flatnonzero(outside.ringed)[0])]
    assert shows(image, ringed + QPointF(0, -9.5), LIGHT.series[0])
    flagged = at[int(np.flatnonzero(outside.flagged)[0])]
    assert shows(image, flagged + QPointF(10, -10), LIGHT.warning)
    plain = at[0]
    assert not shows(image, plain + QPointF(10, -10), LIGHT.warning)


def test_error_bars_reach_their_uncertainty(qtbot):
    series = PointSeries("outside", np.array([50.0]), np.array([0.0]), np.array([0.2]), "▲")
    pane = shown_pane(qtbot, PlotData((series,)))
    image = drawing(pane)
    blue = QColor(LIGHT.series[0])
    for y in (-0.18, -0.1, 0.1, 0.18):
        assert any(near(found, blue, 90) for found in colours_at(image, pane.canvas.place(50.0, y)))
    assert not any(near(found, blue, 90) for found in colours_at(image, pane.canvas.place(50.0, 0.206), reach=0))


def test_readings_left_out_are_hollow(qtbot):
    series = PointSeries("outside", np.array([20.0, 50.0]), np.array([0.1, 0.1]), symbol="●",
                         hollow=np.array([False, True]))  # fmt: skip
    pane = shown_pane(qtbot, PlotData((series,)))
    image = drawing(pane)
    assert near(colour_at(image, pane.canvas.place(20.0, 0.1)), QColor(LIGHT.series[0]))
    assert near(colour_at(image, pane.canvas.place(50.0, 0.1)), QColor(LIGHT.card))


def test_the_warning_curve_is_dashed(pane):
    image, curve = drawing(pane), pane.data.warning_curve
    x = np.linspace(35, 100, 300)
    on = [
        shows(image, pane.canvas.place(a, b), LIGHT.series[3])
        for a, b in zip(x, np.interp(x, curve.x, curve.y), strict=True)
    ]
    assert 0.3 < np.mean(on) < 0.95


# --- names ---------------------------------------------------------------------------------------------------------


@THEMES
@pytest.mark.parametrize("size", [(1200, 800), (660, 420), (560, 320), (420, 280)])
def test_names_overlap_neither_one_another_nor_points(qtbot, dressed, theme, size):
    dressed(theme)
    pane = shown_pane(qtbot, size=size)
    canvas = pane.canvas
    rects = canvas.name_rects()
    assert any(text.startswith("outside") for text in rects)
    assert any(text.startswith("inside") for text in rects)
    view = canvas.view_rect()
    symbols = [
        QRectF(at.x() - 5, at.y() - 5, 10, 10)
        for series in pane.data.points
        for at in map(canvas.place, series.x, series.y)
    ]
    for text, rect in rects.items():
        assert view.contains(rect), text
        assert not any(rect.intersects(other) for name, other in rects.items() if name != text), text
        assert not any(rect.intersects(symbol) for symbol in symbols), text
        for side in (1, -1):
            line = [canvas.place(x, mean_at(x, side)) for x in np.linspace(0, 160, 300)]
            assert not any(rect.contains(at) for at in line), text


def test_with_room_every_part_is_named(pane):
    assert set(pane.canvas.name_rects()) == {
        OUTSIDE, INSIDE, "if scaled from the 10 mm tooth", "○ closed outline", "✕ stands out", "ISO 2768-m",
    }  # fmt: skip


def test_names_move_with_the_size(pane, qtbot):
    before = pane.canvas.name_rects()[OUTSIDE]
    pane.resize(1000, 700)
    qtbot.waitUntil(lambda: pane.canvas.name_rects()[OUTSIDE] != before)
    assert pane.canvas.view_rect().contains(pane.canvas.name_rects()[OUTSIDE])


def test_points_without_a_line_are_named_beside_a_point(qtbot):
    data = size_error()
    pane = shown_pane(qtbot, PlotData(data.points, x_label=data.x_label, y_label=data.y_label))
    rects, canvas = pane.canvas.name_rects(), pane.canvas
    assert set(rects) == {"outside", "inside"}
    for series in data.points:
        middle = rects[series.name].center()
        away = [(canvas.place(x, y) - middle).manhattanLength() for x, y in zip(series.x, series.y, strict=True)]
        assert min(away) < 80


@THEMES
def test_every_name_can_be_read(theme):
    for colour in (*theme.series, theme.quiet, theme.warning):
        assert contrast(text_ink(colour, theme), QColor(theme.card)) >= 4.5


def test_axes_say_their_unit_and_use_a_real_minus(pane):
    assert pane.canvas.axes["bottom"].label.toPlainText().strip() == "nominal length, mm"
    assert pane.canvas.y_label.text() == "measured − nominal, mm"
    values, texts = pane.canvas.axes["left"].ticks(-0.9, 0.5, 300)
    assert texts[values.tolist().index(0.0)] == "0.0"
    assert any(text.startswith("−0.") for text in texts)
    assert not any("-" in text for text in texts)


@pytest.mark.parametrize(
    ("low", "high", "expected"),
    [(0, 160, ["0", "50", "100", "150"]), (-0.02, 0.02, ["−0.02", "−0.01", "0.00", "0.01", "0.02"]),
     (0, 12000, ["0", "5000", "10000"])],
)  # fmt: skip
def test_ticks_have_just_the_decimals_they_need(pane, low, high, expected):
    axis = pane.canvas.axes["bottom"]
    axis.whole = False
    assert axis.ticks(low, high, 240)[1] == expected


# --- switches, zoom, hover, keys -------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("text", "x", "y", "colour"),
    [("95 % bands", 150.0, mean_at(150.0) + 0.02, None), ("ISO 2768-m", 150.0, 0.35, None)],
)
def test_switches_hide_and_show(pane, qtbot, text, x, y, colour):
    def here():
        return colour_at(drawing(pane), pane.canvas.place(x, y))

    on = here()
    qtbot.mouseClick(box(pane, text), Qt.MouseButton.LeftButton, pos=QPoint(8, box(pane, text).height() // 2))
    off = here()
    assert off != on
    qtbot.keyClick(box(pane, text), Qt.Key.Key_Space)
    assert here() == on


def test_the_small_piece_correction_can_be_hidden_with_its_name(pane, qtbot):
    qtbot.keyClick(box(pane, "small-piece correction"), Qt.Key.Key_Space)
    image, curve = drawing(pane), pane.data.warning_curve
    x = np.linspace(40, 90, 200)
    y = np.interp(x, curve.x, curve.y)
    assert not any(shows(image, pane.canvas.place(a, b), LIGHT.series[3]) for a, b in zip(x, y, strict=True))
    assert curve.label not in pane.canvas.name_rects()


def test_only_switches_with_something_to_switch_are_there(qtbot):
    data = size_error()
    pane = shown_pane(qtbot, PlotData(data.points, ground=data.ground))
    assert [b.text() for b in pane.findChildren(QCheckBox) if b.isVisible()] == ["ISO 2768-m"]
    pane.set_data(data)
    assert [b.text() for b in pane.findChildren(QCheckBox) if b.isVisible()] == [
        "95 % bands", "ISO 2768-m", "small-piece correction",
    ]  # fmt: skip


def test_switches_keep_their_state_with_new_data(pane, qtbot):
    qtbot.keyClick(box(pane, "95 % bands"), Qt.Key.Key_Space)
    pane.set_data(size_error(2))
    assert not box(pane, "95 % bands").isChecked()
    place = pane.canvas.place(150.0, mean_at(150.0) + 0.035)
    assert not near(colour_at(drawing(pane), place), QColor(LIGHT.series[0]), 160)


def test_head_and_boxes_are_whole_in_every_width(pane, qtbot):
    for width in (1000, 660, 480, 1000):
        pane.resize(width, 420)
        qtbot.wait(20)
        head = [pane.heading, pane.bands_box, pane.ground_box, pane.warning_box, pane.picture_button]
        rects = [QRectF(part.mapTo(pane, QPoint(0, 0)), part.size()).toRect() for part in head]
        for part, rect in zip(head, rects, strict=True):
            assert pane.rect().contains(rect)
            assert part.width() >= part.minimumSizeHint().width()
            assert part.height() >= part.minimumSizeHint().height()
        assert not any(a.intersects(b) for i, a in enumerate(rects) for b in rects[i + 1 :])


def test_wheel_zooms_and_the_key_comes_back(pane, qtbot):
    canvas, home = pane.canvas, pane.canvas.view.viewRange()
    at = canvas.place(70.0, 0.0)
    where = QPointF(at)
    event = QWheelEvent(
        where,
        QPointF(canvas.mapToGlobal(at.toPoint())),
        QPoint(),
        QPoint(0, 240),
        Qt.MouseButton.NoButton,
        Qt.KeyboardModifier.NoModifier,
        Qt.ScrollPhase.NoScrollPhase,
        False,
    )
    QGuiApplication.sendEvent(canvas.viewport(), event)
    zoomed = canvas.view.viewRange()
    assert zoomed[0][1] - zoomed[0][0] < home[0][1] - home[0][0]
    assert shows(drawing(pane), canvas.place(70.0, mean_at(70.0)), LIGHT.series[0])
    pane.set_data(size_error(2))
    assert canvas.view.viewRange() == zoomed  # a new reading does not throw away the zoom
    qtbot.keyClick(canvas, Qt.Key.Key_0)
    assert canvas.is_home()
    qtbot.keyClick(canvas, Qt.Key.Key_Plus)
    assert not canvas.is_home()
    qtbot.mouseDClick(canvas.viewport(), Qt.MouseButton.LeftButton, pos=at.toPoint())
    assert canvas.is_home()


def test_hover_tells_the_reading_within_10_px(pane):
    canvas, outside = pane.canvas, pane.data.points[0]
    at = canvas.place(outside.x[3], outside.y[3]).toPoint()
    move_mouse(canvas, at + QPoint(6, 5))
    assert canvas.tip() == "outside 130 mm"
    label = next(w for w in canvas.findChildren(QLabel) if w.text() == "outside 130 mm")
    assert label.isVisible() and canvas.rect().contains(label.geometry())
    assert not label.geometry().contains(at)
    move_mouse(canvas, at + QPoint(0, -40))
    assert canvas.tip() == ""
    assert not label.isVisible()


def test_without_tips_the_values_are_told(qtbot):
    pane = shown_pane(qtbot, PlotData((PointSeries("outside", np.array([20.0, 30]), np.array([-0.25, 0.1])),)))
    pane.canvas.walk(1)
    assert pane.canvas.tip() == "outside: 20, −0.25"


def test_arrows_walk_through_the_points_from_left_to_right(pane, qtbot):
    canvas = pane.canvas
    canvas.setFocus()
    told = []
    for _ in range(11):
        qtbot.keyClick(canvas, Qt.Key.Key_Right)
        told.append(canvas.tip())
    lengths = [int(text.split()[1]) for text in told]
    assert lengths == sorted(lengths) and len(lengths) == 11
    assert canvas.accessibleDescription() == told[-1]
    qtbot.keyClick(canvas, Qt.Key.Key_Right)
    assert canvas.tip() == told[0]
    qtbot.keyClick(canvas, Qt.Key.Key_Left)
    assert canvas.tip() == told[-1]
    qtbot.keyClick(canvas, Qt.Key.Key_Escape)
    assert canvas.tip() == ""


def test_a_screen_reader_gets_name_and_summary(pane):
    found = QAccessible.queryAccessibleInterface(pane)
    assert found.text(QAccessible.Text.Name) == "Error against nominal length"
    assert found.text(QAccessible.Text.Description) == SUMMARY
    canvas = QAccessible.queryAccessibleInterface(pane.canvas)
    assert canvas.text(QAccessible.Text.Name) == "Error against nominal length: arrow keys tell the readings"
    assert canvas.text(QAccessible.Text.Description) == SUMMARY


def test_without_readings_the_pane_says_so(qtbot):
    pane = PlotPane("Type the first reading.")
    qtbot.addWidget(pane)
    pane.resize(560, 320)
    pane.show()
    assert [label.text() for label in pane.findChildren(QLabel) if label.isVisible() and label.text()] == [
        "Type the first reading."
    ]
    assert not pane.picture_button.isVisible()
    pane.canvas.setFocus()
    qtbot.keyClick(pane.canvas, Qt.Key.Key_Right)
    assert pane.canvas.tip() == ""
    pane.set_data(size_error())
    assert not pane.empty.isVisible()
    pane.set_data(PlotData((), title="Error against nominal length"))
    assert pane.empty.isVisible()


# --- pictures ------------------------------------------------------------------------------------------------------


def test_the_clipboard_gets_the_picture(pane, qtbot):
    pane.canvas.setFocus()
    with qtbot.waitSignal(pane.said) as said:
        qtbot.keyClick(pane.canvas, Qt.Key.Key_C, Qt.KeyboardModifier.ControlModifier)
    assert said.args == ["The picture is on the clipboard.", "good"]
    image = QGuiApplication.clipboard().image()
    assert image.width() > 2 * pane.canvas.width()
    assert near(image.pixelColor(4, 4), QColor(LIGHT.card))


def written(pane, image, ratio):
    """Where values lie in an exported picture: a margin and the title come before the canvas."""
    offset = QPointF(12, 12 + 32)
    for x in (20.0, 80.0, 120.0):
        assert shows(image, pane.canvas.place(x, mean_at(x)) + offset, pane.canvas.theme.series[0], ratio)
        assert shows(image, pane.canvas.place(x, mean_at(x, -1)) + offset, pane.canvas.theme.series[1], ratio)


@THEMES
def test_png_has_twice_the_pixels_and_the_same_lines(qtbot, dressed, theme, tmp_path):
    dressed(theme)
    pane = shown_pane(qtbot)
    assert pane.export_png(tmp_path / "plot.png")
    image = QImage(str(tmp_path / "plot.png"))
    assert image.width() == 2 * (pane.canvas.width() + 24)
    assert near(image.pixelColor(4, 4), QColor(theme.card))
    written(pane, image, 2.0)


@THEMES
def test_svg_rasterised_shows_the_same_lines(qtbot, dressed, theme, tmp_path):
    dressed(theme)
    pane = shown_pane(qtbot)
    assert pane.export_svg(tmp_path / "plot.svg")
    renderer = QSvgRenderer(str(tmp_path / "plot.svg"))
    assert renderer.isValid()
    image = QImage(renderer.defaultSize(), QImage.Format.Format_RGB32)
    painter = QPainter(image)
    renderer.render(painter)
    painter.end()
    assert near(image.pixelColor(4, 4), QColor(theme.card))
    written(pane, image, 1.0)


def test_svg_keeps_texts_and_needs_no_vector_effect(pane, tmp_path):
    pane.export_svg(tmp_path / "plot.svg")
    text = (tmp_path / "plot.svg").read_text(encoding="utf-8")
    for expected in (OUTSIDE, "nominal length, mm", "measured − nominal, mm", "−0.4", SUMMARY, "stroke-dasharray"):
        assert expected in text
    assert "vector-effect" not in text
    assert "nan" not in text.replace("nominal", "")


def test_a_picture_that_cannot_be_written_is_said(pane, tmp_path):
    said = []
    pane.said.connect(lambda text, level: said.append((level, text)))
    nowhere = tmp_path / "missing" / "plot"
    assert not pane.export_png(nowhere.with_suffix(".png"))
    assert not pane.export_svg(nowhere.with_suffix(".svg"))
    assert [level for level, _text in said] == ["error", "error"]
    assert "choose another folder" in said[0][1]


def test_the_menu_asks_for_a_file(pane, tmp_path, monkeypatch):
    asked = []

    def answer(_parent, _title, name, kinds):
        asked.append((name, kinds))
        return str(tmp_path / "mine"), kinds

    monkeypatch.setattr(QFileDialog, "getSaveFileName", answer)
    actions = {action.text(): action for action in pane.picture_button.menu().actions()}
    assert list(actions) == ["Copy picture", "Save as PNG…", "Save as SVG…", "Show all again"]
    actions["Save as PNG…"].trigger()
    actions["Save as SVG…"].trigger()
    assert asked == [("error-against-nominal-length.png", "PNG (*.png)"),
                     ("error-against-nominal-length.svg", "SVG (*.svg)")]  # fmt: skip
    assert (tmp_path / "mine.png").stat().st_size > 5000
    assert (tmp_path / "mine.svg").stat().st_size > 5000


@pytest.mark.parametrize("dark", [False, True])
@pytest.mark.parametrize("scale", [1.0, 2.0])
def test_a_picture_is_drawn_without_a_window(qapp, dark, scale):
    theme = DARK if dark else LIGHT
    image = render_plot(size_error(), QSize(800, 500), dark=dark, scale=scale)
    assert image.size() == QSize(800, 500) * scale
    found = {image.pixelColor(x, y).name() for x in range(0, image.width(), 3) for y in range(0, image.height(), 3)}
    assert {theme.card, theme.series[0], theme.series[1]} <= found


# --- many points, speed, screens ------------------------------------------------------------------------------------


def test_a_million_points_become_a_density_image_with_the_flagged_ones_on_it(qtbot, tmp_path):
    rng = np.random.default_rng(1)
    x = rng.uniform(0, 150, 100_000)
    flagged = np.zeros(x.size, dtype=bool)
    x[0], flagged[0] = 75.0, True
    y = SCALE * x + rng.normal(0, 0.02, x.size)
    y[0] = 0.1
    pane = shown_pane(qtbot, PlotData((PointSeries("travel", x, y, symbol="●", flagged=flagged, tips=("far off",)),)))
    image = drawing(pane)
    crowd, empty = (colour_at(image, pane.canvas.place(75.0, v)) for v in (SCALE * 75, SCALE * 75 + 0.2))
    assert near(crowd, QColor(LIGHT.series[0]), 60)
    assert near(empty, QColor(LIGHT.card))
    assert shows(image, pane.canvas.place(75.0, 0.1), LIGHT.series[0])
    pane.canvas.walk(1)
    assert pane.canvas.tip() == "far off"
    pane.canvas.walk(1)
    assert pane.canvas.tip() == "far off"  # the only one that is told
    pane.export_svg(tmp_path / "cloud.svg")
    assert "data:image/png;base64," in (tmp_path / "cloud.svg").read_text(encoding="utf-8")


def test_items_are_reused(pane):
    pane.set_data(size_error(2))
    before = len(pane.canvas.scene().items())
    for copies in (3, 1, 2):
        pane.set_data(size_error(copies))
    assert len(pane.canvas.scene().items()) == before


def test_a_new_theme_is_followed_at_once(pane, dressed):
    dressed(DARK)
    image = drawing(pane)
    assert near(colour_at(image, QPointF(2, pane.canvas.height() - 2)), QColor(DARK.card))
    assert shows(image, pane.canvas.place(80.0, mean_at(80.0)), DARK.series[0])


def test_on_a_screen_of_twice_the_pixels_everything_is_at_its_place():
    chosen = "fitted_lines or bands_lie or are_seen or overlap or hover or dashed or png or svg"
    done = subprocess.run(
        [sys.executable, "-m", "pytest", "-q", "-p", "no:cacheprovider", "-k", chosen, __file__],
        env={**os.environ, "QT_SCALE_FACTOR": "2", "QT_QPA_PLATFORM": "offscreen"},
        cwd=Path(__file__).parents[3], capture_output=True, text=True, timeout=100, check=False,
    )  # fmt: skip
    assert done.returncode == 0, done.stdout
