"""What the parts of a plot are drawn on: the range in sight, the strokes and names of one laying, and their inks."""

from __future__ import annotations

from dataclasses import dataclass, field

import numpy as np
from PySide6.QtGui import QColor, QPainterPath, QPen

from app.theme import Tokens
from app.widgets import plotmarks as marks
from app.widgets.plotdata import Floats, Range
from app.widgets.plotlabels import ALL_SIDES

GROUND_ALPHA = 26  # of the quiet ground, on which texts are to be read too


@dataclass(frozen=True, slots=True)
class Frame:
    """The range now seen and the size of the view in pixels."""

    x: Range
    y: Range
    width_px: float
    height_px: float

    def across(self, x: Floats) -> Floats:
        """Return the pixels from the left edge."""
        return (x - self.x[0]) / (self.x[1] - self.x[0]) * self.width_px

    def down(self, y: Floats) -> Floats:
        """Return the pixels from the upper edge."""
        return (self.y[1] - y) / (self.y[1] - self.y[0]) * self.height_px

    def pixels(self, x: Floats, y: Floats) -> Floats:
        """Return (n, 2) pixels of (n,) values."""
        return np.column_stack([self.across(x), self.down(y)])


@dataclass(frozen=True, slots=True)
class Shown:
    """Which parts the switches let through."""

    bands: bool = True
    ground: bool = True
    warning: bool = True


@dataclass(frozen=True, slots=True)
class Stroke:
    """A path with its pen or filling; higher `z` lies above."""

    path: QPainterPath
    z: float
    pen: QPen | None = None
    fill: QColor | None = None


@dataclass(frozen=True, slots=True, eq=False)
class Name:
    """A text that wants to stand beside `line` (n, 2), or beside one of its points, in an ink that can be read."""

    text: str
    line: Floats
    ink: QColor
    sides: tuple[str, ...] = ALL_SIDES
    at_points: bool = False
    short: str = ""

    @property
    def wordings(self) -> tuple[str, ...]:
        """The whole text and `short`; without that, what stands before the first comma, and that without its sign."""
        if self.short:
            return self.text, self.short
        short = self.text.partition(",")[0]
        return tuple(dict.fromkeys((self.text, short, short.partition(" (")[0])))


@dataclass(slots=True)
class Sheet:
    """Strokes by key, names by importance, what these keep clear of (see `plotlabels.Taken`), and the paper behind."""

    strokes: dict[str, Stroke] = field(default_factory=dict)
    names: list[Name] = field(default_factory=list)
    lines: list[Floats] = field(default_factory=list)
    edges: list[Floats] = field(default_factory=list)
    boxes: list[Floats] = field(default_factory=list)
    fills: list[Floats] = field(default_factory=list)
    paper: QColor = field(default_factory=QColor)


def text_ink(colour: str, theme: Tokens) -> QColor:
    """Return the colour, darker or lighter as far as needed to be read as text on card and ground."""
    ground = marks.blended(theme.quiet, theme.card, GROUND_ALPHA / 255)
    return marks.readable(colour, theme.ink, (QColor(theme.card), ground))


def series_ink(role: int, theme: Tokens) -> QColor:
    """Return the data colour of a role."""
    return QColor(theme.series[role % len(theme.series)])
