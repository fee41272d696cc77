"""The filled parts of a plot: the bands of a fitted line and the quiet ground, each with the edge by which it is seen.

A filling pale enough to read a plot through has less than the contrast of 3:1 that WCAG 2.2, 1.4.11 asks for; its edge,
thin and in the same hue, has it.
"""

from __future__ import annotations

import numpy as np
from PySide6.QtCore import Qt
from PySide6.QtGui import QColor, QPen

from app.theme import Tokens
from app.widgets import plotmarks as marks
from app.widgets.plotdata import FitCurve, Ground
from app.widgets.plotframe import GROUND_ALPHA, Frame, Name, Sheet, Stroke

_CONFIDENCE_ALPHA, _PREDICTION_ALPHA = 76, 34
_APART_PX = 3.0  # an edge nearer to the line than this would only make it thick


def lay_bands(sheet: Sheet, key: str, curve: FitCurve, frame: Frame, ink: QColor) -> None:
    """Draw where the mean lies, and where a single reading does, its edge dotted."""
    x = frame.across(curve.x)
    confidence, prediction = curve.confidence_half, curve.prediction_half
    for name, half, inside, alpha, z, pen in (
        ("prediction", prediction, confidence, _PREDICTION_ALPHA, -20, thin_pen(ink, dotted=True)),
        ("confidence", confidence, np.zeros(1), _CONFIDENCE_ALPHA, -18, thin_pen(ink)),
    ):
        if half.any():
            top, bottom = frame.down(curve.mean + half), frame.down(curve.mean - half)
            fill = marks.with_alpha(ink.name(), alpha)
            sheet.strokes[f"{name} {key}"] = Stroke(marks.band_path(x, top, bottom), z, fill=fill)
            apart = (half - inside) * frame.height_px / (frame.y[1] - frame.y[0]) >= _APART_PX
            upper, lower = (np.where(apart, side, np.nan) for side in (top, bottom))
            sheet.strokes[f"{name} edges {key}"] = Stroke(marks.edges_path(x, upper, lower), -16, pen)
            sheet.fills.append(np.column_stack([x, top, bottom]))


def lay_ground(sheet: Sheet, ground: Ground, frame: Frame, theme: Tokens) -> None:
    """Draw what is asked for, such as a tolerance, behind all the rest."""
    x = frame.across(ground.x)
    top, bottom = frame.down(ground.half_height), frame.down(-ground.half_height)
    fill = marks.with_alpha(theme.quiet, GROUND_ALPHA)
    sheet.strokes["ground"] = Stroke(marks.band_path(x, top, bottom), -30, fill=fill)
    sheet.strokes["ground edges"] = Stroke(marks.edges_path(x, top, bottom), -28, thin_pen(QColor(theme.box)))
    top, bottom = np.clip(top, -1, None), np.clip(bottom, None, frame.height_px + 1)
    upper, lower = np.column_stack([x, top]), np.column_stack([x, bottom])
    sheet.edges.append(np.concatenate([upper, lower[::-1], upper[:1]]))
    inside = np.column_stack([x, np.maximum(top, 0)])
    sheet.names.append(Name(ground.label, inside, QColor(theme.quiet), ("below", "below left", "below right")))


def thin_pen(ink: QColor, *, dotted: bool = False) -> QPen:
    """Return the pen for the edges of a filling that is itself too pale to be seen by everybody."""
    pen = QPen(ink, 1.0)
    if dotted:
        pen.setStyle(Qt.PenStyle.CustomDashLine)
        pen.setDashPattern([1.0, 3.0])
    return pen
