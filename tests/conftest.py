"""What all tests share: no screen, an in-memory store, and failure on what nobody asked for."""

from __future__ import annotations

import gc
import locale
import os
import threading
import time

os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")

import pytest  # noqa: E402
from PySide6.QtCore import QtMsgType, qInstallMessageHandler  # noqa: E402
from PySide6.QtWidgets import QApplication  # noqa: E402

_LOCALE = locale.setlocale(locale.LC_ALL)  # before any test

# Said by the platform without a screen of window sizes, raising and popups; not ours to mend.
_EXPECTED = "This plugin does not support "


@pytest.fixture(autouse=True, scope="session")
def _no_garbage_collected_in_other_threads():
    """As in the program: a worker's thread must not take widgets apart; see app.garbage."""
    gc.disable()
    yield
    gc.enable()


@pytest.fixture(autouse=True)
def _garbage(_no_garbage_collected_in_other_threads):
    yield
    from app.garbage import collect_what_is_due

    collect_what_is_due()


@pytest.fixture(autouse=True)
def _same_locale():
    """Where lib3mf is the referee it leaves the process in the locale "C", and the next test cannot read a letter."""
    yield
    if locale.setlocale(locale.LC_ALL) != _LOCALE:
        locale.setlocale(locale.LC_ALL, _LOCALE)


@pytest.fixture(scope="session")
def qapp_args():
    return ["slipgauge"]


@pytest.fixture(scope="session")
def qapp(qapp_args):
    """The application in the dress of the window, so that every widget is tested as people see it."""
    from app.theme import apply_theme

    app = QApplication.instance() or QApplication(qapp_args)
    app.setStyle("Fusion")
    apply_theme(app, dark=False)
    yield app
    app.clipboard().clear()  # without a screen Qt lets go of it after Python has ended: what Python copied crashes then


@pytest.fixture(autouse=True, scope="session")
def _own_data_folder(tmp_path_factory):
    """Nothing of a test is written where the person's own data are."""
    before = os.environ.get("XDG_DATA_HOME")
    os.environ["XDG_DATA_HOME"] = str(tmp_path_factory.mktemp("data"))
    yield
    if before is None:
        del os.environ["XDG_DATA_HOME"]
    else:
        os.environ["XDG_DATA_HOME"] = before


@pytest.fixture(autouse=True)
def _no_qt_warnings():
    """A warning of Qt fails the test that caused it."""
    said: list[str] = []

    def hear(kind: QtMsgType, context: object, message: str) -> None:
        if kind != QtMsgType.QtDebugMsg and not message.startswith(_EXPECTED):
            said.append(message)

    before = qInstallMessageHandler(hear)
    yield
    qInstallMessageHandler(before)
    assert not said, f"Qt said: {said}"


@pytest.fixture(autouse=True)
def _nothing_left_behind():
    """A thread left running or a modal dialog left open fails the test."""
    before = set(threading.enumerate())
    yield
    if (app := QApplication.instance()) is not None:
        dialog = app.activeModalWidget()
        assert dialog is None, f"{dialog} was left open"
    for _ in range(20):
        left = set(threading.enumerate()) - before
        if not left:
            break
        time.sleep(0.05)
    assert not left, f"threads left running: {left}"


@pytest.fixture(scope="session")
def server():
    """A PostgreSQL server of this session's own."""
    from tests.server import Server

    running = Server()
    yield running
    running.remove()


@pytest.fixture
def store():
    """An empty database in memory."""
    from core.records.store import open_store

    opened = open_store(":memory:")
    yield opened
    opened.close()


@pytest.fixture
def context(qapp, store):
    """The context of a page, with that store and nothing picked."""
    from app.context import Context

    return Context(store)
