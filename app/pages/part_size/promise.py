"""The page *Promise*: what the kept pieces of a machine and a lot let one promise a customer."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING, ClassVar

from PySide6.QtCore import QSignalBlocker
from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from app.context import Context, Level
from app.jobs import at_once
from app.pages.kepttrials import newest_check
from app.pages.part_size.keptreport import newest_name, write_newest
from app.pages.part_size.promise_pieces import Asked, Wanted, judged, pieces
from app.pages.part_size.storedpage import StoredPage, Work
from app.theme import STEP_PX
from app.units import inches_for
from app.widgets.fieldgrid import FieldGrid
from app.widgets.fields import ChoiceField, LengthField, NumberField
from app.widgets.labels import heading
from app.widgets.plaintable import PlainTable, framed
from app.widgets.plotinch import plot_in_inch
from app.widgets.plotpane import PlotData, PlotPane
from app.widgets.reportbutton import ReportButton
from app.widgets.resultcard import ResultCard
from app.words import shown
from core.errors import InputError
from core.measuring.tolerance import CLASSES
from core.records.rows import Trial

if TYPE_CHECKING:

    from core.guidance.promised import PromiseJudgement

_OWN = "own"
_ROWS = 4  # one for each class of features


class PromisePage(StoredPage):
    """Nothing is measured here: every kept size trial of the machine and lot is one piece."""

    subject: ClassVar[str] = "promise"

    def __init__(self, context: Context, parent: QWidget | None = None) -> None:
        super().__init__(context, parent)
        self.title = self.tr("Promise")
        self.grid = FieldGrid(5)
        self.group = ChoiceField()
        classes = [(key, shown(words)) for key, words in CLASSES.items()]
        self.tolerance = ChoiceField([*classes, (_OWN, self.tr("own, plus-minus"))])
        self.tolerance.set_value("m")
        inch = inches_for(self.subject)
        self.own_mm = LengthField(low_mm=0.001, high_mm=10.0, inch=inch)
        self.own_mm.set_value(0.15)
        self.peg_mm = LengthField(low_mm=0.5, high_mm=500.0, inch=inch)
        self.share = NumberField(low=50.0, high=99.99)
        self.peg_mm.set_value(8.0)
        self.share.set_value(99.0)
        self.plot = PlotPane(self.tr("No pieces yet."))
        headings = (
            self.tr("Features"), self.tr("Parts"), self.tr("Mean error, mm"), self.tr("Spread, mm"),
            self.tr("Promise, mm"), self.tr("Cp (95 %)"), self.tr("Cpk (95 %)"), self.tr("Held to, mm"),
        )  # fmt: skip
        self.table = PlainTable(self.tr("Promises in numbers"), headings)
        self.card = ResultCard(self.tr("What may be promised"))
        self.reports = ReportButton(self._report, self.tr("Repo&rts"), name=self._report_name)
        self._lay_out()
        self.choose_unit(self.plot)
        self.group.changed.connect(self._show_again)
        self.tolerance.changed.connect(self._answer_tolerance)
        for field in (self.own_mm, self.peg_mm, self.share):
            field.changed.connect(self.recompute)
        self.card.keep_clicked.connect(self.keep)
        self.plot.said.connect(context.notice)
        self.reports.said.connect(context.notice)
        for changed in (context.machine_changed, context.lot_changed, context.instrument_changed, context.kept):
            changed.connect(self._answer_context)

    # The four methods of a page

    def read(self) -> Asked:
        """Return the kept pieces.

        Raises:
            InputError: field `value` where machine or lot is not picked; `own_mm` for a tolerance that cannot be.
        """
        return pieces(self.context, self._wanted(), at_once)

    def compute(self, readings: Asked) -> PromiseJudgement:
        """Judge them: one call into the core."""
        return judged(readings)

    def work(self) -> Work:
        """Return both for a worker."""
        context, wanted = self.context, self._wanted()
        return lambda step: judged(pieces(context, wanted, step))

    def _wanted(self) -> Wanted:
        machine, lot = self.context.machine, self.context.lot
        if machine is None or lot is None:
            raise InputError("value", self.tr("Choose a machine and a lot above: a promise is made for the two."))
        own = self.tolerance.value() == _OWN
        self.peg_mm.value(), self.share.value()  # what cannot be is told at its field before anything is shown
        tolerance = float(self.own_mm.value() or 0.0) if own else str(self.tolerance.value())
        return Wanted(machine.id or 0, lot.id or 0, self.context.instrument, tolerance)

    def show_result(self, result: PromiseJudgement) -> None:
        """Draw one class of features, list all, say what may be promised."""
        from app.pages.part_size.promise_view import promise_card, promise_plot, promise_rows
        from core.guidance.partgroups import group_words
        from core.guidance.pegadvice import peg_advice

        with QSignalBlocker(self.group):
            self.group.set_choices([(g.parts.group, shown(group_words(g.parts.group))) for g in result.groups])
        one = next(g for g in result.groups if g.parts.group == self.group.value())
        self.plot.set_data(promise_plot(one, result.tolerance))
        self.table.set_rows(promise_rows(result))
        peg = peg_advice(result, float(self.peg_mm.value() or 0.0), float(self.share.value() or 0.0) / 100.0)
        guarded = self.context.instrument is not None
        self.card.show_card(promise_card(result, self._why_not_keep(), shown(peg), guarded=guarded))

    def record(self) -> Trial:
        """Return the promise of the picked machine and lot, with the pieces it rests on."""
        result = self.result
        return Trial(
            subject=self.subject,
            machine_id=self.context.machine_id,
            lot_id=self.context.lot_id,
            instrument_id=self.context.instrument_id,
            conditions={"tolerance": result.tolerance} if result else {},
            estimates=result.estimates() if result else (),
            used=result.trial_ids() if result else (),
            method=result.method if result else "",
            note=" ".join(str(one.says) for one in result.groups) if result else "",
        )

    # Hooks

    def keep(self) -> None:
        """Keep the promise, unless the card says why not."""
        if not self.is_up_to_date():
            return
        if self.result is not None and (why_not := self._why_not_keep()):
            self.context.say(why_not, Level.WARNING)
            return
        super().keep()

    def show_no_picture(self) -> None:
        """Empty the picture."""
        self.plot.set_data(PlotData((), title=self.tr("Error against part size")))

    def shown(self) -> None:
        """Read what was kept meanwhile."""
        self.reports.setEnabled(self.context.machine is not None)
        super().shown()

    def _why_not_keep(self) -> str:
        if self.result is not None and any(one.promise for one in self.result.groups):
            return ""
        return self.tr("Nothing can be promised yet, so nothing is kept.")

    def _report_name(self, kind: str) -> str:
        subject = {"trial": "sizeerror", "kept": self.subject}.get(kind)
        return "" if subject is None else newest_name(self.context, subject)

    def _report(self, kind: str, path: Path) -> bool:
        """Write one report; the button says whether it could."""
        from app import reportfiles
        from app.pages.part_size import promise_reports as reports

        if kind == "label":
            return reports.write_machine_label(self.context, self.result, path)
        if kind in ("trial", "kept"):
            return write_newest(self.context, "sizeerror" if kind == "trial" else self.subject, path)
        check = newest_check(self.context, self.context.instrument_id)
        if kind == "card":
            paper = path.suffix.lower() != ".csv"
            return reportfiles.write_one(reports.card_pages(self.context, check, for_paper=paper), path)
        if self.result is None:
            return False
        inch, proofs = inches_for(self.subject), reports.proof_plots(self.context)
        plots = {"promise": self.plot.data, **{n: plot_in_inch(plot) if inch else plot for n, plot in proofs.items()}}
        pictures = {name: drawn for name, plot in plots.items() if (drawn := reportfiles.plot_image(plot)) is not None}
        return reportfiles.write_one(reports.promise_pages(self.context, check, self.result), path, pictures, inch=inch)

    def _answer_context(self) -> None:
        self.reports.setEnabled(self.context.machine is not None)
        super()._answer_context()

    def _answer_tolerance(self) -> None:
        self.grid.show_field("own_mm", self.tolerance.value() == _OWN)
        self.recompute()

    def _show_again(self) -> None:
        if self.result is not None:
            self.show_result(self.result)

    def _lay_out(self) -> None:
        above = QHBoxLayout()
        above.addWidget(heading(self.title), 1)
        above.addWidget(self.reports)
        self.grid.add("group", self.tr("&Features"), self.group)
        self.grid.add("tolerance", self.tr("&Tolerance asked for"), self.tolerance)
        self.grid.add("own_mm", self.tr("&Plus-minus"), self.own_mm, self.tr("mm"))
        self.grid.add("peg_mm", self.tr("Pe&g"), self.peg_mm, self.tr("mm"))
        self.grid.add("share", self.tr("Go toget&her"), self.share, self.tr("%"))
        self.grid.show_field("own_mm", False)
        for column, share in enumerate((3, 5, 2, 2, 2)):
            self.grid.set_share(column, share)
        across, down = QHBoxLayout(), QVBoxLayout(self)
        across.setSpacing(2 * STEP_PX)
        across.addWidget(self.plot, 60)
        across.addWidget(self.card, 40)
        down.setContentsMargins(0, 0, 0, 0)
        down.setSpacing(STEP_PX)
        down.addLayout(above)
        down.addWidget(self.grid)
        down.addLayout(across, 1)
        self.table.setMaximumHeight(_ROWS * (self.fontMetrics().height() + 8) + 34)
        down.addWidget(framed(self.table))
        self.setFocusProxy(self.group)
