"""The left side of the page *Ringing*: the axis and what the answer is for, then the ripples, or a log."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import TYPE_CHECKING, Any, cast

from PySide6.QtWidgets import QLabel, QPushButton, QSizePolicy, QSpacerItem, QVBoxLayout, QWidget

from app.theme import STEP_PX
from app.widgets.fields import ChoiceField, Field, LengthField, NumberField, number_text
from app.widgets.reading_rows import Column
from app.widgets.trialform import TrialForm
from app.widgets.trialpicker import TrialPicker
from core.errors import InputError

if TYPE_CHECKING:
    from core.guidance.ringingadvice import Use
    from core.motion_trials.ringing import Ripple

RIPPLES, LOG = "ripples", "log"
U_SPEED_RATIO = 0.005  # how well a machine keeps a commanded speed away from its ramps: common practice, no source
_DEFAULTS: dict[str, Any] = {
    "axis": "x",
    "read": RIPPLES,
    "payload_g": 0.0,
    "speed_mm_s": 100.0,
    "visible_mm": 0.015,
    "most_mm_s2": 3000.0,
    "u_distance_mm": 0.1,
    "bearing_mm": None,
}
_COLUMNS_PX = {"payload_g": 114, "u_distance_mm": 114, "most_mm_s2": 134}  # so no label needs a second line
_SPEEDS = ("60", "90", "130")
_NEEDED = ("speed_mm_s", "crests", "measured_mm")


class RingingForm(TrialForm):
    """A trial form whose rows are ripples at three speeds; `log_button` reads a log instead, and no row is in sight."""

    def __init__(self, picker: TrialPicker) -> None:
        columns = (
            Column("speed_mm_s", self.tr("Speed\nmm/s"), "number", low=0.0, high=2000.0),
            Column("crests", self.tr("Crests"), "number", low=1.0, high=200.0),
            Column("measured_mm", self.tr("Over\nmm"), "length"),
            Column("first_um", self.tr("First\nµm"), "number", low=0.0, high=2000.0),
            Column("last_um", self.tr("Last\nµm"), "number", low=0.0, high=2000.0),
            Column("error", self.tr("Hz"), "shown", editable=False, low=0.0, high=400.0),
        )
        super().__init__(columns, picker, above_entry=self._above_entry(), across=3, foretells=False)
        for key, label_text, field, unit in self._settings():
            self.add_setting(key, label_text, field, unit)
        for key, least_px in _COLUMNS_PX.items():
            self.settings.field(key).setMinimumWidth(least_px)
        self.add_button = QPushButton(self.tr("Add a &ripple"))
        self.log_button = QPushButton(self.tr("Read a lo&g…"))
        self.foot.addWidget(self.add_button)
        self.foot.addWidget(self.log_button)
        self.add_button.clicked.connect(self._add_ripple)
        # Of a log there is no table to fill the height.
        below = QSpacerItem(0, 0, QSizePolicy.Policy.Minimum, QSizePolicy.Policy.Expanding)
        cast("QVBoxLayout", self.layout()).addItem(below)
        self.settings.field("read").changed.connect(self._show_way)
        self._show_way()

    @property
    def by_log(self) -> bool:
        """Whether a log is read instead of ripples."""
        return bool(self.settings.field("read").value() == LOG)

    def read_log(self) -> None:
        """Go on with a log instead of ripples."""
        self.settings.field("read").set_value(LOG)
        self._show_way()

    def show_conditions(self, conditions: Mapping[str, Any]) -> None:
        """Show stored settings, and the readings that they ask for."""
        super().show_conditions(conditions)
        self._show_way()

    def lock(self, locked: bool) -> None:
        """Show readings without letting them be changed; of a log there is no ripple to add."""
        super().lock(locked)
        self._show_way()

    def _show_way(self) -> None:
        """Show the rows of the ripples only where ripples are read; what is typed in them stays."""
        by_log, is_kept = self.by_log, not self.new_button.isHidden()
        self.how.setText(
            self.tr(
                "Fix an accelerometer to the carriage or the bed, shake the axis with quick moves to and fro, read its "
                "log: time in s and acceleration."
            )
            if by_log
            else self.tr(
                "A wall after a sharp corner, for each speed: count from crest to crest, the first as 0, type the "
                "count; measure from it to the last. Their heights tell the damping."
            )
        )
        self.entry.setVisible(not by_log)
        cast("QWidget", self.entry.parentWidget()).setVisible(not (by_log and is_kept))  # nothing would be in it
        cast("QWidget", self.table.parentWidget()).setVisible(not by_log)  # its card
        self.add_button.setVisible(not by_log and not is_kept)
        self.setFocusProxy(self.new_button if is_kept else self.log_button if by_log else self.entry)

    def _above_entry(self) -> QWidget:
        self.caution, self.how = QLabel(), QLabel()
        self.caution.setText(
            self.tr(
                "Caution: quick moves start without warning. Hands, hair, cables out of the travel, hand on the "
                "switch, stop at the first lost step; nothing near what is hot. Local rules come first."
            )
        )
        self.caution.setObjectName("question")
        self.how.setObjectName("quiet")
        above = QWidget()
        column = QVBoxLayout(above)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(STEP_PX // 2)
        for label in (self.caution, self.how):
            label.setWordWrap(True)
            column.addWidget(label)
        return above

    def _settings(self) -> tuple[tuple[str, str, Field, str], ...]:
        axes = ChoiceField([("x", "X"), ("y", "Y"), ("z", "Z")])
        ways = ChoiceField([(RIPPLES, self.tr("Ripples")), (LOG, self.tr("Log"))])
        return (
            ("axis", self.tr("Axis"), axes, ""),
            ("read", self.tr("Read &by"), ways, ""),
            ("payload_g", self.tr("&Part on the bed"), NumberField(required=True, low=0.0), self.tr("g")),
            ("speed_mm_s", self.tr("Print a&t"), NumberField(required=True, low=0.1), self.tr("mm/s")),
            ("most_mm_s2", self.tr("Ma&chine up to"), NumberField(required=True, low=1.0), self.tr("mm/s²")),
            ("visible_mm", self.tr("&Seen from"), LengthField(required=True), self.tr("mm")),
            ("u_distance_mm", self.tr("&One end, 1 u"), LengthField(required=True), self.tr("mm")),
            ("bearing_mm", self.tr("Roller &diameter"), LengthField(), self.tr("mm")),
        )

    def plan(self, most_mm_s2: float | None) -> None:
        """Begin with a ripple at each of three speeds."""
        known = {} if most_mm_s2 is None else {"most_mm_s2": most_mm_s2}
        self.show_conditions(_DEFAULTS | known)
        self.show_rows([_row(speed) for speed in _SPEEDS])

    def use(self) -> Use:
        """Return what the answer is for."""
        from core.guidance.ringingadvice import Use

        numbers = [self.number(key) for key in ("payload_g", "speed_mm_s", "visible_mm", "most_mm_s2")]
        return Use(str(self.settings.field("axis").value()), *numbers)

    def places(self) -> list[int]:
        """Return the rows that are complete and count."""
        unread = self.unread()
        return [place for place in self._measured() if place not in unread]

    def unread(self) -> dict[int, InputError]:
        """Return the rows with a distance that are not read, each with what it lacks."""
        rows, lacking = self.model.rows(), {}
        for place in self._measured():
            speed, crests = (rows[place].get(key) for key in ("speed_mm_s", "crests"))
            if speed is None:
                says = self.tr("Row {row}: type the speed; without it this distance is not read.")
                lacking[place] = InputError("speed_mm_s", says.format(row=place + 1), place)
            elif crests is None:
                says = self.tr("Row {row}: count the crests and type how many; without the count it is not read.")
                lacking[place] = InputError("crests", says.format(row=place + 1), place)
            elif float(crests) != round(float(crests)):
                says = self.tr("Row {row}: crests are counted whole; {count} lies between two.")
                told = says.format(row=place + 1, count=number_text(float(crests)))
                lacking[place] = InputError("crests", told, place)
        return lacking

    def _measured(self) -> list[int]:
        return [
            place
            for place, row in enumerate(self.model.rows())
            if row["measured_mm"] is not None and not row["excluded"] and not row["questioned"]
        ]

    def ripples(self, places: Sequence[int]) -> list[Ripple]:
        """Return the ripples of these rows."""
        from core.motion_trials.ringing import Ripple

        rows = self.model.rows()
        return [
            Ripple(
                float(row["speed_mm_s"]), round(float(row["crests"])), float(row["measured_mm"]),
                row.get("first_um"), row.get("last_um"),
            )
            for row in (rows[place] for place in places)
        ]  # fmt: skip

    def _add_ripple(self) -> None:
        row = self.model.rowCount()
        self.model.insert_row(row, _row(""))
        self.table.edit_cell(row, "speed_mm_s")


def hertz(row: Mapping[str, Any]) -> float | None:
    """Return the frequency of a ripple if it is ringing; None where the row is not complete."""
    speed, crests, distance = (row.get(key) for key in _NEEDED)
    return float(speed) * float(crests) / float(distance) if speed and crests and distance else None


def _row(speed: str) -> dict[str, Any]:
    return {
        "feature": "", "axis": "", "kind": "travel",
        "speed_mm_s": float(speed) if speed else None, "speed_mm_s_raw": speed,
    }  # fmt: skip
