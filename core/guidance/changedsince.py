"""What was changed for the size of parts since the piece of a trial was made: read from the settings in force.

    d = offset now - offset then        q = product of (factor now / factor then)

A setting changed between the first reading and keeping was changed after the piece was made. That a change starts from
the piece's own base is common practice, no source.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from core.errors import InputError
from core.guidance.changes import in_force_when
from core.guidance.decisions import settable
from core.guidance.settingorder import in_order
from core.part_size.prediction import Changes
from core.records.rows import SettingInForce, Trial
from core.words import tr

_NO_FACTOR = 1e-6  # nothing is drawn so small: what was in force was none
_FACTORS = ("shrink_allowance", "axis_scale")


def changed_since(settings: Sequence[SettingInForce], trial: Trial, axes: Iterable[str] = "xy") -> Changes:
    """Return how offset and factors in force now differ from those that the piece of a trial was made with.

    Args:
        settings: every setting that was ever in force on the machine of the trial.
        trial: with its lot, and the moment when its readings were begun.
        axes: letters of the axes that are asked for.

    Raises:
        InputError: field `shrink_allowance` or `axis_scale`, where the one in force before was none.
    """
    now, then = _pair(settings, "contour_offset", trial)
    factors = {}
    for axis in axes:
        factors[axis] = 1.0
        for stem in _FACTORS:
            after, before = _pair(settings, f"{stem}_{axis}", trial)
            if not abs(before) > _NO_FACTOR:
                says = tr(
                    "The factor {value:g}, in force before, cannot be; put the right one in force on page Logbook.",
                    value=before,
                )
                raise InputError(stem, says)
            factors[axis] *= after / before
    return Changes(now - then, factors)


def _pair(settings: Sequence[SettingInForce], name: str, trial: Trial) -> tuple[float, float]:
    """Return what is set now and what was set when the piece was made; nobody set it: what usually holds."""
    usual = settable(name).usual or 0.0
    now = in_force_when(settings, name, trial.lot_id, None)
    if now is None:
        return usual, usual
    then = in_force_when(settings, name, trial.lot_id, trial.started_at) if trial.started_at is not None else None
    if then is not None:
        return now.new, then.new
    own = [s for s in settings if s.name == name and s.lot_id in (None, trial.lot_id)]
    first = in_order(own)[0]
    return now.new, usual if first.old is None else first.old
