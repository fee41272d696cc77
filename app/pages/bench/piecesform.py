"""The left side of the page *Pieces*: which piece, for which machine and caliper, and its gauges."""

from __future__ import annotations

from contextlib import suppress
from dataclasses import replace

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QHBoxLayout, QPushButton, QVBoxLayout, QWidget

from app.theme import STEP_PX
from app.widgets.fieldgrid import FieldGrid
from app.widgets.fields import ChoiceField, CountField, LengthField, NumberField
from app.widgets.gaugetable import GaugeTable
from app.widgets.trialform import card
from app.words import shown
from core.errors import InputError
from core.guidance.pieceplan import USUAL_FACE_MM, USUAL_READING_MM, PieceWishes, Share
from core.pieces.bounds import Bounds
from core.pieces.catalogue import set_names

_BOUNDS = (
    "bed_x_mm", "bed_y_mm", "caliper_mm", "reach_mm", "turn_x_mm", "turn_y_mm", "layer_mm", "first_layer_mm",
    "nozzle_mm",
)  # fmt: skip


class PiecesForm(QWidget):
    """`changed` follows every finished change.

    Attributes:
        wanted: piece, sharing of the readings, rounds, the scale error that matters.
        bounds: bed, caliper, drives, layers, nozzle, and what scatters.
        table: the gauges.
    """

    changed = Signal()

    def __init__(self) -> None:
        super().__init__()
        self.wanted, self.bounds, self.table = FieldGrid(2), FieldGrid(3), GaugeTable()
        self.save_3mf, self.save_stl = QPushButton(self.tr("Save as &3MF…")), QPushButton(self.tr("Sa&ve as STL…"))
        self._bed_z_mm = Bounds().bed_z_mm
        self._add_fields()
        self._lay_out()
        self.setFocusProxy(self.wanted.field("piece"))
        self.wanted.changed.connect(self.changed)
        self.bounds.changed.connect(self.changed)

    def wishes(self) -> PieceWishes:
        """Return what is wanted; raise InputError at the first field that cannot be read."""
        wanted, values = self.wanted.values(), self.bounds.values()
        sizes = {key: float(values[key] or 0.0) for key in _BOUNDS}
        return PieceWishes(
            key=str(wanted["piece"]),
            bounds=Bounds(bed_z_mm=self._bed_z_mm, **sizes),
            sd_reading_mm=float(values["sd_reading_mm"] or 0.0),
            sd_face_mm=float(values["sd_face_mm"] or 0.0),
            share=Share(str(wanted["share"])),
            rounds=int(wanted["rounds"] or 1),
            scale_ratio=float(wanted["scale_percent"] or 0.0) / 100.0,
        )

    def show_bounds(self, bounds: Bounds, sd_reading_mm: float | None = None) -> None:
        """Show the bounds of another machine, and how far the hand scatters with another instrument."""
        self._bed_z_mm = bounds.bed_z_mm
        shared: dict[str, float] = {key: getattr(bounds, key) for key in _BOUNDS}
        self.bounds.set_values({**shared, "sd_reading_mm": sd_reading_mm or USUAL_READING_MM})

    def texts(self) -> dict[str, str]:
        """Return every field's text as typed."""
        return {**self.wanted.texts(), **self.bounds.texts()}

    def set_texts(self, texts: dict[str, str]) -> None:
        """Show texts as `texts` gave them."""
        self.wanted.set_texts(texts)
        self.bounds.set_texts(texts)

    def show_problem(self, field: str, message: str) -> bool:
        """Show what is wrong at its field; False where there is none of that name."""
        return self.bounds.show_problem(field, message) or self.wanted.show_problem(field, message)

    def mark_unreadable(self) -> None:
        """Say at every field that cannot be read what is wrong with it."""
        self.wanted.mark_unreadable()
        self.bounds.mark_unreadable()

    def clear_problems(self) -> None:
        """Take the sentences away."""
        self.wanted.clear_problems()
        self.bounds.clear_problems()

    def with_gauge_range(self, bounds: Bounds) -> Bounds:
        """Return the bounds of a machine with the caliper and nozzle that stand in the form, where they can be read."""
        sizes = {}
        for key in ("caliper_mm", "reach_mm", "nozzle_mm"):
            with suppress(InputError):
                sizes[key] = float(self.bounds.field(key).value() or 0.0)
        return replace(bounds, **sizes)

    def _add_fields(self) -> None:
        names = [(key, shown(name)) for key, name in set_names().items()]
        shares = [
            (str(Share.EVEN), self.tr("every gauge alike")),
            (str(Share.ALL), self.tr("for all causes")),
            (str(Share.SCALE), self.tr("for the scale")),
        ]
        self.wanted.add("piece", self.tr("&Piece"), ChoiceField(names))
        self.wanted.add("share", self.tr("Readings s&hared"), ChoiceField(shares))
        self.wanted.add("rounds", self.tr("&Rounds"), CountField(low=1, high=20, required=True))
        scale = NumberField(low=0.001, high=5.0, required=True)
        self.wanted.add("scale_percent", self.tr("Sc&ale error that matters"), scale, "%")
        self.wanted.set_values({"rounds": 1, "scale_percent": 0.1})
        mm = self.tr("mm")
        for key, label in (
            ("bed_x_mm", self.tr("Bed &X")),
            ("bed_y_mm", self.tr("Bed &Y")),
            ("caliper_mm", self.tr("&Caliper up to")),
            ("turn_x_mm", self.tr("Whole &turn X")),
            ("turn_y_mm", self.tr("Whole tur&n Y")),
            ("reach_mm", self.tr("&Blade reach")),
            ("layer_mm", self.tr("&Layer")),
            ("first_layer_mm", self.tr("F&irst layer")),
            ("nozzle_mm", self.tr("N&ozzle bore")),
            ("sd_reading_mm", self.tr("One readin&g, sd")),
            ("sd_face_mm", self.tr("One &wall, sd")),
        ):
            self.bounds.add(key, label, LengthField(low_mm=0.0, high_mm=3000.0, required=True), mm)
        self.show_bounds(Bounds())
        self.bounds.set_values({"sd_face_mm": USUAL_FACE_MM})

    def _lay_out(self) -> None:
        foot = QHBoxLayout()
        for button in (self.save_3mf, self.save_stl):
            foot.addWidget(button)
        foot.addStretch(1)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(STEP_PX)
        column.addWidget(self.wanted)
        column.addWidget(self.bounds)
        column.addWidget(card(1, self.table), 1)
        column.addLayout(foot)

