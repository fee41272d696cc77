"""From the kept pieces of a machine and a lot to what may be promised: classes of features, guard band, sentences.

Every kept size trial counts as one piece; those printed before the newest setting of machine or lot do not, for they
were other parts. Windows, notches and bores are one class each of their own mistakes: a promise is made by class.

Reference: ISO 14253-1:2017 and JCGM 106:2012 8 (acceptance inside the limit reduced by U); see `part_size.promise`.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from datetime import datetime

from core.errors import InputError
from core.guidance.findings import tolerance_at
from core.guidance.partgroups import Parts, group_words, guard_of, parts_of
from core.measuring.tolerance import CLASSES, GENERAL_CLASSES
from core.part_size.promise import (
    FEWEST_PIECES,
    METHOD,
    Capability,
    Promise,
    capability,
    promise,
    rounded_up_mm,
)
from core.part_size.spread import Spread, fit_spread
from core.quantity import Estimate
from core.records.rows import Instrument, Trial
from core.words import Words, tr

SUBJECT = "promise"


@dataclass(frozen=True, slots=True, eq=False)
class Promised:
    """One class: its readings, spread, promise, capability, and what is said.

    Attributes:
        spread: None where one piece or equal readings show none.
        promise: None where ten pieces are not there.
        capability: against the tolerance asked for, at the longest length.
        says: the verdict in one sentence or two.
    """

    parts: Parts
    spread: Spread | None
    promise: Promise | None
    capability: Capability | None
    says: Words

    @property
    def promised_mm(self) -> float | None:
        """The promise over all lengths read, rounded up; None where there is none."""
        if self.promise is None:
            return None
        ends = [self.promise.spread.shortest_mm, self.promise.spread.longest_mm]
        return rounded_up_mm(float(self.promise.tolerance_at(ends).max()))


@dataclass(frozen=True, slots=True, eq=False)
class PromiseJudgement:
    """All classes of a machine and a lot."""

    groups: tuple[Promised, ...]
    tolerance: str | float
    left_out: tuple[int, ...]
    since: datetime | None

    @property
    def method(self) -> str:
        """Name and version of the mathematics."""
        return METHOD

    def estimates(self) -> tuple[Estimate, ...]:
        """Return the promises first, `promise_` of each class that has one, then `bias_` and `spread_` (mm).

        A promise is a bound with its own confidence; its u says how far ten other pieces would have moved it.
        """
        promises, rest = [], []
        for one in self.groups:
            name, spread = one.parts.group, one.spread
            if spread is None:
                continue
            u_sd = spread.sd_mm / math.sqrt(2.0 * spread.dof)
            rest.append(Estimate(f"bias_{name}", spread.bias_mm, spread.u_bias_mm, spread.dof, "mm"))
            rest.append(Estimate(f"spread_{name}", spread.sd_mm, u_sd, spread.dof, "mm"))
            if one.promise is not None and one.promised_mm is not None:
                at = spread.longest_mm
                reach, dof = float(one.promise.factor_at(at)[0] * spread.sd_at(at)), float(spread.dof_at(at))
                u = math.hypot(float(spread.u_bias_at(at)), reach / math.sqrt(2.0 * dof))
                promises.append(Estimate(f"promise_{name}", one.promised_mm, u, spread.dof, "mm"))
        return (*promises, *rest)

    def trial_ids(self) -> tuple[int, ...]:
        """Return the kept trials that the promise rests on."""
        return tuple(sorted({trial for one in self.groups for trial in one.parts.trial}))


def judge_promise(
    trials: Sequence[Trial],
    instrument: Instrument | None,
    tolerance: str | float = "m",
    since: datetime | None = None,
) -> PromiseJudgement:
    """Say what may be promised of parts of one machine and lot.

    Args:
        trials: kept size trials of the two, with their readings.
        instrument: whose uncertainties make the guard band; None for none on record.
        tolerance: a class or plus-minus in mm that is asked for.
        since: when settings changed last; pieces kept before are other parts.

    Raises:
        InputError: field `value` where no piece counts; `tolerance` for a class or value that there is not.
    """
    counted = [t for t in trials if since is None or (t.kept_at is not None and t.kept_at > since)]
    left_out = tuple(t.id or 0 for t in trials if t not in counted)
    parts = parts_of(counted)
    if not parts:
        raise InputError("value", _nothing(len(left_out)))
    groups = tuple(_promised(one, instrument, tolerance) for one in parts)
    return PromiseJudgement(groups, tolerance, left_out, since)


def _nothing(left_out: int) -> Words:
    if left_out:
        return tr(
            "Pieces kept: {count}, all before the newest change of settings or machine. Print and measure new ones: "
            "ten at least for a promise.",
            count=left_out,
        )
    return tr(
        "No piece of this machine and lot is kept yet. Keep one size trial for each piece; ten pieces at least make a "
        "promise."
    )


def _promised(parts: Parts, instrument: Instrument | None, tolerance: str | float) -> Promised:
    name = group_words(parts.group)
    try:
        spread = fit_spread(parts.trial, parts.nominal_mm, parts.error_mm)
    except InputError as error:
        return Promised(parts, None, None, None, tr("{group}: {why}", group=name, why=error.message))
    asked = tolerance_at(spread.longest_mm, tolerance)
    able = capability(spread, spread.longest_mm, asked)
    try:
        kept = promise(spread, **dict(zip(("guard_mm", "guard_ratio"), guard_of(parts.group, instrument), strict=True)))
    except InputError as error:
        return Promised(parts, spread, None, able, tr("{group}: {why}", group=name, why=error.message))
    return Promised(parts, spread, kept, able, _says(name, kept, tolerance))


def _says(name: Words, kept: Promise, tolerance: str | float) -> Words:
    spread = kept.spread
    ends = kept.tolerance_at([spread.shortest_mm, spread.longest_mm])
    base = tr(
        "{group}: ±{promised:.2f} mm from {shortest:g} to {longest:g} mm may be promised ({pieces} parts; 95 % of "
        "parts, 95 % confidence).",
        group=name,
        promised=rounded_up_mm(float(ends.max())),
        shortest=spread.shortest_mm,
        longest=spread.longest_mm,
        pieces=spread.pieces,
    )
    if not isinstance(tolerance, str):
        return base
    up_to = kept.held_up_to_mm(tolerance)
    klass = CLASSES[tolerance]
    if up_to is None:
        other = kept.finest_class(tuple(GENERAL_CLASSES))
        if other is None or other == tolerance:
            return tr("{base} {klass} is not held at any length.", base=base, klass=klass)
        return tr("{base} {klass} is not held; {other} is.", base=base, klass=klass, other=CLASSES[other])
    if up_to >= spread.longest_mm:
        return tr("{base} {klass} is held at all these lengths.", base=base, klass=klass)
    return tr("{base} {klass} is held up to {length:.0f} mm.", base=base, klass=klass, length=math.floor(up_to))


def still_needed(judgement: PromiseJudgement) -> int:
    """Return how many more pieces a promise of every class needs; 0 for none."""
    return max(max(0, FEWEST_PIECES - one.parts.pieces) for one in judgement.groups)
