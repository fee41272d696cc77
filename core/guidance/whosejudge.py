"""One kept size trial looked at again: causes, a change tried on the shop's parts, whether to stop, wrong moves.

Reference: see `part_size.whose`; the rules to stop are common practice, no source.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace

import numpy as np

from core.guidance.findings import tolerance_at
from core.guidance.keptfit import fit_of
from core.guidance.splitpair import SplitPair
from core.part_size.features import FEATURES, FeatureKind
from core.part_size.forecast import SmallPiece, small_piece_effect
from core.part_size.prediction import Changes, Prediction, predict
from core.part_size.sizeerror import SizeError
from core.part_size.whose import (
    UNEXPLAINED,
    UNTOLD,
    Part,
    Shares,
    WhatIf,
    all_to_steps,
    share_out,
    what_if,
)
from core.part_size.whose import stop_words as _stop
from core.quantity import Estimate, size_ratio
from core.records.rows import Instrument, Trial
from core.words import Words, tr

_SHORT_MM = 30.0  # up to here a length is one that people scale from
_SEED = 7  # of the draws: the same readings give the same share every time


@dataclass(frozen=True, slots=True, eq=False)
class WhoseJudgement:
    """What one trial says of the shop's parts.

    Attributes:
        shares: of each feature among its causes; None where the scatter is not known.
        tried: the change on the listed parts.
        stop: whether to stop, and why.
        largest: the largest outside part of the list, which wrong moves are shown at; None where there is none.
        advised: the advised change at that part; its errors with U.
        wrong: small-piece correction and all to steps there, where they are told.
    """

    fit: SizeError
    shares: Shares
    tried: WhatIf
    stop: tuple[bool, str]
    largest: Part | None
    advised: Prediction | None
    wrong: tuple[tuple[Words, SmallPiece], ...]


def advised_changes(fit: SizeError) -> Changes:
    """Return the change that takes back what the trial found beyond its uncertainty: offset and shrink allowance."""
    outset = fit.estimate("wall_outset")
    offset = -outset.value if outset is not None and outset.significant else 0.0
    scales = {axis: fit.estimate(f"scale_{axis}") for axis in "xy"}
    factors = {a: 1.0 / size_ratio(s.value) for a, s in scales.items() if s is not None and s.significant}
    return Changes(offset, factors)


def judge_whose(
    trial: Trial,
    instrument: Instrument | None,
    parts: Sequence[Part],
    changes: Changes,
    tolerance: str | float = "m",
    split: Mapping[str, SplitPair] | None = None,
) -> WhoseJudgement:
    """Look at a kept size trial again.

    Args:
        trial: with its readings.
        instrument: it was read with; None for none on record.
        parts: sizes of the shop.
        changes: what would be changed.
        tolerance: a class or plus-minus in mm.
        split: by axis what all trials of the shop say of this machine and lot; missing where none is linked.

    Raises:
        InputError: field `value` where the trial tells none of the parts; as `fit_size_error` does.
    """
    fit = fit_of(trial, instrument)
    tried = what_if(fit, parts, changes, np.random.default_rng(_SEED))
    worst = tried.worst
    T = tolerance_at(tried.parts[worst].nominal_mm, tolerance)
    spread = tried.predicted.covariance_mm2[worst, worst] - fit.scattered.next_mm2
    effect = Estimate("effect", float(tried.predicted.as_is_mm[worst]), float(np.sqrt(spread)), fit.scattered.dof, "mm")
    stop = _stop(effect.value, effect.U, T)
    of_machine = {a: _in_force(pair) for a, pair in (split or {}).items()}
    outside = [p for p in tried.parts if FEATURES[p.kind].k > 0 and p.axis in "xy"]
    largest = max(outside, key=lambda part: part.nominal_mm, default=None)
    advised: Prediction | None = None
    wrong: tuple[tuple[Words, SmallPiece], ...] = ()
    if largest is not None:
        place = [largest.axis], [largest.kind], [largest.nominal_mm]
        advised = predict(fit, *place, advised_changes(fit))
        wrong = tuple(_wrong_moves(fit, largest, float(advised.as_is_mm[0])))
    return WhoseJudgement(fit, share_out(fit, of_machine), tried, stop, largest, advised, wrong)


def _in_force(pair: SplitPair) -> tuple[float, float]:
    """Return the machine's share as parts are printed: the axis scale in force moves it too."""
    scale = pair.machine_scale
    return (1.0 + scale.value) * pair.axis_ratio - 1.0, scale.u * pair.axis_ratio


def _wrong_moves(fit: SizeError, largest: Part, as_is_mm: float) -> list[tuple[Words, SmallPiece]]:
    """Return what tempting corrections of the steps would do to the largest outside part."""
    short = [L for L, k, a in zip(fit.nominal_mm.tolist(), fit.kinds, fit.axes, strict=True)
             if FEATURES[k].k > 0 and a == largest.axis and L <= _SHORT_MM]  # fmt: skip
    moves = [(tr("everything booked to the steps"), all_to_steps(fit, largest.axis, largest.kind, largest.nominal_mm))]
    if short:
        at = min(short), largest.nominal_mm
        small = small_piece_effect(fit, largest.axis, FeatureKind.TOOTH, *at)
        small = small or small_piece_effect(fit, largest.axis, largest.kind, *at)
        moves.insert(0, (tr("steps corrected from {length:g} mm", length=at[0]), small))
    return [
        (name, replace(move, before_mm=as_is_mm, after_mm=as_is_mm + move.after_mm - move.before_mm))
        for name, move in moves
        if move is not None
    ]


def cause_words(name: str) -> Words:
    """Return the name of a cause for people."""
    return {
        "scale": tr("shrinkage and axis scale"),
        "shrinkage": tr("shrinkage"),
        "machine": tr("machine's share"),
        "wall_outset": tr("wall outset"),
        "lost_motion": tr("lost motion"),
        "squash": tr("first-layer squash"),
        "origin": tr("origin"),
        "boss_constant": tr("round bosses"),
        "bore_constant": tr("round bores, facets"),
        "first_layer_flare": tr("first-layer flare"),
        UNTOLD: tr("not told apart"),
        UNEXPLAINED: tr("unexplained"),
    }[name]
