"""What a hot end stands: its maker states a limit, and nothing above it is worked with.

Reference: linings of PTFE give off toxic fume well above their limit: common practice, no source.
"""

from __future__ import annotations

from core.errors import InputError
from core.words import tr


def refuse_hotter(temperature_c: float, limit_c: float) -> None:
    """Refuse a nozzle temperature above the limit that the hot end's maker states.

    Raises:
        InputError: field `temperature_c`.
    """
    if not temperature_c <= limit_c:
        raise InputError(
            "temperature_c",
            tr(
                "{value:g} °C is above this hot end's stated limit of {limit:g} °C. Refused: a lining gives off "
                "toxic fume well above it.",
                value=temperature_c,
                limit=limit_c,
            ),
        )
