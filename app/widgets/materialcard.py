"""What is usual for a material, each figure with the mark of how well it is known."""

from __future__ import annotations

from html import escape

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QFrame, QLabel, QScrollArea, QVBoxLayout, QWidget

from app.theme import STEP_PX
from app.widgets.fields import number_text
from app.words import shown
from core.filament.materials import Figure, Material, figure_words, find_material
from core.words import listed

_UNITS = {"1e-6/K": "10⁻⁶/K", "g/cm3": "g/cm³"}
_CELL = "padding-right: 4px; white-space: nowrap"
_ROW = f'<tr><td style="{_CELL}">{{name}}</td><td style="{_CELL}">{{value}}</td><td>{{known}}</td></tr>'


class MaterialCard(QFrame):
    """Follows the material typed in the form."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setObjectName("card")
        self.heading = QLabel()
        self.heading.setObjectName("heading")
        self.says = QLabel()
        self.says.setWordWrap(True)
        self.says.setAlignment(Qt.AlignmentFlag.AlignTop)
        self.says.setTextInteractionFlags(
            Qt.TextInteractionFlag.TextSelectableByMouse | Qt.TextInteractionFlag.TextSelectableByKeyboard
        )
        scroll = QScrollArea()
        scroll.setWidgetResizable(True)
        scroll.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        scroll.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        scroll.setWidget(self.says)
        scroll.viewport().setAutoFillBackground(False)
        self.says.setAutoFillBackground(False)
        layout = QVBoxLayout(self)
        layout.setContentsMargins(2 * STEP_PX, STEP_PX, 2 * STEP_PX, STEP_PX)
        layout.setSpacing(4)
        layout.addWidget(self.heading)
        layout.addWidget(scroll, 1)
        self.show_material("")
        self.setAccessibleName(self.heading.text())

    def show_material(self, text: str) -> None:
        """Show what is on record for what a text names."""
        match = find_material(text)
        if match is None:
            self.heading.setText(self.tr("Usual for the material"))
            self.says.setText(escape(
                self.tr("Nothing on record for “{text}”.").format(text=text) if text
                else self.tr("Type a material: what is usual for it appears here.")))
            return
        self.heading.setText(self.tr("Usual for {name}").format(name=match.material.name))
        rows = "".join(self._row(figure) for figure in match.material.figures)
        notes = [] if match.exact else [self.tr("A filled or blended grade differs: measure its density.")]
        notes += [self.tr("{figures}: {source}.").format(figures=figures, source=source)
                  for figures, source in _by_source(match.material)]
        notes.append(self.tr("Moulding shrinkage is not that of a printed part. Measure your own lot."))
        self.says.setText(f"<table cellspacing=0 cellpadding=1>{rows}</table>"
                          + "".join(f'<p style="margin: 3px 0 0 0">{escape(note)}</p>' for note in notes))
        self.says.setAccessibleName(self.heading.text())

    def _row(self, figure: Figure) -> str:
        low, high = number_text(figure.low), number_text(figure.high)
        span = low if figure.low == figure.high else self.tr("{low}–{high}").format(low=low, high=high)
        if figure.typical is not None:
            span = self.tr("{typical} ({span})").format(typical=number_text(figure.typical), span=span)
        known = self.tr("seen in print") if figure.verified else self.tr("unverified")
        return _ROW.format(
            name=escape(shown(figure_words(figure.name))),
            value=escape(f"{span} {_UNITS.get(figure.unit, figure.unit)}"),
            known=escape(known),
        )


def _by_source(material: Material) -> list[tuple[str, str]]:
    """Return (names of figures, their source), each source once."""
    names: dict[str, list[str]] = {}
    for figure in material.figures:
        names.setdefault(figure.source, []).append(shown(figure_words(figure.name)))
    return [(", ".join(of), shown(listed(source))) for source, of in names.items()]
