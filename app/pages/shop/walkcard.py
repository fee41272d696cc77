"""One step of the walk: what to do and why here, when to stop, where it stands, and the buttons that go on."""

from __future__ import annotations

from collections.abc import Sequence

from PySide6.QtCore import QSignalBlocker, Signal
from PySide6.QtWidgets import QFrame, QHBoxLayout, QPushButton, QVBoxLayout, QWidget

from app.faults import or_else
from app.pages import PAGES
from app.pages.shop.walkchecks import HandChecks
from app.pages.shop.walksteps import state_words
from app.theme import STEP_PX
from app.units import hold, inches_for
from app.widgets.resultcard import CardData, Paragraph, ResultCard
from app.widgets.resulttext import Tone
from app.words import shown
from core.guidance.walk import Standing, State, StepState
from core.guidance.walkcase import READINGS, ResultState
from core.guidance.walkplan import Scope, shop_plan
from core.guidance.walkstop import Stop, stop_sentences
from core.guidance.walkwords import STEPS, kind_words, result_words, step_title
from core.quantity import Estimate
from core.records.rows import Motion
from core.words import tr

_MACHINE_PAGE = "drive"
_BY_HAND = ("count", "compare")
_STOPS: dict[Stop, Tone] = {Stop.ENOUGH: "good", Stop.NOT_ENOUGH: "warning", Stop.UNCLEAR: "unknown"}
_TONES: dict[State, Tone] = {State.DONE: "good", State.STALE: "warning", State.DOUBT: "unknown"}


class StepCard(QFrame):
    """Shows one step. The buttons say what a person has done; the page logs it."""

    page_asked = Signal(str)
    good_said = Signal()
    fault_said = Signal()
    quick_said = Signal()
    skip_said = Signal()

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setObjectName("card")
        self.state: StepState | None = None
        self.text = _StepText()
        self.text.setObjectName("")  # stands inside a card already
        self.text.keep_button.hide()
        self.checks = HandChecks()
        self.open_button = QPushButton()
        self.good = QPushButton(self.tr("All in order   Ctrl+S"))
        self.quick = QPushButton(self.tr("&Quick check made: it stands"))
        self.fault = QPushButton(self.tr("&Fault found"))
        self.skip = QPushButton()
        self._page = ""
        self._lay_out()
        for part in (self.open_button, self.good, self.quick, self.fault, self.skip):
            part.hide()  # until a step is in sight
        self.open_button.clicked.connect(self._open_page)
        for button, signal in (
            (self.good, self.good_said),
            (self.quick, self.quick_said),
            (self.fault, self.fault_said),
            (self.skip, self.skip_said),
        ):
            button.clicked.connect(signal)

    def show_step(
        self, state: StepState | None, motion: Motion, estimates: Sequence[Estimate] = (), lot_picked: bool = True
    ) -> None:
        """Show where a step stands, with the estimates of the trials it rests on; no state for no machine."""
        before, self.state = self.state, state
        if state is None:
            text = self.tr("Choose a machine above, or add one: the walk leads from its record to a proved machine.")
            self.text.show_empty(text)
            self._head(self.tr("Setup walk"))
            for part in (self.checks, self.good, self.quick, self.fault, self.skip):
                part.hide()
            self._page = _MACHINE_PAGE
            self.open_button.setText(self.tr("&Add a machine"))
            self.open_button.show()
            self._fill(self.open_button)
            return
        self._head(f"{state.step.number}  {shown(step_title(state.step.key))}")
        says = self._paragraphs(state, motion, estimates)
        if not lot_picked and any(result.kind.scope in (Scope.LOT, Scope.BOTH) for result in state.results):
            text = self.tr("This step is for one filament lot: choose or add it above.")
            says = (Paragraph(self.tr("First"), text, "unknown"), *says)
        card = CardData(says, _rests_on(state), can_keep=False)
        kept_as = {subject for result in state.results for subject in result.kind.subjects}
        self.text.show_card(card.in_inch() if any(map(inches_for, kept_as)) else card)
        hand = self.by_hand()
        if before is None or before.step.key != state.step.key:
            with QSignalBlocker(self.checks):
                self.checks.show_step(state.step, hand)
        self.checks.show()
        self._show_buttons(state, hand)

    def _head(self, text: str) -> None:
        self.text.heading.setText(text)
        self.setAccessibleName(text)

    def by_hand(self) -> bool:
        """Whether a check by hand proves the step in sight; it cannot where parts are not on record."""
        results = self.state.results if self.state is not None else ()
        return any(result.kind.hand for result in results if not _lacks_parts(result))

    def doubtful(self) -> tuple[str, ...]:
        """Return the results that a quick check, a count or a comparison would mend."""
        if self.state is None:
            return ()
        return tuple(
            result.kind.key
            for result in self.state.results
            if (result.standing is Standing.DOUBT and result.how != READINGS)
            or (result.standing is Standing.STALE and result.how in _BY_HAND)
        )

    def _show_buttons(self, state: StepState, hand: bool) -> None:
        result = state.open_result or state.results[0]
        entry = next((entry for entry in PAGES if entry.key == result.kind.page), None)
        compares = result.how == "compare" and result.standing is not Standing.DONE
        self._page = "logbook" if compares else entry.key if entry else ""
        page = next((entry for entry in PAGES if entry.key == self._page), None)
        self.open_button.setVisible(page is not None)
        if page is not None:
            self.open_button.setText(self.tr("&Open the page {page}").format(page=page.shown_title()))
        self.good.setVisible(hand)
        self.fault.setVisible(hand)
        self.quick.setVisible(bool(self.doubtful()))
        skipped = state.state is State.SKIPPED
        self.skip.setVisible(skipped or state.state is not State.DONE)
        self.skip.setText(self.tr("Take it up a&gain") if skipped else self.tr("S&kip it, with a reason"))
        self._fill(self.good if hand and (page is None or not result.kind.subjects) else self.open_button)

    def _fill(self, main: QPushButton) -> None:
        """Let one button stand out."""
        for button in (self.good, self.open_button):
            button.setObjectName("primary" if button is main else "")
            button.style().unpolish(button)
            button.style().polish(button)

    def _paragraphs(self, state: StepState, motion: Motion, estimates: Sequence[Estimate]) -> tuple[Paragraph, ...]:
        words = STEPS[state.step.key]
        stands = _reasons(state)
        if state.waits_for and state.state in (State.NOT_YET, State.STALE):
            first = ", ".join(shown(step_title(key)) for key in state.waits_for)
            stands.append(shown(tr("First: {steps}.", steps=first)))
        elif state.state is State.NOT_YET and not state.reasons:
            stands.append(self.tr("It could be done now; others come before it."))
        found = [Paragraph(shown(state_words(state.state)), " ".join(stands), _TONES.get(state.state, "plain"))]
        found.append(Paragraph(self.tr("Do"), shown(words.do)))
        if (other := kind_words(state.step.key, motion)) is not None:
            found.append(Paragraph(self.tr("This machine"), shown(other)))
        found.append(Paragraph(self.tr("Why here"), shown(words.why)))
        found.append(Paragraph(self.tr("Good enough, stop"), shown(words.enough)))
        for stop, says in stop_sentences(estimates, shop_plan().enough):
            found.append(Paragraph("", shown(says), _STOPS[stop]))
        return tuple(found)

    def _open_page(self) -> None:
        self.page_asked.emit(self._page)

    def _lay_out(self) -> None:
        self.checks.hide()
        inner = self.text.layout()
        if inner is not None:
            inner.setContentsMargins(0, 0, 0, 0)
        rows = ((self.skip, self.fault), (self.quick,), (self.open_button, self.good))  # short: the list needs its room
        buttons = QVBoxLayout()
        buttons.setSpacing(STEP_PX)
        for row in rows:
            line = QHBoxLayout()
            line.setSpacing(STEP_PX)
            if row[-1] is self.good:
                line.addStretch(1)
            for button in row:
                line.addWidget(button)
            if row[-1] is not self.good:
                line.addStretch(1)
            buttons.addLayout(line)
        column = QVBoxLayout(self)
        column.setContentsMargins(14, STEP_PX, 14, 12)
        column.setSpacing(STEP_PX)
        column.addWidget(self.text, 1)
        column.addWidget(self.checks)
        column.addLayout(buttons)


class _StepText(ResultCard):
    """Scrolls before the checks below it, whose lines would be laid over one another, lose any height."""

    @or_else(False)
    def hasHeightForWidth(self) -> bool:
        """Insist on no height for all of the text, as a layout does with what says yes here."""
        return False


def _lacks_parts(result: ResultState) -> bool:
    return result.kind.key == "record" and result.standing is Standing.MISSING


def _reasons(state: StepState) -> list[str]:
    """Return why a step does not stand, each reason once, with the results it is about where there are several."""
    about: dict[str, list[str]] = {}
    for result in state.results:
        for reason in result.reasons:
            about.setdefault(shown(reason), []).append(shown(result_words(result.kind.key)))
    if state.state is State.SKIPPED:
        return [shown(tr("Reason: {reason}", reason=reason)) for reason in state.reasons]
    alone = len(state.results) == 1
    said = [reason if alone else f"{', '.join(names)}: {reason}" for reason, names in about.items()]
    return said + [text for reason in state.reasons if (text := shown(reason)) not in about]


def _rests_on(state: StepState) -> tuple[tuple[str, str, str], ...]:
    """Say for each result which trial or check it rests on."""
    rows = []
    for result in state.results:
        name = shown(result_words(result.kind.key))
        if result.trials:
            for trial in result.trials:
                says = shown(tr("trial {number}", number=trial.id))
                rows.append((name, says, f"{trial.kept_at:%Y-%m-%d}"))
        elif result.check is not None:
            by = result.check.author or shown(tr("nobody named"))
            at = f"{result.check.at:%Y-%m-%d}" if result.check.at else ""
            rows.append((name, shown(tr("checked by {name}", name=by)), f"{at}  {hold(result.check.note)}".strip()))
    return tuple(rows)
