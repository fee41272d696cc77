"""The page *Toolpaths*: a direct trial is laid, looked at, checked and written as G-code."""

from __future__ import annotations

import re
from pathlib import Path
from typing import TYPE_CHECKING, ClassVar, NamedTuple, cast

from PySide6.QtWidgets import QFileDialog, QHBoxLayout, QVBoxLayout, QWidget

from app.context import Context, Level
from app.pages.base import Page
from app.pages.bench.toolpathcard import not_told, path_card
from app.pages.bench.toolpathfields import RELATIVE
from app.pages.bench.toolpathform import ToolpathForm
from app.pages.bench.toolpathknown import (
    keep_mass_path,
    keep_text,
    laying_known,
    limits_known,
    nozzle_of,
    own_text,
    refuse_above_entered,
    remarks_of,
)
from app.theme import STEP_PX
from app.widgets.invented import file_name
from app.widgets.labels import heading
from app.widgets.longcheck import LongCheckBox
from app.widgets.resultcard import CardData, Paragraph, ResultCard
from app.widgets.toolpathview import Bed, ToolpathPane
from app.words import shown
from core.errors import InputError, StoreError
from core.records.rows import Trial

if TYPE_CHECKING:
    from core.guidance.directtrials import PathRequest, PlannedPath
    from core.pieces.toolpathcheck import Limits

_LEAST_PICTURE_PX = 150
_MOST_LINES = 18  # of the card: cautions are read whole


class Typed(NamedTuple):
    """What is asked for, within which limits."""

    request: PathRequest
    limits: Limits


class ToolpathsPage(Page):
    """Trial, material and limits at the left; the path and what its read-back says at the right.

    What is typed and not written is an open trial of this page, so nothing typed is lost. Nothing is sent to a machine:
    a file is written, which a person reads, starts and watches.
    """

    subject: ClassVar[str] = "toolpaths"

    def __init__(self, context: Context, parent: QWidget | None = None) -> None:
        super().__init__(context, parent)
        self.title = self.tr("Toolpaths")
        self.form = ToolpathForm()
        self.picture = ToolpathPane(self.tr("Path"))
        self.card = ResultCard(self.tr("Read-back"), self.tr("Nothing to write yet."))
        self.card.grow(_MOST_LINES)
        self.card.keep_button.setText(self.tr("Save G-code…   Ctrl+S"))
        self.card.keep_button.setAccessibleName(self.tr("Save G-code"))
        self.read_box = LongCheckBox(self.tr("I have read the &cautions and stay with the machine."))
        self.read_box.setProperty("entry", False)  # nobody's undo reads cautions for him
        self._usual: dict[str, str] = {}
        self._lay_out()
        self.setFocusProxy(self.form)
        self.form.changed.connect(self._answer_change)
        self.form.keep_text_button.clicked.connect(self._keep_text)
        self.read_box.toggled.connect(self._show_again)
        self.card.keep_clicked.connect(self.keep)
        self.picture.said.connect(self.context.notice)
        self.context.machine_changed.connect(self._answer_context)  # after the base has found the draft
        self.context.lot_changed.connect(self._answer_context)
        self.load_draft(None)

    # The four methods of a page

    def read(self) -> Typed:
        """Return what is asked for."""
        from core.guidance.directtrials import PathRequest

        laying, limits = self.form.laying, self.form.limits.typed_limits(limits_known(self.context))
        refuse_above_entered(self.context, limits)
        request = PathRequest(
            kind=self.form.chosen(),
            values=self.form.own_grid().numbers(),
            width_mm=laying.number("width_mm"),
            height_mm=laying.number("height_mm"),
            model=laying.choice("model"),
            filament_mm=laying.number("filament_mm"),
            flow_ratio=laying.number("flow_ratio"),
            nozzle_c=laying.number("nozzle_c"),
            bed_c=laying.number("bed_c"),
            fan_percent=laying.number("fan_percent"),
            speed_mm_s=laying.number("speed_mm_s"),
            retract_mm=laying.number("retract_mm"),
            relative=laying.choice("extrusion") == RELATIVE,
            start_text=self.form.start.toPlainText(),
            end_text=self.form.end.toPlainText(),
            remarks=remarks_of(self.context),
            nozzle_mm=nozzle_of(self.context),
        )
        return Typed(request, limits)

    def compute(self, readings: Typed) -> PlannedPath:
        """Lay, write and check the path: one call into the core."""
        from core.guidance.directtrials import plan_path

        return plan_path(*readings)

    def show_result(self, result: PlannedPath) -> None:
        """Draw the path, say what its read-back found."""
        limits = limits_known(self.context)
        self.picture.show_path(result.toolpath, Bed(limits.low_mm[:2], limits.high_mm[:2], limits.round_bed))
        self.card.show_card(path_card(result, self._why_not(result)))

    def record(self) -> Trial:
        """Return what is typed; nothing where the page shows the usual values."""
        texts = self.form.texts()
        typed = {key: text for key, text in texts.items() if text != self._usual.get(key)}
        return Trial(
            self.subject,
            machine_id=self.context.machine_id,
            lot_id=self.context.lot_id,
            readings={"field": list(typed), "raw": list(typed.values())},
        )

    # What differs from other pages

    def load_draft(self, trial: Trial | None) -> None:
        """Show the usual values for machine and lot, with what was typed over them."""
        self.form.show_usual(limits_known(self.context), laying_known(self.context), *own_text(self.context))
        self._usual = self.form.texts()
        if trial is not None:
            self.form.set_texts(
                dict(zip(trial.readings.get("field", ()), trial.readings.get("raw", ()), strict=True))
            )
        self.read_box.setChecked(False)
        self.recompute()

    def show_problem(self, field: str, row: int | None, message: str) -> None:
        """Show why there is no path: at its field, and on the card."""
        self.form.show_problem(field, message)
        self.picture.show_nothing()
        self.card.show_card(
            CardData((Paragraph(self.tr("Cannot be laid:"), message, "warning"),), can_keep=False)
        )

    def clear_problems(self) -> None:
        """Take the sentences away."""
        self.form.clear_problems()

    def shown(self) -> None:
        """Lay the path anew: limits or flow may have changed on another page."""
        if self.record().readings["raw"]:
            self.recompute()
        else:
            self.load_draft(None)
            self.undoing.forget()

    def keep(self) -> None:
        """Ask where, and write the file: what is kept on this page is no trial."""
        self.recompute()
        if self.result is None:
            return
        if why_not := self._why_not(self.result):
            self.context.say(why_not, Level.WARNING)
            return
        stem = re.sub(r"\W+", "-", shown(self.result.toolpath.title).lower()).strip("-")
        path, _kind = QFileDialog.getSaveFileName(
            self, self.tr("Save the G-code"), file_name(f"{stem}.gcode"), self.tr("G-code (*.gcode)")
        )
        if path:
            self._write(Path(path if Path(path).suffix else f"{path}.gcode"))

    def _write(self, path: Path) -> None:
        from core.pieces.toolpathtext import write_program

        try:
            write_program(self.result.program, path)
        except (InputError, StoreError) as error:
            self.context.say(shown(error.message), Level.ERROR)
            return
        self.read_box.setChecked(False)
        said = self.tr("{path} is written. Read it, start it yourself, and watch the cold lap.")
        if keep_mass_path(self.context, self.read().request, self.result):
            said += self.tr(" The page Mass knows what its path commands.")
        self.context.say(said.format(path=path), Level.GOOD)

    def _why_not(self, planned: PlannedPath) -> str:
        if not_told(planned):
            return self.tr("Type the temperature of the nozzle.")
        if planned.checked.faults:
            return self.tr("The read-back refuses this path; see why, and mend it.")
        if not self.read_box.isChecked():
            return self.tr("Read the cautions and tick the box, then save.")
        return ""

    def _answer_context(self) -> None:
        """Show the limits of another machine, also where what is typed moves along to it."""
        if self.isVisible() and not self.unsaved:
            self._load(self.draft)

    def _answer_change(self) -> None:
        """Another path wants its cautions read anew."""
        self.read_box.setChecked(False)
        self.recompute()
        self.save_draft()

    def _show_again(self) -> None:
        if self.result is not None:
            self.card.show_card(path_card(self.result, self._why_not(self.result)))

    def _keep_text(self) -> None:
        machine, form = self.context.machine, self.form
        if machine is None:
            self.context.say(self.tr("Choose or add a machine above; the text is kept with it."), Level.WARNING)
        elif keep_text(self.context, form.start.toPlainText(), form.end.toPlainText()):
            self._usual |= {key: form.texts()[key] for key in ("start", "end")}
            self.save_draft()
            self.context.say(self.tr("The text is kept with {name}.").format(name=machine.name), Level.GOOD)

    def _lay_out(self) -> None:
        inside = cast(QVBoxLayout, self.card.layout())
        inside.insertWidget(inside.count() - 1, self.read_box)
        right, across, down = QVBoxLayout(), QHBoxLayout(), QVBoxLayout(self)
        self.picture.sheet.asks_px = _LEAST_PICTURE_PX  # the words come first
        self.picture.sheet.setMinimumHeight(_LEAST_PICTURE_PX)
        right.addWidget(self.picture, 1)
        right.addWidget(self.card)
        across.addWidget(self.form, 45)
        across.addLayout(right, 55)
        down.addWidget(heading(self.title))
        down.addLayout(across, 1)
        down.setContentsMargins(0, 0, 0, 0)
        for layout in (right, down):
            layout.setSpacing(STEP_PX)
        across.setSpacing(2 * STEP_PX)
