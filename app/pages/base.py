"""What all pages share: read, compute, show, record in this order, errors in words, the draft and the kept trial.

A page fills in four short methods: `read` takes what is in the widgets, `compute` makes one call into core,
`show_result` writes to the widgets, `record` gives the trial to store. An `InputError` becomes a sentence at the field.
"""

from __future__ import annotations

from typing import TYPE_CHECKING, Any, ClassVar

from PySide6.QtWidgets import QWidget

from app.basecheck import with_changes
from app.context import Context, Level
from app.faults import told_at_once
from app.pages.opentrial import Place, continued, may_move, only_readings
from app.widgets.focus import focus_inside
from app.widgets.roles import told_as_area
from app.widgets.undoing import Undoing
from app.words import shown
from core.errors import InputError, StoreError

if TYPE_CHECKING:
    from PySide6.QtGui import QHideEvent, QShowEvent

    from core.records.rows import SettingInForce, Trial


@told_as_area
class Page(QWidget):
    """One page of the window.

    Attributes:
        subject, title: the name of the core module this page shows, and the heading in the window's language.
        result: the answer to the readings now on the page; None while they cannot answer.
        draft: the open trial as the store holds it; None before the first finished reading.
        moves_along, unsaved: whether an open trial may go with what is picked; whether the store refused what is typed.
        undoing: the steps that can be taken back, as long as the same trial is on the page.
    """

    subject: ClassVar[str] = ""
    moves_along: ClassVar[bool] = True
    title: str = ""

    def __init__(self, context: Context, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.context = context
        self.result: Any = None
        self.draft: Trial | None = None
        self.unsaved = False
        self._draft_of: Place | None = None
        self.undoing = Undoing(self, self.why_nothing_to_undo)
        self.undoing.said.connect(context.say)
        self.undoing.shown_wanted.connect(self.reveal)
        context.machine_changed.connect(self._follow_if_seen)
        context.lot_changed.connect(self._follow_if_seen)

    # The four methods of a page.

    def read(self) -> Any:
        """Return the readings on the page, as `compute` wants them."""
        raise NotImplementedError

    def compute(self, readings: Any) -> Any:
        """Return the result of one call into core."""
        raise NotImplementedError

    def show_result(self, result: Any) -> None:
        """Write a result to plot and card."""
        raise NotImplementedError

    def record(self) -> Trial:
        """Return the trial as it stands: readings always, estimates and verdict where there is a result.

        Leave `id` and `started_at` empty: the base fills them in from the open trial.
        """
        raise NotImplementedError

    # Hooks, empty here.

    def settings(self) -> tuple[SettingInForce, ...]:
        """Return what keeping the trial puts in force on the machine."""
        return ()

    def is_begun(self, trial: Trial) -> bool:
        """Tell whether anything was entered that a draft is worth; a page may count more than typed readings."""
        return any(trial.readings.get("raw", ()))

    def with_doubts(self, trial: Trial) -> Trial:
        """Return the trial that is being kept with what speaks against it on the page; here nothing does."""
        return trial

    def load_draft(self, trial: Trial | None) -> None:
        """Fill the widgets from an open trial, or empty them."""

    def show_problem(self, field: str, row: int | None, message: str) -> None:
        """Show at its field, or at a reading's row, why there is no result; here: on the notice line."""
        self.context.say(message, Level.WARNING)

    def clear_problems(self) -> None:
        """Take the sentences of `show_problem` away again."""

    def shown(self) -> None:
        """Called each time the page comes into view."""

    def hidden(self) -> None:
        """Called each time the page goes out of view."""

    def reveal(self, widget: QWidget) -> None:
        """Bring into view a widget whose entry was undone; here all are in view."""

    def why_nothing_to_undo(self) -> str:
        """Say why there is no step to undo where the page knows a reason."""
        return ""

    # What the base does with them.

    def recompute(self) -> None:
        """Read, compute, show; where the readings or the store cannot answer, show why."""
        self.clear_problems()
        self.result = None
        try:
            try:
                self.result = self.compute(self.read())
                self.show_result(self.result)
            except InputError as error:
                self.result = None
                self.show_problem(error.field, error.row, shown(error.message))
        except StoreError as error:
            self.context.say(shown(error.message), Level.ERROR)

    def save_draft(self) -> bool:
        """Commit the page as it stands and return whether nothing on it can be lost; an untouched page leaves no trial.

        A page out of view whose machine or lot is no longer the picked one has nothing to commit: its last finished
        cell is stored already, and its readings must not move to the machine picked since.
        """
        left = self._draft_of if self._draft_of != self._here() else None
        if left is not None and not self.unsaved:
            return True
        try:
            trial = only_readings(continued(self.record(), self.draft), left)
            if trial != self.draft and (self.draft is not None or self.is_begun(trial)):
                self.draft = self.context.store.save_draft(trial, self.draft)
        except InputError as error:
            if error.field == "id" and self.draft is not None:  # kept or discarded in another window: begin another one
                self.draft = None
                return self.save_draft()
            self.unsaved = error.field in ("id", "readings")
            self.show_problem(error.field, error.row, shown(error.message))
            if self.unsaved:
                self.context.say(shown(error.message), Level.ERROR)
        except StoreError as error:
            self.unsaved = True
            held = self.context.hold(trial, self.draft, self.save_draft)
            self.context.say(f"{shown(error.message)} {held}", Level.ERROR)
        else:
            self.unsaved = False
            self.context.release(trial)
        return not self.unsaved

    def keep(self) -> None:
        """Store the trial for good, if there is a result."""
        self.recompute()
        if self.result is None:
            return
        try:
            kept = self.context.store.keep(self.with_doubts(continued(self.record(), self.draft)), self.settings())
        except InputError as error:
            self.show_problem(error.field, error.row, shown(error.message))
            return
        except StoreError as error:
            self.context.say(shown(error.message), Level.ERROR)
            return
        self.draft, self.unsaved = None, False
        self.context.release(kept)
        says = self.tr("Trial {number} kept.").format(number=kept.id)
        self.context.say(*with_changes(self.context, kept, says))
        self.context.kept.emit(kept)

    def take_planned(self) -> None:
        """Show the open trial that another page planned for what is picked, unless what stands here is not stored."""
        if self.unsaved:
            return
        try:
            waiting = self.context.store.draft(self.subject, *self._here())
        except StoreError:
            return  # what is typed here stays; keeping will say what is wrong with the store
        if waiting is not None and waiting != self.draft:
            self._load(waiting)

    def take_focus(self) -> None:
        """Put the keyboard on the page: on its focus proxy, else on its first field."""
        focus_inside(self)

    @told_at_once
    def showEvent(self, event: QShowEvent) -> None:
        """Find the open trial of the picked machine and lot, then tell the page."""
        super().showEvent(event)
        if not event.spontaneous():
            self._follow()
            self.shown()
            self.undoing.watch()

    @told_at_once
    def hideEvent(self, event: QHideEvent) -> None:
        """Tell the page."""
        super().hideEvent(event)
        if not event.spontaneous():
            self.hidden()

    def _here(self) -> Place:
        return self.context.machine_id, self.context.lot_id

    def _follow_if_seen(self) -> None:
        if self.isVisible():
            self._follow()

    def _follow(self) -> None:
        """Bring the open trial of the picked machine and lot, once for each choice.

        A trial begun before machine or lot were picked moves along to them, unless one waits there.
        """
        here = self._here()
        if here == self._draft_of:
            return
        if self.unsaved and not self.save_draft():
            text = self.tr("What was typed for the machine picked before is not stored yet; it stays here until it is.")
            self.context.say(text, Level.ERROR)
            return
        self._turn_to(here)

    def _turn_to(self, here: Place) -> None:
        """Bring the open trial of a machine and lot, or move this one there where it may."""
        self._draft_of = here
        try:
            waiting = self.context.store.draft(self.subject, *here)
        except StoreError as error:
            self.context.say(shown(error.message), Level.ERROR)
            return
        if waiting is None and self.draft is not None and self.moves_along and may_move(self.draft, here):
            self.save_draft()
            return
        self._load(waiting)

    def _load(self, trial: Trial | None) -> None:
        """Show another open trial; the steps of the one before are forgotten."""
        self.draft = trial
        self.load_draft(trial)
        self.undoing.forget()
