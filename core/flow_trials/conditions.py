"""What held while a flow trial was printed. A flow factor counts with it only: bead model, nozzle, temperature, rate.

Use outside 5 K of the tested temperature or above the tested rate is marked.

Reference: limits of 5 K, and of half the flow ceiling for a trial: common practice, no source.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

from core.errors import InputError
from core.flow_trials.bead import Bead, BeadModel, bead_questions, model_words
from core.measuring.hotend import refuse_hotter
from core.words import Words, tr

SAME_TEMPERATURE_K = 5.0
MODERATE_SHARE = 0.5
_SAME_BORE_MM = 0.01
_HOTTEST_C = 600.0
_MOST_RATE_MM3_S = 200.0
LEAST_FACTOR, MOST_FACTOR = 0.3, 3.0


@dataclass(frozen=True, slots=True)
class PrintConditions:
    """Bead, nozzle bore (mm), nozzle temperature (°C), volumetric rate (mm³/s), and the flow factor in force then.

    `hot_end_limit_c` is what the hot end's maker states.

    Raises:
        InputError: the field that cannot be; a temperature above the stated limit is refused.
    """

    bead: Bead
    nozzle_mm: float
    temperature_c: float
    rate_mm3_s: float
    in_force_ratio: float
    hot_end_limit_c: float

    def __post_init__(self) -> None:
        """Refuse what cannot be and what must not be."""
        bead_questions(self.bead, self.nozzle_mm)
        if not 0 < self.temperature_c <= _HOTTEST_C:
            raise InputError(
                "temperature_c",
                tr("A nozzle at {value:g} °C does not print; type the temperature shown.", value=self.temperature_c),
            )
        refuse_hotter(self.temperature_c, self.hot_end_limit_c)
        if not 0 < self.rate_mm3_s <= _MOST_RATE_MM3_S:
            raise InputError(
                "rate_mm3_s",
                tr(
                    "A rate of {value:g} mm³/s is not between 0 and 200; it is bead area times speed.",
                    value=self.rate_mm3_s,
                ),
            )
        if not LEAST_FACTOR <= self.in_force_ratio <= MOST_FACTOR:
            raise InputError(
                "in_force_ratio",
                tr("A flow factor of {value:g} is not between {least:g} and {most:g}; type 1 for 100 %.",
                   value=self.in_force_ratio, least=LEAST_FACTOR, most=MOST_FACTOR),
            )

    def questions(self, ceiling_mm3_s: float | None = None) -> tuple[Words, ...]:
        """Ask about bead and rate.

        Args:
            ceiling_mm3_s: flow ceiling of this machine and lot; None where it is not known.

        Raises:
            InputError: field `rate_mm3_s` above the ceiling, where the trial would measure slip.
        """
        asks = list(bead_questions(self.bead, self.nozzle_mm))
        if ceiling_mm3_s is not None and self.rate_mm3_s > ceiling_mm3_s:
            raise InputError(
                "rate_mm3_s",
                tr(
                    "{rate:g} mm³/s is above the flow ceiling of {ceiling:.3g} mm³/s: slip would be taken for flow. "
                    "Print the trial at half the ceiling.",
                    rate=self.rate_mm3_s,
                    ceiling=ceiling_mm3_s,
                ),
            )
        if ceiling_mm3_s is not None and self.rate_mm3_s > MODERATE_SHARE * ceiling_mm3_s:
            asks.append(
                tr(
                    "{rate:g} mm³/s is more than half the flow ceiling of {ceiling:.3g} mm³/s: the factor would hide "
                    "slip. Print the trial slower.",
                    rate=self.rate_mm3_s,
                    ceiling=ceiling_mm3_s,
                )
            )
        return tuple(asks)

    def words(self) -> Words:
        """Say what a result holds for."""
        return tr(
            "Holds for {model} beads of {width:g} × {height:g} mm, nozzle {nozzle:g} mm, {temperature:g} °C ± 5 K, up "
            "to {rate:g} mm³/s.",
            model=model_words(self.bead.model),
            width=self.bead.width_mm,
            height=self.bead.height_mm,
            nozzle=self.nozzle_mm,
            temperature=self.temperature_c,
            rate=self.rate_mm3_s,
        )


def conditions_from(stored: Mapping[str, Any]) -> PrintConditions | None:
    """Return the conditions as a trial keeps them, or None where they are not complete or cannot be."""
    names = ("nozzle_mm", "temperature_c", "rate_mm3_s", "in_force_ratio", "hot_end_limit_c")
    try:
        bead = Bead(float(stored["width_mm"]), float(stored["height_mm"]), BeadModel(stored["bead_model"]))
        return PrintConditions(bead, *(float(stored[name]) for name in names))
    except (KeyError, TypeError, ValueError):  # InputError is a ValueError
        return None


def why_apart(here: PrintConditions, there: PrintConditions) -> Words | None:
    """Return why a factor found there does not count here; None where it does."""
    if here.bead.model is not there.bead.model:
        return tr(
            "it was found with the {model} model; a factor is not carried between models",
            model=model_words(there.bead.model),
        )
    if abs(here.nozzle_mm - there.nozzle_mm) > _SAME_BORE_MM:
        return tr("it was found with a nozzle of {bore:g} mm", bore=there.nozzle_mm)
    if abs(here.temperature_c - there.temperature_c) > SAME_TEMPERATURE_K:
        return tr("it was found at {temperature:g} °C", temperature=there.temperature_c)
    return None


def use_questions(
    tested: PrintConditions, temperature_c: float, rate_mm3_s: float, model: BeadModel | None = None
) -> tuple[Words, ...]:
    """Mark a use that the trial does not cover.

    Args:
        tested: what the factor was found with.
        temperature_c: at which it is to be used.
        rate_mm3_s: the highest volumetric rate it is to be used at.
        model: bead model of the program it is to be used in; None where it is the same.
    """
    asks = []
    if abs(temperature_c - tested.temperature_c) > SAME_TEMPERATURE_K:
        asks.append(
            tr(
                "Tested at {tested:g} °C, used at {used:g} °C: outside ±5 K a flow factor does not hold.",
                tested=tested.temperature_c,
                used=temperature_c,
            )
        )
    if rate_mm3_s > tested.rate_mm3_s:
        asks.append(
            tr(
                "Tested up to {tested:g} mm³/s, used at {used:g} mm³/s: slip grows with the rate.",
                tested=tested.rate_mm3_s,
                used=rate_mm3_s,
            )
        )
    if model is not None and model is not tested.bead.model:
        asks.append(
            tr(
                "Tested with {tested} beads, used with {used} ones: convert the factor first.",
                tested=model_words(tested.bead.model),
                used=model_words(model),
            )
        )
    return tuple(asks)


def percent_text(ratio: float) -> str:
    """Return a change in percent for people: `−4.5`, `+0.0`."""
    return f"{round(100.0 * ratio, 1) + 0.0:+.1f}".replace("-", "−")
