"""The correction curve of an instrument: what is to be added to a reading, by length.

Reference: JCGM 100:2008 3.2.4 (a recognised error is corrected, and the correction has an uncertainty).
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from core.errors import InputError
from core.words import tr

Floats = NDArray[np.float64]


@dataclass(frozen=True, slots=True, eq=False)
class CorrectionCurve:
    """What is to be added to a reading: (n,) lengths, corrections, u and U; straight between the points."""

    length: Floats
    correction: Floats
    u: Floats
    U: Floats

    def at(self, length: float) -> tuple[float, float]:
        """Return the correction at a length and its u; between points as if their errors were one (on the safe side).

        Raises:
            InputError: field `length` outside the points.
        """
        if not self.length[0] <= length <= self.length[-1]:
            raise InputError(
                "length",
                tr(
                    "{length:g} mm lies outside the checked lengths {low:g} to {high:g} mm; check a reference there.",
                    length=length,
                    low=float(self.length[0]),
                    high=float(self.length[-1]),
                ),
            )
        return float(np.interp(length, self.length, self.correction)), float(np.interp(length, self.length, self.u))
