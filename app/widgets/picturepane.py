"""A card with a picture that a subject draws itself: heading, switches, keys that walk through its points, PNG."""

from __future__ import annotations

import re
from typing import ClassVar

from PySide6.QtCore import QEvent, QPoint, QSize, Qt
from PySide6.QtGui import (
    QAccessible,
    QAccessibleAnnouncementEvent,
    QAction,
    QColor,
    QFocusEvent,
    QGuiApplication,
    QKeyEvent,
    QKeySequence,
    QMouseEvent,
    QPainter,
    QPaintEvent,
    QPen,
)
from PySide6.QtWidgets import (
    QCheckBox,
    QFileDialog,
    QHBoxLayout,
    QLabel,
    QMenu,
    QPushButton,
    QVBoxLayout,
    QWidget,
)

from app.faults import or_else, told_at_once
from app.theme import STEP_PX, Tokens, tokens
from app.widgets.invented import file_name, marked
from app.widgets.picture import Picture
from app.widgets.roles import told_as_chart, told_as_picture
from app.widgets.wordslabel import WordsLabel
from app.widgets.wraprow import WrapRow


class PicturePane(Picture):
    """Heading, switches and a sheet; a subclass draws the sheet in `draw` and names its points.

    Attributes:
        sheet: the drawing surface; arrow keys walk through the points, Escape leaves them.
        tells: the line below the sheet: the point walked to, else what `hint` says.
        is_chart: whether it shows data, not things.
    """

    is_chart: ClassVar[bool] = False

    def __init__(self, title: str, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setObjectName("card")
        self.heading = WordsLabel(title)
        self.heading.setObjectName("heading")
        self.heading.setWordWrap(True)
        self.picture_button = QPushButton(self.tr("Picture"))
        self.picture_button.setObjectName("plain")
        self.picture_button.setAccessibleName(self.tr("Copy or save the picture"))
        self.sheet = _Chart(self) if self.is_chart else _Sheet(self)
        self.tells = QLabel()
        self.tells.setObjectName("quiet")
        self.tells.setWordWrap(True)
        self._switches = WrapRow()
        self._point = -1
        self._make_menu()
        self._make_layout()
        self._tab_last: QWidget = self.picture_button

    # For the subclass to fill in

    def draw(self, painter: QPainter, size: QSize, theme: Tokens) -> None:
        """Draw the picture on a ground of the card's colour."""
        raise NotImplementedError

    def points(self) -> list[tuple[QPoint, str]]:
        """Return the points that can be walked to: place on the sheet and sentence."""
        return []

    def hint(self) -> str:
        """Return the line below the sheet while no point is walked to."""
        return ""

    # For the subclass to call

    def add_switch(self, text: str, *, on: bool = True) -> QCheckBox:
        """Add a check box below the heading; switching draws anew."""
        box = QCheckBox(text)
        box.setChecked(on)
        box.setProperty("entry", False)  # a look at what is there is nothing to undo
        box.toggled.connect(self.refresh)
        self._switches.add(box)
        self._tab_to(box)
        return box

    def _tab_to(self, switch: QWidget) -> None:
        """Let Tab come to a switch behind those before it, not behind the sheet."""
        QWidget.setTabOrder(self._tab_last, switch)
        self._tab_last = switch

    def describe(self, summary: str) -> None:
        """Say what the picture shows to those who cannot see it."""
        name = self.tr("{title}: arrow keys tell the points").format(title=self.heading.text())
        self.sheet.setAccessibleName(name if self.points() else self.heading.text())
        self.setAccessibleName(self.heading.text())
        for part in (self, self.sheet):
            part.setAccessibleDescription(self.in_unit(summary))

    def refresh(self) -> None:
        """Draw anew."""
        self._point = -1
        self.tells.setText(self.in_unit(self.hint()))
        self.tells.setVisible(bool(self.tells.text()))
        self.sheet.update()

    # What follows from them

    def walk(self, step: int) -> None:
        """Go to the next (+1) or previous (-1) point and say it to a screen reader."""
        points = self.points()
        if points:
            self.tell((self._point + step) % len(points) if self._point >= 0 else (0 if step > 0 else len(points) - 1))

    def tell(self, point: int) -> None:
        """Ring a point and tell it below the sheet; -1 leaves it."""
        self._point = point
        text = self.in_unit(self.points()[point][1] if point >= 0 else self.hint())
        self.tells.setText(text)
        self.tells.setVisible(bool(text))
        if point >= 0:
            QAccessible.updateAccessibility(QAccessibleAnnouncementEvent(self.sheet, text))
        self.sheet.update()

    def told_point(self) -> int:
        """Return the number of the point now ringed, -1 for none."""
        return self._point

    def copy_picture(self) -> None:
        """Put the picture on the clipboard."""
        QGuiApplication.clipboard().setImage(marked(self.sheet.grab().toImage()))
        self.said.emit(self.tr("The picture is on the clipboard."), "good")

    def export_png(self, path: str) -> bool:
        """Write the picture as PNG; a failure is said in words and returned as False."""
        done = marked(self.sheet.grab().toImage()).save(path, "PNG")  # type: ignore[call-overload]
        says = (
            self.tr("Picture saved: {path}")
            if done
            else self.tr("{path} cannot be written; choose another folder, or free the disk.")
        )
        self.said.emit(says.format(path=path), "good" if done else "error")
        return bool(done)

    @told_at_once
    def changeEvent(self, event: QEvent) -> None:
        """Follow theme and font."""
        super().changeEvent(event)
        if event.type() in (QEvent.Type.PaletteChange, QEvent.Type.StyleChange) and hasattr(self, "sheet"):
            self.sheet.update()

    def _make_layout(self) -> None:
        head = QHBoxLayout()
        head.addWidget(self.heading, 1)
        head.addWidget(self.picture_button)
        self._switches.setSpacing(2 * STEP_PX)
        column = QVBoxLayout(self)
        column.setContentsMargins(12, STEP_PX, 12, STEP_PX)
        column.setSpacing(4)
        column.addLayout(head)
        column.addLayout(self._switches)
        column.addWidget(self.sheet, 1)
        column.addWidget(self.tells)

    def _make_menu(self) -> None:
        menu = QMenu(self)
        for text, keys, slot in (
            (self.tr("Copy picture"), QKeySequence(QKeySequence.StandardKey.Copy), self.copy_picture),
            (self.tr("Save as PNG…"), QKeySequence(), self._ask_png),
        ):
            action = QAction(text, self.sheet)
            action.setShortcut(keys)
            action.setShortcutContext(Qt.ShortcutContext.WidgetShortcut)
            action.triggered.connect(slot)
            menu.addAction(action)
            self.sheet.addAction(action)
        self.picture_button.setMenu(menu)

    def _ask_png(self) -> None:
        stem = re.sub(r"\W+", "-", self.heading.text().lower()).strip("-") or "picture"
        name = file_name(f"{stem}.png")
        path, _kind = QFileDialog.getSaveFileName(self, self.tr("Save the picture"), name, "PNG (*.png)")
        if path:
            self.export_png(path if path.lower().endswith(".png") else f"{path}.png")


@told_as_picture
class _Sheet(QWidget):
    """The drawing surface of its pane; `asks_px` is how high it would be."""

    asks_px = 300

    def __init__(self, pane: PicturePane) -> None:
        super().__init__()  # the layout makes it a child, behind what stands above it, and so Tab finds it
        self._pane = pane
        self.setMinimumSize(200, 120)
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setMouseTracking(True)

    @or_else(QSize())
    def sizeHint(self) -> QSize:
        """Ask for little: the layout gives what is left."""
        return QSize(480, self.asks_px)

    @told_at_once
    def paintEvent(self, _event: QPaintEvent) -> None:
        """Let the pane draw, then ring the point it tells."""
        theme = tokens()
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        painter.fillRect(self.rect(), QColor(theme.card))
        self._pane.draw(painter, self.size(), theme)
        points, told = self._pane.points(), self._pane.told_point()
        painter.setBrush(Qt.BrushStyle.NoBrush)
        painter.setPen(QPen(QColor(theme.accent), 2))
        if 0 <= told < len(points):
            painter.drawEllipse(points[told][0], 19, 13)
        if self.hasFocus():
            painter.setRenderHint(QPainter.RenderHint.Antialiasing, False)
            painter.setPen(QPen(QColor(theme.accent), 2))
            painter.drawRect(self.rect().adjusted(1, 1, -1, -1))
        painter.end()

    @told_at_once
    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Walk with the arrows, leave with Escape."""
        key = Qt.Key
        steps = {key.Key_Right: 1, key.Key_Down: 1, key.Key_Left: -1, key.Key_Up: -1}
        if event.key() in steps and self._pane.points():
            self._pane.walk(steps[Qt.Key(event.key())])
        elif event.key() == key.Key_Escape and self._pane.told_point() >= 0:
            self._pane.tell(-1)
        else:
            event.ignore()

    @told_at_once
    def mouseMoveEvent(self, event: QMouseEvent) -> None:
        """Tell the point under the mouse."""
        near = [
            ((place - event.position().toPoint()).manhattanLength(), number)
            for number, (place, _) in enumerate(self._pane.points())
        ]
        away, number = min(near, default=(99, -1))
        number = number if away <= 16 else -1
        if number != self._pane.told_point():
            self._pane.tell(number)

    @told_at_once
    def leaveEvent(self, event: QEvent) -> None:
        """Leave the point, unless the keyboard walks."""
        super().leaveEvent(event)
        if not self.hasFocus():
            self._pane.tell(-1)

    @told_at_once
    def focusOutEvent(self, event: QFocusEvent) -> None:
        """Leave the point with the keyboard."""
        super().focusOutEvent(event)
        self._pane.tell(-1)


@told_as_chart
class _Chart(_Sheet):
    """The drawing surface of data."""
