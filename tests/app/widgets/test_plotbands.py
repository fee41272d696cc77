"""What carries meaning in a plot is seen: 3:1 on the card (WCAG 2.2, 1.4.11); a paler filling has an edge that is."""

from __future__ import annotations

import numpy as np
import pytest
from PySide6.QtGui import QColor

from app.theme import DARK, LIGHT
from app.widgets.plotdata import EventMark, FitCurve, Ground, LimitLine, PlotData, PointSeries
from app.widgets.plotframe import Frame, Shown
from app.widgets.plotmarks import blended, contrast
from app.widgets.plotsheet import lay_sheet

X = np.linspace(0.0, 100.0, 51)
FRAME = Frame((0.0, 100.0), (-1.0, 1.0), 500.0, 300.0)
HELPS_THE_EYE = ("grid", "zero", "events")  # what they help to read is told beside them
THEMES = pytest.mark.parametrize("theme", [LIGHT, DARK], ids=lambda theme: theme.name)


def sheet(theme, confidence=0.1, prediction=0.3, role=0):
    half = np.full(X.size, 1.0)
    curve = FitCurve("outside", X, 0.002 * X, confidence * half, prediction * half, role)
    points = PointSeries("outside", X[::10], np.zeros(6), np.full(6, 0.05), "▲", role, flagged=np.eye(6, dtype=bool)[0],
                         joined=True)  # fmt: skip
    limits = LimitLine("upper", X, np.full(X.size, 0.5)), LimitLine("mean", X, np.zeros(X.size), centre=True)
    data = PlotData((points,), (curve,), ground=Ground(X, 0.6 * half, "tolerance"), limits=limits,
                    events=(EventMark(20.0, "new belt"),))  # fmt: skip
    return lay_sheet(data, FRAME, Shown(), theme, np.array([-1.0, 0.0, 1.0]))


def seen_against_card(colour: QColor, theme) -> float:
    return contrast(blended(colour.name(), theme.card, colour.alphaF()), QColor(theme.card))


@THEMES
@pytest.mark.parametrize("role", range(7))
def test_every_line_and_sign_is_seen(theme, role):
    pale = {
        name: round(seen_against_card(stroke.pen.color(), theme), 2)
        for name, stroke in sheet(theme, role=role).strokes.items()
        if stroke.pen is not None and stroke.fill is None and not name.startswith(HELPS_THE_EYE)
    }
    assert {name: ratio for name, ratio in pale.items() if ratio < 3.0} == {}
    assert {"confidence edges 0", "prediction edges 0", "ground edges", "bars 0", "joined 0", "limit 1"} <= set(pale)


@THEMES
def test_every_filling_that_is_too_pale_has_an_edge_around_it(theme):
    strokes = sheet(theme).strokes
    filled = {name: stroke.fill for name, stroke in strokes.items() if stroke.fill is not None and stroke.pen is None}
    pale = [name for name, fill in filled.items() if seen_against_card(fill, theme) < 3.0]
    assert sorted(pale) == ["confidence 0", "ground", "prediction 0"]
    for name in pale:
        kind, _, number = name.partition(" ")
        edges = strokes[f"{kind} edges {number}".strip()].path.boundingRect()
        whole = strokes[name].path.boundingRect()
        assert (edges.top(), edges.bottom()) == pytest.approx((whole.top(), whole.bottom()))


def test_the_two_bands_are_told_apart_by_the_kind_of_their_edge():
    strokes = sheet(LIGHT).strokes
    assert strokes["confidence edges 0"].pen.style() != strokes["prediction edges 0"].pen.style()


@pytest.mark.parametrize(("confidence", "prediction", "edged"), [
    (0.1, 0.3, {"confidence", "prediction"}), (0.01, 0.3, {"prediction"}), (0.1, 0.11, {"confidence"}),
    (0.01, 0.02, set()),
])  # fmt: skip
def test_an_edge_that_would_touch_another_line_is_left_away(confidence, prediction, edged):
    strokes = sheet(LIGHT, confidence, prediction).strokes
    assert {kind for kind in ("confidence", "prediction") if not strokes[f"{kind} edges 0"].path.isEmpty()} == edged


def test_no_band_no_edge():
    assert not [name for name in sheet(LIGHT, 0.0, 0.0).strokes if name.startswith(("confidence", "prediction"))]
