"""What is looked at by hand in one step: items to tick, the tone of the belts, the travel read on a rule, and words."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QCheckBox, QLabel, QVBoxLayout, QWidget

from app.widgets.fieldgrid import FieldGrid
from app.widgets.fields import LengthField, NumberField, TextField
from app.widgets.longcheck import LongCheckBox
from app.words import shown
from core.errors import InputError
from core.guidance.handchecks import USUAL_MASS_G_M, findings_of, tension_words, tensions_of
from core.guidance.walkplan import Step, shop_plan
from core.guidance.walkwords import item_words

_TICKED = "yes"
_MASS = "mass_g_m"


class HandChecks(QWidget):
    """The form of one step; `changed` follows each finished entry."""

    changed = Signal()

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.items: dict[str, QCheckBox] = {}
        self.tension = QLabel()
        self.tension.setObjectName("quiet")
        self.tension.setWordWrap(True)
        self.tones, self.rule, self.words = FieldGrid(4), FieldGrid(1), FieldGrid(1)
        self.tones.add("tone_x_hz", self.tr("&Tone X"), NumberField(), "Hz")
        self.tones.add("tone_y_hz", self.tr("Tone Y"), NumberField(), "Hz")
        self.tones.add("span_mm", self.tr("Free span"), LengthField(), "mm")
        self.tones.add(_MASS, self.tr("Belt"), NumberField(required=True), "g/m")
        self.rule.add("read_mm", self.tr("&Read on the rule for 100 mm commanded"), LengthField(), "mm")
        self.words.add("note", self.tr("Wor&ds: what was read or found, or the reason"), TextField())
        self.words.add("author", self.tr("Who is at work here, asked once"), TextField())
        for form in (self.rule, self.words):
            form.set_share(1, 0)
        self._boxes: dict[str, dict[str, QCheckBox]] = {
            step.key: {item: LongCheckBox(shown(item_words(item))) for item in step.items}
            for step in shop_plan().steps
            if step.items
        }  # all from the start: Tab follows the order in which widgets are made
        layout = QVBoxLayout(self)
        layout.setContentsMargins(0, 0, 0, 0)
        column = QVBoxLayout()
        column.setSpacing(3)
        for boxes in self._boxes.values():
            for box in boxes.values():
                box.clicked.connect(self.changed)
                column.addWidget(box)
        layout.addLayout(column)
        for part in (self.tones, self.tension, self.rule, self.words):
            layout.addWidget(part)
        for form in (self.tones, self.rule, self.words):
            form.changed.connect(self._answer)

    def show_step(self, step: Step, by_hand: bool) -> None:
        """Show what this step asks for, with nothing entered."""
        for boxes in self._boxes.values():
            for box in boxes.values():
                box.hide()
        self.items = self._boxes.get(step.key, {}) if by_hand else {}
        for box in self.items.values():
            box.show()
        self.tones.setVisible("belt_tone" in self.items)
        self.tension.setVisible("belt_tone" in self.items)
        self.rule.setVisible("hundred_mm" in self.items)
        self.set_texts({})

    def take_focus(self) -> None:
        """Put the keyboard on the first thing to look at, else on the words."""
        first = next(iter(self.items.values()), None)
        if first is not None:
            first.setFocus()
        else:
            self._forms()[0].take_focus()

    def texts(self) -> dict[str, str]:
        """Return what is entered, so that what is unfinished can be stored; empty where nothing is."""
        texts = {key: _TICKED for key, box in self.items.items() if box.isChecked()}
        for form in self._forms():
            texts |= {key: text for key, text in form.texts().items() if text}
        return {} if set(texts) <= {_MASS} else texts

    def set_texts(self, texts: Mapping[str, str]) -> None:
        """Show texts as `texts` gave them; what is not named is emptied."""
        for key, box in self.items.items():
            box.setChecked(texts.get(key) == _TICKED)
        for form in (self.tones, self.rule, self.words):
            form.set_texts({key: texts.get(key, "") for key in form.texts()})
            form.clear_problems()
        if not texts.get(_MASS):
            self.tones.set_values({_MASS: USUAL_MASS_G_M})
        self._show_tension()

    def note(self) -> str:
        """Return the words."""
        return str(self.words.values()["note"] or "").strip()

    def ask_author(self, ask: bool) -> None:
        """Ask for the name of who is at work, or no longer."""
        self.words.show_field("author", ask)

    def author(self) -> str:
        """Return the name typed here; empty where none is asked for."""
        return str(self.words.values().get("author") or "").strip()

    def needed_note(self, message: str) -> str:
        """Return the words; InputError `note` where there are none."""
        if not self.note():
            raise InputError("note", message)
        return self.note()

    def findings(self) -> dict[str, Any]:
        """Return what was found in order; InputError names what was not."""
        ticked = {key for key, box in self.items.items() if box.isChecked()}
        return findings_of(list(self.items), ticked, self._typed())

    def show_problem(self, field: str, message: str) -> bool:
        """Show a problem at its field and return whether it is one of these."""
        return any(form.show_problem(field, message) for form in self._forms())

    def clear_problems(self) -> None:
        """Take all problems away."""
        for form in self._forms():
            form.clear_problems()

    def _forms(self) -> list[FieldGrid]:
        return [form for form in (self.tones, self.rule, self.words) if not form.isHidden()]

    def _typed(self) -> dict[str, float]:
        values = {key: value for form in self._forms() for key, value in form.values().items()}
        return {key: value for key, value in values.items() if isinstance(value, float)}

    def _answer(self) -> None:
        self._show_tension()
        self.changed.emit()

    def _show_tension(self) -> None:
        try:
            self.tension.setText(shown(tension_words(tensions_of(self._typed()))))
        except InputError as error:
            self.tension.setText(shown(error.message))
