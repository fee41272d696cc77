"""Read the verdict as a person does: its sentences, numbers, signs and the one button."""

import pytest
from PySide6.QtCore import Qt
from PySide6.QtGui import QAccessible, QColor, QFont, QFontMetricsF, QGuiApplication, QTextDocument, QTextTable
from PySide6.QtWidgets import QLabel, QPushButton

from app.theme import DARK, LIGHT, apply_theme
from app.widgets.plotmarks import contrast
from app.widgets.resultcard import CardData, Paragraph, ResultCard
from app.widgets.resulttext import tone_colour, write_card
from core.words import tr

CARD = CardData(
    (
        Paragraph(
            "Shrink allowance",
            "of this filament: draw XY 1.0025 larger. The machine is not to be touched: crossed "
            "belts leave 0.05 %, the slope is 0.25 %.",
        ),
        Paragraph("Contour offset", "−0.040 mm per side, after the flow trial is valid again.", "good"),
        Paragraph(
            "Mend the mechanics", "Lost motion of 0.06 ± 0.02 mm at X is more than the tolerance leaves.", "warning"
        ),
        Paragraph("Cannot tell yet", "Y: the window (reading 8) would tell it to ± 0.03 mm.", "unknown"),
    ),
    (
        ("scale error, X", "−0.250 ± 0.038 %", "7 readings, k 2.57"),
        ("wall outset", "+0.040 ± 0.006 mm per side", "outside against inside"),
        ("lost motion, Y", "not told apart yet", "needs a closed window"),
    ),
    "steps per millimetre, flow factor.",
)


@pytest.fixture
def card(qtbot):
    widget = ResultCard()
    qtbot.addWidget(widget)
    widget.resize(560, 260)
    widget.show()
    return widget


@pytest.fixture
def dark(qapp):
    apply_theme(qapp, dark=True)
    yield
    apply_theme(qapp, dark=False)


def table(card):
    (found,) = (frame for frame in card.body.document().rootFrame().childFrames() if isinstance(frame, QTextTable))
    return found


def edges(card, row, column):
    """Left and right edge of the text in a cell, in pixels."""
    cell = table(card).cellAt(row, column)
    block = cell.firstCursorPosition().block()
    line = block.layout().lineAt(0)
    left = card.body.document().documentLayout().blockBoundingRect(block).left() + line.naturalTextRect().left()
    return left, left + line.naturalTextWidth()


def shows_all(card):
    return card.body.verticalScrollBar().maximum() == 0


def test_the_card_reads_as_sentences_with_their_signs(card):
    card.show_card(CARD)
    text = card.body.toPlainText()
    for expected in (
        "•\tShrink allowance of this filament",
        "✓\tContour offset −0.040 mm",
        "!\tMend the mechanics: Lost motion",
        "?\tCannot tell yet: Y: the window",
    ):
        assert expected in text
    assert card.untouched.text() == "Do not touch: steps per millimetre, flow factor."


def test_at_the_smallest_window_the_whole_verdict_and_the_button_are_seen(card, qtbot):
    card.show_card(CARD)
    qtbot.waitUntil(lambda: shows_all(card))
    assert card.keep_button.isVisible()
    assert card.rect().contains(card.keep_button.geometry())


def test_in_a_low_card_the_gaps_shrink_then_the_text_scrolls_and_the_button_stays(card, qtbot):
    card.show_card(CARD)
    roomy = card.body.document().size().height()
    card.resize(560, 235)
    qtbot.waitUntil(lambda: card.body.document().size().height() < roomy)
    assert shows_all(card)
    card.resize(560, 170)
    qtbot.waitUntil(lambda: not shows_all(card))
    assert card.rect().contains(card.keep_button.geometry())
    card.resize(560, 320)
    qtbot.waitUntil(lambda: card.body.document().size().height() == roomy)


def test_paragraphs_are_evenly_spaced(card):
    card.show_card(CARD)
    block, tops, heights = card.body.document().begin(), [], []
    layout = card.body.document().documentLayout()
    for _ in CARD.paragraphs:
        tops.append(layout.blockBoundingRect(block).top())
        heights.append(block.layout().boundingRect().height())
        block = block.next()
    gaps = [b - a - h for a, b, h in zip(tops, tops[1:], heights, strict=False)]
    assert max(gaps) - min(gaps) < 0.6


def test_numbers_stand_in_columns(card):
    card.show_card(CARD)
    assert edges(card, 0, 1)[1] == pytest.approx(edges(card, 1, 1)[1], abs=0.6)  # values end together
    assert edges(card, 0, 2)[0] == pytest.approx(edges(card, 1, 2)[0], abs=0.6)  # uncertainties begin together
    assert len({round(edges(card, row, 3)[0]) for row in range(3)}) == 1
    widest = QFontMetricsF(card.font()).horizontalAdvance("+0.040")
    assert edges(card, 0, 1)[1] - edges(card, 2, 1)[0] == pytest.approx(widest, abs=2)  # words begin where numbers do


def line_breaks(block):
    """What stands around the end of each line; no layout outlives the call, for the next writing takes it away."""
    layout, text = block.layout(), block.text()
    lines = [layout.lineAt(number) for number in range(layout.lineCount())]
    return [text[line.textStart() + line.textLength() - 1 :][:4] for line in lines[:-1]]


def test_no_line_ends_between_a_number_and_its_unit_and_a_short_remark_stays_whole(card):
    said = Paragraph("Printing speed", "Print this bead at most at 147.1 ± 3.7 mm/s, and use 80 % of it.")
    remark = "k 1.97, ν 435"
    rows = (("pads less height commanded", "−0.048 ± 0.013 mm", remark), ("machine, lot", "Bramble, Slate 7", ""))
    card.show_card(CardData((said,), rows))
    assert "147.1 ± 3.7 mm/s, and use 80 %" in card.body.toPlainText()  # as typed, for the search and the clipboard
    for width in range(380, 560, 10):
        card.resize(width, 320)
        breaks = line_breaks(card.body.document().begin())
        assert not [found for found in breaks if found[:1] in "0123456789"], f"{width}: {breaks}"
        assert table(card).cellAt(0, 3).firstCursorPosition().block().layout().lineCount() == 1, width
        label, value = edges(card, 0, 0), edges(card, 0, 1)
        assert value[0] - label[1] >= 6, width


def test_a_remark_shared_by_rows_is_said_once(card):
    needs = "needs two more features"
    card.show_card(
        CardData(
            (Paragraph("Cannot tell yet", "", "unknown"),),
            tuple((name, "not told yet", needs) for name in ("scale error, X", "wall outset")),
        )
    )
    assert card.body.toPlainText().count(needs) == 1


def test_a_short_remark_stands_in_each_of_its_rows(card):
    rows = tuple((f"{step} °C, bond", "3.6 (3.1 to 4.0)", "met: 95 %") for step in (210, 215, 220))
    card.show_card(CardData((Paragraph("Use 215 °C", ""),), (*rows, ("mean", "3.6", ""))))
    assert card.body.toPlainText().count("met: 95 %") == 3
    remarks = [table(card).cellAt(row, 3).firstCursorPosition().block().text() for row in range(4)]
    assert remarks == ["met: 95 %"] * 3 + [""]


def test_a_click_on_keep_is_told(card, qtbot):
    card.show_card(CARD)
    with qtbot.waitSignal(card.keep_clicked, timeout=500):
        qtbot.mouseClick(card.keep_button, Qt.MouseButton.LeftButton)


def test_what_cannot_be_kept_says_why(card, qtbot):
    card.show_card(
        CardData(CARD.paragraphs[:1], can_keep=False, why_not="Row 7 has no reading yet; type it, or skip it.")
    )
    assert not card.keep_button.isEnabled()
    assert "Row 7 has no reading yet; type it, or skip it." in [
        label.text() for label in card.findChildren(QLabel) if label.isVisible()
    ]
    card.show_card(CARD)
    assert card.keep_button.isEnabled()
    assert not card.why_not.isVisible()


def test_before_any_verdict_the_card_says_what_will_come(card):
    assert "No verdict yet" in card.body.toPlainText()
    assert not card.keep_button.isEnabled() and card.keep_button.isVisible()
    card.show_card(CARD)
    card.show_empty("Pick a machine first.")
    assert card.body.toPlainText() == "Pick a machine first."
    assert card.text() == "Pick a machine first."
    assert not card.untouched.isVisible()


def test_the_text_is_selected_and_copied_with_the_keyboard(card, qtbot):
    card.show_card(CARD)
    card.body.setFocus()
    qtbot.keyClick(card.body, Qt.Key.Key_C, Qt.KeyboardModifier.ControlModifier)
    assert "Contour offset −0.040 mm per side" in QGuiApplication.clipboard().text()
    assert "+0.040" in QGuiApplication.clipboard().text()
    cursor = card.body.textCursor()
    cursor.clearSelection()
    cursor.movePosition(cursor.MoveOperation.Start)
    card.body.setTextCursor(cursor)
    for _ in range(18):
        qtbot.keyClick(card.body, Qt.Key.Key_Right, Qt.KeyboardModifier.ShiftModifier)
    qtbot.keyClick(card.body, Qt.Key.Key_C, Qt.KeyboardModifier.ControlModifier)
    assert QGuiApplication.clipboard().text() == "•\tShrink allowance"


def test_copy_text_yields_lines_for_a_report(card, qtbot):
    card.show_card(CARD)
    (button,) = (b for b in card.findChildren(QPushButton) if b.text() == "Copy text")
    qtbot.mouseClick(button, Qt.MouseButton.LeftButton)
    lines = QGuiApplication.clipboard().text().splitlines()
    assert lines[0].startswith("• Shrink allowance of this filament")
    assert "wall outset\t+0.040 ± 0.006 mm per side\toutside against inside" in lines
    assert lines[-1] == "Do not touch: steps per millimetre, flow factor."


def test_sentences_of_the_core_are_shown(card):
    card.show_card(CardData((Paragraph(tr("Leave it"), tr("{count} readings agree.", count=7), "good"),)))
    assert "✓\tLeave it 7 readings agree." in card.body.toPlainText()


def test_a_screen_reader_finds_verdict_and_button(card):
    card.show_card(CARD)
    body = QAccessible.queryAccessibleInterface(card.body)
    assert body.text(QAccessible.Text.Name) == "Verdict"
    assert "Shrink allowance" in body.text(QAccessible.Text.Value)
    button = QAccessible.queryAccessibleInterface(card.keep_button)
    assert button.text(QAccessible.Text.Name) == "Keep trial"


@pytest.mark.parametrize("theme", [LIGHT, DARK], ids=["light", "dark"])
@pytest.mark.parametrize("tone", ["plain", "good", "warning", "unknown"])
def test_every_tone_can_be_read(tone, theme):
    assert contrast(QColor(tone_colour(tone, theme)), QColor(theme.card)) >= 4.5


def test_the_card_follows_the_theme(card, dark, qtbot):
    card.show_card(CARD)
    inks = {fragment.fragment().charFormat().foreground().color().name() for fragment in card.body.document().begin()}
    assert inks == {DARK.ink}
    corner = card.grab().toImage().pixelColor(5, card.height() // 2)
    assert corner == QColor(DARK.card)


def test_a_card_that_may_grow_asks_for_the_height_of_its_text(qtbot):
    """Beside a plot that takes what is left, the whole verdict is seen, up to the lines allowed."""
    widget = ResultCard()
    qtbot.addWidget(widget)
    widget.resize(560, 240)
    widget.show()
    before = widget.minimumSizeHint().height()
    widget.show_card(CARD)
    four_lines = widget.minimumSizeHint().height()
    widget.grow(30)
    whole = widget.minimumSizeHint().height()
    assert whole > four_lines + 40 and four_lines >= before
    widget.resize(560, whole)
    assert shows_all(widget)
    widget.grow(6)
    assert four_lines < widget.minimumSizeHint().height() < whole


@pytest.mark.parametrize(
    "data", [CARD, CardData(CARD.paragraphs), CardData((), CARD.rows), CardData(CARD.paragraphs[:1], CARD.rows * 3)]
)
@pytest.mark.parametrize("across", [210, 333, 560])
def test_the_gaps_that_shrink_are_those_written(qtbot, data, across):
    heights = []
    for gap in (8.0, 3.0):
        document = QTextDocument()
        write_card(document, data, "", gap, QFont(), LIGHT, across)
        document.setTextWidth(across)
        heights.append(document.size().height())
    assert heights[0] - heights[1] == pytest.approx(5.0 * data.gaps)
