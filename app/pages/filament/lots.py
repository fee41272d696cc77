"""Filament / Lots: what a lot is, what its maker claims, whether it was wet, and how much is left.

No lot picked means a new one. What is typed and not saved is an open trial of this page, so nothing typed is lost.
"""

from __future__ import annotations

from typing import TYPE_CHECKING, ClassVar, NamedTuple

from PySide6.QtWidgets import QVBoxLayout, QWidget

from app.context import Context, Level
from app.pages.base import Page
from app.pages.filament.lothistory import earlier_card
from app.pages.filament.lotpane import LotPane
from app.pages.opentrial import continued
from app.widgets.resultcard import CardData, Paragraph
from app.words import shown
from core.errors import InputError, StoreError
from core.quantity import Estimate
from core.records.rows import Lot, Trial
from core.words import tr

if TYPE_CHECKING:
    from core.guidance.dryingadvice import Weighing, WeighingJudgement

_NOTHING = "readings"
_FIELDS = {"after_g": "now_g", "spool_g": "spool_mass_g"}


class Weighed(NamedTuple):
    """The masses, and the lot as typed."""

    weighing: Weighing
    lot: Lot


class LotsPage(Page):
    """The picked lot at the left, its weighings at the right."""

    subject: ClassVar[str] = "drying"
    moves_along: ClassVar[bool] = False

    def __init__(self, context: Context, parent: QWidget | None = None) -> None:
        super().__init__(context, parent)
        self.title = self.tr("Lots")
        self.pane = LotPane(self.title)
        self.entry, self.material, self.weighing = self.pane.entry, self.pane.material, self.pane.weighing
        self.form, self.card = self.entry.form, self.pane.card
        self._lot: Lot | None = None  # as it was when the form was filled from it
        self._stored: dict[str, str] = {}  # the texts of the page then
        whole = QVBoxLayout(self)
        whole.setContentsMargins(0, 0, 0, 0)
        whole.addWidget(self.pane)
        self.setFocusProxy(self.form.field("name"))
        self._wire()
        self.load_draft(None)

    # The four methods of a page

    def read(self) -> Weighed:
        """Return the masses and the lot as typed."""
        from core.guidance.dryingadvice import Weighing  # the page opens before the mathematics is needed

        values = {key: float(value) for key, value in self.weighing.form.values().items() if isinstance(value, float)}
        if "now_g" not in values:
            raise InputError(_NOTHING, tr("No weighing yet."))
        typed = Weighing(values.get("before_g"), values["now_g"], values["u_balance_g"])
        return Weighed(typed, self.form.lot(self._lot))

    def compute(self, readings: Weighed) -> WeighingJudgement:
        """Judge the weighing: one call into the core."""
        from core.guidance.dryingadvice import judge_weighing

        return judge_weighing(readings.weighing, readings.lot, self._mass_per_length())

    def show_result(self, result: WeighingJudgement) -> None:
        """Say whether it was wet and what is left."""
        from app.pages.trialcard import advice_card

        why_not = self._why_not_keep()
        self.card.show_card(advice_card(result.advice, result.estimates(), why_not, mind=result.mind))

    def record(self) -> Trial:
        """Return what is typed and not saved; nothing where the page shows the lot as stored."""
        typed = self.pane.texts()
        unsaved = typed if typed != self._stored else {}
        readings = {"field": list(unsaved), "raw": list(unsaved.values())}
        return Trial(self.subject, lot_id=self._lot.id if self._lot else None, readings=readings)

    # What the page does with them

    def keep(self) -> None:
        """Save the lot."""
        try:
            lot = self.form.lot(self._lot)
            saved = self.context.store.add_lot(lot) if lot.id is None else self.context.store.change_lot(lot)
            if self.draft is not None and self.draft.id is not None:
                self.context.store.discard_draft(self.draft.id)
        except InputError as error:
            self._refuse(error)
            return
        except StoreError as error:
            self.context.say(shown(error.message), Level.ERROR)
            return
        self.draft = None
        weighed = self.pane.weighed()
        self._stored = self.pane.texts()
        self.context.lots_changed.emit()
        self.context.select_lot(saved.id)
        self.pane.set_texts(weighed)
        self._finish()
        self.context.say(self.tr("{name} saved.").format(name=saved.name), Level.GOOD)

    def keep_weighing(self) -> None:
        """Keep the masses as a trial of the lot."""
        self.recompute()
        if self.result is None or self._why_not_keep():
            return
        judged, weighed = self.result, self.read()
        texts = self.pane.weighed()
        trial = Trial(
            self.subject,
            lot_id=weighed.lot.id,
            readings={"field": list(texts), "raw": list(texts.values())},
            conditions={"spool_mass_g": weighed.lot.spool_mass_g, "material": weighed.lot.material},
            estimates=judged.estimates(),
            verdict=tuple(advice.as_json() for advice in judged.advice),
            method=judged.method,
        )
        try:
            kept = self.context.store.keep(continued(trial, self.draft))
        except (InputError, StoreError) as error:
            self.context.say(shown(error.message), Level.ERROR)
            return
        self.draft = None
        self.weighing.clear()
        self._finish()
        self.context.say(self.tr("Weighing {number} kept.").format(number=kept.id), Level.GOOD)
        self.context.kept.emit(kept)

    def load_draft(self, trial: Trial | None) -> None:
        """Show the picked lot, with what was typed over it and not saved."""
        self._lot = self.context.lot
        self.form.show_lot(self._lot)
        self.form.clear_problems()
        self.weighing.clear()
        self._stored = self.pane.texts()
        if trial is not None:
            self.pane.set_texts(dict(zip(trial.readings.get("field", ()), trial.readings.get("raw", ()), strict=True)))
        self.recompute()
        self._show_state()

    def show_problem(self, field: str, row: int | None, message: str) -> None:
        """Say it on the card, and at its field once something is weighed."""
        field = _FIELDS.get(field, field)
        if field == _NOTHING:
            self._show_earlier()
            return
        if not self.weighing.form.show_problem(field, message):
            self.form.show_problem(field, message)
        said = Paragraph(self.tr("Cannot tell yet:"), message, "unknown")
        self.card.show_card(CardData((said,), can_keep=False))

    def clear_problems(self) -> None:
        """Take the problems of lot and weighing away."""
        self.form.clear_problems()
        self.weighing.form.clear_problems()

    # A draft of this page belongs to a lot, whatever the machine, and never moves to another one.

    def _here(self) -> tuple[int | None, int | None]:
        return None, self.context.lot_id

    def _follow(self) -> None:
        here = self._here()
        untouched = self.context.lot == self._lot or self.pane.texts() != self._stored
        if here == self._draft_of and untouched:
            return
        self._turn_to(here)

    def _finish(self) -> None:
        """A field is finished: judge again, say what cannot be read, and what is typed to the database."""
        self.recompute()
        self.form.show_unread()
        self.save_draft()
        self._show_state()

    def _refuse(self, error: InputError) -> None:
        message = shown(error.message)
        self.form.show_problem(error.field, message)
        self.context.say(message, Level.WARNING)

    def _start_new(self) -> None:
        self.save_draft()
        self.context.select_lot(None)
        self.form.take_focus()

    def _why_not_keep(self) -> str:
        return "" if self._lot is not None else self.tr("Save the lot first, then keep the weighing.")

    def _mass_per_length(self) -> Estimate | None:
        if self._lot is None:
            return None
        try:
            newest = self.context.store.newest("mass_per_length", lot_id=self._lot.id)
        except StoreError:
            return None  # the usual one serves, and says so; keeping will say what is wrong with the store
        return newest[1] if newest else None

    def _show_earlier(self) -> None:
        """Show the weighings kept last."""
        try:
            trials = self.context.store.trials(self.subject, lot_id=self._lot.id) if self._lot else ()
        except StoreError as error:
            self.context.say(shown(error.message), Level.ERROR)
            trials = ()
        card = earlier_card(trials)
        if card is None:
            self.card.show_empty(self.tr("Not weighed yet. Type the mass of the spool as it is now."))
        else:
            self.card.show_card(card)

    def _show_state(self) -> None:
        self.pane.show_state(self._stored, known=self._lot is not None)

    def _wire(self) -> None:
        self.form.changed.connect(self._finish)
        self.form.typed.connect(self._show_state)
        self.weighing.form.changed.connect(self._finish)
        self.entry.save_button.clicked.connect(self.keep)
        self.entry.new_button.clicked.connect(self._start_new)
        self.card.keep_clicked.connect(self.keep_weighing)
