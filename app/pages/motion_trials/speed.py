"""The page *Speed*: scores of five levels against the time the part takes, or half speed, the first diagnosis."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING, ClassVar, NamedTuple

import numpy as np
from PySide6.QtWidgets import QFileDialog, QLabel, QWidget

from app.context import Context, Level
from app.pages.motion_trials.partfile import Asked, PartFile
from app.pages.motion_trials.scorepage import ScorePage
from app.pages.motion_trials.scorerows import at_specimen, piece_of, places_in
from app.pages.motion_trials.speedform import HALF, SPEED, SpeedForm
from app.pages.motion_trials.speedknown import ceiling_mm3_s, level_to_put_in_force
from app.pages.trialpage import NOTHING_YET
from app.waitrow import WaitRow
from app.widgets.fields import ChoiceField
from app.words import shown
from core.errors import InputError
from core.records.rows import Motion, SettingInForce, Trial
from core.words import tr

if TYPE_CHECKING:
    from core.guidance.halfspeedadvice import HalfSpeedJudgement
    from core.guidance.motionadvice import SpeedJudgement

FRONT, TIME, RATE = "front", "time", "rate"
_LINES_IN_SIGHT = 15  # of the verdict in the smallest window; the choice of the picture takes the rest
_SHUFFLES_SEED = 20_041  # any number: the same readings must give the same answer
_FIELD_OF = {"score": "measured_mm", "level": "step", "time_s": "straight_mm", "acceleration_mm_s2": "other"}


class Typed(NamedTuple):
    """Scores with their rows and pieces; steps are levels or numbers of runs; times of levels, None for runs."""

    places: list[int]
    step: list[float]
    score: list[float]
    judge: list[str]
    piece: list[str]
    time_s: dict[float, float] | None


class Judged(NamedTuple):
    """The same with what follows from them."""

    typed: Typed
    judgement: SpeedJudgement | HalfSpeedJudgement


class SpeedPage(ScorePage):
    """How much quality for how much time.

    Attributes:
        part: the file whose time counts, or the usual straight.
    """

    subject: ClassVar[str] = "speed"
    form: SpeedForm

    def __init__(self, context: Context, parent: QWidget | None = None) -> None:
        super().__init__(context, parent)
        self.title = self.tr("Speed")
        views = ((FRONT, self.tr("Score by time")), (TIME, self.tr("Time by level")), (RATE, self.tr("Rate")))
        self.view = ChoiceField(views)
        self.view.setAccessibleName(self.tr("Picture"))
        label = QLabel(self.tr("P&icture"))
        label.setBuddy(self.view)
        self.part = PartFile(self)
        empty_text = self.tr(
            "No score yet. Print the levels, mark the pieces; two people score them, each alone and blind."
        )
        self.lay_out_scores(SpeedForm(self.picker), self.tr("Score against time"), empty_text, label, self.view)
        self.card.grow(_LINES_IN_SIGHT)
        self.view.changed.connect(self.recompute)
        self.form.file_button.clicked.connect(self.ask_for_file)
        self.waiting = WaitRow(self.card, context, self.part.job)
        self.waiting.stop.clicked.connect(self.part.give_up)
        self.part.timed.connect(self.answer_change)
        self.part.failed.connect(self._say_failed)
        context.machine_changed.connect(self._take_limits)

    # The four methods of a page

    def read(self) -> Typed:
        """Return the scores that count, and the times of their levels."""
        form, rows = self.form, self.form.model.rows()
        form.check_plan()
        foreign = self.tr("Of another trial: it does not count here.")
        form.model.set_marks(
            {place: foreign for place, row in enumerate(rows) if row["raw"] and row["axis"] != form.group}
        )
        half = form.group == HALF
        levels = sorted({float(row["step"]) for row in rows if row["axis"] == form.group and row.get("step")})
        time_s = None if half or not levels else self._times(tuple(levels))
        places = places_in(rows, form.group)
        if not places:
            raise InputError(NOTHING_YET, tr("No score yet."))
        used = [rows[place] for place in places]
        judges = [str(row.get("judge") or "") for row in used]
        steps, scores = ([float(row[key]) for row in used] for key in ("step", "measured_mm"))
        return Typed(places, steps, scores, judges, [piece_of(row) for row in used], time_s)

    def compute(self, readings: Typed) -> Judged:
        """Judge the levels or the runs: one call into the core."""
        from core.guidance.halfspeedadvice import judge_diagnosis
        from core.guidance.motionadvice import LevelReadings, judge_speed
        from core.motion_trials.halfspeed import Run

        form, (_, step, score, judge, piece, time_s) = self.form, readings
        try:
            if time_s is None:
                runs = list(Run)
                return Judged(readings, judge_diagnosis([runs[int(number)] for number in step], score, judge))
            asked, limit = form.number("asked_score"), form.optional("limit")
            layers = self.part.times.layers if self.part.times else None
            levels = LevelReadings(form.group, step, score, judge, time_s, asked, limit, piece, layers)
            return Judged(readings, judge_speed(levels, np.random.default_rng(_SHUFFLES_SEED)))
        except InputError as error:
            raise at_specimen(error, _FIELD_OF, readings.places, form.model.rows()) from error

    def show_result(self, result: Judged) -> None:
        """Draw the chosen picture, write the verdict; of the scores nothing while somebody still scores blind."""
        from app.pages.motion_trials import speedplot
        from app.pages.trialcard import advice_card, kept_card
        from core.guidance.motionadvice import SpeedJudgement, level_rows

        if self.holds_back():
            self._show_times()
            return
        judged, further = result.judgement, []
        mind: list[str] = list(judged.mind)
        if isinstance(judged, SpeedJudgement):
            rows = level_rows(judged.trial.levels, judged.readings.of, judged.readings.layers)
            further = [(shown(a), shown(b), shown(c)) for a, b, c in rows]
            mind += self.part.says()
            if not self._show_times():
                self.plot.set_data(speedplot.front_plot(judged))
        else:
            self.plot.set_data(speedplot.runs_plot(judged, result.typed.score, result.typed.judge, result.typed.step))
        card = advice_card(judged.advice, judged.estimates(), self.why_not_keep(), mind=mind, further_rows=further)
        self.card.show_card(kept_card(self.kept_trial) if self.kept_trial else card)

    def record(self) -> Trial:
        """Return the trial as it stands, with the times of its file."""
        judged: Judged | None = self.result
        trial = self.trial_of()
        if judged is not None:
            found = judged.judgement
            trial = self.trial_of(found.estimates(), [advice.as_json() for advice in found.advice], found.method)
        return replace(trial, conditions={**trial.conditions, **self.part.conditions()})

    # Hooks

    def settings(self) -> tuple[SettingInForce, ...]:
        """Put the level in force for this lot on this machine."""
        return level_to_put_in_force(self.context, self.result.judgement if self.result else None)

    def plan(self) -> None:
        """Begin with five levels of speed within the machine's limits, timed by the usual straight."""
        self.part.forget()
        self._take_limits()
        self.form.learn(self.picker.kept)
        self.form.plan(self.form.limits)

    def show_problem(self, field: str, row: int | None, message: str) -> None:
        """Show why there is no verdict; the time by level needs no score."""
        super().show_problem(field, row, message)
        self._show_times()

    # The part

    def ask_for_file(self) -> None:
        """Ask for a file of G-code and time it."""
        kinds = self.tr("G-code (*.gcode *.gco *.g *.nc);;All (*)")
        path, _kind = QFileDialog.getOpenFileName(self, self.tr("Time a file"), "", kinds)
        if path:
            self.time_file(path)

    def time_file(self, path: str) -> None:
        """Time a file beside the window."""
        try:
            self.part.choose(path)
        except InputError as error:
            self.context.say(shown(error.message), Level.ERROR)
            return
        self.answer_change()

    def _times(self, levels: tuple[float, ...]) -> dict[float, float]:
        """Return the time of each level, of the file or of the usual straight."""
        form = self.form
        of = form.group
        speed = None if of == SPEED else form.number("other")
        rule = form.layer_rule(bool(self.part.name))
        asked = Asked(form.motion_limits(), of, levels, speed, ceiling_mm3_s(self.context), rule)
        return self.part.times_of(asked, form.number("straight_mm"))

    def _show_times(self) -> bool:
        """Draw the time by level, or the rates of a file, where that picture is chosen and can be drawn."""
        from app.pages.motion_trials.speedplot import rate_plot, time_plot

        times, view, of = self.part.times, self.view.value(), self.form.group
        if times is None or of == HALF or view == FRONT:
            return False
        if view == RATE and self.part.name:
            self.plot.set_data(rate_plot(times, of, ceiling_mm3_s(self.context)))
            return True
        if view == TIME:
            self.plot.set_data(time_plot(times, of))
        return view == TIME

    def _show_trial(self, trial: Trial) -> None:
        self.part.recall(trial.conditions)
        self._take_limits()
        super()._show_trial(trial)

    def _take_limits(self, _machine: object = None) -> None:
        machine = self.context.machine
        self.form.limits = machine.limits if machine else {}
        self.form.crossed_belts = machine is not None and machine.motion is Motion.CROSSED_BELT

    def _say_failed(self, error: Exception) -> None:
        self.context.say(shown(getattr(error, "message", str(error))), Level.ERROR)
        self.recompute()
