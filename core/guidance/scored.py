"""Our own predictions judged: what the shop's verifications say of our U.

Reference: see `part_size.ownscore`.
"""

from __future__ import annotations

from collections.abc import Sequence

from core.part_size.ownscore import lifetime_score
from core.records.rows import Trial
from core.words import Words, tr

FEWEST_SCORED = 5  # verified pieces; fewer judge no U (common practice, no source)


def normalised_errors(trials: Sequence[Trial]) -> tuple[tuple[float, ...], ...]:
    """Return the normalised errors of kept verifications, one tuple a piece."""
    found = (tuple(float(value) for value in trial.readings.get("e_n", ())) for trial in trials)
    return tuple(piece for piece in found if piece)


def score_words(e_n_ratio: Sequence[Sequence[float]]) -> Words:
    """Say how our predictions did so far, and what to do with our U.

    Args:
        e_n_ratio: normalised errors, piece by piece.

    Raises:
        InputError: field `value` where nothing was verified yet.
    """
    score = lifetime_score(e_n_ratio)
    base = tr(
        "So far {percent:.0f} % of {count} predicted features (pieces: {pieces}) lay inside their U ({low:.0f} to "
        "{high:.0f} %; 95 % are due).",
        percent=100 * score.share,
        count=score.features,
        pieces=score.pieces,
        low=100 * score.low,
        high=100 * score.high,
    )
    if score.pieces < FEWEST_SCORED:
        return tr("{base} From {count} pieces on it tells of our U.", base=base, count=FEWEST_SCORED)
    if score.too_small:
        return tr(
            "{base} Our U is too small: multiply it by {factor:.2f} ({low:.2f} to {high:.2f}).",
            base=base,
            factor=score.factor,
            low=score.factor_low,
            high=score.factor_high,
        )
    return tr("{base} Nothing shows that our U is too small.", base=base)
