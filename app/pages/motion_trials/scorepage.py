"""What pages with scored specimens share: picture and verdict stay hidden while somebody still scores blind."""

from __future__ import annotations

from PySide6.QtWidgets import QWidget

from app.pages.motion_trials.scoreform import ScoreForm
from app.pages.trialpage import NOTHING_YET, TrialPage
from app.widgets.plotpane import PlotData, PlotPane
from app.widgets.resultcard import ResultCard
from app.widgets.resulttext import CardData, Paragraph

_OF_SCORES = ("measured_mm", "judge", "step")  # fields whose sentences, without a row, tell how all scores stand


class ScorePage(TrialPage):
    """A page that shows how the specimens stand only when no judge can be led by it any more.

    Attributes:
        nothing, empty_text: the picture without a score, and what stands in it.
    """

    form: ScoreForm

    def lay_out_scores(self, form: ScoreForm, title: str, empty_text: str, *head: QWidget) -> None:
        """Lay the page out with a picture of this title; `empty_text` stands in it before the first score."""
        self.nothing, self.empty_text = PlotData((), title=title), empty_text
        plot = PlotPane(empty_text)
        plot.set_data(self.nothing)
        self.lay_out(form, plot, ResultCard(), head)
        form.key_button.toggled.connect(self.recompute)

    def holds_back(self) -> bool:
        """Say what is still to be scored instead of how it stands, and return whether that is so."""
        waiting = self._waiting()
        if waiting:
            self._empty_picture(
                self.tr(
                    "Hidden until all pieces are scored, so that nobody is led by it; “Show the steps” shows it now."
                )
            )
            self.card.show_card(CardData((self._still_to_score(waiting),), can_keep=False))
        return bool(waiting)

    def is_held_back(self) -> bool:
        """Whether somebody still scores blind, so that nothing may be shown."""
        return bool(self._waiting())

    def why_not_keep(self) -> str:
        """Say what stands against keeping the trial: to keep it is to show it."""
        why_not = super().why_not_keep()
        if not why_not and self._waiting():
            return self.tr("Score or exclude every piece, or press “Show the steps”; then keep the trial.")
        return why_not

    def show_problem(self, field: str, row: int | None, message: str) -> None:
        """Show why there is no verdict, unless the sentence tells a judge how the scores stand."""
        if row is None and field in _OF_SCORES and self.holds_back():
            return
        super().show_problem(field, row, message)
        self._empty_picture("" if field == NOTHING_YET else message)

    def _waiting(self) -> dict[str, list[str]]:
        return {} if self.kept_trial is not None else self.form.waiting()

    def _still_to_score(self, waiting: dict[str, list[str]]) -> Paragraph:
        says = self.tr("judge {judge}: {pieces}")
        listed = "; ".join(says.format(judge=judge, pieces=", ".join(pieces)) for judge, pieces in waiting.items())
        why = self.tr(
            "Picture and verdict stay hidden so that nobody is led by them: they show when all rows are scored or "
            "excluded, or with “Show the steps”."
        )
        return Paragraph(self.tr("Still to be scored:"), f"{listed}. {why}", "unknown")

    def _empty_picture(self, says: str = "") -> None:
        self.plot.empty.setText(says or self.empty_text)
        self.plot.set_data(self.nothing)
