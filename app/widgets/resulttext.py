"""What the result card says, and how it is written into a document: sentences, then numbers in columns."""

from __future__ import annotations

import math
from collections.abc import Callable
from dataclasses import dataclass, replace
from itertools import groupby
from typing import Literal

from PySide6.QtCore import Qt
from PySide6.QtGui import (
    QColor,
    QFont,
    QFontMetricsF,
    QTextBlockFormat,
    QTextCharFormat,
    QTextCursor,
    QTextDocument,
    QTextLength,
    QTextOption,
    QTextTable,
    QTextTableCell,
    QTextTableFormat,
)

from app.theme import STEP_PX, Tokens
from app.units import inch_sentence
from app.widgets.unbroken import unbroken
from app.words import shown

Tone = Literal["plain", "good", "warning", "unknown"]

SIGNS: dict[str, str] = {"plain": "•", "good": "✓", "warning": "!", "unknown": "?"}
_SIGN_PX = 18.0
_SPARE_PX = 4.0  # beside the longest word of a remark, or it would be broken
_SHORT_REMARK, _PARTED_PX = 15, 6.0  # letters that fit beside the numbers in the smallest window; the gap below others


@dataclass(frozen=True, slots=True)
class Paragraph:
    """One sentence of the verdict; `head` (the setting) is bold, `tone` shows as a sign and a colour."""

    head: str
    text: str
    tone: Tone = "plain"


@dataclass(frozen=True, slots=True)
class CardData:
    """The whole card: sentences, rows (label, value ± U unit, remark), what not to touch, whether it may be kept.

    `untouched` follows the words "Do not touch:"; `why_not` says why it cannot be kept; `mind` are the checks among the
    sentences that are not met, to be kept with the trial.
    """

    paragraphs: tuple[Paragraph, ...]
    rows: tuple[tuple[str, str, str], ...] = ()
    untouched: str = ""
    can_keep: bool = True
    why_not: str = ""
    mind: tuple[str, ...] = ()

    @property
    def gaps(self) -> int:
        """How many gaps it is written with: above each paragraph but the first, and above the rows."""
        return max(len(self.paragraphs) - 1, 0) + bool(self.rows)

    def in_inch(self) -> CardData:
        """Return the card with its lengths in inch; `mind` stays, for it is kept with the trial as it is said in mm."""
        return replace(
            self,
            paragraphs=tuple(
                replace(said, head=inch_sentence(shown(said.head)), text=inch_sentence(shown(said.text)))
                for said in self.paragraphs
            ),
            rows=tuple(tuple(inch_sentence(shown(cell)) for cell in row) for row in self.rows),  # type: ignore[misc]
            untouched=inch_sentence(shown(self.untouched)),
            why_not=inch_sentence(shown(self.why_not)),
        )


def write_card(
    document: QTextDocument, card: CardData | None, empty_text: str, gap_px: float, font: QFont, theme: Tokens,
    width_px: float = math.inf,
) -> None:
    """Write the card into a document, with `gap_px` above each paragraph but the first, its columns to fit a width."""
    document.setUndoRedoEnabled(False)
    document.clear()
    document.setDefaultFont(font)
    document.setDocumentMargin(0)
    cursor = QTextCursor(document)
    cursor.beginEditBlock()  # laid out once, at its end
    if card is None:
        cursor.insertText(empty_text, _ink(theme.quiet))
    else:
        for index, paragraph in enumerate(card.paragraphs):
            _write_paragraph(cursor, paragraph, theme, gap_px, first=index == 0)
        if card.rows:
            _write_rows(cursor, card.rows, theme, gap_px, width_px - _SIGN_PX)
    cursor.endEditBlock()


def tone_colour(tone: Tone, theme: Tokens) -> str:
    """Return the colour of a tone; its sign says the same without colour."""
    return {"plain": theme.ink, "good": theme.good, "warning": theme.warning, "unknown": theme.warning}[tone]


def _write_paragraph(cursor: QTextCursor, paragraph: Paragraph, theme: Tokens, gap_px: float, *, first: bool) -> None:
    block = QTextBlockFormat()
    block.setTopMargin(0.0 if first else gap_px)
    block.setLeftMargin(_SIGN_PX)
    block.setTextIndent(-_SIGN_PX)  # the sign hangs before the sentence
    block.setTabPositions([QTextOption.Tab(_SIGN_PX, QTextOption.TabType.LeftTab)])
    if first:
        cursor.setBlockFormat(block)
    else:
        cursor.insertBlock(block)
    colour = tone_colour(paragraph.tone, theme)
    cursor.insertText(f"{SIGNS[paragraph.tone]}\t", _ink(colour, bold=True))
    if paragraph.head:
        cursor.insertText(f"{headed(paragraph)} ", _ink(colour, bold=True))
    cursor.insertText(unbroken(shown(paragraph.text)), _ink(theme.ink))


def headed(paragraph: Paragraph) -> str:
    """Return the head, with a colon where a new sentence follows it."""
    head, text = shown(paragraph.head), shown(paragraph.text)
    return f"{head}:" if head[-1:].isalnum() and text[:1].isupper() else head


def _write_rows(
    cursor: QTextCursor, rows: tuple[tuple[str, str, str], ...], theme: Tokens, gap_px: float, width_px: float
) -> None:
    """Write label, value, ± U unit and remark in columns: values end, uncertainties begin at the same place."""
    cells = [(shown(label), *_at_plus_minus(shown(value)), shown(remark)) for label, value, remark in rows]
    table_format = QTextTableFormat()
    table_format.setBorder(0)
    table_format.setCellSpacing(0)
    table_format.setCellPadding(0)
    table_format.setTopMargin(gap_px)
    table_format.setLeftMargin(_SIGN_PX)
    measure = QFontMetricsF(cursor.document().defaultFont())
    table_format.setColumnWidthConstraints(_column_widths(cells, measure, width_px))
    table = cursor.insertTable(len(rows), 4, table_format)
    for index, (label, number, rest, _remark) in enumerate(cells):
        if not rest:
            table.mergeCells(index, 1, 1, 2)
        _write_cell(_apart(table.cellAt(index, 0)), label, _ink(theme.quiet))
        _write_cell(table.cellAt(index, 1), number, _ink(theme.ink), right=bool(rest))
        if rest:
            _write_cell(table.cellAt(index, 2), rest, _ink(theme.ink))
    _part_remarks(table, [cell[3] for cell in cells])
    _write_remarks(table, [cell[3] for cell in cells], _ink(theme.quiet))
    after = QTextBlockFormat()  # a document ends with a line of its own after a table: make it a pixel high
    after.setLineHeight(1, QTextBlockFormat.LineHeightTypes.FixedHeight.value)
    cursor.movePosition(QTextCursor.MoveOperation.End)
    cursor.setBlockFormat(after)


def _apart(cell: QTextTableCell) -> QTextTableCell:
    """Keep a label from touching its value."""
    spaced = cell.format().toTableCellFormat()
    spaced.setRightPadding(STEP_PX)
    cell.setFormat(spaced)
    return cell


def _part_remarks(table: QTextTable, remarks: list[str]) -> None:
    """Leave a gap below a remark that may take several lines, or it would read on in the one below."""
    for row in range(1, len(remarks)):
        if len(remarks[row - 1]) > _SHORT_REMARK and remarks[row] != remarks[row - 1]:
            for column in range(table.columns()):
                cell = table.cellAt(row, column)
                parted = cell.format().toTableCellFormat()
                parted.setTopPadding(_PARTED_PX)
                cell.setFormat(parted)


def _write_remarks(table: QTextTable, remarks: list[str], ink: QTextCharFormat) -> None:
    """Write the last column; a long remark that several rows share is said once beside all of them."""
    for remark, rows in groupby(range(len(remarks)), key=remarks.__getitem__):
        first, *others = rows
        if len(remark) <= _SHORT_REMARK:
            for row in (first, *others):
                _write_cell(table.cellAt(row, 3), remark, ink)
            continue
        if others:
            table.mergeCells(first, 3, len(others) + 1, 1)
        _write_cell(table.cellAt(first, 3), remark, ink)


def _at_plus_minus(value: str) -> tuple[str, str]:
    """Split `+0.040 ± 0.006 mm` before its ±; a value without one stays whole."""
    number, plus_minus, rest = value.partition("±")
    return number.strip(), f" ± {rest.strip()}" if plus_minus else ""


def _column_widths(
    cells: list[tuple[str, str, str, str]], measure: QFontMetricsF, width_px: float
) -> list[QTextLength]:
    """Return fixed widths of the first three columns: a value in words must not push the numbers aside.

    Where the words of the remarks would not fit beside them, values in words go on in a second line, then labels.
    """
    wide = measure.horizontalAdvance
    label = max(wide(row[0]) for row in cells)
    number = max((wide(row[1]) for row in cells if row[2]), default=0.0)
    told = max((wide(row[2]) for row in cells), default=0.0)
    rest = max(told, *(wide(row[1]) - number for row in cells if not row[2]), 0.0)
    words = max((_widest_part(row[3], wide) for row in cells), default=0.0)
    beside = words + STEP_PX + _SPARE_PX if words else 0.0
    lacking = label + STEP_PX + number + rest + beside + 4 - width_px
    least = max(_longest_word(row[0], wide) for row in cells)
    if lacking > 0:
        narrower = min(rest, max(rest - lacking, told, _least_rest(cells, wide) - number))
        label = min(label, max(label - (lacking - (rest - narrower)), least))
        rest = narrower
    fixed = (math.ceil(label) + STEP_PX + 1, math.ceil(number) + 1, math.ceil(rest) + (STEP_PX if words else 0))
    kinds = QTextLength.Type
    return [*(QTextLength(kinds.FixedLength, max(w, 1)) for w in fixed), QTextLength(kinds.VariableLength, 0)]


def _least_rest(cells: list[tuple[str, str, str, str]], wide: Callable[[str], float]) -> float:
    return max((_longest_word(row[1], wide) for row in cells if not row[2]), default=0.0)


def _widest_part(remark: str, wide: Callable[[str], float]) -> float:
    """Return the width below which a remark is broken where it should not be: a short one not at all."""
    return wide(remark) if len(remark) <= _SHORT_REMARK else _longest_word(remark, wide)


def _longest_word(text: str, wide: Callable[[str], float]) -> float:
    """Return the width below which a text cannot be broken into lines."""
    return max((wide(word) for word in text.split(" ")), default=0.0)


def _write_cell(cell: QTextTableCell, text: str, ink: QTextCharFormat, *, right: bool = False) -> None:
    cursor = cell.firstCursorPosition()
    if right:
        block = QTextBlockFormat()
        block.setAlignment(Qt.AlignmentFlag.AlignRight)
        cursor.setBlockFormat(block)
    cursor.insertText(text, ink)


def _ink(colour: str, *, bold: bool = False) -> QTextCharFormat:
    ink = QTextCharFormat()
    ink.setForeground(QColor(colour))
    ink.setFontWeight(QFont.Weight.DemiBold if bold else QFont.Weight.Normal)
    return ink
