"""The pages of *Machine geometry* with the invented readings of a shop of ours: one function fills one page."""

from __future__ import annotations

import math
from collections.abc import Callable
from typing import Any

# Pillars of 10 mm at 80 mm, Y leaning towards +X by 0.7 mm in 1 m, in the order in which the page asks.
PILLARS = "123.19 103.19 123.09 103.08 123.20 103.18 123.08 103.09"
# Pairs at the left, in the middle and at the right of X: the dial from - and from +.
PAIRS = "0.42 0.36 0.43 0.36 0.42 0.37 0.43 0.37 0.42 0.36 0.51 0.42 0.51 0.43 0.52 0.43 0.51 0.42 0.51 0.43 " \
        "0.40 0.33 0.41 0.33 0.40 0.34 0.40 0.33 0.41 0.34"  # fmt: skip


def type_down(page: Any, texts: str) -> None:
    """Put readings into the rows of a page from the first one on, then stand at the next one."""
    readings = texts.split()
    for row, text in enumerate(readings):
        page.form.model.edit(row, "measured_mm", text)
    page.form.table.go_to(min(len(readings), page.form.model.rowCount() - 1))


def fill_drive(page: Any) -> None:
    """Hold the parts against a value found and a travel that came out short."""
    page.checks.set_texts({"check.found_steps_mm": "80.63", "check.commanded_mm": "200", "check.measured_mm": "160.2"})
    page.recompute()


def fill_reversal(page: Any) -> None:
    """A quick cycle with too much play."""
    type_down(page, PAIRS)


def fill_squareness(page: Any) -> None:
    """Four pillars, both faces, each read twice."""
    type_down(page, PILLARS)


def fill_bedplane(page: Any) -> None:
    """Nine places of a bed that falls to the front right and is hollow in the middle."""
    heights = []
    for row in page.form.model.rows():
        x, y = row["x_mm"] / 100 - 1.1, row["y_mm"] / 100 - 1.1
        heights.append(f"{0.06 * x - 0.04 * y + 0.05 * (x * x + y * y) - 0.05 + 0.004 * math.sin(9 * x + 5 * y):.3f}")
    type_down(page, " ".join(heights))


def fill_firstlayer(page: Any) -> None:
    """Five pads of a nozzle that stands too low."""
    page.form.typed["offset_mm"].setText("-0.15")
    type_down(page, "0.152 0.146 0.155 0.149 0.158")


FILLS: dict[str, Callable[[Any], None]] = {
    "drive": fill_drive,
    "reversal": fill_reversal,
    "squareness": fill_squareness,
    "bedplane": fill_bedplane,
    "firstlayer": fill_firstlayer,
}
