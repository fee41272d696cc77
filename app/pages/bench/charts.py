"""The page *Charts*: kept results of a machine or a lot in the order of time, and whether anything changed."""

from __future__ import annotations

from collections import Counter
from functools import partial
from typing import TYPE_CHECKING, ClassVar, NamedTuple

from PySide6.QtCore import QSignalBlocker
from PySide6.QtWidgets import QHBoxLayout, QLabel, QVBoxLayout, QWidget

from app.context import Context, Level
from app.pages.base import Page
from app.theme import STEP_PX
from app.widgets.chartpair import ChartPair
from app.widgets.fieldgrid import FieldGrid
from app.widgets.fields import ChoiceField
from app.widgets.plotpane import PlotData
from app.widgets.resultcard import ResultCard
from app.widgets.resulttext import CardData, Paragraph
from app.words import shown
from core.errors import InputError, StoreError
from core.records.rows import SeriesPoint, Trial

if TYPE_CHECKING:
    from core.guidance.charted import Quantity
    from core.guidance.drift import Drift, Event

_EVERY = ""  # the choice of every machine or lot


class Asked(NamedTuple):
    """What is charted, its results oldest first, and what happened meanwhile."""

    quantity: Quantity
    points: tuple[SeriesPoint, ...]
    events: tuple[Event, ...]


class ChartsPage(Page):
    """Nothing is typed here: what is kept on the other pages is held against limits of its own.

    Attributes:
        events: what happened to machine or lot; an identified one begins the limits anew.
    """

    subject: ClassVar[str] = "charts"

    def __init__(self, context: Context, parent: QWidget | None = None) -> None:
        super().__init__(context, parent)
        self.title = self.tr("Charts")
        self.events: tuple[Event, ...] = ()
        self._quantities: dict[str, Quantity] = {}
        self.settings_grid = FieldGrid(5)
        self.plots = ChartPair(self.tr("Nothing to chart yet."))
        self.card = ResultCard(self.tr("What the chart says"))
        self.owner, self.quantity, self.machine, self.lot, self.kind = (ChoiceField() for _ in range(5))
        self._make_choices()
        self._lay_out()
        for choice in (self.quantity, self.machine, self.lot):
            choice.changed.connect(self.recompute)
        self.owner.changed.connect(self._answer_owner)
        self.kind.changed.connect(self._show_again)
        for plot in (self.plots.above, self.plots.below):
            plot.said.connect(context.notice)
        for changed in (context.machine_changed, context.lot_changed, context.kept):
            changed.connect(self._answer_context)

    # The four methods of a page

    def read(self) -> Asked:
        """Return the kept results of the chosen quantity, machine and lot.

        Raises:
            InputError: field `machine` where there is none; `value` where nothing is kept yet.
        """
        from core.guidance.charted import results_in_order
        from core.guidance.drift import changes_of_owner

        quantity, machine_id, lot_id = self._quantities[str(self.quantity.value())], *self._whose()
        fetch = partial(self.context.store.series, machine_id=machine_id, lot_id=lot_id)
        points = results_in_order(quantity.name, fetch)
        if not points:
            raise InputError("value", self._what_to_keep(quantity))
        names = ({row.id or 0: row.name for row in rows} for rows in (self.context.store.lots(),
                                                                     self.context.store.machines()))  # fmt: skip
        return Asked(quantity, points, (*self.events, *changes_of_owner(quantity, points, *names)))

    def compute(self, readings: Asked) -> Drift:
        """Judge them: one call into the core."""
        from core.guidance.drift import judge_drift

        return judge_drift(*readings)

    def show_result(self, result: Drift) -> None:
        """Draw the chosen chart and say what it says."""
        from app.pages.bench.chartcard import chart_card
        from app.pages.bench.chartplot import dates_plot, ewma_plot, individuals_plot, ranges_plot

        kind = self.kind.value()
        if kind == "individuals":
            self.plots.set_data(individuals_plot(result), ranges_plot(result))
        else:
            self.plots.set_data(ewma_plot(result) if kind == "ewma" else dates_plot(result))
        self.card.show_card(chart_card(result, smoothed=kind == "ewma"))

    def record(self) -> Trial:
        """Return an empty trial: a chart keeps nothing."""
        return Trial(subject=self.subject)

    # Hooks

    def recompute(self) -> None:
        """Read the store anew; say where it fails."""
        try:
            super().recompute()
        except StoreError as error:
            self.context.say(shown(error.message), Level.ERROR)

    def keep(self) -> None:
        """Say that there is nothing to keep here."""
        self.context.say(self.tr("A chart has nothing to keep; trials are kept on their own pages."), Level.INFO)

    def save_draft(self) -> bool:
        """Nothing is typed here, so nothing can be lost."""
        return True

    def show_problem(self, field: str, row: int | None, message: str) -> None:  # noqa: ARG002
        """Show why there is no chart."""
        self.plots.set_data(PlotData((), title=shown(self._quantities[str(self.quantity.value())].words)))
        if field == "value":
            self.card.show_empty(message)
        else:
            self.card.show_card(CardData((Paragraph(self.tr("Cannot tell yet"), message, "unknown"),), can_keep=False))

    def load_draft(self, trial: Trial | None) -> None:  # noqa: ARG002
        """Follow the machine and lot picked above."""
        self._offer()
        with QSignalBlocker(self.machine), QSignalBlocker(self.lot):
            self.machine.set_value(_key(self.context.machine))
            self.lot.set_value(_key(self.context.lot))

    def shown(self) -> None:
        """Chart what was kept meanwhile."""
        self._offer()
        self.recompute()

    def _make_choices(self) -> None:
        self.owner.set_choices([("machine", self.tr("the machine's")), ("lot", self.tr("the lot's"))])
        self.kind.set_choices([
            ("individuals", self.tr("single results")),
            ("ewma", self.tr("smoothed mean")),
            ("dates", self.tr("by date")),
        ])  # fmt: skip
        for key, label, choice in (
            ("owner", self.tr("&Whose"), self.owner),
            ("quantity", self.tr("&Quantity"), self.quantity),
            ("machine", self.tr("M&achine"), self.machine),
            ("lot", self.tr("&Lot"), self.lot),
            ("kind", self.tr("C&hart"), self.kind),
        ):
            self.settings_grid.add(key, label, choice)
        self._show_lot(visible=False)

    def _show_lot(self, *, visible: bool) -> None:
        """Show the choice of the lot, or give its room to the others."""
        self.settings_grid.show_field("lot", visible)
        for column, share in enumerate((3, 4, 3, 3, 4) if visible else (3, 5, 3, 3, 0)):
            self.settings_grid.set_share(column, share)

    def _lay_out(self) -> None:
        heading = QLabel(self.title)
        heading.setObjectName("heading")
        across, down = QHBoxLayout(), QVBoxLayout(self)
        across.setSpacing(2 * STEP_PX)
        across.addWidget(self.plots, 63)
        across.addWidget(self.card, 37)
        down.setContentsMargins(0, 0, 0, 0)
        down.setSpacing(STEP_PX)
        down.addWidget(heading)
        down.addWidget(self.settings_grid)
        down.addLayout(across, 1)
        self.card.keep_button.hide()
        self.setFocusProxy(self.quantity)

    def _answer_owner(self) -> None:
        self._show_lot(visible=self.owner.value() == "lot")
        self._offer()
        self.recompute()

    def _answer_context(self) -> None:
        if self.isVisible():
            self._offer()
            self.recompute()

    def _show_again(self) -> None:
        if self.result is not None:
            self.show_result(self.result)

    def _offer(self) -> None:
        """List machines, lots and quantities as they are now; choices stay where they are still there."""
        try:
            machines, lots = self.context.store.machines(), self.context.store.lots()
            found = Counter(e.name for trial in self.context.store.trials() for e in trial.estimates)
        except StoreError as error:
            self.context.say(shown(error.message), Level.ERROR)
            return
        every = [(_EVERY, self.tr("every machine"))] if self.owner.value() == "lot" else []
        with QSignalBlocker(self.machine), QSignalBlocker(self.lot), QSignalBlocker(self.quantity):
            self.machine.set_choices([*every, *((str(m.id), m.name) for m in machines)])
            self.lot.set_choices([(_EVERY, self.tr("every lot")), *((str(lot.id), lot.name) for lot in lots)])
            self._offer_quantities(found)

    def _offer_quantities(self, found: Counter[str]) -> None:
        """List what the owner has; first chosen is the one with most results of late."""
        from core.guidance.charted import main_quantities, other_quantities

        every = (*main_quantities(), *other_quantities(found))
        mine = [quantity for quantity in every if quantity.owner == self.owner.value()]
        before = self.quantity.value()
        self._quantities = {quantity.name: quantity for quantity in mine}
        self.quantity.set_choices([(quantity.name, shown(quantity.words)) for quantity in mine])
        words = self.quantity.view()
        words.setMinimumWidth(words.sizeHintForColumn(0) + 3 * STEP_PX)  # the list may be wider than its field
        if before not in self._quantities:
            self.quantity.set_value(max(self._quantities, key=lambda name: found[name]))

    def _whose(self) -> tuple[int | None, int | None]:
        machine, lot = self.machine.value() or _EVERY, self.lot.value() or _EVERY
        if self.owner.value() == "machine":
            if not machine:
                raise InputError("machine", self.tr("Choose or add a machine above; its results are charted here."))
            return int(machine), None
        return int(machine) if machine else None, int(lot) if lot else None

    def _what_to_keep(self, quantity: Quantity) -> str:
        return self.tr(
            "No kept result of this yet: {quantity}. Keep a trial first: {page}. Eight results give trial limits, "
            "twenty firm ones."
        ).format(quantity=shown(quantity.words), page=shown(quantity.kept_on))


def _key(row: object) -> str:
    row_id = getattr(row, "id", None)
    return _EVERY if row_id is None else str(row_id)
