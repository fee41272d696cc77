"""Where the parts of a page with kept trials stand: the form at the left, picture above card at the right."""

from __future__ import annotations

from collections.abc import Sequence

from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from app.theme import STEP_PX
from app.widgets.formscroll import FormScroll
from app.widgets.picture import Picture
from app.widgets.resultcard import ResultCard
from app.widgets.trialform import TrialForm

_PICTURE_PX = 240  # high: a long verdict scrolls rather than press the picture flat
_LINES_IN_SIGHT = 15  # of the verdict in the smallest window; the picture gives way


def lay_out_trial(
    page: QWidget, head: Sequence[QWidget], form: TrialForm, picture: Picture, card: ResultCard
) -> None:
    """Lay a page out; of the widgets above, the first takes the room that the others leave."""
    above, right, across, down = QHBoxLayout(), QVBoxLayout(), QHBoxLayout(), QVBoxLayout(page)
    for place, widget in enumerate(head):
        above.addWidget(widget, 0 if place else 1)
    picture.least_px = _PICTURE_PX
    right.addWidget(picture, 3)
    right.addWidget(card, 2)
    across.addWidget(FormScroll(form), 45)
    across.addLayout(right, 55)
    down.addLayout(above)
    down.addLayout(across, 1)
    down.setContentsMargins(0, 0, 0, 0)
    for layout in (above, right, down):
        layout.setSpacing(STEP_PX)
    across.setSpacing(2 * STEP_PX)
    card.grow(_LINES_IN_SIGHT)
