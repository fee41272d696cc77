"""Which setting does an error belong to? Rules in order; each names the readings it rests on.

1. A gross ratio is a wrong part, never trimmed.
2. Lost motion is mended; nothing else is trimmed before that.
3. A wall outset asks for the flow first, then for a contour offset.
   A refused line stops here: nothing is trimmed by readings that do not follow the model.
4. What is proved small against the tolerance is left alone.
5. A scale error of printed parts is booked to the filament unless evidence says otherwise.
6. Machine and filament are not told apart by one print; only a measured travel may become an axis scale.

Reference: the order is common practice, no source; decisions against a tolerance follow JCGM 106:2012.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from core.guidance.constants import (
    flare_advice,
    lost_motion_advice,
    open_motion,
    outset_advice,
    round_advice,
    squash_advice,
)
from core.guidance.findings import Size
from core.guidance.known import Known, axis_constant, constant_finding
from core.guidance.names import parameter_words
from core.guidance.scales import gross_advice, scale_advice, travel_advice
from core.guidance.sentences import undecided
from core.guidance.verdict import Advice, Setting, basis
from core.part_size.missing import Missing, reading_list
from core.part_size.sizeerror import SizeError
from core.words import Words, side_by_side, tr

__all__ = ["Advice", "Known", "Setting", "advise"]


def advise(fit: SizeError, known: Known | None = None) -> tuple[Advice, ...]:
    """Return the verdict on one size trial, the first thing to do first.

    Args:
        fit: the readings, told apart.
        known: drives, tolerance and earlier checks.

    Raises:
        InputError: field `tolerance` for a class or value that there is not.
    """
    known = known or Known()
    if fit.line_refused:
        return tuple(open_advice(fit, known))
    for rule in (gross_advice, lost_motion_advice):
        if first := list(rule(fit, known)):
            return (*first, *open_advice(fit, known))
    rules = (outset_advice, round_advice, squash_advice, flare_advice, scale_advice, travel_advice)
    found = [advice for rule in rules for advice in rule(fit, known)]
    acts = [advice for advice in found if advice.setting is not Setting.LEAVE]
    leave = [advice for advice in found if advice.setting is Setting.LEAVE]
    return (*(acts or _together(leave, fit)), *open_motion(fit, known), *open_advice(fit, known))


def _together(leave: list[Advice], fit: SizeError) -> list[Advice]:
    """Make one verdict of all that is small."""
    if not leave:
        return []
    because = side_by_side(advice.because for advice in leave)
    return [replace(leave[0], because=tr("{because} Read on {basis}.", because=because, basis=basis(fit.kinds)))]


def open_advice(fit: SizeError, known: Known) -> Iterator[Advice]:
    """Name what the readings do not tell, and what would: in one sentence what readings tell, in another the rest."""
    told = {
        name
        for axis in ("x", "y")
        if _constant_real(fit, axis, known)
        for name in ("wall_outset", f"lost_motion_{axis}")
    }
    missing = [m for m in fit.not_estimable if m.name not in told]
    others = [m for m in missing if not m.readings]
    if others:
        yield _open(others, others[0].needs)
    by_reading = [m for m in missing if m.readings]
    if by_reading:
        readings = [reading for m in by_reading for reading in m.readings]
        yield _open(by_reading, tr("measure {readings}", readings=reading_list(readings)))


def _open(missing: list[Missing], needs: Words) -> Advice:
    what = side_by_side((parameter_words(one.name) for one in missing), ", ")
    return undecided(tr("To tell it: {needs}.", needs=needs), tr("Not told by these readings: {what}.", what=what))


def _constant_real(fit: SizeError, axis: str, known: Known) -> bool:
    constant = axis_constant(fit, axis)
    return constant is not None and constant_finding(fit, constant, 1.0, axis, known).size is Size.REAL
