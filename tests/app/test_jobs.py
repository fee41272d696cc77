"""Long work beside the window: its answer, its progress, stopping it, and what goes wrong in it."""

from __future__ import annotations

import threading

import pytest
import shiboken6
from PySide6.QtCore import QCoreApplication, QObject

from app.jobs import Job
from core.errors import InputError, StoreError


@pytest.fixture
def job(qapp):
    job = Job()
    yield job
    job.finish()


@pytest.fixture
def heard(job):
    """What the job said, in order, with the thread in which it arrived."""
    said = []
    for name in ("progressed", "answered", "failed", "stopped", "ended"):
        getattr(job, name).connect(lambda *values, name=name: said.append((name, *values, threading.current_thread())))
    return said


def test_the_answer_arrives_in_the_thread_of_the_window(qtbot, job, heard):
    threads = []

    def work(step):
        threads.append(threading.current_thread())
        for part in (0.0, 0.001, 0.5, 1.0, 1.0):
            step(part)
        return 42

    with qtbot.waitSignal(job.ended):
        job.start(work)
        assert job.is_running()
    here = threading.current_thread()
    assert threads[0] is not here
    assert heard == [("progressed", part, here) for part in (0.0, 0.5, 1.0)] + [("answered", 42, here), ("ended", here)]
    assert not job.is_running()


@pytest.mark.parametrize("error", [StoreError("The disk is full."), InputError("file", "It is no export.")])
def test_an_expected_failure_is_handed_over_whole(qtbot, job, heard, error):
    def work(step):
        raise error

    with qtbot.waitSignal(job.ended):
        job.start(work)
    assert [said[:2] for said in heard[:-1]] == [("failed", error)]


def test_a_bug_is_raised_where_the_excepthook_sees_it(qtbot, job, heard):
    with qtbot.captureExceptions() as bugs:
        with qtbot.waitSignal(job.ended):
            job.start(lambda step: 1 / 0)
        qtbot.waitUntil(lambda: bool(bugs))
    assert bugs[0][0] is ZeroDivisionError
    assert [said[0] for said in heard] == ["ended"]


def work_until_stopped(begun: threading.Event):
    def work(step):
        part = 0.0
        while True:
            begun.set()
            step(part)

    return work


def test_work_is_stopped_at_its_next_step(qtbot, job, heard):
    begun = threading.Event()
    job.start(work_until_stopped(begun))
    assert begun.wait(10)
    with qtbot.waitSignal(job.ended):
        job.stop()
    assert [said[0] for said in heard if said[0] != "progressed"] == ["stopped", "ended"]


def test_a_newer_start_outdates_the_older_answer(qtbot, job, heard):
    go_on, begun = threading.Event(), threading.Event()

    def slow(step):
        begun.set()
        go_on.wait(10)
        return "old"

    job.start(slow)
    assert begun.wait(10)
    with qtbot.waitSignal(job.answered):
        job.start(lambda step: "new")
    go_on.set()
    qtbot.waitUntil(lambda: threading.active_count() == 1 or not any(
        thread.name.startswith("job") for thread in threading.enumerate()))  # fmt: skip
    QCoreApplication.processEvents()
    assert [said[:2] for said in heard if said[0] == "answered"] == [("answered", "new")]


def test_at_the_end_the_thread_is_waited_for(job, heard):
    begun = threading.Event()
    job.start(work_until_stopped(begun))
    assert begun.wait(10)
    job.finish()
    assert not any(thread.name.startswith("job") for thread in threading.enumerate() if thread.is_alive())
    QCoreApplication.processEvents()
    assert "answered" not in [said[0] for said in heard]


def test_an_answer_that_comes_after_the_window_has_gone_is_dropped(qtbot, capfd):
    parent, go_on = QObject(), threading.Event()
    job = Job(parent)
    job.start(lambda step: (go_on.wait(10), step(0.5)))
    (future,) = job._threads.values()
    shiboken6.delete(parent)
    go_on.set()
    assert future.result(10)
    qtbot.wait(10)
    assert "Error" not in capfd.readouterr().err
