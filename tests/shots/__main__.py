"""`python -m tests.shots [FOLDER]`: pictures of every page, made by the app itself, to look at and for the README.

Each page is filled with invented readings and shown in both themes, at 1280 x 800 and 1000 x 700.
"""

from __future__ import annotations

import os
import sys
import tempfile
from importlib import import_module
from pathlib import Path

os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")
if __name__ == "__main__":  # nothing is read from the person's own folders or written there
    own = Path(tempfile.mkdtemp(prefix="shots-"))
    os.environ.update({f"XDG_{kind}_HOME": str(own / kind.lower()) for kind in ("CONFIG", "DATA", "CACHE")})

from PySide6.QtCore import QSettings  # noqa: E402
from PySide6.QtWidgets import QApplication  # noqa: E402

from tests.shots import filled_bench, filled_filament, filled_flow, filled_machine, filled_motion  # noqa: E402

ROOT = Path(__file__).parents[2]
README_PICTURE = ROOT / "resources" / "pictures" / "size_error_light.png"
SIZES = {"large": (1280, 800), "small": (1000, 700)}
BELT = {"kind": "belt", "pitch_mm": 2.0, "teeth": 20, "full_steps": 200, "microsteps": 16}
SCREW = {"kind": "screw", "pitch_mm": 2.0, "starts": 4, "full_steps": 200, "microsteps": 16}
DEMO = ROOT / "resources" / "demo" / "comb_x.csv"


def main(folder: Path) -> None:
    """Write the pictures."""
    from app.pages import PAGES
    from app.theme import apply_theme

    app = QApplication(["slipgauge"])
    app.setStyle("Fusion")
    folder.mkdir(parents=True, exist_ok=True)
    for dark in (False, True):
        apply_theme(app, dark)
        for size_name, size in SIZES.items():
            window = _window(size)
            for entry in PAGES:
                window.show_page(entry.key)
                app.processEvents()
                page = window.findChild(getattr(import_module(entry.module), entry.class_name))
                FILLS.get(entry.key, _leave_empty)(page)
                app.processEvents()
                name = f"{entry.key}_{'dark' if dark else 'light'}_{size_name}.png"
                window.grab().save(str(folder / name))
                print(folder / name)
                if name == "sizeerror_light_large.png":
                    window.grab().save(str(README_PICTURE))
            window.close()


def _window(size: tuple[int, int]):
    from app.context import Context
    from app.mainwindow import MainWindow
    from core.records.rows import Instrument, Lot, Machine
    from core.records.store import open_store

    store = open_store(":memory:")
    drives = {"x": BELT, "y": BELT, "z": SCREW}
    travel = {"travel_x_mm": 230.0, "travel_y_mm": 210.0, "travel_z_mm": 190.0}
    machine = store.add_machine(Machine("Bramble", **travel, drives=drives))
    lot = store.add_lot(Lot("Slate 7", "PETG"))
    caliper = store.add_instrument(Instrument("Caliper 2", u_outside_zero_mm=0.006, u_inside_zero_mm=0.008))
    context = Context(store)
    window = MainWindow(QSettings(str(Path(tempfile.mkdtemp()) / "shots.ini"), QSettings.Format.IniFormat))
    window.resize(*size)
    window.show()
    window.open_shop(context, "drive")
    context.select_machine(machine.id)
    context.select_lot(lot.id)
    context.select_instrument(caliper.id)
    return window


def _fill_size(page) -> None:
    lines = [line for line in DEMO.read_text(encoding="utf-8").splitlines() if not line.startswith("#")]
    for row, line in enumerate(lines[1:-1]):  # the window is not read yet
        page.form.model.edit(row, "measured_mm", line.split(",")[3])
    page.form.table.go_to(len(lines) - 2)


def _leave_empty(page) -> None:
    """Show a page without readings of its own as it is."""


FILLS = {
    **filled_machine.FILLS, **filled_filament.FILLS, **filled_flow.FILLS, **filled_motion.FILLS,
    **filled_bench.FILLS, "sizeerror": _fill_size,
}  # fmt: skip


if __name__ == "__main__":
    main(Path(sys.argv[1]) if len(sys.argv) > 1 else Path(__file__).parent)
