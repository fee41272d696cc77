"""Pictures painted in grey: every meaning is still there as a shape, a hatch or a kind of line (WCAG 2.2, 1.4.1).

What is on the screen is turned into Qt's eight-bit grey, and the marks of different meanings are compared in it.
"""

import itertools

import numpy as np
import pytest
from PySide6.QtCore import QPoint, QPointF, QRect
from PySide6.QtGui import QImage
from PySide6.QtWidgets import QApplication

from app.notices import NoticeLine
from app.rail import Rail
from app.theme import DARK, LIGHT, apply_theme
from app.widgets.barsview import Bar, BarsData, BarsPane
from app.widgets.mapview import MapData, MapPane
from app.widgets.resulttext import SIGNS as TONE_SIGNS
from app.widgets.shopview import Share, ShopData, ShopPane
from app.widgets.skewview import SkewData, SkewPane
from app.widgets.toolpathview import Bed, ToolpathPane
from core.pieces.toolpath import Laying, Part, PathBead, Toolpath, bead_stroke, lay
from core.words import tr

CHANGE = 24  # of 255 greys, told from what is beside it
INK = 60  # more than the shades of the ground differ within a sign


@pytest.fixture(params=[LIGHT, DARK], ids=lambda theme: theme.name)
def theme(request, qapp):
    apply_theme(qapp, dark=request.param is DARK)
    yield request.param
    apply_theme(qapp, dark=False)


def shown(qtbot, pane, width=620, height=420):
    qtbot.addWidget(pane)
    pane.resize(width, height)
    pane.show()
    qtbot.waitExposed(pane)
    return pane


def grey(widget) -> np.ndarray:
    """Return what a widget shows as greys (rows, columns)."""
    QApplication.processEvents()
    image = widget.grab().toImage().convertToFormat(QImage.Format.Format_Grayscale8)
    rows = np.frombuffer(image.constBits(), np.uint8).reshape(image.height(), image.bytesPerLine())
    return rows[:, : image.width()].astype(int)


def faintest(greys: np.ndarray, start: QPointF, end: QPointF) -> float:
    """Return the least ink on a straight way as a share of the most: near 1 on a solid line, 0 where it has gaps."""
    way = [start + (end - start) * step for step in np.linspace(0.0, 1.0, 300)]
    ground = np.median(greys)
    inks = [np.abs(greys[round(p.y()) - 1 : round(p.y()) + 2, round(p.x())] - ground).max() for p in way]
    return float(min(inks) / max(inks))


# The bed


def test_above_and_below_are_told_by_a_sign_where_there_is_no_room_for_a_number(qtbot, theme):
    pane = shown(qtbot, MapPane("Bed", "No map yet."), 420, 320)
    x, y = (axis.ravel() for axis in np.meshgrid(np.linspace(10.0, 210.0, 11), np.linspace(10.0, 210.0, 11)))
    height = np.where(np.arange(x.size) % 2 == 0, 0.2, -0.2)
    pane.show_map(MapData(x, y, height, height, np.zeros(x.size, bool), tuple(f"P{n}" for n in range(x.size))))
    numbered = {place for place, _, _ in pane.numbers(pane.fontMetrics())}
    boxes = [box for _, _, box in pane.numbers(pane.fontMetrics())]
    greys, kinds = grey(pane.sheet), {1: [], -1: []}
    for place, (at, _) in enumerate(pane.points()):
        around = QRect(at - QPoint(5, 5), at + QPoint(5, 5))
        if place not in numbered and not any(box.intersects(around) for box in boxes):
            sign = np.abs(greys[at.y() - 3 : at.y() + 4, at.x() - 3 : at.x() + 4] - greys[at.y() - 3, at.x() - 3])
            arms = sign[1, 2:5].max() > INK, sign[2:5, 1].max() > INK  # upright, level
            kinds[int(np.sign(height[place]))].append(arms)
    assert min(map(len, kinds.values())) > 10
    assert set(kinds[1]) == {(True, True)} and set(kinds[-1]) == {(False, True)}


# Causes and shop


def test_every_cause_has_its_own_hatch(qtbot, theme):
    pane = shown(qtbot, BarsPane("Causes", "No trial yet."), 900, 300)
    causes = ["scale", "shrinkage", "outset", "lost motion", "unexplained"]
    bars = [Bar(f"part {n}", [0.1] * 5, 0.5, 0.05, "") for n in range(3)]
    pane.show_data(BarsData(causes, bars, "summary", "note"))
    greys, y = grey(pane.sheet), pane.points()[1][0].y()
    right = pane.points()[1][0].x()
    middle = pane.sheet.width() / 2
    zero = next(x for x in range(int(middle / 4), right) if abs(greys[y, x] - greys[y, 2]) > CHANGE and x > 60)
    edges = np.linspace(zero, right, 6).round().astype(int)
    swatches = []
    for left, end in itertools.pairwise(edges):
        part = greys[y - 7 : y - 1, left + 4 : left + 16]  # above the line of the uncertainty
        assert part.shape == (6, 12) and end - left > 24
        swatches.append(np.abs(part - greys[2, 2]) > CHANGE)
    for one, other in itertools.combinations(swatches, 2):
        assert np.count_nonzero(one != other) >= 8


def share(name, island=0, *, by_prior=False, picked=False):
    return Share(name, 0.1, 0.05, 0.0, 0.2, by_prior, island, picked, name)


def test_islands_are_told_by_their_lines_and_the_prior_by_its_ring(qtbot, theme):
    pane = shown(qtbot, ShopPane("Shop", "No print yet."), 700, 300)
    sides = [[share(f"{side} {n}", n, by_prior=n == 3) for n in range(4)] for side in "ML"]
    pane.show_data(ShopData(*sides, [(n, n, 3) for n in range(4)], "machines", "lots", "summary", "note"))
    greys = grey(pane.sheet)
    heights = [place.y() for place, _ in pane.points()[:4]]
    middle = slice(pane.sheet.width() // 2 - 50, pane.sheet.width() // 2 + 50)
    ground = greys[heights[0] - 10, pane.sheet.width() // 2]
    drawn = [np.abs(greys[y, middle] - ground) > CHANGE for y in heights]
    assert drawn[0].all()  # solid
    runs = [tuple(len(list(run)) for on, run in itertools.groupby(line) if on)[1:-1] for line in drawn[1:]]
    longest, shortest = [max(run) for run in runs], [min(run) for run in runs]
    dashes, dots, both = range(3)
    assert longest[dots] < shortest[dashes] and longest[both] > 2 * shortest[both]
    full, hollow = (greys[place.y() - 2, place.x() - 1] for place, _ in (pane.points()[0], pane.points()[3]))
    assert abs(full - hollow) > CHANGE


# Axes and paths


def test_the_two_diagonals_are_two_kinds_of_line(qtbot, theme):
    pane = shown(qtbot, SkewPane("Axes"))
    pane.show_skew(SkewData(angle_rad=0.0, pillars=False, diagonals=("1", "2")))
    greys, corners = grey(pane.sheet), pane._corners(pane.sheet.size())
    solid, broken = (
        faintest(greys, start + (end - start) * 0.3, start + (end - start) * 0.46)
        for start, end in ((corners[0], corners[2]), (corners[3], corners[1]))
    )
    assert solid > 0.6 and broken < 0.4


def test_travels_are_dashed_and_beads_are_not(qtbot, theme):
    pane = shown(qtbot, ToolpathPane("Path"))
    bead = PathBead(2.0, 0.2, 2.0, 0.15)
    strokes = [bead_stroke([(100, y), (120, y)], 0.2, bead, 40.0, part) for part, y in ((1, 100.0), (2, 115.0))]
    parts = (Part(tr("a"), (102.0, 100.0)), Part(tr("b"), (102.0, 115.0)))
    pane.show_path(Toolpath(tr("Two"), parts, lay(strokes, Laying(100.0, 8.0), 10.0), 1.75), Bed())
    pane.travels.click()
    greys, size = grey(pane.sheet), pane.sheet.size()
    travel = [pane.sight.at(size, *at) for at in ((115.0, 103.75), (106.0, 110.5))]
    bead = [pane.sight.at(size, *at) for at in ((106.0, 100.0), (118.0, 100.0))]
    assert faintest(greys, *travel) < 0.4 and faintest(greys, *bead) > 0.6


# What is no picture


def test_the_page_in_view_is_marked_by_a_bar_at_its_edge(qtbot, theme):
    rail = Rail()
    qtbot.addWidget(rail)
    rail.resize(rail.width(), 700)
    rail.show()
    rail.mark("drive")
    QApplication.processEvents()
    bars = {}
    for key, button in rail.pages.items():
        if button.isVisible():
            greys = grey(button)
            row = greys[greys.shape[0] // 2]
            bars[key] = abs(row[1] - row[8]) > CHANGE
    assert len(bars) > 1 and [key for key, bar in bars.items() if bar] == ["drive"]


def test_levels_and_tones_have_signs_of_their_own(qtbot):
    line = NoticeLine()
    qtbot.addWidget(line)
    texts = []
    for level in ("info", "good", "warning", "error"):
        line.say("So it is.", level)
        texts.append(line.label.text())
    assert len(set(texts)) == len(texts) and len(set(TONE_SIGNS.values())) == len(TONE_SIGNS)
