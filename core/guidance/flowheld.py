"""What the flow trial behind a size trial holds for: a size trial itself knows neither nozzle temperature nor rate."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from core.flow_trials.conditions import SAME_TEMPERATURE_K, conditions_from
from core.words import Words, tr


def flow_held_words(stored: Mapping[str, Any]) -> Words:
    """Say where a flow trial holds, and that the size trial does not know whether it was printed so.

    Args:
        stored: conditions as the flow trial keeps them.
    """
    held = conditions_from(stored)
    if held is None:
        return tr("does not say for which nozzle temperature")
    return tr(
        "holds within {near:g} K of {temperature:g} °C, to {rate:g} mm³/s, bore {bore:g} mm: this trial does not know "
        "yours",
        near=SAME_TEMPERATURE_K,
        temperature=held.temperature_c,
        rate=held.rate_mm3_s,
        bore=held.nozzle_mm,
    )
