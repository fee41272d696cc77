"""The verdict: sentences with the setting in bold, then the numbers with their uncertainty, then what not to touch.

All of it is one text, so that it can be selected with the keyboard and copied as it reads. The button stays in sight
whatever the height: first the gaps shrink, and only then does the text scroll.
"""

from __future__ import annotations

from PySide6.QtCore import QEvent, QMimeData, QSize, Qt, Signal
from PySide6.QtGui import QGuiApplication, QKeyEvent, QKeySequence, QResizeEvent, QTextCursor, QTextDocument
from PySide6.QtWidgets import QFrame, QHBoxLayout, QLabel, QPushButton, QSizePolicy, QTextEdit, QVBoxLayout, QWidget

from app.faults import or_else, told_at_once
from app.theme import STEP_PX, tokens
from app.widgets.invented import marked_text
from app.widgets.resulttext import SIGNS, CardData, Paragraph, headed, write_card
from app.widgets.unbroken import UnbrokenLabel, unjoined
from app.widgets.wraprow import WrapRow
from app.words import shown

__all__ = ["CardData", "Paragraph", "ResultCard"]

_ROOMY_PX, _TIGHT_PX = 8.0, 3.0  # gap above a paragraph
_FEWEST_LINES = 4


class ResultCard(QFrame):
    """Shows one `CardData`; `keep_clicked` when the person wants the trial kept.

    Attributes:
        head: the row with the heading and, at its end, `copy_button` and what a page adds.
        foot: the row with `keep_button` at its end, for a page's own buttons before it.
    """

    keep_clicked = Signal()

    def __init__(self, title: str = "", empty_text: str = "", parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setObjectName("card")
        self.card: CardData | None = None
        self._inch = False
        self._empty_text = empty_text or self.tr("No verdict yet. It appears as soon as the readings tell something.")
        self.heading = QLabel(title or self.tr("Verdict"))
        self.heading.setObjectName("heading")
        self.heading.setWordWrap(True)
        self.body = _Body()
        for part in (self, self.body):
            part.setAccessibleName(self.heading.text())
        self.copy_button = QPushButton(self.tr("Copy text"))
        self.untouched = UnbrokenLabel()
        self.why_not = UnbrokenLabel()
        self.keep_button = QPushButton(self.tr("Keep trial   Ctrl+S"))
        self._make_layout()
        self.copy_button.clicked.connect(self.copy_text)
        self.keep_button.clicked.connect(self.keep_clicked)
        self.show_empty()

    def show_inches(self) -> None:
        """Show lengths in inch from the next verdict on."""
        self._inch = True

    def show_card(self, card: CardData) -> None:
        """Show a verdict."""
        card = card.in_inch() if self._inch else card
        self.card = card
        self.untouched.setText(self._untouched_text())
        self.untouched.setVisible(bool(card.untouched))
        self.why_not.setText(shown(card.why_not))
        self.why_not.setVisible(bool(card.why_not) and not card.can_keep)
        self.keep_button.setEnabled(card.can_keep)
        self.keep_button.setToolTip("" if card.can_keep else shown(card.why_not))
        self.body.setAccessibleDescription(self.text().partition("\n")[0])  # a change of it is told to assistive tools
        self.copy_button.setVisible(True)
        self._write()

    def show_empty(self, text: str = "") -> None:
        """Say that there is no verdict, and what would give one."""
        self._empty_text = text or self._empty_text
        self.card = None
        self.body.setAccessibleDescription(self._empty_text)
        for part in (self.untouched, self.why_not, self.copy_button):
            part.setVisible(False)
        self.keep_button.setEnabled(False)
        self._write()

    def grow(self, lines: int) -> None:
        """Take the height its text needs, up to so many lines, from whatever stands beside it."""
        self.body.most_lines = lines
        self.body.updateGeometry()

    def add_at_head(self, button: QPushButton) -> None:
        """Add a button at the end of the head; Tab comes to it before the text."""
        self.head.addWidget(button)
        QWidget.setTabOrder(self.copy_button, button)

    def text(self) -> str:
        """Return the card as plain text: what "Copy text" yields."""
        if self.card is None:
            return self._empty_text
        says = [f"{SIGNS[p.tone]} {headed(p)} {shown(p.text)}" for p in self.card.paragraphs]
        rows = ["\t".join(shown(cell) for cell in row) for row in self.card.rows]
        return "\n".join(part for part in [*says, *rows, self._untouched_text()] if part)

    def copy_text(self) -> None:
        """Put the card on the clipboard as plain text."""
        QGuiApplication.clipboard().setText(marked_text(self.text()))

    @told_at_once
    def changeEvent(self, event: QEvent) -> None:
        """Follow the theme and the font."""
        super().changeEvent(event)
        if event.type() in (QEvent.Type.PaletteChange, QEvent.Type.StyleChange, QEvent.Type.FontChange):
            self._write()

    def _untouched_text(self) -> str:
        if self.card is None or not self.card.untouched:
            return ""
        return self.tr("Do not touch: {what}").format(what=shown(self.card.untouched))

    def _make_layout(self) -> None:
        self.head = QHBoxLayout()
        self.head.addWidget(self.heading, 1)
        self.head.addWidget(self.copy_button)
        self.copy_button.setObjectName("plain")
        self.keep_button.setObjectName("primary")
        self.keep_button.setAccessibleName(self.tr("Keep trial"))
        self.untouched.setObjectName("quiet")
        self.why_not.setObjectName("question")
        sentences = QWidget()
        says = QVBoxLayout(sentences)
        says.setContentsMargins(0, 0, 0, 0)
        says.setSpacing(2)
        for label in (self.untouched, self.why_not):
            label.setWordWrap(True)
            label.setTextInteractionFlags(
                Qt.TextInteractionFlag.TextSelectableByMouse | Qt.TextInteractionFlag.TextSelectableByKeyboard
            )
            says.addWidget(label)
        self.foot = WrapRow(at_foot=True)
        self.foot.setSpacing(2 * STEP_PX)
        self.foot.add(sentences, shares=True)
        self.foot.add(self.keep_button)
        column = QVBoxLayout(self)
        column.setContentsMargins(14, STEP_PX, 14, 12)
        column.setSpacing(STEP_PX // 2)
        column.addLayout(self.head)
        column.addWidget(self.body, 1)
        column.addLayout(self.foot)

    def _write(self) -> None:
        self.body.write(self.card, self._empty_text)


class _Body(QTextEdit):
    """Paragraphs and numbers as one read-only text that shrinks its gaps before it scrolls."""

    def __init__(self) -> None:
        super().__init__()
        self._card: CardData | None = None
        self._empty_text = ""
        self._gap_px, self._fits = _ROOMY_PX, True
        self._filled_px = 0
        self._heights: dict[tuple[str, int], float] = {}  # of the present text with roomy gaps, by font and width
        self.most_lines = _FEWEST_LINES
        self.setReadOnly(True)
        self.setFrameShape(QFrame.Shape.NoFrame)
        self.setTextInteractionFlags(
            Qt.TextInteractionFlag.TextSelectableByMouse | Qt.TextInteractionFlag.TextSelectableByKeyboard
        )
        self.setTabChangesFocus(True)
        self.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Expanding)

    @or_else(QSize())
    def sizeHint(self) -> QSize:
        """Ask for the height of the text with its roomy gaps, within reason."""
        return QSize(360, min(round(self._measured(_ROOMY_PX)) + 2, 360))

    @or_else(QSize())
    def minimumSizeHint(self) -> QSize:
        """Allow what the text needs with tight gaps, four lines at least: below that it scrolls."""
        line = self.fontMetrics().lineSpacing()
        needed = round(self._measured(_TIGHT_PX)) + 2 if self.most_lines > _FEWEST_LINES else 0
        return QSize(200, max(min(needed, line * self.most_lines), line * _FEWEST_LINES))

    def write(self, card: CardData | None, empty_text: str) -> None:
        """Write the card anew."""
        self._card, self._empty_text = card, empty_text
        self._heights = {}
        self._gap_px, self._fits = self._fitting()
        self._fill()
        self._show_bar()
        self.updateGeometry()

    def toPlainText(self) -> str:
        """Return what is written, without what holds numbers and units in one line."""
        return unjoined(super().toPlainText())

    @or_else(None)
    def createMimeDataFromSelection(self) -> QMimeData:
        """Let copied words be found again elsewhere."""
        data = QMimeData()
        data.setText(unjoined(self.textCursor().selection().toPlainText()))
        return data

    @told_at_once
    def resizeEvent(self, event: QResizeEvent) -> None:
        """Choose the gaps for the present height."""
        super().resizeEvent(event)
        if event.size().width() != event.oldSize().width():
            self.updateGeometry()  # the text needs another height
        gap, self._fits = self._fitting()
        in_columns = self._card is not None and bool(self._card.rows)
        if gap != self._gap_px or (in_columns and self._words_px() != self._filled_px):
            self._gap_px = gap
            self._fill()
        self._show_bar()

    @told_at_once
    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Copy everything where nothing is selected."""
        if event.matches(QKeySequence.StandardKey.Copy) and not self.textCursor().hasSelection():
            self.selectAll()
        super().keyPressEvent(event)

    def _fitting(self) -> tuple[float, bool]:
        """Return the roomy gap where the text fits with it, else the tight one, and whether it fits.

        Measured without the scroll bar, or the two would chase.
        """
        high = self.contentsRect().height()
        roomy = self._measured(_ROOMY_PX) <= high
        return (_ROOMY_PX, True) if roomy else (_TIGHT_PX, self._measured(_TIGHT_PX) <= high)

    def _show_bar(self) -> None:
        """Take the scroll bar away where all fits: its width would wrap the words into a line too many."""
        policy = Qt.ScrollBarPolicy
        self.setVerticalScrollBarPolicy(policy.ScrollBarAlwaysOff if self._fits else policy.ScrollBarAsNeeded)

    def _measured(self, gap_px: float) -> float:
        """Return the height of the text; asked again and again by the layout, so it is worked out once a width."""
        across = self.contentsRect().width()
        asked = self.font().key(), across
        if asked not in self._heights:
            document = QTextDocument()
            write_card(document, self._card, self._empty_text, _ROOMY_PX, self.font(), tokens(), across)
            document.setTextWidth(across)
            self._heights[asked] = document.size().height()
        return self._heights[asked] - (_ROOMY_PX - gap_px) * (self._card.gaps if self._card else 0)

    def _fill(self) -> None:
        self._filled_px = self._words_px()
        write_card(self.document(), self._card, self._empty_text, self._gap_px, self.font(), tokens(), self._words_px())
        self.moveCursor(QTextCursor.MoveOperation.Start)

    def _words_px(self) -> int:
        """Return the width there is, beside the scroll bar where there is one."""
        return self.contentsRect().width() - (0 if self._fits else self.verticalScrollBar().sizeHint().width())
