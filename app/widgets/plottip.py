"""The tip beside a point of a plot: one sentence, near its point and within the plot."""

from __future__ import annotations

from PySide6.QtCore import QPointF, QRect, QSize, Qt
from PySide6.QtWidgets import QLabel, QWidget

from app.widgets.fields import local_text
from app.widgets.plotdata import PlotData

_GAP_PX = 14
_WIDEST_PX = 260
_SIDES_PX = 24  # beside the words


class Tip(QLabel):
    """Lies over the plot; the mouse goes through it."""

    def __init__(self, parent: QWidget) -> None:
        super().__init__(parent)
        self.setObjectName("popover")
        self.setContentsMargins(8, 4, 8, 4)
        self.setWordWrap(True)
        self.setAttribute(Qt.WidgetAttribute.WA_TransparentForMouseEvents)
        self.hide()

    def tell(self, text: str, point: QPointF, bounds: QRect) -> None:
        """Show a sentence beside a point."""
        self.setText(text)
        wide = self.fontMetrics().horizontalAdvance(text) + _SIDES_PX
        self.setFixedWidth(min(wide, _WIDEST_PX, bounds.width()))
        self.adjustSize()
        self.move(_beside(self.size(), point, bounds).topLeft())
        self.show()


def tip_text(data: PlotData, number: int, index: int) -> str:
    """Return what is told of a point: its own sentence, or the name of its series and the two values."""
    series = data.points[number]
    if index < len(series.tips):
        return series.tips[index]
    return f"{series.name}: " + local_text(f"{series.x[index]:.6g}  {series.y[index]:.6g}").replace("  ", ", ")


def _beside(size: QSize, point: QPointF, bounds: QRect) -> QRect:
    """Return where a tip stands: to the upper right of its point, or on the side that stays within the bounds."""
    x, y = round(point.x()) + _GAP_PX, round(point.y()) - _GAP_PX - size.height()
    if x + size.width() > bounds.right():
        x = round(point.x()) - _GAP_PX - size.width()
    if y < bounds.top():
        y = round(point.y()) + _GAP_PX
    return QRect(max(x, bounds.left()), min(y, bounds.bottom() - size.height()), size.width(), size.height())
