"""`python -m tests.fuzz [EVENTS] [SEED]`: random hands on the window; ends with the count and every fault it met."""

from __future__ import annotations

import faulthandler
import os
import sys
import tempfile
from pathlib import Path

os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")

from tests.fuzz.run import fuzz  # noqa: E402


def main(events: int, seed: int) -> int:
    """Run and report; 1 if there was a fault."""
    from PySide6.QtWidgets import QApplication

    from app.theme import apply_theme

    faulthandler.enable()  # a crash ends the run without a word else
    app = QApplication(["slipgauge"])
    app.setStyle("Fusion")
    apply_theme(app, dark=False)
    with tempfile.TemporaryDirectory() as folder:
        faults = fuzz(Path(folder), events, seed, print)
    print(f"{events} events, seed {seed}: {len(faults)} faults")
    for fault in faults:
        print(fault)
    return 1 if faults else 0


if __name__ == "__main__":
    sys.exit(main(*(int(word) for word in [*sys.argv[1:], *("20000", "1")[len(sys.argv) - 1 :]])))
