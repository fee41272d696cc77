"""The ranges from which a plot is first seen."""

from dataclasses import replace

import numpy as np
import pytest

from app.widgets.plotdata import FitCurve, Ground, LimitLine, PlotData, PointSeries, WarningCurve
from app.widgets.plotranges import home_ranges

X = np.linspace(0.0, 150.0, 31)


def points(x, y, **more):
    return PointSeries("outside", np.array(x, float), np.array(y, float), **more)


def test_the_range_shows_readings_with_their_bars_and_curves_with_their_bands():
    curve = FitCurve("outside", X, -0.002 * X, np.full(31, 0.05), np.full(31, 0.1))
    data = PlotData((points([10, 100], [0.4, -0.1], U=np.array([0.2, 0.1])),), (curve,))
    (x0, x1), (y0, y1) = home_ranges(data)
    assert x0 == 0 and x1 == 150
    assert y1 > 0.6  # the upper end of the first bar
    assert y0 < -0.4  # the lower end of the prediction band at 150 mm


@pytest.mark.parametrize("value", [0.0, 0.1, -3.0, 1e6])
def test_equal_readings_do_not_collapse_the_range(value):
    _x, (y0, y1) = home_ranges(PlotData((points([20, 20, 20], [value] * 3),), zero_line=False, least_y_span=0.02))
    assert y0 < value < y1
    assert y1 - y0 >= 0.02


def test_one_place_does_not_collapse_the_range_of_x():
    (x0, x1), _y = home_ranges(PlotData((points([20], [0.1]),)))
    assert x0 < 20 < x1


def test_no_reading_gives_a_range_all_the_same():
    (x0, x1), (y0, y1) = home_ranges(PlotData(()))
    assert x0 < x1 and y0 < 0 < y1


def test_the_warning_curve_does_not_rule_the_range():
    data = PlotData((points([10, 100], [0.1, -0.1]),), warning_curve=WarningCurve(X, -0.1 * X, "if scaled"))
    _x, (y0, y1) = home_ranges(data)
    assert y0 > -0.4  # the curve falls to -15
    assert y0 < -0.11  # yet it is seen to fall


def test_a_wide_tolerance_does_not_flatten_the_readings():
    tight, wide = (Ground(X, np.full(31, half), "class") for half in (0.15, 30.0))
    _x, near = home_ranges(PlotData((points([10, 100], [0.1, -0.1]),), ground=tight))
    _x, far = home_ranges(PlotData((points([10, 100], [0.1, -0.1]),), ground=wide))
    assert near[0] < -0.15 and near[1] > 0.15  # its edges are seen
    assert far[1] - far[0] < 0.5


def test_an_unused_reading_far_off_does_not_rule_the_range():
    data = PlotData((points([10, 31, 100], [0.1, -18.0, -0.1], hollow=np.array([0, 1, 0])),))
    assert home_ranges(data)[1][0] > -0.5


def test_values_that_are_not_finite_are_left_out():
    data = PlotData((points([10, np.nan, 50], [0.1, 0.2, np.inf], U=np.array([np.nan, 0.1, 0.1])),))
    assert np.all(np.isfinite(home_ranges(data)))


def test_negative_places_are_seen():
    (x0, x1), _y = home_ranges(PlotData((points([-50, 0, 50], [0.0, 0.1, 0.2]),)))
    assert x0 < -50 and x1 > 50


def test_a_reading_at_zero_stands_clear_of_the_axis():
    (x0, x1), _y = home_ranges(PlotData((points([0, 4, 8], [0.1, 0.2, 0.1]),)))
    assert x0 < -0.2 and x1 > 8
    (x0, _x1), _y = home_ranges(PlotData((points([0.5, 4, 8], [0.1, 0.2, 0.1]),)))
    assert x0 == 0


def test_arrays_are_read_only_and_of_one_length():
    series = points([1, 2], [0.1, 0.2])
    assert series.U.tolist() == [0, 0] and series.ringed.tolist() == [False, False]
    with pytest.raises(ValueError, match="read-only"):
        series.y[0] = 1.0
    with pytest.raises(ValueError, match=r"PointSeries\.y: 1 values for 2 places"):
        points([1, 2], [0.1])


def test_limits_are_in_sight_with_room_for_their_names():
    limit = LimitLine("upper", [0.5, 20.5], [0.9, 0.9])
    (x0, x1), (y0, y1) = home_ranges(PlotData((points([1, 20], [0.1, 0.2]),), limits=(limit,), zero_line=False))
    assert y0 < 0.1 and y1 > 0.9 + 0.1 * (0.9 - 0.1)
    assert x1 > 20 + 0.2 * 19
    unnamed = replace(limit, name="")
    assert home_ranges(PlotData((points([1, 20], [0.1, 0.2]),), limits=(unnamed,)))[0][1] < 21.5


def test_a_limit_that_is_broken_off_does_not_disturb_the_range():
    limit = LimitLine("upper", [0.5, 8.5, np.nan, 8.5, 20.5], [0.9, 0.9, np.nan, 0.5, 0.5])
    assert np.all(np.isfinite(home_ranges(PlotData((points([1, 20], [0.1, 0.2]),), limits=(limit,)))))


def test_limits_are_read_only_and_of_one_length():
    with pytest.raises(ValueError, match=r"LimitLine\.y: 1 values for 2 places"):
        LimitLine("upper", [0, 1], [0.9])
    with pytest.raises(ValueError, match="read-only"):
        LimitLine("upper", [0, 1], [0.9, 0.9]).y[0] = 1.0
