"""The left side of pages with scored specimens: what to mind, what to print, and rows that hide the step."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import replace
from typing import Any

from PySide6.QtCore import QSignalBlocker
from PySide6.QtWidgets import QLabel, QPushButton, QVBoxLayout, QWidget

from app.theme import STEP_PX
from app.widgets.fields import number_text
from app.widgets.reading_rows import Column
from app.widgets.trialform import TrialForm
from app.widgets.trialpicker import TrialPicker
from app.words import shown
from core.errors import InputError
from core.words import tr

JUDGES = ("1", "2")
_BLIND = ("judge", "step")
_LETTERS = "ABCDEFGHJKLMNPQRSTUVWXYZ"  # without I and O: they are read as numbers on a printed part
Row = Mapping[str, Any]


class ScoreForm(TrialForm):
    """A trial form whose rows are specimens with a step that stays hidden until asked for.

    Attributes:
        caution, how: sentences above the entry: what to mind, what to print and look at.
        plan_problem: why the rows cannot be planned as the settings say; None where they can.
        key_button: shows judge and step; who prints needs them, who scores must not see them.
        more_button: adds another set of specimens.
    """

    def __init__(self, picker: TrialPicker, step_title: str) -> None:
        self.caution, self.how = QLabel(), QLabel()
        self.caution.setObjectName("question")
        self.how.setObjectName("quiet")
        above = QWidget()
        column = QVBoxLayout(above)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(STEP_PX // 2)
        for label in (self.caution, self.how):
            label.setWordWrap(True)
            column.addWidget(label)
        self._columns = (
            Column("feature", self.tr("Specimen"), editable=False),
            Column("judge", self.tr("Judge"), "choice", choices=JUDGES),
            Column("step", step_title, "number"),
            Column("measured_mm", self.tr("Score"), "number", low=0.0),
        )
        super().__init__(self._columns, picker, above_entry=above, across=3, foretells=False)
        self.plan_problem: InputError | None = None
        self.key_button = QPushButton(self.tr("Show the s&teps"))
        self.key_button.setCheckable(True)
        self.more_button = QPushButton(self.tr("Anot&her set of pieces"))
        self.foot.addWidget(self.key_button)
        self.foot.addWidget(self.more_button)
        self.key_button.toggled.connect(self.show_columns)
        self.more_button.clicked.connect(self.add_set)

    @property
    def group(self) -> str:
        """Name under which the rows of the chosen trial go."""
        raise NotImplementedError

    @property
    def is_secret(self) -> bool:
        """Whether who scores must not see the steps."""
        return True

    def value_title(self) -> str:
        """Return the title of the column that is read."""
        return self.tr("Score")

    def planned(self, first: int) -> Sequence[Row]:
        """Return the rows of one set of specimens; `first` letters are taken.

        Raises:
            InputError: the settings make no set.
        """
        raise NotImplementedError

    def replan(self) -> None:
        """Plan the rows anew; readings that are in stay, those of the chosen trial above."""
        taken = [row for row in self.model.rows() if row["raw"] or row["excluded"]]
        own = [row for row in taken if row["axis"] == self.group]
        others = [row for row in taken if row["axis"] != self.group]
        self._show_planned(own or self._planned_or_none(0), others)

    def add_set(self) -> None:
        """Add the rows of another set of specimens."""
        rows = self.model.rows()
        own = [row for row in rows if row["axis"] == self.group]
        others = [row for row in rows if row["axis"] != self.group]
        marks = {str(row["feature"]).partition(",")[0] for row in own}
        self._show_planned([*own, *self._planned_or_none(len(marks))], others)
        self.entry.setFocus()

    def _planned_or_none(self, first: int) -> Sequence[Row]:
        self.plan_problem = None
        try:
            return self.planned(first)
        except InputError as error:
            self.plan_problem = error
            return ()

    def _show_planned(self, own: Sequence[Row], others: Sequence[Row]) -> None:
        self.model.replan([*own, *others])
        self.show_columns()
        self.entry.go_to(self.model.next_empty(self.model.rowCount() - 1) or 0)
        if self.plan_problem is not None:
            self.changed.emit()

    def waiting(self) -> dict[str, list[str]]:
        """Return by judge the pieces that have no score yet; none where the steps are shown or need no secret."""
        if not self.is_secret or self.key_button.isChecked():
            return {}
        found: dict[str, list[str]] = {}
        for row in self.model.rows():
            if row["axis"] == self.group and row.get("judge") and row["measured_mm"] is None and not row["excluded"]:
                found.setdefault(str(row["judge"]), []).append(str(row["feature"]).partition(",")[0])
        return found

    def check_plan(self) -> None:
        """Refuse settings that make no ladder.

        Raises:
            InputError: at that field.
        """
        if self.plan_problem is not None:
            raise self.plan_problem

    def show_rows(self, rows: Sequence[Row]) -> None:
        """Show other readings; the steps are hidden again."""
        with QSignalBlocker(self.key_button):
            self.key_button.setChecked(False)
        super().show_rows(rows)
        self.show_columns()

    def lock(self, locked: bool) -> None:
        """Show a kept trial with its steps: there is nothing left to score."""
        super().lock(locked)
        self.show_columns()

    def show_columns(self) -> None:
        """Hide judge and step of scored specimens unless they are asked for; measured ones have no judge."""
        own = [row for row in self.model.rows() if row["axis"] == self.group]
        judged = any(row.get("judge") for row in own)
        is_kept = self.more_button.isHidden()
        hidden = judged and not (self.is_secret and (self.key_button.isChecked() or is_kept))
        *others, value = self._columns
        self.model.set_columns((*others, replace(value, title=self.value_title())))
        for place, column in enumerate(self.model.columns):
            unused = column.key == "judge" and not judged
            self.table.setColumnHidden(place, unused or (hidden and column.key in _BLIND))
        self.key_button.setVisible(judged and self.is_secret and not is_kept)

    def number(self, key: str) -> float:
        """Return a number that is needed.

        Raises:
            InputError: at that field, where it is empty or cannot be read.
        """
        value = self.settings.field(key).value()
        if value is None:
            raise InputError(key, self.tr("Nothing is typed here yet; this one is needed."))
        return float(value)

    def optional(self, key: str) -> float | None:
        """Return a number that may be left empty, None too where it cannot be read."""
        try:
            value = self.settings.field(key).value()
        except InputError:
            return None
        return None if value is None else float(value)


def at_specimen(error: InputError, fields: Mapping[str, str], places: Sequence[int], rows: Sequence[Row]) -> InputError:
    """Return what stands against the readings with the names of the page: field, row of the table, specimen.

    Args:
        error: from the core; its row counts the readings that were used.
        fields: by the core's name of a field that of the page.
        places: rows of the table that were used.
        rows: of the table.
    """
    field = fields.get(error.field, error.field)
    if error.row is None:
        return InputError(field, error.message)
    place = places[error.row]
    says = tr("{specimen}: {says}", specimen=str(rows[place]["feature"]), says=error.message)
    return InputError(field, says, place)


def scored_rows(steps: Sequence[float], order: Sequence[int], first: int, group: str) -> list[dict[str, Any]]:
    """Return the rows of a set of specimens, one judge after the other.

    Args:
        steps: of the ladder.
        order: place of the step that each letter stands for.
        first: how many letters are taken already.
        group: which trial the rows belong to.
    """
    return [
        specimen_row(
            shown(tr("{letter}, judge {judge}", letter=letter_of(first + place), judge=judge)), steps[at], group, judge
        )
        for judge in JUDGES
        for place, at in enumerate(order)
    ]


def specimen_row(name: str, step: float, group: str, judge: str = "") -> dict[str, Any]:
    """Return an empty reading of a specimen."""
    steps = {"step": step, "step_raw": number_text(step)}
    return {"feature": name, "axis": group, "kind": "travel", "judge": judge, **steps}


def letter_of(number: int) -> str:
    """Return the mark of a specimen: A, B, ..., then A2, B2, ..."""
    round_, place = divmod(number, len(_LETTERS))
    return _LETTERS[place] + (str(round_ + 1) if round_ else "")


def places_in(rows: Sequence[Row], group: str) -> list[int]:
    """Return the rows of a trial whose reading counts."""
    return [
        place
        for place, row in enumerate(rows)
        if row["axis"] == group
        and row["measured_mm"] is not None
        and row.get("step") is not None
        and not row["excluded"]
        and not row["questioned"]
    ]
