"""A plot as a picture for other programs: an image of any resolution, and SVG that every renderer draws alike.

Qt's own SVG writer leaves line widths to `vector-effect`, which some renderers ignore. Here each shape is already in
pixels, so paths, texts and clip are written down as they are.
"""

from __future__ import annotations

import base64
from xml.etree import ElementTree as ET

from PySide6.QtCore import QBuffer, QByteArray, QIODevice, QPointF, QRectF, QSize, Qt
from PySide6.QtGui import QColor, QFont, QFontInfo, QFontMetricsF, QImage, QPainter, QPainterPath, QPen
from PySide6.QtWidgets import QGraphicsPathItem, QGraphicsPixmapItem

from app.theme import DARK, LIGHT, Tokens
from app.widgets.plotaxis import Axis
from app.widgets.plotcanvas import PlotCanvas
from app.widgets.plotdata import PlotData

MARGIN_PX = 12
_HEADING_PX = 17
_HEAD_PX = 32


def render_plot(data: PlotData, size: QSize, *, dark: bool = False, scale: float = 1.0) -> QImage:
    """Return a picture of the data of `size` times `scale` pixels; needs a QApplication, no window."""
    canvas = PlotCanvas(DARK if dark else LIGHT)
    canvas.set_data(data)
    head = _head_px(data)
    canvas.lay_out(QSize(size.width() - 2 * MARGIN_PX, size.height() - 2 * MARGIN_PX - head))
    image = image_of(canvas, scale)
    canvas.deleteLater()
    return image


def image_of(canvas: PlotCanvas, scale: float = 2.0) -> QImage:
    """Return the plot with its title on the colour of the card; `scale` 2 gives twice the pixels of the screen."""
    size = _size(canvas)
    image = QImage(size * scale, QImage.Format.Format_RGB32)
    image.setDevicePixelRatio(scale)
    image.fill(QColor(canvas.theme.card))
    canvas.tell(None)
    painter = QPainter(image)
    painter.setRenderHints(QPainter.RenderHint.Antialiasing | QPainter.RenderHint.TextAntialiasing)
    if canvas.data.title:
        painter.setFont(_heading_font(canvas))
        painter.setPen(QColor(canvas.theme.ink))
        painter.drawText(QPointF(MARGIN_PX, MARGIN_PX + _HEADING_PX), canvas.data.title)
    area = QRectF(canvas.rect())
    canvas.scene().prepareForPaint()
    canvas.scene().render(painter, area.translated(MARGIN_PX, MARGIN_PX + _head_px(canvas.data)), area)
    painter.end()
    return image


def svg_of(canvas: PlotCanvas) -> str:
    """Return the same picture as SVG 1.1, with the summary as its description; texts stay texts."""
    size, theme, font = _size(canvas), canvas.theme, QFontInfo(canvas.font())
    root = ET.Element("svg", {
        "xmlns": "http://www.w3.org/2000/svg", "xmlns:xlink": "http://www.w3.org/1999/xlink", "version": "1.1",
        "width": f"{size.width()}", "height": f"{size.height()}", "viewBox": f"0 0 {size.width()} {size.height()}",
        "font-family": f"{font.family()}, sans-serif", "font-size": f"{font.pixelSize()}px"})  # fmt: skip
    ET.SubElement(root, "title").text = canvas.data.title or canvas.accessibleName()
    ET.SubElement(root, "desc").text = canvas.data.summary
    ET.SubElement(root, "rect", {"width": "100%", "height": "100%", "fill": theme.card})
    if canvas.data.title:
        head = {"x": f"{MARGIN_PX}", "y": f"{MARGIN_PX + _HEADING_PX}", "fill": theme.ink}
        head |= {"font-size": f"{_HEADING_PX}px", "font-weight": "600"}
        ET.SubElement(root, "text", head).text = canvas.data.title
    body = ET.SubElement(root, "g", {"transform": f"translate({MARGIN_PX} {MARGIN_PX + _head_px(canvas.data)})"})
    _add_view(body, canvas)
    for axis in canvas.axes.values():
        _add_axis(body, axis, theme)
    ascent = QFontMetricsF(canvas.font()).ascent()
    label = {"x": _n(canvas.y_label.x()), "y": _n(canvas.y_label.y() + ascent), "fill": theme.quiet}
    ET.SubElement(body, "text", label).text = canvas.y_label.text()
    return '<?xml version="1.0" encoding="UTF-8"?>\n' + ET.tostring(root, encoding="unicode") + "\n"


def _add_view(body: ET.Element, canvas: PlotCanvas) -> None:
    area = canvas.view_rect()
    clip = ET.SubElement(ET.SubElement(body, "defs"), "clipPath", {"id": "view"})
    ET.SubElement(clip, "rect", {"width": _n(area.width()), "height": _n(area.height())})
    place = {"transform": f"translate({_n(area.left())} {_n(area.top())})", "clip-path": "url(#view)"}
    inside = ET.SubElement(body, "g", place)
    for image in canvas.drawing.clouds():
        _add_cloud(inside, image)
    for item in canvas.drawing.paths():
        _add_path(inside, item)
    ascent = QFontMetricsF(canvas.font()).ascent()
    for name in canvas.drawing.names():
        at = {"x": _n(name.x()), "y": _n(name.y() + ascent), "fill": name.brush().color().name()}
        ET.SubElement(inside, "text", at).text = name.text()


def _add_path(parent: ET.Element, item: QGraphicsPathItem) -> None:
    attributes = {"d": path_text(item.path()), "fill": "none"}
    if item.brush().style() != Qt.BrushStyle.NoBrush:
        attributes |= _ink("fill", item.brush().color())
    if item.pen().style() != Qt.PenStyle.NoPen:
        attributes |= _pen(item.pen())
    ET.SubElement(parent, "path", attributes)


def _add_cloud(parent: ET.Element, image: QGraphicsPixmapItem) -> None:
    data = QByteArray()
    buffer = QBuffer(data)
    buffer.open(QIODevice.OpenModeFlag.WriteOnly)
    image.pixmap().save(buffer, "PNG")
    box = image.mapRectToParent(image.boundingRect())
    text = base64.b64encode(bytes(data.data())).decode("ascii")
    ET.SubElement(parent, "image", {
        "x": _n(box.x()), "y": _n(box.y()), "width": _n(box.width()), "height": _n(box.height()),
        "preserveAspectRatio": "none", "xlink:href": f"data:image/png;base64,{text}"})  # fmt: skip


def _add_axis(parent: ET.Element, axis: Axis, theme: Tokens) -> None:
    """Write the line, ticks and numbers that the axis itself lays out, and its label where it has one."""
    scratch = QImage(1, 1, QImage.Format.Format_RGB32)
    painter = QPainter(scratch)
    painter.setFont(axis.style["tickFont"])
    specs = axis.generateDrawSpecs(painter)
    metrics = QFontMetricsF(painter.font())
    painter.end()
    if specs is None:
        return
    line, ticks, texts = specs
    for pen, start, end in [line, *ticks]:
        a, b = axis.mapToScene(QPointF(start)), axis.mapToScene(QPointF(end))
        ends = {"x1": _n(a.x()), "y1": _n(a.y()), "x2": _n(b.x()), "y2": _n(b.y())}
        ET.SubElement(parent, "line", ends | _pen(pen))
    for box, flags, text in texts:
        place = axis.mapRectToScene(QRectF(box))
        right = bool(Qt.AlignmentFlag(flags) & Qt.AlignmentFlag.AlignRight)
        x, anchor = (place.right(), "end") if right else (place.center().x(), "middle")
        y = place.center().y() + (metrics.ascent() - metrics.descent()) / 2 if right else place.top() + metrics.ascent()
        ET.SubElement(parent, "text", {"x": _n(x), "y": _n(y), "text-anchor": anchor, "fill": theme.quiet}).text = text
    label = axis.label
    if label.isVisible():
        middle = label.mapToScene(label.boundingRect().center())
        at = {"x": _n(middle.x()), "y": _n(middle.y() + (metrics.ascent() - metrics.descent()) / 2)}
        ET.SubElement(parent, "text", at | {"text-anchor": "middle", "fill": theme.quiet}).text = label.toPlainText()


def path_text(path: QPainterPath) -> str:
    """Return a path in the letters of SVG: M move, L line, C cubic curve."""
    words, kind = [], QPainterPath.ElementType
    letters = {kind.MoveToElement: "M", kind.LineToElement: "L", kind.CurveToElement: "C", kind.CurveToDataElement: ""}
    for index in range(path.elementCount()):
        element = path.elementAt(index)
        words.append(f"{letters[element.type]}{_n(element.x)} {_n(element.y)}")
    return " ".join(words)


def _pen(pen: QPen) -> dict[str, str]:
    width = pen.widthF() or 1.0
    attributes = _ink("stroke", pen.color()) | {"stroke-width": _n(width)}
    if pen.style() == Qt.PenStyle.CustomDashLine:
        attributes["stroke-dasharray"] = " ".join(_n(part * width) for part in pen.dashPattern())
    return attributes


def _ink(what: str, colour: QColor) -> dict[str, str]:
    opacity = {} if colour.alpha() == 255 else {f"{what}-opacity": f"{colour.alphaF():.3f}"}
    return {what: colour.name()} | opacity


def _n(value: float) -> str:
    """Return a number with a hundredth of a pixel, as short as it goes."""
    return f"{value:.2f}".rstrip("0").rstrip(".")


def _size(canvas: PlotCanvas) -> QSize:
    return QSize(canvas.width() + 2 * MARGIN_PX, canvas.height() + 2 * MARGIN_PX + _head_px(canvas.data))


def _head_px(data: PlotData) -> int:
    return _HEAD_PX if data.title else 0


def _heading_font(canvas: PlotCanvas) -> QFont:
    font = QFont(canvas.font())
    font.setPixelSize(_HEADING_PX)
    font.setWeight(QFont.Weight.DemiBold)
    return font
