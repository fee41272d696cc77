"""The page *Diameter*: how thick, how round and how heavy a filament is, and the diameter to set for it."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING, Any, ClassVar

from PySide6.QtWidgets import QWidget

from app.context import Context, Level
from app.pages.filament.diameterform import DiameterForm
from app.pages.filament.diameterrows import FIELDS, FIRST, IN_AIR, IN_WATER, PAIRS, PIECE, SECOND, Typed, typed_of
from app.pages.trialpage import TrialPage
from app.widgets.fields import local_text, number_text
from app.widgets.plotpane import PlotData, PlotPane
from app.widgets.reading_rows import lists_of
from app.widgets.resultcard import Paragraph, ResultCard
from app.words import shown
from core.errors import InputError, StoreError
from core.filament.diameter import check_sort
from core.measuring.gauge import GaugeKind
from core.records.rows import SettingInForce, Trial
from core.words import tr

if TYPE_CHECKING:
    from core.guidance.diameteradvice import DiameterJudgement, DiameterReadings, KnownDensity

_SAME_MM = 5e-4
_KIND_OF = {field: kind for kind, field in FIELDS.items()}


class DiameterPage(TrialPage):
    """Pairs of diameters, weighed lengths and samples in water; all of them make one trial of a lot."""

    subject: ClassVar[str] = "diameter"
    form: DiameterForm

    def __init__(self, context: Context, parent: QWidget | None = None) -> None:
        super().__init__(context, parent)
        self.title = self.tr("Diameter")
        empty = self.tr(
            "No readings here yet. Read two diameters square to each other at ten places; weigh cut metres; weigh "
            "samples in water."
        )
        plot = PlotPane(empty)
        plot.set_data(PlotData((), title=self.tr("Diameter around and along")))
        self._typed: Typed | None = None
        self.lay_out(DiameterForm(self.picker), plot, ResultCard())

    # The four methods of a page

    def read(self) -> DiameterReadings:
        """Return the readings that count, of all views."""
        from core.guidance.diameteradvice import DiameterReadings  # the page opens before the mathematics is needed

        form = self.form
        typed = self._typed = typed_of(form.all_rows(), form.model.rowCount())
        settings = {key: value for key, value in form.settings.values().items() if isinstance(value, float)}
        stored = {key: form.conditions()[key] for key in ("u_balance_g", "u_length_mm", "water_c")}
        for reading_mm in typed.questioned_mm:
            check_sort(reading_mm, settings["nominal_mm"])
        return DiameterReadings(
            nominal_mm=settings["nominal_mm"],
            in_force_mm=settings["in_force_mm"],
            gauge=GaugeKind(str(form.gauge.value())),
            first_mm=typed.of(FIRST),
            second_mm=typed.of(SECOND),
            mass_g=_complete(typed.of(PIECE)),
            length_mm=tuple(typed.lengths_mm[number] for number in typed.numbers(PIECE)),
            air_g=_complete(typed.of(IN_AIR)),
            water_g=_complete(typed.of(IN_WATER)),
            **{key: value for key, value in stored.items() if value is not None},
        )

    def compute(self, readings: DiameterReadings) -> DiameterJudgement:
        """Judge the filament: one call into the core."""
        from core.guidance.diameteradvice import judge_diameter

        try:
            return judge_diameter(readings, self.context.instrument, self._known_density())
        except InputError as error:
            kind = _KIND_OF.get(error.field)
            if kind is None or self._typed is None:
                raise
            key = "length_mm" if error.field == "length_mm" else "measured_mm"
            row = None if error.row is None else self._typed.row_of(kind, error.row)
            raise InputError(key, error.message, row) from error

    def show_result(self, result: DiameterJudgement) -> None:
        """Draw the picture, write the verdict, mark what is out of round."""
        from app.pages.filament.diameterplot import diameter_plot
        from app.pages.trialcard import advice_card, kept_card, place_row

        lot = self.context.lot
        claimed = lot.claimed_tolerance_mm if lot else None
        self.plot.set_data(diameter_plot(result, str(self.form.view.value()), claimed, self._show_pairs(result)))
        place = [place_row(self.context, self.kept_trial)]
        if self.kept_trial:
            self.card.show_card(kept_card(self.kept_trial, place))
            return
        card = advice_card(result.advice, result.estimates(), self.why_not_keep(), mind=result.mind, further_rows=place)
        self.card.show_card(replace(card, paragraphs=(*card.paragraphs, _ways_paragraph(result))))

    def record(self) -> Trial:
        """Return the trial as it stands, with the readings of all views."""
        judged: DiameterJudgement | None = self.result
        trial = self.trial_of()
        if judged is not None:
            verdict = [advice.as_json() for advice in judged.advice]
            trial = self.trial_of(judged.estimates(), verdict, judged.method, judged.used)
        instrument = self.context.instrument
        read_with_it = instrument is not None and instrument.kind == self.form.gauge.value()
        return replace(trial, readings=lists_of(self.form.all_rows()),
                       instrument_id=trial.instrument_id if read_with_it else None)

    # What differs from other pages with trials

    def settings(self) -> tuple[SettingInForce, ...]:
        """Put the diameter in force, with the one it was measured under; where it is in force already, verify it."""
        from core.guidance.diameteradvice import FILAMENT_DIAMETER

        machine, lot, judged = self.context.machine, self.context.lot, self.result
        if judged is None or judged.new_mm is None or machine is None or machine.id is None or lot is None:
            return ()
        now = self.context.store.in_force(FILAMENT_DIAMETER, machine.id, lot.id)
        if now is not None and now.lot_id == lot.id and abs(now.new - judged.new_mm) < _SAME_MM:
            return (now,)
        old, new = judged.readings.in_force_mm, judged.new_mm
        return (SettingInForce(machine.id, lot.id, FILAMENT_DIAMETER, old, new, "mm"),)

    def why_not_keep(self) -> str:
        """Say what stands against keeping the trial."""
        if self.kept_trial is None and self.context.lot is None:
            return self.tr("Choose or add the filament lot above: a diameter belongs to a lot.")
        return super().why_not_keep()

    def plan(self) -> None:
        """Begin with empty readings under the lot's claim and the diameter in force."""
        from core.guidance.diameteradvice import FILAMENT_DIAMETER

        machine, lot = self.context.machine, self.context.lot
        conditions: dict[str, Any] = {}
        if lot is not None and lot.nominal_diameter_mm is not None:
            conditions |= dict.fromkeys(("nominal_mm", "in_force_mm"), lot.nominal_diameter_mm)
        if machine is not None and machine.id is not None and lot is not None:
            try:
                now = self.context.store.in_force(FILAMENT_DIAMETER, machine.id, lot.id)
                conditions |= {"in_force_mm": now.new} if now else {}
            except StoreError as error:
                self.context.say(shown(error.message), Level.ERROR)
        self.form.plan(conditions)

    def _show_pairs(self, result: DiameterJudgement) -> list[int]:
        """Write the ovality beside the pairs, mark those out of round, and return their numbers."""
        from core.guidance.sectionadvice import OVAL_RETURN_MM

        typed, pairs = self._typed, result.pairs
        texts: dict[int, str] = {}
        marks: dict[int, str] = {}
        numbers: list[int] = []
        if pairs is not None and typed is not None:
            numbers = [n for n in typed.numbers(FIRST) if n in typed.values[FIRST] and n in typed.values[SECOND]]
            for number, oval in zip(numbers, pairs.oval_mm.tolist(), strict=True):
                if (row := typed.places.get((SECOND, number))) is not None:
                    texts[row] = local_text(f"{oval:.3f}")
                    if oval > OVAL_RETURN_MM:
                        marks[row] = self.tr("Out of round by {oval} mm.").format(oval=number_text(oval, 3))
        self.form.model.set_error_text(texts if self.form.view.value() == PAIRS else {})
        self.form.model.set_marks(marks)
        return numbers

    def _known_density(self) -> KnownDensity | None:
        """Return the lot's density: measured in a kept trial, else what is usual for its material."""
        from core.filament.materials import usual_density
        from core.guidance.diameteradvice import KnownDensity

        lot = self.context.lot
        if lot is None:
            return None
        try:
            newest = self.context.store.newest("density", lot_id=lot.id)
        except StoreError:
            newest = None  # the usual one serves, and says so; keeping will say what is wrong with the store
        if newest is not None:
            return KnownDensity(newest[1], newest[0])
        usual = usual_density(lot.material)
        return None if usual is None else KnownDensity(usual)


def _complete(values: tuple[float | None, ...]) -> tuple[float, ...]:
    return tuple(value for value in values if value is not None)


def _ways_paragraph(result: DiameterJudgement) -> Paragraph:
    """Say which way to the cross-section is good enough."""
    from core.filament.ways import ways_words

    return Paragraph(shown(tr("Good enough?")), shown(ways_words(result.ways, result.readings.nominal_mm)))
