"""The pages of *Bench* with the invented readings of a shop of ours: one function fills one page."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

# A printed face of 20 mm, re-seated ten times.
PRINTED = (19.94, 19.96, 19.95, 19.97, 19.94, 19.95, 19.96, 19.95, 19.93, 19.95)
# X less Y of one print, 1/1000: steady at first, then the belt of Y begins to slip.
SCALES = (0.2, 0.4, 0.1, 0.3, 0.5, 0.2, 0.3, 0.0, 0.4, 0.3, 0.2, 0.4, 0.3, 0.1, 0.4, 0.2, 0.3, 0.5, 0.1, 0.3,
          0.4, 0.2, 0.6, 0.7, 1.0, 1.2)  # fmt: skip


def fill_instruments(page: Any) -> None:
    """A full check of the picked caliper."""
    printed = iter(PRINTED * 2)
    for row, values in enumerate(page.form.model.rows()):
        reference = values["nominal_mm"]
        blades = 0.16 / (2 * reference) if values["kind"] == "inside" else 0.0  # a flat spans a chord
        reading = next(printed) if reference is None else reference - blades + (row % 5 == 2) * 0.005
        page.form.model.edit(row, "measured_mm", f"{reading:.2f}")
    page.form.light_gap.set_value("none")
    page.form.table.go_to(page.form.model.rowCount() - 1)
    page.answer_change()


def fill_charts(page: Any) -> None:
    """Twenty-six squareness results, the last ones drifting."""
    from core.quantity import Estimate
    from core.records.rows import Trial

    machine = page.context.machine
    for value in SCALES:
        found = Estimate("squareness_xy", value / 1000, 0.0001, 9.0, "rad")
        page.context.store.keep(Trial("squareness", machine_id=machine.id, estimates=(found,)))
    page.choices.quantity.set_value("squareness_xy")
    page.shown()


FILLS: dict[str, Callable[[Any], None]] = {"instruments": fill_instruments, "charts": fill_charts}
