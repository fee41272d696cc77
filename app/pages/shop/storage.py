"""Shop / Storage: copies of the database and putting them back, checking it, export, import, moving it elsewhere."""

from __future__ import annotations

from collections.abc import Callable
from functools import partial
from typing import Any, ClassVar

from PySide6.QtWidgets import QFileDialog, QHBoxLayout, QVBoxLayout, QWidget

from app.context import Context, Level
from app.jobs import Job, Step
from app.pages.base import Page
from app.pages.shop.copiescard import CopiesCard
from app.pages.shop.copylook import CopyLook
from app.pages.shop.storagecards import DatabaseCard, DemoCard, ExchangeCard, ReportCard
from app.pages.shop.storagetext import contents_text, import_text
from app.theme import STEP_PX
from app.widgets.invented import file_name
from app.words import shown
from core.errors import InputError, StoreError
from core.records.rows import Backup, Contents, ImportReport, Trial


class StoragePage(Page):
    """Nothing is typed here but an address; whatever takes time runs beside the window and can be stopped."""

    subject: ClassVar[str] = "storage"

    def __init__(self, context: Context, parent: QWidget | None = None) -> None:
        super().__init__(context, parent)
        self.title = self.tr("Storage")
        self.database, self.exchange = DatabaseCard(), ExchangeCard()
        self.copies = CopiesCard(context.is_demo, on_server=context.store.storage.on_server)
        self.look = CopyLook(context, self.copies)
        self.demo, self.report = DemoCard(context.is_demo), ReportCard()
        self.job = Job(self)
        self._then: Callable[[Any], None] = self._say_checked
        self._follow_up: Callable[[], None] = self._open_anew
        self._target = ""
        self._back_to: QWidget | None = None
        self._make_layout()
        self.setFocusProxy(self.database.back_up)
        self._wire()

    # The four methods of a page

    def read(self) -> None:
        """Return nothing: nothing is measured here."""

    def compute(self, readings: None) -> Contents:
        """Look into the database."""
        return self.context.store.storage.contents()

    def show_result(self, result: Contents) -> None:
        """Say what is in it, and show its copies."""
        storage = self.context.store.storage
        warnings = "\n".join(shown(sentence) for sentence in storage.warnings())
        self.database.show_contents(self.context.store.where, contents_text(result), warnings)
        self.copies.show_backups(storage.backups(), storage.backups_folder)

    def record(self) -> Trial:
        """Return an empty trial: nothing is kept here."""
        return Trial(subject=self.subject)

    # What the base asks

    def keep(self) -> None:
        """Keep a copy: what Ctrl+S means here."""
        if not self.job.is_running():
            self._back_up()

    def shown(self) -> None:
        """Read anew what other pages have changed."""
        if not self.job.is_running():
            self.recompute()

    # Copies

    def _back_up(self) -> None:
        self._begin(self.tr("Making a copy…"), self.context.store.storage.back_up, self._say_backed_up)

    def _say_backed_up(self, made: Backup) -> None:
        self.recompute()
        self._finish(self.tr("Copied to {file}.").format(file=made.file))

    def _restore(self, backup: Backup) -> None:
        work = partial(self.context.store.storage.restore, backup.file)
        self._begin(self.tr("Restoring…"), lambda step: work(step=step), self._say_restored)

    def _say_restored(self, before: Backup) -> None:
        self._finish(self.tr("Restored. What was on record before is in {file}.").format(file=before.file))
        self._open_anew()

    # Checking

    def _check(self) -> None:
        self._begin(self.tr("Reading everything…"), self.context.store.storage.check, self._say_checked)

    def _say_checked(self, faults: tuple[str, ...]) -> None:
        if faults:
            text = self.tr("Faults were found. Restore a copy that has none, and keep this one for rescue.")
            self._finish("\n".join([text, *map(shown, faults)]), Level.ERROR)
        else:
            self._finish(self.tr("Everything was read; all of it hangs together."))

    # Export and import

    def _export_csv(self) -> None:
        name = file_name("slipgauge-tables")
        path, _kind = QFileDialog.getSaveFileName(self, self.tr("Name a new folder for the tables"), name)
        self._export(path, self.context.store.storage.export_csv)

    def _export_json(self) -> None:
        name = file_name("slipgauge.json")
        path, _kind = QFileDialog.getSaveFileName(self, self.tr("Name a new file"), name, "JSON (*.json)")
        self._export(path, self.context.store.storage.export_json)

    def _export(self, path: str, write: Callable[[str, Step], Contents]) -> None:
        if path:
            self._begin(self.tr("Exporting…"), partial(write, path), partial(self._say_exported, path))

    def _say_exported(self, path: str, contents: Contents) -> None:
        self._finish(self.tr("Exported to {file}.").format(file=path) + "\n" + contents_text(contents))

    def _import(self) -> None:
        path, _kind = QFileDialog.getOpenFileName(
            self, self.tr("Choose the about.csv of a folder of tables, or a JSON file"), "",
            self.tr("Exports (about.csv *.json)"),
        )  # fmt: skip
        if path:
            from core.guidance.foreignrows import foreign_faults  # no other button needs it

            work = partial(self.context.store.storage.import_from, path, check=foreign_faults)
            self._begin(self.tr("Importing…"), work, self._say_imported)

    def _say_imported(self, report: ImportReport) -> None:
        if any(report.added.values()):
            self.recompute()
            self._follow_up = self._open_anew
            self._finish(import_text(report), follow=self.tr("&Show it on all pages"))
        else:
            self._finish(import_text(report), Level.WARNING if report.refused else Level.INFO)

    # Moving

    def _move(self) -> None:
        self.exchange.form.clear_problems()
        try:
            self._target = str(self.exchange.target.value())
        except InputError as error:
            self._fail(error)
            return
        self._begin(self.tr("Moving…"), partial(self.context.store.storage.copy_to, self._target), self._say_moved)

    def _say_moved(self, contents: Contents) -> None:
        self._follow_up = self._open_target
        text = self.tr("Everything is in the new database too. This window still shows the old one.")
        self._finish(f"{text}\n{contents_text(contents)}", follow=self.tr("&Go on there, now and at every start"))

    def _open_target(self) -> None:
        self.context.say(self.tr("This is the database that you moved to."), Level.GOOD)
        self.context.shop_asked.emit(self._target, True)

    def _open_anew(self) -> None:
        self.context.shop_asked.emit(self.context.store.storage.address, False)

    # One work at a time

    def _begin(self, text: str, work: Callable[[Step], object], then: Callable[[Any], None]) -> None:
        self._then = then
        self._back_to = self.focusWidget()
        self.report.begin(text)
        self._set_busy(True)
        self.job.start(work)

    def _go_on(self) -> None:
        self._follow_up()

    def _answer(self, answer: object) -> None:
        self._then(answer)

    def _fail(self, error: StoreError | InputError) -> None:
        message = shown(error.message)
        if isinstance(error, InputError) and self.exchange.form.show_problem(error.field, message):
            self.report.say("")
            self._back_to = self.exchange.target
            self._back_to.setFocus()
        else:
            self._finish(message, Level.ERROR)

    def _say_stopped(self) -> None:
        self._finish(self.tr("Stopped; nothing was changed."), Level.WARNING)

    def _finish(self, text: str, level: Level = Level.GOOD, follow: str = "") -> None:
        self.report.say(text, follow)
        self.context.say(text.partition("\n")[0], level)

    def _set_free(self) -> None:
        self._set_busy(False)
        if self._back_to is not None and self._back_to.isVisible():  # a button that was disabled has lost the keyboard
            self._back_to.setFocus()

    def _set_busy(self, busy: bool) -> None:
        for card in (self.database, self.exchange, self.copies):
            card.set_busy(busy)

    def _make_layout(self) -> None:
        left, right, across = QVBoxLayout(), QVBoxLayout(), QHBoxLayout(self)
        for column in (left, right):
            column.setSpacing(STEP_PX)
        for card in (self.database, self.exchange, self.demo):
            left.addWidget(card)
        left.addStretch(1)
        right.addWidget(self.copies, 3)
        right.addWidget(self.report, 2)
        across.setContentsMargins(0, 0, 0, 0)
        across.setSpacing(2 * STEP_PX)
        across.addLayout(left, 45)
        across.addLayout(right, 55)

    def _wire(self) -> None:
        self.demo.asked.connect(self.context.demo_asked)
        self.database.back_up.clicked.connect(self._back_up)
        self.database.check.clicked.connect(self._check)
        self.exchange.export_csv.clicked.connect(self._export_csv)
        self.exchange.export_json.clicked.connect(self._export_json)
        self.exchange.import_any.clicked.connect(self._import)
        self.exchange.move_there.clicked.connect(self._move)
        self.exchange.form.entered.connect(self._move)
        self.copies.restored.connect(self._restore)
        self.report.stopped.connect(self.job.stop)
        self.report.followed.connect(self._go_on)
        self.job.progressed.connect(self.report.progress)
        self.job.answered.connect(self._answer)
        self.job.failed.connect(self._fail)
        self.job.stopped.connect(self._say_stopped)
        self.job.ended.connect(self._set_free)
        self.context.closing.connect(self.job.finish)
