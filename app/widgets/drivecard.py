"""What a drive gives, while its parts are typed: sketch, steps per millimetre with the reason, clean sizes."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QFrame, QGridLayout, QLabel, QVBoxLayout, QWidget

from app.theme import STEP_PX
from app.widgets.drivesketch import DriveSketch
from app.widgets.fields import local_text, number_text
from app.widgets.unbroken import wrapped
from app.words import shown, unit_words
from core.machine_geometry.drive import Drive, DriveQuestion, DriveResult
from core.machine_geometry.rotary import RotaryResult
from core.quantity import Estimate, rounded_pair

_FULL_LIST = 7  # more clean sizes than this are told by their spacing


@dataclass(frozen=True, slots=True)
class DriveView:
    """What a drive comes to. `heights_mm` is None for an axis that stacks no layers; `questions` go to the parts.

    `lengths_mm` is None as long as the travel is not known.
    """

    drive: Drive
    result: DriveResult | RotaryResult
    questions: tuple[DriveQuestion, ...]
    lengths_mm: tuple[float, ...] | None
    whole_cycles: bool
    heights_mm: tuple[float, ...] | None


class DriveCard(QFrame):
    """Shows one drive, or what is still missing to tell."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setObjectName("card")
        self.setAccessibleName(self.tr("What the drive comes to"))
        self.sketch = DriveSketch()
        self.steps = QLabel()
        self.steps.setObjectName("heading")
        self.steps.setWordWrap(True)
        self.why = wrapped("quiet")
        selectable = Qt.TextInteractionFlag.TextSelectableByMouse | Qt.TextInteractionFlag.TextSelectableByKeyboard
        self.steps.setTextInteractionFlags(selectable)
        self._rows = QGridLayout()
        self._rows.setHorizontalSpacing(2 * STEP_PX)
        self._rows.setVerticalSpacing(3)
        self._rows.setColumnStretch(1, 1)
        self._values: list[tuple[QLabel, QLabel]] = []
        for row in range(6):
            name, value = wrapped("quiet"), wrapped("")
            name.setAlignment(Qt.AlignmentFlag.AlignTop)
            self._rows.addWidget(name, row, 0)
            self._rows.addWidget(value, row, 1)
            self._values.append((name, value))
        layout = QVBoxLayout(self)
        layout.setContentsMargins(2 * STEP_PX, STEP_PX, 2 * STEP_PX, STEP_PX)
        layout.setSpacing(4)
        for part in (self.sketch, self.steps, self.why):
            layout.addWidget(part)
        layout.addLayout(self._rows)

    def wait(self, says: str) -> None:
        """Say what is missing; no number of an older entry stays."""
        self.sketch.show_drive(None)
        self.steps.setText(self.tr("steps/mm: not yet"))
        self.why.setText(says)
        self._fill([])

    def show_view(self, view: DriveView) -> None:
        """Show a drive."""
        self.sketch.show_drive(view.drive)
        steps, feed, full, micro, cycle = view.result.estimates()
        exact = unit_words(local_text(f"{steps.value:.4f} {steps.unit}"))
        self.steps.setText(self.tr("To set: {steps}").format(steps=exact))
        self.why.setText(local_text(shown(view.result.why)))
        stepping = (self.tr("Full step, microstep"), f"{_plain(full)}, {_plain(micro)}")
        if isinstance(view.result, RotaryResult):
            self._fill([(self.tr("Turned per motor turn"), _plain(feed)), stepping,
                        (self.tr("Electrical cycle"), self.tr("{cycle}; whole turns are exact").format(
                            cycle=_plain(cycle)))])  # fmt: skip
            return
        rows = [
            (self.tr("With its tolerance"), _value(steps)),
            (self.tr("Travel per motor turn"), _value(feed)),
            stepping,
            (
                self.tr("Electrical cycle"),
                self.tr("{cycle}; tolerance {percent} % (1 u)").format(
                    cycle=_plain(cycle), percent=number_text(100 * view.result.tolerance_ratio, 4)
                ),
            ),
        ]
        if view.heights_mm is not None:
            rows.append((self.tr("Clean layer heights"), self._sizes(view.heights_mm)))
        whole = self.tr("Clean test lengths") if view.whole_cycles else self.tr("Whole-turn lengths")
        lengths = view.lengths_mm
        rows.append((whole, self.tr("once the travel is typed") if lengths is None else self._sizes(lengths)))
        self._fill(rows)

    def _sizes(self, sizes_mm: Sequence[float]) -> str:
        if not sizes_mm:
            return self.tr("none in this range")
        texts = [number_text(size, 4) for size in sizes_mm]
        if len(texts) <= _FULL_LIST:
            return "  ".join(texts) + " mm"
        return self.tr("{first} to {last} mm, every {step} mm").format(
            first=texts[0], last=texts[-1], step=number_text((sizes_mm[-1] - sizes_mm[0]) / (len(sizes_mm) - 1), 5)
        )

    def _fill(self, rows: Sequence[tuple[str, str]]) -> None:
        for place, (name, value) in enumerate(self._values):
            text = rows[place] if place < len(rows) else ("", "")
            name.setText(text[0])
            value.setText(text[1])
            name.setVisible(bool(text[0]))
            value.setVisible(bool(text[0]))


def _plain(estimate: Estimate) -> str:
    """A step as it follows from the parts; its tolerance is the drive's, named once."""
    return f"{number_text(estimate.value, 6)}{'' if estimate.unit == '°' else ' '}{estimate.unit}"


def _value(estimate: Estimate) -> str:
    value, U = rounded_pair(estimate.value, estimate.U)
    return unit_words(local_text(f"{value.removeprefix('+')} ± {U} {estimate.unit}"))
