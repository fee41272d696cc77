"""Two plots below one another that share their x: results above, their moving ranges below."""

from __future__ import annotations

from PySide6.QtWidgets import QVBoxLayout, QWidget

from app.theme import STEP_PX
from app.widgets.plotpane import PlotData, PlotPane


class ChartPair(QWidget):
    """The lower plot is hidden where it has no data; zooming one across zooms the other."""

    def __init__(self, empty_text: str = "", parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.above, self.below = PlotPane(empty_text), PlotPane()
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(STEP_PX)
        column.addWidget(self.above, 3)
        column.addWidget(self.below, 2)
        self.below.hide()
        self._linked = False

    def set_data(self, above: PlotData, below: PlotData | None = None) -> None:
        """Show one plot, or two over the same x; a zoom made by hand stays while the same thing is shown."""
        zoomed = self.above.data.y_label == above.y_label and self._is_zoomed()
        self.above.set_data(above)
        self.below.setVisible(below is not None)
        if below is not None:
            self.below.set_data(below)
            self._link()
        if above.point_count and not zoomed:
            for pane in self._shown():
                pane.canvas.show_home()
        self._align()

    def _shown(self) -> list[PlotPane]:
        return [self.above] if self.below.isHidden() else [self.above, self.below]

    def _is_zoomed(self) -> bool:
        return self.above.data.point_count > 0 and not all(pane.canvas.is_home() for pane in self._shown())

    def _link(self) -> None:
        if not self._linked:
            self._linked = True
            for pane in (self.above, self.below):
                pane.canvas.view.sigXRangeChanged.connect(self._follow)
                pane.canvas.view.sigResized.connect(self._align)

    def _follow(self, view: object, x_range: tuple[float, float]) -> None:
        """Bring the other plot to the same x; it answers with the same range, at which nothing changes any more."""
        if not self.below.isHidden():
            other = self.below if view is self.above.canvas.view else self.above
            other.canvas.view.setXRange(*x_range, padding=0)

    def _align(self) -> None:
        """Give both the left axis that the wider numbers need."""
        if not self.above.data.point_count:
            return
        panes = self._shown()
        widest = max(pane.canvas.left_px() for pane in panes) if len(panes) > 1 else 0
        for pane in panes:
            pane.canvas.align_left(widest)
