"""Reversal error by the quick cycle: at one place or a few, the same target from either side, read on a dial.

    d_j = up_j - down_j           B = |mean of d_j| of the worst place
    u(B)^2 = s^2/n + r^2/6        s standard deviation of the differences, n pairs, r resolution of the dial

A slow drift of machine and indicator is in both readings of a pair and drops out of their difference.

Reference: ISO 230-2:2014 3 (reversal error); JCGM 100:2008 4.2, F.2.2.1, G.4.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import ArrayLike, NDArray

from core.errors import InputError
from core.machine_geometry.reversal import Approach, check_resolution, pair_resolution_mm, refuse_gross, refuse_stray
from core.measuring.choices import each_of
from core.measuring.gum import combine
from core.measuring.reach import of_one_length, within_reach
from core.measuring.rownames import row_words
from core.quantity import Estimate, coverage_factor
from core.words import Words, tr

Floats = NDArray[np.float64]

USUAL_PAIRS = 5
USUAL_PLACES = 3
_TREMBLE_MM = 0.01  # differences may change their sign within this (common practice, no source)
_SURE = 0.99  # level beyond which one pair stands out from the others
_FEWEST_TO_STAND_OUT = 4


@dataclass(frozen=True, slots=True, eq=False)
class Place:
    """The pairs of one place.

    Attributes:
        name: where.
        rows: (n, 2) numbers of the readings from - and from +.
        up_mm: (n,) readings moving towards +.
        down_mm: (n,) readings moving towards -.
        reversal: |mean difference| with its uncertainty.
        flagged: (n,) pairs that stand out; flagged, never dropped.
    """

    name: str
    rows: NDArray[np.int_]
    up_mm: Floats
    down_mm: Floats
    reversal: Estimate
    flagged: NDArray[np.bool_]

    @property
    def difference_mm(self) -> Floats:
        """Up less down of each pair (n,)."""
        return self.up_mm - self.down_mm


@dataclass(frozen=True, slots=True, eq=False)
class QuickReversal:
    """A quick cycle evaluated: the places in the order of reading, the worst of them, and what to mind."""

    axis: str
    places: tuple[Place, ...]
    worst: Place
    resolution_mm: float
    minds: tuple[Words, ...]

    def estimates(self) -> tuple[Estimate, ...]:
        """Return the reversal error of the worst place."""
        return (self.worst.reversal,)


@within_reach
@of_one_length("place", "approach", "reading_mm")
def reversal_from_pairs(
    place: Sequence[str], approach: Sequence[str], reading_mm: ArrayLike, *, axis: str, resolution_mm: float
) -> QuickReversal:
    """Evaluate a quick cycle. At each place the first reading from - and the first from + are a pair, and so on.

    Args:
        place: (n,) where the reading was taken.
        approach: (n,) names of `Approach`.
        reading_mm: (n,) readings of the dial; nan for one that is missing or left out: its pair drops out.
        axis: x, y or z.
        resolution_mm: graduation of the dial.

    Raises:
        InputError: field `reading_mm`, with its row where one is at fault: no or one pair only, a reading far from its
            like, a difference that changes its sign, or play beyond 1 mm; `approach`, with its row; `resolution_mm`.
    """
    readings = np.asarray(reading_mm, dtype=float)
    check_resolution(resolution_mm)
    ways = each_of(Approach, approach, "approach")
    paired = {name: _pairs(name, place, ways, readings) for name in dict.fromkeys(place)}
    told = {name: rows for name, rows in paired.items() if len(rows) >= 2}
    if not told:
        raise _too_few(paired)
    places = tuple(_place(name, rows, readings, axis, resolution_mm) for name, rows in told.items())
    worst = max(places, key=lambda one: one.reversal.value)
    refuse_gross(worst.reversal.value)
    return QuickReversal(axis, places, worst, resolution_mm, _minds(places, paired))


def _pairs(name: str, place: Sequence[str], approach: Sequence[Approach], readings: Floats) -> NDArray[np.int_]:
    """Return the complete pairs of a place as (n, 2) numbers of readings."""
    mine = [row for row, where in enumerate(place) if where == name]
    up, down = (np.array([row for row in mine if approach[row] is way], dtype=int) for way in Approach)
    for rows in (up, down):
        refuse_stray(readings, rows[np.isfinite(readings[rows])].tolist())
    both = min(up.size, down.size)
    rows = np.column_stack([up[:both], down[:both]])
    return np.asarray(rows[np.all(np.isfinite(readings[rows]), axis=1)])


def _too_few(paired: dict[str, NDArray[np.int_]]) -> InputError:
    one = next((name for name, rows in paired.items() if len(rows)), None)
    if one is None:
        return InputError("reading_mm", tr("No pair yet: read the same target from the other side as well."))
    return InputError(
        "reading_mm",
        tr(
            "One pair only ({place}): it does not tell how far pairs scatter. Read {count} pairs at each place.",
            place=row_words(one),
            count=USUAL_PAIRS,
        ),
    )


def _place(name: str, rows: NDArray[np.int_], readings: Floats, axis: str, resolution_mm: float) -> Place:
    up, down = readings[rows[:, 0]], readings[rows[:, 1]]
    d, n = up - down, len(rows)
    refuse_moving_base(name, d, resolution_mm)
    combined = combine([d.std(ddof=1) / math.sqrt(n), pair_resolution_mm(resolution_mm)], [n - 1.0, math.inf])
    B = Estimate(f"reversal_{axis}", abs(float(d.mean())), combined.u, combined.dof, "mm")
    return Place(name, rows, up, down, B, _standing_out(d, resolution_mm))


def refuse_moving_base(name: str, difference_mm: Floats, resolution_mm: float) -> None:
    """Play has one sign; where it changes beyond what the dial trembles, the dial itself moves."""
    limit = max(_TREMBLE_MM, 1.5 * resolution_mm)
    if difference_mm.max() > limit and difference_mm.min() < -limit:
        listed = ", ".join(f"{value:+.3f}".replace("-", "−") for value in difference_mm)
        raise InputError(
            "reading_mm",
            tr(
                "{place}: the difference changes its sign from cycle to cycle ({listed} mm), which play never does: "
                "the base of the indicator moves. Clamp it and read these pairs again.",
                place=row_words(name),
                listed=listed,
            ),
        )


def _standing_out(d: Floats, resolution_mm: float) -> NDArray[np.bool_]:
    """Flag a pair that the others would not predict; each is held against all others of its place."""
    n, flagged = d.size, np.zeros(d.size, dtype=bool)
    if n < _FEWEST_TO_STAND_OUT:
        return flagged
    k = coverage_factor(n - 2.0, 1.0 - (1.0 - _SURE) / n)
    for j in range(n):
        others = np.delete(d, j)
        sd = math.hypot(float(others.std(ddof=1)), pair_resolution_mm(resolution_mm))
        flagged[j] = abs(d[j] - others.mean()) > k * sd * math.sqrt(1.0 + 1.0 / (n - 1))
    return flagged


def _minds(places: Sequence[Place], paired: dict[str, NDArray[np.int_]]) -> tuple[Words, ...]:
    minds = []
    fewest = min(len(place.rows) for place in places)
    if fewest < USUAL_PAIRS:
        minds.append(
            tr("{count} pairs at one place are few; {usual} make a sound interval.", count=fewest, usual=USUAL_PAIRS)
        )
    if left := [name for name, rows in paired.items() if len(rows) == 1]:
        minds.append(tr("One pair only at {places}: not counted.", places=", ".join(left)))
    if len(places) < USUAL_PLACES:
        minds.append(tr("Play differs along an axis: read at both ends and in the middle."))
    if any(bool(place.flagged[0]) for place in places):
        minds.append(
            tr("The first pair of a place stands out, as the first one after power-on does: leave it out and read on.")
        )
    elif any(place.flagged.any() for place in places):
        minds.append(tr("A pair stands out from the others of its place: read it again."))
    return tuple(minds)
