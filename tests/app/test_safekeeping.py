"""What the program does for the records by itself: the copy of the day, and warnings that nobody asked for."""

from __future__ import annotations

import pytest

from app import safekeeping
from app.context import Context
from app.safekeeping import look_after_soon
from core.records.rows import BackupKind
from core.records.store import open_store


@pytest.fixture
def context(qapp, tmp_path, monkeypatch):
    monkeypatch.setattr(safekeeping, "SOON_MS", 0)
    store = open_store(tmp_path / "shop.sqlite")
    context = Context(store)
    yield context
    context.closing.emit()
    store.close()


@pytest.fixture
def notices(context):
    said = []
    context.notice.connect(lambda text, level: said.append((text, level)))
    return said


def test_a_copy_is_made_each_day_and_nothing_is_said(qtbot, context, notices):
    for _ in range(2):
        keeper = look_after_soon(context)
        with qtbot.waitSignal(keeper.job.ended):
            pass
    (made,) = context.store.storage.backups()
    assert (made.kind, notices) == (BackupKind.DAILY, [])


def test_a_copy_that_cannot_be_made_is_said(qtbot, context, notices, tmp_path):
    (tmp_path / "shop-backups").write_text("a file where the folder should be")
    keeper = look_after_soon(context)
    with qtbot.waitSignal(keeper.job.ended):
        pass
    text, level = notices[0]
    assert text.startswith("The copy of the day could not be made: ")
    assert "shop-backups cannot be opened; check" in text
    assert level == "warning"


def test_a_network_drive_is_said_at_the_start(qtbot, context, notices, monkeypatch):
    monkeypatch.setattr("core.records.storage.network_drive", lambda path: "cifs")
    keeper = look_after_soon(context)
    with qtbot.waitSignal(keeper.job.ended):
        pass
    assert "lies on a network drive (cifs)" in notices[0][0]
