"""What the page *Lots* is made of: the lot and its material at the left, the weighing and its card at the right."""

from __future__ import annotations

from collections.abc import Mapping

from PySide6.QtWidgets import QGridLayout, QHBoxLayout, QVBoxLayout, QWidget

from app.theme import STEP_PX
from app.widgets.lotcard import LotCard
from app.widgets.materialcard import MaterialCard
from app.widgets.resultcard import ResultCard
from app.widgets.weighingcard import WeighingCard

WEIGHED = "weighing."  # before the names of the weighing's fields in a draft


class LotPane(QWidget):
    """Forms and card side by side; `texts` holds all that is typed in both forms."""

    def __init__(self, title: str, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.entry, self.material, self.weighing = LotCard(title), MaterialCard(), WeighingCard()
        self.card = ResultCard(self.tr("Moisture and stock"))
        self.card.keep_button.setText(self.tr("Keep wei&ghing"))
        left, right, across = QVBoxLayout(), QGridLayout(), QHBoxLayout(self)
        for column in (left, right):
            column.setSpacing(STEP_PX)
        left.addWidget(self.entry)
        left.addWidget(self.material, 1)
        right.addWidget(self.weighing, 0, 0)  # a grid: a QVBoxLayout would press it flat below a card of many lines
        right.addWidget(self.card, 1, 0)
        right.setRowStretch(1, 1)
        across.setContentsMargins(0, 0, 0, 0)
        across.setSpacing(2 * STEP_PX)
        across.addLayout(left, 1)
        across.addLayout(right, 1)

    def texts(self) -> dict[str, str]:
        """Return every field's text as typed."""
        return self.entry.form.texts() | self.weighed()

    def weighed(self) -> dict[str, str]:
        """Return the texts of the weighing alone."""
        return {WEIGHED + key: text for key, text in self.weighing.form.texts().items()}

    def set_texts(self, texts: Mapping[str, str]) -> None:
        """Show texts as `texts` gave them; fields not named stay as they are."""
        self.entry.form.set_texts(texts)
        self.weighing.form.set_texts(
            {key.removeprefix(WEIGHED): text for key, text in texts.items() if key.startswith(WEIGHED)}
        )

    def show_state(self, stored: Mapping[str, str], *, known: bool) -> None:
        """Follow the material, and offer to save what differs from the stored texts of a known lot."""
        form = self.entry.form
        self.material.show_material(form.material())
        own = {key: text for key, text in stored.items() if not key.startswith(WEIGHED)}
        self.entry.save_button.setEnabled(not known or form.texts() != own)
        self.entry.new_button.setEnabled(known)
