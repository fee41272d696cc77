"""The story of the walkthrough, step by step: what is done on the window, and the places to look at in each picture.

The readings are those of the simulated printer of the demo shop; `resources/help/walkthrough.md` gives them to type.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass

import numpy as np
from PySide6.QtCore import QRect, Qt
from PySide6.QtWidgets import QWidget

from app.pages.shop.board import BoardPage
from core.guidance.pieceplan import bounds_of
from core.pieces.catalogue import plan_set
from tests.demo import printer
from tests.demo.causes import GAUGES, LOTS, MACHINES
from tests.walkthrough.hands import Hands
from tests.walkthrough.pictures import place_of

MACHINE, LOT, CALIPER, BALANCE, PERSON, OWN = "Cobble", "Chalk 12", "Caliper 1", "Balance 1", "Kim", "Heron"
OFFSET_MM = -0.0848  # what the first comb asks for
SMALL_CUBE_STEPS_MM = "79.48"  # 80 x 20 / 20.13: a cube of 20 mm that reads 20.13 mm, "corrected"
FLOW = {"temperature_c": "215", "rate_mm3_s": "5", "density_g_cm3": "1.24", "path_filament_mm": "2000"}
TRAVELS = {"travel_x_mm": "220", "travel_y_mm": "220", "travel_z_mm": "250"}
PARTS = {"pitch_mm": "2", "teeth": "20"}
_SEED = 5


@dataclass(frozen=True, slots=True)
class Step:
    """One step: its name, and what does it; that returns the places to ring in the picture."""

    name: str
    do: Callable[[Hands], list[QRect]]


def readings() -> Mapping[str, tuple[str, ...]]:
    """Return what is read in the story: the comb before and after the change, and the masses."""
    rng = np.random.default_rng(_SEED)
    machine, truth = MACHINES[MACHINE]
    piece, lot, gauge = plan_set("comb_x", bounds_of(machine)), LOTS[LOT][1], GAUGES[CALIPER][1]
    read = {
        "before": printer.size_comb(piece, truth, lot, gauge, rng),
        "masses": printer.masses(lot, rng),
        "after": printer.size_comb(piece, truth, lot, gauge, rng, offset_mm=OFFSET_MM),
    }
    return {name: tuple(row["measured_mm"] for row in rows) for name, rows in read.items()}


def _begin(hands: Hands) -> list[QRect]:
    start = hands.page("board").start
    hands.click(start.steps)
    hands.press(Qt.Key.Key_Escape)
    return _places(hands, start.demo)


def _board(hands: Hands) -> list[QRect]:
    hands.click(hands.page("board").start.demo)
    hands.await_window(lambda window: window.is_demo and window.findChild(BoardPage).is_complete())
    board = hands.page("board")
    model = board.table.model()
    row = next(row for row in range(model.rowCount()) if model.index(row, 0).data() == MACHINE)
    hands.click_row(board.table, row)
    line = board.table.visualRect(model.index(row, 0)).united(board.table.visualRect(model.index(row, 2)))
    return [place_of(hands.window, board.table.viewport(), line), *_places(hands, board.open_button)]


def _walk(hands: Hands) -> list[QRect]:
    hands.click(hands.page("board").open_button)
    pickers = hands.window.pickers
    hands.choose(pickers.lot, LOT)
    hands.choose(pickers.instrument, CALIPER)
    walk = hands.page("walk")
    picked = _around(place_of(hands.window, pickers.lot), place_of(hands.window, pickers.instrument))
    row = walk.steps.currentIndex().row()
    line = walk.steps.visualRect(walk.steps.model().index(row, 0)).united(
        walk.steps.visualRect(walk.steps.model().index(row, 2))
    )
    return [picked, place_of(hands.window, walk.steps.viewport(), line)]


def _drive(hands: Hands) -> list[QRect]:
    hands.enter_page("drive")
    page = hands.page("drive")
    hands.type_into(page.checks.mixup.form.field("found_steps_mm"), SMALL_CUBE_STEPS_MM)
    says = page.checks.mixup.says
    lines = QRect(0, 0, says.width(), says.heightForWidth(says.width()))
    return [*_places(hands, page.card.steps), place_of(hands.window, says, lines)]


def _first_reading(hands: Hands) -> list[QRect]:
    hands.enter_page("sizeerror")
    page = hands.page("sizeerror")
    hands.click(page.form.new_button)
    hands.read_off(page, readings()["before"][:1])
    return _places(hands, page.form.entry.focusProxy(), page.card)


def _all_readings(hands: Hands) -> list[QRect]:
    page = hands.page("sizeerror")
    hands.read_off(page, readings()["before"][1:])
    return _places(hands, page.plot, page.card)


def _flow(hands: Hands) -> list[QRect]:
    hands.choose(hands.window.pickers.instrument, BALANCE)
    hands.enter_page("mass")
    page = hands.page("mass")
    for key, text in FLOW.items():
        hands.type_into(page.form.settings.field(key), text)
    page.form.entry.setFocus()
    hands.read_off(page, readings()["masses"])
    return _places(hands, page.form.entry.focusProxy(), page.card)


def _whose(hands: Hands) -> list[QRect]:
    hands.click(hands.page("mass").card.keep_button)
    hands.type_into(hands.window.notices.author, PERSON, then=Qt.Key.Key_Return)
    hands.choose(hands.window.pickers.instrument, CALIPER)
    hands.enter_page("sizeerror")
    hands.click(hands.page("sizeerror").card.keep_button)
    hands.enter_page("whose")
    page = hands.page("whose")
    return _places(hands, page.picture, page.card)


def _decide(hands: Hands) -> list[QRect]:
    hands.enter_page("logbook")
    page = hands.page("logbook")
    hands.turn(page.tabs, 2)
    pane = page.decision_pane
    hands.reveal(pane.put)
    return _places(hands, pane.form.field("new"), pane.put)


def _lock(hands: Hands) -> list[QRect]:
    hands.click(hands.page("logbook").decision_pane.put)
    hands.enter_page("prediction")
    page = hands.page("prediction")
    return _places(hands, page.offset_mm, page.card.keep_button)


def _again(hands: Hands) -> list[QRect]:
    hands.click(hands.page("prediction").card.keep_button)
    hands.enter_page("sizeerror")
    size = hands.page("sizeerror")
    hands.click(size.form.new_button)
    hands.read_off(size, readings()["after"])
    hands.click(size.card.keep_button)
    hands.enter_page("prediction")
    page = hands.page("prediction")
    return _places(hands, page.plot, page.card)


def _own(hands: Hands) -> list[QRect]:
    hands.click(hands.page("prediction").card.keep_button)
    hands.click(hands.window.rail.demo.home)
    hands.await_window(lambda window: not window.is_demo)
    hands.click(hands.page("board").start.add)
    page = hands.page("drive")
    hands.type_into(page.form.head.field("name"), OWN)
    for key, text in TRAVELS.items():
        hands.type_into(page.form.travel.field(key), text)
    for key, text in PARTS.items():
        hands.type_into(page.form.drives["x"].field(key), text)
    return _places(hands, page.card.steps, page.entry.save_button)


STEPS = (
    Step("begin", _begin),
    Step("board", _board),
    Step("walk", _walk),
    Step("drive", _drive),
    Step("first_reading", _first_reading),
    Step("all_readings", _all_readings),
    Step("flow", _flow),
    Step("whose", _whose),
    Step("decide", _decide),
    Step("lock", _lock),
    Step("again", _again),
    Step("own", _own),
)


def _places(hands: Hands, *widgets: QWidget) -> list[QRect]:
    return [place_of(hands.window, widget) for widget in widgets]


def _around(*places: QRect) -> QRect:
    whole = QRect()
    for place in places:
        whole = whole.united(place)
    return whole
