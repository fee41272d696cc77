"""What the tests of pages share."""

import pytest
from PySide6.QtCore import QCoreApplication, QEvent


@pytest.fixture
def by_hand(monkeypatch):
    """Keys count as typed by a person however fast a test sends them: a gauge's burst is told by its speed alone."""
    monkeypatch.setattr("app.widgets.entryline.GAUGE_GAP_MS", 0)


@pytest.fixture(autouse=True)
def _closed_windows_are_gone():
    """Windows closed by a test are deleted with it: thousands of them left over make every later test slower."""
    yield
    if QCoreApplication.instance() is not None:
        QCoreApplication.sendPostedEvents(None, QEvent.Type.DeferredDelete)
