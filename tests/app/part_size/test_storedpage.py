"""A large shop is read beside the window: it shows how far it is, can be stopped, and what is in sight is kept."""

import time

import pytest

from app import waitrow
from app.context import Context
from app.pages.part_size import linkedpairs
from app.pages.part_size.linkedpairs import LinkedPairs
from app.pages.part_size.promise import PromisePage
from app.pages.part_size.shop_split import ShopSplitPage
from app.widgets.resultcard import ResultCard
from core.errors import InputError, StoreError
from core.records.rows import Lot, Machine
from core.records.store import open_store
from tests.app.atpage import show_page, verdict
from tests.core.guidance.shops import BELT, keep_estimate


@pytest.fixture
def shop(qapp, tmp_path, monkeypatch):
    """A shop that counts as large, in a file: a worker reads it too."""
    monkeypatch.setattr(waitrow, "MANY_TRIALS", 1)
    store = open_store(tmp_path / "shop.sqlite")
    machines = [store.add_machine(Machine(n, drives={"x": BELT, "y": BELT})) for n in ("Ash", "Birch")]
    lots = [store.add_lot(Lot(n, "PETG")) for n in ("Slate", "Sand")]
    for i in range(2):
        for j in range(2):
            value = -0.004 - 0.001 * j + 0.0002 * i
            keep_estimate(store, "scale_x", value, 0.0002, machines[i].id, lots[j].id, scale_y=value)
    context = Context(store)
    context.select_machine(machines[0].id)
    context.select_lot(lots[1].id)
    yield context
    context.closing.emit()
    store.close()


def opened(qtbot, context, kind=ShopSplitPage):
    return show_page(qtbot, kind(context))


def slow(step):
    while True:
        step(0.4)
        time.sleep(0.005)


def test_the_answer_comes_when_it_is_there_and_is_kept_as_it_stands(qtbot, shop):
    page = opened(qtbot, shop)
    assert page.result is None and "being read" in verdict(page)
    with qtbot.waitSignal(page.waiting.job.answered):
        pass
    assert "Shrink allowance" in verdict(page)
    assert not page.waiting.isVisible()
    with qtbot.waitSignal(shop.kept) as kept:
        page.keep()
    assert kept.args[0].subject == "shop_split" and len(kept.args[0].used) == 4


def test_it_shows_how_far_it_is_and_can_be_stopped(qtbot, shop, monkeypatch):
    monkeypatch.setattr(ShopSplitPage, "work", lambda page: slow)
    page = opened(qtbot, shop)
    qtbot.waitUntil(lambda: page.waiting.bar.value() == 40)
    said = []
    shop.notice.connect(lambda text, _level: said.append(text))
    page.keep()
    assert said == ["Still at work; keep it when the result is there."]
    with qtbot.waitSignal(page.waiting.job.stopped):
        page.waiting.stop.click()
    assert "Stopped" in verdict(page) and not page.waiting.isVisible()


def test_nobody_waits_for_it_on_another_page(qtbot, shop, monkeypatch):
    monkeypatch.setattr(ShopSplitPage, "work", lambda page: slow)
    page = opened(qtbot, shop)
    with qtbot.waitSignal(page.waiting.job.stopped):
        page.hide()


@pytest.mark.parametrize("error", [InputError("value", "Nothing to tell apart."), StoreError("The disk is gone.")])
def test_what_fails_there_is_said_here(qtbot, shop, monkeypatch, error):
    def fail(step):
        raise error

    monkeypatch.setattr(ShopSplitPage, "work", lambda page: fail)
    said = []
    shop.notice.connect(lambda text, _level: said.append(text))
    page = opened(qtbot, shop)
    with qtbot.waitSignal(page.waiting.job.failed):
        pass
    assert error.message in [verdict(page), *said]


def test_a_promise_is_read_there_too_and_asks_for_machine_and_lot_first(qtbot, shop):
    page = opened(qtbot, shop, PromisePage)
    with qtbot.waitSignal(page.waiting.job.ended):
        pass
    assert "being read" not in verdict(page)
    shop.select_lot(None)
    assert "Choose a machine and a lot above" in verdict(page)


def pairs(qtbot, shop):
    card = ResultCard()
    qtbot.addWidget(card)
    return LinkedPairs(card, shop)


def test_what_other_trials_say_comes_when_it_is_read_and_is_the_same(qtbot, shop, monkeypatch):
    linked = pairs(qtbot, shop)
    assert linked.now() == {}
    with qtbot.waitSignal(linked.found):
        pass
    found = linked.now()
    assert set(found) == {"x", "y"} and found["x"].prints == 2
    monkeypatch.setattr(waitrow, "MANY_TRIALS", 1000)
    linked.forget()
    assert linked.now() == found
    shop.select_lot(None)
    assert linked.now() == {}


def test_it_is_asked_for_once_and_stopped_when_nobody_waits(qtbot, shop, monkeypatch):
    monkeypatch.setattr(linkedpairs, "linked_pairs", lambda _store, _here, step: slow(step))
    linked = pairs(qtbot, shop)
    assert linked.now() == {} == linked.now()
    job = linked._waiting.job
    qtbot.waitUntil(lambda: linked._waiting.bar.value() == 40)
    assert linked.now() == {} and linked._waiting.job is job and job.is_running()
    with qtbot.waitSignal(job.stopped):
        linked.forget()
