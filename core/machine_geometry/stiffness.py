"""How far a known push moves a carriage whose motors hold: along its axis, and sideways out of its slide.

    d_j = pushed_j - rest_j       C = |mean of d_j| / F       u(C)^2 = (s^2/n + r^2/6)/F^2 + (C*u(F)/F)^2

Symbols: rest read after a push that was let go, pushed while the next one is held the same way; s standard deviation of
the differences, n pairs, r resolution of the dial, F force. Play that closes again when the push ends is part of d.

Reference: Hooke's law; JCGM 100:2008 4.2, 4.3.7 (limits of error), F.2.2.1 (resolution), G.4.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from enum import StrEnum

import numpy as np
from numpy.typing import ArrayLike, NDArray

from core.errors import InputError
from core.machine_geometry.quickcycle import USUAL_PAIRS, refuse_moving_base
from core.machine_geometry.reversal import GROSS_MM, check_resolution, pair_resolution_mm, refuse_stray
from core.measuring.finite import finite_in
from core.measuring.gum import combine
from core.measuring.reach import of_one_length, refuse_out_of_reach, within_reach
from core.quantity import Estimate
from core.words import Words, tr

Floats = NDArray[np.float64]

MOST_PUSH_N = 50.0  # more bends or shifts what shall be measured (common practice, no source)


class Side(StrEnum):
    """Which way the carriage is pushed."""

    ALONG = "along"
    SIDEWAYS = "sideways"


class Hold(StrEnum):
    """Whether a reading was taken at rest or while the push was held."""

    REST = "rest"
    PUSHED = "pushed"


_STEMS = {Side.ALONG: "compliance", Side.SIDEWAYS: "side_compliance"}


@dataclass(frozen=True, slots=True)
class Push:
    """The force and the limit of error of the scale that told it."""

    force_n: float
    limit_n: float


@dataclass(frozen=True, slots=True, eq=False)
class Pushed:
    """The pairs of one side: numbers of their readings (n, 2), how far each push moved it (n,), and mm per newton."""

    side: Side
    rows: NDArray[np.int_]
    moved_mm: Floats
    compliance: Estimate

    @within_reach
    @finite_in("force_n")
    def moved_by(self, force_n: float) -> Estimate:
        """Return how far another force moves it, taken in proportion."""
        c = self.compliance
        refuse_out_of_reach("compliance", c)
        return Estimate("moved", force_n * c.value, force_n * c.u, c.dof, "mm")


@dataclass(frozen=True, slots=True, eq=False)
class Stiffness:
    """A push trial evaluated: the sides that were pushed, along the axis first, and what to mind."""

    axis: str
    push: Push
    sides: tuple[Pushed, ...]
    minds: tuple[Words, ...]

    def estimates(self) -> tuple[Estimate, ...]:
        """Return compliance and sideways compliance of the axis, mm/N."""
        return tuple(side.compliance for side in self.sides)


@within_reach
@of_one_length("side", "hold", "reading_mm")
def stiffness_from_pushes(
    side: Sequence[str], hold: Sequence[str], reading_mm: ArrayLike, push: Push, *, axis: str, resolution_mm: float
) -> Stiffness:
    """Evaluate pushes. On each side the first reading at rest and the first while pushed are a pair, and so on.

    Args:
        side: (n,) names of `Side`.
        hold: (n,) names of `Hold`.
        reading_mm: (n,) readings of the dial; nan for one that is missing or left out: its pair drops out.
        push: the force, alike for all.
        axis: x, y or z.
        resolution_mm: graduation of the dial.

    Raises:
        InputError: field `reading_mm`, with its row where one is at fault: no or one pair only, a reading far from its
            like, pushes that move it one way and the other, or by more than 1 mm; `push_n`, `push_limit_n`,
            `resolution_mm`.
    """
    readings = np.asarray(reading_mm, dtype=float)
    check_resolution(resolution_mm)
    _check_push(push)
    paired = {which: _pairs(which, side, hold, readings) for which in Side}
    told = {which: rows for which, rows in paired.items() if len(rows) >= 2}
    if not told:
        raise InputError("reading_mm", _too_few(any(len(rows) for rows in paired.values())))
    sides = tuple(_pushed(which, rows, readings, push, axis, resolution_mm) for which, rows in told.items())
    return Stiffness(axis, push, sides, _minds(sides))


def _check_push(push: Push) -> None:
    if not 0 < push.force_n <= MOST_PUSH_N:
        raise InputError(
            "push_n",
            tr("A push of {force:g} N is not possible here; pull with 5 to 20 N on a luggage scale, {most:g} at most.",
               force=push.force_n, most=MOST_PUSH_N),
        )  # fmt: skip
    if not 0 < push.limit_n < push.force_n / 2:
        raise InputError(
            "push_limit_n",
            tr("The scale must be true to more than 0 and less than half of the push of {force:g} N; type what its "
               "maker states, or what a known mass showed.", force=push.force_n),
        )  # fmt: skip


def _pairs(which: Side, side: Sequence[str], hold: Sequence[str], readings: Floats) -> NDArray[np.int_]:
    mine = [row for row, pushed in enumerate(side) if pushed == which]
    rest, pushed = (np.array([row for row in mine if hold[row] == state], dtype=int) for state in Hold)
    for rows in (rest, pushed):
        refuse_stray(readings, rows[np.isfinite(readings[rows])].tolist())
    both = min(rest.size, pushed.size)
    rows = np.column_stack([rest[:both], pushed[:both]])
    return np.asarray(rows[np.all(np.isfinite(readings[rows]), axis=1)])


def _too_few(one: bool) -> Words:
    if one:
        return tr("One push only: it does not tell how far pushes scatter. Read {count} pairs on each side.",
                  count=USUAL_PAIRS)  # fmt: skip
    return tr("No pair yet: read the dial at rest and while the push is held.")


def _pushed(
    which: Side, rows: NDArray[np.int_], readings: Floats, push: Push, axis: str, resolution_mm: float
) -> Pushed:
    d, n = readings[rows[:, 1]] - readings[rows[:, 0]], len(rows)
    refuse_moving_base(side_words(which, axis), d, resolution_mm)
    moved = abs(float(d.mean()))
    if moved > GROSS_MM:
        raise InputError(
            "reading_mm",
            tr(
                "{side}: {force:g} N move it by {moved:.2f} mm, so something is loose or the motors are off. Look at "
                "clamp and grub screws, switch the motors on, push again; this is not kept as a result.",
                side=side_words(which, axis),
                force=push.force_n,
                moved=moved,
            ),
        )
    c = moved / push.force_n
    parts = [d.std(ddof=1) / math.sqrt(n) / push.force_n, pair_resolution_mm(resolution_mm) / push.force_n]
    whole = combine([*parts, c * push.limit_n / math.sqrt(3.0) / push.force_n], [n - 1.0, math.inf, math.inf])
    name = f"{_STEMS[which]}_{axis}"
    return Pushed(which, rows, np.abs(d), Estimate(name, c, whole.u, whole.dof, "mm/N"))


def side_words(which: Side, axis: str) -> Words:
    """Return the side for people."""
    if which is Side.ALONG:
        return tr("Along {axis}", axis=axis.upper())
    return tr("Sideways to {axis}", axis=axis.upper())


def _minds(sides: Sequence[Pushed]) -> tuple[Words, ...]:
    minds = []
    fewest = min(len(side.rows) for side in sides)
    if fewest < USUAL_PAIRS:
        minds.append(
            tr("{count} pushes on one side are few; {usual} make a sound interval.", count=fewest, usual=USUAL_PAIRS)
        )
    if len(sides) < len(Side):
        minds.append(tr("Push along the axis and sideways: belt and slide are told apart by both."))
    return tuple(minds)
