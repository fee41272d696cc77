"""What the settings pane is asked to do: show what is in force, write lines by the template, compare a listing."""

from __future__ import annotations

from dataclasses import replace

from PySide6.QtCore import QObject, QSignalBlocker

from app.context import Context, Level
from app.pages.shop.logtext import attribution_words
from app.pages.shop.settingspane import SettingsPane
from app.words import shown
from core.errors import InputError, StoreError
from core.guidance.attribution import Change
from core.guidance.changes import now_in_force
from core.guidance.settinglines import (
    TemplateLine,
    Value,
    compare_listing,
    controller_lines,
    for_slicing,
    lines_of_template,
    template_of,
    values_in_force,
)
from core.records.rows import Event

_COMPARED = ["steps", "feed"]  # results that a comparison with the controller mends


class SettingsDesk(QObject):
    """Serves a settings pane for the picked machine and lot."""

    def __init__(self, context: Context, pane: SettingsPane) -> None:
        super().__init__(pane)
        self._context, self._pane = context, pane
        self._values: tuple[Value, ...] = ()
        pane.template_edited.connect(self._write_lines)
        pane.template_saved.connect(self._save_template)
        pane.compare_asked.connect(self._compare)
        pane.agreed.connect(self._write_down)

    def read(self, changes: dict[int, Change], template: str | None) -> None:
        """Show what is in force now; `template` is what was typed and not saved, None for nothing."""
        machine, lot_id = self._context.machine, self._context.lot_id
        self._values = ()
        text = ""
        if machine is not None and machine.id is not None:
            settings = self._context.store.settings(machine.id, lot_id)
            self._values = values_in_force(machine, now_in_force(settings, lot_id))
            text = template_of(machine.templates)
        with QSignalBlocker(self._pane.template):
            self._pane.template.setPlainText(text if template is None else template)
        marks = {
            value.name: shown(attribution_words(changes[value.setting.id].attribution))
            for value in self._values
            if value.setting is not None and value.setting.id in changes
        }
        self._pane.setEnabled(machine is not None)
        self._pane.show_values(self._values, for_slicing(self._template() or (), self._values), marks)
        self._pane.clear_outcome()
        self._write_lines()

    def unsaved_template(self) -> str | None:
        """Return the template as typed, where it is not the machine's own."""
        machine, text = self._context.machine, self._pane.template.toPlainText()
        return None if machine is None or text == template_of(machine.templates) else text

    def _template(self) -> tuple[TemplateLine, ...] | None:
        try:
            return lines_of_template(self._pane.template.toPlainText())
        except InputError as error:
            self._pane.show_problem(shown(error.message))
            return None

    def _write_lines(self) -> None:
        template = self._template()
        if template is not None:
            self._pane.show_lines(controller_lines(template, self._values))

    def _save_template(self, text: str) -> None:
        machine = self._context.machine
        if machine is None or self._template() is None:
            return
        try:
            self._context.store.change_machine(replace(machine, templates={**machine.templates, "settings": text}))
        except (InputError, StoreError) as error:
            self._context.say(shown(error.message), Level.ERROR)
            return
        self._context.machines_changed.emit()
        self._context.say(self.tr("Template of {name} saved.").format(name=machine.name), Level.GOOD)

    def _compare(self, listing: str) -> None:
        template = self._template()
        if template is None:
            return
        try:
            self._pane.show_differences(*compare_listing(template, self._values, listing))
        except InputError as error:
            self._pane.show_listing_problem(shown(error.message))

    def _write_down(self) -> None:
        machine = self._context.machine
        if machine is None:
            return
        detail = {"results": _COMPARED, "how": "compare", "listing": self._pane.listing.toPlainText()[:2000]}
        try:
            logged = self._context.store.log_event(Event("checked", machine.id, detail=detail))
        except (InputError, StoreError) as error:
            self._context.say(shown(error.message), Level.ERROR)
            return
        self._pane.listing.clear()
        self._context.logged.emit(logged)
        self._context.say(self.tr("Written down: the controller agrees with what is in force."), Level.GOOD)
