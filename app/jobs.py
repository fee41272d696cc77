"""Work that takes longer than a blink, in a thread beside the window.

The worker sees only what it was given and a step, which it calls with the part done; it touches no widget. Answer and
progress come back through the event loop, in the thread of the window.
"""

from __future__ import annotations

from collections.abc import Callable
from concurrent.futures import Future, ThreadPoolExecutor
from contextlib import suppress
from threading import Event

from PySide6.QtCore import QCoreApplication, QObject, Qt, Signal, SignalInstance

from core.errors import InputError, StoreError

Step = Callable[[float], None]
_TELL_EVERY_RATIO = 0.01  # of the work


def at_once(_part: float) -> None:
    """Take the step of a work that nobody waits for."""


class StoppedError(Exception):
    """The person stopped the work, or began it anew."""


class Job(QObject):
    """One kind of work; a newer start stops the older one, whose answer is then dropped.

    `failed` carries the expected kinds of failure, StoreError and InputError; any other is a bug and is raised in the
    thread of the window. `ended` follows each of the other three, also where a bug is raised, and `finish`.
    """

    begun = Signal()
    progressed = Signal(float)
    answered = Signal(object)
    failed = Signal(object)
    stopped = Signal()
    ended = Signal()
    _told = Signal(int, float)
    _done = Signal(int, object)

    def __init__(self, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._turn = 0
        self._stop = Event()
        self._is_running = False
        self._threads: dict[ThreadPoolExecutor, Future[object]] = {}
        # Queued always: the worker may be through before `start` returns.
        self._told.connect(self._pass_progress, Qt.ConnectionType.QueuedConnection)
        self._done.connect(self._deliver, Qt.ConnectionType.QueuedConnection)
        application = QCoreApplication.instance()
        assert application is not None  # there is a window, or none would wait for the work
        application.aboutToQuit.connect(self.finish)

    def is_running(self) -> bool:
        """Tell whether an answer is still to come."""
        return self._is_running

    def start(self, work: Callable[[Step], object]) -> None:
        """Begin the work in a thread of its own."""
        self._stop.set()
        self._turn += 1
        turn, self._stop = self._turn, Event()
        stop, last = self._stop, -1.0

        def step(part: float) -> None:
            nonlocal last
            if stop.is_set():
                raise StoppedError
            if part >= last + _TELL_EVERY_RATIO or part == 1.0 != last:
                last = part
                _emit(self._told, turn, part)

        self._threads = {thread: future for thread, future in self._threads.items() if not future.done()}
        thread = ThreadPoolExecutor(1, thread_name_prefix="job")
        future = self._threads[thread] = thread.submit(work, step)
        self._is_running = True
        self.begun.emit()
        future.add_done_callback(lambda done: _emit(self._done, turn, done))
        thread.shutdown(wait=False)  # it ends with its work

    def stop(self) -> None:
        """Stop the work at its next step."""
        self._stop.set()

    def finish(self) -> None:
        """Stop the work and wait for its thread, and those of older works; what they still say is dropped."""
        self.stop()
        self._turn += 1
        was_running, self._is_running = self._is_running, False
        for thread in self._threads:
            thread.shutdown(wait=True)
        if was_running:
            self.ended.emit()

    def _pass_progress(self, turn: int, part: float) -> None:
        if turn == self._turn:
            self.progressed.emit(part)

    def _deliver(self, turn: int, future: Future[object]) -> None:
        if turn != self._turn:
            return
        self._is_running = False
        error = future.exception()
        if error is None:
            self.answered.emit(future.result())
        elif isinstance(error, StoppedError):
            self.stopped.emit()
        elif isinstance(error, StoreError | InputError):
            self.failed.emit(error)
        self.ended.emit()
        if error is not None and not isinstance(error, StoppedError | StoreError | InputError):
            raise error


def _emit(signal: SignalInstance, *values: object) -> None:
    with suppress(RuntimeError):  # the window went meanwhile, and nobody waits any more
        signal.emit(*values)
