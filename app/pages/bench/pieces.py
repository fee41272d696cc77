"""The page *Pieces*: which test piece to print on this machine, what its readings will tell, its file, its gauges."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING, ClassVar, NamedTuple

from PySide6.QtWidgets import QFileDialog, QHBoxLayout, QPushButton, QVBoxLayout, QWidget

from app.context import Context, Level
from app.pages.base import Page
from app.pages.bench.piecescard import plan_card
from app.pages.bench.piecesdrafts import SQUARE_PAGE, hand_over
from app.pages.bench.piecesform import PiecesForm
from app.theme import STEP_PX
from app.widgets.invented import file_name
from app.widgets.labels import heading
from app.widgets.pieceview import PieceView
from app.widgets.resultcard import ResultCard
from app.widgets.resulttext import CardData, Paragraph
from app.words import shown
from core.errors import InputError, StoreError
from core.records.rows import Trial

if TYPE_CHECKING:
    from core.guidance.pieceplan import PiecePlan, PieceWishes
    from core.pieces.solid import Solid

INVENTED = "Slipgauge demo shop, invented data: planned for no real machine"  # in the file, for any reader
_CARD_LINES = 15  # so that the numbers stay in sight in the smallest window


class Planned(NamedTuple):
    """A plan, the wishes behind it, and its solids as they are drawn."""

    wishes: PieceWishes
    plan: PiecePlan
    solids: tuple[Solid, ...]


class PiecesPage(Page):
    """Piece, bounds and gauges at the left; picture and what will be known at the right."""

    subject: ClassVar[str] = "pieces"

    def __init__(self, context: Context, parent: QWidget | None = None) -> None:
        super().__init__(context, parent)
        self.title = self.tr("Pieces")
        self.form, self.picture = PiecesForm(), PieceView()
        self.card = ResultCard(self.tr("What it will tell"))
        self.card.keep_button.setText(self.tr("Rea&d this piece"))
        self.card.keep_button.setAccessibleName(self.tr("Read this piece"))
        self.diagonals_button = QPushButton(self.tr("Read its diagonal&s"))
        self.card.grow(_CARD_LINES)
        self._fresh: dict[str, str] = {}  # the texts of the form before anything was typed
        self._lay_out()
        self._wire()

    # The four methods of a page

    def read(self) -> PieceWishes:
        """Return what is wanted."""
        return self.form.wishes()

    def compute(self, readings: PieceWishes) -> Planned:
        """Plan the piece and build its solids."""
        from core.guidance.pieceplan import plan_piece
        from core.pieces.solid import solids_of

        plan = plan_piece(readings, self.context.instrument)
        return Planned(readings, plan, solids_of(plan.planned, relieved=False))

    def show_result(self, result: Planned) -> None:
        """Show picture, gauges and what will be known."""
        planned = result.plan.planned
        self.form.table.show_gauges(planned.gauges, result.plan.times)
        self.picture.show_set(planned, result.solids)
        self.card.show_card(plan_card(result.plan, self.context.instrument))
        self.diagonals_button.setVisible(any(gauge.axis == "xy" for gauge in planned.gauges))
        for button in (self.form.save_3mf, self.form.save_stl):
            button.setEnabled(True)

    def record(self) -> Trial:
        """Return what was typed over the values of the machine; it is no trial that could be kept."""
        texts = {key: text for key, text in self.form.texts().items() if text != self._fresh.get(key)}
        return Trial(
            self.subject,
            machine_id=self.context.machine_id,
            lot_id=self.context.lot_id,
            readings={"field": list(texts), "raw": list(texts.values())},
        )

    # Hooks

    def keep(self) -> None:
        """Nothing is kept here; open the page that reads the piece."""
        self.read_piece()

    def load_draft(self, trial: Trial | None) -> None:
        """Show the bounds of the picked machine, with what was typed over them."""
        self._show_machine()
        if trial is not None:
            self.form.set_texts(dict(zip(trial.readings["field"], trial.readings["raw"], strict=True)))
        self.recompute()

    def shown(self) -> None:
        """Plan again: machine or instrument may have changed on another page."""
        self.recompute()

    def show_problem(self, field: str, row: int | None, message: str) -> None:
        """Show at its field, and in the card, why there is no piece."""
        self.form.mark_unreadable()
        self.form.show_problem(field, message)
        self.form.table.show_gauges((), ())
        self.picture.show_nothing()
        self.diagonals_button.hide()
        self.card.show_card(CardData((Paragraph(self.tr("No piece:"), message, "unknown"),), can_keep=False))
        for button in (self.form.save_3mf, self.form.save_stl):
            button.setEnabled(False)

    def clear_problems(self) -> None:
        """Take the sentences away."""
        self.form.clear_problems()

    # Actions

    def write_file(self, path: Path) -> bool:
        """Write the planned pieces; a failure is said in words and returned as False."""
        from core.pieces.meshfiles import write_pieces

        if self.result is None:
            return False
        try:
            write_pieces(self.result.plan.planned, path, INVENTED if self.context.store.is_demo else "")
        except StoreError as error:
            self.context.say(shown(error.message), Level.ERROR)
            return False
        self.context.say(self.tr("Written: {path}. Print it, let it cool, then read it.").format(path=path), Level.GOOD)
        return True

    def read_piece(self) -> None:
        """Open the page that takes the readings, with what the piece says filled in there."""
        if self.result is not None:
            self._open(self.result.plan.planned.page)

    def read_diagonals(self) -> None:
        """Open the page *Squareness* with the diagonals of the pillars."""
        if self.result is not None:
            self._open(SQUARE_PAGE)

    def _open(self, page: str) -> None:
        hand_over(self.context, self.result.wishes, self.result.plan, page)
        self.context.page_asked.emit(page)

    def _lay_out(self) -> None:
        foot = self.card.foot
        foot.insert(foot.count() - 1, self.diagonals_button)
        right, across, down = QVBoxLayout(), QHBoxLayout(), QVBoxLayout(self)
        right.addWidget(self.picture, 3)
        right.addWidget(self.card, 2)
        across.addWidget(self.form, 45)
        across.addLayout(right, 55)
        down.addWidget(heading(self.title))
        down.addLayout(across, 1)
        down.setContentsMargins(0, 0, 0, 0)
        for layout in (right, down):
            layout.setSpacing(STEP_PX)
        across.setSpacing(2 * STEP_PX)
        self.setFocusProxy(self.form)

    def _wire(self) -> None:
        self.form.changed.connect(self._answer_change)
        self.form.save_3mf.clicked.connect(self._ask_3mf)
        self.form.save_stl.clicked.connect(self._ask_stl)
        self.form.table.gauge_shown.connect(self.picture.light)
        self.picture.gauge_shown.connect(self.form.table.light)
        self.picture.said.connect(self.context.notice)
        self.card.keep_clicked.connect(self.read_piece)
        self.diagonals_button.clicked.connect(self.read_diagonals)
        self.context.instrument_changed.connect(self._answer_instrument)

    def _answer_change(self) -> None:
        self.recompute()
        self.save_draft()

    def _answer_instrument(self) -> None:
        if self.isVisible():
            self._load(self.draft)

    def _show_machine(self) -> None:
        """Fill in the bounds of the picked machine and the hand of the picked instrument."""
        from core.guidance.pieceplan import bounds_of
        from core.pieces.bounds import Bounds

        try:
            bounds = bounds_of(self.context.machine, self.form.with_gauge_range(Bounds()))
        except InputError as error:
            bounds = Bounds()
            self.context.say(shown(error.message), Level.WARNING)
        instrument = self.context.instrument
        hand_mm = instrument.sd_hand_mm if instrument else None
        self.form.show_bounds(bounds, float(f"{hand_mm:.2g}") if hand_mm else None)
        self._fresh = self.form.texts()

    def _ask_3mf(self) -> None:
        self._ask_file("3mf")

    def _ask_stl(self) -> None:
        self._ask_file("stl")

    def _ask_file(self, kind: str) -> None:
        if self.result is None:
            return
        name = file_name(f"{self.result.plan.planned.key}.{kind}")
        path, _ = QFileDialog.getSaveFileName(self, self.tr("Save the piece"), name, f"{kind.upper()} (*.{kind})")
        if path:
            self.write_file(Path(path if path.lower().endswith(f".{kind}") else f"{path}.{kind}"))
