"""A text of the help with its pictures: they are as wide as there is room for and stay so when the room changes."""

from __future__ import annotations

import re
from collections.abc import Mapping
from pathlib import Path

from PySide6.QtCore import QByteArray, Qt, QUrl
from PySide6.QtGui import QFontMetricsF, QImage, QResizeEvent, QTextDocument, QTextFormat, QTextLength, QTextTable
from PySide6.QtWidgets import QFrame, QTextBrowser, QWidget

from app.faults import told_at_once

_PICTURE = re.compile(r"!\[[^\]]*\]\(([^)\s]+\.png)\)")
_VIEW = re.compile(r'viewBox="0 0 (\d+) (\d+)"')
_OWN_SIZE = re.compile(r' (?:width|height)="\d+"')
_SVG = re.compile(r"<svg[^>]*>")
_CELL_PX = 14  # beside the words of a cell


class HelpText(QTextBrowser):
    """Shows Markdown; no link is followed. Pictures are never shown larger than they are.

    Its accessible description says what the pictures show: Qt gives a screen reader only the words of the text.
    """

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setFrameShape(QFrame.Shape.NoFrame)
        self.setOpenLinks(False)
        self._pictures: dict[str, QImage] = {}
        self._sketches: dict[str, str] = {}
        self._fitted_px = 0

    def show_text(self, markdown: str, folder: Path, sketches: Mapping[str, str] | None = None) -> None:
        """Show a text whose pictures are named from this folder; sketches are drawings (SVG) by such a name."""
        self.document().setBaseUrl(QUrl.fromLocalFile(f"{folder}/"))
        self._sketches = dict(sketches or {})
        self.setMarkdown(markdown)
        pictures = {name: QImage(str((folder / name).resolve())) for name in _PICTURE.findall(markdown)}
        self._pictures = {name: picture for name, picture in pictures.items() if not picture.isNull()}
        self._fitted_px = 0
        self._fit_pictures()
        told = "  ".join(_told_by_pictures(self.document()))
        self.setAccessibleDescription(self.tr("Pictures: {pictures}").format(pictures=told) if told else "")

    @told_at_once
    def resizeEvent(self, event: QResizeEvent) -> None:
        """Let the pictures follow."""
        super().resizeEvent(event)
        self._fit_pictures()

    def _fit_pictures(self) -> None:
        """Scale the pictures to the width there is, in the pixels of the screen."""
        width_px = self.viewport().width() - 2 * round(self.document().documentMargin())
        if width_px == self._fitted_px:
            return
        self._fitted_px = width_px
        _share_columns(self.document(), width_px)
        ratio, document = self.devicePixelRatioF(), self.document()
        for name, picture in self._pictures.items():
            wide_px = min(width_px, picture.width())
            shown = picture.scaledToWidth(round(wide_px * ratio), Qt.TransformationMode.SmoothTransformation)
            shown.setDevicePixelRatio(ratio)
            address = document.baseUrl().resolved(QUrl(name))
            document.addResource(QTextDocument.ResourceType.ImageResource, address, shown)
        for name, drawing in self._sketches.items():
            drawn = QImage.fromData(QByteArray(_no_wider(drawing, width_px, ratio).encode()))
            drawn.setDevicePixelRatio(ratio)
            address = document.baseUrl().resolved(QUrl(name))
            document.addResource(QTextDocument.ResourceType.ImageResource, address, drawn)
        document.markContentsDirty(0, document.characterCount())


def _told_by_pictures(document: QTextDocument) -> list[str]:
    """Return the words in place of each picture, each a sentence."""
    told, block = [], document.begin()
    while block.isValid():
        looks = (piece.format for piece in block.textFormats())
        told += [str(one.property(QTextFormat.Property.ImageAltText)) for one in looks if one.isImageFormat()]
        block = block.next()
    return [f"{words.rstrip('.')}." for words in told if words]


def _no_wider(drawing: str, width_px: int, ratio: float) -> str:
    """Return a drawing (SVG) that is no wider than the room, in its own shape, in the pixels of the screen."""
    head, view = _SVG.search(drawing), _VIEW.search(drawing)
    if head is None or view is None:
        return drawing
    across, down = int(view[1]), int(view[2])
    wide = round(ratio * min(across, max(width_px, 1)))
    bare = _OWN_SIZE.sub("", head[0])
    sized = bare.replace("<svg", f'<svg width="{wide}" height="{round(wide * down / across)}"', 1)
    return drawing.replace(head[0], sized, 1)


def _share_columns(document: QTextDocument, width_px: int) -> None:
    """Give each column of a table its longest word, and of the rest what it has to say; Markdown gives all the same."""
    for table in document.rootFrame().childFrames():
        if isinstance(table, QTextTable):
            measure = QFontMetricsF(document.defaultFont())
            needs = [_needs(table, column, measure) for column in range(table.columns())]
            layout, kind = table.format(), QTextLength.Type.FixedLength
            lines = (table.columns() + 1) * (layout.cellSpacing() + layout.border())
            room = width_px - lines - 2  # pixels are rounded
            left = max(room - sum(least for least, _ in needs), 0.0)
            said = sum(mean for _, mean in needs) or 1.0
            tight = min(room / sum(least for least, _ in needs), 1.0)
            across = [tight * least + left * mean / said for least, mean in needs]
            layout.setColumnWidthConstraints([QTextLength(kind, px) for px in across])
            table.setFormat(layout)


def _needs(table: QTextTable, column: int, measure: QFontMetricsF) -> tuple[float, float]:
    """Return the width of the longest word in a column, and how much stands in a cell in the mean."""
    cells = [table.cellAt(row, column) for row in range(table.rows())]
    texts = [cell.firstCursorPosition().block().text() for cell in cells]
    longest = max((measure.horizontalAdvance(word) for text in texts for word in text.split()), default=0.0)
    return 1.1 * longest + _CELL_PX, sum(map(len, texts)) / len(texts)  # headings are bold
