"""The masses of a spool before and after drying, with the caution that goes before heat."""

from __future__ import annotations

from PySide6.QtWidgets import QFrame, QVBoxLayout, QWidget

from app.theme import STEP_PX
from app.widgets.fieldgrid import FieldGrid
from app.widgets.fields import NumberField
from app.widgets.labels import heading
from app.widgets.wordslabel import WordsLabel

_USUAL_U_G = 0.2  # of a balance that shows 0.5 g; common practice, no source


class WeighingCard(QFrame):
    """Heading, caution, and the fields of a weighing with the spool on."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setObjectName("card")
        caution = WordsLabel(self.tr(
            "Caution: heat. Dry below the softening point, never unattended, not in an oven used for food; ventilate."))
        caution.setObjectName("question")
        hint = WordsLabel(
            self.tr("Weigh with the spool on, before and after. For the stock alone leave “before” empty.")
        )
        hint.setObjectName("quiet")
        self.form = FieldGrid(3)
        self.form.add("before_g", self.tr("Be&fore drying"), NumberField(low=0.0), "g")
        self.form.add("now_g", self.tr("No&w, or dried"), NumberField(low=0.0), "g")
        self.form.add("u_balance_g", self.tr("B&alance, 1 u"), NumberField(low=1e-4, high=100.0, required=True), "g")
        layout = QVBoxLayout(self)
        layout.setContentsMargins(2 * STEP_PX, STEP_PX, 2 * STEP_PX, 12)
        layout.setSpacing(4)
        for label in (caution, hint):
            label.setWordWrap(True)
        for part in (heading(self.tr("Drying and stock"), of=self), caution, hint, self.form):
            layout.addWidget(part)
        self.clear()

    def clear(self) -> None:
        """Empty the masses; what is typed of the balance stays, readable or not."""
        self.form.set_values({"before_g": None, "now_g": None})
        if not self.form.texts()["u_balance_g"]:
            self.form.set_values({"u_balance_g": _USUAL_U_G})
