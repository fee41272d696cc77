"""What follows from a push trial: what 5 N move, held against the limits of a reversal error.

Slide and nozzle drag with a few newton; what that moves, it moves at every reversal. A push along
the axis tells belt and coupling, a push sideways the slide. The 5 N: common practice, no source.
"""

from __future__ import annotations

from core.guidance.playlimits import LIMIT_MM, Play, play_of
from core.guidance.verdict import Advice, Setting
from core.machine_geometry.stiffness import Pushed, Side, Stiffness, side_words
from core.quantity import Estimate, size_text
from core.words import Words, tr

DRAG_N = 5.0


def push_advice(fit: Stiffness) -> tuple[Advice, ...]:
    """Return what follows from each side that was pushed, what is to be mended first."""
    every = [_of_side(side, fit.axis) for side in fit.sides]
    return tuple(sorted(every, key=lambda advice: advice.setting is not Setting.MEND_MECHANICS))


def _of_side(side: Pushed, axis: str) -> Advice:
    moved = side.moved_by(DRAG_N)
    play = play_of(moved)
    return Advice(
        {Play.TOO_LARGE: Setting.MEND_MECHANICS, Play.UNCLEAR: Setting.UNDECIDED}.get(play, Setting.LEAVE),
        _action(side, axis, moved, play),
        moved.value if play is Play.TOO_LARGE else None,
        "mm" if play is Play.TOO_LARGE else "",
        tr(
            "{side} it gives way by {compliance}: {drag:g} N move it by {moved}. {judged}",
            side=side_words(side.side, axis),
            compliance=size_text(side.compliance),
            drag=DRAG_N,
            moved=size_text(moved),
            judged=_judged(play),
        ),
        tr("Steps per millimetre, flow factor, contour offset: none of them makes an axis stiff."),
    )


def _action(side: Pushed, axis: str, moved: Estimate, play: Play) -> Words:
    if play is Play.GOOD:
        return tr("Change nothing.")
    if play is Play.ACCEPTABLE:
        return tr("Change nothing now; push again at the next upkeep.")
    if play is Play.UNCLEAR:
        return tr("Push harder, up to 20 N, read more pairs, or take a dial of finer graduation.")
    if side.side is Side.SIDEWAYS:
        return tr("Take the play out of the slide of {axis}: rollers, bearings, rail screws. Then push again.",
                  axis=axis.upper())  # fmt: skip
    if axis == "z":
        return tr("Look at nut, coupling and the arm that carries Z. Then push again.")
    return tr("Tighten the belt of {axis}; look for what bends: bracket, idler, arm. Then push again.",
              axis=axis.upper())  # fmt: skip


def _judged(play: Play) -> Words:
    return {
        Play.GOOD: tr("Stiff."),
        Play.ACCEPTABLE: tr("Proved within {limit:g} mm: acceptable.", limit=LIMIT_MM),
        Play.TOO_LARGE: tr("Proved above {limit:g} mm: every drag bends it.", limit=LIMIT_MM),
        Play.UNCLEAR: tr("Neither within nor above {limit:g} mm is proved.", limit=LIMIT_MM),
    }[play]
