"""What a volume of plastic weighs: by its density, or by the mass per length of the filament it is laid from.

Symbols: rho density, lambda mass per length, A_f cross-section of the filament as the path counts it; rho = lambda/A_f.

Reference: ISO 1183-1 (density). Limits of what is a filament: common practice, no source.
"""

from __future__ import annotations

from dataclasses import dataclass

from core.errors import InputError
from core.flow_trials.bead import strand_area_mm2
from core.words import Words, tr


@dataclass(frozen=True, slots=True)
class Density:
    """Density of the plastic with its relative standard uncertainty; `kept` where a trial of the lot found both.

    Raises:
        InputError: fields `density_g_cm3` or `u_ratio`.
    """

    density_g_cm3: float
    u_ratio: float = 0.005
    kept: bool = False

    def __post_init__(self) -> None:
        """Refuse what is no plastic."""
        if not 0.3 <= self.density_g_cm3 <= 5.0:
            raise InputError(
                "density_g_cm3",
                tr("{value:g} g/cm³ is no filament; it lies between 0.3 and 5. Typed in kg/m³?",
                   value=self.density_g_cm3),
            )  # fmt: skip
        _check_relative(self.u_ratio)

    @property
    def g_mm3(self) -> float:
        """Mass of a cubic millimetre."""
        return self.density_g_cm3 / 1000.0


@dataclass(frozen=True, slots=True)
class MassPerLength:
    """Mass per length of the filament with its relative standard uncertainty, and the diameter the path counts with.

    `kept` where a trial of the lot found mass per length and uncertainty.

    Raises:
        InputError: fields `mass_per_length_g_m`, `filament_mm` or `u_ratio`.
    """

    mass_per_length_g_m: float
    filament_mm: float
    u_ratio: float = 0.003
    kept: bool = False

    def __post_init__(self) -> None:
        """Refuse what is no filament."""
        if not 0.3 <= self.mass_per_length_g_m <= 50.0:
            raise InputError(
                "mass_per_length_g_m",
                tr("{value:g} g/m is no filament; 1.75 mm has about 3 g/m. Weigh a metre.",
                   value=self.mass_per_length_g_m),
            )  # fmt: skip
        strand_area_mm2(self.filament_mm, "filament_mm")
        _check_relative(self.u_ratio)

    @property
    def g_mm3(self) -> float:
        """Mass of a cubic millimetre as the path counts it: lambda/A_f."""
        return self.mass_per_length_g_m / 1000.0 / strand_area_mm2(self.filament_mm)


def typed_words(plastic: Density | MassPerLength) -> Words:
    """Say with what uncertainty a value counts that was typed and not measured here."""
    percent = f"{200.0 * plastic.u_ratio:.2g}"
    if isinstance(plastic, MassPerLength):
        return tr("The mass per length is as typed, taken as right to ± {U} % (common practice, no source): weigh a "
                  "metre on the page Diameter.", U=percent)  # fmt: skip
    return tr("The density is as typed, taken as right to ± {U} % (common practice, no source): weigh a sample in "
              "water on the page Diameter.", U=percent)  # fmt: skip


def _check_relative(u_ratio: float) -> None:
    if not 0 < u_ratio <= 0.2:
        raise InputError("u_ratio", tr("An uncertainty of {value:g} % is not between 0 and 20 %.", value=100 * u_ratio))
