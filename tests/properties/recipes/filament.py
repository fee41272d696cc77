"""Ways to read a filament."""

from __future__ import annotations

from typing import Any

import numpy as np

from core.filament.slip import HotFeed
from core.filament.ways import plan_by_gauge, plan_by_mass
from core.measuring.gauge import GaugeKind, gauge_of
from core.quantity import Estimate
from tests.properties.kinds import Recipe

DENSITY = Estimate("density", 1.24, 0.01, np.inf, "g/cm3")


RECIPES: dict[Any, Recipe] = {
    HotFeed: lambda hand: HotFeed(0.4, hand.number("", 190.0, 250.0), 280.0),
}


ARGUMENTS: dict[str, Recipe] = {
    "filament.ways.ways_words": lambda hand: {
        "ways": [plan_by_gauge(gauge_of(kind), 1.75) for kind in GaugeKind] + [plan_by_mass(DENSITY, 1.75, 0.01, 0.5)],
        "nominal_mm": hand.pick(1.75, 2.85),
    },
}
