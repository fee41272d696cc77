"""The page *Prediction*: the next piece predicted and locked, and held against its readings afterwards."""

from __future__ import annotations

from typing import ClassVar

from PySide6.QtCore import QSignalBlocker
from PySide6.QtWidgets import QWidget

from app.context import Context, Level
from app.pages.part_size.keptbeside import begun_since, choices, day_of, earlier_errors, kept_here, verified_settings
from app.pages.part_size.predictionasked import Asked, Told
from app.pages.part_size.predictionchanges import ChangeFields
from app.pages.part_size.storedpage import StoredPage
from app.widgets.fieldgrid import FieldGrid
from app.widgets.fields import ChoiceField
from app.widgets.plaintable import PlainTable
from app.widgets.plotpane import PlotData, PlotPane
from app.widgets.resultcard import ResultCard
from core.errors import InputError
from core.records.rows import SettingInForce, Trial

_NEW = ""  # the choice of a prediction that is not locked yet


class PredictionPage(StoredPage):
    """Predictions are locked here; the readings are typed on the page Size error."""

    subject: ClassVar[str] = "prediction"

    def __init__(self, context: Context, parent: QWidget | None = None) -> None:
        super().__init__(context, parent)
        self.title = self.tr("Prediction")
        self.grid = FieldGrid(5)
        self.locked, self.source, self.read_by = ChoiceField(), ChoiceField(), ChoiceField()
        self.changes = ChangeFields()
        self.offset_mm, self.factor_x, self.factor_y = self.changes.fields()
        self.plot = PlotPane(self.tr("Nothing predicted yet."))
        headings = (
            self.tr("Feature"), self.tr("Nominal, mm"), self.tr("Predicted, mm"), self.tr("Read, mm"), self.tr("E_n"),
        )  # fmt: skip
        self.table = PlainTable(self.tr("Predictions in numbers"), headings)
        self.card = ResultCard(self.tr("What it says"))
        self._lay_out()
        for field in self.changes.fields():
            field.changed.connect(self.recompute)
        for choice in (self.locked, self.source, self.read_by):
            choice.changed.connect(self.recompute)
        self.card.keep_clicked.connect(self.keep)
        self.plot.said.connect(context.notice)
        for changed in (context.machine_changed, context.lot_changed, context.instrument_changed, context.kept):
            changed.connect(self._answer_context)

    # The four methods of a page

    def read(self) -> Asked:
        """Return what is chosen.

        Raises:
            InputError: field `value` where machine, lot or a size trial is missing; a field's own for its number.
        """
        before = earlier_errors(self.context)
        self._offer()
        locked, read = self._chosen(self.locked), None
        if locked is not None:
            read = self._chosen(self.read_by)
        source = None if locked is not None else self._chosen(self.source)
        if locked is None and source is None:
            raise InputError("value", self._what_to_keep())
        if source is not None:
            self.changes.begin(self.context, source)
        return Asked(source, self.changes.values(), locked, read, self.context.instrument, before)

    def compute(self, readings: Asked) -> Told:
        """Predict, or hold the readings against the locked prediction: one call into the core."""
        from core.guidance.predicted import predict_from, unlocked, verify_locked

        source, changes, locked, read, instrument, before = readings
        if locked is None:
            assert source is not None  # read() has seen to it
            return Told(readings, predict_from(source, instrument, changes), None)
        if read is None:
            return Told(readings, unlocked(locked), None)
        verified = verify_locked(locked, read, instrument, before)
        return Told(readings, verified.result.prediction, verified)

    def show_result(self, result: Told) -> None:
        """Draw predictions and readings, list them, say what they mean."""
        from app.pages.part_size.prediction_view import (
            locked_card,
            open_card,
            prediction_plot,
            prediction_rows,
            verified_card,
        )
        from core.guidance.scored import score_words

        asked = result.asked
        self.plot.set_data(prediction_plot(result.prediction, result.verified))
        self.table.set_rows(prediction_rows(result.prediction, result.verified))
        self.card.keep_button.setText(self.tr("Lock the prediction") if asked.locked is None else self.tr("Keep it"))
        score = score_words(asked.before) if asked.before else None
        if result.verified is not None:
            card = verified_card(result.verified, "")
        elif asked.locked is not None:
            digest = str(asked.locked.conditions["hash"])
            card = locked_card(asked.locked.id or 0, digest, day_of(asked.locked), score)
        else:
            card = open_card(int(result.prediction.nominal_mm.size), score, self.changes.taken())
        self.card.show_card(card)

    def record(self) -> Trial:
        """Return the prediction to be locked, or the verification."""
        from core.guidance.predicted import locked_trial, verification_trial

        if self.result is None:
            return Trial(self.subject)
        asked, prediction, verified = self.result
        if asked.source is not None:
            return locked_trial(asked.source, prediction, asked.changes)
        assert verified is not None and asked.locked is not None and asked.read is not None  # keep() has seen to it
        return verification_trial(asked.locked, asked.read, verified)

    # Hooks

    def settings(self) -> tuple[SettingInForce, ...]:
        """Return the settings that a prediction which holds verifies: those set before the proof piece was read."""
        verified, read = self.result.verified, self.result.asked.read
        if verified is None or read is None or not verified.result.passed:
            return ()
        return verified_settings(self.context, read)

    def keep(self) -> None:
        """Lock the prediction, or keep the verification."""
        self.recompute()
        if self.result is None:
            return
        locking = self.result.asked.source is not None
        if not locking and self.result.verified is None:
            self.context.say(self.tr("Nothing verifies this prediction yet, so there is nothing to keep."), Level.INFO)
            return
        before = self.context.store.trials(self.subject, limit=1)
        super().keep()
        newest = self.context.store.trials(self.subject, limit=1)
        if locking and newest and newest != before:
            self._offer()
            self.locked.set_value(str(newest[0].id))
            self.recompute()

    def show_no_picture(self) -> None:
        """Empty the picture."""
        self.plot.set_data(PlotData((), title=self.tr("Predicted")))

    def problem_head(self) -> str:
        """Return the words before the sentence that says what is missing."""
        return self.tr("Cannot tell")

    def _chosen(self, choice: ChoiceField) -> Trial | None:
        value = choice.value()
        return self.context.store.trial(int(value)) if value else None

    def _what_to_keep(self) -> str:
        if self.context.machine is None or self.context.lot is None:
            return self.tr("Choose a machine and a lot above.")
        return self.tr("Keep a size trial of this machine and lot first: the next piece is predicted from it.")

    def _offer(self) -> None:
        """List locked predictions, the trials to predict from, and those begun after the chosen one was locked."""
        sizes, locks = kept_here(self.context, "sizeerror"), kept_here(self.context, self.subject)
        with QSignalBlocker(self.locked), QSignalBlocker(self.source), QSignalBlocker(self.read_by):
            self.locked.set_choices([(_NEW, self.tr("new one")), *choices(locks)])
            self.source.set_choices(choices(sizes))
            chosen = next((t for t in locks if str(t.id) == self.locked.value()), None)
            self.read_by.set_choices(choices(begun_since(sizes, chosen)) or [(_NEW, self.tr("none yet"))])
        for key in ("source", "offset_mm", "factor_x", "factor_y"):
            self.grid.show_field(key, chosen is None)
        self.grid.show_field("read_by", chosen is not None)

    def _lay_out(self) -> None:
        for key, label, field, unit in (
            ("locked", self.tr("&Prediction"), self.locked, ""),
            ("source", self.tr("From si&ze trial"), self.source, ""),
            ("offset_mm", self.tr("&Offset"), self.offset_mm, self.tr("mm a side")),
            ("factor_x", self.tr("&X drawn"), self.factor_x, self.tr("times")),
            ("factor_y", self.tr("&Y drawn"), self.factor_y, self.tr("times")),
            ("read_by", self.tr("&Read as size trial"), self.read_by, ""),
        ):
            self.grid.add(key, label, field, unit)
        self.lay_out(self.plot)
        self.setFocusProxy(self.locked)
