"""What a page asks of the database, and what it draws, does not grow with the number of machines, lots and trials."""

from datetime import UTC, datetime, timedelta

import numpy as np
import pytest

from app.pages.bench.chartlines import event_marks
from app.pages.bench.instruments import InstrumentsPage
from app.pages.bench.wearview import find_wear
from app.pages.part_size.promise_pieces import Wanted, pieces
from app.pages.shop.boardreader import read_board
from app.pages.shop.logbook import LogbookPage
from app.pages.shop.logmodel import LogModel
from app.pages.shop.walk import WalkPage
from app.theme import LIGHT
from app.widgets.plotdata import EventMark, PlotData, PointSeries
from app.widgets.plotsheet import NAMED_EVENTS, Frame, Shown, lay_sheet
from core.errors import InputError
from core.guidance.charted import main_quantities
from core.guidance.drift import changes_of_owner, judge_drift
from core.guidance.logentries import log_entries
from core.quantity import Estimate
from core.records.rows import Instrument, Lot, Machine, SeriesPoint, Trial
from tests.app.atpage import show_page
from tests.statements import reading, sent

NOON = datetime(2026, 3, 2, 12, tzinfo=UTC)
BELTS = {axis: {"kind": "belt", "pitch_mm": 2.0, "teeth": 20} for axis in "xyz"}


@pytest.fixture
def shop(context, store):
    """A machine, a lot and an instrument, all picked."""
    context.select_machine(store.add_machine(Machine("Bramble", drives=BELTS)).id)
    context.select_lot(store.add_lot(Lot("Slate 7", "PETG")).id)
    context.select_instrument(store.add_instrument(Instrument("Caliper 2")).id)
    return context


def keep(store, count, subject="sizeerror", name="scale_x", **place):
    estimates = (Estimate(name, 0.001, 0.0002, 9.0, "1"),)
    return [store.keep(Trial(subject, estimates=estimates, **place)) for _ in range(count)]


def count_of(work):
    """Do it twice, for the first time prepares statements, and return how many the second sent."""
    work()
    with sent() as statements:
        work()
    return len(statements)


def test_the_board_reads_as_often_for_twenty_machines_as_for_one(shop, store):
    keep(store, 9, name="wall_outset", machine_id=1)
    before = count_of(lambda: read_board(shop))
    for number in range(2, 21):
        store.add_machine(Machine(f"Bay {number}", drives=BELTS))
        keep(store, 9, name="wall_outset", machine_id=number)
    assert count_of(lambda: read_board(shop)) == before
    board = read_board(shop)
    with sent() as statements:
        drifts = {board.drift(machine) for machine in board.machines}
    assert statements == [] and drifts == {("quiet", False)}


def test_a_promise_reads_as_often_for_thirty_pieces_as_for_two(shop, store):
    wanted = Wanted(1, 1, None, "m")
    keep(store, 2, machine_id=1, lot_id=1)
    before = count_of(lambda: pieces(shop, wanted, bool))
    kept = keep(store, 28, machine_id=1, lot_id=1)
    assert count_of(lambda: pieces(shop, wanted, bool)) == before
    assert [trial.id for trial in pieces(shop, wanted, bool).trials][2:] == [trial.id for trial in kept]


def test_wear_reads_as_often_for_twenty_lots_as_for_one(shop, store):
    quantity = next(one for one in main_quantities() if one.name == "scale_x")

    def look():
        drift = judge_drift(quantity, store.series("scale_x"))
        with pytest.raises(InputError):  # nothing is weighed
            find_wear(shop, drift)

    keep(store, 3, machine_id=1, lot_id=1)
    before = count_of(look)
    for number in range(2, 21):
        keep(store, 3, machine_id=1, lot_id=store.add_lot(Lot(f"Slate {number}0", "PETG")).id)
    assert count_of(look) == before


@pytest.mark.parametrize(("kind", "table"), [(WalkPage, "event"), (LogbookPage, "setting")])
def test_a_page_reads_once_when_it_is_shown_and_once_when_another_machine_is_picked(qtbot, shop, store, kind, table):
    other = store.add_machine(Machine("Otter", drives=BELTS))
    page = kind(shop)
    with sent() as at_first:
        show_page(qtbot, page)
    with sent() as once:
        page.recompute()
    with sent() as picked:
        shop.select_machine(other.id)
    counts = [len(reading(statements, table)) for statements in (at_first, once, picked)]
    assert len(set(counts)) == 1 and counts[0] > 0


def test_a_check_is_found_among_hundreds_of_others_and_a_good_instrument_reads_no_results(qtbot, shop, store):
    """However many checks of others were kept since."""
    other = store.add_instrument(Instrument("Caliper 3"))
    good, bad = ({"conformity": word} for word in ("conforming", "not_conforming"))
    first = store.keep(Trial("instrument", instrument_id=1, verdict=(good,)))
    for _ in range(201):
        store.keep(Trial("instrument", instrument_id=other.id, verdict=(good,)))
    keep(store, 3, machine_id=1, instrument_id=1)
    page = InstrumentsPage(shop)
    show_page(qtbot, page)
    assert [trial.id for trial in page.picker.kept] == [first.id]
    with sent() as statements:
        page.recompute()
        page._show_doubt()
    assert len([one for one in statements if "trial.instrument_id =" in one]) == 1  # the checks; no results
    store.keep(Trial("instrument", instrument_id=1, verdict=(bad,)))
    page._show_doubt()
    assert page.picture.doubt.table.rowCount() == 3


def test_a_key_in_the_find_box_of_the_log_makes_no_text_anew(monkeypatch, shop, store):
    from app.pages.shop import logmodel

    trials = keep(store, 5, machine_id=1, lot_id=1)
    made, shown = [], logmodel.shown
    monkeypatch.setattr(logmodel, "shown", lambda text: made.append(text) or shown(text))
    model = LogModel()
    model.show_entries(log_entries(trials, (), (), {"sizeerror": "Size error"}), {1: "Bramble"}, {1: "Slate 7"})
    for text in ("s", "si", "siz"):
        model.choose(text, "")
        assert len(model.entries) == 5
    assert len(made) == 5
    model.choose("bramble, slate", "")
    assert len(model.entries) == 5
    model.show_entries((), {}, {})
    model.choose("s", "")
    assert model.entries == []


def points(count):
    return [
        SeriesPoint(n + 1, NOON + timedelta(hours=n), 0.001 * (n % 3), 0.0002, 9.0, "1", n % 7, n % 5)
        for n in range(count)
    ]


def test_of_thousands_of_events_only_those_are_named_that_have_room():
    quantity = next(one for one in main_quantities() if one.name == "scale_x")
    series = points(900)
    changed = changes_of_owner(quantity, series, {n: f"lot {n}" for n in range(7)}, {})
    assert len(changed) > 1000
    marks = event_marks(judge_drift(quantity, series, changed), in_order=True)
    assert len(marks) == len(changed)
    named = [number for number, mark in enumerate(marks) if mark.name]
    assert named == list(range(len(marks) - NAMED_EVENTS, len(marks)))


def test_of_thousands_of_events_no_more_are_drawn_than_there_are_columns():
    x = np.linspace(0.0, 1000.0, 30_000)
    data = PlotData(
        (PointSeries("", np.array([0.0, 1000.0]), np.array([0.0, 1.0])),),
        events=tuple(EventMark(float(place), "") for place in x),
    )
    frame = Frame((0.0, 1000.0), (0.0, 1.0), 300.0, 200.0)
    path = lay_sheet(data, frame, Shown(), LIGHT, np.array([0.0, 1.0])).strokes["events"].path
    assert 2 * 290 < path.elementCount() <= 2 * 303
    near = Frame((500.0, 501.0), (0.0, 1.0), 300.0, 200.0)  # zoomed in: those in sight stay apart
    path = lay_sheet(data, near, Shown(), LIGHT, np.array([0.0, 1.0])).strokes["events"].path
    assert path.elementCount() == 2 * int(np.sum((x >= 500.0) & (x <= 501.0)))
