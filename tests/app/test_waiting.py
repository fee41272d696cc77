"""The server goes away while readings are typed: they stay on the screen and in a file here, and are sent later."""

from __future__ import annotations

import pytest
from shiboken6 import delete

from app import waiting
from app.context import Context
from app.pages.part_size.sizeerror import SizeErrorPage
from app.safekeeping import send_waiting
from core.errors import StoreError
from core.records.store import open_store
from core.words import tr
from tests.app.plainpage import PlainPage


@pytest.fixture
def shop_url(server, monkeypatch, tmp_path):
    monkeypatch.setenv("XDG_DATA_HOME", str(tmp_path))
    monkeypatch.setattr(waiting, "AGAIN_AFTER_MS", 20)
    return server.new_database()


@pytest.fixture
def context(qapp, shop_url):
    store = open_store(shop_url)
    context = Context(store)
    yield context
    context.closing.emit()
    store.close()


@pytest.fixture
def page(qtbot, context):
    page = PlainPage(context)
    page.show()
    yield page
    leave(page)


@pytest.fixture
def notices(context):
    said = []
    context.notice.connect(lambda text, level: said.append((text, level)))
    return said


def leave(page) -> None:
    """Close a page; its dying field must not store anything any more."""
    page.field.blockSignals(True)
    page.close()


def type_into(page, text: str) -> bool:
    page.field.setText(text)
    return page.save_draft()


def test_what_was_typed_while_the_server_was_away_is_sent_when_it_is_back(qtbot, server, page, context, notices):
    assert type_into(page, "3")
    server.stop()
    assert not type_into(page, "4")
    assert page.field.text() == "4"
    text, level = notices[-1]
    assert "cannot be reached or refuses" in text
    assert "stays on this page and on this computer, and is sent when the database is back" in text
    assert level == "error"
    (held,) = context.store.spool.waiting()
    assert held.trial.readings["raw"] == ["4"]
    qtbot.wait(150)  # asked in vain several times
    assert context.store.spool.waiting()
    server.start()
    qtbot.waitUntil(lambda: notices[-1][1] == "good", timeout=60_000)
    assert notices[-1][0] == "The database is back; what was typed meanwhile is stored."
    assert context.store.draft(page.subject).readings["raw"] == ["4"]
    assert context.store.spool.waiting() == ()
    page.keep()
    assert notices[-1][0] == "Trial 1 kept."


def test_a_window_closed_meanwhile_sends_it_at_the_next_start(server, page, context, shop_url):
    type_into(page, "3")
    server.stop()
    type_into(page, "4")
    page.close()
    server.start()
    store = open_store(shop_url)
    assert send_waiting(store) == (
        "What was typed while the database was away is stored now, in the open trials of its pages."
    )
    assert store.draft(page.subject).readings["raw"] == ["4"]
    assert send_waiting(store) == ""
    store.close()
    page.unsaved = False


def test_what_another_seat_typed_meanwhile_stays_too(server, page, context, shop_url):
    type_into(page, "3")
    server.stop()
    type_into(page, "4")
    page.close()
    server.start()
    store = open_store(shop_url)
    other = PlainPage(Context(store))
    other.show()
    assert other.field.text() == "3"
    assert type_into(other, "5")
    leave(other)
    said = send_waiting(store)
    assert "waits in " in said
    assert "being typed in another window" in said
    assert (store.draft(page.subject).readings["raw"], len(store.spool.waiting())) == (["5"], 1)
    store.close()
    context.release(page.record())


def test_two_seats_at_one_trial_are_told_and_lose_nothing(page, shop_url, notices):
    type_into(page, "3")
    store = open_store(shop_url)
    other = PlainPage(Context(store))
    other.show()
    assert type_into(other, "5")
    assert not type_into(page, "4")
    assert page.field.text() == "4"
    words = "These readings are being typed in another window too. Close one of the two, then go on."
    assert notices[-1] == (words, "error")
    assert store.draft(page.subject).readings["raw"] == ["5"]
    leave(other)
    store.close()
    page.unsaved = False


def test_a_disk_that_takes_it_neither_is_said(server, page, tmp_path, notices):
    (tmp_path / "slipgauge").write_text("a file where the folder should be")
    server.stop()
    type_into(page, "4")
    server.start()
    assert "stays on this page only; it cannot be held on this computer either" in notices[-1][0]
    assert page.save_draft()


def test_a_database_away_at_the_start_again_is_said(context, monkeypatch):
    def away(_store):
        raise StoreError("The server is away.")

    monkeypatch.setattr("core.records.spool.Spool.send", lambda spool, store: away(store))
    assert send_waiting(context.store) == "The server is away."


def test_a_fault_of_ours_in_the_judging_loses_no_reading(qtbot, context, monkeypatch):
    page = SizeErrorPage(context)
    qtbot.addWidget(page)
    page.show()
    monkeypatch.setattr(page, "compute", lambda readings: 1 / 0)
    with qtbot.captureExceptions() as bugs:
        page.form.model.edit(0, "measured_mm", "127.55")
    assert bugs[0][0] is ZeroDivisionError
    assert context.store.draft("sizeerror").readings["raw"][0] == "127.55"
    page.hide()


def test_a_page_that_is_gone_by_then_sends_nothing(qtbot, store, monkeypatch, tmp_path):
    monkeypatch.setenv("XDG_DATA_HOME", str(tmp_path))
    monkeypatch.setattr(waiting, "AGAIN_AFTER_MS", 20)
    context = Context(store)
    page = PlainPage(context)
    monkeypatch.setattr(store, "save_draft", refuse)
    assert not type_into(page, "3")
    page.field.blockSignals(True)
    delete(page)
    said = []
    context.notice.connect(lambda text, _level: said.append(text))
    qtbot.wait(200)  # asked meanwhile
    assert said == []
    context.closing.emit()


def refuse(*_trial):
    raise StoreError(tr("The disk is full."))
