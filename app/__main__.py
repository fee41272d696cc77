"""`python -m app`: arguments, store, context, window and the one excepthook; the only place that builds all of it.

`python -m app analyse …` evaluates a file of readings without a window and without Qt.
"""

from __future__ import annotations

import gc
import os
import signal
import sys
from dataclasses import replace
from functools import partial
from pathlib import Path
from typing import TYPE_CHECKING

from app.options import Options, parsed
from app.screen import display_dead, display_missing, qt_refused

if TYPE_CHECKING:
    from types import TracebackType

    from PySide6.QtCore import QSettings
    from PySide6.QtWidgets import QApplication

    from app.context import Context
    from app.mainwindow import MainWindow

NO_DISPLAY_CODE = 3
_TRANSLATIONS = Path(__file__).resolve().parents[1] / "resources" / "translations"


def main(arguments: list[str] | None = None) -> int:
    """Open the window, or hand `analyse` its arguments; return an exit code."""
    arguments = sys.argv[1:] if arguments is None else arguments
    if arguments[:1] == ["analyse"]:
        from app import analyse

        return analyse.main(arguments[1:])
    options = parsed(arguments) if arguments else Options()
    if sentence := display_missing(sys.platform, os.environ) or display_dead(sys.platform, os.environ):
        sys.stderr.write(f"{sentence}\n")
        return NO_DISPLAY_CODE
    if sentence := qt_refused():
        sys.stderr.write(f"{sentence}\n")
        return 1
    return _run(options)


def _run(options: Options) -> int:
    gc.disable()  # a start leaves no garbage; looking for it among all that is imported takes a tenth of the start
    from PySide6.QtCore import QSettings, QStandardPaths
    from PySide6.QtWidgets import QApplication

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
    signal.signal(signal.SIGINT, signal.SIG_DFL)  # Qt's loop runs no Python handler; every finished cell is stored
    _show_window(app, settings, options)
    return app.exec()


def _show_window(app: QApplication, settings: QSettings, options: Options, said: str = "") -> None:
    """Show a window, which opens its shop once it is painted; `said` stands on its notice line then."""
    from app.mainwindow import MainWindow

    window = MainWindow(settings)
    sys.excepthook = partial(report_bug, window)
    begin = partial(_open_store, window, settings, options)
    window.painted.connect(begin)
    window.painted.connect(_collect_garbage_again)  # slots are called in this order
    window.retried.connect(begin)
    window.file_chosen.connect(partial(_open_other_store, window, settings, options))
    window.copy_chosen.connect(partial(_restore_copy, window, settings, options))
    window.ready.connect(_load_mathematics)
    if said:
        window.ready.connect(partial(window.say, said, "good"))
    window.theme_asked.connect(partial(_change_theme, app, settings))
    window.shop_asked.connect(partial(_replace_window, app, window, settings, options))
    window.show()


def _replace_window(
    app: QApplication, window: MainWindow, settings: QSettings, options: Options, where: str, at_every_start: bool
) -> None:
    """Go on with another database, or with this one as restored: in a new window, for every page begins anew."""
    from PySide6.QtCore import QTimer

    from app.whereabouts import remember_database

    def replace_it() -> None:  # later: the page that asked must not be taken away from under its own call
        said = window.notices.label.accessibleDescription()
        app.setQuitOnLastWindowClosed(False)
        if window.close():  # what is typed is committed first
            if at_every_start:
                remember_database(settings, where)
            _show_window(app, settings, replace(options, database=where, machine=None), said)
            window.deleteLater()
        app.setQuitOnLastWindowClosed(True)

    QTimer.singleShot(0, replace_it)


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
    from app.safekeeping import look_after_soon, send_waiting
    from app.whereabouts import copies_to_offer, where_to_open
    from app.words import shown
    from core.errors import StoreError
    from core.records.store import open_store

    try:
        store = open_store(where_to_open(settings, options.database))
        context = Context(store, window)
        window.closed.connect(context.closing)
        window.closed.connect(store.close)
        said = send_waiting(store)
        found = _pick_machine(context, options.machine, str(settings.value("machine", "")))
    except StoreError as error:
        window.refuse(shown(error.message), copies_to_offer(settings, options.database))
        return
    keys = [entry.key for entry in PAGES]
    page = options.page or settings.value("page", "")
    window.open_shop(context, page if page in keys else keys[0] if context.machine else "drive")
    look_after_soon(context)
    if said:
        context.say(said, Level.WARNING)
    if not found:
        text = window.tr("No machine is named “{name}” here; pick one above.").format(name=options.machine)
        context.say(text, Level.WARNING)


def _restore_copy(window: MainWindow, settings: QSettings, options: Options, file: str) -> None:
    """Put a copy in the place of the database that cannot be opened, and open it."""
    from app.whereabouts import where_to_open
    from app.words import shown
    from core.errors import StoreError
    from core.records.rescue import rescue

    try:
        aside = rescue(where_to_open(settings, options.database), file)
    except StoreError as error:
        window.say(shown(error.message), "error")
        return
    _open_store(window, settings, options)
    text = window.tr("The copy is in place; the file that could not be opened is now {file}.")
    window.say(text.format(file=aside), "good")


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
    from app.whereabouts import remember_database

    remember_database(settings, path)
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
