"""Below the drive: the mix-up finder and what the drive allows, one of the two in sight."""

from __future__ import annotations

from collections.abc import Mapping

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QStackedWidget, QVBoxLayout, QWidget

from app.theme import STEP_PX
from app.widgets.fieldgrid import FieldGrid
from app.widgets.limitscard import LimitsCard
from app.widgets.mixupcard import MixupCard
from app.widgets.tabs import Tabs
from app.words import shown
from core.errors import InputError
from core.machine_geometry.drive import Drive, DriveKind, refuse_rotary
from core.machine_geometry.drivelimits import limits_of
from core.machine_geometry.foundsteps import found_steps_effect
from core.machine_geometry.mixup import parts_behind_steps, ratio_from_lengths, search_mixups
from core.records.rows import Motion

_MIXUP, _LIMITS = "check.", "limit."  # before the names of the entries in a draft


class DriveChecks(QWidget):
    """`typed` follows every key in an entry, `changed` a finished one."""

    typed = Signal()
    changed = Signal()

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.tabs, self._stack = Tabs(self.tr("Check of the drive"), self), QStackedWidget(self)
        self.mixup, self.limits = MixupCard(self._stack), LimitsCard(self._stack)
        for title, card in ((self.tr("Mix-up finder"), self.mixup), (self.tr("What the drive allows"), self.limits)):
            self.tabs.addTab(title)
            self._stack.addWidget(card)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(STEP_PX // 2)
        column.addWidget(self.tabs)
        column.addWidget(self._stack, 1)
        self.tabs.currentChanged.connect(self._stack.setCurrentIndex)
        for form in (self.mixup.form, self.limits.form):
            form.typed.connect(self.typed)
            form.changed.connect(self.changed)

    def texts(self) -> dict[str, str]:
        """Return every entry as typed."""
        return {prefix + key: text for prefix, form in self._forms() for key, text in form.texts().items()}

    def set_texts(self, texts: Mapping[str, str]) -> None:
        """Show entries as `texts` gave them; other texts are left alone."""
        for prefix, form in self._forms():
            form.set_texts({key.removeprefix(prefix): text for key, text in texts.items() if key.startswith(prefix)})
        self.mixup.show_own_fields()

    def clear(self) -> None:
        """Empty the entries, but for what is usual."""
        self.mixup.clear()
        self.limits.form.set_values(dict.fromkeys(self.limits.form.texts()))
        self.limits.show_limits(())

    def own(self, texts: Mapping[str, str]) -> dict[str, str]:
        """Return those of these texts that are entries of the checks."""
        return {key: text for key, text in texts.items() if key.startswith((_MIXUP, _LIMITS))}

    def show_drive(self, drive: Drive, motion: Motion) -> None:
        """Show what the entries come to; what cannot be read is said in its card."""
        kind = drive.kind
        self.limits.show_own_fields(
            belt=kind is DriveKind.BELT, delta=motion is Motion.DELTA, rotary=kind is DriveKind.ROTARY
        )
        try:
            self._find_mixups(drive)
        except InputError as error:
            self.mixup.say(shown(error.message))
        try:
            self.limits.show_limits(limits_of(drive, motion, self.limits.wanted()))
        except InputError as error:
            self.limits.say(shown(error.message))

    def show_problems(self, drive: Drive, motion: Motion) -> None:
        """Say at its field what a finished entry is at fault with."""
        for form in (self.mixup.form, self.limits.form):
            form.clear_problems()
        try:
            self._find_mixups(drive)
        except InputError as error:
            self.mixup.form.show_problem(error.field, shown(error.message))
        try:
            limits_of(drive, motion, self.limits.wanted())
        except InputError as error:
            self.limits.form.show_problem(error.field, shown(error.message))

    def _forms(self) -> tuple[tuple[str, FieldGrid], ...]:
        return ((_MIXUP, self.mixup.form), (_LIMITS, self.limits.form))

    def _find_mixups(self, drive: Drive) -> None:
        refuse_rotary(drive)
        entries = self.mixup.entries()
        found = entries.found_steps_mm
        effect = None if found is None else found_steps_effect(drive, found)
        behind = () if found is None else parts_behind_steps(drive, found)
        search = None
        if entries.commanded_mm is not None and entries.measured_mm is not None:
            interval = ratio_from_lengths(
                entries.commanded_mm, entries.measured_mm, entries.U_measured_mm, entries.shrink_ratio
            )
            search = search_mixups(drive, interval, found_steps_mm=found)
        self.mixup.show_findings(effect, behind, search)
