"""`python -m app`: arguments, store, context, window and the one excepthook; the only place that builds all of it.

`python -m app analyse …` evaluates a file of readings without a window and without Qt.
"""

from __future__ import annotations

import gc
import os
import signal
import sys
from dataclasses import dataclass, replace
from functools import partial
from pathlib import Path
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Mapping
    from types import TracebackType

    from PySide6.QtCore import QSettings
    from PySide6.QtWidgets import QApplication

    from app.context import Context
    from app.mainwindow import MainWindow

NO_DISPLAY_CODE = 3
_OLD_PYTHON, _BAD_QT = (3, 12), (6, 12)
_TRANSLATIONS = Path(__file__).resolve().parents[1] / "resources" / "translations"


@dataclass(frozen=True, slots=True)
class Options:
    """What may be said on the command line; None leaves it to the settings of last time."""

    database: str | None = None
    theme: str | None = None
    page: str | None = None
    machine: str | None = None


def main(arguments: list[str] | None = None) -> int:
    """Open the window, or hand `analyse` its arguments; return an exit code."""
    arguments = sys.argv[1:] if arguments is None else arguments
    if arguments[:1] == ["analyse"]:
        from app import analyse

        return analyse.main(arguments[1:])
    options = _parsed(arguments) if arguments else Options()
    if sentence := display_missing(sys.platform, os.environ) or display_dead(sys.platform, os.environ):
        sys.stderr.write(f"{sentence}\n")
        return NO_DISPLAY_CODE
    if sentence := _qt_refused():
        sys.stderr.write(f"{sentence}\n")
        return 1
    return _run(options)


def display_missing(platform: str, environ: Mapping[str, str]) -> str:
    """Return a sentence if there is no screen to open a window on, else an empty text."""
    names = ("DISPLAY", "WAYLAND_DISPLAY", "QT_QPA_PLATFORM")
    if not platform.startswith("linux") or any(environ.get(name) for name in names):
        return ""
    return (
        "There is no display here, so no window can open (neither DISPLAY nor WAYLAND_DISPLAY is set). Start again on "
        "a desktop, or evaluate a file of readings without a window (python -m app analyse), here:\n"
        f"    {sys.executable or 'python'} -m app analyse readings.csv"
    )


def display_dead(platform: str, environ: Mapping[str, str]) -> str:
    """Return a sentence if DISPLAY names a screen that does not answer: Qt would abort; else an empty text."""
    others = environ.get("WAYLAND_DISPLAY") or environ.get("QT_QPA_PLATFORM", "xcb") != "xcb"
    if not platform.startswith("linux") or others:
        return ""
    import ctypes

    try:
        x11 = ctypes.CDLL("libX11.so.6")
    except OSError:
        return ""  # Qt says what is missing
    x11.XOpenDisplay.restype, x11.XCloseDisplay.argtypes = ctypes.c_void_p, (ctypes.c_void_p,)
    screen = x11.XOpenDisplay(environ["DISPLAY"].encode())
    if screen:
        x11.XCloseDisplay(screen)
        return ""
    return (
        f"No display answers at {environ['DISPLAY']} (DISPLAY), so no window can open. Start again on a running "
        "desktop, or evaluate a file of readings without a window:\n"
        f"    {sys.executable or 'python'} -m app analyse readings.csv"
    )


def _parsed(arguments: list[str]) -> Options:
    import argparse

    parser = argparse.ArgumentParser(
        prog="python -m app",
        description="Slipgauge: tells a constant error of printed parts from a proportional one.",
        epilog="Without a window: python -m app analyse readings.csv (see python -m app analyse --help).",
    )
    parser.add_argument("--database", metavar="PATH|URL", help="file or SQLAlchemy URL; default: in your data folder")
    parser.add_argument("--theme", choices=("light", "dark"), help="for this run")
    parser.add_argument("--page", metavar="KEY", help="the page to show first: drive, sizeerror, …")
    parser.add_argument("--machine", metavar="NAME", help="the machine to pick")
    return Options(**vars(parser.parse_args(arguments)))


def _qt_refused() -> str:
    """Refuse the one known bad pair: it drops references to None until the process aborts."""
    from PySide6 import __version__, __version_info__

    if sys.version_info < _OLD_PYTHON and __version_info__[:2] >= _BAD_QT:
        return (
            f"PySide6 {__version__} aborts on Python {sys.version_info[0]}.{sys.version_info[1]}. Install an older one "
            f'with: {sys.executable} -m pip install "PySide6-Essentials<6.12"  or use Python 3.12 or newer.'
        )
    return ""


def _run(options: Options) -> int:
    gc.disable()  # a start leaves no garbage; looking for it among all that is imported takes a tenth of the start
    from PySide6.QtCore import QSettings, QStandardPaths
    from PySide6.QtWidgets import QApplication

    from app.mainwindow import MainWindow
    from app.theme import apply_theme

    app = QApplication(sys.argv[:1])
    app.setApplicationName("slipgauge")
    if app.style().name() != "fusion":  # making the same style once more is slow
        app.setStyle("Fusion")
    _translate(app)
    folder = QStandardPaths.writableLocation(QStandardPaths.StandardLocation.AppConfigLocation)
    settings = QSettings(str(Path(folder) / "window.ini"), QSettings.Format.IniFormat)
    theme = options.theme or str(settings.value("theme", ""))
    apply_theme(app, None if theme not in ("light", "dark") else theme == "dark")
    window = MainWindow(settings)
    sys.excepthook = partial(report_bug, window)
    signal.signal(signal.SIGINT, signal.SIG_DFL)  # Qt's loop runs no Python handler; every finished cell is stored
    begin = partial(_open_store, window, settings, options)
    window.painted.connect(begin)
    window.painted.connect(_collect_garbage_again)  # slots are called in this order
    window.retried.connect(begin)
    window.file_chosen.connect(partial(_open_other_store, window, settings, options))
    window.ready.connect(_load_mathematics)
    window.theme_asked.connect(partial(_change_theme, app, settings))
    window.show()
    return app.exec()


def _translate(app: QApplication) -> None:
    """Load the texts of the user's language where there are any; English is the source."""
    from PySide6.QtCore import QLocale

    if QLocale().language() == QLocale.Language.English:
        return
    from PySide6.QtCore import QLibraryInfo, QTranslator

    places = (
        ("slipgauge", str(_TRANSLATIONS)),
        ("qtbase", QLibraryInfo.path(QLibraryInfo.LibraryPath.TranslationsPath)),
    )
    for name, folder in places:
        translator = QTranslator(app)
        if translator.load(QLocale(), name, "_", folder):
            app.installTranslator(translator)


def _open_store(window: MainWindow, settings: QSettings, options: Options) -> None:
    """Open the database and the first page; if that cannot be done the window says why."""
    from app.context import Context, Level
    from app.pages import PAGES
    from app.words import shown
    from core.errors import StoreError
    from core.records.store import default_database_path, open_store

    try:
        store = open_store(options.database or default_database_path())
        window.closed.connect(store.close)
        context = Context(store, window)
        found = _pick_machine(context, options.machine, str(settings.value("machine", "")))
    except StoreError as error:
        window.refuse(shown(error.message))
        return
    keys = [entry.key for entry in PAGES]
    page = options.page or settings.value("page", "")
    window.open_shop(context, page if page in keys else keys[0])
    if not found:
        text = window.tr("No machine is named “{name}” here; pick one above.").format(name=options.machine)
        context.say(text, Level.WARNING)


def _load_mathematics() -> None:
    """Load beside the running window what the first verdict will need; no Qt in it, so a thread of its own may."""
    from importlib import import_module
    from threading import Thread

    Thread(target=import_module, args=("scipy.special",), daemon=True).start()


def _collect_garbage_again() -> None:
    gc.freeze()  # what is imported stays for good and is not searched
    gc.enable()


def _pick_machine(context: Context, wanted: str | None, last: str) -> bool:
    """Pick the wanted machine, else the last one, else that of the newest trial; False if the wanted one is unknown."""
    machines = {machine.name: machine.id for machine in context.store.machines()}
    if wanted and wanted not in machines:
        return False
    context.resume(machines.get(wanted or last))
    return True


def _open_other_store(window: MainWindow, settings: QSettings, options: Options, path: str) -> None:
    _open_store(window, settings, replace(options, database=path))


def _change_theme(app: QApplication, settings: QSettings, dark: bool) -> None:
    from app.theme import apply_theme

    apply_theme(app, dark)
    settings.setValue("theme", "dark" if dark else "light")


def report_bug(
    window: MainWindow, kind: type[BaseException], error: BaseException, trace: TracebackType | None
) -> None:
    """Say what a store refused in its own words; write a bug's traceback to standard error and say that too."""
    import traceback

    from app.words import shown
    from core.errors import StoreError

    if isinstance(error, StoreError):
        window.say(shown(error.message), "error")
        return
    traceback.print_exception(kind, error, trace)
    name = traceback.format_exception_only(kind, error)[-1].strip()
    text = window.tr("A fault of this program: {name}. The details are on standard error.").format(name=name)
    window.say(text, "error")


if __name__ == "__main__":
    sys.exit(main())
