"""Whether a result of the walk is good enough to stop, told from its value and its uncertainty.

Good enough where the whole 95 % interval lies within the limit, not good enough where all of it lies beyond; between
the two more readings tell. Reference: JCGM 106:2012 (proof against a limit). The limits: common practice, no source.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from enum import StrEnum

from core.guidance.names import estimate_text, parameter_words
from core.guidance.walkplan import Enough
from core.quantity import Estimate
from core.words import Words, tr


class Stop(StrEnum):
    """What is known of good enough."""

    ENOUGH = "enough"
    NOT_ENOUGH = "not_enough"
    UNCLEAR = "unclear"


def stop_of(estimate: Estimate, enough: Enough) -> Stop:
    """Return whether an estimate is good enough."""
    if enough.u is not None:
        return Stop.ENOUGH if estimate.u <= enough.u else Stop.NOT_ENOUGH
    assert enough.most is not None  # the file gives one of the two
    distance = abs(estimate.value - enough.target)
    if distance + estimate.U <= enough.most:
        return Stop.ENOUGH
    return Stop.NOT_ENOUGH if distance - estimate.U > enough.most else Stop.UNCLEAR


def stop_sentences(estimates: Iterable[Estimate], limits: Mapping[str, Enough]) -> tuple[tuple[Stop, Words], ...]:
    """Return, for each estimate that has a limit, whether it is good enough, in words."""
    return tuple(
        (stop := stop_of(estimate, limits[estimate.name]), _words(stop, estimate, limits[estimate.name]))
        for estimate in estimates
        if estimate.name in limits
    )


def _words(stop: Stop, estimate: Estimate, enough: Enough) -> Words:
    name, value = parameter_words(estimate.name), estimate_text(estimate)
    if enough.u is not None:
        limit = _shown(enough.u, estimate.unit)
        if stop is Stop.ENOUGH:
            return tr("{name} {value}: known well enough, stop.", name=name, value=value)
        return tr(
            "{name} {value}: to be known to {limit} (standard uncertainty); read more.",
            name=name,
            value=value,
            limit=limit,
        )
    limit = _shown(enough.most or 0.0, estimate.unit)
    if stop is Stop.ENOUGH:
        return tr("{name} {value}: within {limit}, stop.", name=name, value=value, limit=limit)
    if stop is Stop.NOT_ENOUGH:
        return tr("{name} {value}: beyond {limit}; mend it before you go on.", name=name, value=value, limit=limit)
    return tr("{name} {value}: not told against {limit}; more readings tell.", name=name, value=value, limit=limit)


def _shown(limit: float, unit: str) -> str:
    return f"{100 * limit:g} %" if unit == "1" else f"{limit:g} {unit}"
