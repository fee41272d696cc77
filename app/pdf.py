"""Reports as PDF and labels as PDF: blocks in, pages out; black on white whatever the theme.

A report flows over A4 pages with its foot and the number of the page on each. A label is one page of 62 mm by 40 mm.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from html import escape
from pathlib import Path

from PySide6.QtCore import QCoreApplication, QMarginsF, QRectF, QSizeF, Qt, QUrl
from PySide6.QtGui import (
    QAbstractTextDocumentLayout,
    QColor,
    QFont,
    QFontMetricsF,
    QImage,
    QPageLayout,
    QPageSize,
    QPainter,
    QPalette,
    QPdfWriter,
    QTextDocument,
)

from app.units import inch_heading, inch_numbers, inch_sentence, is_length
from app.words import in_inch, local_cell, shown
from core.guidance.reportblocks import Block, Heading, Label, Picture, Report, Says, Signature, Table
from core.words import tr

DPI = 96
_MARGIN_MM = 16.0
_FOOT_PX, _FOOT_GAP_PX, _FOOT_PT, _LEAST_PT = 26, 24, 7.5, 4.0
_PICTURE_PX = 640  # of the width of the page, so that no picture is cut
LABEL_MM = QSizeF(62.0, 40.0)
_LABEL_DPI = 600
_RIGHT = ' align="right"'
_AS_TYPED = tr("As typed")  # the column that keeps the point or comma of whoever typed it
_STYLE = """
table { border-collapse: collapse; border-color: #8a9096; margin-top: 6px; margin-bottom: 6px; }
h1 { font-size: 17pt; } h2 { font-size: 12pt; margin-top: 12px; } p { font-size: 9.5pt; }
td, th { font-size: 8.5pt; padding: 2px 5px; } th { background: #eceae4; text-align: left; }
.mind { background: #f2efe8; } .sign { margin-top: 28px; }
"""


def write_report(
    report: Report, path: Path, pictures: Mapping[str, QImage] | None = None, *, inch: bool = False
) -> bool:
    """Write a report, with its lengths in inch or not; pictures by name. False where the file cannot be written."""
    writer = _writer(path, shown(report.title))
    if writer is None:
        return False
    document = _document(report, writer, pictures or {}, inch)
    body = QSizeF(writer.width(), writer.height() - _FOOT_PX)
    document.setPageSize(body)
    painter = QPainter(writer)
    count = document.pageCount()
    for page in range(count):
        if page:
            writer.newPage()
        _draw_page(painter, document, body, page)
        _draw_foot(painter, writer, shown(report.foot), (page + 1, count))
    painter.end()
    return path.exists() and path.stat().st_size > 0


def _writer(path: Path, title: str) -> QPdfWriter | None:
    try:
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_bytes(b"")  # Qt says nothing where a file cannot be written
    except OSError:
        return None
    writer = QPdfWriter(str(path))
    writer.setResolution(DPI)
    writer.setPageSize(QPageSize(QPageSize.PageSizeId.A4))
    writer.setPageMargins(QMarginsF(*[_MARGIN_MM] * 4), QPageLayout.Unit.Millimeter)
    writer.setTitle(title)
    writer.setCreator("Slipgauge")
    return writer


def _document(report: Report, writer: QPdfWriter, pictures: Mapping[str, QImage], inch: bool) -> QTextDocument:
    document = QTextDocument()
    document.documentLayout().setPaintDevice(writer)
    font = QFont()
    font.setPointSizeF(9.5)
    document.setDefaultFont(font)
    document.setDefaultStyleSheet(_STYLE)
    document.setDocumentMargin(0)
    for name, image in pictures.items():
        document.addResource(QTextDocument.ResourceType.ImageResource.value, QUrl(f"picture:{name}"), image)
    first = True
    parts = []
    for block in report.blocks:
        parts.append(_html(_in_inch(block) if inch else block, pictures, title=first and isinstance(block, Heading)))
        first = first and not isinstance(block, Heading)
    document.setHtml("".join(parts))
    return document


def _in_inch(block: Block) -> Block:
    """Return a block with its lengths in inch: those of its sentences, and bare numbers below a heading in mm."""
    if isinstance(block, Heading | Says):
        return replace(block, text=inch_sentence(shown(block.text)))
    if not isinstance(block, Table):
        return block
    headings = tuple(shown(heading) for heading in block.headings)
    lengths = [is_length(heading) for heading in headings]
    rows = tuple(
        tuple(inch_numbers(shown(cell)) if bare else in_inch(cell) for cell, bare in zip(row, lengths, strict=True))
        for row in block.rows
    )
    return replace(block, headings=tuple(map(inch_heading, headings)), rows=rows)


def _html(block: Block, pictures: Mapping[str, QImage], *, title: bool) -> str:
    if isinstance(block, Heading):
        level = 1 if title else 2
        return f"<h{level}>{_text(block.text)}</h{level}>"
    if isinstance(block, Says):
        apart = ' class="mind"' if block.mind else ""
        return f"<p{apart}>{_text(block.text)}</p>"
    if isinstance(block, Table):
        return _table(block)
    if isinstance(block, Picture):
        return f'<p><img src="picture:{block.name}" width="{_PICTURE_PX}"/></p>' if block.name in pictures else ""
    assert isinstance(block, Signature)
    line = "_" * 34
    when = QCoreApplication.translate("pdf", "Day")
    return f'<p class="sign">{_text(block.text)}: {line} &nbsp; {escape(when)}: {line[:14]}</p>'


def _table(table: Table) -> str:
    head = "".join(f"<th>{_text(text)}</th>" for text in table.headings)
    rows, as_typed = "", [shown(text) == shown(_AS_TYPED) for text in table.headings]
    for row in table.rows:
        texts = [cell if typed else local_cell(cell) for cell, typed in zip(row, as_typed, strict=True)]
        cells = (
            f"<td{_RIGHT if column >= table.numbers_from else ''}>{_text(text) or '&nbsp;'}</td>"
            for column, text in enumerate(texts)
        )
        rows += f"<tr>{''.join(cells)}</tr>"
    return f'<table border="1" cellspacing="0" width="100%"><thead><tr>{head}</tr></thead>{rows}</table>'


def _text(text: str) -> str:
    return escape(shown(text))


def _draw_page(painter: QPainter, document: QTextDocument, body: QSizeF, page: int) -> None:
    painter.save()
    painter.translate(0, -page * body.height())
    context = QAbstractTextDocumentLayout.PaintContext()
    context.palette.setColor(QPalette.ColorRole.Text, QColor("black"))
    context.clip = QRectF(0, page * body.height(), body.width(), body.height())
    painter.setClipRect(context.clip)
    document.documentLayout().draw(painter, context)
    painter.restore()


def _draw_foot(painter: QPainter, writer: QPdfWriter, foot: str, numbers: tuple[int, int]) -> None:
    page = QCoreApplication.translate("pdf", "page {number} of {count}").format(number=numbers[0], count=numbers[1])
    painter.setFont(foot_font(foot + page, writer))
    painter.setPen(QColor("#555555"))
    box = QRectF(0, writer.height() - _FOOT_PX + 8, writer.width(), _FOOT_PX - 8)
    painter.drawText(box, int(Qt.AlignmentFlag.AlignRight), page)
    metrics = painter.fontMetrics()
    room = int(box.width()) - metrics.horizontalAdvance(page) - _FOOT_GAP_PX
    painter.drawText(box, int(Qt.AlignmentFlag.AlignLeft), metrics.elidedText(foot, Qt.TextElideMode.ElideRight, room))


def foot_font(text: str, writer: QPdfWriter) -> QFont:
    """Return the font of the foot, small enough for its text on one line with a gap in it, but to be read."""
    font = QFont()
    font.setPointSizeF(_FOOT_PT)
    room = writer.width() - _FOOT_GAP_PX
    while (needed := QFontMetricsF(font, writer).horizontalAdvance(text)) > room:  # letters shrink by whole pixels
        if font.pointSizeF() <= _LEAST_PT:
            break
        font.setPointSizeF(max(0.99 * font.pointSizeF() * room / needed, _LEAST_PT))
    return font


def write_label(label: Label, path: Path, *, inch: bool = False) -> bool:
    """Write a label of 62 mm by 40 mm with its square code; False where the file cannot be written."""
    label = replace(label, lines=tuple(map(in_inch, label.lines))) if inch else label
    writer = _writer(path, shown(label.lines[0]))
    if writer is None:
        return False
    writer.setResolution(_LABEL_DPI)
    writer.setPageSize(QPageSize(LABEL_MM, QPageSize.Unit.Millimeter))
    writer.setPageMargins(QMarginsF(2, 2, 2, 2), QPageLayout.Unit.Millimeter)
    painter = QPainter(writer)
    per_mm = _LABEL_DPI / 25.4
    code_px = 19.0 * per_mm
    _draw_code(painter, label.code, QRectF(writer.width() - code_px, 0, code_px, code_px))
    top = 0.0
    for place, line in enumerate(label.lines):
        last = place == len(label.lines) - 1
        font = QFont()
        font.setPointSizeF(13.0 if place == 0 else 6.0 if last else 7.5)
        font.setBold(place == 0)
        painter.setFont(font)
        measure = QFontMetricsF(font, writer)
        width = writer.width() if top >= code_px else writer.width() - code_px - per_mm
        wrap = int(Qt.AlignmentFlag.AlignLeft | Qt.TextFlag.TextWordWrap)
        needed = measure.boundingRect(QRectF(0, 0, width, 1e6), wrap, shown(line)).height()
        if last:
            top = max(top, writer.height() - needed)
        painter.drawText(QRectF(0, top, width, needed), wrap, shown(line))
        top += needed + 0.4 * per_mm
    painter.end()
    return path.stat().st_size > 0


def _draw_code(painter: QPainter, text: str, place: QRectF) -> None:
    """Draw a square code as black modules, with the quiet zone of four modules that readers need."""
    import segno

    rows = [list(row) for row in segno.make(text, error="m", micro=False).matrix_iter(scale=1, border=4)]
    side = place.width() / len(rows)
    for y, row in enumerate(rows):
        for x, dark in enumerate(row):
            if dark:
                module = QRectF(place.x() + x * side, place.y() + y * side, 1.02 * side, 1.02 * side)  # no hairlines
                painter.fillRect(module, QColor("black"))
