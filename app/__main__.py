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

from app.options import OPEN, Options, parsed
from app.screen import display_dead, display_missing, qt_refused

if TYPE_CHECKING:
    from types import TracebackType

    from PySide6.QtCore import QSettings
    from PySide6.QtWidgets import QApplication

    from app.context import Context
    from app.mainwindow import MainWindow
    from core.errors import StoreError
    from core.records.store import Store

NO_DISPLAY_CODE = 3
_PAINT_MS = 200  # more than a page takes to be painted


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

    from app.language import apply_view, chosen_view
    from app.theme import apply_theme, palette_is_dark

    app = QApplication([*sys.argv[:1], "-style", "fusion"])  # setStyle would make two styles, which is slow
    app.setApplicationName("slipgauge")
    folder = QStandardPaths.writableLocation(QStandardPaths.StandardLocation.AppConfigLocation)
    settings = QSettings(str(Path(folder) / "window.ini"), QSettings.Format.IniFormat)
    apply_view(app, chosen_view(settings, options.language, options.lengths))
    theme = options.theme or str(settings.value("theme", ""))
    apply_theme(app, theme == "dark" if theme in ("light", "dark") else palette_is_dark(app))
    signal.signal(signal.SIGINT, signal.SIG_DFL)  # Qt's loop runs no Python handler; every finished cell is stored
    window = _show_window(app, settings, options)
    if not options.theme:
        window.painted.connect(partial(_heed_desktop, app, settings))
    return app.exec()


def _show_window(app: QApplication, settings: QSettings, options: Options, said: str = "") -> MainWindow:
    """Show a window, which opens its shop once it is painted; `said` stands on its notice line then."""
    from app.mainwindow import MainWindow

    window = MainWindow(settings)
    sys.excepthook = partial(report_bug, window)
    begin = partial(_open_store, window, settings, options)
    window.painted.connect(begin)
    window.painted.connect(partial(_collect_garbage_again, window))  # slots are called in this order
    window.retried.connect(begin)
    window.file_chosen.connect(partial(_open_other_store, window, settings, options))
    window.copy_chosen.connect(partial(_restore_copy, window, settings, options))
    window.ready.connect(_load_mathematics_soon)
    if said:
        window.ready.connect(partial(window.say, said, "good"))
    window.theme_asked.connect(partial(_change_theme, app, settings))
    window.painted.connect(partial(_answer_for_other_windows, app, window, settings, options))
    window.show()
    return window


def _answer_for_other_windows(app: QApplication, window: MainWindow, settings: QSettings, options: Options) -> None:
    """Have the window put another one in its place when that is asked for."""
    from app.windows import Shown, change_view, replace_window, visit_demo

    calm = replace(options, demo=options.demo and OPEN)  # what is begun anew now is not begun anew once more
    here = Shown(app, window, settings, calm, _show_window)
    window.view_asked.connect(partial(change_view, here))
    window.shop_asked.connect(partial(replace_window, here))
    window.demo_asked.connect(partial(visit_demo, here))


def _open_store(window: MainWindow, settings: QSettings, options: Options) -> None:
    """Open the database and the first page; if that cannot be done the window says why."""
    from app.longwork import open_or_wait
    from app.whereabouts import demo_to_open, where_to_open
    from core.errors import StoreError
    from core.records.store import open_store

    refuse = partial(_refuse, window, settings, options)
    try:
        where = demo_to_open(options.demo) if options.demo else where_to_open(settings, options.database)
        go_on = partial(_enter, window, settings, options)
        open_or_wait(window, lambda step: open_store(where, step=step), go_on, refuse)
    except StoreError as error:
        refuse(error)


def _refuse(window: MainWindow, settings: QSettings, options: Options, error: StoreError) -> None:
    """Say why the database cannot be opened; where it is the demo shop, open the person's own."""
    from app.whereabouts import copies_to_offer
    from app.words import shown

    if options.demo:
        _open_store(window, settings, replace(options, demo=""))
        window.say(shown(error.message), "error")
        return
    window.refuse(shown(error.message), copies_to_offer(settings, options.database))


def _enter(window: MainWindow, settings: QSettings, options: Options, store: Store) -> None:
    """Open the first page of a shop."""
    from app.context import Context, Level
    from app.pages import PAGES
    from app.safekeeping import look_after_soon, send_waiting
    from app.words import shown
    from core.words import tr

    context = Context(store, window)
    window.closed.connect(context.closing)
    window.closed.connect(store.close)
    said = send_waiting(store)
    found = _pick_machine(context, options.machine, "" if options.demo else str(settings.value("machine", "")))
    empty = not store.machines() and not store.trials(limit=1)
    keys = [entry.key for entry in PAGES]
    page = options.page or (keys[0] if empty or options.demo else settings.value("page", ""))
    window.open_shop(context, page if page in keys else keys[0])
    look_after_soon(context)
    if said:
        context.say(said, Level.WARNING)
    if not found:
        missing = tr("No machine is named “{name}” here; pick one above.", name=options.machine)
        context.say(shown(missing), Level.WARNING)


def _restore_copy(window: MainWindow, settings: QSettings, options: Options, file: str) -> None:
    """Put a copy in the place of the database that cannot be opened, and open it."""
    from app.longwork import put_in_place
    from app.whereabouts import where_to_open
    from app.words import shown

    def go_on(said: str, level: str) -> None:
        _open_store(window, settings, options)
        window.say(shown(said), level)

    put_in_place(window, file, where_to_open(settings, options.database), go_on)


def _load_mathematics_soon() -> None:
    """Load beside the running window what the first verdict will need, once the first page has had time to be painted.

    No Qt is in it, so a thread of its own may; but Python lets one thread go on at a time.
    """
    from importlib import import_module
    from threading import Thread

    from PySide6.QtCore import QTimer

    thread = Thread(target=import_module, args=("scipy.special",), daemon=True)
    QTimer.singleShot(_PAINT_MS, thread.start)


def _collect_garbage_again(window: MainWindow) -> None:
    from app.garbage import GarbageCollector

    if not gc.get_freeze_count():  # a window in the place of another must not make that one stay
        gc.freeze()  # what is imported stays for good and is not searched
    GarbageCollector(window)


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
    """Change it, and remember the choice where it is another one than the desktop's, which is followed else."""
    from app.theme import apply_theme, desktop_is_dark

    apply_theme(app, dark)
    if desktop_is_dark(app) is dark:
        settings.remove("theme")
    else:
        settings.setValue("theme", "dark" if dark else "light")


def _heed_desktop(app: QApplication, settings: QSettings) -> None:
    """Take the desktop's choice from now on; what the palette told before the first paint is nearly always the same."""
    app.styleHints().colorSchemeChanged.connect(partial(_follow_desktop, app, settings))
    _follow_desktop(app, settings)


def _follow_desktop(app: QApplication, settings: QSettings, _scheme: object = None) -> None:
    """Change with the desktop, unless the person has chosen."""
    from app.theme import DARK, apply_theme, desktop_is_dark, tokens

    dark = desktop_is_dark(app)
    if not settings.value("theme") and dark not in (None, tokens() is DARK):
        apply_theme(app, dark)


def report_bug(
    window: MainWindow, kind: type[BaseException], error: BaseException, trace: TracebackType | None
) -> None:
    """Say what a store refused in its own words; write a bug's traceback to standard error and say that too."""
    import traceback

    from app.words import shown
    from core.errors import StoreError
    from core.words import tr

    if isinstance(error, StoreError):
        window.say(shown(error.message), "error")
        return
    traceback.print_exception(kind, error, trace)
    name = traceback.format_exception_only(kind, error)[-1].strip()
    window.say(shown(tr("A fault of this program: {name}. The details are on standard error.", name=name)), "error")


if __name__ == "__main__":
    sys.exit(main())
