"""A machine as a form: name, motion, travel, and the parts of each axis, one axis at a time."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from contextlib import suppress

from PySide6.QtCore import QSignalBlocker, Qt, Signal
from PySide6.QtWidgets import QHBoxLayout, QPushButton, QStackedWidget, QVBoxLayout, QWidget

from app.theme import STEP_PX
from app.widgets.driveform import DriveForm
from app.widgets.fieldgrid import FieldGrid
from app.widgets.fields import ChoiceField, LengthField, TextField
from app.widgets.tabs import Tabs
from app.widgets.unbroken import wrapped
from app.words import shown
from core.errors import InputError
from core.machine_geometry.drive import Drive, DriveQuestion, motion_note
from core.records.rows import Machine, Motion

_AXES = ("x", "y", "z")
_TRAVELS = ("travel_x_mm", "travel_y_mm", "travel_z_mm")
_NEW = Machine(name="")
# The forms that each motion needs, and the axes that share the parts of one form.
_SHARED: dict[Motion, dict[str, tuple[str, ...]]] = {
    Motion.CARTESIAN: {"x": ("x",), "y": ("y",), "z": ("z",)},
    Motion.CROSSED_BELT: {"x": ("x", "y"), "z": ("z",)},
    Motion.DELTA: {"x": _AXES},
}


class MachineForm(QWidget):
    """`changed` follows a finished edit, `typed` every key, `axis_changed` the choice of another axis."""

    changed = Signal()
    typed = Signal()
    axis_changed = Signal()

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.head = self._make_head()
        self.travel = self._make_travel()
        self.axes = Tabs(self.tr("Axis"), self)
        self.same = QPushButton(self.tr("&Same parts as X"), self)
        self.same.setObjectName("plain")
        self.stack = QStackedWidget(self)
        self.drives = {axis: DriveForm(self.stack) for axis in _AXES}
        self.questions = wrapped("question")
        self.note = wrapped("quiet")
        self._lay_out()
        self.show_machine(None)
        self._wire()

    def motion(self) -> Motion:
        """How the motors move the nozzle."""
        return Motion(str(self.head.field("motion").value()))

    def axis(self) -> str:
        """The axis whose parts are shown: x, y or z; x also for a pair of motors and for carriages."""
        return str(self.axes.tabData(self.axes.currentIndex()))

    def travel_mm(self, axis: str) -> float | None:
        """Travel along an axis, None where it is not typed yet; raise InputError where it cannot be read."""
        field = self.travel.field(f"travel_{axis}_mm")
        return None if self.is_blank(field.key) else float(field.value() or 0.0)

    def drive(self) -> Drive:
        """Return the drive of the shown axis, or raise InputError."""
        return self.drives[self.axis()].drive()

    def all_drives(self) -> dict[str, Drive]:
        """Return the drives of the axes filled in; at the first that fails, show it and raise InputError."""
        found: dict[str, Drive] = {}
        for axis, shared in _SHARED[self.motion()].items():
            if self.drives[axis].untouched():
                continue
            try:
                found |= dict.fromkeys(shared, self.drives[axis].drive())
            except InputError:
                self._choose(axis)
                raise
        return found

    def machine(self, before: Machine | None) -> Machine:
        """Return the machine on the form, new or `before` changed, or raise InputError at the first fault."""
        old = before or _NEW
        name = str(self.head.values()["name"])
        x, y, z = (float(size or 0.0) for size in self.travel.values().values())
        drives = {axis: drive.parts() for axis, drive in self.all_drives().items()}
        return Machine(name, self.motion(), x, y, z, drives, old.note, old.id, old.version)

    def show_machine(self, machine: Machine | None) -> None:
        """Show a machine; None empties the form for a new one."""
        row = machine or _NEW
        self.head.set_values({"name": row.name, "motion": str(row.motion)})
        self.travel.set_values({key: getattr(machine, key, None) for key in _TRAVELS})  # of a new one nobody said it
        for axis, form in self.drives.items():
            form.set_parts(row.drives.get(axis, {}))
        self._offer_axes()
        if machine is None:
            self._choose("x")

    def typed_drives(self) -> dict[str, Drive]:
        """Return the drives that can be read, by the form they stand in, whether this motion uses it or not."""
        found: dict[str, Drive] = {}
        for axis, form in self.drives.items():
            with suppress(InputError):
                found[axis] = form.drive()
        return found

    def texts(self) -> dict[str, str]:
        """Return every field's text as typed, so that an unfinished machine can be stored and shown again."""
        return {prefix + key: text for prefix, form in self._forms() for key, text in form.texts().items()}

    def set_texts(self, texts: Mapping[str, str]) -> None:
        """Show texts as `texts` gave them; fields not named stay as they are."""
        for prefix, form in self._forms():
            form.set_texts({key.removeprefix(prefix): text for key, text in texts.items() if key.startswith(prefix)})
        for drive in self.drives.values():
            drive.show_own_fields()
        self._offer_axes()

    def show_questions(self, questions: Sequence[DriveQuestion]) -> None:
        """Show below the parts what is odd about them."""
        self.questions.setText("\n".join(shown(question.says) for question in questions))
        self.questions.setVisible(bool(questions))

    def show_problem(self, key: str, message: str) -> bool:
        """Show a problem at its field and return whether there is one."""
        return any(form.show_problem(key, message) for form in (self.head, self.travel, self.drives[self.axis()]))

    def clear_problems(self) -> None:
        """Take all problems away."""
        for form in (self.head, self.travel, *self.drives.values()):
            form.clear_problems()

    def focus_on(self, key: str) -> None:
        """Put the keyboard on a field of the form or of the axis shown."""
        for form in (self.head, self.travel, self.drives[self.axis()]):
            if key in form.texts():
                form.field(key).setFocus(Qt.FocusReason.OtherFocusReason)

    def show_axis_of(self, field: QWidget) -> None:
        """Show the axis to whose parts a field belongs."""
        for axis, form in self.drives.items():
            if form.isAncestorOf(field) and axis in _SHARED[self.motion()]:
                self._choose(axis)

    def is_blank(self, key: str) -> bool:
        """Whether a travel or a field of the axis shown is still to be typed."""
        return (self.travel.texts() | self.drives[self.axis()].texts()).get(key) == ""

    def _make_head(self) -> FieldGrid:
        motions = {
            Motion.CARTESIAN: self.tr("cartesian"),
            Motion.CROSSED_BELT: self.tr("crossed belts"),
            Motion.DELTA: self.tr("delta"),
        }
        form = FieldGrid(2, self)
        form.add("name", self.tr("&Name"), TextField(required=True, longest=80))
        form.add("motion", self.tr("Mot&ion"), ChoiceField([(str(motion), text) for motion, text in motions.items()]))
        return form

    def _make_travel(self) -> FieldGrid:
        form = FieldGrid(3, self)
        for key, label in zip(_TRAVELS, (self.tr("Travel X"), self.tr("Travel Y"), self.tr("Travel Z")), strict=True):
            field = LengthField(low_mm=10.0, high_mm=10000.0, required=True)
            field.setPlaceholderText(self.tr("measure it"))
            form.add(key, label, field, "mm")
        return form

    def _lay_out(self) -> None:
        for form in self.drives.values():
            self.stack.addWidget(form)
        bar = QHBoxLayout()
        bar.addWidget(self.axes)
        bar.addStretch(1)
        bar.addWidget(self.same)
        layout = QVBoxLayout(self)
        layout.setContentsMargins(0, 0, 0, 0)
        layout.setSpacing(STEP_PX)
        layout.addWidget(self.head)
        layout.addWidget(self.travel)
        layout.addLayout(bar)
        layout.addWidget(self.stack)
        layout.addWidget(self.questions)
        layout.addWidget(self.note)
        layout.addStretch(1)

    def _wire(self) -> None:
        self.head.field("motion").changed.connect(self._offer_axes)
        self.axes.currentChanged.connect(self._show_axis)
        self.same.clicked.connect(self._copy_x)
        for form in (self.head, self.travel, *self.drives.values()):
            form.changed.connect(self.changed)
            form.typed.connect(self.typed)
        self.head.entered.connect(self.travel.take_focus)
        self.travel.entered.connect(self.drives["x"].take_focus)

    def _forms(self) -> Iterator[tuple[str, FieldGrid]]:
        yield "head.", self.head
        yield "travel.", self.travel
        for axis, form in self.drives.items():
            yield f"{axis}.", form

    def _offer_axes(self) -> None:
        """One choice a form that the motion needs."""
        names = {
            Motion.CARTESIAN: ("X", "Y", "Z"),
            Motion.CROSSED_BELT: (self.tr("A and B (X, Y)"), "Z"),
            Motion.DELTA: (self.tr("Carriages (X, Y, Z)"),),
        }[self.motion()]
        before = self.axis() if self.axes.count() else "x"
        with QSignalBlocker(self.axes):
            while self.axes.count():
                self.axes.removeTab(0)
            for axis, name in zip(_SHARED[self.motion()], names, strict=True):
                self.axes.setTabData(self.axes.addTab(name), axis)
        self._choose(before)
        self.note.setText(shown(motion_note(self.motion())))

    def _choose(self, axis: str) -> None:
        axes = list(_SHARED[self.motion()])
        self.axes.setCurrentIndex(axes.index(axis) if axis in axes else 0)
        self._show_axis()

    def _show_axis(self) -> None:
        self.stack.setCurrentWidget(self.drives[self.axis()])
        self.same.setVisible(self.axis() == "y")
        self.axis_changed.emit()

    def _copy_x(self) -> None:
        """Take X's parts where they are complete; else show what X lacks."""
        try:
            parts = self.drives["x"].drive().parts()
        except InputError as error:
            self._choose("x")
            self.drives["x"].show_problem(error.field, error.message)
            return
        self.drives["y"].set_parts(parts)
        self.changed.emit()
