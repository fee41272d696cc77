"""Goes through a page in all its modes, and writes down which texts with an Alt letter stand in sight together."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from contextlib import contextmanager
from dataclasses import dataclass, field

from PySide6.QtGui import QKeySequence
from PySide6.QtWidgets import QAbstractButton, QAbstractItemView, QApplication, QLabel, QTabBar, QWidget

from app.waitrow import WaitBar
from app.widgets.fields import ChoiceField
from app.widgets.trialform import TrialForm

MOST_CHOICES, MOST_ROWS, MANY_CHOICES = 12, 24, 6
Way = tuple[tuple[int, int], ...]  # what is turned, counted along the page, and to which place


@dataclass(frozen=True)
class Turn:
    """What a person can turn to another place: a choice, the tabs, the row picked in a list."""

    widget: QWidget
    count: Callable[[], int]
    place: Callable[[], int]
    show: Callable[[int], None]

    def is_there(self) -> bool:
        return self.widget.isVisible() and self.widget.isEnabled()

    def to(self, place: int) -> None:
        if 0 <= place < self.count():
            self.show(place)
            QApplication.processEvents()


@dataclass
class Walker:
    """`clashes` are texts that share a letter, with where they do; `seen` is every text with a letter."""

    clashes: dict[tuple[str, ...], str] = field(default_factory=dict)
    seen: set[str] = field(default_factory=set)

    def look(self, window: QWidget, where: str) -> frozenset[str]:
        """Return the texts with a letter in sight: disabled ones too, they may be enabled the next moment."""
        by_letter: dict[str, list[str]] = {}
        for text in lettered(window):
            by_letter.setdefault(QKeySequence.mnemonic(text).toString(), []).append(text)
        for texts in by_letter.values():
            self.seen.update(texts)
            if len(texts) > 1:
                self.clashes.setdefault(tuple(sorted(texts)), where)
        return frozenset(text for texts in by_letter.values() for text in texts)

    def look_at_kept(self, window: QWidget, where: str) -> None:
        """Look at a form in sight as it stands beside a kept trial that was made in this mode."""
        for form in window.findChildren(TrialForm):
            if form.isVisible() and not form.new_button.isVisible():
                form.lock(True)
                self.look(window, f"{where}, kept")
                form.lock(False)

    def go_through(self, window: QWidget, page: QWidget, where: str) -> list[Way]:
        """Turn all there is, and what comes into sight by it again; return the ways to every new sight."""
        show_waiting(page)
        ways: dict[Way, frozenset[str]] = {(): self.look(window, where)}
        self.look_at_kept(window, where)
        self._go_on(window, page, where, ways, (), frozenset())
        return list(ways)

    def go_again(self, window: QWidget, page: QWidget, where: str, ways: list[Way]) -> None:
        """Go ways that were found before, in another language."""
        show_waiting(page)
        for way in ways:
            begun = []
            for number, place in way:
                turn = turns(page)[number]
                begun.append((turn, turn.place()))
                turn.to(place)
            self.look(window, f"{where} {way}")
            self.look_at_kept(window, f"{where} {way}")
            for turn, place in reversed(begun):
                turn.to(place)

    def _go_on(
        self, window: QWidget, page: QWidget, where: str,
        ways: dict[Way, frozenset[str]], way: Way, tried: frozenset[QWidget],
    ) -> None:  # fmt: skip
        here, idle, further = self.look(window, f"{where} {way}"), set(), []
        for number, turn in enumerate(turns(page)):
            if turn.widget in tried or not turn.is_there():
                continue
            with turned_back(turn):
                new = [place for place in places(turn) if self._looks_else(window, turn, place, here)]
            further.append((number, turn, new))
            if isinstance(turn.widget, QAbstractItemView) or (not new and turn.count() > MANY_CHOICES):
                idle.add(turn.widget)
        for number, turn, new in further:
            with turned_back(turn):
                for place in new:
                    turn.to(place)
                    there, on = self.look(window, f"{where} {way}"), (*way, (number, place))
                    is_new = there not in ways.values()
                    single = not way and not isinstance(turn.widget, QAbstractItemView)
                    if is_new or single:  # what one turn leads to may look otherwise where others were not tried before
                        ways[on] = there
                    if is_new:
                        self.look_at_kept(window, f"{where} {on}")
                        self._go_on(window, page, where, ways, on, tried | idle | {turn.widget})

    def _looks_else(self, window: QWidget, turn: Turn, place: int, here: frozenset[str]) -> bool:
        turn.to(place)
        return frozenset(lettered(window)) != here


def lettered(window: QWidget) -> list[str]:
    """Return the texts of a window that have an Alt letter and are in sight."""
    held = [*window.findChildren(QLabel), *window.findChildren(QAbstractButton)]
    texts = [
        widget.text()
        for widget in held
        if widget.isVisible() and widget.window() is window
        and not (isinstance(widget, QLabel) and widget.buddy() is None)
    ]  # fmt: skip
    for bar in window.findChildren(QTabBar):
        texts += [bar.tabText(place) for place in range(bar.count() if bar.isVisible() else 0)]
    return [text for text in texts if not QKeySequence.mnemonic(text).isEmpty()]


def show_waiting(page: QWidget) -> None:
    """Show what stands beside all else while a work runs."""
    for bar in page.findChildren(WaitBar):
        bar.tell(0.5)


def turns(page: QWidget) -> list[Turn]:
    """Return what can be turned on a page, in sight or not: the same order in every language."""
    return [turn for turn in map(as_turn, page.findChildren(QWidget)) if turn is not None]


def as_turn(widget: QWidget) -> Turn | None:
    if isinstance(widget, ChoiceField | QTabBar):
        return Turn(widget, widget.count, widget.currentIndex, widget.setCurrentIndex)
    rows = QAbstractItemView.SelectionBehavior.SelectRows
    if isinstance(widget, QAbstractItemView) and widget.model() and widget.selectionBehavior() == rows:
        return Turn(
            widget,
            lambda: widget.model().rowCount(),
            lambda: widget.currentIndex().row(),
            lambda row: widget.setCurrentIndex(widget.model().index(row, 0)),
        )
    return None


def places(turn: Turn) -> Iterator[int]:
    """Yield the other places; of very many the first ones and the last."""
    most = MOST_ROWS if isinstance(turn.widget, QAbstractItemView) else MOST_CHOICES
    begun, last = turn.place(), turn.count() - 1
    yield from (place for place in (*range(min(last, most)), last) if place != begun)


@contextmanager
def turned_back(turn: Turn) -> Iterator[None]:
    begun = turn.place()
    yield
    turn.to(begun)
