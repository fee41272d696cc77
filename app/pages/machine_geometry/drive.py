"""Machine geometry / Drive: a machine and the parts of its drives; also the form for a new machine.

No machine picked means a new one. What is typed and not saved is an open trial of this page, so nothing typed is lost.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from app.context import Context, Level
from app.pages.base import Page
from app.pages.machine_geometry.drivechecks import DriveChecks
from app.theme import STEP_PX
from app.widgets.drivecard import DriveCard, DriveView
from app.widgets.formscroll import FormScroll
from app.widgets.machinecard import MachineCard
from app.words import shown
from core.errors import InputError, StoreError
from core.machine_geometry.drive import (
    Drive,
    DriveKind,
    DriveQuestion,
    check_axes,
    describe_drive,
    question_drive,
)
from core.machine_geometry.resolution import clean_heights_mm, clean_lengths_mm
from core.machine_geometry.rotary import describe_rotary
from core.records.rows import Machine, Motion, Trial


@dataclass(frozen=True, slots=True)
class DriveReadings:
    """What `read` takes from the page: the drive of the axis in sight, and what goes with it."""

    drive: Drive
    motion: Motion
    axis: str
    travel_mm: float | None
    all_drives: Mapping[str, Drive]


class DrivePage(Page):
    """Enter parts, read steps per millimetre, hold them against the machine, save."""

    subject = "drive"
    moves_along = False

    def __init__(self, context: Context, parent: QWidget | None = None) -> None:
        super().__init__(context, parent)
        self.title = self.tr("Drive")
        self.entry = MachineCard(self.title, self)
        self.form = self.entry.form
        both = QWidget()
        scroll = FormScroll(both, self)
        self.card = DriveCard(both)
        self.checks = DriveChecks(both)
        self._machine: Machine | None = None  # as it was when the form was filled from it
        self._stored: dict[str, str] = {}  # the texts of the form then
        self._make_layout(both, scroll)
        self.setFocusProxy(self.form.head.field("name"))
        self._wire()
        self.load_draft(None)

    def read(self) -> DriveReadings:
        """Return the drive of the shown axis with motion and travel."""
        axis = self.form.axis()
        drives = self.form.typed_drives()
        return DriveReadings(self.form.drive(), self.form.motion(), axis, self.form.travel_mm(axis), drives)

    def compute(self, readings: DriveReadings) -> DriveView:
        """Calculate what the card shows."""
        drive, motion = readings.drive, readings.motion
        questions = (*question_drive(drive), *_question_axes(motion, readings.all_drives))
        if drive.kind is DriveKind.ROTARY:
            return DriveView(drive, describe_rotary(drive), questions, (), whole_cycles=True, heights_mm=None)
        lengths = None if readings.travel_mm is None else clean_lengths_mm(drive, readings.travel_mm)
        stacks = readings.axis == "z" or motion is Motion.DELTA
        return DriveView(
            drive=drive,
            result=describe_drive(drive),
            questions=questions,
            lengths_mm=None if lengths is None else lengths.lengths_mm,
            whole_cycles=lengths is None or lengths.whole_cycles,
            heights_mm=clean_heights_mm(drive) if stacks else None,
        )

    def show_result(self, result: DriveView) -> None:
        """Show the drive, and what the entries of its checks come to."""
        self.card.show_view(result)
        self.form.show_questions(result.questions)
        self.form.drives[self.form.axis()].show_usual_tolerance(result.drive.tolerance_ratio)
        self.checks.show_drive(result.drive, self.form.motion())

    def record(self) -> Trial:
        """Return what is typed and not saved; nothing where the page shows the machine as stored."""
        typed = self._texts()
        unsaved = typed if typed != self._stored else {}
        readings = {"field": list(unsaved), "raw": list(unsaved.values())}
        return Trial(self.subject, machine_id=self._machine.id if self._machine else None, readings=readings)

    def load_draft(self, trial: Trial | None) -> None:
        """Show the picked machine, with what was typed over it and not saved."""
        self._machine = self.context.machine
        self.form.show_machine(self._machine)
        self.checks.clear()
        self._stored = self._texts()
        if trial is not None:
            self._set_texts(dict(zip(trial.readings.get("field", ()), trial.readings.get("raw", ()), strict=True)))
        self._preview()

    def show_problem(self, field: str, row: int | None, message: str) -> None:
        """Say it on the card, and at its field once something stands in it."""
        self._wait(message)
        if not self.form.is_blank(field) and not self.form.show_problem(field, message):
            self.context.say(message, Level.WARNING)

    def clear_problems(self) -> None:
        """Take the problems of the axis away."""
        self.form.drives[self.form.axis()].clear_problems()

    def keep(self) -> None:
        """Save the machine: what is kept on this page is no trial."""
        try:
            machine = self.form.machine(self._machine)
            save = self.context.store.add_machine if machine.id is None else self.context.store.change_machine
            saved = save(machine)
            if self.draft is not None and self.draft.id is not None:
                self.context.store.discard_draft(self.draft.id)
        except InputError as error:
            self._refuse(error)
            return
        except StoreError as error:
            self.context.say(shown(error.message), Level.ERROR)
            return
        self.draft = None
        checks = self.checks.own(self._texts())
        self._stored = self._texts()
        self.context.machines_changed.emit()
        self.context.select_machine(saved.id)
        self._set_texts(checks)
        self._finish()
        new = self.tr("{name} saved. Its walk leads on, step by step: F9.")
        self.context.say((new if machine.id is None else self.tr("{name} saved.")).format(name=saved.name), Level.GOOD)

    def reveal(self, widget: QWidget) -> None:
        """Turn to the axis whose entry was undone."""
        self.form.show_axis_of(widget)

    # A draft of this page belongs to a machine, whatever the lot, and never moves to another one.

    def _here(self) -> tuple[int | None, int | None]:
        return self.context.machine_id, None

    def _follow(self) -> None:
        here = self._here()
        untouched = self.context.machine == self._machine or self._texts() != self._stored
        if here == self._draft_of and untouched:
            return
        self._turn_to(here)

    def _texts(self) -> dict[str, str]:
        return self.form.texts() | self.checks.texts()

    def _set_texts(self, texts: Mapping[str, str]) -> None:
        self.form.set_texts(texts)
        self.checks.set_texts(texts)

    def _preview(self) -> None:
        """Follow the typing: the result changes at once, a fault is said on the card and not yet at its field."""
        try:
            self.show_result(self.compute(self.read()))
        except InputError as error:
            self._wait(shown(error.message))
        self._show_state()

    def _wait(self, says: str) -> None:
        self.card.wait(says)
        self.form.show_questions(())

    def _finish(self) -> None:
        """A field is finished: faults at their fields, and what is typed to the database."""
        self.recompute()
        self.save_draft()
        self._show_state()

    def _finish_check(self) -> None:
        self._finish()
        try:
            drive = self.form.drive()
        except InputError:
            return  # said at its field already
        self.checks.show_problems(drive, self.form.motion())

    def _refuse(self, error: InputError) -> None:
        message = shown(error.message)
        if self.form.show_problem(error.field, message):
            self.form.focus_on(error.field)
        self.context.say(message, Level.WARNING)

    def _start_new(self) -> None:
        self.save_draft()
        self.context.select_machine(None)
        self.form.head.take_focus()

    def _show_state(self) -> None:
        unsaved = self._texts() != self._stored
        self.entry.save_button.setEnabled(unsaved or self._machine is None)
        self.entry.new_button.setEnabled(self._machine is not None)

    def _make_layout(self, both: QWidget, scroll: QWidget) -> None:
        right = QVBoxLayout(both)
        right.setContentsMargins(0, 0, 0, 0)
        right.setSpacing(STEP_PX)
        right.addWidget(self.card)
        right.addWidget(self.checks, 1)
        across = QHBoxLayout(self)
        across.setContentsMargins(0, 0, 0, 0)
        across.setSpacing(2 * STEP_PX)
        across.addWidget(self.entry, 4)
        across.addWidget(scroll, 5)

    def _wire(self) -> None:
        self.form.typed.connect(self._preview)
        self.form.changed.connect(self._finish)
        self.form.axis_changed.connect(self._preview)
        self.checks.typed.connect(self._preview)
        self.checks.changed.connect(self._finish_check)
        self.entry.save_button.clicked.connect(self.keep)
        self.entry.new_button.clicked.connect(self._start_new)


def _question_axes(motion: Motion, drives: Mapping[str, Drive]) -> tuple[DriveQuestion, ...]:
    """What speaks against these drives together; separate values for X and Y on crossed belts are not used."""
    try:
        return check_axes(motion, drives)
    except InputError as error:
        return (DriveQuestion(error.field, error.message),)
