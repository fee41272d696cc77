"""A check box whose words go on in a second line where one is too short."""

from __future__ import annotations

from PySide6.QtCore import QPoint, QRect, QSize, Qt
from PySide6.QtGui import QPaintEvent, QResizeEvent
from PySide6.QtWidgets import QCheckBox, QSizePolicy, QStyle, QStyleOptionButton, QStylePainter, QWidget

from app.faults import or_else, told_at_once

_GAP_PX = 6
_FLAGS = Qt.TextFlag.TextWordWrap | Qt.TextFlag.TextShowMnemonic | Qt.AlignmentFlag.AlignVCenter


class LongCheckBox(QCheckBox):
    """As any check box, but as high as its words need."""

    def __init__(self, text: str = "", parent: QWidget | None = None) -> None:
        super().__init__(text, parent)
        policy = QSizePolicy(QSizePolicy.Policy.Preferred, QSizePolicy.Policy.Minimum)
        policy.setHeightForWidth(True)
        self.setSizePolicy(policy)

    @or_else(False)
    def hasHeightForWidth(self) -> bool:
        """The height follows from the width."""
        return True

    @or_else(-1)
    def heightForWidth(self, width: int) -> int:
        """Return the height of the words at a width."""
        words = QRect(0, 0, max(width - self._indent(), 1), 10_000)
        return max(self.fontMetrics().boundingRect(words, int(_FLAGS), self.text()).height(), self._box().height()) + 4

    @or_else(QSize())
    def minimumSizeHint(self) -> QSize:
        """Be content with the longest word."""
        longest = max((self.fontMetrics().horizontalAdvance(word) for word in self.text().split()), default=0)
        return QSize(longest + self._indent(), super().minimumSizeHint().height())

    @told_at_once
    def resizeEvent(self, event: QResizeEvent) -> None:
        """Insist on the height that the words need at this width."""
        super().resizeEvent(event)
        self.setMinimumHeight(self.heightForWidth(event.size().width()))

    @or_else(False)
    def hitButton(self, pos: QPoint) -> bool:
        """Take a click anywhere on box or words."""
        return self.rect().contains(pos)

    @told_at_once
    def paintEvent(self, _event: QPaintEvent) -> None:
        """Draw the box as the style does, and the words beside it."""
        painter, option = QStylePainter(self), QStyleOptionButton()
        self.initStyleOption(option)
        box = self._box()
        option.rect = QRect(QPoint(0, (self.height() - box.height()) // 2), box)
        painter.drawPrimitive(QStyle.PrimitiveElement.PE_IndicatorCheckBox, option)
        words = self.rect().adjusted(self._indent(), 0, 0, 0)
        self.style().drawItemText(painter, words, int(_FLAGS), option.palette, self.isEnabled(), self.text(),
                                  option.palette.ColorRole.WindowText)

    def _box(self) -> QSize:
        option = QStyleOptionButton()
        self.initStyleOption(option)
        return self.style().subElementRect(QStyle.SubElement.SE_CheckBoxIndicator, option, self).size()

    def _indent(self) -> int:
        return self._box().width() + _GAP_PX
