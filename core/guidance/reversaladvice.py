"""What follows from a reversal trial: good, acceptable, or mend the mechanics; nothing else is trimmed for it.

A limit counts as kept, or as passed, only where that is proved with its uncertainty: see `playlimits`.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from enum import StrEnum

from core.guidance.playlimits import GOOD_MM, LIMIT_MM, Play, play_of
from core.guidance.pushadvice import push_advice
from core.guidance.verdict import Advice, Setting
from core.machine_geometry.lostmotion import LostMotion, fit_lost_motion
from core.machine_geometry.quickcycle import QuickReversal, reversal_from_pairs
from core.machine_geometry.reversal import Reversal, pair_resolution_mm, reversal_from_cycle
from core.machine_geometry.stiffness import Push, Stiffness, stiffness_from_pushes
from core.measuring.rownames import row_words
from core.quantity import Estimate, size_text
from core.records.rows import Machine, Motion
from core.words import Words, tr

METHOD = "reversal 1"


class Way(StrEnum):
    """How reversal was measured."""

    QUICK = "quick"
    FULL = "full"
    CURVE = "curve"
    PUSH = "push"


@dataclass(frozen=True, slots=True)
class ReversalReadings:
    """The readings of one way, row by row (n), and what held while they were taken.

    Attributes:
        axis: x, y or z.
        way: how it was measured.
        resolution_mm: graduation of the dial, or last digit of the instrument.
        place: where, for the quick cycle; "along" or "sideways" for pushes.
        approach: "up" moving towards +, "down" moving towards -; "rest" or "pushed"; empty for the curve.
        nominal_mm: target of the full cycle, sum of the steps of the curve; nan for the other ways.
        reading_mm: nan for one that is missing or left out.
        push: the force, for pushes.
    """

    axis: str
    way: Way
    resolution_mm: float
    place: Sequence[str]
    approach: Sequence[str]
    nominal_mm: Sequence[float]
    reading_mm: Sequence[float]
    push: Push = Push(10.0, 0.5)


@dataclass(frozen=True, slots=True, eq=False)
class ReversalJudgement:
    """A reversal trial, what follows, and what to mind."""

    readings: ReversalReadings
    fit: QuickReversal | Reversal | LostMotion | Stiffness
    advice: tuple[Advice, ...]
    minds: tuple[Words, ...]

    @property
    def method(self) -> str:
        """Name and version of the mathematics."""
        return METHOD

    def estimates(self) -> tuple[Estimate, ...]:
        """Return the estimates of the trial."""
        return self.fit.estimates()


def judge_reversal(readings: ReversalReadings, machine: Machine | None = None) -> ReversalJudgement:
    """Judge a trial: from typed readings to a verdict.

    Args:
        readings: what was read.
        machine: how its motors move; None for none on record.

    Raises:
        InputError: as `reversal_from_pairs`, `reversal_from_cycle`, `fit_lost_motion`, `stiffness_from_pushes` do.
    """
    if readings.way is Way.PUSH:
        pushed = _pushed(readings)
        return ReversalJudgement(readings, pushed, push_advice(pushed), pushed.minds)
    fit = _measured(readings)
    error = fit.lost if isinstance(fit, LostMotion) else fit.estimates()[0]
    play = play_of(error)
    if isinstance(fit, LostMotion) and fit.still_winding and play is not Play.TOO_LARGE:
        play = Play.UNCLEAR
    advice = Advice(
        {Play.TOO_LARGE: Setting.MEND_MECHANICS, Play.UNCLEAR: Setting.UNDECIDED}.get(play, Setting.LEAVE),
        _action(readings, fit, error, play),
        error.value if play is Play.TOO_LARGE else None,
        "mm" if play is Play.TOO_LARGE else "",
        tr("{found} {judged}", found=_found(fit, error), judged=_judged(fit, play)),
        tr("Steps per millimetre, flow factor, contour offset: none of them mends play."),
    )
    return ReversalJudgement(readings, fit, (advice,), (*fit.minds, *_minds(readings, play, machine)))


def mend_words(axis: str) -> Words:
    """Say where to look for play on an axis."""
    if axis == "z":
        return tr("Z axis: nut, coupling, bearing at the end of the screw.")
    return tr(
        "{axis} axis: grub screw on its flat, belt tension, slide, idler bearing, coupling.",
        axis=axis.upper(),
    )


def _measured(readings: ReversalReadings) -> QuickReversal | Reversal | LostMotion:
    r, digit_mm = readings, readings.resolution_mm
    if r.way is Way.QUICK:
        return reversal_from_pairs(r.place, r.approach, r.reading_mm, axis=r.axis, resolution_mm=digit_mm)
    if r.way is Way.FULL:
        return reversal_from_cycle(r.nominal_mm, r.reading_mm, r.approach, axis=r.axis, resolution_mm=digit_mm)
    return fit_lost_motion(r.nominal_mm, r.reading_mm, axis=r.axis, resolution_mm=digit_mm)


def _pushed(r: ReversalReadings) -> Stiffness:
    return stiffness_from_pushes(
        r.place, r.approach, r.reading_mm, r.push, axis=r.axis, resolution_mm=r.resolution_mm
    )


def _action(
    readings: ReversalReadings, fit: QuickReversal | Reversal | LostMotion, error: Estimate, play: Play
) -> Words:
    if play is Play.GOOD:
        return tr("Change nothing.")
    if play is Play.ACCEPTABLE:
        return tr("Change nothing now; look at belt and grub screws at the next upkeep.")
    if play is Play.UNCLEAR:
        return _needs(readings, fit, error)
    mend = tr("{where} Then measure again.", where=mend_words(readings.axis))
    if not isinstance(fit, LostMotion):
        return mend
    if fit.still_winding and fit.lost.value > 2.0 * fit.play.value:
        return tr(
            "Tighten the belt and free the slides of {axis}: most of it is wind-up, not play. Then measure again.",
            axis=readings.axis.upper(),
        )
    return mend


def _needs(readings: ReversalReadings, fit: QuickReversal | Reversal | LostMotion, error: Estimate) -> Words:
    if isinstance(fit, LostMotion):
        return tr("Take the quick cycle for the whole of it, or go on with further steps.")
    if pair_resolution_mm(readings.resolution_mm) > 0.7 * error.u:
        return tr("Read with a dial of finer graduation: most of the interval is its last digit.")
    return tr("Read more pairs, slowly, after warming up: the interval is too wide to decide.")


def _found(fit: QuickReversal | Reversal | LostMotion, error: Estimate) -> Words:
    values = {"axis": fit.axis.upper(), "value": size_text(error)}
    if isinstance(fit, QuickReversal):
        return tr(
            "Reversal error {axis} is {value} ({place}, worst of {places} places; {pairs} pairs).",
            place=row_words(fit.worst.name),
            places=len(fit.places),
            pairs=len(fit.worst.rows),
            **values,
        )
    if isinstance(fit, Reversal):
        return tr(
            "Reversal error {axis} is {value} (at {target:g} mm, worst of {targets} targets).",
            target=float(fit.target_mm[fit.worst]),
            targets=fit.target_mm.size,
            **values,
        )
    return tr(
        "Along {axis} {value} are lost in {run:g} mm: play {play}, then {share:.0f} % of the command arrives.",
        run=float(fit.commanded_mm[-1] - fit.commanded_mm[0]),
        play=size_text(fit.play),
        share=100.0 * fit.stick.slope,
        **values,
    )


def _judged(fit: QuickReversal | Reversal | LostMotion, play: Play) -> Words:
    if isinstance(fit, LostMotion) and fit.still_winding and play is Play.UNCLEAR:
        return tr("The loss still grows at the end of the curve, so the reversal error is larger.")
    return {
        Play.GOOD: tr("Proved within {limit:g} mm: good.", limit=GOOD_MM),
        Play.ACCEPTABLE: tr(
            "Proved within {limit:g} mm: acceptable. Closed outlines come out smaller by it.", limit=LIMIT_MM
        ),
        Play.TOO_LARGE: tr(
            "Proved above {limit:g} mm: closed outlines, windows too, come out smaller by it.",
            limit=LIMIT_MM,
        ),
        Play.UNCLEAR: tr("Neither within nor above {limit:g} mm is proved.", limit=LIMIT_MM),
    }[play]


def _minds(readings: ReversalReadings, play: Play, machine: Machine | None) -> tuple[Words, ...]:
    minds = []
    if play is Play.TOO_LARGE:
        minds.append(tr("Were the motors powered? If not, the slack of the rotor is in it."))
        if readings.axis == "z":
            minds.append(tr("Z rests on its nut by weight: play there shows only where something lifts it."))
        if machine is not None and machine.motion is Motion.CROSSED_BELT and readings.axis in ("x", "y"):
            minds.append(tr("On crossed belts a reversal of {axis} reverses both motors: look at both belts.",
                            axis=readings.axis.upper()))  # fmt: skip
    return tuple(minds)
