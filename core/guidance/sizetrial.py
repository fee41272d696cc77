"""One size trial from typed readings to a verdict: the single call that window and command line share."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from core.guidance.advice import advise
from core.guidance.known import KeptResult, Known, known_of
from core.guidance.splitpair import SplitPair
from core.guidance.verdict import Advice
from core.part_size.lengths import LayerPlan, PartTemperature
from core.part_size.sizeerror import METHOD, SizeError, fit_size_error
from core.quantity import Estimate
from core.records.rows import Instrument, Machine

SUBJECT = "sizeerror"


@dataclass(frozen=True, slots=True)
class SizeReadings:
    """The readings that count, column by column (n), and what held while they were taken."""

    nominal_mm: Sequence[float]
    measured_mm: Sequence[float]
    kind: Sequence[str]
    axis: Sequence[str]
    feature: Sequence[str]
    tolerance: str | float = "m"
    part_temperature: PartTemperature | None = None
    layers: LayerPlan | None = None


@dataclass(frozen=True, slots=True, eq=False)
class SizeJudgement:
    """The fit of one trial, what was known beside it, and the advice that follows."""

    fit: SizeError
    known: Known
    advice: tuple[Advice, ...]

    @property
    def method(self) -> str:
        """Name and version of the mathematics."""
        return METHOD

    def estimates(self) -> tuple[Estimate, ...]:
        """Return the estimates of the fit."""
        return self.fit.estimates()


def fit_readings(readings: SizeReadings, instrument: Instrument | None) -> SizeError:
    """Fit the readings of a size trial, with the uncertainties of an instrument.

    Raises:
        InputError: as `fit_size_error` does.
    """
    return fit_size_error(
        readings.nominal_mm,
        readings.measured_mm,
        readings.kind,
        axis=readings.axis,
        feature=readings.feature,
        instrument=instrument,
        part_temperature=readings.part_temperature,
        layers=readings.layers,
    )


def judge_size_trial(
    readings: SizeReadings,
    machine: Machine | None = None,
    instrument: Instrument | None = None,
    *,
    flow_checked: bool = False,
    reversal: Mapping[str, KeptResult] | None = None,
    split: Mapping[str, SplitPair] | None = None,
) -> SizeJudgement:
    """Fit the readings and say which setting each error belongs to.

    Args:
        readings: what was measured; excluded readings are left out before.
        machine: whose drives are known; None for none on record.
        instrument: whose uncertainties are known; None for none on record.
        flow_checked: whether a valid flow trial of this machine and lot stands behind the print.
        reversal: kept reversal errors of the machine by axis.
        split: by axis what the shop's other trials say of this machine and lot.

    Raises:
        InputError: as `fit_size_error` and `advise` do.
    """
    fit = fit_readings(readings, instrument)
    known = known_of(machine, readings.tolerance, flow_checked, reversal, split)
    return SizeJudgement(fit, known, advise(fit, known))
