"""The page *Ladder*: a setting changed step by step, scored blind or measured; the step to use, for lot or machine."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING, Any, ClassVar, NamedTuple

import numpy as np
from PySide6.QtWidgets import QWidget

from app.context import Context, Level
from app.pages.motion_trials.ladderform import LadderForm
from app.pages.motion_trials.scorepage import ScorePage
from app.pages.motion_trials.scorerows import at_specimen, piece_of, places_in
from app.pages.trialpage import NOTHING_YET
from app.widgets.plotpane import PlotData
from app.widgets.resulttext import CardData, Paragraph, Tone
from app.words import shown
from core.errors import InputError, StoreError
from core.records.rows import SettingInForce, Trial
from core.words import tr

if TYPE_CHECKING:
    from core.guidance.criteriaadvice import CriteriaJudgement
    from core.guidance.ladderadvice import LadderJudgement
    from core.guidance.offsetadvice import Foretold
    from core.motion_trials.ladders import LadderKind, LadderReadings

_FIELD_OF = {"score": "measured_mm", "value": "measured_mm"}
_SHUFFLES_SEED = 20_041  # any number: the same readings must give the same answer


class Typed(NamedTuple):
    """The readings that count, and the rows of the table they stand in."""

    places: list[int]
    readings: LadderReadings


class LadderPage(ScorePage):
    """Plan the steps, hide them from who scores, find the plateau."""

    subject: ClassVar[str] = "ladder"
    form: LadderForm

    def __init__(self, context: Context, parent: QWidget | None = None) -> None:
        super().__init__(context, parent)
        self.title = self.tr("Ladder")
        form = LadderForm(self.picker)
        form.now_set = self._now_set
        self.lay_out_scores(form, "", "")
        self._foretold: tuple[Any, Foretold | None] = (None, None)
        context.kept.connect(self._forget_foretold)
        context.machine_changed.connect(self._take_limits)

    # The four methods of a page

    def read(self) -> Typed:
        """Return the readings that count."""
        from core.motion_trials.ladders import LadderReadings

        form, rows = self.form, self.form.model.rows()
        form.check_plan()
        foreign = self.tr("Of another ladder: it does not count here.")
        form.model.set_marks(
            {place: foreign for place, row in enumerate(rows) if row["raw"] and row["axis"] != form.group}
        )
        places = places_in(rows, form.group)
        if not places:
            raise InputError(NOTHING_YET, tr("No score yet."))
        used = [rows[place] for place in places]
        readings = LadderReadings(
            form.kind,
            form.read,
            [float(row["step"]) for row in used],
            [float(row["measured_mm"]) for row in used],
            [str(row.get("judge") or "") for row in used],
            form.optional("limit"),
            [piece_of(row) for row in used],
            [str(row.get("criterion") or "") for row in used],
            form.aim,
            form.unit,
        )
        return Typed(places, readings)

    def compute(self, readings: Typed) -> LadderJudgement | CriteriaJudgement:
        """Judge the ladder: one call into the core."""
        from core.guidance.ladderadvice import check_ladder, judge_ladder

        try:
            if self.is_held_back():  # nothing of it is shown, and to judge several criteria takes its time
                check_ladder(readings.readings)
                raise InputError("score", tr("Picture and verdict stay hidden until all pieces are scored."))
            return judge_ladder(readings.readings, np.random.default_rng(_SHUFFLES_SEED))
        except InputError as error:
            raise at_specimen(error, _FIELD_OF, readings.places, self.form.model.rows()) from error

    def show_result(self, result: LadderJudgement | CriteriaJudgement) -> None:
        """Draw the ladder, say which step to use; nothing of it while somebody still scores blind."""
        from app.pages.motion_trials.ladderplot import criteria_plot, ladder_plot
        from app.pages.trialcard import advice_card, kept_card
        from core.guidance.criteriaadvice import CriteriaJudgement, criterion_rows

        if self.holds_back():
            self._add_foretold()
            return
        rows = []
        if isinstance(result, CriteriaJudgement):
            self.plot.set_data(criteria_plot(result))
            rows = [(shown(a), shown(b), shown(c)) for a, b, c in criterion_rows(result)]
        else:
            self.plot.set_data(ladder_plot(result))
        card = advice_card(result.advice, result.estimates(), self.why_not_keep(), mind=result.mind, further_rows=rows)
        self.card.show_card(kept_card(self.kept_trial, rows) if self.kept_trial else card)
        self._add_foretold()

    def show_problem(self, field: str, row: int | None, message: str) -> None:
        """Show why there is no verdict, and what other ladders foretell."""
        super().show_problem(field, row, message)
        self._add_foretold()

    def record(self) -> Trial:
        """Return the trial as it stands."""
        judged: LadderJudgement | CriteriaJudgement | None = self.result
        if judged is None:
            return self.trial_of()
        return self.trial_of(judged.estimates(), [advice.as_json() for advice in judged.advice], judged.method)

    # Hooks

    def settings(self) -> tuple[SettingInForce, ...]:
        """Put the step in force, for the lot or for the machine; the same step again verifies the one in force."""
        machine, lot, judged = self.context.machine, self.context.lot, self.result
        if machine is None or machine.id is None or judged is None or judged.new_value is None:
            return ()
        kind = judged.readings.kind
        lot_id = lot.id if kind.holds_for_lot and lot is not None else None
        now = self.context.store.in_force(kind.setting, machine.id, lot_id)
        new = float(f"{judged.new_value:.4g}")
        if now is not None and now.lot_id == lot_id and abs(now.new - new) <= 1e-9 * max(abs(new), 1.0):
            return (now,)
        return (SettingInForce(machine.id, lot_id, kind.setting, self.form.optional("in_force"), new, kind.unit),)

    def why_not_keep(self) -> str:
        """Say what stands against keeping the trial."""
        if self.kept_trial is None and self.context.lot is None and self.form.kind.holds_for_lot:
            return self.tr("Choose or add the filament lot above: this setting belongs to a lot.")
        return super().why_not_keep()

    def plan(self) -> None:
        """Begin with the temperature ladder within the machine's limits."""
        machine = self.context.machine
        self.form.plan(machine.limits if machine else {})

    def shown(self) -> None:
        """Judge again: ladders may have been kept or withdrawn elsewhere, the machine's record changed."""
        self._take_limits()
        self._forget_foretold()
        super().shown()

    def _forget_foretold(self) -> None:
        self._foretold = None, None

    def _add_foretold(self) -> None:
        """Add to the card what other machines' ladders foretell; a kept trial stays as it was."""
        foretold = None if self.kept_trial is not None else self._foretell()
        if foretold is None:
            return
        tone: Tone = "warning" if foretold.refused else "plain" if foretold.estimate else "unknown"
        said = Paragraph(self.tr("From other ladders"), shown(foretold.says), tone)
        card = self.card.card or CardData((), can_keep=False)
        self.card.show_card(replace(card, paragraphs=(*card.paragraphs, said)))

    def _foretell(self) -> Foretold | None:
        """Return what the shop's temperature ladders foretell for what is picked; None for other ladders."""
        from core.guidance.offsetadvice import NAME, ShopLadders, foretell_temperature

        machine, lot, store = self.context.machine, self.context.lot, self.context.store
        if self.form.kind.key != "temperature" or machine is None or lot is None:
            return None
        asked = machine.id or 0, lot.id or 0, self.form.optional("limit")
        if self._foretold[0] != asked:
            try:
                shop = ShopLadders(store.series(NAME), store.machines(), store.lots(), store.events())
            except StoreError as error:
                self.context.say(shown(error.message), Level.ERROR)
                return None
            self._foretold = asked, foretell_temperature(shop, *asked)
        return self._foretold[1]

    def _take_limits(self) -> None:
        machine = self.context.machine
        self.form.limits = machine.limits if machine else {}

    def _now_set(self, kind: LadderKind) -> float | None:
        """Return what is set now, where a kept trial says it."""
        machine, lot = self.context.machine, self.context.lot
        if machine is None or machine.id is None:
            return None
        lot_id = lot.id if kind.holds_for_lot and lot is not None else None
        try:
            now = self.context.store.in_force(kind.setting, machine.id, lot_id)
        except StoreError as error:
            self.context.say(shown(error.message), Level.ERROR)
            return None
        return now.new if now else None

    def _empty_picture(self, says: str = "") -> None:
        """Say what is read of this ladder, in the way that is chosen."""
        from core.guidance.ladderwords import nothing_words

        title, self.empty_text = (shown(words) for words in nothing_words(self.form.read))
        self.nothing = PlotData((), title=title)
        super()._empty_picture(says)
