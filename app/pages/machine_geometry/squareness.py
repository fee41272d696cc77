"""The page *Squareness*: diagonals or a square turned over in; angle, which side to push, and terms out."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING, ClassVar, NamedTuple

from PySide6.QtWidgets import QWidget

from app.context import Context, Level
from app.pages.machine_geometry.squareform import PILLARS, SquareForm
from app.pages.trialpage import NOTHING_YET, TrialPage
from app.rownames import shown_name
from app.widgets.fields import local_text
from app.widgets.resultcard import ResultCard
from app.widgets.skewview import SkewData, SkewPane
from app.words import shown
from core.errors import InputError, StoreError
from core.quantity import Estimate, rounded_pair, value_text
from core.records.rows import SettingInForce, Trial
from core.words import tr

if TYPE_CHECKING:
    from core.guidance.squareadvice import SquareJudgement, SquareReadings

_FIELDS = {"reading_mm": "measured_mm", "change_mm": "measured_mm", "length_mm": "side_b_mm"}
_SAME_TERM = 1e-5  # as tangents: far below what any reading tells


class Typed(NamedTuple):
    """The readings that count and the rows of the table they stand in."""

    readings: SquareReadings
    places: list[int]


class Judged(NamedTuple):
    """The same with what follows, and the kept trials it rests on."""

    judgement: SquareJudgement
    places: list[int]
    used: tuple[int, ...]


class SquarenessPage(TrialPage):
    """Readings at the left, the parallelogram and the verdict at the right."""

    subject: ClassVar[str] = "squareness"
    form: SquareForm
    picture: SkewPane

    def __init__(self, context: Context, parent: QWidget | None = None) -> None:
        super().__init__(context, parent)
        self.title = self.tr("Squareness")
        form = SquareForm(self.picker)
        self.lay_out(form, SkewPane(self.tr("The axes, angle enlarged")), ResultCard())
        form.entry.row_changed.connect(self._light)
        form.plane.changed.connect(self._follow_plane)

    # The four methods of a page

    def read(self) -> Typed:
        """Return the readings that count."""
        from core.guidance.squareadvice import Frame, SquareReadings
        from core.machine_geometry.squareness import Plane

        form = self.form
        self._light()
        rows = form.model.rows()
        places = [place for place, row in enumerate(rows) if form.counts(row)]
        if not places:
            raise InputError(NOTHING_YET, tr("No reading yet."))
        keys = ("side_a_mm", "side_b_mm", "span_mm", "longest_mm", "tolerance_mm")
        lengths = {key: float(form.settings.field(key).value() or 0.0) for key in (*keys, "term_ratio")}
        readings = SquareReadings(
            plane=Plane(str(form.plane.value())),
            frame=Frame(str(form.frame_state.value())),
            reading_mm=[rows[place]["measured_mm"] for place in places],
            diagonal=[rows[place]["axis"] for place in places],
            part=["square" if rows[place]["kind"] == "travel" else rows[place]["kind"] for place in places],
            **lengths,
        )
        return Typed(readings, places)

    def compute(self, readings: Typed) -> Judged:
        """Judge the readings: one call into the core."""
        from core.guidance.squareadvice import judge_squareness  # the window opens before the mathematics is needed

        reversal, before, used = self._known(readings.readings)
        try:
            judgement = judge_squareness(
                readings.readings, self.context.machine, self.context.instrument, reversal, before
            )
        except InputError as error:
            row = None if error.row is None else readings.places[error.row]
            raise InputError(_FIELDS.get(error.field, error.field), error.message, row) from error
        return Judged(judgement, readings.places, used)

    def show_result(self, result: Judged) -> None:
        """Draw the parallelogram, write the verdict, mark what does not count or stands out."""
        from app.pages.trialcard import advice_card, kept_card

        judgement = result.judgement
        self.picture.show_skew(self._skew(judgement))
        self.card.show_card(
            kept_card(self.kept_trial)
            if self.kept_trial
            else advice_card(
                judgement.advice,
                judgement.estimates(),
                self.why_not_keep(),
                mind=judgement.fit.minds,
                further_rows=_further_rows(judgement),
            )
        )
        apart = self.tr("Too far from the other readings of this length: read it again.")
        marks = {result.places[row]: apart for row in judgement.fit.doubtful}
        self.form.model.set_marks(marks | self._foreign_marks())

    def record(self) -> Trial:
        """Return the trial as it stands."""
        if self.result is None:
            return self.trial_of()
        judgement: SquareJudgement = self.result.judgement
        verdict = [advice.as_json() for advice in judgement.advice]
        return self.trial_of(judgement.estimates(), verdict, judgement.method, self.result.used)

    # Hooks

    def settings(self) -> tuple[SettingInForce, ...]:
        """Put a new term in force, with the one the piece was made under; one that was found right is verified."""
        from core.guidance.squareadvice import term_name

        machine = self.context.machine
        if self.result is None or machine is None or machine.id is None:
            return ()
        judgement: SquareJudgement = self.result.judgement
        name, old = term_name(judgement.readings.plane), judgement.readings.term_ratio
        if judgement.new_term_ratio is not None:
            angle = judgement.fit.angle
            expected = {"name": angle.name, "value": 0.0, "U": angle.U, "unit": angle.unit}
            new = judgement.new_term_ratio
            return (SettingInForce(machine.id, None, name, old, new, "1", prediction=expected),)
        now = self.context.store.in_force(name, machine.id) if judgement.verifies_term else None
        return (now,) if now is not None and abs(now.new - old) < _SAME_TERM else ()

    def plan(self) -> None:
        """Begin with the empty readings of four pillars, made under the term now in force."""
        self.form.plan(self._term_in_force("xy"))

    def _follow_plane(self) -> None:
        """Take the term of another plane while nothing is read."""
        if self.form.nothing_read():
            term = self._term_in_force(str(self.form.plane.value()))
            self.form.settings.field("term_ratio").set_value(term)

    def _term_in_force(self, plane: str) -> float:
        from core.guidance.squareadvice import term_name

        machine = self.context.machine
        if machine is None or machine.id is None:
            return 0.0
        try:
            now = self.context.store.in_force(term_name(plane), machine.id)
        except StoreError as error:
            self.context.say(shown(error.message), Level.ERROR)
            return 0.0
        return round(now.new, 6) if now else 0.0

    def _foreign_marks(self) -> dict[int, str]:
        says = self.tr("Read by another method: it does not count here.")
        return {
            place: says for place, row in enumerate(self.form.model.rows()) if row["raw"] and not self.form.belongs(row)
        }

    def _known(self, readings: SquareReadings) -> tuple[dict[str, Estimate], Estimate | None, tuple[int, ...]]:
        """Return kept reversal errors by axis, the angle kept before a change of the frame, and their trials."""
        machine = self.context.machine
        if machine is None or self.kept_trial is not None:
            return {}, None, ()
        found: dict[str, tuple[int, Estimate]] = {}
        names = [f"reversal_{axis}" for axis in readings.plane] if "outer" in readings.part else []
        names += [f"squareness_{readings.plane}"] if readings.frame != "found" else []
        try:
            for name in names:
                if newest := self.context.store.newest(name, machine_id=machine.id):
                    found[name] = newest
        except StoreError as error:
            self.context.say(shown(error.message), Level.ERROR)
        reversal = {name[-1]: e for name, (_, e) in found.items() if name.startswith("reversal_")}
        before = found.get(f"squareness_{readings.plane}")
        used = tuple(dict.fromkeys(trial_id for trial_id, _ in found.values()))
        return reversal, before[1] if before else None, used

    def _skew(self, judgement: SquareJudgement) -> SkewData:
        from core.guidance.squareactions import per_hundred
        from core.guidance.verdict import Setting

        fit, form = judgement.fit, self.form
        mend = judgement.advice[0].setting is Setting.MEND_MECHANICS
        degrees = _degrees(fit.angle)
        per_100 = local_text(value_text(per_hundred(fit.angle)))
        lines = [degrees, self.tr("{per_100} in 100 mm").format(per_100=per_100)]
        d1, d2 = fit.diagonals_mm
        named = (f"1: {local_text(f'{d1:.2f}')} mm", f"2: {local_text(f'{d2:.2f}')} mm") if d1 else ("1", "2")
        if mend:
            way = fit.shift(judgement.readings.span_mm)
            shift = local_text(" ± ".join(rounded_pair(abs(way.value), way.U)).removeprefix("+"))
            lines.append(self.tr("Arrow: bring this side there by {shift} mm.").format(shift=shift))
        summary = self.tr("{plane}: {degrees}, {per_100} in 100 mm.").format(
            plane=str(fit.plane).upper(), degrees=degrees, per_100=per_100
        )
        push = (1 if fit.angle.value > 0 else -1) if mend else 0
        return SkewData(
            str(fit.plane), form.method.value() == PILLARS, fit.angle.value, tuple(lines), named, push, summary=summary
        )

    def _light(self, _row: int = -1) -> None:
        """Light the diagonal that is read next; its angle is not known while nothing is shown."""
        row, model = self.form.entry.current_row(), self.form.model
        values = model.values(row) if 0 <= row < model.rowCount() and model.is_empty(row) else {}
        self.picture.light(
            str(self.form.plane.value()),
            str(values.get("axis", "")),
            shown_name(values.get("feature")),
            pillars=self.form.method.value() == PILLARS,
        )


def _degrees(angle: Estimate) -> str:
    value, U = rounded_pair(math.degrees(angle.value), math.degrees(angle.U))
    return local_text(f"{value} ± {U}°")


def _further_rows(judgement: SquareJudgement) -> tuple[tuple[str, str, str], ...]:
    """The square's own error, where one was turned over."""
    square = judgement.fit.square
    return ((shown(tr("the square itself")), local_text(value_text(square)), ""),) if square else ()
