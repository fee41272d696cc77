"""A number stays with its unit, a unit in one piece, where lines break; what is copied or read aloud is as it was."""

from __future__ import annotations

import pytest
from PySide6.QtGui import QAccessible, QGuiApplication, QTextLayout, QTextOption

from app.widgets.resultcard import CardData, Paragraph, ResultCard
from app.widgets.unbroken import UnbrokenLabel, unbroken, unjoined


def lines(text, width):
    """Break a text as Qt does (Unicode Standard Annex 14: a line may end behind a slash)."""
    layout = QTextLayout(text)
    option = QTextOption()
    option.setWrapMode(QTextOption.WrapMode.WordWrap)
    layout.setTextOption(option)
    layout.beginLayout()
    found = []
    while (line := layout.createLine()).isValid():
        line.setLineWidth(width)
        found.append(text[line.textStart() : line.textStart() + line.textLength()].strip())
    layout.endLayout()
    return [unjoined(line).replace("\N{NO-BREAK SPACE}", " ") for line in found]


@pytest.mark.parametrize("whole", [
    "49 mm/s", "1.24 g/m", "80.00 ± 0.08 steps/mm", "1500 mm/s²", "5 mm³/s", "0.45 × 0.2 mm", "1.24 g/cm³",
    "80 Schritte/mm"])
def test_what_belongs_together_stands_in_one_line(qapp, whole):
    text = f"They go along at {whole} and on."
    for width in range(60, 400, 3):
        broken = lines(unbroken(text), width)
        words = [line for line in broken if any(part in line for part in whole.split(" "))]
        assert any(whole in line for line in words) or len(words) == 1, (width, broken)
    assert any(not any(whole in line for line in lines(text, width)) for width in range(150, 400, 3))  # without it


@pytest.mark.parametrize("text", ["and/or", "machine/lot", "43/12 teeth", "input/output", "km/hour", "see /tmp/s.csv"])
def test_other_slashes_are_left_alone(text):
    assert unbroken(text) == text


def test_a_label_tells_its_words_as_they_were_given(qtbot):
    label = UnbrokenLabel("&Rate, mm³/s")
    qtbot.addWidget(label)
    assert label.text() == "&Rate, mm³/s"
    told = QAccessible.queryAccessibleInterface(label)
    assert told.text(QAccessible.Text.Name) == "Rate, mm³/s"
    label.setText("Rate")
    assert told.text(QAccessible.Text.Name) == "Rate"


def test_what_is_copied_from_a_verdict_can_be_searched(qtbot):
    card = ResultCard()
    qtbot.addWidget(card)
    card.show_card(CardData((Paragraph("Speed", "Print at 49 mm/s."),), untouched="1500 mm/s²."))
    assert "Print at 49 mm/s." in card.body.toPlainText()
    card.body.selectAll()
    card.body.copy()
    assert QGuiApplication.clipboard().text().endswith("Print at 49 mm/s.")
    assert card.untouched.text() == "Do not touch: 1500 mm/s²."
