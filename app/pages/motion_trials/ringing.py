"""The page *Ringing*: ripples counted on a wall, or a log; frequency, damping, and accelerations that ring little."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from typing import TYPE_CHECKING, Any, ClassVar, NamedTuple

from PySide6.QtWidgets import QFileDialog, QLabel, QWidget

from app.context import Context, Level
from app.pages.motion_trials.logfile import LogFile
from app.pages.motion_trials.ringingform import LOG, U_SPEED_RATIO, RingingForm, hertz
from app.pages.trialpage import NOTHING_YET, TrialPage
from app.waitrow import WaitRow
from app.widgets.fields import ChoiceField, local_text
from app.widgets.plotpane import PlotData, PlotPane
from app.widgets.resultcard import ResultCard
from app.words import shown
from core.errors import InputError, StoreError
from core.records.rows import SettingInForce, Trial
from core.words import tr

if TYPE_CHECKING:
    from core.guidance.ringingadvice import RingingJudgement, Use
    from core.motion_trials.ringing import Ripple

READINGS, ACCELERATION = "readings", "acceleration"
_FIELD_OF = {"distance_mm": "measured_mm"}


class Typed(NamedTuple):
    """Ripples with the rows they stand in, or a log, and what the answer is for."""

    places: list[int]
    ripples: list[Ripple]
    log: Any
    use: Use
    u_distance_mm: float


class RingingPage(TrialPage):
    """One axis with one part on the bed."""

    subject: ClassVar[str] = "ringing"
    form: RingingForm

    def __init__(self, context: Context, parent: QWidget | None = None) -> None:
        super().__init__(context, parent)
        self.title = self.tr("Ringing")
        self.view = ChoiceField([(READINGS, self.tr("Readings")), (ACCELERATION, self.tr("Acceleration"))])
        self.view.setAccessibleName(self.tr("Picture"))
        label = QLabel(self.tr("P&icture"))
        label.setBuddy(self.view)
        self.log = LogFile(self)
        self.lay_out(RingingForm(self.picker), PlotPane(), ResultCard(), (label, self.view))
        self._empty_picture()
        self.view.changed.connect(self.recompute)
        self.form.log_button.clicked.connect(self.ask_for_log)
        self.form.model.set_error_text(_hertz_text)
        self.waiting = WaitRow(self.card, context, self.log.job)
        self.log.ready.connect(self._take_log)
        self.log.failed.connect(self._say_failed)

    # The four methods of a page

    def read(self) -> Typed:
        """Return the ripples that are complete, or the log."""
        form = self.form
        by_log = form.by_log
        places = [] if by_log else form.places()
        if by_log and not self.log.name and self.log.trouble is None:
            raise InputError(NOTHING_YET, tr("No log yet."))
        unread = {} if by_log else form.unread()
        form.model.set_marks({place: shown(lacks.message) for place, lacks in unread.items()})
        if not by_log and not places:
            raise next(iter(unread.values()), InputError(NOTHING_YET, tr("No ripple yet.")))
        log = self.log.needed() if by_log else None
        return Typed(places, form.ripples(places), log, form.use(), form.number("u_distance_mm"))

    def compute(self, readings: Typed) -> RingingJudgement:
        """Judge the ripples or the log: one call into the core."""
        from core.guidance.ringingadvice import judge_log, judge_ringing

        machine = self.context.machine
        drive = machine.drives.get(readings.use.axis) if machine else None
        bearing = self.form.settings.field("bearing_mm").value()
        try:
            if readings.log is not None:
                return judge_log(readings.log.time_s, readings.log.acceleration, readings.use)
            return judge_ringing(
                readings.ripples, readings.use, readings.u_distance_mm, U_SPEED_RATIO, drive,
                None if bearing is None else float(bearing),
            )  # fmt: skip
        except InputError as error:
            row = error.row if readings.log is None else None
            field = _FIELD_OF.get(error.field, error.field)
            raise InputError(field, error.message, None if row is None else readings.places[row]) from error

    def show_result(self, result: RingingJudgement) -> None:
        """Draw the chosen picture, write the verdict."""
        from app.pages.motion_trials import ringingplot
        from app.pages.trialcard import advice_card, kept_card

        summary = " ".join(f"{shown(advice.action)} {shown(advice.because)}" for advice in result.advice)
        if self.view.value() == ACCELERATION and result.limit is not None:
            self.plot.set_data(ringingplot.acceleration_plot(result, summary))
        elif result.spectrum is not None:
            self.plot.set_data(ringingplot.spectrum_plot(result.spectrum, summary))
        elif result.found is not None:
            ripples = self.form.ripples(self.form.places())
            self.plot.set_data(ringingplot.wavelength_plot(result.found, ripples, summary))
        further = [(self.tr("log"), self.log.name, "")] if result.spectrum is not None else []
        why_not = self.why_not_keep()
        card = advice_card(result.advice, result.estimates(), why_not, mind=result.mind, further_rows=further)
        self.card.show_card(kept_card(self.kept_trial) if self.kept_trial else card)

    def record(self) -> Trial:
        """Return the trial as it stands, with the name of its log."""
        judged: RingingJudgement | None = self.result
        trial = self.trial_of()
        if judged is not None:
            trial = self.trial_of(judged.estimates(), [a.as_json() for a in judged.advice], judged.method)
        log = {"log": self.log.name} if self.log.name and trial.conditions.get("read") == LOG else {}
        return replace(trial, conditions={**trial.conditions, **log})

    # Hooks

    def settings(self) -> tuple[SettingInForce, ...]:
        """Put the acceleration in force where it is proved that the axis rings."""
        from core.guidance.verdict import Setting

        machine, judged = self.context.machine, self.result
        if machine is None or machine.id is None or judged is None:
            return ()
        first = judged.advice[0]
        if first.setting is not Setting.ACCELERATION:
            return ()
        name, new = f"acceleration_{judged.use.axis}", float(f"{first.amount:.3g}")
        now = self.context.store.in_force(name, machine.id)
        if now is not None and now.new == new:
            return (now,)
        return (SettingInForce(machine.id, None, name, now.new if now else None, new, "mm/s²"),)

    def plan(self) -> None:
        """Begin with three speeds, within the acceleration of the machine."""
        machine = self.context.machine
        self.log.recall({}, self.context.machine_id)
        most = dict(machine.limits.get("max_acceleration_mm_s2") or {}) if machine else {}
        self.form.plan(most.get("x"))

    def is_begun(self, trial: Trial) -> bool:
        """Count a log as a reading."""
        return bool(self.log.name) or super().is_begun(trial)

    def keep(self) -> None:
        """Keep the trial, and with it the samples of its log, so that it can be judged again."""
        before, samples = self.kept_trial, self.log.samples
        super().keep()
        kept = self.kept_trial
        if kept is None or kept is before or samples is None or kept.conditions.get("read") != LOG:
            return
        self.log.samples = samples
        self.recompute()
        try:
            self.log.keep(self.context, kept)
        except InputError:
            says = self.tr("{name} is too large to be stored with the trial: its peaks are kept, its samples are not.")
            self.context.say(says.format(name=self.log.name), Level.WARNING)
        except StoreError as error:
            self.context.say(shown(error.message), Level.ERROR)

    def show_problem(self, field: str, row: int | None, message: str) -> None:
        """Show why there is no verdict; where the samples of a kept log are not here, what they gave is."""
        from app.pages.trialcard import kept_card

        super().show_problem(field, row, message)
        self._empty_picture("" if field == NOTHING_YET else message)
        if self.kept_trial is not None:
            self.card.show_card(kept_card(self.kept_trial))

    # The log

    def ask_for_log(self) -> None:
        """Ask for a file and read it."""
        kinds = self.tr("CSV (*.csv *.txt);;All (*)")
        path, _kind = QFileDialog.getOpenFileName(self, self.tr("Read a log"), "", kinds)
        if path:
            self.read_log_file(path)

    def read_log_file(self, path: str) -> None:
        """Read a log beside the window."""
        self.log.choose(path, self.context.machine_id)

    def _take_log(self) -> None:
        if self.kept_trial is None:
            self.form.read_log()
        self.answer_change()

    def _show_trial(self, trial: Trial) -> None:
        self.log.recall(trial.conditions, trial.machine_id, seen=self.kept_trial is None)
        super()._show_trial(trial)

    def _look_at(self, trial: Trial) -> None:
        super()._look_at(trial)
        if trial.conditions.get("read") != LOG:
            return
        try:
            self.log.find(self.context, trial)
        except StoreError as error:
            self.context.say(shown(error.message), Level.ERROR)

    def _say_failed(self, error: InputError | StoreError) -> None:
        """Say what failed, and in place of the ripples too unless some are read already."""
        self.context.say(shown(error.message), Level.ERROR)
        if self.kept_trial is None and not self.form.places():
            self.form.read_log()
        self.answer_change()

    def _empty_picture(self, says: str = "") -> None:
        """Say why nothing is drawn: of ripples or of a log, whichever is read."""
        by_log = self.form.by_log
        nothing = (
            self.tr("No log yet. Read one in two columns, time in s and acceleration, taken while the axis shakes.")
            if by_log
            else self.tr("No ripple yet. Count crests on a wall after a corner, at two speeds or three.")
        )
        self.plot.empty.setText(says or nothing)
        title = self.tr("Spectrum of the log") if by_log else self.tr("Wavelength")
        self.plot.set_data(PlotData((), title=title))


def _hertz_text(row: Mapping[str, Any]) -> str:
    found = hertz(row)
    return "" if found is None else local_text(f"{found:.1f}")
