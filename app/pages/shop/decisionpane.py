"""Putting a value in force after a verdict: the setting, its value and why at the left, what is known of it right."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from PySide6.QtCore import QObject, Signal
from PySide6.QtWidgets import QHBoxLayout, QPushButton, QVBoxLayout, QWidget

from app.context import Context, Level
from app.theme import STEP_PX
from app.widgets.fieldgrid import FieldGrid
from app.widgets.fields import ChoiceField, NumberField, TextField, local_text
from app.widgets.labels import heading, quiet
from app.widgets.panel import Panel
from app.widgets.resultcard import CardData, Paragraph, ResultCard
from app.words import shown
from core.errors import InputError, StoreError
from core.guidance.decisions import SETTABLE, Proposal, Read, Settable, decided, propose, settable
from core.guidance.logentries import setting_name_words


class DecisionPane(QWidget):
    """One form; `asked` says that its value shall be in force."""

    setting_chosen = Signal()
    changed = Signal()
    asked = Signal()

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.form = FieldGrid(1)
        choices = [(kind.name, _titled(kind)) for kind in SETTABLE]
        self.setting = self.form.add("setting", self.tr("&Setting"), ChoiceField(choices))
        self.form.add("new", self.tr("New &value"), NumberField(required=True))
        self.form.add("because", self.tr("Wh&y"), TextField())
        self.form.set_share(1, 0)
        self.card = ResultCard(self.tr("What is known of it"), self.tr("Choose a machine above."))
        self.card.keep_button.hide()
        self.put = QPushButton(self.tr("&Put in force"))
        self.put.setObjectName("primary")
        self._lay_out()
        self.setting.changed.connect(self.setting_chosen)
        self.form.changed.connect(self.changed)
        self.put.clicked.connect(self.asked)

    def chosen(self) -> Settable:
        """Return the setting in sight."""
        return settable(str(self.setting.value()))

    def show_known(self, sentences: Sequence[str]) -> None:
        """Say what is in force and what is proposed."""
        said = tuple(Paragraph("", shown(sentence)) for sentence in sentences)
        self.card.show_card(CardData(said, (), can_keep=False))

    def _lay_out(self) -> None:
        title = self.tr("Put a value in force")
        left = Panel(title)
        says = quiet(self.tr("One change, one prediction, one check: print and read a piece before the next change."))
        foot = QHBoxLayout()
        foot.addStretch(1)
        foot.addWidget(self.put)
        column = QVBoxLayout(left)
        column.setContentsMargins(14, STEP_PX, 14, 12)
        column.setSpacing(STEP_PX)
        column.addWidget(heading(title))
        column.addWidget(self.form)
        column.addWidget(says)
        column.addStretch(1)
        column.addLayout(foot)
        across = QHBoxLayout(self)
        across.setContentsMargins(0, 0, 0, 0)
        across.setSpacing(2 * STEP_PX)
        across.addWidget(left, 45)
        across.addWidget(self.card, 55)


class DecisionDesk(QObject):
    """Serves a decision pane for the picked machine and lot; `put` follows a setting that is in force now."""

    put = Signal()

    def __init__(self, context: Context, pane: DecisionPane) -> None:
        super().__init__(pane)
        self._context, self._pane = context, pane
        self._proposal: Proposal | None = None
        self._read: Read | None = None
        pane.setting_chosen.connect(self._propose_anew)
        pane.asked.connect(self._put)

    def read(self, typed: Mapping[str, str]) -> None:
        """Show what is known of the chosen setting, with what was typed and not put in force.

        Raises:
            StoreError: the database cannot be read.
        """
        form = self._pane.form
        form.set_texts({"new": "", "because": "", **typed})
        form.clear_problems()
        self._look()
        if not typed.get("new") and not typed.get("because"):
            self._fill_in()

    def typed(self) -> dict[str, str]:
        """Return what a person typed; what is only proposed is left out."""
        texts = self._pane.form.texts()
        if self._proposal is None or texts == {"setting": texts["setting"], **self._proposed()}:
            return {"setting": texts["setting"]}
        return texts

    def _look(self) -> None:
        machine, lot_id, store = self._context.machine, self._context.lot_id, self._context.store
        self._proposal = self._read = None
        self._pane.put.setEnabled(machine is not None)
        if machine is None or machine.id is None:
            self._pane.card.show_empty()
            return
        kind = self._pane.chosen()
        newest = store.newest(kind.estimate, machine.id, lot_id) if kind.estimate and lot_id is not None else None
        if newest is not None:
            begun = store.trial(newest[0]).started_at
            self._read = Read(newest[0], newest[1], begun) if begun is not None else None
        try:
            self._proposal = propose(kind, store.settings(machine.id), lot_id, self._read)
        except InputError as error:  # of a trial that was imported
            self._pane.put.setEnabled(False)
            self._pane.show_known((error.message,))
            return
        self._pane.show_known(self._proposal.sentences)

    def _proposed(self) -> dict[str, str]:
        found = self._proposal
        if found is None or found.new is None or found.because is None:
            return {"new": "", "because": ""}
        return {"new": local_text(f"{found.new:.6g}"), "because": shown(found.because)}

    def _fill_in(self) -> None:
        self._pane.form.set_texts(self._proposed())

    def _propose_anew(self) -> None:
        try:
            self._look()
        except StoreError as error:
            self._context.say(shown(error.message), Level.ERROR)
            return
        self._pane.form.clear_problems()
        self._fill_in()

    def _put(self) -> None:
        machine, pane = self._context.machine, self._pane
        if machine is None or machine.id is None or self._proposal is None:
            return
        pane.form.clear_problems()
        try:
            values = pane.form.values()
            new, because = float(values["new"] or 0.0), str(values["because"] or "")
            place = machine.id, self._context.lot_id
            setting = decided(pane.chosen(), self._proposal, place, new, because, self._read)
            self._context.store.put_in_force(setting)
        except InputError as error:
            if not pane.form.show_problem(error.field, shown(error.message)):
                self._context.say(shown(error.message), Level.WARNING)
            return
        except StoreError as error:
            self._context.say(shown(error.message), Level.ERROR)
            return
        pane.form.set_texts({"new": "", "because": ""})
        self.put.emit()
        name = shown(setting_name_words(setting.name))
        self._context.say(self.tr("In force: {name}. Log and walk know it.").format(name=name), Level.GOOD)


def _titled(kind: Settable) -> str:
    name = shown(setting_name_words(kind.name))
    return name if kind.unit == "1" else f"{name}, {kind.unit}"
