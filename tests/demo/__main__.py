"""`python -m tests.demo [FILE]`: simulates the demo shop, types it into the pages and writes it as an export.

Without FILE it writes `resources/demo/shop.json`, which comes with the program. It takes about a minute.
"""

from __future__ import annotations

import os
import sys
import tempfile
from pathlib import Path

os.environ["QT_QPA_PLATFORM"] = "offscreen"

from PySide6.QtCore import QLocale  # noqa: E402
from PySide6.QtWidgets import QApplication  # noqa: E402

from core.records.log import DEMO_MARK  # noqa: E402
from core.records.store import open_store  # noqa: E402
from tests.demo.script import shop  # noqa: E402
from tests.demo.typist import Typist, shop_clock  # noqa: E402

SHOP = Path(__file__).parents[2] / "resources" / "demo" / "shop.json"


def main(target: Path) -> None:
    """Write the demo shop."""
    QLocale.setDefault(QLocale.c())  # verdicts are kept as they were shown
    app = QApplication(["slipgauge"])
    app.setStyle("Fusion")
    with tempfile.TemporaryDirectory() as name, shop_clock():
        os.environ["XDG_DATA_HOME"] = name
        store = open_store(":memory:")
        typist = Typist(store, Path(name))
        for entry in shop():
            typist.do(entry)
            print(f"{entry.day:6.2f} days ago  {entry.does} {entry.machine} {entry.lot} {entry.instrument}".rstrip())
        typist.close()
        store.set_shop_value(DEMO_MARK, {"says": "Demo shop, invented data"}, None)
        target.unlink(missing_ok=True)
        store.storage.export_json(str(target))
        store.close()


if __name__ == "__main__":
    main(Path(sys.argv[1]) if len(sys.argv) > 1 else SHOP)
