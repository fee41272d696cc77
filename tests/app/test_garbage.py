import gc
import threading

import pytest
from PySide6.QtCore import QObject, Qt
from PySide6.QtWidgets import QLineEdit

from app.garbage import GarbageCollector, collect_what_is_due


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
