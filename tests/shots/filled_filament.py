"""The pages of *Filament* with the invented readings of a shop of ours: one function fills one page."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

# Ten places of a slightly oval strand by micrometer, each the largest and the one at 90°.
PAIRS = "1.752 1.721 1.749 1.724 1.756 1.719 1.751 1.722 1.748 1.720 1.753 1.718 1.750 1.723 1.755 1.721 1.747 1.722 " \
        "1.752 1.720"  # fmt: skip
# What was left of 120 mm, unloaded; then the share loaded, two repeats a rate.
RESTS = "22.4 22.6 22.5"
LOADED = ((2, 22.6), (2, 22.4), (4, 22.5), (4, 22.8), (6, 22.5), (6, 22.7), (8, 22.9), (8, 23.1), (10, 24.6),
          (10, 24.2), (12, 26.1), (12, 25.7))  # fmt: skip


def fill_lots(page: Any) -> None:
    """A lot with all its claims, weighed before and after drying."""
    page.form.set_texts({"maker": "Alder Works", "colour": "slate grey", "batch": "B 12", "nominal_diameter_mm": "1.75",
                         "claimed_tolerance_mm": "0.03", "spool_mass_g": "212", "note": "dry box 3"})
    page.keep()
    page.weighing.form.set_texts({"before_g": "1204.5", "now_g": "1199.5"})
    page.recompute()


def fill_diameter(page: Any) -> None:
    """Ten pairs by micrometer."""
    page.form.gauge.set_value("micrometer")
    for row, text in enumerate(PAIRS.split()):
        page.form.model.edit(row, "measured_mm", text)
    page.form.table.go_to(page.form.model.rowCount() - 1)


def fill_feed(page: Any) -> None:
    """Three repeats unloaded, then two repeats at each of six rates."""
    page.form.show_conditions({**page.form.conditions(), "in_force_steps_mm": 277.8, "temperature_c": 240.0})
    for row, text in enumerate(RESTS.split()):
        page.form.model.edit(row, "measured_mm", text)
    for rate, rest in LOADED:
        row = page.form.model.rowCount()
        page.add_button.click()
        page.form.model.edit(row, "rate_mm3_s", str(rate))
        page.form.model.edit(row, "measured_mm", str(rest))


FILLS: dict[str, Callable[[Any], None]] = {"lots": fill_lots, "diameter": fill_diameter, "feed": fill_feed}
