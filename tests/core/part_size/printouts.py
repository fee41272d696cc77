"""Size combs as they would be read after a print with planted faults. For tests only."""

from __future__ import annotations

from dataclasses import dataclass, field

import numpy as np
from numpy.typing import NDArray

from core.part_size.features import FEATURES, FeatureKind
from core.part_size.sizeerror import SizeError, fit_size_error

Floats = NDArray[np.float64]

# A comb of four teeth whose gauges share walls: for the mathematics, where walls do not scatter.
COMB = (
    ("outer 1-4", "tooth", 130.0),
    ("outer 1-2", "tooth", 50.0),
    ("outer 2-4", "tooth", 90.0),
    ("tooth 1", "tooth", 10.0),
    ("tooth 4", "tooth", 10.0),
    ("overall", "outside", 140.0),
    ("inner 1-4", "notch", 110.0),
    ("inner 1-2", "notch", 30.0),
    ("inner 2-4", "notch", 70.0),
    ("notch 2-3", "notch", 10.0),
    ("window", "closed_hole", 110.0),
)


@dataclass(frozen=True, slots=True)
class Faults:
    """What is wrong with the printer: scale error and lost motion of x and y, wall outset, a wrong part's ratio."""

    scale: tuple[float, float] = (0.0, 0.0)
    lost_motion_mm: tuple[float, float] = (0.0, 0.0)
    wall_outset_mm: float = 0.0
    ratio: tuple[float, float] = (1.0, 1.0)

    def truth(self) -> dict[str, float]:
        """The estimates as they should come out."""
        return {
            "scale_x": self.ratio[0] * (1 + self.scale[0]) - 1,
            "scale_y": self.ratio[1] * (1 + self.scale[1]) - 1,
            "wall_outset": self.wall_outset_mm,
            "lost_motion_x": self.lost_motion_mm[0],
            "lost_motion_y": self.lost_motion_mm[1],
        }


@dataclass(frozen=True, slots=True)
class Print:
    """The gauges of size combs along these axes (m), how often each is read, and how each responds to the faults."""

    axes: str = "x"
    times: tuple[int, ...] = (1,)
    only: tuple[FeatureKind, ...] = tuple(FeatureKind)
    feature: list[str] = field(init=False)
    axis: list[str] = field(init=False)
    kind: list[FeatureKind] = field(init=False)
    nominal_mm: Floats = field(init=False)
    reading: NDArray[np.int64] = field(init=False)

    def __post_init__(self) -> None:
        gauges = [(f"{name} {a}", kind, L, a) for a in self.axes for name, kind, L in COMB if kind in self.only]
        times = np.resize(self.times, len(gauges))
        for name, value in (
            ("feature", [g[0] for g in gauges]),
            ("axis", [g[3] for g in gauges]),
            ("kind", [FeatureKind(g[1]) for g in gauges]),
            ("nominal_mm", np.array([g[2] for g in gauges])),
            ("reading", np.repeat(np.arange(len(gauges)), times)),
        ):
            object.__setattr__(self, name, value)

    def size_mm(self, faults: Faults) -> Floats:
        """The true size of each gauge, from the table of kinds: L + s*L + 2*k*w - r*B."""
        which = ["xy".index(a) for a in self.axis]
        k = np.array([FEATURES[kind].k for kind in self.kind])
        r = np.array([FEATURES[kind].r for kind in self.kind])
        stretch = np.array([faults.ratio[i] * (1 + faults.scale[i]) for i in which])
        play = np.array([faults.lost_motion_mm[i] for i in which])
        return stretch * self.nominal_mm + 2 * k * faults.wall_outset_mm - r * play

    def columns(self) -> dict[str, list[str] | list[FeatureKind]]:
        """Axis, kind and feature of each reading."""
        return {
            "axis": [self.axis[i] for i in self.reading],
            "kind": [self.kind[i] for i in self.reading],
            "feature": [self.feature[i] for i in self.reading],
        }

    def fit(self, size_mm: Floats, **beside: object) -> SizeError:
        """Fit readings (n,), one for each of `reading`."""
        columns = self.columns()
        return fit_size_error(self.nominal_mm[self.reading], size_mm, columns.pop("kind"), **columns, **beside)
