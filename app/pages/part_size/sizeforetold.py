"""What a locked prediction says of each gauge before the first reading of a print is in.

The newest prediction of this machine and lot counts until a size trial is kept after it.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import TYPE_CHECKING, Any

from app.widgets.readings import Expected
from app.words import shown
from core.records.rows import Trial, TrialState
from core.words import tr

if TYPE_CHECKING:
    from app.context import Context

_PREDICTION, _SIZE = "prediction", "sizeerror"
_PLACES = 3  # of a millimetre: nominal lengths that differ less are one
Foretold = dict[tuple[str, str, float], Expected]


def foretold(context: Context) -> Foretold:
    """Return the expected reading of each predicted feature by axis, kind and nominal length.

    Raises:
        StoreError: as the store does.
    """
    machine, lot = context.machine, context.lot
    if machine is None or lot is None:
        return {}
    newest = {
        subject: next((t for t in context.store.trials(subject, machine.id, lot.id) if _is_kept(t)), None)
        for subject in (_PREDICTION, _SIZE)
    }
    locked, read = newest[_PREDICTION], newest[_SIZE]
    if locked is None or locked.id is None or (read is not None and _order(read) > _order(locked)):
        return {}
    return _by_feature(context.store.trial(locked.id))


def expected_at(rows: Sequence[Mapping[str, Any]], known: Foretold) -> dict[int, Expected]:
    """Return what is known by the place of each row in the table."""
    found = {}
    for place, row in enumerate(rows):
        if row["nominal_mm"] is not None:
            says = known.get((row["axis"], row["kind"], round(row["nominal_mm"], _PLACES)))
            if says is not None:
                found[place] = says
    return found


def _is_kept(trial: Trial) -> bool:
    return trial.state is TrialState.KEPT


def _order(trial: Trial) -> int:
    return trial.id or 0


def _by_feature(trial: Trial) -> Foretold:
    columns = [trial.readings.get(key, []) for key in ("axis", "kind", "nominal_mm", "predicted_mm", "U_mm")]
    k = float(trial.conditions.get("k", 2.0))
    found: Foretold = {}
    for axis, kind, nominal, error, half in zip(*columns, strict=True):
        length = nominal + error
        text = shown(tr("{length:.2f} ± {half:.2f} mm", length=length, half=half))
        found[axis, str(kind), round(nominal, _PLACES)] = Expected(length, half / k, text)
    return found
