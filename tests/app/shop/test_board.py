"""The page *Board*: all machines at a glance, read as a person reads them."""

from __future__ import annotations

import threading
import time
from dataclasses import replace
from datetime import UTC, datetime

import pytest
from PySide6.QtCore import Qt

from app import waitrow
from app.context import Context
from app.pages.shop import boardwork
from app.pages.shop.board import BoardPage
from app.pages.shop.boardmodel import DOUBT, NEXT, STALE, cell_text
from app.pages.shop.boardreader import read_board
from app.theme import tokens
from core.errors import StoreError
from core.guidance.walk import State
from core.quantity import Estimate
from core.records.rows import Event, Lot, Machine, SeriesPoint, Trial
from core.records.store import open_store

DRIVES = {axis: {"kind": "belt", "pitch_mm": 2.0, "teeth": 20} for axis in "xyz"}


def reversal(machine_id, x_mm=0.012):
    names = ("reversal_x", "reversal_y")
    return Trial("reversal", machine_id, estimates=tuple(Estimate(name, x_mm, 0.004, 9.0, "mm") for name in names))


@pytest.fixture
def shop(context, store):
    """Bay 1 has a crash behind it, Bay 2 a lot, Bay 10 nothing."""
    for name in ("Bay 10", "Bay 2", "Bay 1"):
        store.add_machine(Machine(name, drives=DRIVES))
    store.add_lot(Lot("Slate 7", "PETG"))
    store.keep(reversal(3))
    store.log_event(Event("crash", 3))
    store.keep(Trial("wall", 2, 1, estimates=(Estimate("flow_ratio_wall", 0.97, 0.006, 9.0, "1"),)))
    return context


@pytest.fixture
def page(qtbot, shop):
    page = BoardPage(shop)
    qtbot.addWidget(page)
    page.resize(1000, 600)
    page.show()
    qtbot.waitUntil(page.is_complete)
    return page


def test_what_is_to_be_done_next_does_not_look_like_a_link(page):
    row = page.model.rows[0]
    row.line = replace(row.line, todo_state=State.STALE)
    model = page.sight
    colours = {model.index(row, NEXT).data()[0]: model.index(row, NEXT).data(Qt.ItemDataRole.ForegroundRole)
               for row in range(model.rowCount())}  # fmt: skip
    assert set(colours) == {"▶", "↻"} and colours["▶"] is None
    assert colours["↻"].name() == tokens().warning


def test_a_cell_of_several_steps_says_first_how_many(page):
    row = page.model.rows[0]
    two = "2: Squareness and bed plane, Filament lot"
    for steps, says in ((("square", "spool"), two), (("spool",), "Filament lot"), ((), "")):
        row.line = replace(row.line, stale=steps, in_doubt=steps)
        assert {cell_text(row, column) for column in (STALE, DOUBT)} == {says}


def lines(page):
    """What stands in each row, from the left to the right."""
    model = page.sight
    return [
        [model.index(row, column).data() or "" for column in range(model.columnCount())]
        for row in range(model.rowCount())
    ]


def names(page):
    return [line[0] for line in lines(page)]


def test_an_empty_shop_says_how_to_begin_until_there_is_a_machine(qtbot, context, store):
    page = BoardPage(context)
    qtbot.addWidget(page)
    page.show()
    assert page.start.isVisible() and not page.table.isVisible() and not page.finder.isVisible()
    store.add_machine(Machine("Bay 1"))
    context.machines_changed.emit()
    assert not page.start.isVisible() and page.table.isVisible() and page.finder.isVisible()
    assert page.count.text() == "Machines: 1"


def test_all_machines_stand_in_order_with_what_they_want(page):
    assert page.count.text() == "Machines: 3"
    assert lines(page) == [
        ["Bay 1", "", "▶ Mechanical health", "Reversal error", "", "", "", ""],
        ["Bay 2", "Slate 7", "▶ Mechanical health", "", "", "", "", ""],
        ["Bay 10", "", "▶ Mechanical health", "", "", "", "", ""],
    ]


def test_what_is_to_be_done_is_read_whole_where_there_is_room(qtbot, page):
    table = page.table
    heads = table.horizontalHeader()
    assert heads.sectionSize(NEXT) >= table.sizeHintForColumn(NEXT)
    page.resize(2 * page.minimumSizeHint().width() + 600, 600)
    assert all(heads.sectionSize(column) >= table.sizeHintForColumn(column) for column in (NEXT, STALE, DOUBT))
    assert heads.length() == table.viewport().width()


def test_what_is_to_be_done_goes_on_in_a_second_line_in_a_narrow_window(qtbot, page):
    table, high = page.table, page.table.rowHeight(0)
    assert not table.wordWrap()
    table.setFixedWidth(560)
    qtbot.waitUntil(table.wordWrap)
    measure, room = table.fontMetrics(), table.columnWidth(NEXT) - 8
    texts = [table.model().index(row, NEXT).data() for row in range(table.model().rowCount())]
    assert max(measure.horizontalAdvance(text) for text in texts) > room
    for text in texts:
        assert measure.boundingRect(0, 0, room, 999, Qt.TextFlag.TextWordWrap, text).height() <= table.rowHeight(0)
    assert table.rowHeight(0) == high + measure.lineSpacing()
    table.setFixedWidth(980)
    qtbot.waitUntil(lambda: table.rowHeight(0) == high and not table.wordWrap())


def test_it_is_found_by_a_part_of_its_name_or_lot(qtbot, page):
    qtbot.keyClicks(page.finder, "slate")
    assert names(page) == ["Bay 2"]
    assert page.count.text() == "1 of 3 machines"
    page.finder.clear()
    assert len(names(page)) == 3


@pytest.mark.parametrize(
    ("wanted", "expected"),
    [("attention", ["Bay 1"]), ("stale", ["Bay 1"]), ("doubt", []), ("setup", ["Bay 1", "Bay 2", "Bay 10"]),
     ("verified", [])],
)  # fmt: skip
def test_it_shows_those_that_want_something(page, wanted, expected):
    page.wanted.set_value(wanted)
    page.wanted.changed.emit()
    assert names(page) == expected


def test_it_sorts_by_any_column(page):
    page.table.sortByColumn(0, Qt.SortOrder.DescendingOrder)
    assert names(page) == ["Bay 10", "Bay 2", "Bay 1"]
    page.table.sortByColumn(3, Qt.SortOrder.AscendingOrder)
    assert names(page)[0] == "Bay 1"
    page.table.sortByColumn(2, Qt.SortOrder.AscendingOrder)
    assert len(names(page)) == 3


def test_enter_opens_the_walk_of_a_machine_with_its_lot(qtbot, page, shop):
    asked = []
    shop.page_asked.connect(asked.append)
    page.table.setFocus()
    page.table.selectRow(1)
    page.table.activated.emit(page.sight.index(1, 0))
    assert (asked, shop.machine.name, shop.lot.name) == (["walk"], "Bay 2", "Slate 7")


def test_a_button_opens_the_walk_of_the_chosen_machine(qtbot, page, shop):
    said = []
    shop.notice.connect(lambda text, level: said.append((level, text)))
    qtbot.mouseClick(page.open_button, Qt.MouseButton.LeftButton)
    assert said == [("warning", "Choose a machine in the table first.")]
    page.table.selectRow(2)
    qtbot.mouseClick(page.open_button, Qt.MouseButton.LeftButton)
    assert shop.machine.name == "Bay 10"


def test_what_happens_shows_at_once(qtbot, page, shop, store):
    kept = store.keep(reversal(3))
    shop.kept.emit(kept)
    qtbot.waitUntil(page.is_complete)
    assert lines(page)[0][3] == ""
    shop.logged.emit(store.log_event(Event("room")))
    qtbot.waitUntil(page.is_complete)
    assert lines(page)[0][4] == ""


def test_a_drift_is_signalled_and_the_rest_is_quiet(qtbot, page, shop, store):
    for step in range(24):
        store.keep(reversal(2, 0.012 + 0.001 * (step % 3)))
        store.keep(reversal(1, 0.012 + 0.001 * (step % 3)))
    store.keep(reversal(1, 0.050))
    page.recompute()
    qtbot.waitUntil(page.is_complete)
    drifts = {line[0]: line[7] for line in lines(page)}
    assert drifts == {"Bay 1": "", "Bay 2": "quiet", "Bay 10": "! reversal error X moved"}
    page.wanted.set_value("attention")
    page.wanted.changed.emit()
    assert "Bay 10" in names(page)


def test_a_promise_is_shown_with_its_uncertainty(qtbot, page, shop, store):
    names_kept = Estimate("promise_outside_100", 0.2, 0.01, 20.0, "mm")
    store.keep(Trial("promise", 2, 1, estimates=(names_kept,)))
    page.recompute()
    qtbot.waitUntil(page.is_complete)
    assert "± " in {line[0]: line[6] for line in lines(page)}["Bay 2"]


def test_it_rests_while_nobody_looks_and_says_what_fails(qtbot, page, store, monkeypatch, shop):
    said = []
    shop.notice.connect(lambda text, level: said.append((level, text)))
    page.recompute()
    page.hide()
    assert page.is_complete()

    def fail(*_arguments, **_more):
        raise StoreError("The server is away.")

    monkeypatch.setattr(store, "newest_kept", fail)
    page.show()
    assert said[-1] == ("error", "The server is away.")
    page.keep()
    assert "nothing to keep" in said[-1][1]


def test_a_store_that_fails_half_way_is_said(qtbot, page, store, monkeypatch, shop):
    said = []
    shop.notice.connect(lambda text, level: said.append((level, text)))
    store.keep(Trial("promise", 2, 1, estimates=(Estimate("promise_x", 0.2, 0.01, 20.0, "mm"),)))

    def fail(*_arguments, **_more):
        raise StoreError("The server is away.")

    monkeypatch.setattr(store, "trial", fail)
    page.recompute()
    qtbot.waitUntil(lambda: bool(said))
    assert said[-1] == ("error", "The server is away.")


@pytest.fixture
def large(qapp, tmp_path, monkeypatch):
    """A shop that counts as large, in a file: a worker reads it too."""
    monkeypatch.setattr(waitrow, "MANY_TRIALS", 1)
    store = open_store(tmp_path / "shop.sqlite")
    for number in range(1, 4):
        store.add_machine(Machine(f"Bay {number}", drives=DRIVES))
        store.keep(reversal(number))
    context = Context(store)
    yield context
    context.closing.emit()
    store.close()


@pytest.fixture
def gate(monkeypatch):
    """Holds the reading back until it is opened, or stopped."""
    opened = threading.Event()

    def held(context, step):
        while not opened.is_set():
            step(0.5)
            time.sleep(0.002)
        return read_board(context, step)

    monkeypatch.setattr(boardwork, "read_board", held)
    return opened


def on_board(qtbot, context):
    page = BoardPage(context)
    qtbot.addWidget(page)
    page.resize(1000, 600)
    page.show()
    return page


def test_a_large_shop_is_read_beside_the_window_with_a_bar(qtbot, large, gate):
    page = on_board(qtbot, large)
    assert page.work.bar.isVisible() and names(page) == []
    qtbot.waitUntil(lambda: page.work.bar.bar.value() > 0)
    gate.set()
    qtbot.waitUntil(page.is_complete)
    assert names(page) == ["Bay 1", "Bay 2", "Bay 3"] and "…" not in str(lines(page))
    assert not page.work.bar.isVisible()


def test_its_reading_is_stopped_and_begun_anew_when_the_page_is_seen_again(qtbot, large, gate):
    said = []
    large.notice.connect(lambda text, level: said.append((level, text)))
    page = on_board(qtbot, large)
    qtbot.mouseClick(page.work.bar.stop, Qt.MouseButton.LeftButton)
    assert page.is_complete() and not page.work.bar.isVisible() and names(page) == []
    assert said[-1] == ("warning", "Stopped. Go to another page and come back, and it is read anew.")
    gate.set()
    page.hide()
    page.show()
    qtbot.waitUntil(page.is_complete)
    assert len(names(page)) == 3


def test_what_was_in_sight_stays_until_it_is_read_anew_and_nothing_comes_out_of_sight(qtbot, large, gate):
    gate.set()
    page = on_board(qtbot, large)
    qtbot.waitUntil(page.is_complete)
    gate.clear()
    large.store.add_machine(Machine("Bay 4"))
    large.machines_changed.emit()
    assert len(names(page)) == 3 and page.work.bar.isVisible()
    page.hide()
    gate.set()
    qtbot.waitUntil(lambda: not page.work.bar.job.is_running())
    assert page.is_complete() and len(names(page)) == 3


def test_a_large_shop_that_cannot_be_read_is_said(qtbot, large, monkeypatch):
    said = []
    large.notice.connect(lambda text, level: said.append((level, text)))

    def fail(*_arguments, **_more):
        raise StoreError("The server is away.")

    monkeypatch.setattr(large.store, "newest_kept", fail)
    page = on_board(qtbot, large)
    qtbot.waitUntil(lambda: bool(said))
    assert said == [("error", "The server is away.")] and page.is_complete() and not page.work.bar.isVisible()


def test_a_long_working_out_shows_the_bar_and_stops(qtbot, page, monkeypatch):
    monkeypatch.setattr(boardwork, "_MOMENT_S", 0.0)
    monkeypatch.setattr(boardwork, "_SLICE_S", 1e-6)
    page.work.work_out((number % 3 for number in range(1_000_000)), 1_000_000)
    qtbot.waitUntil(page.work.bar.isVisible)
    assert page.work.bar.bar.value() >= 30
    qtbot.mouseClick(page.work.bar.stop, Qt.MouseButton.LeftButton)
    assert page.is_complete() and not page.work.bar.isVisible()


def test_results_that_no_chart_takes_are_not_called_quiet(shop, context, store):
    machine, *_ = store.machines()
    board = read_board(context)
    at = datetime(2026, 7, 1, tzinfo=UTC)
    points = [SeriesPoint(n, at, 0.1, 0.01, 30.0, "mm", machine.id, None) for n in range(9)]
    board.charted = {machine.id: {"wall_outset": points}}
    assert board.drift(machine) == ("quiet", False)
    points[4] = replace(points[4], unit="1")
    assert board.drift(machine) == ("", False)
