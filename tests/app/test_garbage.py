import gc
import threading

import pytest
from PySide6.QtCore import QObject, Qt
from PySide6.QtWidgets import QLineEdit

from app.garbage import GarbageCollector, collect_what_is_due
from app.jobs import Job


@pytest.fixture
def died_in():
    """The threads in which widgets went that only a circle of references held."""
    return []


@pytest.fixture
def dropped(qapp, died_in):
    """A widget nobody can reach any more, which only the collector finds."""
    gc.collect()
    widget = QLineEdit()
    widget.itself = widget
    widget.destroyed.connect(lambda: died_in.append(threading.get_ident()), Qt.ConnectionType.DirectConnection)


def make_garbage():
    for _ in range(20 * gc.get_threshold()[0]):
        circle = []
        circle.append(circle)


def in_another_thread(work):
    thread = threading.Thread(target=work)
    thread.start()
    thread.join()


@pytest.mark.usefixtures("dropped")
def test_a_worker_that_fills_the_memory_takes_no_widget_apart(qtbot, died_in):
    home = QObject()
    GarbageCollector(home)
    in_another_thread(make_garbage)
    assert died_in == []
    qtbot.waitUntil(lambda: bool(collect_what_is_due() or died_in))
    assert died_in == [threading.get_ident()]


@pytest.mark.usefixtures("dropped")
def test_the_collector_runs_by_itself(qtbot, died_in):
    home = QObject()
    GarbageCollector(home)
    make_garbage()
    qtbot.waitUntil(lambda: died_in == [threading.get_ident()])


def test_while_a_work_runs_the_oldest_are_not_searched(qtbot, monkeypatch):
    home, searched, go_on = QObject(), [], threading.Event()
    job = Job(home)
    monkeypatch.setattr(gc, "collect", searched.append)
    monkeypatch.setattr(gc, "get_count", lambda: (0, 99_999, 99_999))
    job.start(lambda step: go_on.wait(5))
    GarbageCollector(home)
    qtbot.waitUntil(lambda: bool(searched))
    assert set(searched) == {1}
    go_on.set()
    qtbot.waitUntil(lambda: searched[-1] == 2)
