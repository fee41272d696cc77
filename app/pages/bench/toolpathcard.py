"""What the read-back of a toolpath found, as the card shows it: refusals or cautions, then what the path commands."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING

from app.widgets.fields import number_text
from app.widgets.resulttext import CardData, Paragraph
from app.words import shown
from core.words import tr

if TYPE_CHECKING:
    from core.guidance.directtrials import PlannedPath

_SEEN = 3  # faults; the rest is counted
_MM3_PER_CM3 = 1000.0


def path_card(planned: PlannedPath, why_not: str) -> CardData:
    """Return the card of a path."""
    from core.pieces.toolpathtext import cautions

    faults = planned.checked.faults
    if not_told(planned):
        wants = tr("Type the temperature of the nozzle that this filament wants; until then nothing is written.")
        said = [Paragraph(shown(tr("Cannot be written yet")), shown(wants), "unknown")]
    elif faults:
        said = [Paragraph(shown(tr("Refused")), shown(_fault_words(fault.line, fault.says)), "warning")
                for fault in faults[:_SEEN]]  # fmt: skip
        if len(faults) > _SEEN:
            more = tr("… and {count} more lines or reasons.", count=len(faults) - _SEEN)
            said.append(Paragraph("", shown(more), "warning"))
    else:
        within = tr("Read back line by line: within the travel and the limits as entered, heaters off first and last.")
        says = " ".join(shown(words) for words in cautions(planned.program.heat is not None))
        said = [
            Paragraph(shown(tr("In order")), shown(within), "good"),
            Paragraph(shown(tr("Caution")), says, "warning"),
        ]
    if planned.minds:
        said.append(Paragraph(shown(tr("Please note")), " ".join(shown(mind) for mind in planned.minds), "warning"))
    return CardData(tuple(said), rows=_rows(planned), can_keep=not why_not, why_not=why_not)


def not_told(planned: PlannedPath) -> bool:
    """Return whether something is to be heated and nobody said how hot."""
    return planned.program.heat is not None and planned.program.heat.nozzle_c == 0


def _fault_words(line: int, says: str) -> str:
    return tr("Line {line}: {says}", line=line, says=says) if line else says


def _rows(planned: PlannedPath) -> tuple[tuple[str, str, str], ...]:
    path, checked = planned.toolpath, planned.checked
    rows: list[tuple[str, str, str]] = []
    if planned.program.heat is not None:
        length, volume = path.commanded_mm(), path.commanded_mm3() / _MM3_PER_CM3
        purged = number_text(checked.filament_mm - length, 1)
        rows = [
            (shown(tr("filament for the piece")), f"{number_text(length, 1)} mm, {number_text(volume, 3)} cm³",
             shown(tr("as commanded"))),
            (shown(tr("purged beside it")), f"{purged} mm", shown(tr("as commanded"))),
            (shown(tr("highest rate")), f"{number_text(checked.rate_mm3_s, 2)} mm³/s", shown(tr("as commanded"))),
        ]  # fmt: skip
    extent = " × ".join(number_text(checked.high_mm[axis] - checked.low_mm[axis], 1) for axis in (0, 1))
    minutes = shown(tr("at least {minutes} min", minutes=math.ceil(checked.time_s / 60.0)))
    return (*rows, (shown(tr("room on the bed")), f"{extent} mm", shown(tr("as commanded"))),
            (shown(tr("without heating")), minutes, ""))  # fmt: skip
