"""How long the work of a running window takes: printed by `python -m tests.benchmarks`, never asserted."""

from __future__ import annotations

import os
import statistics
import tempfile
import time
from collections.abc import Callable
from pathlib import Path

from tests.benchmarks import board, manytrials

ROUNDS = 15
FRAME_MS = 1000 / 60


def median_ms(call: Callable[[], object]) -> float:
    """Median over some rounds, the first one left out: it loads what is loaded once."""
    call()
    times = []
    for _ in range(ROUNDS):
        start = time.perf_counter()
        call()
        times.append(1000 * (time.perf_counter() - start))
    return statistics.median(times)


def measure() -> dict[str, float]:
    """Milliseconds by name."""
    os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")
    from PySide6.QtWidgets import QApplication

    from app.context import Context
    from app.pages.part_size.sizeerror import SizeErrorPage
    from app.theme import apply_theme
    from core.records.rows import Instrument, Machine, Trial
    from core.records.store import open_store

    app = QApplication.instance() or QApplication(["slipgauge"])
    apply_theme(app, dark=False)
    with tempfile.TemporaryDirectory() as folder:
        path = Path(folder) / "shop.sqlite"
        store = open_store(path)
        context = Context(store)
        context.select_machine(store.add_machine(Machine("Bramble")).id)
        context.select_instrument(store.add_instrument(Instrument("caliper", u_outside_zero_mm=0.01)).id)
        page = SizeErrorPage(context)
        page.resize(1080, 720)
        page.show()
        found = {}
        for count in (11, 200):
            page.form.show_rows(rows(count))
            page.recompute()

            def type_one(page: SizeErrorPage = page) -> None:
                shown = page.form.model.values(0)["raw"]
                page.form.model.edit(0, "measured_mm", "10.05" if shown == "10.06" else "10.06")
                page.plot.canvas.viewport().repaint()

            found[f"reading typed to repaint and commit, {count} readings"] = median_ms(type_one)
        draft = store.save_draft(Trial("long", readings={"raw": ["1.0"] * 200}))
        found["draft of 200 readings committed"] = median_ms(lambda: store.save_draft(draft))
        store.close()
        found["existing database opened and closed"] = median_ms(lambda: open_store(path).close())
        found |= manytrials.measure(Path(folder) / "many.sqlite", median_ms)
        found |= board.measure(Path(folder) / "board.sqlite", median_ms)
    return found


def rows(count: int) -> list[dict[str, object]]:
    kinds = ("tooth", "notch", "outside", "closed_hole")
    lengths = (10.0, 30.0, 50.0, 90.0, 110.0, 130.0)
    return [
        {
            "feature": f"f{i}",
            "axis": "x",
            "kind": kinds[i % 4],
            "nominal_mm": lengths[i % 6],
            "nominal_raw": f"{lengths[i % 6]:g}",
            "measured_mm": lengths[i % 6] * 0.997 + 0.01 * (i % 3),
            "raw": f"{lengths[i % 6] * 0.997 + 0.01 * (i % 3):.2f}",
            "confirmed": True,
        }
        for i in range(count)
    ]


def report(found: dict[str, float]) -> None:
    print(f"work of a running window, median of {ROUNDS}; a frame is {FRAME_MS:.1f} ms")
    for name, value in found.items():
        print(f"  {name:58} {value:7.1f} ms")
