"""The page *Whose error*: causes of each feature's error, and a change tried on the shop's parts before it is made."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from typing import TYPE_CHECKING, ClassVar, NamedTuple

from PySide6.QtCore import QSignalBlocker
from PySide6.QtWidgets import QWidget

from app.context import Context, Level
from app.pages.part_size.keptbeside import choices, kept_here
from app.pages.part_size.linkedpairs import LinkedPairs
from app.pages.part_size.storedpage import StoredPage
from app.widgets.barsview import BarsPane
from app.widgets.fieldgrid import FieldGrid
from app.widgets.fields import ChoiceField, NumberField, TextField, local_text
from app.widgets.plaintable import PlainTable
from app.widgets.resultcard import ResultCard
from app.words import shown
from core.errors import InputError, StoreError
from core.records.rows import Instrument, ShopValue, Trial

if TYPE_CHECKING:
    from core.guidance.splitpair import SplitPair
    from core.guidance.whosejudge import WhoseJudgement
    from core.part_size.prediction import Changes
    from core.part_size.whose import Part


_LONGEST = 600  # characters of the list of parts


class Asked(NamedTuple):
    """A kept size trial, its instrument, the parts of the shop, and the change to try."""

    trial: Trial
    instrument: Instrument | None
    parts: tuple[Part, ...]
    changes: Changes
    tolerance: str | float
    split: Mapping[str, SplitPair]


class WhosePage(StoredPage):
    """Nothing is kept here: a change is tried before it is made anywhere."""

    subject: ClassVar[str] = "whose"

    def __init__(self, context: Context, parent: QWidget | None = None) -> None:
        super().__init__(context, parent)
        self.title = self.tr("Whose error")
        self.grid = FieldGrid(4)
        self.trial = ChoiceField()
        self.offset_mm = NumberField(low=-1.0, high=1.0)
        self.factor_x, self.factor_y = NumberField(low=0.9, high=1.1), NumberField(low=0.9, high=1.1)
        self.parts = TextField(longest=_LONGEST)
        self.picture = BarsPane(self.tr("Error by cause"), self.tr("No kept size trial yet."))
        headings = (self.tr("Part"), self.tr("Now, mm"), self.tr("After, mm"), self.tr("Note"))
        self.table = PlainTable(self.tr("The change on the shop's parts"), headings)
        self.card = ResultCard(self.tr("Before a change"))
        self.linked = LinkedPairs(self.card, context)
        self._advised_for: int | None = None
        self._advised: Changes | None = None
        self._listed: ShopValue | None = None
        self._lay_out()
        self.trial.changed.connect(self.recompute)
        self.linked.found.connect(self.recompute)
        for field in (self.offset_mm, self.factor_x, self.factor_y):
            field.changed.connect(self.recompute)
        self.parts.changed.connect(self._answer_parts)
        self.picture.said.connect(context.notice)
        for changed in (context.machine_changed, context.lot_changed, context.instrument_changed, context.kept):
            changed.connect(self._answer_context)

    # The four methods of a page

    def read(self) -> Asked:
        """Return the chosen trial, the parts and the change; a trial brings what was tried on it, else what it advises.

        Raises:
            InputError: field `value` where there is no kept trial; a field's own for its number.
        """
        from core.guidance.ownparts import PARTS_KEY, parts_from
        from core.part_size.prediction import Changes

        store = self.context.store
        self._listed = store.shop_value(PARTS_KEY)
        parts = parts_from(self._listed.value if self._listed else None)
        if not self.parts.hasFocus():
            self._show_parts(parts)
        trials = kept_here(self.context, "sizeerror")
        with QSignalBlocker(self.trial):
            self.trial.set_choices(choices(trials))
        if not trials:
            raise InputError("value", self._what_is_missing())
        trial = store.trial(int(self.trial.value() or 0))
        if trial.id != self._advised_for:
            self._advise(trial)
        factors = {"x": float(self.factor_x.value() or 1.0), "y": float(self.factor_y.value() or 1.0)}
        changes = Changes(float(self.offset_mm.value() or 0.0), factors)
        if changes != self._advised:
            self.context.tried[trial.id or 0] = changes
        else:
            self.context.tried.pop(trial.id or 0, None)
        tolerance = trial.conditions.get("tolerance", "m")
        return Asked(trial, self.context.instrument, parts, changes, tolerance, self.linked.now())

    def _what_is_missing(self) -> str:
        if self.context.machine is None or self.context.lot is None:
            return self.tr(
                "Choose a machine and a lot above; of the two a size trial must be kept, on the page Size error."
            )
        return self.tr("Keep a size trial of this machine and lot first, on the page Size error.")

    def compute(self, readings: Asked) -> WhoseJudgement:
        """Share out and try: one call into the core."""
        from core.guidance.whosejudge import judge_whose

        return judge_whose(*readings)

    def show_result(self, result: WhoseJudgement) -> None:
        """Draw bars, list the parts, say whether it is worth it."""
        from app.pages.part_size.whose_view import whose_bars, whose_card, whose_rows

        self.picture.show_data(whose_bars(result))
        self.table.set_rows(whose_rows(result))
        self.card.show_card(whose_card(result))

    def record(self) -> Trial:
        """Return an empty trial: nothing is kept here."""
        return Trial(subject=self.subject)

    # Hooks

    def shown(self) -> None:
        """Read what was kept meanwhile."""
        self.linked.forget()
        super().shown()

    def hidden(self) -> None:
        """Stop a work whose answer nobody waits for."""
        super().hidden()
        self.linked.forget()

    def _answer_context(self) -> None:
        self.linked.forget()
        super()._answer_context()

    def keep(self) -> None:
        """Say that there is nothing to keep here."""
        text = self.tr(
            "Nothing is kept here; lock a prediction on the page Prediction, which begins with what you tried here, "
            "then make the change."
        )
        self.context.say(text, Level.INFO)

    def show_no_picture(self) -> None:
        """Empty the picture."""
        self.picture.show_nothing()

    def _advise(self, trial: Trial) -> None:
        """Type in the change that was tried on this trial, else the one that it advises."""
        from core.guidance.keptfit import fit_of
        from core.guidance.whosejudge import advised_changes

        self._advised_for = trial.id
        advised = advised_changes(fit_of(trial, self.context.instrument))
        factors = {axis: round(advised.factor_ratio.get(axis, 1.0), 5) for axis in "xy"}
        self._advised = replace(advised, offset_mm=round(advised.offset_mm, 3), factor_ratio=factors)
        shown_first = self.context.tried.get(trial.id or 0, self._advised)
        self.offset_mm.set_value(shown_first.offset_mm)
        for field, axis in ((self.factor_x, "x"), (self.factor_y, "y")):
            field.set_value(shown_first.factor_ratio[axis])

    def _show_parts(self, parts: tuple[Part, ...]) -> None:
        from core.guidance.ownparts import parts_text

        with QSignalBlocker(self.parts):
            self.parts.show_text(local_text(parts_text(parts)))

    def _answer_parts(self) -> None:
        """Store the list for the whole shop, then try the change on it; a list that cannot be read stays as typed."""
        from core.guidance.ownparts import PARTS_KEY, parts_from_text, parts_value

        try:
            parts = parts_from_text(self.parts.value())
            self._listed = self.context.store.set_shop_value(PARTS_KEY, parts_value(parts), self._listed)
        except InputError as error:
            self.grid.show_problem("parts", shown(error.message))
            return
        except StoreError as error:
            self.context.say(shown(error.message), Level.ERROR)
            return
        self._show_parts(parts)
        self.recompute()

    def _lay_out(self) -> None:
        for key, label, field, unit in (
            ("trial", self.tr("&Size trial"), self.trial, ""),
            ("offset_mm", self.tr("What if: &offset"), self.offset_mm, self.tr("mm a side")),
            ("factor_x", self.tr("&X drawn"), self.factor_x, self.tr("times")),
            ("factor_y", self.tr("&Y drawn"), self.factor_y, self.tr("times")),
        ):
            self.grid.add(key, label, field, unit)
        self.grid.add("parts", self.tr("&Parts of the shop, mm; a semicolon between"), self.parts)
        self.grid.set_wide("parts")
        self.lay_out(self.picture)
        self.card.keep_button.hide()
        self.setFocusProxy(self.trial)
