"""The left side of pages with scored specimens: what to mind, what to print, and rows that hide the step."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from PySide6.QtCore import QSignalBlocker
from PySide6.QtWidgets import QLabel, QPushButton, QVBoxLayout, QWidget

from app.pages.motion_trials.scorerows import JUDGES, Row, piece_of
from app.rownames import shown_name
from app.theme import STEP_PX
from app.widgets.reading_rows import Column
from app.widgets.trialform import TrialForm
from app.widgets.trialpicker import TrialPicker
from core.errors import InputError

_BLIND = ("judge", "step")


class ScoreForm(TrialForm):
    """A trial form whose rows are specimens with a step that stays hidden until asked for.

    Attributes:
        caution, how: sentences above the entry: what to mind, what to print and look at.
        scale: which way the scale of the score that is typed next goes; hidden where `how` says it.
        plan_problem: why the rows cannot be planned as the settings say; None where they can.
        key_button: shows judge and step; who prints needs them, who scores must not see them.
        more_button: adds another set of specimens.
    """

    def __init__(self, picker: TrialPicker, step_title: str) -> None:
        self.caution, self.how, self.scale = QLabel(), QLabel(), QLabel()
        self.caution.setObjectName("question")
        self.how.setObjectName("quiet")
        above = QWidget()
        column = QVBoxLayout(above)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(STEP_PX // 2)
        for label in (self.caution, self.how, self.scale):
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
        self.reads_instrument = False
        self._covered: frozenset[str] = frozenset()
        self.key_button = QPushButton(self.tr("Show the s&teps"))
        self.key_button.setCheckable(True)
        self.more_button = QPushButton(self.tr("Anot&her set of pieces"))
        self.scale.hide()
        self.foot.addWidget(self.key_button)
        self.foot.addWidget(self.more_button)
        self.key_button.toggled.connect(self.show_columns)
        self.more_button.clicked.connect(self.add_set)
        self.entry.row_changed.connect(self._show_scale)
        self.entry.row_changed.connect(self._cover)
        self.model.edited.connect(self._cover)

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

    def scale_text(self, row: Row) -> str:
        """Return which way the scale of a row goes; nothing where all rows have one scale."""
        return ""

    def may_be_left_out(self, row: Row) -> bool:
        """Whether nobody waits for the value of a row."""
        return False

    def planned(self, first: int) -> Sequence[Row]:
        """Return the rows of one set of specimens; `first` letters are taken.

        Raises:
            InputError: the settings make no set.
        """
        raise NotImplementedError

    def _show_scale(self, place: int) -> None:
        rows = self.model.rows()
        text = self.scale_text(rows[place]) if 0 <= place < len(rows) else ""
        self.scale.setText(text)
        self.scale.setVisible(bool(text))

    def _cover(self) -> None:
        """Hide the scores of whoever does not score now, until all scores are in: no judge is led by another."""
        covered = self._other_judges() if self.waiting() and not self.more_button.isHidden() else frozenset()
        if covered != self._covered:
            self._covered = covered
            self.model.cover((lambda row: row.get("judge") in covered) if covered else None)

    def _other_judges(self) -> frozenset[str]:
        """Return the judges but the one whose pieces are typed in now; one who is done too, as another sits down."""
        rows = [row for row in self.model.rows() if row["axis"] == self.group and row.get("judge")]
        scoring = {row["judge"] for row in rows if row["raw"] == "" and not row["excluded"]}
        place = self.entry.current_row()
        now = self.model.values(place).get("judge") if 0 <= place < self.model.rowCount() else None
        return frozenset(str(row["judge"]) for row in rows) - ({now} & scoring)

    def replan(self) -> None:
        """Plan the rows anew, unless a reading of the chosen trial is in: then its pieces are printed, and stay."""
        had_problem, planned = self.plan_problem is not None, self.planned_or_none(0)
        rows = self.model.rows()
        own = [row for row in rows if row["axis"] == self.group]
        others = [row for row in rows if row["axis"] != self.group and _is_taken(row)]
        self._show_planned(own if any(_is_taken(row) for row in own) else planned, others)
        if had_problem and self.plan_problem is None:
            self.changed.emit()  # the rows may be as they were

    def add_set(self) -> None:
        """Add the rows of another set of specimens."""
        rows = self.model.rows()
        own = [row for row in rows if row["axis"] == self.group]
        others = [row for row in rows if row["axis"] != self.group]
        marks = {piece_of(row) for row in own}
        self._show_planned([*own, *self.planned_or_none(len(marks))], others)
        self.entry.setFocus()

    def planned_or_none(self, first: int) -> Sequence[Row]:
        """Return the rows of one set, none where the settings make none; `plan_problem` says why."""
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
        """Return by judge the pieces that have no score yet; none where the steps are shown or need no secret.

        Where several things are scored, each entry names one of them and its pieces.
        """
        if not self.is_secret or self.key_button.isChecked():
            return {}
        found: dict[str, dict[str, list[str]]] = {}
        for row in self.model.rows():
            awaited = row.get("judge") and row["measured_mm"] is None and not row["excluded"]
            if row["axis"] == self.group and awaited and not self.may_be_left_out(row):
                piece, *scored_by = shown_name(row["feature"]).split(", ")  # pasted below the planned ones: none
                found.setdefault(str(row["judge"]), {}).setdefault(" ".join(scored_by[:-1]), []).append(piece)
        return {who: [text for of, pieces in by.items() for text in _named(of, pieces)] for who, by in found.items()}

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
        self._cover()

    def optional(self, key: str) -> float | None:
        """Return a number that may be left empty, None too where it cannot be read."""
        try:
            value = self.settings.field(key).value()
        except InputError:
            return None
        return None if value is None else float(value)


def _named(of: str, pieces: Sequence[str]) -> Sequence[str]:
    """Return pieces as they are, or as one text that begins with what is scored of them."""
    return [" ".join([of, *pieces])] if of else pieces


def _is_taken(row: Row) -> bool:
    return bool(row["raw"] or row["excluded"])
