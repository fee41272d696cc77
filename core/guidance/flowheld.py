"""What the flow trial behind a size trial holds for, and whether the piece was printed so, where that is known."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from core.flow_trials.conditions import SAME_TEMPERATURE_K, conditions_from
from core.words import Words, tr


def flow_held_words(stored: Mapping[str, Any], nozzle_c: float | None = None) -> Words:
    """Say where a flow trial holds, and whether the piece of the size trial was printed so.

    Args:
        stored: conditions as the flow trial keeps them.
        nozzle_c: nozzle temperature in force when the size trial was begun; None where none was put in force.
    """
    held = conditions_from(stored)
    if held is None:
        return tr("does not say for which nozzle temperature")
    if nozzle_c is not None and abs(nozzle_c - held.temperature_c) > SAME_TEMPERATURE_K:
        return tr(
            "was found at {temperature:g} °C, this piece printed at {nozzle:g} °C: it does not hold beyond {near:g} K, "
            "measure the flow again",
            temperature=held.temperature_c,
            nozzle=nozzle_c,
            near=SAME_TEMPERATURE_K,
        )
    if nozzle_c is not None:
        return tr(
            "holds within {near:g} K of {temperature:g} °C, to {rate:g} mm³/s, bore {bore:g} mm: this piece was "
            "printed at {nozzle:g} °C",
            near=SAME_TEMPERATURE_K,
            temperature=held.temperature_c,
            rate=held.rate_mm3_s,
            bore=held.nozzle_mm,
            nozzle=nozzle_c,
        )
    return tr(
        "holds within {near:g} K of {temperature:g} °C, to {rate:g} mm³/s, bore {bore:g} mm: this trial does not know "
        "yours",
        near=SAME_TEMPERATURE_K,
        temperature=held.temperature_c,
        rate=held.rate_mm3_s,
        bore=held.nozzle_mm,
    )
