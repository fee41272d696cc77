"""How a cell of the readings is painted and edited."""

from __future__ import annotations

from PySide6.QtCore import QModelIndex, QPersistentModelIndex, QSize, Qt
from PySide6.QtGui import QBrush, QColor, QPainter, QPalette
from PySide6.QtWidgets import (
    QAbstractItemDelegate,
    QComboBox,
    QLineEdit,
    QStyle,
    QStyledItemDelegate,
    QStyleOptionViewItem,
    QTableView,
    QWidget,
)

from app.faults import or_else, told_at_once
from app.theme import tokens

PADDING_PX = 4
TINT_ALPHA = 36
Index = QModelIndex | QPersistentModelIndex


class ReadingCell(QStyledItemDelegate):
    """Paints a cell as far from its edges as the titles, the current row tinted; edits by line or list."""

    @told_at_once
    def paint(self, painter: QPainter, option: QStyleOptionViewItem, index: Index) -> None:
        """Paint the ground to the edges and the text inside them."""
        cell = QStyleOptionViewItem(option)
        self.initStyleOption(cell, index)
        table, style = option.widget, option.widget.style()
        if cell.state & QStyle.StateFlag.State_Selected:
            style.drawPrimitive(QStyle.PrimitiveElement.PE_PanelItemViewItem, cell, painter, table)
        elif isinstance(table, QTableView) and index.row() == table.currentIndex().row():
            tint = QColor(tokens().accent)
            tint.setAlpha(TINT_ALPHA)
            painter.fillRect(cell.rect, tint)
            cell.backgroundBrush = QBrush()
            cell.features &= ~QStyleOptionViewItem.ViewItemFeature.Alternate
        cell.rect = cell.rect.adjusted(PADDING_PX, 0, -PADDING_PX, 0)
        style.drawControl(QStyle.ControlElement.CE_ItemViewItem, cell, painter, table)

    @told_at_once
    def initStyleOption(self, option: QStyleOptionViewItem, index: Index) -> None:
        """Fill in what the model says of a cell, asked at once: Qt would come back to Python for each role."""
        look = index.model().look(index.row(), index.column())  # type: ignore[attr-defined]
        option.index = index  # type: ignore[assignment]
        option.features |= QStyleOptionViewItem.ViewItemFeature.HasDisplay
        option.text, option.displayAlignment = look.text, look.alignment
        if look.font is not None:
            option.font = look.font.resolve(option.font)
        if look.ink is not None:
            palette = option.palette
            palette.setBrush(QPalette.ColorRole.Text, look.ink)
            option.palette = palette

    @or_else(QSize())
    def sizeHint(self, option: QStyleOptionViewItem, index: Index) -> QSize:
        """Ask for the room of the text and its distance from the edges."""
        return super().sizeHint(option, index) + QSize(2 * PADDING_PX, 0)

    @or_else(None)
    def createEditor(self, parent: QWidget, option: QStyleOptionViewItem, index: Index) -> QWidget:
        """Make the editor of a cell."""
        column = index.model().columns[index.column()]  # type: ignore[attr-defined]
        if column.kind == "choice":
            box = QComboBox(parent)
            for value, text in column.pairs():
                box.addItem(text, value)
            box.setAccessibleName(column.name)
            box.activated.connect(self._commit)
            return box
        line = QLineEdit(parent)
        line.setFrame(False)
        line.setAccessibleName(column.name)
        if column.numeric:
            line.setAlignment(Qt.AlignmentFlag.AlignRight)
        return line

    @told_at_once
    def setEditorData(self, editor: QWidget, index: Index) -> None:
        """Fill the editor with the text as typed."""
        text = str(index.data(Qt.ItemDataRole.EditRole))
        if isinstance(editor, QComboBox):
            editor.setCurrentIndex(editor.findText(text))
        elif isinstance(editor, QLineEdit):
            editor.setText(text)

    @told_at_once
    def setModelData(self, editor: QWidget, model: object, index: Index) -> None:
        """Hand the edited text to the model."""
        if isinstance(editor, QComboBox):
            index.model().setData(index, editor.currentText())
        elif isinstance(editor, QLineEdit):
            index.model().setData(index, editor.text())

    def _commit(self) -> None:
        box = self.sender()
        if isinstance(box, QWidget):
            self.commitData.emit(box)
            self.closeEditor.emit(box, QAbstractItemDelegate.EndEditHint.SubmitModelCache)
