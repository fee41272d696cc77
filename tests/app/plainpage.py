"""The plainest page there can be: one field, one reading. For tests of what all pages share."""

from __future__ import annotations

from PySide6.QtWidgets import QLineEdit, QVBoxLayout

from app.pages import PageEntry
from app.pages.base import Page
from core.errors import InputError
from core.quantity import Estimate
from core.records.rows import Trial
from core.words import tr


class PlainPage(Page):
    subject = "plain"

    def __init__(self, context, parent=None):
        super().__init__(context, parent)
        self.title = "Plain"
        self.field = QLineEdit()
        self.problem = ""
        self.shows = ""
        QVBoxLayout(self).addWidget(self.field)
        self.setFocusProxy(self.field)
        self.field.editingFinished.connect(self.save_draft)

    def read(self):
        return self.field.text()

    def compute(self, readings):
        if not readings.isdigit():
            raise InputError("raw", tr("“{text}” is no number; type digits.", text=readings), row=0)
        return int(readings)

    def show_result(self, result):
        self.shows = f"twice: {2 * result}"

    def record(self):
        estimates = () if self.result is None else (Estimate("twice", 2.0 * self.result, 0.5, 4.0, "mm"),)
        machine, lot = self.context.machine, self.context.lot
        return Trial(
            subject=self.subject,
            machine_id=machine.id if machine else None,
            lot_id=lot.id if lot else None,
            readings={"raw": [self.field.text()] if self.field.text() else []},
            estimates=estimates,
            method="plain 1",
        )

    def load_draft(self, trial):
        self.field.setText(trial.readings["raw"][0] if trial and trial.readings["raw"] else "")

    def show_problem(self, field, row, message):
        self.problem = f"{field} {row}: {message}"

    def clear_problems(self):
        self.problem = ""


class OtherPage(PlainPage):
    subject = "other"


PLAIN_PAGES = (
    PageEntry("drive", "First group", "Plain", __name__, "PlainPage"),
    PageEntry("other", "Second group", "Other", __name__, "OtherPage"),
)
