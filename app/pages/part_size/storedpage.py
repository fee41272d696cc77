"""What the pages share that judge what is kept already: nothing is measured on them, so nothing on them can be lost."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from app.context import Context, Level
from app.jobs import Step
from app.pages.base import Page
from app.theme import STEP_PX
from app.units import choose_unit
from app.waitrow import WaitRow, is_large
from app.widgets.fieldgrid import FieldGrid
from app.widgets.labels import heading
from app.widgets.picture import Picture
from app.widgets.plaintable import PlainTable, framed
from app.widgets.resultcard import CardData, Paragraph, ResultCard
from app.words import shown
from core.errors import InputError, StoreError

Work = Callable[[Step], Any]


class StoredPage(Page):
    """Reads the store anew each time it is seen, or something else is picked.

    Attributes:
        grid, table, card: what every such page has beside its picture.
        waiting: how far the work is; None before the first long one.
    """

    grid: FieldGrid
    table: PlainTable
    card: ResultCard

    def __init__(self, context: Context, parent: QWidget | None = None) -> None:
        super().__init__(context, parent)
        self.waiting: WaitRow | None = None
        self._keeps = False

    # To be filled in

    def show_no_picture(self) -> None:
        """Empty the picture."""
        raise NotImplementedError

    def problem_head(self) -> str:
        """Return the words before the sentence that says what is missing."""
        return self.tr("Cannot tell yet")

    def choose_unit(self, picture: Picture) -> None:
        """Show lengths in the unit that the person prefers."""
        choose_unit(self.subject, self.table, self.card, picture)

    def work(self) -> Work | None:
        """Return what `read` and `compute` do, for a worker that touches no widget; None where it is never long.

        Raises:
            InputError: as `read`.
        """
        return None

    # What follows from them

    def recompute(self) -> None:
        """Read the store anew, that of a large shop beside the window; say where it fails."""
        if self._keeps:
            return  # what is in sight is what is kept
        try:
            if is_large(self.context) and self._begin():
                return
            super().recompute()
        except StoreError as error:
            self.context.say(shown(error.message), Level.ERROR)

    def is_up_to_date(self) -> bool:
        """Look again, and return whether what is in sight may be kept now; a large shop is not read anew for it."""
        if self.waiting is not None and self.waiting.job.is_running():
            self.context.say(self.tr("Still at work; keep it when the result is there."), Level.WARNING)
            return False
        if self.waiting is None:
            self.recompute()
        return True

    def keep(self) -> None:
        """Keep what is in sight."""
        self._keeps = self.waiting is not None and self.result is not None
        try:
            super().keep()
        finally:
            self._keeps = False

    def hidden(self) -> None:
        """Stop a work whose answer nobody waits for."""
        if self.waiting is not None:
            self.waiting.job.stop()

    def lay_out(self, picture: Picture, left: int = 60) -> None:
        """Lay the page out: the choices above, the picture over the table at the left, the card at the right.

        Args:
            picture: what the result is drawn in.
            left: of the width, in per cent.
        """
        column, across, down = QVBoxLayout(), QHBoxLayout(), QVBoxLayout(self)
        column.addWidget(picture, 3)
        column.addWidget(framed(self.table), 2)
        across.addLayout(column, left)
        across.addWidget(self.card, 100 - left)
        down.addWidget(heading(self.title))
        down.addWidget(self.grid)
        down.addLayout(across, 1)
        down.setContentsMargins(0, 0, 0, 0)
        for layout in (column, down):
            layout.setSpacing(STEP_PX)
        across.setSpacing(2 * STEP_PX)
        self.choose_unit(picture)

    def _begin(self) -> bool:
        """Begin the work and return whether there is one; what stood here before is taken away."""
        self.clear_problems()
        try:
            work = self.work()
        except InputError as error:
            self.result = None
            self.show_problem(error.field, error.row, shown(error.message))
            return True
        if work is None:
            return False
        if self.waiting is None:
            self.waiting = WaitRow(self.card, self.context)
            self.waiting.job.answered.connect(self._take)
            self.waiting.job.failed.connect(self._fail)
            self.waiting.job.stopped.connect(self._say_stopped)
        self.result = None
        self.show_no_picture()
        self.table.set_rows([])
        self.card.show_empty(self.tr("All that is kept is being read…"))
        self.waiting.start(work)
        return True

    def _take(self, answer: object) -> None:
        self.result = answer
        self.show_result(answer)

    def _fail(self, error: InputError | StoreError) -> None:
        if isinstance(error, InputError):
            self.show_problem(error.field, error.row, shown(error.message))
        else:
            self.context.say(shown(error.message), Level.ERROR)

    def _say_stopped(self) -> None:
        self.card.show_empty(self.tr("Stopped. Go to another page and come back, and it is read anew."))

    def save_draft(self) -> bool:
        """Nothing is measured here, so nothing can be lost."""
        return True

    def show_problem(self, field: str, row: int | None, message: str) -> None:  # noqa: ARG002
        """Say what is missing: at its field, or in the card."""
        self.show_no_picture()
        self.table.set_rows([])
        self.grid.show_problem(field, message)
        if field == "value":
            self.card.show_empty(message)
        else:
            self.card.show_card(CardData((Paragraph(self.problem_head(), message, "unknown"),), can_keep=False))

    def clear_problems(self) -> None:
        """Take sentences at fields away."""
        self.grid.clear_problems()

    def shown(self) -> None:
        """Read what was kept meanwhile."""
        self.recompute()

    def _answer_context(self) -> None:
        if self.isVisible():
            self.recompute()
