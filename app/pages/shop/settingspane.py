"""The settings in force: lines for the controller, the rest to be set by hand, and a listing held against them."""

from __future__ import annotations

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QGuiApplication
from PySide6.QtWidgets import (
    QFrame,
    QGridLayout,
    QHBoxLayout,
    QLabel,
    QPlainTextEdit,
    QPushButton,
    QVBoxLayout,
    QWidget,
)

from app.theme import STEP_PX
from app.widgets.invented import marked_text
from app.widgets.labels import heading, quiet
from app.widgets.panel import Panel
from app.widgets.resultcard import CardData, Paragraph, ResultCard
from app.words import local_numbers, shown
from core.guidance.logentries import plain_value, setting_name_words
from core.guidance.settinglines import Difference, Value
from core.words import tr

_LINES_PX = 92


class SettingsPane(QWidget):
    """Four parts: in force, controller lines with their template, and a pasted listing with its differences."""

    template_saved = Signal(str)
    template_edited = Signal()
    compare_asked = Signal(str)
    agreed = Signal()

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        nothing = self.tr(
            "Nothing is in force here yet: choose a machine above; kept trials and its parts set the values."
        )
        self.in_force = ResultCard(self.tr("In force"), nothing)
        self.in_force.keep_button.hide()
        self.lines, self.template, self.listing = QPlainTextEdit(), QPlainTextEdit(), QPlainTextEdit()
        self.problem, self.outcome = QLabel(), QLabel()
        self.copy = QPushButton(self.tr("Copy &lines"))
        self.save = QPushButton(self.tr("&Save the template"))
        self.compare = QPushButton(self.tr("&Compare"))
        self.agree = QPushButton(self.tr("&Write down: compared, it agrees"))
        self._lay_out()
        self.copy.clicked.connect(self._copy)
        self.save.clicked.connect(lambda: self.template_saved.emit(self.template.toPlainText()))
        self.compare.clicked.connect(lambda: self.compare_asked.emit(self.listing.toPlainText()))
        self.agree.clicked.connect(self.agreed)
        self.template.textChanged.connect(self.template_edited)
        self.listing.textChanged.connect(self.clear_outcome)

    def show_values(self, values: tuple[Value, ...], for_slicing: tuple[Value, ...], marks: dict[str, str]) -> None:
        """Show what is in force; `marks` say by name what is known of each change."""
        if not values:
            self.in_force.show_empty()
            return
        listed = "; ".join(_plain(value) for value in for_slicing)
        says = (Paragraph(self.tr("For the slicing program"), f"{listed[:1].upper()}{listed[1:]}."),) if listed else ()
        rows = tuple(
            (shown(setting_name_words(v.name)), local_numbers(plain_value(v.value, v.unit)), _source(v, marks))
            for v in values
        )
        self.in_force.show_card(CardData(says, rows, can_keep=False))

    def show_lines(self, lines: tuple[str, ...]) -> None:
        """Show the controller's lines."""
        self.problem.hide()
        self.lines.setPlainText("\n".join(lines))
        self.copy.setEnabled(bool(lines))

    def show_problem(self, message: str) -> None:
        """Say what is wrong with the template."""
        self.problem.setText(message)
        self.problem.show()

    def show_differences(self, differences: tuple[Difference, ...], agree: int) -> None:
        """Say in what the listing differs."""
        all_agree = shown(tr("The listing agrees with what is in force. Values compared: {count}.", count=agree))
        says = [f"! {shown(difference.sentence)}" for difference in differences]
        self._say("\n".join(says) or f"✓ {all_agree}", good=not differences)
        self.agree.setVisible(not differences)

    def show_listing_problem(self, message: str) -> None:
        """Say why the listing cannot be compared."""
        self._say(message, good=False)

    def clear_outcome(self) -> None:
        """Forget what was compared."""
        self.outcome.hide()
        self.agree.hide()

    def _say(self, text: str, good: bool) -> None:
        self.outcome.setText(text)
        self.outcome.setObjectName("good" if good else "question")
        self.outcome.style().unpolish(self.outcome)
        self.outcome.style().polish(self.outcome)
        self.outcome.show()
        self.agree.hide()

    def _copy(self) -> None:
        QGuiApplication.clipboard().setText(marked_text(self.lines.toPlainText(), "; "))

    def _lay_out(self) -> None:
        self.lines.setReadOnly(True)
        for edit, name in (
            (self.lines, self.tr("Lines for the controller")),
            (self.template, self.tr("Template of this machine")),
            (self.listing, self.tr("Listing of the controller")),
        ):
            edit.setAccessibleName(name)
            edit.setTabChangesFocus(True)
            edit.setMinimumHeight(_LINES_PX)
        self.listing.setPlaceholderText(self.tr("Paste here what the controller answers when asked for its settings."))
        for label in (self.problem, self.outcome):
            label.setWordWrap(True)
            label.setTextInteractionFlags(Qt.TextInteractionFlag.TextSelectableByMouse)
            label.hide()
        self.problem.setObjectName("question")
        self.agree.hide()
        right = QVBoxLayout()
        right.setSpacing(STEP_PX)
        caution = quiet(self.tr("Read each line before you send it: a controller does what it is told, at once."))
        right.addWidget(_card(self.tr("Lines for the controller"), self.lines, (caution,), (self.copy,)), 1)
        how = quiet(self.tr("One line a setting: its name, a colon, the command with {value} in it."))
        right.addWidget(_card(self.tr("Template"), self.template, (how, self.problem), (self.save,)), 1)
        left = QVBoxLayout()
        left.setSpacing(STEP_PX)
        left.addWidget(self.in_force, 1)
        buttons = (self.agree, self.compare)
        left.addWidget(_card(self.tr("Compare a listing"), self.listing, (self.outcome,), buttons), 1)
        across = QGridLayout(self)
        across.setContentsMargins(0, 0, 0, 0)
        across.setHorizontalSpacing(2 * STEP_PX)
        across.addLayout(left, 0, 0)
        across.addLayout(right, 0, 1)
        across.setColumnStretch(0, 1)
        across.setColumnStretch(1, 1)


def _card(title: str, edit: QPlainTextEdit, labels: tuple[QLabel, ...], buttons: tuple[QPushButton, ...]) -> QFrame:
    frame = Panel(title)
    column = QVBoxLayout(frame)
    column.setContentsMargins(14, STEP_PX, 14, 12)
    column.setSpacing(STEP_PX)
    column.addWidget(heading(title))
    column.addWidget(edit, 1)
    for label in labels:
        column.addWidget(label)
    foot = QHBoxLayout()
    foot.addStretch(1)
    for button in buttons:
        foot.addWidget(button)
    column.addLayout(foot)
    return frame


def _plain(value: Value) -> str:
    return f"{shown(setting_name_words(value.name))} {local_numbers(plain_value(value.value, value.unit))}"


def _source(value: Value, marks: dict[str, str]) -> str:
    if value.setting is None:
        return shown(tr("from the parts list"))
    since = f"{value.setting.since:%Y-%m-%d}" if value.setting.since else ""
    return f"{since}  {marks.get(value.name, '')}".strip()
