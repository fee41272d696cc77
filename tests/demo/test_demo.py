"""The demo shop: the file is what the command writes, and the program finds every cause that was planted in it."""

from __future__ import annotations

import json
from collections import Counter
from dataclasses import replace
from datetime import UTC, datetime, timedelta
from importlib import import_module
from pathlib import Path

import pytest

from app.context import Context
from app.pages import PAGES
from app.pages.filament.lots import LotsPage
from app.pages.part_size.shop_split import ShopSplitPage
from app.pages.shop.boardreader import read_board
from app.pages.trialpage import TrialPage
from app.widgets.plotpane import PlotPane
from core.guidance.verdict import Setting, setting_words
from core.records.rows import TrialState
from tests.demo.__main__ import SHOP
from tests.demo.causes import CAUSES, GAUGES, LOTS, MACHINES, PERSONS, SUBJECT_OF
from tests.demo.opened import named, open_demo
from tests.demo.script import Entry, shop
from tests.demo.typist import Typist, shop_clock

NOW = datetime(2027, 5, 5, 9, tzinfo=UTC)
FOUND_ELSEWHERE = ("shop_split", "charts", "lots")


@pytest.fixture(scope="module")
def demo(tmp_path_factory):
    store = open_demo(tmp_path_factory.mktemp("demo"), NOW)
    yield store
    store.close()


@pytest.fixture
def demo_context(qapp, demo):
    return Context(demo)


def rows_of(table):
    return json.loads(SHOP.read_text("utf-8"))["rows"][table]


def test_every_reading_in_the_file_is_what_the_simulated_printer_says_today():
    """What pages make of the readings belongs to them; what is typed does not depend on any page."""
    typed = [entry for entry in shop() if entry.rows]
    kept = sorted((row for row in rows_of("trial") if row["readings"].get("raw")), key=lambda row: row["serial"])
    assert [SUBJECT_OF.get(entry.does, entry.does) for entry in typed] == [row["subject"] for row in kept]
    machines, lots = ({row["id"]: row["name"] for row in rows_of(table)} for table in ("machine", "lot"))
    for entry, row in zip(typed, kept, strict=True):
        raw = [text for text in row["readings"]["raw"] if text]
        assert Counter(raw) == Counter(cells["measured_mm"] for cells in entry.rows), entry
        assert entry.does in SUBJECT_OF or machines[row["machine_id"]] == entry.machine
        assert entry.does == "instruments" or lots.get(row["lot_id"], "") == entry.lot
        assert row["author"] == entry.person


def test_what_a_page_makes_of_the_readings_is_what_is_in_the_file(qtbot, store, tmp_path):
    """One trial of all is typed anew: it takes as long as a person looks at it, all of them a minute."""
    loose = next(entry for entry in reversed(shop()) if entry.does == "reversal" and entry.machine == "Birch")
    with shop_clock():
        typist = Typist(store, tmp_path)
        for entry in (Entry(9, "add", "Birch"), Entry(9, "add", instrument="Dial 1"), loose):
            typist.do(entry)
        typist.close()
    (made,) = (store.trial(trial.id) for trial in store.trials())
    filed = [row for row in rows_of("trial") if row["subject"] == "reversal" and row["machine_id"] == _id("Birch")][-1]
    assert [said["setting"] for said in made.verdict] == [said["setting"] for said in filed["verdict"]]
    assert made.kept_at == datetime.fromisoformat(filed["kept_at"])
    values = {row["name"]: row["value"] for row in rows_of("result") if row["trial_id"] == filed["id"]}
    assert {estimate.name: estimate.value for estimate in made.estimates} == pytest.approx(values, rel=1e-6, abs=1e-9)


def _id(machine):
    return next(row["id"] for row in rows_of("machine") if row["name"] == machine)


def test_the_named_rows_in_the_file_are_those_of_the_table_of_causes():
    for table, named_rows in (("machine", MACHINES), ("lot", LOTS), ("instrument", GAUGES)):
        assert {row["name"]: row["note"] for row in rows_of(table)} == {
            name: row.note for name, (row, _) in named_rows.items()
        }
    assert {row["author"] for row in rows_of("trial")} == set(PERSONS)


def test_every_kept_sentence_can_be_read_in_another_language():
    """Kept as a template with its values, not as the text of the day."""
    kept = [(row["id"], says) for row in rows_of("trial") for says in row["conditions"].get("mind", ())]
    kept += [(row["id"], says) for row in rows_of("trial") for advice in row["verdict"]
             for says in advice["said"].values()]  # fmt: skip
    assert len(kept) > 200
    assert [(number, says) for number, says in kept if not isinstance(says, dict)] == []


def test_the_file_is_small_and_marked():
    assert SHOP.stat().st_size < 1_500_000
    assert [row["key"] for row in rows_of("shop_value")] == ["demo"]


def test_what_is_typed_is_the_same_each_time():
    assert shop() == shop()


def test_the_newest_record_is_of_yesterday(demo):
    moments = [trial.kept_at for trial in demo.trials(limit=1000)]
    assert max(moments).date() == NOW.date() - timedelta(days=1)
    assert max(moments) - min(moments) > timedelta(days=120)


@pytest.mark.parametrize(
    "cause", [one for one in CAUSES if one.subject not in FOUND_ELSEWHERE], ids=lambda cause: cause.what
)
def test_a_planted_cause_is_found_by_the_page_it_belongs_to(qtbot, demo_context, demo, cause):
    """The readings of the newest trial are laid before the page once more: what it says is said by today's advice."""
    ids = [cause.machine and named(demo.machines(), cause.machine), cause.lot and named(demo.lots(), cause.lot)]
    of = {"machine_id": ids[0] or None, "lot_id": ids[1] or None}
    instrument = named(demo.instruments(), cause.instrument) if cause.instrument else None
    kept = [trial for trial in demo.trials(cause.page_subject, **of) if trial.state is TrialState.KEPT]
    kept = [trial for trial in kept if instrument in (None, trial.instrument_id)]
    trial = demo.trial(next(one.id for one in kept if cause.axis in (None, one.conditions.get("axis"))))
    demo_context.select_machine(trial.machine_id)
    demo_context.select_lot(trial.lot_id)
    demo_context.select_instrument(trial.instrument_id)
    entry = next(entry for entry in PAGES if entry.key == cause.subject)
    page = getattr(import_module(entry.module), entry.class_name)(demo_context)
    qtbot.addWidget(page)
    page.show()
    page.load_draft(replace(trial, id=None, state=TrialState.OPEN, estimates=(), verdict=(), kept_at=None))
    said = page.record()
    settings = [advice["setting"] for advice in said.verdict]
    assert cause.setting in settings
    assert not set(cause.not_settings) & set(settings)
    assert str(setting_words(cause.setting)) in page.card.body.toPlainText()
    for name, truth in cause.truth.items():
        found = next(estimate for estimate in said.estimates if estimate.name == name)
        assert abs(found.value - truth) < 3 * found.u, (name, found)


def test_the_lot_that_shrinks_is_told_from_the_machines(qtbot, demo_context, demo):
    cause = next(one for one in CAUSES if one.subject == "shop_split")
    demo_context.select_machine(named(demo.machines(), cause.machine))
    demo_context.select_lot(named(demo.lots(), cause.lot))
    page = ShopSplitPage(demo_context)
    qtbot.addWidget(page)
    page.show()
    said = page.card.body.toPlainText()
    assert str(setting_words(Setting.SHRINK_ALLOWANCE)) in said
    assert str(setting_words(Setting.AXIS_SCALE)) not in said
    allowance = float(said.partition("this filament ")[2].split()[0])
    assert abs(allowance - 1 / (1 - LOTS[cause.lot][1].shrink)) < 0.0012


def test_the_lot_that_was_wet_is_told_on_its_page(qtbot, demo_context, demo):
    cause = next(one for one in CAUSES if one.subject == "lots")
    lot_id = named(demo.lots(), cause.lot)
    kept = demo.trial(demo.trials(cause.page_subject, lot_id=lot_id)[0].id)
    demo_context.select_machine(None)
    demo_context.select_lot(lot_id)
    page = LotsPage(demo_context)
    qtbot.addWidget(page)
    page.show()
    assert "It was wet." in page.card.body.toPlainText()
    page.pane.set_texts(dict(zip(kept.readings["field"], kept.readings["raw"], strict=True)))
    page.recompute()
    assert [advice.setting for advice in page.result.advice] == [cause.setting]
    loss = next(estimate for estimate in page.result.estimates() if estimate.name == "drying_loss")
    assert abs(loss.value - cause.truth["drying_loss"]) < 3 * loss.u


def test_the_board_shows_the_drift_the_doubt_and_the_verified_machine(demo_context, demo):
    board = read_board(demo_context)
    machines = {machine.name: machine for machine in board.machines}
    drifts = {name: board.drift(machine) for name, machine in machines.items()}
    assert [name for name, (_, signal) in drifts.items() if signal] == ["Elm"]
    assert "reversal error X moved" in drifts["Elm"][0]
    lines = {name: board.line(machine) for name, machine in machines.items()}
    assert lines["Amsel"].verified
    assert "size" in lines["Birch"].in_doubt  # read with the caliper that was found bad afterwards
    assert board.promise(demo_context, lines["Amsel"]).startswith("0.1")


TRIAL_PAGES = [
    entry for entry in PAGES if issubclass(getattr(import_module(entry.module), entry.class_name), TrialPage)
]


@pytest.mark.parametrize("entry", TRIAL_PAGES, ids=lambda entry: entry.key)
def test_whoever_opens_the_demo_shop_sees_readings_and_a_verdict_on_every_page(qtbot, demo_context, entry):
    demo_context.resume()
    page = entry.build(demo_context)
    qtbot.addWidget(page)
    page.show()
    kept = page.kept_trial
    assert kept is not None and kept.verdict
    assert kept.lot_id in (None, demo_context.lot_id)
    for advice in kept.verdict:
        assert str(setting_words(Setting(advice["setting"]))) in page.card.body.toPlainText()
    if isinstance(page.picture, PlotPane):
        assert page.picture.data.point_count > 0


def test_no_page_is_left_without_something_to_see(demo):
    kept = Counter(trial.subject for trial in demo.trials(limit=1000))
    assert set(kept) >= {
        "reversal", "squareness", "bedplane", "diameter", "feed", "wall", "mass", "ceiling", "sizeerror", "ringing",
        "ladder", "prediction", "verification", "promise", "instrument", "top", "speed", "firstlayer", "drying",
    }  # fmt: skip
    assert {event.kind for event in demo.events()} >= {"checked", "nozzle_same", "crash", "moved", "new_spool"}
    assert [trial for trial in demo.trials(limit=1000) if trial.state is TrialState.WITHDRAWN]


def test_it_names_no_folder_of_this_computer():
    text = SHOP.read_text("utf-8")
    assert str(Path.home()) not in text
    assert "/tmp" not in text
