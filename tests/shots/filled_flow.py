"""The pages of *Flow trials* with the invented readings of a shop of ours: one function fills one page."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

WALLS = "0.463 0.466 0.461 0.465 0.464 0.462 0.466 0.463"
MASSES = "6.312 6.327 6.305"
SCORES = "2 -1.5 4 0 2.5 -2 1 3 -0.5 2.5 -1 4.5 0.5 3 -2 1.5 3.5 -1"
# Grams of 200 mm of filament of 3.05 g/m at 2 to 20 mm³/s, by temperature.
STRANDS = {
    "230": "0.604 0.605 0.603 0.604 0.602 0.603 0.596 0.587 0.576 0.567",
    "240": "0.605 0.604 0.605 0.603 0.604 0.604 0.603 0.599 0.590 0.581",
    "250": "0.604 0.605 0.604 0.605 0.603 0.604 0.604 0.603 0.601 0.594",
}
CONDITIONS = {"temperature_c": 240.0, "hot_end_limit_c": 300.0, "rate_mm3_s": 4.0, "in_force_ratio": 1.0}


def type_down(page: Any, texts: str) -> None:
    """Put readings into the rows of a page from the first one on, then stand at the last one."""
    readings = texts.split()
    for row, text in enumerate(readings):
        page.form.model.edit(row, "measured_mm", text)
    page.form.table.go_to(len(readings) - 1)


def fill_wall(page: Any) -> None:
    """Eight places of a one-bead box, beside a mass and pads that were kept before."""
    from core.quantity import Estimate
    from core.records.rows import Trial

    machine, lot, store = page.context.machine, page.context.lot, page.context.store
    page.form.show_conditions({**page.form.conditions(), **CONDITIONS, "sd_lateral_mm": 0.004})
    for name, value, u in (("mass", 0.972, 0.006), ("top", 0.981, 0.011)):
        found = Estimate(f"flow_ratio_{name}", value, u, 20.0, "1")
        store.keep(Trial(name, machine.id, lot.id, conditions=page.form.conditions(), estimates=(found,)))
    type_down(page, WALLS)


def fill_mass(page: Any) -> None:
    """Three pieces by density, from the filament of their path."""
    page.form.show_conditions({**page.form.conditions(), **CONDITIONS, "density_g_cm3": 1.27,
                               "path_filament_mm": 2010.0})
    type_down(page, MASSES)


def fill_top(page: Any) -> None:
    """Nine pads, scored by two people."""
    page.form.show_conditions({**page.form.conditions(), **CONDITIONS})
    type_down(page, SCORES)


def fill_ceiling(page: Any) -> None:
    """Ten rates at three temperatures."""
    page.form.show_conditions({**page.form.conditions(), "mass_per_length_g_m": 3.05, "hot_end_limit_c": 300.0})
    row = 0
    for temperature, masses in STRANDS.items():
        for number, mass in enumerate(masses.split(), start=1):
            if row == page.form.model.rowCount():
                page.add_button.click()
            for key, text in (("temperature_c", temperature), ("rate_mm3_s", str(2 * number)), ("measured_mm", mass)):
                page.form.model.edit(row, key, text)
            row += 1


FILLS: dict[str, Callable[[Any], None]] = {
    "wall": fill_wall,
    "mass": fill_mass,
    "top": fill_top,
    "ceiling": fill_ceiling,
}
