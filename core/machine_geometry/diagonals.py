"""The diagonals of a parallelogram as they were read: repeats, outer and inner sides of pillars, what cannot be.

A diagonal centre to centre is the mean of its outer and its inner reading, or the drawn one. Where one of the two sides
was read only, the difference of the diagonals is set about the diagonal that the sides make.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

from core.errors import InputError
from core.measuring.reach import of_one_length
from core.records.rows import Instrument
from core.words import Words, tr

OUTER, INNER, DRAWN = "outer", "inner", "drawn"
ONE_SIDED = {OUTER: tr("outside"), INNER: tr("inside")}
SD_CALIPER_MM = 0.02  # of one reading over printed pillars, where nothing was repeated
SD_RULE_MM = 0.15  # of one reading with steel rule and loupe
LOUPE_MM = 0.1  # what a loupe still tells apart on a rule
_FAR_RATIO = 5.0  # a single reading that far off was mistyped
_OFF_RATIO = 0.03  # a diagonal is that far off its sides only by a misreading
_APART_MM = {OUTER: 0.3, INNER: 0.3, DRAWN: 1.0}  # repeats of one length further apart are not repeats

Cells = dict[tuple[str, str], list[int]]  # (diagonal, part) -> rows


@dataclass(frozen=True, slots=True)
class Diagonals:
    """Both diagonals centre to centre; uncertainties are those of either one.

    Attributes:
        parts: which sides were read on both: outer and inner, one of them, or drawn.
        u_repeat_mm: from repeats (or the assumed sd), with `dof`.
        u_resolution_mm: from the resolution.
        minds: checks that are not met. doubtful: rows that stand out from their repeats.
    """

    side_a_mm: float
    side_b_mm: float
    d1_mm: float
    d2_mm: float
    parts: tuple[str, ...]
    u_repeat_mm: float
    dof: float
    u_resolution_mm: float
    minds: tuple[Words, ...]
    doubtful: tuple[int, ...]

    @property
    def one_sided(self) -> bool:
        """Whether pillars were read from one side only, so that reversal does not drop out."""
        return self.parts in ((OUTER,), (INNER,))

    @property
    def drawn(self) -> bool:
        """Whether the diagonals are drawn lines."""
        return self.parts == (DRAWN,)


@of_one_length("reading_mm", "diagonal", "part")
def read_diagonals(
    plane: str,
    side_a_mm: float,
    side_b_mm: float,
    reading_mm: Sequence[float],
    diagonal: Sequence[str],
    part: Sequence[str],
    instrument: Instrument | None,
) -> Diagonals:
    """Put the readings together; arguments as for `squareness_from_diagonals`.

    Raises:
        InputError: a side that cannot be, a reading that cannot be, a name that is none, or a diagonal that is
            missing.
    """
    _check_sides(plane, side_a_mm, side_b_mm)
    _check_names(diagonal, part)
    across = math.hypot(side_a_mm, side_b_mm)
    _check_readings(reading_mm, across)
    cells = _cells(diagonal, part)
    parts = _common_parts(cells)
    means = {key: sum(reading_mm[i] for i in rows) / len(rows) for key, rows in cells.items()}
    d1, d2 = (sum(means[d, p] for p in parts) / len(parts) for d in "12")
    if parts in ((OUTER,), (INNER,)):
        d1, d2 = across + (d1 - d2) / 2, across - (d1 - d2) / 2
    else:
        _check_length((d1, d2), across, side_a_mm, side_b_mm)
    used = [cells[d, p] for d in "12" for p in parts]
    sd, dof, assumed = _repeatability(reading_mm, used, parts, instrument)
    weight = math.sqrt(sum(1 / len(rows) for rows in used) / 2) / len(parts)  # of both diagonals on the average
    step_mm = LOUPE_MM if parts == (DRAWN,) else (instrument.resolution_mm if instrument else 0.01)
    doubtful = _doubtful(reading_mm, cells)
    minds = (*_spread_minds(reading_mm, cells, doubtful), *_pillar_minds(means, parts, math.sqrt(2.0) * sd * weight))
    if assumed:
        minds += (tr("Nothing was read twice: {sd:g} mm is assumed for one reading. Read each twice.", sd=sd),)
    return Diagonals(
        side_a_mm, side_b_mm, d1, d2, parts, sd * weight, dof, step_mm / math.sqrt(12.0 * len(parts)), minds, doubtful
    )


def _check_sides(plane: str, side_a_mm: float, side_b_mm: float) -> None:
    if len(plane) != 2:
        raise InputError("plane", tr("A plane has two axes; pick one."))
    for field, axis, side in (("side_a_mm", plane[0], side_a_mm), ("side_b_mm", plane[1], side_b_mm)):
        if not (math.isfinite(side) and side > 0):
            raise InputError(
                field, tr("The side along {axis} must be above zero; type the distance.", axis=axis.upper())
            )


def _check_names(diagonal: Sequence[str], part: Sequence[str]) -> None:
    for row, (d, p) in enumerate(zip(diagonal, part, strict=True)):
        if d not in ("1", "2"):
            raise InputError("diagonal", tr("This is neither diagonal 1 nor 2; leave the reading out."), row)
        if p not in _APART_MM:
            says = tr("Whether this was read outside, inside or drawn is not told; leave the reading out.")
            raise InputError("part", says, row)


def _check_readings(reading_mm: Sequence[float], across: float) -> None:
    for row, reading in enumerate(reading_mm):
        if not (math.isfinite(reading) and reading > 0):
            raise InputError("reading_mm", tr("Row {row}: a diagonal is above zero; retype it.", row=row + 1), row)
        if not across / _FAR_RATIO < reading < across * _FAR_RATIO:  # pillars add or take their width
            says = tr("A diagonal of {d:g} mm cannot be where the sides make {across:.1f} mm; retype it.",
                      d=reading, across=across)  # fmt: skip
            raise InputError("reading_mm", says, row)


def _cells(diagonal: Sequence[str], part: Sequence[str]) -> Cells:
    cells: Cells = {}
    for row, place in enumerate(zip(diagonal, part, strict=True)):
        cells.setdefault(place, []).append(row)
    return cells


def _common_parts(cells: Cells) -> tuple[str, ...]:
    """Return the sides read on both diagonals; drawn lines and pillars are never mixed."""
    common = tuple(p for p in (DRAWN, OUTER, INNER) if ("1", p) in cells and ("2", p) in cells)
    if common:
        return common[:1] if common[0] == DRAWN else common
    if not any(d == "1" for d, _ in cells) or not any(d == "2" for d, _ in cells):
        missing = "2" if any(d == "1" for d, _ in cells) else "1"
        says = tr("Diagonal {number} is not read yet; one alone tells no angle.", number=missing)
        raise InputError("reading_mm", says)
    raise InputError("reading_mm", tr("One diagonal is read outside, the other inside; read both the same way."))


def _check_length(diagonals_mm: tuple[float, float], across: float, side_a_mm: float, side_b_mm: float) -> None:
    for number, d in enumerate(diagonals_mm, start=1):
        if abs(d / across - 1.0) > _OFF_RATIO:
            raise InputError(
                "reading_mm",
                tr(
                    "Diagonal {number} comes to {d:.2f} mm, but sides of {a:g} and {b:g} mm make {across:.2f} mm. "
                    "Check the sides, and that pillars were read on their outer and inner faces.",
                    number=number,
                    d=d,
                    a=side_a_mm,
                    b=side_b_mm,
                    across=across,
                ),
            )


def _repeatability(
    reading_mm: Sequence[float], used: Sequence[Sequence[int]], parts: tuple[str, ...], instrument: Instrument | None
) -> tuple[float, float, bool]:
    """Return sd and degrees of freedom of one reading, from repeats, else the gauge's, else assumed, and which."""
    dof = sum(len(rows) - 1 for rows in used)
    if dof:
        squares = 0.0
        for rows in used:
            mean = sum(reading_mm[i] for i in rows) / len(rows)
            squares += sum((reading_mm[i] - mean) ** 2 for i in rows)
        return math.sqrt(squares / dof), float(dof), False
    if parts == (DRAWN,):
        return SD_RULE_MM, math.inf, True
    if instrument is not None and instrument.sd_hand_mm is not None:
        return instrument.sd_hand_mm, float(instrument.sd_hand_dof or math.inf), False
    return SD_CALIPER_MM, math.inf, True


def _doubtful(reading_mm: Sequence[float], cells: Cells) -> tuple[int, ...]:
    """Return the rows of repeats that lie too far apart to be repeats; of three or more the far ones only."""
    found: list[int] = []
    for (_, part), rows in cells.items():
        values = sorted(reading_mm[i] for i in rows)
        if values[-1] - values[0] > _APART_MM[part]:
            middle = values[len(values) // 2] if len(values) > 2 else math.inf
            found += [i for i in rows if abs(reading_mm[i] - middle) > _APART_MM[part] / 2]
    return tuple(sorted(found))


def _spread_minds(reading_mm: Sequence[float], cells: Cells, doubtful: tuple[int, ...]) -> tuple[Words, ...]:
    apart = [rows for rows in cells.values() if set(rows) & set(doubtful)]
    return tuple(
        tr(
            "Readings of the same length lie {apart:.2f} mm apart; read that one again, or leave out the wrong one.",
            apart=max(reading_mm[i] for i in rows) - min(reading_mm[i] for i in rows),
        )
        for rows in apart
    )


def _pillar_minds(means: dict[tuple[str, str], float], parts: tuple[str, ...], u_mm: float) -> tuple[Words, ...]:
    """Outer less inner is twice a pillar, along each diagonal; where they differ, reversal or a wrong pillar shows."""
    if parts != (OUTER, INNER):
        return ()
    wide = (means["1", OUTER] - means["1", INNER]) / 2
    other = (means["2", OUTER] - means["2", INNER]) / 2
    if abs(wide - other) <= max(2.0 * u_mm, 0.05):
        return ()
    return (
        tr(
            "The pillars measure {wide:.2f} mm along diagonal 1, {other:.2f} mm along diagonal 2: unequal reversal, "
            "or one misread. Reversal drops out here; outer readings alone would have faked {fake:.2f} mm.",
            wide=wide,
            other=other,
            fake=abs(wide - other),
        ),
    )
