"""What stands above the verdict of an instrument check: correction curve, uncertainty budget, or results in doubt."""

from __future__ import annotations

from collections.abc import Sequence

from PySide6.QtCore import Qt
from PySide6.QtWidgets import (
    QAbstractItemView,
    QFrame,
    QHeaderView,
    QLabel,
    QStackedLayout,
    QTableWidget,
    QTableWidgetItem,
    QVBoxLayout,
    QWidget,
)

from app.dates import moment_text
from app.faults import or_else
from app.theme import STEP_PX
from app.widgets.fields import ChoiceField, local_text, number_text
from app.widgets.labels import heading
from app.widgets.picture import Picture
from app.widgets.plotpane import PlotData, PlotPane
from app.widgets.rowsmodel import told_place
from app.widgets.wraprow import WrapRow
from app.words import shown
from core.measuring.checkpoints import Point
from core.measuring.doubt import Doubtful
from core.measuring.gum import Budget, Component, Coverage, distribution_words
from core.measuring.instrument import InstrumentCheck
from core.measuring.instrumentkinds import part_words
from core.quantity import rounded_pair

_MANY = 10_000  # degrees of freedom; nobody tells more apart
CURVE, BUDGET, DOUBT = "curve", "budget", "doubt"


class InstrumentPane(Picture):
    """One of three views; `view` chooses which and stands in the page's head."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.plot = PlotPane(self.tr("No reference read yet. Its correction appears here at once."))
        self.plot.set_data(PlotData((), title=self.tr("Correction against reference")))
        self.budget = BudgetView()
        self.doubt = DoubtView()
        self.view = ChoiceField(
            [
                (CURVE, self.tr("Correction curve")),
                (BUDGET, self.tr("Uncertainty budget")),
                (DOUBT, self.tr("Results in doubt")),
            ]
        )
        self._stack = QStackedLayout(self)
        for view in (self.plot, self.budget, self.doubt):
            self._stack.addWidget(view)
        self.view.changed.connect(self._turn)
        self.plot.said.connect(self.said)

    @or_else(False)
    def hasHeightForWidth(self) -> bool:
        """Take the share of the height that it is given, whatever the views not in sight would ask for."""
        return False

    def show_inches(self) -> None:
        """Show the curve in inch."""
        super().show_inches()
        self.plot.show_inches()

    def show_nothing(self, why: str = "") -> None:
        """Empty curve and budget; what is in doubt stays so."""
        self.plot.show_nothing(why)
        self.budget.show_check(None)

    def turn_to(self, view: str) -> None:
        """Show a view."""
        self.view.set_value(view)
        self._turn()

    def _turn(self) -> None:
        self._stack.setCurrentIndex(self.view.currentIndex())


class _Figures(QTableWidget):
    """Words and numbers in rows, read only; one step of the Tab key."""

    def __init__(self, titles: Sequence[str], stretch: int, name: str) -> None:
        super().__init__(0, len(titles))
        self.setHorizontalHeaderLabels(titles)
        self.setAccessibleName(name)
        self.setEditTriggers(QAbstractItemView.EditTrigger.NoEditTriggers)
        self.setSelectionBehavior(QAbstractItemView.SelectionBehavior.SelectRows)
        self.setTabKeyNavigation(False)
        self.setShowGrid(False)
        self.setAlternatingRowColors(True)
        self.verticalHeader().hide()
        self.horizontalHeader().setHighlightSections(False)
        for column in range(len(titles)):
            mode = QHeaderView.ResizeMode.Stretch if column == stretch else QHeaderView.ResizeMode.ResizeToContents
            self.horizontalHeader().setSectionResizeMode(column, mode)

    def show_rows(self, rows: Sequence[Sequence[str]], words: Sequence[int]) -> None:
        """Show rows; the columns in `words` are flush left."""
        self.setRowCount(len(rows))
        for row, texts in enumerate(rows):
            for column, text in enumerate(texts):
                item = QTableWidgetItem(text)
                side = Qt.AlignmentFlag.AlignLeft if column in words else Qt.AlignmentFlag.AlignRight
                item.setTextAlignment(side | Qt.AlignmentFlag.AlignVCenter)
                item.setToolTip(text if column in words else "")
                title = str(self.model().headerData(column, Qt.Orientation.Horizontal))
                item.setData(Qt.ItemDataRole.AccessibleDescriptionRole, told_place(title, texts[0]))
                self.setItem(row, column, item)


class BudgetView(QFrame):
    """Every component of the uncertainty of one point, and what they make together."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setObjectName("card")
        self.point = ChoiceField()
        self.point.setAccessibleName(self.tr("Point of the budget"))
        self.table = _Figures(
            [self.tr("Component"), "u", self.tr("Distribution"), "c", "|c|·u", "ν"],
            0,
            self.tr("Uncertainty budget"),
        )
        self.total = QLabel()
        self.total.setWordWrap(True)
        self._check: InstrumentCheck | None = None
        head, column = WrapRow(), QVBoxLayout(self)
        head.setSpacing(STEP_PX)
        head.add(heading(self.tr("Uncertainty budget"), of=self))
        head.add(self.point, shares=True)
        column.setContentsMargins(14, STEP_PX, 14, 12)
        column.addLayout(head)
        column.addWidget(self.table, 1)
        column.addWidget(self.total)
        self.point.changed.connect(self._show_point)
        self.show_check(None)

    def show_check(self, check: InstrumentCheck | None) -> None:
        """Show the budgets of a check, first that of the point nearest to its limit."""
        self._check = check
        points = check.points if check else ()
        self.point.set_choices([("", self.tr("nearest its limit")), *((_key(p), self._name(p)) for p in points)])
        self.point.setVisible(bool(points))
        self._show_point()

    def _show_point(self) -> None:
        check, chosen = self._check, self.point.value()
        points = check.points if check else ()
        point = next((p for p in points if _key(p) == chosen), check.worst() if check else None)
        if point is None or check is None:
            self.table.show_rows([], ())
            self.total.setText(self.tr("No reference read yet."))
            return
        self.table.show_rows([_component_row(component) for component in point.budget.components], (0, 2))
        self.total.setText(self._total(point, point.budget, check.kind.unit))

    def _name(self, point: Point) -> str:
        name = shown(part_words(point.part))
        return name if point.reference == 0.0 else f"{name} {number_text(point.reference)}"

    def _total(self, point: Point, budget: Budget, unit: str) -> str:
        error, U = rounded_pair(point.error, budget.U)
        whence = {
            Coverage.STUDENT: self.tr("Student's t"),
            Coverage.RECTANGLE: self.tr("one rectangle dominates"),
            Coverage.TRAPEZOID: self.tr("two rectangles make a trapezoid"),
        }[budget.coverage]
        return self.tr("{name}: error {error} ± {U} {unit}; u = {u} {unit}, ν = {nu}, k = {k} ({whence}).").format(
            name=self._name(point), error=local_text(error), U=local_text(U), unit=unit, u=_figure(budget.u),
            nu=_dof(budget.dof), k=local_text(f"{budget.k:.2f}"), whence=whence)


class DoubtView(QFrame):
    """The kept results that were read while the instrument was, or may have been, bad."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setObjectName("card")
        self.table = _Figures(
            [self.tr("Trial"), self.tr("Subject"), self.tr("Kept"), self.tr("Machine"), self.tr("Bad check")],
            1,
            self.tr("Results in doubt"),
        )
        self.says = QLabel()
        self.says.setWordWrap(True)
        column = QVBoxLayout(self)
        column.setContentsMargins(14, STEP_PX, 14, 12)
        for part in (heading(self.tr("Results in doubt"), of=self), self.says):
            column.addWidget(part)
        column.addWidget(self.table, 1)
        column.addStretch(0)
        self.show_doubt((), {}, {})

    def show_doubt(self, doubtful: Sequence[Doubtful], subjects: dict[str, str], machines: dict[int, str]) -> None:
        """List results; subjects and machines by their names for people."""
        self.says.setObjectName("question" if doubtful else "quiet")
        self.says.style().unpolish(self.says)  # a style sheet looks at names when it polishes anew
        self.says.style().polish(self.says)
        self.says.setText(
            self.tr("Kept results read with it since its last good check: {count}. Nothing is deleted: read them "
                    "again with another instrument, or withdraw them.").format(count=len(doubtful))
            if doubtful else self.tr("No kept result is in doubt because of this instrument."))
        rows = [
            (
                f"№ {found.trial.id}",
                subjects.get(found.trial.subject, found.trial.subject),
                moment_text(found.trial.kept_at),
                machines.get(found.trial.machine_id or 0, "–"),
                f"№ {found.bad_check_id}",
            )
            for found in doubtful
        ]
        self.table.show_rows(rows, (0, 1, 2, 3, 4))
        self.table.setVisible(bool(rows))


def _component_row(component: Component) -> tuple[str, ...]:
    return (
        shown(component.name),
        _figure(component.u),
        shown(distribution_words(component.distribution)),
        _figure(component.sensitivity),
        _figure(component.contribution),
        _dof(component.dof),
    )


def _key(point: Point) -> str:
    return f"{point.part}:{point.reference!r}"


def _figure(value: float) -> str:
    return local_text(f"{value:.2g}")


def _dof(dof: float) -> str:
    return "∞" if dof >= _MANY else f"{dof:.0f}"
