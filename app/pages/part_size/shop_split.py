"""The page *Shop split*: what stays with a machine, what travels with a filament lot, by all trials of the shop."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path
from typing import TYPE_CHECKING, ClassVar

from PySide6.QtCore import QSignalBlocker
from PySide6.QtWidgets import QWidget

from app.context import Context, Level
from app.jobs import at_once
from app.pages.part_size.keptreport import newest_name, write_newest
from app.pages.part_size.linkedpairs import told_apart
from app.pages.part_size.storedpage import StoredPage, Work
from app.widgets.fieldgrid import FieldGrid
from app.widgets.fields import ChoiceField
from app.widgets.plaintable import PlainTable
from app.widgets.reportbutton import ReportButton
from app.widgets.resultcard import ResultCard
from app.widgets.shopview import ShopPane
from app.words import shown
from core.measuring.tolerance import CLASSES
from core.records.rows import SettingInForce, Trial

if TYPE_CHECKING:
    from core.guidance.shopadvice import ShopJudgement
    from core.guidance.splitshop import Shop



class ShopSplitPage(StoredPage):
    """Nothing is typed here: every kept size trial with its machine and lot counts."""

    subject: ClassVar[str] = "shop_split"

    def __init__(self, context: Context, parent: QWidget | None = None) -> None:
        super().__init__(context, parent)
        self.title = self.tr("Shop split")
        self.grid = FieldGrid(2)
        self.axis = ChoiceField([(axis, axis.upper()) for axis in "xyz"])
        self.tolerance = ChoiceField([(key, shown(words)) for key, words in CLASSES.items()])
        self.tolerance.set_value("m")
        self.picture = ShopPane(self.tr("Machines and lots"), self.tr("Nothing to tell apart yet."))
        headings = (self.tr("Name"), self.tr("What"), self.tr("Share, %"), self.tr("X less Y, %"), self.tr("Prints"))
        self.table = PlainTable(self.tr("Shares in numbers"), headings, numbers_from=2)
        self.card = ResultCard(self.tr("What the prints say"))
        self.report = ReportButton(self._write_report, self.tr("Re&port"), newest=True, name=self._report_name)
        self._lay_out()
        self.axis.changed.connect(self._show_again)
        self.tolerance.changed.connect(self.recompute)
        self.card.keep_clicked.connect(self.keep)
        self.picture.said.connect(context.notice)
        self.report.said.connect(context.notice)
        for changed in (context.machine_changed, context.lot_changed, context.kept):
            changed.connect(self._answer_context)

    # The four methods of a page

    def read(self) -> Shop:
        """Return all that is kept, told apart."""
        return told_apart(self.context, at_once)

    def compute(self, readings: Shop) -> ShopJudgement:
        """Judge it for the picked machine and lot: one call into the core."""
        return _judged(readings, self._picked(), str(self.tolerance.value()))

    def work(self) -> Work:
        """Return both for a worker."""
        context, picked, tolerance = self.context, self._picked(), str(self.tolerance.value())
        return lambda step: _judged(told_apart(context, step), picked, tolerance)

    def show_result(self, result: ShopJudgement) -> None:
        """Draw who printed what, fill the table, say what it means."""
        from app.pages.part_size.shop_view import shop_card, shop_picture, shop_rows

        offered = [(axis, axis.upper()) for axis in result.shop.axes]
        with QSignalBlocker(self.axis):
            self.axis.set_choices(offered)
        found = result.shop.axes[str(self.axis.value())]
        self.picture.show_data(shop_picture(result.shop, found, self._picked()))
        self.table.set_rows(shop_rows(result.shop, found))
        self.card.show_card(shop_card(result, self._why_not_keep(result)))

    def record(self) -> Trial:
        """Return the shares of the picked machine and lot, with all trials that they rest on."""
        machine_id, lot_id = self._picked()
        trial = Trial(self.subject, machine_id, lot_id)
        if self.result is None:
            return trial
        verdict = tuple(advice.as_json() for advice in self.result.advice)
        return replace(
            trial,
            estimates=self.result.estimates(),
            verdict=verdict,
            used=self.result.trial_ids(),
            method=self.result.method,
            conditions={"tolerance": self.tolerance.value()},
        )

    # Hooks

    def settings(self) -> tuple[SettingInForce, ...]:
        """Return the allowances and axis scales that the verdict gives."""
        machine_id, lot_id = self._picked()
        if self.result is None or machine_id is None:
            return ()
        found = []
        for name, new in self.result.settings():
            of_lot = lot_id if name.startswith("shrink") else None
            old = self.context.store.in_force(name, machine_id, lot_id)
            found.append(SettingInForce(machine_id, of_lot, name, old.new if old else 1.0, new, "1"))
        return tuple(found)

    def keep(self) -> None:
        """Keep the shares, unless the card says why not."""
        if not self.is_up_to_date():
            return
        if self.result is not None and (why_not := self._why_not_keep(self.result)):
            self.context.say(why_not, Level.WARNING)
            return
        super().keep()

    def show_no_picture(self) -> None:
        """Empty the picture."""
        self.picture.show_nothing()

    def _write_report(self, _kind: str, path: Path) -> bool:
        """Write the split of the picked machine and lot that was kept last; the button says whether it could."""
        return write_newest(self.context, self.subject, path)

    def _report_name(self, _kind: str) -> str:
        return newest_name(self.context, self.subject)

    def _picked(self) -> tuple[int | None, int | None]:
        return self.context.machine_id, self.context.lot_id

    def _why_not_keep(self, result: ShopJudgement) -> str:
        return "" if result.pairs else self.tr("Choose a machine and a lot above; their shares are kept.")

    def _show_again(self) -> None:
        if self.result is not None:
            self.show_result(self.result)

    def _lay_out(self) -> None:
        self.grid.add("axis", self.tr("A&xis"), self.axis)
        self.grid.add("tolerance", self.tr("&Tolerance"), self.tolerance)
        for column, share in enumerate((1, 4)):
            self.grid.set_share(column, share)
        self.lay_out(self.picture, 58)
        self.card.add_at_head(self.report)
        self.setFocusProxy(self.axis)




def _judged(shop: Shop, picked: tuple[int | None, int | None], tolerance: str) -> ShopJudgement:
    from core.guidance.shopadvice import judge_shop

    return judge_shop(shop, *picked, tolerance)
