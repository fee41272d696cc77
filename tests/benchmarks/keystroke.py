"""A reading typed over in the table until all it changes is painted, beside a bare table of Qt and plot of pyqtgraph.

The same keys go to both tables. The peer is the least that shows the same numbers: a table of plain items, one
least-squares fit of the same terms, the points and two lines in a bare plot, and the readings committed as JSON to
SQLite, so that a crash loses nothing there either. It judges nothing, checks nothing and says nothing: no bands, no
verdict, no question at an odd reading, no step to undo.
"""

from __future__ import annotations

import json
import os
import sqlite3
import tempfile
from collections.abc import Iterator
from itertools import cycle
from pathlib import Path

import numpy as np

from tests.benchmarks.sidebyside import Contest, Way

TITLE = "Keystroke to repaint"
KINDS = ("tooth", "notch", "outside", "closed_hole")
LENGTHS_MM = (10.0, 30.0, 50.0, 90.0, 110.0, 130.0)
SIZE_PX = (1080, 720)


def contests(quick: bool) -> Iterator[Contest]:
    os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")
    from PySide6.QtWidgets import QApplication

    from app.theme import apply_theme

    app = QApplication.instance() or QApplication(["slipgauge"])
    apply_theme(app, dark=False)
    with tempfile.TemporaryDirectory() as folder:
        for count in (11,) if quick else (11, 200):
            ours = Ours(Path(folder) / f"ours{count}.sqlite", count)
            peer = Peer(Path(folder) / f"bare{count}.sqlite", count)
            yield Contest(
                f"of_{count}",
                f"one of {count} readings",
                Way("the page Size error", ours.type_one),
                (Way("bare QTableView, pyqtgraph plot, lstsq, sqlite3", peer.type_one, estimates_apart),),
                (1e-6, "mm"),
            )
            ours.close()
            peer.close()


def estimates_apart(ours: dict[str, float], other: dict[str, float]) -> float:
    """The largest difference of scale (over 100 mm), wall outset and lost motion."""
    return max(abs(ours[name] - other[name]) * (100.0 if name == "scale_x" else 1.0) for name in other)


def rows(count: int) -> list[dict[str, object]]:
    found = []
    for i in range(count):
        nominal = LENGTHS_MM[i % 6]
        measured = round(nominal * 0.997 + 0.01 * (i % 3), 2)
        found.append(
            {
                "feature": f"f{i}", "axis": "x", "kind": KINDS[i % 4], "nominal_mm": nominal,
                "nominal_raw": f"{nominal:g}", "measured_mm": measured, "raw": f"{measured:.2f}", "confirmed": True,
            }
        )  # fmt: skip
    return found


def type_into(table, row: int, column: int, text: str) -> None:
    """Open the cell, type over what is in it, press Enter, and let all be painted."""
    from PySide6.QtCore import Qt
    from PySide6.QtTest import QTest
    from PySide6.QtWidgets import QApplication, QLineEdit

    index = table.model().index(row, column)
    table.setCurrentIndex(index)
    table.edit(index)
    editor = next(field for field in table.viewport().findChildren(QLineEdit) if field.isVisible())
    editor.selectAll()
    QTest.keyClicks(editor, text)
    QTest.keyClick(editor, Qt.Key.Key_Return)
    QApplication.processEvents()


class Ours:
    """The page as people see it, over a database on disk."""

    def __init__(self, path: Path, count: int) -> None:
        from app.context import Context
        from app.pages.part_size.sizeerror import SizeErrorPage
        from core.records.rows import Instrument, Machine
        from core.records.store import open_store

        self.store = open_store(path)
        context = Context(self.store)
        context.select_machine(self.store.add_machine(Machine("Bramble")).id)
        context.select_instrument(self.store.add_instrument(Instrument("caliper", u_outside_zero_mm=0.01)).id)
        self.page = SizeErrorPage(context)
        self.page.resize(*SIZE_PX)
        self.page.show()
        self.page.activateWindow()
        self.page.form.show_rows(rows(count))
        self.page.recompute()
        self.column = [column.key for column in self.page.form.model.columns].index("measured_mm")
        self.texts = cycle(("10.05", "10.06"))

    def type_one(self) -> dict[str, float]:
        type_into(self.page.form.table, 0, self.column, next(self.texts))
        return {estimate.name: estimate.value for estimate in self.page.result.judgement.fit.estimates()}

    def close(self) -> None:
        self.page.close()
        self.page.deleteLater()
        self.store.close()


class Peer:
    """A bare table beside a bare plot."""

    def __init__(self, path: Path, count: int) -> None:
        import pyqtgraph as pg
        from PySide6.QtGui import QStandardItem, QStandardItemModel
        from PySide6.QtWidgets import QHBoxLayout, QTableView, QWidget

        self.rows = rows(count)
        self.window, self.table, self.plot = QWidget(), QTableView(), pg.PlotWidget()
        self.model = QStandardItemModel(count, 3)
        for place, row in enumerate(self.rows):
            for column, text in enumerate((row["feature"], row["nominal_raw"], row["raw"])):
                self.model.setItem(place, column, QStandardItem(text))
        self.table.setModel(self.model)
        layout = QHBoxLayout(self.window)
        layout.addWidget(self.table)
        layout.addWidget(self.plot)
        self.points = self.plot.plot(pen=None, symbol="o")
        self.lines = [self.plot.plot(), self.plot.plot()]
        self.database = sqlite3.connect(path, isolation_level=None)
        for statement in ("PRAGMA journal_mode=WAL", "PRAGMA synchronous=FULL", "CREATE TABLE draft (readings TEXT)",
                          "INSERT INTO draft VALUES ('')"):  # fmt: skip
            self.database.execute(statement)
        self.model.itemChanged.connect(self.answer)
        self.texts = cycle(("10.05", "10.06"))
        self.window.resize(*SIZE_PX)
        self.window.show()
        self.window.activateWindow()
        self.answer()

    def type_one(self) -> dict[str, float]:
        type_into(self.table, 0, 2, next(self.texts))
        return self.found

    def answer(self) -> None:
        """Fit, draw, commit."""
        nominal = np.array([row["nominal_mm"] for row in self.rows])
        raw = [self.model.item(place, 2).text() for place in range(len(self.rows))]
        error = np.array([float(text) for text in raw]) - nominal
        outside = np.array([1.0 if row["kind"] in ("tooth", "outside") else -1.0 for row in self.rows])
        closed = np.array([1.0 if row["kind"] in ("outside", "closed_hole") else 0.0 for row in self.rows])
        scale, outset, lost = np.linalg.lstsq(np.column_stack([nominal, 2 * outside, -closed]), error, rcond=None)[0]
        self.found = {"scale_x": scale, "wall_outset": outset, "lost_motion_x": lost}
        self.points.setData(nominal, error)
        at = np.linspace(0.0, nominal.max(), 50)
        for line, sign in zip(self.lines, (1.0, -1.0), strict=True):
            line.setData(at, scale * at + 2 * sign * outset)
        readings = json.dumps({"raw": raw, "nominal_mm": nominal.tolist()})
        self.database.execute("UPDATE draft SET readings = ?", [readings])

    def close(self) -> None:
        self.window.close()
        self.window.deleteLater()
        self.database.close()
