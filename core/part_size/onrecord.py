"""What is on record behind a size trial: the numbers of its instrument, and the records that are missing."""

from __future__ import annotations

import math
from collections.abc import Sequence

from core.errors import InputError
from core.part_size.checks import Diagnostic
from core.part_size.features import FeatureKind
from core.part_size.lengths import PartTemperature
from core.records.rows import Instrument
from core.words import Words, tr


def check_instrument(instrument: Instrument | None) -> None:
    """Refuse a record whose numbers cannot be.

    Raises:
        InputError: field `instrument`.
    """
    if instrument is None:
        return
    numbers = (
        instrument.resolution_mm,
        instrument.u_outside_zero_mm,
        instrument.u_inside_zero_mm,
        instrument.u_scale_ratio,
        instrument.sd_hand_mm or 0.0,
        instrument.sd_hand_dof or 0,
    )
    if not all(0 <= number < math.inf for number in numbers):
        raise InputError(
            "instrument",
            tr("{name}: an uncertainty is below zero or not a number; mend its record.", name=instrument.name),
        )


def sd_of_hand(instrument: Instrument | None) -> tuple[float, int] | None:
    """Return the repeatability (mm) of the last check with its degrees of freedom, or None where there was none."""
    if instrument is None or not instrument.sd_hand_mm or not instrument.sd_hand_dof:
        return None
    return instrument.sd_hand_mm, instrument.sd_hand_dof


def record_checks(
    instrument: Instrument | None, part_temperature: PartTemperature | None, kinds: Sequence[FeatureKind]
) -> list[Diagnostic]:
    """Say which records behind the uncertainty are missing."""
    found = []
    if instrument is None:
        says = tr("No instrument is on record for these readings: its zero and scale are not in the uncertainties.")
        found.append(_unmet("instrument", says))
    if part_temperature is None and any(kind is not FeatureKind.TRAVEL for kind in kinds):
        says = tr(
            "The part's temperature is not recorded: 10 K above 20 °C make 100 mm of plastic about 0.07 mm longer."
        )
        found.append(_unmet("temperature", says))
    return found


def _unmet(name: str, says: Words) -> Diagnostic:
    return Diagnostic(name, math.nan, math.nan, False, says)
