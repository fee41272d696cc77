"""What the window says in words: the one notice line, and the sentence in the body when the database cannot open."""

from __future__ import annotations

from collections.abc import Sequence

from PySide6.QtCore import QElapsedTimer, Signal
from PySide6.QtWidgets import QComboBox, QFrame, QHBoxLayout, QLabel, QLineEdit, QPushButton, QVBoxLayout, QWidget

from app.context import Level
from app.theme import STEP_PX
from app.widgets.labels import heading
from app.widgets.panel import Panel

_AUTHOR_PX = 220
_MOMENT_MS = 2000  # what is said on the way to another page is read there
# A sign beside the colour: the level must be told without it.
_SIGNS = {Level.INFO: "", Level.GOOD: "✓ ", Level.WARNING: "? ", Level.ERROR: "! "}
_INKS = {Level.INFO: "quiet", Level.GOOD: "good", Level.WARNING: "question", Level.ERROR: "question"}


class NoticeLine(QFrame):
    """One line at the foot of the window; a new sentence replaces the last one.

    `withdrawal_asked` carries the number of the trial that was kept last and is not wanted after all.
    """

    withdrawal_asked = Signal(int)

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setObjectName("notice")
        self.label = QLabel()
        self.label.setObjectName(_INKS[Level.INFO])
        self.label.setWordWrap(True)
        self.label.setAccessibleName(self.tr("Notice"))
        self.label.setMinimumHeight(self.label.fontMetrics().height())  # or the first sentence would move the page
        layout = QHBoxLayout(self)
        layout.setContentsMargins(2 * STEP_PX, STEP_PX // 2, 2 * STEP_PX, STEP_PX // 2)
        layout.addWidget(self.label, 1)
        self.withdraw = QPushButton(self.tr("Withdraw it…"))
        self.withdraw.setObjectName("plain")
        tip = self.tr("A kept trial is not undone: it is withdrawn in the logbook, with the reason.")
        self.withdraw.setToolTip(tip)
        self.withdraw.hide()
        self._kept, self._level, self._since = 0, Level.INFO, QElapsedTimer()
        self.withdraw.clicked.connect(self._ask_for_withdrawal)
        layout.addWidget(self.withdraw)
        self.author = QLineEdit()  # whoever builds the window says when it is asked for
        self.author.setFixedWidth(_AUTHOR_PX)
        self.author.hide()
        layout.addWidget(self.author)

    def say(self, text: str, level: str = Level.INFO) -> None:
        """Show a sentence and tell it to a screen reader."""
        self.withdraw.hide()
        self._level = loudness = Level(level)
        self._since.start()
        self.label.setObjectName(_INKS[loudness])
        self.label.style().polish(self.label)
        _make_plain(self.label)
        self.label.setText(_SIGNS[loudness] + text)
        self.label.setAccessibleDescription(text)
        if text:
            from PySide6.QtGui import QAccessible, QAccessibleEvent

            QAccessible.updateAccessibility(QAccessibleEvent(self.label, QAccessible.Event.Alert))

    def forget(self) -> None:
        """Take away what told a while ago of a thing done on another page; what is good, wrong or in doubt stays."""
        if self._level is Level.INFO and self._since.hasExpired(_MOMENT_MS):
            self.say("")

    def offer_withdrawal(self, trial_id: int) -> None:
        """Offer the way back from a trial kept just now, until the next sentence."""
        self._kept = trial_id
        self.withdraw.show()

    def _ask_for_withdrawal(self) -> None:
        self.withdraw.hide()
        self.withdrawal_asked.emit(self._kept)


class Refusal(QWidget):
    """Why the database cannot be opened, with the ways out; the file itself stays as it is."""

    retried = Signal()
    file_chosen = Signal(str)
    copy_chosen = Signal(str)

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.sentence = QLabel()
        self.sentence.setWordWrap(True)
        _make_plain(self.sentence)
        promise = QLabel(self.tr("Nothing was changed or replaced."))
        promise.setObjectName("quiet")
        self.retry = QPushButton(self.tr("&Try again"))
        self.retry.setObjectName("primary")
        self.choose = QPushButton(self.tr("Open &another file…"))
        self.copies = QComboBox()
        self.copies.setAccessibleName(self.tr("Copies of this database"))
        self.restore = QPushButton(self.tr("&Restore this copy"))
        self.restore.setToolTip(self.tr("The file itself is set aside beside its copies first."))
        self._lay_out(heading(self.tr("The database cannot be opened")), self.sentence, promise)
        self.offer(())
        self.setFocusProxy(self.retry)
        self.retry.clicked.connect(self.retried)
        self.choose.clicked.connect(self._ask_for_file)
        self.restore.clicked.connect(self._choose_copy)

    def tell(self, sentence: str) -> None:
        """Show the sentence, and give it to a screen reader with the first way out."""
        self.sentence.setText(sentence)
        self.retry.setAccessibleDescription(sentence)

    def offer(self, copies: Sequence[tuple[str, str]]) -> None:
        """Offer copies of the database, each as its text and its file; none hides the choice."""
        self.copies.clear()
        for text, file in copies:
            self.copies.addItem(text, file)
        for widget in (self.copies, self.restore):
            widget.setVisible(bool(copies))

    def _choose_copy(self) -> None:
        self.copy_chosen.emit(self.copies.currentData())

    def _lay_out(self, *lines: QLabel) -> None:
        card = Panel(lines[0].text())
        inside = QVBoxLayout(card)
        inside.setContentsMargins(2 * STEP_PX, 2 * STEP_PX, 2 * STEP_PX, 2 * STEP_PX)
        inside.setSpacing(STEP_PX)
        for line in lines:
            inside.addWidget(line)
        buttons = QHBoxLayout()
        buttons.addWidget(self.retry)
        buttons.addWidget(self.choose)
        buttons.addStretch(1)
        inside.addSpacing(STEP_PX)
        inside.addLayout(buttons)
        second = QHBoxLayout()
        second.addWidget(self.copies, 1)
        second.addWidget(self.restore)
        inside.addLayout(second)
        card.setMaximumWidth(640)
        around = QVBoxLayout(self)
        around.setContentsMargins(0, 0, 0, 0)
        around.addWidget(card)
        around.addStretch(1)

    def _ask_for_file(self) -> None:
        from PySide6.QtCore import Qt
        from PySide6.QtWidgets import QFileDialog

        dialog = QFileDialog(self, self.tr("Open a database, or type the name of a new one"))
        dialog.setFileMode(QFileDialog.FileMode.AnyFile)
        dialog.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
        dialog.fileSelected.connect(self.file_chosen)
        dialog.open()


def _make_plain(label: QLabel) -> None:
    """Take a file name for what it is, not for markup, and let it be copied."""
    from PySide6.QtCore import Qt  # slow to import: not before the first paint

    label.setTextFormat(Qt.TextFormat.PlainText)
    label.setTextInteractionFlags(Qt.TextInteractionFlag.TextSelectableByMouse)
