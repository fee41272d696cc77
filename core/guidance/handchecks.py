"""What is looked at by hand in a step of the walk: in order, or a fault to be written down.

The 0.5 mm on a rule: common practice, no source; it tells wrong factors only.
"""

from __future__ import annotations

from collections.abc import Collection, Mapping, Sequence
from typing import Any

from core.errors import InputError
from core.guidance.walkwords import item_words
from core.machine_geometry.belttone import USUAL_MASS_G_M, belt_tension, tones_alike
from core.quantity import Estimate, rounded_pair
from core.words import Words, tr

__all__ = ["USUAL_MASS_G_M", "findings_of", "tension_words", "tensions_of"]

COMMANDED_MM, WITHIN_MM = 100.0, 0.5
_TONES = {"x": "tone_x_hz", "y": "tone_y_hz"}


def findings_of(items: Sequence[str], ticked: Collection[str], typed: Mapping[str, float]) -> dict[str, Any]:
    """Return what was found in order, as plain values to keep with the check.

    Args:
        items: what the step asks to look at.
        ticked: what was found in order.
        typed: numbers that go with them: `tone_x_hz`, `tone_y_hz`, `span_mm`, `mass_g_m`, `read_mm`.

    Raises:
        InputError: field `items`: one is not ticked; `tone_y_hz`: the belts differ; `read_mm`: missing, or too far off.
    """
    for item in items:
        if item not in ticked:
            raise InputError(
                "items", tr("Not ticked: {item}. Look at it too, or write down the fault.", item=item_words(item))
            )
    found: dict[str, Any] = {"items": list(items)} if items else {}
    if "belt_tone" in items:
        found |= _tones(typed)
    if "hundred_mm" in items:
        found |= _travel(typed)
    return found


def tensions_of(typed: Mapping[str, float]) -> dict[str, Estimate]:
    """Return the tension of each belt (N) whose tone and span were typed, by axis; InputError as `belt_tension`."""
    if "span_mm" not in typed or "mass_g_m" not in typed:
        return {}
    return {
        axis: belt_tension(typed[tone], typed["span_mm"], typed["mass_g_m"])
        for axis, tone in _TONES.items()
        if tone in typed
    }


def tension_words(tensions: Mapping[str, Estimate]) -> Words:
    """Say the tensions with their uncertainty, or how the tone is found."""
    if not tensions:
        return tr("Pluck the free span in its middle; a tuner or a sound program gives the tone.")
    said = [f"{axis.upper()} {_plain(tension)}" for axis, tension in tensions.items()]
    return tr("Tension {tensions}, from tone ± 1 Hz, span ± 1 mm, mass ± 5 %.", tensions=", ".join(said))


def _plain(tension: Estimate) -> str:
    value, U = rounded_pair(tension.value, tension.U)
    return f"{value.lstrip('+')} ± {U} N"


def _tones(typed: Mapping[str, float]) -> dict[str, Any]:
    tones = [typed[tone] for tone in _TONES.values() if tone in typed]
    if len(tones) == len(_TONES) and not tones_alike(*tones):
        raise InputError(
            "tone_y_hz",
            tr("The two tones differ by more than 5 %; tension the belts alike, or write down the fault."),
        )
    kept: dict[str, Any] = {key: typed[key] for key in _TONES.values() if key in typed}
    tensions = tensions_of(typed)
    if tensions:
        kept |= {"span_mm": typed["span_mm"], "mass_g_m": typed["mass_g_m"]}
    return kept | {f"tension_{axis}": {"value": t.value, "U": t.U, "unit": t.unit} for axis, t in tensions.items()}


def _travel(typed: Mapping[str, float]) -> dict[str, Any]:
    if "read_mm" not in typed:
        raise InputError("read_mm", tr("Command 100 mm and type what the rule reads."))
    if abs(typed["read_mm"] - COMMANDED_MM) > WITHIN_MM:
        raise InputError(
            "read_mm",
            tr("More than 0.5 mm off is a wrong part, not a setting: see the mix-up finder on the page Drive."),
        )
    return {"commanded_mm": COMMANDED_MM, "read_mm": typed["read_mm"]}
