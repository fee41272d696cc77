"""The mark on every picture and text that leaves the demo shop, copied or saved, and in the name of its file."""

from __future__ import annotations

from PySide6.QtCore import QPointF
from PySide6.QtGui import QColor, QFont, QFontMetricsF, QImage, QPainter

from app.theme import tokens

_SIZE_PX, _EDGE_PX = 10, 3
_FILES = "demo-"  # the same in every language: a file goes far
_mark = [""]  # as Qt's default locale, one for the program


def mark_pictures(text: str) -> None:
    """Write this text on all pictures from now on; nothing for none."""
    _mark[0] = text


def file_name(name: str) -> str:
    """Return the name to propose for a file."""
    return f"{_FILES}{name}" if _mark[0] else name


def marked_text(text: str, before: str = "") -> str:
    """Return the text with the mark as its first line; `before` is what makes a comment of that line."""
    return f"{before}{_mark[0]}\n{text}" if _mark[0] else text


def marked(image: QImage) -> QImage:
    """Return the picture with the mark at its lower edge, drawn on it."""
    if not _mark[0]:
        return image
    font = QFont()
    font.setPixelSize(_SIZE_PX)
    font.setBold(True)
    measure, size = QFontMetricsF(font), image.deviceIndependentSize()
    width = measure.horizontalAdvance(_mark[0])
    painter = QPainter(image)
    painter.setRenderHint(QPainter.RenderHint.TextAntialiasing)
    left, top = size.width() - width - 2 * _EDGE_PX, size.height() - measure.height()
    painter.fillRect(
        int(left), int(top), int(width) + 2 * _EDGE_PX + 1, int(measure.height()) + 1, QColor(tokens().card)
    )
    painter.setFont(font)
    painter.setPen(QColor(tokens().warning))
    painter.drawText(QPointF(left + _EDGE_PX, size.height() - _EDGE_PX), _mark[0])
    painter.end()
    return image


def marked_svg(svg: str) -> str:
    """Return the drawing with the mark at its lower edge."""
    if not _mark[0]:
        return svg
    from xml.etree import ElementTree as ET  # slow to import: not before a drawing is saved

    text = ET.Element(
        "text",
        {"x": "99%", "y": "99.5%", "text-anchor": "end", "font-size": f"{_SIZE_PX}px", "font-weight": "700",
         "fill": tokens().warning},
    )  # fmt: skip
    text.text = _mark[0]
    head, end, rest = svg.rpartition("</svg>")
    return f"{head}{ET.tostring(text, encoding='unicode')}{end}{rest}"
