"""One window in the place of another: what stands against it. The change itself is seen in test_main."""

from __future__ import annotations

from PySide6.QtWidgets import QMainWindow

from app.newrows import NewLot
from app.windows import unfinished_form


def test_what_is_typed_in_a_form_that_stores_no_draft_is_not_lost(qtbot, context):
    window = QMainWindow()
    qtbot.addWidget(window)
    form = NewLot(context, window)
    assert unfinished_form(window) == ""
    field = form.form.field("name")
    field.setText("Slate")
    assert unfinished_form(window).startswith(f"“{field.accessibleName()}” is typed in a form that is not finished;")
    field.clear()
    assert unfinished_form(window) == ""
