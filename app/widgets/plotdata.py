"""What a plot shows, as plain frozen data.

No Qt here: pages fill these classes from a result, the canvas draws them. Units are those of the axis labels.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass, field
from typing import overload

import numpy as np
from numpy.typing import NDArray

Floats = NDArray[np.float64]
Bools = NDArray[np.bool_]
Range = tuple[float, float]

DENSE = 20_000  # points; above it a density image is both quicker and easier to read


def _none() -> Floats:
    return np.empty(0)


def _no_marks() -> Bools:
    return np.empty(0, dtype=bool)


class Tips(Sequence[str]):
    """Sentences for the hover, made when one is asked for: ten thousand of them would be slow."""

    def __init__(self, count: int, tell: Callable[[int], str]) -> None:
        self._count, self._tell = count, tell

    def __len__(self) -> int:
        return self._count

    @overload
    def __getitem__(self, index: int) -> str: ...
    @overload
    def __getitem__(self, index: slice) -> Sequence[str]: ...
    def __getitem__(self, index: int | slice) -> str | Sequence[str]:
        if isinstance(index, slice):
            return [self._tell(place) for place in range(self._count)[index]]
        return self._tell(range(self._count)[index])


@dataclass(frozen=True, slots=True, eq=False)
class PointSeries:
    """Readings of one kind.

    Attributes:
        name: what they are, for the label and the tip.
        x: (n,) places; points with a value that is not finite are left out.
        y: (n,) values.
        U: (n,) expanded uncertainties of y; empty, zero or not finite: no bar.
        symbol: one of the keys of `app.widgets.plotmarks.SYMBOLS`.
        role: index of the data colour; the curve of the same role belongs to these points.
        ringed: (n,) set apart by a ring (closed loops, for example).
        tips: n sentences for the hover, made when asked for; empty: name and values.
        flagged: (n,) questioned readings, with a cross beside them.
        hollow: (n,) readings that are shown but not used; they widen the range only a little.
        joined: a thin line goes from point to point; of hundreds only the line and the flagged ones are drawn.
        breaks: places of points before which that line is broken.
    """

    name: str
    x: Floats
    y: Floats
    U: Floats = field(default_factory=_none)
    symbol: str = "●"
    role: int = 0
    ringed: Bools = field(default_factory=_no_marks)
    tips: Sequence[str] = ()
    flagged: Bools = field(default_factory=_no_marks)
    hollow: Bools = field(default_factory=_no_marks)
    joined: bool = False
    breaks: tuple[int, ...] = ()

    def __post_init__(self) -> None:
        """Bring every array to the length of x and make it read-only."""
        n = np.asarray(self.x).size
        for name in ("x", "y", "U"):
            _freeze(self, name, float, n)
        for name in ("ringed", "flagged", "hollow"):
            _freeze(self, name, bool, n)


@dataclass(frozen=True, slots=True, eq=False)
class FitCurve:
    """A fitted mean with the half-widths of its bands (empty: none); arrays (n,), x rising.

    `name` is its label; empty where another curve of the same role bears it.
    """

    name: str
    x: Floats
    mean: Floats
    confidence_half: Floats = field(default_factory=_none)
    prediction_half: Floats = field(default_factory=_none)
    role: int = 0

    def __post_init__(self) -> None:
        """Make the arrays read-only."""
        n = np.asarray(self.x).size
        for name in ("x", "mean", "confidence_half", "prediction_half"):
            _freeze(self, name, float, n)

    @property
    def has_bands(self) -> bool:
        """Whether either band has a width."""
        return bool(self.confidence_half.any() or self.prediction_half.any())


@dataclass(frozen=True, slots=True, eq=False)
class WarningCurve:
    """What a wrong adjustment would do: dashed, may run out of the picture. `switch` names its check box."""

    x: Floats
    y: Floats
    label: str
    switch: str = ""

    def __post_init__(self) -> None:
        """Make the arrays read-only."""
        for name in ("x", "y"):
            _freeze(self, name, float, np.asarray(self.x).size)


@dataclass(frozen=True, slots=True, eq=False)
class Ground:
    """A tolerance of `half_height` (n,) around zero, as a quiet ground. `label` also names its check box."""

    x: Floats
    half_height: Floats
    label: str

    def __post_init__(self) -> None:
        """Make the arrays read-only."""
        for name in ("x", "half_height"):
            _freeze(self, name, float, np.asarray(self.x).size)


@dataclass(frozen=True, slots=True, eq=False)
class LimitLine:
    """A line that readings are held against: a limit, or with `centre` their mean; nan in y (n,) breaks it.

    `name` stands at its right end, or `short` where it has no room; `dashed` says that it may still move.
    """

    name: str
    x: Floats
    y: Floats
    short: str = ""
    dashed: bool = False
    centre: bool = False

    def __post_init__(self) -> None:
        """Make the arrays read-only."""
        for name in ("x", "y"):
            _freeze(self, name, float, np.asarray(self.x).size)


@dataclass(frozen=True, slots=True)
class EventMark:
    """Something that happened: an upright line at `x` with its name at the upper end."""

    x: float
    name: str


@dataclass(frozen=True, slots=True, eq=False)
class PlotData:
    """One picture.

    Attributes:
        points: the readings by kind.
        curves: fitted lines with bands.
        warning_curve: a curve that warns, or None.
        ground: a tolerance, or None.
        x_label: with its unit, "nominal length, mm".
        y_label: with its unit.
        summary: what the picture shows in one or two sentences, for those who cannot see it.
        title: heading of the pane and of exported pictures.
        ring_label: what a ring means, placed at a ringed point.
        flag_label: what a cross means, placed at a flagged point.
        zero_line: whether zero is the reference and always in sight.
        least_y_span: the y range is never narrower, so that equal readings look equal.
        limits: lines that the readings are held against.
        events: upright marks, oldest first.
        x_dates: x is in days since 1970-01-01 and its numbers are written as dates.
        bands_label: what the bands are, for their check box; 95 % where empty.
    """

    points: tuple[PointSeries, ...]
    curves: tuple[FitCurve, ...] = ()
    warning_curve: WarningCurve | None = None
    ground: Ground | None = None
    x_label: str = ""
    y_label: str = ""
    summary: str = ""
    title: str = ""
    ring_label: str = ""
    flag_label: str = ""
    zero_line: bool = True
    least_y_span: float = 0.1
    limits: tuple[LimitLine, ...] = ()
    events: tuple[EventMark, ...] = ()
    x_dates: bool = False
    bands_label: str = ""

    @property
    def point_count(self) -> int:
        """Readings in all series."""
        return sum(series.x.size for series in self.points)

    @property
    def x_whole(self) -> bool:
        """Whether all readings stand at whole numbers, as pieces and places do."""
        return not self.dense and all(bool((series.x % 1.0 == 0.0).all()) for series in self.points)

    @property
    def dense(self) -> bool:
        """Whether there are too many points to draw each of them."""
        return self.point_count > DENSE


def _freeze(owner: object, name: str, kind: type, size: int) -> None:
    """Replace an array of a frozen dataclass by a read-only copy of `size` values; an empty one becomes zeros."""
    values: NDArray[np.generic] = np.array(getattr(owner, name), dtype=kind).ravel()
    if values.size == 0 and size:
        values = np.zeros(size, dtype=kind)
    if values.size != size:
        raise ValueError(f"{type(owner).__name__}.{name}: {values.size} values for {size} places")
    values.setflags(write=False)
    object.__setattr__(owner, name, values)
