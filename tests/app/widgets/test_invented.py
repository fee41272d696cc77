"""Pictures that leave the demo shop say that they are invented; those of a person's own shop are as they were."""

from __future__ import annotations

from xml.etree import ElementTree as ET

import numpy as np
import pytest
from PySide6.QtGui import QColor, QImage

from app.theme import LIGHT
from app.widgets.invented import mark_pictures
from app.widgets.plotdata import PlotData, PointSeries
from app.widgets.plotpane import PlotPane

MARK = "Demo shop, invented data"


@pytest.fixture
def pane(qtbot):
    pane = PlotPane("empty")
    qtbot.addWidget(pane)
    pane.resize(500, 400)
    pane.set_data(PlotData((PointSeries("outside", np.array([0.0, 1.0]), np.array([0.0, 1.0])),), title="Error"))
    pane.show()
    yield pane
    mark_pictures("")


def mark_coloured(image: QImage) -> int:
    """Pixels of the lowest line of text that have the colour of the mark."""
    wanted = QColor(LIGHT.warning)
    rows = range(image.height() - 20, image.height())
    return sum(image.pixelColor(x, y) == wanted for y in rows for x in range(image.width() // 2, image.width()))


def test_a_saved_picture_bears_the_mark(pane, tmp_path):
    pane.export_png(tmp_path / "own.png")
    mark_pictures(MARK)
    pane.export_png(tmp_path / "demo.png")
    assert mark_coloured(QImage(str(tmp_path / "own.png"))) == 0
    assert mark_coloured(QImage(str(tmp_path / "demo.png"))) > 100


def test_a_saved_drawing_bears_the_mark(pane, tmp_path):
    pane.export_svg(tmp_path / "own.svg")
    mark_pictures(MARK)
    pane.export_svg(tmp_path / "demo.svg")
    texts = [[text.text for text in ET.parse(tmp_path / name).iter("{http://www.w3.org/2000/svg}text")]
             for name in ("own.svg", "demo.svg")]  # fmt: skip
    assert MARK not in texts[0]
    assert texts[1] == [*texts[0], MARK]
