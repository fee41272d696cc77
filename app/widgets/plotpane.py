"""A card with a plot: heading, check boxes for its parts, and the picture for other programs.

The classes that a page fills are those of `app.widgets.plotdata`; they can be imported from here.
"""

from __future__ import annotations

import re
from pathlib import Path
from typing import TYPE_CHECKING

from PySide6.QtCore import QEvent, QPoint, QSize, Qt, QTimer
from PySide6.QtGui import QAction, QGuiApplication, QImage, QKeySequence, QResizeEvent, QShowEvent
from PySide6.QtWidgets import (
    QCheckBox,
    QFileDialog,
    QGridLayout,
    QLabel,
    QMenu,
    QPushButton,
    QVBoxLayout,
    QWidget,
)

from app.faults import or_else, told_at_once
from app.theme import STEP_PX, tokens
from app.widgets.picture import Picture
from app.widgets.plotdata import EventMark, FitCurve, Ground, LimitLine, PlotData, PointSeries, WarningCurve
from app.widgets.plotinch import plot_in_inch
from app.widgets.wordslabel import WordsLabel
from app.widgets.wraprow import WrapRow

if TYPE_CHECKING:
    from app.widgets.plotcanvas import PlotCanvas

__all__ = ["EventMark", "FitCurve", "Ground", "LimitLine", "PlotData", "PlotPane", "PointSeries", "WarningCurve"]

PNG_SCALE = 2.0
IDLE_MS = 300  # after the page came into view; pyqtgraph takes longer to load than all else on it


class PlotPane(Picture):
    """Shows one `PlotData`; `said` carries a sentence and its level ("good", "error") after copying or saving.

    The canvas is made with the first data, or when the window has been idle for a moment, so that a page opens at once.
    """

    def __init__(self, empty_text: str = "", parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setObjectName("card")
        self._canvas: PlotCanvas | None = None
        self._data = PlotData(())
        self._idle = QTimer(self, singleShot=True, interval=IDLE_MS)
        self._idle.timeout.connect(self._make_canvas)
        self.heading = WordsLabel()
        self.heading.setObjectName("heading")
        self.heading.setWordWrap(True)
        self.bands_box, self.ground_box, self.warning_box = QCheckBox(), QCheckBox(), QCheckBox()
        self.picture_button = QPushButton()
        self.nothing_yet = empty_text or self.tr("No readings yet. Each reading appears here as soon as it is typed.")
        self.empty = WordsLabel(self.nothing_yet)
        self._make_head()
        self._make_layout()
        for box in (self.bands_box, self.ground_box, self.warning_box):
            box.setChecked(True)
            box.setProperty("entry", False)  # a look at what is there is nothing to undo
            box.toggled.connect(self._switch)
        self.set_data(self._data)

    @or_else(False)
    def hasHeightForWidth(self) -> bool:
        """Take the share of the height that it is given: the heading may break, the plot gives way."""
        return False

    def show_nothing(self, why: str = "") -> None:
        """Show that there is nothing to draw, and why; without a reason: that nothing is there yet."""
        self.empty.setText(why or self.nothing_yet)
        self.set_data(PlotData((), title=self._data.title))

    @property
    def canvas(self) -> PlotCanvas:
        """The plot itself; made when first asked for."""
        return self._canvas or self._make_canvas()

    @property
    def data(self) -> PlotData:
        """What is shown now."""
        return self._data

    def set_data(self, data: PlotData) -> None:
        """Show new data; the switches keep their state, those without a part to switch are hidden."""
        data = plot_in_inch(data) if self.inch else data
        self.heading.setText(data.title)
        self.bands_box.setText(data.bands_label or self.tr("95 % bands"))
        self.bands_box.setVisible(any(curve.has_bands for curve in data.curves))
        self.ground_box.setText(data.ground.label if data.ground else "")
        self.ground_box.setVisible(data.ground is not None)
        named = data.warning_curve.switch if data.warning_curve else ""
        self.warning_box.setText(named or self.tr("small-piece correction"))
        self.warning_box.setVisible(data.warning_curve is not None)
        self.empty.setVisible(data.point_count == 0)
        self.picture_button.setVisible(data.point_count > 0)
        self.setAccessibleName(data.title or self.tr("Plot"))
        self.setAccessibleDescription(data.summary)
        self._data = data
        if data.point_count or self._canvas is not None:
            self._show_data(self.canvas)
        self._head.arrange()

    def _show_data(self, canvas: PlotCanvas) -> None:
        says = self.tr("{title}: arrow keys tell the readings").format(title=self.accessibleName())
        canvas.setAccessibleName(says)
        canvas.set_data(self._data)
        canvas.setVisible(self._data.point_count > 0)

    def copy_picture(self) -> None:
        """Put the picture on the clipboard."""
        QGuiApplication.clipboard().setImage(self.image())
        self.said.emit(self.tr("The picture is on the clipboard."), "good")

    def image(self) -> QImage:
        """Return the picture with twice the pixels of the screen."""
        from app.widgets.invented import marked
        from app.widgets.plotexport import image_of

        return marked(image_of(self.canvas, PNG_SCALE))

    def export_png(self, path: str | Path) -> bool:
        """Write the picture as PNG; a failure is said in words and returned as False."""
        done = self.image().save(str(path), "PNG")  # type: ignore[call-overload]
        return self._say_written(Path(path), done=bool(done))

    def export_svg(self, path: str | Path) -> bool:
        """Write the picture as SVG; a failure is said in words and returned as False."""
        from app.widgets.invented import marked_svg
        from app.widgets.plotexport import svg_of

        try:
            Path(path).write_text(marked_svg(svg_of(self.canvas)), encoding="utf-8")
        except OSError:
            return self._say_written(Path(path), done=False)
        return self._say_written(Path(path), done=True)

    def ask_and_export(self, suffix: str) -> None:
        """Ask where to, and write a picture of this kind (`png`, `svg`)."""
        from app.widgets.invented import file_name

        stem = re.sub(r"\W+", "-", self.data.title.lower()).strip("-") or "plot"
        name = file_name(f"{stem}.{suffix}")
        path, _kind = QFileDialog.getSaveFileName(
            self, self.tr("Save the picture"), name, f"{suffix.upper()} (*.{suffix})"
        )
        if path:
            target = Path(path) if Path(path).suffix else Path(f"{path}.{suffix}")
            (self.export_svg if suffix == "svg" else self.export_png)(target)

    @told_at_once
    def changeEvent(self, event: QEvent) -> None:
        """Follow the theme."""
        super().changeEvent(event)
        if event.type() in (QEvent.Type.PaletteChange, QEvent.Type.StyleChange):
            canvas = getattr(self, "_canvas", None)  # Qt tells of changes while the base class is still being made
            if canvas is not None and tokens() != canvas.theme:
                canvas.set_theme(tokens())

    @told_at_once
    def showEvent(self, event: QShowEvent) -> None:
        """Get ready to draw in the next idle moment."""
        super().showEvent(event)
        if self._canvas is None:
            self._idle.start()

    def _make_head(self) -> None:
        self.picture_button.setText(self.tr("Picture"))
        self.picture_button.setObjectName("plain")
        self.picture_button.setAccessibleName(self.tr("Copy or save the picture"))
        boxes = QWidget()
        row = WrapRow(boxes)
        row.setSpacing(STEP_PX)
        for box in (self.bands_box, self.ground_box, self.warning_box):
            row.add(box)
        self._head = _Head(self.heading, boxes, self.picture_button)

    def _make_canvas(self) -> PlotCanvas:
        from app.widgets.plotcanvas import PlotCanvas

        self._idle.stop()
        if self._canvas is None:
            self._canvas = canvas = PlotCanvas(tokens(), self)
            canvas.customContextMenuRequested.connect(self._show_menu)
            self._make_menu(canvas)
            self._column.addWidget(canvas, 1)
            QWidget.setTabOrder(self.picture_button, canvas)
            self._switch()
            self._show_data(canvas)
        return self._canvas

    def _make_menu(self, canvas: PlotCanvas) -> None:
        self._menu = QMenu(self)
        for text, keys, slot in (
            (self.tr("Copy picture"), QKeySequence(QKeySequence.StandardKey.Copy), self.copy_picture),
            (self.tr("Save as PNG…"), QKeySequence(), self._ask_png),
            (self.tr("Save as SVG…"), QKeySequence(), self._ask_svg),
            (self.tr("Show all again"), QKeySequence(Qt.Key.Key_0), canvas.show_home),
        ):
            action = QAction(text, canvas)
            action.setShortcut(keys)
            action.setShortcutContext(Qt.ShortcutContext.WidgetShortcut)
            action.triggered.connect(slot)
            self._menu.addAction(action)
            canvas.addAction(action)
        self.picture_button.setMenu(self._menu)
        canvas.setContextMenuPolicy(Qt.ContextMenuPolicy.CustomContextMenu)

    def _make_layout(self) -> None:
        self._column = column = QVBoxLayout(self)
        column.setContentsMargins(12, STEP_PX, 12, STEP_PX)
        column.setSpacing(4)
        column.addWidget(self._head)
        self.empty.setObjectName("quiet")
        self.empty.setWordWrap(True)
        self.empty.setAlignment(Qt.AlignmentFlag.AlignCenter)
        column.addWidget(self.empty, 1)

    def _switch(self) -> None:
        if self._canvas is None:
            return
        from app.widgets.plotframe import Shown

        boxes = self.bands_box, self.ground_box, self.warning_box
        self._canvas.set_shown(Shown(*(box.isChecked() for box in boxes)))

    def _show_menu(self, at: QPoint) -> None:
        if self.data.point_count:
            self._menu.popup(self.canvas.mapToGlobal(at))

    def _ask_png(self) -> None:
        self.ask_and_export("png")

    def _ask_svg(self) -> None:
        self.ask_and_export("svg")

    def _say_written(self, path: Path, *, done: bool) -> bool:
        if done:
            self.said.emit(self.tr("Picture saved: {path}").format(path=path), "good")
        else:
            text = self.tr("{path} cannot be written; choose another folder, or free the disk.").format(path=path)
            self.said.emit(text, "error")
        return done


class _Head(QWidget):
    """Heading, check boxes and button: in one row where that fits, else the boxes in a row of their own."""

    def __init__(self, heading: QLabel, boxes: QWidget, button: QPushButton) -> None:
        super().__init__()
        self._heading, self._boxes, self._button = heading, boxes, button
        self._row = 0
        self._grid = QGridLayout(self)
        self._grid.setContentsMargins(0, 0, 0, 0)
        self._grid.setHorizontalSpacing(2 * STEP_PX)
        self._grid.setVerticalSpacing(2)
        self._grid.setColumnStretch(0, 1)
        self._grid.addWidget(heading, 0, 0)
        self._grid.addWidget(boxes, 0, 2)
        self._grid.addWidget(button, 0, 3)

    def arrange(self) -> None:
        """Choose one row or two for the present width."""
        heading_px = self._heading.fontMetrics().horizontalAdvance(self._heading.text())
        needed = heading_px + sum(part.sizeHint().width() for part in (self._boxes, self._button)) + 6 * STEP_PX
        row = 1 if needed > self.width() else 0
        if row != self._row:
            self._row = row
            self._grid.addWidget(self._boxes, *((1, 0, 1, 4) if row else (0, 2, 1, 1)))
            self.updateGeometry()

    @or_else(QSize())
    def minimumSizeHint(self) -> QSize:
        """Allow the width of two rows, or one row could never break; ask for the height of the lines there are now."""
        above = self._heading.minimumSizeHint().width() + self._button.sizeHint().width() + 2 * STEP_PX
        rows = above, self._boxes.minimumSizeHint().width()
        return QSize(max(rows), self._grid.totalMinimumHeightForWidth(self.width()))

    @told_at_once
    def resizeEvent(self, event: QResizeEvent) -> None:
        """Choose again; lines break elsewhere in another width."""
        super().resizeEvent(event)
        self.arrange()
        if event.oldSize().width() != event.size().width():
            self.updateGeometry()
