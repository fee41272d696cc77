"""What a kept reversal trial adds to the verdict on a printed part. It was read on the machine itself, free of plastic.

It is named and put beside the print, never averaged with it: what was mended since would stay in such a mean.
"""

from __future__ import annotations

from collections.abc import Iterator

from core.guidance.findings import Finding, Size
from core.guidance.known import Known
from core.guidance.playlimits import LIMIT_MM, Play, play_of
from core.guidance.reversaladvice import mend_words
from core.guidance.sentences import undecided
from core.guidance.verdict import Advice, Setting
from core.quantity import size_text, value_text
from core.words import Words, tr


def kept_play_advice(axis: str, motion: Finding | None, known: Known) -> Iterator[Advice]:
    """Send to the mechanics first where a kept trial proved too much play and the print does not prove it gone.

    Args:
        axis: x or y.
        motion: the lost motion that the print shows, None where it does not tell.
        known: with the kept trial.
    """
    kept = known.reversal.get(axis)
    if kept is None or play_of(kept.estimate) is not Play.TOO_LARGE:
        return
    found = tr(
        "Reversal trial № {trial} measured {value} along {axis} on the machine itself, proved above {limit:g} mm.",
        trial=kept.trial_id,
        value=size_text(kept.estimate),
        axis=axis.upper(),
        limit=LIMIT_MM,
    )
    if motion is not None and motion.size is Size.SMALL:
        yield undecided(
            tr(
                "Measure the reversal of {axis} again, or withdraw trial № {trial}.",
                axis=axis.upper(),
                trial=kept.trial_id,
            ),
            tr("{found} This print shows {now}: was it mended since?", found=found, now=value_text(motion.estimate)),
        )
        return
    yield Advice(
        Setting.MEND_MECHANICS,
        tr("{where} Then measure the reversal again, and print again.", where=mend_words(axis)),
        kept.estimate.value,
        "mm",
        found,
        tr("Steps per millimetre, flow factor, contour offset: none of them mends play."),
    )


def beside_print(because: Words, axis: str, known: Known) -> Words:
    """Add to lost motion seen in a print what a kept trial measured, if there is one."""
    kept = known.reversal.get(axis)
    if kept is None:
        return because
    return tr(
        "{because} Reversal trial № {trial} measured {value} on the machine itself.",
        because=because,
        trial=kept.trial_id,
        value=size_text(kept.estimate),
    )


def beside_constant(because: Words, axis: str, known: Known) -> Words:
    """Add to a constant 2w - B that play was found small, which leaves the wall outset; said, not calculated with."""
    kept = known.reversal.get(axis)
    if kept is None or play_of(kept.estimate) not in (Play.GOOD, Play.ACCEPTABLE):
        return because
    return tr(
        "{because} Reversal trial № {trial} measured {value} only: if the axis is still so, the rest is wall outset.",
        because=because,
        trial=kept.trial_id,
        value=size_text(kept.estimate),
    )
