"""Limits, events, joined points and dates on a plot, and two plots that share their x."""


import numpy as np
import pytest
from PySide6.QtCore import QDate, QSize, Qt
from PySide6.QtGui import QColor
from PySide6.QtWidgets import QGraphicsScene

from app.theme import DARK, LIGHT
from app.widgets.chartpair import ChartPair
from app.widgets.plotaxis import Axis
from app.widgets.plotcanvas import PlotCanvas
from app.widgets.plotdata import EventMark, LimitLine, PlotData, PointSeries
from app.widgets.plotdrawing import Drawing
from app.widgets.plotexport import image_of, svg_of
from app.widgets.plotframe import Frame, Name, Sheet
from app.widgets.plotmarks import contrast
from app.widgets.plotsheet import CROWDED, NAMED_EVENTS

THEMES = pytest.mark.parametrize("theme", [LIGHT, DARK], ids=["light", "dark"])


def chart(n=30, *, flagged=(), events=(), dashed=False, breaks=(), **more):
    """A chart of n results between limits at plus and minus 0.05, mean 0."""
    y = np.random.default_rng(3).normal(0, 0.015, n)
    flags = np.isin(np.arange(n), flagged)
    y = np.where(flags, 0.07, y)
    series = PointSeries(
        "result", np.arange(1.0, n + 1), y, np.full(n, 0.004), flagged=flags, joined=True, breaks=breaks
    )
    limits = tuple(
        LimitLine(f"{name} {level:+.2f}", [0.5, n + 0.5], [level, level], f"{level:+.2f}", dashed=dashed,
                  centre=name == "mean")
        for name, level in (("upper", 0.05), ("mean", 0.0), ("lower", -0.05))
    )  # fmt: skip
    return PlotData((series,), limits=limits, events=tuple(events), flag_label="signal", zero_line=False, **more)


@pytest.fixture
def canvas_of(qapp):
    made = []

    def make(data, theme=LIGHT, size=(620, 320)):
        canvas = PlotCanvas(theme)
        canvas.set_data(data)
        canvas.lay_out(QSize(*size))
        made.append(canvas)
        return canvas

    yield make
    for canvas in made:
        canvas.deleteLater()


def colour_at(canvas, x, y):
    image, at = image_of(canvas, 1.0), canvas.place(x, y)
    margin = 12
    return [image.pixelColor(round(at.x()) + margin, round(at.y()) + margin + step) for step in (-1, 0, 1)]


@THEMES
def test_a_limit_is_drawn_at_its_level_in_an_ink_that_is_seen(canvas_of, theme):
    canvas = canvas_of(chart(), theme)
    assert max(contrast(colour, QColor(theme.card)) for colour in colour_at(canvas, 22.5, 0.05)) > 3
    assert max(contrast(colour, QColor(theme.card)) for colour in colour_at(canvas, 22.5, 0.04)) < 1.5


@THEMES
def test_the_names_of_limits_stand_behind_their_right_ends(canvas_of, theme):
    canvas = canvas_of(chart(), theme)
    names = canvas.name_rects()
    for name, level in (("upper +0.05", 0.05), ("mean +0.00", 0.0), ("lower −0.05".replace("−", "-"), -0.05)):
        end = canvas.place(30.5, level)
        assert names[name].left() > end.x()
        assert abs(names[name].center().y() - end.y()) < 4


def test_where_there_is_little_room_the_value_alone_stands_there(canvas_of):
    names = canvas_of(chart(), size=(340, 240)).name_rects()
    assert "+0.05" in names and "upper +0.05" not in names


def test_zoomed_past_their_end_the_names_stand_along_the_lines(canvas_of):
    canvas = canvas_of(chart())
    canvas.view.setXRange(5, 15, padding=0)
    assert any(name.endswith("+0.05") for name in canvas.name_rects())


def test_a_limit_without_a_name_is_drawn_all_the_same(canvas_of):
    data = chart()
    lone = PlotData(data.points, limits=(LimitLine("", [0.5, 30.5], [0.05, 0.05]),), zero_line=False)
    canvas = canvas_of(lone)
    assert canvas.name_rects() == {}  # one joined series needs no name either: the axis tells
    assert any(abs(path.path().boundingRect().height()) < 1e-6 for path in canvas.drawing.paths())


def test_limits_that_may_still_move_are_dashed(canvas_of):
    def dashes(data):
        return [item.pen().style() == Qt.PenStyle.CustomDashLine for item in canvas_of(data).drawing.paths()]

    assert sum(dashes(chart(dashed=True))) == 3
    assert sum(dashes(chart())) == 0


def test_the_name_belongs_to_the_last_part_of_a_broken_limit(canvas_of):
    limit = LimitLine("upper", [0.5, 15.5, np.nan, 15.5, 30.5], [0.05, 0.05, np.nan, -0.05, -0.05])
    canvas = canvas_of(PlotData(chart().points, limits=(limit,), zero_line=False))
    assert canvas.name_rects()["upper"].center().y() == pytest.approx(canvas.place(30.5, -0.05).y(), abs=4)


def test_a_limit_that_ends_in_nothing_has_no_name(canvas_of):
    limit = LimitLine("upper", [0.5, 15.5, 30.5], [0.05, 0.05, np.nan])
    assert canvas_of(PlotData(chart().points, limits=(limit,))).name_rects() == {}


def test_an_event_is_an_upright_line_with_its_name_at_the_top(canvas_of):
    canvas = canvas_of(chart(events=[EventMark(12.5, "new nozzle")]))
    name = canvas.name_rects()["new nozzle"]
    assert abs(name.center().x() - canvas.place(12.5, 0).x()) < name.width()
    assert name.top() < canvas.view_rect().top() + 40
    (line,) = [
        p for p in canvas.drawing.paths() if p.path().boundingRect().height() == pytest.approx(canvas.view.height())
    ]
    assert line.pen().style() == Qt.PenStyle.CustomDashLine


def test_of_many_events_only_the_newest_are_named(canvas_of):
    events = [EventMark(n + 0.5, f"e{n}") for n in range(1, 29)]
    named = {name for name in canvas_of(chart(events=events), size=(1400, 320)).name_rects() if name.startswith("e")}
    assert named and named <= {f"e{n}" for n in range(28 - NAMED_EVENTS + 1, 29)}


def paths_between_points(canvas, n):
    """The drawn line that has a move or line element for every point."""
    return [p.path() for p in canvas.drawing.paths() if n <= p.path().elementCount() <= n + 2 and p.pen().widthF() == 1]


def test_points_are_joined_in_their_order_and_the_line_is_broken_where_told(canvas_of):
    (whole,) = paths_between_points(canvas_of(chart()), 30)
    assert sum(whole.elementAt(k).isMoveTo() for k in range(whole.elementCount())) == 1
    (broken,) = paths_between_points(canvas_of(chart(breaks=(10, 20))), 30)
    assert sum(broken.elementAt(k).isMoveTo() for k in range(broken.elementCount())) == 3


def test_of_hundreds_of_joined_points_only_the_line_and_the_flagged_are_drawn(canvas_of):
    few, many = canvas_of(chart(CROWDED)), canvas_of(chart(CROWDED + 1, flagged=[7]))

    def symbols(canvas):
        return sum(
            p.path().elementCount() for p in canvas.drawing.paths() if p.brush().style() != Qt.BrushStyle.NoBrush
        )

    assert symbols(few) > 100 * symbols(many) > 0
    assert "✕ signal" in many.name_rects()
    many.tell((0, 3))  # each of them can still be told
    assert many.tip().startswith("result: 4")


def test_ten_thousand_joined_points_are_laid(canvas_of):
    canvas, data = canvas_of(chart(20)), chart(10_000, flagged=range(0, 10_000, 120), events=[EventMark(5000.5, "lot")])
    canvas.set_data(data)
    assert canvas.data.point_count == 10_000


def test_limits_and_events_are_part_of_the_picture_for_other_programs(canvas_of):
    text = svg_of(canvas_of(chart(events=[EventMark(12.5, "new nozzle")], dashed=True)))
    assert "new nozzle" in text and "upper +0.05" in text and "stroke-dasharray" in text


@pytest.mark.parametrize(("days", "step"), [(5, 1), (60, 14), (400, 91), (4000, 728), (60_000, 3640)])
def test_dates_stand_at_whole_days(qapp, days, step):
    axis = Axis("bottom")
    axis.dates = True
    values, texts = axis.ticks(20_500.3, 20_500.3 + days, 500)
    assert set(np.diff(values)) == {step}
    assert texts[0] == QDate(1970, 1, 1).addDays(int(values[0])).toString("yyyy-MM-dd")
    assert len(set(texts)) == len(texts)


def test_a_canvas_writes_dates_only_where_x_is_in_days(canvas_of):
    canvas = canvas_of(chart(x_dates=True))
    assert canvas.axes["bottom"].dates
    canvas.set_data(chart())
    assert not canvas.axes["bottom"].dates


def test_pieces_and_places_are_counted_in_whole_numbers(canvas_of):
    canvas = canvas_of(chart(3))
    assert set(canvas.axes["bottom"].ticks(0.5, 3.5, 900.0)[1]) == {"1", "2", "3"}
    assert "0.02" in canvas.axes["left"].ticks(-0.05, 0.05, 300.0)[1]
    canvas.set_data(PlotData((PointSeries("readings", np.array([1.5, 2.0]), np.zeros(2)),)))
    assert "1.4" in canvas.axes["bottom"].ticks(0.5, 3.5, 900.0)[1]


# Two plots


@pytest.fixture
def pair(qtbot):
    widget = ChartPair("Nothing yet.")
    qtbot.addWidget(widget)
    widget.resize(640, 560)
    widget.show()
    qtbot.waitExposed(widget)
    return widget


def wide(n=30):
    """Numbers that need more room than those of `chart`, over the same x."""
    data = chart(n)
    series = PointSeries("range", data.points[0].x, 12345 + data.points[0].y * 1e-2, joined=True)
    limit = LimitLine("limit", [0.5, n + 0.5], [12345.0005, 12345.0005])
    return PlotData((series,), limits=(limit,), zero_line=False, least_y_span=1e-4, y_label="range")


def test_two_plots_share_their_left_edge_and_their_x(pair):
    pair.set_data(chart(), wide())
    assert pair.above.height() > pair.below.height() > 100
    above, below = pair.above.canvas, pair.below.canvas
    assert above.view_rect().left() == pytest.approx(below.view_rect().left(), abs=1)
    above.view.setXRange(3, 9, padding=0)
    assert below.view.viewRange()[0] == pytest.approx([3, 9])
    below.show_home()
    assert above.view.viewRange()[0] == pytest.approx(below.view.viewRange()[0])


def test_alone_the_upper_plot_needs_no_more_room_than_its_numbers(pair):
    pair.set_data(chart())
    left = pair.above.canvas.view_rect().left()
    pair.set_data(chart(), wide())
    assert pair.above.canvas.view_rect().left() > left
    pair.set_data(chart())
    assert pair.below.isHidden() and pair.above.canvas.view_rect().left() == pytest.approx(left, abs=1)
    pair.above.canvas.view.setXRange(3, 9, padding=0)  # nobody follows


def test_a_zoom_stays_while_the_same_thing_is_shown(pair):
    pair.set_data(chart(y_label="a"), wide())
    pair.above.canvas.view.setXRange(3, 9, padding=0)
    pair.set_data(chart(31, y_label="a"), wide(31))
    assert pair.below.canvas.view.viewRange()[0] == pytest.approx([3, 9])
    pair.set_data(chart(31, y_label="b"), wide(31))
    assert pair.above.canvas.is_home() and pair.below.canvas.is_home()


def test_no_data_shows_the_empty_text(pair):
    pair.set_data(PlotData(()))
    assert pair.above.empty.isVisible() and pair.above.empty.text() == "Nothing yet."
    pair.set_data(chart(), wide())
    assert not pair.above.empty.isVisible()
    pair.set_data(PlotData(()))
    assert pair.above.empty.isVisible() and pair.below.isHidden()


def test_a_name_over_the_edges_of_bands_stands_on_paper_and_no_line_goes_through_it(qapp):
    along = np.linspace(0.0, 400.0, 50)
    edges = [np.column_stack([along, np.full(50, y)]) for y in range(6, 240, 12)]
    line = np.column_stack([along, np.full(50, 120.0)])
    scene, paper = QGraphicsScene(), QColor("#fffdf0")
    view = scene.addRect(0, 0, 400, 240)
    drawing, frame = Drawing(view), Frame((0.0, 1.0), (0.0, 1.0), 400.0, 240.0)
    for crossed in (edges, []):
        names = [Name("outside", line, QColor("black"))]
        drawing.show_sheet(Sheet(names=names, lines=[line], edges=crossed, paper=paper), frame, qapp.font())
        (name,) = drawing.names()
        grounds = [path for path in drawing.paths() if path.brush().color() == paper]
        assert len(grounds) == bool(crossed)
        assert all(path.path().boundingRect().contains(name.sceneBoundingRect()) for path in grounds)
        assert all(path.zValue() < name.zValue() for path in grounds)
