"""What the page *Prediction* asks the core, and what it is told."""

from __future__ import annotations

from typing import TYPE_CHECKING, NamedTuple

from core.records.rows import Instrument, Trial

if TYPE_CHECKING:
    from core.guidance.predicted import Verified
    from core.part_size.prediction import Changes, Prediction


class Asked(NamedTuple):
    """What the prediction is made from, or the locked one with the trial that may verify it."""

    source: Trial | None
    changes: Changes
    locked: Trial | None
    read: Trial | None
    instrument: Instrument | None
    before: tuple[tuple[float, ...], ...]


class Told(NamedTuple):
    """The prediction and, where readings are there, its verification."""

    asked: Asked
    prediction: Prediction
    verified: Verified | None
