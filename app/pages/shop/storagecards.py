"""Cards of the page Storage: what is in the database, the ways out and in, and the report."""

from __future__ import annotations

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import (
    QFrame,
    QHBoxLayout,
    QLabel,
    QPlainTextEdit,
    QProgressBar,
    QPushButton,
    QVBoxLayout,
    QWidget,
)

from app.options import HOME, OPEN
from app.theme import STEP_PX
from app.widgets.fieldgrid import FieldGrid
from app.widgets.fields import TextField


def line_label(name: str = "", *, plain: bool = False) -> QLabel:
    """Return a label of as many lines as it needs; a plain one can be copied from."""
    label = QLabel()
    label.setObjectName(name)
    label.setWordWrap(True)
    if plain:
        label.setTextFormat(Qt.TextFormat.PlainText)
        label.setTextInteractionFlags(Qt.TextInteractionFlag.TextSelectableByMouse)
    return label


class Card(QFrame):
    """A card with a heading above its column."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setObjectName("card")
        self.title = QLabel()
        self.title.setObjectName("heading")
        self.column = QVBoxLayout(self)
        self.column.setContentsMargins(2 * STEP_PX, STEP_PX, 2 * STEP_PX, 12)
        self.column.setSpacing(STEP_PX)
        self.column.addWidget(self.title)

    def head(self, text: str) -> None:
        """Give the card its heading."""
        self.title.setText(text)
        self.setAccessibleName(text)


class DatabaseCard(Card):
    """Where the database is, what is in it, and the two buttons that keep it well."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.head(self.tr("This database"))
        self.where, self.contents = line_label(plain=True), line_label("quiet", plain=True)
        self.warning = line_label("question", plain=True)
        self.back_up = QPushButton(self.tr("&Back up now"))
        self.back_up.setObjectName("primary")
        self.check = QPushButton(self.tr("&Check everything"))
        buttons = QHBoxLayout()
        buttons.addWidget(self.back_up)
        buttons.addWidget(self.check)
        buttons.addStretch(1)
        for line in (self.where, self.contents, self.warning):
            self.column.addWidget(line)
        self.column.addLayout(buttons)

    def show_contents(self, where: str, contents: str, warnings: str) -> None:
        """Say where it is, what it holds and what endangers it."""
        self.where.setText(where)
        self.contents.setText(contents)
        self.warning.setText(warnings)
        self.warning.setVisible(bool(warnings))

    def set_busy(self, busy: bool) -> None:
        """Take the buttons away while a work runs."""
        for button in (self.back_up, self.check):
            button.setEnabled(not busy)


class ExchangeCard(Card):
    """Export, import, and the move to another database."""

    moved = Signal(str)

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.head(self.tr("Take out, bring in, move"))
        self.export_csv = QPushButton(self.tr("Export &tables…"))
        self.export_csv.setToolTip(self.tr("A folder of CSV files, for a spreadsheet"))
        self.export_json = QPushButton(self.tr("Export &one file…"))
        self.export_json.setToolTip(self.tr("JSON, for another program"))
        self.import_any = QPushButton(self.tr("&Import…"))
        across = QHBoxLayout()
        across.setSpacing(STEP_PX)
        for button in (self.export_csv, self.export_json, self.import_any):
            across.addWidget(button)
        across.addStretch(1)
        self.form = FieldGrid(1)
        self.target = TextField(required=True)
        self.target.setPlaceholderText("postgresql+psycopg://user@host/name")
        self.form.add("where", self.tr("Move to a &new file or an empty database on a server"), self.target)
        self.form.set_share(1, 0)
        self.move_there = QPushButton(self.tr("Mo&ve there"))
        note = line_label("quiet")
        note.setText(self.tr("A move copies everything; this database stays as it is."))
        self.column.addLayout(across)
        self.column.addWidget(self.form)
        row = QHBoxLayout()
        row.addWidget(note, 1)
        row.addWidget(self.move_there, 0, Qt.AlignmentFlag.AlignTop)
        self.column.addLayout(row)

    def set_busy(self, busy: bool) -> None:
        """Take the buttons away while a work runs."""
        for button in (self.export_csv, self.export_json, self.import_any, self.move_there):
            button.setEnabled(not busy)


class DemoCard(Card):
    """The way into the demo shop, or back out of it; `asked` carries which."""

    asked = Signal(str)

    def __init__(self, is_demo: bool, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._way = HOME if is_demo else OPEN
        self.head(self.tr("Demo shop"))
        says = line_label("quiet")
        says.setText(
            self.tr("This is the demo shop: all of it is invented. Your own data are elsewhere, as you left them.")
            if is_demo
            else self.tr("Invented machines, filament and readings to look around in, apart from your own data.")
        )
        self.go = QPushButton(self.tr("Back to m&y shop") if is_demo else self.tr("Tr&y the demo shop"))
        row = QHBoxLayout()
        row.addWidget(says, 1)
        row.addWidget(self.go, 0, Qt.AlignmentFlag.AlignTop)
        self.column.addLayout(row)
        self.go.clicked.connect(self._ask)

    def _ask(self) -> None:
        self.asked.emit(self._way)


class ReportCard(Card):
    """What came of the last work, line by line; while one runs, how far it is."""

    stopped = Signal()
    followed = Signal()

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.head(self.tr("Report"))
        self.text = QPlainTextEdit()
        self.text.setReadOnly(True)
        self.text.setFrameShape(QFrame.Shape.NoFrame)
        self.text.setStyleSheet("QPlainTextEdit { border: none; padding: 0; }")  # the card is its edge
        self.text.document().setDocumentMargin(0)
        self.text.setTabChangesFocus(True)
        self.text.setAccessibleName(self.tr("Report"))
        self.text.setPlaceholderText(self.tr("What a check, an import or a move found stands here, line by line."))
        self.bar = QProgressBar()
        self.bar.setRange(0, 100)
        self.bar.setTextVisible(False)
        self.stop = QPushButton(self.tr("Sto&p"))
        self.follow = QPushButton()
        row = QHBoxLayout()
        row.addWidget(self.bar, 1)
        row.addWidget(self.stop)
        row.addStretch(0)
        row.addWidget(self.follow)
        self.column.addWidget(self.text, 1)
        self.column.addLayout(row)
        self.stop.clicked.connect(self.stopped)
        self.follow.clicked.connect(self.followed)
        self.say("")

    def begin(self, text: str) -> None:
        """Show that a work runs."""
        self.say(text)
        self.bar.setValue(0)
        self.bar.show()
        self.stop.show()

    def progress(self, part: float) -> None:
        """Show how far it is."""
        self.bar.setValue(round(100 * part))

    def say(self, text: str, follow: str = "") -> None:
        """Show what came of it, with what may follow."""
        self.text.setPlainText(text)
        self.bar.hide()
        self.stop.hide()
        self.follow.setText(follow)
        self.follow.setVisible(bool(follow))
