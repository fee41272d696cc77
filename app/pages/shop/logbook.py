"""The page *Logbook*: what was measured, changed and happened, in the order of keeping; and the settings in force."""

from __future__ import annotations

from pathlib import Path
from typing import Any, ClassVar

from PySide6.QtWidgets import QFileDialog, QVBoxLayout, QWidget

from app.authors import sign_as
from app.context import Context, Level
from app.pages.base import Page
from app.pages.shop.decisionpane import DecisionDesk, DecisionPane
from app.pages.shop.logdoing import add_note, attach_picture, let_go, may_go, write_report
from app.pages.shop.logpane import LogPane
from app.pages.shop.logreader import Log, read_entry, read_log
from app.pages.shop.logtext import entry_card
from app.pages.shop.logwords import NOTE, UnsentWords
from app.pages.shop.settingsdesk import SettingsDesk
from app.pages.shop.settingspane import SettingsPane
from app.theme import STEP_PX
from app.widgets.parts import Parts
from app.widgets.tabs import Tabs
from app.words import shown
from core.errors import InputError, StoreError
from core.guidance.logentries import Entry
from core.records.rows import SettingInForce, Trial
from core.words import tr

_TEMPLATE = "template"
_DECISION = "decision."  # before the keys of what is typed in the form of that name


class LogbookPage(Page):
    """Nothing that is kept is changed here: withdrawing, undoing and taking back are entries of their own."""

    subject: ClassVar[str] = "logbook"

    def __init__(self, context: Context, parent: QWidget | None = None) -> None:
        super().__init__(context, parent)
        self.title = self.tr("Logbook")
        self.log, self.settings_pane = LogPane(self.title, self._write_report), SettingsPane()
        self.tabs, self.parts = Tabs(self.tr("Log or settings")), Parts()
        self.desk = SettingsDesk(context, self.settings_pane)
        self.decision_pane = DecisionPane()
        self.decisions = DecisionDesk(context, self.decision_pane)
        self.words = UnsentWords(self.log.card.form)
        self._typed: dict[str, str] = {}  # and not saved
        self._entry: Entry | None = None
        self._lay_out()
        self.setFocusProxy(self.log.finder)
        self._wire()

    # The four methods of a page

    def read(self) -> tuple[Any, Any]:
        """Return whose log is wanted."""
        whose = self.log.whose.value()
        machine = self.context.machine if whose in ("machine", "both") else None
        return machine, self.context.lot if whose in ("lot", "both") else None

    def compute(self, readings: tuple[Any, Any]) -> Log:
        """Read it."""
        return read_log(self.context, *readings)

    def show_result(self, result: Log) -> None:
        """Show the entries, the chosen one kept in sight, and the settings in force."""
        self.log.show_log(result)
        self.desk.read(result.changes, self._typed.get(_TEMPLATE))
        typed = {k.removeprefix(_DECISION): text for k, text in self._typed.items() if k.startswith(_DECISION)}
        self.decisions.read(typed)
        self._show_chosen()

    def record(self) -> Trial:
        """Return what is typed and not saved: words for an entry, and a template."""
        readings = {"field": list(self._typed), "raw": list(self._typed.values())}
        return Trial(self.subject, self.context.machine_id, self.context.lot_id, readings=readings)

    # Hooks

    def keep(self) -> None:
        """Say that entries come from elsewhere."""
        self.context.say(self.tr("Trials are kept on their pages; F8 logs what happened."), Level.INFO)

    def load_draft(self, trial: Trial | None) -> None:
        """Take what was typed and not saved; the log is read by whoever has it loaded, once."""
        readings = trial.readings if trial else {}
        self._typed = dict(zip(readings.get("field", ()), readings.get("raw", ()), strict=True))
        self._entry = None
        self.words.load(self._typed)
        self.log.follow(self.context.machine, self.context.lot)

    def shown(self) -> None:
        """Look again: other pages have kept trials meanwhile."""
        self.log.author.setText(self.context.store.author)
        self.recompute()

    def reveal(self, widget: QWidget) -> None:
        """Turn to the part whose entry was undone."""
        for place, part in enumerate((self.log, self.settings_pane, self.decision_pane)):
            if part.isAncestorOf(widget):
                self.tabs.setCurrentIndex(place)

    def save_draft(self) -> bool:
        """Commit what is typed and not saved."""
        typed = self.words.typed() | {_TEMPLATE: self.desk.unsaved_template() or ""}
        typed |= {_DECISION + key: text for key, text in self.decisions.typed().items()}
        self._typed = {key: text for key, text in typed.items() if text}
        return super().save_draft()

    def _show_chosen(self) -> None:
        entry = self.log.chosen()
        if self._entry != entry:
            self.undoing.forget()  # what was typed for another entry stays with it
        self._entry = entry
        self.words.follow(entry)
        if entry is None or self.result is None:
            self.log.card.show_entry(None, None, (), {})
            return
        try:
            known = read_entry(self.context, entry, self.result.changes)
        except (InputError, StoreError) as error:
            self.context.say(shown(error.message), Level.ERROR)
            return
        where, changes = self.log.model.where(entry), self.result.changes
        card = entry_card(entry, where, known.before, known.moved, changes, known.based)
        self.log.card.show_entry(entry, card, known.attached, known.contents, self._can_go(entry))

    def _can_go(self, entry: Entry) -> bool:
        change = self.result.changes.get(entry.row.id) if isinstance(entry.row, SettingInForce) else None
        return may_go(entry, change is not None and change.in_force)

    # What the buttons ask for

    def _let_go(self) -> None:
        """Withdraw a trial, undo a setting, or take an event back."""
        entry = self._entry
        if entry is None:
            return
        try:
            let_go(self.context, entry, self._note())
        except InputError as error:
            if not self.log.card.form.show_problem(NOTE, shown(error.message)):
                self.context.say(shown(error.message), Level.WARNING)
            return
        except StoreError as error:
            self.context.say(shown(error.message), Level.ERROR)
            return
        self._after(entry, self.tr("Done; the entry before stays in the logbook."))

    def _note(self) -> str:
        return self.log.card.form.texts()[NOTE].strip()

    def _add_note(self) -> None:
        note, entry = self._note(), self._entry
        if not note or entry is None:
            self.log.card.form.show_problem(NOTE, shown(tr("Type the words of the note first.")))
            return
        try:
            add_note(self.context, entry, note)
        except (InputError, StoreError) as error:
            self.context.say(shown(error.message), Level.ERROR)
            return
        self._after(entry, self.tr("Note added."))

    def _after(self, entry: Entry, says: str) -> None:
        """Take away the words that were sent with an entry, whichever is in sight now."""
        self.words.forget(entry)
        self.save_draft()
        self.recompute()
        self.log.table.setFocus()  # the button that had it may be of no use any more
        self.context.say(says, Level.GOOD)

    def _ask_for_picture(self) -> None:
        dialog = QFileDialog(
            self, self.tr("Attach a picture"), "", self.tr("Pictures (*.jpg *.jpeg *.png *.webp *.bmp)")
        )
        dialog.setFileMode(QFileDialog.FileMode.ExistingFile)
        dialog.fileSelected.connect(self.attach)
        dialog.open()

    def attach(self, path: str) -> None:
        """Attach a picture file to the entry in sight, made small."""
        entry = self._entry
        if entry is None:
            return
        try:
            attach_picture(self.context, entry, path, self._note())
        except (InputError, StoreError) as error:
            self.context.say(shown(error.message), Level.ERROR)
            return
        self._after(entry, self.tr("Picture attached."))

    def _write_report(self, _kind: str, path: Path) -> bool:
        """Write the report of the trial in sight; the button says whether it could."""
        return self._entry is not None and write_report(self.context, self._entry, path)

    def _sign(self) -> None:
        sign_as(self.context, self.log.author.text())

    def _answer_context(self, _what: Any = None) -> None:
        if self.isVisible():
            self.recompute()

    def _wire(self) -> None:
        self.log.choice_changed.connect(self.recompute)
        self.context.trial_asked.connect(self._show_trial)
        self.log.entry_chosen.connect(self._show_chosen)
        self.log.author.editingFinished.connect(self._sign)
        self.log.card.report.said.connect(self.context.notice)
        self.log.card.gone_asked.connect(self._let_go)
        self.log.card.note_asked.connect(self._add_note)
        self.log.card.picture_asked.connect(self._ask_for_picture)
        self.log.card.form.changed.connect(self.save_draft)
        self.settings_pane.template_edited.connect(self.save_draft)
        self.decision_pane.changed.connect(self.save_draft)
        self.decisions.put.connect(self._show_put)
        self.tabs.currentChanged.connect(self.parts.setCurrentIndex)
        for changed in (self.context.kept, self.context.logged, self.context.machine_changed, self.context.lot_changed):
            changed.connect(self._answer_context)

    def _show_trial(self, trial_id: int) -> None:
        """Choose the entry of a trial that is to be withdrawn, and ask for the reason."""
        self.tabs.setCurrentIndex(0)
        self.log.show_trial(trial_id)
        self.log.card.form.take_focus()

    def _show_put(self) -> None:
        self.save_draft()
        self.recompute()

    def _lay_out(self) -> None:
        self.tabs.addTab(self.tr("Log"))
        self.tabs.addTab(self.tr("Settings in force"))
        self.tabs.addTab(self.tr("Put in force"))
        for part in (self.log, self.settings_pane, self.decision_pane):
            self.parts.addWidget(part)
        down = QVBoxLayout(self)
        down.setContentsMargins(0, 0, 0, 0)
        down.setSpacing(STEP_PX)
        down.addWidget(self.tabs)
        down.addWidget(self.parts, 1)
