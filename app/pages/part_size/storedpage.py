"""What the pages share that judge what is kept already: nothing is measured on them, so nothing on them can be lost."""

from __future__ import annotations

from app.context import Level
from app.pages.base import Page
from app.widgets.fieldgrid import FieldGrid
from app.widgets.plaintable import PlainTable
from app.widgets.resultcard import CardData, Paragraph, ResultCard
from app.words import shown
from core.errors import StoreError


class StoredPage(Page):
    """Reads the store anew each time it is seen, or something else is picked.

    Attributes:
        grid, table, card: what every such page has beside its picture.
    """

    grid: FieldGrid
    table: PlainTable
    card: ResultCard

    # To be filled in

    def show_no_picture(self) -> None:
        """Empty the picture."""
        raise NotImplementedError

    def problem_head(self) -> str:
        """Return the words before the sentence that says what is missing."""
        return self.tr("Cannot tell yet")

    # What follows from them

    def recompute(self) -> None:
        """Read the store anew; say where it fails."""
        try:
            super().recompute()
        except StoreError as error:
            self.context.say(shown(error.message), Level.ERROR)

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
