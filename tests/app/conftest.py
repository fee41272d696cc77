"""What the tests of pages share."""

import pytest
from PySide6.QtCore import QCoreApplication, QEvent, QSettings


@pytest.fixture
def by_hand(monkeypatch):
    """Keys count as typed by a person however fast a test sends them: a gauge's burst is told by its speed alone."""
    monkeypatch.setattr("app.widgets.entryline.GAUGE_GAP_MS", 0)


@pytest.fixture
def new_window(qtbot, tmp_path):
    """A window at its smallest, with settings of its own; its database is still to be opened."""
    from app.mainwindow import MainWindow

    window = MainWindow(QSettings(str(tmp_path / "window.ini"), QSettings.Format.IniFormat))
    qtbot.addWidget(window)
    window.resize(1000, 700)
    return window


@pytest.fixture(autouse=True)
def _closed_windows_are_gone():
    """Windows closed by a test are deleted with it: thousands of them left over make every later test slower."""
    yield
    if QCoreApplication.instance() is not None:
        QCoreApplication.sendPostedEvents(None, QEvent.Type.DeferredDelete)
