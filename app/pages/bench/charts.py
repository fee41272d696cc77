"""The page *Charts*: kept results of a machine or a lot in the order of time, and whether anything changed."""

from __future__ import annotations

from collections import Counter
from functools import partial
from typing import TYPE_CHECKING, ClassVar, NamedTuple

from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from app.context import Context, Level
from app.inches import inches_shown
from app.pages.base import Page
from app.pages.bench.chartchoices import USED, ChartChoices, Whose
from app.theme import STEP_PX
from app.units import inches_for
from app.widgets.chartpair import ChartPair
from app.widgets.labels import heading
from app.widgets.plotinch import plot_in_inch
from app.widgets.plotpane import PlotData
from app.widgets.resultcard import ResultCard
from app.widgets.resulttext import CardData, Paragraph
from app.words import shown
from core.errors import InputError, StoreError
from core.records.rows import SeriesPoint, Trial

if TYPE_CHECKING:
    from core.guidance.charted import Quantity
    from core.guidance.drift import Drift, Event


class Asked(NamedTuple):
    """What is charted, its results oldest first, and what happened meanwhile."""

    quantity: Quantity
    points: tuple[SeriesPoint, ...]
    events: tuple[Event, ...]


class ChartsPage(Page):
    """Nothing is typed here: what is kept on the other pages is held against limits of its own."""

    subject: ClassVar[str] = "charts"

    def __init__(self, context: Context, parent: QWidget | None = None) -> None:
        super().__init__(context, parent)
        self.title = self.tr("Charts")
        self.choices = ChartChoices()
        self.plots = ChartPair(self.tr("Nothing to chart yet."))
        self.card = ResultCard(self.tr("What the chart says"))
        self._lay_out()
        self.choices.changed.connect(self._answer_choice)
        for plot in (self.plots.above, self.plots.below):
            plot.said.connect(context.notice)
        for changed in (context.machine_changed, context.lot_changed, context.kept, context.logged):
            changed.connect(self._answer_context)
        context.instrument_changed.connect(self._answer_instrument)

    # The four methods of a page

    def read(self) -> Asked:
        """Return the kept results of the chosen quantity and owner, and what happened meanwhile.

        Raises:
            InputError: field `machine` or `instrument` where there is none; `value` where nothing is kept yet.
        """
        from core.guidance.charted import Owner, results_in_order
        from core.guidance.drift import changes_of_owner

        quantity, whose, store = self.choices.chosen(), self.choices.whose(), self.context.store
        points = results_in_order(quantity.name, partial(store.series, **whose._asdict()))
        if not points:
            raise InputError("value", self._what_to_keep(quantity))
        events = self._events(quantity, whose)
        if quantity.owner != Owner.LOT:  # spares reading names: no print of another lot or machine is among them
            return Asked(quantity, points, events)
        names = ({row.id or 0: row.name for row in rows} for rows in (store.lots(), store.machines()))
        return Asked(quantity, points, (*events, *changes_of_owner(quantity, points, *names)))

    def compute(self, readings: Asked) -> Drift:
        """Judge them: one call into the core."""
        from core.guidance.drift import judge_drift

        return judge_drift(*readings)

    def show_result(self, result: Drift) -> None:
        """Draw the chosen chart and say what it says."""
        from app.pages.bench.chartcard import chart_card
        from app.pages.bench.chartplot import dates_plot, ewma_plot, individuals_plot, ranges_plot

        kind = self.choices.kind.value()
        if kind == USED:
            self._show_wear(result)
            return
        if kind == "individuals":
            plots = [individuals_plot(result), ranges_plot(result)]
        else:
            plots = [ewma_plot(result) if kind == "ewma" else dates_plot(result)]
        self._show(result, chart_card(result, smoothed=kind == "ewma"), *plots)

    def record(self) -> Trial:
        """Return an empty trial: a chart keeps nothing."""
        return Trial(subject=self.subject)

    # Hooks

    def keep(self) -> None:
        """Say that there is nothing to keep here."""
        self.context.say(self.tr("A chart has nothing to keep; trials are kept on their own pages."), Level.INFO)

    def save_draft(self) -> bool:
        """Nothing is typed here, so nothing can be lost."""
        return True

    def show_problem(self, field: str, row: int | None, message: str) -> None:  # noqa: ARG002
        """Show why there is no chart."""
        self.plots.set_data(PlotData((), title=shown(self.choices.chosen().words)))
        if field == "value":
            self.card.show_empty(message)
        else:
            self.card.show_card(CardData((Paragraph(self.tr("Cannot tell yet"), message, "unknown"),), can_keep=False))

    def load_draft(self, trial: Trial | None) -> None:  # noqa: ARG002
        """Follow the machine and lot picked above."""
        self._offer()
        self.choices.follow(machine=self.context.machine, lot=self.context.lot)
        self.choices.follow(instrument=self.context.instrument)

    def shown(self) -> None:
        """Chart what was kept meanwhile."""
        self._offer()
        self.recompute()

    def _lay_out(self) -> None:
        across, down = QHBoxLayout(), QVBoxLayout(self)
        across.setSpacing(2 * STEP_PX)
        across.addWidget(self.plots, 63)
        across.addWidget(self.card, 37)
        down.setContentsMargins(0, 0, 0, 0)
        down.setSpacing(STEP_PX)
        down.addWidget(heading(self.title))
        down.addWidget(self.choices)
        down.addLayout(across, 1)
        self.card.keep_button.hide()
        self.setFocusProxy(self.choices.quantity)

    def _answer_choice(self, key: str) -> None:
        """Chart what is chosen now; another picture of the same results needs no new ones."""
        if key == "kind" and self.result is not None and self.choices.kind.value() != USED:
            self.show_result(self.result)
            return
        if key == "owner":
            self.choices.show_owned()
            self._offer()
        self.recompute()

    def _show_wear(self, drift: Drift) -> None:
        """Draw the results against the filament used, or say which weighing would tell."""
        from app.pages.bench.wearview import find_wear, wear_card, wear_plot

        try:
            wear = find_wear(self.context, drift)
        except InputError as error:
            self.show_problem(error.field, error.row, shown(error.message))
            return
        self._show(drift, wear_card(wear, drift), wear_plot(wear, drift))

    def _show(self, drift: Drift, card: CardData, *plots: PlotData) -> None:
        """Show card and plots, lengths in the unit in which the page that keeps them shows them."""
        newest = drift.points[-1]
        if newest.unit == "mm" and inches_shown() and inches_for(self.context.store.trial(newest.trial_id).subject):
            card, plots = card.in_inch(), tuple(plot_in_inch(plot) for plot in plots)
        self.plots.set_data(*plots)
        self.card.show_card(card)

    def _answer_instrument(self) -> None:
        self._offer()
        self.choices.follow(instrument=self.context.instrument)
        self._answer_context()

    def _answer_context(self) -> None:
        if self.isVisible():
            self._offer()
            self.recompute()

    def _offer(self) -> None:
        """List machines, lots, instruments and quantities as they are now."""
        store = self.context.store
        try:
            rows = store.machines(), store.lots(), store.instruments(), Counter(store.results_of_late())
        except StoreError as error:
            self.context.say(shown(error.message), Level.ERROR)
            if self.choices.quantity.count():
                return  # they stand as they were
            rows = (), (), (), Counter()
        self.choices.offer(*rows)

    def _events(self, quantity: Quantity, whose: Whose) -> tuple[Event, ...]:
        """Return what was logged of the owner; of a print also what befell the machine that made it."""
        from core.guidance.chartevents import marked_events

        store, (machine_id, lot_id, instrument_id) = self.context.store, whose
        of_machine = machine_id is not None and (quantity.of_print or quantity.owner == "machine")
        logged = [
            *(store.events(machine_id=machine_id) if of_machine else ()),
            *(store.events(lot_id=lot_id) if lot_id is not None else ()),
            *(store.events(instrument_id=instrument_id) if instrument_id is not None else ()),
        ]
        return marked_events({event.id: event for event in logged}.values(), quantity.name)

    def _what_to_keep(self, quantity: Quantity) -> str:
        return self.tr(
            "No kept result of this yet: {quantity}. Keep a trial first: {page}. Eight results give trial limits, "
            "twenty firm ones."
        ).format(quantity=shown(quantity.words), page=shown(quantity.kept_on))
