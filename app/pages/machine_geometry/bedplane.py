"""The page *Bed plane*: probed heights in; residual map, turns of the screws and soak time out."""

from __future__ import annotations

from typing import TYPE_CHECKING, ClassVar, NamedTuple

from PySide6.QtWidgets import QWidget

from app.context import Context, Level
from app.pages.machine_geometry.bedform import BedForm
from app.pages.machine_geometry.bedpicture import BedPicture
from app.pages.machine_geometry.bedrows import BedRows, bed_rows
from app.pages.trialpage import NOTHING_YET, TrialPage
from app.rownames import shown_name
from app.widgets.fields import local_text
from app.widgets.resultcard import ResultCard
from app.words import shown
from core.errors import InputError, StoreError
from core.quantity import Estimate
from core.records.rows import Trial
from core.words import tr

if TYPE_CHECKING:
    from core.guidance.bedadvice import BedJudgement, BedReadings

_SOAK_FIELDS = {"elapsed_s": "minutes", "soak_mm": "measured_mm"}


class Typed(NamedTuple):
    """The readings that count and the rows of the table they stand in."""

    readings: BedReadings
    rows: BedRows


class Judged(NamedTuple):
    """The same with what follows, and the kept trials it rests on."""

    judgement: BedJudgement
    rows: BedRows
    used: tuple[int, ...]


class BedPlanePage(TrialPage):
    """Readings at the left, map or drift and the verdict at the right."""

    subject: ClassVar[str] = "bedplane"
    form: BedForm
    picture: BedPicture

    def __init__(self, context: Context, parent: QWidget | None = None) -> None:
        super().__init__(context, parent)
        self.title = self.tr("Bed plane")
        self.lay_out(BedForm(self.picker), BedPicture(), ResultCard())

    # The four methods of a page

    def read(self) -> Typed:
        """Return the readings that count."""
        from core.guidance.bedadvice import BedReadings

        form = self.form
        self.picture.show_kind(str(form.reading.value()))
        rows = bed_rows(form.model.rows())
        if not rows.place_rows and not rows.soak_rows:
            raise InputError(NOTHING_YET, tr("No reading yet."))
        values = form.settings.values()
        readings = BedReadings(
            x_mm=rows.x_mm,
            y_mm=rows.y_mm,
            z_mm=rows.z_mm,
            elapsed_s=rows.elapsed_s,
            soak_mm=rows.soak_mm,
            hot=form.state.value() == "hot",
            bed_c=_number(values["bed_c"]),
            print_c=_number(values["print_c"]),
            screws_mm=form.screw_places(),
            pitch_mm=form.pitch_mm(),
            clockwise_lowers=form.clockwise.value() == "lowers",
        )
        return Typed(readings, rows)

    def compute(self, readings: Typed) -> Judged:
        """Judge the readings: one call into the core."""
        from core.guidance.bedadvice import judge_bed  # the window opens before the mathematics is needed

        known, used = self._known_probe()
        try:
            judgement = judge_bed(readings.readings, known)
        except InputError as error:
            soak = error.field in _SOAK_FIELDS
            field = _SOAK_FIELDS.get(error.field, {"z_mm": "measured_mm"}.get(error.field, error.field))
            rows = readings.rows.soak_rows if soak else readings.rows.place_rows
            raise InputError(field, error.message, None if error.row is None else rows[error.row]) from error
        relied = used if judgement.plane is not None and judgement.plane.probe is None else ()
        return Judged(judgement, readings.rows, relied)

    def show_result(self, result: Judged) -> None:
        """Draw map and drift, write the verdict, say how far each probe is off the plane."""
        from app.pages.trialcard import advice_card, kept_card

        judgement, rows = result.judgement, result.rows
        minutes = [t / 60.0 for t in rows.elapsed_s]
        self.picture.show_judgement(
            judgement, self._names(judgement, rows), (minutes, rows.soak_mm), self.form.travel_mm
        )
        self.card.show_card(
            kept_card(self.kept_trial)
            if self.kept_trial
            else advice_card(
                judgement.advice,
                judgement.estimates(),
                self.why_not_keep(),
                mind=judgement.plane.minds if judgement.plane else (),
            )
        )
        self._mark(judgement, rows)

    def record(self) -> Trial:
        """Return the trial as it stands."""
        if self.result is None:
            return self.trial_of()
        judgement: BedJudgement = self.result.judgement
        verdict = [advice.as_json() for advice in judgement.advice]
        return self.trial_of(judgement.estimates(), verdict, judgement.method, self.result.used)

    # Hooks

    def plan(self) -> None:
        """Begin with the empty readings of nine places on the bed of the picked machine."""
        self.form.plan()

    def load_draft(self, trial: Trial | None) -> None:
        """Lay the places out on the bed of the picked machine."""
        machine = self.context.machine
        if machine is not None:
            self.form.travel_mm = (machine.travel_x_mm, machine.travel_y_mm)
        super().load_draft(trial)

    def _known_probe(self) -> tuple[Estimate | None, tuple[int, ...]]:
        """Return the repeatability of the probe from an earlier trial, with the id of that trial."""
        machine = self.context.machine
        if machine is None or self.kept_trial is not None:
            return None, ()
        try:
            newest = self.context.store.newest("probe_sd", machine_id=machine.id)
        except StoreError as error:
            self.context.say(shown(error.message), Level.ERROR)
            return None, ()
        return (newest[1], (newest[0],)) if newest else (None, ())

    def _names(self, judgement: BedJudgement, rows: BedRows) -> list[str]:
        """Return the name of each place: that of its first touch."""
        if judgement.plane is None:
            return []
        table = self.form.model.rows()
        first: dict[int, str] = {}
        for place, row in zip(judgement.plane.row_place.tolist(), rows.place_rows, strict=True):
            first.setdefault(place, shown_name(table[row]["feature"]) or self.tr("Row {row}").format(row=row + 1))
        return [first[place] for place in range(len(first))]

    def _mark(self, judgement: BedJudgement, rows: BedRows) -> None:
        plane = judgement.plane
        if plane is None:
            self.form.model.set_error_text({})
            self.form.model.set_marks({})
            return
        says = self.tr("Stands out from the plane of the others: probe there again.")
        places = list(zip(rows.place_rows, plane.row_place.tolist(), strict=True))
        self.form.model.set_marks({row: says for row, place in places if plane.flagged[place]})
        heights = dict(zip(rows.place_rows, zip(rows.x_mm, rows.y_mm, rows.z_mm, strict=True), strict=True))
        off = {row: z - float(plane.height(x, y)) for row, (x, y, z) in heights.items()}
        self.form.model.set_error_text({row: local_text(f"{round(value, 3) + 0.0:+.3f}") for row, value in off.items()})


def _number(value: object) -> float | None:
    return float(value) if isinstance(value, float | int) else None
