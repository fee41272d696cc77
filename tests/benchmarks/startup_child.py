"""One start, timed: prints the system's monotonic clock when the asked-for moment has come, then ends at once.

Run by `python -m tests.benchmarks`. Ours hangs on the window's own signals, so that the program carries no timing.
"""

from __future__ import annotations

import os
import sys
import time


def done() -> None:
    """Print the clock and end without tidying up, which is not part of a start."""
    print(time.monotonic(), flush=True)
    os._exit(0)


def bare(imports: tuple[str, ...], plot: bool) -> None:
    """An empty window, or one with a plot; after its first paint the named modules are imported."""
    from importlib import import_module

    from PySide6.QtCore import QTimer
    from PySide6.QtWidgets import QApplication, QMainWindow, QWidget

    app = QApplication(["bare"])
    if plot:
        from pyqtgraph import PlotWidget as Content
    else:
        Content = QWidget

    class Painted(Content):
        def paintEvent(self, event):
            super().paintEvent(event)
            QTimer.singleShot(0, go_on)

    def go_on() -> None:
        for name in imports:
            import_module(name)
        QTimer.singleShot(0, done)

    window, content = QMainWindow(), Painted()
    window.resize(1280, 800)
    window.setCentralWidget(content)
    if plot:
        content.plot([10.0, 50.0, 90.0], [0.1, 0.2, 0.2], symbol="o")
    window.show()
    app.exec()


def ours(moment: str, arguments: list[str]) -> None:
    """Our window, until it is painted or until its first page takes keys."""
    import app.__main__
    from app import mainwindow

    class Timed(mainwindow.MainWindow):
        def __init__(self, settings):
            super().__init__(settings)
            getattr(self, moment).connect(done if moment == "painted" else self.take_a_key)

        def take_a_key(self) -> None:
            from PySide6.QtCore import QTimer

            QTimer.singleShot(0, self.finish)

        def finish(self) -> None:
            """The page's paint was due before this turn; the keyboard must be on the page."""
            self.repaint()
            field = self.focusWidget()
            assert field is not None and field is not self, "no field has the keyboard"
            done()

    mainwindow.MainWindow = Timed
    sys.exit(app.__main__.main(arguments))


if __name__ == "__main__":
    what, *rest = sys.argv[1:]
    if what in ("bare", "plot"):
        bare(tuple(rest), what == "plot")
    else:
        ours(what, rest)
